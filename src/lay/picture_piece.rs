//! One piece of the picture of a lay.

use super::Laid;
use crate::drawing::{Anchor, DrawnPath, Face, Ink, Layer, Level, Pen, Room, Text, TextStyle};
use crate::geometry::with_next;
use kurbo::{BezPath, Point, Rect, Size, Vec2};

/// Where and to which scale a stretch is drawn.
pub(super) struct Brush {
    /// The start of the stretch at its fold or first selvedge, on paper.
    pub(super) origin: Point,
    /// What is one millimetre on paper.
    pub(super) scale: f64,
}

impl Brush {
    fn at(&self, p: Point) -> Point {
        self.origin + p.to_vec2() / self.scale
    }

    fn path(&self, points: &[Point]) -> BezPath {
        let mut path = BezPath::new();
        for (k, p) in points.iter().enumerate() {
            if k == 0 {
                path.move_to(self.at(*p));
            } else {
                path.line_to(self.at(*p));
            }
        }
        path
    }
}

/// Sizes of the name on paper, from the best to the least that is read.
const SIZES: [f64; 6] = [4.6, 4.0, 3.4, 2.8, 2.2, 1.7];

/// What words keep clear of lines, on paper.
const CLEAR: f64 = 0.8;

/// Draws a piece: filled lightly, with its grain, its centre, its name and how it is cut.
pub(super) fn piece(
    laid: &Laid,
    brush: &Brush,
    pieces: &mut Layer,
    grain: &mut Layer,
    words: &mut Layer,
) {
    let mut outline = brush.path(laid.shape.points());
    outline.close_path();
    let light = Ink::Grey(if laid.pose.face_down { 212 } else { 234 });
    pieces.push(DrawnPath::filled(outline, light));
    pieces.push(DrawnPath::stroked(cut_along(laid, brush), Pen::solid(0.4)));
    // Room is sought in millimetres of cloth, which are finer than those on paper.
    let mut whole = Brush::life_size().path(laid.shape.points());
    whole.close_path();
    let mut room = Room::inside(whole);
    if let Some(centre) = laid.centre {
        room.take_stroke(&Brush::life_size().path(&centre));
        let pen = Pen::solid(0.2).dashed(&[4.0, 1.0, 0.8, 1.0]);
        grain.push(DrawnPath::stroked(brush.path(&centre), pen));
    }
    room.take_stroke(&Brush::life_size().path(&laid.grain));
    let [low, high] = laid.grain.map(|p| brush.at(p));
    grain.push(DrawnPath::line(low, high, Pen::solid(0.25)));
    grain.push(arrow_head(high, (low - high).normalize(), 2.4));
    label(laid, brush, &mut room, words);
}

/// The outline where it is cut: on the fold it is not.
fn cut_along(laid: &Laid, brush: &Brush) -> BezPath {
    let points = laid.shape.points();
    let on_fold = |p: &Point| laid.on_fold && p.y.abs() < 1e-9;
    // From where the fold ends once round to where it begins.
    let from = with_next(points).position(|(p, next)| on_fold(p) && !on_fold(next));
    let Some(from) = from else {
        let mut whole = brush.path(points);
        whole.close_path();
        return whole;
    };
    let mut round: Vec<Point> = Vec::with_capacity(points.len());
    for point in points.iter().cycle().skip(from).take(points.len() + 1) {
        round.push(*point);
        if round.len() > 1 && on_fold(point) {
            break;
        }
    }
    brush.path(&round)
}

impl Brush {
    fn life_size() -> Self {
        Self {
            origin: Point::ORIGIN,
            scale: 1.0,
        }
    }
}

/// The name and how the piece is cut, level if there is room, else along the piece's width, as
/// large as goes; the name alone where both have no room.
fn label(laid: &Laid, brush: &Brush, room: &mut Room, words: &mut Layer) {
    let name = laid.name.to_uppercase();
    let how = laid.words_in_pose();
    let block = |size: f64, both: bool| {
        let mut lines = vec![(name.as_str(), TextStyle::new(Face::Bold, size))];
        if both {
            lines.push((how.as_str(), TextStyle::new(Face::Regular, 0.78 * size)));
        }
        lines
    };
    let tries = SIZES
        .iter()
        .flat_map(|&size| [(size, true, false), (size, true, true)])
        .chain(
            SIZES
                .iter()
                .flat_map(|&size| [(size, false, false), (size, false, true)]),
        );
    for (size, both, upright) in tries {
        let lines = block(size, both);
        let width = lines.iter().map(|(t, s)| s.width(t)).fold(0.0, f64::max);
        let height: f64 = lines.iter().map(|(_, s)| 1.25 * s.size).sum();
        let taken = Size::new(width + 2.0 * CLEAR, height + 2.0 * CLEAR) * brush.scale;
        let taken = if upright {
            Size::new(taken.height, taken.width)
        } else {
            taken
        };
        if let Some(found) = room.place(taken, laid.shape.bounds().center()) {
            write(&lines, height, brush, found, upright, words);
            return;
        }
    }
}

/// Writes lines one below the other in the middle of a box of cloth.
fn write(
    lines: &[(&str, TextStyle)],
    height: f64,
    brush: &Brush,
    found: Rect,
    upright: bool,
    words: &mut Layer,
) {
    let middle = brush.at(found.center());
    let mut down = -height / 2.0;
    for (text, style) in lines {
        let off = down + 0.2 * style.size;
        let (by, turn) = if upright {
            (Vec2::new(off, 0.0), -90.0)
        } else {
            (Vec2::new(0.0, off), 0.0)
        };
        words.push(
            Text::new(middle + by, *text, *style)
                .anchor(Anchor::Middle)
                .level(Level::Top)
                .turned(turn),
        );
        down += 1.25 * style.size;
    }
}

/// A filled arrow head at `tip`; `back` points away from it.
pub(super) fn arrow_head(tip: Point, back: Vec2, length: f64) -> DrawnPath {
    let side = Vec2::new(-back.y, back.x) * (0.33 * length);
    let mut path = kurbo::BezPath::new();
    path.move_to(tip);
    path.line_to(tip + back * length + side);
    path.line_to(tip + back * length - side);
    path.close_path();
    DrawnPath::filled(path, Ink::BLACK)
}
