//! For whom the benches draft, and what.

use blockwright::draft::{Block, DraftOptions, SleeveLength};
use blockwright::measurements::{Body, Measurement};

/// A body of that bust, the other girths and the height going with it.
pub fn body(bust: f64) -> Body {
    Body::from_taken([
        (Measurement::Height, 1680.0 + 0.2 * (bust - 920.0)),
        (Measurement::BustGirth, bust),
        (Measurement::WaistGirth, bust - 160.0),
        (Measurement::HipGirth, bust + 80.0),
    ])
    .expect("a plausible body")
}

/// A dress with a long sleeve.
pub fn dress() -> DraftOptions {
    let mut options = DraftOptions::of(Block::Dress);
    options.sleeve = Some(SleeveLength::Long);
    options
}
