//! Round the body: what the finished girths have over the body.

use super::thread::tenth;
use crate::measurements::{Body, Measurement as M};
use crate::piece::Pattern;
use serde::{Serialize, Serializer, ser::SerializeStruct as _};

/// A level round the body; girths in mm.
///
/// ```
/// use blockwright::fit_map::RoundStation;
/// let hip = RoundStation { name: "hip".into(), body: 1000.0, finished: 1030.0, asked: 50.0 };
/// assert_eq!(hip.ease(), 30.0);
/// assert_eq!(hip.excess(), -20.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct RoundStation {
    /// The girth: `bust`, `waist`, `hip`.
    pub name: String,
    /// The wearer's.
    pub body: f64,
    /// The finished garment's.
    pub finished: f64,
    /// The ease that the block is made with.
    pub asked: f64,
}

impl RoundStation {
    /// What the garment is wider than the wearer.
    #[must_use]
    pub const fn ease(&self) -> f64 {
        self.finished - self.body
    }

    /// By how much that is more than the ease asked for.
    #[must_use]
    pub const fn excess(&self) -> f64 {
        self.ease() - self.asked
    }
}

impl Serialize for RoundStation {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("RoundStation", 5)?;
        out.serialize_field("name", &self.name)?;
        out.serialize_field("body", &tenth(self.body))?;
        out.serialize_field("finished", &tenth(self.finished))?;
        out.serialize_field("ease", &tenth(self.ease()))?;
        out.serialize_field("excess", &tenth(self.excess()))?;
        out.end()
    }
}

/// The levels of a pattern that go round the trunk.
pub(super) fn round(pattern: &Pattern, wearer: &Body) -> Vec<RoundStation> {
    let trunk = [
        ("bust", M::BustGirth),
        ("waist", M::WaistGirth),
        ("hip", M::HipGirth),
    ];
    let found = trunk.into_iter().filter_map(|(name, of)| {
        let girth = pattern.girths().iter().find(|girth| girth.name == name)?;
        Some(RoundStation {
            name: name.to_owned(),
            body: wearer.value(of),
            finished: pattern.finished(girth),
            asked: girth.ease,
        })
    });
    found.collect()
}
