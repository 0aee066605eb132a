//! What every block of the trunk shares: the edges from neck to underarm, the front's side
//! seam with its bust dart, the marks.

use super::armscye::{self, Armscye};
use super::bust_dart::FrontSide;
use super::frame::Frame;
use super::{DraftError, shoulder::BackShoulder};
use crate::geometry::{Curve, Point, Rigid, tolerance};
use crate::piece::{
    BUST_POINT, BalanceLine, Cut, Dart, EaseOn, Edge, EdgeName, EdgeRef, EdgeRole, Girth, GirthRun,
    NamedPoint, Notch, NotchKind, Outline, PatternParts, Piece, PieceParts, RunAlong, Seam,
    level_through,
};

/// A waist dart is this long where the lengths allow it, in millimetres.
const SHORTEST_DART: f64 = 90.0;

/// The back waist dart ends up to 20 mm below the underarm line (value from memory).
const BACK_DART_BELOW: f64 = 12.0;

/// A notch on the side seam stands at least so far from a leg of a dart and from the ends of the
/// seam, along the seam in millimetres: in a straight line 15 or more.
const NOTCH_CLEAR: f64 = 21.0;

/// A block of the trunk drafted, and the frame it stands on.
pub(super) struct Drafted {
    pub pattern: PatternParts,
    pub frame: Frame,
}

/// Level of the upper apex of the back waist dart: below the underarm, but never so low that the
/// dart gets stubby.
pub(super) fn back_dart_level(frame: &Frame) -> f64 {
    let level = frame.underarm;
    (level + BACK_DART_BELOW).min((frame.waist - SHORTEST_DART).max(level))
}

/// The upper edges of one half: neckline, shoulder, armscye; and the armscye's place.
pub(super) struct Top {
    pub edges: Vec<Edge>,
    /// Where the neckline starts, on the fold.
    pub neck: Point,
    pub armscye: Armscye,
    pub shoulder_dart: Option<Dart>,
}

fn top(neckline: Curve, shoulder: Curve, armscye: Armscye, dart: Option<Dart>) -> Top {
    Top {
        neck: neckline.start(),
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

/// The front's side seam, congruent to the back's when the bust dart is closed but for what
/// rounds it at that dart.
pub(super) fn front_side_seam(frame: &Frame) -> Result<FrontSide, DraftError> {
    let closed = frame.closed_front_side();
    let front = frame.opens(&closed).front();
    front.map_err(|source| DraftError::Construction {
        step: "bust dart",
        from: "front_waist_length, bust_point_width, neck_to_bust_point",
        source,
    })
}

/// Where along the sewn side seam of a bodice its notch is: halfway, clear of the bust dart.
pub(super) fn side_notch(frame: &Frame) -> Result<f64, DraftError> {
    let closed = frame.closed_front_side();
    let (half, dart) = (0.5 * closed.length(), frame.opens(&closed).place()?);
    if (half - dart).abs() >= NOTCH_CLEAR {
        return Ok(half);
    }
    let below = dart + NOTCH_CLEAR;
    Ok(if below <= closed.length() - NOTCH_CLEAR {
        below
    } else {
        dart - NOTCH_CLEAR
    })
}

/// The seam at the side: the front is eased onto the back where its fullness is too small for a
/// dart.
pub(super) fn side(front: &FrontSide) -> Seam {
    let seam = Seam::plain(
        "side",
        EdgeRef::new("back", EdgeName::SIDE_SEAM),
        EdgeRef::new("front", EdgeName::SIDE_SEAM),
    );
    match front.eased {
        Some((_, ease)) if ease > tolerance::POINT => Seam {
            ease,
            ease_on: Some(EaseOn::B),
            ..seam
        },
        _ => seam,
    }
}

/// A level line from the fold.
pub(super) fn line(name: &str, to: Point) -> Result<BalanceLine, DraftError> {
    Ok(BalanceLine {
        name: name.to_owned(),
        curve: Curve::line(Point::new(0.0, to.y), to)?,
    })
}

/// The bust line: level through the bust point.
pub(super) fn bust_line(outline: &Outline, point: Point) -> Result<BalanceLine, DraftError> {
    Ok(BalanceLine {
        name: "bust".to_owned(),
        curve: level_through(outline, point)?,
    })
}

/// The width and underarm lines of a half.
pub(super) fn upper_lines(top: &Top, underarm: Point) -> Result<Vec<BalanceLine>, DraftError> {
    Ok(vec![
        line("width", top.armscye.width_point)?,
        line("underarm", underarm)?,
    ])
}

fn bust_point(at: Point) -> NamedPoint {
    NamedPoint {
        name: BUST_POINT.to_owned(),
        at,
    }
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
    /// Where along the side seam how much is eased in.
    pub eased: Option<(f64, f64)>,
    pub lines: Vec<BalanceLine>,
    /// The bust point, on the front.
    pub bust_point: Option<Point>,
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
        points: m.bust_point.map(bust_point).into_iter().collect(),
    })?;
    let eased = |sewn: f64| {
        m.eased
            .map_or(0.0, |(at, ease)| if sewn > at { ease } else { 0.0 })
    };
    let side: Vec<Notch> = m
        .side
        .into_iter()
        .map(|(name, sewn)| Notch {
            name: name.to_owned(),
            edge: EdgeName::SIDE_SEAM,
            at: piece.open_position(&EdgeName::SIDE_SEAM, sewn) + eased(sewn),
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
