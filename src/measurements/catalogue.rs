//! What each measurement is: from where to where, how the tape runs, what is
//! possible, and which blocks need it.
//!
//! Landmarks are those of published body measurement practice (seventh neck bone,
//! collar bones, acromion, natural waist); the wording is our own. The ranges are
//! wide on purpose: what lies outside is a slip of the tape or of the unit, never an
//! unusual body. They are set by us, not taken from a standard.

use serde::Serialize;

use super::measurement::Measurement;

/// A block that a measurement shapes.
///
/// ```
/// use blockwright::measurements::{MeasuredBlock, Measurement};
///
/// assert!(Measurement::WaistToHip.needed_by().contains(&MeasuredBlock::Skirt));
/// assert_eq!(MeasuredBlock::Tunic.name(), "tunic");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum MeasuredBlock {
    /// Upper body to the waist.
    Bodice,
    /// Waist to hem.
    Skirt,
    /// Bodice and skirt in one, shaped at the waist.
    Dress,
    /// An easy one-piece garment.
    Tunic,
    /// The set-in sleeve of any of them.
    Sleeve,
}

impl MeasuredBlock {
    /// The name in files and reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Bodice => "bodice",
            Self::Skirt => "skirt",
            Self::Dress => "dress",
            Self::Tunic => "tunic",
            Self::Sleeve => "sleeve",
        }
    }
}

impl std::fmt::Display for MeasuredBlock {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// The values a measurement can have at all, both ends included; millimetres, for the
/// shoulder slope radians. What lies outside is refused.
///
/// ```
/// use blockwright::measurements::Measurement;
///
/// let range = Measurement::BustGirth.range();
/// assert!(range.contains(1600.0) && !range.contains(92.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Range {
    /// The smallest value.
    pub low: f64,
    /// The largest value.
    pub high: f64,
}

impl Range {
    /// Whether the value lies in the range; never true of NaN.
    #[must_use]
    pub fn contains(self, value: f64) -> bool {
        self.low <= value && value <= self.high
    }

    /// The value of the range nearest to `value`.
    pub(super) fn nearest(self, value: f64) -> f64 {
        value.max(self.low).min(self.high)
    }
}

const UPPER: &[MeasuredBlock] = &[
    MeasuredBlock::Bodice,
    MeasuredBlock::Dress,
    MeasuredBlock::Tunic,
];
const UPPER_AND_SLEEVE: &[MeasuredBlock] = &[
    MeasuredBlock::Bodice,
    MeasuredBlock::Dress,
    MeasuredBlock::Tunic,
    MeasuredBlock::Sleeve,
];
const WAISTED: &[MeasuredBlock] = &[
    MeasuredBlock::Bodice,
    MeasuredBlock::Skirt,
    MeasuredBlock::Dress,
    MeasuredBlock::Tunic,
];
const LOWER: &[MeasuredBlock] = &[
    MeasuredBlock::Skirt,
    MeasuredBlock::Dress,
    MeasuredBlock::Tunic,
];
const SLEEVE: &[MeasuredBlock] = &[MeasuredBlock::Sleeve];
const ALL: &[MeasuredBlock] = &[
    MeasuredBlock::Bodice,
    MeasuredBlock::Skirt,
    MeasuredBlock::Dress,
    MeasuredBlock::Tunic,
    MeasuredBlock::Sleeve,
];

impl Measurement {
    /// From where to where it runs and how the tape is held.
    #[must_use]
    pub const fn definition(self) -> &'static str {
        match self {
            Self::Height => {
                "From the floor straight up to the crown of the head, standing upright \
                 without shoes, heels together."
            }
            Self::BustGirth => {
                "Around the body over the fullest part of the bust, the tape level and under \
                 the arms, breathing calmly, over the bra the garment will be worn with."
            }
            Self::UpperChestGirth => {
                "Around the body close under the armpits and above the fullness of the bust; \
                 the tape may rise a little across the back."
            }
            Self::UnderbustGirth => {
                "Around the ribs directly below the bust, the tape level and snug."
            }
            Self::WaistGirth => {
                "Around the natural waist, the narrowest place between ribs and hips, where a \
                 cord tied around the body comes to rest."
            }
            Self::HipGirth => {
                "Around the body over the fullest part of the seat, the tape level, feet \
                 together."
            }
            Self::NeckBaseGirth => {
                "Around the base of the neck: from the nape bone over both neck side points \
                 to the hollow between the collar bones, the tape on its edge as a necklace \
                 lies."
            }
            Self::ShoulderLength => {
                "From the neck side point along the shoulder to where the sleeve seam shall \
                 sit, about 20 mm short of the outermost tip of the shoulder bone."
            }
            Self::ShoulderSlope => {
                "The angle by which the line from the neck side point to the shoulder tip \
                 falls away from level, seen from the front. In degrees."
            }
            Self::BackWidth => {
                "Level across the back from the fold of one armpit to the other, arms hanging."
            }
            Self::FrontWidth => {
                "Level across the chest above the bust from the fold of one armpit to the \
                 other, arms hanging."
            }
            Self::BustPointWidth => "Straight from one bust point to the other, through the air.",
            Self::NeckToBustPoint => {
                "From the neck side point down along the body to the bust point."
            }
            Self::ScyeDepth => {
                "From the nape bone down along the back to the level of the armpits, found \
                 with a ruler or strip of paper held level under the arms."
            }
            Self::BackWaistLength => {
                "From the nape bone down along the middle of the back to the natural waist."
            }
            Self::FrontWaistLength => {
                "From the neck side point over the bust point and straight down to the natural \
                 waist. Not from the hollow of the neck: that is centre_front_waist_length."
            }
            Self::CentreFrontWaistLength => {
                "From the hollow between the collar bones down the middle of the front to the \
                 natural waist."
            }
            Self::WaistToHip => {
                "From the natural waist straight down to the level of the fullest seat, at the \
                 side."
            }
            Self::WaistToKnee => {
                "From the natural waist straight down to the level of the middle of the knee \
                 cap."
            }
            Self::UpperArmGirth => {
                "Around the fullest part of the upper arm close below the armpit, the arm \
                 hanging."
            }
            Self::ElbowGirth => "Around the elbow, the arm straight.",
            Self::WristGirth => "Around the wrist over the wrist bones.",
            Self::ArmLength => {
                "From the tip of the shoulder bone over the elbow to the wrist bone, the arm \
                 hanging."
            }
            Self::ArmscyeGirth => {
                "Around the arm where it joins the body: under the armpit and over the tip of \
                 the shoulder bone, the arm hanging. A check value; no block is drawn from it."
            }
            Self::NapeHeight => {
                "From the floor straight up to the nape bone, standing upright without shoes."
            }
            Self::WaistHeight => {
                "From the floor straight up to the natural waist at the side, standing upright \
                 without shoes."
            }
            Self::BackHollow => {
                "From a straight edge held upright along the middle of the back, touching the \
                 shoulder blades and the seat, level in to the body at the natural waist."
            }
            Self::NapePlumb => {
                "From a plumb line hung behind the back so that it touches the shoulder blades, \
                 level in to the nape bone, looking straight ahead: little on an erect back, much \
                 on a round one."
            }
            Self::WaistPlumb => {
                "From a plumb line hung behind the back so that it touches the shoulder blades, \
                 level in to the middle of the back at the natural waist. The seat does not \
                 matter; with it, it is back_hollow."
            }
            Self::BustDepth => {
                "Straight through the body at the level of the bust points, from the back to the \
                 bust: between two rulers held level across back and bust, not pressed."
            }
            Self::SeatDepth => {
                "Straight through the body at the level of the fullest seat, from the seat to the \
                 front: between two rulers held level across both, not pressed."
            }
            Self::HeadGirth => {
                "Around the head at its largest, over the brow and the back of the head, the \
                 hair pressed flat."
            }
            Self::HandGirth => {
                "Around the knuckles of the flat hand, without the thumb, the tape snug."
            }
        }
    }

    /// The possible values: millimetres, for the shoulder slope radians.
    #[must_use]
    pub const fn range(self) -> Range {
        let (low, high) = match self {
            Self::Height => (1300.0, 2150.0),
            Self::BustGirth => (650.0, 1750.0),
            Self::UpperChestGirth => (600.0, 1650.0),
            Self::UnderbustGirth => (500.0, 1650.0),
            Self::WaistGirth => (430.0, 1750.0),
            Self::HipGirth => (600.0, 1900.0),
            Self::NeckBaseGirth => (260.0, 620.0),
            Self::ShoulderLength => (70.0, 200.0),
            Self::ShoulderSlope => (0.0, 50.0_f64.to_radians()),
            Self::BackWidth => (220.0, 640.0),
            Self::FrontWidth => (200.0, 640.0),
            Self::BustPointWidth => (100.0, 420.0),
            Self::NeckToBustPoint => (150.0, 480.0),
            Self::ScyeDepth => (110.0, 330.0),
            Self::BackWaistLength => (250.0, 560.0),
            Self::FrontWaistLength => (250.0, 680.0),
            Self::CentreFrontWaistLength => (190.0, 520.0),
            Self::WaistToHip => (80.0, 380.0),
            Self::WaistToKnee => (380.0, 820.0),
            Self::UpperArmGirth => (160.0, 700.0),
            Self::ElbowGirth => (150.0, 560.0),
            Self::WristGirth => (100.0, 320.0),
            Self::ArmLength => (380.0, 800.0),
            Self::ArmscyeGirth => (230.0, 850.0),
            Self::NapeHeight => (1050.0, 1900.0),
            Self::WaistHeight => (720.0, 1450.0),
            Self::BackHollow => (0.0, 140.0),
            Self::NapePlumb => (0.0, 200.0),
            Self::WaistPlumb => (0.0, 160.0),
            Self::BustDepth => (150.0, 560.0),
            Self::SeatDepth => (140.0, 600.0),
            Self::HeadGirth => (440.0, 720.0),
            Self::HandGirth => (125.0, 300.0),
        };
        Range { low, high }
    }

    /// The blocks whose shape depends on it.
    #[must_use]
    pub const fn needed_by(self) -> &'static [MeasuredBlock] {
        match self {
            Self::Height => ALL,
            Self::WaistGirth => WAISTED,
            Self::HipGirth | Self::WaistToHip | Self::WaistToKnee => LOWER,
            Self::BustGirth | Self::ScyeDepth | Self::UpperArmGirth => UPPER_AND_SLEEVE,
            Self::UpperChestGirth
            | Self::UnderbustGirth
            | Self::NeckBaseGirth
            | Self::ShoulderLength
            | Self::ShoulderSlope
            | Self::BackWidth
            | Self::FrontWidth
            | Self::BustPointWidth
            | Self::NeckToBustPoint
            | Self::BackWaistLength
            | Self::FrontWaistLength
            | Self::CentreFrontWaistLength => UPPER,
            Self::ElbowGirth | Self::WristGirth | Self::ArmLength => SLEEVE,
            Self::ArmscyeGirth => UPPER_AND_SLEEVE,
            Self::NapeHeight | Self::HeadGirth => UPPER,
            Self::WaistHeight => LOWER,
            Self::BackHollow | Self::WaistPlumb => WAISTED,
            Self::NapePlumb | Self::BustDepth => UPPER,
            Self::SeatDepth => LOWER,
            Self::HandGirth => SLEEVE,
        }
    }
}
