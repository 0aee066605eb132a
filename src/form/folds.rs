//! The folds of the armpit.

use super::point::Point3;
use super::section::{STEPS, Turns};
use super::shape::Shape;
use super::surface::walk;

/// How high above the armpit its folds are measured, as a share of the way to the shoulder.
const HEIGHT: f64 = 0.2;

/// The folds of the armpit, before any lean.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Folds {
    pub(super) back: Point3,
    pub(super) front: Point3,
}

fn fold_level(shape: &Shape) -> f64 {
    let levels = &shape.levels;
    levels.armpit + HEIGHT * (levels.shoulder - levels.armpit)
}

/// Half a ring at the folds from the middle of the back or front to the side.
fn to_side(shape: &Shape, back: bool, turns: &Turns) -> Vec<(f64, f64)> {
    let ring = shape.half_ring(fold_level(shape), turns);
    let half = ring.len().div_ceil(2);
    if back {
        ring.into_iter().take(half).collect()
    } else {
        ring.into_iter().rev().take(half).collect()
    }
}

/// How far a fold is from the middle, in mm.
pub(super) fn fold(shape: &Shape, back: bool, reach: f64) -> Point3 {
    let line = to_side(shape, back, &Turns::quarter(4 * STEPS));
    let (x, z) = walk(&line, reach);
    Point3::new(x, fold_level(shape), z)
}

/// How much of a reach from the middle there is before the side.
pub(super) fn fold_reach(shape: &Shape, back: bool, reach: f64, turns: &Turns) -> f64 {
    let line = to_side(shape, back, turns);
    let pairs = line.iter().zip(line.iter().skip(1));
    let all: f64 = pairs
        .map(|(a, b)| ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt())
        .sum();
    reach.min(all)
}
