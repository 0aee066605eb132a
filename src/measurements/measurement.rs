//! The names of the body measurements.

use crate::explain::Explain;
use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use thiserror::Error;

use super::near_name::nearest;

/// A body measurement. Lengths are in millimetres, the shoulder slope in radians.
///
/// Names follow the terms of ISO 8559-1 in `snake_case` (the list of terms is a value
/// from memory); what each one is, from where to where, stands in
/// [`definition`](Self::definition).
///
/// ```
/// use blockwright::measurements::Measurement;
///
/// let measurement: Measurement = "back_waist_length".parse()?;
/// assert_eq!(measurement, Measurement::BackWaistLength);
/// assert_eq!(measurement.name(), "back_waist_length");
///
/// let error = "back_waist_lenght".parse::<Measurement>().unwrap_err();
/// assert!(error.to_string().contains("did you mean `back_waist_length`"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum Measurement {
    /// Floor to crown.
    Height,
    /// Around the fullest bust.
    BustGirth,
    /// Around the chest above the bust.
    UpperChestGirth,
    /// Around the ribs below the bust.
    UnderbustGirth,
    /// Around the natural waist.
    WaistGirth,
    /// Around the fullest seat.
    HipGirth,
    /// Around the base of the neck.
    NeckBaseGirth,
    /// Neck side point to the shoulder end of a sewn seam.
    ShoulderLength,
    /// Fall of the shoulder line from level: an angle.
    ShoulderSlope,
    /// Across the back between the armpit folds.
    BackWidth,
    /// Across the chest between the armpit folds.
    FrontWidth,
    /// Between the bust points.
    BustPointWidth,
    /// Neck side point to bust point.
    NeckToBustPoint,
    /// Nape to the level of the armpit.
    ScyeDepth,
    /// Nape to waist.
    BackWaistLength,
    /// Neck side point over the bust point to the waist.
    FrontWaistLength,
    /// Front neck point to waist.
    CentreFrontWaistLength,
    /// Waist to hip level.
    WaistToHip,
    /// Waist to the middle of the knee.
    WaistToKnee,
    /// Around the upper arm.
    UpperArmGirth,
    /// Around the elbow.
    ElbowGirth,
    /// Around the wrist.
    WristGirth,
    /// Shoulder end to wrist.
    ArmLength,
    /// Around the arm where a sleeve is set in.
    ArmscyeGirth,
    /// Floor to nape.
    NapeHeight,
    /// Floor to the natural waist.
    WaistHeight,
    /// Depth of the hollow of the back at the waist, from an edge that touches blades and seat.
    BackHollow,
    /// From a plumb line at the shoulder blades in to the nape.
    NapePlumb,
    /// From a plumb line at the shoulder blades in to the waist.
    WaistPlumb,
    /// Depth of the body at the bust points.
    BustDepth,
    /// Depth of the body at the fullest seat.
    SeatDepth,
    /// Around the head.
    HeadGirth,
    /// Around the hand.
    HandGirth,
}

/// What the number of a measurement is.
///
/// ```
/// use blockwright::measurements::{Kind, Measurement};
///
/// assert_eq!(Measurement::ShoulderSlope.kind(), Kind::Angle);
/// assert_eq!(Measurement::BustGirth.kind(), Kind::Length);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A length, in millimetres.
    Length,
    /// An angle, in radians.
    Angle,
}

impl Measurement {
    /// Every measurement, girths of the trunk first, in the order of reports.
    pub const ALL: [Self; 33] = [
        Self::Height,
        Self::BustGirth,
        Self::UpperChestGirth,
        Self::UnderbustGirth,
        Self::WaistGirth,
        Self::HipGirth,
        Self::NeckBaseGirth,
        Self::ShoulderLength,
        Self::ShoulderSlope,
        Self::BackWidth,
        Self::FrontWidth,
        Self::BustPointWidth,
        Self::NeckToBustPoint,
        Self::ScyeDepth,
        Self::BackWaistLength,
        Self::FrontWaistLength,
        Self::CentreFrontWaistLength,
        Self::WaistToHip,
        Self::WaistToKnee,
        Self::UpperArmGirth,
        Self::ElbowGirth,
        Self::WristGirth,
        Self::ArmLength,
        Self::ArmscyeGirth,
        Self::NapeHeight,
        Self::WaistHeight,
        Self::BackHollow,
        Self::NapePlumb,
        Self::WaistPlumb,
        Self::BustDepth,
        Self::SeatDepth,
        Self::HeadGirth,
        Self::HandGirth,
    ];

    /// The four that must be taken; the others can be estimated from them, save `back_hollow` and the
    /// two from a plumb line.
    pub const REQUIRED: [Self; 4] = [
        Self::Height,
        Self::BustGirth,
        Self::WaistGirth,
        Self::HipGirth,
    ];

    /// The name in files and reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Height => "height",
            Self::BustGirth => "bust_girth",
            Self::UpperChestGirth => "upper_chest_girth",
            Self::UnderbustGirth => "underbust_girth",
            Self::WaistGirth => "waist_girth",
            Self::HipGirth => "hip_girth",
            Self::NeckBaseGirth => "neck_base_girth",
            Self::ShoulderLength => "shoulder_length",
            Self::ShoulderSlope => "shoulder_slope",
            Self::BackWidth => "back_width",
            Self::FrontWidth => "front_width",
            Self::BustPointWidth => "bust_point_width",
            Self::NeckToBustPoint => "neck_to_bust_point",
            Self::ScyeDepth => "scye_depth",
            Self::BackWaistLength => "back_waist_length",
            Self::FrontWaistLength => "front_waist_length",
            Self::CentreFrontWaistLength => "centre_front_waist_length",
            Self::WaistToHip => "waist_to_hip",
            Self::WaistToKnee => "waist_to_knee",
            Self::UpperArmGirth => "upper_arm_girth",
            Self::ElbowGirth => "elbow_girth",
            Self::WristGirth => "wrist_girth",
            Self::ArmLength => "arm_length",
            Self::ArmscyeGirth => "armscye_girth",
            Self::NapeHeight => "nape_height",
            Self::WaistHeight => "waist_height",
            Self::BackHollow => "back_hollow",
            Self::NapePlumb => "nape_plumb",
            Self::WaistPlumb => "waist_plumb",
            Self::BustDepth => "bust_depth",
            Self::SeatDepth => "seat_depth",
            Self::HeadGirth => "head_girth",
            Self::HandGirth => "hand_girth",
        }
    }

    /// Whether the number is a length or an angle.
    #[must_use]
    pub const fn kind(self) -> Kind {
        match self {
            Self::ShoulderSlope => Kind::Angle,
            _ => Kind::Length,
        }
    }

    /// Whether it must be taken, since the estimates rest on it.
    #[must_use]
    pub const fn is_required(self) -> bool {
        matches!(
            self,
            Self::Height | Self::BustGirth | Self::WaistGirth | Self::HipGirth
        )
    }

    /// Whether a block is drawn from it, so that its uncertainty is one of the draft's.
    pub(super) const fn shapes_a_draft(self) -> bool {
        !matches!(
            self,
            Self::ArmscyeGirth
                | Self::NapeHeight
                | Self::WaistHeight
                | Self::BackHollow
                | Self::NapePlumb
                | Self::WaistPlumb
                | Self::BustDepth
                | Self::SeatDepth
                | Self::HeadGirth
                | Self::HandGirth
        )
    }

    /// Its place in [`ALL`](Self::ALL).
    pub(super) const fn index(self) -> usize {
        self as usize
    }
}

impl fmt::Display for Measurement {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// A name that no measurement has.
///
/// ```
/// use blockwright::measurements::Measurement;
///
/// let error = "bust".parse::<Measurement>().unwrap_err();
/// assert_eq!(error.nearest, Some(Measurement::BustGirth));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, Error)]
#[error("there is no measurement `{name}`; {}", self.hint())]
pub struct UnknownMeasurement {
    /// The name as it was written, shortened if long.
    pub name: String,
    /// The measurement whose name is nearest, if one is near.
    pub nearest: Option<Measurement>,
}

impl UnknownMeasurement {
    /// What to do about it.
    #[must_use]
    pub fn hint(&self) -> String {
        match self.nearest {
            Some(measurement) => format!("did you mean `{measurement}`?"),
            None => "`blockwright measurements` lists them all".into(),
        }
    }
}

impl FromStr for Measurement {
    type Err = UnknownMeasurement;

    /// Reads a name; case and the choice between `_`, `-` and space do not matter.
    fn from_str(text: &str) -> Result<Self, UnknownMeasurement> {
        let name: String = text
            .trim()
            .chars()
            .map(|c| match c {
                '-' | ' ' => '_',
                c => c.to_ascii_lowercase(),
            })
            .collect();
        let exact = Self::ALL.into_iter().find(|m| m.name() == name);
        exact.ok_or_else(|| UnknownMeasurement {
            name: text.trim().chars().take(40).collect(),
            nearest: nearest(&name, Self::ALL.iter().map(|m| m.name()))
                .and_then(|near| Self::ALL.into_iter().find(|m| m.name() == near)),
        })
    }
}

impl Serialize for Measurement {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

impl<'de> Deserialize<'de> for Measurement {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let name = String::deserialize(deserializer)?;
        name.parse().map_err(serde::de::Error::custom)
    }
}

impl Explain for UnknownMeasurement {
    fn code(&self) -> String {
        "unknown_measurement".to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(self.name.clone())
    }

    fn cure(&self) -> String {
        self.hint()
    }
}

#[cfg(test)]
mod tests {
    use super::Measurement;

    #[test]
    fn each_stands_at_its_index_under_its_own_name() {
        for (place, measurement) in Measurement::ALL.into_iter().enumerate() {
            assert_eq!(measurement.index(), place);
            assert_eq!(measurement.name().parse(), Ok(measurement));
            assert_eq!(
                measurement.is_required(),
                Measurement::REQUIRED.contains(&measurement)
            );
        }
    }

    #[test]
    fn near_names_are_offered_and_far_ones_are_not() {
        for (written, meant) in [
            ("bust_grith", Measurement::BustGirth),
            ("waist", Measurement::WaistGirth),
            ("armscye", Measurement::ArmscyeGirth),
            (
                "center_front_waist_length",
                Measurement::CentreFrontWaistLength,
            ),
            ("wrist_girt", Measurement::WristGirth),
        ] {
            let error = written.parse::<Measurement>().unwrap_err();
            assert_eq!(error.nearest, Some(meant), "{written}");
        }
        let error = "colour".parse::<Measurement>().unwrap_err();
        assert_eq!(error.nearest, None);
    }
}
