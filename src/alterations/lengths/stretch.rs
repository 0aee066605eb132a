//! How far a shortened back is pulled out of shape.

use serde::{Deserialize, Serialize};

/// The smallest and the largest principal stretch over a back: 1 is the cloth as it was cut.
///
/// ```
/// use blockwright::alterations::LocalStretch;
/// let stretch = LocalStretch { smallest: 0.885, largest: 1.1 };
/// assert_eq!(stretch.to_string(), "0.885 to 1.100");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LocalStretch {
    /// The most shortened.
    pub smallest: f64,
    /// The most lengthened.
    pub largest: f64,
}

impl std::fmt::Display for LocalStretch {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:.3} to {:.3}", self.smallest, self.largest)
    }
}

/// How the shoulder may swing about the neck side point.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(not(feature = "least-distortion"), allow(dead_code))]
pub(in crate::alterations) enum Swing {
    /// To this slope, in radians.
    To(f64),
    /// To where it pulls the cloth least out of shape, by so much at most, in radians.
    Within(f64),
}

/// A back at rest after its centre got shorter.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(not(feature = "least-distortion"), allow(dead_code))]
pub(in crate::alterations) struct Distortion {
    /// Slope of the shoulder, darts open, in radians.
    pub slope: f64,
    /// Length of the armscye over its length before.
    pub armscye: f64,
    /// The stretch over the mesh.
    pub stretch: LocalStretch,
    /// What it costs: area times squared distance from a turn, in square millimetres.
    #[cfg_attr(not(test), allow(dead_code))]
    pub energy: f64,
}
