//! The answer to `signs`.

use crate::signs::{SIGNS, Sign, drawing, search};
use crate::units::{Length, LengthStyle, Unit};
use serde::Serialize;
use serde_json::{Map, Value};

#[derive(Debug, Serialize)]
pub(super) struct Signs {
    signs: Vec<SignShown>,
}

#[derive(Debug, Serialize)]
struct SignShown {
    name: &'static str,
    place: &'static str,
    at: &'static str,
    shows: &'static str,
    cause: &'static str,
    rule_out: &'static str,
    found: &'static str,
    measure: &'static str,
    alteration: &'static str,
    /// Settings besides the amount.
    settings: Map<String, Value>,
    key: &'static str,
    factor: f64,
    /// As it is measured, in millimetres.
    usual: [f64; 2],
    usual_text: String,
    elsewhere: &'static str,
    source: &'static str,
    drawing: String,
}

pub(super) fn signs(words: &str, unit: Unit) -> Signs {
    let found: Vec<&Sign> = if words.trim().is_empty() {
        SIGNS.iter().collect()
    } else {
        search(words)
    };
    Signs {
        signs: found.into_iter().map(|sign| shown(sign, unit)).collect(),
    }
}

fn shown(sign: &Sign, unit: Unit) -> SignShown {
    let value = |text: &str| match text {
        "true" => Value::Bool(true),
        "false" => Value::Bool(false),
        other => Value::from(other),
    };
    let settings = sign.settings.iter();
    let length = |mm| {
        Length::from_mm(mm).map_or_else(
            |_| String::new(),
            |length| length.to_text(LengthStyle::usual(unit)),
        )
    };
    SignShown {
        name: sign.name,
        place: sign.place.name(),
        at: sign.at,
        shows: sign.shows,
        cause: sign.cause,
        rule_out: sign.rule_out,
        found: sign.found.name(),
        measure: sign.measure,
        alteration: sign.alteration,
        settings: settings
            .map(|(key, text)| ((*key).to_owned(), value(text)))
            .collect(),
        key: sign.key,
        factor: sign.factor,
        usual: [sign.usual.0, sign.usual.1],
        usual_text: format!("{} to {}", length(sign.usual.0), length(sign.usual.1)),
        elsewhere: sign.elsewhere,
        source: sign.source(),
        drawing: drawing::drawing(sign),
    }
}
