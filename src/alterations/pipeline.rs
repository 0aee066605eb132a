//! A chain of alterations, proved after every step.

use super::account::{Account, changes_between};
use super::halves::are_unlike;
use super::one_sided::on_both_halves;
use super::readings::Readings;
use super::{Alteration, AlterationError, Altered, Broken, Promise, Unit};
use crate::invariants::{Tolerances, Violation, first};
use crate::piece::{Pattern, Warning};
use thiserror::Error;

/// Why a step of a chain was refused.
///
/// ```
/// use blockwright::alterations::Reason;
/// fn is_law(reason: &Reason) -> bool { matches!(reason, Reason::Law(_)) }
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum Reason {
    /// The alteration itself refused.
    #[error(transparent)]
    Alteration(#[from] AlterationError),
    /// What came out cannot be sewn.
    #[error("it breaks the law {law}: {violation}", law = .0.law(), violation = .0)]
    Law(Box<Violation>),
    /// A promise was not kept.
    #[error("it breaks its promise: {0}")]
    Promise(#[from] Broken),
}

/// A step of a chain that was refused, with the largest amount that would hold.
///
/// ```
/// use blockwright::alterations::{AlterationError, Reason, Refused, Unit};
/// let r = Refused {
///     step: 2, alteration: "shoulder_slope".into(), amount: Some(40.0), most: Some(11.0),
///     unit: Unit::Degrees, reason: Reason::Alteration(AlterationError::Setting("too steep".into())),
/// };
/// assert!(r.to_string().contains("step 2"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error("step {step}, {alteration}{}: {reason}{}", amount.map(|a| format!(" by {a:.1}{}", unit.symbol())).unwrap_or_default(), most.map(|m| format!("; the most that would hold is about {m:.1}{}", unit.symbol())).unwrap_or_default())]
pub struct Refused {
    /// Which step, counted from one.
    pub step: usize,
    /// The alteration's name.
    pub alteration: String,
    /// Its amount.
    pub amount: Option<f64>,
    /// Unit of both amounts.
    pub unit: Unit,
    /// The largest amount of the same sign that would hold, where a smaller one does.
    pub most: Option<f64>,
    /// What stands against it.
    pub reason: Reason,
}

/// A pattern after a chain of alterations.
///
/// ```
/// use blockwright::alterations::{Chain, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let done: Chain = alter(&pattern, &[])?;
/// assert_eq!(done.pattern, pattern);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Chain {
    /// The altered pattern; its warnings hold those of every step.
    pub pattern: Pattern,
    /// The account of every step.
    pub accounts: Vec<Account>,
}

/// Applies alterations in order; after each, every law and every promise is checked.
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
/// [`Refused`] names the first step that cannot be made, why, and how much would hold.
pub fn alter(pattern: &Pattern, chain: &[Box<dyn Alteration>]) -> Result<Chain, Box<Refused>> {
    let mut done = Chain {
        pattern: pattern.clone(),
        accounts: Vec::new(),
    };
    let mut before = Readings::of(pattern);
    for (index, alteration) in chain.iter().enumerate() {
        let settled = alteration
            .settled(&done.pattern)
            .map_err(|e| refused(index, alteration.as_ref(), None, e.into()))?;
        let alteration = settled.as_deref().unwrap_or(alteration.as_ref());
        let promises = alteration.promises(&done.pattern);
        let proved = step(&done.pattern, &before, alteration, &promises);
        let (altered, after) = proved.map_err(|reason| {
            let most = most(&done.pattern, &before, alteration);
            refused(index, alteration, most, reason)
        })?;
        done.accounts.push(Account {
            alteration: alteration.name().to_owned(),
            amount: alteration.amount(),
            unit: alteration.unit(),
            changes: changes_between(&before, &after),
            kept: promises
                .into_iter()
                .filter(|p| p.change == 0.0 && before.get(&p.what).is_some())
                .map(|p| p.what)
                .collect(),
        });
        done.pattern = with_warnings(altered.pattern, altered.warnings)
            .map_err(|e| refused(index, alteration, None, e.into()))?;
        before = after;
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
        reason,
    })
}

fn with_warnings(pattern: Pattern, warnings: Vec<Warning>) -> Result<Pattern, AlterationError> {
    if warnings.is_empty() {
        return Ok(pattern);
    }
    let mut parts = pattern.into_parts();
    parts.warnings.extend(warnings);
    Ok(Pattern::new(parts)?)
}

/// One step, proved; what came of it, and its measures.
fn step(
    pattern: &Pattern,
    before: &Readings,
    alteration: &dyn Alteration,
    promises: &[Promise],
) -> Result<(Altered, Readings), Reason> {
    let altered = if are_unlike(pattern) && !alteration.takes_unlike_halves() {
        on_both_halves(alteration, pattern)?
    } else {
        alteration.alter(pattern)?
    };
    if let Some(violation) = first(&altered.pattern, &Tolerances::altered()) {
        return Err(Reason::Law(Box::new(violation)));
    }
    let after = Readings::of(&altered.pattern);
    for promise in promises {
        promise.check(before, &after)?;
    }
    Ok((altered, after))
}

/// How closely the largest amount is sought, in its unit.
const CLOSE: f64 = 0.05;

/// The largest amount of the same sign that holds, sought by halving.
fn most(pattern: &Pattern, before: &Readings, alteration: &dyn Alteration) -> Option<f64> {
    let asked = alteration.amount().filter(|a| a.is_finite() && *a != 0.0)?;
    let holds = |amount: f64| {
        let tried = alteration.with_amount(amount);
        step(pattern, before, tried.as_ref(), &tried.promises(pattern)).is_ok()
    };
    let (mut low, mut high) = (0.0, asked);
    if !holds(asked * 1e-3) {
        return None;
    }
    while (high - low).abs() > CLOSE {
        let middle = 0.5 * (low + high);
        if holds(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    Some(low)
}
