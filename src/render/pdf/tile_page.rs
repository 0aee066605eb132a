//! A page with a part of the drawing: frame, strips, marks and foot.

use kurbo::{Point, Rect, Shape as _, Vec2};

use crate::drawing::{Anchor, Face, Figure, Ink, Item, Level, Pen, Text, TextStyle};

use super::marks::{GREY, Join};
use super::plan::{Tile, TilePlan, row_letters};
use super::scale;

/// The height at the foot of every page kept for its label and scale bar, in mm.
pub(super) const FOOTER: f64 = 10.0;

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
    words(&mut items, plan, tile, around);
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

fn strips(items: &mut Vec<Item>, own: Rect, shown: Rect, around: &Neighbours<'_>) {
    let right = around.right.is_some();
    let bottom = around.bottom.is_some();
    let mut fill = |rect: Rect| items.push(Figure::filled(rect.to_path(0.1), STRIP).into());
    if right {
        fill(Rect::new(
            own.x1,
            own.y0,
            shown.x1,
            if bottom { shown.y1 } else { own.y1 },
        ));
    }
    if bottom {
        fill(Rect::new(own.x0, own.y1, own.x1, shown.y1));
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
        items.push(Figure::line(from, to, pen).into());
    };
    line((own.x0, own.y0), (own.x0, shown.y1), pen(around.left, &cut));
    line((own.x0, own.y0), (shown.x1, own.y0), pen(around.top, &cut));
    line((x1, own.y0), (x1, shown.y1), pen(around.right, &glue));
    line((own.x0, y1), (shown.x1, y1), pen(around.bottom, &glue));
}

/// What to do at each edge, beside its line.
fn words(items: &mut Vec<Item>, plan: &TilePlan, tile: &Tile, around: &Neighbours<'_>) {
    let shift = tile.shift();
    let own = tile.area + shift;
    let style = TextStyle::new(Face::Regular, 2.6).ink(GREY);
    // On the far side of the edge from the mark's half of it.
    let beside = |at: f64, low: f64, high: f64| {
        let away = if at > (low + high) / 2.0 { -0.22 } else { 0.22 };
        at + away * (high - low)
    };
    let mut word = |at: Point, turned: f64, level: Level, text: String| {
        items.push(
            Text::new(at, text, style)
                .anchor(Anchor::Middle)
                .level(level)
                .turned(turned)
                .into(),
        );
    };
    let strip = plan.overlap / 2.0;
    if let Some(join) = around.right {
        let at = join.at + shift;
        let place = Point::new(own.x1 + strip, beside(at.y, own.y0, own.y1));
        let label = super::plan::tile_label(tile.row, tile.column + 1);
        word(
            place,
            90.0,
            Level::Middle,
            format!("{label} goes over this strip"),
        );
    }
    if let Some(join) = around.bottom {
        let at = join.at + shift;
        let place = Point::new(beside(at.x, own.x0, own.x1), own.y1 + strip);
        let label = super::plan::tile_label(tile.row + 1, tile.column);
        word(
            place,
            0.0,
            Level::Middle,
            format!("{label} goes over this strip"),
        );
    }
    if let Some(join) = around.left {
        let at = join.at + shift;
        let place = Point::new(own.x0 + 1.2, beside(at.y, own.y0, own.y1));
        word(place, -90.0, Level::Top, "cut on this line".to_owned());
    }
    if let Some(join) = around.top {
        let at = join.at + shift;
        let place = Point::new(beside(at.x, own.x0, own.x1), own.y0 + 1.2);
        word(place, 0.0, Level::Top, "cut on this line".to_owned());
    }
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
