//! What is measured on paper: squares and a scale bar.

use kurbo::{Point, Rect, Size, Vec2};

use crate::drawing::{Anchor, DrawnPath, Face, Ink, Item, Level, Pen, Text, TextStyle};

/// An inch in mm.
pub(super) const INCH: f64 = 25.4;

/// The room the scale bar takes, from the left end of its first label, in mm.
pub(super) const BAR: Size = Size::new(107.0, 7.2);

/// A bar of 100 mm and one of 4 in below it, with the top left corner of their room at a place.
pub(super) fn bar(at: Point) -> Vec<Item> {
    let zero = at + Vec2::new(1.0, 0.0);
    let style = TextStyle::new(Face::Regular, 2.2);
    let mut items = Vec::new();
    let (top, thick) = (zero.y + 2.1, 1.3);
    for n in 0..10 {
        cell(
            &mut items,
            zero.x,
            f64::from(n) * 10.0,
            10.0,
            top,
            thick,
            n % 2 == 0,
        );
    }
    for n in 0..4 {
        let below = top + thick + 0.3;
        cell(
            &mut items,
            zero.x,
            f64::from(n) * INCH,
            INCH,
            below,
            thick,
            n % 2 == 1,
        );
    }
    let mut label = |x: f64, text: &str, y: f64, level: Level| {
        items.push(
            Text::new((zero.x + x, y), text, style)
                .anchor(Anchor::Middle)
                .level(level)
                .into(),
        );
    };
    for (x, text) in [(0.0, "0"), (50.0, "50"), (100.0, "100 mm")] {
        label(x, text, top - 0.5, Level::Baseline);
    }
    let foot = top + 2.0 * thick + 0.8;
    for (x, text) in [
        (0.0, "0"),
        (1.0, "1"),
        (2.0, "2"),
        (3.0, "3"),
        (4.0, "4 in"),
    ] {
        label(x * INCH, text, foot, Level::Top);
    }
    items
}

/// One field of a bar; its outline stays within it, so that the bar's ends are where they should
/// be and not half a line beyond.
fn cell(items: &mut Vec<Item>, zero: f64, from: f64, long: f64, top: f64, thick: f64, dark: bool) {
    let field = Rect::new(zero + from, top, zero + from + long, top + thick);
    if dark {
        items.push(DrawnPath::filled(kurbo::Shape::to_path(&field, 0.1), Ink::BLACK).into());
    } else {
        let pen = 0.15;
        let inside = field.inset(-pen / 2.0);
        items.push(DrawnPath::rectangle(inside, Pen::solid(pen)).into());
    }
}

/// A square of a side in mm, to be measured from line centre to line centre, with its top left
/// corner at a place.
pub(super) fn square(at: Point, side: f64, name: &str) -> Vec<Item> {
    let square = Rect::from_origin_size(at, (side, side));
    let centre = square.center();
    let text = |offset: f64, text: &str, style: TextStyle| {
        Item::from(
            Text::new(centre + Vec2::new(0.0, offset), text, style)
                .anchor(Anchor::Middle)
                .level(Level::Middle),
        )
    };
    let small = TextStyle::new(Face::Regular, 2.9).ink(Ink::Grey(70));
    vec![
        DrawnPath::rectangle(square, Pen::solid(0.3)).into(),
        text(0.0, name, TextStyle::new(Face::Bold, 7.0)),
        text(7.0, &format!("each side {name}"), small),
        text(
            11.0,
            "middle of line to middle of line",
            TextStyle { size: 2.5, ..small },
        ),
    ]
}
