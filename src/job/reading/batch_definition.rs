//! What is to be made for many wearers.

use crate::draft::Block;
use crate::job::{Job, Outputs, PrintOptions};
use crate::measurements::MeasurementSet;
use crate::recipe::Recipe;

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
    /// What every pattern is made from.
    pub recipe: Recipe,
    /// How the files of a wearer are printed, where they are asked for.
    pub print: PrintOptions,
    /// Which files are made of a wearer, where they are asked for.
    pub outputs: Outputs,
    /// Whether names and measurements stay out of them.
    pub private: bool,
    /// Whether a block is fitted to every wearer, instead of drafted for her.
    #[cfg(feature = "fit")]
    pub fit: Option<crate::job::BatchFit>,
}

impl BatchJob {
    /// A job for the block as it usually is, with regular ease, no sleeve and no alterations.
    #[must_use]
    pub fn new(title: impl Into<String>, block: Block) -> Self {
        Self::of(Recipe::new(title, block))
    }

    /// A recipe made for every wearer.
    #[must_use]
    pub fn of(recipe: Recipe) -> Self {
        Self {
            recipe,
            print: PrintOptions::default(),
            outputs: Outputs::usual(),
            private: false,
            #[cfg(feature = "fit")]
            fit: None,
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
        let mut job = Job::of(self.recipe.clone(), set);
        job.print = self.print.clone();
        job.outputs = self.outputs;
        job.private = self.private;
        job
    }
}
