//! One edge of a piece: its trade name, what becomes of it, its line.

use crate::geometry::{Curve, GeometryError, Point};
use serde::{Deserialize, Serialize};
use std::borrow::Cow;
use std::fmt;

/// What becomes of an edge when the piece is sewn.
///
/// ```
/// use blockwright::piece::EdgeRole;
/// assert_eq!(EdgeRole::Fold.name(), "fold");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "role"))]
#[serde(rename_all = "snake_case")]
pub enum EdgeRole {
    /// Sewn to another edge, or finished like one.
    Seam,
    /// Laid on the fold of the cloth: the piece is cut double from here.
    Fold,
    /// Turned up.
    Hem,
    /// Left open: faced, bound or closed by a fastening.
    Opening,
}

impl EdgeRole {
    /// The role's name in a pattern document.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Seam => "seam",
            Self::Fold => "fold",
            Self::Hem => "hem",
            Self::Opening => "opening",
        }
    }
}

impl fmt::Display for EdgeRole {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// The trade name of an edge, in snake case.
///
/// ```
/// use blockwright::piece::EdgeName;
/// assert_eq!(EdgeName::SIDE_SEAM.to_string(), "side_seam");
/// let own = EdgeName::new("yoke_seam");
/// assert_ne!(own, EdgeName::SIDE_SEAM);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct EdgeName(Cow<'static, str>);

impl EdgeName {
    /// Around the neck.
    pub const NECKLINE: Self = Self(Cow::Borrowed("neckline"));
    /// From the neck side point to the shoulder point.
    pub const SHOULDER: Self = Self(Cow::Borrowed("shoulder"));
    /// The armhole.
    pub const ARMSCYE: Self = Self(Cow::Borrowed("armscye"));
    /// From underarm to waist or hem.
    pub const SIDE_SEAM: Self = Self(Cow::Borrowed("side_seam"));
    /// The waist seam.
    pub const WAIST: Self = Self(Cow::Borrowed("waist"));
    /// The lower edge.
    pub const HEM: Self = Self(Cow::Borrowed("hem"));
    /// The top of the sleeve, sewn into the armscye.
    pub const SLEEVE_CAP: Self = Self(Cow::Borrowed("sleeve_cap"));
    /// The lower end of the sleeve.
    pub const WRIST: Self = Self(Cow::Borrowed("wrist"));
    /// The middle of the back.
    pub const CENTRE_BACK: Self = Self(Cow::Borrowed("centre_back"));
    /// The middle of the front.
    pub const CENTRE_FRONT: Self = Self(Cow::Borrowed("centre_front"));

    /// A name of one's own.
    #[must_use]
    pub fn new(name: impl Into<Cow<'static, str>>) -> Self {
        Self(name.into())
    }

    /// The name as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for EdgeName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// One edge of an outline.
///
/// ```
/// use blockwright::geometry::{Curve, Point};
/// use blockwright::piece::{Edge, EdgeName, EdgeRole};
/// let hem = Edge::new(EdgeName::HEM, EdgeRole::Hem, Curve::line(Point::new(250.0, 600.0), Point::new(0.0, 600.0))?);
/// assert_eq!(hem.curve().length(), 250.0);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Edge {
    name: EdgeName,
    role: EdgeRole,
    curve: Curve,
}

impl Edge {
    /// An edge along a curve.
    #[must_use]
    pub fn new(name: EdgeName, role: EdgeRole, curve: Curve) -> Self {
        Self { name, role, curve }
    }

    /// The trade name.
    #[must_use]
    pub fn name(&self) -> &EdgeName {
        &self.name
    }

    /// What becomes of the edge.
    #[must_use]
    pub fn role(&self) -> EdgeRole {
        self.role
    }

    /// The stitching line, in the outline's direction.
    #[must_use]
    pub fn curve(&self) -> &Curve {
        &self.curve
    }

    /// Where the edge starts and where it ends, in the outline's direction.
    ///
    /// ```
    /// # use blockwright::geometry::{Curve, Point};
    /// # use blockwright::piece::{Edge, EdgeName, EdgeRole};
    /// let hem = Curve::line(Point::new(250.0, 600.0), Point::new(0.0, 600.0))?;
    /// let hem = Edge::new(EdgeName::HEM, EdgeRole::Hem, hem);
    /// assert_eq!(hem.ends(), [Point::new(250.0, 600.0), Point::new(0.0, 600.0)]);
    /// assert_eq!(hem.length(), 250.0);
    /// assert_eq!(hem.point_at(100.0)?, Point::new(150.0, 600.0));
    /// assert_eq!(hem.to_polyline(0.1)?, hem.ends());
    /// # Ok::<(), blockwright::geometry::GeometryError>(())
    /// ```
    #[must_use]
    pub fn ends(&self) -> [Point; 2] {
        [self.curve.start(), self.curve.end()]
    }

    /// Length in millimetres along the mouths of darts that open on the edge; what is sewn is
    /// [`Piece::seam_length`](super::Piece::seam_length).
    #[must_use]
    pub fn length(&self) -> f64 {
        self.curve.length()
    }

    /// The point so many millimetres along the edge.
    ///
    /// # Errors
    /// When it lies before the start or past the end.
    pub fn point_at(&self, along: f64) -> Result<Point, GeometryError> {
        Ok(self.curve.point_at(along)?.0)
    }

    /// The edge as a chain of straight lines within a tolerance, in millimetres, of the edge: every
    /// corner and every end of a dart's leg is among its points.
    ///
    /// # Errors
    /// When the tolerance is below a micron or no number.
    pub fn to_polyline(&self, tolerance: f64) -> Result<Vec<Point>, GeometryError> {
        self.curve.to_polyline(tolerance)
    }
}
