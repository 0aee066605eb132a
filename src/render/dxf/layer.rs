//! The layers of the practice.

/// What is on a layer, by its number: the layers of ASTM D6673 and ANSI/AAMA-292, values from
/// memory. Layers that a block has nothing for (grade reference 5, stripes 9, plaids 10, cut-outs
/// 11) are not there; 12 is left blank by the practice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Layer {
    /// The line to cut along and the texts that programs read.
    Boundary = 1,
    /// Corners of the boundary.
    TurnPoints = 2,
    /// Points of the boundary along a curve.
    CurvePoints = 3,
    /// Notches.
    Notches = 4,
    /// The fold.
    MirrorLine = 6,
    /// The grain line.
    GrainLine = 7,
    /// Drawn, not cut: balance lines and the legs of darts.
    InternalLines = 8,
    /// Drill holes.
    DrillHoles = 13,
    /// Stitching lines inside an allowance.
    SewLines = 14,
    /// Texts for people.
    Annotation = 15,
}

impl Layer {
    /// The name in the file: the number.
    pub(super) fn name(self) -> String {
        (self as u8).to_string()
    }
}
