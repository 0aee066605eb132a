//! Every way a part may lie, and what it leaves free beside every other: worked out once.

use super::room_beside::{Overlaps, Striped};
use super::spacing::spaced;
use super::{CutShape, LayPart, Pose};
use kurbo::Vec2;
use std::collections::HashMap;

/// Places across the cloth are counted in tenths of a millimetre.
pub(super) const TENTHS: f64 = 10.0;

/// How many overlaps are kept before all are forgotten: some hundred bytes each.
const MOST_KEPT: usize = 300_000;

/// A part in one of its poses, its box at the origin.
#[derive(Debug, Clone)]
pub(super) struct Posed {
    pub(super) shape: CutShape,
    /// What brought the posed part there.
    pub(super) shift: Vec2,
    /// Its places across the cloth, in tenths of a millimetre, from the lowest to the highest.
    pub(super) places: [i32; 2],
    /// What the pose costs beside one that lies as drawn.
    pub(super) odd: f64,
    striped: Striped,
}

/// What turning a piece and laying it face down cost, in millimetres of cloth: enough to leave a
/// piece as it was drawn where nothing is gained.
const TURNED: f64 = 0.05;
const FACE_DOWN: f64 = 0.02;

impl Posed {
    pub(super) fn new(part: &LayPart, pose: Pose, gap: f64, places: [i32; 2]) -> Self {
        let (shape, shift) = part.shape.posed(pose);
        let striped = Striped::new(&spaced(&shape, gap));
        let odd = |is: bool, cost: f64| if is { cost } else { 0.0 };
        Self {
            shape,
            shift,
            places,
            odd: odd(pose.turned, TURNED) + odd(pose.face_down, FACE_DOWN),
            striped,
        }
    }
}

/// All parts in all poses, and the overlaps worked out so far.
#[derive(Debug, Clone)]
pub(super) struct Clearances {
    posed: Vec<Posed>,
    kept: HashMap<(usize, usize, i32), Overlaps>,
}

impl Clearances {
    pub(super) fn new(posed: Vec<Posed>) -> Self {
        Self {
            posed,
            kept: HashMap::new(),
        }
    }

    /// A part in a pose.
    pub(super) fn posed(&self, place: usize) -> &Posed {
        at(&self.posed, place)
    }

    /// The shifts along the cloth at which one posed part, so many tenths of a millimetre farther
    /// across, overlaps another, each moved by `along`, are added to `found`.
    pub(super) fn add(
        &mut self,
        (one, other): (usize, usize),
        across: i32,
        along: f64,
        found: &mut Vec<(f64, f64)>,
    ) {
        if self.kept.len() > MOST_KEPT {
            self.kept.clear();
        }
        let posed = &self.posed;
        let overlaps = self.kept.entry((one, other, across)).or_insert_with(|| {
            let [fixed, mine] = [other, one].map(|place| &at(posed, place).striped);
            mine.overlaps(f64::from(across) / TENTHS, fixed)
        });
        found.extend(
            overlaps
                .iter()
                .map(|(low, high)| (low + along, high + along)),
        );
    }
}

#[expect(
    clippy::indexing_slicing,
    reason = "whoever asks has the place from the making of the list"
)]
fn at(posed: &[Posed], place: usize) -> &Posed {
    &posed[place]
}
