//! How far a dart opens and closes, and what of a shoulder is left to its point.

use crate::alterations::AlterationError;
use crate::alterations::cutting::slowing::slowed;
use crate::geometry::Span;
use crate::piece::Dart;

/// By how much a shoulder dart opens of what a shoulder gains, or closes of what it loses, in radians:
/// a dart that would be closed slows down, and what it cannot give is left to the shoulder point.
pub(in crate::alterations) fn taken_by_dart(dart: &Dart, wider: f64) -> f64 {
    let angle = dart.angle();
    LEAST_DART + slowed(angle - LEAST_DART, wider, NEAR_LEAST) - angle
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
