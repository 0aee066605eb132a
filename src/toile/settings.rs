//! How a toile is sewn on screen.

use super::fabric::Fabric;
use super::seating::Seating;
use super::settle::Patience;
use serde::Serialize;

/// How finely cloth is divided.
///
/// ```
/// use blockwright::toile::Quality;
/// assert!(Quality::Draft.edge() > Quality::Usual.edge());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Quality {
    /// Triangles of 40 mm: a first look, without folds.
    Sketch,
    /// Triangles of 20 mm: shows where cloth is too much or too little.
    Draft,
    /// Triangles of 12 mm: shows folds.
    #[default]
    Usual,
}

impl Quality {
    /// The edge of a triangle, in mm.
    #[must_use]
    pub const fn edge(self) -> f64 {
        match self {
            Self::Sketch => 40.0,
            Self::Draft => 20.0,
            Self::Usual => 12.0,
        }
    }

    /// The meshes on the way, each put on as the one before came to rest: edges in mm.
    pub(super) const fn edges(self) -> &'static [f64] {
        match self {
            Self::Sketch => &[40.0],
            Self::Draft => &[40.0, 20.0],
            Self::Usual => &[40.0, 20.0, 12.0],
        }
    }

    /// When the mesh number `stage` of them is at rest.
    pub(super) fn patience(self, stage: usize) -> Patience {
        let last = stage + 1 >= self.edges().len();
        Patience {
            residual: if last { 0.02 } else { 0.3 },
            rounds: match (last, self) {
                (true, Self::Sketch) => 400,
                (true, _) => 150,
                (false, _) => 80,
            },
            ..Patience::default()
        }
    }
}

/// How a toile is sewn on screen.
///
/// ```
/// use blockwright::toile::{Quality, Seating, ToileSettings};
/// let quick = ToileSettings { quality: Quality::Draft, ..ToileSettings::default() };
/// assert_eq!(quick.seating, Seating::Neckline);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ToileSettings {
    /// The cloth.
    pub cloth: Fabric,
    /// How finely it is divided.
    pub quality: Quality,
    /// Where it is pinned.
    pub seating: Seating,
}

impl Default for ToileSettings {
    fn default() -> Self {
        Self {
            cloth: Fabric::PLAIN_WOOL,
            quality: Quality::Usual,
            seating: Seating::Neckline,
        }
    }
}
