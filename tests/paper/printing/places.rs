//! No page without content.

use blockwright::drawing::{Drawing, DrawnPath, Ink, Layer, Pen};
use blockwright::render::pdf::{Orientation, PaperFormat, TileOptions, tiles};
use kurbo::Rect;

use super::demo::{info, one_line};

#[test]
fn empty_places_have_no_page() {
    // A frame that is empty inside: the pages of its middle are left out.
    let mut layer = Layer::new("frame");
    layer.push(DrawnPath::rectangle(
        Rect::new(0.0, 0.0, 900.0, 1300.0),
        Pen::solid(0.5),
    ));
    let drawing = Drawing::new(vec![layer]).unwrap();
    let (_, plan) = tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &info()).unwrap();
    assert!(
        plan.omitted.contains(&"C3".to_owned()),
        "{:?}",
        plan.omitted
    );
    assert!(plan.tile(0, 0).is_some());

    // Filled, it needs them all; filled with white, it does not.
    for (fill, omitted) in [(Ink::Grey(200), 0), (Ink::WHITE, plan.omitted.len())] {
        let mut layer = Layer::new("frame");
        let mut figure = DrawnPath::rectangle(Rect::new(0.0, 0.0, 900.0, 1300.0), Pen::solid(0.5));
        figure.fill = Some(fill);
        layer.push(figure);
        let drawing = Drawing::new(vec![layer]).unwrap();
        let (_, plan) = tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &info()).unwrap();
        assert_eq!(plan.omitted.len(), omitted, "{fill:?}");
    }

    // What ends on a strip needs no page beyond it.
    let options = TileOptions {
        orientation: Orientation::Portrait,
        ..TileOptions::default()
    };
    let pages = |long: f64| {
        let drawing = one_line((0.0, 0.0), (long, 0.0));
        tiles(&drawing, PaperFormat::A4, &options, &info())
            .unwrap()
            .1
            .tiles
            .len()
    };
    // 186 mm are shown, from the whole millimetre before the line's ink.
    assert_eq!((pages(184.0), pages(187.0)), (1, 2));
}
