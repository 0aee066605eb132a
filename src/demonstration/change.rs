//! Which pieces an alteration changed.

use super::rings::{distance, length, point_along, steps};
use super::truing::FOLLOWED;
use crate::geometry::{Point, counted};
use crate::piece::{Pattern, Piece};

/// A piece before, and what was made of it.
pub(super) struct Changed<'a> {
    pub before: &'a Piece,
    pub after: Vec<&'a Piece>,
}

/// A piece that moved by less is as it was, in millimetres.
const SAME: f64 = 0.05;

/// How many places of an edge are compared.
const PLACES: f64 = 12.0;

/// The pieces that an alteration changed. A half that became unlike the other is compared with the
/// whole from which it was made.
pub(super) fn changed<'a>(before: &'a Pattern, after: &'a Pattern) -> Vec<Changed<'a>> {
    let mut found: Vec<Changed<'a>> = Vec::new();
    for piece in after.pieces() {
        let Some(old) = made_from(before, piece) else {
            continue;
        };
        // Of a piece divided by a seam both parts belong to one; halves of the body do not.
        let divided = piece.base_name() != old.base_name();
        let own = |c: &&mut Changed<'_>| {
            divided
                && std::ptr::eq(c.before, old)
                && c.after.iter().all(|other| other.side() == piece.side())
        };
        match found.iter_mut().find(own) {
            Some(one) => one.after.push(piece),
            None => found.push(Changed {
                before: old,
                after: vec![piece],
            }),
        }
    }
    found.retain(|c| !matches!(c.after.as_slice(), [one] if stays(c.before, one)));
    found
}

/// The piece from which another was made: of its name, or of the name that it begins with.
fn made_from<'a>(before: &'a Pattern, piece: &Piece) -> Option<&'a Piece> {
    let sided = |old: &&Piece| old.side().is_none() || old.side() == piece.side();
    let mut pieces = before.pieces().iter();
    let same = pieces.find(|old| old.base_name() == piece.base_name() && sided(old));
    let begins = |old: &&Piece| {
        let rest = piece.base_name().strip_prefix(old.base_name());
        rest.is_some_and(|rest| rest.starts_with(' '))
    };
    same.or_else(|| before.pieces().iter().filter(sided).find(begins))
}

fn stays(old: &Piece, new: &Piece) -> bool {
    let runs = |piece: &Piece| -> Vec<Vec<Point>> {
        let edges = piece.outline().edges().iter();
        let mut runs: Vec<Vec<Point>> = edges
            .filter_map(|e| e.curve().to_polyline(FOLLOWED).ok())
            .collect();
        runs.extend(piece.darts().iter().map(crate::piece::Dart::to_polyline));
        runs.extend(piece.points().iter().map(|point| vec![point.at, point.at]));
        runs
    };
    let (old, new) = (runs(old), runs(new));
    let near = |(a, b): (&Vec<Point>, &Vec<Point>)| {
        let long = length(a);
        let places = (0..=counted(PLACES)).filter_map(|k| {
            let at = point_along(a, long * k as f64 / PLACES);
            at.map(|(p, _)| p).or(a.first().copied())
        });
        let mut places = places;
        places.all(|p| distance(steps(b), p) < SAME)
    };
    old.len() == new.len() && old.iter().zip(&new).all(near)
}
