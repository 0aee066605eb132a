//! One unknown, one condition: roots, and curves bent to a wanted length.

use super::{Curve, GeometryError, tolerance};

/// The value between `low` and `high` at which `miss` is zero, to [`tolerance::SOLVE`].
///
/// `what` names the unknown for the error. The function must change sign between the bounds.
///
/// ```
/// use blockwright::geometry::root;
/// let r = root("side of a square of 2", 0.0, 2.0, |x| x * x - 2.0)?;
/// assert!((r - 2f64.sqrt()).abs() < 1e-6);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// [`GeometryError::NoSolution`] with the miss at both bounds when there is no change of sign;
/// [`GeometryError::Undefined`] where the function answers with what is not a finite number.
pub fn root(
    what: &'static str,
    low: f64,
    high: f64,
    miss: impl FnMut(f64) -> f64,
) -> Result<f64, GeometryError> {
    let mut miss = miss;
    let mut miss = |at: f64| match miss(at) {
        missed if missed.is_finite() => Ok(missed),
        _ => Err(GeometryError::Undefined { what, at }),
    };
    let (at_low, at_high) = (miss(low)?, miss(high)?);
    if at_low == 0.0 {
        return Ok(low);
    }
    if at_high == 0.0 {
        return Ok(high);
    }
    if (at_low < 0.0) == (at_high < 0.0) {
        return Err(GeometryError::NoSolution {
            what,
            low,
            high,
            miss_low: at_low,
            miss_high: at_high,
        });
    }
    illinois(low, high, at_low, at_high, miss)
}

/// Regula falsi with the Illinois rule, falling back on halving: never leaves the bracket.
fn illinois(
    low: f64,
    high: f64,
    at_low: f64,
    at_high: f64,
    mut miss: impl FnMut(f64) -> Result<f64, GeometryError>,
) -> Result<f64, GeometryError> {
    let (mut a, mut b, mut fa, mut fb) = (low, high, at_low, at_high);
    // Both the bracket and the miss are driven well under the tolerance: a solved length
    // is compared against another solved length.
    let close = tolerance::SOLVE * 1e-3;
    let mut kept = 0i8;
    for step in 0..200 {
        let secant = (fa * b - fb * a) / (fa - fb);
        let inside = secant > a.min(b) && secant < a.max(b);
        let x = if inside && step % 8 != 7 {
            secant
        } else {
            0.5 * (a + b)
        };
        let fx = miss(x)?;
        if fx.abs() <= close || (b - a).abs() <= close {
            return Ok(x);
        }
        if (fx < 0.0) == (fa < 0.0) {
            a = x;
            fa = fx;
            if kept == 1 {
                fb *= 0.5;
            }
            kept = 1;
        } else {
            b = x;
            fb = fx;
            if kept == -1 {
                fa *= 0.5;
            }
            kept = -1;
        }
    }
    Ok(0.5 * (a + b))
}

/// The curve of a family that has the wanted length.
///
/// `family` gives a curve for every parameter from `low` to `high`.
///
/// ```
/// use blockwright::geometry::{bend_to_length, Curve, Point, Vec2};
/// let bow = |h: f64| Curve::hermite(Point::ORIGIN, Vec2::new(30.0, h), Point::new(100.0, 0.0), Vec2::new(30.0, -h));
/// let (curve, _) = bend_to_length("height of the bow", 110.0, 0.0, 100.0, bow)?;
/// assert!((curve.length() - 110.0).abs() < 1e-6);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When no parameter gives the length, or the family refuses one.
pub fn bend_to_length(
    what: &'static str,
    length: f64,
    low: f64,
    high: f64,
    family: impl Fn(f64) -> Result<Curve, GeometryError>,
) -> Result<(Curve, f64), GeometryError> {
    let found = root(what, low, high, |x| {
        family(x).map_or(f64::NAN, |c| c.length() - length)
    })?;
    Ok((family(found)?, found))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_a_flat_root_and_refuses_none() {
        let x = root("x", -1.0, 3.0, |x| (x - 1.0).powi(3)).unwrap();
        assert!((x - 1.0).abs() < 1e-2);
        assert!(matches!(
            root("x", 0.0, 1.0, |_| 1.0),
            Err(GeometryError::NoSolution { .. })
        ));
        let nowhere = |x: f64| if x > 0.4 { f64::NAN } else { -1.0 };
        assert_eq!(
            root("x", 0.0, 1.0, nowhere),
            Err(GeometryError::Undefined { what: "x", at: 1.0 })
        );
        let gap = |x: f64| {
            if x > 0.2 && x < 0.8 {
                f64::NAN
            } else {
                x - 0.5
            }
        };
        assert!(matches!(
            root("x", 0.0, 1.0, gap),
            Err(GeometryError::Undefined { .. })
        ));
    }

    #[test]
    fn stays_cheap_on_a_smooth_function() {
        let mut calls = 0;
        root("x", 0.0, 10.0, |x| {
            calls += 1;
            (x * 0.3).exp() - 4.0
        })
        .unwrap();
        assert!(calls < 16, "{calls}");
    }
}
