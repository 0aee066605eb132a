//! What was altered, for programs.

use serde::Serialize;

use super::rounding::rounded;
use crate::alterations::{Account, Change, Unit};

/// The account of one alteration.
///
/// ```
/// use blockwright::job::AccountReport;
/// let account = AccountReport {
///     alteration: "back_length_reduction".into(), amount: Some(25.0), unit: "mm",
///     changes: vec![], kept: vec!["back side_seam length".into()],
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
    /// What was promised to stay, and did.
    pub kept: Vec<String>,
}

/// One thing that an alteration changed.
///
/// ```
/// use blockwright::job::ChangeReport;
/// let change = ChangeReport {
///     what: "back centre_back length".into(), before: Some(980.0), after: Some(955.0),
///     difference: Some(-25.0), unit: "mm",
/// };
/// assert_eq!(change.difference, Some(-25.0));
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ChangeReport {
    /// What: piece, edge or dart, and which of its measures.
    pub what: String,
    /// Before; none when it was not there.
    pub before: Option<f64>,
    /// After; none when it is no longer there.
    pub after: Option<f64>,
    /// After less before.
    pub difference: Option<f64>,
    /// Unit of the three: `mm` or `deg`.
    pub unit: &'static str,
}

fn name(unit: Unit) -> &'static str {
    match unit {
        Unit::Millimetres => "mm",
        Unit::Degrees => "deg",
    }
}

fn finite(value: f64) -> Option<f64> {
    value.is_finite().then(|| rounded(value))
}

impl AccountReport {
    pub(super) fn new(account: &Account) -> Self {
        Self {
            alteration: account.alteration.clone(),
            amount: account.amount.and_then(finite),
            unit: name(account.unit),
            changes: account.changes.iter().map(ChangeReport::new).collect(),
            kept: account.kept.clone(),
        }
    }
}

impl ChangeReport {
    fn new(change: &Change) -> Self {
        Self {
            what: change.what.clone(),
            before: finite(change.before),
            after: finite(change.after),
            difference: finite(change.difference()),
            unit: name(change.unit),
        }
    }
}
