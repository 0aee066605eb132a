//! What a fitted block is to measure.

use crate::piece::{EdgeName, Measure, MeasureKind, MeasureUnit, Pattern};
use std::fmt;

/// What is read off a pattern: a measure, or where a balance line lies, which no edge shows on a
/// block in one piece.
///
/// ```
/// use blockwright::fit::Aimed;
/// let waist = Aimed::Level { piece: "back".into(), line: "waist".into() };
/// assert_eq!(waist.to_string(), "back waist line below the neck");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum Aimed {
    /// A measure, in its unit.
    Measure(Measure),
    /// How far a balance line lies below the neck at the centre of its piece, in millimetres; on a
    /// sleeve, below the biceps line.
    Level {
        /// The piece.
        piece: String,
        /// The line.
        line: String,
    },
    /// Length of a balance line, in millimetres: on a piece cut on the fold half of the width.
    Width {
        /// The piece.
        piece: String,
        /// The line.
        line: String,
    },
}

impl fmt::Display for Aimed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Measure(measure) => measure.fmt(f),
            Self::Level { piece, line } if line == "elbow" => {
                write!(f, "{piece} {line} line below the biceps line")
            }
            Self::Level { piece, line } => write!(f, "{piece} {line} line below the neck"),
            Self::Width { piece, line } => write!(f, "{piece} {line} line"),
        }
    }
}

impl Aimed {
    /// Its unit.
    #[must_use]
    pub const fn unit(&self) -> MeasureUnit {
        match self {
            Self::Measure(measure) => measure.unit(),
            Self::Level { .. } | Self::Width { .. } => MeasureUnit::Millimetres,
        }
    }

    /// Its value on a pattern; none where the pattern has no such thing.
    #[must_use]
    pub fn on(&self, pattern: &Pattern) -> Option<f64> {
        let value = match self {
            Self::Measure(measure) => pattern.measured(measure)?,
            Self::Level { piece, line } => {
                let piece = pattern.piece(piece)?;
                let level = piece.line(line)?.curve.start().y;
                let neck = piece.outline().edge(&EdgeName::NECKLINE);
                let from = match neck {
                    // The fold is at x = 0, so that the end nearer to it is the centre.
                    Some(neck) => {
                        let (start, end) = (neck.curve().start(), neck.curve().end());
                        if start.x < end.x { start.y } else { end.y }
                    }
                    None => piece.line("biceps")?.curve.start().y,
                };
                level - from
            }
            Self::Width { piece, line } => pattern.piece(piece)?.line(line)?.curve.length(),
        };
        value.is_finite().then_some(value)
    }

    /// Everything that counts on a pattern.
    fn all(pattern: &Pattern) -> Vec<Self> {
        let mut all: Vec<Self> = pattern
            .measures()
            .into_iter()
            .map(|(measure, _)| Self::Measure(measure))
            .collect();
        for piece in pattern.pieces() {
            for line in piece.lines() {
                let (piece, line) = (piece.name().to_owned(), line.name.clone());
                match line.as_str() {
                    "waist" | "hip" | "elbow" => all.push(Self::Level { piece, line }),
                    "width" => all.push(Self::Width { piece, line }),
                    _ => {}
                }
            }
        }
        all
    }

    /// Square root of what a squared miss of a millimetre or degree counts.
    ///
    /// A girth decides how a garment fits, so that a millimetre of it counts three times; a degree
    /// of the shoulder is two millimetres at its point. What follows from the rest (caps, hems,
    /// waist darts) counts little or nothing.
    fn weight(&self) -> f64 {
        let measure = match self {
            Self::Measure(measure) => measure,
            Self::Level { .. } => return 0.4,
            Self::Width { .. } => return 0.5,
        };
        match measure.kind() {
            MeasureKind::FinishedGirth { .. } => 3.0,
            MeasureKind::ShoulderSlope { .. } => 2.0,
            MeasureKind::EdgeLength { edge, .. }
                if [EdgeName::SLEEVE_CAP, EdgeName::WRIST, EdgeName::WAIST].contains(edge) =>
            {
                0.0
            }
            MeasureKind::EdgeLength { edge, .. } if *edge == EdgeName::HEM => 0.5,
            MeasureKind::EdgeLength { .. } => 1.0,
            MeasureKind::DartAngle { dart, .. } if dart == "bust" => 0.7,
            MeasureKind::DartAngle { dart, .. } if dart == "shoulder" => 0.3,
            _ => 0.0,
        }
    }
}

/// What is to become of one of them.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Aim {
    pub of: Aimed,
    /// On the block as it stands.
    pub before: f64,
    /// On the block when it fits.
    pub wanted: f64,
    pub weight: f64,
}

/// All that counts, with what it is to become: what it is on the block, and on top what the draft
/// for the wearer has more than the draft for the block's own body.
pub(super) fn aims(block: &Pattern, own: &Pattern, hers: &Pattern) -> Vec<Aim> {
    let all = Aimed::all(block).into_iter();
    all.filter_map(|of| {
        let weight = of.weight();
        let (before, own, hers) = (of.on(block)?, of.on(own)?, of.on(hers)?);
        (weight > 0.0).then_some(Aim {
            of,
            before,
            wanted: before + hers - own,
            weight,
        })
    })
    .collect()
}
