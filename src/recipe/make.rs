//! Making the pattern of a recipe for a body, without drawing it.

use super::chain::{Altered, Ways, alter_in_order};
use super::prove::prove;
use super::warnings::{with_doubts, with_warnings_in};
use super::{MakeError, OwnBlock, OwnBlockError, Recipe};
use crate::allowance::CutLines;
use crate::alterations::{Account, MethodChoice, MethodOutcome};
use crate::demonstration::{Demonstration, demonstrate};
use crate::draft::draft;
use crate::measurements::Body;
use crate::piece::Pattern;
use crate::units::{Unit, speak};

/// A pattern made for a body, and how it came about.
///
/// # Guarantees
/// Both patterns keep the rules that every sewable pattern must meet; every alteration kept its
/// promises; there are cut lines exactly where the recipe has allowances.
///
/// ```
/// # use blockwright::measurements::{Body, Measurement};
/// # let body = Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
/// #     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// # ])?;
/// use blockwright::alterations::Request;
/// use blockwright::draft::Block;
/// use blockwright::recipe::{MadePattern, Recipe, Ways, make};
/// use blockwright::units::Unit;
/// let mut recipe = Recipe::new("Tunic", Block::Tunic);
/// recipe.alterations = vec![Request::new("back_length_reduction", serde_json::json!({"amount": 10}))?];
/// let made: MadePattern = make(&recipe, &body, Unit::Cm, Ways::Skipped)?;
/// assert_eq!(made.accounts[0].amount, Some(10.0));
/// assert!(made.pattern != made.drafted && made.cut.is_none());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct MadePattern {
    /// The block before any alteration: a draft, or one of one's own.
    pub drafted: Pattern,
    /// The finished pattern, with all its warnings.
    pub pattern: Pattern,
    /// What was changed on a block of one's own before it came here.
    pub earlier: Vec<Account>,
    /// The account of every alteration, in their order.
    pub accounts: Vec<Account>,
    /// The ways there were at every step that had several, if they were asked for.
    pub choices: Vec<MethodChoice>,
    /// The pattern after every alteration, if the ways were asked for: what each did to paper can
    /// be [demonstrated](crate::demonstration) with them.
    pub steps: Vec<Pattern>,
    /// The lines to cut along, if the recipe has allowances.
    pub cut: Option<CutLines>,
}

/// Makes a recipe for a body: drafts the block, or takes the one that the recipe has, proves that it can be sewn, alters it, proving it
/// again after every step, and adds the allowances. Nothing is drawn.
///
/// `unit` is the one in which warnings and errors give lengths.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::drawing::{PatternLabels, pattern_sheet};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::recipe::{Recipe, Ways, make};
/// use blockwright::render::svg;
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let recipe = Recipe::new("Bodice", Block::Bodice);
/// let made = make(&recipe, &body, Unit::Cm, Ways::Skipped)?;
/// let preview = svg::render(&pattern_sheet(&made.pattern, &PatternLabels::new(&recipe.title))?);
/// assert!(preview.starts_with("<?xml"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`MakeError`] when the block cannot be drafted for this body, the draft breaks a rule, an
/// alteration is refused, or an allowance finds no room.
pub fn make(
    recipe: &Recipe,
    body: &Body,
    unit: Unit,
    ways: Ways,
) -> Result<MadePattern, MakeError> {
    make_for(recipe, (body, body), unit, ways)
}

/// The same for a body of which the pattern is drafted and a wearer whose body in the round says the
/// amounts that are asked for with `to: form`.
///
/// ```
/// use blockwright::alterations::Request;
/// use blockwright::draft::Block;
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::recipe::{Recipe, Ways, make_for};
/// use blockwright::units::Unit;
/// let size = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
///     (Measurement::BackWaistLength, 410.0),
/// ])?;
/// let wearer = size.with_taken(Measurement::BackWaistLength, 392.0)?;
/// let mut recipe = Recipe::new("Tunic", Block::Tunic);
/// recipe.alterations = vec![Request::new("back_length_reduction", serde_json::json!({"to": "form"}))?];
/// # #[cfg(feature = "form")] {
/// let made = make_for(&recipe, (&size, &wearer), Unit::Cm, Ways::Skipped)?;
/// assert!((made.accounts[0].amount.unwrap_or(0.0) - 18.0).abs() < 1.0);
/// # }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`MakeError`], as [`make`]; and where no body in the round has the wearer's measurements.
pub fn make_for(
    recipe: &Recipe,
    (body, wearer): (&Body, &Body),
    unit: Unit,
    ways: Ways,
) -> Result<MadePattern, MakeError> {
    made(recipe, (body, wearer), unit, ways).map_err(|error| error.in_unit(unit))
}

fn made(
    recipe: &Recipe,
    (body, wearer): (&Body, &Body),
    unit: Unit,
    ways: Ways,
) -> Result<MadePattern, MakeError> {
    let drafted = match &recipe.own {
        None => draft_proved(recipe, body, unit)?,
        // It was proved when it was read.
        Some(own) => own.pattern().cloned().ok_or_else(|| unread(own))?,
    };
    let Altered {
        pattern,
        accounts,
        mut choices,
        steps,
    } = alter_in_order(&drafted, &recipe.alterations, (body, wearer), ways)?;
    let rows = choices.iter_mut().flat_map(|choice| &mut choice.table.rows);
    for row in rows {
        if let MethodOutcome::Refused(why) = &mut row.outcome {
            *why = speak(why, unit);
        }
    }
    let pattern = with_doubts(pattern, recipe, body, unit)?;
    let cut = recipe
        .allowances
        .as_ref()
        .map(|allowances| CutLines::new(&pattern, allowances))
        .transpose()?;
    Ok(MadePattern {
        drafted,
        pattern,
        earlier: recipe
            .own
            .as_ref()
            .map_or_else(Vec::new, |own| own.earlier().to_vec()),
        accounts,
        choices,
        steps,
        cut,
    })
}

fn draft_proved(recipe: &Recipe, body: &Body, unit: Unit) -> Result<Pattern, MakeError> {
    let drafted =
        draft(body, &recipe.options).map_err(|source| MakeError::Draft { source, unit })?;
    let drafted = with_warnings_in(drafted, unit)?;
    let violations = prove(&drafted);
    if !violations.is_empty() {
        return Err(MakeError::Unprovable { violations });
    }
    Ok(drafted)
}

fn unread(own: &OwnBlock) -> OwnBlockError {
    OwnBlockError::Unread {
        path: own.path().to_owned(),
    }
}

impl MadePattern {
    /// What each alteration does to paper; nothing if the ways were not asked for.
    ///
    /// ```
    /// use blockwright::recipe::MadePattern;
    /// fn cut(made: &MadePattern) -> usize { made.demonstrations().iter().map(|d| d.slashes.len()).sum() }
    /// ```
    #[must_use]
    pub fn demonstrations(&self) -> Vec<Demonstration> {
        let before = std::iter::once(&self.drafted).chain(&self.steps);
        let steps = self.accounts.iter().zip(before.zip(&self.steps));
        let shown = steps.filter_map(|(account, (before, after))| {
            demonstrate(&account.alteration, before, after).ok()
        });
        shown.collect()
    }

    /// Every account that a document of this pattern has: those of a block of one's own, then those
    /// of this recipe.
    ///
    /// ```
    /// use blockwright::recipe::MadePattern;
    /// fn alterations(made: &MadePattern) -> usize { made.all_accounts().len() }
    /// ```
    #[must_use]
    pub fn all_accounts(&self) -> Vec<Account> {
        [&self.earlier[..], &self.accounts[..]].concat()
    }
}
