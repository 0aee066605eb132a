//! What slows down before a bound and never reaches it, so that the way back is the way there.

use crate::geometry::elementary::{exp, ln};

/// The room that is left before a bound when a room is changed by an amount.
///
/// While more than `near` is left, the room changes by the amount. A room that would get smaller
/// slows down and never comes to nothing; widened again by the same amount it is what it was,
/// whatever lay between. No room at all is changed as it is.
///
/// A clamp in its place would forget how far something was asked to go: an amount and its opposite
/// would not lead back to the start.
pub(super) fn slowed(room: f64, by: f64, near: f64) -> f64 {
    if room <= 0.0 {
        return room + by;
    }
    let free = if room >= near {
        room
    } else {
        near * (1.0 + ln(room / near))
    };
    let moved = free + by;
    if moved >= near {
        moved
    } else {
        near * exp(moved / near - 1.0)
    }
}
