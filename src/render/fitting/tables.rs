//! The tables of the page.

use super::Fitting;
use super::markup::{Cells, escaped, length, table, title_words, words};
use crate::alterations::{Account, Change, changes};
use crate::piece::{EaseOn, EdgeRef, MeasureUnit, Seam};
use crate::units::rounded;
use std::fmt::Write as _;

impl Fitting<'_> {
    pub(super) fn value(&self, value: f64, unit: MeasureUnit) -> String {
        match unit {
            _ if !value.is_finite() => "none".to_owned(),
            MeasureUnit::Millimetres => length(value, self.body.unit()),
            MeasureUnit::Degrees => format!("{:.1}°", rounded(value, 1)).replace('-', "−"),
        }
    }

    fn change_rows(&self, changes: &[Change]) -> Vec<Vec<String>> {
        let row = |change: &Change| {
            let unit = change.measure.unit();
            let shown = change.difference().map_or_else(String::new, |difference| {
                let sign = if difference > 0.0 { "+" } else { "" };
                format!("{sign}{}", self.value(difference, unit))
            });
            let end = |value: Option<f64>| self.value(value.unwrap_or(f64::NAN), unit);
            vec![
                words(&change.measure.to_string()),
                end(change.before),
                end(change.after),
                shown,
            ]
        };
        changes.iter().map(row).collect()
    }

    /// What each alteration changed and kept, and all of them together.
    pub(super) fn accounts_tables(&self, out: &mut String) {
        if self.accounts.is_empty() {
            out.push_str("<p>Nothing was altered: the pattern is as drafted.</p>\n");
            return;
        }
        let heads = ["Measure", "Before", "After", "Difference"];
        for (index, account) in self.accounts.iter().enumerate() {
            // Writing to a string cannot fail.
            let _ = writeln!(
                out,
                "<h3>{}. {}{}</h3>",
                index + 1,
                title_words(&account.alteration),
                self.by(account)
            );
            let rows = self.change_rows(&account.changes);
            if rows.is_empty() {
                out.push_str("<p>It changed nothing on this pattern.</p>\n");
            } else {
                table(out, Cells::Numbers, "What changed", &heads, &rows);
            }
            if !account.kept.is_empty() {
                let kept: Vec<String> = account
                    .kept
                    .iter()
                    .map(|measure| words(&measure.to_string()))
                    .collect();
                let _ = writeln!(
                    out,
                    "<p class=\"kept\"><b>Kept, and proved:</b> {}.</p>",
                    kept.join(", ")
                );
            }
            self.methods_tables(out, index + 1);
            self.demonstration(out, index);
        }
        if self.accounts.len() > 1 {
            out.push_str("<h3>Altogether</h3>\n");
            let rows = self.change_rows(&changes(self.before, self.after));
            table(
                out,
                Cells::Numbers,
                "From the draft to the altered pattern",
                &heads,
                &rows,
            );
        }
    }

    fn by(&self, account: &Account) -> String {
        account.amount.map_or_else(String::new, |amount| {
            format!(" by {}", self.value(amount, account.unit))
        })
    }

    /// Finished girths and widths beside body and ease.
    pub(super) fn girths_table(&self, out: &mut String) {
        let unit = self.body.unit();
        let rows: Vec<_> = self
            .after
            .girths()
            .iter()
            .map(|girth| {
                let finished = self.after.finished(girth);
                vec![
                    words(&girth.name),
                    length(girth.body, unit),
                    length(finished - girth.body, unit),
                    length(finished, unit),
                ]
            })
            .collect();
        let heads = ["Place", "Body", "Ease", "Finished"];
        table(
            out,
            Cells::Numbers,
            "The sewn garment beside the body",
            &heads,
            &rows,
        );
    }

    /// How every measurement is known.
    pub(super) fn body_table(&self, out: &mut String) {
        let rows: Vec<_> = self
            .body
            .rows()
            .into_iter()
            .map(|row| {
                vec![
                    words(row.measurement.name()),
                    escaped(&row.value),
                    escaped(&row.state),
                ]
            })
            .collect();
        let heads = ["Measurement", "Value", "How it is known"];
        let caption = "Taken, or estimated with its spread";
        table(out, Cells::Facts, caption, &heads, &rows);
    }

    /// What is sewn to what.
    pub(super) fn seams_table(&self, out: &mut String) {
        let unit = self.body.unit();
        let side = |edges: &[EdgeRef]| {
            let names: Vec<String> = edges.iter().map(|e| words(&e.to_string())).collect();
            let long = edges.iter().filter_map(|e| self.after.seam_length(e)).sum();
            format!("{} <b>{}</b>", names.join(" + "), length(long, unit))
        };
        let row = |seam: &Seam| {
            let ease = match seam.ease_on {
                None => "none".to_owned(),
                Some(EaseOn::A) => format!("{} on the one", length(seam.ease, unit)),
                Some(EaseOn::B) => format!("{} on the other", length(seam.ease, unit)),
            };
            vec![words(&seam.name), side(&seam.a), side(&seam.b), ease]
        };
        let rows: Vec<_> = self.after.seams().iter().map(row).collect();
        let heads = ["Seam", "The one side", "The other side", "Eased in"];
        table(
            out,
            Cells::Words,
            "Lengths with the darts closed",
            &heads,
            &rows,
        );
    }

    /// The darts, if there are any.
    pub(super) fn darts_table(&self, out: &mut String) {
        let unit = self.body.unit();
        let mut rows = Vec::new();
        for piece in self.after.pieces() {
            for dart in piece.darts() {
                let edge = dart.edge.as_ref().map(|edge| words(edge.as_str()));
                rows.push(vec![
                    words(&format!("{} {}", piece.name(), dart.name)),
                    edge.unwrap_or_else(|| "inside the piece".to_owned()),
                    length(dart.intake(), unit),
                    format!("{:.1}°", dart.angle().to_degrees()),
                ]);
            }
        }
        if rows.is_empty() {
            out.push_str("<p>There are no darts.</p>\n");
            return;
        }
        let heads = ["Dart", "Opens on", "Intake", "Angle"];
        table(out, Cells::Numbers, "Darts", &heads, &rows);
    }
}
