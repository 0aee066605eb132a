//! What is wrong with the settings of an alteration, without the words of the reader that found it.

use crate::measurements::nearest;

/// What is said of a wrong setting.
pub(in crate::alterations) struct Said {
    pub text: String,
    /// Whether the settings that there are help to put it right.
    pub lists_settings: bool,
}

/// Says plainly what the reader of settings found: a key or a word that it does not know, a key that
/// is missing, or something of the wrong kind.
pub(in crate::alterations) fn say_plainly(
    alteration: &str,
    key: Option<&str>,
    reader: &str,
) -> Said {
    let said = |text: String| Said {
        text,
        lists_settings: false,
    };
    let mut quoted = reader.split('`').skip(1).step_by(2);
    if reader.starts_with("unknown field") {
        let (wrong, known) = (quoted.next().unwrap_or_default(), quoted);
        let known: Vec<&str> = known.collect();
        let near = nearest(wrong, known.iter().copied());
        return Said {
            text: match near {
                Some(near) => format!("there is no setting `{wrong}`; did you mean `{near}`?"),
                None => format!("there is no setting `{wrong}`"),
            },
            lists_settings: near.is_none(),
        };
    }
    if reader.starts_with("unknown variant") {
        let (wrong, known) = (quoted.next().unwrap_or_default(), quoted);
        let known: Vec<&str> = known.collect();
        let what = key.unwrap_or(alteration).replace('_', " ");
        return said(match nearest(wrong, known.iter().copied()) {
            Some(near) => format!("`{wrong}` is no {what}; did you mean `{near}`?"),
            None => format!(
                "`{wrong}` is no {what}; write one of `{}`",
                known.join("`, `")
            ),
        });
    }
    if reader.starts_with("missing field") {
        let missing = quoted.next().unwrap_or_default();
        return Said {
            text: format!("`{missing}` is missing"),
            lists_settings: true,
        };
    }
    let Some((found, wanted)) = reader
        .strip_prefix("invalid type: ")
        .and_then(|rest| rest.rsplit_once(", expected "))
    else {
        return said(reader.to_owned());
    };
    let wanted = match wanted {
        "f64" => "a number",
        "a string" => "a word",
        "a boolean" => "`true` or `false`",
        _ => "its settings, as the guide lists them",
    };
    Said {
        text: format!("{} stands here; write {wanted}", shape(found)),
        lists_settings: true,
    }
}

/// What the reader found, as a person calls it.
fn shape(found: &str) -> String {
    let number = |rest: &str| format!("the number {}", rest.trim_matches('`'));
    if let Some(text) = found.strip_prefix("string ") {
        return format!("the text `{}`", text.trim_matches('"'));
    }
    for kind in ["floating point ", "integer "] {
        if let Some(rest) = found.strip_prefix(kind) {
            return number(rest);
        }
    }
    match found.split_whitespace().next() {
        Some("boolean") => "true or false",
        Some("null") | Some("unit") => "nothing",
        Some("sequence") => "a list",
        Some("map") => "a mapping",
        _ => "something else",
    }
    .to_owned()
}
