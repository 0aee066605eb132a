//! The files of one wearer of many.

use crate::job::{BatchColumns, BatchJob, BatchRecord, JobError, JobFile, OutputFile};

impl BatchJob {
    /// Draws and prints what was made of a row: the files of a job of hers alone. None where there is
    /// no pattern.
    ///
    /// ```
    /// use blockwright::draft::Block;
    /// use blockwright::job::{BatchColumns, BatchJob};
    /// let columns = BatchColumns::read(["id", "height", "bust_girth", "waist_girth", "hip_girth"])?;
    /// let (job, ada) = (BatchJob::new("Skirt", Block::Skirt), ["ada", "1680", "920", "760", "1000"]);
    /// let record = job.record(&columns, 1, &ada);
    /// let files = job.files(&columns, (1, &ada), &record)?.unwrap_or_default();
    /// assert!(files.iter().any(|file| file.name == "pattern.svg"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`JobError`] when the pattern cannot be laid out or printed as asked.
    pub fn files<S: AsRef<str>>(
        &self,
        columns: &BatchColumns,
        (row, cells): (u64, &[S]),
        record: &BatchRecord,
    ) -> Result<Option<Vec<OutputFile>>, JobError> {
        let (Some(made), Ok(set)) = (record.made(), columns.wearer(row, cells)) else {
            return Ok(None);
        };
        let outcome = super::run::outcome_of(&self.single(set), made.clone())?;
        Ok(Some(outcome.files))
    }
}

impl JobFile {
    /// What it says that bears on many wearers.
    pub(in crate::job) fn many(self) -> BatchJob {
        BatchJob {
            print: self.print,
            outputs: self.outputs,
            private: self.private,
            ..BatchJob::of(self.recipe)
        }
    }
}
