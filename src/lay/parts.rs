//! What a pattern gives to lay on a cloth.

use super::unfold::unfolded;
use super::{Cloth, CutShape, LayError, LayPart, Pose};
use crate::allowance::CutLines;
use crate::geometry::{Curve, Point, Vec2, perpendicular};
use crate::piece::{Cut, EdgeRole, Pattern, Piece};
use kurbo::PathEl;

/// How closely straight edges follow a curve of the cut line, in millimetres: a quarter of the
/// width of the line drawn.
const FLATNESS: f64 = 0.1;

/// How far the fold may stray from the grain, in millimetres.
const FOLD_OFF: f64 = 0.1;

/// The parts to lay for a pattern on a cloth: along its cut lines, or along its stitching lines
/// where there are none.
///
/// * On cloth that is not folded, a piece cut on the fold is unfolded to the whole; a pair is two
///   parts, one face up and one face down.
/// * On folded cloth, a piece cut on the fold lies on it; a pair is one part, cut through both
///   layers, which may lie face up or down. A piece cut once would waste the second layer: it is
///   cut from a stretch opened out after the folded one ([`LayPart::opened`]).
/// * Unless the cloth is one-way, each may be turned end to end.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::lay::{Cloth, parts};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let open = parts(&pattern, None, &Cloth::new(1400.0)?)?;
/// let folded = parts(&pattern, None, &Cloth::new(1400.0)?.folded())?;
/// let area = |parts: &[blockwright::lay::LayPart]| parts.iter().map(|p| p.cloth_area()).sum::<f64>();
/// assert!((area(&open) - area(&folded)).abs() < 1.0);
/// # Ok(()) }
/// ```
///
/// # Errors
/// When a piece cut on the fold has no straight fold on the grain.
pub fn parts(
    pattern: &Pattern,
    cut: Option<&CutLines>,
    cloth: &Cloth,
) -> Result<Vec<LayPart>, LayError> {
    let mut parts = Vec::new();
    for piece in pattern.pieces() {
        let line = cut.and_then(|lines| lines.of(piece.name()));
        parts.extend(of_piece(piece, line, cloth)?);
    }
    Ok(parts)
}

/// Turns a piece onto the cloth: its grain along x with the upper end toward larger x, what lies
/// to its right toward larger y, and its fold, if any, on y = 0.
struct Frame {
    origin: Point,
    up: Vec2,
}

impl Frame {
    fn lay(&self, p: Point) -> Point {
        let d = p - self.origin;
        Point::new(d.dot(self.up), d.dot(perpendicular(self.up)))
    }
}

fn of_piece(piece: &Piece, line: Option<&Curve>, cloth: &Cloth) -> Result<Vec<LayPart>, LayError> {
    let [low, high] = piece.grain();
    let fold = match piece.cut() {
        Cut::Fold => Some(fold_of(piece)?),
        _ => None,
    };
    let frame = Frame {
        origin: fold.map_or(low, |(from, _)| from),
        up: (high - low).normalize(),
    };
    if let Some((_, to)) = fold
        && frame.lay(to).y.abs() > FOLD_OFF
    {
        return Err(LayError::Fold {
            piece: piece.name().to_owned(),
            problem: "its fold is not straight on the grain",
        });
    }
    let outline: Vec<Point> = match line {
        Some(line) => flat(std::iter::once(line)),
        None => flat(piece.outline().edges().iter().map(|edge| edge.curve())),
    }
    .into_iter()
    .map(|p| frame.lay(p))
    .collect();
    let grain = [frame.lay(low), frame.lay(high)];
    let part = |outline: Vec<Point>, words: &str, poses: Vec<Pose>, layers: u8| {
        Ok::<LayPart, LayError>(LayPart {
            words: words.to_owned(),
            poses,
            layers,
            grain,
            ..LayPart::new(piece.name(), CutShape::new(outline)?)
        })
    };
    let (up, down) = (false, true);
    Ok(match (piece.cut(), cloth.is_folded()) {
        (Cut::Fold, false) => {
            let whole = unfolded(piece.name(), &outline)?;
            let mut part = part(whole, "cut 1, unfolded", ways(cloth, &[up]), 1)?;
            let ends = part.shape.points().iter().filter(|p| p.y == 0.0);
            let ends: Vec<f64> = ends.map(|p| p.x).collect();
            part.centre = ends
                .iter()
                .copied()
                .reduce(f64::min)
                .zip(ends.iter().copied().reduce(f64::max))
                .map(|(from, to)| [Point::new(from, 0.0), Point::new(to, 0.0)]);
            vec![part]
        }
        (Cut::Fold, true) => {
            // What lies to the other side of the fold comes there face down; turned end to end
            // it changes sides, so that it lies face down as well, or face up again.
            let right = CutShape::new(outline.clone())?.bounds().center().y > 0.0;
            let poses = ways(cloth, &[up, down])
                .into_iter()
                .filter(|pose| (pose.turned != pose.face_down) != right)
                .collect();
            vec![part(on_fold(outline), "cut 1 on the fold", poses, 2)?.on_fold()]
        }
        (Cut::Pair, false) => vec![
            part(outline.clone(), "cut 1 of 2", ways(cloth, &[up]), 1)?,
            part(outline, "cut 1 of 2", ways(cloth, &[down]), 1)?,
        ],
        (Cut::Pair, true) => {
            let words = "cut 2, both layers";
            vec![part(outline, words, ways(cloth, &[up, down]), 2)?]
        }
        (Cut::Single | Cut::SingleFaceDown, folded) => {
            let face = piece.cut() == Cut::SingleFaceDown;
            let mut single = part(outline, "cut 1", ways(cloth, &[face]), 1)?;
            single.opened = folded;
            vec![single]
        }
    })
}

/// The poses of those faces: as drawn, and turned end to end unless the cloth is one-way.
fn ways(cloth: &Cloth, faces: &[bool]) -> Vec<Pose> {
    let turns: &[bool] = if cloth.is_one_way() {
        &[false]
    } else {
        &[false, true]
    };
    let poses = turns.iter().flat_map(|&turned| {
        faces
            .iter()
            .map(move |&face_down| Pose { turned, face_down })
    });
    poses.collect()
}

/// The outline with what strays from the fold by a rounding put on it.
fn on_fold(mut outline: Vec<Point>) -> Vec<Point> {
    for p in &mut outline {
        if p.y.abs() < FOLD_OFF {
            p.y = 0.0;
        }
    }
    outline
}

fn fold_of(piece: &Piece) -> Result<(Point, Point), LayError> {
    let mut edges = piece.outline().edges().iter();
    let fold = edges.find(|edge| edge.role() == EdgeRole::Fold);
    let ends = fold.map(|edge| (edge.curve().start(), edge.curve().end()));
    ends.ok_or_else(|| LayError::Fold {
        piece: piece.name().to_owned(),
        problem: "no edge of it is a fold",
    })
}

/// The corners of straight edges along closed curves.
fn flat<'a>(curves: impl Iterator<Item = &'a Curve>) -> Vec<Point> {
    let mut points: Vec<Point> = Vec::new();
    for curve in curves {
        kurbo::flatten(curve.to_path(), FLATNESS, |el| {
            if let PathEl::MoveTo(p) | PathEl::LineTo(p) = el {
                // A shorter edge than the flatness says nothing.
                if points
                    .last()
                    .is_none_or(|last| last.distance(p) > FLATNESS / 10.0)
                {
                    points.push(p);
                }
            }
        });
    }
    while let [first, .., last] = points.as_slice()
        && first.distance(*last) <= FLATNESS / 10.0
    {
        points.pop();
    }
    points
}
