//! Every block for three wearers of very different build, held against pictures that were
//! looked at.
//!
//! The pictures stand in `reference/`, named by block and wearer. After a change that is meant,
//! set `BLOCKWRIGHT_REWRITE_PICTURES=1`, run this test, and look at what became of them.

#![cfg(feature = "yaml")]
#![allow(clippy::unwrap_used)]

use std::path::{Path, PathBuf};

use blockwright::allowance::{Allowances, CutLines};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::drawing::{PatternLabels, pattern_sheet, pattern_sheet_to_cut};
use blockwright::measurements::MeasurementSet;
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
    let file = root()
        .join("measurement-sets")
        .join(format!("{wearer}.yaml"));
    let set = MeasurementSet::parse(&std::fs::read_to_string(file).unwrap()).unwrap();
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(match block {
        Block::Shirt => SleeveLength::Short,
        _ => SleeveLength::Long,
    });
    let pattern = draft(set.body(), &options).unwrap();
    let labels = PatternLabels {
        title: format!("{} block", block.name()),
        wearer: Some(set.name().to_owned()),
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

fn reference(block: Block, wearer: &str) -> PathBuf {
    let name = format!("{}-{wearer}.svg", block.name().replace(' ', "-"));
    root().join("tests/pictures/reference").join(name)
}

#[test]
fn every_block_looks_as_it_did() {
    let rewrite = std::env::var_os("BLOCKWRIGHT_REWRITE_PICTURES").is_some();
    let mut wrong = Vec::new();
    for block in Block::ALL {
        for wearer in ["tilde", "ines", "odile"] {
            let (found, path) = (picture(block, wearer), reference(block, wearer));
            if rewrite {
                std::fs::create_dir_all(path.parent().unwrap()).unwrap();
                std::fs::write(&path, &found).unwrap();
                continue;
            }
            let reference = std::fs::read_to_string(&path).unwrap_or_default();
            if let Some(what) = difference(&found, &reference) {
                wrong.push(format!("{}: {what}", path.display()));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn with_allowances_it_looks_as_it_did() {
    let name = "bodice-and-skirt-ines-to-cut.svg";
    let path = root().join("tests/pictures/reference").join(name);
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
