//! Each move of a dart followed by every other alteration at its usual amount, on every block: women
//! of the survey, a few or forty.

use crate::support::survey::{body_of, sample, tell, whole};
use blockwright::alterations::{Alteration, CATALOGUE, alter, find};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::piece::Pattern;
use std::collections::BTreeMap;

/// A move: what it is called here, and the alteration's name and settings.
const MOVES: [(&str, &str, &str); 7] = [
    (
        "bust dart to the shoulder",
        "dart_relocation",
        r#"{"dart": "bust", "to": "shoulder", "at": 0.5}"#,
    ),
    (
        "bust dart to the armscye",
        "dart_relocation",
        r#"{"dart": "bust", "to": "armscye", "at": 0.6}"#,
    ),
    (
        "bust dart to the neckline",
        "dart_relocation",
        r#"{"dart": "bust", "to": "neckline", "at": 0.5}"#,
    ),
    (
        "bust dart to the waist",
        "dart_relocation",
        r#"{"dart": "bust", "to": "waist", "at": 0.2}"#,
    ),
    (
        "bust dart divided",
        "dart_division",
        r#"{"dart": "bust", "into": [{"to": "shoulder", "at": 0.5, "share": 0.5}]}"#,
    ),
    (
        "shoulder dart to the neckline",
        "dart_relocation",
        r#"{"dart": "shoulder", "to": "neckline", "at": 0.5}"#,
    ),
    (
        "shoulder dart to the armscye",
        "dart_relocation",
        r#"{"dart": "shoulder", "to": "armscye", "at": 0.4}"#,
    ),
];

fn drafted(row: &crate::support::survey::Row, block: Block) -> Option<Pattern> {
    let mut options = DraftOptions::of(block);
    options.sleeve = Some(SleeveLength::Long);
    draft(&body_of(row), &options).ok()
}

/// Whether a refusal is in the user's terms: no bare law, promise or construction.
fn is_plain(refusal: &str) -> bool {
    !["it breaks", "does not close", "gives what was asked", "NaN"]
        .iter()
        .any(|bare| refusal.contains(bare))
}

/// What can be made before a dart is moved can be made after it: the dart is brought home for it.
#[test]
fn moved_darts_hinder_nothing() {
    let table = sample(if whole() { 1104 } else { 3 }, 46);
    let step = if whole() { 27 } else { 1 };
    let mut failed = Vec::new();
    for block in [Block::Bodice, Block::Dress, Block::Tunic, Block::Shirt] {
        let patterns: Vec<Pattern> = table
            .rows
            .iter()
            .step_by(step)
            .filter_map(|row| drafted(row, block))
            .collect();
        for (called, name, settings) in MOVES {
            let settings: serde_json::Value = serde_json::from_str(settings).unwrap();
            let entry = find(name).unwrap();
            let moving = (entry.read)(settings).unwrap();
            let moved: Vec<(&Pattern, Pattern)> = patterns
                .iter()
                .filter_map(|p| {
                    let step = moving.with_amount(0.0);
                    Some((p, alter(p, &[step]).ok()?.pattern))
                })
                .collect();
            let others = CATALOGUE
                .iter()
                .filter(|e| e.name == "dart_merging" || !e.name.starts_with("dart_"));
            for entry in others {
                let (mut asked, mut made) = (0, 0);
                let mut refused: BTreeMap<String, usize> = BTreeMap::new();
                for (before, moved) in &moved {
                    let one = || -> [Box<dyn Alteration>; 1] { [(entry.example)()] };
                    if alter(before, &one()).is_err() {
                        continue;
                    }
                    asked += 1;
                    match alter(moved, &one()) {
                        Ok(_) => made += 1,
                        Err(e) => *refused.entry(e.to_string()).or_default() += 1,
                    }
                }
                if asked == 0 {
                    continue;
                }
                tell(&format!(
                    "{}, {called}, then {}: {made} of {asked}",
                    block.name(),
                    entry.name
                ));
                for (why, count) in &refused {
                    tell(&format!("    {count} x {why}"));
                }
                let bare = refused.keys().any(|why| !is_plain(why));
                if f64::from(made) < 0.99 * f64::from(asked) && (bare || made * 10 < asked * 9) {
                    failed.push(format!("{}, {called}, then {}", block.name(), entry.name));
                }
            }
        }
    }
    assert!(failed.is_empty(), "{failed:#?}");
}
