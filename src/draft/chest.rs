//! Across the front, armpit to armpit: an estimate of its own where it was not measured.

use super::{Ease, Figure};

/// By how much a front is narrower than the back at a bust of zero, and what every millimetre
/// of bust takes off that. The middle of two drafts, 26 mm at bust 760, 0 at 1220 (Aldrich's
/// size table, as transcribed) and 24 mm at every size (Bunka, value from memory), and 2 mm.
const NARROWER: (f64, f64) = (46.0, 0.025);

/// Back width of a bust: offset and slope (computed from the 1988 U.S. Army survey).
const BACK_OF_BUST: (f64, f64) = (108.6, 0.268);

/// Of what a back is wider than backs of that bust, the front follows this share: two widths
/// of one rib cage, not one width twice (an assumption; it keeps the front between 0 and 45 mm
/// narrower than the back for 97 % of women).
const FOLLOWS_BACK: f64 = 0.8;

/// Upper chest of a bust and a back width: offset and slopes (computed from the same survey).
const UPPER_CHEST: (f64, f64, f64) = (134.4, 0.6505, 0.46);

/// The share of an upper chest larger than that which lies across the front (an assumption).
const FRONT_OF_UPPER_CHEST: f64 = 0.1;

/// The survey's mean shoulder, and how much of a longer one the front is wider (an assumption:
/// the chest ends under the shoulder's end).
const SHOULDER: (f64, f64) = (124.0, 0.2);

/// Front width of a figure, in millimetres: measured, or estimated from bust, back width,
/// upper chest and shoulder.
pub(super) fn front_width(f: &Figure) -> f64 {
    f.front_width.unwrap_or_else(|| {
        let usual_back = BACK_OF_BUST.0 + BACK_OF_BUST.1 * f.bust_girth;
        let back = usual_back + FOLLOWS_BACK * (f.back_width - usual_back);
        let (offset, by_bust, by_back) = UPPER_CHEST;
        let upper = f.upper_chest_girth - offset - by_bust * f.bust_girth - by_back * f.back_width;
        back - NARROWER.0
            + NARROWER.1 * f.bust_girth
            + FRONT_OF_UPPER_CHEST * upper
            + SHOULDER.1 * (f.shoulder_length - SHOULDER.0)
    })
}

/// Half the finished front: half of the ease of the back goes to the front.
pub(super) fn half_front(f: &Figure, ease: &Ease) -> f64 {
    (front_width(f) + ease.back_width / 2.0) / 2.0
}
