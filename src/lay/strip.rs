//! Laying parts one after the other, each as near to the start of the cloth as it goes.

use super::clearances::{Clearances, Posed, TENTHS};
use super::order::{Order, Side};
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
    gap: f64,
    clearances: Clearances,
    /// The first pose of every part among all posed parts.
    first: Vec<u16>,
    /// How many poses every part has.
    pub(super) choices: Vec<usize>,
}

/// Where a part lies: which pose, and where its box begins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Place {
    pub(super) part: usize,
    posed: u16,
    across: i32,
    along: f64,
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
        let (mut posed, mut first, mut choices) = (Vec::new(), Vec::new(), Vec::new());
        for part in parts {
            first.push(u16::try_from(posed.len()).unwrap_or(u16::MAX));
            choices.push(part.poses.len());
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
                [low as i32, high.max(low) as i32]
            };
            for pose in 0..part.poses.len() {
                posed.push(Posed::new(part, pose, gap, places));
            }
        }
        Ok(Self {
            gap,
            clearances: Clearances::new(posed),
            first,
            choices,
        })
    }

    /// The parts by area, the largest first, each in its first pose.
    pub(super) fn by_area(&self) -> Order {
        let count = self.first.len();
        let area = |part: usize| self.posed(self.first[part]).shape.area();
        let mut parts: Vec<usize> = (0..count).collect();
        parts.sort_by(|a, b| area(*b).total_cmp(&area(*a)));
        Order {
            parts,
            poses: vec![0; count],
            sides: vec![Side::First; count],
        }
    }

    /// Lays all parts in an order; none as soon as the cost exceeds `most`.
    pub(super) fn lay(&mut self, order: &Order, most: f64) -> Option<Placed> {
        let mut places: Vec<Place> = Vec::with_capacity(order.parts.len());
        let (mut end, mut ends, mut odd) = (0.0_f64, 0.0, 0.0);
        let count = order.parts.len() as f64;
        for &part in &order.parts {
            let pose = u16::try_from(order.poses[part]).unwrap_or(0);
            let posed = self.first[part] + pose;
            let place = self.nearest(part, posed, order.sides[part], &places);
            let until = place.along + self.posed(posed).shape.along() + self.gap;
            end = end.max(until);
            ends += until / count;
            odd += self.posed(posed).odd;
            if cost(end, ends) + odd > most {
                return None;
            }
            places.push(place);
        }
        // To a micrometre, so that of lays equally long the tidier is known.
        end = (end * 1000.0 - ROUNDING).ceil() / 1000.0;
        Some(Placed {
            places,
            length: end,
            cost: cost(end, ends) + odd,
        })
    }

    /// The place nearest to the start of the cloth beside those taken.
    fn nearest(&mut self, part: usize, posed: u16, side: Side, taken: &[Place]) -> Place {
        let limits = side.of(self.posed(posed).places);
        let mut across = self.candidates(posed, limits, taken);
        if side.tries_last_first() {
            across.reverse();
        }
        let mut best = Place {
            part,
            posed,
            across: across[0],
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
    fn candidates(&self, posed: u16, [low, high]: [i32; 2], taken: &[Place]) -> Vec<i32> {
        let mine = self.posed(posed);
        let mut found: Vec<i32> = (low..=high).step_by(STEP).collect();
        found.push(high);
        let tenths = |mm: f64| (mm * TENTHS - ROUNDING).ceil() as i32;
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
    fn along(&mut self, posed: u16, across: i32, taken: &[Place], most: f64) -> f64 {
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

    fn posed(&self, at: u16) -> &Posed {
        &self.clearances.posed[usize::from(at)]
    }

    /// What moves the part, posed, to its place.
    pub(super) fn shift(&self, place: &Place) -> Vec2 {
        let at = Vec2::new(place.along, f64::from(place.across) / TENTHS);
        self.posed(place.posed).shift + at
    }

    /// The pose of a part in its place, as a place in its list.
    pub(super) fn pose(&self, place: &Place) -> usize {
        usize::from(place.posed - self.first[place.part])
    }
}

/// The length, and a hundredth of the middle of where the parts end: of two lays equally long,
/// the one that leaves the cloth free at its end.
fn cost(end: f64, ends: f64) -> f64 {
    end + 0.01 * ends
}
