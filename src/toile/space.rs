//! Vectors of space, in millimetres.

/// A point or vector: to the wearer's left, up, to the front.
pub(super) type Space = [f64; 3];

pub(super) fn add(a: Space, b: Space) -> Space {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

pub(super) fn sub(a: Space, b: Space) -> Space {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

pub(super) fn scaled(a: Space, by: f64) -> Space {
    [a[0] * by, a[1] * by, a[2] * by]
}

pub(super) fn dot(a: Space, b: Space) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

pub(super) fn cross(a: Space, b: Space) -> Space {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

pub(super) fn length(a: Space) -> f64 {
    dot(a, a).sqrt()
}

/// The direction of a vector; none of a vector without length.
pub(super) fn direction(a: Space) -> Option<Space> {
    let long = length(a);
    (long > 1e-12).then(|| scaled(a, 1.0 / long))
}

/// Adds a multiple of `b` to `a`.
pub(super) fn add_to(a: &mut Space, by: f64, b: Space) {
    for (a, b) in a.iter_mut().zip(b) {
        *a += by * b;
    }
}

/// A value within bounds that do not cross; the least where it is no number.
pub(super) fn within(value: f64, least: f64, most: f64) -> f64 {
    value.max(least).min(most)
}
