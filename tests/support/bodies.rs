//! Bodies to draft for, and the sets of the repository.

use blockwright::draft::{Block, DraftOptions, SleeveLength};
use blockwright::measurements::{Body, Measurement as M};

/// A body of the four measurements that every body has, in millimetres.
pub fn body(height: f64, bust: f64, waist: f64, hip: f64) -> Body {
    body_with([height, bust, waist, hip], &[])
}

/// A body of height, bust, waist and hip in millimetres, and more that was taken.
pub fn body_with(four: [f64; 4], more: &[(M, f64)]) -> Body {
    let required = [M::Height, M::BustGirth, M::WaistGirth, M::HipGirth];
    let taken = required.into_iter().zip(four).chain(more.iter().copied());
    Body::from_taken(taken).expect("a possible body")
}

/// A file of the repository, by its path from the top.
pub fn repository_file(path: &str) -> String {
    let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(path);
    std::fs::read_to_string(path).expect("a file of the repository")
}

/// The set of a wearer of the repository.
#[cfg(feature = "yaml")]
pub fn set(wearer: &str) -> blockwright::measurements::MeasurementSet {
    let text = repository_file(&format!("measurement-sets/{wearer}.yaml"));
    blockwright::measurements::MeasurementSet::parse(&text).expect("a sound set")
}

/// A block with the sleeve it usually has.
pub fn with_usual_sleeve(block: Block) -> DraftOptions {
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(match block {
        Block::Shirt => SleeveLength::Short,
        _ => SleeveLength::Long,
    });
    options
}

/// A small generator: what is random here must be the same on every run.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    /// A number from `low` to `high`.
    pub fn within(&mut self, low: f64, high: f64) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        low + (high - low) * ((self.0 >> 11) as f64 / (1u64 << 53) as f64)
    }
}
