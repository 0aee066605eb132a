//! Line widths in millimetres: what is cut is boldest, and where nothing but the stitching line
//! is drawn, that is cut along.

use super::Ink;

pub(super) const CUTTING: f64 = 0.6;
pub(super) const STITCHING: f64 = 0.5;
/// A stitching line inside its allowance.
pub(super) const STITCHING_WITHIN: f64 = 0.25;
pub(super) const DART: f64 = 0.4;
pub(super) const MARK: f64 = 0.3;
/// The notch of a dart's leg, drawn over the leg.
pub(super) const DART_NOTCH: f64 = 0.9;
/// Where a zip or a slit stops.
pub(super) const STOP: f64 = 0.45;
/// Dashes of a slit.
pub(super) const SLIT_DASHES: [f64; 2] = [2.5, 1.5];
/// The cross of a named point.
pub(super) const POINT: f64 = 0.25;
pub(super) const GUIDE: f64 = 0.2;

/// Dashes of a fold.
pub(super) const FOLD_DASHES: [f64; 4] = [12.0, 2.5, 2.0, 2.5];

/// What is there for orientation only.
pub(super) const GREY: Ink = Ink::Grey(90);
