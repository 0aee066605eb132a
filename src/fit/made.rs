//! Steps made one after the other, each as far as it goes.

use super::FitSettings;
use super::lever::{LEVERS, Lever};
use crate::alterations::{Account, AlterationError, Chain, Reason, Request};

/// In how many parts a step is made at most that is too large at once.
const MOST_PARTS: u8 = 4;

/// How closely the most that holds is sought, as a share of what was wanted.
const CLOSE: f64 = 1.0 / 32.0;

/// Of the most that holds, the share that is made: just inside.
const INSIDE: f64 = 0.99;

/// A part smaller than this is not made, in millimetres or degrees.
const LEAST_PART: f64 = 0.01;

/// A step that was made.
#[derive(Debug, Clone)]
pub(super) struct MadeStep {
    /// Its place among the levers.
    pub lever: usize,
    pub request: Request,
    pub amount: f64,
    pub account: Account,
}

/// The pattern after all steps, and how far each lever got.
#[derive(Debug, Clone)]
pub(super) struct Made {
    pub chain: Chain,
    pub steps: Vec<MadeStep>,
    /// The amount made of each lever, in all.
    pub reached: Vec<f64>,
    /// Why one got no farther, as the refusal says it.
    pub refused: Vec<Option<String>>,
}

/// Makes these amounts of all levers, in their order. One that is too large at once is made in
/// parts, as a fitter would in several toiles; one that is refused is made as far as it goes, and what
/// is missing is tried again after all others.
pub(super) fn made(block: &Chain, amounts: &[f64], settings: &FitSettings) -> Made {
    let mut made = Made {
        chain: block.clone(),
        steps: Vec::new(),
        reached: vec![0.0; LEVERS.len()],
        refused: vec![None; LEVERS.len()],
    };
    for _ in 0..2 {
        for (place, (lever, amount)) in LEVERS.iter().zip(amounts).enumerate() {
            let reached = made.reached.get(place).copied().unwrap_or(0.0);
            let missing = lever.rounded(amount - reached, settings);
            if missing.abs() > 1e-9 && missing.abs() >= lever.least(settings) {
                made.go_on(place, lever, missing, settings);
            }
        }
        if made.refused.iter().all(Option::is_none) {
            break;
        }
    }
    made
}

impl Made {
    /// These steps and, on the pattern that they made, those of another toile.
    pub fn followed_by(mut self, more: Self) -> Self {
        self.steps.extend(more.steps);
        for (reached, further) in self.reached.iter_mut().zip(more.reached) {
            *reached += further;
        }
        self.chain = more.chain;
        self.refused = more.refused;
        self
    }

    /// Makes an amount of one lever, in equal parts if it is too large at once.
    fn go_on(&mut self, place: usize, lever: &Lever, amount: f64, settings: &FitSettings) {
        let least = lever.least(settings).max(LEAST_PART);
        let (mut left, mut next, mut parts) = (amount, amount, 0);
        while parts < MOST_PARTS {
            match self.step(place, lever, next) {
                Ok(()) => {
                    left -= next;
                    parts += 1;
                    if left.abs() < least {
                        self.note(place, None);
                        return;
                    }
                    next = if next.abs() < left.abs() { next } else { left };
                }
                Err((most, why)) => {
                    self.note(place, Some(why));
                    let most = most.map_or(0.0, |most| lever.rounded(INSIDE * most, settings));
                    if most.abs() < least || most.abs() >= next.abs() {
                        return;
                    }
                    let needed = (left / most)
                        .abs()
                        .ceil()
                        .min(f64::from(MOST_PARTS - parts));
                    let part = lever.rounded(left / needed, settings);
                    next = if part.abs() < most.abs() { part } else { most };
                }
            }
        }
    }

    fn note(&mut self, place: usize, why: Option<String>) {
        if let Some(slot) = self.refused.get_mut(place) {
            *slot = why;
        }
    }

    fn step(
        &mut self,
        place: usize,
        lever: &Lever,
        amount: f64,
    ) -> Result<(), (Option<f64>, String)> {
        let request = lever.step(amount).map_err(|e| (None, e.to_string()))?;
        let alteration = request.alteration().map_err(|e| (None, e.to_string()))?;
        self.chain.go_on(alteration.as_ref()).map_err(|reason| {
            // What the alteration says itself has not to be sought.
            let most = match &reason {
                Reason::Alteration(AlterationError::TooMuch { most, .. }) => Some(*most),
                _ => self.chain.most(alteration.as_ref(), amount.abs() * CLOSE),
            };
            (most, reason.to_string())
        })?;
        if let Some(slot) = self.reached.get_mut(place) {
            *slot += amount;
        }
        let account = self.chain.accounts.last().cloned();
        self.steps.extend(account.map(|account| MadeStep {
            lever: place,
            request,
            amount,
            account,
        }));
        Ok(())
    }
}
