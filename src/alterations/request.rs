//! An alteration as a job asks for it: a name and settings.

use super::{Alteration, BodySide, CATALOGUE, Entry, OneSided, Targeted, Unit, find};
use crate::measurements::nearest;
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
        /// The settings it has, unless the message tells them.
        known: Option<String>,
        /// The setting that is wrong, if it is one.
        key: Option<String>,
    },
}

/// An alteration of the [`CATALOGUE`] asked for by name and settings.
///
/// The settings are the alteration's own. `to` instead of the amount asks for a target: the
/// measure [`Entry::target`] is to arrive at that many millimetres or degrees. `side: left` or
/// `side: right` makes it on that side of the body only.
///
/// # Guarantees
/// The settings make an alteration.
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
#[derive(Debug, Clone, PartialEq)]
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
        read(entry, &settings)?;
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

    /// The alteration.
    ///
    /// # Errors
    /// None in practice: the settings were read once.
    pub fn alteration(&self) -> Result<Box<dyn Alteration>, RequestError> {
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

/// The alteration, on one side only where `side` is left or right.
fn read(entry: &'static Entry, settings: &Value) -> Result<Box<dyn Alteration>, RequestError> {
    let side = settings.get("side").and_then(Value::as_str);
    let Some(side) = BodySide::BOTH.into_iter().find(|s| side == Some(s.name())) else {
        return read_both(entry, settings);
    };
    let mut own = settings.clone();
    if let Value::Object(map) = &mut own {
        map.remove("side");
    }
    Ok(Box::new(OneSided::new(side, read_both(entry, &own)?)))
}

fn read_both(entry: &'static Entry, settings: &Value) -> Result<Box<dyn Alteration>, RequestError> {
    let wrong = |message: String, key: Option<String>| RequestError::Settings {
        name: entry.name,
        known: known(entry).filter(|_| !message.contains("expected one of")),
        message: shortened(message),
        key,
    };
    let target = entry.target.zip(settings.get("to").and_then(Value::as_f64));
    let Some((what, to)) = target else {
        return (entry.read)(settings.clone())
            .map_err(|error| wrong(error.to_string(), culprit(entry, settings)));
    };
    let amount = match (entry.example)().unit() {
        Unit::Millimetres => "amount",
        Unit::Degrees => "degrees",
    };
    if settings.get(amount).is_some() {
        let message = format!("`to` and `{amount}` exclude each other; leave one out");
        return Err(wrong(message, Some("to".to_owned())));
    }
    let mut own = settings.clone();
    if let Value::Object(map) = &mut own {
        map.remove("to");
        map.insert(amount.to_owned(), Value::from(0.0));
    }
    let inner = (entry.read)(own.clone())
        .map_err(|error| wrong(error.to_string(), culprit(entry, &own)))?;
    Ok(Box::new(Targeted::new(inner, what, to)))
}

/// A message without the length of what was written: it repeats words of any length.
fn shortened(message: String) -> String {
    const LONGEST: usize = 400;
    if message.chars().count() <= LONGEST {
        return message;
    }
    let half = |text: &mut dyn Iterator<Item = char>| text.take(LONGEST / 2).collect::<String>();
    let end: String = half(&mut message.chars().rev()).chars().rev().collect();
    format!("{} … {end}", half(&mut message.chars()))
}

/// The settings an alteration has, as its reader tells them when asked for one it has not.
fn known(entry: &Entry) -> Option<String> {
    let mut none = Map::new();
    none.insert(String::new(), Value::Null);
    let told = (entry.read)(Value::Object(none)).err()?.to_string();
    let (_, names) = told.split_once("expected ")?;
    Some(names.trim_start_matches("one of ").to_owned())
}

/// The setting without which the reader stumbles over something else or nothing.
fn culprit(entry: &Entry, settings: &Value) -> Option<String> {
    let map = settings.as_object()?;
    let told = (entry.read)(settings.clone()).err()?.to_string();
    if told.starts_with("missing field") {
        return None;
    }
    map.keys()
        .find(|key| {
            let mut rest = map.clone();
            rest.remove(*key);
            let now = (entry.read)(Value::Object(rest)).err();
            now.is_none_or(|error| error.to_string() != told)
        })
        .cloned()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{Request, RequestError};
    use serde_json::{Value, json};

    fn told(settings: Value) -> (String, Option<String>) {
        let error = Request::new("back_length_reduction", settings).unwrap_err();
        let text = error.to_string();
        match error {
            RequestError::Settings { key, .. } => (text, key),
            RequestError::Unknown { .. } => (text, None),
        }
    }

    #[test]
    fn wrong_settings_are_named() {
        let (text, key) = told(json!({"amuont": 25}));
        assert!(text.contains("unknown field `amuont`, expected one of `amount`"));
        assert_eq!(key.as_deref(), Some("amuont"));
        let (text, key) = told(json!({"amount": "much", "hips_checked": true}));
        assert!(
            text.contains("back_length_reduction has `amount`"),
            "{text}"
        );
        assert_eq!(key.as_deref(), Some("amount"));
        let (text, key) = told(Value::Null);
        assert!(text.starts_with("missing field `amount`"), "{text}");
        assert_eq!(key, None);
        let (text, key) = told(json!({"amount": 3, "to": 5}));
        assert!(text.contains("exclude each other"), "{text}");
        assert_eq!(key.as_deref(), Some("to"));
        let (text, _) = told(json!({"to": "body"}));
        assert!(text.contains("unknown field `to`"), "{text}");
        let (_, key) = told(json!({"to": 5, "hinge": "loose"}));
        assert_eq!(key.as_deref(), Some("hinge"));
    }
}
