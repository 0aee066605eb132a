//! Which measurement must be smaller than which: an estimate is moved to keep the
//! order, two taken values that break it are doubted.

use super::doubt::DoubtCode;
use super::measurement::Measurement;

/// `lesser` stays below a share of `greater` by some room.
///
/// The room an estimate keeps is about the least found among 1,104 surveyed women
/// (1988 Anthropometric Survey of U.S. Army Personnel, computed); the doubt begins
/// well outside what was found there.
pub(super) struct Order {
    /// The smaller one.
    pub(super) lesser: Measurement,
    /// The larger one.
    pub(super) greater: Measurement,
    /// An estimate keeps `lesser <= share * greater - room`, both in mm.
    pub(super) keep: (f64, f64),
    /// Two taken values are doubted when `lesser > share * greater - room`.
    pub(super) doubt: (f64, f64),
    /// The code of the doubt.
    pub(super) code: DoubtCode,
    /// What is wrong with the two, for a person.
    pub(super) text: &'static str,
}

impl Order {
    /// The largest `lesser` that an estimate may have beside `greater`.
    pub(super) fn most(&self, greater: f64) -> f64 {
        self.keep.0 * greater - self.keep.1
    }

    /// The smallest `greater` that an estimate may have beside `lesser`.
    pub(super) fn least(&self, lesser: f64) -> f64 {
        (lesser + self.keep.1) / self.keep.0
    }

    /// Whether two taken values contradict each other.
    pub(super) fn is_doubtful(&self, lesser: f64, greater: f64) -> bool {
        lesser > self.doubt.0 * greater - self.doubt.1
    }
}

const fn order(
    lesser: Measurement,
    greater: Measurement,
    keep: (f64, f64),
    doubt: (f64, f64),
    code: DoubtCode,
    text: &'static str,
) -> Order {
    Order {
        lesser,
        greater,
        keep,
        doubt,
        code,
        text,
    }
}

/// Every order, larger pairs of a chain first, so that one pass settles the chain.
pub(super) const ORDERS: &[Order] = &[
    order(
        Measurement::UnderbustGirth,
        Measurement::BustGirth,
        (1.0, 20.0),
        (1.0, -20.0),
        DoubtCode::UnderbustAboveBust,
        "the girth below the bust is larger than the bust",
    ),
    order(
        Measurement::UpperChestGirth,
        Measurement::BustGirth,
        (1.1, 0.0),
        (1.12, 0.0),
        DoubtCode::UpperChestAboveBust,
        "the girth above the bust is much larger than the bust",
    ),
    order(
        Measurement::BackWidth,
        Measurement::BustGirth,
        (0.48, 0.0),
        (0.52, 0.0),
        DoubtCode::WidthAgainstBust,
        "the back alone is wider than half the bust",
    ),
    order(
        Measurement::FrontWidth,
        Measurement::BustGirth,
        (0.48, 0.0),
        (0.52, 0.0),
        DoubtCode::WidthAgainstBust,
        "the chest alone is wider than half the bust",
    ),
    order(
        Measurement::BustPointWidth,
        Measurement::BackWidth,
        (0.74, 0.0),
        (0.95, 0.0),
        DoubtCode::BustPointsTooWide,
        "the bust points are as far apart as the back is wide",
    ),
    order(
        Measurement::BustPointWidth,
        Measurement::FrontWidth,
        (0.9, 0.0),
        (1.0, 0.0),
        DoubtCode::BustPointsTooWide,
        "the bust points are further apart than the chest is wide",
    ),
    order(
        Measurement::ShoulderLength,
        Measurement::BackWidth,
        (0.47, 0.0),
        (0.55, 0.0),
        DoubtCode::ShoulderTooLong,
        "one shoulder is longer than half the back is wide",
    ),
    order(
        Measurement::ScyeDepth,
        Measurement::BackWaistLength,
        (1.0, 100.0),
        (1.0, 60.0),
        DoubtCode::ScyeAtWaist,
        "the armpit lies at the waist, or nearly",
    ),
    order(
        Measurement::CentreFrontWaistLength,
        Measurement::FrontWaistLength,
        (1.0, 35.0),
        (1.0, 0.0),
        DoubtCode::FrontLengthsSwapped,
        "the centre front is longer than the front from the neck side point: the two may \
         be swapped",
    ),
    order(
        Measurement::NeckToBustPoint,
        Measurement::FrontWaistLength,
        (1.0, 50.0),
        (1.0, 15.0),
        DoubtCode::BustPointAtWaist,
        "the bust point lies at the waist, or nearly",
    ),
    order(
        Measurement::WaistToHip,
        Measurement::WaistToKnee,
        (1.0, 280.0),
        (1.0, 150.0),
        DoubtCode::HipAtKnee,
        "the hip lies near the knee",
    ),
    order(
        Measurement::WaistToKnee,
        Measurement::Height,
        (0.44, 0.0),
        (0.48, 0.0),
        DoubtCode::LengthAgainstHeight,
        "the waist lies too high above the knee for this height",
    ),
    order(
        Measurement::WaistHeight,
        Measurement::NapeHeight,
        (0.81, 0.0),
        (0.88, 0.0),
        DoubtCode::LengthAgainstHeight,
        "the waist lies too near the nape",
    ),
    order(
        Measurement::NapeHeight,
        Measurement::Height,
        (0.9, 0.0),
        (0.93, 0.0),
        DoubtCode::LengthAgainstHeight,
        "the nape lies too high for this height",
    ),
    order(
        Measurement::WaistToKnee,
        Measurement::WaistHeight,
        (1.0, 330.0),
        (1.0, 200.0),
        DoubtCode::LengthAgainstHeight,
        "the knee lies too near the floor",
    ),
    order(
        Measurement::WristGirth,
        Measurement::HandGirth,
        (1.0, 12.0),
        (1.0, -10.0),
        DoubtCode::ArmGirthsDisagree,
        "the wrist is thicker than the hand",
    ),
    order(
        Measurement::UpperArmGirth,
        Measurement::ArmscyeGirth,
        (1.0, 35.0),
        (1.0, 0.0),
        DoubtCode::ArmGirthsDisagree,
        "the upper arm is thicker than the place where it joins the body",
    ),
    order(
        Measurement::ElbowGirth,
        Measurement::UpperArmGirth,
        (1.0, 10.0),
        (1.0, -25.0),
        DoubtCode::ArmGirthsDisagree,
        "the elbow is thicker than the upper arm",
    ),
    order(
        Measurement::WristGirth,
        Measurement::ElbowGirth,
        (1.0, 50.0),
        (1.0, 0.0),
        DoubtCode::ArmGirthsDisagree,
        "the wrist is thicker than the elbow",
    ),
    order(
        Measurement::WaistGirth,
        Measurement::HipGirth,
        (1.0, 0.0),
        (1.3, 0.0),
        DoubtCode::WaistAgainstHip,
        "the waist is larger than the hip by more than three tenths",
    ),
    order(
        Measurement::WaistGirth,
        Measurement::BustGirth,
        (1.0, 0.0),
        (1.3, 0.0),
        DoubtCode::WaistAgainstBust,
        "the waist is larger than the bust by more than three tenths",
    ),
];
