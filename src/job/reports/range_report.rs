//! What is to be said about a range.

use std::fmt::Write as _;

use serde::Serialize;

use super::report::{TEST_SQUARE, cautions};
use super::rounding::rounded;
use crate::grading::{Graded, Increments};
use crate::job::{GirthReport, PagesReport, RangeJob};
use crate::piece::{Measure, Warning};
use crate::units::{Length, LengthStyle, Unit, speak};

/// One size of a range.
///
/// ```
/// use blockwright::job::SizeReport;
/// let size = SizeReport { label: "40".into(), girths: Vec::new() };
/// assert_eq!(size.label, "40");
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SizeReport {
    /// Its label.
    pub label: String,
    /// Its finished girths and widths.
    pub girths: Vec<GirthReport>,
}

/// One measure in every size and its steps, in mm.
///
/// ```
/// use blockwright::job::IncrementReport;
/// use blockwright::piece::{EdgeName, Measure};
/// let row = IncrementReport {
///     piece: "back".into(), what: "shoulder length".into(), kind: "length",
///     measure: Some(Measure::edge_length("back", EdgeName::SHOULDER)),
///     values: vec![Some(118.0), Some(119.5)], steps: vec![Some(1.5)],
/// };
/// assert_eq!(row.steps.len() + 1, row.values.len());
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct IncrementReport {
    /// The piece; empty for a girth.
    pub piece: String,
    /// What is measured.
    pub what: String,
    /// How: across, along, length, dart intake, girth or ease.
    pub kind: &'static str,
    /// The measure of the pattern, where it is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measure: Option<Measure>,
    /// In every size; none where the size has it not.
    pub values: Vec<Option<f64>>,
    /// From every size to the next.
    pub steps: Vec<Option<f64>>,
}

/// A warning and the sizes it is of.
///
/// ```
/// use blockwright::job::RangeWarning;
/// let warning = RangeWarning { code: "step_jump".into(), text: "…".into(), sizes: vec![] };
/// assert!(warning.sizes.is_empty());
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RangeWarning {
    /// A short name in snake case, for programs.
    pub code: String,
    /// The same for a person; where sizes differ in numbers, that of the first.
    pub text: String,
    /// The labels; none when it is of the range.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub sizes: Vec<String>,
}

/// The report of a range; serialised with lengths in mm.
///
/// ```
/// # use blockwright::measurements::{Body, Measurement, Size, SizeTable};
/// # let body = Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
/// #     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// # ])?;
/// # let table = SizeTable::new("One", blockwright::units::Unit::Cm, vec![Size::new("40", body)]);
/// use blockwright::draft::Block;
/// use blockwright::job::{RangeJob, run_range};
/// let report = run_range(&RangeJob::new("Skirt", Block::Skirt, table))?.report;
/// assert!(report.text().contains("Sizes: 40"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct RangeReport {
    /// What the work is called.
    pub title: String,
    /// The block.
    pub block: String,
    /// The size table.
    pub table: String,
    /// On which point the sizes are laid over one another.
    pub align: &'static str,
    /// The sizes.
    pub sizes: Vec<SizeReport>,
    /// What grows by how much.
    pub increments: Vec<IncrementReport>,
    /// The pages of the tiled file; none without the PDF writer.
    pub pages: Option<PagesReport>,
    /// What stands out in the steps, then what is doubtful about the sizes.
    pub warnings: Vec<RangeWarning>,
    /// What must be known about any pattern.
    pub cautions: Vec<&'static str>,
    #[serde(skip)]
    unit: Unit,
}

impl RangeReport {
    pub(in crate::job) fn new(
        job: &RangeJob,
        graded: &Graded,
        increments: &Increments,
        pages: Option<PagesReport>,
    ) -> Self {
        let sizes = graded.sizes().iter().map(|size| {
            let pattern = size.pattern();
            let girths = pattern.girths().iter().map(|girth| GirthReport {
                name: girth.name.clone(),
                body: rounded(girth.body),
                ease: rounded(girth.ease),
                finished: rounded(pattern.finished(girth)),
            });
            SizeReport {
                label: size.label().to_owned(),
                girths: girths.collect(),
            }
        });
        let rows = increments.measures.iter().map(|measure| IncrementReport {
            piece: measure.of.piece(),
            what: measure.of.what(),
            kind: measure.of.kind(),
            measure: measure.of.measure().cloned(),
            values: measure.values.iter().map(|v| v.map(rounded)).collect(),
            steps: measure
                .steps()
                .into_iter()
                .map(|v| v.map(rounded))
                .collect(),
        });
        Self {
            title: job.recipe.title.clone(),
            block: job.recipe.options.block.name().to_owned(),
            table: job.table.name().to_owned(),
            align: job.align.name(),
            sizes: sizes.collect(),
            increments: rows.collect(),
            pages,
            warnings: warnings(job, graded, &increments.jumps(), job.table.unit()),
            cautions: range_cautions(job).to_vec(),
            unit: job.table.unit(),
        }
    }

    /// The report as plain text in the table's unit, ending in a line break: girths and lengths
    /// in every size; points are in the files.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        let labels: Vec<&str> = self.sizes.iter().map(|size| size.label.as_str()).collect();
        // Writing to a string cannot fail.
        let _ = writeln!(
            out,
            "{}\n{} block, sizes of {}\nSizes: {}",
            self.title,
            self.block,
            self.table,
            labels.join(", ")
        );
        for (heading, kinds) in [
            ("Finished girths", ["girth", ""]),
            (
                "Lengths, darts closed, and dart intakes",
                ["length", "dart intake"],
            ),
        ] {
            let _ = writeln!(
                out,
                "\n{heading}\n  {:<34}{:>12}{:>12}{:>12}{:>12}",
                "", "first", "last", "least step", "most step"
            );
            let rows = self
                .increments
                .iter()
                .filter(|row| kinds.contains(&row.kind));
            for row in rows {
                self.row(&mut out, row);
            }
        }
        if let Some(pages) = &self.pages {
            let _ = writeln!(out, "\nPages\n  {}", pages.text());
        }
        out.push_str(if self.warnings.is_empty() {
            "\nNo warnings.\n"
        } else {
            "\nWarnings\n"
        });
        for warning in &self.warnings {
            let sizes = match warning.sizes.as_slice() {
                [] => String::new(),
                [one] => format!(" (size {one})"),
                sizes if sizes.len() == self.sizes.len() => " (every size)".to_owned(),
                sizes => format!(" (sizes {})", sizes.join(", ")),
            };
            let _ = writeln!(out, "  {}{sizes}: {}", warning.code, warning.text);
        }
        out.push_str("\nBefore you cut\n");
        for caution in &self.cautions {
            let _ = writeln!(out, "  {caution}");
        }
        out
    }

    fn row(&self, out: &mut String, row: &IncrementReport) {
        let length = |mm: Option<f64>| {
            mm.and_then(|mm| Length::from_mm(mm).ok())
                .map_or_else(String::new, |l| l.to_text(LengthStyle::fine(self.unit)))
        };
        let end = |value: Option<&Option<f64>>| match value.copied().flatten() {
            None => "none".to_owned(),
            some => length(some),
        };
        let steps = || row.steps.iter().flatten().copied();
        let title = format!("{} {}", row.piece, row.what.trim_end_matches(" finished"));
        let _ = writeln!(
            out,
            "  {:<34}{:>12}{:>12}{:>12}{:>12}",
            title.trim(),
            end(row.values.first()),
            end(row.values.last()),
            length(steps().reduce(f64::min)),
            length(steps().reduce(f64::max)),
        );
    }
}

/// What must be known before a size is cut out of the nest.
const fn range_cautions(job: &RangeJob) -> [&'static str; 2] {
    match job.recipe.allowances {
        None => cautions(None),
        Some(_) => [
            TEST_SQUARE,
            "Sew a toile before cutting good cloth. Seam allowance is included: cut along the line \
             of your size, sew inside it by the widths that the nest states.",
        ],
    }
}

/// What was noticed about the job, what stands out in the steps, and what the patterns warn of,
/// a code once with its sizes.
fn warnings(job: &RangeJob, graded: &Graded, jumps: &[Warning], unit: Unit) -> Vec<RangeWarning> {
    let mut all: Vec<RangeWarning> = job
        .recipe
        .notes
        .iter()
        .chain(jumps)
        .map(|warning| RangeWarning {
            code: warning.code.clone(),
            text: speak(&warning.text, unit),
            sizes: Vec::new(),
        })
        .collect();
    let of_range = all.len();
    for size in graded.sizes() {
        let label = size.label();
        for warning in size.pattern().warnings() {
            // Each place without an allowance is reported, the same in every size.
            let reported_by_place = warning.code == "allowance_unused";
            let known = all.iter_mut().skip(of_range).find(|known| {
                known.code == warning.code && (!reported_by_place || known.text == warning.text)
            });
            match known {
                Some(known) if known.sizes.last().is_some_and(|last| last == label) => {}
                Some(known) => known.sizes.push(label.to_owned()),
                None => all.push(RangeWarning {
                    code: warning.code.clone(),
                    text: warning.text.clone(),
                    sizes: vec![label.to_owned()],
                }),
            }
        }
    }
    all
}
