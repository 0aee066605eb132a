//! The command `batch`.

use blockwright::explain::Explain;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::Path;

use blockwright::job::{
    BatchColumns, BatchJob, BatchRecord, BatchReport, BatchTally, JobFile, OutputFile,
};
use blockwright::recipe::OwnBlockError;
use rayon::prelude::*;
use rayon::{ThreadPool, ThreadPoolBuilder};
use serde::Serialize;

use super::digest::digest;
use super::done::as_json;
use super::drafting::{body_file, unresolved, with_block_text};
use super::partial::{EarlierLine, Part, PartError, PartOf, RESULTS};
use super::people_file::{PeopleError, PeopleFile, Rows};
use super::problem::{Failure, Problem, read_argument};
use super::progress::Progress;
use super::row_files::{FILES, RowFiles};
use super::source_file::SourceFile;

/// How many rows a thread is given at a time. They are in memory together, and a run that is
/// killed loses no more than these.
const ROWS_A_THREAD: usize = 32;

/// What the arguments ask for besides the files.
pub(super) struct Wanted {
    pub(super) fit: bool,
    pub(super) patterns: bool,
    pub(super) files: bool,
    pub(super) threads: Option<u16>,
    pub(super) force: bool,
    pub(super) json: bool,
}

#[derive(Debug, Serialize)]
struct Done<'a> {
    status: &'static str,
    #[serde(flatten)]
    report: &'a BatchReport,
    /// How many rows an earlier run had done.
    taken_up: u64,
    /// In which encoding the table was read.
    encoding: &'static str,
    seconds: f64,
    folder: String,
    files: Vec<&'static str>,
}

/// Why a batch stops.
enum Stop {
    People(PeopleError),
    Part(PartError),
}

impl From<PeopleError> for Stop {
    fn from(error: PeopleError) -> Self {
        Self::People(error)
    }
}

impl From<PartError> for Stop {
    fn from(error: PartError) -> Self {
        Self::Part(error)
    }
}

/// Makes the record of a row.
type Maker = fn(&BatchJob, &BatchColumns, u64, &[String]) -> BatchRecord;

/// Makes a job for every row of a table into a folder; the report.
pub(super) fn batch(
    job_path: &Path,
    people_path: &Path,
    folder: Option<&Path>,
    wanted: &Wanted,
) -> Result<String, Failure> {
    let maker: Maker = |job, columns, row, cells| job.record(columns, row, cells);
    match folder {
        Some(folder) => batch_by(maker, [job_path, people_path, folder], wanted),
        None if people_path.as_os_str() == "-" => stream(maker, job_path, wanted),
        None => Err(Failure::wrong(Problem::new(
            "no_folder",
            "the folder to write is missing: write `-o DIR`, or `-` for the table to read it from \
             standard input and write the lines to standard output",
        ))),
    }
}

/// Makes a job for every row of standard input; the lines of the rows, in their order.
fn stream(maker: Maker, job_path: &Path, wanted: &Wanted) -> Result<String, Failure> {
    let wrong = |error: PeopleError| {
        let problem = Problem::new(error.code(), error.to_string());
        Failure::wrong(problem.in_file("standard input"))
    };
    let (job, _) = asked(job_path, wanted)?;
    // It is read twice: first for how it is written.
    let mut kept = tempfile::NamedTempFile::new().map_err(|error| wrong(error.into()))?;
    std::io::copy(&mut std::io::stdin().lock(), &mut kept).map_err(|error| wrong(error.into()))?;
    let people = PeopleFile::open(kept.path()).map_err(wrong)?;
    let columns = BatchColumns::read(people.header()).map_err(|error| {
        let problem = Problem::new(error.code(), error.to_string());
        Failure::wrong(problem.in_file("standard input"))
    })?;
    let threads = pool(wanted)?;
    let mut rows = people.rows().map_err(wrong)?;
    let most = ROWS_A_THREAD * threads.current_num_threads();
    let mut done = 0;
    loop {
        let mut next: Vec<Row> = Vec::new();
        while next.len() < most {
            let Some(cells) = rows.next().map_err(wrong)? else {
                break;
            };
            next.push((done + next.len() as u64 + 1, cells));
        }
        if next.is_empty() {
            return Ok(String::new());
        }
        done += next.len() as u64;
        let made =
            threads.install(|| all_of(maker, &job, &columns, &next, (wanted.patterns, false)));
        let lines: Vec<String> = made.into_iter().map(|one| one.line + "\n").collect();
        super::output::print(&lines.concat())?;
    }
}

/// The job, and a digest of all that it rests on.
fn asked(job_path: &Path, wanted: &Wanted) -> Result<(BatchJob, String), Failure> {
    let file = read_argument(job_path)?;
    if wanted.fit {
        return fitted_job(job_path, &file);
    }
    let job = JobFile::parse_for_batch(file.text()).map_err(|e| Failure::of_file(&file, &e))?;
    if let (Some(path), Some(place)) = (job.block_path(), job.block_place()) {
        let path = path.to_owned();
        let error = OwnBlockError::OneBody { path };
        let problem = Problem::of(&error).at(&file, place, "block");
        return Err(Failure::wrong(problem));
    }
    Ok((job.for_batch(), digest(file.text())))
}

fn pool(wanted: &Wanted) -> Result<ThreadPool, Failure> {
    ThreadPoolBuilder::new()
        .num_threads(wanted.threads.map_or(0, usize::from))
        .build()
        .map_err(|error| Failure::wrong(Problem::new("threads", error.to_string())))
}

/// The records of some rows and their lines.
fn all_of(
    maker: Maker,
    job: &BatchJob,
    columns: &BatchColumns,
    rows: &[Row],
    kinds: (bool, bool),
) -> Vec<Made> {
    let rows = rows.par_iter();
    rows.map(|(row, cells)| {
        let one = || made(maker, job, columns, (*row, cells), kinds);
        whatever_happens(one, || job.faulty(columns, *row, cells))
    })
    .collect()
}

fn batch_by(
    maker: Maker,
    [job_path, people_path, folder]: [&Path; 3],
    wanted: &Wanted,
) -> Result<String, Failure> {
    let shown = folder.display().to_string();
    let wrong = |stop: Stop| {
        Failure::wrong(match stop {
            Stop::People(error) => Problem::new(error.code(), error.to_string())
                .in_file(people_path.display().to_string()),
            Stop::Part(error) => Problem::new(error.code(), error.to_string()).in_file(&*shown),
        })
    };
    let (job, job_digest) = asked(job_path, wanted)?;
    let people = PeopleFile::open(people_path).map_err(|error| wrong(error.into()))?;
    let columns = BatchColumns::read(people.header()).map_err(|error| {
        let problem = Problem::new(error.code(), error.to_string());
        Failure::wrong(problem.in_file(people_path.display().to_string()))
    })?;
    let threads = pool(wanted)?;
    let of = PartOf::new(
        job_digest,
        people.digest().to_owned(),
        (wanted.patterns, wanted.files),
    );
    let part = Part::open(folder, &of, wanted.force).map_err(|error| wrong(error.into()))?;
    let mut work = Work {
        maker,
        job: &job,
        columns: &columns,
        people: &people,
        tally: BatchTally::new(),
        progress: Progress::new(people.count(), wanted.json),
        row_files: RowFiles::within(folder),
    };
    let kinds = (wanted.patterns, wanted.files);
    let taken_up = work.all(part, &threads, kinds).map_err(wrong)?;
    let report = work.tally.report(work.job, &columns);
    let seconds = work.progress.finish().as_secs_f64();
    let written: Vec<&str> = if wanted.files {
        vec![RESULTS, FILES]
    } else {
        vec![RESULTS]
    };
    if wanted.json {
        let done = Done {
            status: "ok",
            report: &report,
            taken_up,
            encoding: if people.is_western() {
                "windows-1252"
            } else {
                "utf-8"
            },
            seconds: (seconds * 1000.0).round() / 1000.0,
            folder: shown,
            files: written,
        };
        return Ok(as_json(&done));
    }
    let mut text = report.text();
    if people.is_western() {
        text.push_str(
            "\nThe table is not UTF-8 and was read as Western European (Windows-1252).\n",
        );
    }
    if taken_up > 0 {
        text.push_str(&format!(
            "\nTaken up behind row {taken_up}, which an earlier run had reached.\n"
        ));
    }
    text.push_str(&format!(
        "\nWritten to {shown}: {}, in {seconds:.1} s\n",
        written.join(", ")
    ));
    Ok(text)
}

/// The job whose block is fitted to everybody, and a digest of all that it rests on.
fn fitted_job(path: &Path, file: &SourceFile) -> Result<(BatchJob, String), Failure> {
    let job = JobFile::parse_for_fit(file.text()).map_err(|e| Failure::of_file(file, &e))?;
    let body = body_file(&job, path, file)?;
    let text = body.as_ref().map(SourceFile::text);
    let (job, block) = with_block_text(job, path, file, body.as_ref())?;
    let size = job.size_place();
    let all = format!("fit\n{}\n{}{block}", file.text(), text.unwrap_or_default());
    let job = job
        .for_batch_fit(text)
        .map_err(|error| unresolved(&error, (file, size), body.as_ref()))?;
    Ok((job, digest(&all)))
}

/// A batch under way.
struct Work<'a> {
    maker: Maker,
    job: &'a BatchJob,
    columns: &'a BatchColumns,
    people: &'a PeopleFile,
    tally: BatchTally,
    progress: Progress,
    row_files: RowFiles,
}

/// What came of a row: its record, the line of that, and its files.
struct Made {
    record: BatchRecord,
    line: String,
    files: Vec<OutputFile>,
}

/// A row by its number, and its cells.
type Row = (u64, Vec<String>);

impl Work<'_> {
    /// Takes up what an earlier run did, makes the rest and finishes the results; how many rows
    /// were taken up.
    fn all(
        &mut self,
        mut part: Part,
        threads: &ThreadPool,
        kinds: (bool, bool),
    ) -> Result<u64, Stop> {
        let mut rows = self.people.rows()?;
        let pending = self.take_up(&mut part, &mut rows)?;
        let taken_up = self.tally.rows();
        let most = ROWS_A_THREAD * threads.current_num_threads();
        let mut next: Vec<Row> = pending.into_iter().collect();
        loop {
            while next.len() < most {
                let Some(cells) = rows.next()? else { break };
                next.push((self.tally.rows() + next.len() as u64 + 1, cells));
            }
            if next.is_empty() {
                break;
            }
            let (maker, job, columns) = (self.maker, self.job, self.columns);
            let made = threads.install(|| all_of(maker, job, columns, &next, kinds));
            let mut lines = String::new();
            for Made {
                record,
                line,
                files,
            } in &made
            {
                let name = self.row_files.name(record.id(), self.tally.rows() + 1);
                if !files.is_empty() {
                    let written = self.row_files.write(&name, files);
                    written.map_err(PartError::from)?;
                }
                let reason = record.refusal().map(ToString::to_string);
                self.tally.count(record.id(), reason.as_deref());
                lines.push_str(line);
                lines.push('\n');
            }
            part.add(&lines)?;
            next.clear();
            self.progress.at(self.tally.rows());
        }
        self.people.must_be_unchanged(rows)?;
        part.finish()?;
        Ok(taken_up)
    }

    /// Counts the lines of an earlier run that belong to their rows; the row that was read and
    /// has none.
    fn take_up(&mut self, part: &mut Part, rows: &mut Rows) -> Result<Option<Row>, Stop> {
        let mut pending = None;
        part.take_up(|line: EarlierLine| {
            let Some(cells) = rows.next()? else {
                return Ok(false);
            };
            let row = self.tally.rows() + 1;
            if self.columns.id(row, &cells) != line.id {
                pending = Some((row, cells));
                return Ok(false);
            }
            self.row_files.name(&line.id, row);
            self.tally.count(&line.id, line.reason.as_deref());
            Ok::<bool, Stop>(true)
        })?;
        Ok(pending)
    }
}

/// A record and its line; if making it panics, the record of that, so that the other rows go on.
fn whatever_happens(make: impl FnOnce() -> Made, fault: impl FnOnce() -> BatchRecord) -> Made {
    // Nothing that the row has touched is used again.
    catch_unwind(AssertUnwindSafe(make)).unwrap_or_else(|_| {
        let record = fault();
        let line = record.line();
        Made {
            record,
            line,
            files: Vec::new(),
        }
    })
}

fn made(
    maker: Maker,
    job: &BatchJob,
    columns: &BatchColumns,
    (row, cells): (u64, &[String]),
    (patterns, files): (bool, bool),
) -> Made {
    let mut record = maker(job, columns, row, cells);
    let mut drawn = Vec::new();
    if files {
        match job.files(columns, (row, cells), &record) {
            Ok(files) => drawn = files.unwrap_or_default(),
            Err(error) => record = record.undrawn(&error),
        }
    }
    let line = if patterns {
        record.line_with_pattern()
    } else {
        record.line()
    };
    Made {
        record,
        line,
        files: drawn,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::panic)]

    use super::*;
    use std::fs;

    #[test]
    fn a_row_that_panics_is_refused_and_the_others_are_made() {
        let folder = tempfile::tempdir().unwrap();
        let path = |name: &str| folder.path().join(name);
        fs::write(path("job.yaml"), "title: Skirt\nblock: skirt\n").unwrap();
        let mut table = String::from("id,height,bust_girth,waist_girth,hip_girth\n");
        for row in 1..=100 {
            table.push_str(&format!("w{row},1680,920,760,1000\n"));
        }
        fs::write(path("people.csv"), table).unwrap();
        let maker: Maker = |job, columns, row, cells| {
            assert!(row % 40 != 7, "a fault on purpose");
            job.record(columns, row, cells)
        };
        let run = |out: &str, threads, patterns| {
            let wanted = Wanted {
                fit: false,
                patterns,
                files: false,
                threads: Some(threads),
                force: false,
                json: true,
            };
            let paths = [path("job.yaml"), path("people.csv"), path(out)];
            let reported = batch_by(maker, paths.each_ref().map(|p| p.as_path()), &wanted);
            let report: serde_json::Value = serde_json::from_str(&reported.unwrap()).unwrap();
            assert_eq!((&report["ok"], &report["refused"]), (&97.into(), &3.into()));
            assert_eq!(report["refusals"][0]["code"], "internal_fault");
            fs::read_to_string(path(out).join(RESULTS)).unwrap()
        };
        let text = run("one", 1, false);
        let lines: Vec<serde_json::Value> = text
            .lines()
            .map(|line| serde_json::from_str(line).unwrap())
            .collect();
        assert_eq!(lines.len(), 100);
        for (line, row) in lines.iter().zip(1..) {
            assert_eq!(line["id"], format!("w{row}"));
            let faulty = row % 40 == 7;
            assert_eq!(line["status"], if faulty { "refused" } else { "ok" });
            let reason = line["reason"].as_str().unwrap_or("");
            assert_eq!(reason.starts_with("internal_fault: "), faulty, "{reason}");
        }
        assert_eq!(text, run("two", 2, false));
        assert_eq!(run("three", 2, true).lines().count(), 100);
    }
}
