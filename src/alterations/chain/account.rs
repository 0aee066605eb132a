//! What an alteration changed and what it kept, in numbers.

use super::readings::Readings;
use crate::alterations::Promise;
use crate::piece::{Measure, MeasureKind, MeasureUnit, Pattern};

/// One thing that an alteration changed.
///
/// ```
/// use blockwright::alterations::Change;
/// use blockwright::piece::{EdgeName, Measure};
/// let centre = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// let change = Change { measure: centre, before: Some(980.0), after: Some(955.0) };
/// assert_eq!(change.difference(), Some(-25.0));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What changed.
    pub measure: Measure,
    /// Before the alteration, in the unit of the measure; none when it was not there.
    pub before: Option<f64>,
    /// After it; none when it is no longer there.
    pub after: Option<f64>,
}

impl Change {
    /// After less before, where it was there both times.
    #[must_use]
    pub fn difference(&self) -> Option<f64> {
        Some(self.after? - self.before?)
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
    pub unit: MeasureUnit,
    /// Everything that is different.
    pub changes: Vec<Change>,
    /// What was promised to stay, and did.
    pub kept: Vec<Measure>,
}

/// Differences smaller than this are rounding, in millimetres or degrees.
const SAME: f64 = 5e-4;

/// Everything that differs between two patterns: sewn lengths of edges, intakes and angles of
/// darts, finished girths, shoulder slopes, heights of sleeve caps.
///
/// ```
/// use blockwright::alterations::changes;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{EdgeName, Measure};
/// let knee = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(550.0))?;
/// let longer = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(600.0))?;
/// let found = changes(&knee, &longer);
/// let side = Measure::edge_length("back", EdgeName::SIDE_SEAM);
/// let side = found.iter().find(|change| change.measure == side);
/// assert!(side.and_then(|change| change.difference()).is_some_and(|by| by > 49.0));
/// assert!(changes(&knee, &knee).is_empty());
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn changes(before: &Pattern, after: &Pattern) -> Vec<Change> {
    changes_between(&Readings::of(before), &Readings::of(after))
}

/// As [`changes`], of patterns that have been measured.
///
/// What became unlike on the two sides is compared with what both sides had, and the other way
/// round.
pub(in crate::alterations) fn changes_between(old: &Readings, new: &Readings) -> Vec<Change> {
    let mut found: Vec<Change> = Vec::new();
    let mut compare = |measure: &Measure, before: Option<f64>, after: Option<f64>| {
        let same = matches!((before, after), (Some(b), Some(a)) if (a - b).abs() <= SAME);
        if !same {
            found.push(Change {
                measure: measure.clone(),
                before,
                after,
            });
        }
    };
    for (measure, before) in old.iter() {
        if new.has(measure) || !new.has_on_a_side(measure) {
            compare(measure, Some(before), new.get(measure));
        }
    }
    for (measure, after) in new.iter() {
        if !old.has(measure) && !old.has_on_a_side(measure) {
            compare(measure, old.get(measure), Some(after));
        }
    }
    found
}

/// The measures that were promised to stay and were there, each once: what both sides share
/// without a side.
pub(in crate::alterations) fn kept(
    promises: &[Promise],
    before: &Readings,
    after: &Readings,
) -> Vec<Measure> {
    let stays = |p: &&Promise| p.change == 0.0 && before.get(&p.measure).is_some();
    let all: Vec<&Measure> = promises.iter().filter(stays).map(|p| &p.measure).collect();
    let mut found: Vec<Measure> = Vec::new();
    for measure in &all {
        let Some(of) = shown(measure, &all, after) else {
            continue;
        };
        if !found.contains(&of) {
            found.push(of);
        }
    }
    found
}

/// The measure as the altered pattern has it; none of half a girth of the trunk.
fn shown(measure: &Measure, all: &[&Measure], after: &Readings) -> Option<Measure> {
    let Some(side) = measure.side().filter(|_| !after.has(measure)) else {
        return Some(measure.clone());
    };
    let is_girth = matches!(
        measure.kind(),
        MeasureKind::FinishedGirth { .. } | MeasureKind::LineGirth { .. }
    );
    let other = measure.on(side.other());
    (!is_girth || all.contains(&&other)).then(|| measure.of_both_sides())
}
