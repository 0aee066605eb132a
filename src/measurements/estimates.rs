//! Regressions of body measurements on height, bust, waist and hip. Written by
//! `examples/derive_estimates.rs`; do not edit.
//!
//! Source: 1988 Anthropometric Survey of U.S. Army Personnel, women, working database
//! (Gordon et al. 1989, report NATICK/TR-89/044; public domain, a work of the U.S.
//! government). Computed from a random half of its 2,208 women. Millimetres; the
//! shoulder slope in radians. Front width was not surveyed.

use super::measurement::Measurement;

/// One regression: `mean + slopes · (required - REQUIRED_MEANS)`.
pub(super) struct Row {
    /// What is estimated.
    pub(super) of: Measurement,
    /// Its mean over the women surveyed.
    pub(super) mean: f64,
    /// Change for each unit of height, bust, waist and hip.
    pub(super) slopes: [f64; 4],
    /// Standard deviation of what the four do not explain, on n - 5 degrees of freedom.
    pub(super) spread: f64,
    /// Smallest and largest share of the height found, for lengths of trunk and limbs.
    pub(super) share_of_height: Option<(f64, f64)>,
}

/// Women the table rests on.
pub(super) const WOMEN: f64 = 1104.0;

/// Mean height, bust, waist and hip.
pub(super) const REQUIRED_MEANS: [f64; 4] = [1627.7328, 907.5797, 726.3931, 966.7572];

/// Smallest and largest height, bust, waist and hip.
pub(super) const REQUIRED_ENDS: [(f64, f64); 4] = [(1447.0, 1836.0), (711.0, 1176.0), (568.0, 987.0), (787.0, 1189.0)];

/// Inverse of the summed products of the four about their means, in 1/mm².
pub(super) const INVERSE_SCATTER: [[f64; 4]; 4] = [
    [2.595209e-7, -2.963022e-8, 6.015143e-8, -1.250123e-7],
    [-2.963022e-8, 9.205030e-7, -6.882686e-7, -1.376458e-7],
    [6.015143e-8, -6.882686e-7, 1.022391e-6, -3.018252e-7],
    [-1.250123e-7, -1.376458e-7, -3.018252e-7, 6.294640e-7],
];

/// The regressions.
pub(super) const ROWS: &[Row] = &[
    Row { of: Measurement::UpperChestGirth, mean: 887.082428, slopes: [5.926766e-2, 5.541573e-1, 1.596737e-1, 8.808442e-2], spread: 21.922071, share_of_height: None },
    Row { of: Measurement::UnderbustGirth, mean: 769.849638, slopes: [7.128147e-2, 3.948577e-1, 3.644911e-1, -3.141786e-2], spread: 21.121094, share_of_height: None },
    Row { of: Measurement::NeckBaseGirth, mean: 345.987319, slopes: [6.572485e-2, 5.133449e-2, 8.630450e-2, 2.350180e-2], spread: 12.019720, share_of_height: None },
    Row { of: Measurement::ShoulderLength, mean: 124.035326, slopes: [5.296474e-2, 7.063001e-3, -1.648448e-2, 1.166583e-2], spread: 10.124439, share_of_height: None },
    Row { of: Measurement::ShoulderSlope, mean: 0.448115, slopes: [4.325005e-6, -1.276368e-4, -1.429996e-4, 8.800808e-5], spread: 0.064949, share_of_height: None },
    Row { of: Measurement::BackWidth, mean: 351.795290, slopes: [2.779070e-2, 2.067943e-1, 4.630240e-2, 2.164982e-2], spread: 20.475879, share_of_height: None },
    Row { of: Measurement::BustPointWidth, mean: 185.411232, slopes: [3.016113e-2, 1.558085e-1, -1.875171e-2, -1.642872e-2], spread: 13.490070, share_of_height: None },
    Row { of: Measurement::NeckToBustPoint, mean: 267.596014, slopes: [4.664999e-2, 2.100568e-1, -4.146024e-2, 4.639126e-2], spread: 16.647841, share_of_height: None },
    Row { of: Measurement::ScyeDepth, mean: 185.036232, slopes: [6.771970e-2, 1.346363e-2, 3.097775e-2, 3.932983e-2], spread: 12.195030, share_of_height: None },
    Row { of: Measurement::BackWaistLength, mean: 366.060688, slopes: [1.839741e-1, 7.646766e-2, -8.584074e-2, 2.824304e-3], spread: 22.237156, share_of_height: Some((0.1816, 0.2763)) },
    Row { of: Measurement::FrontWaistLength, mean: 384.958333, slopes: [1.398574e-1, 1.967943e-1, -1.145166e-1, -8.731202e-3], spread: 20.403727, share_of_height: Some((0.1925, 0.2854)) },
    Row { of: Measurement::CentreFrontWaistLength, mean: 310.759058, slopes: [1.231287e-1, 1.082105e-1, -9.543280e-2, 4.592859e-3], spread: 21.331637, share_of_height: Some((0.1479, 0.2349)) },
    Row { of: Measurement::WaistToHip, mean: 217.666667, slopes: [1.243586e-1, -4.343269e-2, -1.273599e-2, 1.281069e-1], spread: 22.049563, share_of_height: Some((0.0806, 0.1786)) },
    Row { of: Measurement::WaistToKnee, mean: 597.186594, slopes: [3.773174e-1, -3.002339e-2, 5.254429e-2, 5.422685e-2], spread: 18.601041, share_of_height: Some((0.3128, 0.3982)) },
    Row { of: Measurement::UpperArmGirth, mean: 291.375906, slopes: [-3.656220e-2, 1.314411e-1, 1.145946e-1, 1.413200e-1], spread: 12.341864, share_of_height: None },
    Row { of: Measurement::ElbowGirth, mean: 238.123188, slopes: [3.983172e-2, 3.965561e-2, 4.591911e-2, 8.639373e-2], spread: 8.147858, share_of_height: None },
    Row { of: Measurement::WristGirth, mean: 151.200181, slopes: [4.047835e-2, 1.420803e-2, 1.729399e-2, 2.297891e-2], spread: 5.037531, share_of_height: None },
    Row { of: Measurement::ArmLength, mean: 547.028080, slopes: [3.723510e-1, -4.422645e-2, 6.116628e-2, -1.349334e-2], spread: 19.743339, share_of_height: Some((0.2909, 0.3713)) },
    Row { of: Measurement::ArmscyeGirth, mean: 371.253623, slopes: [5.891715e-2, 1.204630e-1, 1.068825e-1, 8.227149e-2], spread: 12.663584, share_of_height: None },
];

/// Change of what the regression leaves of the first for each unit left of the second.
pub(super) const PARTNERS: [(Measurement, Measurement, f64); 2] = [
    (Measurement::FrontWaistLength, Measurement::BackWaistLength, 0.600921),
    (Measurement::BackWaistLength, Measurement::FrontWaistLength, 0.713768),
];
