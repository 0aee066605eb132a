//! What is to be made for many wearers.

use super::{Job, PrintOptions};
use crate::allowance::Allowances;
use crate::alterations::Request;
use crate::draft::{Block, DraftOptions};
use crate::measurements::MeasurementSet;
use crate::piece::Warning;

/// A job that is made for every wearer of a table of people.
///
/// [`record`](Self::record) makes it for one row. Rows do not know of one another, so that they
/// can be made in any order and on as many threads as there are.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{BatchColumns, BatchJob};
/// let job = BatchJob::new("Skirt", Block::Skirt);
/// let columns = BatchColumns::read(["id", "height", "bust_girth", "waist_girth (cm)", "hip_girth"])?;
/// let record = job.record(&columns, 1, &["ada", "1680", "920", "76", "1000"]);
/// assert_eq!((record.id(), record.refusal()), ("ada", None));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct BatchJob {
    /// What the work is called.
    pub title: String,
    /// The block and what is wanted of it.
    pub options: DraftOptions,
    /// The alterations made for every wearer, in this order.
    pub alterations: Vec<Request>,
    /// The seam allowances, if there are any.
    pub allowances: Option<Allowances>,
    /// What was noticed when the job was read; it becomes warnings of every pattern.
    pub notes: Vec<Warning>,
}

impl BatchJob {
    /// A job for the block as it usually is, with regular ease, no sleeve and no alterations.
    #[must_use]
    pub fn new(title: impl Into<String>, block: Block) -> Self {
        Self {
            title: title.into(),
            options: DraftOptions::of(block),
            alterations: Vec::new(),
            allowances: None,
            notes: Vec::new(),
        }
    }

    /// The job of one wearer.
    ///
    /// ```
    /// use blockwright::draft::Block;
    /// use blockwright::job::{BatchColumns, BatchJob, run};
    /// let columns = BatchColumns::read(["height", "bust_girth", "waist_girth", "hip_girth"])?;
    /// let set = columns.wearer(1, &["1680", "920", "760", "1000"])?;
    /// let outcome = run(&BatchJob::new("Skirt", Block::Skirt).single(set))?;
    /// assert!(outcome.file("pattern.svg").is_some());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn single(&self, set: MeasurementSet) -> Job {
        Job {
            title: self.title.clone(),
            size: None,
            date: None,
            options: self.options,
            alterations: self.alterations.clone(),
            allowances: self.allowances.clone(),
            set,
            print: PrintOptions::default(),
            dxf: false,
            notes: self.notes.clone(),
        }
    }
}
