//! The shoulder of a trunk piece redrawn, with its dart, and the neckline that ends on it.

use crate::alterations::cutting::one_way::turns_hollow;
use crate::alterations::cutting::slowing::slowed;
use crate::alterations::cutting::true_up::{turned_end, with_mouth, without_mouth};
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::darts::dart_room::taken_by_dart;
use crate::alterations::{AlterationError, Sketch, led};
use crate::geometry::{Curve, Point, Rigid, Vec2, angle_between, root, tolerance};
use crate::piece::{Apexes, Dart, EdgeName};

/// How near to the turn at which a neckline would no longer bend one way its end slows down, in
/// radians.
const SLOW: f64 = 2.0 * std::f64::consts::PI / 180.0;

/// Halvings by which that turn is found: to a millionth of a degree.
const HALVINGS: usize = 24;

/// A shoulder redrawn.
pub(in crate::alterations) struct Shoulder {
    pub edge: Curve,
    pub dart: Option<Dart>,
    /// By how much the shoulder turned at the neck side point, in radians.
    pub turn_at_neck: f64,
    /// By how much it turned at the shoulder point.
    pub turn_at_tip: f64,
}

pub(in crate::alterations) fn moved_dart(dart: &Dart, motion: &Rigid) -> Dart {
    Dart {
        legs: dart.legs.map(|leg| motion.apply(leg)),
        apexes: match dart.apexes {
            Apexes::One(a) => Apexes::One(motion.apply(a)),
            Apexes::Two(a, b) => Apexes::Two(motion.apply(a), motion.apply(b)),
        },
        ..dart.clone()
    }
}

impl UpperHalf<'_> {
    /// The shoulder made longer at its point, and turned about the neck side point.
    pub fn shoulder_turned(&self, turn: f64, longer: f64) -> Result<Shoulder, AlterationError> {
        let out = Rigid::shift(self.shoulder.end_direction() * longer);
        let motion = Rigid::turn_about(self.shoulder.start(), turn);
        let drawn = |edge: Curve, dart: Option<Dart>| Shoulder {
            edge: edge.moved(&motion),
            dart: dart.map(|d| moved_dart(&d, &motion)),
            turn_at_neck: turn,
            turn_at_tip: turn,
        };
        let Some(dart) = self.shoulder_dart() else {
            return Ok(drawn(led(self.shoulder, &Rigid::IDENTITY, &out)?, None));
        };
        if turn.abs() > tolerance::ANGLE {
            self.check_reach(dart)?;
        }
        let (before, after) = without_mouth(self.piece, &EdgeName::SHOULDER)?;
        let after = led(&after, &Rigid::IDENTITY, &out)?;
        let edge = with_mouth(&before, dart, &after)?;
        Ok(drawn(edge, Some(dart.clone())))
    }

    /// Refuses a shoulder dart that reaches below the width line, as a bust dart moved there
    /// does: turned with the shoulder, its tip would leave the place it is for.
    pub fn check_reach(&self, dart: &Dart) -> Result<(), AlterationError> {
        let width = self.armscye_parts()?.1.start();
        if dart.apex().y <= width.y {
            return Ok(());
        }
        Err(AlterationError::First {
            why: format!(
                "the {} dart on the shoulder of the {} reaches below the width line, and its tip would swing away with the shoulder",
                dart.name,
                self.piece.name()
            ),
            advice: "alter the shoulder before that dart is moved to it, or move the dart to another edge first".to_owned(),
        })
    }

    /// The shoulder drawn to another shoulder point, from the neck side point: what it gets
    /// longer goes into its dart, as far as that can take it, or without a dart into its length.
    pub fn shoulder_to(&self, tip: Point) -> Result<Shoulder, AlterationError> {
        let (side, old) = (self.shoulder.start(), self.shoulder.end());
        let Some(dart) = self.shoulder_dart() else {
            let turn = angle_between(old - side, tip - side);
            let motion = |from, to| Rigid::lay(from, old - side, to, tip - side);
            return Ok(Shoulder {
                edge: led(self.shoulder, &motion(side, side), &motion(old, tip))?,
                dart: None,
                turn_at_neck: turn,
                turn_at_tip: turn,
            });
        };
        let (before, after) = without_mouth(self.piece, &EdgeName::SHOULDER)?;
        let (apex, reach) = (dart.apex(), side.distance(tip));
        let opened = |by: f64| Rigid::turn_about(apex, by);
        let wider = root("angle of the shoulder dart", -0.6, 0.6, |by| {
            opened(by).apply(old).distance(side) - reach
        })
        .map_err(|source| AlterationError::Construction {
            step: "shoulder with its excess in the dart",
            source,
        })?;
        let wider = taken_by_dart(dart, wider);
        let turn = angle_between(opened(wider).apply(old) - side, tip - side);
        let first = Rigid::turn_about(side, turn);
        let second = opened(wider).then(first);
        let dart = Dart {
            legs: [first.apply(dart.legs[0]), second.apply(dart.legs[1])],
            apexes: Apexes::One(first.apply(apex)),
            ..dart.clone()
        };
        Ok(Shoulder {
            edge: with_mouth(&before.moved(&first), &dart, &after.moved(&second))?,
            dart: Some(dart),
            turn_at_neck: turn,
            turn_at_tip: turn + wider,
        })
    }

    /// Puts a shoulder into the sketch, and trues the neckline to it at its old length.
    pub fn put_shoulder(
        &self,
        sketch: &mut Sketch,
        shoulder: &Shoulder,
        neck_turn: f64,
    ) -> Result<(), AlterationError> {
        sketch.replace(&EdgeName::SHOULDER, shoulder.edge.clone())?;
        if let Some(dart) = &shoulder.dart
            && let Some(slot) = sketch.dart_mut(&dart.name)
        {
            *slot = dart.clone();
        }
        if neck_turn.abs() > tolerance::ANGLE {
            let arrive = self.neck_arrival(neck_turn);
            let drawn = turned_end(self.neckline, arrive, self.neckline.length());
            let neckline = drawn.map_err(|source| AlterationError::Construction {
                step: "neckline to the turned shoulder, at its old length",
                source,
            })?;
            sketch.replace(&EdgeName::NECKLINE, neckline)?;
        }
        Ok(())
    }

    fn neck_arrival(&self, turn: f64) -> Vec2 {
        Rigid::turn_about(Point::ORIGIN, turn).apply_direction(self.neckline.end_direction())
    }

    /// By how much less than its shoulder the end of the neckline has to turn, in radians, so that
    /// it still bends one way at its old length: a deep neck on a shoulder that gets steep leaves no
    /// corner to round. The other half then turns by as much more.
    pub fn neck_lean(&self, turn: f64) -> f64 {
        let hollow = |turn: f64| turns_hollow(self.neckline, self.neck_arrival(turn));
        let far = turn.max(0.0) + SLOW;
        if hollow(far) || !hollow(0.0) {
            return 0.0;
        }
        let (mut room, mut beyond) = (0.0, far);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (room + beyond);
            if hollow(middle) {
                room = middle;
            } else {
                beyond = middle;
            }
        }
        turn - (room - slowed(room, -turn, SLOW))
    }
}
