//! Where the tape runs.

use super::frame::{Frame, Girdle};
use super::trace::{Trace, bow};
use crate::measurements::Measurement;
use kurbo::BezPath;
use serde::Serialize;

/// From where a body is seen.
///
/// ```
/// use blockwright::silhouette::Stance;
/// assert_eq!(Stance::Side.name(), "side");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Stance {
    /// From the front.
    Front,
    /// From behind.
    Back,
    /// From her right, so that she looks to the right.
    Side,
}

impl Stance {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Front, Self::Side, Self::Back];

    /// The name in messages.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
            Self::Side => "side",
        }
    }
}

impl std::fmt::Display for Stance {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// How the tape runs for one measurement, in the coordinates of the
/// [`Silhouette`](super::Silhouette).
///
/// ```
/// use blockwright::silhouette::TapeRun;
/// fn goes_round(run: &TapeRun) -> bool { !run.hidden.elements().is_empty() }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct TapeRun {
    /// From where it is seen.
    pub stance: Stance,
    /// What is seen of the tape.
    pub seen: BezPath,
    /// What runs behind the body.
    pub hidden: BezPath,
    /// Levels and lines that help to find the ends: a ruler, a cord, the floor.
    pub guides: BezPath,
    /// Where it begins and ends; none where it goes round.
    pub ends: Vec<(f64, f64)>,
}

impl TapeRun {
    fn new(stance: Stance, seen: BezPath) -> Self {
        Self {
            stance,
            seen,
            hidden: BezPath::new(),
            guides: BezPath::new(),
            ends: Vec::new(),
        }
    }

    /// A run with two ends.
    fn between(stance: Stance, points: &[(f64, f64)]) -> Self {
        let mut trace = Trace::from(points.first().copied().unwrap_or_default());
        trace = trace.smooth(points.get(1..).unwrap_or_default());
        let mut run = Self::new(stance, trace.open());
        run.ends = points
            .first()
            .into_iter()
            .chain(points.last())
            .copied()
            .collect();
        run
    }

    fn behind(mut self, hidden: BezPath) -> Self {
        self.hidden = hidden;
        self
    }

    fn guided(mut self, lines: &[[(f64, f64); 2]]) -> Self {
        for [from, to] in lines {
            self.guides.move_to(*from);
            self.guides.line_to(*to);
        }
        self
    }
}

/// A tape round a part of the body, from one outline to the other.
fn round(from: (f64, f64), to: (f64, f64), bulge: f64) -> TapeRun {
    TapeRun::new(Stance::Front, bow(from, to, bulge)).behind(bow(from, to, -bulge))
}

fn level(girdle: Girdle) -> TapeRun {
    let Girdle { y, half, .. } = girdle;
    round((-half, y), (half, y), 0.11 * half)
}

/// Back and front of a level as seen from the side. Blades and seat touch one upright.
pub(super) fn side_ends(f: &Frame, girdle: Girdle) -> (f64, f64) {
    let upright = -0.5 * f.hip.depth;
    let back = if girdle == f.waist {
        upright + f.inward
    } else if girdle == f.underbust || girdle == f.bust {
        let share = (girdle.y - f.chest.y) / (f.waist.y - f.chest.y).max(1.0);
        upright + f.inward * 0.6 * share * share
    } else {
        upright
    };
    (back, back + girdle.depth)
}

/// From where it is seen best how the tape runs for a measurement.
///
/// ```
/// use blockwright::measurements::Measurement;
/// use blockwright::silhouette::{Stance, stance};
/// assert_eq!(stance(Measurement::BackWidth), Stance::Back);
/// ```
#[must_use]
pub const fn stance(of: Measurement) -> Stance {
    use Measurement as M;
    match of {
        M::BackWidth | M::ScyeDepth | M::BackWaistLength => Stance::Back,
        M::WaistToHip
        | M::WaistToKnee
        | M::NapeHeight
        | M::WaistHeight
        | M::BackHollow
        | M::NapePlumb
        | M::WaistPlumb
        | M::BustDepth
        | M::SeatDepth => Stance::Side,
        _ => Stance::Front,
    }
}

pub(super) fn tape_run(f: &Frame, of: Measurement) -> TapeRun {
    use Measurement as M;
    let along = |points: &[(f64, f64)]| TapeRun::between(stance(of), points);
    let (seat, belly) = side_ends(f, f.hip);
    let (waist_back, waist_front) = side_ends(f, f.waist);
    let middle = 0.5 * (waist_back + waist_front);
    let far = belly + 0.09 * f.height;
    let floor = f.height;
    match of {
        M::Height => {
            let x = f.wrist.0 + 70.0;
            along(&[(x, floor), (x, 0.0)])
                .guided(&[[(0.0, 0.0), (x, 0.0)], [(0.0, floor), (x, floor)]])
        }
        M::BustGirth => level(f.bust),
        M::UpperChestGirth => level(Girdle {
            y: f.chest.y + 0.15 * (f.bust.y - f.chest.y),
            ..f.chest
        }),
        M::UnderbustGirth => level(f.underbust),
        M::WaistGirth => level(f.waist),
        M::HipGirth => level(f.hip),
        M::NeckBaseGirth => {
            let (x, y) = f.neck_side;
            let seen = Trace::from((-x, y))
                .smooth(&[(-0.55 * x, 0.5 * (y + f.hollow) + 8.0), (0.0, f.hollow)])
                .smooth(&[(0.55 * x, 0.5 * (y + f.hollow) + 8.0), (x, y)])
                .open();
            TapeRun::new(Stance::Front, seen).behind(bow((-x, y), (x, y), -8.0))
        }
        M::ShoulderLength => along(&[f.neck_side, f.shoulder]),
        M::ShoulderSlope => {
            let (x, y) = f.neck_side;
            let mut run = along(&[f.neck_side, f.shoulder]);
            run = run.guided(&[[(x, y), (x + 1.25 * (f.shoulder.0 - x), y)]]);
            let reach = f.shoulder.0 - x;
            let arc = Trace::from((x + 0.9 * reach, y))
                .smooth(&[(x + 0.9 * reach, y + 0.9 * (f.shoulder.1 - y))])
                .open();
            run.guides.extend(arc.elements().iter().copied());
            run
        }
        M::BackWidth => {
            let y = 0.5 * (f.nape + f.chest.y) + 15.0;
            along(&[(-f.back_fold, y), (f.back_fold, y)])
        }
        M::FrontWidth => {
            let y = 0.55 * f.chest.y + 0.45 * f.hollow;
            along(&[(-f.front_fold, y), (f.front_fold, y)])
        }
        M::BustPointWidth => {
            let (x, y) = f.bust_point;
            along(&[(-x, y), (x, y)])
        }
        M::NeckToBustPoint => along(&[f.neck_side, f.bust_point]),
        M::ScyeDepth => along(&[(0.0, f.nape), (0.0, f.chest.y)])
            .guided(&[[(-f.chest.half, f.chest.y), (f.chest.half, f.chest.y)]]),
        M::BackWaistLength => along(&[(0.0, f.nape), (0.0, f.waist.y)])
            .guided(&[[(-f.waist.half, f.waist.y), (f.waist.half, f.waist.y)]]),
        M::FrontWaistLength => {
            let (x, y) = f.bust_point;
            let mut run = along(&[f.neck_side, (x, y)]);
            run.seen.line_to((x, f.waist.y));
            run.ends = vec![f.neck_side, (x, f.waist.y)];
            run.guided(&[[(-f.waist.half, f.waist.y), (f.waist.half, f.waist.y)]])
        }
        M::CentreFrontWaistLength => along(&[(0.0, f.hollow), (0.0, f.waist.y)])
            .guided(&[[(-f.waist.half, f.waist.y), (f.waist.half, f.waist.y)]]),
        M::WaistToHip => along(&[(middle, f.waist.y), (middle, f.hip.y)]).guided(&[
            [(waist_back, f.waist.y), (waist_front, f.waist.y)],
            [(seat, f.hip.y), (belly, f.hip.y)],
        ]),
        M::WaistToKnee => along(&[(middle, f.waist.y), (middle, f.knee)]).guided(&[
            [(waist_back, f.waist.y), (waist_front, f.waist.y)],
            [(seat, f.knee), (belly, f.knee)],
        ]),
        M::UpperArmGirth => {
            let y = f.chest.y + 24.0;
            arm_ring(f, y, f.arm[0])
        }
        M::ElbowGirth => arm_ring(f, f.elbow.1, f.arm[1]),
        M::WristGirth => arm_ring(f, f.wrist.1, f.arm[2]),
        M::HandGirth => {
            let y = f.wrist.1 + 0.045 * f.height;
            let (x, r) = (f.wrist.0 + 0.1 * f.arm[3], 0.8 * f.arm[3]);
            round((x - r, y), (x + r, y), 0.25 * r)
        }
        M::ArmLength => {
            let (x, y) = f.shoulder;
            along(&[
                (x, y),
                (f.elbow.0 + 0.9 * f.arm[1], f.elbow.1),
                (f.wrist.0 + 0.9 * f.arm[2], f.wrist.1),
            ])
        }
        M::ArmscyeGirth => {
            let (top, pit) = (f.shoulder, (f.chest.half, f.chest.y));
            round(top, pit, 20.0)
        }
        M::NapeHeight => {
            let x = seat - 0.09 * f.height;
            along(&[(x, floor), (x, f.nape)]).guided(&[
                [(x, f.nape), (seat + 24.0, f.nape)],
                [(x, floor), (middle, floor)],
            ])
        }
        M::WaistHeight => along(&[(far, floor), (far, f.waist.y)]).guided(&[
            [(waist_back, f.waist.y), (far, f.waist.y)],
            [(middle, floor), (far, floor)],
        ]),
        M::BackHollow => along(&[(seat, f.waist.y), (waist_back, f.waist.y)]).guided(&[[
            (seat, f.nape + 0.3 * (f.chest.y - f.nape)),
            (seat, f.hip.y + 0.02 * f.height),
        ]]),
        M::NapePlumb => {
            along(&[(seat, f.nape), (seat + 24.0, f.nape)]).guided(&plumb_line(f, seat))
        }
        M::WaistPlumb => {
            along(&[(seat, f.waist.y), (waist_back, f.waist.y)]).guided(&plumb_line(f, seat))
        }
        M::BustDepth => depth(f, side_ends(f, f.bust), f.bust.y),
        M::SeatDepth => depth(f, (seat, belly), f.hip.y),
        M::HeadGirth => {
            let y = 0.36 * f.chin;
            round((-0.97 * f.head_half, y), (0.97 * f.head_half, y), 10.0)
        }
    }
}

/// A plumb line that touches the shoulder blades and ends above the seat.
fn plumb_line(f: &Frame, x: f64) -> [[(f64, f64); 2]; 1] {
    let end = f.waist.y + 0.3 * (f.hip.y - f.waist.y);
    [[(x, f.nape - 0.03 * f.height), (x, end)]]
}

/// Between two rulers, from behind to before.
fn depth(f: &Frame, (back, front): (f64, f64), y: f64) -> TapeRun {
    let half = 0.012 * f.height;
    let ruler = |x: f64| [(x, y - half), (x, y + half)];
    TapeRun::between(Stance::Side, &[(back, y), (front, y)]).guided(&[ruler(back), ruler(front)])
}

/// A ring round the arm at a level.
fn arm_ring(f: &Frame, y: f64, thick: f64) -> TapeRun {
    let (sx, sy) = f.shoulder;
    let centre = if y > f.elbow.1 {
        let share = (y - f.elbow.1) / (f.wrist.1 - f.elbow.1).max(1.0);
        f.elbow.0 + share * (f.wrist.0 - f.elbow.0)
    } else {
        let lean = (f.elbow.0 - sx) / (f.elbow.1 - sy).max(1.0);
        let share = (y - sy) / (f.elbow.1 - sy).max(1.0);
        sx + lean * (y - sy) - 0.75 * f.arm[0] * (1.0 - share)
    };
    let tilt = 0.12 * thick;
    round(
        (centre - thick, y + tilt),
        (centre + thick, y - tilt),
        0.25 * thick,
    )
}
