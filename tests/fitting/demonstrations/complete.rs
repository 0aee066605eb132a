//! Nothing in the catalogue lacks a demonstration.

use super::{demonstrated, everything, long_sleeved, suited};
use blockwright::alterations::CATALOGUE;
use blockwright::demonstration::demonstrate;
use blockwright::draft::Block;

#[test]
fn every_alteration_is_shown_on_every_block_it_suits() {
    for entry in CATALOGUE {
        for block in suited(entry) {
            let place = format!("{} on a {}", entry.name, block.name());
            let made = demonstrated((entry.example)(), &long_sleeved(block), "ines");
            let (_, _, shown) = made.unwrap_or_else(|| panic!("{place}: refused"));
            assert!(!shown.slashes.is_empty(), "{place}: nothing is shown");
            for slash in &shown.slashes {
                assert!(
                    !slash.sentences[0].contains("moved before"),
                    "{place}: its slash finds no place on the {}",
                    slash.before.name()
                );
                assert!(
                    slash.panels.len() > 1 || !slash.openings.is_empty(),
                    "{place}: nothing is cut or put on"
                );
                for sentence in &slash.sentences {
                    assert!(
                        sentence.ends_with('.') && sentence.len() < 330,
                        "{place}: {sentence}"
                    );
                    assert!(
                        !sentence.contains('_') && !sentence.contains("NaN"),
                        "{place}: {sentence}"
                    );
                }
            }
        }
    }
}

#[test]
fn what_is_not_in_the_catalogue_is_named() {
    let shown = everything().first().unwrap();
    let pattern = blockwright::draft::draft_figure(
        &blockwright::draft::Figure::cylinder(900.0),
        &blockwright::draft::DraftOptions::of(Block::Tunic),
    )
    .unwrap();
    assert!(
        demonstrate(shown.name, &pattern, &pattern)
            .unwrap()
            .slashes
            .is_empty()
    );
    let error = demonstrate("pleats", &pattern, &pattern).unwrap_err();
    assert!(error.to_string().contains("`pleats`"));
}
