//! How long a taut tape is.

/// Length of a tape drawn taut over points of a profile: along, and outward from the body. It starts
/// and ends at the first and last point, and lies on the outer side.
pub(super) fn taut(points: &[(f64, f64)]) -> f64 {
    let touched = hull(points);
    let pairs = touched.iter().zip(touched.iter().skip(1));
    pairs.map(|(a, b)| distance(*a, *b)).sum()
}

/// The places a taut tape touches.
pub(super) fn hull(points: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut out: Vec<(f64, f64)> = Vec::with_capacity(points.len());
    for &point in points {
        while let [.., a, b] = out.as_slice() {
            let turn = (b.0 - a.0) * (point.1 - a.1) - (b.1 - a.1) * (point.0 - a.0);
            if turn < 0.0 {
                break;
            }
            out.pop();
        }
        out.push(point);
    }
    out
}

fn distance(a: (f64, f64), b: (f64, f64)) -> f64 {
    let (x, y) = (b.0 - a.0, b.1 - a.1);
    (x * x + y * y).sqrt()
}

/// Girth of a ring that is the same left and right: a taut tape round half of it, twice. Points run
/// from the middle of the back to the middle of the front, `(out to the side, forward)`.
pub(super) fn girth(half: &[(f64, f64)]) -> f64 {
    let back = half.iter().map(|p| p.1).fold(f64::INFINITY, f64::min);
    let front = half.iter().map(|p| p.1).fold(f64::NEG_INFINITY, f64::max);
    let mut points = Vec::with_capacity(half.len() + 2);
    points.push((back, 0.0));
    points.extend(half.iter().map(|&(x, z)| (z, x)));
    points.push((front, 0.0));
    2.0 * taut(&points)
}
