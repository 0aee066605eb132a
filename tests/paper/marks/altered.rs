//! Every alteration, on every block it suits; one-sided pieces, narrow panels, the nest.

use blockwright::allowance::Allowances;
use blockwright::alterations::{Alteration, CATALOGUE, OneSided, ShoulderSlope, alter};
use blockwright::draft::{Block, draft};
use blockwright::grading::{Align, NestLabels, grade, nest};
use blockwright::measurements::SizeTable;
use blockwright::piece::BodySide;
use blockwright::recipe::Recipe;

use super::{faults_of, none, set, with_sleeve};
use crate::support::survey::whole;

#[test]
fn every_alteration() {
    let mut faults = Vec::new();
    let mut drawn = 0;
    // In a short run each is drawn for one of the two in turn.
    let whole = whole();
    for (row, entry) in CATALOGUE.iter().enumerate() {
        for (column, block) in Block::ALL.into_iter().enumerate() {
            if !entry.blocks.contains(&block.name()) {
                continue;
            }
            let wearers = ["ines", "odile"];
            let turn = (row + column) % 2;
            for wearer in if whole {
                &wearers[..]
            } else {
                &wearers[turn..=turn]
            } {
                let before = draft(set(wearer).body(), &with_sleeve(block)).unwrap();
                let Ok(done) = alter(&before, &[(entry.example)()]) else {
                    continue;
                };
                let what = format!("{} on {} for {wearer}", entry.name, block.name());
                faults.extend(faults_of(&done.pattern, &what));
                drawn += 1;
            }
        }
    }
    assert!(drawn > if whole { 100 } else { 50 }, "{drawn}");
    none(&faults);
}

/// Panels of a bodice cut where its darts were are the narrowest pieces there are.
#[test]
fn narrow_panels() {
    let entry = CATALOGUE.iter().find(|e| e.name == "dart_to_seam").unwrap();
    let (mut faults, mut drawn) = (Vec::new(), 0);
    for wearer in ["maren", "tilde"] {
        for block in Block::ALL {
            let before = draft(set(wearer).body(), &with_sleeve(block)).unwrap();
            if let Ok(done) = alter(&before, &[(entry.example)()]) {
                let what = format!("panels of {} for {wearer}", block.name());
                faults.extend(faults_of(&done.pattern, &what));
                drawn += 1;
            }
        }
    }
    none(&faults);
    assert!(drawn >= 4, "{drawn}");
}

#[test]
fn one_sided() {
    let mut faults = Vec::new();
    for block in [Block::Bodice, Block::Dress, Block::Tunic, Block::Shirt] {
        let before = draft(set("maren").body(), &with_sleeve(block)).unwrap();
        for side in BodySide::BOTH {
            let slope: Box<dyn Alteration> = Box::new(ShoulderSlope::by(3.0));
            let done = alter(&before, &[Box::new(OneSided::new(side, slope))]).unwrap();
            faults.extend(faults_of(
                &done.pattern,
                &format!("one-sided {}", block.name()),
            ));
        }
    }
    none(&faults);
}

#[test]
fn the_nest() {
    for name in ["en-13402-3-women", "workshop-range"] {
        let file = format!(
            "{}/measurement-sets/{name}.yaml",
            env!("CARGO_MANIFEST_DIR")
        );
        let table = SizeTable::parse(&std::fs::read_to_string(file).unwrap()).unwrap();
        let sizes: Vec<_> = table
            .sizes()
            .iter()
            .filter(|s| draft(s.body(), &with_sleeve(Block::BodiceAndSkirt)).is_ok())
            .cloned()
            .collect();
        let sizes = SizeTable::new(name, table.unit(), sizes);
        for block in Block::ALL {
            let mut recipe = Recipe::new("A range", block);
            recipe.options = with_sleeve(block);
            let graded = grade(&recipe, &sizes).unwrap();
            recipe.allowances = Some(Allowances::usual());
            let to_cut = grade(&recipe, &sizes).unwrap();
            for (graded, title) in [
                (&graded, "A range".to_owned()),
                (&graded, "WM".repeat(60)),
                (&to_cut, "WM".repeat(60)),
            ] {
                let labels = NestLabels {
                    title,
                    date: Some("2026-03-14".into()),
                    colour: false,
                    ..NestLabels::new("")
                };
                for align in [Align::WaistCentre, Align::Nape, Align::HemCentre] {
                    let drawing = nest(graded, align, &labels).unwrap();
                    let faults = super::nested::faults(&drawing);
                    assert!(
                        faults.is_empty(),
                        "{name} {} {align:?}: {faults:#?}",
                        block.name()
                    );
                }
            }
        }
    }
}
