//! Back-length increase: for a rounded upper back.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::asked_ease::{taken_by_ease, with_shoulder_ease};
use crate::alterations::chain::promise::{edges_stay, girths_stay, upper_stays};
use crate::alterations::chain::way_back::taken_back;
use crate::alterations::cutting::armscye_line::hinge_at;
use crate::alterations::cutting::led::led;
use crate::alterations::cutting::shared_lean::{
    Redrawn, front_leaned, kept_leaning, trued_across_shoulder,
};
use crate::alterations::cutting::true_up::{turned_end, with_mouth, without_mouth};
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::darts::dart_room::{
    beside_dart, check_dart, check_point, parted_over_blade,
};
use crate::alterations::shoulders::shoulder_line::moved_dart;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{
    Alteration, AlterationError, Altered, Paper, Part, Promise, Sketch, StructureChange,
    solve_sleeves,
};
use crate::geometry::elementary::atan2;
use crate::geometry::{Curve, Point, Rigid, Vec2, angle_between, tolerance};
use crate::piece::{Apexes, Dart, EdgeName, Measure, Pattern, Piece, Pressed};
use serde::{Deserialize, Serialize};

/// What the dart is called that an eased shoulder may be given.
const SHOULDER_DART: &str = "shoulder";

/// Where fullness at the back goes when the shoulder has no dart yet.
///
/// ```
/// use blockwright::alterations::Fullness;
/// assert_eq!(Fullness::default(), Fullness::Ease);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fullness {
    /// Into the ease of the back shoulder, as far as cloth can be eased.
    #[default]
    Ease,
    /// Into a new dart: on the shoulder, or for a neckline that stands off on the neckline.
    Dart,
}

/// Lengthens the centre back above the shoulder blades (positive), for a rounded back, or
/// shortens it, for a flat and over-erect one.
///
/// A slash runs from the fold at blade level across to the armscye and is hinged there; another
/// from the shoulder down to the first. The neck panel goes straight up by the amount, so that
/// the fold is straight again and the neckline stays exactly as it is; the shoulder panel swings
/// up on its hinge, and between the two the shoulder dart opens. Blade level is the tip of that
/// dart; without a dart it is half way from the nape to the underarm, and the shoulder gets
/// longer by what opens at the neck: that is eased in, or taken by a new dart. A dart opens to 20 mm,
/// which still lie flat on a shoulder; the rest is eased in beside it. What neither dart nor
/// ease can take or give is left at the shoulder point. The armscye is
/// drawn smooth over its hinge at its old length; side seam, sleeve and every girth stay.
///
/// Usual amounts: 6 to 15 mm, at most 20 to 25 (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, BackLengthIncrease, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Bodice))?;
/// let step: Box<dyn Alteration> = Box::new(BackLengthIncrease::by(10.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// let length = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((length(&done.pattern) - length(&pattern) - 10.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/back_length_increase.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BackLengthIncrease {
    /// By how much the centre back gets longer, in millimetres.
    pub amount: f64,
    /// Where the fullness goes when the shoulder has no dart.
    #[serde(default)]
    pub fullness: Fullness,
}

/// The most at once, in millimetres: twice what is usual at most (value from memory).
const MOST: f64 = 50.0;

/// How often the hinge is laid half way anew: each time it moves by a fiftieth as much.
const ROUNDS: usize = 5;

/// How far the chord of a shoulder that bends at its dart is turned, as a share of its end: with more
/// the curve would bend back.
const BENT: f64 = 2.0 / 3.0;

/// Length of a new shoulder dart, in millimetres (value from memory: 75 to 90).
const NEW_DART: f64 = 80.0;

impl BackLengthIncrease {
    /// So much longer, the fullness into the dart or the ease that is there.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self {
            amount,
            fullness: Fullness::Ease,
        }
    }

    /// Back and front altered.
    fn trunk(&self, pattern: &Pattern) -> Result<Pattern, AlterationError> {
        let back = UpperHalf::back(pattern)?;
        let front = UpperHalf::front(pattern).ok();
        let front = front.as_ref();
        let (piece, lean) = if self.opens_dart(&back) {
            self.by_dart((&back, front))?
        } else {
            self.by_ease(pattern, (&back, front))?
        };
        let altered = front_leaned(replaced(pattern, piece)?, lean)?;
        let altered = trued_across_shoulder(altered)?;
        with_shoulder_ease(altered)
    }

    fn opens_dart(&self, back: &UpperHalf<'_>) -> bool {
        back.shoulder_dart().is_some() || self.fullness == Fullness::Dart
    }
}

impl Alteration for BackLengthIncrease {
    fn name(&self) -> &'static str {
        "back_length_increase"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    /// An eased shoulder may be given a dart.
    fn structure_change(&self, before: &Pattern) -> StructureChange {
        match UpperHalf::back(before) {
            Ok(back) if self.opens_dart(&back) => {
                StructureChange::none().adds(Part::dart(back.piece.name(), SHOULDER_DART))
            }
            _ => StructureChange::none(),
        }
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        if let Ok(back) = UpperHalf::back(before) {
            let edges = [EdgeName::NECKLINE, EdgeName::ARMSCYE, EdgeName::SIDE_SEAM];
            promises.extend(upper_stays(back.piece, &edges));
            let front = UpperHalf::front(before).ok();
            if self.opens_dart(&back) && self.eased_beside_dart((&back, front.as_ref())) == 0.0 {
                promises.extend(edges_stay(back.piece, &[EdgeName::SHOULDER]));
            }
            let centre = Measure::edge_length(back.piece.name(), EdgeName::CENTRE_BACK);
            promises.push(Promise::changes_by(centre, self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no back is altered so far at once",
        )?;
        if self.amount == 0.0 {
            UpperHalf::back(pattern)?;
            return Ok(pattern.clone().into());
        }
        let mut altered = self.trunk(pattern)?;
        if self.amount < 0.0 {
            let more = Self {
                amount: -self.amount,
                ..*self
            };
            let forth = |p: &Pattern| more.trunk(&with_shoulder_ease(p.clone())?);
            altered = with_shoulder_ease(taken_back(pattern, altered, forth))?;
        }
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

/// The back, and the front where there is one.
type Halves<'h> = (&'h UpperHalf<'h>, Option<&'h UpperHalf<'h>>);

/// The panels cut and moved: the outline gathered, and the swing of the shoulder panel.
struct Cut {
    sketch: Sketch,
    swing: Rigid,
    angle: f64,
}

impl BackLengthIncrease {
    /// Cuts from the fold through `pivot` to the armscye and from `pivot` to `top` on the upper
    /// edges, lifts the neck panel and swings the shoulder panel so that both still meet at the
    /// pivot.
    fn cut(
        &self,
        (back, front): Halves<'_>,
        pivot: Point,
        top: Point,
    ) -> Result<Cut, AlterationError> {
        // The hinge lies half way between where the pivot was and where it goes: the one level
        // from which it swings straight up.
        let level = pivot.y - 0.5 * self.amount;
        let edge = hinge_at(back.armscye, level)?;
        let (hinge, angle) = self.hinge((back, front), pivot, edge)?;
        let swing = Rigid::turn_about(hinge, angle);
        let mut paper = Paper::of(back.piece);
        let across = if pivot.x > tolerance::POINT {
            vec![Point::new(0.0, pivot.y), pivot, edge]
        } else {
            vec![pivot, edge]
        };
        paper.slash(&Curve::polyline(&across)?)?;
        paper.slash(&Curve::line(pivot, top)?)?;
        let beside =
            |to: Point| pivot + ((top - pivot).normalize() + (to - pivot).normalize()) * 3.0;
        let neck = paper.panel_at(if pivot.x > tolerance::POINT {
            beside(Point::new(0.0, pivot.y))
        } else {
            Point::new(1.0, 0.5 * pivot.y)
        })?;
        let shoulder = paper.panel_at(beside(edge))?;
        paper.shift(neck, self.up());
        paper.turn(shoulder, swing);
        Ok(Cut {
            sketch: paper.gather()?,
            swing,
            angle,
        })
    }

    /// The hinge and the angle of the shoulder panel. The hinge lies half way between the armscye
    /// as it is and as it gets, so that the opposite amount swings about the same place.
    fn hinge(
        &self,
        (back, front): Halves<'_>,
        pivot: Point,
        edge: Point,
    ) -> Result<(Point, f64), AlterationError> {
        let tip = back.armscye.start();
        let mut hinge = edge;
        for _ in 0..ROUNDS {
            let angle = self.angle(hinge, pivot);
            let tip = Rigid::turn_about(hinge, angle).apply(tip);
            let stay = (Vec2::ZERO, Vec2::ZERO);
            let (armscye, ..) = kept_leaning(&Redrawn::of(back, (tip, angle, stay)), front)?;
            hinge = edge.midpoint(hinge_at(&armscye, edge.y)?);
        }
        Ok((hinge, self.angle(hinge, pivot)))
    }

    fn angle(&self, hinge: Point, pivot: Point) -> f64 {
        2.0 * atan2(0.5 * self.amount, hinge.x - pivot.x)
    }

    fn up(&self) -> Vec2 {
        Vec2::new(0.0, -self.amount)
    }

    /// By how much the back shoulder gets longer beside its dart, in millimetres; nothing where
    /// that cannot be said.
    fn eased_beside_dart(&self, (back, front): Halves<'_>) -> f64 {
        let eased = || -> Result<f64, AlterationError> {
            let (dart, _, after) = dart_of(back)?;
            let apex = dart.apex();
            let level = apex.y - 0.5 * self.amount;
            let edge = hinge_at(back.armscye, level)?;
            let (_, angle) = self.hinge((back, front), apex, edge)?;
            Ok(beside_dart(apex, &after, &parted_over_blade(&dart, angle)))
        };
        eased().unwrap_or(0.0)
    }

    /// The fullness opens the shoulder dart as wide as lies flat; the rest is eased in beside it.
    fn by_dart(&self, (back, front): Halves<'_>) -> Result<(Piece, f64), AlterationError> {
        let (dart, before, after) = dart_of(back)?;
        let dart = &dart;
        let apex = dart.apex();
        let cut = self.cut((back, front), apex, dart.legs[0])?;
        // The neck panel goes straight up and the other one turns about the apex besides, as far as
        // the dart can open or close.
        let up = Rigid::shift(self.up());
        let parted = parted_over_blade(dart, cut.angle);
        check_dart(dart, parted.dart, self.amount)?;
        let outer = up.then(Rigid::turn_about(up.apply(apex), parted.dart));
        let tip = back.shoulder.end();
        let eased = beside_dart(apex, &after, &parted);
        let at_tip = if eased == 0.0 {
            outer
        } else {
            // The shoulder bends down one way to its point: turned wholly there, on its chord by two
            // thirds.
            let rest = cut.angle - parted.dart;
            let chord = after.end() - after.start();
            let bent = Rigid::turn_about(Point::ORIGIN, BENT * rest);
            let way = bent.apply_direction(outer.apply_direction(chord.normalize()));
            let to = outer.apply(after.start()) + way * (chord.hypot() + eased);
            Rigid::lay(tip, chord, to, cut.swing.apply_direction(chord))
        };
        let left = at_tip.apply(tip).distance(cut.swing.apply(tip));
        check_point(left, self.amount)?;
        let (lifted, swung) = (moved_dart(dart, &up), moved_dart(dart, &outer));
        let opened = Dart {
            legs: [lifted.legs[0], swung.legs[1]],
            ..lifted
        };
        let mut sketch = cut.sketch;
        let shoulder = with_mouth(
            &before.moved(&Rigid::shift(self.up())),
            &opened,
            &led(&after, &outer, &at_tip)?,
        )?;
        sketch.replace(&EdgeName::SHOULDER, shoulder)?;
        match sketch.dart_mut(&dart.name) {
            Some(slot) => *slot = opened,
            None => sketch.darts_mut().push(opened),
        }
        self.finish((back, front), sketch, &at_tip)
    }

    /// The fullness lengthens the shoulder, and is eased in.
    fn by_ease(
        &self,
        pattern: &Pattern,
        (back, front): Halves<'_>,
    ) -> Result<(Piece, f64), AlterationError> {
        let (side, tip) = (back.shoulder.start(), back.shoulder.end());
        let blade = 0.5 * (back.neckline.start().y + back.armscye.end().y);
        let cut = self.cut((back, front), Point::new(0.0, blade), side)?;
        let mut sketch = cut.sketch;
        let (new_side, new_tip) = (side + self.up(), cut.swing.apply(tip));
        let (old, new) = (tip - side, new_tip - new_side);
        let longer = new.hypot() - old.hypot();
        let left = longer - taken_by_ease(pattern, longer);
        check_point(left, self.amount)?;
        let new_tip = new_tip - new.normalize() * left;
        let shoulder = led(
            back.shoulder,
            &Rigid::lay(side, old, new_side, new),
            &Rigid::lay(tip, old, new_tip, new),
        )?;
        sketch.replace(&EdgeName::SHOULDER, shoulder)?;
        let turn = Rigid::turn_about(Point::ORIGIN, angle_between(old, new));
        let neckline = back.neckline.moved(&Rigid::shift(self.up()));
        let arrive = turn.apply_direction(neckline.end_direction());
        let neckline = turned_end(&neckline, arrive, neckline.length())?;
        sketch.replace(&EdgeName::NECKLINE, neckline)?;
        let leave = Rigid::lay(tip, old, new_tip, new);
        self.finish((back, front), sketch, &leave)
    }

    /// Fold, armscye and levels, once the shoulder is drawn; and how much farther inward than square
    /// the armscye leaves it, in radians.
    fn finish(
        &self,
        (back, front): Halves<'_>,
        mut sketch: Sketch,
        at_tip: &Rigid,
    ) -> Result<(Piece, f64), AlterationError> {
        let fold = sketch.curve(&EdgeName::CENTRE_BACK)?;
        let fold = Curve::line(fold.start(), fold.end())?;
        let nape = fold.end();
        sketch.replace(&EdgeName::CENTRE_BACK, fold)?;
        for dart in sketch.darts_mut() {
            if dart.edge != Some(EdgeName::SHOULDER)
                && let Some(old) = back.piece.dart(&dart.name)
            {
                *dart = old.clone();
            }
        }
        for line in sketch.lines_mut() {
            if let Some(old) = back.piece.line(&line.name) {
                line.curve = old.curve.clone();
            }
        }
        // What is measured down the fold from the nape, as the end of a slit, goes with the nape.
        let blade = back.armscye.end().y;
        for (point, old) in sketch.points_mut().iter_mut().zip(back.piece.points()) {
            if old.at.x.abs() <= tolerance::POINT && old.at.y < blade {
                point.at = old.at + self.up();
            }
        }
        let tip = at_tip.apply(back.armscye.start());
        let direction = back.armscye.start_direction();
        let turn = angle_between(direction, at_tip.apply_direction(direction));
        let stay = (Vec2::ZERO, Vec2::ZERO);
        let (armscye, width_point, lean) =
            kept_leaning(&Redrawn::of(back, (tip, turn, stay)), front)?;
        back.put_armscye(&mut sketch, armscye, width_point)?;
        let grain = &mut sketch.parts_mut().grain;
        grain[1].y = grain[1].y.max(nape.y + 18.0);
        Ok((sketch.finish()?, lean))
    }
}

/// The shoulder dart, or one that takes in nothing yet, and the shoulder before and after it.
fn dart_of(back: &UpperHalf<'_>) -> Result<(Dart, Curve, Curve), AlterationError> {
    if let Some(dart) = back.shoulder_dart() {
        let (before, after) = without_mouth(back.piece, &EdgeName::SHOULDER)?;
        return Ok((dart.clone(), before, after));
    }
    let (before, after) = back.shoulder.split_at(0.5 * back.shoulder.length())?;
    Ok((new_dart(&before), before, after))
}

/// A dart in the middle of a shoulder that takes in nothing yet, square to it.
fn new_dart(before: &Curve) -> Dart {
    let middle = before.end();
    let inward = crate::geometry::perpendicular(before.end_direction());
    Dart {
        name: SHOULDER_DART.to_owned(),
        edge: Some(EdgeName::SHOULDER),
        legs: [middle; 2],
        apexes: Apexes::One(middle + inward * NEW_DART),
        pressed: Pressed::TowardFirstLeg,
    }
}
