//! The signs of posture: what heights, depths and a plumb line show beside other women.

use super::form_of_body::Form;
use super::parameter::ShapeParameter as P;
use crate::measurements::Measurement as M;
use serde::{Serialize, Serializer, ser::SerializeStruct as _};
use std::fmt;

/// From so many standard deviations on a posture is worth naming (an assumption).
const WORTH_NAMING: f64 = 1.5;

/// A way of standing, or a shape, that girths do not show.
///
/// ```
/// use blockwright::form::Posture;
/// assert_eq!(Posture::HollowBack.name(), "hollow back");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Posture {
    /// The nape is hardly in front of the shoulder blades.
    ErectBack,
    /// The nape is far in front of the shoulder blades.
    RoundBack,
    /// The back is hardly hollow at the waist.
    FlatBack,
    /// The back is deeply hollow at the waist.
    HollowBack,
    /// The waist is hardly in front of the shoulder blades.
    LeansForward,
    /// The waist is far in front of the shoulder blades.
    LeansBack,
    /// The bust is shallow for its girth.
    FlatBust,
    /// The bust is deep for its girth.
    ProminentBust,
    /// The seat is shallow for its girth.
    FlatSeat,
    /// The seat is deep for its girth.
    ProminentSeat,
}

impl Posture {
    /// The name in reports.
    ///
    /// ```
    /// use blockwright::form::Posture;
    /// assert_eq!(Posture::FlatSeat.name(), "flat seat");
    /// ```
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::ErectBack => "erect back",
            Self::RoundBack => "round back",
            Self::FlatBack => "flat back",
            Self::HollowBack => "hollow back",
            Self::LeansForward => "leans forward",
            Self::LeansBack => "leans back",
            Self::FlatBust => "flat bust",
            Self::ProminentBust => "prominent bust",
            Self::FlatSeat => "flat seat",
            Self::ProminentSeat => "prominent seat",
        }
    }
}

/// A posture, and the measurement that shows it. Written out it is a sentence with lengths in mm.
///
/// ```
/// use blockwright::form::{Posture, PostureSign};
/// use blockwright::measurements::Measurement;
/// let sign = PostureSign {
///     posture: Posture::RoundBack, shown_by: Measurement::NapePlumb, value: 90.0, usual: 60.0,
/// };
/// assert_eq!(sign.to_string(), "Round back: nape_plumb is 90 mm, 30 mm more than usual.");
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PostureSign {
    /// Which.
    pub posture: Posture,
    /// The measurement that shows it.
    pub shown_by: M,
    /// As taken, in mm.
    pub value: f64,
    /// As expected of the other measurements, in mm.
    pub usual: f64,
}

impl fmt::Display for PostureSign {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = self.posture.name();
        let (first, rest) = name.split_at(1);
        let (of, value, off) = (self.shown_by, self.value, self.value - self.usual);
        let way = if off < 0.0 { "less" } else { "more" };
        let off = off.abs();
        write!(
            f,
            "{}{rest}: {of} is {value:.0} mm, {off:.0} mm {way} than usual.",
            first.to_uppercase()
        )
    }
}

impl Serialize for PostureSign {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("PostureSign", 3)?;
        out.serialize_field("posture", self.posture.name())?;
        out.serialize_field("shown_by", &self.shown_by)?;
        out.serialize_field("text", &self.to_string())?;
        out.end()
    }
}

impl Form {
    /// What the wearer's posture shows, of the measurements that were taken: from one and a half
    /// standard deviations on.
    ///
    /// ```
    /// use blockwright::form::{Form, Posture};
    /// use blockwright::measurements::{Body, Measurement};
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
    ///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
    ///     (Measurement::BackHollow, 62.0),
    /// ])?;
    /// let signs = Form::of(&body)?.posture();
    /// assert_eq!(signs[0].posture, Posture::HollowBack);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn posture(&self) -> Vec<PostureSign> {
        let taken = self.reproduced().iter().filter(|one| one.is_taken);
        let signs = taken.filter_map(|one| {
            let (of, less, more) = match one.of {
                M::NapePlumb => (P::NapeForward, Posture::ErectBack, Posture::RoundBack),
                M::BackHollow => (P::WaistForward, Posture::FlatBack, Posture::HollowBack),
                M::WaistPlumb => (P::WaistForward, Posture::LeansForward, Posture::LeansBack),
                M::BustDepth => (P::BustDepth, Posture::FlatBust, Posture::ProminentBust),
                M::SeatDepth => (P::HipDepth, Posture::FlatSeat, Posture::ProminentSeat),
                _ => return None,
            };
            let (usual, spread) = self.usual(of)?;
            let usual = match one.of {
                M::BackHollow => usual - self.usual_edge()?,
                _ => usual,
            };
            let off = (one.given - usual) / spread;
            (off.abs() >= WORTH_NAMING).then_some(PostureSign {
                posture: if off < 0.0 { less } else { more },
                shown_by: one.of,
                value: one.given,
                usual,
            })
        });
        signs.collect()
    }

    fn usual(&self, of: P) -> Option<(f64, f64)> {
        let found = self.dimensions().iter().find(|one| one.of == of)?;
        Some((found.expected, found.spread))
    }

    /// How far in front of the blades an edge from there to the seat usually is at the waist.
    fn usual_edge(&self) -> Option<f64> {
        let (seat, _) = self.usual(P::SeatForward)?;
        let blades = self.usual(P::BladeShare)?.0 * self.usual(P::NapeRise)?.0;
        Some(seat * blades / (blades - self.levels().hip))
    }
}
