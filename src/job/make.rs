//! Making the pattern of a job, without drawing it.

use super::chain::{Made, Ways, made};
use super::prove::prove;
use super::warnings::with_doubts;
use super::{Job, JobError};
use crate::allowance::CutLines;
use crate::alterations::{Account, MethodChoice};
use crate::draft::draft;
use crate::piece::Pattern;

/// A pattern made for a job, and how it came about.
#[derive(Debug)]
pub(super) struct MadePattern {
    /// The block before any alteration.
    pub drafted: Pattern,
    /// The pattern, with all its warnings.
    pub pattern: Pattern,
    /// The account of every alteration.
    pub accounts: Vec<Account>,
    /// The ways there were, if they were asked for.
    pub choices: Vec<MethodChoice>,
    /// The lines to cut along, if the job has allowances.
    pub cut: Option<CutLines>,
}

/// Drafts the block, proves that it can be sewn, alters it, proving it again after every step,
/// and adds the allowances.
pub(super) fn make(job: &Job, ways: Ways) -> Result<MadePattern, JobError> {
    let drafted = draft(job.set.body(), &job.options)?;
    let violations = prove(&drafted);
    if !violations.is_empty() {
        return Err(JobError::Unprovable { violations });
    }
    let Made {
        pattern,
        accounts,
        choices,
    } = made(&drafted, &job.alterations, job.set.body(), ways)?;
    let pattern = with_doubts(pattern, &job.set, job.allowances.as_ref(), &job.notes)?;
    let cut = job
        .allowances
        .as_ref()
        .map(|allowances| CutLines::new(&pattern, allowances))
        .transpose()?;
    Ok(MadePattern {
        drafted,
        pattern,
        accounts,
        choices,
        cut,
    })
}
