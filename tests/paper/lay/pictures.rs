//! The picture says what a cutter needs, and no word runs over a line.

use super::check::lay;
use super::garments::drafted;
use blockwright::draft::{Block, SleeveLength};
use blockwright::drawing::{Item, Text};
use blockwright::lay::{Cloth, LayLabels, picture};
use blockwright::units::{LengthStyle, Unit};
use kurbo::Shape;

#[test]
fn every_name_is_legible_inside_its_piece() {
    let pattern = drafted(Block::Tunic, Some(SleeveLength::Long));
    for cloth in [
        Cloth::new(1400.0).unwrap(),
        Cloth::new(1400.0).unwrap().folded(),
        Cloth::new(900.0).unwrap(),
    ] {
        let lay = lay(&pattern, None, &cloth, 200);
        let labels = LayLabels {
            title: "Tunic".into(),
            lines: vec!["Cloth".into()],
            notes: vec!["Sew a toile first.".into()],
            style: LengthStyle::usual(Unit::Cm),
        };
        let drawing = picture(&lay, &labels).unwrap();
        let layer = |name: &str| drawing.layers().iter().find(|l| l.name == name).unwrap();
        let words: Vec<&Text> = layer("words")
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Text(text) => Some(text),
                Item::Path(_) => None,
            })
            .collect();
        let fills: Vec<_> = layer("pieces")
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Path(figure) if figure.fill.is_some() => Some(&figure.path),
                _ => None,
            })
            .collect();
        let pieces = &lay.stretches[0].pieces;
        assert_eq!(fills.len(), pieces.len());
        for (laid, fill) in pieces.iter().zip(fills) {
            let inside = |text: &&&Text| {
                let corners = text.outline();
                corners
                    .elements()
                    .iter()
                    .all(|el| el.end_point().is_none_or(|p| fill.winding(p) != 0))
            };
            let name = laid.name.to_uppercase();
            let named: Vec<_> = words
                .iter()
                .filter(|text| text.text == name)
                .filter(inside)
                .collect();
            assert_eq!(named.len(), 1, "{name} stands in its piece");
            assert!(
                named[0].style.size >= 2.2,
                "legible: {}",
                named[0].style.size
            );
            let how = laid.words_in_pose();
            assert!(words.iter().filter(|t| t.text == how).any(|t| inside(&t)));
        }
        let says = |what: &str| words.iter().any(|text| text.text.contains(what));
        assert!(says("selvedge") && says("cm") && says("to look at"));
        assert_eq!(words.iter().any(|t| t.text == "fold"), cloth.is_folded());
        let size = drawing.bounds();
        assert!(size.width() < 277.0 && size.height() < 200.0, "{size:?}");
    }
}
