//! The skirt block: a straight skirt, back and front, from the waist to the knee or a length.

use super::error::{check_numbers, within};
use super::{DraftError, Ease, Figure, WaistPlan, waist_plan};
use crate::alterations::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
use crate::geometry::{Curve, GeometryError, Point, Span, Vec2, perpendicular, root};
use crate::piece::{
    BalanceLine, Cut, Dart, Edge, EdgeName, EdgeRef, EdgeRole, Girth, GirthRun, Notch, NotchKind,
    Outline, Pattern, PatternParts, Piece, PieceParts, RunAlong, Seam, Warning,
};

/// Up to this much on the half, the side seams take all of it.
const NO_DART: f64 = 24.0;
/// Share of the rest that each side seam takes. With it the straight skirt of one handbook
/// (Aldrich, as transcribed) comes out: side 37, back 2 x 20, front 20.
const SIDE_SHARE: f64 = 0.22;
/// Share of the darts on the back: 40 of 60 on that skirt, half on a school block
/// (WikiEducator handout).
const BACK_SHARE: f64 = 0.60;
/// A dart deeper than this is split in two: under 30 to 35 mm (value from memory).
const SPLIT_BACK: f64 = 27.0;
const SPLIT_FRONT: f64 = 32.0;
/// The waist is raised at the side by 10 to 12.5 mm on two handbook skirts (Aldrich, as
/// transcribed; WikiEducator handout); by no more here.
const MOST_RAISED: f64 = 12.5;
/// A dart of less is not sewn.
const LEAST_DART: f64 = 6.0;

/// What the skirt takes in between hip and waist.
struct Shares {
    side: f64,
    back: f64,
    front: f64,
}

impl Shares {
    fn of(half_hip: f64, half_waist: f64) -> Self {
        let spare = half_hip - half_waist;
        let side = NO_DART / 2.0 + SIDE_SHARE * (spare - NO_DART);
        let darts = spare - 2.0 * side;
        let (back, front) = (BACK_SHARE * darts, (1.0 - BACK_SHARE) * darts);
        if spare <= NO_DART || front < LEAST_DART {
            return Self {
                side: spare / 2.0,
                back: 0.0,
                front: 0.0,
            };
        }
        Self { side, back, front }
    }
}

struct Quarter {
    name: &'static str,
    centre: EdgeName,
    /// Sewn waist, and where the first dart meets it.
    waist: f64,
    dart_at: f64,
    intake: f64,
    split: f64,
    /// Lengths of the inner and the outer dart.
    lengths: [f64; 2],
    hip: f64,
    /// How far the waist lies below the natural waist at the fold.
    lowered: f64,
}

struct Levels {
    hip: f64,
    hem: f64,
    side_in: f64,
    raised: f64,
}

impl Levels {
    fn of(hip: f64, hem: f64, side_in: f64, half_waist: f64) -> Self {
        // A panel that narrows by `side_in` over the hip depth is part of a ring: its upper
        // edge rises at the side by what the ring's arc rises over the waist quarter.
        let raised =
            Span::from_low(-12.0, MOST_RAISED).nearest(half_waist / 2.0 * side_in / (2.0 * hip));
        Self {
            hip,
            hem,
            side_in,
            raised,
        }
    }
}

/// How far the side seams of a skirt without darts come in, and the back's width at the hip:
/// such that both waist edges, curved as they are, have the plan's lengths.
fn without_darts(
    plan: &WaistPlan,
    half_hip: f64,
    lowered: f64,
    at_side: impl Fn(f64) -> Levels,
) -> Result<(f64, f64), DraftError> {
    let width = |side_in: f64, waist: f64, lowered: f64| {
        let levels = at_side(side_in);
        let near = waist + side_in;
        root("width of the hip", near - 30.0, near + 1.0, |hip| {
            let edge = side_seam(&levels, hip).and_then(|(side, leave)| {
                Ok(waistline(&waist_spec(
                    lowered,
                    &side,
                    leave,
                    waist,
                    Vec::new(),
                ))?)
            });
            edge.map_or(f64::NAN, |drawn| drawn.edge.length() - waist)
        })
    };
    let widths = |side_in: f64| {
        let back = width(side_in, plan.back, lowered)?;
        Ok((back, width(side_in, plan.front, 0.0)?))
    };
    let even = (half_hip - plan.back - plan.front) / 2.0;
    let not_constructible = |source| DraftError::Construction {
        step: "skirt waist",
        from: "waist_girth, hip_girth, waist_to_hip",
        source,
    };
    let side_in = root("side of the skirt", even - 4.0, even + 30.0, |side_in| {
        widths(side_in).map_or(f64::NAN, |(b, f): (f64, f64)| b + f - half_hip)
    })
    .map_err(not_constructible)?;
    let widths: Result<(f64, f64), GeometryError> = widths(side_in);
    Ok((side_in, widths.map_err(not_constructible)?.0))
}

/// The waist edge asked for above a side seam.
fn waist_spec(
    lowered: f64,
    side: &Curve,
    leave: Vec2,
    length: f64,
    darts: Vec<DartWanted>,
) -> WaistSpec {
    WaistSpec {
        centre: Point::new(0.0, lowered),
        side: side.start(),
        arrive: -perpendicular(leave),
        length,
        darts,
        point: DartsPoint::Down,
    }
}

/// Drafts the skirt block: pieces `back` and `front`, both cut on the fold.
///
/// `length` runs from waist to hem; without it the skirt ends at the knee.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(600.0))?;
/// assert_eq!(pattern.pieces().len(), 2);
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
///
/// # Errors
/// When the figure cannot be drafted; the error names what stands against it.
pub fn skirt(figure: &Figure, ease: &Ease, length: Option<f64>) -> Result<Pattern, DraftError> {
    figure.check()?;
    ease.check()?;
    check_numbers(false, [("length", length.unwrap_or(0.0))])?;
    let mut warnings = Vec::new();
    let plan = waist_plan(figure, ease).unwrap_or_else(|refused| {
        warnings.push(Warning::new(
            "waist_shared_evenly",
            format!("no bodice can be drafted for this body, so the skirt's waist was shared evenly: {refused}"),
        ));
        WaistPlan::of_waist(figure, ease)
    });
    let depth = figure.waist_to_hip;
    within(
        "waist to hip",
        depth,
        (90.0, 400.0),
        "mm",
        "Measure waist_to_hip again, down the side to the fullest seat",
    )?;
    let hem = length.unwrap_or(figure.waist_to_knee);
    within(
        "skirt length",
        hem,
        (depth + 40.0, 1400.0),
        "mm",
        "The hem lies below the hip line and above the floor",
    )?;
    let half_hip = (figure.hip_girth + ease.hip) / 2.0;
    // The waist is lowered at the centre back by about 10 mm for a hip 240 larger than the
    // waist (value from memory), by nothing for a straight body.
    let lowered = Span::from_low(0.0, 12.0).nearest(0.04 * (figure.hip_girth - figure.waist_girth));
    let half_waist = plan.back + plan.front;
    let mut shares = Shares::of(half_hip, half_waist);
    let at_side = |side_in: f64| Levels::of(depth, hem, side_in, half_waist);
    let back_hip = if shares.back > 0.0 {
        plan.back + shares.side + shares.back
    } else {
        let (side_in, back_hip) = without_darts(&plan, half_hip, lowered, at_side)?;
        shares.side = side_in;
        back_hip
    };
    let levels = at_side(shares.side);
    let back = quarter(
        &levels,
        &Quarter {
            name: "back",
            centre: EdgeName::CENTRE_BACK,
            waist: plan.back,
            dart_at: plan.back_dart_at,
            intake: shares.back,
            split: SPLIT_BACK,
            // 140 and 125 mm over a hip depth of 206 (Aldrich; values from memory).
            lengths: [0.66 * depth, 0.58 * depth],
            hip: back_hip,
            lowered,
        },
    )?;
    let front = quarter(
        &levels,
        &Quarter {
            name: "front",
            centre: EdgeName::CENTRE_FRONT,
            waist: plan.front,
            dart_at: plan.front_dart_at,
            intake: shares.front,
            split: SPLIT_FRONT,
            // 100 mm (Aldrich, value from memory; WikiEducator handout) over a hip depth of 206.
            lengths: [0.47 * depth, 0.42 * depth],
            hip: half_hip - back_hip,
            lowered: 0.0,
        },
    )?;
    let girth = |name: &str, body: f64, ease: f64, along: RunAlong| Girth {
        name: name.to_owned(),
        side: None,
        body,
        ease,
        limb: false,
        runs: ["back", "front"]
            .map(|p| GirthRun {
                piece: p.to_owned(),
                along: along.clone(),
            })
            .to_vec(),
    };
    Ok(Pattern::new(PatternParts {
        block: "skirt".to_owned(),
        pieces: vec![back, front],
        seams: vec![Seam::plain(
            "side",
            EdgeRef::new("back", EdgeName::SIDE_SEAM),
            EdgeRef::new("front", EdgeName::SIDE_SEAM),
        )],
        girths: vec![
            girth(
                "waist",
                figure.waist_girth,
                ease.waist,
                RunAlong::Edge(EdgeName::WAIST),
            ),
            girth(
                "hip",
                figure.hip_girth,
                ease.hip,
                RunAlong::Line("hip".into()),
            ),
        ],
        warnings,
    })?)
}

/// The side seam from the waist to the hem, and the direction in which it leaves the waist.
///
/// One hip curve, steeper at the waist than its chord and plumb from the hip line down.
fn side_seam(levels: &Levels, hip: f64) -> Result<(Curve, Vec2), DraftError> {
    let top = Point::new(hip - levels.side_in, -levels.raised);
    let at_hip = Point::new(hip, levels.hip);
    let chord = at_hip - top;
    let leave = Vec2::new(1.25 * chord.x, chord.y).normalize();
    let reach = chord.hypot();
    let curve = Curve::hermite(
        top,
        leave * (0.3 * reach),
        at_hip,
        Vec2::new(0.0, 0.42 * reach),
    )?;
    Ok((
        curve.then(&Curve::line(at_hip, Point::new(hip, levels.hem))?)?,
        leave,
    ))
}

/// About the level of the waist edge at a distance from the fold: it rises evenly faster.
fn waist_level(levels: &Levels, q: &Quarter, at: f64) -> f64 {
    q.lowered - (q.lowered + levels.raised) * (at / q.waist) * (at / q.waist)
}

fn quarter(levels: &Levels, q: &Quarter) -> Result<Piece, DraftError> {
    let (side, leave) = side_seam(levels, q.hip)?;
    let count = if q.intake <= 0.0 {
        0
    } else if q.intake <= q.split {
        1
    } else {
        2
    };
    let names: &[&str] = if count == 2 {
        &["waist inner", "waist outer"]
    } else {
        &["waist"]
    };
    let at = |i: usize| {
        q.dart_at
            + if i == 0 {
                0.0
            } else {
                0.52 * (q.waist - q.dart_at)
            }
    };
    let wanted = names.iter().zip(q.lengths).take(count).enumerate();
    let darts = wanted.map(|(i, (name, length))| DartWanted {
        name: (*name).to_owned(),
        at: at(i),
        apex_level: waist_level(levels, q, at(i)) + length.min(levels.hip - 30.0),
        share: 1.0 / count as f64,
    });
    let centre = Point::new(0.0, q.lowered);
    let spec = waist_spec(q.lowered, &side, leave, q.waist, darts.collect());
    let waist: Waistline = waistline(&spec).map_err(|source| DraftError::Construction {
        step: "skirt waist",
        from: "waist_girth, hip_girth, waist_to_hip",
        source,
    })?;
    let hem = |x: f64| Point::new(x, levels.hem);
    let hip_at = side.nearest(Point::new(q.hip, levels.hip)).1;
    let outline = Outline::new(vec![
        Edge::new(EdgeName::WAIST, EdgeRole::Seam, waist.edge),
        Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, side),
        Edge::new(
            EdgeName::HEM,
            EdgeRole::Hem,
            Curve::line(hem(q.hip), hem(0.0))?,
        ),
        Edge::new(
            q.centre.clone(),
            EdgeRole::Fold,
            Curve::line(hem(0.0), centre)?,
        ),
    ])?;
    let drill_points = waist.darts.iter().flat_map(Dart::drill_points).collect();
    let grain_x = 0.14 * q.hip;
    Ok(Piece::new(PieceParts {
        name: q.name.to_owned(),
        side: None,
        cut: Cut::Fold,
        outline,
        darts: waist.darts,
        grain: [
            Point::new(grain_x, levels.hem - 25.0),
            Point::new(grain_x, q.lowered + 25.0),
        ],
        notches: vec![Notch {
            name: "hip".to_owned(),
            edge: EdgeName::SIDE_SEAM,
            at: hip_at,
            kind: NotchKind::Single,
        }],
        lines: vec![BalanceLine {
            name: "hip".to_owned(),
            curve: Curve::line(Point::new(0.0, levels.hip), Point::new(q.hip, levels.hip))?,
        }],
        drill_points,
        points: vec![],
    })?)
}
