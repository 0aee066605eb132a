//! A block that is to fit a wearer.

use crate::fit::{FitSettings, NearestSize};
use crate::job::Job;
use crate::measurements::MeasurementSet;

/// A job whose block is to fit a wearer.
///
/// The job's body is the one the block is made for: a size of a table, another person.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{FitJob, Job, run_fit};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
/// let set = |name: &str, hip| {
///     let body = Body::from_taken([
///         (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///         (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, hip),
///     ]);
///     body.map(|body| MeasurementSet::new(name, Unit::Cm, body))
/// };
/// let job = Job::new("Skirt", Block::Skirt, set("size 40", 1000.0)?);
/// let outcome = run_fit(&FitJob::new(job, set("Ada", 1032.0)?))?;
/// assert_eq!(outcome.fitted.steps[0].request.name(), "hip_girth");
/// assert!(outcome.report.text().contains("hip_girth"));
/// // The job as a person would go on with it: the same steps, written out.
/// assert_eq!(outcome.job.recipe.alterations.len(), outcome.fitted.steps.len());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct FitJob {
    /// The block, the body that it is made for, what is printed.
    pub job: Job,
    /// Whom it is to fit.
    pub wearer: MeasurementSet,
    /// What a fitter bothers with.
    pub settings: FitSettings,
    /// How the size was chosen, where a table was given without one.
    pub size: Option<NearestSize>,
}

impl FitJob {
    /// A job to be fitted to a wearer, as a fitter would.
    #[must_use]
    pub fn new(job: Job, wearer: MeasurementSet) -> Self {
        Self {
            job,
            wearer,
            settings: FitSettings::default(),
            size: None,
        }
    }
}
