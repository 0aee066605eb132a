//! What is to be said about a batch.

use std::collections::{BTreeMap, HashMap};
use std::fmt::Write as _;
use std::hash::{DefaultHasher, Hash as _, Hasher as _};

use serde::Serialize;

use crate::job::{BatchColumns, BatchJob, PassedOver};
use crate::recipe::one_line;

/// How many repeated ids are listed one by one.
const MOST_REPEATED: usize = 20;

/// The most characters of an id or a reason that a person is shown.
const LONGEST: usize = 300;

/// How many unused columns a person is shown.
const MOST_COLUMNS: usize = 12;

/// A reason for which rows were refused.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{BatchColumns, BatchJob, BatchTally};
/// let columns = BatchColumns::read(["height", "bust_girth", "waist_girth", "hip_girth"])?;
/// let job = BatchJob::new("Skirt", Block::Skirt);
/// let mut tally = BatchTally::new();
/// for (row, bust) in [(1, "920"), (2, "92"), (3, "93")] {
///     let record = job.record(&columns, row, &["1680", bust, "760", "1000"]);
///     let reason = record.refusal().map(ToString::to_string);
///     tally.count(record.id(), reason.as_deref());
/// }
/// let refused = &tally.report(&job, &columns).refusals[0];
/// assert_eq!((refused.code.as_str(), refused.rows, refused.first_row), ("bust_girth_impossible", 2, 2));
/// # Ok::<(), blockwright::job::BatchColumnsError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RefusalCount {
    /// Its code.
    pub code: String,
    /// How many rows were refused for it.
    pub rows: u64,
    /// The number of the first of them.
    pub first_row: u64,
    /// The id of that row.
    pub first_id: String,
    /// Why that row was refused.
    pub first_text: String,
}

/// An id that stands in more than one row.
///
/// ```
/// use blockwright::job::RepeatedId;
/// let repeated = RepeatedId { id: "ada".into(), first_row: 1, row: 7 };
/// assert!(repeated.row > repeated.first_row);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RepeatedId {
    /// The id.
    pub id: String,
    /// The row in which it stood first.
    pub first_row: u64,
    /// The row in which it stands again.
    pub row: u64,
}

/// Counts the records of a batch, in the order of the rows.
///
/// Of a record it keeps a few bytes, so that a batch of any size can be counted.
///
/// ```
/// use blockwright::job::BatchTally;
/// let mut tally = BatchTally::new();
/// tally.count("ada", None);
/// tally.count("ada", Some("height_missing: height is missing"));
/// assert_eq!(tally.rows(), 2);
/// ```
#[derive(Debug, Clone, Default)]
pub struct BatchTally {
    rows: u64,
    refusals: BTreeMap<String, RefusalCount>,
    /// The row of an id by the hash of the id.
    ids: HashMap<u64, u64>,
    repeated: u64,
    first_repeated: Vec<RepeatedId>,
}

impl BatchTally {
    /// Nothing counted yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Counts the next row: its id and, if it was refused, the reason as its record gives it.
    pub fn count(&mut self, id: &str, reason: Option<&str>) {
        self.rows += 1;
        let mut hasher = DefaultHasher::new();
        id.hash(&mut hasher);
        let first_row = *self.ids.entry(hasher.finish()).or_insert(self.rows);
        if first_row != self.rows {
            self.repeated += 1;
            if self.first_repeated.len() < MOST_REPEATED {
                self.first_repeated.push(RepeatedId {
                    id: id.to_owned(),
                    first_row,
                    row: self.rows,
                });
            }
        }
        let Some(reason) = reason else { return };
        let (code, text) = reason.split_once(": ").unwrap_or((reason, ""));
        let refusal = self
            .refusals
            .entry(code.to_owned())
            .or_insert_with(|| RefusalCount {
                code: code.to_owned(),
                rows: 0,
                first_row: self.rows,
                first_id: id.to_owned(),
                first_text: text.to_owned(),
            });
        refusal.rows += 1;
    }

    /// How many rows were counted.
    #[must_use]
    pub const fn rows(&self) -> u64 {
        self.rows
    }

    /// What is to be said about the batch.
    #[must_use]
    pub fn report(&self, job: &BatchJob, columns: &BatchColumns) -> BatchReport {
        let mut refusals: Vec<RefusalCount> = self.refusals.values().cloned().collect();
        refusals.sort_by_key(|refusal| std::cmp::Reverse(refusal.rows));
        let refused = refusals.iter().map(|refusal| refusal.rows).sum();
        BatchReport {
            title: job.recipe.title.clone(),
            block: job.recipe.options.block.name().to_owned(),
            rows: self.rows,
            ok: self.rows - refused,
            refused,
            refusals,
            repeated_ids: self.repeated,
            first_repeated_ids: self.first_repeated.clone(),
            passed_over: columns.passed_over().to_vec(),
        }
    }
}

/// The report of a batch.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{BatchColumns, BatchJob, BatchTally};
/// let columns = BatchColumns::read(["height", "bust_girth", "waist_girth", "hip_girth", "role"])?;
/// let mut tally = BatchTally::new();
/// tally.count("ada", None);
/// let report = tally.report(&BatchJob::new("Chorus", Block::Skirt), &columns);
/// assert!(report.text().starts_with("Chorus\nskirt block, 1 wearer: 1 made, 0 refused\n"));
/// assert!(report.text().contains("Columns not used: role\n"));
/// # Ok::<(), blockwright::job::BatchColumnsError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct BatchReport {
    /// What the work is called.
    pub title: String,
    /// The block.
    pub block: String,
    /// How many wearers there are.
    pub rows: u64,
    /// For how many there is a pattern.
    pub ok: u64,
    /// How many were refused.
    pub refused: u64,
    /// Why, the most frequent reason first.
    pub refusals: Vec<RefusalCount>,
    /// How many rows have an id that an earlier row has.
    pub repeated_ids: u64,
    /// The first of them.
    pub first_repeated_ids: Vec<RepeatedId>,
    /// The columns that were not used.
    pub passed_over: Vec<PassedOver>,
}

impl BatchReport {
    /// The report as plain text, ending in a line break.
    #[must_use]
    pub fn text(&self) -> String {
        let wearers = if self.rows == 1 { "wearer" } else { "wearers" };
        let mut out = format!(
            "{}\n{} block, {} {wearers}: {} made, {} refused\n",
            self.title, self.block, self.rows, self.ok, self.refused
        );
        // Writing to a string cannot fail.
        if !self.refusals.is_empty() {
            out.push_str("\nRefused\n");
        }
        for refusal in &self.refusals {
            let _ = writeln!(
                out,
                "  {:>6}  {}, first row {} ({}): {}",
                refusal.rows,
                refusal.code,
                refusal.first_row,
                shown(&refusal.first_id),
                shown(&refusal.first_text)
            );
        }
        if self.repeated_ids > 0 {
            out.push_str("\nIds that stand more than once\n");
        }
        for repeated in &self.first_repeated_ids {
            let (id, first, row) = (shown(&repeated.id), repeated.first_row, repeated.row);
            let _ = writeln!(out, "  {id}: row {row}, as row {first}");
        }
        let listed = self.first_repeated_ids.len() as u64;
        if self.repeated_ids > listed {
            let _ = writeln!(out, "  and {} more rows", self.repeated_ids - listed);
        }
        if !self.passed_over.is_empty() {
            let columns = self.passed_over.iter().take(MOST_COLUMNS);
            let columns: Vec<String> = columns.map(|c| one_line(&c.to_string())).collect();
            let _ = write!(out, "\nColumns not used: {}", columns.join(", "));
            if self.passed_over.len() > MOST_COLUMNS {
                let _ = write!(out, " and {} more", self.passed_over.len() - MOST_COLUMNS);
            }
            out.push('\n');
        }
        out
    }
}

/// A text on one line, shortened if long.
fn shown(text: &str) -> String {
    let line = one_line(text);
    let mut short: String = line.chars().take(LONGEST).collect();
    if short.len() < line.len() {
        short.push('…');
    }
    short
}
