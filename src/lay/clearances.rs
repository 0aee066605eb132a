//! Every way a part may lie, and what it leaves free beside every other: worked out once.

use super::rows::Room;
use super::simplified::simplified;
use super::spacing::spaced;
use super::{CutShape, LayPart, Pose};
use crate::geometry::ring::signed_area;
use crate::geometry::{Point, Vec2};

/// Places across the cloth are counted in tenths of a millimetre.
pub(super) const TENTHS: f64 = 10.0;

/// How many rows and sides are kept before all are forgotten: some twenty bytes each.
const MOST_KEPT: usize = 10_000_000;

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
    /// Its outline grown by half the gap.
    grown: Vec<Point>,
}

/// What turning a piece and laying it face down cost, in millimetres of cloth: enough to leave a
/// piece as it was drawn where nothing is gained.
const TURNED: f64 = 0.05;
const FACE_DOWN: f64 = 0.02;

impl Posed {
    pub(super) fn new(part: &LayPart, pose: Pose, gap: f64, places: [i32; 2]) -> Self {
        let (shape, shift) = part.shape.posed(pose);
        let mut grown = spaced(&shape, gap);
        grown.dedup();
        if signed_area(&grown) < 0.0 {
            grown.reverse();
        }
        let grown = simplified(grown);
        let odd = |is: bool, cost: f64| if is { cost } else { 0.0 };
        Self {
            shape,
            shift,
            places,
            odd: odd(pose.turned, TURNED) + odd(pose.face_down, FACE_DOWN),
            grown,
        }
    }
}

/// All parts in all poses, and what each leaves free beside every other, as far as it was asked for.
#[derive(Debug, Clone)]
pub(super) struct Clearances {
    posed: Vec<Posed>,
    /// For each posed part the first that has the same outline.
    same: Vec<usize>,
    rooms: Vec<Option<Box<Room>>>,
    kept: usize,
}

impl Clearances {
    pub(super) fn new(posed: Vec<Posed>) -> Self {
        let first = |one: &Posed| posed.iter().position(|other| other.grown == one.grown);
        let same: Vec<usize> = posed.iter().map(|one| first(one).unwrap_or(0)).collect();
        Self {
            rooms: vec![None; posed.len() * posed.len()],
            same,
            posed,
            kept: 0,
        }
    }

    /// How many posed parts there are.
    pub(super) fn count(&self) -> usize {
        self.posed.len()
    }

    /// A part in a pose.
    pub(super) fn posed(&self, place: usize) -> &Posed {
        at(&self.posed, place)
    }

    /// What one posed part finds free beside another, and whether that is kept the other way round.
    #[expect(
        clippy::indexing_slicing,
        reason = "whoever asks has the places from the making of the list"
    )]
    pub(super) fn room(&mut self, (one, other): (usize, usize)) -> (&mut Room, bool) {
        let (one, other) = (self.same[one], self.same[other]);
        // Of two ways to ask for the same one is kept.
        let (mine, fixed) = (one.min(other), one.max(other));
        let place = mine * self.posed.len() + fixed;
        if self.rooms[place].is_none() {
            if self.kept > MOST_KEPT {
                self.rooms.fill(None);
                self.kept = 0;
            }
            let room = Room::new(&self.posed[fixed].grown, &self.posed[mine].grown);
            self.kept += room.size();
            self.rooms[place] = Some(Box::new(room));
        }
        let room = self.rooms[place].get_or_insert_default();
        (room, one > other)
    }

    /// The shifts along the cloth at which one posed part, so many tenths of a millimetre farther
    /// across, overlaps another, each moved by `along`, are added to `found`.
    pub(super) fn add(
        &mut self,
        pair: (usize, usize),
        across: i32,
        along: f64,
        found: &mut Vec<(f64, f64)>,
    ) {
        let (room, mirrored) = self.room(pair);
        let across = f64::from(across) / TENTHS;
        if mirrored {
            let overlaps = room.overlaps(-across).into_iter().rev();
            found.extend(overlaps.map(|(low, high)| (along - high, along - low)));
        } else {
            let overlaps = room.overlaps(across).into_iter();
            found.extend(overlaps.map(|(low, high)| (low + along, high + along)));
        }
    }
}

#[expect(
    clippy::indexing_slicing,
    reason = "whoever asks has the place from the making of the list"
)]
fn at(posed: &[Posed], place: usize) -> &Posed {
    &posed[place]
}
