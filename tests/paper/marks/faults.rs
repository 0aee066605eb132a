//! What is wrong with a finished drawing: words on lines, on one another, off their piece; marks
//! on one another or off their piece.

use blockwright::drawing::Drawing;
use geo::{BoundingRect, Contains, Distance, Euclidean, Intersects, Line, Point, Polygon};

use super::sheet::{Kind, Sheet, Stroke, Words};

/// The least size of words, in millimetres: 6 point, as the drawing says of itself.
const LEAST: f64 = 2.1;

/// Marks may reach over the outline they touch by so much, in millimetres: half a fine line.
const TOUCH: f64 = 0.1;

/// Which lines may meet. A level line runs across the whole piece, whatever stands there but
/// words: the underarm line through the waist dart, the waist line to its notch. A line to lengthen
/// at crosses what runs along the piece: grain, fold bracket, darts along the grain. A drill
/// point lies on the middle line of its dart and, in a narrow one, on its legs. The heads of the
/// bracket and the grain belong to their lines, the ring and a slit to their point, the bar of a zip
/// to its notch. Everything starts or ends at the outline.
fn may_meet(a: Kind, b: Kind) -> bool {
    use Kind::{
        Balance, Bracket, Dart, Drill, Grain, Head, Lengthen, Notch, Outline, Point, Ring, Slit,
        Stop,
    };
    let (a, b) = (a.min(b), a.max(b));
    matches!(
        (a, b),
        (Outline, _)
            | (Dart, Dart | Drill)
            | (Grain | Bracket, Head)
            | (
                Dart | Notch | Drill | Grain | Bracket | Head | Point | Ring | Stop,
                Balance
            )
            | (Dart | Grain | Bracket | Point | Ring | Slit, Lengthen)
            | (Point, Ring | Slit)
            | (Notch, Stop)
    )
}

/// Everything that is wrong, a sentence each.
pub fn faults(drawing: &Drawing) -> Vec<String> {
    let sheet = Sheet::of(drawing);
    let mut found = Vec::new();
    for (at, words) in sheet.words.iter().enumerate() {
        found.extend(of_words(&sheet, words));
        for other in &sheet.words[..at] {
            if words.bounds.intersects(&other.bounds) && words.corners.intersects(&other.corners) {
                found.push(format!("'{}' lies on '{}'", words.text, other.text));
            }
        }
    }
    for (at, stroke) in sheet.strokes.iter().enumerate() {
        found.extend(off(&sheet, stroke));
        for other in &sheet.strokes[..at] {
            if !may_meet(stroke.kind, other.kind) && meet(stroke, other) {
                found.push(format!(
                    "{:?} meets {:?} at {:?}",
                    stroke.kind, other.kind, stroke.bounds
                ));
            }
        }
    }
    found
}

fn of_words(sheet: &Sheet, words: &Words) -> Vec<String> {
    let mut found = Vec::new();
    if words.size < LEAST - 1e-9 {
        found.push(format!("'{}' is {} mm high", words.text, words.size));
    }
    for stroke in &sheet.strokes {
        let hit = stroke.bounds.intersects(&words.bounds)
            && stroke.lines.iter().any(|l| {
                l.bounding_rect().intersects(&words.bounds) && l.intersects(&words.corners)
            });
        if hit {
            found.push(format!("'{}' lies on {:?}", words.text, stroke.kind));
        }
    }
    if sheet.outlines.iter().any(|o| is_cut_by(words, o)) {
        found.push(format!("'{}' leaves its piece", words.text));
    }
    found
}

/// Whether an outline runs through words.
fn is_cut_by(words: &Words, outline: &Polygon<f64>) -> bool {
    outline
        .exterior()
        .lines()
        .any(|l| l.bounding_rect().intersects(&words.bounds) && l.intersects(&words.corners))
}

/// The words that stand on no piece.
pub fn beside_pieces(drawing: &Drawing) -> Vec<String> {
    let sheet = Sheet::of(drawing);
    let corner = |w: &Words| Point::from(w.corners.exterior().0[0]);
    let outside = |w: &&Words| !sheet.outlines.iter().any(|o| o.contains(&corner(w)));
    sheet
        .words
        .iter()
        .filter(outside)
        .map(|w| w.text.clone())
        .collect()
}

/// Whether two strokes meet otherwise than end to end: a dart's leg goes on across the allowance.
fn meet(a: &Stroke, b: &Stroke) -> bool {
    let end_to_end = |l: &Line<f64>, m: &Line<f64>| {
        let ends = |l: &Line<f64>| [Point::from(l.start), Point::from(l.end)];
        ends(l)
            .iter()
            .any(|p| ends(m).iter().any(|q| Euclidean.distance(p, q) < TOUCH))
    };
    a.bounds.intersects(&b.bounds)
        && a.lines
            .iter()
            .any(|l| b.lines.iter().any(|m| l.intersects(m) && !end_to_end(l, m)))
}

fn off(sheet: &Sheet, stroke: &Stroke) -> Option<String> {
    // Outlines are proved elsewhere.
    if stroke.kind == Kind::Outline {
        return None;
    }
    let inside = |p: Point<f64>| {
        sheet
            .outlines
            .iter()
            .any(|o| o.contains(&p) || Euclidean.distance(&p, o.exterior()) <= TOUCH)
    };
    let ends = stroke.lines.iter().flat_map(|l| [l.start, l.end]);
    let lost = ends.map(Point::from).find(|p| !inside(*p))?;
    Some(format!("{:?} leaves its piece at {lost:?}", stroke.kind))
}
