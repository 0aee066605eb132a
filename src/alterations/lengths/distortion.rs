//! The mesh and its solver, or where the crate was built without them, a refusal that says so.

use super::stretch::{Distortion, Swing};
use crate::alterations::AlterationError;
use crate::piece::Piece;

/// Triangles along the centre back from waist to nape: enough that twice as many move the
/// shoulder point by less than a fiftieth of the amount, few enough to solve in milliseconds.
#[cfg(feature = "least-distortion")]
const ROWS: f64 = 15.0;

/// The back of that piece above its waist, its nape lowered by the amount.
#[cfg(feature = "least-distortion")]
pub(in crate::alterations) fn distortion(
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
pub(in crate::alterations) fn distortion(
    _: &Piece,
    _: f64,
    _: Swing,
) -> Result<Distortion, AlterationError> {
    Err(AlterationError::NotBuilt {
        what: "the least-distortion method",
        feature: "least-distortion",
        instead: "hinge: shared, which comes near it",
    })
}
