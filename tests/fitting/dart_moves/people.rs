//! Blocks to move darts on.

use crate::support;
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::measurements::Body;
use blockwright::piece::Pattern;

/// A body by bust, waist, hip and height.
pub fn body(bust: f64, waist: f64, hip: f64, height: f64) -> Body {
    support::bodies::body(height, bust, waist, hip)
}

/// A block for it, with a sleeve where one fits; none where the draft itself refuses the body.
pub fn block(block: Block, body: &Body) -> Option<Pattern> {
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(SleeveLength::Long);
    draft(body, &options).ok()
}

/// A block for a usual woman.
pub fn usual(of: Block) -> Pattern {
    block(of, &body(920.0, 740.0, 990.0, 1680.0)).unwrap()
}
