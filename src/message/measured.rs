//! The answers to `measure` and `form`: a wearer as she is known so far.

use super::asked::TypedSet;
use super::made_files::MadeFile;
use super::problem::{Problem, Problems};
use crate::explain::Explain as _;
use crate::measurements::{
    Body, Kind, Measured, Measurement, MeasurementError, MeasurementErrors, MeasurementSet,
    SetReport, Source, likely_required,
};
use crate::measuring_form::measuring_form;
use crate::render::pdf::PaperFormat;
use crate::silhouette::{Silhouette, Stance, silhouette_svg, stance};
use crate::units::{Angle, Length, LengthStyle, Unit, speak};
use serde::Serialize;
use serde_json::{Value, json};
use std::collections::BTreeMap;

#[derive(Debug, Serialize)]
pub(super) struct Known {
    /// Whether height, bust, waist and hip are there, so that a pattern can be drafted.
    complete: bool,
    rows: Vec<Row>,
    /// What is to be said about the whole body.
    notes: Vec<String>,
    figure: Option<String>,
    stance: Option<Stance>,
    /// What is wrong with the set besides its values.
    errors: Vec<Problem>,
}

#[derive(Debug, Serialize)]
struct Row {
    name: &'static str,
    /// `taken`, `estimated`, `likely` (of the four that must be taken), `wrong` or `unknown`.
    state: &'static str,
    /// In the unit asked for, without it.
    shown: String,
    #[serde(skip_serializing_if = "String::is_empty")]
    spread: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    doubts: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    error: Option<String>,
}

/// What could be read of a set, and what could not.
struct Read {
    taken: Vec<(Measurement, f64)>,
    wrong: BTreeMap<&'static str, String>,
    other: Vec<Problem>,
}

fn is_blank(value: &Value) -> bool {
    value.is_null() || value.as_str().is_some_and(|text| text.trim().is_empty())
}

impl TypedSet {
    /// The set without what was left blank.
    fn json(&self) -> Value {
        let filled = self.measurements.iter().filter(|(_, v)| !is_blank(v));
        let map: serde_json::Map<String, Value> =
            filled.map(|(k, v)| (k.clone(), v.clone())).collect();
        let name = match self.name.trim() {
            "" => MeasurementSet::UNNAMED,
            name => name,
        };
        let mut set = json!({"name": name, "unit": self.unit, "measurements": map});
        if let Value::Object(fields) = &mut set {
            let texts = [("source", &self.source), ("notes", &self.notes)];
            for (key, text) in texts {
                if let Some(text) = text {
                    fields.insert(key.to_owned(), Value::from(text.as_str()));
                }
            }
        }
        set
    }

    fn read(&self, unit: Unit) -> Read {
        let mut read = Read {
            taken: Vec::new(),
            wrong: BTreeMap::new(),
            other: Vec::new(),
        };
        for measurement in Measurement::ALL {
            let Some(value) = self.measurements.get(measurement.name()) else {
                continue;
            };
            if is_blank(value) {
                continue;
            }
            match self.value(measurement, value) {
                Ok(value) if measurement.range().contains(value) => {
                    read.taken.push((measurement, value));
                }
                Ok(value) => {
                    let error = MeasurementError::OutOfRange { measurement, value };
                    let text = speak(&error.to_string(), unit).replace('_', " ");
                    read.wrong.insert(measurement.name(), text);
                }
                Err(text) => {
                    read.wrong.insert(measurement.name(), text);
                }
            }
        }
        // What else is wrong is said by the reader of files, in its words.
        if let Err(errors) = MeasurementSet::from_json(&self.json().to_string()) {
            let others = errors
                .all()
                .iter()
                .filter(|p| !p.path.starts_with("measurements"));
            read.other.extend(others.map(Problem::of_file));
        }
        read
    }

    /// The value in mm or radians.
    fn value(&self, measurement: Measurement, value: &Value) -> Result<f64, String> {
        let text = match value {
            Value::String(text) => text.trim().to_owned(),
            other => other.to_string(),
        };
        match measurement.kind() {
            Kind::Length => Length::parse(&text, Some(self.unit))
                .map(Length::mm)
                .map_err(|error| error.message()),
            Kind::Angle => {
                let angle = text.parse::<Angle>();
                angle.map(Angle::radians).map_err(|error| error.message())
            }
        }
    }
}

fn unit_of(measurement: Measurement, unit: Unit) -> &'static str {
    match measurement.kind() {
        Kind::Length => unit.name(),
        Kind::Angle => "°",
    }
}

/// The value as the trade writes it, without its unit.
fn shown(measurement: Measurement, value: f64, unit: Unit) -> String {
    let text = match measurement.kind() {
        Kind::Length => Length::from_mm(value).map(|l| l.to_text(LengthStyle::usual(unit))),
        Kind::Angle => Angle::from_radians(value).map(|a| a.to_string()),
    };
    let text = text.unwrap_or_default();
    let bare = text
        .strip_suffix(unit_of(measurement, unit))
        .map_or(text.as_str(), str::trim_end);
    bare.to_owned()
}

/// What is known of a wearer, with a figure that shows where the tape runs for one measurement.
pub(super) fn measure(set: &TypedSet, unit: Unit, focus: Option<&str>) -> Known {
    let read = set.read(unit);
    let likely = likely_required(&read.taken);
    let complete = likely.is_empty();
    let body = probable(&read.taken, &likely).ok();
    let rows = Measurement::ALL
        .into_iter()
        .map(|of| row(&read, &likely, body.as_ref(), of, unit));
    let measurement =
        focus.and_then(|name| Measurement::ALL.into_iter().find(|m| m.name() == name));
    let figure = body.as_ref().map(|body| {
        let asked = Stance::ALL.into_iter().find(|s| Some(s.name()) == focus);
        let figure = Silhouette::of(body);
        silhouette_svg(&figure, asked.unwrap_or(Stance::Front), measurement)
    });
    let notes = match (&body, complete) {
        (Some(body), true) => {
            let set = MeasurementSet::new(set.name.as_str(), unit, body.clone());
            let texts = SetReport::new(&set).beyond_survey_texts();
            texts.into_iter().map(|t| t.replace('_', " ")).collect()
        }
        _ => Vec::new(),
    };
    Known {
        complete: complete && read.wrong.is_empty(),
        rows: rows.collect(),
        notes,
        stance: measurement.filter(|_| figure.is_some()).map(stance),
        figure,
        errors: read.other,
    }
}

/// The body of what was taken, completed by what of the four needed is likely.
fn probable(
    taken: &[(Measurement, f64)],
    likely: &[(Measurement, Measured)],
) -> Result<Body, MeasurementErrors> {
    let likely = likely.iter().map(|(of, measured)| (*of, measured.value));
    Body::from_taken(taken.iter().copied().chain(likely))
}

fn row(
    read: &Read,
    likely: &[(Measurement, Measured)],
    body: Option<&Body>,
    of: Measurement,
    unit: Unit,
) -> Row {
    let mut row = Row {
        name: of.name(),
        state: "unknown",
        shown: String::new(),
        spread: String::new(),
        doubts: Vec::new(),
        error: read.wrong.get(of.name()).cloned(),
    };
    let likely = likely.iter().find(|(known, _)| *known == of);
    let measured = likely
        .map(|(_, measured)| *measured)
        .or_else(|| body.and_then(|body| body.get(of)));
    if let Some(measured) = measured {
        row.shown = shown(of, measured.value, unit);
        row.state = match measured.source {
            Source::Taken => "taken",
            Source::Estimated { .. } if likely.is_some() => "likely",
            Source::Estimated { .. } => "estimated",
        };
        if let Source::Estimated { spread } = measured.source {
            row.spread = format!("{} {}", shown(of, spread, unit), unit_of(of, unit));
        }
    }
    if row.error.is_some() {
        row.state = "wrong";
    } else if let Some(body) = body {
        let doubts = body.doubts().iter().filter(|d| d.measurement == of);
        row.doubts = doubts.map(|d| d.text(unit).replace('_', " ")).collect();
    }
    row
}

#[derive(Debug, Serialize)]
pub(super) struct FormAnswer {
    files: Vec<MadeFile>,
}

pub(super) fn form(
    set: Option<&TypedSet>,
    unit: Unit,
    paper: &str,
) -> Result<FormAnswer, Problems> {
    let paper = match paper {
        "letter" | "legal" => PaperFormat::Letter,
        _ => PaperFormat::A4,
    };
    let taken = set.map(|set| set.read(unit).taken).unwrap_or_default();
    let body = probable(&taken, &likely_required(&taken))
        .map_err(|error| Problems::refused(Problem::of(error.explanation())))?;
    let name = set
        .map(|set| set.name.trim())
        .filter(|name| !name.is_empty());
    let bytes = measuring_form(&body, name, unit, paper)
        .map_err(|error| Problems::wrong(Problem::of(error.explanation())))?;
    Ok(FormAnswer {
        files: vec![MadeFile::new("measuring-form.pdf", &bytes)],
    })
}
