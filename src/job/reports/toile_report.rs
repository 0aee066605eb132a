//! What is to be said about toiles on screen.

use crate::job::{Job, ToileCase};
use crate::measurements::MeasurementSet;
use crate::toile::{Heights, Rest, Toile, ToileMeasures, ToileSettings};
use serde::Serialize;
use std::fmt::Write as _;

/// What must be known about any toile on screen.
const CAUTIONS: [&str; 4] = [
    "A picture, good to about 5 mm: no toile in cloth has been compared with it. It replaces no toile in \
     cloth.",
    "The amount comes from geometry: measure the block and the body. The picture shows where.",
    "Sleeves are left out and armholes stay open; there is no seam allowance, no lining, and cloth does \
     not touch cloth.",
    "The body between its measured levels is invented: trust no tightness at the bust.",
];

/// The report of toiles, and the document `toile.json`; lengths in mm.
///
/// ```
/// use blockwright::job::ToileReport;
/// fn cases(report: &ToileReport) -> usize { report.cases.len() }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ToileReport {
    /// `blockwright-toile`.
    pub format: &'static str,
    /// Version of the format.
    pub version: u32,
    /// `mm`.
    pub units: &'static str,
    /// What the work is called.
    pub title: String,
    /// The block.
    pub block: String,
    /// Whose form it hangs on, if she has a name.
    pub wearer: Option<String>,
    /// How it was sewn.
    pub settings: ToileSettings,
    /// The toiles.
    pub cases: Vec<ToileCaseReport>,
    /// What should be known about these.
    pub notes: Vec<String>,
    /// What must be known about any.
    pub cautions: Vec<&'static str>,
}

/// One toile.
///
/// ```
/// use blockwright::job::ToileCaseReport;
/// fn rests(case: &ToileCaseReport) -> bool { case.rest.residual < 0.05 }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ToileCaseReport {
    /// The name in files.
    pub name: &'static str,
    /// What it is.
    pub words: &'static str,
    /// Whether left and right were sewn each for itself.
    pub whole: bool,
    /// Whether it was pinned as asked.
    pub pinned_as_asked: bool,
    /// Points of the cloth.
    pub points: usize,
    /// How it came to rest.
    pub rest: Rest,
    /// What it measures.
    pub measures: ToileMeasures,
}

impl ToileCaseReport {
    pub(in crate::job) fn new(case: &ToileCase, toile: &Toile) -> Self {
        Self {
            name: case.name,
            words: case.words,
            whole: toile.is_whole(),
            pinned_as_asked: toile.is_pinned_as_asked(),
            points: toile.places().len(),
            rest: toile.rest(),
            measures: toile.measures(),
        }
    }
}

impl ToileReport {
    pub(in crate::job) fn new(
        job: &Job,
        wearer: &MeasurementSet,
        settings: &ToileSettings,
        cases: Vec<ToileCaseReport>,
        notes: &[String],
    ) -> Self {
        let mut notes = notes.to_vec();
        if job.private {
            notes.push(
                "The job is private, so the wearer's name is left out; pictures and models still show her \
                 form."
                    .to_owned(),
            );
        }
        for case in &cases {
            if case.rest.residual > 0.05 {
                notes.push(format!(
                    "{}: not quite at rest, forces of {:.0} % of the weight are left.",
                    case.words,
                    100.0 * case.rest.residual
                ));
            }
            if !case.pinned_as_asked {
                notes.push(format!(
                    "{}: the neckline does not lie along the base of the neck, so it is not pinned.",
                    case.words
                ));
            }
        }
        let name = match job.private {
            true => String::new(),
            false => crate::recipe::one_line(wearer.name()),
        };
        Self {
            format: "blockwright-toile",
            version: 1,
            units: "mm",
            title: job.recipe.title.clone(),
            block: job.recipe.options.block.name().to_owned(),
            wearer: (!name.is_empty() && name != MeasurementSet::UNNAMED).then_some(name),
            settings: *settings,
            cases,
            notes,
            cautions: CAUTIONS.to_vec(),
        }
    }

    /// The document `toile.json`.
    #[must_use]
    pub fn document(&self) -> String {
        // It holds strings and finite numbers only: nothing that JSON cannot hold.
        let mut text = serde_json::to_string_pretty(self).unwrap_or_default();
        text.push('\n');
        text
    }

    /// The rows of figures: what is measured, and its value for every case.
    pub(in crate::job) fn rows(&self) -> Vec<(String, Vec<String>)> {
        let row = |what: &str, value: &dyn Fn(&ToileCaseReport) -> Option<f64>, unit: &str| {
            let values = self.cases.iter().map(|case| {
                value(case).map_or_else(
                    || "–".to_owned(),
                    |v| format!("{:.0} {unit}", if v.abs() < 0.5 { 0.0 } else { v }),
                )
            });
            (what.to_owned(), values.collect::<Vec<_>>())
        };
        let hem = |of: fn(Heights) -> f64| move |c: &ToileCaseReport| c.measures.hem.map(of);
        let waist = |of: fn(Heights) -> f64| move |c: &ToileCaseReport| c.measures.waist.map(of);
        let gap = |level: &'static str| {
            move |c: &ToileCaseReport| {
                c.measures
                    .gaps
                    .iter()
                    .find(|g| g.level == level)
                    .map(|g| g.mean)
            }
        };
        vec![
            row(
                "Slack at the small of the back, on average",
                &|c| c.measures.small_of_back,
                "mm",
            ),
            row(
                "Waist line above the waist: middle of the back",
                &waist(|h| h.back),
                "mm",
            ),
            row("at the side", &waist(|h| h.side), "mm"),
            row("middle of the front", &waist(|h| h.front), "mm"),
            row(
                "Hem below the waist: middle of the back",
                &hem(|h| -h.back),
                "mm",
            ),
            row("at the side", &hem(|h| -h.side), "mm"),
            row("middle of the front", &hem(|h| -h.front), "mm"),
            row(
                "Side seam swings forward by",
                &|c| c.measures.side_seam.map(|p| p.forward),
                "mm",
            ),
            row(
                "Cloth stands off the body at the bust by",
                &gap("bust"),
                "mm",
            ),
            row("at the waist", &gap("waist"), "mm"),
            row("at the hip", &gap("hip"), "mm"),
            row(
                "Cloth stretched by more than 1 %",
                &|c| Some(c.measures.strain.tight_share),
                "%",
            ),
            row(
                "Forces left, of the weight",
                &|c| Some(100.0 * c.rest.residual),
                "%",
            ),
        ]
    }

    /// The report as plain text, ending in a line break.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        // Writing to a string cannot fail.
        let _ = writeln!(out, "{}\n\n{}", self.title, self.sewn_words());
        for (number, case) in self.cases.iter().enumerate() {
            let _ = writeln!(out, "  {}. {}", number + 1, case.words);
        }
        let _ = write!(out, "\n{:<48}", "");
        for number in 1..=self.cases.len() {
            let _ = write!(out, "{:>10}", format!("{number}."));
        }
        out.push('\n');
        for (what, values) in self.rows() {
            let _ = write!(out, "{what:<48}");
            for value in values {
                let _ = write!(out, "{value:>10}");
            }
            out.push('\n');
        }
        if !self.notes.is_empty() {
            out.push_str("\nNotes\n");
            for note in &self.notes {
                let _ = writeln!(out, "  {note}");
            }
        }
        out.push_str("\nBefore you trust it\n");
        for caution in &self.cautions {
            let _ = writeln!(out, "  {caution}");
        }
        out
    }

    /// How it was sewn, in words.
    pub(in crate::job) fn sewn_words(&self) -> String {
        let cloth = &self.settings.cloth;
        let [warp, weft] = cloth.bending_length;
        let bending = if (warp - weft).abs() < 0.05 {
            format!("{warp:.1} mm")
        } else {
            format!("{warp:.1} mm along the warp and {weft:.1} along the weft")
        };
        format!(
            "Sewn on screen in cloth of {:.0} g/m² with a bending length of {bending}, {}, in triangles of \
             {:.0} mm.",
            cloth.weight,
            self.settings.seating.words(),
            self.settings.quality.edge()
        )
    }
}
