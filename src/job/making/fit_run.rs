//! A job's block fitted to a wearer.

use super::run::run;
use crate::fit::{Fitted, fit};
use crate::job::{FitJob, FitReport, Job, JobError, OutputFile};
use crate::measurements::MeasurementSet;
use crate::recipe::{Ways, make};

/// What came of a fitting.
///
/// ```
/// use blockwright::job::FitOutcome;
/// fn steps(outcome: &FitOutcome) -> usize { outcome.fitted.steps.len() }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct FitOutcome {
    /// The altered block, the steps and what was left.
    pub fitted: Fitted,
    /// The job with the steps among its alterations: it makes the same pattern.
    pub job: Job,
    /// What is to be said about it.
    pub report: FitReport,
    /// The files of that job.
    pub files: Vec<OutputFile>,
}

/// Fits a job's block to a wearer and makes the files of the altered job.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{FitJob, Job, Output, Outputs, run_fit};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
/// let set = |name: &str, waist| {
///     let body = Body::from_taken([
///         (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///         (Measurement::WaistGirth, waist), (Measurement::HipGirth, 1000.0),
///     ]);
///     body.map(|body| MeasurementSet::new(name, Unit::Cm, body))
/// };
/// let mut job = Job::new("Skirt", Block::Skirt, set("size 40", 760.0)?);
/// job.outputs = Outputs::none().with(Output::Svg);
/// let outcome = run_fit(&FitJob::new(job, set("Ada", 740.0)?))?;
/// assert_eq!(outcome.report.steps[0].alteration, "waist_girth");
/// assert_eq!(outcome.files[0].name, "pattern.svg");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`JobError`] when the job cannot be made, or its block not be fitted to this wearer.
pub fn run_fit(asked: &FitJob) -> Result<FitOutcome, JobError> {
    let FitJob { job, wearer, .. } = asked;
    let unit = wearer.unit();
    let (recipe, own) = (&job.recipe, job.set.body());
    let made = make(recipe, own, job.set.unit(), Ways::Skipped)?;
    let bodies = (own, wearer.body());
    let fitted = fit(
        &made.pattern,
        &recipe.options,
        bodies,
        unit,
        &asked.settings,
    )?;
    let mut altered = job.clone();
    let steps = fitted.steps.iter().map(|step| step.request.clone());
    altered.recipe.alterations.extend(steps);
    altered.recipe.size = recipe.size.as_ref().map(|size| format!("{size}, fitted"));
    let name = format!("{}, fitted to {}", job.set.name(), wearer.name());
    altered.set = MeasurementSet::new(name, unit, own.clone());
    #[cfg(feature = "form")]
    {
        altered.compared = Some(wearer.clone());
    }
    let outcome = run(&altered)?;
    Ok(FitOutcome {
        report: FitReport {
            #[cfg(feature = "form")]
            fit_map: outcome.report.fit_map,
            ..FitReport::new(asked, &fitted)
        },
        fitted,
        job: altered,
        files: outcome.files,
    })
}
