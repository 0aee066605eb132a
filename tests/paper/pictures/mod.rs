//! Every block for three wearers of very different build, and every alteration of the catalogue,
//! held against pictures that were looked at.
//!
//! The pictures stand in `reference/`, named by block and wearer or by alteration. One that is
//! missing fails. After a change that is meant,
//! set `BLOCKWRIGHT_REWRITE_PICTURES=1`, run this test, and look at what became of them.

#![cfg(feature = "yaml")]
#![allow(clippy::unwrap_used)]

mod alterations;
mod demonstrations;
mod extremes;

use crate::support::bodies::{set, with_usual_sleeve as options};
use std::path::Path;

use blockwright::allowance::{Allowances, CutLines};
use blockwright::draft::{Block, draft};
use blockwright::drawing::{PatternLabels, pattern_sheet, pattern_sheet_to_cut};
use blockwright::piece::Pattern;
use blockwright::render::svg;

/// How far a number may differ from its reference, in millimetres: pictures have three
/// decimals, and mathematical libraries differ in the last bits.
const CLOSE: f64 = 0.011;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn picture(block: Block, wearer: &str) -> String {
    let (pattern, labels) = drafted(block, wearer);
    svg::render(&pattern_sheet(&pattern, &labels).unwrap())
}

fn drafted(block: Block, wearer: &str) -> (Pattern, PatternLabels) {
    let set = set(wearer);
    let pattern = draft(set.body(), &options(block)).unwrap();
    let labels = PatternLabels {
        wearer: Some(set.name().to_owned()),
        ..PatternLabels::new(format!("{} block", block.name()))
    };
    (pattern, labels)
}

/// The text without its numbers, and the numbers.
fn taken_apart(svg: &str) -> (String, Vec<f64>) {
    let (mut words, mut numbers, mut number) = (String::new(), Vec::new(), String::new());
    for c in svg.chars().chain([' ']) {
        if c.is_ascii_digit() || c == '.' || c == '-' {
            number.push(c);
            continue;
        }
        if !number.is_empty() {
            match number.parse() {
                Ok(value) => numbers.push(value),
                Err(_) => words.push_str(&number),
            }
            number.clear();
        }
        words.push(c);
    }
    (words, numbers)
}

/// What differs between a picture and its reference, if anything.
fn difference(found: &str, reference: &str) -> Option<String> {
    let ((words, numbers), (ref_words, ref_numbers)) = (taken_apart(found), taken_apart(reference));
    if words != ref_words || numbers.len() != ref_numbers.len() {
        return Some("other lines or words".to_owned());
    }
    numbers
        .iter()
        .zip(&ref_numbers)
        .map(|(a, b)| (a - b).abs())
        .reduce(f64::max)
        .filter(|most| *most > CLOSE)
        .map(|most| format!("numbers differ by up to {most:.3}"))
}

/// Holds pictures against their references, or rewrites these where that is asked for.
fn held(pictures: impl Iterator<Item = (String, String)>) {
    held_in("tests/paper/pictures/reference", pictures);
}

/// The same in another folder.
fn held_in(folder: &str, pictures: impl Iterator<Item = (String, String)>) {
    let rewrite = std::env::var_os("BLOCKWRIGHT_REWRITE_PICTURES").is_some();
    let folder = root().join(folder);
    let mut wrong = Vec::new();
    for (name, found) in pictures {
        let path = folder.join(format!("{name}.svg"));
        if rewrite {
            std::fs::create_dir_all(&folder).unwrap();
            std::fs::write(&path, &found).unwrap();
            continue;
        }
        match std::fs::read_to_string(&path) {
            Err(_) => wrong.push(format!("{}: there is no picture", path.display())),
            Ok(reference) => wrong.extend(
                difference(&found, &reference).map(|what| format!("{}: {what}", path.display())),
            ),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_block_looks_as_it_did() {
    let wearers = ["tilde", "ines", "odile"];
    held(Block::ALL.into_iter().flat_map(|block| {
        wearers.map(|wearer| {
            let name = format!("{}-{wearer}", block.name().replace(' ', "-"));
            (name, picture(block, wearer))
        })
    }));
}

#[test]
fn with_allowances_it_looks_as_it_did() {
    let name = "bodice-and-skirt-ines-to-cut.svg";
    let path = root().join("tests/paper/pictures/reference").join(name);
    let (pattern, labels) = drafted(Block::BodiceAndSkirt, "ines");
    let cut = CutLines::new(&pattern, &Allowances::usual()).unwrap();
    let found = svg::render(&pattern_sheet_to_cut(&pattern, &labels, &cut).unwrap());
    if std::env::var_os("BLOCKWRIGHT_REWRITE_PICTURES").is_some() {
        std::fs::write(&path, &found).unwrap();
        return;
    }
    let reference = std::fs::read_to_string(&path).unwrap_or_default();
    assert_eq!(difference(&found, &reference), None);
}

#[test]
fn a_moved_line_and_a_changed_word_are_seen() {
    let svg = "<path d=\"M0.000 1.000L5.000 6.000\"/><text>hip line</text>";
    assert_eq!(difference(svg, svg), None);
    assert!(difference(&svg.replace("6.000", "6.050"), svg).is_some());
    assert!(difference(&svg.replace("hip", "waist"), svg).is_some());
}
