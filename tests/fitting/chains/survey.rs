//! Women of the survey, dress and tunic, altered: a sample, or everybody.

use super::drafted;
use crate::support::survey::{body_of, sample};
use blockwright::alterations::{Alteration, BackLengthReduction, alter, find};
use blockwright::draft::Block;
use std::collections::BTreeMap;

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
fn women_are_altered_or_refused_by_name() {
    let women: Vec<_> = sample(300, 44).rows.iter().map(body_of).collect();
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
