//! The upper half of a trunk piece: its edges from neck to underarm, and how they are redrawn
//! together when the shoulder moves.

use super::led::{filled, led};
use super::one_way::{Armscye, Course, turns_hollow};
use super::redrawn_waist::{WaistMoves, redraw_waist};
use super::slivers::without_slivers;
use super::slowing::slowed;
use super::true_up::{carried, turned_end, with_mouth, without_mouth};
use super::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, angle_between, root, tolerance};
use crate::piece::{Apexes, Dart, EdgeName, Pattern, Piece};

/// The upper half of a back or front.
pub(super) struct UpperHalf<'p> {
    pub piece: &'p Piece,
    pub neckline: &'p Curve,
    pub shoulder: &'p Curve,
    pub armscye: &'p Curve,
    pub side: &'p Curve,
    /// How far along the armscye the width of the back or front is.
    pub width_at: f64,
}

/// How far above the first dart of the side seam its blend ends, in millimetres: the seam beside
/// it stays as it is.
const CLEAR: f64 = 4.0;

/// Waist darts are drafted to end so little below the underarm line, in millimetres, that they
/// belong to it (up to 20 mm below; value from memory).
const TIP_BELOW: f64 = 20.0;

/// How near to the turn at which a neckline would no longer bend one way its end slows down, in
/// radians.
const SLOW: f64 = 2.0 * std::f64::consts::PI / 180.0;

/// Halvings by which that turn is found: to a millionth of a degree.
const HALVINGS: usize = 24;

/// A notch is not left nearer to the underarm than this, in millimetres, if it was not before.
const HIGHEST_NOTCH: f64 = 12.0;

const ADVICE: &str = "this alteration works on a back and a front with neckline, shoulder, armscye and side seam, of bodice, dress, tunic or shirt";

impl<'p> UpperHalf<'p> {
    /// The back of a pattern.
    pub fn back(pattern: &'p Pattern) -> Result<Self, AlterationError> {
        Self::with_fold(pattern, &EdgeName::CENTRE_BACK)
    }

    /// The front of a pattern.
    pub fn front(pattern: &'p Pattern) -> Result<Self, AlterationError> {
        Self::with_fold(pattern, &EdgeName::CENTRE_FRONT)
    }

    fn with_fold(pattern: &'p Pattern, fold: &EdgeName) -> Result<Self, AlterationError> {
        let half = pattern.pieces().iter().find_map(|piece| {
            piece.outline().edge(fold)?;
            let edge = |name: &EdgeName| piece.outline().edge(name).map(|e| e.curve());
            let armscye = edge(&EdgeName::ARMSCYE)?;
            let notch = piece.notches().iter().find(|n| n.edge == EdgeName::ARMSCYE);
            let half = 0.5 * armscye.length();
            Some(Self {
                piece,
                neckline: edge(&EdgeName::NECKLINE)?,
                shoulder: edge(&EdgeName::SHOULDER)?,
                armscye,
                side: edge(&EdgeName::SIDE_SEAM)?,
                width_at: notch.map_or(half, |n| n.at),
            })
        });
        half.ok_or_else(|| AlterationError::Missing {
            what: format!("an upper half with {fold}"),
            advice: ADVICE,
        })
    }

    /// The dart on the shoulder, if there is one.
    pub fn shoulder_dart(&self) -> Option<&'p Dart> {
        let mouths = self.piece.mouths(&EdgeName::SHOULDER);
        mouths.first().map(|(dart, ..)| *dart)
    }

    /// The armscye above and below the width point.
    pub fn armscye_parts(&self) -> Result<(Curve, Curve), GeometryError> {
        self.armscye.split_at(self.width_at)
    }

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
    /// longer goes into its dart, or without a dart into its length.
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
        let wider = root("angle of the shoulder dart", -dart.angle(), 0.6, |by| {
            opened(by).apply(old).distance(side) - reach
        })
        .map_err(|source| AlterationError::Construction {
            step: "shoulder with its excess in the dart",
            source,
        })?;
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

    /// The armscye to a new shoulder point, leaving it turned by `turn`; its width point and its
    /// underarm are shifted. It bends one way; the width point may slide down plumb for that.
    pub fn armscye_from(
        &self,
        tip: Point,
        turn: f64,
        shifts: (Vec2, Vec2),
    ) -> Result<(Curve, Point), GeometryError> {
        match self.shape() {
            Some(shape) => shape.on(&self.course(&shape, tip, turn, shifts)),
            None => self.armscye_led(tip, turn, shifts),
        }
    }

    /// The same at its old length: fuller or flatter under the arm.
    pub fn armscye_kept(
        &self,
        tip: Point,
        turn: f64,
        shifts: (Vec2, Vec2),
    ) -> Result<(Curve, Point), AlterationError> {
        self.armscye_of_length(self.armscye.length(), tip, turn, shifts)
    }

    /// The same at any length.
    pub fn armscye_of_length(
        &self,
        length: f64,
        tip: Point,
        turn: f64,
        shifts: (Vec2, Vec2),
    ) -> Result<(Curve, Point), AlterationError> {
        let drawn = match self.shape() {
            Some(shape) => shape.of_length(&self.course(&shape, tip, turn, shifts), length),
            None => self
                .armscye_led(tip, turn, shifts)
                .and_then(|(curve, width_point)| {
                    let (upper, lower) = curve.split_at(curve.nearest(width_point).1)?;
                    let wanted = length - upper.length();
                    Ok((upper.then(&filled(&lower, wanted)?)?, width_point))
                }),
        };
        drawn.map_err(|_| AlterationError::First {
            why: format!(
                "the armscye of the {} can neither be filled nor flattened to the length that it has to have there",
                self.piece.name()
            ),
            advice: "alter by less, or give the width first (back_width or front_width)".to_owned(),
        })
    }

    /// How far the armscye turns between the shoulder point and the chord to the width point, and
    /// how far it could with its width point slid down, in radians; negative where it bends back.
    /// Nothing is said of one in several parts.
    pub fn hollowness(&self) -> Option<(f64, f64)> {
        let course = self.shape()?.course();
        Some((course.hollowness(), course.most_hollow()))
    }

    /// How far the shoulder point lies outside the width point, in millimetres.
    pub fn jut(&self) -> f64 {
        let width = self.piece.line("width").map(|line| line.curve.end().x);
        self.armscye.start().x - width.unwrap_or(self.armscye.start().x)
    }

    fn shape(&self) -> Option<Armscye> {
        Armscye::of(self.armscye, self.width_at)
    }

    fn course(
        &self,
        shape: &Armscye,
        tip: Point,
        turn: f64,
        (at_width, at_underarm): (Vec2, Vec2),
    ) -> Course {
        let old = shape.course();
        Course {
            tip,
            leave: Rigid::turn_about(Point::ORIGIN, turn).apply_direction(old.leave),
            width: old.width + at_width,
            underarm: old.underarm + at_underarm,
            arrive: old.arrive,
        }
    }

    /// An armscye of several parts, each point of which goes with a share of both ends.
    fn armscye_led(
        &self,
        tip: Point,
        turn: f64,
        (at_width, at_underarm): (Vec2, Vec2),
    ) -> Result<(Curve, Point), GeometryError> {
        let (upper, lower) = self.armscye_parts()?;
        let start = upper.start();
        let top = Rigid::turn_about(start, turn).then(Rigid::shift(tip - start));
        let middle = Rigid::shift(at_width);
        let upper = led(&upper, &top, &middle)?;
        let width_point = upper.end();
        let lower = led(&lower, &middle, &Rigid::shift(at_underarm))?;
        Ok((upper.then(&lower)?, width_point))
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
        if std::env::var_os("DBG").is_some() { eprintln!("room {} turn {}", room.to_degrees(), turn.to_degrees()); }
        turn - (room - slowed(room, -turn, SLOW))
    }

    /// Puts an armscye and its width point into the sketch, the notch with it, and draws the
    /// width line to it.
    pub fn put_armscye(
        &self,
        sketch: &mut Sketch,
        armscye: Curve,
        width_point: Point,
    ) -> Result<(), AlterationError> {
        sketch.replace(&EdgeName::ARMSCYE, armscye)?;
        for (place, notch) in self.piece.notches().iter().enumerate() {
            let here = notch.edge == EdgeName::ARMSCYE
                && (notch.at - self.width_at).abs() <= tolerance::SEAM_DRAFTED;
            if here {
                sketch.put_notch(place, width_point);
            }
        }
        put_level(sketch, "width", width_point)?;
        Ok(())
    }

    /// Draws the side seam from an underarm moved by `by`, blended into the old seam above its first
    /// dart. Notches stay where they are from the waist, but below the underarm.
    pub fn put_underarm(&self, sketch: &mut Sketch, by: Vec2) -> Result<(), AlterationError> {
        let side = self.side_blended()?.from(by)?;
        let (underarm, longer) = (side.start(), side.length() - self.side.length());
        sketch.replace(&EdgeName::SIDE_SEAM, side)?;
        for notch in &mut sketch.parts_mut().notches {
            if notch.edge == EdgeName::SIDE_SEAM {
                let least = notch.at.min(HIGHEST_NOTCH);
                notch.at = (notch.at + longer).max(least);
            }
        }
        put_level(sketch, "underarm", underarm)?;
        self.lower_tips(sketch, underarm.y)
    }

    /// Waist darts that end just below the underarm line go with it: on it they would take the
    /// finished girth in.
    fn lower_tips(&self, sketch: &mut Sketch, underarm: f64) -> Result<(), AlterationError> {
        let drop = underarm - self.armscye.end().y;
        if drop.abs() <= tolerance::POINT {
            return Ok(());
        }
        let tips = self.piece.darts().iter().filter(|dart| {
            let below = dart.apex().y - self.armscye.end().y;
            dart.edge
                .as_ref()
                .is_none_or(|edge| *edge == EdgeName::WAIST)
                && (0.0..TIP_BELOW.max(drop)).contains(&below)
        });
        for dart in tips {
            let middle = dart.legs[0].midpoint(dart.legs[1]);
            let axis = (middle - dart.apex()) / (middle.y - dart.apex().y);
            if dart.edge.is_none() {
                if let (Apexes::Two(upper, lower), Some(slot)) =
                    (dart.apexes, sketch.dart_mut(&dart.name))
                {
                    slot.apexes = Apexes::Two(upper + axis * drop, lower);
                }
                continue;
            }
            let moves = WaistMoves {
                centre: Vec2::ZERO,
                side: Vec2::ZERO,
                longer: 0.0,
                apex: &|_| drop,
            };
            redraw_waist(sketch, self.piece, &moves)?;
        }
        Ok(())
    }

    /// The side seam, parted where a moved underarm is blended in.
    pub fn side_blended(&self) -> Result<BlendedSide, AlterationError> {
        let (above, below) = self.side.split_at(self.blend_length()?)?;
        let above = without_slivers(&above, &[])?;
        Ok(BlendedSide { above, below })
    }

    /// Over how much of the side seam a moved underarm is blended in: down to its first dart, or
    /// to the waist.
    fn blend_length(&self) -> Result<f64, AlterationError> {
        let length = self.side.length();
        let waist = self.piece.line("waist").map(|line| line.curve.end());
        let waist = waist.map(|end| self.side.nearest(end).1);
        let waist = waist.filter(|at| *at > 3.0 * CLEAR).unwrap_or(length);
        let mouths = self.piece.mouths(&EdgeName::SIDE_SEAM);
        let dart = mouths.iter().map(|(_, from, _)| *from - CLEAR);
        let free = dart.fold(waist.min(length - CLEAR), f64::min);
        if free > 2.0 * CLEAR {
            return Ok(free);
        }
        Err(AlterationError::First {
            why: format!(
                "the side seam of the {} has a dart {:.1} mm below the underarm, which leaves no room to blend it",
                self.piece.name(),
                free + CLEAR
            ),
            advice: "move that dart lower on the side seam, or to another edge, first".to_owned(),
        })
    }
}

/// A side seam in two parts: what goes with the underarm, and what stays.
pub(super) struct BlendedSide {
    above: Curve,
    below: Curve,
}

impl BlendedSide {
    /// The side seam from an underarm moved by `by`.
    pub fn from(&self, by: Vec2) -> Result<Curve, GeometryError> {
        self.carried(by)?.then(&self.below)
    }

    /// Its length, in millimetres.
    pub fn length_from(&self, by: Vec2) -> Result<f64, GeometryError> {
        Ok(self.carried(by)?.length() + self.below.length())
    }

    fn carried(&self, by: Vec2) -> Result<Curve, GeometryError> {
        carried(&self.above, &Rigid::shift(by))
    }
}

/// A shoulder redrawn.
pub(super) struct Shoulder {
    pub edge: Curve,
    pub dart: Option<Dart>,
    /// By how much the shoulder turned at the neck side point, in radians.
    pub turn_at_neck: f64,
    /// By how much it turned at the shoulder point.
    pub turn_at_tip: f64,
}

pub(super) fn moved_dart(dart: &Dart, motion: &Rigid) -> Dart {
    Dart {
        legs: dart.legs.map(|leg| motion.apply(leg)),
        apexes: match dart.apexes {
            Apexes::One(a) => Apexes::One(motion.apply(a)),
            Apexes::Two(a, b) => Apexes::Two(motion.apply(a), motion.apply(b)),
        },
        ..dart.clone()
    }
}

/// Draws a balance line level, from where it starts to the side, ending at a point.
pub(super) fn put_level(
    sketch: &mut Sketch,
    name: &str,
    end: Point,
) -> Result<(), AlterationError> {
    for line in sketch.lines_mut().iter_mut().filter(|l| l.name == name) {
        let from = Point::new(line.curve.start().x, end.y);
        line.curve = Curve::line(from, end)?;
    }
    Ok(())
}
