//! SVG as an XML parser reads it.

use blockwright::render::svg;

use super::demo::demo;

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
