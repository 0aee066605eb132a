//! What an alteration changed and what it kept, in numbers.

use super::readings::{Readings, Unit};
use crate::piece::{BodySide, Pattern};

/// One thing that an alteration changed.
///
/// ```
/// use blockwright::alterations::{Change, Unit};
/// let c = Change { what: "back centre_back length".into(), before: 980.0, after: 955.0, unit: Unit::Millimetres };
/// assert_eq!(c.difference(), -25.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What: piece, edge or dart, and which of its measures.
    pub what: String,
    /// Before the alteration.
    pub before: f64,
    /// After it; NaN when it is no longer there, before it when it was not.
    pub after: f64,
    /// Unit of both.
    pub unit: Unit,
}

impl Change {
    /// After less before.
    #[must_use]
    pub fn difference(&self) -> f64 {
        self.after - self.before
    }
}

/// The account of one alteration.
///
/// ```
/// use blockwright::alterations::Account;
/// fn kept(account: &Account) -> usize { account.kept.len() }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Account {
    /// The alteration's name.
    pub alteration: String,
    /// The amount in `unit`, where the alteration has one.
    pub amount: Option<f64>,
    /// Unit of the amount.
    pub unit: Unit,
    /// Everything that is different.
    pub changes: Vec<Change>,
    /// What was promised to stay, and did.
    pub kept: Vec<String>,
}

/// Differences smaller than this are rounding, in millimetres or degrees.
const SAME: f64 = 5e-4;

/// Everything that differs between two patterns: sewn lengths of edges, intakes and angles of
/// darts, finished girths, shoulder slopes, heights of sleeve caps.
///
/// ```
/// use blockwright::alterations::changes;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let knee = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(550.0))?;
/// let longer = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(600.0))?;
/// let found = changes(&knee, &longer);
/// let side = found.iter().find(|change| change.what == "back side_seam length");
/// assert!(side.is_some_and(|change| change.difference() > 49.0));
/// assert!(changes(&knee, &knee).is_empty());
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn changes(before: &Pattern, after: &Pattern) -> Vec<Change> {
    changes_between(&Readings::of(before), &Readings::of(after))
}

/// As [`changes`], of patterns that have been measured.
pub(super) fn changes_between(old: &Readings, new: &Readings) -> Vec<Change> {
    let mut found: Vec<Change> = Vec::new();
    // A piece that became unlike on its two sides is compared with what both sides were.
    let divided = |what: &str| new.iter().any(|r| whole(&r.what).as_deref() == Some(what));
    for reading in old.iter() {
        let now = new.find(&reading.what);
        if now.is_none() && divided(&reading.what) {
            continue;
        }
        let value = now.map_or(f64::NAN, |r| r.value);
        if value.is_nan() || (value - reading.value).abs() > SAME {
            found.push(Change {
                what: reading.what.clone(),
                before: reading.value,
                after: value,
                unit: reading.unit,
            });
        }
    }
    for reading in new.iter() {
        if old.find(&reading.what).is_some() {
            continue;
        }
        let was = whole(&reading.what).and_then(|whole| old.find(&whole));
        let before = was.map_or(f64::NAN, |r| r.value);
        if before.is_nan() || (before - reading.value).abs() > SAME {
            found.push(Change {
                what: reading.what.clone(),
                before,
                after: reading.value,
                unit: reading.unit,
            });
        }
    }
    found
}

/// The name that a measure of one side had when both sides were alike.
fn whole(what: &str) -> Option<String> {
    BodySide::BOTH.into_iter().find_map(|side| {
        let word = format!(" {}", side.name());
        let at = what.find(&word)?;
        let rest = &what[at + word.len()..];
        (rest.is_empty() || rest.starts_with(' ')).then(|| format!("{}{rest}", &what[..at]))
    })
}
