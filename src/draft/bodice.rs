//! The bodice block: back and front from neck to waist.

use super::armscye::{self, side_direction};
use super::frame::Frame;
use super::mouth::{FoldLies, shaped_mouth};
use super::upper_body::upper_body;
use super::waistline::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
use super::{DraftError, Ease, Figure, shoulder};
use crate::geometry::{Curve, Point, perpendicular, tolerance, unit};
use crate::piece::{
    Apexes, BalanceLine, Cut, Dart, DrillPoint, Edge, EdgeName, EdgeRef, EdgeRole, Girth, GirthRun,
    Notch, NotchKind, Outline, Pattern, PatternParts, Piece, PieceParts, Pressed, RunAlong, Seam,
};

/// The back waist dart ends up to 20 mm below the underarm line (value from memory).
const BACK_DART_BELOW: f64 = 12.0;
/// The front waist dart ends 20 to 25 mm below the bust point (value from memory).
const FRONT_DART_BELOW: f64 = 22.0;
/// A waist dart is this long where the lengths allow it, in millimetres.
const SHORTEST_DART: f64 = 90.0;
/// Drill points lie 13 mm inside a dart's tip (Furrer, class handout *The Bodice Sloper*).
const DRILL_INSIDE: f64 = 13.0;

/// Drafts the bodice block: pieces `back` and `front`, both cut on the fold.
///
/// # Errors
/// When the figure cannot be drafted; the error names what stands against it.
pub fn bodice(figure: &Figure, ease: &Ease) -> Result<Pattern, DraftError> {
    let frame = upper_body(figure, ease)?;
    let back = back(&frame)?;
    let front = front(&frame)?;
    let run = |piece: &str, along: &RunAlong| GirthRun {
        piece: piece.to_owned(),
        along: along.clone(),
    };
    let girth = |name: &str, body: f64, ease: f64, along: RunAlong| Girth {
        name: name.to_owned(),
        body,
        ease,
        runs: vec![run("back", &along), run("front", &along)],
    };
    let mut back_width = girth(
        "back_width",
        figure.back_width,
        ease.back_width,
        RunAlong::Line("width".into()),
    );
    back_width.runs.truncate(1);
    let plain = |name: &str, edge: EdgeName| {
        Seam::plain(
            name,
            EdgeRef::new("back", edge.clone()),
            EdgeRef::new("front", edge),
        )
    };
    Ok(Pattern::new(PatternParts {
        block: "bodice".to_owned(),
        pieces: vec![back, front],
        seams: vec![
            plain("shoulder", EdgeName::SHOULDER),
            plain("side", EdgeName::SIDE_SEAM),
        ],
        girths: vec![
            girth(
                "bust",
                figure.bust_girth,
                ease.bust,
                RunAlong::Line("bust".into()),
            ),
            girth(
                "waist",
                figure.waist_girth,
                ease.waist,
                RunAlong::Edge(EdgeName::WAIST),
            ),
            back_width,
        ],
        warnings: frame.warnings,
    })?)
}

fn line(name: &str, from: Point, to: Point) -> Result<BalanceLine, DraftError> {
    Ok(BalanceLine {
        name: name.to_owned(),
        curve: Curve::line(from, to)?,
    })
}

fn drill(dart: &Dart) -> DrillPoint {
    let middle = dart.legs[0].midpoint(dart.legs[1]);
    DrillPoint {
        name: format!("{} dart", dart.name),
        at: crate::geometry::along(dart.apex(), middle, DRILL_INSIDE),
    }
}

fn construction(
    step: &'static str,
    from: &'static str,
) -> impl Fn(crate::geometry::GeometryError) -> DraftError {
    move |source| DraftError::Construction { step, from, source }
}

fn back(frame: &Frame) -> Result<Piece, DraftError> {
    let shoulder = shoulder::back_of(frame)?;
    let neckline = frame.neck.back(shoulder.slope_at_neck)?;
    let underarm = Point::new(frame.back_chest, frame.underarm);
    let down = side_direction(frame);
    let scye = armscye::back(frame)?;
    let width = scye.width_point;
    let waist_side = Point::new(frame.back_chest - frame.side_in, frame.waist);
    let dart = waist_dart(
        "waist",
        frame.plan.back_dart_at,
        (frame.underarm + BACK_DART_BELOW).min((frame.waist - SHORTEST_DART).max(frame.underarm)),
        frame.back_chest - frame.plan.back - frame.side_in,
    );
    let waist = waistline(&WaistSpec {
        centre: Point::new(0.0, frame.waist),
        side: waist_side,
        arrive: -perpendicular(down),
        length: frame.plan.back,
        darts: dart.into_iter().collect(),
        point: DartsPoint::Up,
    })
    .map_err(construction(
        "back waist",
        "waist_girth, bust_girth, back_waist_length",
    ))?
    .reversed();
    let outline = Outline::new(vec![
        Edge::new(EdgeName::NECKLINE, EdgeRole::Opening, neckline),
        Edge::new(EdgeName::SHOULDER, EdgeRole::Seam, shoulder.edge),
        Edge::new(EdgeName::ARMSCYE, EdgeRole::Seam, scye.curve),
        Edge::new(
            EdgeName::SIDE_SEAM,
            EdgeRole::Seam,
            Curve::line(underarm, waist_side)?,
        ),
        Edge::new(EdgeName::WAIST, EdgeRole::Seam, waist.edge),
        Edge::new(
            EdgeName::CENTRE_BACK,
            EdgeRole::Fold,
            Curve::line(Point::new(0.0, frame.waist), Point::ORIGIN)?,
        ),
    ])?;
    let mut darts = vec![shoulder.dart];
    darts.extend(waist.darts);
    finish(
        frame,
        Finish {
            name: "back",
            outline,
            darts,
            notch: (scye.width_at, NotchKind::Double),
            side_notch: underarm.distance(waist_side) / 2.0,
            lines: vec![
                line("width", Point::new(0.0, width.y), width)?,
                line("bust", Point::new(0.0, frame.underarm), underarm)?,
            ],
            top: 0.0,
        },
    )
}

/// The waist dart of a quarter that has `intake` to spare, if it is worth sewing.
fn waist_dart(name: &str, at: f64, apex_level: f64, intake: f64) -> Option<DartWanted> {
    (intake > tolerance::PRINT).then(|| DartWanted {
        name: name.to_owned(),
        at,
        apex_level,
        share: 1.0,
    })
}

fn front(frame: &Frame) -> Result<Piece, DraftError> {
    let neckline = frame.neck.front(frame.front_slope, frame.front_side)?;
    let along = unit(frame.front_slope);
    let tip = frame.front_side + along * frame.shoulder_length;
    let underarm = frame.front_underarm();
    let down = side_direction(frame);
    let scye = armscye::front(frame)?;
    let width = scye.width_point;
    let (side_seam, bust) = front_side_seam(frame)?;
    let waist_side = side_seam.end();
    let dart = waist_dart(
        "waist",
        frame.plan.front_dart_at,
        (frame.bust_tip.y + FRONT_DART_BELOW)
            .min((frame.waist - SHORTEST_DART).max(frame.bust_tip.y)),
        frame.front_chest_closed - frame.plan.front - frame.side_in,
    );
    let waist: Waistline = waistline(&WaistSpec {
        centre: Point::new(0.0, frame.waist),
        side: waist_side,
        arrive: -perpendicular(down),
        length: frame.plan.front,
        darts: dart.into_iter().collect(),
        point: DartsPoint::Up,
    })
    .map_err(construction(
        "front waist",
        "waist_girth, bust_girth, front_waist_length",
    ))?
    .reversed();
    let neck = neckline.start();
    let outline = Outline::new(vec![
        Edge::new(EdgeName::NECKLINE, EdgeRole::Opening, neckline),
        Edge::new(
            EdgeName::SHOULDER,
            EdgeRole::Seam,
            Curve::line(frame.front_side, tip)?,
        ),
        Edge::new(EdgeName::ARMSCYE, EdgeRole::Seam, scye.curve),
        Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, side_seam),
        Edge::new(EdgeName::WAIST, EdgeRole::Seam, waist.edge),
        Edge::new(
            EdgeName::CENTRE_FRONT,
            EdgeRole::Fold,
            Curve::line(Point::new(0.0, frame.waist), neck)?,
        ),
    ])?;
    let mut darts: Vec<Dart> = bust.into_iter().collect();
    darts.extend(waist.darts);
    let sewn_side = (frame.waist - frame.underarm).hypot(frame.side_in);
    finish(
        frame,
        Finish {
            name: "front",
            outline,
            darts,
            notch: (scye.width_at, NotchKind::Single),
            side_notch: sewn_side / 2.0,
            lines: vec![
                line("width", Point::new(0.0, width.y), width)?,
                line("bust", Point::new(0.0, underarm.y), underarm)?,
            ],
            top: neck.y,
        },
    )
}

/// The front's side seam, congruent to the back's when the bust dart is closed, and that dart.
///
/// The part above the dart is turned about the dart's tip; so both legs are equally long and
/// the closed seam is straight.
fn front_side_seam(frame: &Frame) -> Result<(Curve, Option<Dart>), DraftError> {
    let closed_underarm = Point::new(frame.front_chest_closed, frame.underarm);
    let waist_side = Point::new(frame.front_chest_closed - frame.side_in, frame.waist);
    if frame.bust_angle.abs() <= tolerance::ANGLE {
        return Ok((Curve::line(closed_underarm, waist_side)?, None));
    }
    let tip = frame.bust_tip;
    let opening = frame.opening();
    // The dart runs slightly down from the tip to the side seam, clear of underarm and waist.
    let level = (tip.y + 22.0)
        .max(frame.underarm + 36.0)
        .min(frame.waist - 40.0);
    let along = (level - frame.underarm) / (frame.waist - frame.underarm);
    let lower = closed_underarm.lerp(waist_side, along);
    let upper = opening.apply(lower);
    let above = Curve::line(opening.apply(closed_underarm), upper)?;
    let below = Curve::line(lower, waist_side)?;
    let legs = [upper, lower];
    // A side dart is pressed down (common practice): it lies on the part below.
    let mouth = shaped_mouth(tip, legs, &below, FoldLies::AfterSecondLeg).map_err(construction(
        "bust dart",
        "front_waist_length, bust_point_width, neck_to_bust_point",
    ))?;
    let dart = Dart {
        name: "bust".to_owned(),
        edge: Some(EdgeName::SIDE_SEAM),
        legs,
        apexes: Apexes::One(tip),
        pressed: Pressed::TowardSecondLeg,
    };
    Ok((above.then(&mouth)?.then(&below)?, Some(dart)))
}

struct Finish {
    name: &'static str,
    outline: Outline,
    darts: Vec<Dart>,
    /// Armscye notch: how far along, and which kind.
    notch: (f64, NotchKind),
    /// Side seam notch: how far along the sewn seam.
    side_notch: f64,
    lines: Vec<BalanceLine>,
    /// Level of the top of the fold.
    top: f64,
}

/// Marks the piece: grain beside the fold, notches, drill points.
fn finish(frame: &Frame, f: Finish) -> Result<Piece, DraftError> {
    let drill_points = f.darts.iter().map(drill).collect();
    let grain_x = 0.16 * frame.back_width;
    let parts = PieceParts {
        name: f.name.to_owned(),
        cut: Cut::Fold,
        outline: f.outline,
        darts: f.darts,
        grain: [
            Point::new(grain_x, frame.waist - 18.0),
            Point::new(grain_x, f.top + 18.0),
        ],
        notches: vec![Notch {
            name: format!("{} armscye", f.name),
            edge: EdgeName::ARMSCYE,
            at: f.notch.0,
            kind: f.notch.1,
        }],
        lines: f.lines,
        drill_points,
    };
    let mut piece = Piece::new(parts)?;
    let at = piece.open_position(&EdgeName::SIDE_SEAM, f.side_notch);
    let mut parts = piece.into_parts();
    parts.notches.push(Notch {
        name: "side".to_owned(),
        edge: EdgeName::SIDE_SEAM,
        at,
        kind: NotchKind::Single,
    });
    piece = Piece::new(parts)?;
    Ok(piece)
}
