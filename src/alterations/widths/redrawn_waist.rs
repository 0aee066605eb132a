//! A waist edge redrawn after its ends moved: its darts at their old places on the sewn waist.

use super::waist_edge::{DartWanted, DartsPoint, WaistSpec, waistline};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::Vec2;
use crate::piece::{EdgeName, Piece};

/// What moves at a waist edge.
pub(in crate::alterations) struct WaistMoves<'f> {
    /// By how much the centre moves.
    pub centre: Vec2,
    /// By how much the end at the side seam moves.
    pub side: Vec2,
    /// By how much the sewn edge gets longer.
    pub longer: f64,
    /// By how much the apex of a dart goes down, by its place on the sewn waist: 0 at the centre,
    /// 1 at the side seam.
    pub apex: &'f dyn Fn(f64) -> f64,
}

/// How far a dart's apex may come out beside where it is when the waist is redrawn unchanged, in
/// millimetres: a dart that does not stand square to its waist is no waist dart any more.
const ASTRAY: f64 = 3.0;

/// Whether a piece's outline reaches its waist from the fold, as a skirt's does.
pub(in crate::alterations) fn from_fold(piece: &Piece) -> bool {
    piece.outline().edge(&EdgeName::WAIST).is_some_and(|e| {
        let curve = e.curve();
        curve.start().x.abs() < curve.end().x.abs()
    })
}

/// Redraws the waist between its moved ends at its length, directions at both ends kept; the
/// darts take in what that needs.
///
/// # Errors
/// When the waist has no dart to be solved for, one that is no waist dart, or no solution.
pub(in crate::alterations) fn redraw_waist(
    sketch: &mut Sketch,
    piece: &Piece,
    moves: &WaistMoves<'_>,
) -> Result<(), AlterationError> {
    let waist = &EdgeName::WAIST;
    let from_fold = from_fold(piece);
    let edge = sketch.curve(waist)?.clone();
    let mouths = piece.mouths(waist);
    if mouths.is_empty() {
        return Err(AlterationError::Missing {
            what: format!("a waist dart on the {}", piece.name()),
            advice: "without a waist dart nothing takes the width back; alter the side seams (waist_girth, hip_girth) instead",
        });
    }
    let length = piece.seam_length(waist).unwrap_or(edge.length());
    let total: f64 = mouths.iter().map(|(d, ..)| d.intake()).sum();
    let mut darts: Vec<DartWanted> = mouths
        .iter()
        .map(|(dart, from, _)| {
            let sewn = piece.sewn_position(waist, *from);
            DartWanted {
                name: dart.name.clone(),
                at: if from_fold { sewn } else { length - sewn },
                apex_level: dart.apex().y,
                share: dart.intake() / total,
            }
        })
        .collect();
    darts.sort_by(|a, b| a.at.total_cmp(&b.at));
    let outward = if from_fold { edge } else { edge.reversed() };
    let mut spec = WaistSpec {
        centre: outward.start(),
        side: outward.end(),
        arrive: outward.end_direction(),
        length,
        darts,
        point: if from_fold {
            DartsPoint::Down
        } else {
            DartsPoint::Up
        },
    };
    let solve = |spec: &WaistSpec| {
        waistline(spec).map_err(|source| AlterationError::Construction {
            step: "waist edge redrawn",
            source,
        })
    };
    // Redrawn where it is, a waist dart comes out as it is.
    for redrawn in solve(&spec)?.darts {
        let old = piece.dart(&redrawn.name).map(|d| d.apex());
        if old.is_none_or(|apex| apex.distance(redrawn.apex()) > ASTRAY) {
            return Err(AlterationError::First {
                why: format!(
                    "the {} dart of the {} does not stand square to the waist",
                    redrawn.name,
                    piece.name()
                ),
                advice: "make this alteration before darts are relocated".to_owned(),
            });
        }
    }
    spec.centre += moves.centre;
    spec.side += moves.side;
    spec.length += moves.longer;
    for dart in &mut spec.darts {
        dart.apex_level += (moves.apex)(dart.at / length);
    }
    let drawn = solve(&spec)?;
    let drawn = if from_fold { drawn } else { drawn.reversed() };
    for dart in sketch.darts_mut() {
        if let Some(redrawn) = drawn.darts.iter().find(|d| d.name == dart.name) {
            *dart = redrawn.clone();
        }
    }
    sketch.replace(waist, drawn.edge)
}
