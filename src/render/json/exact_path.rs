//! A curve as SVG path data that gives the same curve again.

use super::fault::{Fault, short};
use crate::geometry::{Curve, GeometryError, Point};
use kurbo::{BezPath, PathEl};

/// Path data with as many digits as bring every number back.
pub(super) fn write(curve: &Curve) -> String {
    let mut data = String::new();
    for element in curve.to_path().elements() {
        let (letter, points): (char, &[Point]) = match element {
            PathEl::MoveTo(p) => ('M', &[*p]),
            PathEl::LineTo(p) => ('L', &[*p]),
            PathEl::QuadTo(a, p) => ('Q', &[*a, *p]),
            PathEl::CurveTo(a, b, p) => ('C', &[*a, *b, *p]),
            PathEl::ClosePath => ('Z', &[]),
        };
        data.push(letter);
        for (place, number) in points.iter().flat_map(|p| [p.x, p.y]).enumerate() {
            if place > 0 {
                data.push(' ');
            }
            data.push_str(&exact(number));
        }
    }
    data
}

/// The shortest text that is read as the same number, without a minus before zero.
fn exact(number: f64) -> String {
    // Tiny ones with an exponent: three hundred zeros would be no help to anybody.
    if number != 0.0 && number.abs() < 1e-9 {
        return format!("{number:e}");
    }
    format!("{}", number + 0.0)
}

/// Why a text is no path of a document.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum PathFault {
    Text(Fault),
    Curve(GeometryError),
}

impl From<Fault> for PathFault {
    fn from(fault: Fault) -> Self {
        Self::Text(fault)
    }
}

impl From<GeometryError> for PathFault {
    fn from(error: GeometryError) -> Self {
        Self::Curve(error)
    }
}

/// The curve of some path data: one chain of straight lines and Béziers in absolute coordinates.
///
/// # Errors
/// When the text is anything else.
pub(super) fn read(data: &str) -> Result<Curve, PathFault> {
    let fault = || {
        Fault::wrong(
            format!("`{}`", short(data)),
            "a path of one `M`, then `L`, `Q` or `C`, with their coordinates",
        )
    };
    let known = |c: char| c.is_ascii_digit() || "MLQC .,-+eE".contains(c);
    let (starts, moves) = (data.starts_with('M'), data.matches('M').count());
    if !starts || moves != 1 || !data.chars().all(known) {
        return Err(fault().into());
    }
    let path = BezPath::from_svg(data).map_err(|_| fault())?;
    Ok(Curve::new(path.segments().collect())?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_curve_comes_back_to_the_last_bit() {
        let (p, q) = (Point::new(0.1 + 0.2, -1e-13), Point::new(1.0 / 3.0, -0.0));
        let (r, s) = (Point::new(99_999.999_999_999, 5e-324), Point::new(2.5, 1e3));
        let first = Curve::line(p, q).unwrap();
        let second = Curve::cubic(q, r, s, Point::new(7.0, 1.0)).unwrap();
        let curve = first.then(&second).unwrap();
        let text = write(&curve);
        let again = read(&text).unwrap();
        assert_eq!(again, curve);
        assert_eq!(write(&again), text);
        assert!(!text.contains("-0 ") && !text.contains("-0C"), "{text}");
    }

    #[test]
    fn other_texts_are_refused() {
        for text in [
            "",
            "M0 0",
            "M0 0 10 10Z",
            "M0 0L1",
            "L0 0L1 1",
            "M0 0L1 1M2 2L3 3",
            "M0 0A5 5 0 0 1 9 9",
            "m0 0l1 1",
            "M0 0LNaN 1",
            "M0 0L1e999 1",
            "M0 0L2e5 1",
            "M0 0C1 1 2 2",
            "M0 0L1 1e",
            "M0 0L--1 1",
            "M0 0L1 1\u{661}",
        ] {
            assert!(read(text).is_err(), "{text}");
        }
    }
}
