//! What is to be said about a pattern, as a person reads it.

use std::fmt::Write as _;

use crate::job::JobReport;
use crate::recipe::one_line;
use crate::units::{Length, LengthStyle, rounded};

impl JobReport {
    /// The report as plain text in the wearer's unit, ending in a line break.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        // Writing to a string cannot fail.
        let _ = writeln!(out, "{}", self.title);
        let _ = writeln!(
            out,
            "{} block for {}\n",
            self.block,
            one_line(self.body.name())
        );
        out.push_str("Measurements\n");
        out.push_str(&self.body.values_text());
        self.girths_text(&mut out);
        self.seams_text(&mut out);
        self.darts_text(&mut out);
        self.accounts_text(&mut out);
        out.push_str("\nPieces\n");
        for piece in &self.pieces {
            let _ = writeln!(out, "  {piece}");
        }
        #[cfg(feature = "form")]
        if let Some(map) = &self.fit_map {
            out.push_str(&map.text(self.unit));
        }
        if let Some(pages) = &self.pages {
            let _ = writeln!(out, "\nPages\n  {}", pages.text());
        }
        if self.warnings.is_empty() {
            out.push_str("\nNo warnings.\n");
        } else {
            out.push_str("\nWarnings\n");
            for warning in &self.warnings {
                let _ = writeln!(out, "  {}: {}", warning.code, warning.text);
            }
        }
        out.push_str("\nBefore you cut\n");
        for caution in &self.cautions {
            let _ = writeln!(out, "  {caution}");
        }
        out
    }

    fn girths_text(&self, out: &mut String) {
        let _ = writeln!(
            out,
            "\nFinished girths\n  {:<26}{:>12}{:>12}{:>12}",
            "", "body", "ease", "finished"
        );
        for girth in &self.girths {
            let [body, ease, finished] =
                [girth.body, girth.ease, girth.finished].map(|mm| self.length(mm));
            let _ = writeln!(
                out,
                "  {:<26}{body:>12}{ease:>12}{finished:>12}",
                girth.name
            );
        }
    }

    fn seams_text(&self, out: &mut String) {
        out.push_str("\nSeams, darts closed\n");
        for seam in &self.seams {
            let side = |names: &[String], mm| format!("{} {}", names.join(" + "), self.length(mm));
            let _ = write!(
                out,
                "  {}: {} to {}",
                seam.name,
                side(&seam.a, seam.a_length),
                side(&seam.b, seam.b_length),
            );
            let eased = match seam.ease_on {
                Some("a") => Some(&seam.a),
                Some(_) => Some(&seam.b),
                None => None,
            };
            if let Some(names) = eased {
                let _ = write!(
                    out,
                    "; {} eased in by {}",
                    names.join(" + "),
                    self.length(seam.ease)
                );
            }
            out.push('\n');
        }
    }

    fn darts_text(&self, out: &mut String) {
        if self.darts.is_empty() {
            out.push_str("\nNo darts.\n");
            return;
        }
        out.push_str("\nDarts\n");
        for dart in &self.darts {
            let on = match &dart.edge {
                Some(edge) => format!("on {edge}"),
                None => "inside the piece".to_owned(),
            };
            let _ = writeln!(
                out,
                "  {} {} dart, {on}: intake {}, angle {:.1}°",
                dart.piece,
                dart.name,
                self.length(dart.intake),
                dart.angle
            );
        }
    }

    /// The accounts as tables: before, after, difference, and what was kept.
    fn accounts_text(&self, out: &mut String) {
        // Writing to a string cannot fail.
        for (index, account) in self.account.iter().enumerate() {
            let amount = account.amount.map_or_else(String::new, |amount| {
                format!(" by {}", self.measure(amount, account.unit))
            });
            let _ = writeln!(
                out,
                "\nAltered: {}{amount}\n  {:<34}{:>12}{:>12}{:>12}",
                account.alteration, "", "before", "after", "difference"
            );
            for change in &account.changes {
                let [before, after] = [change.before, change.after].map(|value| {
                    value.map_or_else(|| "none".to_owned(), |v| self.measure(v, change.unit))
                });
                let difference = change.difference.map_or_else(String::new, |value| {
                    let sign = if value > 0.0 { "+" } else { "" };
                    format!("{sign}{}", self.measure(value, change.unit))
                });
                let _ = writeln!(
                    out,
                    "  {:<34}{before:>12}{after:>12}{difference:>12}",
                    change.what
                );
            }
            if account.changes.is_empty() {
                out.push_str("  nothing changed\n");
            }
            if !account.kept.is_empty() {
                let _ = writeln!(out, "  Kept: {}", account.kept.join(", "));
            }
            for methods in self.methods.iter().filter(|m| m.step == index + 1) {
                self.methods_text(out, methods);
            }
        }
    }

    fn measure(&self, value: f64, unit: &str) -> String {
        if unit == "deg" {
            return format!("{:.1}°", rounded(value, 1));
        }
        self.length(value)
    }

    /// A length on paper: finer than one on a body.
    pub(in crate::job) fn length(&self, mm: f64) -> String {
        Length::from_mm(mm).map_or_else(
            |_| mm.to_string(),
            |length| length.to_text(LengthStyle::fine(self.unit)),
        )
    }
}
