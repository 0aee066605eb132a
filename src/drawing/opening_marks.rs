//! Where a zip or a slit stops.

use kurbo::{BezPath, Point};

use super::beside::write_beside;
use super::notch_marks::NOTCH;
use super::pens::{SLIT_DASHES, STOP};
use super::piece_layers::{PieceLayers, mark};
use super::room::Room;
use super::strokes::stroke;
use super::{Face, Pen, TextStyle};
use crate::geometry::{Curve, perpendicular, tolerance};
use crate::piece::{EdgeRole, Notch, Piece};

/// Half the length of the bar across the end of an opening, in millimetres.
const HALF_BAR: f64 = 4.0;
/// How far to either side of a bar its words may stand, in millimetres.
const NAME: f64 = 40.0;

/// Draws a bar across each end of a zip, and the slit from the edge to its end.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece, is_cut: bool) {
    for notch in piece.notches() {
        if let Some((bar, _)) = bar(piece, notch, is_cut) {
            mark(&mut out.marks, room, bar, Pen::solid(STOP));
        }
    }
    for slit in slits(piece) {
        let pen = Pen::solid(STOP).dashed(&SLIT_DASHES);
        mark(&mut out.marks, room, slit, pen);
    }
}

/// Names the ends of a zip; gives back what there was no room for.
pub(super) fn write(
    out: &mut PieceLayers,
    room: &mut Room,
    piece: &Piece,
    is_cut: bool,
) -> Vec<String> {
    let mut left = Vec::new();
    for notch in piece.notches() {
        let (Some((_, [at, inward])), Some(words)) = (bar(piece, notch, is_cut), words(notch))
        else {
            continue;
        };
        let style = TextStyle::new(Face::Regular, 3.2);
        let along = inward - at;
        let line = Curve::line(inward + along * 0.2, inward + along * (NAME / NOTCH)).ok();
        let lines: Vec<Curve> = line.into_iter().collect();
        match write_beside(room, &lines, words, style, 0.0) {
            Some(text) => out.words.push(text),
            None => left.push(words.to_owned()),
        }
    }
    left
}

/// What is said of the end of a zip.
fn words(notch: &Notch) -> Option<&'static str> {
    match notch.name.as_str() {
        "zip top" => Some("zip starts here"),
        "zip end" => Some("zip ends here"),
        _ => None,
    }
}

/// The bar across the end of a zip, and from where on the edge to where inside it the notch goes: there
/// the bar lies where the stitching line is cut along.
fn bar(piece: &Piece, notch: &Notch, is_cut: bool) -> Option<(BezPath, [Point; 2])> {
    words(notch)?;
    let edge = piece.outline().edge(&notch.edge)?;
    let (at, along) = edge.curve().point_at(notch.at).ok()?;
    let inside = at + perpendicular(along) * NOTCH;
    let middle = if is_cut { at } else { inside };
    let half = along * HALF_BAR;
    Some((stroke(&[middle - half, middle + half]), [at, inside]))
}

/// The slits that are cut into a piece: straight from the nearest hem or neckline to where they
/// end. Along a fold no line is drawn: it is cut open.
fn slits(piece: &Piece) -> impl Iterator<Item = BezPath> {
    let ends = piece.points().iter();
    ends.filter(|point| point.name.ends_with("slit_end"))
        .filter_map(|point| {
            let edges = piece.outline().edges();
            let folded = edges.iter().any(|edge| {
                let on = edge.curve().nearest(point.at).0 < tolerance::PRINT;
                edge.role() != EdgeRole::Hem && on
            });
            let from = edges.iter().filter(|edge| edge.role() == EdgeRole::Hem);
            let nearest = from
                .map(|edge| (edge.curve(), edge.curve().nearest(point.at)))
                .min_by(|a, b| a.1.0.total_cmp(&b.1.0))?;
            let (curve, (_, at)) = nearest;
            let from = curve.point_at(at).ok()?.0;
            (!folded).then(|| stroke(&[from, point.at]))
        })
}
