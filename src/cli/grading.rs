//! The command `grade`.

use std::path::Path;

use blockwright::grading::Align;
use blockwright::job::{JobFile, Output, PaperSize, run_range};
use blockwright::measurements::{Size, SizeTable};

use super::done::written;
use super::drafting::{body_file, with_block};
use super::font_file::with_font;
use super::problem::{Failure, Problem, read_argument};

/// What the arguments ask for besides the files.
pub(super) struct Wanted<'a> {
    pub(super) labels: &'a [String],
    pub(super) align: Option<Align>,
    pub(super) paper: Option<PaperSize>,
    pub(super) dxf: bool,
    pub(super) force: bool,
}

/// Grades a job over a table into a folder; the report.
pub(super) fn grade(
    job_path: &Path,
    table_path: &Path,
    folder: &Path,
    wanted: &Wanted<'_>,
    json: bool,
) -> Result<String, Failure> {
    let file = read_argument(job_path)?;
    let table_file = read_argument(table_path)?;
    let job = JobFile::parse_for_range(file.text()).map_err(|e| Failure::of_file(&file, &e))?;
    let job = if job.block_path().is_some() {
        let body = body_file(&job, job_path, &file)?;
        with_block(job, job_path, &file, body.as_ref())?
    } else {
        job
    };
    let job = with_font(job, job_path, &file)?;
    let steps = job.step_places().to_vec();
    let table =
        SizeTable::parse(table_file.text()).map_err(|e| Failure::of_file(&table_file, &e))?;
    let table = only(&table, wanted.labels).map_err(|text| {
        Failure::wrong(Problem::new("unknown_size", text).in_file(table_file.shown()))
    })?;
    let mut job = job.for_table(table);
    job.align = wanted.align.unwrap_or_default();
    job.print.paper = wanted.paper.unwrap_or(job.print.paper);
    if wanted.dxf {
        job.outputs = job.outputs.with(Output::Dxf);
    }
    let unit = job.table.unit();
    let outcome =
        run_range(&job).map_err(|error| Failure::of_job(&file, &error, (unit, &steps)))?;
    let report = (&outcome.report, || outcome.report.text());
    written(folder, &outcome.files, wanted.force, json, report)
}

/// The sizes asked for, in the order of the table; all if none is named.
fn only(table: &SizeTable, labels: &[String]) -> Result<SizeTable, String> {
    if labels.is_empty() {
        return Ok(table.clone());
    }
    for label in labels {
        table.body(label).map_err(|error| error.to_string())?;
    }
    let sizes: Vec<Size> = table
        .sizes()
        .iter()
        .filter(|size| labels.iter().any(|label| label.trim() == size.label()))
        .cloned()
        .collect();
    Ok(SizeTable::new(table.name(), table.unit(), sizes))
}
