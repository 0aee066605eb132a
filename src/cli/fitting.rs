//! The command `fit`.

use std::path::{Path, PathBuf};

use blockwright::fit::FitSettings;
use blockwright::job::{FitOutcome, JobFile, OutputFile, Outputs, run_fit};
use blockwright::measurements::MeasurementSet;
use blockwright::units::Length;

use super::done::{unwritten, written};
use super::drafting::{body_file, unresolved, with_block_text};
use super::problem::{Failure, read_argument};

/// What the arguments ask for besides the files.
pub(super) struct Wanted {
    pub(super) least: Option<Length>,
    pub(super) least_degrees: Option<f64>,
    pub(super) output: Option<PathBuf>,
    pub(super) force: bool,
    pub(super) json: bool,
}

/// Fits a job's block to a wearer; the report.
pub(super) fn fit(job_path: &Path, wearer_path: &Path, wanted: &Wanted) -> Result<String, Failure> {
    let file = read_argument(job_path)?;
    let wearer_file = read_argument(wearer_path)?;
    let wearer = MeasurementSet::parse(wearer_file.text())
        .map_err(|errors| Failure::of_file(&wearer_file, &errors))?;
    let job = JobFile::parse_for_fit(file.text()).map_err(|e| Failure::of_file(&file, &e))?;
    let body = body_file(&job, job_path, &file)?;
    let (job, block) = with_block_text(job, job_path, &file, body.as_ref())?;
    let text = body.as_ref().map(super::source_file::SourceFile::text);
    let (steps, size) = (job.step_places().to_vec(), job.size_place());
    let mut asked = job
        .resolve_for(text, wearer)
        .map_err(|error| unresolved(&error, (&file, size), body.as_ref()))?;
    asked.settings = settings(wanted);
    if wanted.output.is_none() {
        // The report alone needs no drawing.
        asked.job.outputs = Outputs::none();
    }
    let unit = asked.wearer.unit();
    let outcome =
        run_fit(&asked).map_err(|error| Failure::of_job(&file, &error, (unit, &steps)))?;
    let report = outcome.report.clone();
    match &wanted.output {
        Some(folder) => {
            let files = files(outcome, asked.wearer.name(), block);
            written(
                folder,
                &files,
                wanted.force,
                wanted.json,
                (&report, || report.text()),
            )
        }
        None if wanted.json => Ok(unwritten(&report)),
        None => Ok(report.text()),
    }
}

fn settings(wanted: &Wanted) -> FitSettings {
    let mut settings = FitSettings::default();
    if let Some(least) = wanted.least {
        settings.least_length = least.mm();
        settings.round_length = settings.round_length.min(least.mm());
    }
    if let Some(least) = wanted.least_degrees {
        settings.least_degrees = least;
        settings.round_degrees = settings.round_degrees.min(least);
    }
    settings
}

/// Where a block of one's own is kept beside the fitted job.
const OWN_DOCUMENT: &str = "own-block.json";
const OWN_DRAWING: &str = "own-block.svg";

/// The files of the altered job, and the job itself; beside it the block of one's own that it is made
/// from, so that the folder can be taken anywhere.
fn files(outcome: FitOutcome, wearer: &str, block: String) -> Vec<OutputFile> {
    let FitOutcome {
        mut job, mut files, ..
    } = outcome;
    if let Some(own) = job.recipe.own.take() {
        let drawn = own.path().to_ascii_lowercase().ends_with(".svg");
        let name = if drawn { OWN_DRAWING } else { OWN_DOCUMENT };
        job.recipe.own = Some(own.moved_to(name));
        files.push(OutputFile {
            name: name.to_owned(),
            bytes: block.into_bytes(),
        });
    }
    let text = format!(
        "# The block fitted to {}: the same steps as in the report. Change amounts, leave steps out,\n\
         # and draft again: blockwright draft fitted-job.yaml -o DIR\n{}",
        one_line(wearer),
        job.to_yaml()
    );
    files.push(OutputFile {
        name: "fitted-job.yaml".to_owned(),
        bytes: text.into_bytes(),
    });
    files
}

/// A name as it may stand in a comment.
fn one_line(name: &str) -> String {
    let words: Vec<&str> = name.split_whitespace().collect();
    words
        .join(" ")
        .chars()
        .filter(|c| !c.is_control())
        .collect()
}
