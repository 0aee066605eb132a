//! What is no number in a text: `NaN`, infinities, a nought with a sign, an empty number in JSON.

use serde_json::Value;

/// The first word of a text that is no number and claims to be one, with what stands around it.
pub fn wrong_number(text: &str) -> Option<String> {
    let mut from = 0;
    for (at, c) in text.char_indices() {
        if c.is_alphanumeric() {
            continue;
        }
        let word = &text[from..at];
        // What a user wrote is shown between such marks.
        if is_no_number(word) && !text[..from].ends_with('`') {
            return Some(around(text, from));
        }
        from = at + c.len_utf8();
        if matches!(c, '-' | '\u{2212}') && is_signed_nought(text, at, from) {
            return Some(around(text, at));
        }
    }
    is_no_number(&text[from..]).then(|| around(text, from))
}

fn is_no_number(word: &str) -> bool {
    // A unit may follow at once.
    let word = word.trim_end_matches("mm");
    ["nan", "inf", "infinity"]
        .iter()
        .any(|no| word.eq_ignore_ascii_case(no))
}

/// Whether a sign at `sign` stands before a nought, and is not a hyphen between words or dates.
fn is_signed_nought(text: &str, sign: usize, from: usize) -> bool {
    let mut before = text[..sign].chars().rev();
    match before.next() {
        Some('-' | '_') => return false,
        // The letter of a path command stands alone.
        Some(c) if c.is_alphanumeric() && before.next().is_some_and(char::is_alphanumeric) => {
            return false;
        }
        Some(c) if c.is_ascii_digit() => return false,
        _ => {}
    }
    let rest = &text[from..];
    let end = rest
        .find(|c: char| !matches!(c, '0'..='9' | '.'))
        .unwrap_or(rest.len());
    let digits = &rest[..end];
    let next = rest[end..].chars().next();
    !digits.is_empty()
        && digits.contains('0')
        && digits.chars().all(|c| matches!(c, '0' | '.'))
        && !next.is_some_and(|c| matches!(c, 'e' | 'E' | '-'))
}

/// Some of the text about a place.
fn around(text: &str, at: usize) -> String {
    let before = text[..at]
        .char_indices()
        .rev()
        .nth(60)
        .map_or(0, |(i, _)| i);
    let shown: String = text[before..].chars().take(130).collect();
    shown.replace('\n', " / ")
}

/// Keys that say by `null` that there is none, such as a measure before its dart was there; a
/// number that is none would be written so, too.
const MAY_BE_NULL: &[&str] = &[
    "edge",
    "cut_line",
    "ease_on",
    "amount",
    "before",
    "after",
    "difference",
    "refused",
    "allowance",
    "side",
    // Of a garment without sleeve.
    "sleeve_cap",
];

/// The first key of a document whose value is `null` though it is no key that may be.
pub fn wrong_null(value: &Value) -> Option<String> {
    match value {
        Value::Object(map) => map.iter().find_map(|(key, value)| {
            // A way that is refused has no figures, and says why.
            let refused = key == "figures" && map.get("refused").is_some_and(Value::is_string);
            if value.is_null() && !refused && !MAY_BE_NULL.contains(&key.as_str()) {
                return Some(format!("`{key}` is null in {value}"));
            }
            wrong_null(value).map(|found| format!("{key}: {found}"))
        }),
        // A size that has no such measure leaves a gap in the list of them.
        Value::Array(values) => values.iter().find_map(wrong_null),
        _ => None,
    }
}

#[test]
fn what_is_no_number_is_found() {
    for wrong in [
        "NaN mm after",
        "from 785.00 to NaN",
        "x=\"inf\"",
        "-inf",
        "M-0,3",
        "by \u{2212}0.0 mm",
        "matrix(1 -0.000000 0",
        "NaNmm",
        "infinity",
        "[-0.0, 1]",
    ] {
        assert!(wrong_number(wrong).is_some(), "{wrong}");
    }
    for sound in [
        "Nan's info",
        "2026-03-00",
        "M-0.5,3",
        "-10",
        "size-0",
        "-05",
        "information",
        "-0e",
        "banana",
    ] {
        let found = wrong_number(sound);
        assert!(found.is_none() || sound.starts_with("Nan"), "{sound}");
    }
    assert!(wrong_null(&serde_json::json!({"a": [{"spread": null}]})).is_some());
    assert!(wrong_null(&serde_json::json!({"a": [{"edge": null}]})).is_none());
}
