//! The answer to `fit_map`: the wearer's body in the round, and how the pattern lies on her.

use super::asked::MadeFrom;
use super::drafted::as_far_as_it_goes;
use super::problem::{Problem, Problems};
use crate::job::{FitMapReport, FormReport, lean_words};
use crate::recipe::Ways;
use crate::render::fitting::{form_figure, map_figures, map_legend};
use crate::units::speak;
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(super) struct Mapped {
    wearer: String,
    /// A drawing of the body, from the front and the side.
    #[serde(skip_serializing_if = "Option::is_none")]
    form: Option<String>,
    /// The pieces with their map, and what its hatches mean.
    pieces: Vec<MappedPiece>,
    legend: String,
    /// What follows, sentences.
    advice: Vec<String>,
    /// What the posture shows, sentences.
    posture: Vec<String>,
    /// What the body reproduces, and how far it is from others.
    #[serde(skip_serializing_if = "Option::is_none")]
    body: Option<FormReport>,
    /// Why there is no body.
    #[serde(skip_serializing_if = "Option::is_none")]
    refused: Option<Problem>,
    caution: &'static str,
}

#[derive(Debug, Serialize)]
struct MappedPiece {
    name: String,
    svg: String,
}

/// Of the job's wearer, or else of the body that it is drafted for.
pub(super) fn map(asked: &MadeFrom) -> Result<Mapped, Problems> {
    let mut job = asked.job()?;
    let wearer = job.compared.get_or_insert_with(|| job.set.clone());
    let unit = wearer.unit();
    let (made, _) = as_far_as_it_goes(&mut job, Ways::Skipped)?;
    let report = FitMapReport::of(&job, &made).ok_or_else(|| {
        Problems::wrong(Problem::new(
            "no_wearer",
            "there is nobody to look at the pattern on",
            "measure the wearer",
        ))
    })?;
    let sentences = |all: Vec<String>| all.iter().map(|text| speak(text, unit)).collect();
    let advice = report.map.iter().flat_map(|map| &map.advice);
    let advice: Vec<String> = advice.map(ToString::to_string).collect();
    let posture = report.body.iter().flat_map(|body| &body.posture);
    let mut posture: Vec<String> = posture.map(ToString::to_string).collect();
    let lean = report.body.as_ref().map_or(0.0, |body| body.lean);
    if lean != 0.0 {
        posture.push(lean_words(lean));
    }
    let figures = report.map.as_ref().map(|map| {
        let figures = map_figures(&made.pattern, map, unit).into_iter();
        figures.map(|figure| MappedPiece {
            name: figure.piece,
            svg: figure.svg,
        })
    });
    Ok(Mapped {
        form: report.form().map(form_figure),
        pieces: figures.into_iter().flatten().collect(),
        legend: map_legend(unit),
        advice: sentences(advice),
        posture: sentences(posture),
        refused: report.refused.clone().map(Problem::of),
        wearer: report.wearer,
        body: report.body,
        caution: report.caution,
    })
}
