//! The answer to `draft`: the pattern of a job as far as it can be made.

use super::asked::MadeFrom;
use super::pieces::{Pair, SeamShape, pairs_of, seams_of, short};
use super::problem::{Problem, Problems};
use crate::alterations::Account;
use crate::job::{Job, JobError, JobReport};
use crate::piece::MeasureUnit;
use crate::recipe::{MadePattern, MakeError, Ways};
use crate::units::Unit;
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(super) struct Drafted {
    unit: Unit,
    pieces: Vec<Pair>,
    seams: Vec<SeamShape>,
    /// How much of each step was made, in its unit.
    amounts: Vec<Amount>,
    /// The step that was refused; what is drawn ends before it.
    #[serde(skip_serializing_if = "Option::is_none")]
    refused: Option<RefusedStep>,
    /// What was noticed when the job was read, and what is doubtful.
    #[serde(skip_serializing_if = "Option::is_none")]
    report: Option<JobReport>,
}

#[derive(Debug, Serialize)]
struct Amount {
    amount: Option<f64>,
    unit: &'static str,
}

#[derive(Debug, Serialize)]
pub(super) struct RefusedStep {
    /// Counted from one.
    step: usize,
    #[serde(skip_serializing_if = "Option::is_none")]
    most: Option<f64>,
    /// The step before which it holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    before: Option<usize>,
    problem: Problem,
}

pub(super) fn draft(asked: &MadeFrom, report: bool) -> Result<Drafted, Problems> {
    let mut job = asked.job()?;
    let ways = if report {
        Ways::Compared
    } else {
        Ways::Skipped
    };
    let (made, refused) = as_far_as_it_goes(&mut job, ways)?;
    let altered = !job.recipe.alterations.is_empty();
    Ok(Drafted {
        unit: job.set.unit(),
        pieces: pairs_of(&made, altered),
        seams: seams_of(&made.pattern),
        amounts: made.accounts.iter().map(amount).collect(),
        refused,
        report: report.then(|| JobReport::of(&job, &made)),
    })
}

/// The pattern with all steps, or with those before the one that is refused.
pub(super) fn as_far_as_it_goes(
    job: &mut Job,
    ways: Ways,
) -> Result<(MadePattern, Option<RefusedStep>), Problems> {
    let unit = job.set.unit();
    let error = match job.make(ways) {
        Ok(made) => return Ok((made, None)),
        Err(error) => error,
    };
    let MakeError::Alteration { refused, .. } = &error else {
        return Err(Problems::of_make(error, unit));
    };
    let (step, most) = (refused.step, refused.most.map(short));
    let before = refused.before.as_ref().map(|earlier| earlier.step);
    job.recipe.alterations.truncate(step.saturating_sub(1));
    let made = job
        .make(ways)
        .map_err(|error| Problems::of_make(error, unit))?;
    let refused = RefusedStep {
        step,
        most,
        before,
        problem: Problem::of(JobError::from(error).in_unit(unit)),
    };
    Ok((made, Some(refused)))
}

fn amount(account: &Account) -> Amount {
    Amount {
        amount: account.amount.filter(|a| a.is_finite()).map(short),
        unit: unit_name(account.unit),
    }
}

pub(super) const fn unit_name(unit: MeasureUnit) -> &'static str {
    match unit {
        MeasureUnit::Millimetres => "mm",
        MeasureUnit::Degrees => "deg",
    }
}
