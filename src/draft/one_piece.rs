//! Blocks of the trunk in one piece from neck to hem: dress, tunic, shirt.

use super::bust_dart::FrontSide;
use super::error::within;
use super::frame::Frame;
use super::shaping::{Lower, Shaping};
use super::trunk::{
    Drafted, Marked, back_dart_level, back_side_seam, back_top, bust_line, front_side_seam,
    front_top, girth, line, marked, side, upper_lines,
};
use super::upper_body::upper_body;
use super::waist_edge::front_dart_level;
use super::{DraftError, Ease, Figure};
use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, crossings, perpendicular, tolerance,
};
use crate::piece::{
    Apexes, BalanceLine, Dart, Edge, EdgeName, EdgeRef, EdgeRole, Girth, NotchKind, Outline,
    PatternParts, Piece, Pressed, RunAlong, Seam, wide_darts,
};

/// How deep below the waist a double-pointed dart ends, as a share of the hip depth: about
/// 140 mm at the back and 100 at the front over a hip depth of 206 (values from memory).
const BACK_DART_DEPTH: f64 = 0.66;
const FRONT_DART_DEPTH: f64 = 0.48;

/// What a dart leaves between its lower end and the hem, in millimetres.
const DART_ABOVE_HEM: f64 = 25.0;

/// A hem lies at least this far below the waist, in millimetres: the high hip.
const SHORTEST: f64 = 90.0;

/// Drafts a one-piece block: pieces `back` and `front`, both cut on the fold.
pub(super) fn one_piece(
    block: &str,
    f: &Figure,
    ease: &Ease,
    shaping: &Shaping,
) -> Result<Drafted, DraftError> {
    let Lower::Hem { length, .. } = shaping.lower else {
        return Err(DraftError::OutOfReach {
            what: "length",
            found: 0.0,
            low: SHORTEST,
            high: 1400.0,
            unit: "mm",
            advice: "A block in one piece has a hem",
        });
    };
    within(
        "length from waist to hem",
        length,
        (SHORTEST, 1400.0),
        "mm",
        "The hem lies between the high hip and the floor",
    )?;
    let frame = upper_body(f, ease, shaping)?;
    let below = Below {
        hip: (length > f.waist_to_hip).then_some(f.waist_to_hip),
        hem: frame.waist + length,
        hip_depth: f.waist_to_hip,
    };
    let front_side = front_side_seam(&frame)?;
    let mut shoulder = Seam::plain(
        "shoulder",
        EdgeRef::new("back", EdgeName::SHOULDER),
        EdgeRef::new("front", EdgeName::SHOULDER),
    );
    shoulder.ease = frame.shoulders.eased;
    shoulder.ease_on = (frame.shoulders.eased > 0.0).then_some(crate::piece::EaseOn::A);
    let seams = vec![shoulder, side(&front_side)];
    let pieces = vec![back(&frame, &below)?, front(&frame, &below, front_side)?];
    let warnings = frame.warnings.iter().cloned();
    let girths = girths(f, ease, &frame, &below);
    Ok(Drafted {
        pattern: PatternParts {
            block: block.to_owned(),
            warnings: warnings.chain(wide_darts(&pieces)).collect(),
            pieces,
            seams,
            girths,
        },
        frame,
    })
}

/// What lies below the waist.
struct Below {
    /// Hip line below the waist, when the block reaches it.
    hip: Option<f64>,
    /// Level of the hem.
    hem: f64,
    /// Hip line below the waist, whether or not the block reaches it.
    hip_depth: f64,
}

fn girths(f: &Figure, ease: &Ease, frame: &Frame, below: &Below) -> Vec<Girth> {
    let both = ["back", "front"];
    let along = |line: &str| RunAlong::Line(line.to_owned());
    // Without darts the waist keeps what the side seams may not take: that is its ease.
    let shares = frame.shares;
    let darts = shares.back_dart + shares.front_dart;
    let waist = 2.0 * (frame.back_chest + frame.front_chest_closed - 2.0 * shares.side - darts);
    let waist_ease = waist - f.waist_girth;
    let mut girths = vec![
        girth("bust", (f.bust_girth, ease.bust), &both, &along("underarm")),
        girth("waist", (f.waist_girth, waist_ease), &both, &along("waist")),
        girth(
            "back_width",
            (f.back_width, ease.back_width),
            &both[..1],
            &along("width"),
        ),
    ];
    if below.hip.is_some() {
        girths.push(girth("hip", (f.hip_girth, ease.hip), &both, &along("hip")));
    }
    girths
}

/// The place on a side seam at a level.
fn side_at(side: &Curve, level: f64) -> Result<(Point, f64), GeometryError> {
    let reach = 4000.0;
    let across = Curve::line(Point::new(-reach, level), Point::new(reach, level))?;
    let found = crossings(side.segments(), across.segments());
    let near = found.first().ok_or(GeometryError::Parallel)?.point;
    let (_, at) = side.nearest(Point::new(near.x, level));
    Ok((Point::new(side.point_at(at)?.0.x, level), at))
}

/// Balance lines and the notches where they meet the side seam: name and place along it.
type Levels = (Vec<BalanceLine>, Vec<(&'static str, f64)>);

/// The balance lines below the underarm, and their notches.
fn lower_lines(frame: &Frame, below: &Below, chest: f64) -> Result<Levels, DraftError> {
    let side = frame
        .side
        .moved(&Rigid::shift(Vec2::new(chest, frame.underarm)));
    let (mut lines, mut notches) = (Vec::new(), Vec::new());
    let levels = [("waist", Some(0.0)), ("hip", below.hip)];
    for (name, depth) in levels.into_iter().filter_map(|(n, d)| Some((n, d?))) {
        let (point, at) = side_at(&side, frame.waist + depth)?;
        lines.push(line(name, point)?);
        notches.push((name, at));
    }
    Ok((lines, notches))
}

/// The hem from the side seam, square to it, to the fold, square to that.
fn hem(side: &Curve, level: f64) -> Result<Curve, GeometryError> {
    let (from, to) = (side.end(), Point::new(0.0, level));
    let leave = perpendicular(side.end_direction());
    if leave.y.abs() <= tolerance::ANGLE && (from.y - to.y).abs() <= tolerance::POINT {
        return Curve::line(from, to);
    }
    let handle = from.distance(to) / 3.0;
    Curve::hermite(from, leave * handle, to, Vec2::new(-handle, 0.0))
}

/// A double-pointed waist dart of an intake, unless there is nothing to take in.
fn waist_dart(
    frame: &Frame,
    below: &Below,
    first_leg: f64,
    intake: f64,
    ends: (f64, f64),
) -> Option<Dart> {
    if intake <= tolerance::PRINT {
        return None;
    }
    let middle = first_leg + intake / 2.0;
    let lower = (frame.waist + ends.1 * below.hip_depth).min(below.hem - DART_ABOVE_HEM);
    let at = |x: f64| Point::new(x, frame.waist);
    Some(Dart {
        name: "waist".to_owned(),
        edge: None,
        legs: [at(first_leg), at(first_leg + intake)],
        apexes: Apexes::Two(Point::new(middle, ends.0), Point::new(middle, lower)),
        // Vertical darts are pressed toward the centre (common practice).
        pressed: Pressed::TowardFirstLeg,
    })
}

fn fold(name: EdgeName, from: f64, to: f64) -> Result<Edge, GeometryError> {
    let curve = Curve::line(Point::new(0.0, from), Point::new(0.0, to))?;
    Ok(Edge::new(name, EdgeRole::Fold, curve))
}

fn back(frame: &Frame, below: &Below) -> Result<Piece, DraftError> {
    let top = back_top(frame)?;
    let side = back_side_seam(frame);
    let mut lines = upper_lines(&top, frame.back_underarm())?;
    let (lower, notches) = lower_lines(frame, below, frame.back_chest)?;
    lines.extend(lower);
    let ends = (back_dart_level(frame), BACK_DART_DEPTH);
    let dart = waist_dart(
        frame,
        below,
        frame.plan.back_dart_at,
        frame.shares.back_dart,
        ends,
    );
    let hem = hem(&side, below.hem)?;
    let mut edges = top.edges;
    edges.push(Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, side));
    edges.push(Edge::new(EdgeName::HEM, EdgeRole::Hem, hem));
    edges.push(fold(EdgeName::CENTRE_BACK, below.hem, 0.0)?);
    marked(
        frame,
        Marked {
            name: "back",
            outline: Outline::new(edges)?,
            darts: top.shoulder_dart.into_iter().chain(dart).collect(),
            armscye_at: top.armscye.width_at,
            armscye_notch: NotchKind::Double,
            side: notches,
            eased: None,
            lines,
            bust_point: None,
            fold: (0.0, below.hem),
        },
    )
}

fn front(frame: &Frame, below: &Below, front_side: FrontSide) -> Result<Piece, DraftError> {
    let top = front_top(frame)?;
    let FrontSide {
        seam: side,
        dart: bust,
        eased,
    } = front_side;
    let mut lines = upper_lines(&top, frame.front_underarm())?;
    let (lower, notches) = lower_lines(frame, below, frame.front_chest_closed)?;
    lines.extend(lower);
    let ends = (
        front_dart_level(frame.bust_point.y, frame.waist),
        FRONT_DART_DEPTH,
    );
    let dart = waist_dart(
        frame,
        below,
        frame.plan.front_dart_at,
        frame.shares.front_dart,
        ends,
    );
    let neck = top.neck;
    let hem = hem(&side, below.hem)?;
    let mut edges = top.edges;
    edges.push(Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, side));
    edges.push(Edge::new(EdgeName::HEM, EdgeRole::Hem, hem));
    edges.push(fold(EdgeName::CENTRE_FRONT, below.hem, neck.y)?);
    let outline = Outline::new(edges)?;
    lines.push(bust_line(&outline, frame.bust_point)?);
    marked(
        frame,
        Marked {
            name: "front",
            outline,
            darts: bust.into_iter().chain(dart).collect(),
            armscye_at: top.armscye.width_at,
            armscye_notch: NotchKind::Single,
            side: notches,
            eased,
            lines,
            bust_point: Some(frame.bust_point),
            fold: (neck.y, below.hem),
        },
    )
}
