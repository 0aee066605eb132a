//! Bodies, and the garments drafted for them.

use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::measurements::{Body, Measurement as M};
use blockwright::piece::Pattern;

/// One garment for one wearer.
pub struct Garment {
    pub what: String,
    pub pattern: Pattern,
}

pub const BLOCKS: [Block; 5] = [
    Block::Bodice,
    Block::BodiceAndSkirt,
    Block::Dress,
    Block::Tunic,
    Block::Shirt,
];

/// Height, bust, waist and hip of small, mean, tall, full and straight figures.
const BODIES: [(&str, [f64; 4]); 6] = [
    ("small", [1520.0, 800.0, 630.0, 880.0]),
    ("mean", [1650.0, 920.0, 760.0, 1000.0]),
    ("tall", [1815.0, 985.0, 722.0, 1058.0]),
    ("full", [1640.0, 1120.0, 980.0, 1190.0]),
    ("largest", [1600.0, 1250.0, 1090.0, 1270.0]),
    ("straight", [1700.0, 860.0, 800.0, 900.0]),
];

pub fn body(which: usize) -> Body {
    let (_, [height, bust, waist, hip]) = BODIES[which % BODIES.len()];
    Body::from_taken([
        (M::Height, height),
        (M::BustGirth, bust),
        (M::WaistGirth, waist),
        (M::HipGirth, hip),
    ])
    .unwrap()
}

pub fn pattern(block: Block, sleeve: bool, which: usize) -> Pattern {
    let mut options = DraftOptions::of(block);
    options.sleeve = sleeve.then_some(SleeveLength::Long);
    draft(&body(which), &options).unwrap()
}

/// Every block with shoulders, with and without sleeve, for every body.
pub fn wardrobe() -> Vec<Garment> {
    let mut found = Vec::new();
    for (which, (wearer, _)) in BODIES.iter().enumerate() {
        for block in BLOCKS {
            for sleeve in [false, true] {
                let with = if sleeve { " with sleeve" } else { "" };
                found.push(Garment {
                    what: format!("{} for the {wearer}{with}", block.name()),
                    pattern: pattern(block, sleeve, which),
                });
            }
        }
    }
    found
}

/// Whether the back shoulder is eased, without a dart.
pub fn eased(pattern: &Pattern) -> bool {
    pattern
        .pieces()
        .iter()
        .all(|p| p.dart("shoulder").is_none())
}
