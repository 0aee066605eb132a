//! Levels and breadths of a body, in millimetres; y runs down from the crown.

use crate::geometry::elementary::{cos, sin};
use crate::measurements::{Body, Measurement};
use std::f64::consts::PI;

/// Breadth and depth of a level.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Girdle {
    pub y: f64,
    /// From the middle to the side.
    pub half: f64,
    /// From front to back.
    pub depth: f64,
}

/// A body by its levels.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Frame {
    pub height: f64,
    pub chin: f64,
    pub head_half: f64,
    pub nape: f64,
    pub neck_side: (f64, f64),
    pub neck_half: f64,
    pub neck_depth: f64,
    pub hollow: f64,
    pub shoulder: (f64, f64),
    pub chest: Girdle,
    pub bust: Girdle,
    pub underbust: Girdle,
    pub waist: Girdle,
    pub hip: Girdle,
    pub bust_point: (f64, f64),
    pub knee: f64,
    pub ankle: f64,
    pub elbow: (f64, f64),
    pub wrist: (f64, f64),
    /// Half thicknesses of the arm: above, at the elbow, at the wrist, of the hand.
    pub arm: [f64; 4],
    pub back_fold: f64,
    pub front_fold: f64,
    /// How far the back is in at the waist.
    pub inward: f64,
}

/// Share of a girth that is its breadth; a round one has 1/π, 0.318.
const CHEST: f64 = 0.335;
const BUST: f64 = 0.325;
const RIBS: f64 = 0.338;
const WAIST: f64 = 0.342;
const HIP: f64 = 0.348;

/// A level whose breadth is a share of its girth, and its depth what an ellipse of that girth has.
fn girdle(y: f64, girth: f64, share: f64) -> Girdle {
    let breadth = share * girth;
    let mean = 2.0 * (girth / PI) * (girth / PI);
    Girdle {
        y,
        half: 0.5 * breadth,
        depth: (mean - breadth * breadth).max(0.0).sqrt(),
    }
}

impl Frame {
    pub(super) fn of(body: &Body) -> Self {
        use Measurement as M;
        let value = |of: M| body.value(of);
        let height = value(M::Height);
        // A draft never sees these bounds; a sketch of contradicting numbers keeps its order.
        let nape = (height - value(M::NapeHeight)).max(0.08 * height);
        let waist = if body.is_taken(M::WaistHeight) {
            height - value(M::WaistHeight)
        } else {
            nape + 0.985 * value(M::BackWaistLength)
        };
        let waist = waist.max(nape + 0.12 * height);
        let slope = value(M::ShoulderSlope);
        let neck_half = 0.5 * 0.33 * value(M::NeckBaseGirth);
        let neck_side = (neck_half, nape - 5.0);
        let length = value(M::ShoulderLength);
        let shoulder = (
            neck_half + length * cos(slope),
            neck_side.1 + length * sin(slope),
        );
        let armpit = (nape + 0.98 * value(M::ScyeDepth)).min(waist - 60.0);
        // The tape to the bust point runs over the fullness, so that it comes down by less.
        let bust_level = (neck_side.1 + 0.96 * value(M::NeckToBustPoint))
            .min(armpit + 0.46 * (waist - armpit))
            .max(armpit + 0.01 * height);
        let under = (bust_level + 0.043 * height).min(bust_level + 0.55 * (waist - bust_level));
        let hip_level = waist + value(M::WaistToHip);
        let hip = girdle(hip_level, value(M::HipGirth), HIP);
        let reach = value(M::ArmLength);
        let arm = [
            value(M::UpperArmGirth),
            value(M::ElbowGirth),
            value(M::WristGirth),
            value(M::HandGirth),
        ]
        .map(|girth| girth / (2.0 * PI));
        // The arms hang clear of the hips, so that both outlines are seen.
        let out = (hip.half + arm[2] + 28.0).max(shoulder.0 + 20.0);
        let elbow = (
            shoulder.0 + 0.52 * (out - shoulder.0),
            shoulder.1 + 0.57 * reach,
        );
        let wrist = (out, shoulder.1 + 0.99 * reach);
        Self {
            height,
            chin: 0.124 * height,
            head_half: 0.5 * 0.275 * value(M::HeadGirth),
            nape,
            neck_side,
            neck_half,
            neck_depth: 0.31 * value(M::NeckBaseGirth),
            hollow: (waist - 0.965 * value(M::CentreFrontWaistLength))
                .max(nape + 0.02 * height)
                .min(armpit - 20.0),
            shoulder,
            chest: girdle(armpit, value(M::UpperChestGirth), CHEST),
            bust: girdle(bust_level, value(M::BustGirth), BUST),
            underbust: girdle(under, value(M::UnderbustGirth), RIBS),
            waist: girdle(waist, value(M::WaistGirth), WAIST),
            hip,
            bust_point: (0.5 * value(M::BustPointWidth), bust_level),
            knee: (waist + value(M::WaistToKnee)).min(0.85 * height),
            ankle: 0.955 * height,
            elbow,
            wrist,
            arm,
            back_fold: 0.5 * value(M::BackWidth),
            front_fold: 0.5 * value(M::FrontWidth),
            inward: [M::BackHollow, M::WaistPlumb]
                .into_iter()
                .find(|of| body.is_taken(*of))
                .map_or(0.02 * height, value),
        }
    }
}
