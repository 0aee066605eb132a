//! What every block of the trunk shares: the edges from neck to underarm, the front's side
//! seam with its bust dart, the marks.

use super::armscye::{self, Armscye};
use super::frame::Frame;
use super::{DraftError, shoulder::BackShoulder};
use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, crossings, tolerance};
use crate::piece::{
    Apexes, BalanceLine, Cut, Dart, Edge, EdgeName, EdgeRole, Girth, GirthRun, Notch, NotchKind,
    Outline, PatternParts, Piece, PieceParts, Pressed, RunAlong, shaped_mouth,
};

/// A waist dart is this long where the lengths allow it, in millimetres.
const SHORTEST_DART: f64 = 90.0;

/// The back waist dart ends up to 20 mm below the underarm line (value from memory).
const BACK_DART_BELOW: f64 = 12.0;

/// The front waist dart ends 20 to 25 mm below the bust point (value from memory).
const FRONT_DART_BELOW: f64 = 22.0;

/// A block of the trunk drafted, and the frame it stands on.
pub(super) struct Drafted {
    pub pattern: PatternParts,
    pub frame: Frame,
}

/// Level of the upper apex of the back waist dart.
pub(super) fn back_dart_level(frame: &Frame) -> f64 {
    dart_level(frame, frame.underarm, BACK_DART_BELOW)
}

/// Level of the upper apex of the front waist dart.
pub(super) fn front_dart_level(frame: &Frame) -> f64 {
    dart_level(frame, frame.bust_tip.y, FRONT_DART_BELOW)
}

/// Below a level, but never so low that the dart gets stubby.
fn dart_level(frame: &Frame, level: f64, below: f64) -> f64 {
    (level + below).min((frame.waist - SHORTEST_DART).max(level))
}

/// The upper edges of one half: neckline, shoulder, armscye; and the armscye's place.
pub(super) struct Top {
    pub edges: Vec<Edge>,
    pub armscye: Armscye,
    pub shoulder_dart: Option<Dart>,
}

fn top(neckline: Curve, shoulder: Curve, armscye: Armscye, dart: Option<Dart>) -> Top {
    Top {
        edges: vec![
            Edge::new(EdgeName::NECKLINE, EdgeRole::Opening, neckline),
            Edge::new(EdgeName::SHOULDER, EdgeRole::Seam, shoulder),
            Edge::new(EdgeName::ARMSCYE, EdgeRole::Seam, armscye.curve.clone()),
        ],
        armscye,
        shoulder_dart: dart,
    }
}

/// The back from nape to underarm.
pub(super) fn back_top(frame: &Frame) -> Result<Top, DraftError> {
    let BackShoulder {
        edge,
        dart,
        slope_at_neck,
        ..
    } = frame.shoulders.back()?;
    Ok(top(
        frame.neck.back(slope_at_neck)?,
        edge,
        armscye::back(frame)?,
        dart,
    ))
}

/// The front from neck to underarm, the bust dart open.
pub(super) fn front_top(frame: &Frame) -> Result<Top, DraftError> {
    let neckline = frame
        .neck
        .front(frame.shoulders.front_slope, frame.front_side)?;
    let tip = frame.shoulders.front_point(frame.front_side);
    let shoulder = Curve::line(frame.front_side, tip)?;
    Ok(top(neckline, shoulder, armscye::front(frame)?, None))
}

/// The back's side seam.
pub(super) fn back_side_seam(frame: &Frame) -> Curve {
    frame
        .side
        .moved(&Rigid::shift(frame.back_underarm().to_vec2()))
}

/// The front's side seam, congruent to the back's when the bust dart is closed, and that dart.
///
/// The part above the dart is turned about the dart's tip; so both legs are equally long and
/// the closed seam runs on without a bend.
pub(super) fn front_side_seam(frame: &Frame) -> Result<(Curve, Option<Dart>), DraftError> {
    let underarm = Vec2::new(frame.front_chest_closed, frame.underarm);
    let closed = frame.side.moved(&Rigid::shift(underarm));
    if frame.bust_angle.abs() <= tolerance::ANGLE {
        return Ok((closed, None));
    }
    let tip = frame.bust_tip;
    let opening = frame.opening();
    // The dart runs slightly down from the tip to the side seam, clear of underarm and waist.
    let level = (tip.y + 22.0)
        .max(frame.underarm + 36.0)
        .min(frame.waist - 40.0);
    let across = Curve::line(Point::new(0.0, level), Point::new(3.0 * underarm.x, level))?;
    let built = || -> Result<(Curve, Dart), GeometryError> {
        let crossing = crossings(closed.segments(), across.segments());
        let at = crossing.first().ok_or(GeometryError::Parallel)?.point;
        let (above, below) = closed.split_at(closed.nearest(at).1)?;
        let above = above.moved(&opening);
        let legs = [above.end(), below.start()];
        // A side dart is pressed down (common practice): it lies on the part below.
        let mouth = shaped_mouth(tip, legs, &below, Pressed::TowardSecondLeg)?;
        let dart = Dart {
            name: "bust".to_owned(),
            edge: Some(EdgeName::SIDE_SEAM),
            legs,
            apexes: Apexes::One(tip),
            pressed: Pressed::TowardSecondLeg,
        };
        Ok((above.then(&mouth)?.then(&below)?, dart))
    };
    let (seam, dart) = built().map_err(|source| DraftError::Construction {
        step: "bust dart",
        from: "front_waist_length, bust_point_width, neck_to_bust_point",
        source,
    })?;
    Ok((seam, Some(dart)))
}

/// A level line from the fold.
pub(super) fn line(name: &str, to: Point) -> Result<BalanceLine, DraftError> {
    Ok(BalanceLine {
        name: name.to_owned(),
        curve: Curve::line(Point::new(0.0, to.y), to)?,
    })
}

/// The width and bust lines of a half.
pub(super) fn upper_lines(top: &Top, underarm: Point) -> Result<Vec<BalanceLine>, DraftError> {
    Ok(vec![
        line("width", top.armscye.width_point)?,
        line("bust", underarm)?,
    ])
}

/// What is marked on one half.
pub(super) struct Marked {
    pub name: &'static str,
    pub outline: Outline,
    pub darts: Vec<Dart>,
    /// Where along the armscye its notch is.
    pub armscye_at: f64,
    pub armscye_notch: NotchKind,
    /// Notches on the side seam: name and place along the sewn seam.
    pub side: Vec<(&'static str, f64)>,
    pub lines: Vec<BalanceLine>,
    /// Levels of the upper and the lower end of the fold.
    pub fold: (f64, f64),
}

/// Marks the piece: grain beside the fold, notches, drill points.
pub(super) fn marked(frame: &Frame, m: Marked) -> Result<Piece, DraftError> {
    let grain_x = 0.16 * frame.back_width;
    let drill_points = m.darts.iter().flat_map(Dart::drill_points).collect();
    let piece = Piece::new(PieceParts {
        name: m.name.to_owned(),
        side: None,
        cut: Cut::Fold,
        outline: m.outline,
        darts: m.darts,
        grain: [
            Point::new(grain_x, m.fold.1 - 18.0),
            Point::new(grain_x, m.fold.0 + 18.0),
        ],
        notches: vec![Notch {
            name: format!("{} armscye", m.name),
            edge: EdgeName::ARMSCYE,
            at: m.armscye_at,
            kind: m.armscye_notch,
        }],
        lines: m.lines,
        drill_points,
        points: vec![],
    })?;
    let side: Vec<Notch> = m
        .side
        .into_iter()
        .map(|(name, sewn)| Notch {
            name: name.to_owned(),
            edge: EdgeName::SIDE_SEAM,
            at: piece.open_position(&EdgeName::SIDE_SEAM, sewn),
            kind: NotchKind::Single,
        })
        .collect();
    let mut parts = piece.into_parts();
    parts.notches.extend(side);
    Ok(Piece::new(parts)?)
}

/// A girth of body and ease, measured along the same line of every piece named.
pub(super) fn girth(
    name: &str,
    (body, ease): (f64, f64),
    pieces: &[&str],
    along: &RunAlong,
) -> Girth {
    Girth {
        name: name.to_owned(),
        side: None,
        body,
        ease,
        limb: false,
        runs: pieces
            .iter()
            .map(|piece| GirthRun {
                piece: (*piece).to_owned(),
                along: along.clone(),
            })
            .collect(),
    }
}
