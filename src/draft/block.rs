//! The front door: one block, or bodice and skirt joined at the waist, for a body.

use super::join::join_at_waist;
use super::{DraftError, Ease, Figure, bodice, skirt};
use crate::measurements::Body;
use crate::piece::Pattern;

/// A block that can be drafted.
///
/// ```
/// use blockwright::draft::Block;
/// assert_eq!(Block::named("skirt"), Some(Block::Skirt));
/// assert_eq!(Block::BodiceAndSkirt.name(), "bodice and skirt");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Block {
    /// Back and front from neck to waist.
    Bodice,
    /// Back and front from waist to hem.
    Skirt,
    /// Both, sewn together at the waist quarter by quarter.
    BodiceAndSkirt,
}

impl Block {
    /// Every block.
    pub const ALL: [Self; 3] = [Self::Bodice, Self::Skirt, Self::BodiceAndSkirt];

    /// The name in job files and pattern documents.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Bodice => "bodice",
            Self::Skirt => "skirt",
            Self::BodiceAndSkirt => "bodice and skirt",
        }
    }

    /// The block of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|b| b.name() == name)
    }

    /// Whether the block has a skirt, so that a length means something.
    #[must_use]
    pub fn has_skirt(self) -> bool {
        self != Self::Bodice
    }
}

/// What is wanted of a draft besides the body.
///
/// ```
/// use blockwright::draft::{DraftOptions, Ease, Fit};
/// let knee_length = DraftOptions { ease: Ease::of(Fit::Regular), skirt_length: None };
/// assert!(knee_length.skirt_length.is_none());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DraftOptions {
    /// Ease by place.
    pub ease: Ease,
    /// Waist to hem in millimetres; to the knee when none is given.
    pub skirt_length: Option<f64>,
}

/// Drafts a block for a body.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, Ease, Fit, draft};
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0),
///     (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0),
///     (Measurement::HipGirth, 1000.0),
/// ])?;
/// let options = DraftOptions { ease: Ease::of(Fit::Regular), skirt_length: Some(600.0) };
/// let pattern = draft(Block::BodiceAndSkirt, &body, &options)?;
/// assert_eq!(pattern.pieces().len(), 4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the block cannot be drafted for this body; the error names what stands against it.
pub fn draft(block: Block, body: &Body, options: &DraftOptions) -> Result<Pattern, DraftError> {
    let figure = Figure::from(body);
    let skirt = || skirt(&figure, &options.ease, options.skirt_length);
    match block {
        Block::Bodice => bodice(&figure, &options.ease),
        Block::Skirt => skirt(),
        Block::BodiceAndSkirt => join_at_waist(bodice(&figure, &options.ease)?, skirt()?),
    }
}
