//! The one tolerance from which every other is derived, each with its reason.

/// Two points closer than this are the same point, in millimetres.
///
/// One nanometre: far above the rounding of an `f64` at the size of a garment
/// (a metre is held to about 1e-13 mm) and far below anything a seam can show.
pub const POINT: f64 = 1e-6;

/// Accuracy asked of an arc length, in millimetres.
///
/// A hundredth of [`POINT`], so that sums over a dozen segments still agree to [`POINT`].
pub const ARC_LENGTH: f64 = POINT * 1e-2;

/// Accuracy to which a construction is solved (a length, a girth), in millimetres.
///
/// Equal to [`POINT`]: what is solved for cannot be told apart from what was asked.
pub const SOLVE: f64 = POINT;

/// Angles closer than this are equal, in radians: [`POINT`] seen across a metre.
pub const ANGLE: f64 = POINT * 1e-3;

/// Seams of a fresh draft match within this, in millimetres (ten thousand [`POINT`]s).
pub const SEAM_DRAFTED: f64 = POINT * 1e4;

/// Seams match within this after any chain of alterations, in millimetres.
///
/// Ten times [`SEAM_DRAFTED`], and still a tenth of what a pencil line is wide.
pub const SEAM_ALTERED: f64 = SEAM_DRAFTED * 10.0;

/// What a person can see on a print, in millimetres.
pub const PRINT: f64 = SEAM_ALTERED;

/// A curve written as straight chords keeps its length within this, in millimetres: half of
/// [`PRINT`], so that two edges sewn together still match to what can be seen.
pub const FLATTENED_LENGTH: f64 = PRINT * 0.5;

/// Farthest a chord lies from the curve that it stands for, in millimetres.
///
/// An arc of radius `r` through the angle `a` bulges by `r a² / 8` and is longer than its chord
/// by `r a³ / 24`: a third of the bulge for every radian. Two whole turns, more than any edge
/// has, lose [`FLATTENED_LENGTH`].
pub const FLATTENED: f64 = FLATTENED_LENGTH * 3.0 / (4.0 * std::f64::consts::PI);

/// The finest chain of straight lines that a curve is followed by on request, in millimetres: a
/// micron, a tenth of what seams of a draft match to.
pub const POLYLINE: f64 = SEAM_DRAFTED * 0.1;
