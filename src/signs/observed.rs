//! Steps from what was pinned, opened or marked on a toile.

use super::all::SIGNS;
use super::error::ObservedError;
use super::sign::{Found, Sign};
use crate::alterations::{Request, RequestError};
use crate::measurements::nearest;
use crate::piece::BodySide;
use serde_json::{Map, Value};

/// What a fitter noted on a toile.
///
/// ```
/// use blockwright::signs::{Found, Observed};
/// let note = Observed::new("centre back waist", Found::Pinned, 25.0);
/// assert_eq!(note.amount, 25.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Observed {
    /// Where, as in [`Sign::at`].
    pub place: String,
    /// Whether it was pinned away, opened or marked.
    pub found: Found,
    /// How much, in millimetres.
    pub amount: f64,
    /// On that side of the body alone.
    pub side: Option<BodySide>,
}

impl Observed {
    /// A note for both sides.
    #[must_use]
    pub fn new(place: impl Into<String>, found: Found, amount: f64) -> Self {
        Self {
            place: place.into(),
            found,
            amount,
            side: None,
        }
    }
}

/// The largest amount that is taken for one, in millimetres.
const MOST: f64 = 100.0;

/// The step that an observation asks for, and the sign that says what to rule out first.
///
/// ```
/// use blockwright::signs::{Found, Observed, observed};
/// let (sign, step) = observed(&Observed::new("Centre back waist", Found::Pinned, 25.0))?;
/// assert_eq!(step.alteration()?.amount(), Some(25.0));
/// assert!(sign.rule_out.starts_with("hips"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`ObservedError`] for a place that is not known, for `opened` where cloth is pinned and the like,
/// and for an amount that no toile shows.
pub fn observed(note: &Observed) -> Result<(&'static Sign, Request), ObservedError> {
    let said = plain(&note.place);
    let sign = SIGNS
        .iter()
        .find(|sign| plain(sign.at) == said || sign.name == said)
        .ok_or_else(|| unknown(&note.place))?;
    if sign.found != note.found {
        return Err(ObservedError::OtherWay {
            place: sign.at,
            known: sign.found.name(),
            said: note.found.name(),
            measure: sign.measure,
        });
    }
    if !(1.0..=MOST).contains(&note.amount) {
        return Err(ObservedError::Amount {
            place: sign.at,
            amount: note.amount,
        });
    }
    let step = sign.step(note.amount, note.side);
    Ok((sign, step.map_err(|_| unknown(&note.place))?))
}

impl Sign {
    /// The alteration that follows from so many millimetres.
    fn step(&self, amount: f64, side: Option<BodySide>) -> Result<Request, RequestError> {
        let mut settings = Map::new();
        for (key, value) in self.settings {
            let value = match *value {
                "true" => Value::Bool(true),
                text => Value::from(text),
            };
            settings.insert((*key).to_owned(), value);
        }
        settings.insert(self.key.to_owned(), Value::from(self.factor * amount));
        // A gape has its own `side`, front or back; for it both sides are altered.
        if let (Some(side), false) = (side, settings.contains_key("side")) {
            settings.insert("side".to_owned(), Value::from(side.name()));
        }
        Request::new(self.alteration, Value::Object(settings))
    }
}

/// A place in small letters, with single spaces.
fn plain(text: &str) -> String {
    let words: Vec<String> = text.split_whitespace().map(str::to_lowercase).collect();
    words.join(" ")
}

fn unknown(place: &str) -> ObservedError {
    let said = plain(place);
    let names = SIGNS.iter().map(|sign| sign.at);
    let hint = nearest(&said, names).map_or_else(
        || "`blockwright signs` lists the places".to_owned(),
        |near| format!("did you mean `{near}`?"),
    );
    ObservedError::Unknown {
        place: place.chars().take(60).collect(),
        hint,
    }
}
