//! The command `signs`.

use std::fmt::Write as _;
use std::path::Path;

use blockwright::job::OutputFile;
use blockwright::signs::{BodyPlace, Sign, drawing, search};
use serde::Serialize;

use super::done::{as_json, written};
use super::problem::{Failure, Problem};

#[derive(Debug, Serialize)]
struct Listed {
    status: &'static str,
    #[serde(flatten)]
    signs: Signs,
}

#[derive(Debug, Serialize)]
struct Signs {
    signs: Vec<Sign>,
}

/// Lists signs, all or those that words describe; with a folder also as a page with drawings.
pub(super) fn signs(
    words: &[String],
    folder: Option<&Path>,
    force: bool,
    json: bool,
) -> Result<String, Failure> {
    let found = search(&words.join(" "));
    if found.is_empty() {
        let text = format!(
            "no sign is described by `{}`; name where it is and what the cloth does there, such as \
             `folds back waist`, or list all with `blockwright signs`",
            words.join(" ")
        );
        return Err(Failure::wrong(Problem::new("no_sign", text)));
    }
    let whole = words.is_empty();
    let signs = Signs {
        signs: found.iter().map(|sign| **sign).collect(),
    };
    let text = || if whole { list(&found) } else { details(&found) };
    match folder {
        Some(folder) => {
            let page = OutputFile {
                name: "signs.html".to_owned(),
                bytes: drawing::page().into_bytes(),
            };
            written(folder, &[page], force, json, (&signs, text))
        }
        None if json => Ok(as_json(&Listed {
            status: "ok",
            signs,
        })),
        None => Ok(text()),
    }
}

/// A line each, by place.
fn list(found: &[&Sign]) -> String {
    let mut out = String::from("Signs of fit, from the neck down\n");
    // Writing to a string cannot fail.
    for place in BodyPlace::ALL {
        let here: Vec<&&Sign> = found.iter().filter(|sign| sign.place == place).collect();
        if here.is_empty() {
            continue;
        }
        let _ = writeln!(out, "\n{}", place.name());
        for sign in here {
            let _ = writeln!(out, "  {}: {}", sign.at, sign.shows);
        }
    }
    out.push_str(
        "\nMore about one: blockwright signs \"folds back waist\". With pictures: blockwright signs -o DIR\n",
    );
    out
}

/// All that is known of each.
fn details(found: &[&Sign]) -> String {
    let mut out = String::new();
    for (place, sign) in found.iter().enumerate() {
        if place > 0 {
            out.push('\n');
        }
        let _ = write!(
            out,
            "{}: {}\n  Cause: {}\n  Rule out first: {}\n  Measure: {}\n  Step: {}, usually {:.0} to {:.0} mm {}\n  \
             In a job: observed: [{{place: {}, {}: {:.0} mm}}]\n  Changes elsewhere: {}\n  Source: {}\n",
            sign.at,
            sign.shows,
            sign.cause,
            sign.rule_out,
            sign.measure,
            sign.alteration,
            sign.usual.0,
            sign.usual.1,
            sign.found.name(),
            sign.at,
            sign.found.name(),
            (0.5 * (sign.usual.0 + sign.usual.1)).round(),
            sign.elsewhere,
            sign.source(),
        );
    }
    out
}
