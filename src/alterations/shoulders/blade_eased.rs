//! Part of the dart over the blade eased into the shoulder, so that the rest goes where it could not
//! go whole.

use crate::alterations::chain::asked_ease::with_shoulder_ease;
use crate::alterations::cutting::true_up::{with_mouth, without_mouth};
use crate::alterations::panels::panel_leg::turned;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, angle_between};
use crate::piece::{Dart, EaseOn, EdgeName, Pattern, Piece, Warning};

/// Shares of the dart that stay a dart, tried in this order.
pub(in crate::alterations) const KEPT: [f64; 4] = [0.8, 0.6, 0.45, 0.3];

/// A back shoulder is eased onto the front by no more than this, in millimetres: a quarter to half an
/// inch is usual (a drafting lesson; the upper end a value from memory), less than the most.
const MOST_EASED: f64 = 11.0;

/// The pattern with that share of a shoulder dart left, the rest eased onto the front; nothing where
/// the dart lies elsewhere, or cloth cannot be eased so far. The outline stays where it is but for
/// the shoulder beside the dart, drawn so that it closes smoothly.
pub(in crate::alterations) fn with_dart_eased(
    pattern: &Pattern,
    piece: &Piece,
    name: &str,
    share: f64,
) -> Result<Option<Pattern>, AlterationError> {
    let shoulder = EdgeName::SHOULDER;
    let Some(dart) = piece
        .dart(name)
        .filter(|d| d.edge == Some(shoulder.clone()))
    else {
        return Ok(None);
    };
    let (before, after) = without_mouth(piece, &shoulder)?;
    let apex = dart.apex();
    let angle = share * angle_between(dart.legs[0] - apex, dart.legs[1] - apex);
    let leg = apex + turned(dart.legs[0] - apex, angle);
    let leave = turned(before.end_direction(), angle);
    let third = leg.distance(after.end()) / 3.0;
    let after = Curve::hermite(
        leg,
        leave * third,
        after.end(),
        after.end_direction() * third,
    )?;
    let narrower = Dart {
        legs: [dart.legs[0], leg],
        ..dart.clone()
    };
    let mut sketch = Sketch::of(piece);
    sketch.replace(&shoulder, with_mouth(&before, &narrower, &after)?)?;
    if let Some(slot) = sketch.dart_mut(name) {
        *slot = narrower;
    }
    let eased = with_shoulder_ease(replaced(pattern, sketch.finish()?)?)?;
    Ok((on_back(&eased) <= MOST_EASED).then_some(eased))
}

/// By how much the back shoulder is longer.
fn on_back(pattern: &Pattern) -> f64 {
    let seam = pattern.seams().iter().find(|s| s.base_name() == "shoulder");
    seam.map_or(0.0, |seam| match seam.ease_on {
        Some(EaseOn::B) => -seam.ease,
        _ => seam.ease,
    })
}

/// Says that the seam took up a part of the dart only.
pub(in crate::alterations) fn eased_warning(
    before: &Pattern,
    after: &Pattern,
    name: &str,
) -> Warning {
    Warning::new(
        "blade_partly_eased",
        format!(
            "from there the seam cannot take up the whole {name} dart without narrowing the back: {:.0} mm of it are eased into the shoulder instead",
            on_back(after) - on_back(before)
        ),
    )
}
