//! Names of what belongs to one side of the body.

use super::{BodySide, PieceError};

/// Makes sure that what belongs to one side ends in that side's word, so that names stay unique
/// and readable.
pub(super) fn ends_in_side(
    kind: &'static str,
    name: &str,
    side: Option<BodySide>,
) -> Result<(), PieceError> {
    match side {
        Some(side) if side.base_of(name).len() == name.len() => Err(PieceError::SideNotNamed {
            kind,
            name: name.to_owned(),
            side,
        }),
        _ => Ok(()),
    }
}
