//! The sleeve below the biceps line: underarm seams of one length, a wrist of body plus ease, a
//! bend at the elbow where the sleeve fits closely.

use super::sleeve_spec::SleeveSpec;
use super::{DraftError, Ease, Figure, SleeveLength};
use crate::geometry::elementary::asin;
use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, along, crossings, perpendicular, root, tolerance,
};
use crate::piece::{Apexes, BalanceLine, Dart, EdgeName, Pressed, shaped_mouth};

/// A short sleeve ends this far below the biceps line, in millimetres.
const SHORT_BELOW_BICEPS: f64 = 80.0;

/// A short sleeve's seams come in by this much, in millimetres.
const SHORT_TAPER: f64 = 8.0;

/// Ease at the elbow: 25 to 40 mm (value from memory).
const ELBOW_EASE: f64 = 40.0;

/// Intake of the elbow dart: 12 to 25 mm (value from memory); 3/4 in shapes the wrist line
/// (a mid-20th-century drafting course, as transcribed).
const ELBOW_DART: f64 = 20.0;

/// The elbow dart ends at the back quarter of the sleeve, about 3 in from the seam (small
/// darts of *Introduction to Darts*), in millimetres.
const ELBOW_DART_LENGTH: (f64, f64) = (75.0, 95.0);

/// The elbow lies 0.570 of the arm below its bone (0.551 to 0.590 for 90 % of 2,208 women;
/// computed from the 1988 U.S. Army survey).
const ELBOW_AT: f64 = 0.570;

/// The elbow is drawn no narrower than this share of the biceps where the wrist leaves the
/// choice: more taper above it would pull the cap's underarm up.
const LEAST_ELBOW: f64 = 0.88;

/// The underarm seams leave the biceps line coming in by no more than this for every millimetre
/// of length (9 degrees): the cap begins square to them, and more would lift its underarm out
/// of the armscye. What the wrist asks for beyond it is shaped farther down.
const MOST_TAPER: f64 = 0.158;

/// The seams below the elbow of a fitted sleeve come in by no more than this (13 degrees) as
/// long as the elbow has room above to be narrower.
const MOST_FOREARM_TAPER: f64 = 0.23;

/// Rounds in which the width at the wrist is brought to the asked girth along its curved edge.
const WRIST_ROUNDS: usize = 24;

/// The two underarm seams from the biceps line down, and the edge between their ends.
pub(super) struct Lower {
    pub front: Curve,
    /// From the biceps line down, elbow dart open.
    pub back: Curve,
    pub end: Curve,
    pub dart: Option<Dart>,
    pub lines: Vec<BalanceLine>,
}

/// Unit directions in which the cap leaves the biceps line at the back and at the front:
/// inward, square to the underarm seams.
pub(super) fn cap_directions(
    f: &Figure,
    ease: &Ease,
    biceps: f64,
    below: f64,
    spec: &SleeveSpec,
) -> (Vec2, Vec2) {
    let taper = taper(f, ease, biceps, below, spec);
    let down = |x: f64| Vec2::new(x, 1.0).normalize();
    (-perpendicular(down(taper)), perpendicular(down(-taper)))
}

/// By how much each underarm seam comes in for every millimetre as it leaves the biceps line.
fn taper(f: &Figure, ease: &Ease, biceps: f64, below: f64, spec: &SleeveSpec) -> f64 {
    let wrist = f.wrist_girth + ease.wrist;
    let taper = match spec.length {
        SleeveLength::Short => SHORT_TAPER / SHORT_BELOW_BICEPS,
        SleeveLength::Long if spec.fitted => {
            let level = elbow_level(f, below);
            (biceps - elbow_width(f, biceps, wrist, (level, below - level))) / 2.0 / level
        }
        SleeveLength::Long => (biceps - wrist) / 2.0 / below,
    };
    taper.min(MOST_TAPER)
}

/// Width at the elbow: near the biceps as long as the forearm does not taper too much, and never
/// less than the elbow with its ease, nor than straight seams from biceps to wrist would have it.
/// The biceps line is so far above the elbow, and the wrist so far below.
fn elbow_width(f: &Figure, biceps: f64, wrist: f64, (above, forearm): (f64, f64)) -> f64 {
    let straight = biceps + (wrist - biceps) * above / (above + forearm);
    let least = (f.elbow_girth + ELBOW_EASE).max(straight.min(biceps));
    let most = (wrist + 2.0 * MOST_FOREARM_TAPER * forearm).max(least);
    least.max(LEAST_ELBOW * biceps).min(most)
}

/// Depth of the elbow below the biceps line.
fn elbow_level(f: &Figure, below: f64) -> f64 {
    let forearm = (1.0 - ELBOW_AT) * f.arm_length;
    (below - forearm).max(0.25 * below)
}

/// Everything below the biceps line, `below` deep in a long sleeve; the seams leave square to
/// the cap.
pub(super) fn lower(
    f: &Figure,
    ease: &Ease,
    biceps: f64,
    below: f64,
    spec: &SleeveSpec,
    leave: (Vec2, Vec2),
) -> Result<Lower, DraftError> {
    let down = (perpendicular(leave.0), -perpendicular(leave.1));
    if spec.length == SleeveLength::Short {
        return Ok(straight(
            biceps,
            SHORT_BELOW_BICEPS,
            biceps - 2.0 * SHORT_TAPER,
            down,
        )?);
    }
    let wrist = f.wrist_girth + ease.wrist;
    let drawn = |width: f64| {
        if spec.fitted {
            bent(f, biceps, below, width, down)
        } else {
            straight(biceps, below, width, down)
        }
    };
    // The edge between the seams is square to both and so a little longer than they are apart.
    let solved = || -> Result<Lower, GeometryError> {
        let (mut width, mut miss) = (wrist, 0.0);
        for _ in 0..WRIST_ROUNDS {
            let found = drawn(width)?;
            let length = found.end.length();
            miss = length - wrist;
            if miss.abs() <= 0.01 * tolerance::SEAM_DRAFTED {
                return Ok(found);
            }
            width *= wrist / length;
        }
        Err(GeometryError::NoSolution {
            what: "width of the wrist",
            low: width,
            high: wrist,
            miss_low: miss,
            miss_high: miss,
        })
    };
    solved().map_err(|source| DraftError::Construction {
        step: "sleeve below the biceps line",
        from: "arm_length, elbow_girth, wrist_girth, upper_arm_girth",
        source,
    })
}

/// A sleeve without a bend: both seams alike, `width` apart at the end.
fn straight(
    biceps: f64,
    depth: f64,
    width: f64,
    down: (Vec2, Vec2),
) -> Result<Lower, GeometryError> {
    let inward = (biceps - width) / 2.0;
    let seam = |from: Point, leave: Vec2, to: Point| -> Result<Curve, GeometryError> {
        let chord = to - from;
        // As steep below the chord as it leaves it flat above: an even bend.
        let arrive = reflected(leave, chord);
        let reach = chord.hypot() / 3.0;
        Curve::hermite(from, leave * reach, to, arrive * reach)
    };
    let back = seam(Point::ORIGIN, down.0, Point::new(inward, depth))?;
    let front = seam(
        Point::new(biceps, 0.0),
        down.1,
        Point::new(biceps - inward, depth),
    )?;
    let end = square_end(&front, &back)?;
    Ok(Lower {
        front,
        back,
        end,
        dart: None,
        lines: Vec::new(),
    })
}

/// A unit direction mirrored in that of a chord.
fn reflected(direction: Vec2, chord: Vec2) -> Vec2 {
    let along = chord.normalize();
    along * (2.0 * direction.dot(along)) - direction
}

/// The lower edge from the front seam to the back seam, square to both.
fn square_end(front: &Curve, back: &Curve) -> Result<Curve, GeometryError> {
    let reach = front.end().distance(back.end()) / 3.0;
    let square = |seam: &Curve| perpendicular(seam.end_direction()) * reach;
    Curve::hermite(front.end(), square(front), back.end(), square(back))
}

/// The close-fitting long sleeve: below the elbow it turns forward, by the angle of a dart at
/// the back of the elbow, with the front of the elbow as its hinge.
fn bent(
    f: &Figure,
    biceps: f64,
    below: f64,
    wrist: f64,
    down: (Vec2, Vec2),
) -> Result<Lower, GeometryError> {
    let level = elbow_level(f, below);
    let elbow = elbow_width(f, biceps, wrist, (level, below - level));
    let side = |width: f64| (biceps - width) / 2.0;
    let hinge = Point::new(biceps - side(elbow), level);
    let upper_leg = Point::new(side(elbow), level);
    let turn = Rigid::turn_about(hinge, -2.0 * asin(ELBOW_DART / 2.0 / elbow));
    let lower_leg = turn.apply(upper_leg);
    let front_wrist = turn.apply(Point::new(biceps - side(wrist), below));
    let back_wrist = turn.apply(Point::new(side(wrist), below));
    // The dart ends at the back quarter, on the line from the hinge to the middle of its mouth,
    // where both legs are equally long.
    let length = (elbow / 4.0)
        .max(ELBOW_DART_LENGTH.0)
        .min(ELBOW_DART_LENGTH.1);
    let middle = upper_leg.midpoint(lower_leg);
    let apex = along(hinge, middle, hinge.distance(middle) - length);
    let lower_down = (back_wrist - lower_leg).normalize();
    let front_down = (front_wrist - hinge).normalize();

    // Front: one hollow curve past the hinge.
    let start = Point::new(biceps, 0.0);
    let reach = start.distance(front_wrist) / 3.0;
    let front = Curve::hermite(start, down.1 * reach, front_wrist, front_down * reach)?;

    // Back: past both legs at one angle, so that the closed seam runs on: as it comes in above
    // the elbow or below it, whichever is less. Its lower end is moved along the seam until both
    // seams are of one length.
    let comes_in = (side(elbow) / level).min((side(wrist) - side(elbow)) / (below - level));
    let past = |leg: Point| {
        let to_apex = (apex - leg).normalize();
        (perpendicular(to_apex) + to_apex * comes_in.max(0.0)).normalize()
    };
    let (at_upper, at_lower) = (past(upper_leg), past(lower_leg));
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
