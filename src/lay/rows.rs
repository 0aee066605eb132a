//! What one part leaves free beside another, a row for each millimetre across: worked out when first
//! asked for, and looked up from then on.

use super::room_beside::{Overlaps, RoomBeside};
use crate::geometry::Point;

/// How far into an overlap a shift may seem to lie where numbers were rounded, in millimetres.
const ROUNDED: f32 = 0.004;

/// A row not worked out yet, and one with no more than one overlap.
const UNKNOWN: u32 = u32::MAX;
const NO_MORE: u32 = u32::MAX - 1;

/// One row: its first overlap, and where the list of the others is.
#[derive(Debug, Clone, Copy)]
struct Row {
    first: [f32; 2],
    more: u32,
}

impl Row {
    const UNKNOWN: Self = Self {
        first: [f32::INFINITY, f32::NEG_INFINITY],
        more: UNKNOWN,
    };
    const FREE: Self = Self {
        more: NO_MORE,
        ..Self::UNKNOWN
    };
}

/// The room that an outline leaves another, in rows.
#[derive(Debug, Clone, Default)]
pub(super) struct Room {
    beside: RoomBeside,
    /// The shift across of the first row, in millimetres.
    low: i32,
    rows: Vec<Row>,
    more: Vec<Box<[[f32; 2]]>>,
}

/// Overlaps of one part with another along one row.
#[derive(Debug, Clone, Copy)]
pub(super) struct Overlapped<'a> {
    first: [f32; 2],
    more: &'a [[f32; 2]],
    mirrored: bool,
}

impl Overlapped<'_> {
    /// From where to where they overlap.
    pub(super) fn iter(&self) -> impl Iterator<Item = [f32; 2]> {
        let first = (self.first[0] < self.first[1]).then_some(self.first);
        let all = first.into_iter().chain(self.more.iter().copied());
        all.map(|[low, high]| {
            if self.mirrored {
                [-high, -low]
            } else {
                [low, high]
            }
        })
    }

    /// How far the nearest shift free of overlap lies along the row; 0 where the shift is free.
    pub(super) fn depth(&self, shift: f32) -> f32 {
        let shift = if self.mirrored { -shift } else { shift };
        let [low, high] = self.first;
        if low + ROUNDED < shift && shift < high - ROUNDED {
            return (shift - low).min(high - shift);
        }
        for [low, high] in self.more {
            if *low + ROUNDED < shift && shift < *high - ROUNDED {
                return (shift - low).min(high - shift);
            }
        }
        0.0
    }
}

impl Room {
    /// What one outline, which stays, leaves another.
    pub(super) fn new(fixed: &[Point], mine: &[Point]) -> Self {
        let beside = RoomBeside::new(fixed, mine);
        let [low, high] = beside.levels();
        let (low, high) = (whole(low) - 1, whole(high) + 1);
        let count = usize::try_from(high - low + 1).unwrap_or(1);
        Self {
            beside,
            low,
            rows: vec![Row::UNKNOWN; count],
            more: Vec::new(),
        }
    }

    /// How much is kept of it: rows and sides.
    pub(super) fn size(&self) -> usize {
        self.rows.len() + 2 * self.beside.count()
    }

    /// The shifts along the cloth at which the moved outline, at a shift across, overlaps the other.
    pub(super) fn overlaps(&self, across: f64) -> Overlaps {
        self.beside.overlaps(across)
    }

    /// The least and the greatest shift across at which they may overlap, in millimetres.
    pub(super) fn reach(&self, mirrored: bool) -> [i32; 2] {
        let high = self.low + i32::try_from(self.rows.len()).unwrap_or(1) - 1;
        if mirrored {
            [-high, -self.low]
        } else {
            [self.low, high]
        }
    }

    /// The overlaps at a shift across.
    pub(super) fn at(&mut self, across: i32, mirrored: bool) -> Overlapped<'_> {
        let across = if mirrored { -across } else { across };
        let place = usize::try_from(across - self.low).ok();
        let Some(row) = place.and_then(|place| self.rows.get_mut(place)) else {
            return Overlapped {
                first: Row::FREE.first,
                more: &[],
                mirrored,
            };
        };
        if row.more == UNKNOWN {
            let found = self.beside.overlaps(f64::from(across));
            let mut found = found.iter().map(|(low, high)| outward(*low, *high));
            *row = Row::FREE;
            if let Some(first) = found.next() {
                row.first = first;
            }
            let more: Box<[[f32; 2]]> = found.collect();
            if !more.is_empty() {
                row.more = u32::try_from(self.more.len()).unwrap_or(NO_MORE);
                self.more.push(more);
            }
        }
        let (first, more) = (row.first, usize::try_from(row.more).ok());
        let more = more.and_then(|more| self.more.get(more));
        Overlapped {
            first,
            more: more.map_or(&[], |more| more),
            mirrored,
        }
    }

    /// How deep one lies in the other, in millimetres: about the least shift in any direction that
    /// frees them.
    pub(super) fn depth(&mut self, shift: f32, across: i32, mirrored: bool) -> f32 {
        let mut least = self.at(across, mirrored).depth(shift);
        for way in [-1, 1] {
            let (mut step, mut last) = (1_i32, 0_i32);
            while (step as f32) < least {
                let beside = self.at(across + way * step, mirrored).depth(shift);
                if beside <= 0.0 {
                    // Free here, and not where it was looked before: the nearest free row between.
                    let (mut taken, mut free) = (last, step);
                    while free - taken > 1 {
                        let middle = i32::midpoint(taken, free);
                        if self.at(across + way * middle, mirrored).depth(shift) > 0.0 {
                            taken = middle;
                        } else {
                            free = middle;
                        }
                    }
                    least = least.min(free as f32);
                    break;
                }
                let rise = step as f32;
                least = least.min((rise * rise + beside * beside).sqrt());
                last = step;
                step += 1 + step.div_euclid(4);
            }
        }
        least
    }
}

/// A number as rows keep it.
#[expect(
    clippy::cast_possible_truncation,
    reason = "a thousandth of a millimetre is left on any cloth"
)]
pub(super) const fn single(mm: f64) -> f32 {
    mm as f32
}

/// Outward to the next numbers that are kept, so that rounding hides no overlap.
#[expect(
    clippy::cast_possible_truncation,
    reason = "rounded outward; no cloth is too long for it"
)]
fn outward(low: f64, high: f64) -> [f32; 2] {
    [(low as f32).next_down(), (high as f32).next_up()]
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "no piece is wider than cloth"
)]
const fn whole(mm: f64) -> i32 {
    mm as i32
}
