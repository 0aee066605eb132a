//! Everything that is drawn on one piece: lines, darts, grain, fold, notches, words.

use kurbo::{BezPath, Circle, ParamCurve, PathSeg, Point, Rect, Shape, Size, Vec2};

use super::room::Room;
use super::{Anchor, Face, Figure, Ink, Item, Layer, Level, Pen, Text, TextStyle};
use crate::allowance::cut_line_beside;
use crate::geometry::{Curve, perpendicular, tolerance};
use crate::piece::{Apexes, Dart, EdgeRole, Piece, Pressed};

/// Line widths in millimetres: what is cut is boldest, and where nothing but the stitching line
/// is drawn, that is cut along.
const CUTTING: f64 = 0.6;
const STITCHING: f64 = 0.5;
/// A stitching line inside its allowance.
const STITCHING_WITHIN: f64 = 0.25;
const MARK: f64 = 0.3;
const GUIDE: f64 = 0.2;
/// Length of a notch mark inside the stitching line: 3 to 6 mm (NIMI, *Dress Making Trade Theory*).
const NOTCH: f64 = 6.0;
/// Distance of the fold bracket from the fold.
const BRACKET: f64 = 7.0;

/// Dashes of a fold.
const FOLD_DASHES: [f64; 4] = [12.0, 2.5, 2.0, 2.5];

const GREY: Ink = Ink::Grey(90);

/// The layers of one piece, in the order in which they are drawn.
pub(super) struct PieceLayers {
    cutting: Layer,
    stitching: Layer,
    darts: Layer,
    marks: Layer,
    guides: Layer,
    words: Layer,
}

impl PieceLayers {
    fn new() -> Self {
        Self {
            cutting: Layer::new("cutting lines"),
            stitching: Layer::new("stitching lines"),
            darts: Layer::new("darts"),
            marks: Layer::new("marks"),
            guides: Layer::new("balance lines"),
            words: Layer::new("words"),
        }
    }

    /// The layers that hold anything.
    pub fn into_layers(self) -> Vec<Layer> {
        [
            self.guides,
            self.cutting,
            self.stitching,
            self.darts,
            self.marks,
            self.words,
        ]
        .into_iter()
        .filter(|l| !l.items.is_empty())
        .collect()
    }
}

/// Draws a piece where it lies, with its cut line if it has allowances; `lines` are written on
/// it below its name.
pub(super) fn draw(piece: &Piece, cut: Option<&Curve>, lines: &[String]) -> PieceLayers {
    let mut out = PieceLayers::new();
    let mut room = Room::inside(ring(piece));
    if let Some(cut) = cut {
        cut_line(&mut out, piece, cut);
    }
    for edge in piece.outline().edges() {
        let pen = match (edge.role(), cut) {
            (EdgeRole::Fold, None) => Pen::solid(STITCHING).dashed(&FOLD_DASHES),
            (_, None) => Pen::solid(STITCHING),
            (_, Some(_)) => Pen::solid(STITCHING_WITHIN).dashed(&[4.0, 2.0]),
        };
        // Across its allowances the fold is drawn with the cut line, which runs along it.
        if edge.role() != EdgeRole::Fold || cut.is_none() {
            out.stitching
                .push(Figure::stroked(edge.curve().to_path(), pen));
        }
        if edge.role() == EdgeRole::Fold {
            bracket(&mut out, &mut room, edge.curve());
        }
    }
    for dart in piece.darts() {
        dart_lines(&mut out, &mut room, dart, cut);
    }
    grain(&mut out, &mut room, piece);
    notches(&mut out, &mut room, piece, cut);
    for hole in piece.drill_points() {
        let mut cross = Circle::new(hole.at, 1.5).to_path(0.01);
        for d in [Vec2::new(2.5, 0.0), Vec2::new(0.0, 2.5)] {
            cross.move_to(hole.at - d);
            cross.line_to(hole.at + d);
        }
        room.take_stroke(&cross);
        out.marks.push(Figure::stroked(cross, Pen::solid(GUIDE)));
    }
    for line in piece.lines() {
        let path = line.curve.to_path();
        room.take_stroke(&path);
        out.guides.push(Figure::stroked(
            path,
            Pen::solid(GUIDE).dashed(&[4.0, 3.0]).ink(GREY),
        ));
    }
    words(&mut out, &mut room, piece, lines);
    out
}

/// The cut line: bold where the cloth is cut, dashed like a fold where it is laid on one.
fn cut_line(out: &mut PieceLayers, piece: &Piece, cut: &Curve) {
    let folds: Vec<&Curve> = piece
        .outline()
        .edges()
        .iter()
        .filter(|e| e.role() == EdgeRole::Fold)
        .map(crate::piece::Edge::curve)
        .collect();
    // The fold is straight, and so is what lies on it, carried on across the allowances.
    let on_fold = |s: &PathSeg| {
        folds.iter().any(|fold| {
            let along = (fold.end() - fold.start()).normalize();
            let off = |t: f64| (s.eval(t) - fold.start()).cross(along).abs();
            [0.0, 0.5, 1.0].iter().all(|t| off(*t) < tolerance::PRINT)
        })
    };
    let segments = cut.segments();
    if !segments.iter().any(on_fold) {
        out.cutting
            .push(Figure::stroked(closed(segments), Pen::solid(CUTTING)));
        return;
    }
    // From where a fold ends once round, so that no stretch is broken in two.
    let from = (0..segments.len())
        .find(|k| on_fold(&segments[*k]) && !on_fold(&segments[(k + 1) % segments.len()]))
        .map_or(0, |k| k + 1);
    let round: Vec<PathSeg> = (0..segments.len())
        .map(|k| segments[(from + k) % segments.len()])
        .collect();
    for stretch in round.chunk_by(|a, b| on_fold(a) == on_fold(b)) {
        if on_fold(&stretch[0]) {
            let pen = Pen::solid(STITCHING).dashed(&FOLD_DASHES);
            out.stitching.push(Figure::stroked(chain(stretch), pen));
        } else {
            out.cutting
                .push(Figure::stroked(chain(stretch), Pen::solid(CUTTING)));
        }
    }
}

/// The closed outline of a piece as one path.
pub(crate) fn ring(piece: &Piece) -> BezPath {
    closed(&piece.outline().segments())
}

/// The segments of a closed ring as one path.
fn closed(segments: &[PathSeg]) -> BezPath {
    let mut path = chain(segments);
    path.close_path();
    path
}

/// The segments as one path. Neighbouring edges agree to a rounding only, so the path is made
/// by hand: a gap of a nanometre must not start a new one.
fn chain(segments: &[PathSeg]) -> BezPath {
    let mut path = BezPath::new();
    for (index, segment) in segments.iter().enumerate() {
        if index == 0 {
            path.move_to(segment.start());
        }
        path.push(segment.as_path_el());
    }
    path
}

fn stroke(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    for (index, p) in points.iter().enumerate() {
        if index == 0 {
            path.move_to(*p);
        } else {
            path.line_to(*p);
        }
    }
    path
}

fn mark(layer: &mut Layer, room: &mut Room, path: BezPath, pen: Pen) {
    room.take_stroke(&path);
    layer.push(Figure::stroked(path, pen));
}

/// A bracket beside the fold whose arrows point at it.
fn bracket(out: &mut PieceLayers, room: &mut Room, fold: &Curve) {
    let (from, to) = (fold.start(), fold.end());
    let along = (to - from).normalize();
    // The outline runs clockwise, so the inside lies clockwise of its direction.
    let inward = perpendicular(along);
    let inset = (from.distance(to) * 0.12).min(60.0);
    let (low, high) = (from + along * inset, to - along * inset);
    let path = stroke(&[low, low + inward * BRACKET, high + inward * BRACKET, high]);
    mark(&mut out.marks, room, path, Pen::solid(MARK));
    for tip in [low, high] {
        arrow_head(out, tip, -inward);
    }
    let style = TextStyle::new(Face::Regular, 3.6);
    let text = Text::new(
        low.midpoint(high) + inward * (BRACKET + 2.0),
        "place on the fold",
        style,
    )
    .anchor(Anchor::Middle)
    .level(Level::Top)
    .turned(-90.0);
    room.take_box(text.bounds());
    out.words.push(text);
}

/// A filled arrow head ending at `tip`, pointing along `direction`.
fn arrow_head(out: &mut PieceLayers, tip: Point, direction: Vec2) {
    let back = tip - direction * 4.0;
    let side = perpendicular(direction) * 1.3;
    let mut path = stroke(&[tip, back + side, back - side]);
    path.close_path();
    out.marks.push(Figure::filled(path, Ink::BLACK));
}

fn dart_lines(out: &mut PieceLayers, room: &mut Room, dart: &Dart, cut: Option<&Curve>) {
    // Across an allowance each leg is carried on to the cut line, as a notch of its intake.
    for leg in dart.legs.into_iter().filter(|_| dart.edge.is_some()) {
        let on = (leg - dart.apex()).normalize();
        if let Some(from) = cut.and_then(|cut| cut_line_beside(cut, leg, on)) {
            out.marks
                .push(Figure::stroked(stroke(&[from, leg]), Pen::solid(0.4)));
        }
    }
    let middle = dart.legs[0].midpoint(dart.legs[1]);
    let (legs, centre) = match dart.apexes {
        Apexes::One(apex) => (
            stroke(&[dart.legs[0], apex, dart.legs[1]]),
            stroke(&[apex, middle]),
        ),
        Apexes::Two(upper, lower) => (
            stroke(&[upper, dart.legs[0], lower, dart.legs[1], upper]),
            stroke(&[upper, lower]),
        ),
    };
    mark(&mut out.darts, room, legs, Pen::solid(0.4));
    mark(
        &mut out.darts,
        room,
        centre,
        Pen::solid(GUIDE).dashed(&[3.0, 2.0]),
    );
}

fn grain(out: &mut PieceLayers, room: &mut Room, piece: &Piece) {
    let [low, high] = piece.grain();
    let along = (high - low).normalize();
    mark(&mut out.marks, room, stroke(&[low, high]), Pen::solid(MARK));
    arrow_head(out, high, along);
    arrow_head(out, low, -along);
    let style = TextStyle::new(Face::Regular, 3.6);
    let place = low.lerp(high, 0.72) + perpendicular(along) * -1.6;
    let text = Text::new(place, "grain", style)
        .anchor(Anchor::Middle)
        .turned(-90.0);
    room.take_box(text.bounds());
    out.words.push(text);
}

/// Notches: inward from the stitching line where that is cut along, else from the cut line
/// across the allowance to the stitching line.
fn notches(out: &mut PieceLayers, room: &mut Room, piece: &Piece, cut: Option<&Curve>) {
    for notch in piece.notches() {
        let Some(edge) = piece.outline().edge(&notch.edge) else {
            continue;
        };
        for place in notch.cuts() {
            let Ok((at, along)) = edge.curve().point_at(place) else {
                continue;
            };
            let inward = perpendicular(along);
            let path = match cut.and_then(|cut| cut_line_beside(cut, at, -inward)) {
                Some(from) => stroke(&[from, at]),
                None => stroke(&[at, at + inward * NOTCH]),
            };
            mark(&mut out.marks, room, path, Pen::solid(0.4));
        }
    }
}

/// What is written on a piece: its name and lines, the names of its balance lines, and to
/// which side each dart is pressed, each where there is room for it.
fn words(out: &mut PieceLayers, room: &mut Room, piece: &Piece, lines: &[String]) {
    let bounds = piece.outline().bounds();
    let wish = Point::new(
        bounds.x0 + 0.45 * bounds.width(),
        bounds.y0 + 0.5 * bounds.height(),
    );
    let mut block = vec![(piece.name().to_uppercase(), TextStyle::new(Face::Bold, 7.0))];
    block.push((
        piece.cut().words().to_owned(),
        TextStyle::new(Face::Regular, 4.6),
    ));
    block.extend(
        lines
            .iter()
            .map(|l| (l.clone(), TextStyle::new(Face::Regular, 3.8))),
    );
    for scale in [1.0, 0.8, 0.6] {
        let scaled: Vec<_> = block
            .iter()
            .map(|(t, s)| (t.as_str(), TextStyle::new(s.face, s.size * scale)))
            .collect();
        if place_block(out, room, &scaled, wish) {
            break;
        }
    }
    for line in piece.lines() {
        let style = TextStyle::new(Face::Regular, 3.2).ink(GREY);
        let along = line.curve.bounds();
        let wish = Point::new(along.x0 + 0.62 * along.width(), along.y0 - 4.0);
        place_block(out, room, &[(&format!("{} line", line.name), style)], wish);
    }
    for dart in piece.darts() {
        let style = TextStyle::new(Face::Regular, 3.2);
        let wish = dart.apex().lerp(dart.legs[0].midpoint(dart.legs[1]), 0.55);
        place_block(out, room, &[(&press_words(dart), style)], wish);
    }
}

/// Places lines of text one below the other; says whether there was room.
fn place_block(
    out: &mut PieceLayers,
    room: &mut Room,
    lines: &[(&str, TextStyle)],
    wish: Point,
) -> bool {
    let width = lines.iter().map(|(t, s)| s.width(t)).fold(0.0, f64::max);
    let height = lines.iter().map(|(_, s)| 1.35 * s.size).sum();
    let Some(Rect { x0, mut y0, .. }) = room.place(Size::new(width, height), wish) else {
        return false;
    };
    for (text, style) in lines {
        let at = Point::new(x0, y0 + 0.15 * style.size);
        out.words
            .push(Item::Text(Text::new(at, *text, *style).level(Level::Top)));
        y0 += 1.35 * style.size;
    }
    true
}

/// How a dart is pressed, as it is said on the piece and in lists.
fn press_words(dart: &Dart) -> String {
    let toward = match dart.pressed {
        Pressed::TowardFirstLeg => dart.legs[0] - dart.legs[1],
        Pressed::TowardSecondLeg => dart.legs[1] - dart.legs[0],
    };
    let side = if toward.y.abs() > toward.x.abs() {
        if toward.y > 0.0 { "down" } else { "up" }
    } else if toward.x < 0.0 {
        "toward the centre"
    } else {
        "toward the side"
    };
    format!("{} dart: press {side}", dart.name)
}
