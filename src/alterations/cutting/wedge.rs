//! A wedge folded out at an edge and passed into a dart.

use super::true_up::{with_mouth, without_mouth};
use crate::alterations::shoulders::shoulder_line::moved_dart;
use crate::alterations::{AlterationError, Paper, Sketch};
use crate::geometry::{Curve, Rigid, Which};
use crate::piece::{Dart, Edge, EdgeName, Piece};

/// A piece with a wedge taken from an edge into a dart, the edge itself not yet trued.
pub(in crate::alterations) struct Passed {
    pub sketch: Sketch,
    /// The motion of the panel between the wedge and the dart.
    pub motion: Rigid,
}

/// Slashes from a place on an edge to a dart's apex, and turns the panel between slash and dart
/// about the apex: the wedge that opens or closes at the edge is passed into the dart.
///
/// The dart's own edge is trued, its mouth shaped anew; the edge with the wedge is not.
pub(in crate::alterations) fn pass_wedge(
    piece: &Piece,
    dart: &Dart,
    (edge, at): (&EdgeName, f64),
    turn: f64,
) -> Result<Passed, AlterationError> {
    let missing = |what: String| AlterationError::Missing {
        what,
        advice: "the wedge runs from an edge to a dart on another edge",
    };
    let opens_on = dart
        .edge
        .clone()
        .ok_or_else(|| missing(format!("the {} dart on an edge", dart.name)))?;
    let edges = piece.outline().edges();
    let place = |name: &EdgeName| edges.iter().position(|e| e.name() == name);
    let curve = piece.outline().edge(edge).map(Edge::curve);
    let (Some(from), Some(to), Some(curve)) = (place(edge), place(&opens_on), curve) else {
        return Err(missing(format!("edges {edge} and {opens_on}")));
    };
    let apex = dart.apex();
    let (start, _) = curve.point_at(at)?;
    // The panel lies between the wedge and that leg which it meets first.
    let near = Which::second_if(from > to);
    let leg = *near.of(&dart.legs);
    let mut paper = Paper::of(piece);
    paper.slash(&Curve::polyline(&[start, apex, leg])?)?;
    let between = (start - apex).normalize() + (leg - apex).normalize();
    let panel = paper.panel_at(apex + between * 4.0)?;
    let motion = Rigid::turn_about(apex, turn);
    paper.turn(panel, motion);
    let mut sketch = paper.gather()?;
    let mut wider = dart.clone();
    *near.of_mut(&mut wider.legs) = motion.apply(leg);
    let (mut before, mut after) = without_mouth(piece, &opens_on)?;
    if near == Which::First {
        before = before.moved(&motion);
    } else {
        after = after.moved(&motion);
    }
    sketch.replace(&opens_on, with_mouth(&before, &wider, &after)?)?;
    for slot in sketch.darts_mut() {
        // What lies on the slash goes with neither panel.
        if slot.name == dart.name {
            *slot = wider.clone();
        } else if let Some(old) = piece.dart(&slot.name) {
            let swung = old
                .edge
                .as_ref()
                .and_then(place)
                .is_some_and(|at| (from.min(to) + 1..from.max(to)).contains(&at));
            *slot = if swung {
                moved_dart(old, &motion)
            } else {
                old.clone()
            };
        }
    }
    Ok(Passed { sketch, motion })
}
