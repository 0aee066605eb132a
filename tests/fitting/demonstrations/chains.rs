//! Demonstrations of steps in chains, on one side, and on surveyed women.

use super::long_sleeved;
use crate::support::bodies::set;
use crate::support::survey::{body_of, sample};
use blockwright::alterations::{
    Alteration, Bust, CATALOGUE, DartRelocation, NecklineGape, OneSided, ShoulderSlope, alter,
};
use blockwright::demonstration::demonstrate;
use blockwright::draft::{Block, draft};
use blockwright::piece::{BodySide, Pattern};

fn drafted(block: Block) -> Pattern {
    draft(set("ines").body(), &long_sleeved(block)).unwrap()
}

#[test]
fn a_step_on_one_side_is_shown_on_that_side() {
    let before = drafted(Block::Dress);
    let inner = Box::new(ShoulderSlope::by(3.0));
    let step: Box<dyn Alteration> = Box::new(OneSided::new(BodySide::Left, inner));
    let after = alter(&before, &[step]).unwrap().pattern;
    let shown = demonstrate("shoulder_slope", &before, &after).unwrap();
    let names: Vec<&str> = shown.slashes.iter().map(|slash| slash.name()).collect();
    assert_eq!(names, ["back left", "front left"]);
    assert!(shown.slashes.iter().all(|slash| slash.panels.len() == 2));
}

#[test]
fn a_dart_that_was_moved_is_followed() {
    let before = drafted(Block::Bodice);
    let steps: [Box<dyn Alteration>; 3] = [
        Box::new(DartRelocation::to("bust", "shoulder", 0.5)),
        Box::new(NecklineGape::by(6.0)),
        Box::new(Bust { amount: 8.0 }),
    ];
    let mut pattern = before;
    for step in steps {
        let name = step.name();
        let after = alter(&pattern, &[step]).unwrap().pattern;
        let shown = demonstrate(name, &pattern, &after).unwrap();
        let slash = &shown.slashes[0];
        assert_eq!(slash.name(), "front", "{name}");
        // A full bust is cut through a dart at the side: with it at the shoulder nothing is.
        let cut = slash.panels.len() > 1;
        assert_eq!(cut, name != "bust", "{name}: {:?}", slash.sentences);
        assert_eq!(slash.sentences[0].contains("moved before"), !cut, "{name}");
        pattern = after;
    }
}

/// Every alteration on surveyed women: cut on all of whom the draft has what is cut.
#[test]
fn on_surveyed_women_the_slash_finds_its_place() {
    let (mut made, mut drawn) = (0, Vec::new());
    for (index, woman) in sample(6, 41).rows.iter().enumerate() {
        let block = Block::ALL[index % Block::ALL.len()];
        let Ok(before) = draft(&body_of(woman), &long_sleeved(block)) else {
            continue;
        };
        for entry in CATALOGUE
            .iter()
            .filter(|e| e.blocks.contains(&block.name()))
        {
            let Ok(done) = alter(&before, &[(entry.example)()]) else {
                continue;
            };
            let shown = demonstrate(entry.name, &before, &done.pattern).unwrap();
            for slash in &shown.slashes {
                made += 1;
                if slash.sentences[0].contains("moved before") {
                    drawn.push(format!("{} on a {}", entry.name, block.name()));
                }
            }
        }
    }
    println!(
        "{made} pieces shown, {} of them not cut: {drawn:?}",
        drawn.len()
    );
    assert!(made > 100 && drawn.len() * 100 <= made, "{drawn:?}");
}
