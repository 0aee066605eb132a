//! What came of one wearer: a line of `results.jsonl`.

use crate::explain::Explain;
use serde::Serialize;
use std::ops::ControlFlow;

use crate::job::reports::rounding::rounded;
use crate::job::{BatchColumns, BatchJob, BatchRefusal, JobError, WarningReport};
use crate::measurements::Body;
use crate::piece::{EdgeName, Pattern};
use crate::progress::{Ending, Progress};
use crate::recipe::{MadePattern, MakeError, OwnBlockError, Ways, make};
use crate::render::json;

/// What came of one wearer.
///
/// ```
/// use blockwright::draft::{Block, SleeveLength};
/// use blockwright::job::{BatchColumns, BatchJob};
/// let mut job = BatchJob::new("Dress", Block::Dress);
/// job.recipe.options.sleeve = Some(SleeveLength::Long);
/// let columns = BatchColumns::read(["id", "height", "bust_girth", "waist_girth", "hip_girth"])?;
/// let record = job.record(&columns, 1, &["ada", "1680", "920", "760", "1000"]);
/// assert!(record.sleeve_cap() > record.armscye()); // by its ease
/// assert!(record.line().starts_with(r#"{"id":"ada","status":"ok","reason":null,"armscye":"#));
///
/// let record = job.record(&columns, 2, &["bea", "1680", "92", "760", "1000"]);
/// assert!(record.refusal().is_some_and(|why| why.code == "bust_girth_impossible"));
/// # Ok::<(), blockwright::job::BatchColumnsError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct BatchRecord {
    id: String,
    title: String,
    outcome: Result<Box<Row>, BatchRefusal>,
}

/// A body and what was made for it.
#[derive(Debug, Clone, PartialEq)]
struct Row {
    body: Body,
    made: MadePattern,
    #[cfg(feature = "fit")]
    fitted: Option<super::batch_fit::FittedLine>,
}

/// A line as it is written. Its keys are fixed: others read them.
#[derive(Serialize)]
struct Line<'a> {
    id: &'a str,
    status: &'static str,
    reason: Option<String>,
    armscye: Option<f64>,
    sleeve_cap: Option<f64>,
    warnings: Vec<WarningReport>,
    /// Only where a block was fitted.
    #[cfg(feature = "fit")]
    #[serde(flatten)]
    fitted: Option<&'a super::batch_fit::FittedLine>,
}

#[derive(Serialize)]
struct LineWithPattern<'a, P> {
    #[serde(flatten)]
    line: Line<'a>,
    pattern: Option<P>,
}

impl BatchJob {
    /// Makes the job for one row: drafts, proves, alters, and draws nothing. Rows are counted
    /// from one, without the header.
    ///
    /// A row that is wrong in itself, or whose body bears no pattern, gives a record of why.
    #[must_use]
    pub fn record<S: AsRef<str>>(
        &self,
        columns: &BatchColumns,
        row: u64,
        cells: &[S],
    ) -> BatchRecord {
        let made = columns.wearer(row, cells).and_then(|set| {
            #[cfg(feature = "fit")]
            if let Some(fit) = &self.fit {
                return fitted(fit, &self.recipe, &set);
            }
            if let Some(own) = &self.recipe.own {
                let path = own.path().to_owned();
                return Err(refusal(&OwnBlockError::OneBody { path }.into()));
            }
            let (body, unit) = (set.body(), set.unit());
            let made = make(&self.recipe, body, unit, Ways::Skipped);
            Ok(Box::new(Row {
                body: body.clone(),
                made: made.map_err(|error| refusal(&error))?,
                #[cfg(feature = "fit")]
                fitted: None,
            }))
        });
        BatchRecord {
            id: columns.id(row, cells),
            title: self.recipe.title.clone(),
            outcome: made,
        }
    }

    /// The record of a row at which making the pattern failed by a fault of this crate: refused
    /// with the code `internal_fault`. For callers that catch a panic and go on with other rows.
    ///
    /// ```
    /// use blockwright::draft::Block;
    /// use blockwright::job::{BatchColumns, BatchJob};
    /// let columns = BatchColumns::read(["id", "height", "bust_girth", "waist_girth", "hip_girth"])?;
    /// let job = BatchJob::new("Skirt", Block::Skirt);
    /// let record = job.faulty(&columns, 1, &["ada", "1680", "920", "760", "1000"]);
    /// assert!(record.refusal().is_some_and(|why| why.code == "internal_fault"));
    /// # Ok::<(), blockwright::job::BatchColumnsError>(())
    /// ```
    #[must_use]
    pub fn faulty<S: AsRef<str>>(
        &self,
        columns: &BatchColumns,
        row: u64,
        cells: &[S],
    ) -> BatchRecord {
        let text = "the program failed at this row, which is a fault in it; the other rows are not \
                    affected; please report it with the measurements of this row";
        BatchRecord {
            id: columns.id(row, cells),
            title: self.recipe.title.clone(),
            outcome: Err(BatchRefusal::new("internal_fault", text)),
        }
    }

    /// Makes the job for rows in their order, and gives every record to `take`; where `progress`
    /// breaks off, the rows so far have been given.
    ///
    /// `total` is how many rows are expected, for the progress alone.
    ///
    /// ```
    /// use blockwright::draft::Block;
    /// use blockwright::job::{BatchColumns, BatchJob};
    /// use blockwright::progress::{Ending, Progress};
    /// use std::ops::ControlFlow;
    /// let columns = BatchColumns::read(["height", "bust_girth", "waist_girth", "hip_girth"])?;
    /// let rows = vec![["1680", "920", "760", "1000"]; 5];
    /// let mut ids = Vec::new();
    /// let mut first_two = |progress: Progress| match progress.done {
    ///     2 => ControlFlow::Break(()),
    ///     _ => ControlFlow::Continue(()),
    /// };
    /// let job = BatchJob::new("Skirt", Block::Skirt);
    /// let ending = job.record_all(&columns, (rows, 5), &mut |record| ids.push(record.id().to_owned()), &mut first_two);
    /// assert_eq!((ending, ids), (Ending::Stopped, vec!["1".to_owned(), "2".to_owned()]));
    /// # Ok::<(), blockwright::job::BatchColumnsError>(())
    /// ```
    pub fn record_all<S: AsRef<str>, R: AsRef<[S]>>(
        &self,
        columns: &BatchColumns,
        (rows, total): (impl IntoIterator<Item = R>, u64),
        take: &mut dyn FnMut(BatchRecord),
        progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Ending {
        for (cells, row) in rows.into_iter().zip(1..) {
            take(self.record(columns, row, cells.as_ref()));
            if progress(Progress::new(row, total)).is_break() {
                return Ending::Stopped;
            }
        }
        Ending::Complete
    }
}

#[cfg(feature = "fit")]
fn fitted(
    fit: &crate::job::BatchFit,
    recipe: &crate::recipe::Recipe,
    wearer: &crate::measurements::MeasurementSet,
) -> Result<Box<Row>, BatchRefusal> {
    use super::batch_fit::FitRefusal;
    let (made, line) = fit.made(recipe, wearer).map_err(|why| match why {
        FitRefusal::Make(error) => refusal(&error),
        FitRefusal::Other(refusal) => refusal,
    })?;
    Ok(Box::new(Row {
        body: wearer.body().clone(),
        made,
        fitted: Some(line),
    }))
}

/// A refused alteration is counted under its name, all else under the code of the error.
fn refusal(error: &MakeError) -> BatchRefusal {
    let code = match error {
        MakeError::Alteration { refused, .. } => format!("{}_refused", refused.alteration),
        other => other.code(),
    };
    BatchRefusal::new(code, error)
}

impl BatchRecord {
    /// Who the wearer is.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// The pattern, with all its warnings, if there is one.
    #[must_use]
    pub fn pattern(&self) -> Option<&Pattern> {
        self.row().map(|row| &row.made.pattern)
    }

    /// Why there is no pattern.
    #[must_use]
    pub fn refusal(&self) -> Option<&BatchRefusal> {
        self.outcome.as_ref().err()
    }

    /// The armscye of one side as it is sewn, back and front, in mm; the wearer's left where the
    /// sides are unlike. None without a pattern and on a skirt.
    #[must_use]
    pub fn armscye(&self) -> Option<f64> {
        self.one_side(&EdgeName::ARMSCYE)
    }

    /// The cap of the sleeve for that armscye, in mm. None without a sleeve.
    #[must_use]
    pub fn sleeve_cap(&self) -> Option<f64> {
        self.one_side(&EdgeName::SLEEVE_CAP)
    }

    /// The record as one line of JSON, without a line break.
    #[must_use]
    pub fn line(&self) -> String {
        text(&self.of_line())
    }

    /// The same with the pattern document under `pattern`.
    #[must_use]
    pub fn line_with_pattern(&self) -> String {
        let line = self.of_line();
        let Some(Row { body, made, .. }) = self.row() else {
            return text(&LineWithPattern::<()> {
                line,
                pattern: None,
            });
        };
        let (pattern, title, accounts) = (&made.pattern, &self.title, &made.all_accounts());
        match &made.cut {
            Some(cut) => text(&LineWithPattern {
                line,
                pattern: Some(json::document_to_cut(pattern, body, title, accounts, cut)),
            }),
            None => text(&LineWithPattern {
                line,
                pattern: Some(json::document(pattern, body, title, accounts)),
            }),
        }
    }

    /// What was made for the wearer.
    pub(in crate::job) fn made(&self) -> Option<&MadePattern> {
        self.row().map(|row| &row.made)
    }

    /// The record of a row whose pattern was made and could not be drawn or printed.
    ///
    /// ```
    /// use blockwright::draft::Block;
    /// use blockwright::job::{BatchColumns, BatchJob, JobError};
    /// fn given_up(job: &BatchJob, columns: &BatchColumns, error: &JobError) -> bool {
    ///     let record = job.record(columns, 1, &["ada", "1680", "920", "760", "1000"]);
    ///     record.undrawn(error).refusal().is_some()
    /// }
    /// ```
    #[must_use]
    pub fn undrawn(mut self, error: &JobError) -> Self {
        self.outcome = Err(BatchRefusal::new(error.code(), error));
        self
    }

    fn row(&self) -> Option<&Row> {
        self.outcome.as_ref().ok().map(AsRef::as_ref)
    }

    fn one_side(&self, edge: &EdgeName) -> Option<f64> {
        let pieces = self.pattern()?.pieces().iter();
        let lengths: Vec<f64> = pieces
            .filter(|piece| !piece.name().ends_with(" right"))
            .filter_map(|piece| piece.seam_length(edge))
            .collect();
        (!lengths.is_empty()).then(|| rounded(lengths.iter().sum()))
    }

    fn of_line(&self) -> Line<'_> {
        let warnings = self.pattern().map_or(&[][..], Pattern::warnings);
        Line {
            id: &self.id,
            status: if self.outcome.is_ok() {
                "ok"
            } else {
                "refused"
            },
            reason: self.refusal().map(ToString::to_string),
            armscye: self.armscye(),
            sleeve_cap: self.sleeve_cap(),
            warnings: warnings.iter().map(WarningReport::from).collect(),
            #[cfg(feature = "fit")]
            fitted: self.row().and_then(|row| row.fitted.as_ref()),
        }
    }
}

fn text(line: &impl Serialize) -> String {
    // Strings and finite numbers only: nothing that JSON cannot hold.
    serde_json::to_string(line).unwrap_or_default()
}
