//! A dart brought to where on its edge it points at a place.

use super::dart_opening::Opening;
use super::dart_swing::Swing;
use super::dart_tip::aim_dart;
use crate::alterations::AlterationError;
use crate::geometry::{Point, Span, root, tolerance};
use crate::piece::{Dart, Piece};

/// A dart is brought no nearer than this to the ends of its edge, in millimetres.
const FROM_END: f64 = 8.0;

/// The place is sought within these shares of the edge on either side of where the dart opens, then
/// on all of it.
const BESIDE: [f64; 4] = [0.04, 0.12, 0.3, 1.0];

/// The piece with a dart brought to where on its edge it points at a place, and its tip there.
pub(in crate::alterations) fn aimed_at(
    piece: &Piece,
    dart: &Dart,
    to: Point,
) -> Result<Piece, AlterationError> {
    let unreached = || AlterationError::First {
        why: format!("the {} dart cannot be made to point there", dart.name),
        advice: "move it along its edge first (dart_relocation)".to_owned(),
    };
    let name = dart.edge.as_ref().ok_or_else(unreached)?;
    let beside = |dart: &Dart| {
        let axis = (dart.apex() - dart.legs[0].midpoint(dart.legs[1])).normalize();
        axis.cross(to - dart.apex())
    };
    let length = piece.seam_length(name).ok_or_else(unreached)?;
    let brought = |share: f64| -> Result<Piece, AlterationError> {
        let swing = Swing {
            piece,
            dart,
            share: 1.0,
            into: Opening::place(piece, name, share)?,
            name: dart.name.clone(),
        };
        swing.made()
    };
    let mut there = piece.clone();
    if beside(dart).abs() > tolerance::POINT {
        let now = Opening::dart(piece, &dart.name).ok_or_else(unreached)?;
        let now = piece.sewn_position(name, now.from) / length;
        let end = FROM_END / length;
        let free = Span::from_low(end, (1.0 - end).max(end));
        let within = |share: f64| free.nearest(share);
        let share = BESIDE.into_iter().find_map(|by| {
            let miss = |share: f64| {
                let made = brought(share).ok();
                made.and_then(|made| made.dart(&dart.name).map(&beside))
                    .unwrap_or(f64::NAN)
            };
            root("place of a dart", within(now - by), within(now + by), miss).ok()
        });
        there = brought(share.ok_or_else(unreached)?)?;
    }
    let dart = there.dart(&dart.name).ok_or_else(unreached)?;
    let middle = dart.legs[0].midpoint(dart.legs[1]);
    if (dart.apex() - middle).dot(to - middle) <= 0.0 {
        return Err(unreached());
    }
    aim_dart(&there, dart, to)
}
