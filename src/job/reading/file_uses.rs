//! A job file put to other uses than one wearer: sizes of a table, many wearers, a fit.

use super::bare_lengths::bare_lengths;
#[cfg(feature = "fit")]
use crate::job::{BatchFit, FitFrom, FitJob, ResolveError};
use crate::job::{BatchJob, JobFile, RangeJob};
#[cfg(feature = "fit")]
use crate::measurements::MeasurementSet;
use crate::measurements::SizeTable;
use crate::piece::Warning;

#[cfg(feature = "fit")]
impl JobFile {
    /// The same work fitted to many wearers: from the block of the job's body, or of each one's
    /// nearest size where it is a table without a size.
    ///
    /// # Errors
    ///
    /// [`ResolveError`] when the set or table is wanted and not given, or is wrong.
    pub fn for_batch_fit(mut self, set_text: Option<&str>) -> Result<BatchJob, ResolveError> {
        self.block_is_read()?;
        let body = self.body.take().ok_or(ResolveError::NoBody)?;
        let from = match body.whole_table(set_text)? {
            Some(table) => FitFrom::Table(table),
            None => {
                let set = body.clone().resolve(set_text)?;
                FitFrom::Body(Box::new(set))
            }
        };
        let mut job = self.many();
        job.fit = Some(BatchFit::of(from));
        Ok(job)
    }

    /// The job with a wearer whom its block is to fit; where its body is a table without a size,
    /// with the size nearest to her.
    ///
    /// # Errors
    ///
    /// [`ResolveError`] when the set or table is wanted and not given, or is wrong.
    pub fn resolve_for(
        mut self,
        set_text: Option<&str>,
        wearer: MeasurementSet,
    ) -> Result<FitJob, ResolveError> {
        self.block_is_read()?;
        // The wearer given is the one it is about.
        self.wearer = None;
        let body = self.body.take().ok_or(ResolveError::NoBody)?;
        let (body, nearest) = body.nearest_to(set_text, wearer.body())?;
        self.body = Some(body);
        let mut asked = FitJob::new(self.resolve(set_text)?, wearer);
        asked.size = nearest;
        Ok(asked)
    }
}

impl JobFile {
    /// The same work in the sizes of a table.
    #[must_use]
    pub fn for_table(self, table: SizeTable) -> RangeJob {
        let mut recipe = self.recipe;
        recipe
            .notes
            .extend(bare_lengths(&self.bare_lengths, table.unit()));
        if self.body_unused {
            let text = "the body of the job is not used: the sizes are those of the table";
            recipe.notes.push(Warning::new("body_unused", text));
        }
        if self.wearer.is_some() {
            let text = "the wearer of the job is not used: every size is made for its own body";
            recipe.notes.push(Warning::new("wearer_unused", text));
        }
        if recipe.size.take().is_some() {
            recipe.notes.push(Warning::new(
                "size_unused",
                "size has no effect on a range: every size bears its label",
            ));
        }
        let mut job = RangeJob::of(recipe, table);
        job.print = self.print;
        job.outputs = self.outputs;
        job
    }
}

impl JobFile {
    /// The same work for many wearers.
    #[must_use]
    pub fn for_batch(self) -> BatchJob {
        self.many()
    }
}
