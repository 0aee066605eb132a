//! What is asked of the library for any bytes at all: no panic, an answer in bounded time, and
//! where there is no result, words that say why.
//!
//! The fuzz targets of `tests/fuzz` are these functions; `tests/command/corpus` asks the same of every
//! input that is kept.

use blockwright::alterations::{Alteration, CATALOGUE, Request, alter};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::explain::Explain;
use blockwright::invariants::{Tolerances, check_all};
use blockwright::job::{BatchColumns, BatchJob, BatchRecord, Job, JobFile, run};
use blockwright::measurements::{
    Body, FileErrors, Measurement, MeasurementSet, SetReport, SizeTable,
};
use blockwright::piece::{MeasureUnit, Pattern};
use serde_json::{Value, json};

/// A target by its name, which is also that of its folder of inputs.
pub type Target = (&'static str, fn(&[u8]));

/// All targets.
pub const TARGETS: [Target; 6] = [
    ("job_text", job_text),
    ("made_job", made_job),
    ("measurement_set", measurement_set),
    ("size_table", size_table),
    ("people_table", people_table),
    ("alteration_chain", alteration_chain),
];

/// A body for jobs that name one in another file.
const SET: &str = "name: Ada\nunit: cm\nmeasurements: \
                   {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";

/// A job file as a text, read in every way.
pub fn job_text(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    for read in [JobFile::parse_for_range, JobFile::parse_for_batch] {
        if let Err(errors) = read(text) {
            must_be_reported(&errors);
        }
    }
    resolved(text);
}

fn resolved(text: &str) -> Option<Job> {
    match JobFile::parse(text) {
        Err(errors) => {
            must_be_reported(&errors);
            None
        }
        Ok(file) => {
            let set = file.body_path().is_some().then_some(SET);
            file.resolve(set)
                .map_err(|error| assert!(!error.to_string().is_empty()))
                .ok()
        }
    }
}

/// A job file that is made to the last page.
pub fn made_job(bytes: &[u8]) {
    let Some(job) = std::str::from_utf8(bytes).ok().and_then(resolved) else {
        return;
    };
    match run(&job) {
        Ok(outcome) => {
            assert!(outcome.file("pattern.json").is_some());
            assert!(outcome.files.iter().all(|file| !file.bytes.is_empty()));
            assert!(!outcome.report.text().is_empty());
        }
        Err(error) => assert!(!error.to_string().is_empty() && !error.code().is_empty()),
    }
}

/// A measurement set as a text.
pub fn measurement_set(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    match MeasurementSet::parse(text) {
        Ok(set) => assert!(!SetReport::new(&set).text().is_empty()),
        Err(errors) => must_be_reported(&errors),
    }
}

/// A size table as a text.
pub fn size_table(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    match SizeTable::parse(text) {
        Ok(table) => {
            for size in table.sizes() {
                assert_eq!(table.body(size.label()), Ok(size.body()));
            }
        }
        Err(errors) => must_be_reported(&errors),
    }
}

fn must_be_reported(errors: &FileErrors) {
    assert!(!errors.all().is_empty());
    assert!(!errors.to_string().is_empty());
}

/// How many rows of a table of people are made.
const ROWS: usize = 4;

/// A table of people, read and made as a batch does.
pub fn people_table(bytes: &[u8]) {
    let mut rows = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .from_reader(bytes);
    let mut records = rows.byte_records().map_while(Result::ok).map(|record| {
        let cells = record
            .iter()
            .map(|cell| String::from_utf8_lossy(cell).into_owned());
        cells.collect::<Vec<String>>()
    });
    let columns = match BatchColumns::read(records.next().unwrap_or_default()) {
        Ok(columns) => columns,
        Err(error) => {
            assert!(!error.to_string().is_empty() && !error.code().is_empty());
            return;
        }
    };
    for column in columns.passed_over() {
        assert!(column.name.chars().count() <= 41);
    }
    let job = BatchJob::new("Skirt", Block::Skirt);
    for (index, cells) in records.take(ROWS).enumerate() {
        let record = job.record(&columns, index as u64 + 1, &cells);
        assert!(record.pattern().is_some() != record.refusal().is_some());
        must_be_one_line(&record);
    }
}

fn must_be_one_line(record: &BatchRecord) {
    for line in [record.line(), record.line_with_pattern()] {
        assert!(!line.contains('\n'), "{line}");
        let read: Value = serde_json::from_str(&line).expect("a record is JSON");
        assert_eq!(read["id"], record.id());
    }
}

/// The bytes of an input, one after the other; noughts behind its end.
struct Bytes<'a>(&'a [u8]);

impl Bytes<'_> {
    fn next(&mut self) -> u8 {
        let Some((first, rest)) = self.0.split_first() else {
            return 0;
        };
        self.0 = rest;
        *first
    }

    fn pair(&mut self) -> u16 {
        u16::from_le_bytes([self.next(), self.next()])
    }

    /// A value between two.
    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * f64::from(self.pair()) / f64::from(u16::MAX)
    }

    /// An amount: mostly of the size of `usual`, sometimes any number there is.
    fn amount(&mut self, usual: f64) -> f64 {
        match self.next() {
            0 => f64::from_bits(u64::from_le_bytes(std::array::from_fn(|_| self.next()))),
            1 => f64::INFINITY,
            2 => 1e300,
            3 => self.between(-1000.0, 1000.0),
            _ => usual * self.between(-4.0, 4.0),
        }
    }
}

/// The most alterations of one chain.
const LONGEST_CHAIN: usize = 5;

/// Any bytes as a body, a block and a chain of alterations of the catalogue: every step holds,
/// or is refused by name.
pub fn alteration_chain(bytes: &[u8]) {
    let mut bytes = Bytes(bytes);
    let Some(pattern) = drafted(&mut bytes) else {
        return;
    };
    let mut chain = Vec::new();
    while chain.len() < LONGEST_CHAIN && !bytes.0.is_empty() {
        chain.extend(step(&mut bytes));
    }
    match alter(&pattern, &chain) {
        Ok(done) => {
            assert_eq!(done.accounts.len(), chain.len());
            let broken = check_all(&done.pattern, &Tolerances::altered());
            assert!(broken.is_empty(), "{broken:?}");
        }
        Err(refused) => {
            assert!(refused.step >= 1 && refused.step <= chain.len());
            assert!(!refused.to_string().is_empty());
        }
    }
}

fn drafted(bytes: &mut Bytes<'_>) -> Option<Pattern> {
    let block = Block::ALL[usize::from(bytes.next()) % Block::ALL.len()];
    let bust = bytes.between(650.0, 1700.0);
    let taken = [
        (Measurement::Height, bytes.between(1300.0, 2100.0)),
        (Measurement::BustGirth, bust),
        (Measurement::WaistGirth, bust + bytes.between(-400.0, 200.0)),
        (Measurement::HipGirth, bust + bytes.between(-150.0, 300.0)),
    ];
    let mut options = DraftOptions::of(block);
    let sleeves = [None, Some(SleeveLength::Short), Some(SleeveLength::Long)];
    options.sleeve = sleeves[usize::from(bytes.next()) % 3].filter(|_| block.has_armscye());
    draft(&Body::from_taken(taken).ok()?, &options).ok()
}

/// An alteration by its own amount, or by settings that a job could have.
fn step(bytes: &mut Bytes<'_>) -> Option<Box<dyn Alteration>> {
    let entry = &CATALOGUE[usize::from(bytes.next()) % CATALOGUE.len()];
    let example = (entry.example)();
    let kind = bytes.next();
    if entry.name.starts_with("dart_") {
        let settings = dart(entry.name, kind, bytes);
        return Request::new(entry.name, settings).ok()?.alteration().ok();
    }
    let amount = bytes.amount(example.amount().unwrap_or(10.0));
    let key = match example.unit() {
        MeasureUnit::Millimetres => "amount",
        MeasureUnit::Degrees => "degrees",
    };
    let settings = match kind % 8 {
        0 => json!({"to": amount * 20.0}),
        1 => json!({key: amount, "side": "left"}),
        2 => json!({key: amount, "side": "right"}),
        3 => json!({key: amount, "hips_checked": true}),
        4 => json!({key: amount, "hinge": "shared"}),
        5 => json!({key: amount, "at": "sleeve"}),
        _ => return Some(example.with_amount(amount)),
    };
    Request::new(entry.name, settings).ok()?.alteration().ok()
}

const DARTS: [&str; 4] = ["bust", "waist", "shoulder", "elbow"];

const EDGES: [&str; 7] = [
    "shoulder",
    "neckline",
    "armscye",
    "side_seam",
    "waist",
    "hem",
    "centre_front",
];

/// The settings of an alteration of darts.
fn dart(name: &str, kind: u8, bytes: &mut Bytes<'_>) -> Value {
    let dart = DARTS[usize::from(bytes.next()) % DARTS.len()];
    let other = DARTS[usize::from(bytes.next()) % DARTS.len()];
    let edge = EDGES[usize::from(bytes.next()) % EDGES.len()];
    let mut at = || bytes.amount(1.0);
    let mut settings = match name {
        "dart_merging" => json!({"darts": [dart, other], "to": edge}),
        "dart_division" => json!({"dart": dart, "into": [
            {"to": edge, "at": at(), "share": at()},
            {"to": "shoulder", "at": at(), "share": at()},
        ]}),
        "dart_to_seam" if kind.is_multiple_of(3) => json!({"darts": [dart, other]}),
        _ => json!({"dart": dart, "to": edge, "at": at()}),
    };
    if let (Value::Object(map), 4..8) = (&mut settings, kind % 16) {
        map.insert("side".to_owned(), json!("left"));
    }
    settings
}
