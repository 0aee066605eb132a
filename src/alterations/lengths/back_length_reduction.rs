//! Back-length reduction: for a back that dips at the waist.

use super::hinge::Hinge;
use crate::alterations::chain::amounts::number;
use crate::alterations::chain::promise::{edges_stay, edges_stay_if_there, girths_stay};
use crate::alterations::chain::way_back::taken_back;
use crate::alterations::cutting::one_way::{Armscye, Course};
use crate::alterations::cutting::shared_lean::{
    EITHER, front_leaned, lean_between, sought, trued_across_shoulder,
};
use crate::alterations::cutting::slowing::slowed;
use crate::alterations::cutting::true_up::{blend_start, hinged, turned_end};
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::shoulders::aimed_shoulder::aimed_shoulder;
use crate::alterations::shoulders::shoulder_line::moved_dart;
use crate::alterations::shoulders::shoulder_swing::ShoulderSwing;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::widths::waist_wedge::waist_wedge;
use crate::alterations::{
    Alteration, AlterationError, Altered, Paper, Promise, Sketch, solve_sleeves,
};
use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, angle_between, tolerance, unit};
use crate::piece::{Apexes, EdgeName, Measure, Pattern, Piece, Warning, shoulder_slope};
use serde::{Deserialize, Serialize};

/// Shortens the centre back above the waist; the side seams stay.
///
/// For horizontal folds at the small of the back where the side seams are already right.
/// On a one-piece back cut on the fold (dress, tunic, shirt), with neither centre-back nor
/// waist seam: a vertical cut on the side-seam side of the waist dart runs up to the level of
/// the middle of the armscye, and from there one cut to the shoulder point and one to the neck
/// side point, both hinged there; a horizontal cut comes from the fold at the amount above the
/// waist. The centre panel drops by the amount. Then the fold is redrawn straight, the waist
/// dart's upper half is redrawn to its moved apex at its old intake, the shoulder dart is aimed
/// again so that it runs on from the waist dart as it did, side seam and armscye are taken in by what
/// the fold gained, and the sleeve is solved again. With the plain hinge the armscye keeps its length,
/// and so does the sleeve. [`Hinge`] says how far the shoulder point drops
/// along; [`compare_methods`](crate::alterations::compare_methods) shows the ways side by side.
///
/// On a bodice the same fault is a wedge taken from the waist at the centre back, running to
/// nothing at the side seam; on a skirt its waist is lowered so.
///
/// Skirts too narrow over the hips ride up and make the same folds: unless `hips_checked`, a
/// finished hip with less ease than [`LEAST_HIP_EASE`] is refused.
///
/// ```
/// use blockwright::alterations::{Alteration, BackLengthReduction, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(BackLengthReduction::by(15.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// let length = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((length(&pattern) - length(&done.pattern) - 15.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/back_length_reduction.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BackLengthReduction {
    /// By how much the centre back gets shorter, in millimetres: usually 12 to 32.
    pub amount: f64,
    /// How the shoulder takes part.
    #[serde(default)]
    pub hinge: Hinge,
    /// Whether the hips were checked on the body, so that a close hip is no reason to refuse.
    #[serde(default)]
    pub hips_checked: bool,
}

/// Least ease over the hips, in millimetres, below which a skirt rides up: 51 on any garment
/// (Robinson, costume construction text, ch. 16), 30 on a straight skirt (Aldrich, *Metric
/// Pattern Cutting*, as transcribed). The lesser.
pub const LEAST_HIP_EASE: f64 = 30.0;

/// How near to the underarm line the tip of a waist dart slows down on its way up, in millimetres: on
/// the line it would take in the girth that is measured there.
const NEAR_UNDERARM: f64 = 5.0;

impl BackLengthReduction {
    /// A reduction with the plain hinge, hips not yet checked.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self {
            amount,
            hinge: Hinge::Plain,
            hips_checked: false,
        }
    }
}

impl Alteration for BackLengthReduction {
    fn name(&self) -> &'static str {
        "back_length_reduction"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        for piece in backs(before) {
            promises.extend(edges_stay(piece, &[EdgeName::SIDE_SEAM]));
            // A skirt has no neck and no shoulder, a dress no waist seam.
            let edges = [EdgeName::NECKLINE, EdgeName::SHOULDER, EdgeName::WAIST];
            promises.extend(edges_stay_if_there(piece, &edges));
            let centre = Measure::edge_length(piece.name(), EdgeName::CENTRE_BACK);
            promises.push(Promise::changes_by(centre, -self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    /// A back with a waist seam is shortened there at the centre, which is one line for both sides.
    fn check_one_side(&self, half: &Pattern) -> Result<(), AlterationError> {
        let seamed = |piece: &Piece| piece.outline().edge(&EdgeName::WAIST).is_some();
        if !backs(half).any(seamed) {
            return Ok(());
        }
        Err(AlterationError::First {
            why: "a back with a waist seam is shortened at the centre of its waist, where both sides meet, and one of them cannot be shorter there than the other".to_owned(),
            advice: "leave out side, or shorten that side toward its side seam (length)".to_owned(),
        })
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        number(self.amount)?;
        if self.amount == 0.0 {
            // Not even the shoulder dart is aimed anew.
            return Ok(pattern.clone().into());
        }
        self.check_hips(pattern)?;
        let mut altered = self.trunk(pattern)?;
        if self.amount < 0.0 && self.hinge.drop_share().is_some() {
            let more = Self {
                amount: -self.amount,
                ..*self
            };
            let forth = |p: &Pattern| Ok(more.trunk(p)?.pattern);
            altered.pattern = taken_back(pattern, altered.pattern, forth);
        }
        altered.pattern = solve_sleeves(pattern, altered.pattern)?;
        Ok(altered)
    }
}

impl BackLengthReduction {
    /// Back and front altered.
    fn trunk(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let mut altered = Altered::from(pattern.clone());
        let front = UpperHalf::front(pattern).ok();
        for piece in backs(pattern) {
            let (piece, lean) = if piece.outline().edge(&EdgeName::WAIST).is_some() {
                (waist_wedge(piece, self.amount)?, 0.0)
            } else {
                self.one_piece(piece, front.as_ref(), &mut altered.warnings)?
            };
            altered.pattern = front_leaned(replaced(&altered.pattern, piece)?, lean)?;
        }
        altered.pattern = trued_across_shoulder(altered.pattern)?;
        Ok(altered)
    }
}

/// The back pieces of a pattern: those with a centre-back fold.
pub(in crate::alterations) fn backs(pattern: &Pattern) -> impl Iterator<Item = &Piece> {
    pattern
        .pieces()
        .iter()
        .filter(|p| p.outline().edge(&EdgeName::CENTRE_BACK).is_some())
}

fn missing(what: &str) -> AlterationError {
    AlterationError::Missing {
        what: what.to_owned(),
        advice: "back length is reduced on a back cut on the fold, of bodice, skirt, dress, tunic or shirt",
    }
}

impl BackLengthReduction {
    fn check_hips(&self, pattern: &Pattern) -> Result<(), AlterationError> {
        if self.hips_checked || self.amount <= 0.0 {
            return Ok(());
        }
        let Some(hip) = pattern.girths().iter().find(|g| g.name == "hip") else {
            return Ok(());
        };
        let ease = pattern.finished(hip) - hip.body;
        if ease >= LEAST_HIP_EASE {
            return Ok(());
        }
        Err(AlterationError::First {
            why: format!(
                "the finished hip has {ease:.0} mm of ease; below {LEAST_HIP_EASE:.0} mm a skirt rides up and folds at the small of the back by itself"
            ),
            advice: "add hip width first (hip_girth), or say hips_checked: true".to_owned(),
        })
    }

    /// The slash-and-hinge method on a back in one piece; and how much farther inward than square its
    /// armscye leaves the shoulder, in radians.
    fn one_piece(
        &self,
        piece: &Piece,
        front: Option<&UpperHalf<'_>>,
        warnings: &mut Vec<Warning>,
    ) -> Result<(Piece, f64), AlterationError> {
        let outline = piece.outline();
        let edge = |name: &EdgeName| {
            outline
                .edge(name)
                .map(|e| e.curve())
                .ok_or_else(|| missing(&format!("an edge {name}")))
        };
        let (shoulder, armscye) = (edge(&EdgeName::SHOULDER)?, edge(&EdgeName::ARMSCYE)?);
        let (neck_side, tip) = (shoulder.start(), shoulder.end());
        let waist = piece
            .line("waist")
            .ok_or_else(|| missing("a waist line"))?
            .curve
            .start()
            .y;
        let old_slope = shoulder_slope(piece).unwrap_or(0.0);
        let reach = neck_side.distance(tip);

        let swing = ShoulderSwing {
            amount: self.amount,
            hinge: self.hinge,
            old: old_slope,
            reach,
        };
        let (slope, armscye_share) = swing.slope(piece, waist, warnings)?;

        // The cuts.
        let corner = cut_corner(piece, armscye)?;
        let level = waist - self.amount.max(0.0);
        let mut paper = Paper::of(piece);
        paper.slash(&Curve::polyline(&[
            Point::new(0.0, level),
            Point::new(corner.x, level),
            corner,
            neck_side,
        ])?)?;
        paper.slash(&Curve::line(corner, tip)?)?;
        let centre = paper.panel_at(Point::new(1.0, 0.5 * level))?;
        let shoulder_panel = paper.panel_at(inside_of(neck_side, tip, corner))?;

        // The motion, in the frame of the new fold: the centre drops, the shoulder panel swings
        // on its hinges at the neck side point and at the shoulder point.
        let new_side = neck_side + Vec2::new(0.0, self.amount);
        let new_tip = new_side + unit(slope) * reach;
        paper.shift(centre, Vec2::new(0.0, self.amount));
        paper.turn(
            shoulder_panel,
            hinged((neck_side, tip), (new_side, new_tip)),
        );
        let mut sketch = paper.gather()?;

        // Truing.
        let hem = edge(&EdgeName::CENTRE_BACK)?.start();
        let nape = edge(&EdgeName::NECKLINE)?.start() + Vec2::new(0.0, self.amount);
        sketch.replace(&EdgeName::CENTRE_BACK, Curve::line(hem, nape)?)?;
        let corner = (new_side, new_tip, slope - old_slope);
        let start = self.true_shoulder(piece, &mut sketch, corner)?;
        let lean = self.true_armscye((piece, front), &mut sketch, start, armscye_share)?;
        self.true_darts(piece, &mut sketch);
        for line in sketch.lines_mut() {
            // Levels belong to the body: they stay where the side seam is.
            if let Some(old) = piece.line(&line.name) {
                line.curve = old.curve.clone();
            }
        }
        let grain = &mut sketch.parts_mut().grain;
        grain[1].y = (grain[1].y + self.amount).max(nape.y);
        swing.tell(slope, warnings);
        Ok((sketch.finish()?, lean))
    }

    /// Neckline and shoulder: the shoulder's corners keep their angles, so that the lines still
    /// run on across the seam; the neckline keeps its length. Gives where the armscye starts
    /// and along what.
    fn true_shoulder(
        &self,
        piece: &Piece,
        sketch: &mut Sketch,
        (side, tip, turn): (Point, Point, f64),
    ) -> Result<(Point, Vec2), AlterationError> {
        let old = |name: &EdgeName| piece.outline().edge(name).map(|e| e.curve().clone());
        let (Some(neckline), Some(armscye)) = (old(&EdgeName::NECKLINE), old(&EdgeName::ARMSCYE))
        else {
            return Err(missing("neckline and armscye"));
        };
        let mut arrive =
            Rigid::turn_about(Point::ORIGIN, turn).apply_direction(neckline.end_direction());
        let mut leave =
            Rigid::turn_about(Point::ORIGIN, turn).apply_direction(armscye.start_direction());
        let mut tip = tip;
        if let Some(shoulder) = old(&EdgeName::SHOULDER) {
            let swing = hinged((shoulder.start(), shoulder.end()), (side, tip));
            sketch.replace(&EdgeName::SHOULDER, shoulder.moved(&swing))?;
            // Its dart swings with it whole, also where its tip lies on the panel below.
            for slot in sketch.darts_mut() {
                if let Some(old) = piece.dart(&slot.name)
                    && old.edge == Some(EdgeName::SHOULDER)
                {
                    *slot = moved_dart(old, &swing);
                }
            }
        }
        if let Some(aimed) = aimed_shoulder(piece, side, tip, |apex| self.moved_apex(piece, apex))?
        {
            arrive = Rigid::turn_about(Point::ORIGIN, aimed.turn_at_neck)
                .apply_direction(neckline.end_direction());
            leave = Rigid::turn_about(Point::ORIGIN, aimed.turn_at_tip)
                .apply_direction(armscye.start_direction());
            tip = aimed.edge.end();
            sketch.replace(&EdgeName::SHOULDER, aimed.edge)?;
            if let Some(dart) = sketch
                .darts_mut()
                .iter_mut()
                .find(|d| d.name == aimed.dart.name)
            {
                *dart = aimed.dart;
            }
        }
        let dropped = neckline.moved(&Rigid::shift(side - neckline.end()));
        let neck = turned_end(&dropped, arrive, neckline.length())?;
        sketch.replace(&EdgeName::NECKLINE, neck)?;
        Ok((tip, leave))
    }

    /// The armscye from the new shoulder point, bending one way. Where the mesh says how long it
    /// wants to be, its width point slides down for that as far as it can, and its notch with it. With
    /// the plain hinge the shoulder point stays, and with it the length. Gives how much farther inward
    /// than square it leaves the shoulder.
    fn true_armscye(
        &self,
        (piece, front): (&Piece, Option<&UpperHalf<'_>>),
        sketch: &mut Sketch,
        (tip, leave): (Point, Vec2),
        share: Option<f64>,
    ) -> Result<f64, AlterationError> {
        let old = piece.outline().edge(&EdgeName::ARMSCYE);
        let armscye = old.ok_or_else(|| missing("an armscye"))?.curve();
        let mut notches = piece.notches().iter().enumerate();
        let notch = notches.find(|(_, n)| n.edge == EdgeName::ARMSCYE);
        let over = notch.map_or(0.5 * armscye.length(), |(_, n)| n.at);
        let Some(shape) = Armscye::of(armscye, over) else {
            let drawn = blend_start(armscye, tip, leave, over)?;
            sketch.replace(&EdgeName::ARMSCYE, drawn)?;
            return Ok(0.0);
        };
        let course = Course {
            tip,
            leave,
            ..shape.course()
        };
        // What it leans, a front gives.
        let sides: &[f64] = if front.is_some() { &EITHER } else { &[] };
        let front = front.and_then(UpperHalf::room);
        let back = UpperHalf::of(piece).and_then(|back| {
            let turn = angle_between(shape.course().leave, leave);
            back.rooms_at(tip, turn, (Vec2::ZERO, Vec2::ZERO))
        });
        let lean = lean_between(back, front.map(|now| (now, now)));
        let kept = (self.hinge == Hinge::Plain)
            .then(|| {
                let length = armscye.length();
                let drawn = |lean| Ok((shape.of_length(&course.leaning(lean), length)?, lean));
                sought(lean, sides, drawn).ok()
            })
            .flatten();
        let ((drawn, middle), lean) = match (kept, share) {
            (Some(kept), _) => kept,
            (None, Some(share)) => (shape.lowered(&course, share * armscye.length())?, 0.0),
            (None, None) => (shape.on(&course)?, 0.0),
        };
        sketch.replace(&EdgeName::ARMSCYE, drawn)?;
        if let Some((place, _)) = notch {
            sketch.put_notch(place, middle);
        }
        for line in sketch.lines_mut().iter_mut().filter(|l| l.name == "width") {
            let from = Point::new(line.curve.start().x, middle.y);
            line.curve = Curve::line(from, middle)?;
        }
        Ok(lean)
    }

    /// The waist dart's upper half, redrawn to its moved apex at its old intake.
    fn true_darts(&self, piece: &Piece, sketch: &mut Sketch) {
        for dart in sketch.darts_mut() {
            let Some(old) = piece.dart(&dart.name) else {
                continue;
            };
            if let Apexes::Two(upper, lower) = old.apexes {
                dart.legs = old.legs;
                dart.apexes = Apexes::Two(self.moved_apex(piece, upper), lower);
            }
        }
    }

    /// The waist dart's upper apex, moved with the centre panel, below the underarm line.
    fn moved_apex(&self, piece: &Piece, apex: Point) -> Point {
        let underarm = piece.line("underarm").map(|line| line.curve.end().y);
        let level = underarm.map_or(apex.y + self.amount, |underarm| {
            // An apex on the line itself stays there.
            let room = apex.y - underarm;
            let on_line = room.abs() <= tolerance::SEAM_DRAFTED;
            let room = if on_line {
                tolerance::SEAM_DRAFTED
            } else {
                room
            };
            underarm + slowed(room, self.amount, NEAR_UNDERARM)
        });
        Point::new(apex.x, level)
    }
}

/// Where the vertical cut ends: beside the waist dart, at the level of the middle of the armscye.
fn cut_corner(piece: &Piece, armscye: &Curve) -> Result<Point, GeometryError> {
    let level = 0.5 * (armscye.start().y + armscye.end().y);
    let dart = piece
        .darts()
        .iter()
        .find(|d| matches!(d.apexes, Apexes::Two(..)));
    let beside = dart.map_or(0.45 * armscye.end().x, |d| {
        d.legs[0].x.max(d.legs[1].x) + 8.0
    });
    let across = Curve::line(
        Point::new(0.0, level),
        Point::new(3.0 * armscye.end().x, level),
    )?;
    let most = crate::geometry::crossings(armscye.segments(), across.segments())
        .first()
        .map_or(armscye.start().x, |c| c.point.x);
    Ok(Point::new(beside.min(most - 12.0), level))
}

/// A point inside the triangle, near its first side.
fn inside_of(a: Point, b: Point, c: Point) -> Point {
    let middle = a.midpoint(b);
    middle + (c - middle) * 0.35
}
