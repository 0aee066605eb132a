//! The sleeve: a cap solved to the armscye, underarm seams of one length, a bend at the elbow
//! where it fits closely.

use super::error::within;
use super::sleeve_cap::{Cap, CapSpec, cap, cap_widths};
use super::{DraftError, Ease, Figure, SleeveLength};
use crate::geometry::elementary::asin;
use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, along, crossings, perpendicular, root,
};
use crate::piece::{
    Apexes, BalanceLine, Cut, Dart, Edge, EdgeName, EdgeRole, Notch, NotchKind, Outline, Piece,
    PieceParts, Pressed, shaped_mouth,
};

/// The armscye a sleeve is set into: seam lengths of its halves, and how far from the shoulder
/// each half's notch lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Armhole {
    pub back: f64,
    pub front: f64,
    pub back_notch: f64,
    pub front_notch: f64,
}

/// What a sleeve follows from besides figure and ease.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SleeveSpec {
    pub length: SleeveLength,
    /// By how much the cap is longer than the armscye.
    pub cap_ease: f64,
    /// Whether a long sleeve is shaped at the elbow.
    pub fitted: bool,
}

/// Share of the cap's ease that lies on the back half.
const BACK_EASE: f64 = 0.55;
/// Least distance of the grain line from the point of the elbow dart, in millimetres.
const GRAIN_CLEAR: f64 = 8.0;

/// The sleeve begins at the seam's shoulder point, some 10 mm inside the bone from which the
/// arm is measured.
const ABOVE_BONE: f64 = 10.0;

/// A short sleeve ends this far below the biceps line, in millimetres.
const SHORT_BELOW_BICEPS: f64 = 80.0;

/// Ease at the elbow: 25 to 40 mm; at the wrist 15 to 30 and room for the hand (values from memory).
const ELBOW_EASE: f64 = 40.0;
const WRIST_EASE: f64 = 50.0;

/// Intake of the elbow dart: 12 to 25 mm (value from memory).
const ELBOW_DART: f64 = 20.0;

/// The elbow is drawn no narrower than this share of the biceps: more taper above it would
/// pull the cap's underarm up.
const LEAST_ELBOW: f64 = 0.88;

/// The underarm seams come in by no more than this for every millimetre of length (9 degrees):
/// the cap begins square to them, and more would lift its underarm out of the armscye.
const MOST_TAPER: f64 = 0.158;

/// The same below the elbow of a fitted sleeve (13 degrees).
const MOST_FOREARM_TAPER: f64 = 0.23;

const CAP_ADVICE: &str = "No cap of this armscye's length fits the arm: check upper_arm_girth, scye_depth and back_width, or change the ease of the upper arm or of the cap";

/// A sleeve drafted: its piece and by how much its cap is longer than the armscye.
pub(super) struct Sleeve {
    pub piece: Piece,
    pub cap_ease: f64,
}

/// The two underarm seams from the biceps line down, and the edge between their ends.
struct Lower {
    front: Curve,
    /// From the biceps line down, elbow dart open.
    back: Curve,
    end: Curve,
    dart: Option<Dart>,
    lines: Vec<BalanceLine>,
}

/// Drafts the sleeve for an armscye.
pub(super) fn sleeve(
    f: &Figure,
    ease: &Ease,
    armhole: &Armhole,
    spec: &SleeveSpec,
) -> Result<Sleeve, DraftError> {
    let biceps = f.upper_arm_girth + ease.upper_arm;
    let arm = f.arm_length + ABOVE_BONE;
    // The cap's height sets the level of the biceps line, the seams below it the angle at which
    // the cap begins: the seams' taper hardly depends on the height, so it is taken first.
    let guess = 0.33 * (armhole.back + armhole.front);
    let leave = cap_directions(f, biceps, arm - guess, spec);
    let back_ease = BACK_EASE * spec.cap_ease;
    let cap_spec = CapSpec {
        biceps,
        back: armhole.back + back_ease,
        front: armhole.front + spec.cap_ease - back_ease,
        back_leave: leave.0,
        front_leave: leave.1,
    };
    let (least, most) = cap_widths(&cap_spec);
    within(
        "width of the biceps line",
        biceps,
        (least, most),
        "mm",
        CAP_ADVICE,
    )?;
    let solved = cap(&cap_spec).map_err(|source| DraftError::Construction {
        step: "sleeve cap",
        from: "upper_arm_girth with its ease against the armscye (scye_depth, back_width, bust_girth)",
        source,
    })?;
    within(
        "height of the sleeve cap",
        solved.height,
        (
            0.14 * (armhole.back + armhole.front),
            0.52 * (armhole.back + armhole.front),
        ),
        "mm",
        CAP_ADVICE,
    )?;
    // With the height known the seams are drawn for good; their direction at the biceps line
    // is kept, so that the cap still begins square to them.
    let lower = lower(f, biceps, arm - solved.height, spec, leave)?;
    assemble(&solved, &lower, armhole)
}

/// Unit directions in which the cap leaves the biceps line at the back and at the front:
/// inward, square to the underarm seams.
fn cap_directions(f: &Figure, biceps: f64, below: f64, spec: &SleeveSpec) -> (Vec2, Vec2) {
    let (inward, depth) = taper(f, biceps, below, spec);
    let down = |x: f64| Vec2::new(x, depth).normalize();
    (-perpendicular(down(inward)), perpendicular(down(-inward)))
}

/// How far each underarm seam comes in, and over which depth, below the biceps line.
fn taper(f: &Figure, biceps: f64, below: f64, spec: &SleeveSpec) -> (f64, f64) {
    match spec.length {
        SleeveLength::Short => (8.0, SHORT_BELOW_BICEPS),
        SleeveLength::Long if spec.fitted => {
            let elbow = elbow_width(f, biceps);
            ((biceps - elbow) / 2.0, elbow_level(f, below))
        }
        SleeveLength::Long => {
            let inward = (biceps - wrist_width(f, biceps)) / 2.0;
            (inward.min(MOST_TAPER * below), below)
        }
    }
}

fn elbow_width(f: &Figure, biceps: f64) -> f64 {
    (f.elbow_girth + ELBOW_EASE)
        .max(LEAST_ELBOW * biceps)
        .min(biceps - 6.0)
}

fn wrist_width(f: &Figure, biceps: f64) -> f64 {
    (f.wrist_girth + WRIST_EASE).min(biceps - 6.0)
}

/// Depth of the elbow below the biceps line: half the arm and 25 mm from the shoulder
/// (value from memory).
fn elbow_level(f: &Figure, below: f64) -> f64 {
    (below - (f.arm_length / 2.0 - 25.0)).max(0.25 * below)
}

fn lower(
    f: &Figure,
    biceps: f64,
    below: f64,
    spec: &SleeveSpec,
    leave: (Vec2, Vec2),
) -> Result<Lower, DraftError> {
    // The seams leave square to the cap.
    let down = (perpendicular(leave.0), -perpendicular(leave.1));
    if spec.length == SleeveLength::Long && spec.fitted {
        return bent(f, biceps, below, down).map_err(|source| DraftError::Construction {
            step: "elbow of the sleeve",
            from: "arm_length, elbow_girth, wrist_girth, upper_arm_girth",
            source,
        });
    }
    let depth = match spec.length {
        SleeveLength::Short => SHORT_BELOW_BICEPS,
        SleeveLength::Long => below,
    };
    let inward = taper(f, biceps, below, spec).0;
    let (left, right) = (
        Point::new(inward, depth),
        Point::new(biceps - inward, depth),
    );
    let seam = |from: Point, direction: Vec2, to: Point| {
        let reach = from.distance(to) / 3.0;
        Curve::hermite(from, direction * reach, to, (to - from).normalize() * reach)
    };
    let back = seam(Point::ORIGIN, down.0, left)?;
    let front = seam(Point::new(biceps, 0.0), down.1, right)?;
    let end = square_end(&front, &back)?;
    Ok(Lower {
        front,
        back,
        end,
        dart: None,
        lines: Vec::new(),
    })
}

/// The lower edge from the front seam to the back seam, square to both.
fn square_end(front: &Curve, back: &Curve) -> Result<Curve, GeometryError> {
    let reach = front.end().distance(back.end()) / 3.0;
    let square = |seam: &Curve| perpendicular(seam.end_direction()) * reach;
    Curve::hermite(front.end(), square(front), back.end(), square(back))
}

/// The close-fitting long sleeve: below the elbow it turns forward, by the angle of a dart at
/// the back of the elbow, with the front of the elbow as its hinge.
fn bent(f: &Figure, biceps: f64, below: f64, down: (Vec2, Vec2)) -> Result<Lower, GeometryError> {
    let level = elbow_level(f, below);
    let elbow = elbow_width(f, biceps);
    let wrist = (f.wrist_girth + WRIST_EASE)
        .max(elbow - 2.0 * MOST_FOREARM_TAPER * (below - level))
        .min(elbow - 6.0);
    let side = |width: f64| (biceps - width) / 2.0;
    let hinge = Point::new(biceps - side(elbow), level);
    let upper_leg = Point::new(side(elbow), level);
    let turn = Rigid::turn_about(hinge, -2.0 * asin(ELBOW_DART / 2.0 / elbow));
    let lower_leg = turn.apply(upper_leg);
    let front_wrist = turn.apply(Point::new(biceps - side(wrist), below));
    let back_wrist = turn.apply(Point::new(side(wrist), below));
    // The dart ends at the middle of the arm.
    let apex = along(hinge, upper_leg.midpoint(lower_leg), elbow / 2.0);
    let lower_down = (back_wrist - lower_leg).normalize();
    let front_down = (front_wrist - hinge).normalize();

    // Front: one hollow curve past the hinge.
    let start = Point::new(biceps, 0.0);
    let reach = start.distance(front_wrist) / 3.0;
    let front = Curve::hermite(start, down.1 * reach, front_wrist, front_down * reach)?;

    // Back: square to both legs, so that the closed seam runs on; its lower end is moved along
    // the seam until both seams are of one length.
    let square = |leg: Point| perpendicular(apex - leg).normalize();
    let (at_upper, at_lower) = (square(upper_leg), square(lower_leg));
    let upper = {
        let reach = level / 3.0;
        Curve::hermite(Point::ORIGIN, down.0 * reach, upper_leg, at_upper * reach)?
    };
    let lower = |shift: f64| {
        let to = back_wrist + lower_down * shift;
        let reach = lower_leg.distance(to) / 3.0;
        Curve::hermite(lower_leg, at_lower * reach, to, lower_down * reach)
    };
    let wanted = front.length() - upper.length();
    let shift = root("end of the back underarm seam", -60.0, 60.0, |s| {
        lower(s).map_or(f64::NAN, |c| c.length() - wanted)
    })?;
    let lower = lower(shift)?;
    let legs = [lower_leg, upper_leg];
    // Walked up from the wrist the lower leg comes first; the dart is pressed down.
    let mouth = shaped_mouth(apex, legs, &lower.reversed(), Pressed::TowardFirstLeg)?;
    let dart = Dart {
        name: "elbow".to_owned(),
        edge: Some(EdgeName::new("underarm_back")),
        legs,
        apexes: Apexes::One(apex),
        pressed: Pressed::TowardFirstLeg,
    };
    let back = upper.then(&mouth.reversed())?.then(&lower)?;
    let end = square_end(&front, &back)?;
    // The elbow line reaches the front seam, which passes the hinge at a small distance.
    let level_line = Curve::line(upper_leg, Point::new(2.0 * biceps, level))?;
    let front_elbow = crossings(front.segments(), level_line.segments())
        .first()
        .map_or(hinge, |c| c.point);
    let lines = vec![BalanceLine {
        name: "elbow".to_owned(),
        curve: Curve::line(upper_leg, front_elbow)?,
    }];
    Ok(Lower {
        front,
        back,
        end,
        dart: Some(dart),
        lines,
    })
}

/// Puts cap and seams together: the outline runs over the cap from back to front, down the
/// front seam, along the end and up the back seam.
fn assemble(cap: &Cap, lower: &Lower, armhole: &Armhole) -> Result<Sleeve, DraftError> {
    let curve = cap.back.clone().then(&cap.front)?;
    let length = curve.length();
    let cap_edge = EdgeName::SLEEVE_CAP;
    let notch = |name: &str, at: f64, kind| Notch {
        name: name.to_owned(),
        edge: cap_edge.clone(),
        at,
        kind,
    };
    // Below its notches the cap is sewn in without ease.
    let notches = vec![
        notch(
            "back armscye",
            armhole.back - armhole.back_notch,
            NotchKind::Double,
        ),
        notch("shoulder", cap.back.length(), NotchKind::Single),
        notch(
            "front armscye",
            length - (armhole.front - armhole.front_notch),
            NotchKind::Single,
        ),
    ];
    let end = lower.end.bounds();
    let middle = cap.back.end().x;
    let biceps = cap.front.end().x;
    let mut lines = vec![BalanceLine {
        name: "biceps".to_owned(),
        curve: Curve::line(Point::ORIGIN, Point::new(biceps, 0.0))?,
    }];
    lines.extend(lower.lines.iter().cloned());
    let outline = Outline::new(vec![
        Edge::new(cap_edge.clone(), EdgeRole::Seam, curve),
        Edge::new(
            EdgeName::new("underarm_front"),
            EdgeRole::Seam,
            lower.front.clone(),
        ),
        Edge::new(EdgeName::WRIST, EdgeRole::Hem, lower.end.clone()),
        Edge::new(
            EdgeName::new("underarm_back"),
            EdgeRole::Seam,
            lower.back.reversed(),
        ),
    ])?;
    let darts: Vec<Dart> = lower.dart.iter().cloned().collect();
    let drill_points = darts.iter().flat_map(Dart::drill_points).collect();
    // From the top of the cap down the middle, or beside the elbow dart where that reaches so far.
    let grain_x = darts
        .iter()
        .map(|dart| dart.apex().x + GRAIN_CLEAR)
        .fold(middle, f64::max);
    let piece = Piece::new(PieceParts {
        name: "sleeve".to_owned(),
        side: None,
        cut: Cut::Pair,
        outline,
        darts,
        grain: [
            Point::new(grain_x, end.y0 - 18.0),
            Point::new(grain_x, 18.0 - cap.height),
        ],
        notches,
        lines,
        drill_points,
        points: vec![],
    })?;
    Ok(Sleeve {
        piece,
        cap_ease: length - armhole.back - armhole.front,
    })
}
