//! A dart: two legs, one apex on an edge, or two apexes inside the piece.

use super::{DrillPoint, EdgeName};
use crate::geometry::{Point, Rigid, along, angle_between};
use serde::{Deserialize, Serialize};

/// Drill points lie 13 mm inside a dart's tip (Furrer, class handout *The Bodice Sloper*).
const DRILL_INSIDE: f64 = 13.0;

/// Where a dart ends.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::piece::Apexes;
/// let ends = Apexes::Two(Point::new(90.0, 230.0), Point::new(90.0, 520.0));
/// assert_eq!(ends.points().len(), 2);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Apexes {
    /// One apex: the dart opens on an edge.
    One(Point),
    /// Upper and lower apex: the dart lies inside the piece.
    Two(Point, Point),
}

impl Apexes {
    /// The apexes, the upper one first.
    #[must_use]
    pub fn points(&self) -> Vec<Point> {
        match *self {
            Self::One(a) => vec![a],
            Self::Two(a, b) => vec![a, b],
        }
    }
}

/// The side to which the fold of a dart is pressed.
///
/// ```
/// use blockwright::piece::Pressed;
/// assert_eq!(Pressed::TowardFirstLeg, Pressed::TowardFirstLeg);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "press"))]
#[serde(rename_all = "snake_case")]
pub enum Pressed {
    /// The fold lies on the side of the leg that the outline reaches first.
    TowardFirstLeg,
    /// The fold lies on the side of the leg that the outline reaches second.
    TowardSecondLeg,
}

impl Pressed {
    /// The other side.
    ///
    /// ```
    /// # use blockwright::piece::Pressed;
    /// assert_eq!(Pressed::TowardFirstLeg.other(), Pressed::TowardSecondLeg);
    /// ```
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::TowardFirstLeg => Self::TowardSecondLeg,
            Self::TowardSecondLeg => Self::TowardFirstLeg,
        }
    }
}

/// A dart.
///
/// For a dart on an edge the legs are ends in the outline's order; for one inside the piece
/// they are the two widest points, the one nearer the fold first.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::piece::{Apexes, Dart, EdgeName, Pressed};
/// let dart = Dart {
///     name: "waist".into(),
///     edge: Some(EdgeName::WAIST),
///     legs: [Point::new(100.0, 400.0), Point::new(70.0, 400.0)],
///     apexes: Apexes::One(Point::new(85.0, 250.0)),
///     pressed: Pressed::TowardSecondLeg,
/// };
/// assert_eq!(dart.intake(), 30.0);
/// assert!(dart.angle() > 0.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Dart {
    /// Name within the piece, `waist` or `bust` for example.
    pub name: String,
    /// The edge it opens on; none when it lies inside the piece.
    pub edge: Option<EdgeName>,
    /// Ends of the legs.
    pub legs: [Point; 2],
    /// Where the legs meet.
    pub apexes: Apexes,
    /// The side to which the fold is pressed.
    pub pressed: Pressed,
}

impl Dart {
    /// Distance between the ends of the legs, in millimetres.
    #[must_use]
    pub fn intake(&self) -> f64 {
        self.legs[0].distance(self.legs[1])
    }

    /// The first apex: the only one, or the upper of two.
    #[must_use]
    pub fn apex(&self) -> Point {
        match self.apexes {
            Apexes::One(a) | Apexes::Two(a, _) => a,
        }
    }

    /// Lengths of the first and the second leg in millimetres, to the first apex: sewn together,
    /// they are equal.
    ///
    /// ```
    /// # use blockwright::geometry::Point;
    /// # use blockwright::piece::{Apexes, Dart, EdgeName, Pressed};
    /// # let dart = Dart {
    /// #     name: "waist".into(),
    /// #     edge: Some(EdgeName::WAIST),
    /// #     legs: [Point::new(130.0, 400.0), Point::new(70.0, 400.0)],
    /// #     apexes: Apexes::One(Point::new(100.0, 360.0)),
    /// #     pressed: Pressed::TowardSecondLeg,
    /// # };
    /// assert_eq!(dart.leg_lengths(), [50.0, 50.0]);
    /// assert_eq!(dart.to_polyline(), [dart.legs[0], dart.apex(), dart.legs[1]]);
    /// ```
    #[must_use]
    pub fn leg_lengths(&self) -> [f64; 2] {
        self.legs.map(|leg| leg.distance(self.apex()))
    }

    /// The stitching line of the dart as a chain of points: leg, apex, leg for a dart on an edge; a
    /// closed ring from its upper apex for one inside the piece. Legs are straight, so that the chain
    /// holds to any tolerance.
    #[must_use]
    pub fn to_polyline(&self) -> Vec<Point> {
        let [first, second] = self.legs;
        match self.apexes {
            Apexes::One(apex) => vec![first, apex, second],
            Apexes::Two(upper, lower) => vec![upper, first, lower, second, upper],
        }
    }

    /// Angle between the legs at the first apex, in radians, never negative.
    #[must_use]
    pub fn angle(&self) -> f64 {
        let apex = self.apex();
        angle_between(self.legs[0] - apex, self.legs[1] - apex).abs()
    }

    /// The turn about the first apex that lays the second leg on the first: it closes the dart.
    #[must_use]
    pub fn closing(&self) -> Rigid {
        let apex = self.apex();
        Rigid::turn_about(
            apex,
            angle_between(self.legs[1] - apex, self.legs[0] - apex),
        )
    }

    /// Where the cloth is drilled or marked: inside every apex, short of it, so that the hole
    /// disappears in the sewn dart.
    pub fn drill_points(&self) -> impl Iterator<Item = DrillPoint> + '_ {
        let middle = self.legs[0].midpoint(self.legs[1]);
        self.apexes
            .points()
            .into_iter()
            .map(move |apex| DrillPoint {
                name: format!("{} dart", self.name),
                at: along(apex, middle, DRILL_INSIDE),
            })
    }
}
