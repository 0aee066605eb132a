//! The ways of a back-length reduction, as a person reads them.

use std::fmt::Write as _;

use crate::job::{JobReport, MethodFiguresReport, MethodsReport};

impl JobReport {
    /// The ways as a table, the chosen one marked.
    pub(in crate::job) fn methods_text(&self, out: &mut String, methods: &MethodsReport) {
        // Writing to a string cannot fail.
        let _ = writeln!(
            out,
            "  Ways to do it, > the one made\n    {:<17}{:>15}{:>11}{:>11}{:>11}  stretch of cloth",
            "hinge", "shoulder slope", "armscye", "fold gain", "cap"
        );
        for row in &methods.rows {
            let mark = if row.chosen { '>' } else { ' ' };
            let outcome = match (&row.figures, &row.refused) {
                (Some(figures), _) => self.figures(figures),
                (None, Some(why)) => format!(" refused: {why}"),
                (None, None) => " refused".to_owned(),
            };
            let _ = writeln!(out, "  {mark} {:<17}{outcome}", row.hinge);
        }
    }

    fn figures(&self, figures: &MethodFiguresReport) -> String {
        let signed = |mm: f64| {
            let sign = if mm > 0.0 { "+" } else { "" };
            format!("{sign}{}", self.length(mm))
        };
        let slopes = format!(
            "{:.1}° to {:.1}°",
            figures.slope_before, figures.slope_after
        );
        let cap = figures.sleeve_cap.map_or_else(|| "none".to_owned(), signed);
        let stretch = figures.smallest_stretch.zip(figures.largest_stretch);
        format!(
            "{slopes:>15}{:>11}{:>11}{cap:>11}  {}",
            signed(figures.armscye),
            signed(figures.fold_gain),
            stretch.map_or_else(
                || "not known".to_owned(),
                |(least, most)| format!("{least:.3} to {most:.3}")
            ),
        )
    }
}
