//! What is to be said about a lay, as a person reads it.

use std::fmt::Write as _;

use super::LayReport;
use super::rounding::shown;

impl LayReport {
    /// The report as plain text in the wearer's unit, ending in a line break.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        // Writing to a string cannot fail.
        let _ = writeln!(out, "{}\n", self.title);
        for line in head_lines(self) {
            let _ = writeln!(out, "{line}");
        }
        for stretch in &self.stretches {
            let _ = writeln!(
                out,
                "\n{}, {} long, {} wide",
                if stretch.folded {
                    "Folded"
                } else {
                    "Not folded"
                },
                shown(stretch.length, self.unit),
                shown(stretch.width, self.unit),
            );
            for piece in &stretch.pieces {
                let _ = writeln!(
                    out,
                    "  {:<16}{:<28}{:>10} along {:>9} across{}",
                    piece.name,
                    piece.cut,
                    shown(piece.at[0], self.unit),
                    shown(piece.at[1], self.unit),
                    if piece.turn == 0 { "" } else { ", turned" },
                );
            }
        }
        let _ = writeln!(
            out,
            "\nNo lay of these pieces can be shorter than {}. This one again: --seed {} --rounds {}",
            shown(self.least_length, self.unit),
            self.seed,
            self.rounds
        );
        if !self.warnings.is_empty() {
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
}

/// How much cloth, on what cloth.
pub(super) fn head_lines(report: &LayReport) -> Vec<String> {
    let cloth = &report.cloth;
    vec![
        format!(
            "Cloth {} wide, {}, {}, {} between pieces",
            shown(cloth.width, report.unit),
            if cloth.folded {
                "folded lengthwise"
            } else {
                "not folded"
            },
            if cloth.one_way {
                "all pieces one way"
            } else {
                "pieces both ways"
            },
            shown(cloth.gap, report.unit),
        ),
        format!(
            "Length needed {}: buy {} and what the cloth shrinks by; {:.0} % of the cloth becomes \
             pieces",
            shown(report.length, report.unit),
            shown(report.length_to_buy, report.unit),
            100.0 * report.density,
        ),
    ]
}

/// What stands below the picture.
pub(super) fn caution_lines(report: &LayReport) -> Vec<String> {
    let warnings = report.warnings.iter().map(|warning| warning.text.clone());
    warnings.chain([report.cautions.join(" ")]).collect()
}
