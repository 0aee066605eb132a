//! Overlaps on a shorter strip, taken apart.
//!
//! The strip is made shorter than the best lay, parts may overlap for a while, and one part after the
//! other is moved to where it overlaps least; overlaps that stay count more and more, until parts leave
//! the places that look good and are not (overlap minimisation by guided local search: Egeblad, Nielsen
//! and Odgaard 2007; Umetani et al. 2009, who measure how deep parts lie in one another; Voudouris and
//! Tsang 1999 for the weights; all from memory). Places are sought along whole lines of the cloth.

use super::line::{Found, Line, Lying, most};
use super::order::Chance;
use super::pushed::pushed;
use super::rows::single;
use super::strip::{Place, Placed, Strip};

/// How much of its length the strip is first shortened by, and at least.
const SHORTER: f64 = 0.02;
const LEAST_SHORTER: f64 = 0.0008;

/// How many sweeps may fail to lessen the overlaps before another start is made.
const PATIENCE: u32 = 100;

/// How many lines are looked at across the cloth.
const LINES: i32 = 18;

/// Steps in which the best line is then bettered, in millimetres.
const FINER: [i32; 5] = [16, 7, 3, 2, 1];

/// Into how many steps the strip is divided where parts are put anywhere.
const STEPS_ALONG: usize = 10_000;

/// The separation of overlaps on a strip of a length.
#[derive(Debug, Clone)]
pub(super) struct Separation {
    length: f64,
    shorter: f64,
    lying: Vec<Lying>,
    weights: Vec<f64>,
    /// The parts still to be looked at in this sweep.
    turns: Vec<usize>,
    /// The least sum of overlaps on this strip, where parts lay then, and for how many sweeps since.
    least: f64,
    least_lying: Vec<Lying>,
    idle: u32,
    fails: u32,
}

#[expect(
    clippy::indexing_slicing,
    reason = "parts are counted from the lists that were made for them"
)]
impl Separation {
    /// From a lay without overlaps; none where the places of a part hold no whole millimetre.
    pub(super) fn new(strip: &Strip, best: &Placed) -> Option<Self> {
        let count = strip.parts.len();
        let all = (0..strip.clearances.count()).all(|posed| span(strip, posed).is_some());
        (all && count > 1).then(|| {
            let mut new = Self {
                length: best.length,
                shorter: SHORTER,
                lying: Vec::new(),
                weights: vec![1.0; count * count],
                turns: Vec::new(),
                least: f64::INFINITY,
                least_lying: Vec::new(),
                idle: 0,
                fails: 0,
            };
            new.begin(strip, best);
            new
        })
    }

    /// Begins on a strip shorter than a lay.
    pub(super) fn begin(&mut self, strip: &Strip, from: &Placed) {
        let mut places = from.places.clone();
        places.sort_unstable_by_key(|place| place.part);
        self.lying = places
            .iter()
            .map(|place| Lying {
                pose: place.pose,
                posed: place.posed,
                along: place.along,
                across: near(strip, place.posed, place.across),
            })
            .collect();
        self.length = from.length * (1.0 - self.shorter);
        self.fit(strip);
    }

    /// Brings all parts onto the strip, and forgets what was weighed.
    fn fit(&mut self, strip: &Strip) {
        for one in &mut self.lying {
            one.along = one
                .along
                .min(most(strip, one.posed, self.length))
                .max(strip.gap);
        }
        self.weights.fill(1.0);
        self.turns.clear();
        self.least = f64::INFINITY;
        self.idle = 0;
    }

    /// Moves one part, or weighs the overlaps at the end of a sweep; a shorter lay where one was found.
    pub(super) fn step(
        &mut self,
        strip: &mut Strip,
        best: &Placed,
        chance: &mut Chance,
    ) -> Option<Placed> {
        while let Some(part) = self.turns.pop() {
            if self.overlap(strip, part) > 0.0 {
                self.move_part(strip, part, chance);
                return None;
            }
        }
        self.end_sweep(strip, best, chance)
    }

    fn end_sweep(
        &mut self,
        strip: &mut Strip,
        best: &Placed,
        chance: &mut Chance,
    ) -> Option<Placed> {
        let count = self.lying.len();
        let (mut sum, mut deepest) = (0.0, 0.0_f64);
        let mut found = Vec::new();
        for one in 0..count {
            for other in 0..one {
                let depth = self.depth(strip, one, other);
                if depth > 0.0 {
                    found.push((one, other, depth));
                    sum += depth;
                    deepest = deepest.max(depth);
                }
            }
        }
        if found.is_empty() {
            return self.taken_apart(strip, best, chance);
        }
        for weight in &mut self.weights {
            *weight = (*weight * 0.95).max(1.0);
        }
        for (one, other, depth) in found {
            let times = 1.2 + 0.8 * depth / deepest;
            for at in [one * count + other, other * count + one] {
                self.weights[at] *= times;
            }
        }
        if sum < 0.98 * self.least {
            self.idle = 0;
        } else {
            self.idle += 1;
        }
        if sum < self.least {
            self.least = sum;
            self.least_lying.clone_from(&self.lying);
        }
        if self.idle > PATIENCE {
            self.fails += 1;
            self.start_again(strip, best, chance);
        }
        self.shuffle(chance);
        None
    }

    fn shuffle(&mut self, chance: &mut Chance) {
        self.turns = (0..self.lying.len()).collect();
        for last in (1..self.turns.len()).rev() {
            self.turns.swap(last, chance.below(last + 1));
        }
    }

    /// No part overlaps another: pushed together, the lay is whole.
    fn taken_apart(
        &mut self,
        strip: &mut Strip,
        best: &Placed,
        chance: &mut Chance,
    ) -> Option<Placed> {
        let places: Vec<Place> = self
            .lying
            .iter()
            .enumerate()
            .map(|(part, one)| Place {
                part,
                pose: one.pose,
                posed: one.posed,
                across: one.across * 10,
                along: one.along,
            })
            .collect();
        let placed =
            pushed(&mut strip.clearances, strip.gap, &places).map(|places| strip.judged(places));
        match placed {
            Some(placed) if placed.length < best.length => {
                self.fails = 0;
                self.begin(strip, &placed);
                Some(placed)
            }
            _ => {
                self.start_again(strip, best, chance);
                None
            }
        }
    }

    /// Another start: from the best lay or from where overlaps were least, with parts exchanged, or now
    /// and then from anywhere.
    fn start_again(&mut self, strip: &Strip, best: &Placed, chance: &mut Chance) {
        if self.fails > 0 {
            self.shorter = (self.shorter * 0.6).max(LEAST_SHORTER);
        }
        if self.least_lying.is_empty() || chance.below(2) == 0 {
            self.begin(strip, best);
        } else {
            self.length = best.length * (1.0 - self.shorter);
            self.lying = self.least_lying.clone();
        }
        let count = self.lying.len();
        if chance.below(10) == 0 {
            for part in 0..count {
                self.put_anywhere(strip, part, chance);
            }
        } else {
            for _ in 0..chance.below(3) {
                let (one, other) = (chance.below(count), chance.below(count));
                let (a, b) = (self.lying[one], self.lying[other]);
                self.put(strip, one, b.along, b.across);
                self.put(strip, other, a.along, a.across);
            }
        }
        self.fit(strip);
    }

    /// Puts a part anywhere on the strip, in any pose.
    fn put_anywhere(&mut self, strip: &Strip, part: usize, chance: &mut Chance) {
        let (first, poses) = strip.parts[part];
        let pose = chance.below(poses);
        let posed = first + pose;
        let [low, high] = span(strip, posed).unwrap_or([0, 0]);
        let width = usize::try_from(high - low + 1).unwrap_or(1);
        let across = low + i32::try_from(chance.below(width)).unwrap_or(0);
        let along = self.length * chance.below(STEPS_ALONG) as f64 / STEPS_ALONG as f64;
        self.lying[part] = Lying {
            pose,
            posed,
            along,
            across,
        };
    }

    /// Puts a part near a place.
    fn put(&mut self, strip: &Strip, part: usize, along: f64, across: i32) {
        let one = &mut self.lying[part];
        let [low, high] = span(strip, one.posed).unwrap_or([0, 0]);
        one.across = across.min(high).max(low);
        one.along = along;
    }

    fn depth(&self, strip: &mut Strip, one: usize, other: usize) -> f64 {
        let (a, b) = (self.lying[one], self.lying[other]);
        let (room, mirrored) = strip.clearances.room((a.posed, b.posed));
        let shift = single(a.along - b.along);
        f64::from(room.depth(shift, a.across - b.across, mirrored))
    }

    /// How much a part overlaps others, weighed.
    fn overlap(&self, strip: &mut Strip, part: usize) -> f64 {
        let count = self.lying.len();
        let others = (0..count).filter(|other| *other != part);
        let mut sum = 0.0;
        for other in others {
            sum += self.weights[part * count + other] * self.depth(strip, part, other);
        }
        sum
    }

    /// Moves a part to where it overlaps least.
    fn move_part(&mut self, strip: &mut Strip, part: usize, chance: &mut Chance) {
        let (first, poses) = strip.parts[part];
        let was = self.lying[part];
        let mut best = Found {
            cost: self.overlap(strip, part),
            at: was,
        };
        let mut tried = vec![was.pose];
        if poses > 1 {
            let other = chance.below(poses - 1);
            tried.push(if other >= was.pose { other + 1 } else { other });
        }
        for pose in tried {
            let posed = first + pose;
            let Some([low, high]) = span(strip, posed) else {
                continue;
            };
            let others = (self.lying.as_slice(), self.weights.as_slice());
            let mut line = Line::new(strip, others, self.length, (part, pose, posed));
            let mut mine = Found {
                cost: f64::INFINITY,
                at: was,
            };
            let step = (high - low).div_euclid(LINES).max(1);
            let offset =
                i32::try_from(chance.below(usize::try_from(step).unwrap_or(1))).unwrap_or(0);
            let mut across = low + offset;
            while across <= high {
                line.look(across, &mut mine);
                across += step;
            }
            for end in [low, high, was.across.min(high).max(low)] {
                line.look(end, &mut mine);
            }
            if mine.cost > 0.0 {
                for step in FINER {
                    for way in [-step, step] {
                        let across = mine.at.across + way;
                        if (low..=high).contains(&across) {
                            line.look(across, &mut mine);
                        }
                    }
                }
            }
            if mine.cost < best.cost {
                best = mine;
            }
            if best.cost <= 0.0 {
                break;
            }
        }
        self.lying[part] = best.at;
    }
}

/// The least and the greatest place of a posed part across the cloth, in whole millimetres.
fn span(strip: &Strip, posed: usize) -> Option<[i32; 2]> {
    let [low, high] = strip.posed(posed).places;
    let (low, high) = ((low + 9).div_euclid(10), high.div_euclid(10));
    (low <= high).then_some([low, high])
}

fn near(strip: &Strip, posed: usize, tenths: i32) -> i32 {
    let [low, high] = span(strip, posed).unwrap_or([0, 0]);
    (tenths + 5).div_euclid(10).min(high).max(low)
}
