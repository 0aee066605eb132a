//! The command `lay`.

use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

use blockwright::job::{Job, JobFile, LayRun, LayWearer};
use blockwright::lay::{Cloth, LayError, Search};
use blockwright::measurements::{MeasurementSet, Place, SizeTable};
use blockwright::progress::Progress;
use blockwright::units::Length;
use indicatif::{ProgressBar, ProgressStyle};

use super::args::MOST_ROUNDS;
use super::done::written;
use super::drafting::job;
use super::problem::{Failure, Problem, read_argument};
use super::source_file::SourceFile;

/// How many rounds are made even when no shorter lay can be: they leave pieces as they were drawn.
const LEAST: u32 = 2000;

/// How many rounds are made between two looks at the clock.
const AT_ONCE: u32 = 25;

/// What the arguments ask for besides the files.
pub(super) struct Wanted {
    pub(super) width: Length,
    pub(super) table: Option<PathBuf>,
    pub(super) sizes: Vec<String>,
    pub(super) folded: bool,
    pub(super) one_way: bool,
    pub(super) gap: Option<Length>,
    pub(super) seconds: u64,
    pub(super) seed: Option<u64>,
    pub(super) rounds: Option<u32>,
    pub(super) force: bool,
}

/// Lays a job's pieces on cloth into a folder; the report.
pub(super) fn lay(
    path: &Path,
    folder: &Path,
    wanted: &Wanted,
    json: bool,
) -> Result<String, Failure> {
    let cloth = cloth(wanted)
        .map_err(|error| Failure::wrong(Problem::new("bad_cloth", error.to_string())))?;
    let file = read_argument(path)?;
    let (job, wearers, steps) = match &wanted.table {
        None => {
            let (job, steps) = job(path, &file)?;
            (job, Vec::new(), steps)
        }
        Some(table) => of_table(&file, table, &wanted.sizes)?,
    };
    let said = (job.set.unit(), steps.as_slice());
    let seed = wanted.seed.unwrap_or_else(any_seed);
    let run = match wearers.as_slice() {
        [] => LayRun::new(&job, &cloth, seed),
        several => LayRun::of_several(&job, several, &cloth, seed),
    };
    let mut run = run.map_err(|error| Failure::of_job(&file, &error, said))?;
    // With a seed or rounds the lay must not hang on how fast the machine is.
    if wanted.seed.is_some() || wanted.rounds.is_some() {
        let rounds = wanted.rounds.unwrap_or(Search::USUAL_ROUNDS);
        by_rounds(&mut run.search, rounds);
    } else {
        by_clock(&mut run.search, Duration::from_secs(wanted.seconds));
    }
    let outcome = run
        .outcome()
        .map_err(|error| Failure::of_job(&file, &error, said))?;
    let report = (&outcome.report, || outcome.report.text());
    written(folder, &outcome.files, wanted.force, json, report)
}

/// The most garments that are cut together.
const MOST_COPIES: u16 = 50;

/// The job in sizes of a table, how often each, and where its steps are written.
fn of_table(
    file: &SourceFile,
    table_path: &Path,
    asked: &[String],
) -> Result<(Job, Vec<LayWearer>, Vec<Place>), Failure> {
    let table_file = read_argument(table_path)?;
    let table =
        SizeTable::parse(table_file.text()).map_err(|e| Failure::of_file(&table_file, &e))?;
    let read = JobFile::parse_for_range(file.text()).map_err(|e| Failure::of_file(file, &e))?;
    let steps = read.step_places().to_vec();
    if read.block_path().is_some() {
        let text = "a block of your own is laid for its own body; leave `--table` out";
        return Err(Failure::wrong(
            Problem::new("own_block_in_sizes", text).in_file(file.shown()),
        ));
    }
    let wrong = |text: String| {
        Failure::wrong(Problem::new("unknown_size", text).in_file(table_file.shown()))
    };
    let all: Vec<String> = table.labels().map(str::to_owned).collect();
    let asked = if asked.is_empty() { &all } else { asked };
    let mut wearers: Vec<LayWearer> = Vec::new();
    for size in asked {
        let known = table.labels().any(|label| label == size.trim());
        let (label, copies) = match size.rsplit_once('=') {
            Some((label, copies)) if !known => {
                let copies = copies.trim().parse::<u16>().ok().filter(|n| *n > 0);
                let copies = copies.ok_or_else(|| {
                    wrong(format!(
                        "`{size}` has no number of copies; write `{label}=2`"
                    ))
                })?;
                (label.trim(), copies)
            }
            _ => (size.trim(), 1),
        };
        let body = table
            .body(label)
            .map_err(|error| wrong(error.to_string()))?;
        wearers.push(LayWearer {
            label: label.to_owned(),
            set: MeasurementSet::new(label, table.unit(), body.clone()),
            copies,
        });
    }
    let total = wearers
        .iter()
        .fold(0_u16, |sum, one| sum.saturating_add(one.copies));
    if total > MOST_COPIES {
        return Err(wrong(format!(
            "{total} garments are asked for; at most {MOST_COPIES} are laid at once"
        )));
    }
    let names: Vec<String> = wearers
        .iter()
        .map(|one| match one.copies {
            1 => one.label.clone(),
            copies => format!("{copies} × {}", one.label),
        })
        .collect();
    let range = read.for_table(table.clone());
    let first = wearers.first().map(|one| one.set.body().clone());
    let body = first.ok_or_else(|| wrong("the table has no sizes".to_owned()))?;
    let set = MeasurementSet::new(format!("sizes {}", names.join(", ")), table.unit(), body);
    let mut job = Job::of(range.recipe, set);
    job.print = range.print;
    Ok((job, wearers, steps))
}

fn cloth(wanted: &Wanted) -> Result<Cloth, LayError> {
    let mut cloth = Cloth::new(wanted.width.mm())?;
    if let Some(gap) = wanted.gap {
        cloth = cloth.with_gap(gap.mm())?;
    }
    if wanted.folded {
        cloth = cloth.folded();
    }
    if wanted.one_way {
        cloth = cloth.one_way();
    }
    Ok(cloth)
}

/// A seed of six digits from the clock, short enough to be typed again.
fn any_seed() -> u64 {
    let now = SystemTime::now().duration_since(UNIX_EPOCH);
    now.map_or(1, |now| u64::from(now.subsec_nanos()) % 1_000_000)
}

fn by_rounds(search: &mut Search, rounds: u32) {
    let bar = bar(u64::from(rounds));
    search.run(rounds, &mut |progress| {
        if progress.done.is_multiple_of(u64::from(AT_ONCE)) {
            show(&bar, progress.done, progress);
        }
        ControlFlow::Continue(())
    });
    bar.finish_and_clear();
}

fn by_clock(search: &mut Search, time: Duration) {
    let begun = Instant::now();
    let bar = bar(u64::try_from(time.as_millis()).unwrap_or(u64::MAX));
    let enough = |search: &Search| search.is_shortest() && search.rounds() >= LEAST;
    while begun.elapsed() < time && !enough(search) && search.rounds() < MOST_ROUNDS {
        let gone = u64::try_from(begun.elapsed().as_millis()).unwrap_or(u64::MAX);
        search.run(search.rounds().saturating_add(AT_ONCE), &mut |progress| {
            show(&bar, gone, progress);
            ControlFlow::Continue(())
        });
    }
    bar.finish_and_clear();
}

/// A bar on standard error, which draws nothing unless that is a terminal.
fn bar(length: u64) -> ProgressBar {
    let bar = ProgressBar::new(length);
    if let Ok(style) = ProgressStyle::with_template("laying {bar:30} {msg}") {
        bar.set_style(style);
    }
    bar
}

fn show(bar: &ProgressBar, position: u64, progress: Progress) {
    bar.set_position(position);
    bar.set_message(format!(
        "{:.0} mm, round {}",
        progress.best.unwrap_or_default(),
        progress.done
    ));
}
