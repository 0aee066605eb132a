//! Back neck gape: for a back neckline that stands off.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::asked_ease::{taken_by_ease, with_shoulder_ease};
use crate::alterations::chain::promise::{edges_stay, girths_stay, upper_stays};
use crate::alterations::cutting::led::led;
use crate::alterations::cutting::one_way::end_moved;
use crate::alterations::cutting::shared_lean::trued_across_shoulder;
use crate::alterations::cutting::true_up::with_mouth;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::cutting::wedge::pass_wedge;
use crate::alterations::darts::dart_room::check_dart;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{
    Alteration, AlterationError, Altered, Fullness, Part, Promise, Sketch, StructureChange,
    solve_sleeves,
};
use crate::geometry::elementary::tan;
use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Span, Vec2, angle_between, perpendicular, root,
};
use crate::piece::{Apexes, Dart, EdgeName, Measure, Pattern, Piece, Pressed, aim_edge};
use serde::{Deserialize, Serialize};

/// What the dart is called that a neckline may be given.
const NECK_DART: &str = "neck";

/// Takes a back neckline in that stands off (positive), or lets a tight one out.
///
/// A wedge is folded from the middle of the back neckline to the tip of the shoulder dart and
/// passed into that dart, which gets wider; then the neckline is drawn smooth again, shorter by
/// exactly the amount. Centre back, shoulder, armscye, side seam and every girth stay.
///
/// A shoulder without a dart gets longer by what opens there, which is eased in; its point stays
/// but for what cloth cannot ease, and the armscye keeps its length. More is sewn as a dart in the
/// middle of the neckline (`fullness: dart`), and nothing else moves.
///
/// Usual amounts: 3 to 7 mm on a half back; as a neck dart, for a roll below the neck, 6 to 12
/// (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, BackNeckGape, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Dress))?;
/// let step: Box<dyn Alteration> = Box::new(BackNeckGape::by(5.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("back", EdgeName::NECKLINE);
/// let neckline = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((neckline(&pattern) - neckline(&done.pattern) - 5.0).abs() < 1e-4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/back_neck_gape.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BackNeckGape {
    /// By how much half of the back neckline gets shorter, in millimetres.
    pub amount: f64,
    /// Where the fullness goes when the shoulder has no dart.
    #[serde(default)]
    pub fullness: Fullness,
}

/// The most at once, in millimetres on a half: twice the usual (value from memory).
const MOST: f64 = 20.0;

/// Length of a new neck dart, in millimetres (value from memory: 70 to 80).
const DART_LENGTH: f64 = 75.0;

/// The most that is left to the shoulder point beyond what can be eased, in millimetres (an
/// assumption: it shows no more than that).
const MOST_AT_POINT: f64 = 4.0;

/// A neckline that turns less than this over the mouth of a dart is straight there, in radians.
const STRAIGHT: f64 = 1e-6;

/// Where a wedge goes.
enum Way<'p> {
    ShoulderDart(&'p Dart),
    ShoulderEase,
    NeckDart,
}

impl BackNeckGape {
    /// So much shorter, the fullness into the dart or the ease that is there.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self {
            amount,
            fullness: Fullness::Ease,
        }
    }

    fn way<'p>(&self, back: &UpperHalf<'p>) -> Way<'p> {
        match (back.shoulder_dart(), self.fullness) {
            (Some(dart), _) => Way::ShoulderDart(dart),
            (None, Fullness::Ease) => Way::ShoulderEase,
            (None, Fullness::Dart) => Way::NeckDart,
        }
    }
}

impl Alteration for BackNeckGape {
    fn name(&self) -> &'static str {
        "back_neck_gape"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    /// A neckline may be given a dart.
    fn structure_change(&self, before: &Pattern) -> StructureChange {
        match UpperHalf::back(before) {
            Ok(back) if matches!(self.way(&back), Way::NeckDart) => {
                StructureChange::none().adds(Part::dart(back.piece.name(), NECK_DART))
            }
            _ => StructureChange::none(),
        }
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        if let Ok(back) = UpperHalf::back(before) {
            let edges = [
                EdgeName::CENTRE_BACK,
                EdgeName::ARMSCYE,
                EdgeName::SIDE_SEAM,
            ];
            promises.extend(upper_stays(back.piece, &edges));
            if !matches!(self.way(&back), Way::ShoulderEase) {
                promises.extend(edges_stay(back.piece, &[EdgeName::SHOULDER]));
            }
            let neckline = Measure::edge_length(back.piece.name(), EdgeName::NECKLINE);
            promises.push(Promise::changes_by(neckline, -self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no back neckline gapes so far",
        )?;
        let back = UpperHalf::back(pattern)?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        if !back.piece.mouths(&EdgeName::NECKLINE).is_empty() {
            return Err(AlterationError::First {
                why: format!("the neckline of the {} has a dart", back.piece.name()),
                advice: "make this alteration before a dart is moved to the neckline, or take it all in one step".to_owned(),
            });
        }
        let way = self.way(&back);
        let piece = match way {
            Way::ShoulderDart(dart) => self.by_dart(&back, dart)?,
            Way::ShoulderEase => self.by_ease(pattern, &back)?,
            Way::NeckDart => return Ok(replaced(pattern, self.neck_dart(&back)?)?.into()),
        };
        let altered = trued_across_shoulder(replaced(pattern, piece)?)?;
        let altered = with_shoulder_ease(altered)?;
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

impl BackNeckGape {
    /// The turn about a pivot that closes the wedge, where `drawn` is the neckline after a turn:
    /// against the clock, toward the centre back.
    fn turn(
        &self,
        neckline: &Curve,
        pivot: Point,
        drawn: impl Fn(f64) -> Result<Curve, GeometryError>,
    ) -> Result<f64, AlterationError> {
        let length = neckline.length();
        let near = -self.amount / neckline.point_at(0.5 * length)?.0.distance(pivot);
        root(
            "wedge at the back neckline",
            0.3 * near,
            3.0 * near,
            |turn| drawn(turn).map_or(f64::NAN, |c| c.length() - length + self.amount),
        )
        .map_err(|source| AlterationError::Construction {
            step: "wedge from the back neckline",
            source,
        })
    }

    /// The wedge is passed into the shoulder dart.
    fn by_dart(&self, back: &UpperHalf<'_>, dart: &Dart) -> Result<Piece, AlterationError> {
        let (apex, neckline) = (dart.apex(), back.neckline);
        let drawn = |turn: f64| {
            let swing = Rigid::turn_about(apex, turn);
            end_moved(neckline, &swing)
        };
        let turn = self.turn(neckline, apex, drawn)?;
        check_dart(dart, -turn, self.amount)?;
        let middle = 0.5 * neckline.length();
        let passed = pass_wedge(back.piece, dart, (&EdgeName::NECKLINE, middle), turn)?;
        let mut sketch = passed.sketch;
        sketch.replace(&EdgeName::NECKLINE, drawn(turn)?)?;
        sketch.finish()
    }

    /// The wedge lengthens the shoulder, and is eased in.
    fn by_ease(&self, pattern: &Pattern, back: &UpperHalf<'_>) -> Result<Piece, AlterationError> {
        let (side, tip) = (back.shoulder.start(), back.shoulder.end());
        // Over the blade: half way out, and half way down to the underarm.
        let level = 0.5 * (back.neckline.start().y + back.armscye.end().y);
        let pivot = Point::new(0.5 * tip.x, level);
        let old = tip - side;
        let moved = |turn: f64| Rigid::turn_about(pivot, turn).apply(side);
        // The neckline stays as it was to the shoulder, whose line turns a little.
        let laid = |from: Point, to: Point, new: Vec2| Rigid::lay(from, old, to, new);
        let drawn = |turn: f64| {
            let to = moved(turn);
            end_moved(back.neckline, &laid(side, to, tip - to))
        };
        let turn = self.turn(back.neckline, pivot, drawn)?;
        let to = moved(turn);
        let new = tip - to;
        let longer = new.hypot() - old.hypot();
        let left = longer - taken_by_ease(pattern, longer);
        self.check_point(left)?;
        let new_tip = tip - new.normalize() * left;
        let mut sketch = Sketch::of(back.piece);
        sketch.replace(&EdgeName::NECKLINE, drawn(turn)?)?;
        let shoulder = led(
            back.shoulder,
            &laid(side, to, new),
            &laid(tip, new_tip, new),
        )?;
        sketch.replace(&EdgeName::SHOULDER, shoulder)?;
        let stay = (Vec2::ZERO, Vec2::ZERO);
        let (armscye, width_point) = back.armscye_kept(new_tip, angle_between(old, new), stay)?;
        back.put_armscye(&mut sketch, armscye, width_point)?;
        sketch.finish()
    }

    /// Refuses a shoulder that leaves so much to its point: it is better sewn as a dart.
    fn check_point(&self, left: f64) -> Result<(), AlterationError> {
        if left.abs() <= MOST_AT_POINT {
            return Ok(());
        }
        Err(AlterationError::TooMuch {
            amount: self.amount,
            most: self.amount * Span::SHARES.nearest(MOST_AT_POINT / left.abs()),
            unit: "mm",
            why: format!(
                "beyond what the back shoulder is eased by, its point would move by {:.1} mm; with `fullness: dart` it is sewn as a neck dart",
                left.abs()
            ),
        })
    }

    /// The wedge is sewn as a dart in the middle of the neckline, square to it.
    fn neck_dart(&self, back: &UpperHalf<'_>) -> Result<Piece, AlterationError> {
        if self.amount < 0.0 {
            return Err(AlterationError::Missing {
                what: "a dart at the back that could be let out".to_owned(),
                advice: "leave out fullness: the shoulder then gives up some of its ease",
            });
        }
        let (neckline, length) = (back.neckline, back.neckline.length());
        let (from, to) = (0.5 * (length - self.amount), 0.5 * (length + self.amount));
        let (before, after) = (neckline.part(0.0, from)?, neckline.part(to, length)?);
        let across = after.start() - before.end();
        let middle = before.end().midpoint(after.start());
        let inward = perpendicular(across.normalize());
        let apex = middle + inward * DART_LENGTH;
        // What is cut out was bent about a centre beyond the neckline: about that one it would
        // have closed smoothly.
        let bend = angle_between(before.end_direction(), after.start_direction());
        let bend = if bend.abs() < STRAIGHT {
            -STRAIGHT
        } else {
            bend
        };
        let centre = middle + inward * (0.5 * across.hypot() / tan(0.5 * bend));
        let room = [before.length(), after.length()];
        let aimed = aim_edge(&before, &after, (centre, apex), room)?;
        let dart = Dart {
            name: NECK_DART.to_owned(),
            edge: Some(EdgeName::NECKLINE),
            legs: aimed.legs,
            apexes: Apexes::One(apex),
            pressed: Pressed::TowardFirstLeg,
        };
        let mut sketch = Sketch::of(back.piece);
        let drawn = with_mouth(&aimed.before, &dart, &aimed.after)?;
        sketch.replace(&EdgeName::NECKLINE, drawn)?;
        sketch.darts_mut().push(dart);
        sketch.finish()
    }
}
