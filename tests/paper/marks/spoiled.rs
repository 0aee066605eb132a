//! The check itself: a drawing that was spoiled is found out.

use blockwright::draft::{Block, draft};
use blockwright::drawing::{Drawing, Item, Text, pattern_sheet};
use kurbo::Vec2;

use super::faults::faults;
use super::{set, usual, with_sleeve};

fn sound() -> Drawing {
    let pattern = draft(set("ines").body(), &with_sleeve(Block::Dress)).unwrap();
    pattern_sheet(&pattern, &usual()).unwrap()
}

/// The drawing with every text changed that `which` picks.
fn spoiled(which: impl Fn(&Text) -> bool, how: impl Fn(&mut Text)) -> Drawing {
    let mut layers = sound().into_layers();
    for item in layers.iter_mut().flat_map(|l| &mut l.items) {
        if let Item::Text(text) = item
            && which(text)
        {
            how(text);
        }
    }
    Drawing::new(layers).unwrap()
}

fn says(drawing: &Drawing, what: &str) -> bool {
    faults(drawing).iter().any(|fault| fault.contains(what))
}

#[test]
fn words_moved_onto_something_are_seen() {
    assert!(faults(&sound()).is_empty());
    let grain = |t: &Text| t.text == "grain";
    let onto = spoiled(grain, |t| t.at += Vec2::new(3.0, 0.0));
    assert!(says(&onto, "'grain' lies on Grain"));
    let hip = |t: &Text| t.text.starts_with("hip line");
    assert!(says(
        &spoiled(hip, |t| t.at.y += 3.0),
        "mm' lies on Balance"
    ));
    let fold = |t: &Text| t.text == "place on the fold";
    assert!(says(&spoiled(fold, |t| t.at.x -= 4.0), "leaves its piece"));
    let cut = |t: &Text| t.text == "cut 1 on the fold";
    assert!(says(
        &spoiled(cut, |t| t.at.y += 4.0),
        "'size 40' lies on 'cut 1"
    ));
    assert!(says(&spoiled(cut, |t| t.style.size = 1.5), "1.5 mm high"));
}

#[test]
fn marks_moved_onto_something_are_seen() {
    for (layer, by, what) in [
        (
            "lengthen or shorten lines",
            Vec2::new(30.0, 0.0),
            "Lengthen leaves its piece",
        ),
        ("marks", Vec2::new(-14.0, 0.0), "leaves its piece"),
        ("darts", Vec2::new(-60.0, 0.0), "Dart"),
    ] {
        let mut layers = sound().into_layers();
        let layer = layers.iter_mut().find(|l| l.name == layer).unwrap();
        layer.items = layer.items.iter().map(|i| i.clone().moved(by)).collect();
        assert!(says(&Drawing::new(layers).unwrap(), what), "{what}");
    }
}
