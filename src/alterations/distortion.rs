//! How far a shortened back is pulled out of shape, and the shoulder that pulls it least.

use super::AlterationError;
use crate::piece::Piece;
use serde::{Deserialize, Serialize};

/// The smallest and the largest principal stretch over a back: 1 is the cloth as it was cut.
///
/// ```
/// use blockwright::alterations::Stretch;
/// let stretch = Stretch { smallest: 0.885, largest: 1.1 };
/// assert_eq!(stretch.to_string(), "0.885 to 1.100");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Stretch {
    /// The most shortened.
    pub smallest: f64,
    /// The most lengthened.
    pub largest: f64,
}

impl std::fmt::Display for Stretch {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:.3} to {:.3}", self.smallest, self.largest)
    }
}

/// How the shoulder may swing about the neck side point.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(not(feature = "least-distortion"), allow(dead_code))]
pub(super) enum Swing {
    /// To this slope, in radians.
    To(f64),
    /// To where it pulls the cloth least out of shape, by so much at most, in radians.
    Within(f64),
}

/// Triangles along the centre back from waist to nape: enough that twice as many move the
/// shoulder point by less than a fiftieth of the amount, few enough to solve in milliseconds.
#[cfg(feature = "least-distortion")]
const ROWS: f64 = 15.0;

/// A back at rest after its centre got shorter.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(not(feature = "least-distortion"), allow(dead_code))]
pub(super) struct Distortion {
    /// Slope of the shoulder, darts open, in radians.
    pub slope: f64,
    /// The stretch over the mesh.
    pub stretch: Stretch,
    /// What it costs: area times squared distance from a turn, in square millimetres.
    #[cfg_attr(not(test), allow(dead_code))]
    pub energy: f64,
}

/// The back of that piece above its waist, its nape lowered by the amount.
#[cfg(feature = "least-distortion")]
pub(super) fn distortion(
    piece: &Piece,
    amount: f64,
    swing: Swing,
) -> Result<Distortion, AlterationError> {
    let mesh =
        super::back_mesh::BackMesh::of(piece, ROWS).ok_or_else(|| AlterationError::Missing {
            what: format!("a {} that a mesh can fill down to the waist", piece.name()),
            advice: "choose hinge: plain or hinge: shared",
        })?;
    super::relaxation::relaxed(&mesh, amount, swing)
}

/// Without the feature there is no mesh.
#[cfg(not(feature = "least-distortion"))]
pub(super) fn distortion(_: &Piece, _: f64, _: Swing) -> Result<Distortion, AlterationError> {
    Err(AlterationError::NotBuilt {
        what: "the least-distortion method",
        feature: "least-distortion",
        instead: "hinge: shared, which comes near it",
    })
}
