//! Running a range: every size made and proved, laid over the others, rendered.

use serde::Serialize;

use super::laid_parts::LaidParts;
use super::outcome::OutputFile;
#[cfg(feature = "pdf")]
use super::print_pdf::print;
use super::range_names::size_names;
use super::warnings::with_doubts;
use super::{JobError, RangeJob, RangeReport};
use crate::grading::{Graded, GradedSize, NEST_GAP_MM, NestLabels, grade, nest_parts};
use crate::measurements::MeasurementSet;
use crate::piece::Pattern;
use crate::render::{dxf, json, svg};

/// A graded range, what is to be said about it, and its files.
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
/// let outcome = run_range(&RangeJob::new("Skirt", Block::Skirt, table))?;
/// assert!(outcome.files.iter().any(|file| file.name == "pattern-40.json"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct RangeOutcome {
    /// The range.
    pub graded: Graded,
    /// What is to be said about it.
    pub report: RangeReport,
    /// Its files, in the order in which they are named to the user.
    pub files: Vec<OutputFile>,
}

#[derive(Serialize)]
struct RangeDocument<'a, P> {
    format: &'static str,
    version: u32,
    units: &'static str,
    title: &'a str,
    sizes: Vec<SizeDocument<'a, P>>,
    increments: &'a [super::IncrementReport],
    warnings: &'a [super::RangeWarning],
}

#[derive(Serialize)]
struct SizeDocument<'a, P> {
    label: &'a str,
    pattern: P,
}

/// The document of a size, with or without cut lines.
#[derive(Serialize)]
#[serde(untagged)]
enum PatternDocument<S, C> {
    Stitched(S),
    ToCut(C),
}

/// A size as it is written.
struct Written<'a> {
    size: &'a GradedSize,
    title: String,
    /// Its pattern, with all its warnings.
    pattern: &'a Pattern,
}

impl Written<'_> {
    /// Its document as a file of its own.
    fn text(&self) -> String {
        let (body, accounts) = (self.size.body(), self.size.accounts());
        match self.size.cut() {
            Some(cut) => json::render_to_cut(self.pattern, body, &self.title, accounts, cut),
            None => json::render(self.pattern, body, &self.title, accounts),
        }
    }

    /// The same as a part of a larger document.
    fn document(&self) -> impl Serialize + '_ {
        let (body, accounts) = (self.size.body(), self.size.accounts());
        match self.size.cut() {
            Some(cut) => PatternDocument::ToCut(json::document_to_cut(
                self.pattern,
                body,
                &self.title,
                accounts,
                cut,
            )),
            None => {
                PatternDocument::Stitched(json::document(self.pattern, body, &self.title, accounts))
            }
        }
    }
}

/// Makes every size, lays them over one another and renders all into files in memory.
///
/// The same job gives the same bytes. The files are `nest-<paper>.pdf` and `nest-sheet.pdf`
/// (with the feature `pdf`), `nest.svg`, `range.json`, `increments.csv`, and for every size
/// `pattern-<label>.json`; `range.dxf` if it is asked for.
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
/// let job = RangeJob::new("Dress", Block::Dress, table);
/// assert_eq!(run_range(&job)?, run_range(&job)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`JobError`] when a size is refused (it is named), its label makes no file name, or the nest
/// cannot be laid out or printed as asked.
pub fn run_range(job: &RangeJob) -> Result<RangeOutcome, JobError> {
    let names = size_names(job.table.sizes())?;
    let mut graded = grade(job.table.sizes(), &job.options, &job.alterations)?;
    if let Some(allowances) = &job.allowances {
        graded = graded.with_allowances(allowances)?;
    }
    let labels = NestLabels {
        title: job.title.clone(),
        date: job.date.clone(),
    };
    let laid = LaidParts::new(nest_parts(&graded, job.align, &labels)?, NEST_GAP_MM)?;
    let increments = graded.increments(job.align);
    let patterns: Vec<Pattern> = graded
        .sizes()
        .iter()
        .map(|size| {
            let (label, unit) = (size.label(), job.table.unit());
            let set = MeasurementSet::new(label, unit, size.body().clone());
            with_doubts(size.pattern().clone(), &set, job.allowances.as_ref(), &[])
        })
        .collect::<Result<_, _>>()?;
    let mut files = Vec::new();
    #[cfg(feature = "pdf")]
    let pages = {
        let info = print_info(job, &graded);
        Some(print(&laid, job.print, &info, "nest", &mut files)?)
    };
    #[cfg(not(feature = "pdf"))]
    let pages = None;
    let report = RangeReport::new(job, &graded, &patterns, &increments, pages);
    let written: Vec<Written<'_>> = graded
        .sizes()
        .iter()
        .zip(&patterns)
        .map(|(size, pattern)| Written {
            size,
            title: format!("{}, size {}", job.title, size.label()),
            pattern,
        })
        .collect();
    let mut add = |name: &str, text: String| {
        files.push(OutputFile {
            name: name.to_owned(),
            bytes: text.into_bytes(),
        });
    };
    add("nest.svg", svg::render(&laid.sheet));
    add("range.json", range_document(job, &written, &report));
    add("increments.csv", increments.csv());
    for (name, w) in names.iter().zip(&written) {
        add(name, w.text());
    }
    if job.dxf {
        add("range.dxf", exchange(job, &written)?);
    }
    Ok(RangeOutcome {
        graded,
        report,
        files,
    })
}

fn range_document(job: &RangeJob, written: &[Written<'_>], report: &RangeReport) -> String {
    let sizes = written.iter().map(|w| SizeDocument {
        label: w.size.label(),
        pattern: w.document(),
    });
    let document = RangeDocument {
        format: "blockwright-range",
        version: 1,
        units: "mm",
        title: &job.title,
        sizes: sizes.collect(),
        increments: &report.increments,
        warnings: &report.warnings,
    };
    // Strings and finite numbers only: nothing that JSON cannot hold.
    let mut text = serde_json::to_string_pretty(&document).unwrap_or_default();
    text.push('\n');
    text
}

/// The pieces of all sizes; the sample is the size in the middle of the table.
fn exchange(job: &RangeJob, written: &[Written<'_>]) -> Result<String, JobError> {
    let sample = written.get((written.len().max(1) - 1) / 2);
    let sizes: Vec<dxf::SizedPattern<'_>> = written
        .iter()
        .map(|w| dxf::SizedPattern {
            size: w.size.label(),
            pattern: w.pattern,
            cut: w.size.cut(),
        })
        .collect();
    let style = dxf::Style {
        title: &job.title,
        sample_size: sample.map_or("", |w| w.size.label()),
        date: job.date.as_deref(),
    };
    Ok(dxf::render(&style, &sizes)?)
}

/// What is said about the nest where it is printed.
#[cfg(feature = "pdf")]
fn print_info(job: &RangeJob, graded: &Graded) -> crate::render::pdf::PrintInfo {
    let labels: Vec<&str> = graded.labels().collect();
    crate::render::pdf::PrintInfo::new(&job.title)
        .subtitle(format!(
            "{} block, sizes {} of {}",
            job.options.block.name(),
            labels.join(", "),
            super::definition::one_line(job.table.name())
        ))
        .contents(
            graded
                .sizes()
                .first()
                .map(|size| crate::drawing::contents(size.pattern()))
                .unwrap_or_default(),
        )
}
