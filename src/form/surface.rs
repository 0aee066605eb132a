//! The surface of a form as rings.

use super::point::Point3;
use serde::Serialize;

/// A closed ring round a form.
///
/// # Guarantees
/// The first point is the middle of the back; the way goes over the wearer's left side, the middle of
/// the front and her right side; the first point is not repeated. All rings of a surface have equally
/// many points, a multiple of four, at equal distances along each half, so that points of one place in
/// their rings lie on a line down the body: a half of them is the middle of the front.
///
/// ```
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let waist = Form::of(&body)?.ring(0.0, 96);
/// let next = waist.points.iter().cycle().skip(1);
/// let girth: f64 = waist.points.iter().zip(next).map(|(a, b)| a.distance(*b)).sum();
/// assert!((girth - 760.0).abs() < 2.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ring {
    /// Height above the waist in mm, of a body that does not lean; a ring of one that leans is tilted.
    pub height: f64,
    /// The points.
    pub points: Vec<Point3>,
}

/// The surface of a form, as rings from the lowest up.
///
/// ```
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let surface = Form::of(&body)?.surface(20.0);
/// let count = surface.rings[0].points.len();
/// assert!(count % 4 == 0 && surface.rings.iter().all(|ring| ring.points.len() == count));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Surface {
    /// The rings, from the knee to above the nape.
    pub rings: Vec<Ring>,
}

/// Points at equal distances along a line, both ends among them: `(x, z)`.
pub(super) fn spread_along(line: &[(f64, f64)], count: u32) -> Vec<(f64, f64)> {
    let mut at = 0.0;
    let mut stations = vec![0.0];
    for (a, b) in line.iter().zip(line.iter().skip(1)) {
        at += step(*a, *b);
        stations.push(at);
    }
    (0..=count)
        .map(|place| place_at(line, &stations, at * f64::from(place) / f64::from(count)))
        .collect()
}

/// The point of a line at a distance along it, by the stations of its points.
fn place_at(line: &[(f64, f64)], stations: &[f64], along: f64) -> (f64, f64) {
    let after = stations.partition_point(|station| *station <= along);
    let get = |place: usize| Some((*line.get(place)?, *stations.get(place)?));
    match (after.checked_sub(1).and_then(get), get(after)) {
        (Some((a, from)), Some((b, to))) if to > from => {
            let t = (along - from) / (to - from);
            (a.0 + t * (b.0 - a.0), a.1 + t * (b.1 - a.1))
        }
        (Some((a, _)), _) => a,
        (None, Some((b, _))) => b,
        (None, None) => (0.0, 0.0),
    }
}

/// The point of a line at a length along it, in mm from its start; its end where it is shorter.
pub(super) fn walk(line: &[(f64, f64)], along: f64) -> (f64, f64) {
    let mut left = along;
    let mut last = line.first().copied().unwrap_or_default();
    for &next in line.iter().skip(1) {
        let step = step(last, next);
        if step >= left && step > 0.0 {
            let t = left / step;
            return (
                last.0 + t * (next.0 - last.0),
                last.1 + t * (next.1 - last.1),
            );
        }
        left -= step;
        last = next;
    }
    last
}

fn step(a: (f64, f64), b: (f64, f64)) -> f64 {
    let (x, z) = (b.0 - a.0, b.1 - a.1);
    (x * x + z * z).sqrt()
}

impl Ring {
    /// All round it, in mm: the way over its points, not a taut tape.
    #[must_use]
    pub fn length(&self) -> f64 {
        let next = self.points.iter().cycle().skip(1);
        self.points
            .iter()
            .zip(next)
            .map(|(a, b)| a.distance(*b))
            .sum()
    }
}
