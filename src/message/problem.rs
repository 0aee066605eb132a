//! Why a message is not answered as it asks.

use crate::explain::{Explain, Explanation};
use crate::job::{Fault, JobError, ResolveError};
use crate::measurements::{FileErrors, FileProblem};
use crate::recipe::MakeError;
use crate::units::Unit;
use serde::Serialize;

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct Problem {
    pub code: String,
    pub text: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    pub cure: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub key: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub line: Option<u64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub column: Option<u64>,
}

/// Everything that is wrong, and on whose side it lies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct Problems {
    status: &'static str,
    errors: Vec<Problem>,
}

impl Problem {
    pub(super) fn new(code: &str, text: impl Into<String>, cure: &str) -> Self {
        Self {
            code: code.to_owned(),
            text: text.into(),
            cure: cure.to_owned(),
            place: None,
            key: None,
            line: None,
            column: None,
        }
    }

    pub(super) fn of(explained: Explanation) -> Self {
        Self {
            place: explained.place,
            ..Self::new(&explained.code, explained.cause, &explained.cure)
        }
    }

    pub(super) fn of_file(problem: &FileProblem) -> Self {
        let known = problem.place.line > 0;
        Self {
            key: (!problem.path.is_empty()).then(|| problem.path.clone()),
            line: known.then_some(problem.place.line),
            column: known.then_some(problem.place.column),
            ..Self::new(&problem.cause.code(), problem.message(), &problem.cure())
        }
    }
}

impl Problems {
    pub(super) fn wrong(problem: Problem) -> Self {
        Self {
            status: "wrong",
            errors: vec![problem],
        }
    }

    pub(super) fn refused(problem: Problem) -> Self {
        Self {
            status: "refused",
            errors: vec![problem],
        }
    }

    pub(super) fn of_job(error: &JobError, unit: Unit) -> Self {
        let problem = Problem::of(error.in_unit(unit));
        match error.fault() {
            Fault::Pattern => Self::refused(problem),
            Fault::Job => Self::wrong(problem),
        }
    }

    pub(super) fn of_make(error: MakeError, unit: Unit) -> Self {
        Self::of_job(&JobError::from(error), unit)
    }

    pub(super) fn of_resolve(error: &ResolveError) -> Self {
        match error {
            ResolveError::Set(errors) => errors.clone().into(),
            other => Self::wrong(Problem::of(other.explanation())),
        }
    }
}

impl From<FileErrors> for Problems {
    fn from(errors: FileErrors) -> Self {
        Self {
            status: if errors.only_refused_measurements() {
                "refused"
            } else {
                "wrong"
            },
            errors: errors.all().iter().map(Problem::of_file).collect(),
        }
    }
}
