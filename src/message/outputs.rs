//! The answer to `output`: files to print, to cut by, to hand on.

use super::asked::{MadeFrom, Wanted, What};
use super::made_files::MadeFile;
use super::problem::{Problem, Problems};
use crate::job::{
    BatchColumns, BatchJob, Job, LayRun, Output, OutputFile, Outputs, run, run_range,
};
use crate::lay::Cloth;
use crate::measurements::{Kind, Measurement, SizeTable};
use crate::units::{Length, Unit};
use serde::Serialize;

/// How many rounds a lay is searched for, unless the message says.
const ROUNDS: u32 = 1500;
/// The most rounds: some seconds.
const MOST_ROUNDS: u32 = 50_000;

#[derive(Debug, Serialize)]
pub(super) struct OutputAnswer {
    files: Vec<MadeFile>,
    /// What there is to say, in words.
    text: String,
}

pub(super) fn output(asked: &MadeFrom, wanted: &Wanted) -> Result<OutputAnswer, Problems> {
    let one = |kind| of_job(&asked.job()?, Outputs::none().with(kind));
    match wanted.what {
        What::Pages => one(Output::Pages),
        What::Sheet => one(Output::Sheet),
        What::Svg => one(Output::Svg),
        What::Document => one(Output::Document),
        What::Dxf => one(Output::Dxf),
        What::Fitting => one(Output::Fitting),
        What::Range => range(asked, wanted),
        What::Lay => lay(&asked.job()?, wanted),
        What::Batch => batch(&asked.job()?),
    }
}

fn answered(files: &[OutputFile], text: String) -> OutputAnswer {
    OutputAnswer {
        files: files.iter().map(MadeFile::from).collect(),
        text,
    }
}

fn of_job(job: &Job, outputs: Outputs) -> Result<OutputAnswer, Problems> {
    let mut job = job.clone();
    job.outputs = outputs;
    let unit = job.set.unit();
    let outcome = run(&job).map_err(|error| Problems::of_job(&error, unit))?;
    let pages = outcome.report.pages.as_ref();
    let text = pages.map(crate::job::PagesReport::text);
    Ok(answered(&outcome.files, text.unwrap_or_default()))
}

fn range(asked: &MadeFrom, wanted: &Wanted) -> Result<OutputAnswer, Problems> {
    let table = SizeTable::parse(&wanted.table)?;
    let file = asked.with_block(asked.file()?)?;
    let mut job = file.for_table(table);
    job.outputs = job.outputs.with(Output::Dxf);
    let unit = job.table.unit();
    let outcome = run_range(&job).map_err(|error| Problems::of_job(&error, unit))?;
    Ok(answered(&outcome.files, outcome.report.text()))
}

fn lay(job: &Job, wanted: &Wanted) -> Result<OutputAnswer, Problems> {
    let unit = job.set.unit();
    let width = Length::parse(&wanted.width, Some(unit)).map_err(|error| {
        Problems::wrong(Problem::of(crate::explain::Explain::explanation(&error)))
    })?;
    let cloth = Cloth::new(width.mm()).map_err(|error| Problems::of_job(&error.into(), unit))?;
    let cloth = if wanted.folded { cloth.folded() } else { cloth };
    let cloth = if wanted.one_way {
        cloth.one_way()
    } else {
        cloth
    };
    let mut laying = LayRun::new(job, &cloth, 0).map_err(|error| Problems::of_job(&error, unit))?;
    for _ in 0..wanted.rounds.unwrap_or(ROUNDS).min(MOST_ROUNDS) {
        if laying.search.is_shortest() {
            break;
        }
        laying.search.round();
    }
    let outcome = laying
        .outcome()
        .map_err(|error| Problems::of_job(&error, unit))?;
    Ok(answered(&outcome.files, outcome.report.text()))
}

/// The line that a table of people with this wearer alone would get.
fn batch(job: &Job) -> Result<OutputAnswer, Problems> {
    let body = job.set.body();
    let taken: Vec<(Measurement, f64)> = body.taken().collect();
    let header = std::iter::once("id".to_owned()).chain(taken.iter().map(|(of, _)| {
        let unit = match of.kind() {
            Kind::Length => Unit::Mm.name(),
            Kind::Angle => "deg",
        };
        format!("{} ({unit})", of.name())
    }));
    let header: Vec<String> = header.collect();
    let cells =
        std::iter::once(job.set.name().to_owned()).chain(taken.iter().map(|(of, value)| {
            match of.kind() {
                Kind::Length => value.to_string(),
                Kind::Angle => value.to_degrees().to_string(),
            }
        }));
    let cells: Vec<String> = cells.collect();
    let columns = BatchColumns::read(&header).map_err(|error| {
        Problems::wrong(Problem::of(crate::explain::Explain::explanation(&error)))
    })?;
    let record = BatchJob::of(job.recipe.clone()).record(&columns, 1, &cells);
    let file = OutputFile {
        name: "results.jsonl".to_owned(),
        bytes: format!("{}\n", record.line_with_pattern()).into_bytes(),
    };
    let text = record
        .refusal()
        .map_or_else(String::new, ToString::to_string);
    Ok(answered(&[file], text))
}
