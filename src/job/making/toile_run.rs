//! A job's pattern sewn on a wearer on screen.

use super::outcome::OutputFile;
use super::toile_case::{ToileCase, picture_name};
use super::toile_models::Models;
use crate::draft::draft;
use crate::form::Form;
use crate::job::reports::toile_page::page;
use crate::job::reports::toile_report::{ToileCaseReport, ToileReport};
use crate::job::{Job, JobError};
use crate::measurements::MeasurementSet;
use crate::progress::Progress;
use crate::recipe::Ways;
use crate::toile::{Shown, Toile, ToileSettings};
use std::ops::ControlFlow;

/// A job whose patterns are to be sewn on a wearer's form: before and after its alterations, and what
/// the same block would be if it were drafted for her.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{Job, ToileRun};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::toile::{Quality, ToileSettings};
/// use blockwright::units::Unit;
/// use std::ops::ControlFlow;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let job = Job::new("Skirt", Block::Skirt, MeasurementSet::new("Ada", Unit::Cm, body));
/// let settings = ToileSettings { quality: Quality::Sketch, ..ToileSettings::default() };
/// let run = ToileRun::new(&job, None, settings)?;
/// assert_eq!(run.cases[0].name, "pattern");
/// let toile = run.sew(0, &mut |_| ControlFlow::Continue(()))?;
/// let outcome = run.outcome(&[toile]);
/// assert_eq!(outcome.files[0].name, "toile.html");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct ToileRun<'a> {
    job: &'a Job,
    wearer: &'a MeasurementSet,
    form: Form,
    settings: ToileSettings,
    /// The patterns, in the order in which they are shown.
    pub cases: Vec<ToileCase>,
    /// What the user should know.
    notes: Vec<String>,
}

/// Toiles, what is to be said about them, and their files.
///
/// ```
/// use blockwright::job::ToileOutcome;
/// fn files(outcome: &ToileOutcome) -> usize { outcome.files.len() }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct ToileOutcome {
    /// What is to be said about them.
    pub report: ToileReport,
    /// `toile.html`, `toile.json`, and for every pattern three pictures and a model.
    pub files: Vec<OutputFile>,
}

impl<'a> ToileRun<'a> {
    /// Makes the job's pattern, and the form of the wearer: of the job's own body if there is none.
    ///
    /// # Errors
    /// [`JobError`] when there is no pattern, or no form of these measurements.
    pub fn new(
        job: &'a Job,
        wearer: Option<&'a MeasurementSet>,
        settings: ToileSettings,
    ) -> Result<Self, JobError> {
        let made = job.make(Ways::Skipped)?;
        let body = wearer.unwrap_or(&job.set).body();
        let form = Form::of(body)?;
        let case = |name, words, pattern| ToileCase {
            name,
            words,
            pattern,
        };
        let mut cases = Vec::new();
        let mut notes = Vec::new();
        if made.accounts.is_empty() {
            cases.push(case("pattern", "The pattern", made.pattern));
        } else {
            cases.push(case("before", "Before the alterations", made.drafted));
            cases.push(case("after", "After the alterations", made.pattern));
        }
        if wearer.is_some() || job.recipe.own.is_some() {
            let options = match &job.recipe.own {
                Some(own) => own.options(),
                None => job.recipe.options,
            };
            match draft(body, &options) {
                Ok(own) => cases.push(case("own", "The same block drafted for this wearer", own)),
                Err(error) => notes.push(format!(
                    "The same block cannot be drafted for this wearer, so there is nothing to compare \
                     with: {error}"
                )),
            }
        } else {
            notes.push(
                "The form is made of the measurements that drafted the block, so they agree by \
                 construction: a fault shows only on another wearer, or with heights and hollows of \
                 her own (nape height, waist height, hollow of the back)."
                    .to_owned(),
            );
        }
        Ok(Self {
            job,
            wearer: wearer.unwrap_or(&job.set),
            form,
            settings,
            cases,
            notes,
        })
    }

    /// Sews one of the cases, by its number; each can be sewn on its own thread.
    ///
    /// # Errors
    /// [`JobError::Toile`] when it cannot be sewn, or `watch` stops it.
    pub fn sew(
        &self,
        case: usize,
        watch: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Toile, JobError> {
        let case = self.cases.get(case);
        let case = case.ok_or(crate::toile::ToileError::Nothing)?;
        Ok(Toile::sew(
            &case.pattern,
            &self.form,
            &self.settings,
            watch,
        )?)
    }

    /// The report and all files of the cases' toiles, in their order.
    #[must_use]
    pub fn outcome(&self, toiles: &[Toile]) -> ToileOutcome {
        let cases: Vec<ToileCaseReport> = self
            .cases
            .iter()
            .zip(toiles)
            .map(|(case, toile)| ToileCaseReport::new(case, toile))
            .collect();
        let report = ToileReport::new(self.job, self.wearer, &self.settings, cases, &self.notes);
        let lowest = toiles.iter().map(Toile::lowest).fold(0.0, f64::min);
        let mut files = vec![
            file("toile.html", page(&report, &Models(toiles)).into_bytes()),
            file("toile.json", report.document().into_bytes()),
        ];
        for (case, toile) in self.cases.iter().zip(toiles) {
            for shown in Shown::ALL {
                let picture = toile.picture(shown, lowest);
                files.push(file(&picture_name(case.name, shown), picture.png()));
            }
            let model = format!("toile-{}.obj", case.name);
            files.push(file(&model, toile.obj().into_bytes()));
        }
        ToileOutcome { report, files }
    }
}

fn file(name: &str, bytes: Vec<u8>) -> OutputFile {
    OutputFile {
        name: name.to_owned(),
        bytes,
    }
}
