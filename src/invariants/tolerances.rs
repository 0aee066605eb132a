//! How exactly the laws are to be met, each number with its reason.

use crate::geometry::tolerance;

/// How far a pattern may miss each law: millimetres and radians.
///
/// ```
/// use blockwright::invariants::Tolerances;
/// assert!(Tolerances::drafted().seam < Tolerances::altered().seam);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Tolerances {
    /// Difference of two sewn lengths, distance of two notches along a seam, bow of a fold
    /// and everything else that is a length along the stitching line, in millimetres.
    pub seam: f64,
    /// Difference of the legs of a dart, in millimetres.
    pub leg: f64,
    /// Distance of a folded dart mouth from the seam line it is caught in, in millimetres.
    pub flush: f64,
    /// Difference of a finished girth from the one asked for, in millimetres.
    pub girth: f64,
    /// Distance along the waist of two darts that meet, in millimetres.
    pub waist_dart: f64,
    /// Deviation from a right angle at a fold, and of the grain from the fold, in radians.
    pub square: f64,
    /// Corner left in an edge where a dart has been closed, in radians.
    pub closed_dart: f64,
    /// Corner left in a line that runs on across a seam, in radians.
    pub join: f64,
    /// Corner between two segments inside an edge, in radians.
    pub smooth: f64,
    /// How far a line that is to bend one way turns back in all, in radians.
    pub bend: f64,
}

impl Tolerances {
    /// A dart wider than this at its apex cannot be pressed into one point, in radians (60°):
    /// its folded half no longer lies on the cloth beside the leg, and the fullness has to be
    /// divided.
    pub const WIDEST_DART: f64 = std::f64::consts::FRAC_PI_3;

    /// A corner sharper than this is a spike, in radians (1°): no seam can be turned in it.
    pub const SPIKE: f64 = std::f64::consts::PI / 180.0;

    /// A notch or a drill point lies at least so far from a dart leg, in millimetres: a notch is cut
    /// that wide.
    pub const MARK_FROM_LEG: f64 = 1.0;

    /// The grain line is at least this share of the piece's extent along it, so that it can
    /// be measured from the selvage at two distant points.
    pub const GRAIN_SHARE: f64 = 1.0 / 3.0;

    /// Nothing is drawn farther than this from the origin, in millimetres: ten metres is more
    /// cloth than any block takes, and far beyond it lengths lose their meaning.
    pub const LARGEST_PIECE: f64 = 10_000.0;

    /// What a fresh draft owes: everything was solved for, so only rounding may remain.
    ///
    /// Legs to [`tolerance::POINT`], seams to [`tolerance::SEAM_DRAFTED`], a girth to that of
    /// the four seams it crosses, angles to half a degree or one where curves meet (seen over
    /// the first 10 mm that is under 0.2 mm), square to a thousandth of a radian; a hollow line is
    /// drawn to bend one way, and a tenth of a degree is rounding.
    #[must_use]
    pub fn drafted() -> Self {
        let degree = 1f64.to_radians();
        Self {
            seam: tolerance::SEAM_DRAFTED,
            leg: tolerance::POINT,
            flush: tolerance::PRINT,
            girth: 4.0 * tolerance::SEAM_DRAFTED,
            waist_dart: 5.0 * tolerance::PRINT,
            square: 1e-3,
            closed_dart: 0.5 * degree,
            join: degree,
            smooth: degree,
            bend: 0.1 * degree,
        }
    }

    /// What a pattern owes after any chain of alterations.
    ///
    /// Lengths to [`tolerance::SEAM_ALTERED`], square to half a degree ([`tolerance::PRINT`]
    /// over the 10 mm in which the angle is judged), blended curves to three degrees (half a
    /// millimetre there, less than the needle wanders). A hollow line may bend back by two: over
    /// half an armscye a wave of a twentieth of that many millimetres a degree (0.2 mm), which the
    /// eye does not see.
    #[must_use]
    pub fn altered() -> Self {
        let degree = 1f64.to_radians();
        Self {
            seam: tolerance::SEAM_ALTERED,
            leg: tolerance::SEAM_ALTERED,
            flush: tolerance::PRINT,
            girth: 4.0 * tolerance::SEAM_ALTERED,
            waist_dart: 5.0 * tolerance::PRINT,
            square: 0.5 * degree,
            closed_dart: 3.0 * degree,
            join: 3.0 * degree,
            smooth: 3.0 * degree,
            bend: 2.0 * degree,
        }
    }
}

/// Whether a difference misses its tolerance; what is not a number always does.
pub(super) fn beyond(difference: f64, tolerance: f64) -> bool {
    difference.is_nan() || difference.abs() > tolerance
}
