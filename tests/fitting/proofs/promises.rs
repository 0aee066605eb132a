//! What is promised must be there, and is measured.

use super::{Rogue, drafted};
use blockwright::alterations::{Broken, CATALOGUE, Part, Promise, Reason, StructureChange, alter};
use blockwright::draft::Block;
use blockwright::piece::{EdgeName, Measure};

#[test]
fn a_promise_of_what_is_not_there_is_refused_by_name() {
    let pattern = drafted(Block::Dress);
    let absent = [
        Measure::edge_length("back", EdgeName::new("collar")),
        Measure::edge_length("hood", EdgeName::HEM),
        Measure::dart_intake("back", "neck"),
        Measure::dart_angle("back", "neck"),
        Measure::girth("knee"),
        Measure::shoulder_slope("sleeve"),
        Measure::cap_height("front"),
    ];
    for measure in absent {
        let promise = Promise::exactly(measure.clone());
        let rogue = Rogue::that(|_| ()).promising([promise.clone()]);
        let Reason::Promise(Broken::Absent { measure: named }) = rogue.refused(&pattern) else {
            panic!("{measure} was promised and accepted");
        };
        assert_eq!(named, measure);
        // Declared optional it is no promise here, and is not reported as kept.
        let rogue = Rogue::that(|_| ()).promising([promise.if_there()]);
        let done = alter(&pattern, &[Box::new(rogue)]).unwrap();
        assert!(done.accounts[0].kept.is_empty());
    }
}

#[test]
fn a_promise_of_what_goes_is_broken() {
    let pattern = drafted(Block::Dress);
    let waist = Measure::dart_intake("back", "waist");
    assert!(pattern.measured(&waist).is_some());
    for promise in [
        Promise::exactly(waist.clone()),
        Promise::exactly(waist.clone()).if_there(),
    ] {
        let rogue = Rogue::that(|parts| {
            for piece in &mut parts.pieces {
                let mut own = piece.clone().into_parts();
                own.darts.retain(|d| d.edge.is_some());
                *piece = blockwright::piece::Piece::new(own).unwrap();
            }
            // The girths say what is left, so that only the promise is broken.
            let whole = blockwright::piece::Pattern::new(parts.clone()).unwrap();
            for girth in &mut parts.girths {
                girth.ease = whole.finished(girth) - girth.body;
            }
        });
        let gone = ["back", "front"].map(|piece| Part::dart(piece, "waist"));
        let declared = gone
            .into_iter()
            .fold(StructureChange::none(), StructureChange::removes);
        let reason = rogue
            .promising([promise])
            .declaring(declared)
            .refused(&pattern);
        assert!(
            matches!(&reason, Reason::Promise(Broken::Lost { measure, .. }) if *measure == waist),
            "{reason}"
        );
    }
}

#[test]
fn a_promise_of_a_change_that_does_not_come_is_broken() {
    let pattern = drafted(Block::Skirt);
    let hem = Measure::edge_length("back", EdgeName::HEM);
    let rogue = Rogue::that(|_| ()).promising([Promise::changes_by(hem, 4.0)]);
    let reason = rogue.refused(&pattern);
    assert!(
        matches!(&reason, Reason::Promise(Broken::Changed { promised, .. }) if *promised == 4.0),
        "{reason}"
    );
}

/// Whatever the catalogue promises without reserve is there on every block it suits, and what it
/// promises with reserve is there on one of them at least.
#[test]
fn the_catalogue_promises_what_is_there() {
    for entry in CATALOGUE {
        let mut reserved: Vec<(EdgeName, bool)> = Vec::new();
        for block in Block::ALL {
            if !entry.blocks.contains(&block.name()) {
                continue;
            }
            let pattern = drafted(block);
            let promises = (entry.example)().promises(&pattern);
            assert!(
                promises.iter().any(|p| !p.optional),
                "{} promises nothing on a {}",
                entry.name,
                block.name()
            );
            for promise in promises {
                let there = pattern.measured(&promise.measure).is_some();
                assert!(
                    there || promise.optional,
                    "{} promises {} on a {}",
                    entry.name,
                    promise.measure,
                    block.name()
                );
                if let blockwright::piece::MeasureKind::EdgeLength { edge, .. } =
                    promise.measure.kind()
                    && promise.optional
                {
                    match reserved.iter_mut().find(|(name, _)| name == edge) {
                        Some((_, found)) => *found |= there,
                        None => reserved.push((edge.clone(), there)),
                    }
                }
            }
        }
        for (edge, found) in reserved {
            assert!(
                found,
                "no block of {} has the {edge} it speaks of",
                entry.name
            );
        }
    }
}
