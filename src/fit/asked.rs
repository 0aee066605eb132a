//! Which measurement asks for what.

use super::aim::Aim;
use crate::draft::{DraftOptions, Figure, draft_figure};
use crate::measurements::Measurement;
use crate::piece::Pattern;

/// How much of a step one measurement of the wearer asks for.
///
/// ```
/// use blockwright::fit::Asked;
/// use blockwright::measurements::Measurement;
/// let asked = Asked { measurement: Measurement::WaistGirth, amount: 24.0 };
/// assert_eq!(asked.measurement.name(), "waist_girth");
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// The measurement in which she differs from the body of the block.
    pub measurement: Measurement,
    /// How much of the step's amount it asks for, in the step's unit; with the other sign where
    /// it asks for the contrary.
    pub amount: f64,
}

/// Gives a figure one measurement of another.
type Take = fn(&mut Figure, &Figure);

/// Every measurement that a draft uses.
const TAKES: [(Measurement, Take); 23] = [
    (Measurement::BustGirth, |a, b| a.bust_girth = b.bust_girth),
    (Measurement::UpperChestGirth, |a, b| {
        a.upper_chest_girth = b.upper_chest_girth;
    }),
    (Measurement::UnderbustGirth, |a, b| {
        a.underbust_girth = b.underbust_girth;
    }),
    (Measurement::WaistGirth, |a, b| {
        a.waist_girth = b.waist_girth
    }),
    (Measurement::HipGirth, |a, b| a.hip_girth = b.hip_girth),
    (Measurement::NeckBaseGirth, |a, b| {
        a.neck_base_girth = b.neck_base_girth;
    }),
    (Measurement::ShoulderLength, |a, b| {
        a.shoulder_length = b.shoulder_length;
    }),
    (Measurement::ShoulderSlope, |a, b| {
        a.shoulder_slope = b.shoulder_slope;
    }),
    (Measurement::BackWidth, |a, b| a.back_width = b.back_width),
    (Measurement::FrontWidth, |a, b| {
        a.front_width = b.front_width;
        a.front_width_taken = b.front_width_taken;
    }),
    (Measurement::BustPointWidth, |a, b| {
        a.bust_point_width = b.bust_point_width;
    }),
    (Measurement::NeckToBustPoint, |a, b| {
        a.neck_to_bust_point = b.neck_to_bust_point;
    }),
    (Measurement::ScyeDepth, |a, b| a.scye_depth = b.scye_depth),
    (Measurement::BackWaistLength, |a, b| {
        // The front goes along, so that the balance stays.
        a.front_waist_length += b.back_waist_length - a.back_waist_length;
        a.back_waist_length = b.back_waist_length;
    }),
    (Measurement::FrontWaistLength, |a, b| {
        // What the front has more than the back.
        let more = b.front_waist_length - b.back_waist_length;
        a.front_waist_length = a.back_waist_length + more;
    }),
    (Measurement::CentreFrontWaistLength, |a, b| {
        a.front_neck_depth = b.front_neck_depth;
    }),
    (Measurement::WaistToHip, |a, b| {
        a.waist_to_hip = b.waist_to_hip
    }),
    (Measurement::WaistToKnee, |a, b| {
        a.waist_to_knee = b.waist_to_knee;
    }),
    (Measurement::UpperArmGirth, |a, b| {
        a.upper_arm_girth = b.upper_arm_girth;
    }),
    (Measurement::ElbowGirth, |a, b| {
        a.elbow_girth = b.elbow_girth
    }),
    (Measurement::WristGirth, |a, b| {
        a.wrist_girth = b.wrist_girth
    }),
    (Measurement::ArmLength, |a, b| a.arm_length = b.arm_length),
    (Measurement::HandGirth, |a, b| a.hand_girth = b.hand_girth),
];

/// By how much every measure that counts changes, weighted, if one measurement alone is the
/// wearer's. Those that change nothing, or alone make no draft, are left out.
pub(super) fn pulls(
    aims: &[Aim],
    (own, draft): (&Figure, &Pattern),
    hers: &Figure,
    options: &DraftOptions,
) -> Vec<(Measurement, Vec<f64>)> {
    let mut found = Vec::new();
    for (measurement, take) in TAKES {
        let mut figure = *own;
        take(&mut figure, hers);
        if figure == *own {
            continue;
        }
        let Ok(pulled) = draft_figure(&figure, options) else {
            continue;
        };
        let change = |aim: &Aim| {
            let values = aim.of.on(&pulled).zip(aim.of.on(draft));
            values.map_or(0.0, |(now, before)| aim.weight * (now - before))
        };
        let changes: Vec<f64> = aims.iter().map(change).collect();
        if changes.iter().any(|change| change.abs() > 1e-6) {
            found.push((measurement, changes));
        }
    }
    found
}
