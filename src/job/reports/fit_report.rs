//! What is to be said about a fitting, for programs.

use serde::Serialize;

use super::report_accounts::unit_name;
use super::rounding::rounded;
use crate::fit::{Aimed, Asked, FitStep, Fitted, Left, LeftBecause, SizeDistance};
use crate::job::{FitJob, GirthReport};
use crate::measurements::Measurement;
use crate::piece::Measure;
use crate::units::{Unit, speak};

/// The report of a fitting: the size it began with and why, every step and the measurements that
/// asked for it, what was left and why.
///
/// Serialised with lengths in mm and angles in degrees.
///
/// ```
/// use blockwright::job::FitReport;
/// fn is_done(report: &FitReport) -> bool { report.left.is_empty() }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct FitReport {
    /// What the work is called.
    pub title: String,
    /// The block.
    pub block: String,
    /// Whose body the block was made for.
    pub made_for: String,
    /// Whom it fits now.
    pub wearer: String,
    /// The size that was chosen, where a table was given without one.
    pub size: Option<SizeChoiceReport>,
    /// What was done, in order.
    pub steps: Vec<FitStepReport>,
    /// What was left, the most first.
    pub left: Vec<LeftReport>,
    /// Finished girths beside the wearer's own.
    pub girths: Vec<GirthReport>,
    /// What must be known about any pattern.
    pub cautions: Vec<&'static str>,
    /// How the fitted block lies on the wearer: another way than drafts to look at it.
    #[cfg(feature = "form")]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fit_map: Option<crate::job::FitMapReport>,
    /// The wearer's unit, in which a person reads the report.
    #[serde(skip)]
    pub(in crate::job) unit: Unit,
}

/// How a size was chosen.
///
/// ```
/// use blockwright::job::SizeChoiceReport;
/// let choice = SizeChoiceReport { size: "40".into(), next: None, differences: vec![] };
/// assert_eq!(choice.size, "40");
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SizeChoiceReport {
    /// The size.
    pub size: String,
    /// The next best.
    pub next: Option<String>,
    /// What the wearer has more than the size, in the order in which it decided.
    pub differences: Vec<DifferenceReport>,
}

/// What the wearer has more than a size.
///
/// ```
/// use blockwright::job::DifferenceReport;
/// use blockwright::measurements::Measurement;
/// let more = DifferenceReport { measurement: Measurement::BackWidth, more: -4.0 };
/// assert!(more.more < 0.0);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DifferenceReport {
    /// The measurement.
    pub measurement: Measurement,
    /// What she has more, in mm.
    pub more: f64,
}

/// One step of a fitting.
///
/// ```
/// use blockwright::job::FitStepReport;
/// fn name(step: &FitStepReport) -> &str { &step.alteration }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct FitStepReport {
    /// The alteration's name.
    pub alteration: String,
    /// Its settings, as a job writes them.
    pub settings: serde_json::Value,
    /// Its amount.
    pub amount: f64,
    /// Unit of the amount: `mm` or `deg`.
    pub unit: &'static str,
    /// The measurements that asked for it, the most first; the other sign where one asks for the
    /// contrary.
    pub asked: Vec<AskedReport>,
    /// Two measurements that contradict each other on this step.
    pub contradiction: Option<[Measurement; 2]>,
}

/// How much of a step a measurement asked for.
///
/// ```
/// use blockwright::job::AskedReport;
/// use blockwright::measurements::Measurement;
/// let asked = AskedReport { measurement: Measurement::HipGirth, amount: 24.0 };
/// assert!(asked.amount > 0.0);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AskedReport {
    /// The measurement.
    pub measurement: Measurement,
    /// How much of the amount, in the step's unit.
    pub amount: f64,
}

/// Something that was left.
///
/// ```
/// use blockwright::job::LeftReport;
/// fn is_much(left: &LeftReport) -> bool { left.by.abs() > 3.0 }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct LeftReport {
    /// What of the pattern, in words.
    pub what: String,
    /// The same as a measure, where it is one.
    pub measure: Option<Measure>,
    /// By how much it is too small; negative where it is too large.
    pub by: f64,
    /// Unit: `mm` or `deg`.
    pub unit: &'static str,
    /// The measurement that it follows from most.
    pub measurement: Option<Measurement>,
    /// Why: `small`, `refused` or `no_step`.
    pub because: &'static str,
    /// The alteration that went no farther, and what stands against it.
    pub refusal: Option<String>,
}

impl FitReport {
    pub(in crate::job) fn new(asked: &FitJob, fitted: &Fitted) -> Self {
        let recipe = &asked.job.recipe;
        let body = asked.wearer.body();
        let girths = fitted.pattern.girths().iter().map(|girth| {
            let finished = rounded(fitted.pattern.finished(girth));
            let hers = measurement_of(girth.base_name()).map_or(girth.body, |m| body.value(m));
            let hers = rounded(hers);
            GirthReport {
                name: girth.name.clone(),
                body: hers,
                ease: rounded(finished - hers),
                finished,
            }
        });
        Self {
            title: recipe.title.clone(),
            block: recipe.options.block.name().to_owned(),
            made_for: asked.job.set.name().to_owned(),
            wearer: asked.wearer.name().to_owned(),
            size: asked.size.as_ref().map(|nearest| SizeChoiceReport {
                size: nearest.chosen.size.clone(),
                next: nearest.next.as_ref().map(|next| next.size.clone()),
                differences: differences(&nearest.chosen),
            }),
            steps: fitted.steps.iter().map(FitStepReport::new).collect(),
            left: fitted
                .left
                .iter()
                .map(|left| LeftReport::new(left, asked.wearer.unit()))
                .collect(),
            girths: girths.collect(),
            cautions: super::report::cautions(recipe.allowances.as_ref()).to_vec(),
            unit: asked.wearer.unit(),
            #[cfg(feature = "form")]
            fit_map: None,
        }
    }
}

/// The measurement of the body that a girth of a pattern goes round.
fn measurement_of(girth: &str) -> Option<Measurement> {
    Some(match girth {
        "bust" => Measurement::BustGirth,
        "waist" | "skirt_waist" => Measurement::WaistGirth,
        "hip" => Measurement::HipGirth,
        "back_width" => Measurement::BackWidth,
        "front_width" => Measurement::FrontWidth,
        "upper_arm" => Measurement::UpperArmGirth,
        "wrist" => Measurement::WristGirth,
        _ => return None,
    })
}

fn differences(size: &SizeDistance) -> Vec<DifferenceReport> {
    let all = size.differences.iter();
    all.map(|(measurement, more)| DifferenceReport {
        measurement: *measurement,
        more: rounded(*more),
    })
    .collect()
}

impl FitStepReport {
    pub(in crate::job) fn new(step: &FitStep) -> Self {
        let report = |asked: &Asked| AskedReport {
            measurement: asked.measurement,
            amount: rounded(asked.amount),
        };
        let contradiction = step.contradiction();
        Self {
            alteration: step.request.name().to_owned(),
            settings: step.request.settings().clone(),
            amount: rounded(step.amount),
            unit: unit_name(step.unit),
            asked: step.asked.iter().map(report).collect(),
            contradiction: contradiction.map(|(one, other)| [one.measurement, other.measurement]),
        }
    }
}

impl LeftReport {
    pub(in crate::job) fn new(left: &Left, unit: Unit) -> Self {
        let (because, refusal) = match &left.because {
            LeftBecause::Small => ("small", None),
            LeftBecause::Refused { alteration, why } => (
                "refused",
                Some(format!("{alteration}: {}", speak(why, unit))),
            ),
            LeftBecause::NoStep => ("no_step", None),
        };
        Self {
            what: left.what.to_string(),
            measure: match &left.what {
                Aimed::Measure(measure) => Some(measure.clone()),
                Aimed::Level { .. } | Aimed::Width { .. } => None,
            },
            by: rounded(left.by),
            unit: unit_name(left.what.unit()),
            measurement: left.measurement,
            because,
            refusal,
        }
    }
}
