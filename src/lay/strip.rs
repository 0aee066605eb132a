//! Laying parts one after the other, each as near to the start of the cloth as it goes.

use super::clearances::{Clearances, Posed, TENTHS};
use super::order::{Order, Side, Turn};
use super::{Cloth, LayError, LayPart};
use kurbo::Vec2;

/// Steps across the cloth in which places are tried, in tenths of a millimetre.
const STEP: usize = 100;

/// Steps in which the best place is then bettered.
const FINER: [i32; 4] = [50, 20, 10, 5];

/// How much nearer to the start a place must lie to be better, in millimetres.
const NEARER: f64 = 0.01;

/// What rounding may take, in millimetres and in tenths of one.
const ROUNDING: f64 = 1e-6;

/// A stretch of cloth with the parts to be laid on it.
#[derive(Debug, Clone)]
pub(super) struct Strip {
    pub(super) gap: f64,
    pub(super) clearances: Clearances,
    /// The first pose of every part among all posed parts, and how many it has.
    pub(super) parts: Vec<(usize, usize)>,
}

/// Where a part lies: which pose, and where its box begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Place {
    pub(super) part: usize,
    /// Its pose, as a place in its list and in the list of all.
    pub(super) pose: usize,
    pub(super) posed: usize,
    /// In tenths of a millimetre.
    pub(super) across: i32,
    pub(super) along: f64,
}

/// All parts of a strip in their places.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Placed {
    pub(super) places: Vec<Place>,
    /// Length of cloth used, in millimetres.
    pub(super) length: f64,
    /// What is kept small: the length, a little how far along the parts lie, and how many lie
    /// other than drawn.
    pub(super) cost: f64,
}

impl Strip {
    /// Parts to be laid on cloth folded or opened.
    pub(super) fn new(cloth: &Cloth, folded: bool, parts: &[LayPart]) -> Result<Self, LayError> {
        let width = if folded {
            cloth.lay_width()
        } else {
            cloth.width()
        };
        let gap = cloth.gap();
        let (mut posed, mut of_parts) = (Vec::new(), Vec::new());
        for part in parts {
            of_parts.push((posed.len(), part.poses.len()));
            let across = part.shape.across();
            // On the fold it keeps the gap on one side only.
            let sides = if part.on_fold { 1.0 } else { 2.0 };
            let needs = across + sides * gap;
            if needs > width + ROUNDING {
                let times = if folded { 2.0 } else { 1.0 };
                return Err(LayError::TooNarrow {
                    piece: part.name.clone(),
                    across,
                    needs,
                    gives: width,
                    folded,
                    cloth: times * needs,
                    open_fits: folded && !part.on_fold && needs <= cloth.width(),
                });
            }
            let places = if part.on_fold {
                [0, 0]
            } else {
                let low = (gap * TENTHS - ROUNDING).ceil();
                let high = ((width - gap - across) * TENTHS + ROUNDING).floor();
                // Within a tenth of the whole width there is one place: the lower.
                [whole(low), whole(high.max(low))]
            };
            for pose in &part.poses {
                posed.push(Posed::new(part, *pose, gap, places));
            }
        }
        Ok(Self {
            gap,
            clearances: Clearances::new(posed),
            parts: of_parts,
        })
    }

    /// The parts by area, the largest first, each in its first pose.
    pub(super) fn by_area(&self) -> Order {
        let area = |first: usize| self.posed(first).shape.area();
        let mut turns: Vec<(f64, Turn)> = Vec::with_capacity(self.parts.len());
        for (part, (first, poses)) in self.parts.iter().enumerate() {
            let turn = Turn {
                part,
                first: *first,
                poses: *poses,
                pose: 0,
                side: Side::First,
            };
            turns.push((area(*first), turn));
        }
        turns.sort_by(|a, b| b.0.total_cmp(&a.0));
        Order {
            turns: turns.into_iter().map(|(_, turn)| turn).collect(),
        }
    }

    /// Lays all parts in an order; none as soon as the cost exceeds `most`.
    pub(super) fn lay(&mut self, order: &Order, most: f64) -> Option<Placed> {
        let mut places: Vec<Place> = Vec::with_capacity(order.turns.len());
        let (mut end, mut ends, mut odd) = (0.0_f64, 0.0, 0.0);
        let count = order.turns.len() as f64;
        for turn in &order.turns {
            let place = self.nearest(turn, &places);
            let posed = self.posed(place.posed);
            let until = place.along + posed.shape.along() + self.gap;
            end = end.max(until);
            ends += until / count;
            odd += posed.odd;
            if cost(end, ends) + odd > most {
                return None;
            }
            places.push(place);
        }
        Some(Self::placed(places, end, ends, odd))
    }

    fn placed(places: Vec<Place>, end: f64, ends: f64, odd: f64) -> Placed {
        // To a micrometre, so that of lays equally long the tidier is known.
        let end = (end * 1000.0 - ROUNDING).ceil() / 1000.0;
        Placed {
            places,
            length: end,
            cost: cost(end, ends) + odd,
        }
    }

    /// What it costs to have the parts in those places.
    pub(super) fn judged(&self, places: Vec<Place>) -> Placed {
        let count = places.len() as f64;
        let (mut end, mut ends, mut odd) = (0.0_f64, 0.0, 0.0);
        for place in &places {
            let posed = self.posed(place.posed);
            let until = place.along + posed.shape.along() + self.gap;
            end = end.max(until);
            ends += until / count;
            odd += posed.odd;
        }
        Self::placed(places, end, ends, odd)
    }

    /// The place nearest to the start of the cloth beside those taken.
    fn nearest(&mut self, turn: &Turn, taken: &[Place]) -> Place {
        let posed = turn.first + turn.pose;
        let limits = turn.side.of(self.posed(posed).places);
        let mut across = self.candidates(posed, limits, taken);
        if turn.side.tries_last_first() {
            across.reverse();
        }
        let mut best = Place {
            part: turn.part,
            pose: turn.pose,
            posed,
            across: across.first().copied().unwrap_or(limits[0]),
            along: f64::INFINITY,
        };
        for across in across {
            let along = self.along(posed, across, taken, best.along - NEARER);
            if along < best.along - NEARER {
                best = Place {
                    across,
                    along,
                    ..best
                };
            }
        }
        let [low, high] = limits;
        for step in FINER {
            for step in [-step, step] {
                loop {
                    let across = (best.across + step).min(high).max(low);
                    let along = self.along(posed, across, taken, best.along - NEARER);
                    if along >= best.along - NEARER {
                        break;
                    }
                    best = Place {
                        across,
                        along,
                        ..best
                    };
                }
            }
        }
        best
    }

    /// Places across the cloth worth trying: in steps, and where boxes touch or lie level.
    fn candidates(&self, posed: usize, [low, high]: [i32; 2], taken: &[Place]) -> Vec<i32> {
        let mine = self.posed(posed);
        let mut found: Vec<i32> = (low..=high).step_by(STEP).collect();
        found.push(high);
        let tenths = |mm: f64| whole((mm * TENTHS - ROUNDING).ceil());
        let own = tenths(mine.shape.across());
        let gap = tenths(self.gap * 1.01);
        for place in taken {
            let theirs = tenths(self.posed(place.posed).shape.across());
            let beside = [
                place.across + theirs + gap,
                place.across - own - gap,
                place.across,
                place.across + theirs - own,
            ];
            found.extend(beside.into_iter().filter(|a| (low..=high).contains(a)));
        }
        found.sort_unstable();
        found.dedup();
        found
    }

    /// How far along the cloth a part lies at a place across it; at least `most` if it is not
    /// less.
    fn along(&mut self, posed: usize, across: i32, taken: &[Place], most: f64) -> f64 {
        let mut overlaps: Vec<(f64, f64)> = Vec::with_capacity(2 * taken.len());
        for place in taken {
            let shift = across - place.across;
            self.clearances
                .add((posed, place.posed), shift, place.along, &mut overlaps);
        }
        overlaps.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
        let mut along = self.gap;
        for (low, high) in overlaps {
            if low >= along - ROUNDING || along >= most {
                break;
            }
            along = along.max(high);
        }
        along
    }

    pub(super) fn posed(&self, at: usize) -> &Posed {
        self.clearances.posed(at)
    }

    /// What moves the part, posed, to its place.
    pub(super) fn shift(&self, place: &Place) -> Vec2 {
        let at = Vec2::new(place.along, f64::from(place.across) / TENTHS);
        self.posed(place.posed).shift + at
    }
}

/// A whole number of tenths of a millimetre.
#[expect(
    clippy::cast_possible_truncation,
    reason = "no cloth is two hundred kilometres wide, and no number becomes none"
)]
const fn whole(tenths: f64) -> i32 {
    tenths as i32
}

/// The length, and a hundredth of the middle of where the parts end: of two lays equally long,
/// the one that leaves the cloth free at its end.
fn cost(end: f64, ends: f64) -> f64 {
    end + 0.01 * ends
}
