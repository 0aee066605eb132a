//! Both shoulders turned about the neck, lengthened, and the armscyes redrawn to them.

use crate::alterations::cutting::shared_lean::{Redrawn, kept_together, trued_across_shoulder};
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::Vec2;
use crate::piece::Pattern;

/// How the shoulder of one half turns.
pub(in crate::alterations) struct Turn<'h> {
    pub half: &'h UpperHalf<'h>,
    /// About the neck side point, in radians.
    pub turn: f64,
    /// What it gets longer at its point.
    pub longer: f64,
    /// How far the armscye drops along, its width point and its underarm alike.
    pub drop: f64,
    /// Whether it keeps its length, and is not drawn as long as it comes.
    pub kept: bool,
}

/// The pattern with both shoulders turned, their armscyes drawn to the new shoulder points, and both
/// trued across the shoulder seam.
pub(in crate::alterations) fn turned_together(
    pattern: &Pattern,
    back: &Turn<'_>,
    front: &Turn<'_>,
) -> Result<Pattern, AlterationError> {
    let lean = front.half.neck_lean(front.turn);
    let shoulders = (
        back.half.shoulder_turned(back.turn, back.longer)?,
        front.half.shoulder_turned(front.turn, front.longer)?,
    );
    let redrawn = |turn: &Turn<'_>, tip| {
        let down = Vec2::new(0.0, turn.drop);
        (tip, turn.turn, (down, down))
    };
    let behind = redrawn(back, shoulders.0.edge.end());
    let before = redrawn(front, shoulders.1.edge.end());
    let [behind, before] = if back.kept && front.kept {
        // Together they have their length: what one has over the other lacks.
        kept_together(
            &Redrawn::of(back.half, behind),
            &Redrawn::of(front.half, before),
        )?
    } else {
        [
            back.half.armscye_from(behind.0, behind.1, behind.2)?,
            front.half.armscye_from(before.0, before.1, before.2)?,
        ]
    };
    let mut altered = pattern.clone();
    for (turn, shoulder, neck_turn, (armscye, width_point)) in [
        (back, &shoulders.0, back.turn + lean, behind),
        (front, &shoulders.1, front.turn - lean, before),
    ] {
        let mut sketch = Sketch::of(turn.half.piece);
        turn.half.put_shoulder(&mut sketch, shoulder, neck_turn)?;
        turn.half.put_armscye(&mut sketch, armscye, width_point)?;
        if turn.drop != 0.0 {
            let down = Vec2::new(0.0, turn.drop);
            turn.half.put_underarm(&mut sketch, down)?;
        }
        altered = replaced(&altered, sketch.finish()?)?;
    }
    trued_across_shoulder(altered)
}
