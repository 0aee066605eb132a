//! How a job's pattern lies on another wearer.

use super::Job;
use crate::explain::{Explain as _, Explanation};
use crate::fit_map::{FitMap, Origin, fit_map};
use crate::form::Form;
use crate::measurements::MeasurementSet;
use crate::recipe::{MadePattern, one_line};
use crate::render::fitting::ShownFitMap;
use crate::render::json::FitMapRecord;
use crate::units::{Length, LengthStyle, Unit, speak};
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
    /// What must be known about any map.
    pub caution: &'static str,
}

/// What must be known about any map.
const CAUTION: &str = "A map of threads sees lengths and girths alone, on a body computed from measurements: it \
                       replaces no toile in cloth.";

impl FitMapReport {
    /// Of the wearer whom a job's pattern is compared with, if there is one.
    pub(super) fn of(job: &Job, made: &MadePattern) -> Option<Self> {
        let wearer = job.compared.as_ref()?;
        let origin = Origin {
            draft: &made.drafted,
            body: job.set.body(),
        };
        let form = Form::of(wearer.body());
        let (map, refused) = match form {
            Ok(form) => {
                let map = fit_map(&made.pattern, Some(origin), wearer.body(), &form);
                (Some(map), None)
            }
            Err(error) => (None, Some(error.explanation())),
        };
        Some(Self {
            wearer: name(wearer),
            map,
            refused,
            caution: CAUTION,
        })
    }

    /// For the fitting page.
    pub(super) fn shown(&self) -> Option<ShownFitMap<'_>> {
        Some(ShownFitMap {
            wearer: &self.wearer,
            map: self.map.as_ref()?,
            caution: self.caution,
        })
    }

    /// For the pattern document.
    pub(super) fn record(&self) -> Option<FitMapRecord> {
        let map = self.map.as_ref()?;
        Some(FitMapRecord::of(&self.wearer, map))
    }

    /// As a person reads it, in the wearer's unit.
    pub(super) fn text(&self, unit: Unit) -> String {
        let mut out = format!("\nFit map: this pattern on {}\n", self.wearer);
        // Writing to a string cannot fail.
        if let Some(refused) = &self.refused {
            let cause = speak(&refused.cause, unit);
            let _ = writeln!(out, "  None: {cause}; {}.", refused.cure);
        }
        if let Some(map) = &self.map {
            let _ = writeln!(
                out,
                "  {:<32}{:>12}{:>12}{:>12}",
                "down to the waist", "pattern", "body", "excess"
            );
            for station in &map.stations {
                let name = format!("{} {}", station.piece, station.place.name());
                let values = [station.pattern, station.body, station.excess()];
                let [pattern, body, excess] = values.map(|mm| length(mm, unit));
                let _ = writeln!(out, "  {name:<32}{pattern:>12}{body:>12}{excess:>12}");
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
