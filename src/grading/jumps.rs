//! Where a step stands out from those beside it.

use super::{Increment, Increments};
use crate::piece::{Measure, MeasureKind, Warning};

/// By how much of the body's step a measure may grow more or less than beside it. A quarter of
/// the pattern takes a quarter of a girth's step, so this is half of what a point moves by.
pub const JUMP: f64 = 0.125;

/// The least difference that is reported, in mm: less is lost in cutting.
pub const LEAST_JUMP: f64 = 3.0;

impl Increments {
    /// Where a step differs from those beside it by more than [`JUMP`] of the body's own step
    /// and [`LEAST_JUMP`], each first brought to the same step of the body (at the ends of a range
    /// there is one neighbour only; a change that lasts on both sides is no jump); and where a dart or an edge appears or disappears.
    ///
    /// ```
    /// use blockwright::grading::{Grown, Increment, Increments};
    /// use blockwright::piece::Measure;
    /// let dart = Increment {
    ///     of: Grown::Measure(Measure::dart_intake("back", "waist")),
    ///     values: vec![Some(20.0), Some(18.0), None],
    /// };
    /// let increments = Increments {
    ///     sizes: vec!["44".into(), "46".into(), "48".into()],
    ///     body_steps: vec![40.0, 40.0],
    ///     measures: vec![dart],
    /// };
    /// let jumps = increments.jumps();
    /// assert_eq!(jumps[0].text, "back waist dart intake: there in size 46, none in size 48");
    /// ```
    #[must_use]
    pub fn jumps(&self) -> Vec<Warning> {
        self.measures.iter().flat_map(|m| self.of(m)).collect()
    }

    fn of(&self, measure: &Increment) -> Vec<Warning> {
        let steps = measure.steps();
        let mut found = Vec::new();
        let sizes = self.sizes.iter().zip(self.sizes.iter().skip(1));
        for (index, (step, (from, to))) in steps.iter().zip(sizes).enumerate() {
            let between =
                |verb: &str| format!("{}: {verb} from size {from} to size {to}", measure.of);
            let Some(step) = *step else {
                found.extend(presence(measure, index, [from, to]));
                continue;
            };
            // Finished girths follow the body; what they do not is their ease.
            if measure.of.is_girth() {
                continue;
            }
            if let Some(beside) = self.beside(&steps, index, step) {
                // Rounded to nothing, a number loses its minus sign.
                let tenths = |mm: f64| (mm * 10.0).round() / 10.0 + 0.0;
                let (step, beside) = (tenths(step), tenths(beside));
                let text = between(&format!("steps by {step:+.1} mm"));
                let text = format!("{text}, where {beside:+.1} mm would follow its neighbours");
                found.push(Warning::new("step_jump", text));
            }
        }
        found
    }

    /// What the nearest of the neighbouring steps would ask for, if the step is far from it.
    fn beside(&self, steps: &[Option<f64>], index: usize, step: f64) -> Option<f64> {
        let body = self.body_steps.get(index).copied().filter(|b| *b >= 1.0)?;
        let neighbours = [index.checked_sub(1), Some(index + 1)];
        let nearest = neighbours
            .into_iter()
            .flatten()
            .filter_map(|at| {
                let other = self.body_steps.get(at).copied().filter(|b| *b >= 1.0)?;
                Some((*steps.get(at)?)? * body / other)
            })
            .min_by(|a, b| (a - step).abs().total_cmp(&(b - step).abs()))?;
        let bound = (JUMP * body).max(LEAST_JUMP);
        ((nearest - step).abs() > bound).then_some(nearest)
    }
}

/// A part that one of two neighbouring sizes has and the other lacks.
fn presence(measure: &Increment, index: usize, [from, to]: [&String; 2]) -> Option<Warning> {
    let of_a_part = |measure: &Measure| {
        matches!(
            measure.kind(),
            MeasureKind::EdgeLength { .. } | MeasureKind::DartIntake { .. }
        )
    };
    if !measure.of.measure().is_some_and(of_a_part) {
        return None;
    }
    let (this, next) = (measure.values.get(index)?, measure.values.get(index + 1)?);
    let (has, has_not) = match (this, next) {
        (Some(_), None) => (from, to),
        (None, Some(_)) => (to, from),
        _ => return None,
    };
    let text = format!(
        "{}: there in size {has}, none in size {has_not}",
        measure.of
    );
    Some(Warning::new("part_appears", text))
}
