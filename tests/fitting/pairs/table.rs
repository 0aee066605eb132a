//! The figures of a sweep, by pair and block.

use super::steps::Step;
use super::sweep::{Alone, Made, Paired};
use blockwright::draft::Block;
use std::collections::BTreeMap;

/// How often something was made, and how far it was off at worst.
#[derive(Default)]
pub struct Figures {
    pub tried: usize,
    pub made: usize,
    refused: BTreeMap<String, usize>,
    /// How many were compared with what they should be, and how many of them came to it.
    compared: usize,
    close: usize,
    /// The worst difference in millimetres, and where.
    pub worst: (f64, String),
}

/// How closely an amount and its opposite lead back to the start, and one order comes to what the
/// other does, in millimetres.
const BACK: f64 = 0.05;
const ORDER: f64 = 0.5;

impl Figures {
    fn add(&mut self, made: &Made) {
        self.tried += 1;
        match made {
            Ok(()) => self.made += 1,
            Err(why) => *self.refused.entry(why.clone()).or_default() += 1,
        }
    }

    fn differs(&mut self, (by, what): &(f64, String), within: f64) {
        self.compared += 1;
        self.close += usize::from(*by <= within);
        if *by > self.worst.0 {
            self.worst = (*by, what.clone());
        }
    }

    pub fn share(&self) -> f64 {
        100.0 * self.made as f64 / self.tried.max(1) as f64
    }

    /// The most frequent reason.
    fn top(&self) -> String {
        let top = self.refused.iter().max_by_key(|(_, count)| **count);
        top.map_or(String::new(), |(why, count)| format!("{count} x {why}"))
    }
}

/// Everything that a sweep found.
#[derive(Default)]
pub struct Findings {
    /// By block and step.
    pub alone: BTreeMap<(&'static str, usize), Figures>,
    /// There and back, by block and step.
    pub back: BTreeMap<(&'static str, usize), Figures>,
    /// By block and ordered pair.
    pub pairs: BTreeMap<(&'static str, usize, usize), Figures>,
}

impl Findings {
    pub fn add_alone(&mut self, block: Block, found: &Alone) {
        let key = (block.name(), found.step);
        self.alone.entry(key).or_default().add(&found.made);
        if let Some(back) = &found.back {
            let figures = self.back.entry(key).or_default();
            figures.add(&back.as_ref().map(|_| ()).map_err(String::clone));
            if let Ok(apart) = back {
                figures.differs(apart, BACK);
            }
        }
    }

    pub fn add_pair(&mut self, block: Block, found: &Paired) {
        let key = (block.name(), found.first, found.second);
        let figures = self.pairs.entry(key).or_default();
        figures.add(&found.made);
        if let Some(apart) = &found.other_order {
            figures.differs(apart, ORDER);
        }
    }

    /// The share made of all pairs of which that is true, in percent.
    pub fn share_of(&self, counts: impl Fn(usize, usize) -> bool) -> f64 {
        let pairs = self.pairs.iter().filter(|((_, a, b), _)| counts(*a, *b));
        let (tried, made) = pairs.fold((0, 0), |(t, m), (_, f)| (t + f.tried, m + f.made));
        100.0 * made as f64 / f64::from(u32::try_from(tried.max(1)).unwrap())
    }

    /// The shares, in percent, of steps that their opposite takes back, and of pairs that come to
    /// the same in both orders.
    pub fn shares_close(&self) -> [f64; 2] {
        let share = |figures: &mut dyn Iterator<Item = &Figures>| {
            let sums = figures.fold((0, 0), |(t, m), f| (t + f.compared, m + f.close));
            100.0 * sums.1 as f64 / sums.0.max(1) as f64
        };
        [
            share(&mut self.back.values()),
            share(&mut self.pairs.values()),
        ]
    }

    /// Lines of the whole table.
    pub fn lines(&self, steps: &[Step]) -> Vec<String> {
        let mut lines = vec!["block | step alone | made % | there and back mm | refused".into()];
        for ((block, step), figures) in &self.alone {
            let back = self.back.get(&(*block, *step));
            let off = back.map_or(String::new(), |b| {
                format!("{:.3} {} ({:.1} %)", b.worst.0, b.worst.1, b.share())
            });
            let why = format!(
                "{} {}",
                figures.top(),
                back.map_or(String::new(), Figures::top)
            );
            let name = &steps[*step].name;
            lines.push(format!(
                "{block} | {name} | {:.1} | {off} | {why}",
                figures.share()
            ));
        }
        lines.push("block | first, then second | made % | other order mm | refused".into());
        for ((block, first, second), figures) in &self.pairs {
            lines.push(format!(
                "{block} | {}, {} | {:.1} | {:.3} {} | {}",
                steps[*first].name,
                steps[*second].name,
                figures.share(),
                figures.worst.0,
                figures.worst.1,
                figures.top()
            ));
        }
        let (tried, made) = self
            .pairs
            .values()
            .fold((0, 0), |(t, m), f| (t + f.tried, m + f.made));
        lines.push(format!(
            "{tried} pairs tried, {:.3} % made; of {} ordered pairs on blocks {} are made for 99 %",
            100.0 * made as f64 / tried.max(1) as f64,
            self.pairs.len(),
            self.pairs.values().filter(|f| f.share() >= 99.0).count()
        ));
        lines
    }
}
