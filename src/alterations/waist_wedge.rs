//! A wedge taken from the waist at the fold.

use super::waist_edge::{DartWanted, DartsPoint, WaistSpec, waistline};
use super::{AlterationError, Sketch};
use crate::geometry::{Curve, Vec2};
use crate::piece::{EdgeName, Piece};

/// On a bodice or skirt: a wedge from the waist at the fold, to nothing at the side seam. The
/// waist edge is redrawn from the moved centre, square to the fold, at its sewn length, each
/// dart at its old distance from the fold and with its old apex level.
pub(super) fn waist_wedge(piece: &Piece, amount: f64) -> Result<Piece, AlterationError> {
    let waist = &EdgeName::WAIST;
    let missing = || AlterationError::Missing {
        what: format!("a waist edge on the {} that ends on the fold", piece.name()),
        advice: "back length is reduced on a back cut on the fold",
    };
    let edge = piece.outline().edge(waist).ok_or_else(missing)?.curve();
    let fold = piece
        .outline()
        .edge(&EdgeName::CENTRE_BACK)
        .ok_or_else(missing)?
        .curve();
    let length = piece.seam_length(waist).ok_or_else(missing)?;
    // A bodice's outline reaches its waist from the side, a skirt's from the fold.
    let from_fold = edge.start().x.abs() < edge.end().x.abs();
    let (outward, point) = if from_fold {
        (edge.clone(), DartsPoint::Down)
    } else {
        (edge.reversed(), DartsPoint::Up)
    };
    let mouths = piece.mouths(waist);
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
    // The centre comes up on a bodice, down on a skirt: either way its fold gets shorter.
    let step = if from_fold { amount } else { -amount };
    let centre = outward.start() + Vec2::new(0.0, step);
    let drawn = waistline(&WaistSpec {
        centre,
        side: outward.end(),
        arrive: outward.end_direction(),
        length,
        darts,
        point,
    })
    .map_err(|source| AlterationError::Construction {
        step: "waist edge with the wedge taken out",
        source,
    })?;
    let drawn = if from_fold { drawn } else { drawn.reversed() };
    let mut sketch = Sketch::of(piece);
    sketch.replace(waist, drawn.edge)?;
    let fold = if from_fold {
        Curve::line(fold.start(), centre)?
    } else {
        Curve::line(centre, fold.end())?
    };
    sketch.replace(&EdgeName::CENTRE_BACK, fold)?;
    for dart in sketch.darts_mut() {
        if let Some(redrawn) = drawn.darts.iter().find(|d| d.name == dart.name) {
            *dart = redrawn.clone();
        }
    }
    let grain = &mut sketch.parts_mut().grain;
    if from_fold {
        grain[1].y = grain[1].y.max(centre.y + 18.0);
    } else {
        grain[0].y = grain[0].y.min(centre.y - 12.0);
    }
    sketch.finish()
}
