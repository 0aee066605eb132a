//! How a job's pattern lies on another wearer.

use crate::explain::{Explain as _, Explanation};
use crate::fit_map::{FitMap, Origin, fit_map};
use crate::form::{Dimension, Form, PostureSign, Reproduced};
use crate::job::Job;
use crate::measurements::MeasurementSet;
use crate::recipe::{MadePattern, one_line};
use crate::render::fitting::ShownFitMap;
use crate::render::json::FitMapRecord;
use crate::units::{Length, LengthStyle, Unit, rounded, speak};
use serde::Serialize;
use std::fmt::Write as _;

/// How a job's pattern lies on another wearer.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{Job, Outputs, run};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
/// let size = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
///     (Measurement::BackWaistLength, 410.0), (Measurement::CentreFrontWaistLength, 340.0),
/// ])?;
/// let wearer = size.with_taken(Measurement::BackWaistLength, 390.0)?;
/// let mut job = Job::new("Dress on Ada", Block::Dress, MeasurementSet::new("Size 40", Unit::Cm, size));
/// job.compared = Some(MeasurementSet::new("Ada", Unit::Cm, wearer));
/// job.outputs = Outputs::none();
/// let report = run(&job)?.report;
/// let map = report.fit_map.as_ref().ok_or("no map")?;
/// assert_eq!(map.wearer, "Ada");
/// assert!(report.text().contains("back_length_reduction by"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FitMapReport {
    /// Whom the pattern is compared with.
    pub wearer: String,
    /// The map; none if no body in the round has her measurements.
    pub map: Option<FitMap>,
    /// Why there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refused: Option<Explanation>,
    /// The body in the round, as far as it can be said in figures.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub body: Option<FormReport>,
    /// What must be known about any map.
    pub caution: &'static str,
    #[serde(skip)]
    form: Option<Form>,
}

/// A body in the round in figures: what it reproduces, and how far it is from other women.
///
/// ```
/// use blockwright::form::Form;
/// use blockwright::job::FormReport;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let report = FormReport::of(&Form::of(&body)?);
/// assert!(report.dimensions.iter().all(|one| one.spreads().abs() <= 4.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct FormReport {
    /// Each measurement that it was solved for, as a tape finds it.
    pub reproduced: Vec<Reproduced>,
    /// Each dimension that no tape gives, beside what the survey expects.
    pub dimensions: Vec<Dimension>,
    /// What the posture shows.
    pub posture: Vec<PostureSign>,
    /// By how many degrees the trunk leans back, where no upright body has these lengths.
    pub lean: f64,
}

impl FormReport {
    /// Of a form.
    #[must_use]
    pub fn of(form: &Form) -> Self {
        Self {
            reproduced: form.reproduced().to_vec(),
            dimensions: form.dimensions().to_vec(),
            posture: form.posture(),
            lean: rounded(form.lean().to_degrees(), 1),
        }
    }

    fn text(&self, out: &mut String, unit: Unit) {
        // Writing to a string cannot fail.
        let _ = writeln!(
            out,
            "  {:<32}{:>12}{:>12}{:>12}",
            "body in the round", "given", "found", "miss"
        );
        for one in &self.reproduced {
            let [given, found] = [one.given, one.found].map(|mm| length(mm, unit));
            let miss = format!("{} mm", rounded(one.miss(), 2));
            let _ = writeln!(
                out,
                "  {:<32}{given:>12}{found:>12}{miss:>12}",
                one.of.name()
            );
        }
        let _ = writeln!(
            out,
            "  {:<32}{:>12}{:>12}  standard deviations",
            "what no tape gives", "found", "expected"
        );
        for one in &self.dimensions {
            let [found, expected] = [one.value, one.expected].map(|value| {
                if one.of.is_length() {
                    length(value, unit)
                } else {
                    format!("{value:.2}")
                }
            });
            let off = rounded(one.spreads(), 1);
            let _ = writeln!(
                out,
                "  {:<32}{found:>12}{expected:>12}{off:>+21.1}",
                one.of.name()
            );
        }
        if self.lean != 0.0 {
            let _ = writeln!(out, "  {}", lean_words(self.lean));
        }
        for sign in &self.posture {
            let _ = writeln!(out, "  {}", speak(&sign.to_string(), unit));
        }
    }
}

/// What is said of a body that leans, by degrees.
pub(crate) fn lean_words(degrees: f64) -> String {
    let way = if degrees < 0.0 { "forward" } else { "back" };
    format!(
        "Leans {way} by {:.1}°: no upright body has these lengths of back and front.",
        degrees.abs()
    )
}

/// What must be known about any map.
const CAUTION: &str = "A map of threads sees lengths and girths alone, on a body computed from measurements: it \
                       replaces no toile in cloth.";

impl FitMapReport {
    /// Of the wearer whom a job's pattern is compared with, if there is one.
    pub(crate) fn of(job: &Job, made: &MadePattern) -> Option<Self> {
        let wearer = job.compared.as_ref()?;
        let origin = Origin {
            draft: &made.drafted,
            body: job.set.body(),
        };
        let form = Form::of(wearer.body());
        let (map, form, refused) = match form {
            Ok(form) => {
                let map = fit_map(&made.pattern, Some(origin), wearer.body(), &form);
                (Some(map), Some(form), None)
            }
            Err(error) => (None, None, Some(error.explanation())),
        };
        Some(Self {
            wearer: name(wearer),
            map,
            refused,
            body: form.as_ref().map(FormReport::of),
            caution: CAUTION,
            form,
        })
    }

    /// The body in the round, if there is one.
    #[cfg(feature = "message")]
    pub(crate) const fn form(&self) -> Option<&Form> {
        self.form.as_ref()
    }

    /// For the fitting page.
    pub(in crate::job) fn shown(&self) -> Option<ShownFitMap<'_>> {
        Some(ShownFitMap {
            wearer: &self.wearer,
            map: self.map.as_ref()?,
            form: self.form.as_ref()?,
            caution: self.caution,
        })
    }

    /// For the pattern document.
    pub(in crate::job) fn record(&self) -> Option<FitMapRecord> {
        let map = self.map.as_ref()?;
        Some(FitMapRecord::of(&self.wearer, map))
    }

    /// As a person reads it, in the wearer's unit.
    pub(in crate::job) fn text(&self, unit: Unit) -> String {
        let mut out = format!("\nFit map: this pattern on {}\n", self.wearer);
        // Writing to a string cannot fail.
        if let Some(refused) = &self.refused {
            let cause = speak(&refused.cause, unit);
            let _ = writeln!(out, "  None: {cause}; {}.", refused.cure);
        }
        if let Some(map) = &self.map {
            let _ = writeln!(
                out,
                "  {:<40}{:>10}{:>10}{:>10}",
                "threads", "pattern", "body", "excess"
            );
            for station in &map.stations {
                let place = station.place.name();
                let name = format!("{} {place}, {}", station.piece, station.band.name());
                let values = [station.pattern, station.body, station.excess()];
                let [pattern, body, excess] = values.map(|mm| length(mm, unit));
                let _ = writeln!(out, "  {name:<40}{pattern:>10}{body:>10}{excess:>10}");
            }
            let _ = writeln!(
                out,
                "  {:<32}{:>12}{:>12}{:>12}",
                "round", "finished", "body", "ease"
            );
            for girth in &map.girths {
                let values = [girth.finished, girth.body, girth.ease()];
                let [finished, body, ease] = values.map(|mm| length(mm, unit));
                let _ = writeln!(
                    out,
                    "  {:<32}{finished:>12}{body:>12}{ease:>12}",
                    girth.name
                );
            }
            for advice in &map.advice {
                let _ = writeln!(out, "  {}", speak(&advice.to_string(), unit));
            }
        }
        if let Some(body) = &self.body {
            body.text(&mut out, unit);
        }
        let _ = writeln!(out, "  {}", self.caution);
        out
    }
}

fn name(set: &MeasurementSet) -> String {
    one_line(set.name())
}

fn length(mm: f64, unit: Unit) -> String {
    Length::from_mm(mm.round()).map_or_else(
        |_| "none".to_owned(),
        |length| length.to_text(LengthStyle::fine(unit)),
    )
}
