//! What is known about a body, and what each measurement is, as a person reads it and
//! as a program does.

use std::fmt::Write as _;

use serde::{Serialize, Serializer};

use super::body::{Body, Measured, Source};
use super::catalogue::MeasuredBlock;
use super::doubt::Doubt;
use super::joint::{is_known, surveyed};
use super::measurement::{Kind, Measurement};
use super::set_file::MeasurementSet;
use super::show::{difference, rounded, show};
use crate::units::Unit;

/// How many measurements the report asks for beyond the bodies surveyed.
const ASKED: usize = 4;

/// The report of one set: every value with its source, and what is doubtful.
///
/// Serialised with lengths in mm and angles in degrees.
///
/// ```
/// use blockwright::measurements::{Body, Measurement, MeasurementSet, SetReport};
/// use blockwright::units::Unit;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0),
///     (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0),
///     (Measurement::HipGirth, 1000.0),
/// ])?;
/// let report = SetReport::new(&MeasurementSet::new("Ada", Unit::Mm, body));
/// assert!(report.text().contains("bust_girth"));
/// assert!(report.text().contains("estimated"));
/// let json = serde_json::to_value(&report)?;
/// assert_eq!(json["measurements"]["bust_girth"]["source"], "taken");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SetReport {
    name: String,
    unit: Unit,
    #[serde(skip_serializing_if = "Option::is_none")]
    source: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    notes: Option<String>,
    measurements: Body,
    doubts: Vec<SaidDoubt>,
    beyond_survey: Vec<Measurement>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    take_next: Vec<Measurement>,
}

/// A doubt, and the unit in which it is said.
#[derive(Debug, Clone, PartialEq)]
struct SaidDoubt {
    doubt: Doubt,
    unit: Unit,
}

impl Serialize for SaidDoubt {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.doubt.write(serializer, self.unit)
    }
}

fn said(doubts: impl Iterator<Item = Doubt>, unit: Unit) -> Vec<SaidDoubt> {
    doubts.map(|doubt| SaidDoubt { doubt, unit }).collect()
}

impl SetReport {
    /// The report of a set, in the unit of its file.
    #[must_use]
    pub fn new(set: &MeasurementSet) -> Self {
        let body = set.body();
        let is_beyond = !body.beyond_survey().is_empty() || body.is_farther_than_surveyed();
        Self {
            name: set.name().to_owned(),
            unit: set.unit(),
            source: set.source().map(str::to_owned),
            notes: set.notes().map(str::to_owned),
            measurements: set.body().clone(),
            doubts: said(set.body().doubts().iter().cloned(), set.unit()),
            beyond_survey: set.body().beyond_survey().to_vec(),
            take_next: if is_beyond {
                body.most_helpful(ASKED)
            } else {
                Vec::new()
            },
        }
    }

    /// What the wearer is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The report in another unit.
    #[must_use]
    pub fn in_unit(mut self, unit: Unit) -> Self {
        self.unit = unit;
        self.doubts = said(self.doubts.into_iter().map(|said| said.doubt), unit);
        self
    }

    /// The report as plain text, ending in a line break.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        // Writing to a string cannot fail.
        let _ = writeln!(out, "{}", self.name);
        if let Some(source) = &self.source {
            let _ = writeln!(out, "source: {source}");
        }
        if let Some(notes) = &self.notes {
            let _ = writeln!(out, "notes: {notes}");
        }
        out.push('\n');
        out.push_str(&self.values_text());
        for note in self.beyond_survey_texts() {
            let _ = writeln!(out, "Note: {note}");
        }
        if self.doubts.is_empty() {
            out.push_str("Nothing is doubtful.\n");
        } else {
            out.push_str("Doubtful:\n");
            for SaidDoubt { doubt, .. } in &self.doubts {
                let _ = writeln!(out, "  {}", doubt.text(self.unit));
            }
        }
        out
    }

    /// Every measurement as a person reads it, known or not.
    #[must_use]
    pub fn rows(&self) -> Vec<ReportRow> {
        let row = |measurement| match self.measurements.get(measurement) {
            None => ReportRow {
                measurement,
                value: String::new(),
                state: "not taken, and cannot be estimated".to_owned(),
            },
            Some(measured) => ReportRow {
                measurement,
                value: show(measurement, measured.value, self.unit),
                state: self.state(measurement, measured),
            },
        };
        Measurement::ALL.into_iter().map(row).collect()
    }

    /// The unit in which a person reads it.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.unit
    }

    /// Every value with its source, a line each, and how many were taken and estimated.
    #[must_use]
    pub fn values_text(&self) -> String {
        let mut out = String::new();
        let body = &self.measurements;
        for row in self.rows() {
            let name = row.measurement.name();
            if row.value.is_empty() {
                let _ = writeln!(out, "  {name:<26}{}", row.state);
            } else {
                let _ = writeln!(out, "  {name:<26}{:>12}  {}", row.value, row.state);
            }
        }
        let taken = body.taken().count();
        let estimated = body.iter().count() - taken;
        let _ = writeln!(out, "\n{taken} taken, {estimated} estimated.");
        out
    }

    /// A sentence for each of height, bust, waist and hip that lies outside the bodies on
    /// which the estimates rest, one if only the four together do, and the four measurements
    /// that would help most.
    #[must_use]
    pub fn beyond_survey_texts(&self) -> Vec<String> {
        let sentence = |measurement: &Measurement| {
            let (low, high) = surveyed(*measurement)?;
            Some(format!(
                "{measurement} {} lies outside the {} to {} of the women the estimates rest on.",
                show(
                    *measurement,
                    self.measurements.value(*measurement),
                    self.unit
                ),
                show(*measurement, low, self.unit),
                show(*measurement, high, self.unit),
            ))
        };
        let mut texts: Vec<String> = self.beyond_survey.iter().filter_map(sentence).collect();
        if texts.is_empty() && self.measurements.is_farther_than_surveyed() {
            texts.push(
                "height, bust, waist and hip go together as on none of the women the estimates \
                 rest on."
                    .to_owned(),
            );
        }
        let wanted: Vec<&str> = self.take_next.iter().map(|m| m.name()).collect();
        if let (Some(last), false) = (texts.last_mut(), wanted.is_empty()) {
            last.push_str(" To help most, take ");
            last.push_str(&wanted.join(", "));
            last.push('.');
        }
        texts
    }

    fn state(&self, measurement: Measurement, measured: Measured) -> String {
        match measured.source {
            Source::Estimated { spread } => {
                let spread = difference(measurement, spread, self.unit);
                format!("estimated, ±{spread}")
            }
            Source::Taken
                if self
                    .doubts
                    .iter()
                    .any(|d| d.doubt.measurement == measurement) =>
            {
                "taken, doubtful".to_owned()
            }
            Source::Taken => "taken".to_owned(),
        }
    }
}

/// One measurement of a [`SetReport`], in words.
///
/// ```
/// use blockwright::measurements::{Body, Measurement, MeasurementSet, SetReport};
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let rows = SetReport::new(&MeasurementSet::new("Ada", Unit::Cm, body)).rows();
/// assert_eq!((rows[0].value.as_str(), rows[0].state.as_str()), ("168 cm", "taken"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct ReportRow {
    /// Which.
    pub measurement: Measurement,
    /// Its value with the unit; empty when it is not known.
    pub value: String,
    /// How it is known.
    pub state: String,
}

/// A measurement as the catalogue describes it. Serialised with lengths in mm and angles
/// in degrees.
///
/// ```
/// use blockwright::measurements::CatalogueEntry;
///
/// let entries = CatalogueEntry::all();
/// assert_eq!(entries[0].name(), "height");
/// let json = serde_json::to_value(&entries[0])?;
/// assert_eq!(json["required"], true);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CatalogueEntry {
    name: Measurement,
    definition: &'static str,
    unit: &'static str,
    low: f64,
    high: f64,
    required: bool,
    estimated: bool,
    needed_by: &'static [MeasuredBlock],
}

impl CatalogueEntry {
    /// Every measurement, in the order of [`Measurement::ALL`].
    #[must_use]
    pub fn all() -> Vec<Self> {
        Measurement::ALL.into_iter().map(Self::new).collect()
    }

    /// One measurement.
    #[must_use]
    pub fn new(measurement: Measurement) -> Self {
        let range = measurement.range();
        Self {
            name: measurement,
            definition: measurement.definition(),
            unit: match measurement.kind() {
                Kind::Length => "mm",
                Kind::Angle => "deg",
            },
            low: rounded(measurement, range.low),
            high: rounded(measurement, range.high),
            required: measurement.is_required(),
            estimated: !measurement.is_required() && is_known(measurement),
            needed_by: measurement.needed_by(),
        }
    }

    /// Whether it is an angle, in degrees.
    #[must_use]
    pub fn is_angle(&self) -> bool {
        self.unit == "deg"
    }

    /// The name of the measurement.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name.name()
    }
}

/// The catalogue as plain text, possible values in `unit`, ending in a line break.
///
/// ```
/// use blockwright::measurements::catalogue_text;
/// use blockwright::units::Unit;
///
/// assert!(catalogue_text(Unit::Cm).contains("bust_girth (required)"));
/// ```
#[must_use]
pub fn catalogue_text(unit: Unit) -> String {
    let mut out = String::new();
    for measurement in Measurement::ALL {
        let entry = CatalogueEntry::new(measurement);
        let state = match (entry.required, entry.estimated) {
            (true, _) => "required",
            (_, true) => "estimated if not taken",
            _ => "only if taken",
        };
        let range = measurement.range();
        let blocks: Vec<&str> = entry.needed_by.iter().map(|block| block.name()).collect();
        let _ = writeln!(out, "{measurement} ({state})");
        wrap(&mut out, entry.definition);
        let _ = writeln!(
            out,
            "    {} to {}; for {}\n",
            show(measurement, range.low, unit),
            show(measurement, range.high, unit),
            blocks.join(", "),
        );
    }
    out.truncate(out.trim_end().len());
    out.push('\n');
    out
}

/// Writes a text in indented lines of at most eighty characters.
fn wrap(out: &mut String, text: &str) {
    const WIDTH: usize = 80;
    let mut line = String::from("   ");
    for word in text.split_whitespace() {
        if line.chars().count() + 1 + word.chars().count() > WIDTH {
            let _ = writeln!(out, "{line}");
            line = String::from("   ");
        }
        line.push(' ');
        line.push_str(word);
    }
    let _ = writeln!(out, "{line}");
}
