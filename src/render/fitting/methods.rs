//! The ways of a back-length reduction, to choose from.

use super::Fitting;
use super::markup::{Cells, escaped, table, words};
use crate::alterations::{MethodFigures, MethodOutcome};
use crate::piece::MeasureUnit;

impl Fitting<'_> {
    /// The ways that a step had.
    pub(super) fn methods_tables(&self, out: &mut String, step: usize) {
        for choice in self.choices.iter().filter(|choice| choice.step == step) {
            let rows: Vec<_> = choice
                .table
                .rows
                .iter()
                .map(|row| {
                    let made = row.hinge == choice.chosen;
                    let mut cells = vec![format!(
                        "{}{}",
                        words(row.hinge.name()),
                        if made { " <b>(made here)</b>" } else { "" }
                    )];
                    match &row.outcome {
                        MethodOutcome::Done(figures) => {
                            cells.push("holds".to_owned());
                            cells.extend(self.figures(figures));
                        }
                        MethodOutcome::Refused(why) => {
                            cells.push(format!("refused: {}", escaped(why)));
                            cells.extend(std::iter::repeat_n(String::new(), 5));
                        }
                    }
                    cells
                })
                .collect();
            let heads = [
                "Hinge",
                "Outcome",
                "Shoulder slope",
                "Armscye",
                "Fold gain",
                "Sleeve cap",
                "Stretch of the cloth",
            ];
            table(
                out,
                Cells::Words,
                "Ways to shorten this back",
                &heads,
                &rows,
            );
        }
    }

    fn figures(&self, figures: &MethodFigures) -> [String; 5] {
        let signed = |mm: f64| {
            let sign = if mm > 0.0 { "+" } else { "" };
            format!("{sign}{}", self.value(mm, MeasureUnit::Millimetres))
        };
        [
            format!(
                "{} to {}",
                self.value(figures.slope_before, MeasureUnit::Degrees),
                self.value(figures.slope_after, MeasureUnit::Degrees)
            ),
            signed(figures.armscye),
            signed(figures.fold_gain),
            figures.sleeve_cap.map_or_else(|| "none".to_owned(), signed),
            figures
                .stretch
                .map_or_else(|| "not known".to_owned(), |stretch| stretch.to_string()),
        ]
    }
}
