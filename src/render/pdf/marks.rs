//! What joins two pages: where the mark on a shared edge stands and how it looks.

use kurbo::{Circle, Point, Rect, Shape as _, Vec2};

use crate::drawing::{Anchor, DrawnPath, Face, Ink, Item, Level, Pen, Text, TextStyle};

use super::coverage::Coverage;
use super::plan::{Tile, TilePlan};

/// The grey of what belongs to the page and not to the pattern.
pub(super) const GREY: Ink = Ink::Grey(105);

/// Radius of the circle that a join halves, in mm.
const RADIUS: f64 = 3.0;

/// How far the bar through the circle reaches to either side of the join, in mm; less than the
/// narrowest overlap.
const REACH: f64 = 6.0;

/// Where along the edge the mark may stand, as a part of it; the first that is least crossed by
/// the pattern is taken.
const PLACES: [f64; 9] = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82];

/// The edge between two neighbouring pages.
#[derive(Debug, Clone)]
pub(super) struct Join {
    /// The labels of both pages, the left or upper one first: printed on both.
    pub(super) label: String,
    /// The mark, in the drawing's mm.
    pub(super) at: Point,
    /// Whether the edge is upright: the pages lie side by side.
    pub(super) upright: bool,
}

/// The join of a page with its right (`upright`) or lower neighbour. It depends on nothing but
/// the pair, so that both pages print it at the same place.
pub(super) fn join(
    plan: &TilePlan,
    coverage: &Coverage,
    first: &Tile,
    upright: bool,
) -> Option<Join> {
    let second = if upright {
        plan.tile(first.row, first.column + 1)?
    } else {
        plan.tile(first.row + 1, first.column)?
    };
    let label = format!("{}|{}", first.label, second.label);
    let half = style().width(&label);
    let around = |at: Point| {
        let room = if upright {
            Vec2::new(REACH + 2.0 + half, RADIUS + 1.0)
        } else {
            Vec2::new(half.max(RADIUS) + 1.0, REACH + 4.0)
        };
        Rect::from_points(at - room, at + room)
    };
    let area = first.area;
    let place = |part: f64| {
        if upright {
            Point::new(area.x1, area.y0 + area.height() * part)
        } else {
            Point::new(area.x0 + area.width() * part, area.y1)
        }
    };
    let near = coverage.near(around(place(0.0)).union(around(place(1.0))));
    let part = PLACES
        .into_iter()
        .min_by_key(|&part| near.crossings(around(place(part))))?;
    Some(Join {
        label,
        at: place(part),
        upright,
    })
}

fn style() -> TextStyle {
    TextStyle::new(Face::Bold, 3.2).ink(GREY)
}

impl Join {
    /// The mark moved to a page's coordinates, where the join lies on the page's left or upper
    /// edge (`trimmed`) or on its right or lower one. A trimmed page shows only the half that
    /// remains on it.
    pub(super) fn items(&self, shift: Vec2, trimmed: bool) -> Vec<Item> {
        let at = self.at + shift;
        let across = if self.upright {
            Vec2::new(1.0, 0.0)
        } else {
            Vec2::new(0.0, 1.0)
        };
        let pen = || Pen::solid(0.3).ink(GREY);
        let mut items: Vec<Item> = Vec::new();
        if trimmed {
            let start = if self.upright { -90.0 } else { 0.0_f64 };
            let half = kurbo::Arc::new(
                at,
                (RADIUS, RADIUS),
                start.to_radians(),
                std::f64::consts::PI,
                0.0,
            );
            items.push(DrawnPath::stroked(half.to_path(0.001), pen()).into());
            items.push(DrawnPath::line(at, at + across * REACH, pen()).into());
        } else {
            let whole = Circle::new(at, RADIUS).to_path(0.001);
            items.push(DrawnPath::stroked(whole, pen()).into());
            items.push(DrawnPath::line(at - across * REACH, at + across * REACH, pen()).into());
        }
        let side = if trimmed { 1.0 } else { -1.0 };
        let mut text = Text::new(
            at + across * side * (REACH + if self.upright { 1.2 } else { 2.0 }),
            self.label.clone(),
            style(),
        );
        text = match (self.upright, trimmed) {
            (true, true) => text.level(Level::Middle),
            (true, false) => text.level(Level::Middle).anchor(Anchor::End),
            (false, true) => text.level(Level::Top).anchor(Anchor::Middle),
            (false, false) => text.anchor(Anchor::Middle),
        };
        items.push(text.into());
        items
    }
}
