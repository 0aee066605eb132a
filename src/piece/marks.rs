//! What is marked on a piece besides its outline.

use super::EdgeName;
use crate::geometry::{Curve, Point};
use serde::{Deserialize, Serialize};

/// How a piece is cut.
///
/// ```
/// use blockwright::piece::Cut;
/// assert_eq!(Cut::Fold.halves(), 2.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Cut {
    /// Once, its fold edge on the fold of the cloth.
    Fold,
    /// Twice, the second time mirrored.
    Pair,
    /// Once, for one side of the body only.
    Single,
    /// Once with the pattern face down, for the other side of the body only.
    SingleFaceDown,
}

impl Cut {
    /// The name in a pattern document.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Fold => "fold",
            Self::Pair => "pair",
            Self::Single | Self::SingleFaceDown => "single",
        }
    }

    /// How the piece is cut, as it is written on it and in lists.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Fold => "cut 1 on the fold",
            Self::Pair => "cut 2, a pair",
            Self::Single => "cut 1, pattern face up",
            Self::SingleFaceDown => "cut 1, pattern face down",
        }
    }

    /// How many times the drawn shape is there in the garment.
    #[must_use]
    pub fn halves(self) -> f64 {
        match self {
            Self::Fold | Self::Pair => 2.0,
            Self::Single | Self::SingleFaceDown => 1.0,
        }
    }
}

/// Whether a notch is cut once or twice.
///
/// ```
/// use blockwright::piece::NotchKind;
/// assert_ne!(NotchKind::Single, NotchKind::Double);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "notch_kind"))]
#[serde(rename_all = "snake_case")]
pub enum NotchKind {
    /// One cut: by common practice the front.
    Single,
    /// Two cuts side by side: by common practice the back.
    Double,
}

/// Distance between the two cuts of a double notch, in millimetres: 6 to 8 mm (value from memory).
const NOTCH_APART: f64 = 6.0;

/// A mark where seams must meet.
///
/// ```
/// use blockwright::piece::{EdgeName, Notch, NotchKind};
/// let notch = Notch { name: "hip".into(), edge: EdgeName::SIDE_SEAM, at: 215.0, kind: NotchKind::Single };
/// assert_eq!(notch.at, 215.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Notch {
    /// Notches of one name on the two sides of a seam meet.
    pub name: String,
    /// The edge it is on.
    pub edge: EdgeName,
    /// Distance from the start of the edge, along the edge with darts open, in millimetres.
    pub at: f64,
    /// Cut once or twice.
    pub kind: NotchKind,
}

impl Notch {
    /// Where its cuts are along the edge, in millimetres: one, or two side by side.
    ///
    /// ```
    /// use blockwright::piece::{EdgeName, Notch, NotchKind};
    /// let notch = Notch { name: "scye".into(), edge: EdgeName::ARMSCYE, at: 80.0, kind: NotchKind::Double };
    /// assert_eq!(notch.cuts(), [77.0, 83.0]);
    /// ```
    #[must_use]
    pub fn cuts(&self) -> Vec<f64> {
        match self.kind {
            NotchKind::Single => vec![self.at],
            NotchKind::Double => vec![self.at - NOTCH_APART / 2.0, self.at + NOTCH_APART / 2.0],
        }
    }
}

/// A hole drilled or marked through both layers.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::piece::DrillPoint;
/// let hole = DrillPoint { name: "bust dart".into(), at: Point::new(120.0, 250.0) };
/// assert_eq!(hole.at.x, 120.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct DrillPoint {
    /// What it marks.
    pub name: String,
    /// Where it is.
    pub at: Point,
}

/// A point of a piece that has a meaning on the body, and a name for it.
///
/// Names are in snake case and the same on every pattern: `bust_point` is the fullest point of the
/// bust. The point goes wherever the paper around it goes; it is no mark for scissors or drill.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::piece::NamedPoint;
/// let bust = NamedPoint { name: "bust_point".into(), at: Point::new(92.0, 268.0) };
/// assert_eq!(bust.at.x, 92.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct NamedPoint {
    /// Its name, different from those of the piece's other points.
    pub name: String,
    /// Where it is, in millimetres.
    pub at: Point,
}

/// A line across the piece that lies level on the body: underarm, bust, waist, hip.
///
/// ```
/// use blockwright::geometry::{Curve, Point};
/// use blockwright::piece::BalanceLine;
/// let hip = BalanceLine { name: "hip".into(), curve: Curve::line(Point::new(0.0, 210.0), Point::new(255.0, 210.0))? };
/// assert_eq!(hip.curve.length(), 255.0);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct BalanceLine {
    /// Name, equal on all pieces that carry the same level.
    pub name: String,
    /// The line, from the fold toward the side seam.
    pub curve: Curve,
}
