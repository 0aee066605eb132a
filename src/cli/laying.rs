//! The command `lay`.

use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant, SystemTime, UNIX_EPOCH};

use blockwright::job::{Job, JobFile, LayRun, LayWearer};
use blockwright::lay::{Cloth, LayError, Search};
use blockwright::measurements::{MeasurementSet, Place, Size, SizeTable};
use blockwright::progress::Progress;
use blockwright::units::{Length, Unit};
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
    pub(super) wearers: Vec<String>,
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
        None if wanted.wearers.is_empty() => {
            let (job, steps) = job(path, &file)?;
            (job, Vec::new(), steps)
        }
        None => of_wearers(&file, &wanted.wearers)?,
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
    let read = read_for_several(file, "--table")?;
    let wrong = |text: String| {
        Failure::wrong(Problem::new("unknown_size", text).in_file(table_file.shown()))
    };
    let all: Vec<String> = table.labels().map(str::to_owned).collect();
    let asked = if asked.is_empty() { &all } else { asked };
    let mut wearers: Vec<LayWearer> = Vec::new();
    for size in asked {
        let known = table.labels().any(|label| label == size.trim());
        let (label, copies) = copies_of(size, known).map_err(wrong)?;
        let body = table
            .body(label)
            .map_err(|error| wrong(error.to_string()))?;
        wearers.push(LayWearer {
            label: label.to_owned(),
            set: MeasurementSet::new(label, table.unit(), body.clone()),
            copies,
        });
    }
    let steps = read.step_places().to_vec();
    let job = job_of_several(read, table, &wearers, "sizes").map_err(wrong)?;
    Ok((job, wearers, steps))
}

/// The job for wearers whose sets stand in files of their own, how often each, and where its steps are
/// written.
fn of_wearers(
    file: &SourceFile,
    asked: &[String],
) -> Result<(Job, Vec<LayWearer>, Vec<Place>), Failure> {
    let read = read_for_several(file, "--wearer")?;
    let wrong = |text: String| Failure::wrong(Problem::new("bad_wearer", text));
    let (mut wearers, mut bodies) = (Vec::new(), Vec::new());
    let mut unit = None;
    for one in asked {
        let (path, copies) = copies_of(one, Path::new(one).exists()).map_err(wrong)?;
        let set_file = read_argument(Path::new(path))?;
        let set = MeasurementSet::parse(set_file.text())
            .map_err(|errors| Failure::of_file(&set_file, &errors))?;
        unit = unit.or(Some(set.unit()));
        bodies.push(Size::new(set.name(), set.body().clone()));
        wearers.push(LayWearer {
            label: set.name().to_owned(),
            set,
            copies,
        });
    }
    let table = SizeTable::new("wearers", unit.unwrap_or(Unit::Cm), bodies);
    let steps = read.step_places().to_vec();
    let job = job_of_several(read, table, &wearers, "for").map_err(wrong)?;
    Ok((job, wearers, steps))
}

/// A job to be made for several bodies.
fn read_for_several(file: &SourceFile, option: &str) -> Result<JobFile, Failure> {
    let read = JobFile::parse_for_range(file.text()).map_err(|e| Failure::of_file(file, &e))?;
    if read.block_path().is_some() {
        let text = format!("a block of your own is laid for its own body; leave `{option}` out");
        return Err(Failure::wrong(
            Problem::new("own_block_in_sizes", text).in_file(file.shown()),
        ));
    }
    Ok(read)
}

/// What is asked for and how often: `12` or `12=2`. What is known by its whole name is asked for once.
fn copies_of(asked: &str, known: bool) -> Result<(&str, u16), String> {
    match asked.rsplit_once('=') {
        Some((label, copies)) if !known => {
            let copies = copies.trim().parse::<u16>().ok().filter(|n| *n > 0);
            let copies = copies
                .ok_or_else(|| format!("`{asked}` has no number of copies; write `{label}=2`"))?;
            Ok((label.trim(), copies))
        }
        _ => Ok((asked.trim(), 1)),
    }
}

/// The job for several bodies; what is wrong with them otherwise.
fn job_of_several(
    read: JobFile,
    table: SizeTable,
    wearers: &[LayWearer],
    called: &str,
) -> Result<Job, String> {
    let total = wearers
        .iter()
        .fold(0_u16, |sum, one| sum.saturating_add(one.copies));
    if total > MOST_COPIES {
        return Err(format!(
            "{total} garments are asked for; at most {MOST_COPIES} are laid at once"
        ));
    }
    let names: Vec<String> = wearers
        .iter()
        .map(|one| match one.copies {
            1 => one.label.clone(),
            copies => format!("{copies} × {}", one.label),
        })
        .collect();
    let first = wearers.first().map(|one| one.set.body().clone());
    let body = first.ok_or_else(|| "the table has no sizes".to_owned())?;
    let unit = table.unit();
    let range = read.for_table(table);
    let set = MeasurementSet::new(format!("{called} {}", names.join(", ")), unit, body);
    let mut job = Job::of(range.recipe, set);
    job.print = range.print;
    Ok(job)
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

/// Whether somebody has asked to stop, by Ctrl-C: what was found so far is written then. Asked again, the
/// command ends at once.
fn asked_to_stop() -> Arc<AtomicBool> {
    let asked = Arc::new(AtomicBool::new(false));
    let again = Arc::clone(&asked);
    // Where the system does not let itself be asked, Ctrl-C ends the command as it always does.
    let _ = ctrlc::set_handler(move || {
        if again.swap(true, Ordering::Relaxed) {
            std::process::exit(130);
        }
    });
    asked
}

fn by_rounds(search: &mut Search, rounds: u32) {
    let bar = bar(u64::from(rounds));
    let stop = asked_to_stop();
    search.run(rounds, &mut |progress| {
        if progress.done.is_multiple_of(u64::from(AT_ONCE)) {
            show(&bar, progress.done, progress);
        }
        if stop.load(Ordering::Relaxed) {
            return ControlFlow::Break(());
        }
        ControlFlow::Continue(())
    });
    bar.finish_and_clear();
}

fn by_clock(search: &mut Search, time: Duration) {
    let begun = Instant::now();
    let bar = bar(u64::try_from(time.as_millis()).unwrap_or(u64::MAX));
    let stop = asked_to_stop();
    let enough = |search: &Search| {
        stop.load(Ordering::Relaxed) || (search.is_shortest() && search.rounds() >= LEAST)
    };
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
