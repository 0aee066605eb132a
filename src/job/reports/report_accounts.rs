//! What was altered, for programs.

use serde::Serialize;

use super::rounding::rounded;
use crate::alterations::{Account, Change};
use crate::piece::{Measure, MeasureUnit};

/// The account of one alteration.
///
/// ```
/// use blockwright::job::AccountReport;
/// let account = AccountReport {
///     alteration: "back_length_reduction".into(), amount: Some(25.0), unit: "mm",
///     changes: vec![], kept: vec![], kept_measures: vec![],
/// };
/// assert_eq!(account.unit, "mm");
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AccountReport {
    /// The alteration's name.
    pub alteration: String,
    /// Its amount, where it has one.
    pub amount: Option<f64>,
    /// Unit of the amount: `mm` or `deg`.
    pub unit: &'static str,
    /// Everything that is different.
    pub changes: Vec<ChangeReport>,
    /// What was promised to stay, and did, in words.
    pub kept: Vec<String>,
    /// The same as measures, in the same order.
    pub kept_measures: Vec<Measure>,
}

/// One thing that an alteration changed.
///
/// ```
/// use blockwright::job::ChangeReport;
/// use blockwright::piece::{EdgeName, Measure};
/// let centre = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// let change = ChangeReport {
///     what: centre.to_string(), measure: centre, before: Some(980.0), after: Some(955.0),
///     difference: Some(-25.0), unit: "mm",
/// };
/// assert_eq!(change.difference, Some(-25.0));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChangeReport {
    /// What, in words: piece, edge or dart, and which of its measures.
    pub what: String,
    /// The same as a measure.
    pub measure: Measure,
    /// Before; none when it was not there.
    pub before: Option<f64>,
    /// After; none when it is no longer there.
    pub after: Option<f64>,
    /// After less before.
    pub difference: Option<f64>,
    /// Unit of the three: `mm` or `deg`.
    pub unit: &'static str,
}

pub(in crate::job) const fn unit_name(unit: MeasureUnit) -> &'static str {
    match unit {
        MeasureUnit::Millimetres => "mm",
        MeasureUnit::Degrees => "deg",
    }
}

fn finite(value: f64) -> Option<f64> {
    value.is_finite().then(|| rounded(value))
}

impl AccountReport {
    pub(in crate::job) fn new(account: &Account) -> Self {
        Self {
            alteration: account.alteration.clone(),
            amount: account.amount.and_then(finite),
            unit: unit_name(account.unit),
            changes: account.changes.iter().map(ChangeReport::new).collect(),
            kept: account.kept.iter().map(Measure::to_string).collect(),
            kept_measures: account.kept.clone(),
        }
    }
}

impl ChangeReport {
    pub(in crate::job) fn new(change: &Change) -> Self {
        Self {
            what: change.measure.to_string(),
            measure: change.measure.clone(),
            before: change.before.and_then(finite),
            after: change.after.and_then(finite),
            difference: change.difference().and_then(finite),
            unit: unit_name(change.measure.unit()),
        }
    }
}
