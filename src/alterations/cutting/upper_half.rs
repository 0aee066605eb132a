//! The upper half of a trunk piece: its edges from neck to underarm, and how they are redrawn
//! together when the shoulder moves.

use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point};
use crate::piece::{Dart, EdgeName, Pattern, Piece};

/// The upper half of a back or front.
pub(in crate::alterations) struct UpperHalf<'p> {
    pub piece: &'p Piece,
    pub neckline: &'p Curve,
    pub shoulder: &'p Curve,
    pub armscye: &'p Curve,
    pub side: &'p Curve,
    /// How far along the armscye the width of the back or front is.
    pub width_at: f64,
}

const ADVICE: &str = "this alteration works on a back and a front with neckline, shoulder, armscye and side seam, of bodice, dress, tunic or shirt";

impl<'p> UpperHalf<'p> {
    /// The back of a pattern.
    pub fn back(pattern: &'p Pattern) -> Result<Self, AlterationError> {
        Self::with_fold(pattern, &EdgeName::CENTRE_BACK)
    }

    /// The front of a pattern.
    pub fn front(pattern: &'p Pattern) -> Result<Self, AlterationError> {
        Self::with_fold(pattern, &EdgeName::CENTRE_FRONT)
    }

    fn with_fold(pattern: &'p Pattern, fold: &EdgeName) -> Result<Self, AlterationError> {
        let half = pattern.pieces().iter().find_map(|piece| {
            piece.outline().edge(fold)?;
            Self::of(piece)
        });
        half.ok_or_else(|| AlterationError::Missing {
            what: format!("an upper half with {fold}"),
            advice: ADVICE,
        })
    }

    /// Of a piece; none where one of its edges is missing.
    pub fn of(piece: &'p Piece) -> Option<Self> {
        let edge = |name: &EdgeName| piece.outline().edge(name).map(|e| e.curve());
        let armscye = edge(&EdgeName::ARMSCYE)?;
        let notch = piece.notches().iter().find(|n| n.edge == EdgeName::ARMSCYE);
        let half = 0.5 * armscye.length();
        Some(Self {
            piece,
            neckline: edge(&EdgeName::NECKLINE)?,
            shoulder: edge(&EdgeName::SHOULDER)?,
            armscye,
            side: edge(&EdgeName::SIDE_SEAM)?,
            width_at: notch.map_or(half, |n| n.at),
        })
    }

    /// The dart on the shoulder, if there is one.
    pub fn shoulder_dart(&self) -> Option<&'p Dart> {
        let mouths = self.piece.mouths(&EdgeName::SHOULDER);
        mouths.first().map(|(dart, ..)| *dart)
    }

    /// The armscye above and below the width point.
    pub fn armscye_parts(&self) -> Result<(Curve, Curve), GeometryError> {
        self.armscye.split_at(self.width_at)
    }
}

/// Draws a balance line level, from where it starts to the side, ending at a point.
pub(in crate::alterations) fn put_level(
    sketch: &mut Sketch,
    name: &str,
    end: Point,
) -> Result<(), AlterationError> {
    for line in sketch.lines_mut().iter_mut().filter(|l| l.name == name) {
        let from = Point::new(line.curve.start().x, end.y);
        line.curve = Curve::line(from, end)?;
    }
    Ok(())
}
