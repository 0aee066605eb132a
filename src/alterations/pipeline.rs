//! A chain of alterations, proved after every step.

use super::account::{Account, changes_between, kept};
use super::dart_home::AtHome;
use super::halves::{are_unlike, half};
use super::one_sided::on_both_halves;
use super::readings::Readings;
use super::refused::{EarlierStep, Reason, Refused};
use super::{Alteration, AlterationError, Altered, Promise, StructureChange};
use crate::invariants::{Tolerances, first};
use crate::piece::{BodySide, Pattern, Piece, Warning, newly_wide};

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
    let mut done = Chain {
        pattern: pattern.clone(),
        accounts: Vec::new(),
    };
    let mut before = Readings::of(pattern);
    for (index, alteration) in chain.iter().copied().enumerate() {
        let settled = settle(&done.pattern, alteration)
            .map_err(|e| refused(index, alteration, None, e.into()))?;
        let alteration = settled.as_deref().unwrap_or(alteration);
        let proof = Proof::of(&done.pattern, alteration)
            .map_err(|e| refused(index, alteration, None, e.into()))?;
        let proved = step(&done.pattern, &before, alteration, &proof);
        let (altered, after) = proved.map_err(|reason| {
            let most = most(&done.pattern, &before, alteration);
            refused(index, alteration, most, reason)
        })?;
        done.accounts.push(Account {
            alteration: alteration.name().to_owned(),
            amount: alteration.amount(),
            unit: alteration.unit(),
            changes: changes_between(&before, &after),
            kept: kept(&proof.promises, &before, &after),
        });
        let mut warnings = altered.warnings;
        let wide = newly_wide(&done.pattern, &altered.pattern);
        for warning in wide {
            if !warnings.contains(&warning) {
                warnings.push(warning);
            }
        }
        done.pattern = with_warnings(altered.pattern, warnings)
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
        before: None,
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

/// What one step has to keep on a pattern.
struct Proof {
    promises: Vec<Promise>,
    structure: StructureChange,
}

impl Proof {
    /// Of a pattern whose halves are unlike: what the alteration keeps on each of them.
    fn of(pattern: &Pattern, alteration: &dyn Alteration) -> Result<Self, AlterationError> {
        if !on_each_half(pattern, alteration) {
            return Ok(Self {
                promises: alteration.promises(pattern),
                structure: alteration.structure_change(pattern),
            });
        }
        let mut proof = Self {
            promises: Vec::new(),
            structure: StructureChange::none(),
        };
        for side in BodySide::BOTH {
            let half = half(pattern, side)?;
            let promises = alteration.promises(&half);
            let on_side = promises.iter().map(|p| p.on(side, &half));
            proof.promises.extend(on_side);
            let structure = alteration.structure_change(&half).on(side);
            proof.structure = proof.structure.and(structure);
        }
        Ok(proof)
    }
}

/// Whether the alteration is made on each half for itself.
fn on_each_half(pattern: &Pattern, alteration: &dyn Alteration) -> bool {
    are_unlike(pattern) && !alteration.takes_unlike_halves()
}

/// Alterations that take darts from where they are. Darts that are to be merged meet best at home.
const FIND_DARTS: [&str; 3] = ["dart_relocation", "dart_division", "dart_to_seam"];

/// One step, proved; what came of it, and its measures. Where it cannot be made because darts were
/// moved, they are brought home for it.
fn step(
    pattern: &Pattern,
    before: &Readings,
    alteration: &dyn Alteration,
    proof: &Proof,
) -> Result<(Altered, Readings), Reason> {
    proved(pattern, before, alteration, proof).or_else(|reason| {
        if FIND_DARTS.contains(&alteration.name()) {
            return Err(reason);
        }
        match AtHome::of(pattern) {
            _ if !matches!(reason, Reason::Alteration(_)) && in_panels(pattern).is_some() => {
                Err(divided(pattern))
            }
            Ok(Some(home)) => {
                let (altered, after) = step_at_home(&home, alteration)?;
                proof.structure.check(pattern, &altered.pattern)?;
                Ok((altered, after))
            }
            _ => Err(reason),
        }
    })
}

/// The piece that a panel seam divided, by its name before.
fn in_panels(pattern: &Pattern) -> Option<&str> {
    let divided = |piece: &&Piece| {
        let mut edges = piece.outline().edges().iter();
        edges.any(|edge| edge.name().as_str().starts_with("panel_seam"))
    };
    let panel = pattern.pieces().iter().find(divided)?.base_name();
    panel.split(' ').next()
}

/// Why a step that works on whole pieces cannot be made on panels.
fn divided(pattern: &Pattern) -> Reason {
    let piece = in_panels(pattern).unwrap_or("piece");
    Reason::Alteration(AlterationError::First {
        why: format!("the {piece} is divided into panels, which it cannot alter as one"),
        advice: "make it before dart_to_seam".to_owned(),
    })
}

/// One step with the darts of the pattern at home, proved there; then they go away again.
fn step_at_home(home: &AtHome, alteration: &dyn Alteration) -> Result<(Altered, Readings), Reason> {
    let proof = Proof::of(&home.pattern, alteration)?;
    let readings = Readings::of(&home.pattern);
    let (altered, _) = proved(&home.pattern, &readings, alteration, &proof)?;
    let altered = Altered {
        pattern: home.away_again(&altered.pattern)?,
        ..altered
    };
    if let Some(violation) = first(&altered.pattern, &Tolerances::altered()) {
        return Err(Reason::Law(Box::new(violation)));
    }
    let after = Readings::of(&altered.pattern);
    Ok((altered, after))
}

/// One step, proved; what came of it, and its measures.
fn proved(
    pattern: &Pattern,
    before: &Readings,
    alteration: &dyn Alteration,
    proof: &Proof,
) -> Result<(Altered, Readings), Reason> {
    let altered = if on_each_half(pattern, alteration) {
        on_both_halves(alteration, pattern)?
    } else {
        alteration.alter(pattern)?
    };
    proof.structure.check(pattern, &altered.pattern)?;
    if let Some(violation) = first(&altered.pattern, &Tolerances::altered()) {
        return Err(Reason::Law(Box::new(violation)));
    }
    let after = Readings::of(&altered.pattern);
    for promise in &proof.promises {
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
        let proof = Proof::of(pattern, tried.as_ref());
        proof.is_ok_and(|proof| step(pattern, before, tried.as_ref(), &proof).is_ok())
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
