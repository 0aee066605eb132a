//! Truing: lines redrawn after panels moved.

use crate::alterations::AlterationError;
use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, root};
pub(in crate::alterations) use crate::geometry::{blend_start, carried};
use crate::piece::{Dart, EdgeName, Piece, Pressed, shaped_mouth};
use kurbo::PathSeg;

/// A curve whose end is turned to another direction, its handles lengthened or shortened
/// together until it is as long as wanted.
///
/// ```
/// use blockwright::alterations::turned_end;
/// use blockwright::geometry::{Curve, Point, Vec2};
/// let neck = Curve::hermite(Point::ORIGIN, Vec2::new(35.0, 0.0), Point::new(70.0, -23.0), Vec2::new(4.0, -13.0))?;
/// let turned = turned_end(&neck, Vec2::new(2.0, -13.0), neck.length())?;
/// assert!((turned.length() - neck.length()).abs() < 1e-6);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When no such curve has that length.
pub fn turned_end(curve: &Curve, arrive: Vec2, length: f64) -> Result<Curve, GeometryError> {
    let [PathSeg::Cubic(c)] = curve.segments() else {
        return line_of_length(
            (curve.start(), curve.start_direction()),
            (curve.end(), arrive),
            length,
        );
    };
    super::one_way::turned(c, arrive, length)
}

/// One smooth line between two places and directions, of a wanted length.
///
/// ```
/// use blockwright::alterations::line_of_length;
/// use blockwright::geometry::{Point, Vec2};
/// let neck = line_of_length(
///     (Point::ORIGIN, Vec2::new(1.0, 0.0)),
///     (Point::new(70.0, -23.0), Vec2::new(0.3, -1.0)),
///     78.0,
/// )?;
/// assert!((neck.length() - 78.0).abs() < 1e-6);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When no line of that length bends evenly from one to the other.
pub fn line_of_length(
    (from, leave): (Point, Vec2),
    (to, arrive): (Point, Vec2),
    length: f64,
) -> Result<Curve, GeometryError> {
    let (leave, arrive) = (leave.normalize(), arrive.normalize());
    let chord = from.distance(to);
    let drawn =
        |share: f64| Curve::hermite(from, leave * (share * chord), to, arrive * (share * chord));
    let share = root("fullness of a line", 0.05, 1.4, |share| {
        drawn(share).map_or(f64::NAN, |c| c.length() - length)
    })?;
    drawn(share)
}

/// The line of an edge before a dart's first leg, its shaped mouth, and after its second leg,
/// once legs or apex have moved: the mouth is shaped anew.
///
/// `before` ends at the first leg, `after` starts at the second.
///
/// ```
/// use blockwright::alterations::{with_mouth, without_mouth};
/// use blockwright::draft::{Ease, Figure, Fit, bodice};
/// use blockwright::piece::EdgeName;
/// let pattern = bodice(&Figure::cylinder(900.0), &Ease::of(Fit::Regular))?;
/// let back = pattern.piece("back").ok_or("a bodice has a back")?;
/// let dart = back.dart("shoulder").ok_or("its shoulder has a dart")?;
/// let (before, after) = without_mouth(back, &EdgeName::SHOULDER)?;
/// let edge = with_mouth(&before, dart, &after)?;
/// assert_eq!((edge.start(), edge.end()), (before.start(), after.end()));
/// assert!(edge.length() > before.length() + after.length() + dart.intake() - 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the mouth cannot be shaped.
pub fn with_mouth(before: &Curve, dart: &Dart, after: &Curve) -> Result<Curve, GeometryError> {
    let beside = match dart.pressed {
        Pressed::TowardFirstLeg => before,
        Pressed::TowardSecondLeg => after,
    };
    let mouth = shaped_mouth(dart.apex(), dart.legs, beside, dart.pressed)?;
    before.clone().then(&mouth)?.then(after)
}

/// An edge of a piece without its dart's mouth: the part before the first leg, the part after
/// the second. For an edge with one dart.
///
/// ```
/// use blockwright::alterations::without_mouth;
/// use blockwright::draft::{Ease, Figure, Fit, bodice};
/// use blockwright::piece::EdgeName;
/// let pattern = bodice(&Figure::cylinder(900.0), &Ease::of(Fit::Regular))?;
/// let back = pattern.piece("back").ok_or("a bodice has a back")?;
/// let dart = back.dart("shoulder").ok_or("its shoulder has a dart")?;
/// let (before, after) = without_mouth(back, &EdgeName::SHOULDER)?;
/// assert!(before.end().distance(dart.legs[0]) < 1e-3);
/// assert!(after.start().distance(dart.legs[1]) < 1e-3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the edge does not carry that dart alone.
pub fn without_mouth(piece: &Piece, edge: &EdgeName) -> Result<(Curve, Curve), AlterationError> {
    let missing = || AlterationError::Missing {
        what: format!("one dart on the {edge} of the {}", piece.name()),
        advice: "this alteration works on an edge with one dart",
    };
    let on = piece.outline().edge(edge).ok_or_else(missing)?.curve();
    let mouths = piece.mouths(edge);
    let [(_, from, to)] = mouths.as_slice() else {
        return Err(missing());
    };
    Ok((on.part(0.0, *from)?, on.part(*to, on.length())?))
}

/// The motion that lays one pair of points on another equally far apart: a panel hinged at two
/// places.
///
/// ```
/// use blockwright::alterations::hinged;
/// use blockwright::geometry::Point;
/// let turn = hinged((Point::ORIGIN, Point::new(10.0, 0.0)), (Point::ORIGIN, Point::new(0.0, 10.0)));
/// assert!(turn.apply(Point::new(5.0, 0.0)).distance(Point::new(0.0, 5.0)) < 1e-12);
/// ```
#[must_use]
pub fn hinged(from: (Point, Point), to: (Point, Point)) -> Rigid {
    Rigid::lay(from.0, from.1 - from.0, to.0, to.1 - to.0)
}
