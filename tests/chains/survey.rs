//! Every woman of the survey, dress and tunic, altered.
//!
//! Needs the survey's file, which is not part of this repository: `BLOCKWRIGHT_SURVEY`, or
//! `../shared/survey/women.csv`. Without it the test says so and passes.

use crate::drafted;
use blockwright::alterations::{Alteration, BackLengthReduction, alter, find};
use blockwright::draft::Block;
use blockwright::measurements::{Body, Measurement};
use std::collections::BTreeMap;
use std::path::PathBuf;

fn women() -> Option<Vec<Body>> {
    let path = std::env::var_os("BLOCKWRIGHT_SURVEY").map_or_else(
        || PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../shared/survey/women.csv"),
        PathBuf::from,
    );
    let Ok(mut reader) = csv::Reader::from_path(&path) else {
        eprintln!("SKIPPED: the survey is not at {}", path.display());
        return None;
    };
    let headers = reader.headers().unwrap().clone();
    let bodies = reader.records().map(|record| {
        let record = record.unwrap();
        let taken = headers.iter().zip(&record).filter_map(|(name, value)| {
            let name = if name == "shoulder_slope_deg" {
                "shoulder_slope"
            } else {
                name
            };
            let measurement: Measurement = name.parse().ok()?;
            let value: f64 = value.parse().ok()?;
            let slope = measurement == Measurement::ShoulderSlope;
            // The draft never sees the armscye girth.
            (measurement != Measurement::ArmscyeGirth)
                .then_some((measurement, if slope { value.to_radians() } else { value }))
        });
        Body::from_taken(taken.collect::<Vec<_>>()).unwrap()
    });
    Some(bodies.collect())
}

/// The three alterations of the survey run, each by name and settings.
fn run() -> Vec<(&'static str, Box<dyn Alteration>)> {
    let read = |name: &'static str, settings: serde_json::Value| {
        find(name).map(|entry| (name, (entry.read)(settings).unwrap()))
    };
    let hips = BackLengthReduction {
        hips_checked: true,
        ..BackLengthReduction::by(20.0)
    };
    let mut all: Vec<(&'static str, Box<dyn Alteration>)> =
        vec![("back_length_reduction", Box::new(hips))];
    all.extend(read("shoulder_slope", serde_json::json!({"degrees": 3.0})));
    all.extend(read(
        "dart_relocation",
        serde_json::json!({"dart": "bust", "to": "shoulder", "at": 0.5}),
    ));
    all
}

#[test]
fn every_woman_is_altered_or_refused_by_name() {
    let Some(women) = women() else { return };
    for block in [Block::Dress, Block::Tunic] {
        for (name, _) in run() {
            let (mut done, mut refused) = (0, BTreeMap::<String, usize>::new());
            let mut patterns = 0;
            for body in &women {
                let Some(pattern) = drafted(body, block) else {
                    continue;
                };
                patterns += 1;
                let alteration = run().into_iter().find(|(n, _)| *n == name).unwrap().1;
                match alter(&pattern, &[alteration]) {
                    Ok(_) => done += 1,
                    Err(e) => {
                        // The kind of reason, without its numbers.
                        let kind: String = e
                            .reason
                            .to_string()
                            .split(':')
                            .next()
                            .unwrap_or_default()
                            .chars()
                            .filter(|c| !c.is_ascii_digit() && *c != '.')
                            .take(70)
                            .collect();
                        *refused.entry(kind).or_default() += 1;
                    }
                }
            }
            let share = 100.0 * f64::from(done) / f64::from(patterns);
            eprintln!(
                "{}, {name}: {done} of {patterns} = {share:.2} %",
                block.name()
            );
            for (why, count) in &refused {
                eprintln!("    refused {count:4}  {why}");
            }
            let lawless = refused
                .keys()
                .filter(|k| k.starts_with("it breaks"))
                .count();
            assert_eq!(lawless, 0, "{}, {name}: {refused:?}", block.name());
        }
    }
}
