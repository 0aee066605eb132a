//! From a message to its answer.

use super::asked::Ask;
use super::problem::{Problem, Problems};
use super::{
    described, drafted, fitted, mapped, measured, most, opened, outputs, shown_signs, written_files,
};
use serde::Serialize;

/// The longest message that is read, in bytes: 1 MiB.
pub const LONGEST_MESSAGE: usize = 1 << 20;

/// Answers a message. The same message gets the same answer.
///
/// ```
/// use blockwright::message::answer;
/// let text = answer(r#"{"ask": "draft", "job": {"title": "Skirt", "block": "skirt", "body": {
///     "name": "Ada", "unit": "cm",
///     "measurements": {"height": 168, "bust_girth": 92, "waist_girth": 76, "hip_girth": 100}}}}"#);
/// let drafted: serde_json::Value = serde_json::from_str(&text)?;
/// assert_eq!(drafted["status"], "ok");
/// assert_eq!(drafted["pieces"][0]["name"], "back");
///
/// let refused: serde_json::Value = serde_json::from_str(&answer("{}"))?;
/// assert_eq!(refused["status"], "wrong");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[must_use]
pub fn answer(message: &str) -> String {
    if message.len() > LONGEST_MESSAGE {
        return text(&Problems::wrong(Problem::new(
            "too_long",
            "the message is longer than 1 MiB",
            "send less",
        )));
    }
    match serde_json::from_str::<Ask>(message) {
        Ok(ask) => answer_to(ask).unwrap_or_else(|problems| text(&problems)),
        Err(error) => {
            let what = format!("the message cannot be read: {error}");
            text(&Problems::wrong(Problem::new(
                "bad_message",
                what,
                "send what the contract of messages says",
            )))
        }
    }
}

fn answer_to(ask: Ask) -> Result<String, Problems> {
    Ok(match ask {
        Ask::Describe {} => ok(&described::describe()),
        Ask::Measure { set, unit, focus } => ok(&measured::measure(&set, unit, focus.as_deref())),
        Ask::Form { set, unit, paper } => ok(&measured::form(set.as_ref(), unit, &paper)?),
        Ask::Signs { words, unit } => ok(&shown_signs::signs(&words, unit)),
        Ask::Draft { made, report } => ok(&drafted::draft(&made, report)?),
        Ask::FitMap { made } => ok(&mapped::map(&made)?),
        Ask::Most { made, step } => ok(&most::most(&made, step)?),
        Ask::Fit { made, wearer } => ok(&fitted::fit(&made, &wearer)?),
        Ask::Output { made, wanted } => ok(&outputs::output(&made, &wanted)?),
        Ask::Read { text, name, files } => ok(&opened::open(&text, &name, &files)?),
        Ask::Write { made, wearer, off } => {
            ok(&written_files::write(&made, wearer.as_ref(), &off)?)
        }
    })
}

#[derive(Serialize)]
struct Fine<'a, T> {
    status: &'static str,
    #[serde(flatten)]
    answer: &'a T,
}

fn ok(answer: &impl Serialize) -> String {
    text(&Fine {
        status: "ok",
        answer,
    })
}

fn text(answer: &impl Serialize) -> String {
    // Strings and finite numbers only: nothing that JSON cannot hold.
    serde_json::to_string(answer).unwrap_or_default()
}
