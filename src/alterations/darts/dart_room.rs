//! How far a dart opens and closes, and what of a shoulder is left to its point.

use crate::alterations::AlterationError;
use crate::alterations::chain::asked_ease::{MOST_SHOULDER_EASE, NEAR_MOST};
use crate::alterations::cutting::slowing::{held_back, slowed, slowed_between};
use crate::geometry::elementary::asin;
use crate::geometry::{Curve, Point, Span};
use crate::piece::Dart;

/// By how much a shoulder dart opens of what a shoulder gains, or closes of what it loses, in radians:
/// a dart that would be closed slows down, and what it cannot give is left to the shoulder point.
pub(in crate::alterations) fn taken_by_dart(dart: &Dart, wider: f64) -> f64 {
    let angle = dart.angle();
    LEAST_DART + slowed(angle - LEAST_DART, wider, NEAR_LEAST) - angle
}

/// What a back shoulder gains or loses, parted between its dart and its ease, in radians about the
/// tip of the dart.
pub(in crate::alterations) struct Parted {
    /// By how much the dart opens.
    pub dart: f64,
    /// What goes into the ease of the seam instead: before and after.
    pub eased: (f64, f64),
}

/// Opens a dart over the blade no wider than lies flat on a shoulder, and leaves the rest to its
/// ease; what a dart that would be closed cannot give is left to the shoulder point.
pub(in crate::alterations) fn parted_over_blade(dart: &Dart, wider: f64) -> Parted {
    let angle = dart.angle();
    let leg = dart.apex().distance(dart.legs[0]);
    let widest = 2.0 * asin((0.5 * MOST_MOUTH / leg).min(0.5));
    if angle >= widest {
        return Parted {
            dart: taken_by_dart(dart, wider),
            eased: (0.0, 0.0),
        };
    }
    if angle <= LEAST_DART {
        let opened = wider.min(widest - angle);
        return Parted {
            dart: opened,
            eased: (0.0, wider - opened),
        };
    }
    let near = NEAR_LEAST.min(0.5 * (widest - LEAST_DART));
    let opened = slowed_between(angle, wider, (LEAST_DART, widest), near);
    Parted {
        dart: opened - angle,
        eased: (
            held_back(widest - angle, near),
            held_back(widest - opened, near),
        ),
    }
}

/// The widest mouth of a dart over the blade at the shoulder, in millimetres: 16 to 20 for a length of
/// 60 to 80 (a Russian drafting text, read), and what may be for rounding.
const MOST_MOUTH: f64 = 20.5;

/// By how much the shoulder beside a dart gets longer for what goes into its ease, in millimetres: what
/// lies `after` the dart would have been turned about its tip. No more than cloth can be eased.
pub(in crate::alterations) fn beside_dart(apex: Point, after: &Curve, parted: &Parted) -> f64 {
    let (from, to) = (after.start(), after.end());
    let across = (to - from).normalize().cross(apex - from).abs();
    let (old, new) = parted.eased;
    let eased =
        |angle: f64| MOST_SHOULDER_EASE - slowed(MOST_SHOULDER_EASE, -across * angle, NEAR_MOST);
    eased(new) - eased(old)
}

/// Refuses a shoulder that leaves so much to its shoulder point, in millimetres, that the point would
/// not lie on its bone any more.
pub(in crate::alterations) fn check_point(left: f64, amount: f64) -> Result<(), AlterationError> {
    if left.abs() <= MOST_AT_POINT {
        return Ok(());
    }
    Err(AlterationError::TooMuch {
        amount,
        most: amount * Span::SHARES.nearest(MOST_AT_POINT / left.abs()),
        unit: "mm",
        why: "beyond what dart or ease of the back shoulder take, the shoulder point would leave its bone"
            .to_owned(),
    })
}

/// The most that is left to a shoulder point, in millimetres: the usual alteration of a shoulder's
/// width (5 to 12; value from memory).
const MOST_AT_POINT: f64 = 12.0;

/// Refuses a turn that would leave nothing of a dart, or open it too wide to be pressed.
pub(in crate::alterations) fn check_dart(
    dart: &Dart,
    wider: f64,
    amount: f64,
) -> Result<(), AlterationError> {
    let angle = dart.angle() + wider;
    if (LEAST_DART..=std::f64::consts::FRAC_PI_3).contains(&angle) {
        return Ok(());
    }
    let room = if wider < 0.0 {
        dart.angle() - LEAST_DART
    } else {
        std::f64::consts::FRAC_PI_3 - dart.angle()
    };
    Err(AlterationError::TooMuch {
        amount,
        most: amount * Span::SHARES.nearest(room / wider.abs()),
        unit: "mm",
        why: format!(
            "the {} dart would be {}",
            dart.name,
            if wider < 0.0 {
                "closed"
            } else {
                "too wide to be pressed"
            }
        ),
    })
}

/// The narrowest dart worth sewing, in radians: 3 mm over a leg of 170.
const LEAST_DART: f64 = 0.018;

/// How near to that a shoulder dart slows down, in radians: 4 mm over a leg of 80.
const NEAR_LEAST: f64 = 0.05;
