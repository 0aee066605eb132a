//! The sleeve: a cap solved to the armscye, over a biceps line that gives it a height that
//! suits the block.

use super::error::within;
use super::sleeve_cap::{Cap, CapSpec, cap, cap_widths};
use super::sleeve_lower::{Lower, cap_directions, lower};
use super::sleeve_spec::{Armhole, SleeveSpec};
use super::{DraftError, Ease, Figure};
use crate::geometry::{Curve, Point};
use crate::piece::{
    BalanceLine, Cut, Dart, Edge, EdgeName, EdgeRole, Notch, NotchKind, Outline, Piece, PieceParts,
};

/// Share of the cap's ease that lies on the back half.
const BACK_EASE: f64 = 0.55;
/// The grain line ends this far from cap and hem, in millimetres.
const GRAIN_SHORT: f64 = 14.0;
/// Least distance of the grain line from the point of the elbow dart, in millimetres.
const GRAIN_CLEAR: f64 = 8.0;

/// The sleeve begins at the seam's shoulder point, some 10 mm inside the bone from which the
/// arm is measured.
const ABOVE_BONE: f64 = 10.0;

const CAP_ADVICE: &str = "No cap of this armscye's length fits the arm: check upper_arm_girth, scye_depth and back_width, or change the ease of the upper arm or of the cap";

/// A sleeve drafted: its piece, by how much its cap is longer than the armscye, and the ease
/// that upper arm and wrist were drafted with.
pub(super) struct Sleeve {
    pub piece: Piece,
    pub cap_ease: f64,
    pub arm_ease: f64,
}

/// Drafts the sleeve for an armscye.
pub(super) fn sleeve(
    f: &Figure,
    ease: &Ease,
    armhole: &Armhole,
    spec: &SleeveSpec,
) -> Result<Sleeve, DraftError> {
    let arm = f.arm_length + ABOVE_BONE;
    let back_ease = BACK_EASE * spec.cap_ease;
    let armscye = armhole.back + armhole.front;
    // The cap's height sets the level of the biceps line, the seams below it the angle at which
    // the cap begins: the seams' taper hardly depends on the height, so it is taken first.
    let below = arm - 0.3 * armscye;
    let cap_spec = |arm_ease: f64| {
        let biceps = f.upper_arm_girth + arm_ease;
        let leave = cap_directions(f, ease, biceps, below, spec);
        CapSpec {
            biceps,
            back: armhole.back + back_ease,
            front: armhole.front + spec.cap_ease - back_ease,
            back_leave: leave.0,
            front_leave: leave.1,
        }
    };
    let arm_ease = spec.arm.chosen(f.upper_arm_girth, armscye, cap_spec);
    let cap_spec = cap_spec(arm_ease);
    let (least, most) = cap_widths(&cap_spec);
    within(
        "width of the biceps line",
        cap_spec.biceps,
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
        (0.14 * armscye, 0.52 * armscye),
        "mm",
        CAP_ADVICE,
    )?;
    // With the height known the seams are drawn for good; their direction at the biceps line
    // is kept, so that the cap still begins square to them.
    let leave = (cap_spec.back_leave, cap_spec.front_leave);
    let lower = lower(f, ease, cap_spec.biceps, arm - solved.height, spec, leave)?;
    let (piece, cap_ease) = assemble(&solved, &lower, armhole)?;
    Ok(Sleeve {
        piece,
        cap_ease,
        arm_ease,
    })
}

/// Puts cap and seams together: the outline runs over the cap from back to front, down the
/// front seam, along the end and up the back seam.
fn assemble(cap: &Cap, lower: &Lower, armhole: &Armhole) -> Result<(Piece, f64), DraftError> {
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
            Point::new(grain_x, end.y0 - GRAIN_SHORT),
            Point::new(grain_x, GRAIN_SHORT - cap.height),
        ],
        notches,
        lines,
        drill_points,
        points: vec![],
    })?;
    Ok((piece, length - armhole.back - armhole.front))
}
