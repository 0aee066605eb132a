//! How the shoulder takes part in a back-length reduction.

use serde::{Deserialize, Serialize};

/// How the shoulder takes part in a back-length reduction.
///
/// ```
/// use blockwright::alterations::Hinge;
/// assert_eq!(Hinge::default(), Hinge::Plain);
/// assert_eq!(Hinge::LeastDistortion.name(), "least_distortion");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum Hinge {
    /// The shoulder point stays; the shoulder gets flatter by all of the amount.
    #[default]
    Plain,
    /// The shoulder point drops by half of the amount: the shoulder flattens half as much, the
    /// armscye gets shorter.
    Shared,
    /// The shoulder point drops by as much as pulls the cloth least out of shape, found for
    /// this back by deforming a mesh of it as rigidly as it can be (Sorkine and Alexa 2007;
    /// a triangle mesh in the plane after Liu and others 2008). Needs the crate's feature
    /// `least-distortion`.
    LeastDistortion,
}

impl Hinge {
    /// Every way, in the order in which they are compared.
    pub const ALL: [Self; 3] = [Self::Plain, Self::Shared, Self::LeastDistortion];

    /// The name as in job files.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Plain => "plain",
            Self::Shared => "shared",
            Self::LeastDistortion => "least_distortion",
        }
    }

    /// Share of the amount by which the shoulder point drops, where it is known beforehand.
    pub(in crate::alterations) fn drop_share(self) -> Option<f64> {
        match self {
            Self::Plain => Some(0.0),
            Self::Shared => Some(0.5),
            Self::LeastDistortion => None,
        }
    }
}

impl std::fmt::Display for Hinge {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}
