//! An alteration as a job asks for it: a name and settings.

use super::setting_words::say_plainly;
use crate::alterations::{Alteration, CATALOGUE, Entry, OneSided, Targeted, find};
use crate::explain::Explain;
use crate::measurements::nearest;
use crate::piece::{BodySide, Measure, MeasureUnit};
use serde_json::{Map, Value};
use thiserror::Error;

/// Why a request is none.
///
/// ```
/// use blockwright::alterations::{Request, RequestError};
/// let error = Request::new("back_lenght_reduction", serde_json::json!({"amount": 25})).unwrap_err();
/// assert!(matches!(error, RequestError::Unknown { .. }));
/// assert!(error.to_string().contains("did you mean `back_length_reduction`"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum RequestError {
    /// There is no such alteration.
    #[error("`{name}` is no alteration; {hint}")]
    Unknown {
        /// The name, shortened if long.
        name: String,
        /// The name that was meant, or those that are known.
        hint: String,
    },
    /// The settings are not those of the alteration.
    #[error("{message}{}", known.as_ref().map(|k| format!("; {name} has {k}")).unwrap_or_default())]
    Settings {
        /// The alteration.
        name: &'static str,
        /// What is wrong.
        message: String,
        /// The settings it has, unless the message names them.
        known: Option<String>,
        /// The setting that is wrong, if it is one.
        key: Option<String>,
    },
}

/// An alteration of the [`CATALOGUE`] asked for by name and settings.
///
/// The settings are the alteration's own. `to` instead of the amount asks for a target: the
/// measure [`Entry::target`] is to arrive at that many millimetres or degrees. `to: body` asks
/// for what that measure is on the draft for this body, a `shoulder_slope` for the slope of both
/// shoulders together: whoever knows the body finds the amount and gives it by
/// [`Request::by`], as a job does. A `back_length_reduction` can be asked for with `to: form`: by as much
/// as the back is longer than the wearer's body in the round. `side: left` or
/// `side: right` makes it on that side of the body only.
///
/// # Guarantees
/// The settings make an alteration, `to: body` and `to: form` as soon as the amount is given.
///
/// ```
/// use blockwright::alterations::Request;
/// use serde_json::json;
/// let step = Request::new("back_length_reduction", json!({"amount": 25, "hips_checked": true}))?;
/// assert_eq!(step.alteration()?.amount(), Some(25.0));
/// let step = Request::new("back_length_reduction", json!({"to": 980}))?;
/// assert_eq!(step.alteration()?.amount(), None);
/// # Ok::<(), blockwright::alterations::RequestError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Request {
    name: &'static str,
    settings: Value,
}

impl Request {
    /// The request, proved to make an alteration.
    ///
    /// # Errors
    /// [`RequestError`] for a name or settings that are not known.
    pub fn new(name: &str, settings: Value) -> Result<Self, RequestError> {
        let entry = find(name).ok_or_else(|| unknown(name))?;
        let settings = match settings {
            Value::Null => Value::Object(Map::new()),
            other => other,
        };
        if wants_body(entry.name, &settings) || wants_form(entry.name, &settings) {
            alone(entry, &settings)?;
            read(entry, &by_amount(entry, &settings, 0.0))?;
        } else {
            read(entry, &settings)?;
        }
        Ok(Self {
            name: entry.name,
            settings,
        })
    }

    /// The alteration's name.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name
    }

    /// The settings as they were asked for.
    #[must_use]
    pub fn settings(&self) -> &Value {
        &self.settings
    }

    /// Whether the amount follows from the body: `to: body`.
    ///
    /// ```
    /// use blockwright::alterations::Request;
    /// use serde_json::json;
    /// let step = Request::new("shoulder_slope", json!({"to": "body"}))?;
    /// assert!(step.wants_body() && step.alteration().is_err());
    /// let step = step.by(-2.5)?;
    /// assert_eq!(step.alteration()?.amount(), Some(-2.5));
    /// # Ok::<(), blockwright::alterations::RequestError>(())
    /// ```
    #[must_use]
    pub fn wants_body(&self) -> bool {
        wants_body(self.name, &self.settings)
    }

    /// Whether the amount follows from the wearer's body in the round: `to: form`.
    ///
    /// ```
    /// use blockwright::alterations::Request;
    /// use serde_json::json;
    /// let step = Request::new("back_length_reduction", json!({"to": "form"}))?;
    /// assert!(step.wants_form() && step.alteration().is_err());
    /// assert_eq!(step.by(18.0)?.alteration()?.amount(), Some(18.0));
    /// // Of other alterations no form says how much.
    /// assert!(Request::new("waist_girth", json!({"to": "form"})).is_err());
    /// # Ok::<(), blockwright::alterations::RequestError>(())
    /// ```
    #[must_use]
    pub fn wants_form(&self) -> bool {
        wants_form(self.name, &self.settings)
    }

    /// The measure that is to become the body's; none where it does not ask for the body, and for
    /// the shoulder slope, which is one of two pieces together.
    pub(crate) fn measure_of_body(&self) -> Option<Measure> {
        let target = find(self.name)?.target?;
        (self.wants_body() && self.name != BOTH_SHOULDERS).then(target)
    }

    /// The same with a value for its target in place of the body.
    pub(crate) fn to(&self, value: f64) -> Result<Self, RequestError> {
        let mut settings = self.settings.clone();
        if let Value::Object(map) = &mut settings {
            map.insert("to".to_owned(), Value::from(value));
        }
        Self::new(self.name, settings)
    }

    /// The same by an amount, in place of what it is to arrive at.
    ///
    /// # Errors
    /// [`RequestError`] where the alteration has no such setting.
    pub fn by(&self, amount: f64) -> Result<Self, RequestError> {
        let entry = find(self.name).ok_or_else(|| unknown(self.name))?;
        let settings = by_amount(entry, &self.settings, amount);
        Self::new(self.name, settings)
    }

    /// The alteration.
    ///
    /// # Errors
    /// Where it is asked for by the body and the amount was not given yet; for nothing else,
    /// since the settings were read once.
    pub fn alteration(&self) -> Result<Box<dyn Alteration>, RequestError> {
        if self.wants_body() {
            return Err(RequestError::Settings {
                name: self.name,
                message: "`to: body` needs a body; run it in a job, or give the amount".to_owned(),
                known: None,
                key: Some("to".to_owned()),
            });
        }
        if self.wants_form() {
            return Err(RequestError::Settings {
                name: self.name,
                message:
                    "`to: form` needs a body in the round; run it in a job, or give the amount"
                        .to_owned(),
                known: None,
                key: Some("to".to_owned()),
            });
        }
        read(
            find(self.name).ok_or_else(|| unknown(self.name))?,
            &self.settings,
        )
    }
}

fn unknown(name: &str) -> RequestError {
    let names = CATALOGUE.iter().map(|entry| entry.name);
    let hint = nearest(name.trim(), names.clone()).map_or_else(
        || format!("known are `{}`", names.collect::<Vec<_>>().join("`, `")),
        |near| format!("did you mean `{near}`?"),
    );
    RequestError::Unknown {
        name: name.trim().chars().take(40).collect(),
        hint,
    }
}

/// The alteration whose target is measured on both shoulders together.
const BOTH_SHOULDERS: &str = "shoulder_slope";

/// Whether the amount follows from the body: asked for, and shown by a measure.
fn wants_body(name: &str, settings: &Value) -> bool {
    settings.get("to").and_then(Value::as_str) == Some("body")
        && find(name).is_some_and(|entry| entry.target.is_some())
}

/// Whether the amount follows from a body in the round.
fn wants_form(name: &str, settings: &Value) -> bool {
    settings.get("to").and_then(Value::as_str) == Some("form") && name == "back_length_reduction"
}

/// The setting that holds the amount.
fn amount_key(entry: &Entry) -> &'static str {
    match (entry.example)().unit() {
        MeasureUnit::Millimetres => "amount",
        MeasureUnit::Degrees => "degrees",
    }
}

/// The settings by an amount instead of a target.
fn by_amount(entry: &Entry, settings: &Value, amount: f64) -> Value {
    let mut own = settings.clone();
    if let Value::Object(map) = &mut own {
        map.remove("to");
        map.insert(amount_key(entry).to_owned(), Value::from(amount));
    }
    own
}

/// Refuses a target beside an amount.
fn alone(entry: &Entry, settings: &Value) -> Result<(), RequestError> {
    let amount = amount_key(entry);
    if settings.get(amount).is_none() {
        return Ok(());
    }
    Err(RequestError::Settings {
        name: entry.name,
        message: format!("`to` and `{amount}` exclude each other; leave one out"),
        known: known(entry),
        key: Some("to".to_owned()),
    })
}

/// What is said of a side of the body that is misspelt; nothing where it is a word of the alteration's
/// own that is wrong.
fn unknown_side(entry: &Entry, word: &str) -> Option<RequestError> {
    let sides = BodySide::BOTH.map(BodySide::name);
    let hint = match nearest(word, sides.into_iter()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known(entry).is_some_and(|known| known.contains("`side`")) => return None,
        None => "write `left` or `right`".to_owned(),
    };
    let word: String = word.chars().take(40).collect();
    Some(RequestError::Settings {
        name: entry.name,
        message: format!("`{word}` is no side of the body; {hint}"),
        known: None,
        key: Some("side".to_owned()),
    })
}

/// The alteration, on one side only where `side` is left or right.
fn read(entry: &'static Entry, settings: &Value) -> Result<Box<dyn Alteration>, RequestError> {
    let written = settings.get("side").and_then(Value::as_str);
    let Some(side) = BodySide::BOTH
        .into_iter()
        .find(|s| written == Some(s.name()))
    else {
        let read = read_both(entry, settings);
        return match written.filter(|_| read.is_err()) {
            Some(word) => read.map_err(|error| unknown_side(entry, word).unwrap_or(error)),
            None => read,
        };
    };
    let mut own = settings.clone();
    if let Value::Object(map) = &mut own {
        map.remove("side");
    }
    Ok(Box::new(OneSided::new(side, read_both(entry, &own)?)))
}

fn read_both(entry: &'static Entry, settings: &Value) -> Result<Box<dyn Alteration>, RequestError> {
    let own = |settings: Value| {
        (entry.read)(settings.clone()).map_err(|error| {
            let key = culprit(entry, &settings);
            let said = say_plainly(entry.name, key.as_deref(), &error.to_string());
            RequestError::Settings {
                name: entry.name,
                known: known(entry).filter(|_| said.lists_settings),
                message: shortened(said.text),
                key,
            }
        })
    };
    let target = entry.target.zip(settings.get("to").and_then(Value::as_f64));
    let Some((measure, to)) = target else {
        return own(settings.clone());
    };
    alone(entry, settings)?;
    let inner = own(by_amount(entry, settings, 0.0))?;
    Ok(Box::new(Targeted::new(inner, measure(), to)))
}

/// A message without the length of what was written: it repeats words of any length.
fn shortened(message: String) -> String {
    const HALF: usize = 200;
    if message.chars().count() <= 2 * HALF {
        return message;
    }
    let half = |text: &mut dyn Iterator<Item = char>| text.take(HALF).collect::<String>();
    let end: String = half(&mut message.chars().rev()).chars().rev().collect();
    format!("{} … {end}", half(&mut message.chars()))
}

/// The settings an alteration has, as its reader names them when asked for one that it does not have.
fn known(entry: &Entry) -> Option<String> {
    let mut none = Map::new();
    none.insert(String::new(), Value::Null);
    let reply = (entry.read)(Value::Object(none)).err()?.to_string();
    let (_, names) = reply.split_once("expected ")?;
    Some(names.trim_start_matches("one of ").to_owned())
}

/// The setting without which the reader stumbles over something else or nothing.
fn culprit(entry: &Entry, settings: &Value) -> Option<String> {
    let map = settings.as_object()?;
    let reply = (entry.read)(settings.clone()).err()?.to_string();
    if reply.starts_with("missing field") {
        return None;
    }
    map.keys()
        .find(|key| {
            let mut rest = map.clone();
            rest.remove(*key);
            let now = (entry.read)(Value::Object(rest)).err();
            now.is_none_or(|error| error.to_string() != reply)
        })
        .cloned()
}

impl Explain for RequestError {
    fn code(&self) -> String {
        match self {
            Self::Unknown { .. } => "unknown_alteration",
            Self::Settings { .. } => "bad_alteration",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Unknown { name, .. } => Some(name.clone()),
            Self::Settings { name, key, .. } => Some(match key {
                Some(key) => format!("{name}: {key}"),
                None => (*name).to_owned(),
            }),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Unknown { hint, .. } => hint.clone(),
            Self::Settings {
                name,
                known: Some(known),
                ..
            } => format!("{name} has {known}"),
            Self::Settings { name, .. } => format!("give {name} the settings that it has"),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{Request, RequestError};
    use serde_json::{Value, json};

    fn reply(settings: Value) -> (String, Option<String>) {
        let error = Request::new("back_length_reduction", settings).unwrap_err();
        let text = error.to_string();
        match error {
            RequestError::Settings { key, .. } => (text, key),
            RequestError::Unknown { .. } => (text, None),
        }
    }

    #[test]
    fn wrong_settings_are_named() {
        let (text, key) = reply(json!({"amuont": 25}));
        assert!(
            text.contains("no setting `amuont`; did you mean `amount`?"),
            "{text}"
        );
        assert_eq!(key.as_deref(), Some("amuont"));
        let (text, key) = reply(json!({"amount": "much", "hips_checked": true}));
        assert!(
            text.contains("back_length_reduction has `amount`"),
            "{text}"
        );
        assert_eq!(key.as_deref(), Some("amount"));
        let (text, key) = reply(Value::Null);
        assert!(text.starts_with("`amount` is missing"), "{text}");
        assert_eq!(key, None);
        let (text, key) = reply(json!({"amount": 3, "to": 5}));
        assert!(text.contains("exclude each other"), "{text}");
        assert_eq!(key.as_deref(), Some("to"));
        let error = Request::new("forward_shoulder", json!({"to": "body"})).unwrap_err();
        assert!(error.to_string().contains("no setting `to`"), "{error}");
        let error = Request::new("hip_girth", json!({"amount": 3, "side": "lefft"})).unwrap_err();
        assert!(
            error.to_string().contains("did you mean `left`?"),
            "{error}"
        );
        let gape = json!({"amount": 3, "side": "frnt"});
        let error = Request::new("armscye_gape", gape).unwrap_err();
        assert!(
            error.to_string().contains("did you mean `front`?"),
            "{error}"
        );
        let step = Request::new("waist_girth", json!({"to": "body"})).unwrap();
        assert!(step.wants_body() && step.measure_of_body().is_some());
        let slope = |settings| Request::new("shoulder_slope", settings);
        let both = slope(json!({"to": "body", "degrees": 3})).unwrap_err();
        assert!(both.to_string().contains("exclude each other"), "{both}");
        assert!(slope(json!({"to": "wall"})).is_err());
        assert!(slope(json!({"to": "body", "underarm": "hangs"})).is_err());
        assert!(slope(json!({"to": "body", "underarm": "keep"})).is_ok());
        let (text, _) = reply(json!({"amount": 5, "hinge": "share"}));
        assert!(text.contains("did you mean `shared`?"), "{text}");
        let (_, key) = reply(json!({"to": 5, "hinge": "loose"}));
        assert_eq!(key.as_deref(), Some("hinge"));
    }
}
