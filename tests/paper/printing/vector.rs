//! SVG as an XML parser reads it.

use blockwright::draft::{Block, draft};
use blockwright::drawing::{PatternLabels, pattern_sheet};
use blockwright::geometry::Point;
use blockwright::geometry::kurbo::{BezPath, PathEl, Shape as _};
use blockwright::render::svg;
use std::collections::BTreeSet;

use super::demo::demo;
use crate::support::bodies::{body, with_usual_sleeve};

#[test]
fn the_svg_is_valid_and_of_real_size() {
    let text = svg::render(&demo());
    let document = roxmltree::Document::parse(&text).unwrap();
    let root = document.root_element();
    let bounds = demo().bounds();
    assert_eq!(
        root.attribute("width"),
        Some(&*format!("{:.3}mm", bounds.width()))
    );
    let view: Vec<f64> = root
        .attribute("viewBox")
        .unwrap()
        .split(' ')
        .map(|number| number.parse().unwrap())
        .collect();
    assert!((view[2] - bounds.width()).abs() < 0.001 && (view[0] - bounds.x0).abs() < 0.001);
    let ids: Vec<_> = root
        .children()
        .filter_map(|node| node.attribute("id"))
        .collect();
    assert_eq!(ids, ["seam-lines", "darts---grain", "words"]);
    assert!(!text.contains("-0.000"));
    let words: Vec<_> = document
        .descendants()
        .filter(|node| node.has_tag_name("text"))
        .collect();
    assert!(
        words
            .iter()
            .any(|node| node.text() == Some("Cut 1 · Ärmelloch ½"))
    );
}

/// The rules are those of README.md: piece, point, edge, or what else is marked.
#[test]
fn every_edge_dart_and_mark_is_named_once() {
    for block in Block::ALL {
        let body = body(1680.0, 920.0, 760.0, 1000.0);
        let pattern = draft(&body, &with_usual_sleeve(block)).unwrap();
        let text = svg::render(&pattern_sheet(&pattern, &PatternLabels::new("Names")).unwrap());
        let document = roxmltree::Document::parse(&text).unwrap();
        let named = document
            .descendants()
            .filter_map(|node| node.attribute("id"));
        let ids: Vec<&str> = named.collect();
        let once: BTreeSet<&&str> = ids.iter().collect();
        assert_eq!(once.len(), ids.len(), "{block}: {ids:?}");
        let path = |id: &str| {
            let id = &*id.replace(' ', "-");
            let mut nodes = document.descendants();
            let node = nodes.find(|node| node.attribute("id") == Some(id));
            let node = node.unwrap_or_else(|| panic!("{block}: no {id} among {ids:?}"));
            assert!(node.has_tag_name("path"), "{id}");
            BezPath::from_svg(node.attribute("d").unwrap()).unwrap()
        };
        for piece in pattern.pieces() {
            let name = piece.name();
            // The piece lies where there is room: moved, never turned.
            let moved = |at: Point, drawn: &BezPath| {
                let start = drawn.elements().first().and_then(PathEl::end_point);
                start.unwrap() - at
            };
            let first = &piece.outline().edges()[0];
            let by = moved(first.ends()[0], &path(&format!("{name}.{}", first.name())));
            for edge in piece.outline().edges() {
                let drawn = path(&format!("{name}.{}", edge.name()));
                let there = moved(edge.ends()[0], &drawn);
                assert!(
                    (there - by).hypot() < 0.002,
                    "{block} {name} {}",
                    edge.name()
                );
                let length = drawn.perimeter(1e-6);
                assert!((length - edge.length()).abs() < 0.02, "{length}");
            }
            for dart in piece.darts() {
                let drawn = path(&format!("{name}.{}_dart", dart.name));
                assert!((moved(dart.to_polyline()[0], &drawn) - by).hypot() < 0.002);
            }
            for line in piece.lines() {
                path(&format!("{name}.{}_line", line.name));
            }
            path(&format!("{name}.grain"));
        }
    }
}
