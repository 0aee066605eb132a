//! Where on a line of the cloth a part overlaps others least.

use super::clearances::Clearances;
use super::rows::single;
use super::strip::Strip;

/// How many places of a line are looked at closely.
const CLOSELY: usize = 3;

/// A part where it lies for now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lying {
    pub(super) pose: usize,
    pub(super) posed: usize,
    pub(super) along: f64,
    /// In whole millimetres.
    pub(super) across: i32,
}

/// The farthest place of a posed part along a strip.
pub(super) fn most(strip: &Strip, posed: usize, length: f64) -> f64 {
    length - strip.gap - strip.posed(posed).shape.along()
}

/// The best place found so far.
#[derive(Clone, Copy)]
pub(super) struct Found {
    pub(super) cost: f64,
    pub(super) at: Lying,
}

/// What else lies on the cloth, seen from a part in a pose.
pub(super) struct Line<'a> {
    clearances: &'a mut Clearances,
    others: Vec<Other>,
    pose: usize,
    posed: usize,
    bounds: [f32; 2],
    /// Overlaps on the line looked at.
    met: Vec<Met>,
    ends: Vec<f32>,
}

struct Other {
    posed: usize,
    along: f32,
    across: i32,
    weight: f32,
    reach: [i32; 2],
}

struct Met {
    other: usize,
    low: f32,
    high: f32,
    /// How far the box of the other ends across, so that no depth is greater.
    beyond: f32,
}

#[expect(
    clippy::indexing_slicing,
    reason = "parts are counted from the lists that were made for them"
)]
impl<'a> Line<'a> {
    pub(super) fn new(
        strip: &'a mut Strip,
        (lying, weights): (&[Lying], &[f64]),
        length: f64,
        (part, pose, posed): (usize, usize, usize),
    ) -> Self {
        let count = lying.len();
        let mut others = Vec::with_capacity(count);
        for (at, one) in lying.iter().enumerate() {
            if at != part {
                let (room, mirrored) = strip.clearances.room((posed, one.posed));
                others.push(Other {
                    posed: one.posed,
                    along: single(one.along),
                    across: one.across,
                    weight: single(weights[part * count + at]),
                    reach: room.reach(mirrored),
                });
            }
        }
        let last = most(strip, posed, length).max(strip.gap);
        Self {
            bounds: [single(strip.gap), single(last)],
            clearances: &mut strip.clearances,
            others,
            pose,
            posed,
            met: Vec::new(),
            ends: Vec::new(),
        }
    }

    /// Looks for a better place on a line.
    pub(super) fn look(&mut self, across: i32, best: &mut Found) {
        self.met.clear();
        let [first, last] = self.bounds;
        for (at, other) in self.others.iter().enumerate() {
            let shift = across - other.across;
            let [least, most] = other.reach;
            if shift <= least || shift >= most {
                continue;
            }
            let beyond = ((shift - least).min(most - shift) as f32).max(0.0);
            let (room, mirrored) = self.clearances.room((self.posed, other.posed));
            for [low, high] in room.at(shift, mirrored).iter() {
                let (low, high) = (low + other.along, high + other.along);
                if low < last && high > first {
                    self.met.push(Met {
                        other: at,
                        low,
                        high,
                        beyond,
                    });
                }
            }
        }
        self.ends.clear();
        self.ends.extend([first, last]);
        for met in &self.met {
            self.ends.extend(
                [met.low, met.high]
                    .into_iter()
                    .filter(|at| first < *at && *at < last),
            );
        }
        // The places that look best by what is known at once, the best first.
        let mut closely = [(f32::INFINITY, 0.0_f32); CLOSELY];
        for &at in &self.ends {
            let mut cost = 0.0;
            for met in &self.met {
                if met.low < at && at < met.high {
                    let depth = (at - met.low).min(met.high - at).min(met.beyond);
                    cost += depth * self.others[met.other].weight;
                    if cost >= closely[CLOSELY - 1].0 {
                        break;
                    }
                }
            }
            if cost < closely[CLOSELY - 1].0 {
                closely[CLOSELY - 1] = (cost, at);
                closely.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
            }
            if cost <= 0.0 {
                break;
            }
        }
        for (seems, at) in closely {
            if seems.is_infinite() || best.cost <= 0.0 {
                break;
            }
            let mut cost = 0.0_f64;
            for met in &self.met {
                if met.low < at && at < met.high && cost < best.cost {
                    let other = &self.others[met.other];
                    let (room, mirrored) = self.clearances.room((self.posed, other.posed));
                    let depth = room.depth(at - other.along, across - other.across, mirrored);
                    cost += f64::from(depth * other.weight);
                }
            }
            if cost < best.cost {
                *best = Found {
                    cost,
                    at: Lying {
                        pose: self.pose,
                        posed: self.posed,
                        along: f64::from(at),
                        across,
                    },
                };
            }
        }
    }
}
