//! Running a job: draft, prove, alter, draw, render.

#[cfg(feature = "pdf")]
use super::demonstration_pdf::demonstration;
use super::laid_parts::LaidParts;
use super::outcome::OutputFile;
#[cfg(feature = "pdf")]
use super::print_pdf::print;
use crate::drawing::{PatternLabels, SHEET_GAP_MM, pattern_parts};
use crate::job::reports::report::cautions;
use crate::job::{Job, JobError, JobReport, Outcome, Output, PagesReport};
use crate::measurements::{BodyRecord, SetReport};
use crate::piece::Pattern;
use crate::recipe::{MadePattern, MakeError};
use crate::render::fitting::{self, Fitting};
use crate::render::json::PatternDocument;
use crate::render::{dxf, json, svg};

/// Drafts the block, proves that it can be sewn, alters it, proving it again after every step,
/// draws it and renders it into files in memory.
///
/// The same job gives the same bytes. The files are those of [`Job::outputs`]: `pattern-<paper>.pdf`
/// and `pattern-sheet.pdf` (with the feature `pdf`), `pattern.svg`, `pattern.json`, `pattern.dxf`,
/// `fitting.html`, and `demonstration.pdf` (with the feature `pdf`). What is not asked for is not
/// made: a preview asks for the picture alone.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{Job, Output, Outputs, run};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let mut job = Job::new("First block", Block::Bodice, MeasurementSet::new("Ada", Unit::Cm, body));
/// let outcome = run(&job)?;
/// assert!(outcome.report.text().starts_with("First block"));
/// assert_eq!(outcome, run(&job)?);
///
/// job.outputs = Outputs::none().with(Output::Svg); // a preview
/// let preview = run(&job)?;
/// assert_eq!(preview.files.len(), 1);
/// assert_eq!(preview.file("pattern.svg"), outcome.file("pattern.svg"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`JobError`] when the block cannot be drafted for this body, breaks a law, an
/// alteration is refused, or the pattern cannot be laid out or printed as asked.
pub fn run(job: &Job) -> Result<Outcome, JobError> {
    outcome_of(job, job.make(job.ways)?)
}

/// Draws what was made for a job and renders it into files in memory.
pub(in crate::job) fn outcome_of(job: &Job, made: MadePattern) -> Result<Outcome, JobError> {
    let wanted = job.outputs;
    let mut files = Vec::new();
    let pages = draw(job, &made, &mut files)?;
    let report = JobReport::new(job, &made, pages);
    let mut add = |name: &str, text: String| {
        files.push(OutputFile {
            name: name.to_owned(),
            bytes: text.into_bytes(),
        });
    };
    if wanted.has(Output::Document) {
        add("pattern.json", document(job, &made, &report)?);
    }
    if wanted.has(Output::Dxf) {
        add("pattern.dxf", exchange(job, &made)?);
    }
    let shown = if wanted.has(Output::Fitting) || wanted.has(Output::Demonstration) {
        made.demonstrations()
    } else {
        Vec::new()
    };
    // The page for the fitting is all about the wearer.
    if wanted.has(Output::Fitting) && !job.private {
        let known = SetReport::new(&job.set);
        let cautions = cautions(job.recipe.allowances.as_ref());
        let page = fitting::page(&Fitting {
            title: &job.recipe.title,
            wearer: job.wearer().as_deref(),
            before: &made.drafted,
            after: &made.pattern,
            accounts: &made.accounts,
            choices: &made.choices,
            demonstrations: &shown,
            body: &known,
            cautions: &cautions,
            #[cfg(feature = "form")]
            fit_map: report
                .fit_map
                .as_ref()
                .and_then(crate::job::FitMapReport::shown),
        });
        add("fitting.html", page);
    }
    #[cfg(feature = "pdf")]
    if wanted.has(Output::Demonstration) {
        files.push(OutputFile {
            name: "demonstration.pdf".to_owned(),
            bytes: demonstration(job, &made.accounts, &shown)?,
        });
    }
    Ok(Outcome {
        report,
        pattern: made.pattern,
        files,
    })
}

/// Draws the pieces and adds what is printed and the picture, as far as they are wanted.
fn draw(
    job: &Job,
    made: &MadePattern,
    files: &mut Vec<OutputFile>,
) -> Result<Option<PagesReport>, JobError> {
    if !job.outputs.draw() {
        return Ok(None);
    }
    let labels = PatternLabels {
        title: job.recipe.title.clone(),
        wearer: job.wearer(),
        size: job.recipe.size.clone(),
        date: job.recipe.date.clone(),
        unit: job.set.unit(),
    };
    let parts = pattern_parts(&made.pattern, &labels, made.cut.as_ref())?;
    let laid = LaidParts::new(parts, SHEET_GAP_MM)?;
    #[cfg(feature = "pdf")]
    let pages = {
        let info = print_info(job, made)?;
        print(&laid, (job.outputs, &job.print), &info, "pattern", files)?
    };
    #[cfg(not(feature = "pdf"))]
    let pages = None;
    if job.outputs.has(Output::Svg) {
        files.push(OutputFile {
            name: "pattern.svg".to_owned(),
            bytes: svg::render(&laid.sheet).into_bytes(),
        });
    }
    Ok(pages)
}

/// The pattern document.
fn document(job: &Job, made: &MadePattern, report: &JobReport) -> Result<String, JobError> {
    let (body, title) = (job.set.body(), &job.recipe.title);
    let accounts = made.all_accounts();
    if job.private {
        return private_document(job, made);
    }
    #[cfg(feature = "form")]
    if let Some(record) = report
        .fit_map
        .as_ref()
        .and_then(crate::job::FitMapReport::record)
    {
        let mut document = json::PatternDocument::new(title, body, made.pattern.clone());
        document.accounts = accounts;
        document.cut.clone_from(&made.cut);
        document.fit_map = Some(record);
        return Ok(document.text());
    }
    #[cfg(not(feature = "form"))]
    let _ = report;
    Ok(match &made.cut {
        Some(cut) => json::render_to_cut(&made.pattern, body, title, &accounts, cut),
        None => json::render(&made.pattern, body, title, &accounts),
    })
}

/// The pattern document without the body: of girths what is finished, and no warnings, which compare
/// the two.
fn private_document(job: &Job, made: &MadePattern) -> Result<String, JobError> {
    let mut parts = made.pattern.clone().into_parts();
    parts.warnings.clear();
    for girth in &mut parts.girths {
        (girth.ease, girth.body) = (girth.asked(), 0.0);
    }
    let pattern = Pattern::new(parts).map_err(MakeError::from)?;
    let title = job.recipe.title.as_str();
    let mut document = PatternDocument::new(title, job.set.body(), pattern);
    document.body = BodyRecord::nothing();
    document.accounts = made.all_accounts();
    document.cut.clone_from(&made.cut);
    Ok(document.text())
}

/// The pieces for exchange; where they have no size it is what the wearer is called.
fn exchange(job: &Job, made: &MadePattern) -> Result<String, JobError> {
    let wearer = job.wearer();
    let size = job.recipe.size.as_deref().or(wearer.as_deref());
    let size = size.unwrap_or("made to measure");
    let style = dxf::Style {
        title: &job.recipe.title,
        sample_size: size,
        date: job.recipe.date.as_deref(),
    };
    let sized = dxf::SizedPattern {
        size,
        pattern: &made.pattern,
        cut: made.cut.as_ref(),
    };
    Ok(dxf::render(&style, &[sized])?)
}

/// What is said about the pattern where it is printed.
#[cfg(feature = "pdf")]
fn print_info(job: &Job, made: &MadePattern) -> Result<crate::render::pdf::PrintInfo, JobError> {
    let pattern = &made.pattern;
    let wearer = job.wearer().map(|name| format!(" for {name}"));
    Ok(crate::render::pdf::PrintInfo::new(&job.recipe.title)
        .fonts(super::print_fonts::fonts(&job.print)?)
        .date(job.recipe.date.clone())
        .subtitle(format!(
            "{} block{}",
            job.recipe.options.block.name(),
            wearer.unwrap_or_default()
        ))
        .contents(cut_list(made))
        .sewing(
            crate::job::reports::cloth_words::cloth_words(made, job.set.unit()),
            crate::drawing::sewing_order(pattern, job.set.unit()),
        ))
}

/// Every piece with how it is cut, and what is already around it.
#[cfg(feature = "pdf")]
fn cut_list(made: &MadePattern) -> Vec<String> {
    let mut list = crate::drawing::contents(&made.pattern);
    list.push(match &made.cut {
        Some(_) => "Seam allowances are included: cut along the bold lines.".to_owned(),
        None => "Stitching lines are shown: add seam allowances.".to_owned(),
    });
    list
}
