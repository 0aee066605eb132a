//! One wearer's block, altered in pairs.

use super::differences::{measures_apart, points_apart};
use super::steps::Step;
use blockwright::alterations::{Alteration, Chain, Refused};
use blockwright::piece::Pattern;

/// Whether a pair was made, or why it was not: the step that was refused, in its own words.
pub type Made = Result<(), String>;

/// What came of one step alone.
pub struct Alone {
    pub step: usize,
    pub made: Made,
    /// How far its opposite leads from the start, in millimetres, and where.
    pub back: Option<Result<(f64, String), String>>,
}

/// What came of two steps, one after the other.
pub struct Paired {
    pub first: usize,
    pub second: usize,
    pub made: Made,
    /// By how much the other order differs, in millimetres, and in what, where both were made.
    pub other_order: Option<(f64, String)>,
}

/// A block of one wearer and every step that was made first on it.
pub struct Bench<'s> {
    start: Pattern,
    steps: &'s [Step],
    firsts: Vec<Option<Result<Chain, String>>>,
}

impl<'s> Bench<'s> {
    pub fn new(start: Pattern, steps: &'s [Step]) -> Self {
        let firsts = steps.iter().map(|_| None).collect();
        Self {
            start,
            steps,
            firsts,
        }
    }

    fn first(&mut self, step: usize) -> Result<Chain, String> {
        if let Some(made) = &self.firsts[step] {
            return made.clone();
        }
        let start = Chain::of(self.start.clone());
        let made = one(&start, self.steps[step].alteration());
        self.firsts[step] = Some(made.clone());
        made
    }

    /// A step, and its opposite after it.
    pub fn alone(&mut self, step: usize) -> Alone {
        let made = self.first(step);
        let back = match (&made, self.steps[step].opposite()) {
            (Ok(there), Some(opposite)) => {
                Some(one(there, opposite).map(|back| points_apart(&self.start, &back.pattern)))
            }
            _ => None,
        };
        let made = made.map(drop);
        Alone { step, made, back }
    }

    /// Two steps in both orders.
    pub fn pair(&mut self, [a, b]: [usize; 2]) -> Vec<Paired> {
        let mut both = |first: usize, second: usize| {
            let there = self.first(first)?;
            one(&there, self.steps[second].alteration())
        };
        let made = [both(a, b), both(b, a)];
        let exempt = [a, b].iter().any(|s| self.steps[*s].moves_a_dart());
        let apart = match &made {
            [Ok(x), Ok(y)] if !exempt => Some(measures_apart(&x.pattern, &y.pattern)),
            _ => None,
        };
        let orders = if a == b { 1 } else { 2 };
        [(a, b), (b, a)]
            .into_iter()
            .zip(made)
            .take(orders)
            .map(|((first, second), made)| Paired {
                first,
                second,
                made: made.map(drop),
                other_order: apart.clone(),
            })
            .collect()
    }
}

fn one(chain: &Chain, step: Box<dyn Alteration>) -> Result<Chain, String> {
    let mut longer = chain.clone();
    match longer.make(step.as_ref()) {
        Ok(()) => Ok(longer),
        Err(refused) => Err(kind(&refused)),
    }
}

/// Why, without the numbers that differ from wearer to wearer.
fn kind(refused: &Refused) -> String {
    let name = &refused.alteration;
    let mut text = String::new();
    for c in refused.reason.to_string().chars() {
        if c.is_ascii_digit() {
            if !text.ends_with('#') {
                text.push('#');
            }
        } else if c == '.' && text.ends_with('#') {
        } else {
            text.push(c);
        }
    }
    format!("{name}: {text}")
}
