//! One piece in one size: what is in its block.

use super::boundary::Boundary;
use super::error::DxfError;
use super::groups::Groups;
use super::layer::Layer;
use super::notches::notches;
use super::style::SizedPattern;
use super::view::View;
use super::words::{annotation, piece_texts};
use crate::geometry::{Curve, Point};
use crate::piece::{Apexes, Dart, EdgeRole, Piece};
use kurbo::Rect;

/// Height of the texts, in millimetres.
const LETTERS: f64 = 4.0;

/// From one line of text to the next, in millimetres.
const LINE: f64 = 1.6 * LETTERS;

/// A piece in the making: its block's content and the room it takes.
#[derive(Debug)]
pub(super) struct PieceBlock {
    pub(super) content: Groups,
    pub(super) bounds: Rect,
}

impl PieceBlock {
    /// The block of a piece of that pattern.
    ///
    /// # Errors
    /// When a coordinate is not finite.
    pub(super) fn new(
        piece: &Piece,
        sized: &SizedPattern<'_>,
        title: &str,
    ) -> Result<Self, DxfError> {
        check(piece)?;
        let cut = sized.cut.and_then(|cut| cut.of(piece.name()));
        let view = View::of(piece);
        let boundary = Boundary::of(piece, cut, view);
        let bounds = boundary.bounds();
        let mut out = Groups::default();
        out.polyline(Layer::Boundary, &boundary.points(), true);
        for vertex in &boundary.vertices {
            let layer = if vertex.turn {
                Layer::TurnPoints
            } else {
                Layer::CurvePoints
            };
            out.point(layer, vertex.at);
        }
        for notch in notches(piece, cut) {
            let degrees = view.degrees(notch.inward);
            out.notch(Layer::Notches, view.point(notch.at), degrees, notch.depth);
        }
        for fold in boundary.mirror_lines(piece, view) {
            out.line(Layer::MirrorLine, fold);
        }
        out.line(Layer::GrainLine, piece.grain().map(|p| view.point(p)));
        for dart in piece.darts() {
            out.polyline(Layer::InternalLines, &view.points(&legs(dart)), false);
        }
        for line in piece.lines() {
            let points = view.points(&chain(&line.curve));
            out.polyline(Layer::InternalLines, &points, false);
        }
        for hole in piece.drill_points() {
            out.point(Layer::DrillHoles, view.point(hole.at));
        }
        if cut.is_some() {
            let edges = piece.outline().edges().iter();
            for edge in edges.filter(|edge| edge.role() != EdgeRole::Fold) {
                out.polyline(Layer::SewLines, &view.points(&chain(edge.curve())), false);
            }
        }
        let mut at = Point::new(
            bounds.x0 + 0.2 * bounds.width(),
            bounds.y0 + 0.6 * bounds.height(),
        );
        let texts = piece_texts(piece, sized).into_iter();
        let texts = texts.map(|text| (Layer::Boundary, text));
        let people = annotation(piece, sized, title).into_iter();
        for (layer, text) in texts.chain(people.map(|text| (Layer::Annotation, text))) {
            out.text(layer, at, LETTERS, &text);
            at.y -= LINE;
        }
        for line in piece.lines() {
            let mut at = view.point(line.curve.start().midpoint(line.curve.end()));
            at.y += LETTERS / 2.0;
            out.text(
                Layer::Annotation,
                at,
                LETTERS,
                &format!("{} line", line.name),
            );
        }
        Ok(Self {
            content: out,
            bounds,
        })
    }
}

/// That everything can be written: curves are finite by their own guarantee.
fn check(piece: &Piece) -> Result<(), DxfError> {
    let finite = |what: &dyn Fn() -> String, points: &[Point]| {
        if points.iter().all(|p| p.is_finite()) {
            return Ok(());
        }
        Err(DxfError::NotFinite {
            piece: piece.name().to_owned(),
            what: what(),
        })
    };
    finite(&|| "grain line".to_owned(), &piece.grain())?;
    for dart in piece.darts() {
        finite(&|| format!("{} dart", dart.name), &legs(dart))?;
    }
    for hole in piece.drill_points() {
        finite(&|| format!("drill point {}", hole.name), &[hole.at])?;
    }
    Ok(())
}

/// The legs of a dart in one line: through the apex, or round a dart inside the piece.
fn legs(dart: &Dart) -> Vec<Point> {
    let [first, second] = dart.legs;
    match dart.apexes {
        Apexes::One(apex) => vec![first, apex, second],
        Apexes::Two(upper, lower) => vec![upper, first, lower, second, upper],
    }
}

/// A curve as chords, from its start.
fn chain(curve: &Curve) -> Vec<Point> {
    let mut points = vec![curve.start()];
    points.extend(curve.chords().concat());
    points
}
