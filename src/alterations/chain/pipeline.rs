//! A chain of alterations, proved after every step.

use super::account::{Account, changes_between, kept};
use super::halves::half;
use super::proof::{FIND_DARTS, Proof, on_each_half, step, with_warnings};
use super::readings::Readings;
use super::refused::{EarlierStep, Reason, Refused};
use super::whole::{FINISHES, Whole};
use crate::alterations::{Alteration, AlterationError, Altered};
use crate::piece::{BodySide, Measure, Pattern, newly_wide};

/// A pattern after a chain of alterations.
///
/// A chain remembers its pattern as it was before darts were merged or made into seams: steps after
/// that are made on the whole pieces, which are then divided or merged again, as a cutter would.
///
/// ```
/// use blockwright::alterations::{Abdomen, Chain, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let pattern = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let mut chain = Chain::of(pattern.clone());
/// chain.make(&Abdomen { amount: 12.0 })?;
/// assert_eq!(chain.accounts.len(), 1);
/// assert_eq!(chain, alter(&pattern, &[Box::new(Abdomen { amount: 12.0 })])?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Chain {
    /// The altered pattern; its warnings hold those of every step.
    pub pattern: Pattern,
    /// The account of every step.
    pub accounts: Vec<Account>,
    /// The pattern measured, which every step begins with.
    readings: Readings,
    whole: Option<Whole>,
}

/// What a chain came to, not how its pattern looked before it was divided.
impl PartialEq for Chain {
    fn eq(&self, other: &Self) -> bool {
        self.pattern == other.pattern && self.accounts == other.accounts
    }
}

/// What one step makes of a chain.
struct Made {
    altered: Altered,
    readings: Readings,
    whole: Option<Whole>,
    account: Account,
}

impl Chain {
    /// A chain of which no step is made yet.
    #[must_use]
    pub fn of(pattern: Pattern) -> Self {
        Self {
            readings: Readings::of(&pattern),
            pattern,
            accounts: Vec::new(),
            whole: None,
        }
    }

    /// Makes one step more; every law and every promise is checked.
    ///
    /// # Errors
    /// [`Refused`] says why the step cannot be made and what can be done about it; the chain stays.
    pub fn make(&mut self, alteration: &dyn Alteration) -> Result<(), Box<Refused>> {
        let index = self.accounts.len();
        self.go_on(alteration).map_err(|reason| {
            let most = self.most(alteration, CLOSE);
            refused(index, alteration, most, reason)
        })
    }

    /// Makes one step more, or says only why not: whoever tries many amounts looks for the most by
    /// [`Self::most`] where it needs it.
    pub(crate) fn go_on(&mut self, alteration: &dyn Alteration) -> Result<(), Reason> {
        let made = self.made(alteration)?;
        let mut warnings = made.altered.warnings;
        for warning in newly_wide(&self.pattern, &made.altered.pattern) {
            if !warnings.contains(&warning) {
                warnings.push(warning);
            }
        }
        self.pattern = with_warnings(made.altered.pattern, warnings)?;
        self.accounts.push(made.account);
        self.readings = made.readings;
        self.whole = made.whole;
        Ok(())
    }

    /// One step: on the pattern as it was before its darts were finished, or as it is.
    fn made(&self, alteration: &dyn Alteration) -> Result<Made, Reason> {
        let finishes = FINISHES.contains(&alteration.name());
        if let Some(whole) = self.whole.as_ref().filter(|_| !finishes) {
            // What moves a dart moves one that there is now, if it can.
            if FIND_DARTS.contains(&alteration.name()) {
                let here = self.made_here(alteration);
                return here
                    .or_else(|reason| self.made_before(whole, alteration).map_err(|_| reason));
            }
            let before = self.made_before(whole, alteration);
            return before.or_else(|reason| self.made_here(alteration).map_err(|_| reason));
        }
        let mut made = self.made_here(alteration)?;
        if finishes {
            made.whole = Some(match &self.whole {
                Some(whole) => whole.finished_by(alteration),
                None => Whole::of(&self.pattern, alteration),
            });
        }
        Ok(made)
    }

    /// The step made on the whole pieces, which are finished again.
    fn made_before(&self, whole: &Whole, alteration: &dyn Alteration) -> Result<Made, Reason> {
        let settled = settle(&whole.pattern, alteration)?;
        let alteration = settled.as_deref().unwrap_or(alteration);
        let readings = Readings::of(&whole.pattern);
        let proof = Proof::of(&whole.pattern, alteration)?;
        let (altered, after) = step(&whole.pattern, &readings, alteration, &proof)?;
        let whole = whole.with(with_warnings(altered.pattern, altered.warnings.clone())?);
        let finished = whole.finish()?;
        let new = Readings::of(&finished);
        let kept = kept(&proof.promises, &readings, &after);
        Ok(Made {
            account: account(alteration, (&self.readings, &new), kept),
            readings: new,
            altered: finished.into(),
            whole: Some(whole),
        })
    }

    fn made_here(&self, alteration: &dyn Alteration) -> Result<Made, Reason> {
        let settled = settle(&self.pattern, alteration)?;
        let alteration = settled.as_deref().unwrap_or(alteration);
        let proof = Proof::of(&self.pattern, alteration)?;
        let (altered, after) = step(&self.pattern, &self.readings, alteration, &proof)?;
        let kept = kept(&proof.promises, &self.readings, &after);
        Ok(Made {
            account: account(alteration, (&self.readings, &after), kept),
            readings: after,
            altered,
            whole: None,
        })
    }

    /// The largest amount of the same sign that holds, sought by halving until it is known so closely.
    pub(crate) fn most(&self, alteration: &dyn Alteration, close: f64) -> Option<f64> {
        let settled = settle(&self.pattern, alteration).ok()?;
        let alteration = settled.as_deref().unwrap_or(alteration);
        let asked = alteration.amount().filter(|a| a.is_finite() && *a != 0.0)?;
        let holds = |amount: f64| self.made(alteration.with_amount(amount).as_ref()).is_ok();
        let (mut low, mut high) = (0.0, asked);
        if !holds(asked * 1e-3) {
            return None;
        }
        while (high - low).abs() > close {
            let middle = 0.5 * (low + high);
            if holds(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Some(low)
    }
}

fn account(
    alteration: &dyn Alteration,
    (before, after): (&Readings, &Readings),
    kept: Vec<Measure>,
) -> Account {
    Account {
        alteration: alteration.name().to_owned(),
        amount: alteration.amount(),
        unit: alteration.unit(),
        changes: changes_between(before, after),
        kept,
    }
}

/// Applies alterations in order; after each, every law and every promise is checked, and that
/// every named part of the pattern is still there but for what the alteration declares.
///
/// ```
/// use blockwright::alterations::{Abdomen, Alteration, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let pattern = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let more: Box<dyn Alteration> = Box::new(Abdomen { amount: 12.0 });
/// let done = alter(&pattern, &[more])?;
/// assert_eq!(done.accounts[0].alteration, "abdomen");
/// let far: Box<dyn Alteration> = Box::new(Abdomen { amount: 900.0 });
/// let refused = alter(&pattern, &[far]).err();
/// assert!(refused.is_some_and(|refused| refused.step == 1));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`Refused`] names the first step that cannot be made, why, and the way out.
pub fn alter(pattern: &Pattern, chain: &[Box<dyn Alteration>]) -> Result<Chain, Box<Refused>> {
    let steps: Vec<&dyn Alteration> = chain.iter().map(AsRef::as_ref).collect();
    alter_in_order(pattern, &steps).map_err(|mut refused| {
        let index = refused.step.saturating_sub(1);
        refused.before = earlier_place(index, |order| {
            let steps: Option<Vec<_>> = order.iter().map(|&at| steps.get(at).copied()).collect();
            steps.is_some_and(|steps| alter_in_order(pattern, &steps).is_ok())
        })
        .and_then(|at| {
            Some(EarlierStep {
                step: at + 1,
                alteration: steps.get(at)?.name().to_owned(),
            })
        });
        refused
    })
}

/// The latest place before a refused step at which the chain up to it holds: `holds` is given
/// the order to try, as places in the chain.
pub(crate) fn earlier_place(
    refused: usize,
    mut holds: impl FnMut(&[usize]) -> bool,
) -> Option<usize> {
    (0..refused).rev().find(|&at| {
        let order: Vec<usize> = (0..at).chain([refused]).chain(at..refused).collect();
        holds(&order)
    })
}

fn alter_in_order(pattern: &Pattern, chain: &[&dyn Alteration]) -> Result<Chain, Box<Refused>> {
    let mut done = Chain::of(pattern.clone());
    for alteration in chain {
        done.make(*alteration)?;
    }
    Ok(done)
}

fn refused(
    index: usize,
    alteration: &dyn Alteration,
    most: Option<f64>,
    reason: Reason,
) -> Box<Refused> {
    Box::new(Refused {
        step: index + 1,
        alteration: alteration.name().to_owned(),
        amount: alteration.amount(),
        unit: alteration.unit(),
        most,
        before: None,
        reason,
    })
}

/// The alteration with its amount known. On unlike halves each half has its own; one amount for
/// both is found where they agree.
fn settle(
    pattern: &Pattern,
    alteration: &dyn Alteration,
) -> Result<Option<Box<dyn Alteration>>, AlterationError> {
    if !on_each_half(pattern, alteration) {
        return alteration.settled(pattern);
    }
    let [left, right] = BodySide::BOTH.map(|side| alteration.settled(&half(pattern, side)?));
    let (Some(left), Some(right)) = (left?, right?) else {
        return Ok(None);
    };
    let same = matches!((left.amount(), right.amount()), (Some(l), Some(r)) if (l - r).abs() < SAME_AMOUNT);
    Ok(same.then_some(left))
}

/// Amounts of both halves that differ by less are one amount.
const SAME_AMOUNT: f64 = 1e-6;

/// How closely the largest amount is sought, in its unit.
const CLOSE: f64 = 0.05;
