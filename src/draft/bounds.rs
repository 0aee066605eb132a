//! The bounds of a draft, and a record of those it reached: where it is not what the measurements
//! ask for.

use crate::geometry::Span;
use std::collections::BTreeSet;

/// A bound that holds part of a draft back from what the measurements ask for.
///
/// ```
/// use blockwright::draft::Bound;
/// assert_eq!(Bound::Armpit.name(), "armpit");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[non_exhaustive]
pub enum Bound {
    /// The underarm would lie less than 8 mm below the armpit.
    Armpit,
    /// The underarm would lie far below the armpit.
    UnderarmLow,
    /// The back shoulder dart would be deeper or shallower than is sewn.
    ShoulderDart,
    /// The shoulder is longer than measured, for the back is wide.
    ShoulderLengthened,
    /// The shoulder is shorter than measured, for the back is narrow and the shoulder flat.
    ShoulderShortened,
    /// A shoulder point juts out so far that the width point was lowered.
    ShoulderJuts,
    /// The bust point would lie well above the armpit or at the waist.
    BustLevel,
    /// The bust dart would make the front much deeper or shallower under the arm than the back.
    BustDart,
    /// The armscye would be much narrower than the arm is thick.
    ScyeWidth,
    /// The side seam would lie too far to the back or the front of the armscye.
    SidePlace,
    /// The front neck would be deeper or shallower than 60 to 95 mm.
    NeckDepth,
}

impl Bound {
    /// Every bound.
    pub const ALL: [Self; 11] = [
        Self::Armpit,
        Self::UnderarmLow,
        Self::ShoulderDart,
        Self::ShoulderLengthened,
        Self::ShoulderShortened,
        Self::ShoulderJuts,
        Self::BustLevel,
        Self::BustDart,
        Self::ScyeWidth,
        Self::SidePlace,
        Self::NeckDepth,
    ];

    /// The name, in snake case.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Armpit => "armpit",
            Self::UnderarmLow => "underarm_low",
            Self::ShoulderDart => "shoulder_dart",
            Self::ShoulderLengthened => "shoulder_lengthened",
            Self::ShoulderShortened => "shoulder_shortened",
            Self::ShoulderJuts => "shoulder_juts",
            Self::BustLevel => "bust_level",
            Self::BustDart => "bust_dart",
            Self::ScyeWidth => "scye_width",
            Self::SidePlace => "side_place",
            Self::NeckDepth => "neck_depth",
        }
    }
}

/// Bounds reached so far.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Bounds(BTreeSet<Bound>);

impl Bounds {
    /// Notes a bound if it was reached.
    pub fn note(&mut self, bound: Bound, reached: bool) {
        if reached {
            self.0.insert(bound);
        }
    }

    /// Whether a bound was reached.
    pub fn has(&self, bound: Bound) -> bool {
        self.0.contains(&bound)
    }

    /// A value inside a range, and a note of the bound if that moved it.
    pub fn hold(&mut self, bound: Bound, value: f64, (low, high): (f64, f64)) -> f64 {
        let held = Span::from_low(low, high).nearest(value);
        self.note(bound, held != value);
        held
    }

    /// All that were reached.
    pub fn reached(self) -> BTreeSet<Bound> {
        self.0
    }

    /// The bounds of another collection too.
    pub fn extend(&mut self, other: &Self) {
        self.0.extend(&other.0);
    }
}
