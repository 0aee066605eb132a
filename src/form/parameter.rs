//! What a form is free in, beside what is measured.

use serde::{Serialize, Serializer};

macro_rules! parameters {
    ($($name:ident => $text:literal, $words:literal;)*) => {
        /// A dimension of a form that no tape gives, so that it is solved for: mm, but for shares and
        /// roundness, which are numbers.
        ///
        /// ```
        /// use blockwright::form::ShapeParameter;
        /// assert_eq!(ShapeParameter::BustDepth.name(), "bust_depth");
        /// assert!(ShapeParameter::NapeForward.definition().contains("shoulder blades"));
        /// ```
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        #[non_exhaustive]
        pub enum ShapeParameter { $(#[doc = $words] $name,)* }

        impl ShapeParameter {
            /// Every one, in the order of reports.
            pub const ALL: [Self; [$(Self::$name),*].len()] = [$(Self::$name),*];

            /// The name in reports.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$name => $text,)* }
            }

            /// Whether it is a length in mm; shares and roundness are not.
            #[must_use]
            pub const fn is_length(self) -> bool {
                !matches!(
                    self,
                    Self::BladeShare | Self::NeckSideShare | Self::ChestRoundness
                        | Self::BustRoundness | Self::UnderbustRoundness | Self::WaistRoundness
                        | Self::HipRoundness
                )
            }

            /// What it is.
            #[must_use]
            pub const fn definition(self) -> &'static str {
                match self { $(Self::$name => $words,)* }
            }
        }
    };
}

parameters! {
    NapeRise => "nape_rise", "Height of the nape above the waist.";
    NeckSideDrop => "neck_side_drop", "By how much the neck side point is lower than the nape.";
    FrontNeckDrop => "front_neck_drop", "By how much the hollow of the front neck is lower than the nape.";
    BustRise => "bust_rise", "Height of the bust points above the waist.";
    ArmpitRise => "armpit_rise", "Height of the armpits above the waist.";
    BustBreadth => "bust_breadth", "Breadth of the body at the bust points, between the arms.";
    BustDepth => "bust_depth", "Depth of the body at the bust points, from back to front.";
    WaistBreadth => "waist_breadth", "Breadth of the body at the waist.";
    WaistDepth => "waist_depth", "Depth of the body at the waist.";
    HipBreadth => "hip_breadth", "Breadth of the body at the hip level.";
    HipDepth => "hip_depth", "Depth of the body at the hip level.";
    NapeForward => "nape_forward", "How far the nape is in front of the shoulder blades.";
    WaistForward => "waist_forward", "How far the small of the back is in front of the shoulder blades.";
    SeatForward => "seat_forward", "How far the seat is in front of the shoulder blades; behind them if negative.";
    BladeShare => "blade_share", "Height of the fullest shoulder blades as a share of the nape's above the waist.";
    BustRecess => "bust_recess", "How far the breastbone is behind the bust points.";
    ChestBreadth => "chest_breadth", "Breadth of the body at the armpits.";
    UnderbustBreadth => "underbust_breadth", "Breadth of the body below the bust.";
    UnderbustDepth => "underbust_depth", "Depth of the body below the bust.";
    NeckHalf => "neck_half", "Half the breadth of the neck at its base.";
    NeckDepth => "neck_depth", "How far the hollow of the front neck is in front of the nape.";
    NeckSideShare => "neck_side_share", "How far forward the neck side point is, as a share of the depth of the neck.";
    ChestRoundness => "chest_roundness", "Exponent of the section at the armpits; 2 is an ellipse, more is squarer.";
    BustRoundness => "bust_roundness", "Exponent of the section at the bust points.";
    UnderbustRoundness => "underbust_roundness", "Exponent of the section below the bust.";
    WaistRoundness => "waist_roundness", "Exponent of the section at the waist.";
    HipRoundness => "hip_roundness", "Exponent of the section at the hip level.";
}

impl std::fmt::Display for ShapeParameter {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

impl Serialize for ShapeParameter {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

/// How many there are.
pub(super) const COUNT: usize = ShapeParameter::ALL.len();

/// A value for each.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Values(pub(super) [f64; COUNT]);

impl Values {
    #[expect(clippy::indexing_slicing, reason = "there is one for each")]
    pub(super) fn of(&self, parameter: ShapeParameter) -> f64 {
        self.0[parameter as usize]
    }
}
