//! Seeking a short lay.

use super::apart::keep_apart;
use super::laid::{Laid, Lay, Stretch};
use super::order::{Chance, Order};
use super::separation::Separation;
use super::strip::{Placed, Strip};
use super::{Cloth, LayError, LayPart};
use crate::progress::{Ending, Progress};
use std::collections::VecDeque;
use std::ops::ControlFlow;

/// How many rounds back a lay may be as costly as one that was accepted.
const HISTORY: usize = 40;

/// How many rounds without a gain are made before another start.
const PATIENCE: u32 = 600;

/// How many rounds lay all parts before any moves one, times the square of how many parts there are; and
/// after how many moves of each part all are laid once more.
const FIRST: u32 = 3200;
const EVERY: u32 = 8;

/// Within what of the least length a lay is as short as there can be, in millimetres.
const EVEN: f64 = 0.05;

/// A search for a short lay, a round at a time: each lays all parts once, in an order and in poses
/// that differ a little from those before, or moves one part on a strip that is shorter than the best
/// lay.
///
/// Parts are laid one after the other as near to the start of the cloth as they go, by exact
/// outlines. A changed order is kept if it is not worse than what was kept some rounds ago (late
/// acceptance; Burke and Bykov 2017, from memory); where nothing gains any more, another start is
/// made. Most rounds move a part: on a shorter strip parts overlap, and are taken apart until none
/// does (guided local search). The best is kept, proved free of overlap by its outlines alone. The same parts, seed and number of rounds give the same lay, however
/// fast the machine: who calls decides when to stop.
///
/// ```
/// use blockwright::lay::{Cloth, CutShape, LayPart, Search};
/// let cloth = Cloth::new(1000.0)?.with_gap(0.0)?;
/// let part = |name, along, across| Ok::<_, blockwright::lay::LayError>(LayPart::new(name, CutShape::rectangle(along, across)?));
/// let parts = vec![part("a", 300.0, 600.0)?, part("b", 500.0, 400.0)?, part("c", 200.0, 600.0)?];
/// let mut search = Search::new(&cloth, parts, 1)?;
/// for _ in 0..100 {
///     search.round();
/// }
/// assert_eq!(search.length(), 500.0);
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
#[derive(Debug, Clone)]
pub struct Search {
    cloth: Cloth,
    seed: u64,
    rounds: u32,
    folded: Option<OneStretch>,
    opened: Option<OneStretch>,
}

impl Search {
    /// The most parts of a lay.
    pub const MOST_PARTS: usize = 200;

    /// The rounds usually made where their number must be fixed: beyond some thousand, a lay of a
    /// dozen pieces rarely gains a hundredth.
    pub const USUAL_ROUNDS: u32 = 20_000;

    /// Lays the parts a first time, the largest first.
    ///
    /// # Errors
    /// When there is nothing to lay or too much, or a part does not fit across the cloth.
    pub fn new(cloth: &Cloth, parts: Vec<LayPart>, seed: u64) -> Result<Self, LayError> {
        let count = parts.len();
        if count > Self::MOST_PARTS {
            return Err(LayError::TooMany {
                count,
                most: Self::MOST_PARTS,
            });
        }
        if let Some(part) = parts.iter().find(|part| part.poses.is_empty()) {
            let problem = format!("{} has no pose to lie in", part.name);
            return Err(LayError::Shape { problem });
        }
        let open = |part: &LayPart| !cloth.is_folded() || part.opened;
        let (opened, folded): (Vec<LayPart>, Vec<LayPart>) = parts.into_iter().partition(open);
        if let Some(part) = opened.iter().find(|part| part.on_fold) {
            return Err(LayError::Fold {
                piece: part.name.clone(),
                problem: "the cloth is not folded there",
            });
        }
        let search = Self {
            cloth: *cloth,
            seed,
            rounds: 0,
            folded: OneStretch::new(cloth, true, folded, seed)?,
            opened: OneStretch::new(cloth, false, opened, seed)?,
        };
        if search.folded.is_none() && search.opened.is_none() {
            return Err(LayError::Nothing);
        }
        Ok(search)
    }

    /// Makes one more round; says whether the lay became shorter.
    pub fn round(&mut self) -> bool {
        let before = self.length();
        self.rounds = self.rounds.saturating_add(1);
        for stretch in [&mut self.folded, &mut self.opened].into_iter().flatten() {
            stretch.round();
        }
        self.length() < before
    }

    /// Makes rounds until there are `rounds` of them in all, and says after each how far it has
    /// come and how long the shortest lay is. Where `progress` breaks off, the shortest lay so far
    /// stands.
    ///
    /// ```
    /// use blockwright::lay::{Cloth, CutShape, LayPart, Search};
    /// use blockwright::progress::Ending;
    /// use std::ops::ControlFlow;
    /// let parts = vec![LayPart::new("a", CutShape::rectangle(300.0, 600.0)?)];
    /// let mut search = Search::new(&Cloth::new(1000.0)?, parts, 1)?;
    /// let ending = search.run(100, &mut |progress| match progress.done {
    ///     40 => ControlFlow::Break(()),
    ///     _ => ControlFlow::Continue(()),
    /// });
    /// assert_eq!((ending, search.rounds()), (Ending::Stopped, 40));
    /// # Ok::<(), blockwright::lay::LayError>(())
    /// ```
    pub fn run(
        &mut self,
        rounds: u32,
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Ending {
        while self.rounds < rounds {
            self.round();
            let come = Progress::new(u64::from(self.rounds), u64::from(rounds));
            if progress(come.with_best(self.length())).is_break() {
                return Ending::Stopped;
            }
        }
        Ending::Complete
    }

    /// How many rounds were made.
    #[must_use]
    pub fn rounds(&self) -> u32 {
        self.rounds
    }

    /// Length of the shortest lay so far, in millimetres.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.stretches().map(|s| s.best.length).sum()
    }

    /// A length that no lay can undercut, in millimetres: that of the longest piece, or of the
    /// cloth if the pieces filled it.
    #[must_use]
    pub fn least_length(&self) -> f64 {
        self.stretches().map(|s| s.least).sum()
    }

    /// Whether no shorter lay can be; more rounds may still find one that leaves more pieces as they
    /// were drawn.
    #[must_use]
    pub fn is_shortest(&self) -> bool {
        self.stretches().all(OneStretch::is_shortest)
    }

    /// The shortest lay so far.
    #[must_use]
    pub fn lay(&self) -> Lay {
        let laid = |found: &Option<OneStretch>, folded: bool| {
            found.as_ref().map(|one| Stretch {
                folded,
                width: width(&self.cloth, folded),
                length: one.best.length,
                pieces: one.pieces(&one.best),
            })
        };
        Lay {
            cloth: self.cloth,
            stretches: [laid(&self.folded, true), laid(&self.opened, false)]
                .into_iter()
                .flatten()
                .collect(),
            least_length: self.least_length(),
            seed: self.seed,
            rounds: self.rounds,
        }
    }

    fn stretches(&self) -> impl Iterator<Item = &OneStretch> {
        self.folded.iter().chain(&self.opened)
    }
}

/// Width of the cloth as it lies, in millimetres.
fn width(cloth: &Cloth, folded: bool) -> f64 {
    if folded {
        cloth.lay_width()
    } else {
        cloth.width()
    }
}

/// The search on cloth lying one way, folded or opened.
#[derive(Debug, Clone)]
struct OneStretch {
    parts: Vec<LayPart>,
    strip: Strip,
    width: f64,
    chance: Chance,
    least: f64,
    best: Placed,
    best_order: Order,
    order: Order,
    cost: f64,
    /// What the last rounds cost, the oldest first.
    history: VecDeque<f64>,
    idle: u32,
    rounds: u32,
    /// How many rounds lay all parts before any moves one, and which of those after do.
    first: u32,
    every: u32,
    separation: Option<Separation>,
}

impl OneStretch {
    fn new(
        cloth: &Cloth,
        folded: bool,
        parts: Vec<LayPart>,
        seed: u64,
    ) -> Result<Option<Self>, LayError> {
        if parts.is_empty() {
            return Ok(None);
        }
        let mut strip = Strip::new(cloth, folded, &parts)?;
        let order = strip.by_area();
        let Some(best) = strip.lay(&order, f64::INFINITY) else {
            return Ok(None);
        };
        let area: f64 = parts.iter().map(|part| part.shape.area()).sum();
        let count = u32::try_from(parts.len()).unwrap_or(1);
        let longest = parts.iter().map(|p| p.shape.along()).fold(0.0, f64::max);
        Ok(Some(Self {
            least: (area / width(cloth, folded)).max(longest + 2.0 * cloth.gap()),
            width: width(cloth, folded),
            chance: Chance::new(seed),
            best_order: order.clone(),
            cost: best.cost,
            history: vec![best.cost; HISTORY].into(),
            idle: 0,
            rounds: 0,
            first: FIRST.div_euclid(count * count),
            every: EVERY * count,
            separation: Separation::new(&strip, &best),
            parts,
            strip,
            order,
            best,
        }))
    }

    fn is_shortest(&self) -> bool {
        self.best.length <= self.least + EVEN
    }

    fn round(&mut self) {
        self.rounds = self.rounds.saturating_add(1);
        if let Some(separation) = &mut self.separation {
            if self.rounds == self.first {
                separation.begin(&self.strip, &self.best);
            }
            if self.rounds > self.first && !self.rounds.is_multiple_of(self.every) {
                let found = separation.step(&mut self.strip, &self.best, &mut self.chance);
                if let Some(placed) = found
                    && self.is_proved(&placed)
                {
                    self.best = placed;
                }
                return;
            }
        }
        if self.idle >= PATIENCE {
            self.start_again();
            return;
        }
        let order = self.order.varied(&mut self.chance);
        let earlier = self.history.front().copied();
        let most = earlier.map_or(self.cost, |earlier| self.cost.max(earlier));
        self.idle += 1;
        if let Some(placed) = self.strip.lay(&order, most) {
            if placed.cost < self.cost {
                self.idle = 0;
            }
            self.take(order, placed);
        }
        self.history.pop_front();
        self.history.push_back(self.cost);
    }

    /// Goes on from any other order, or from the best one shaken up, in turns.
    fn start_again(&mut self) {
        let order = if self.chance.below(2) == 0 {
            self.order.shuffled(&mut self.chance)
        } else {
            let shakes = 0..3 + self.chance.below(4);
            shakes.fold(self.best_order.clone(), |order, _| {
                order.varied(&mut self.chance)
            })
        };
        self.idle = 0;
        if let Some(placed) = self.strip.lay(&order, f64::INFINITY) {
            self.history = vec![placed.cost; HISTORY].into();
            self.take(order, placed);
        }
    }

    fn take(&mut self, order: Order, placed: Placed) {
        self.cost = placed.cost;
        // By length first: a lay that is longer is never the better one.
        let (new, old) = (&placed, &self.best);
        if (new.length, new.cost) < (old.length, old.cost) && self.is_proved(new) {
            self.best = placed;
            self.best_order = order.clone();
        }
        self.order = order;
    }

    /// Whether the outlines in their places keep the gap, by distances alone.
    fn is_proved(&self, placed: &Placed) -> bool {
        keep_apart(
            &self.pieces(placed),
            [placed.length, self.width],
            self.strip.gap,
        )
    }

    #[expect(
        clippy::indexing_slicing,
        reason = "a place is that of one of the parts, in one of its poses"
    )]
    fn pieces(&self, placed: &Placed) -> Vec<Laid> {
        let laid = placed.places.iter().map(|place| {
            let part = &self.parts[place.part];
            let pose = part.poses[place.pose];
            Laid::new(part, pose, self.strip.shift(place))
        });
        laid.collect()
    }
}
