//! Finding room for words inside a piece, clear of everything already drawn.

use kurbo::{BezPath, Line, PathSeg, Point, Rect, Shape, Size, Vec2};

use super::Text;
use crate::geometry::{counted, with_next};

/// The corners of a box, turned or not, in order round it.
pub(crate) type Corners = [Point; 4];

/// A place for a box: how far from the wish, squared, its number, and the box there.
type Place = (f64, usize, Rect);

/// What is already drawn on a piece, as straight strokes, and its outline.
pub(crate) struct Room {
    outline: BezPath,
    bounds: Rect,
    strokes: Vec<Line>,
    taken: Vec<Corners>,
}

/// How finely curves are taken apart when room is sought, in millimetres.
const FLATNESS: f64 = 0.1;
/// Step of the search, in millimetres.
const STEP: f64 = 4.0;
/// What a label keeps clear of everything, in millimetres.
const CLEAR: f64 = 2.5;

impl Room {
    /// All the room inside a closed outline.
    pub fn inside(outline: BezPath) -> Self {
        let bounds = outline.bounding_box();
        let mut room = Self {
            outline: outline.clone(),
            bounds,
            strokes: Vec::new(),
            taken: Vec::new(),
        };
        room.take_stroke(&outline);
        room
    }

    /// Marks a stroke as taken.
    pub fn take_stroke(&mut self, path: &BezPath) {
        let mut flat = BezPath::new();
        kurbo::flatten(path, FLATNESS, |el| flat.push(el));
        self.strokes.extend(flat.segments().filter_map(|s| match s {
            PathSeg::Line(l) => Some(l),
            _ => None,
        }));
    }

    /// Marks the place of a text as taken.
    pub fn take_text(&mut self, text: &Text) {
        self.taken.push(text.corners());
    }

    /// Marks a box as taken.
    pub fn take_box(&mut self, rect: Rect) {
        self.taken.push(corners(rect));
    }

    /// The free place for a box of that size whose middle is nearest to `wish`, taken at once.
    pub fn place(&mut self, size: Size, wish: Point) -> Option<Rect> {
        let columns = ((self.bounds.width() - size.width) / STEP).floor();
        let rows = ((self.bounds.height() - size.height) / STEP).floor();
        if columns < 0.0 || rows < 0.0 {
            return None;
        }
        let (columns, rows) = (counted(columns), counted(rows));
        let mut places = Vec::with_capacity((columns + 1) * (rows + 1));
        for row in 0..=rows {
            for column in 0..=columns {
                let at = self.bounds.origin() + Vec2::new(column as f64, row as f64) * STEP;
                let rect = Rect::from_origin_size(at, size);
                places.push((rect.center().distance_squared(wish), places.len(), rect));
            }
        }
        // Of two equally near places the upper left counts.
        let nearer = |a: &Place, b: &Place| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1));
        let mut rest = places.as_mut_slice();
        let mut count = 64;
        let found = loop {
            // Most words find room near their wish, so only the nearest are put in order.
            count = rest.len().min(2 * count);
            if count == 0 {
                return None;
            }
            rest.select_nth_unstable_by(count - 1, nearer);
            let (near, far) = rest.split_at_mut(count);
            near.sort_unstable_by(nearer);
            let free = |(_, _, rect): &&Place| self.is_free(&corners(*rect), CLEAR);
            if let Some((_, _, rect)) = near.iter().find(free) {
                break *rect;
            }
            rest = far;
        };
        self.take_box(found);
        Some(found)
    }

    /// Whether a box lies inside and has nothing drawn or written within `clear` mm of it.
    pub fn is_free(&self, at: &Corners, clear: f64) -> bool {
        let middle = at[0].midpoint(at[2]);
        self.is_clear(at, clear) && self.outline.winding(middle) != 0
    }

    /// Whether a straight stroke runs over no words.
    pub fn misses_words(&self, from: Point, to: Point) -> bool {
        misses(from, to, &self.taken)
    }

    /// Whether a box has nothing drawn or written within `clear` mm of it.
    pub fn is_clear(&self, at: &Corners, clear: f64) -> bool {
        let wide = grown(at, clear);
        let reach = around(&wide);
        !self
            .taken
            .iter()
            .any(|t| meet(reach, around(t)) && !apart(&wide, t))
            && !self
                .strokes
                .iter()
                .any(|s| meet(reach, Rect::from_points(s.p0, s.p1)) && !apart(&wide, &[s.p0, s.p1]))
    }
}

/// Whether a straight stroke runs over none of some boxes.
pub(crate) fn misses(from: Point, to: Point, boxes: &[Corners]) -> bool {
    let reach = Rect::from_points(from, to);
    !boxes
        .iter()
        .any(|words| meet(reach, around(words)) && !apart(words, &[from, to]))
}

fn corners(r: Rect) -> Corners {
    [(r.x0, r.y0), (r.x1, r.y0), (r.x1, r.y1), (r.x0, r.y1)].map(Point::from)
}

/// The box wider by so much on every side.
fn grown(at: &Corners, by: f64) -> Corners {
    let unit = |v: Vec2| v / v.hypot().max(f64::MIN_POSITIVE);
    let along = unit(at[1] - at[0]) * by;
    let across = unit(at[3] - at[0]) * by;
    [
        at[0] - along - across,
        at[1] + along - across,
        at[2] + along + across,
        at[3] - along + across,
    ]
}

fn around(points: &[Point]) -> Rect {
    let first = points.first().copied().unwrap_or_default();
    points
        .iter()
        .fold(Rect::from_points(first, first), |r, p| r.union_pt(*p))
}

fn meet(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// Whether a line separates two convex shapes: then one runs along a side of either.
fn apart(a: &[Point], b: &[Point]) -> bool {
    let sides = |p: &[Point]| -> Vec<Vec2> {
        with_next(p)
            .map(|(this, next)| *next - *this)
            .filter(|side| side.hypot2() > 0.0)
            .collect()
    };
    let span = |p: &[Point], axis: Vec2| {
        p.iter()
            .map(|q| q.to_vec2().dot(axis))
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), d| {
                (low.min(d), high.max(d))
            })
    };
    sides(a).into_iter().chain(sides(b)).any(|side| {
        let axis = Vec2::new(-side.y, side.x);
        let (a, b) = (span(a, axis), span(b, axis));
        a.1 < b.0 || b.1 < a.0
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Room {
        Room::inside(Rect::new(0.0, 0.0, 100.0, 100.0).to_path(0.1))
    }

    #[test]
    fn keeps_clear_of_strokes_and_of_what_was_placed_before() {
        let mut room = square();
        let mut bar = BezPath::new();
        bar.move_to((0.0, 50.0));
        bar.line_to((100.0, 50.0));
        room.take_stroke(&bar);
        let first = room
            .place(Size::new(60.0, 20.0), Point::new(50.0, 50.0))
            .unwrap();
        assert!(first.y1 < 48.0 || first.y0 > 52.0, "{first:?}");
        let second = room
            .place(Size::new(60.0, 20.0), Point::new(50.0, 50.0))
            .unwrap();
        assert!(first.intersect(second).area() <= 0.0);
        assert!(
            room.place(Size::new(60.0, 60.0), Point::new(50.0, 50.0))
                .is_none()
        );
    }

    #[test]
    fn a_turned_box_takes_its_own_place_only() {
        let mut room = square();
        // A square on its tip, 28.28 mm across.
        let tip = [(50.0, 30.0), (70.0, 50.0), (50.0, 70.0), (30.0, 50.0)].map(Point::from);
        assert!(room.is_free(&tip, 1.0));
        room.taken.push(tip);
        let small = |x: f64, y: f64| corners(Rect::new(x, y, x + 6.0, y + 6.0));
        // In the corner of its bounding box there is room, and nearer to it there is not.
        assert!(room.is_free(&small(31.0, 31.0), 0.5));
        assert!(!room.is_free(&small(36.0, 36.0), 0.5));
        assert!(!room.is_free(&small(-8.0, 40.0), 0.5));
    }
}
