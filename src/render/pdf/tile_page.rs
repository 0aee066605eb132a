//! A page with a part of the drawing: frame, strips, marks and foot.

use kurbo::{Point, Rect, Shape as _, Vec2};

use crate::drawing::{Anchor, DrawnPath, Face, Ink, Item, Level, Pen, Text, TextStyle};

use super::coverage::Coverage;
use super::grid::FOOTER;
use super::marks::{GREY, Join};
use super::plan::{Tile, TilePlan, row_letters, tile_label};
use super::scale;

/// The strip that a neighbour covers.
const STRIP: Ink = Ink::Grey(241);

/// The pages around one, and the joins with them.
pub(super) struct Neighbours<'a> {
    pub(super) left: Option<&'a Join>,
    pub(super) top: Option<&'a Join>,
    pub(super) right: Option<&'a Join>,
    pub(super) bottom: Option<&'a Join>,
}

/// Everything on a page but the drawing, in the page's mm. It is laid under the drawing, so that
/// it never hides a line of the pattern.
pub(super) fn items(
    plan: &TilePlan,
    tile: &Tile,
    coverage: &Coverage,
    around: &Neighbours<'_>,
    title: &str,
) -> Vec<Item> {
    let shift = tile.shift();
    let own = tile.area + shift;
    let shown = tile.shown + shift;
    let mut items = Vec::new();
    strips(&mut items, own, shown, around);
    items.push(
        Text::new(
            own.origin() + Vec2::new(4.0, 4.0),
            tile.label.clone(),
            TextStyle::new(Face::Bold, 11.0).ink(Ink::Grey(205)),
        )
        .level(Level::Top)
        .into(),
    );
    frame(&mut items, own, shown, around);
    for (join, trimmed) in [
        (around.left, true),
        (around.top, true),
        (around.right, false),
        (around.bottom, false),
    ] {
        if let Some(join) = join {
            items.extend(join.items(shift, trimmed));
        }
    }
    words(&mut items, plan, tile, coverage, around);
    let text = [
        format!(
            "Row {}, column {} of {}  ·  page {} of {}",
            row_letters(tile.row),
            tile.column + 1,
            plan.columns,
            tile.page,
            plan.page_count()
        ),
        title.to_owned(),
    ];
    items.extend(footer(
        shown.x0,
        shown.x1,
        shown.y1 + FOOTER,
        &tile.label,
        &text,
    ));
    items
}

/// The right strip runs down to the corner: the right neighbour shows what is below too.
fn strips(items: &mut Vec<Item>, own: Rect, shown: Rect, around: &Neighbours<'_>) {
    let mut fill = |rect: Rect| items.push(DrawnPath::filled(rect.to_path(0.1), STRIP).into());
    let right = around.right.is_some();
    if right {
        fill(Rect::new(own.x1, own.y0, shown.x1, shown.y1));
    }
    if around.bottom.is_some() {
        let end = if right { own.x1 } else { shown.x1 };
        fill(Rect::new(own.x0, own.y1, end, shown.y1));
    }
}

/// Solid where the page is cut, dashed where a neighbour's cut edge comes to lie, dotted and pale
/// where the pattern ends.
fn frame(items: &mut Vec<Item>, own: Rect, shown: Rect, around: &Neighbours<'_>) {
    let cut = Pen::solid(0.25).ink(Ink::Grey(60));
    let glue = Pen::solid(0.25).dashed(&[3.0, 1.5]).ink(GREY);
    let end = Pen::solid(0.2).dashed(&[0.4, 1.6]).ink(Ink::Grey(170));
    let x1 = if around.right.is_some() {
        own.x1
    } else {
        shown.x1
    };
    let y1 = if around.bottom.is_some() {
        own.y1
    } else {
        shown.y1
    };
    let pen = |join: Option<&Join>, joined: &Pen| {
        if join.is_some() {
            joined.clone()
        } else {
            end.clone()
        }
    };
    let mut line = |from: (f64, f64), to: (f64, f64), pen: Pen| {
        items.push(DrawnPath::line(from, to, pen).into());
    };
    line((own.x0, own.y0), (own.x0, shown.y1), pen(around.left, &cut));
    line((own.x0, own.y0), (shown.x1, own.y0), pen(around.top, &cut));
    line((x1, own.y0), (x1, shown.y1), pen(around.right, &glue));
    line((own.x0, y1), (shown.x1, y1), pen(around.bottom, &glue));
}

/// What to do at each edge, written along its line.
fn words(
    items: &mut Vec<Item>,
    plan: &TilePlan,
    tile: &Tile,
    coverage: &Coverage,
    around: &Neighbours<'_>,
) {
    let near = coverage.near(tile.shown);
    let style = TextStyle::new(Face::Regular, 2.6).ink(GREY);
    let mut word = |join: &Join, off: f64, turned: f64, level: Level, text: String| {
        let long = style.width(&text);
        let place = clear_place(&near, tile, join, off, long);
        items.push(
            Text::new(place + tile.shift(), text, style)
                .anchor(Anchor::Middle)
                .level(level)
                .turned(turned)
                .into(),
        );
    };
    let strip = plan.overlap / 2.0;
    let over = |row, column| format!("{} goes over this strip", tile_label(row, column));
    if let Some(join) = around.right {
        let text = over(tile.row, tile.column + 1);
        word(join, strip, 90.0, Level::Middle, text);
    }
    if let Some(join) = around.bottom {
        let text = over(tile.row + 1, tile.column);
        word(join, strip, 0.0, Level::Middle, text);
    }
    let cut = || "cut on this line".to_owned();
    if let Some(join) = around.left {
        word(join, 1.2, -90.0, Level::Top, cut());
    }
    if let Some(join) = around.top {
        word(join, 1.2, 0.0, Level::Top, cut());
    }
}

/// Where beside an edge a word of some length is least crossed by the pattern: `off` mm to the
/// right of the edge or below it, in the drawing's mm, and clear of the edge's mark.
fn clear_place(near: &Coverage, tile: &Tile, join: &Join, off: f64, long: f64) -> Point {
    let (low, high) = if join.upright {
        (tile.area.y0, tile.area.y1)
    } else {
        (tile.area.x0, tile.area.x1)
    };
    let mark = if join.upright { join.at.y } else { join.at.x };
    // The corner is left to the label of the page, and half the pair's label may lie along the
    // edge.
    let ends = (low + 22.0 + long / 2.0, high - 4.0 - long / 2.0);
    let away = long / 2.0 + 12.0;
    let place = |along: f64| {
        if join.upright {
            Point::new(join.at.x + off, along)
        } else {
            Point::new(along, join.at.y + off)
        }
    };
    (0..16)
        .map(|step| ends.0 + (ends.1 - ends.0) * f64::from((step * 5 + 4) % 16) / 15.0)
        .filter(|along| (along - mark).abs() > away)
        .map(place)
        .min_by_key(|&at| {
            let room = if join.upright {
                Vec2::new(2.5, long / 2.0 + 2.0)
            } else {
                Vec2::new(long / 2.0 + 2.0, 2.5)
            };
            near.crossings(Rect::from_points(at - room, at + room))
        })
        .unwrap_or_else(|| place(ends.0))
}

/// The foot of a page: its label, two lines about it and the scale bar, above a level of y and
/// between two of x.
pub(super) fn footer(x0: f64, x1: f64, bottom: f64, label: &str, text: &[String; 2]) -> Vec<Item> {
    let bar = Point::new(x1 - scale::BAR.width, bottom - scale::BAR.height);
    let mut items = scale::bar(bar);
    let big = TextStyle::new(Face::Bold, 7.0);
    let mut x = x0;
    if !label.is_empty() {
        items.push(Text::new((x, bottom - 1.2), label, big).into());
        x += big.width(label) + 3.0;
    }
    let small = TextStyle::new(Face::Regular, 2.7);
    for (line, level) in text.iter().zip([4.6, 1.0]) {
        let line = small.fit(line, bar.x - 2.0 - x);
        items.push(Text::new((x, bottom - level), line, small).into());
    }
    items
}
