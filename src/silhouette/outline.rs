//! The outline from the front, from behind and from the side.

use super::frame::Frame;
use super::tape::{Stance, TapeRun, tape_run};
use super::trace::{Trace, ellipse, mirrored};
use crate::measurements::{Body, Measurement};
use kurbo::{BezPath, Rect};

/// A wearer's outline, drawn from her own numbers.
///
/// Millimetres; the crown is at y = 0, the floor at her height, the middle of the body at x = 0. From
/// the side she looks to the right.
///
/// ```
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::silhouette::{Silhouette, Stance};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let figure = Silhouette::of(&body);
/// assert_eq!(figure.bounds(Stance::Front).y1.round(), 1680.0);
/// let tape = figure.tape(Measurement::WaistGirth);
/// assert_eq!(tape.stance, Stance::Front);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Silhouette {
    frame: Frame,
}

impl Silhouette {
    /// Of a body, taken or estimated.
    #[must_use]
    pub fn of(body: &Body) -> Self {
        Self {
            frame: Frame::of(body),
        }
    }

    /// Where the tape runs for a measurement, and from where that is seen best.
    #[must_use]
    pub fn tape(&self, measurement: Measurement) -> TapeRun {
        tape_run(&self.frame, measurement)
    }

    /// Closed shapes, those behind first.
    #[must_use]
    pub fn shapes(&self, stance: Stance) -> Vec<BezPath> {
        match stance {
            Stance::Front | Stance::Back => self.facing(),
            Stance::Side => self.sideways(),
        }
    }

    /// Lines on the body.
    #[must_use]
    pub fn lines(&self, stance: Stance) -> Vec<BezPath> {
        let f = &self.frame;
        match stance {
            Stance::Front => {
                let (x, y) = f.bust_point;
                let drop = 0.8 * (f.underbust.y - y);
                let cup = Trace::from((0.22 * x, y + 0.7 * drop))
                    .smooth(&[(x, y + drop), (0.94 * f.bust.half, y + 0.1 * drop)])
                    .open();
                let bone = Trace::from((0.16 * f.neck_half, f.hollow))
                    .smooth(&[(0.9 * f.shoulder.0, f.shoulder.1 + 22.0)])
                    .open();
                let [a, b] = mirrored(cup);
                let [c, d] = mirrored(bone);
                let middle = Trace::from((0.0, f.waist.y + 0.16 * (f.hip.y - f.waist.y)))
                    .line((0.0, f.waist.y + 0.24 * (f.hip.y - f.waist.y)))
                    .open();
                let face = Trace::from((-0.32 * f.head_half, 0.76 * f.chin))
                    .smooth(&[(0.0, 0.8 * f.chin), (0.32 * f.head_half, 0.76 * f.chin)])
                    .open();
                vec![a, b, c, d, middle, face]
            }
            Stance::Back => {
                let spine = Trace::from((0.0, f.nape))
                    .line((0.0, f.hip.y - 0.15 * (f.hip.y - f.waist.y)))
                    .open();
                let blade = Trace::from((0.3 * f.back_fold, f.nape + 0.5 * (f.chest.y - f.nape)))
                    .smooth(&[
                        (0.42 * f.back_fold, f.chest.y),
                        (0.78 * f.back_fold, f.chest.y - 8.0),
                    ])
                    .open();
                let [a, b] = mirrored(blade);
                let seat = Trace::from((0.0, f.hip.y + 0.035 * f.height))
                    .smooth(&[
                        (0.45 * f.hip.half, f.hip.y + 0.052 * f.height),
                        (0.85 * f.hip.half, f.hip.y + 0.03 * f.height),
                    ])
                    .open();
                let [c, d] = mirrored(seat);
                vec![spine, a, b, c, d]
            }
            Stance::Side => {
                let x = self.shoulder_line();
                let arm = Trace::from((x - 0.7 * f.arm[0], f.shoulder.1 + 24.0))
                    .smooth(&[
                        (x - f.arm[0], f.chest.y),
                        (x - f.arm[1], f.elbow.1),
                        (x + 8.0 - f.arm[2], f.wrist.1),
                    ])
                    .smooth(&[
                        (x + 4.0, f.wrist.1 + 0.05 * f.height),
                        (x + 16.0, f.wrist.1 + 0.1 * f.height),
                        (x + 14.0 + f.arm[2], f.wrist.1 + 0.05 * f.height),
                        (x + 8.0 + f.arm[2], f.wrist.1),
                        (x + f.arm[1], f.elbow.1),
                        (x + f.arm[0], f.chest.y),
                        (x + 0.7 * f.arm[0], f.shoulder.1 + 24.0),
                    ])
                    .open();
                vec![arm]
            }
        }
    }

    /// Where the body stands and what belongs to it.
    #[must_use]
    pub fn bounds(&self, stance: Stance) -> Rect {
        let f = &self.frame;
        let reach = f.wrist.0 + 2.0 * f.arm[3];
        let half = match stance {
            Stance::Front | Stance::Back => reach.max(0.24 * f.height),
            Stance::Side => 0.24 * f.height,
        };
        Rect::new(-half, 0.0, half, f.height)
    }

    /// Where the arm hangs from the side.
    fn shoulder_line(&self) -> f64 {
        let (back, front) = super::tape::side_ends(&self.frame, self.frame.chest);
        0.5 * (back + front) - 0.06 * (front - back)
    }

    fn facing(&self) -> Vec<BezPath> {
        let f = &self.frame;
        let jaw = 0.62 * f.head_half;
        // From the chin round: the one corner lies there, under the jaw.
        let head = Trace::from((0.0, f.chin))
            .smooth(&[
                (jaw, 0.86 * f.chin),
                (f.head_half, 0.44 * f.chin),
                (0.74 * f.head_half, 0.11 * f.chin),
                (0.0, 0.0),
                (-0.74 * f.head_half, 0.11 * f.chin),
                (-f.head_half, 0.44 * f.chin),
                (-jaw, 0.86 * f.chin),
                (0.0, f.chin),
            ])
            .closed();
        let arm = self.arm();
        let [arm, other] = mirrored(arm);
        let legs = 0.035 * f.height;
        let crotch = f.hip.y + 0.045 * f.height;
        let knee = 0.5 * f.hip.half;
        let half = |mirror: f64| {
            let at = move |(x, y): (f64, f64)| (mirror * x, y);
            let neck = (0.74 * f.neck_half, f.chin - 22.0);
            let outer = [
                (f.chest.half, f.chest.y),
                (f.bust.half, f.bust.y),
                (f.underbust.half, f.underbust.y),
                (f.waist.half, f.waist.y),
                (
                    0.5 * (f.waist.half + f.hip.half) + 0.2 * (f.hip.half - f.waist.half),
                    0.5 * (f.waist.y + f.hip.y),
                ),
                (f.hip.half, f.hip.y),
                (0.96 * f.hip.half, f.hip.y + 0.25 * (f.knee - f.hip.y)),
                (knee + 0.9 * legs, f.knee),
                (knee + 0.95 * legs, f.knee + 0.3 * (f.ankle - f.knee)),
                (knee + 0.5 * legs, f.ankle),
            ];
            let foot = [
                (knee + 0.9 * legs, f.height - 4.0),
                (knee + 0.1 * legs, f.height),
                (knee - 0.5 * legs, f.height - 4.0),
            ];
            let inner = [
                (knee - 0.5 * legs, f.ankle),
                (knee - 0.95 * legs, f.knee + 0.3 * (f.ankle - f.knee)),
                (knee - 0.8 * legs, f.knee),
                (10.0, crotch + 30.0),
                (0.0, crotch),
            ];
            (
                [neck, f.neck_side, f.shoulder].map(at),
                outer.map(at),
                foot.map(at),
                inner.map(at),
            )
        };
        let (top, outer, foot, inner) = half(1.0);
        let (top_left, outer_left, foot_left, inner_left) = half(-1.0);
        let back = |points: &[(f64, f64)]| points.iter().rev().copied().collect::<Vec<_>>();
        let [neck, side, shoulder] = top;
        let mut up = back(&outer_left);
        let first_up = up.remove(0);
        let trunk = Trace::from((0.0, f.chin - 22.0))
            .line(neck)
            .smooth(&[(0.74 * f.neck_half, 0.35 * neck.1 + 0.65 * side.1), side])
            .line(shoulder)
            .smooth(&outer)
            .smooth(&foot)
            .smooth(&inner)
            .smooth(&back(&inner_left[..4]))
            .smooth(&back(&foot_left))
            .line(first_up)
            .smooth(&up)
            .smooth(&[top_left[2]])
            .line(top_left[1])
            .smooth(&[
                (-0.74 * f.neck_half, 0.35 * neck.1 + 0.65 * side.1),
                top_left[0],
            ])
            .closed();
        vec![arm, other, trunk, head]
    }

    fn arm(&self) -> BezPath {
        let f = &self.frame;
        let [upper, elbow, wrist, hand] = f.arm;
        let (sx, sy) = f.shoulder;
        let under = f.chest.y + 10.0;
        let lean = (f.elbow.0 - sx) / (f.elbow.1 - sy).max(1.0);
        let axis = |y: f64| sx - 0.75 * upper + lean * (y - sy);
        let biceps = under + 0.1 * (f.elbow.1 - under);
        let hand_end = f.wrist.1 + 0.105 * f.height;
        let shift = f.elbow.0 - axis(f.elbow.1) - elbow;
        Trace::from((sx, sy))
            .smooth(&[
                (sx + 0.34 * upper, sy + 0.6 * upper),
                (axis(biceps) + 1.05 * upper, biceps),
                (f.elbow.0 + elbow + shift.min(0.0), f.elbow.1),
                (f.wrist.0 + wrist, f.wrist.1),
                (
                    f.wrist.0 + 0.8 * hand,
                    f.wrist.1 + 0.45 * (hand_end - f.wrist.1),
                ),
                (f.wrist.0 + 0.2 * hand, hand_end),
                (
                    f.wrist.0 - 0.6 * hand,
                    f.wrist.1 + 0.55 * (hand_end - f.wrist.1),
                ),
                (f.wrist.0 - wrist, f.wrist.1),
                (f.elbow.0 - elbow + shift.min(0.0), f.elbow.1),
                (axis(biceps) - upper, biceps),
            ])
            .line((0.6 * f.chest.half, f.chest.y))
            .closed()
    }

    fn sideways(&self) -> Vec<BezPath> {
        let f = &self.frame;
        let ends = |girdle| super::tape::side_ends(f, girdle);
        let (seat, belly) = ends(f.hip);
        let (waist_back, waist_front) = ends(f.waist);
        let (_, under_front) = ends(f.underbust);
        let (blade, _) = ends(f.chest);
        let (bust_back, bust_front) = ends(f.bust);
        let nape = (blade + 24.0, f.nape);
        let hollow = (nape.0 + f.neck_depth, f.hollow);
        let centre = 0.5 * (nape.0 + hollow.0);
        let head = ellipse(
            (centre + 18.0, 0.5 * f.chin),
            (1.22 * f.head_half, 0.5 * f.chin),
        );
        let heel = 0.5 * (seat + belly) - 0.028 * f.height;
        let trunk = Trace::from((centre - 42.0, f.chin - 20.0))
            .smooth(&[
                nape,
                (blade + 2.0, f.nape + 0.55 * (f.chest.y - f.nape)),
                (blade, f.chest.y),
                (
                    0.5 * (bust_back + waist_back) - 4.0,
                    0.5 * (f.bust.y + f.waist.y),
                ),
                (waist_back, f.waist.y),
                (seat, f.hip.y - 0.12 * (f.hip.y - f.waist.y)),
                (seat + 14.0, f.hip.y + 0.045 * f.height),
                (heel - 0.005 * f.height, f.knee),
                (heel - 0.014 * f.height, f.knee + 0.3 * (f.ankle - f.knee)),
                (heel + 6.0, f.ankle),
            ])
            .line((heel - 4.0, f.height))
            .line((heel + 0.125 * f.height, f.height))
            .smooth(&[
                (heel + 0.055 * f.height, f.ankle),
                (heel + 0.058 * f.height, f.knee + 0.3 * (f.ankle - f.knee)),
                (heel + 0.07 * f.height, f.knee),
                (belly - 10.0, f.hip.y + 0.06 * f.height),
                (belly, 0.5 * (f.waist.y + f.hip.y)),
                (waist_front, f.waist.y),
                (under_front, f.underbust.y),
                (bust_front, f.bust.y),
                (
                    hollow.0 + 0.25 * (bust_front - hollow.0),
                    f.hollow + 0.4 * (f.bust.y - f.hollow),
                ),
                hollow,
                (centre + 40.0, f.chin + 4.0),
            ])
            .closed();
        vec![trunk, head]
    }
}
