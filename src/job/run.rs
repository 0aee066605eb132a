//! Running a job: draft, prove, alter, draw, render.

use super::chain::Ways;
use super::make::{MadePattern, make};
use super::outcome::OutputFile;
use super::report::cautions;
use super::{Job, JobError, JobReport, Outcome};
use crate::drawing::{PatternLabels, pattern_sheet, pattern_sheet_to_cut};
use crate::measurements::SetReport;
use crate::render::fitting::{self, Fitting};
use crate::render::{json, svg};

/// Drafts the block, proves that it can be sewn, alters it, proving it again after every step,
/// draws it and renders it into files in memory.
///
/// The same job gives the same bytes. The files are `pattern-<paper>.pdf` and
/// `pattern-sheet.pdf` (with the feature `pdf`), `pattern.svg`, `pattern.json` and
/// `fitting.html`.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{Job, run};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let job = Job::new("First block", Block::Bodice, MeasurementSet::new("Ada", Unit::Cm, body));
/// let outcome = run(&job)?;
/// assert!(outcome.report.text().starts_with("First block"));
/// assert_eq!(outcome, run(&job)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`JobError`] when the block cannot be drafted for this body, breaks a law, an
/// alteration is refused, or the pattern cannot be laid out or printed as asked.
pub fn run(job: &Job) -> Result<Outcome, JobError> {
    let MadePattern {
        drafted,
        pattern,
        accounts,
        choices,
        cut,
    } = make(job, Ways::Compared)?;
    let labels = PatternLabels {
        title: job.title.clone(),
        wearer: job.wearer(),
    };
    let sheet = match &cut {
        Some(cut) => pattern_sheet_to_cut(&pattern, &labels, cut)?,
        None => pattern_sheet(&pattern, &labels)?,
    };
    let mut files = Vec::new();
    #[cfg(feature = "pdf")]
    let pages = Some(print(job, &pattern, &sheet, &mut files)?);
    #[cfg(not(feature = "pdf"))]
    let pages = None;
    let mut add = |name: &str, text: String| {
        files.push(OutputFile {
            name: name.to_owned(),
            bytes: text.into_bytes(),
        });
    };
    add("pattern.svg", svg::render(&sheet));
    let (body, title) = (job.set.body(), &job.title);
    let document = match &cut {
        Some(cut) => json::render_to_cut(&pattern, body, title, &accounts, cut),
        None => json::render(&pattern, body, title, &accounts),
    };
    add("pattern.json", document);
    let page = fitting::page(&Fitting {
        title: &job.title,
        wearer: job.wearer().as_deref(),
        before: &drafted,
        after: &pattern,
        accounts: &accounts,
        choices: &choices,
        body: &SetReport::new(&job.set),
        cautions: &cautions(job.allowances.as_ref()),
    });
    add("fitting.html", page);
    Ok(Outcome {
        report: JobReport::new(job, &pattern, (&accounts, &choices), pages),
        pattern,
        files,
    })
}

/// Adds the tiled file and the sheet, and tells how many pages there are.
#[cfg(feature = "pdf")]
fn print(
    job: &Job,
    pattern: &crate::piece::Pattern,
    sheet: &crate::drawing::Drawing,
    files: &mut Vec<OutputFile>,
) -> Result<super::PagesReport, JobError> {
    use super::outcome::tiled_name;
    use crate::drawing::contents;
    use crate::render::pdf;

    let wearer = job.wearer().map(|name| format!(" for {name}"));
    let info = pdf::PrintInfo::new(&job.title)
        .subtitle(format!(
            "{} block{}",
            job.options.block.name(),
            wearer.unwrap_or_default()
        ))
        .contents(contents(pattern));
    let (bytes, plan) = pdf::tiles(sheet, job.print.paper.into(), &job.print.into(), &info)?;
    let name = tiled_name(job.print.paper);
    files.push(OutputFile {
        name: name.clone(),
        bytes,
    });
    files.push(OutputFile {
        name: "pattern-sheet.pdf".to_owned(),
        bytes: pdf::sheet(sheet, &info)?,
    });
    Ok(super::PagesReport {
        file: name,
        paper: job.print.paper,
        pages: plan.page_count(),
        rows: plan.rows,
        columns: plan.columns,
        landscape: plan.landscape,
    })
}
