//! The commands `draft` and `check`.

use std::path::{Path, PathBuf};

use blockwright::job::{
    ComparedReport, Job, JobFile, Outcome, Output, Outputs, PaperSize, ResolveError, run,
};
use blockwright::measurements::{MeasurementSet, Place};
use blockwright::recipe::{OwnBlockError, Ways};
use blockwright::render::json::PatternDocument;

use super::done::{unwritten, written};
use super::font_file::with_font;
use super::problem::{Failure, Problem, read_argument};
use super::source_file::SourceFile;

/// What the arguments ask for besides the files.
#[derive(Default)]
pub(super) struct Wanted {
    pub(super) paper: Option<PaperSize>,
    pub(super) dxf: bool,
    pub(super) demonstration: bool,
    /// The measurement set of another wearer.
    pub(super) wearer: Option<PathBuf>,
    pub(super) force: bool,
}

/// Drafts a job into a folder; the report.
pub(super) fn draft(
    path: &Path,
    folder: &Path,
    wanted: &Wanted,
    json: bool,
) -> Result<String, Failure> {
    let outcome = outcome(path, wanted)?;
    let report = (&outcome.report, || outcome.report.text());
    written(folder, &outcome.files, wanted.force, json, report)
}

/// Drafts a job and writes nothing; the report.
pub(super) fn check(path: &Path, wearer: Option<PathBuf>, json: bool) -> Result<String, Failure> {
    let wanted = Wanted {
        wearer,
        ..Wanted::default()
    };
    let outcome = outcome(path, &wanted)?;
    if json {
        return Ok(unwritten(&outcome.report));
    }
    Ok(outcome.report.text())
}

/// Drafts a job and writes nothing; what changed since an earlier pattern document.
pub(super) fn compare(path: &Path, earlier: &Path, json: bool) -> Result<String, Failure> {
    let file = read_argument(earlier)?;
    let document = PatternDocument::read(file.text().as_bytes())
        .map_err(|error| Failure::wrong(Problem::of(&error).in_file(file.shown())))?;
    let read = read_argument(path)?;
    let (mut job, steps) = job(path, &read)?;
    job.outputs = Outputs::none();
    job.ways = Ways::Skipped;
    let unit = job.set.unit();
    let outcome = run(&job).map_err(|error| Failure::of_job(&read, &error, (unit, &steps)))?;
    let report = ComparedReport::new(&document.pattern, &outcome.pattern, unit);
    Ok(if json {
        unwritten(&report)
    } else {
        report.text()
    })
}

/// Drafts a job and writes nothing; the pattern document.
pub(super) fn document(path: &Path, wearer: Option<PathBuf>) -> Result<String, Failure> {
    let file = read_argument(path)?;
    let (mut job, steps) = job(path, &file)?;
    job.compared = compared(wearer.as_deref())?.or(job.compared);
    job.outputs = Outputs::none().with(Output::Document);
    job.ways = Ways::Skipped;
    let unit = job.set.unit();
    let outcome = run(&job).map_err(|error| Failure::of_job(&file, &error, (unit, &steps)))?;
    let documents = outcome.files.into_iter().map(|file| file.bytes);
    let text = String::from_utf8(documents.flatten().collect());
    // It was written as text.
    Ok(text.unwrap_or_default())
}

fn outcome(path: &Path, wanted: &Wanted) -> Result<Outcome, Failure> {
    let file = read_argument(path)?;
    let (mut job, steps) = job(path, &file)?;
    job.compared = compared(wanted.wearer.as_deref())?.or(job.compared);
    job.print.paper = wanted.paper.unwrap_or(job.print.paper);
    if wanted.dxf {
        job.outputs = job.outputs.with(Output::Dxf);
    }
    if wanted.demonstration {
        job.outputs = job.outputs.with(Output::Demonstration);
    }
    let unit = job.set.unit();
    run(&job).map_err(|error| Failure::of_job(&file, &error, (unit, &steps)))
}

/// Reads the measurement set of another wearer.
fn compared(path: Option<&Path>) -> Result<Option<MeasurementSet>, Failure> {
    let Some(path) = path else { return Ok(None) };
    let file = read_argument(path)?;
    MeasurementSet::parse(file.text())
        .map(Some)
        .map_err(|errors| Failure::of_file(&file, &errors))
}

/// Reads a job and the measurement set it names; and where its steps are written.
pub(super) fn job(path: &Path, file: &SourceFile) -> Result<(Job, Vec<Place>), Failure> {
    let job = JobFile::parse(file.text()).map_err(|errors| Failure::of_file(file, &errors))?;
    let set = body_file(&job, path, file)?;
    let job = with_font(with_block(job, path, file, set.as_ref())?, path, file)?;
    let job = with_wearer(job, path, file)?;
    let (steps, size) = (job.step_places().to_vec(), job.size_place());
    let job = job
        .resolve(set.as_ref().map(SourceFile::text))
        .map_err(|error| unresolved(&error, (file, size), set.as_ref()))?;
    Ok((job, steps))
}

/// The file of the measurement set or size table that a job names.
pub(super) fn body_file(
    job: &JobFile,
    path: &Path,
    file: &SourceFile,
) -> Result<Option<SourceFile>, Failure> {
    let (Some(body), Some(place)) = (job.body_path(), job.body_place()) else {
        return Ok(None);
    };
    let of = ("body_file", "body");
    named_file(body, path, of, |problem, key| problem.at(file, place, key)).map(Some)
}

/// A file that a job names under a key.
fn named_file(
    named: &str,
    job_path: &Path,
    (code, key): (&str, &str),
    at: impl Fn(Problem, &str) -> Problem,
) -> Result<SourceFile, Failure> {
    let path = job_path
        .parent()
        .unwrap_or_else(|| Path::new(""))
        .join(named);
    SourceFile::read(&path).map_err(|error| {
        let text = format!(
            "{error}; looked for {}, since paths are meant from the folder of the job, or from \
             the current one if the job comes from standard input",
            path.display()
        );
        Failure::wrong(at(Problem::new(code, text), key))
    })
}

/// The job with the block of one's own that it names, and the body it was made for.
pub(super) fn with_block(
    job: JobFile,
    path: &Path,
    file: &SourceFile,
    set: Option<&SourceFile>,
) -> Result<JobFile, Failure> {
    Ok(with_block_text(job, path, file, set)?.0)
}

/// The same, and the text of the block.
pub(super) fn with_block_text(
    job: JobFile,
    path: &Path,
    file: &SourceFile,
    set: Option<&SourceFile>,
) -> Result<(JobFile, String), Failure> {
    let (Some(block), Some(place)) = (job.block_path(), job.block_place()) else {
        return Ok((job, String::new()));
    };
    let of = ("block_file", "block.file");
    let read = named_file(block, path, of, |problem, key| problem.at(file, place, key))?;
    let size = job.size_place();
    let with = job.with_block(read.text(), set.map(SourceFile::text));
    let job = with.map_err(|error| match error {
        ResolveError::OwnBlock(OwnBlockError::Asked { .. }) => {
            Failure::wrong(Problem::of(&error).at(file, place, "block"))
        }
        ResolveError::Block { .. } | ResolveError::Drawing { .. } | ResolveError::OwnBlock(_) => {
            Failure::refused(Problem::of(&error).in_file(read.shown()))
        }
        other => unresolved(&other, (file, size), set),
    })?;
    Ok((job, read.text().to_owned()))
}

/// The job with the wearer whom it names.
fn with_wearer(job: JobFile, path: &Path, file: &SourceFile) -> Result<JobFile, Failure> {
    let (Some(wearer), Some(place)) = (job.wearer_path(), job.wearer_place()) else {
        return Ok(job);
    };
    let of = ("wearer_file", "wearer");
    let read = named_file(wearer, path, of, |problem, key| {
        problem.at(file, place, key)
    })?;
    job.with_wearer(read.text()).map_err(|error| match &error {
        ResolveError::Set(errors) => Failure::of_file(&read, errors),
        _ => Failure::refused(Problem::of(&error).in_file(read.shown())),
    })
}

/// What is said of a body that cannot be had.
pub(super) fn unresolved(
    error: &ResolveError,
    (file, size): (&SourceFile, Option<Place>),
    set: Option<&SourceFile>,
) -> Failure {
    match (error, set) {
        (ResolveError::Size(_), _) => {
            let problem = Problem::of(error);
            Failure::wrong(match size {
                Some(place) => problem.at(file, place, "body.size"),
                None => problem.in_file(file.shown()),
            })
        }
        (ResolveError::Set(errors), Some(set)) => Failure::of_file(set, errors),
        (ResolveError::Body(_), Some(set)) => {
            Failure::refused(Problem::new("body", error.to_string()).in_file(set.shown()))
        }
        _ => Failure::wrong(Problem::new("body", error.to_string()).in_file(file.shown())),
    }
}
