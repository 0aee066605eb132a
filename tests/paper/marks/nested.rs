//! What is wrong with a nest: words on lines of any size or on one another.

use blockwright::drawing::{Drawing, Item};
use geo::Intersects;

use super::sheet::{flat, words};

pub fn faults(drawing: &Drawing) -> Vec<String> {
    // What is hidden is looked at by itself.
    let shown = || drawing.layers().iter().filter(|l| !l.hidden);
    let items = || shown().flat_map(|l| &l.items);
    let texts: Vec<_> = items()
        .filter_map(|item| match item {
            Item::Text(text) => Some(words(text)),
            Item::Path(_) => None,
        })
        .collect();
    let lines: Vec<_> = items()
        .filter_map(|item| match item {
            Item::Path(figure) => Some(flat(figure)),
            Item::Text(_) => None,
        })
        .flatten()
        .collect();
    let mut found = Vec::new();
    for (at, text) in texts.iter().enumerate() {
        for other in &texts[..at] {
            if text.corners.intersects(&other.corners) {
                found.push(format!("'{}' lies on '{}'", text.text, other.text));
            }
        }
        if lines.iter().any(|line| line.intersects(&text.corners)) {
            found.push(format!("'{}' lies on a line", text.text));
        }
    }
    found
}
