//! The answer to `fit`: the steps that fit a block to a wearer.

use super::asked::MadeFrom;
use super::problem::Problems;
use crate::job::{FitReport, JobFile, Outputs, run_fit};
use crate::measurements::MeasurementSet;
use serde::Serialize;
use serde_json::{Value, json};

#[derive(Debug, Serialize)]
pub(super) struct FittedAnswer {
    /// The steps, as a job writes them.
    steps: Vec<Value>,
    report: FitReport,
    text: String,
    /// The size that was chosen, and its measurements.
    #[serde(skip_serializing_if = "Option::is_none")]
    size: Option<String>,
    made_for: Value,
}

pub(super) fn fit(asked: &MadeFrom, wearer: &Value) -> Result<FittedAnswer, Problems> {
    let wearer = MeasurementSet::from_json(&wearer.to_string())?;
    // JSON is YAML too, and only a reader of job files lets the size of a table be open.
    let file = asked.with_block(JobFile::parse_for_fit(&asked.job.to_string())?)?;
    let text = asked.text(file.body_path()).map(str::to_owned);
    let mut fitting = file
        .resolve_for(text.as_deref(), wearer)
        .map_err(|error| Problems::of_resolve(&error))?;
    fitting.job.outputs = Outputs::none();
    let made_for = serde_json::to_value(&fitting.job.set).unwrap_or_default();
    let unit = fitting.wearer.unit();
    let outcome = run_fit(&fitting).map_err(|error| Problems::of_job(&error, unit))?;
    let steps = outcome.report.steps.iter();
    Ok(FittedAnswer {
        steps: steps
            .map(|step| json!({ step.alteration.clone(): step.settings }))
            .collect(),
        text: outcome.report.text(),
        size: outcome.report.size.as_ref().map(|size| size.size.clone()),
        report: outcome.report,
        made_for,
    })
}
