//! Running a job: draft, prove, alter, draw, render.

use super::chain::Ways;
use super::laid_parts::LaidParts;
use super::make::{MadePattern, make};
use super::outcome::OutputFile;
#[cfg(feature = "pdf")]
use super::print_pdf::print;
use super::report::cautions;
use super::{Job, JobError, JobReport, Outcome};
use crate::allowance::CutLines;
use crate::drawing::{PatternLabels, SHEET_GAP_MM, pattern_parts};
use crate::measurements::SetReport;
use crate::piece::Pattern;
use crate::render::fitting::{self, Fitting};
use crate::render::{dxf, json, svg};

/// Drafts the block, proves that it can be sewn, alters it, proving it again after every step,
/// draws it and renders it into files in memory.
///
/// The same job gives the same bytes. The files are `pattern-<paper>.pdf` and
/// `pattern-sheet.pdf` (with the feature `pdf`), `pattern.svg`, `pattern.json` and
/// `fitting.html`; `pattern.dxf` if it is asked for.
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
        size: job.size.clone(),
        date: job.date.clone(),
    };
    let laid = LaidParts::new(
        pattern_parts(&pattern, &labels, cut.as_ref())?,
        SHEET_GAP_MM,
    )?;
    let mut files = Vec::new();
    #[cfg(feature = "pdf")]
    let pages = {
        let info = print_info(job, &pattern);
        Some(print(&laid, job.print, &info, "pattern", &mut files)?)
    };
    #[cfg(not(feature = "pdf"))]
    let pages = None;
    let mut add = |name: &str, text: String| {
        files.push(OutputFile {
            name: name.to_owned(),
            bytes: text.into_bytes(),
        });
    };
    add("pattern.svg", svg::render(&laid.sheet));
    let (body, title) = (job.set.body(), &job.title);
    let document = match &cut {
        Some(cut) => json::render_to_cut(&pattern, body, title, &accounts, cut),
        None => json::render(&pattern, body, title, &accounts),
    };
    add("pattern.json", document);
    if job.dxf {
        add("pattern.dxf", exchange(job, &pattern, cut.as_ref())?);
    }
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

/// The pieces for exchange; where they have no size it is what the wearer is called.
fn exchange(job: &Job, pattern: &Pattern, cut: Option<&CutLines>) -> Result<String, JobError> {
    let wearer = job.wearer();
    let size = job.size.as_deref().or(wearer.as_deref());
    let size = size.unwrap_or("made to measure");
    let style = dxf::Style {
        title: &job.title,
        sample_size: size,
        date: job.date.as_deref(),
    };
    let sized = dxf::SizedPattern { size, pattern, cut };
    Ok(dxf::render(&style, &[sized])?)
}

/// What is said about the pattern where it is printed.
#[cfg(feature = "pdf")]
fn print_info(job: &Job, pattern: &crate::piece::Pattern) -> crate::render::pdf::PrintInfo {
    let wearer = job.wearer().map(|name| format!(" for {name}"));
    crate::render::pdf::PrintInfo::new(&job.title)
        .subtitle(format!(
            "{} block{}",
            job.options.block.name(),
            wearer.unwrap_or_default()
        ))
        .contents(crate::drawing::contents(pattern))
}
