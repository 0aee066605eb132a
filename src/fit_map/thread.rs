//! A place where a pattern and a body are compared.

use crate::form::Half;
use crate::geometry::Point;
use serde::{Serialize, Serializer, ser::SerializeStruct as _};

/// Where on a quarter of the body a thread runs.
///
/// ```
/// use blockwright::fit_map::ThreadPlace;
/// assert_eq!(ThreadPlace::Share(0.25).name(), "quarter");
/// assert_eq!(ThreadPlace::Side.share(), 1.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum ThreadPlace {
    /// The middle: of the back from the nape, of the front from the hollow of the neck, below the waist
    /// from there.
    Centre,
    /// From the neck side point over the bust point.
    OverBust,
    /// A share of the way from the middle to the side; above the waist from the level of the armpits.
    Share(f64),
    /// The side; above the waist from the armpit.
    Side,
}

impl ThreadPlace {
    /// The name in reports.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Centre => "centre",
            Self::OverBust => "over the bust point",
            Self::Side => "side",
            Self::Share(share) if share < 0.4 => "quarter",
            Self::Share(share) if share < 0.6 => "half way",
            Self::Share(_) => "three quarters",
        }
    }

    /// The share of the way from the middle to the side at which it reaches the waist; the bust point
    /// lies about 0.4 of the way.
    #[must_use]
    pub const fn share(self) -> f64 {
        match self {
            Self::Centre => 0.0,
            Self::OverBust => 0.4,
            Self::Share(share) => share,
            Self::Side => 1.0,
        }
    }
}

/// Which part of the body a thread runs down.
///
/// ```
/// use blockwright::fit_map::Band;
/// assert_eq!(Band::WaistToHip.name(), "waist to hip");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Band {
    /// From neck or armpit down to the waist.
    ToWaist,
    /// From the waist down to the level of the fullest seat.
    WaistToHip,
}

impl Band {
    /// The name in reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::ToWaist => "to waist",
            Self::WaistToHip => "waist to hip",
        }
    }
}

/// A thread in a pattern and on a body; lengths in mm.
///
/// Serialised with names, the excess, and the ends of the thread on the piece.
///
/// ```
/// use blockwright::fit_map::{Band, Thread, ThreadPlace};
/// use blockwright::form::Half;
/// use blockwright::geometry::Point;
/// let centre = Thread {
///     piece: "back".into(), half: Half::Back, band: Band::ToWaist, place: ThreadPlace::Centre,
///     ends: [Point::new(0.0, 0.0), Point::new(0.0, 410.0)], pattern: 410.0, body: 385.0,
/// };
/// assert_eq!(centre.excess(), 25.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Thread {
    /// The piece.
    pub piece: String,
    /// Whether it lies on the back or the front.
    pub half: Half,
    /// Which part of the body it runs down.
    pub band: Band,
    /// Where.
    pub place: ThreadPlace,
    /// The upper and the lower end of the thread on the piece, which may lie a little outside it.
    pub ends: [Point; 2],
    /// Its length in the pattern, darts closed.
    pub pattern: f64,
    /// Its length on the body.
    pub body: f64,
}

impl Thread {
    /// By how much the pattern is longer than the body; negative where it is short.
    #[must_use]
    pub const fn excess(&self) -> f64 {
        self.pattern - self.body
    }
}

/// To a tenth of a millimetre, and no negative nought.
pub(crate) fn tenth(mm: f64) -> f64 {
    let rounded = (10.0 * mm).round() / 10.0;
    if rounded == 0.0 { 0.0 } else { rounded }
}

impl Serialize for Thread {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let end = |p: Point| [tenth(p.x), tenth(p.y)];
        let mut out = serializer.serialize_struct("Thread", 8)?;
        out.serialize_field("piece", &self.piece)?;
        out.serialize_field("half", &self.half)?;
        out.serialize_field("band", self.band.name())?;
        out.serialize_field("place", self.place.name())?;
        out.serialize_field("ends", &self.ends.map(end))?;
        out.serialize_field("pattern", &tenth(self.pattern))?;
        out.serialize_field("body", &tenth(self.body))?;
        out.serialize_field("excess", &tenth(self.excess()))?;
        out.end()
    }
}
