//! Making a case in every way that the tool makes one, and looking through all that comes of it.

use super::cases::{Also, Case};
use super::numbers::{wrong_null, wrong_number};
use super::unit::wrong_unit;
use blockwright::job::{
    BatchColumns, BatchTally, Job, JobError, JobFile, LayRun, OutputFile, run, run_range,
};
use blockwright::lay::Cloth;
use blockwright::measurements::{FileErrors, SetReport, SizeTable};
use blockwright::units::Unit;
use serde::Serialize;
use std::cell::{Cell, RefCell};
use std::fmt;
use std::panic::{self, AssertUnwindSafe};

/// What was made.
#[derive(Default)]
pub struct Tally {
    /// The unit of the case that is being made.
    unit: &'static str,
    pub patterns: u64,
    refused: u64,
    wrong: u64,
    ranges: u64,
    rows: u64,
    lays: u64,
    /// Refusals and reports with lengths in the unit of whom they are for.
    pub spoken: u64,
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{} patterns, {} refused, {} jobs that could not be read; {} ranges, {} rows of people, {} lays",
            self.patterns, self.refused, self.wrong, self.ranges, self.rows, self.lays
        )
    }
}

thread_local! {
    static PLACE: RefCell<String> = const { RefCell::new(String::new()) };
    static LISTENING: Cell<bool> = const { Cell::new(false) };
}

/// Keeps where a panic was, instead of printing it.
pub fn listen_to_panics() {
    let before = panic::take_hook();
    panic::set_hook(Box::new(move |info| {
        if !LISTENING.get() {
            before(info);
            return;
        }
        let place = info.location().map(ToString::to_string).unwrap_or_default();
        let said = info.payload_as_str().unwrap_or_default();
        PLACE.with(|slot| *slot.borrow_mut() = format!("{place}: {said}"));
        if !info
            .location()
            .is_some_and(|place| place.file().starts_with("src/"))
        {
            // Where in a library: the whole way there helps.
            let way = std::backtrace::Backtrace::force_capture().to_string();
            let mine: Vec<&str> = way
                .lines()
                .filter(|line| line.contains("blockwright::"))
                .collect();
            let first = mine
                .iter()
                .take(6)
                .map(|line| line.trim())
                .collect::<Vec<_>>()
                .join("; ");
            PLACE.with(|slot| slot.borrow_mut().push_str(&format!(" by {first}")));
        }
    }));
}

/// What was found wrong with a case.
pub fn ask(case: &Case, tally: &mut Tally) -> Vec<String> {
    let mut faults = Vec::new();
    let mut guarded = |what: &str, make: &mut dyn FnMut(&mut Vec<String>)| {
        let mut found = Vec::new();
        LISTENING.set(true);
        let made = panic::catch_unwind(AssertUnwindSafe(|| make(&mut found)));
        LISTENING.set(false);
        if made.is_err() {
            let place = PLACE.with(|slot| slot.borrow().clone());
            found.push(format!("panicked at {place}"));
        }
        faults.extend(found.into_iter().map(|fault| format!("{what}: {fault}")));
    };
    tally.unit = case.unit;
    let mut job = None;
    guarded("reading", &mut |found| job = read(&case.job, tally, found));
    if let Some(job) = &job {
        guarded("draft", &mut |found| drafted(job, tally, found));
        if case.also == Also::Lay {
            guarded("lay", &mut |found| laid(job, case.cloth, tally, found));
        }
    }
    match case.also {
        Also::Range => guarded("range", &mut |found| range(case, tally, found)),
        Also::People => guarded("people", &mut |found| people(case, tally, found)),
        Also::Nothing | Also::Lay => {}
    }
    faults
}

fn read(text: &str, tally: &mut Tally, found: &mut Vec<String>) -> Option<Job> {
    let file = match JobFile::parse(text) {
        Ok(file) => file,
        Err(errors) => {
            tally.wrong += 1;
            refusal(&errors, found);
            return None;
        }
    };
    match file.resolve(None) {
        Ok(job) => Some(job),
        Err(error) => {
            tally.wrong += 1;
            words("refusal", &error.to_string(), found);
            None
        }
    }
}

fn refusal(errors: &FileErrors, found: &mut Vec<String>) {
    words("errors of a file", &errors.to_string(), found);
}

/// A text in which every number is one.
fn words(what: &str, text: &str, found: &mut Vec<String>) {
    if let Some(wrong) = wrong_number(text) {
        found.push(format!("{what}: {wrong}"));
    }
}

/// The same, with lengths in the unit of whom the text is for.
fn said(what: &str, text: &str, tally: &mut Tally, found: &mut Vec<String>) {
    words(what, text, found);
    if let Some(wrong) = wrong_unit(text, tally.unit) {
        found.push(format!("{what}: {wrong} where {} is spoken", tally.unit));
    }
    tally.spoken += u64::from(tally.unit != "mm" && text.contains(&format!(" {}", tally.unit)));
}

/// A report for machines.
fn report(what: &str, report: &impl Serialize, tally: &mut Tally, found: &mut Vec<String>) {
    let value = serde_json::to_value(report).expect("reports are JSON");
    if let Some(wrong) = wrong_null(&value) {
        found.push(format!("{what}: {wrong}"));
    }
    said(what, &value.to_string(), tally, found);
}

fn files(files: &[OutputFile], tally: &mut Tally, found: &mut Vec<String>) {
    for file in files {
        if file.name.ends_with(".pdf") {
            printed(file, found);
            continue;
        }
        let text = std::str::from_utf8(&file.bytes).expect("text files are text");
        // What stands in a style sheet is not measured.
        let text = match (text.find("<style>"), text.find("</style>")) {
            (Some(from), Some(to)) => format!("{}{}", &text[..from], &text[to..]),
            _ => text.to_owned(),
        };
        match file.name.as_str() {
            "fitting.html" | "pattern.json" => said(&file.name, &text, tally, found),
            name => words(name, &text, found),
        }
        if file.name.ends_with(".json") {
            let value = serde_json::from_str(&text).expect("documents are JSON");
            if let Some(wrong) = wrong_null(&value) {
                found.push(format!("{}: {wrong}", file.name));
            }
        }
    }
}

/// The drawing of a printed file, unpacked.
fn printed(file: &OutputFile, found: &mut Vec<String>) {
    let document = lopdf::Document::load_mem(&file.bytes).expect("a printed file can be read");
    for object in document.objects.values() {
        let Ok(stream) = object.as_stream() else {
            continue;
        };
        let unpacked = stream.decompressed_content();
        let content = unpacked.unwrap_or_else(|_| stream.content.clone());
        if let Some(text) = content
            .is_ascii()
            .then(|| String::from_utf8(content).ok())
            .flatten()
        {
            words(&file.name, &text, found);
        }
    }
}

fn drafted(job: &Job, tally: &mut Tally, found: &mut Vec<String>) {
    let set = SetReport::new(&job.set);
    words("measurements", &set.text(), found);
    report("measurements as JSON", &set, tally, found);
    match run(job) {
        Ok(outcome) => {
            tally.patterns += 1;
            said("report", &outcome.report.text(), tally, found);
            report("report as JSON", &outcome.report, tally, found);
            files(&outcome.files, tally, found);
        }
        Err(error) => {
            tally.refused += 1;
            refused(&error, job.set.unit(), tally, found);
        }
    }
}

/// What a refusal says to a person and to a program.
fn refused(error: &JobError, unit: Unit, tally: &mut Tally, found: &mut Vec<String>) {
    if let JobError::Make(made) = error {
        said("refusal", &made.to_string(), tally, found);
    }
    let message = serde_json::to_string(&error.in_unit(unit)).expect("reasons are JSON");
    said("refusal as JSON", &message, tally, found);
}

fn laid(
    job: &Job,
    (width, folded, gap): (f64, bool, f64),
    tally: &mut Tally,
    found: &mut Vec<String>,
) {
    let cloth = match Cloth::new(width).and_then(|cloth| cloth.with_gap(gap)) {
        Ok(cloth) => cloth,
        Err(error) => return words("refusal of cloth", &error.to_string(), found),
    };
    let cloth = if folded { cloth.folded() } else { cloth };
    let outcome = LayRun::new(job, &cloth, 7).and_then(|mut run| {
        for _ in 0..20 {
            run.search.round();
        }
        run.outcome()
    });
    match outcome {
        Ok(outcome) => {
            tally.lays += 1;
            said("report of a lay", &outcome.report.text(), tally, found);
            report("report of a lay as JSON", &outcome.report, tally, found);
            files(&outcome.files, tally, found);
        }
        Err(error) => refused(&error, job.set.unit(), tally, found),
    }
}

fn range(case: &Case, tally: &mut Tally, found: &mut Vec<String>) {
    let (file, table) = match (
        JobFile::parse_for_range(&case.bare),
        SizeTable::parse(&case.table),
    ) {
        (Ok(file), Ok(table)) => (file, table),
        (file, table) => {
            if let Err(errors) = file {
                refusal(&errors, found);
            }
            if let Err(errors) = table {
                refusal(&errors, found);
            }
            return;
        }
    };
    let unit = table.unit();
    match run_range(&file.for_table(table)) {
        Ok(outcome) => {
            tally.ranges += 1;
            said("report of a range", &outcome.report.text(), tally, found);
            report("report of a range as JSON", &outcome.report, tally, found);
            files(&outcome.files, tally, found);
        }
        Err(error) => refused(&error, unit, tally, found),
    }
}

fn people(case: &Case, tally: &mut Tally, found: &mut Vec<String>) {
    let file = match JobFile::parse_for_batch(&case.bare) {
        Ok(file) => file,
        Err(errors) => return refusal(&errors, found),
    };
    let job = file.for_batch();
    let columns = match BatchColumns::read(case.people[0].clone()) {
        Ok(columns) => columns,
        Err(error) => return words("refusal of a header", &error.to_string(), found),
    };
    let mut all = BatchTally::new();
    for (row, cells) in (1_u64..).zip(&case.people[1..]) {
        let record = job.record(&columns, row, cells);
        tally.rows += 1;
        all.count(record.id(), record.refusal().map(|r| r.code.as_str()));
        said("row", &record.line_with_pattern(), tally, found);
    }
    words(
        "report of people",
        &all.report(&job, &columns).text(),
        found,
    );
}
