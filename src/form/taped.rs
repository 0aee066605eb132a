//! What a tape finds on a form.

use super::point::Point3;
use super::section::Turns;
use super::shape::Shape;
use super::tape::{girth, taut};
use crate::measurements::Measurement as M;

/// What a tape finds for a measurement, in mm; `None` for one that is not solved for. The nape's height
/// is above the waist.
pub(super) fn taped(shape: &Shape, of: M, turns: &Turns) -> Option<f64> {
    let levels = &shape.levels;
    let round = |y: f64| girth(&shape.half_ring(y, turns));
    Some(match of {
        M::BackWaistLength => centre_back(shape, levels.waist),
        M::ScyeDepth => centre_back(shape, levels.armpit),
        M::CentreFrontWaistLength => {
            let (from, to) = (levels.waist, levels.front_neck);
            upright::<41>(from, to, |y| shape.front_at(0.0, y))
        }
        M::NeckToBustPoint => neck_to_bust(shape),
        M::FrontWaistLength => {
            let (x, from, to) = (shape.bust_point, levels.waist, levels.bust);
            neck_to_bust(shape) + upright::<25>(from, to, |y| shape.front_at(x, y))
        }
        M::UpperChestGirth => round(levels.armpit),
        M::BustGirth => round(levels.bust),
        M::UnderbustGirth => round(levels.underbust),
        M::WaistGirth => round(levels.waist),
        M::HipGirth => round(levels.hip),
        M::NeckBaseGirth => 2.0 * length(&neck_ring(shape, turns)),
        M::NapeHeight => levels.nape,
        M::BackHollow => back_hollow(shape),
        M::NapePlumb => shape.back_at(levels.nape),
        M::WaistPlumb => shape.back_at(levels.waist),
        M::BustDepth => shape.front_at(shape.bust_point, levels.bust) - shape.back_at(levels.bust),
        M::SeatDepth => shape.front_at(0.0, levels.hip) - shape.back_at(levels.hip),
        _ => return None,
    })
}

fn centre_back(shape: &Shape, from: f64) -> f64 {
    upright::<41>(from, shape.levels.nape, |y| -shape.back_at(y))
}

/// A straight edge along the middle of the back touches shoulder blades and seat; how far the waist is
/// from it, level.
fn back_hollow(shape: &Shape) -> f64 {
    let (low, high) = (shape.levels.hip, 0.8 * shape.levels.nape);
    let points: [(f64, f64); 49] = profile(low, high, |y| -shape.back_at(y));
    let edge = super::tape::hull(&points);
    let over = edge.windows(2).find_map(|pair| match pair {
        [a, b] if a.0 <= 0.0 && b.0 > 0.0 => Some(a.1 - (b.1 - a.1) * a.0 / (b.0 - a.0)),
        _ => None,
    });
    over.map_or(0.0, |edge| edge + shape.back_at(0.0))
}

fn neck_to_bust(shape: &Shape) -> f64 {
    let levels = &shape.levels;
    let (dx, dy) = (
        shape.bust_point - shape.neck_half,
        levels.bust - levels.neck_side,
    );
    let span = (dx * dx + dy * dy).sqrt();
    let points: [(f64, f64); 33] = profile(0.0, 1.0, |t| {
        shape.front_at(shape.neck_half + t * dx, levels.neck_side + t * dy)
    });
    taut(&points.map(|(t, z)| (t * span, z)))
}

/// Half the base of the neck, from the nape over a neck side point to the front.
pub(super) fn neck_ring(shape: &Shape, turns: &Turns) -> Vec<Point3> {
    let levels = &shape.levels;
    let place = |sine: f64, cosine: f64, end: f64| {
        let y = levels.neck_side + (end - levels.neck_side) * cosine * cosine;
        (shape.neck_half * sine, y)
    };
    let behind = turns.to_side().map(|(sine, cosine)| {
        let (x, y) = place(sine, cosine, levels.nape);
        Point3::new(x, y, shape.rear_at(x, y))
    });
    let before = turns.to_side().rev().skip(1).map(|(sine, cosine)| {
        let (x, y) = place(sine, cosine, levels.front_neck);
        Point3::new(x, y, shape.front_at(x, y))
    });
    behind.chain(before).collect()
}

/// Length of a line through points.
pub(super) fn length(points: &[Point3]) -> f64 {
    let pairs = points.iter().zip(points.iter().skip(1));
    pairs.map(|(a, b)| a.distance(*b)).sum()
}

/// A tape drawn taut between two heights over a profile.
fn upright<const N: usize>(from: f64, to: f64, outward: impl Fn(f64) -> f64) -> f64 {
    taut(&profile::<N>(from, to, outward))
}

#[expect(clippy::cast_precision_loss, reason = "a few dozen points")]
fn profile<const N: usize>(from: f64, to: f64, outward: impl Fn(f64) -> f64) -> [(f64, f64); N] {
    std::array::from_fn(|step| {
        let at = from + (to - from) * step as f64 / (N - 1) as f64;
        (at, outward(at))
    })
}
