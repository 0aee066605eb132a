//! The command `toile`.

use std::io::IsTerminal as _;
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU64, Ordering};

use blockwright::job::{JobError, ToileRun};
use blockwright::measurements::MeasurementSet;
use blockwright::progress::Progress;
use blockwright::toile::{Fabric, Quality, Seating, Toile, ToileError, ToileSettings};
use blockwright::units::Length;
use indicatif::{ProgressBar, ProgressStyle};
use rayon::prelude::*;

use super::done::written;
use super::drafting::job;
use super::problem::{Failure, Problem, read_argument};

/// What the arguments ask for besides the files.
pub(super) struct Wanted {
    pub(super) wearer: Option<PathBuf>,
    pub(super) draft: bool,
    pub(super) seating: Seating,
    pub(super) weight: Option<f64>,
    pub(super) bending_length: Option<Length>,
    pub(super) force: bool,
}

/// Sews a job's pattern on a wearer on screen into a folder; the report.
pub(super) fn toile(
    path: &Path,
    folder: &Path,
    wanted: &Wanted,
    json: bool,
) -> Result<String, Failure> {
    let file = read_argument(path)?;
    let (mut job, steps) = job(path, &file)?;
    let settings = settings(wanted, job.cloth)
        .map_err(|error| Failure::wrong(Problem::new("bad_cloth", error.to_string())))?;
    let given = wanted.wearer.as_deref().map(wearer).transpose()?;
    job.compared = given.or(job.compared);
    let wearer = job.compared.clone();
    let unit = wearer.as_ref().unwrap_or(&job.set).unit();
    let fail = |error: &JobError| Failure::of_job(&file, error, (unit, &steps));
    let run = ToileRun::new(&job, wearer.as_ref(), settings).map_err(|error| fail(&error))?;
    let toiles = sewn(&run, json).map_err(|error| fail(&error))?;
    let outcome = run.outcome(&toiles);
    let report = (&outcome.report, || outcome.report.text());
    written(folder, &outcome.files, wanted.force, json, report)
}

fn wearer(path: &Path) -> Result<MeasurementSet, Failure> {
    let file = read_argument(path)?;
    MeasurementSet::parse(file.text()).map_err(|errors| Failure::of_file(&file, &errors))
}

/// What the arguments ask for; they outrank the cloth of the job.
fn settings(wanted: &Wanted, cloth: Option<Fabric>) -> Result<ToileSettings, ToileError> {
    let usual = ToileSettings::default();
    let mut cloth = cloth.unwrap_or(usual.cloth);
    if let (Some(weight), Some(bending)) = (wanted.weight, &wanted.bending_length) {
        cloth = Fabric::new(weight, bending.mm())?;
    }
    Ok(ToileSettings {
        cloth,
        quality: if wanted.draft {
            Quality::Draft
        } else {
            usual.quality
        },
        seating: wanted.seating,
    })
}

/// All toiles of a run, each on a thread of its own; a bar on a terminal only.
fn sewn(run: &ToileRun<'_>, quiet: bool) -> Result<Vec<Toile>, JobError> {
    let bar = (!quiet && std::io::stderr().is_terminal()).then(bar);
    let done: Vec<AtomicU64> = run.cases.iter().map(|_| AtomicU64::new(0)).collect();
    let show = |case: usize, progress: Progress| {
        if let Some(one) = done.get(case) {
            one.store(progress.done, Ordering::Relaxed);
        }
        let all: u64 = done.iter().map(|one| one.load(Ordering::Relaxed)).sum();
        if let Some(bar) = &bar {
            bar.set_length(progress.total * done.len() as u64);
            bar.set_position(all);
        }
        ControlFlow::Continue(())
    };
    let toiles = (0..run.cases.len())
        .into_par_iter()
        .map(|case| run.sew(case, &mut |progress| show(case, progress)))
        .collect();
    if let Some(bar) = &bar {
        bar.finish_and_clear();
    }
    toiles
}

fn bar() -> ProgressBar {
    let bar = ProgressBar::new(1000);
    if let Ok(style) = ProgressStyle::with_template("sewing {bar:40} {percent} %") {
        bar.set_style(style);
    }
    bar
}
