//! What is to be said about a fitting, as a person reads it.

use std::fmt::Write as _;

use crate::job::FitReport;
use crate::recipe::one_line;
use crate::units::{Length, LengthStyle, rounded};

/// How many of the measurements that asked for a step are named.
const NAMED: usize = 3;

impl FitReport {
    /// The report as plain text in the wearer's unit, ending in a line break.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        // Writing to a string cannot fail.
        let _ = writeln!(
            out,
            "{}\n{} block of {}, fitted to {}",
            self.title,
            self.block,
            one_line(&self.made_for),
            one_line(&self.wearer)
        );
        self.size_text(&mut out);
        self.steps_text(&mut out);
        self.left_text(&mut out);
        let _ = writeln!(
            out,
            "\nFinished girths on {}\n  {:<26}{:>12}{:>12}{:>12}",
            one_line(&self.wearer),
            "",
            "body",
            "ease",
            "finished"
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
        #[cfg(feature = "form")]
        if let Some(map) = &self.fit_map {
            out.push_str(&map.text(self.unit));
        }
        out.push_str("\nBefore you cut\n");
        for caution in &self.cautions {
            let _ = writeln!(out, "  {caution}");
        }
        out
    }

    fn size_text(&self, out: &mut String) {
        let Some(choice) = &self.size else {
            return;
        };
        let differences: Vec<String> = choice
            .differences
            .iter()
            .map(|d| format!("{} {}", d.measurement, self.signed(d.more, "mm")))
            .collect();
        let _ = writeln!(
            out,
            "\nSize {}, nearest by upper chest and back width first, girths after: she has {}",
            choice.size,
            differences.join(", ")
        );
        if let Some(next) = &choice.next {
            let _ = writeln!(out, "  Next best: {next}");
        }
    }

    fn steps_text(&self, out: &mut String) {
        if self.steps.is_empty() {
            out.push_str("\nNothing to alter.\n");
            return;
        }
        out.push_str("\nSteps\n");
        for (index, step) in self.steps.iter().enumerate() {
            let at = step.settings.get("at").and_then(|at| at.as_str());
            let name = match at {
                Some(at) => format!("{}, {at}", step.alteration),
                None => step.alteration.clone(),
            };
            let with = step.asked.iter().filter(|a| a.amount * step.amount > 0.0);
            let with: Vec<String> = with
                .take(NAMED)
                .map(|a| format!("{} {}", a.measurement, self.signed(a.amount, step.unit)))
                .collect();
            let with = if with.is_empty() {
                "to balance the other steps".to_owned()
            } else {
                format!("for {}", with.join(", "))
            };
            let _ = writeln!(
                out,
                "  {:>2} {name:<24}{:>10}  {with}",
                index + 1,
                self.signed(step.amount, step.unit),
            );
            if let Some([one, other]) = &step.contradiction {
                let _ = writeln!(
                    out,
                    "     {one} asks for it and {other} for the contrary: measure both again if either is doubtful"
                );
            }
        }
    }

    fn left_text(&self, out: &mut String) {
        if self.left.is_empty() {
            out.push_str("\nNothing is left.\n");
            return;
        }
        out.push_str("\nLeft as it is\n");
        for left in &self.left {
            let size = if left.by > 0.0 {
                "too small"
            } else {
                "too large"
            };
            let by = self.signed(left.by.abs(), left.unit);
            let by = by.trim_start_matches('+');
            let from = left
                .measurement
                .map_or_else(String::new, |m| format!(", from {m}"));
            let why = match (&left.refusal, left.because) {
                (Some(refusal), _) => format!("more was refused by {refusal}"),
                (None, "small") => "less than is worth a step".to_owned(),
                _ => "no step moves it alone".to_owned(),
            };
            let _ = writeln!(out, "  {} {by} {size}{from}: {why}", left.what);
        }
    }

    fn signed(&self, value: f64, unit: &str) -> String {
        let sign = if value > 0.0 { "+" } else { "" };
        if unit == "deg" {
            return format!("{sign}{:.1}°", rounded(value, 1));
        }
        format!("{sign}{}", self.length(value))
    }

    fn length(&self, mm: f64) -> String {
        Length::from_mm(mm).map_or_else(
            |_| mm.to_string(),
            |length| length.to_text(LengthStyle::fine(self.unit)),
        )
    }
}
