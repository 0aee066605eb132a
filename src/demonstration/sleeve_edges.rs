//! The edges that only a sleeve has.

use crate::piece::EdgeName;

/// The underarm seam on the side of the back.
pub(super) fn underarm_back() -> EdgeName {
    EdgeName::new("underarm_back")
}

/// The underarm seam on the side of the front.
pub(super) fn underarm_front() -> EdgeName {
    EdgeName::new("underarm_front")
}
