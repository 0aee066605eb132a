//! Edges that are sewn together.

use super::side::base_name;
use super::{BodySide, EdgeName};
use serde::{Deserialize, Serialize};

/// One edge of one piece.
///
/// ```
/// use blockwright::piece::{EdgeName, EdgeRef};
/// let edge = EdgeRef::new("back", EdgeName::SHOULDER);
/// assert_eq!(edge.to_string(), "back shoulder");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct EdgeRef {
    /// Name of the piece.
    pub piece: String,
    /// Name of the edge.
    pub edge: EdgeName,
    /// Whether the seam runs along the edge against its outline's direction.
    pub against: bool,
}

impl EdgeRef {
    /// That edge of that piece, in its outline's direction.
    #[must_use]
    pub fn new(piece: impl Into<String>, edge: EdgeName) -> Self {
        Self {
            piece: piece.into(),
            edge,
            against: false,
        }
    }

    /// That edge of that piece, against its outline's direction.
    #[must_use]
    pub fn against(piece: impl Into<String>, edge: EdgeName) -> Self {
        Self {
            against: true,
            ..Self::new(piece, edge)
        }
    }
}

impl std::fmt::Display for EdgeRef {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}", self.piece, self.edge)
    }
}

/// The side of a seam that is longer and eased in.
///
/// ```
/// use blockwright::piece::EaseOn;
/// assert_ne!(EaseOn::A, EaseOn::B);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "ease_on"))]
#[serde(rename_all = "snake_case")]
pub enum EaseOn {
    /// Side `a` is longer.
    A,
    /// Side `b` is longer.
    B,
}

/// Two runs of edges sewn to each other, once their darts are closed.
///
/// Both runs are listed in the order in which they are walked from the seam's start.
///
/// ```
/// use blockwright::piece::{EdgeName, EdgeRef, Seam};
/// let side = Seam::plain("side", EdgeRef::new("back", EdgeName::SIDE_SEAM), EdgeRef::new("front", EdgeName::SIDE_SEAM));
/// assert_eq!(side.ease, 0.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Seam {
    /// Name within the pattern.
    pub name: String,
    /// The side of the body it is on, where left and right are unlike; none where it is on both
    /// or joins them. The name then ends in the side's word: `shoulder left`.
    pub side: Option<BodySide>,
    /// One side, in order.
    pub a: Vec<EdgeRef>,
    /// The other side, in order.
    pub b: Vec<EdgeRef>,
    /// By how much one side is longer and eased in, in millimetres, never negative.
    pub ease: f64,
    /// Which side that is; none when the ease is zero.
    pub ease_on: Option<EaseOn>,
}

impl Seam {
    /// A seam of one edge to one edge without ease.
    #[must_use]
    pub fn plain(name: impl Into<String>, a: EdgeRef, b: EdgeRef) -> Self {
        Self {
            name: name.into(),
            side: None,
            a: vec![a],
            b: vec![b],
            ease: 0.0,
            ease_on: None,
        }
    }

    /// What the seam is called where both sides are alike: `shoulder` for `shoulder left`.
    #[must_use]
    pub fn base_name(&self) -> &str {
        base_name(&self.name, self.side)
    }
}
