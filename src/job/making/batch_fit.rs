//! A job's block fitted to every wearer of a table.

use serde::Serialize;

use crate::allowance::CutLines;
use crate::explain::Explain;
use crate::fit::{FitSettings, Fitted, fit, nearest_size};
use crate::job::reading::batch_row::BatchRefusal;
use crate::job::{AskedReport, FitStepReport};
use crate::measurements::{MeasurementSet, SizeTable};
use crate::piece::Pattern;
use crate::recipe::{MadePattern, MakeError, Recipe, Ways, make};
use crate::units::Unit;

/// Whose block is fitted.
///
/// ```
/// use blockwright::job::FitFrom;
/// use blockwright::measurements::SizeTable;
/// use blockwright::units::Unit;
/// let from = FitFrom::Table(SizeTable::new("range", Unit::Cm, Vec::new()));
/// assert!(matches!(from, FitFrom::Table(_)));
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum FitFrom {
    /// The block of one body, for everybody.
    Body(Box<MeasurementSet>),
    /// Of each wearer's nearest size.
    Table(SizeTable),
}

/// How every wearer of a batch is fitted.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{BatchColumns, BatchFit, BatchJob, FitFrom};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let set = MeasurementSet::new("our block", Unit::Mm, body);
/// let mut job = BatchJob::new("Skirt", Block::Skirt);
/// job.fit = Some(BatchFit::of(FitFrom::Body(Box::new(set))));
/// let columns = BatchColumns::read(["height", "bust_girth", "waist_girth", "hip_girth"])?;
/// let record = job.record(&columns, 1, &["1680", "920", "760", "1030"]);
/// assert!(record.line().contains(r#""steps":[{"alteration":"hip_girth""#));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct BatchFit {
    /// Whose block.
    pub from: FitFrom,
    /// What a fitter bothers with.
    pub settings: FitSettings,
}

impl BatchFit {
    /// As a fitter would.
    #[must_use]
    pub fn of(from: FitFrom) -> Self {
        Self {
            from,
            settings: FitSettings::default(),
        }
    }
}

/// What a fitted wearer's line says besides.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(in crate::job) struct FittedLine {
    /// The size that was nearest, if a table was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    size: Option<String>,
    steps: Vec<StepLine>,
    left: Vec<LeftLine>,
}

/// A step: as in the report of one fitting, on one line.
#[derive(Debug, Clone, PartialEq, Serialize)]
struct StepLine {
    alteration: String,
    settings: serde_json::Value,
    asked: Vec<AskedReport>,
}

/// What was left, in mm or degrees.
#[derive(Debug, Clone, PartialEq, Serialize)]
struct LeftLine {
    what: String,
    by: f64,
    because: &'static str,
}

impl BatchFit {
    /// The block made and fitted to one wearer.
    pub(in crate::job) fn made(
        &self,
        recipe: &Recipe,
        wearer: &MeasurementSet,
    ) -> Result<(MadePattern, FittedLine), FitRefusal> {
        let (own, unit, size) = match &self.from {
            FitFrom::Body(set) => (set.body(), set.unit(), None),
            FitFrom::Table(table) => {
                let nearest = nearest_size(table, wearer.body());
                let size = nearest.map(|n| n.chosen.size).unwrap_or_default();
                let own = table
                    .body(&size)
                    .map_err(|error| FitRefusal::Other(BatchRefusal::new("unknown_size", error)))?;
                (own, table.unit(), Some(size))
            }
        };
        let mut made = make(recipe, own, unit, Ways::Skipped)?;
        let bodies = (own, wearer.body());
        let fitted = fit(
            &made.pattern,
            &recipe.options,
            bodies,
            wearer.unit(),
            &self.settings,
        )
        .map_err(|error| FitRefusal::Other(BatchRefusal::new(error.code(), &error)))?;
        let line = FittedLine::new(size, &fitted);
        made.accounts
            .extend(fitted.steps.into_iter().map(|step| step.account));
        made.cut = cut(recipe, &fitted.pattern)?;
        made.pattern = fitted.pattern;
        Ok((made, line))
    }
}

fn cut(recipe: &Recipe, pattern: &Pattern) -> Result<Option<CutLines>, MakeError> {
    let lines = recipe
        .allowances
        .as_ref()
        .map(|a| CutLines::new(pattern, a));
    Ok(lines.transpose()?)
}

/// Why a wearer was not fitted.
pub(in crate::job) enum FitRefusal {
    /// The block of her size gives no pattern.
    Make(MakeError),
    /// Anything else.
    Other(BatchRefusal),
}

impl From<MakeError> for FitRefusal {
    fn from(error: MakeError) -> Self {
        Self::Make(error)
    }
}

impl FittedLine {
    fn new(size: Option<String>, fitted: &Fitted) -> Self {
        let steps = fitted.steps.iter().map(FitStepReport::new);
        let steps = steps.map(|step| StepLine {
            alteration: step.alteration,
            settings: step.settings,
            asked: step.asked,
        });
        let left = fitted.left.iter();
        let left = left.map(|left| crate::job::LeftReport::new(left, Unit::Mm));
        let left = left.map(|left| LeftLine {
            what: left.what,
            by: left.by,
            because: left.because,
        });
        Self {
            size,
            steps: steps.collect(),
            left: left.collect(),
        }
    }
}
