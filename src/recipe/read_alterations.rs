//! Reading which alterations are wanted.

use super::field::written_length;
use crate::alterations::{Request, RequestError, find};
use crate::measurements::{FileCause, Key, Node, NodeValue, Place, Reader, join};
use crate::piece::MeasureUnit;
use crate::units::{Angle, Length, Unit, UnitError};
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
        .filter_map(|item| {
            let step = request(reader, item)?;
            reader.steps.push(item.place);
            Some(step)
        })
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
    let value = settings.map_or(Value::Null, |node| {
        let setting = Setting {
            alteration: name.trim(),
            key: "",
        };
        value(reader, node, &path, setting)
    });
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

/// Which setting is read.
#[derive(Clone, Copy)]
struct Setting<'a> {
    alteration: &'a str,
    key: &'a str,
}

/// What a number of a setting is.
#[derive(Clone, Copy, PartialEq)]
enum NumberKind {
    Length,
    Degrees,
    Share,
}

impl Setting<'_> {
    fn kind(self) -> NumberKind {
        let by_angle = || {
            let entry = find(self.alteration);
            entry.is_some_and(|entry| (entry.example)().unit() == MeasureUnit::Degrees)
        };
        match self.key {
            "at" | "share" => NumberKind::Share,
            "degrees" => NumberKind::Degrees,
            "to" if by_angle() => NumberKind::Degrees,
            _ => NumberKind::Length,
        }
    }
}

/// A part of the file as settings are read: lengths in mm, words as they are.
fn value(reader: &mut Reader, node: &Node, path: &str, setting: Setting<'_>) -> Value {
    match &node.value {
        NodeValue::Empty => Value::Null,
        NodeValue::Truth(truth) => Value::Bool(*truth),
        NodeValue::Number(found) => {
            let found = match setting.kind() {
                NumberKind::Length => reader.bare_length(node.place, path, *found).to_mm(*found),
                NumberKind::Degrees | NumberKind::Share => *found,
            };
            number(reader, node.place, path, found)
        }
        NodeValue::Text(text) => written(reader, node.place, path, (text, setting.kind())),
        NodeValue::List(items) => {
            let items = items.iter().map(|item| value(reader, item, path, setting));
            Value::Array(items.collect())
        }
        NodeValue::Map(entries) => {
            let mut map = Map::new();
            for (key, node) in entries {
                let setting = Setting {
                    key: &key.text,
                    ..setting
                };
                let value = value(reader, node, &join(path, &shortened(&key.text)), setting);
                map.insert(key.text.clone(), value);
            }
            Value::Object(map)
        }
    }
}

/// A text: a number with its unit, or a word.
fn written(
    reader: &mut Reader,
    place: Place,
    path: &str,
    (text, kind): (&str, NumberKind),
) -> Value {
    let begins = |c: char| c.is_ascii_digit() || ['-', '+', '.', '−', '½', '¼', '¾'].contains(&c);
    if !text.trim().starts_with(begins) {
        return Value::String(text.trim().to_owned());
    }
    let (read, unit) = match kind {
        NumberKind::Length => {
            let (length, unit) = written_length(reader, place, path, text);
            (length.map(Length::mm), unit)
        }
        NumberKind::Degrees => (text.parse().map(Angle::degrees), Unit::Mm),
        NumberKind::Share => {
            let number = Length::parse_signed(text, Some(Unit::Mm));
            (number.map(Length::mm), Unit::Mm)
        }
    };
    match read {
        Ok(found) => number(reader, place, path, found),
        Err(error) => {
            reader.wrong_in(unit, place, path, error);
            Value::Null
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
