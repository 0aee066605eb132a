//! What came of drafting many bodies, counted.

use blockwright::draft::{Block, DraftError, DraftOptions, Fit, SleeveLength, draft};
use blockwright::explain::Explain;
use blockwright::invariants::{Tolerances, Violation, check_all};
use blockwright::measurements::Body;
use blockwright::piece::Pattern;
use std::collections::{BTreeMap, BTreeSet};
use std::panic::{AssertUnwindSafe, catch_unwind};

pub const FITS: [Fit; 3] = [Fit::Close, Fit::Regular, Fit::Loose];

/// A block with or without sleeves.
#[derive(Debug, Clone, Copy)]
pub struct Garment {
    pub block: Block,
    pub sleeved: bool,
}

impl Garment {
    pub const fn plain(block: Block) -> Self {
        Self {
            block,
            sleeved: false,
        }
    }

    pub const fn sleeved(block: Block) -> Self {
        Self {
            block,
            sleeved: true,
        }
    }

    /// Every block as it is, and with sleeves where it has an armscye.
    pub fn all() -> Vec<Self> {
        let sleeved = Block::ALL.into_iter().filter(|b| b.has_armscye());
        let plain = Block::ALL.into_iter().map(Self::plain);
        plain.chain(sleeved.map(Self::sleeved)).collect()
    }

    pub fn name(self) -> String {
        let sleeve = if self.sleeved { " with sleeves" } else { "" };
        format!("{}{sleeve}", self.block.name())
    }
}

/// What came of one draft.
pub enum Outcome {
    Drafted(Box<Pattern>, Vec<Violation>),
    Refused(DraftError),
    Panicked,
}

pub fn attempt(garment: Garment, body: &Body, fit: Fit) -> Outcome {
    let mut options = DraftOptions::fitting(garment.block, fit);
    // Short and long in turn, so that both are tried with every block.
    options.sleeve = garment.sleeved.then_some(match fit {
        Fit::Loose => SleeveLength::Short,
        _ => SleeveLength::Long,
    });
    let drafted = catch_unwind(AssertUnwindSafe(|| {
        let pattern = draft(body, &options)?;
        let broken = check_all(&pattern, &Tolerances::drafted());
        Ok((pattern, broken))
    }));
    match drafted {
        Ok(Ok((pattern, broken))) => Outcome::Drafted(Box::new(pattern), broken),
        Ok(Err(refused)) => Outcome::Refused(refused),
        Err(_) => Outcome::Panicked,
    }
}

/// How often something happened, and the first time in full.
#[derive(Default)]
struct Count {
    times: usize,
    first: String,
}

impl Count {
    fn add(&mut self, who: &str, what: &dyn std::fmt::Display) {
        if self.times == 0 {
            self.first = format!("{who}: {what}");
        }
        self.times += 1;
    }
}

/// The outcomes of one block at one fit.
#[derive(Default)]
pub struct Tally {
    pub drafted: usize,
    pub people: usize,
    pub panicked: Vec<String>,
    refused: BTreeMap<String, Count>,
    broken: BTreeMap<&'static str, Count>,
    warned: BTreeMap<String, Count>,
}

impl Tally {
    pub fn of<'a>(
        garment: Garment,
        fit: Fit,
        people: impl Iterator<Item = (&'a str, &'a Body)>,
    ) -> Self {
        let mut tally = Self::default();
        for (who, body) in people {
            tally.add(who, &attempt(garment, body, fit));
        }
        tally
    }

    pub fn add(&mut self, who: &str, outcome: &Outcome) {
        self.people += 1;
        match outcome {
            Outcome::Drafted(pattern, broken) => {
                self.drafted += 1;
                let mut seen = BTreeSet::new();
                for violation in broken {
                    if seen.insert(violation.law()) {
                        self.broken
                            .entry(violation.law())
                            .or_default()
                            .add(who, violation);
                    }
                }
                let mut seen = BTreeSet::new();
                for warning in pattern.warnings() {
                    if seen.insert(&warning.code) {
                        let count = self.warned.entry(warning.code.clone()).or_default();
                        count.add(who, &warning.text);
                    }
                }
            }
            Outcome::Refused(error) => self
                .refused
                .entry(error.code())
                .or_default()
                .add(who, error),
            Outcome::Panicked => self.panicked.push(who.to_owned()),
        }
    }

    pub fn share_drafted(&self) -> f64 {
        self.drafted as f64 / self.people as f64
    }

    /// Laws broken, with how many patterns and the first.
    pub fn laws_broken(&self) -> Vec<String> {
        let line =
            |(law, count): (&&str, &Count)| format!("{law} x {}: {}", count.times, count.first);
        self.broken.iter().map(line).collect()
    }

    /// The lines of a report.
    pub fn report(&self, what: &str) -> String {
        let mut lines = vec![format!(
            "{what:<34} drafted {:>5} of {:>5} = {:>6.2} %",
            self.drafted,
            self.people,
            100.0 * self.share_drafted()
        )];
        for (name, count) in &self.warned {
            lines.push(format!("    warned  {name:<46} {:>5}", count.times));
        }
        let refused = self.refused.iter().map(|(n, c)| ("refused", n.as_str(), c));
        let broken = self.broken.iter().map(|(n, c)| ("broken ", *n, c));
        for (title, name, count) in refused.chain(broken) {
            lines.push(format!(
                "    {title} {name:<46} {:>5}   first {}",
                count.times, count.first
            ));
        }
        for who in &self.panicked {
            lines.push(format!("    panicked {who}"));
        }
        lines.join("\n")
    }
}
