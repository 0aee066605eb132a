//! The nest: one layer a size, aligned, with a readable key.

use blockwright::draft::Block;
use blockwright::drawing::{Drawing, Item};
use blockwright::grading::{Align, DASHES, NestLabels, nest};
use blockwright::render::svg;

use super::table::graded;

fn drawn(block: Block, align: Align) -> Drawing {
    let labels = NestLabels {
        title: "A range".into(),
        date: None,
    };
    nest(&graded(block), align, &labels).unwrap()
}

fn texts(drawing: &Drawing, layer: &str) -> Vec<String> {
    let layer = drawing.layers().iter().find(|l| l.name == layer).unwrap();
    let texts = layer.items.iter().filter_map(|item| match item {
        Item::Text(text) => Some(text.text.clone()),
        Item::Path(_) => None,
    });
    texts.collect()
}

#[test]
fn every_size_has_its_layer_and_stands_in_the_key() {
    let drawing = drawn(Block::Dress, Align::WaistCentre);
    let names: Vec<_> = drawing.layers().iter().map(|l| l.name.as_str()).collect();
    assert_eq!(names.len(), 14);
    assert_eq!((names[0], names[13]), ("size 76", "words"));
    for label in ["76", "104", "134"] {
        let said = texts(&drawing, &format!("size {label}"));
        // Once in the key of every piece, and at its corners.
        assert!(said.iter().filter(|t| *t == label).count() >= 6, "{said:?}");
        assert!(said.iter().all(|t| t == label), "{said:?}");
    }
    let words = texts(&drawing, "words");
    assert_eq!(words.iter().filter(|t| *t == "sizes 76 to 134").count(), 3);
}

#[test]
fn no_word_lies_on_another() {
    for block in Block::ALL {
        let drawing = drawn(block, Align::WaistCentre);
        let boxes: Vec<_> = drawing
            .layers()
            .iter()
            .flat_map(|l| &l.items)
            .filter(|item| matches!(item, Item::Text(_)))
            .map(|item| (item.bounds(), item))
            .collect();
        for (at, (a, one)) in boxes.iter().enumerate() {
            for (b, other) in &boxes[..at] {
                assert!(
                    a.intersect(*b).area() < 1e-6,
                    "{}: {one:?} {other:?}",
                    block.name()
                );
            }
        }
    }
}

#[test]
fn dashes_differ() {
    for (at, dash) in DASHES.iter().enumerate() {
        assert!(!DASHES[..at].contains(dash), "{dash:?}");
    }
}

#[test]
fn the_same_range_gives_the_same_bytes_and_another_alignment_others() {
    let one = svg::render(&drawn(Block::BodiceAndSkirt, Align::WaistCentre));
    assert_eq!(
        one,
        svg::render(&drawn(Block::BodiceAndSkirt, Align::WaistCentre))
    );
    for align in [Align::Nape, Align::Underarm, Align::HemCentre] {
        assert_ne!(
            one,
            svg::render(&drawn(Block::BodiceAndSkirt, align)),
            "{align:?}"
        );
    }
    if let Some(folder) = std::env::var_os("BLOCKWRIGHT_NESTS") {
        for block in Block::ALL {
            let path = std::path::Path::new(&folder).join(format!("{}.svg", block.name()));
            std::fs::write(path, svg::render(&drawn(block, Align::WaistCentre))).unwrap();
        }
    }
}
