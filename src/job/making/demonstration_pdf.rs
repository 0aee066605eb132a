//! The alterations of a job shown on paper, to be printed.

use crate::alterations::Account;
use crate::demonstration::Demonstration;
use crate::job::reports::report::cautions;
use crate::job::{Job, JobError, PaperSize};
use crate::piece::MeasureUnit;
use crate::render::demonstration::{DemonstrationLabels, Step, sheets};
use crate::render::pdf::{PaperFormat, PrintInfo, pictures};
use crate::units::{Unit, speak};

/// What everybody has to know who follows the pages with scissors.
const PAPER_FIRST: &str = "The drawings are small: cut nothing by them. Try each step on a paper copy first, sew a toile, and cut good cloth last.";

/// A page for every piece that the job's alterations cut.
pub(in crate::job) fn demonstration(
    job: &Job,
    accounts: &[Account],
    shown: &[Demonstration],
) -> Result<Vec<u8>, JobError> {
    let unit = job.set.unit();
    let steps: Vec<Step<'_>> = accounts
        .iter()
        .zip(shown)
        .enumerate()
        .map(|(index, (account, shown))| Step {
            head: head(index + 1, account, unit),
            shown,
        })
        .collect();
    let wearer = job.wearer().map(|name| format!(" for {name}"));
    let title = format!("{}{}", job.recipe.title, wearer.unwrap_or_default());
    let first = std::iter::once(PAPER_FIRST.to_owned());
    let others = cautions(job.recipe.allowances.as_ref());
    let labels = DemonstrationLabels {
        title,
        cautions: first
            .chain(others.iter().map(|&text| text.to_owned()))
            .collect(),
        unit,
    };
    let pages = sheets(&steps, &labels).map_err(crate::drawing::SheetError::from)?;
    let paper = match job.print.paper {
        PaperSize::Letter | PaperSize::Legal => PaperFormat::Letter,
        _ => PaperFormat::A4,
    };
    let info = PrintInfo::new(&labels.title)
        .fonts(super::print_fonts::fonts(&job.print)?)
        .date(job.recipe.date.clone());
    Ok(pictures(&pages, paper, &info)?)
}

/// `1. Back length reduction by 15 mm`, in the unit of the wearer.
fn head(number: usize, account: &Account, unit: Unit) -> String {
    let name = account.alteration.replace('_', " ");
    let mut letters = name.chars();
    let first: String = letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    let by = account
        .amount
        .map_or_else(String::new, |amount| match account.unit {
            MeasureUnit::Millimetres => speak(&format!(" by {} mm", shortened(amount)), unit),
            MeasureUnit::Degrees => format!(" by {}°", shortened(amount)),
        });
    format!("{number}. {first}{}{by}", letters.as_str())
}

/// A number with a decimal only where it has one.
fn shortened(value: f64) -> String {
    let text = format!("{value:.1}");
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}
