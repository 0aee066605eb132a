//! The plan of the pages, small: which part of the pattern lies on which page.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Size, Vec2};

use crate::drawing::{Anchor, DrawnPath, Face, Ink, Item, Level, Pen, Room, Text, TextStyle};
use crate::geometry::counted;

use super::marks::GREY;
use super::plan::{TilePlan, tile_label};
use super::tiling::Tiling;

/// Width of the outlines, in mm: what a piece is cut along is bolder than the edges of pages.
const OUTLINE: f64 = 0.45;
/// Width of the edges of pages, in mm.
const EDGE: f64 = 0.2;
/// Sizes in which a piece is named, in mm.
const NAMES: [f64; 5] = [4.0, 3.4, 2.9, 2.5, 2.1];
/// Step of the search for room, in mm.
const STEP: f64 = 1.2;
/// What words keep clear of lines, in mm.
const CLEAR: f64 = 0.5;
/// The largest scale of the plan.
const LARGEST: f64 = 0.25;

/// Where the plan lies on a page, and by which motion the drawing comes to lie on it.
pub(super) struct Small {
    pub(super) window: Rect,
    pub(super) place: Affine,
}

/// The size of the whole plan in mm of the drawing.
pub(super) fn whole(plan: &TilePlan) -> Size {
    Size::new(
        plan.columns as f64 * plan.pitch.width + plan.overlap,
        plan.rows as f64 * plan.pitch.height + plan.overlap,
    )
}

/// The scale at which the plan fits into a room.
pub(super) fn scale_in(plan: &TilePlan, room: Size) -> f64 {
    let whole = whole(plan);
    (room.width / whole.width)
        .min(room.height / whole.height)
        .min(LARGEST)
}

/// Draws the plan from the upper left corner of a room, as large as it may be.
pub(super) fn draw(items: &mut Vec<Item>, tiling: &Tiling<'_>, room: Rect) -> Small {
    let (plan, grid) = (tiling.plan, tiling.grid);
    let scale = scale_in(plan, room.size());
    let place = Affine::translate(room.origin().to_vec2())
        * Affine::scale(scale)
        * Affine::translate(-grid.origin.to_vec2());
    let window = Rect::from_origin_size(room.origin(), whole(plan) * scale);
    let mut words = Words {
        clear: Room::inside(window.to_path(0.1)),
        crossed: Room::inside(window.to_path(0.1)),
    };
    let cell = |row, column| place.transform_rect_bbox(grid.cell(row, column));
    let mut labels = Vec::new();
    for row in 0..plan.rows {
        for column in 0..plan.columns {
            let mut rect = cell(row, column);
            if plan.tile(row, column).is_some() {
                labels.push((rect, grid.cell(row, column), tile_label(row, column)));
                // Where the pattern ends, a page shows its strip too.
                if plan.tile(row, column + 1).is_none() {
                    rect.x1 += plan.overlap * scale;
                }
                if plan.tile(row + 1, column).is_none() {
                    rect.y1 += plan.overlap * scale;
                }
                let tint = Ink::Grey(240);
                items.push(DrawnPath::filled(rect.to_path(0.1), tint).into());
                let edge = Pen::solid(EDGE).ink(GREY);
                items.push(DrawnPath::rectangle(rect, edge).into());
                words.clear.take_stroke(&rect.to_path(0.1));
            } else {
                let edge = Pen::solid(0.15).dashed(&[0.5, 0.8]).ink(Ink::Grey(150));
                items.push(DrawnPath::rectangle(rect.inset(-0.4), edge).into());
            }
        }
    }
    let outlines: Vec<Vec<BezPath>> = tiling
        .outlined
        .iter()
        .map(|part| {
            part.outlines
                .iter()
                .map(|path| place * path.clone())
                .collect()
        })
        .collect();
    for path in outlines.iter().flatten() {
        items.push(DrawnPath::stroked(path.clone(), Pen::solid(OUTLINE)).into());
        words.clear.take_stroke(path);
        words.crossed.take_stroke(path);
    }
    for (part, paths) in tiling.outlined.iter().zip(&outlines) {
        let smallest = paths.iter().min_by(|a, b| {
            let area = |path: &BezPath| path.bounding_box().area();
            area(a).total_cmp(&area(b))
        });
        if let Some(path) = smallest {
            items.extend(words.name(&part.name, path).into_iter().map(Item::from));
        }
    }
    let size = (plan.pitch.width.min(plan.pitch.height) * scale * 0.36).min(4.6);
    for (on_page, in_drawing, text) in labels {
        let free = words.label(&text, size, on_page);
        let text = free.unwrap_or_else(|| {
            // No room clear of all lines: where the drawing crosses least.
            let style = TextStyle::new(Face::Bold, size).ink(LABEL);
            let room = Size::new(style.width(&text) + 1.0, style.cap_height() + 1.0);
            let at = place * least_crossed(tiling, in_drawing, room / scale);
            centred(&text, style, at)
        });
        items.push(text.into());
    }
    Small { window, place }
}

/// The ink of the labels of pages.
const LABEL: Ink = Ink::Grey(110);

/// A text about a place.
fn centred(text: &str, style: TextStyle, at: Point) -> Text {
    Text::new(at, text, style)
        .anchor(Anchor::Middle)
        .level(Level::Middle)
}

/// Where words find room: clear of all lines, or clear of the outlines alone.
struct Words {
    clear: Room,
    crossed: Room,
}

impl Words {
    /// The name of a part within its outline, on one line or a line a word, as large as there is room
    /// for; at the least size in the middle where there is none.
    fn name(&mut self, name: &str, outline: &BezPath) -> Vec<Text> {
        let ways: [Vec<&str>; 2] = [vec![name], name.split_whitespace().collect()];
        let bounds = outline.bounding_box();
        for over_edges in [false, true] {
            for size in NAMES {
                let style = TextStyle::new(Face::Bold, size);
                for lines in &ways {
                    let room = if over_edges {
                        &self.crossed
                    } else {
                        &self.clear
                    };
                    let found = places(bounds).into_iter().find_map(|at| {
                        let texts = below_each_other(lines, style, at);
                        let inside = outline.winding(at) != 0;
                        let free = |text: &Text| room.is_free(&text.corners(), CLEAR);
                        (inside && texts.iter().all(free)).then_some(texts)
                    });
                    if let Some(texts) = found {
                        self.take(&texts);
                        return texts;
                    }
                }
            }
        }
        let least = NAMES.into_iter().fold(f64::INFINITY, f64::min);
        let style = TextStyle::new(Face::Bold, least);
        let texts = vec![centred(name, style, bounds.center())];
        self.take(&texts);
        texts
    }

    /// The label of a page within it, clear of everything.
    fn label(&mut self, label: &str, size: f64, page: Rect) -> Option<Text> {
        for part in [1.0, 0.8, 0.62] {
            let style = TextStyle::new(Face::Bold, size * part).ink(LABEL);
            for at in places(page) {
                let text = centred(label, style, at);
                if self.clear.is_free(&text.corners(), CLEAR / 2.0) {
                    self.take(std::slice::from_ref(&text));
                    return Some(text);
                }
            }
        }
        None
    }

    fn take(&mut self, texts: &[Text]) {
        for text in texts {
            self.clear.take_text(text);
            self.crossed.take_text(text);
        }
    }
}

fn below_each_other(lines: &[&str], style: TextStyle, middle: Point) -> Vec<Text> {
    let line = 1.25 * style.size;
    let top = middle.y - line * (lines.len() as f64 - 1.0) / 2.0;
    let at = |index: usize| Point::new(middle.x, top + line * index as f64);
    let texts = lines.iter().enumerate();
    texts
        .map(|(index, text)| centred(text, style, at(index)))
        .collect()
}

/// Places in a box, those nearest to its middle first.
fn places(bounds: Rect) -> Vec<Point> {
    let count = |side: f64| counted((side / STEP).floor());
    let (columns, rows) = (count(bounds.width()), count(bounds.height()));
    let corner = bounds.center() - Vec2::new(columns as f64, rows as f64) * (STEP / 2.0);
    let mut all: Vec<Point> = (0..=rows)
        .flat_map(|row| (0..=columns).map(move |column| (row, column)))
        .map(|(row, column)| corner + Vec2::new(column as f64, row as f64) * STEP)
        .collect();
    let far = |at: &Point| at.distance_squared(bounds.center());
    all.sort_by(|a, b| far(a).total_cmp(&far(b)));
    all
}

/// The middle of the place of some size in a cell that the drawing crosses least: the middle of
/// the cell if it makes no difference, else a corner or the middle of a side.
fn least_crossed(tiling: &Tiling<'_>, cell: Rect, size: Size) -> Point {
    let near = tiling.coverage.near(cell);
    let room = Vec2::new(size.width, size.height) / 2.0;
    let free = (cell.size() - size) * 0.45;
    let centre = cell.center();
    [
        (0, 0),
        (-1, -1),
        (1, -1),
        (-1, 1),
        (1, 1),
        (-1, 0),
        (1, 0),
        (0, -1),
        (0, 1),
    ]
    .into_iter()
    .map(|(x, y)| centre + Vec2::new(f64::from(x) * free.width, f64::from(y) * free.height))
    .min_by_key(|&at| near.crossings(Rect::from_points(at - room, at + room)))
    .unwrap_or(centre)
}
