//! What the benches alter.

use blockwright::alterations::{Alteration, BackLengthReduction, DartRelocation, ShoulderSlope};

/// Three alterations of a dress: of a length, of a slope, of a dart.
pub fn three() -> Vec<Box<dyn Alteration>> {
    vec![
        Box::new(BackLengthReduction::by(20.0)),
        Box::new(ShoulderSlope::by(3.0)),
        Box::new(DartRelocation::to("bust", "shoulder", 0.5)),
    ]
}
