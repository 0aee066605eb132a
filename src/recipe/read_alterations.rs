//! Reading which alterations are wanted.

use crate::alterations::{Request, RequestError, find};
use crate::measurements::{FileCause, Key, Node, NodeValue, Place, Reader, join};
use crate::units::{Length, Unit, UnitError};
use serde_json::{Map, Number, Value};

/// The most alterations of one job: a fitting makes ten.
const MOST: usize = 100;

const EXPECTED: &str =
    "a list of alterations, each with its settings: `- back_length_reduction: {amount: 25}`";

/// The alterations, in the order of the file.
pub(super) fn alterations(reader: &mut Reader, node: &Node) -> Vec<Request> {
    let items = match &node.value {
        NodeValue::Empty => return Vec::new(),
        NodeValue::Text(text) if text.trim().eq_ignore_ascii_case("none") => return Vec::new(),
        NodeValue::Map(entries) if entries.is_empty() => return Vec::new(),
        NodeValue::List(items) => items,
        _ => {
            reader.shape(node, "alterations", EXPECTED);
            return Vec::new();
        }
    };
    if items.len() > MOST {
        let cause = FileCause::TooMany {
            what: "alterations",
            found: items.len(),
            most: MOST,
        };
        reader.wrong(node.place, "alterations", cause);
        return Vec::new();
    }
    items
        .iter()
        .filter_map(|item| request(reader, item))
        .collect()
}

/// One alteration with its settings.
pub(super) fn request(reader: &mut Reader, item: &Node) -> Option<Request> {
    let (name, place, settings) = match &item.value {
        NodeValue::Text(name) => (name, item.place, None),
        NodeValue::Map(entries) => match entries.as_slice() {
            [(Key { text, place }, settings)] => (text, *place, Some(settings)),
            _ => {
                let problem = format!("{} names stand in one item", entries.len());
                let hint = "write one alteration an item, each behind its own `-`, its settings \
                            in braces or further in";
                reader.wrong(
                    item.place,
                    "alterations",
                    FileCause::Senseless { problem, hint },
                );
                return None;
            }
        },
        _ => {
            let expected = "an alteration with its settings: `back_length_reduction: {amount: 25}`";
            reader.shape(item, "alterations", expected);
            return None;
        }
    };
    let before = reader.problems.len();
    let path = join("alterations", &shortened(name));
    let value = settings.map_or(Value::Null, |node| value(reader, node, &path));
    let fits = matches!(value, Value::Object(_) | Value::Null);
    if !fits && find(name.trim()).is_some() {
        let expected = "its settings, such as `{amount: 25}`";
        reader.shape(settings.unwrap_or(item), &path, expected);
        return None;
    }
    if reader.problems.len() > before {
        return None;
    }
    match Request::new(name.trim(), value) {
        Ok(request) => Some(request),
        Err(error) => {
            let (place, path) = blame(&error, settings).map_or((place, path.clone()), |key| {
                (key.place, join(&path, &shortened(&key.text)))
            });
            let unknown = matches!(error, RequestError::Unknown { .. });
            let path = if unknown { "alterations" } else { &path };
            let text = error.to_string();
            reader.wrong(place, path, FileCause::Alteration { text, unknown });
            None
        }
    }
}

/// A key as it is shown.
fn shortened(key: &str) -> String {
    key.chars().take(40).collect()
}

/// The key of the setting that is wrong.
fn blame<'a>(error: &RequestError, settings: Option<&'a Node>) -> Option<&'a Key> {
    let RequestError::Settings { key: Some(key), .. } = error else {
        return None;
    };
    let entries = settings?.entries()?;
    entries.iter().map(|(k, _)| k).find(|k| k.text == *key)
}

/// A part of the file as settings are read: lengths written with a unit in mm, words as they
/// are.
fn value(reader: &mut Reader, node: &Node, path: &str) -> Value {
    match &node.value {
        NodeValue::Empty => Value::Null,
        NodeValue::Truth(truth) => Value::Bool(*truth),
        NodeValue::Number(found) => number(reader, node.place, path, *found),
        NodeValue::Text(text) => match Length::parse_signed(text, Some(Unit::Mm)) {
            Ok(length) => number(reader, node.place, path, length.mm()),
            Err(_) => Value::String(text.trim().to_owned()),
        },
        NodeValue::List(items) => {
            let items = items.iter().map(|item| value(reader, item, path));
            Value::Array(items.collect())
        }
        NodeValue::Map(entries) => {
            let mut map = Map::new();
            for (key, node) in entries {
                let value = value(reader, node, &join(path, &shortened(&key.text)));
                map.insert(key.text.clone(), value);
            }
            Value::Object(map)
        }
    }
}

/// A number; whole ones as such, so that they can also be counts.
fn number(reader: &mut Reader, place: Place, path: &str, found: f64) -> Value {
    // Every whole number below this is exact in both kinds.
    const WHOLE: f64 = 1e15;
    if found.fract() == 0.0 && found.abs() < WHOLE {
        #[expect(
            clippy::cast_possible_truncation,
            reason = "it is whole and not too large"
        )]
        return Value::from(found as i64);
    }
    Number::from_f64(found).map_or_else(
        || {
            reader.wrong(place, path, UnitError::NotFinite);
            Value::Null
        },
        Value::Number,
    )
}
