//! What changed between an earlier pattern and one that was made anew.

use super::rounding::rounded;
use crate::alterations::{Change, Readings};
use crate::job::ChangeReport;
use crate::piece::{Measure, Pattern};
use crate::units::{Length, LengthStyle, Unit};
use serde::Serialize;
use std::fmt::Write as _;

/// What is no change: rounding in the files, in mm and degrees.
const SAME: f64 = 0.05;

/// What changed from an earlier pattern to one of today; lengths in mm.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::job::ComparedReport;
/// use blockwright::units::Unit;
/// let of = |girth| skirt(&Figure::cylinder(girth), &Ease::of(Fit::Regular), None);
/// let (before, after) = (of(900.0)?, of(920.0)?);
/// let compared = ComparedReport::new(&before, &after, Unit::Cm);
/// assert!(compared.text().contains("hip finished"));
/// assert!(ComparedReport::new(&after, &after, Unit::Cm).changes.is_empty());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ComparedReport {
    /// Pieces that only the earlier pattern has.
    pub pieces_gone: Vec<String>,
    /// Pieces that only the pattern of today has.
    pub pieces_new: Vec<String>,
    /// Every measure that is another, or is in only one of the two.
    pub changes: Vec<ChangeReport>,
    #[serde(skip)]
    unit: Unit,
}

impl ComparedReport {
    /// Compares two patterns, measure by measure.
    #[must_use]
    pub fn new(before: &Pattern, after: &Pattern, unit: Unit) -> Self {
        let (old, new) = (Readings::of(before), Readings::of(after));
        let mut all: Vec<&Measure> = old.iter().map(|(measure, _)| measure).collect();
        for (measure, _) in new.iter() {
            if !all.contains(&measure) {
                all.push(measure);
            }
        }
        let changes = all.into_iter().filter_map(|measure| {
            let (before, after) = (old.get(measure), new.get(measure));
            let same = before.zip(after).is_some_and(|(a, b)| (b - a).abs() < SAME);
            (!same).then(|| {
                ChangeReport::new(&Change {
                    measure: measure.clone(),
                    before,
                    after,
                })
            })
        });
        let names = |pattern: &Pattern, other: &Pattern| -> Vec<String> {
            let pieces = pattern.pieces().iter().map(|piece| piece.name());
            let gone = pieces.filter(|name| other.piece(name).is_none());
            gone.map(str::to_owned).collect()
        };
        Self {
            pieces_gone: names(before, after),
            pieces_new: names(after, before),
            changes: changes.collect(),
            unit,
        }
    }

    /// The changes as plain text in the unit, ending in a line break.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        for (what, names) in [("Gone", &self.pieces_gone), ("New", &self.pieces_new)] {
            if !names.is_empty() {
                let _ = writeln!(out, "{what}: {}", names.join(", "));
            }
        }
        if self.changes.is_empty() {
            out.push_str("Every measure is as it was.\n");
            return out;
        }
        let _ = writeln!(
            out,
            "  {:<40}{:>12}{:>12}{:>12}",
            "Changed", "before", "now", "difference"
        );
        for change in &self.changes {
            let shown = |value: Option<f64>| {
                value.map_or_else(|| "none".to_owned(), |value| self.value(value, change.unit))
            };
            let sign = if change.difference.is_some_and(|d| d > 0.0) {
                "+"
            } else {
                ""
            };
            let difference = change.difference.map_or_else(String::new, |value| {
                format!("{sign}{}", self.value(value, change.unit))
            });
            let _ = writeln!(
                out,
                "  {:<40}{:>12}{:>12}{difference:>12}",
                change.what,
                shown(change.before),
                shown(change.after),
            );
        }
        out
    }

    fn value(&self, value: f64, unit: &str) -> String {
        if unit == "deg" {
            return format!("{:.1}°", crate::units::rounded(value, 1));
        }
        Length::from_mm(rounded(value)).map_or_else(
            |_| "none".to_owned(),
            |length| length.to_text(LengthStyle::fine(self.unit)),
        )
    }
}
