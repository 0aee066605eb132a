//! The answer to `most`: how far a step can be taken.

use super::asked::MadeFrom;
use super::drafted::unit_name;
use super::pieces::short;
use super::problem::{Problem, Problems};
use crate::alterations::{Request, alter};
use crate::piece::{MeasureUnit, Pattern};
use crate::recipe::Ways;
use serde::Serialize;

/// Farther than any step goes, in millimetres and degrees.
const FAR: (f64, f64) = (400.0, 45.0);

#[derive(Debug, Serialize)]
pub(super) struct Most {
    unit: &'static str,
    /// The farthest the one way, zero or negative.
    least: f64,
    /// The farthest the other way, zero or positive.
    most: f64,
}

/// Steps are counted from one.
pub(super) fn most(asked: &MadeFrom, step: usize) -> Result<Most, Problems> {
    let mut job = asked.job()?;
    let unit = job.set.unit();
    let Some(request) = step
        .checked_sub(1)
        .and_then(|index| job.recipe.alterations.get(index).cloned())
    else {
        let text = format!("the job has no step {step}");
        return Err(Problems::wrong(Problem::new(
            "no_such_step",
            text,
            "count the alterations from one",
        )));
    };
    job.recipe.alterations.truncate(step.saturating_sub(1));
    job.recipe.allowances = None;
    let made = job
        .make(Ways::Skipped)
        .map_err(|error| Problems::of_make(error, unit))?;
    let measured_in = probe(&request, 0.0).map_or(MeasureUnit::Millimetres, |step| step.unit());
    let far = match measured_in {
        MeasureUnit::Millimetres => FAR.0,
        MeasureUnit::Degrees => FAR.1,
    };
    Ok(Most {
        unit: unit_name(measured_in),
        least: reach(&made.pattern, &request, -far),
        most: reach(&made.pattern, &request, far),
    })
}

fn probe(request: &Request, amount: f64) -> Option<Box<dyn crate::alterations::Alteration>> {
    request.by(amount).ok()?.alteration().ok()
}

/// The largest amount of that sign that holds, rounded toward nought, so that it does.
fn reach(pattern: &Pattern, request: &Request, far: f64) -> f64 {
    let Some(step) = probe(request, far) else {
        return 0.0;
    };
    let most = match alter(pattern, &[step]) {
        Ok(_) => far,
        Err(refused) => refused.most.unwrap_or(0.0),
    };
    if most * far < 0.0 {
        return 0.0;
    }
    short((most * 10.0).trunc() / 10.0)
}
