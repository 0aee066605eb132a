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
pub(in crate::alterations) fn slowed(room: f64, by: f64, near: f64) -> f64 {
    if room <= 0.0 {
        return room + by;
    }
    room_of(free_of(room, near) + by, near)
}

/// The same for what lies between two bounds, slowing down before both.
pub(in crate::alterations) fn slowed_between(
    value: f64,
    by: f64,
    (low, high): (f64, f64),
    near: f64,
) -> f64 {
    if value <= low || value >= high {
        return value + by;
    }
    // At most half way, so that one bound ends where the other begins.
    let near = near.min(0.5 * (high - low));
    let free = if value - low < near {
        low + free_of(value - low, near)
    } else {
        high - free_of(high - value, near)
    };
    let moved = free + by;
    if moved - low < near {
        low + room_of(moved - low, near)
    } else {
        high - room_of(high - moved, near)
    }
}

/// What slowing down has held back of a room so far: nothing while more than `near` is left.
///
/// It follows from the room that is left alone, so that the way back is the way there.
pub(in crate::alterations) fn held_back(room: f64, near: f64) -> f64 {
    room - free_of(room, near)
}

/// What a room would be if nothing slowed down: any number, for any room there is.
fn free_of(room: f64, near: f64) -> f64 {
    if room >= near {
        room
    } else {
        near * (1.0 + ln(room / near))
    }
}

/// The room that there is for what it would be if nothing slowed down.
fn room_of(free: f64, near: f64) -> f64 {
    if free >= near {
        free
    } else {
        near * exp(free / near - 1.0)
    }
}

#[cfg(test)]
mod tests {
    use super::{held_back, slowed, slowed_between};

    #[test]
    fn a_room_is_changed_never_used_up_and_given_back() {
        assert_eq!(slowed(20.0, -8.0, 5.0), 12.0);
        for by in [-3.0, -12.0, -30.0] {
            let left = slowed(8.0, by, 5.0);
            assert!(left > 0.0 && left < 8.0);
            assert!((slowed(left, -by, 5.0) - 8.0).abs() < 1e-9, "{by}");
        }
    }

    #[test]
    fn what_is_held_back_is_the_rest_of_what_was_asked_for() {
        assert_eq!(held_back(8.0, 5.0), 0.0);
        let left = slowed(8.0, -12.0, 5.0);
        assert!((held_back(left, 5.0) - (left - (8.0 - 12.0))).abs() < 1e-9);
    }

    #[test]
    fn both_bounds_are_kept_and_the_way_back_is_the_way_there() {
        let bounds = (0.0, 13.0);
        assert_eq!(slowed_between(5.0, 3.0, bounds, 3.0), 8.0);
        for by in [-20.0, -4.0, 4.0, 20.0] {
            let there = slowed_between(6.0, by, bounds, 3.0);
            assert!(there > 0.0 && there < 13.0, "{by}: {there}");
            assert!(
                (slowed_between(there, -by, bounds, 3.0) - 6.0).abs() < 1e-6,
                "{by}"
            );
        }
    }
}
