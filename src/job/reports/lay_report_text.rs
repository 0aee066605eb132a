//! What is to be said about a lay, as a person reads it.

use std::fmt::Write as _;

use super::rounding::shown;
use crate::job::LayReport;
use crate::units::Unit;

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
pub(in crate::job) fn head_lines(report: &LayReport) -> Vec<String> {
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
            to_buy(report.length_to_buy, report.unit),
            100.0 * report.density,
        ),
    ]
}

/// A length of cloth as it is asked for in a shop: in inches by the eighth of a yard.
pub(in crate::job) fn to_buy(mm: f64, unit: Unit) -> String {
    const EIGHTH_MM: f64 = 114.3;
    if unit != Unit::In {
        return shown(mm, unit);
    }
    let eighths = (mm / EIGHTH_MM).round();
    let (whole, mut part, mut of) = ((eighths / 8.0).floor(), eighths % 8.0, 8.0);
    while part > 0.0 && part % 2.0 == 0.0 {
        (part, of) = (part / 2.0, of / 2.0);
    }
    match (whole > 0.0, part > 0.0) {
        (true, true) => format!("{whole} {part}/{of} yd"),
        (false, true) => format!("{part}/{of} yd"),
        _ => format!("{whole} yd"),
    }
}

/// What stands below the picture.
pub(in crate::job) fn caution_lines(report: &LayReport) -> Vec<String> {
    let warnings = report.warnings.iter().map(|warning| warning.text.clone());
    warnings.chain([report.cautions.join(" ")]).collect()
}

#[cfg(test)]
mod tests {
    use super::to_buy;
    use crate::units::Unit;

    #[test]
    fn cloth_is_sold_by_the_eighth_of_a_yard() {
        for (eighths, message) in [
            (1.0, "1/8 yd"),
            (4.0, "1/2 yd"),
            (8.0, "1 yd"),
            (14.0, "1 3/4 yd"),
            (21.0, "2 5/8 yd"),
        ] {
            assert_eq!(to_buy(eighths * 114.3, Unit::In), message);
        }
        assert_eq!(to_buy(1200.0, Unit::Cm), "120 cm");
    }
}
