//! Running a range: every size made and proved, laid over the others, rendered.

use serde::Serialize;
use std::ops::ControlFlow;

use super::laid_parts::LaidParts;
use super::outcome::OutputFile;
#[cfg(feature = "pdf")]
use super::print_pdf::print;
use super::range_block::make_size;
use super::range_names::size_names;
use crate::alterations::Account;
use crate::grading::{
    Graded, GradedSize, MOST_SIZES, NEST_GAP_MM, NestError, NestLabels, grade_by, nest_parts,
};
use crate::job::reports::range_charts;
use crate::job::{JobError, Output, PagesReport, RangeJob, RangeReport};
use crate::progress::Progress;
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
    increments: &'a [crate::job::IncrementReport],
    warnings: &'a [crate::job::RangeWarning],
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
    accounts: Vec<Account>,
    title: String,
}

impl Written<'_> {
    /// Its document as a file of its own.
    fn text(&self) -> String {
        let (pattern, accounts) = (self.size.pattern(), &self.accounts);
        let (body, title) = (self.size.body(), &self.title);
        match self.size.cut() {
            Some(cut) => json::render_to_cut(pattern, body, title, accounts, cut),
            None => json::render(pattern, body, title, accounts),
        }
    }

    /// The same as a part of a larger document.
    fn document(&self) -> impl Serialize + '_ {
        let (pattern, accounts) = (self.size.pattern(), &self.accounts);
        let (body, title) = (self.size.body(), &self.title);
        match self.size.cut() {
            Some(cut) => {
                PatternDocument::ToCut(json::document_to_cut(pattern, body, title, accounts, cut))
            }
            None => PatternDocument::Stitched(json::document(pattern, body, title, accounts)),
        }
    }
}

/// Makes every size, lays them over one another and renders all into files in memory.
///
/// The same job gives the same bytes. The files are those of [`RangeJob::outputs`]:
/// `nest-<paper>.pdf` and `nest-sheet.pdf` (with the feature `pdf`), `nest.svg`, `range.json`,
/// `increments.csv`, `size-chart.csv`, `size-chart.html` and for every size `pattern-<label>.json`, `range.dxf`.
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
    run_range_watched(job, &mut |_| ControlFlow::Continue(()))
}

/// As [`run_range`], and says after each size how far it has come.
///
/// ```
/// # use blockwright::measurements::{Body, Measurement, Size, SizeTable};
/// # let body = Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
/// #     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// # ])?;
/// # let table = SizeTable::new("One", blockwright::units::Unit::Cm, vec![Size::new("40", body)]);
/// use blockwright::draft::Block;
/// use blockwright::job::{RangeJob, run_range_watched};
/// use std::ops::ControlFlow;
/// let job = RangeJob::new("Skirt", Block::Skirt, table);
/// run_range_watched(&job, &mut |progress| {
///     println!("{} of {} sizes", progress.done, progress.total);
///     ControlFlow::Continue(())
/// })?;
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// As [`run_range`]; [`GradingError::Stopped`](crate::grading::GradingError) when `progress`
/// stopped it.
pub fn run_range_watched(
    job: &RangeJob,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<RangeOutcome, JobError> {
    let names = size_names(job.table.sizes())?;
    let sizes = job.table.sizes().len();
    if job.outputs.draw() && sizes > MOST_SIZES {
        // Before any of them is made.
        return Err(NestError::TooMany { sizes }.into());
    }
    // What was noticed about the recipe is a warning of the range, once.
    let mut recipe = job.recipe.clone();
    recipe.notes.clear();
    let unit = job.table.unit();
    let graded = grade_by(
        &job.table,
        &mut |size| make_size(&recipe, size, unit),
        progress,
    )?;
    let mut files = Vec::new();
    let pages = draw(job, &graded, &mut files)?;
    let increments = graded.increments(job.align);
    let report = RangeReport::new(job, &graded, &increments, pages);
    let written: Vec<Written<'_>> = graded
        .sizes()
        .iter()
        .map(|size| Written {
            size,
            accounts: size.made().all_accounts(),
            title: format!("{}, size {}", job.recipe.title, size.label()),
        })
        .collect();
    let mut add = |name: &str, text: String| {
        files.push(OutputFile {
            name: name.to_owned(),
            bytes: text.into_bytes(),
        });
    };
    if job.outputs.has(Output::Document) {
        add("range.json", range_document(job, &written, &report));
        add("increments.csv", increments.csv(unit));
        let charts = range_charts::Charts::new(&graded, unit);
        add("size-chart.csv", range_charts::csv(&charts));
        let page = range_charts::page(&charts, &job.recipe.title, job.table.name());
        add("size-chart.html", page);
        for (name, w) in names.iter().zip(&written) {
            add(name, w.text());
        }
    }
    if job.outputs.has(Output::Dxf) {
        add("range.dxf", exchange(job, &written)?);
    }
    Ok(RangeOutcome {
        graded,
        report,
        files,
    })
}

/// Draws the nest and adds what is printed and the picture, as far as they are wanted.
fn draw(
    job: &RangeJob,
    graded: &Graded,
    files: &mut Vec<OutputFile>,
) -> Result<Option<PagesReport>, JobError> {
    if !job.outputs.draw() {
        return Ok(None);
    }
    let labels = NestLabels {
        title: job.recipe.title.clone(),
        date: job.recipe.date.clone(),
        colour: job.print.colour,
        unit: job.table.unit(),
    };
    let laid = LaidParts::new(nest_parts(graded, job.align, &labels)?, NEST_GAP_MM)?;
    #[cfg(feature = "pdf")]
    let pages = {
        let info = print_info(job, graded)?;
        print(&laid, (job.outputs, &job.print), &info, "nest", files)?
    };
    #[cfg(not(feature = "pdf"))]
    let pages = None;
    if job.outputs.has(Output::Svg) {
        files.push(OutputFile {
            name: "nest.svg".to_owned(),
            bytes: svg::render(&laid.sheet).into_bytes(),
        });
    }
    Ok(pages)
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
        title: &job.recipe.title,
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
    let sample = written.get(usize::midpoint(0, written.len().saturating_sub(1)));
    let sizes: Vec<dxf::SizedPattern<'_>> = written
        .iter()
        .map(|w| dxf::SizedPattern {
            size: w.size.label(),
            pattern: w.size.pattern(),
            cut: w.size.cut(),
        })
        .collect();
    let style = dxf::Style {
        title: &job.recipe.title,
        sample_size: sample.map_or("", |w| w.size.label()),
        date: job.recipe.date.as_deref(),
    };
    Ok(dxf::render(&style, &sizes)?)
}

/// What is said about the nest where it is printed.
#[cfg(feature = "pdf")]
fn print_info(job: &RangeJob, graded: &Graded) -> Result<crate::render::pdf::PrintInfo, JobError> {
    let labels: Vec<&str> = graded.labels().collect();
    Ok(crate::render::pdf::PrintInfo::new(&job.recipe.title)
        .fonts(super::print_fonts::fonts(&job.print)?)
        .date(job.recipe.date.clone())
        .subtitle(format!(
            "{} block, sizes {} of {}",
            job.recipe.options.block.name(),
            labels.join(", "),
            crate::recipe::one_line(job.table.name())
        ))
        .contents(
            graded
                .sizes()
                .first()
                .map(|size| crate::drawing::contents(size.pattern()))
                .unwrap_or_default(),
        ))
}
