//! A job's pattern, drafted, proved, altered and with its cut lines, before anything is drawn.

use super::chain::{Made, made};
use super::prove::prove;
use super::warnings::with_doubts;
use super::{Job, JobError};
use crate::allowance::CutLines;
use crate::draft::draft;
use crate::piece::Pattern;

/// What every way of running a job starts from.
#[derive(Debug)]
pub(super) struct Prepared {
    /// The block as drafted.
    pub drafted: Pattern,
    /// The altered pattern with all its warnings, its accounts and choices.
    pub made: Made,
    /// The cut lines, if the job asks for allowances.
    pub cut: Option<CutLines>,
}

/// Drafts the block, proves that it can be sewn, alters it, proving it again after every step, and
/// adds its allowances.
pub(super) fn prepared(job: &Job) -> Result<Prepared, JobError> {
    let drafted = draft(job.set.body(), &job.options)?;
    let violations = prove(&drafted);
    if !violations.is_empty() {
        return Err(JobError::Unprovable { violations });
    }
    let mut made = made(&drafted, &job.alterations, job.set.body())?;
    made.pattern = with_doubts(made.pattern, job)?;
    let allowances = job.allowances.as_ref();
    let cut = allowances
        .map(|allowances| CutLines::new(&made.pattern, allowances))
        .transpose()?;
    Ok(Prepared { drafted, made, cut })
}
