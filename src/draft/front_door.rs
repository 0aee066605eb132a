//! The front door: a block, with a sleeve if wanted, for a body.

use super::choices::{Block, Side};
use super::join::join_at_waist;
use super::one_piece::one_piece;
use super::openings::with_openings;
use super::options::DraftOptions;
use super::remarks::remarks;
use super::set_in::{Set, set_in};
use super::shaping::{Lower, Shaping, ShoulderFullness, SideLine};
use super::{DraftError, Figure, bodice, skirt};
use crate::measurements::Body;
use crate::piece::Pattern;

/// By how much the back shoulder of a block without shoulder dart is longer and eased in:
/// 6 mm (Woman Encyclopaedia, bodice drafting lesson).
const SHOULDER_EASE: f64 = 6.0;

/// A tunic ends this share of the way from waist to knee unless a length is given: at the
/// middle of the thigh.
const TUNIC_LENGTH: f64 = 0.62;

/// A shirt ends this far below the hip line unless a length is given, in millimetres.
const SHIRT_BELOW_HIP: f64 = 40.0;

/// Drafts a block for a body.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0),
///     (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0),
///     (Measurement::HipGirth, 1000.0),
/// ])?;
/// let mut options = DraftOptions::of(Block::Dress);
/// options.sleeve = Some(SleeveLength::Long);
/// let pattern = draft(&body, &options)?;
/// assert_eq!(pattern.pieces().len(), 3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the block cannot be drafted for this body; the error names what stands against it.
pub fn draft(body: &Body, options: &DraftOptions) -> Result<Pattern, DraftError> {
    let figure = Figure::from(body);
    let pattern = draft_figure(&figure, options)?;
    let remarks = remarks(body, &figure, &pattern);
    if remarks.is_empty() {
        return Ok(pattern);
    }
    let mut parts = pattern.into_parts();
    parts.warnings.extend(remarks);
    Ok(Pattern::new(parts)?)
}

/// Drafts a block for a figure: as [`draft`], from plain numbers.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Skirt))?;
/// assert_eq!(pattern.block(), "skirt");
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
///
/// # Errors
/// When the block cannot be drafted for this figure; the error names what stands against it.
pub fn draft_figure(figure: &Figure, options: &DraftOptions) -> Result<Pattern, DraftError> {
    let pattern = block(figure, options)?;
    Ok(Pattern::new(with_openings(pattern, figure, options.block))?)
}

/// The block with its sleeve, and nothing said about how to get into it.
fn block(figure: &Figure, options: &DraftOptions) -> Result<Pattern, DraftError> {
    figure.check()?;
    options.check()?;
    let ease = &options.ease;
    if options.block == Block::Skirt {
        return skirt(figure, ease, options.length);
    }
    let set = |parts| set_in(parts, figure, ease, options, &Set::of(options.block));
    match options.block {
        Block::BodiceAndSkirt => {
            let upper = set(bodice::parts(figure, ease)?)?;
            join_at_waist(upper, skirt(figure, ease, options.length)?)
        }
        Block::Bodice => set(bodice::parts(figure, ease)?),
        block => {
            let shaping = shaping_of(figure, options);
            set(one_piece(block.name(), figure, ease, &shaping)?)
        }
    }
}

/// How a block other than the skirt is shaped.
pub(super) fn shaping_of(figure: &Figure, options: &DraftOptions) -> Shaping {
    let shaping = |side: Side, shoulder, length: f64| Shaping {
        shoulder,
        lower: Lower::Hem {
            darts: options.has_waist_darts(),
            side: match options.side.unwrap_or(side) {
                Side::Shaped => SideLine::Shaped,
                Side::Straight => SideLine::Straight,
            },
            length: options.length.unwrap_or(length),
        },
    };
    let eased = ShoulderFullness::Eased(SHOULDER_EASE);
    match options.block {
        Block::Bodice | Block::BodiceAndSkirt | Block::Skirt => Shaping::BODICE,
        Block::Dress => shaping(Side::Shaped, ShoulderFullness::Dart, figure.waist_to_knee),
        Block::Tunic => shaping(Side::Shaped, eased, TUNIC_LENGTH * figure.waist_to_knee),
        Block::Shirt => shaping(Side::Straight, eased, figure.waist_to_hip + SHIRT_BELOW_HIP),
    }
}
