//! Finding room for a label inside a piece, clear of everything already drawn.

use kurbo::{BezPath, Line, PathSeg, Point, Rect, Shape, Size};

/// What is already drawn on a piece, as straight strokes, and its outline.
pub(crate) struct Room {
    outline: BezPath,
    bounds: Rect,
    strokes: Vec<Line>,
    taken: Vec<Rect>,
}

/// How finely curves are taken apart when room is sought, in millimetres.
const FLATNESS: f64 = 0.5;
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

    /// Marks a box as taken.
    pub fn take_box(&mut self, rect: Rect) {
        self.taken.push(rect);
    }

    /// The free place for a box of that size whose middle is nearest to `wish`, taken at once.
    pub fn place(&mut self, size: Size, wish: Point) -> Option<Rect> {
        let (mut best, mut nearest): (Option<Rect>, f64) = (None, f64::INFINITY);
        let columns = ((self.bounds.width() - size.width) / STEP).floor();
        let rows = ((self.bounds.height() - size.height) / STEP).floor();
        if columns < 0.0 || rows < 0.0 {
            return None;
        }
        for row in 0..=rows as usize {
            for column in 0..=columns as usize {
                let at = self.bounds.origin() + kurbo::Vec2::new(column as f64, row as f64) * STEP;
                let rect = Rect::from_origin_size(at, size);
                let distance = rect.center().distance(wish);
                if distance < nearest && self.is_free(rect) {
                    best = Some(rect);
                    nearest = distance;
                }
            }
        }
        if let Some(rect) = best {
            self.take_box(rect);
        }
        best
    }

    /// Whether a stroke runs through a box.
    pub fn crosses(&self, rect: Rect) -> bool {
        self.strokes.iter().any(|s| touches(*s, rect))
    }

    fn is_free(&self, rect: Rect) -> bool {
        let wide = rect.inflate(CLEAR, CLEAR);
        !self.taken.iter().any(|t| t.intersect(wide).area() > 0.0)
            && !self.strokes.iter().any(|s| touches(*s, wide))
            && self.outline.winding(rect.center()) != 0
    }
}

/// Whether a stroke runs through a box.
fn touches(stroke: Line, rect: Rect) -> bool {
    let reach = Rect::from_points(stroke.p0, stroke.p1);
    if reach.x1 < rect.x0 || rect.x1 < reach.x0 || reach.y1 < rect.y0 || rect.y1 < reach.y0 {
        return false;
    }
    // Clip the stroke to the box, one axis after the other.
    let (mut from, mut to) = (0.0f64, 1.0f64);
    let d = stroke.p1 - stroke.p0;
    for (start, step, low, high) in [
        (stroke.p0.x, d.x, rect.x0, rect.x1),
        (stroke.p0.y, d.y, rect.y0, rect.y1),
    ] {
        if step.abs() < f64::EPSILON {
            if start < low || start > high {
                return false;
            }
            continue;
        }
        let (a, b) = ((low - start) / step, (high - start) / step);
        from = from.max(a.min(b));
        to = to.min(a.max(b));
    }
    from <= to
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_clear_of_strokes_and_of_what_was_placed_before() {
        let mut room = Room::inside(Rect::new(0.0, 0.0, 100.0, 100.0).to_path(0.1));
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
}
