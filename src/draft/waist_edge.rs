//! The waist edge of a bodice's quarter, with its dart.

use super::DraftError;
use crate::alterations::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
use crate::geometry::{Point, Span, Vec2, perpendicular, tolerance};

/// The front waist dart ends 20 to 25 mm below the bust point (value from memory), the more the
/// higher that lies above the waist.
const BELOW_BUST: (f64, f64) = (20.0, 25.0);
const BELOW_OF_WAY: f64 = 0.18;

/// Level of the upper apex of the front waist dart, for the levels of bust point and waist.
pub(super) fn front_dart_level(bust: f64, waist: f64) -> f64 {
    let below = Span::from_low(BELOW_BUST.0, BELOW_BUST.1);
    bust + below.nearest(BELOW_OF_WAY * (waist - bust))
}

/// What differs between back and front at the waist.
pub(super) struct WaistQuarter {
    /// Level of the waist.
    pub level: f64,
    /// Where the side seam ends, and its direction there.
    pub side: (Point, Vec2),
    /// Sewn length of the edge, and where on it the dart is.
    pub length: f64,
    pub dart_at: f64,
    pub apex_level: f64,
    pub intake: f64,
}

/// The waist edge, from the side seam to the fold, with its dart if one is worth sewing.
pub(super) fn waist_edge(step: &'static str, q: &WaistQuarter) -> Result<Waistline, DraftError> {
    let dart = (q.intake > tolerance::PRINT).then(|| DartWanted {
        name: "waist".to_owned(),
        at: q.dart_at,
        apex_level: q.apex_level,
        share: 1.0,
    });
    let spec = WaistSpec {
        centre: Point::new(0.0, q.level),
        side: q.side.0,
        arrive: -perpendicular(q.side.1),
        length: q.length,
        darts: dart.into_iter().collect(),
        point: DartsPoint::Up,
    };
    let drawn = waistline(&spec).map_err(|source| DraftError::Construction {
        step,
        from: "waist_girth, bust_girth, back_waist_length, front_waist_length",
        source,
    })?;
    Ok(drawn.reversed())
}
