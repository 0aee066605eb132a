//! The settings that alterations have besides their amount, for somebody who chooses instead of
//! writing.

use serde::Serialize;

/// What a setting holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum Holds {
    /// One of some words.
    Word,
    /// Yes or no.
    Truth,
    /// A length in millimetres.
    Length,
    /// A share from 0 to 1.
    Share,
    /// The name of a dart of the pattern.
    Dart,
    /// The name of an edge of the pattern.
    Edge,
}

/// A setting.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(super) struct Setting {
    /// Its key; behind a point, what is in it: `into.0.to`.
    pub key: &'static str,
    pub label: &'static str,
    pub holds: Holds,
    /// The words there are.
    #[serde(skip_serializing_if = "<[&str]>::is_empty")]
    pub words: &'static [&'static str],
    /// What it is unless it is chosen.
    pub usual: &'static str,
}

const fn word(
    key: &'static str,
    label: &'static str,
    words: &'static [&'static str],
    usual: &'static str,
) -> Setting {
    Setting {
        key,
        label,
        holds: Holds::Word,
        words,
        usual,
    }
}

const fn other(
    key: &'static str,
    label: &'static str,
    holds: Holds,
    usual: &'static str,
) -> Setting {
    Setting {
        key,
        label,
        holds,
        words: &[],
        usual,
    }
}

const FULLNESS: Setting = word(
    "fullness",
    "What becomes of the fullness",
    &["ease", "dart"],
    "ease",
);
const UNDERARM: Setting = word("underarm", "The underarm", &["follow", "keep"], "follow");

/// The settings of an alteration.
pub(super) fn settings(alteration: &str) -> &'static [Setting] {
    match alteration {
        "back_length_reduction" => {
            &const {
                [
                    word(
                        "hinge",
                        "How the shoulder takes part",
                        &["plain", "shared", "least_distortion"],
                        "plain",
                    ),
                    other(
                        "hips_checked",
                        "The hips have room enough; that was checked",
                        Holds::Truth,
                        "false",
                    ),
                ]
            }
        }
        "back_length_increase" | "back_neck_gape" => &const { [FULLNESS] },
        "shoulder_slope" => &const { [UNDERARM] },
        "armscye_gape" => &const { [word("side", "Which armscye", &["front", "back"], "front")] },
        "back_width" => {
            &const {
                [word(
                    "shoulder",
                    "The shoulder",
                    &["follow", "keep"],
                    "follow",
                )]
            }
        }
        "length" => {
            &const {
                [word(
                    "at",
                    "Where",
                    &["bodice", "hips", "skirt", "sleeve", "forearm"],
                    "bodice",
                )]
            }
        }
        "bust_point" => {
            &const {
                [word(
                    "direction",
                    "Which way",
                    &["up", "down", "in", "out"],
                    "down",
                )]
            }
        }
        "seat" => {
            &const {
                [other(
                    "width",
                    "Width on the back alone",
                    Holds::Length,
                    "0",
                )]
            }
        }
        "dart_relocation" => {
            &const {
                [
                    other("dart", "Which dart", Holds::Dart, "bust"),
                    other("to", "To which edge", Holds::Edge, "shoulder"),
                    other("at", "How far along it", Holds::Share, "0.5"),
                ]
            }
        }
        "dart_division" => {
            &const {
                [
                    other("dart", "Which dart", Holds::Dart, "bust"),
                    other("into.0.to", "To which edge", Holds::Edge, "shoulder"),
                    other("into.0.at", "How far along it", Holds::Share, "0.5"),
                    other("into.0.share", "Share of its angle", Holds::Share, "0.5"),
                ]
            }
        }
        "dart_merging" | "dart_to_seam" => {
            &const {
                [
                    other("darts.0", "The one dart", Holds::Dart, "waist"),
                    other("darts.1", "The other", Holds::Dart, "bust"),
                ]
            }
        }
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{Holds, settings};
    use crate::alterations::{CATALOGUE, Request};
    use serde_json::{Value, json};

    /// A setting in settings, by its key with points.
    fn put(into: &mut Value, key: &str, value: Value) {
        let (head, rest) = key
            .split_once('.')
            .map_or((key, None), |(a, b)| (a, Some(b)));
        let slot = match head.parse::<usize>() {
            Ok(index) => {
                if into.is_null() {
                    *into = json!([]);
                }
                let list = into.as_array_mut().unwrap();
                while list.len() <= index {
                    list.push(Value::Null);
                }
                &mut list[index]
            }
            Err(_) => {
                if into.is_null() {
                    *into = json!({});
                }
                into.as_object_mut()
                    .unwrap()
                    .entry(head)
                    .or_insert(Value::Null)
            }
        };
        match rest {
            Some(rest) => put(slot, rest, value),
            None => *slot = value,
        }
    }

    #[test]
    fn every_setting_is_one_that_the_alteration_reads() {
        for entry in CATALOGUE {
            let all = settings(entry.name);
            let base = |changed: Option<(&str, &str)>| {
                let mut own = json!({});
                if let Some(amount) = (entry.example)().amount() {
                    let key = if entry.name == "shoulder_slope" {
                        "degrees"
                    } else {
                        "amount"
                    };
                    put(&mut own, key, json!(amount));
                }
                for setting in all {
                    let text = changed
                        .filter(|(key, _)| *key == setting.key)
                        .map_or(setting.usual, |(_, word)| word);
                    let value = match setting.holds {
                        Holds::Truth => json!(text == "true"),
                        Holds::Length | Holds::Share => json!(text.parse::<f64>().unwrap()),
                        _ => json!(text),
                    };
                    put(&mut own, setting.key, value);
                }
                own
            };
            assert!(
                Request::new(entry.name, base(None)).is_ok(),
                "{} {}",
                entry.name,
                base(None)
            );
            for setting in all {
                for word in setting.words {
                    let own = base(Some((setting.key, word)));
                    assert!(
                        Request::new(entry.name, own.clone()).is_ok(),
                        "{} {own}",
                        entry.name
                    );
                }
                if setting.holds == Holds::Word {
                    let own = base(Some((setting.key, "elsewhere")));
                    assert!(Request::new(entry.name, own).is_err(), "{}", setting.key);
                }
            }
        }
    }
}
