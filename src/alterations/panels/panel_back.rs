//! A panel seam of a back from its armscye: through the waist dart alone, or with the fullness of
//! the blade brought into it.

use super::panel_calm::{Calm, PAST, Sweep, from_beside, met, pair};
use super::panel_leg::SWEPT;
use super::panel_path::{Begun, PanelPath, drawn_on};
use super::panel_plan::{Through, plan};
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::darts::dart_aim::aimed_at;
use crate::alterations::darts::dart_opening::Opening;
use crate::alterations::darts::dart_swing::Swing;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, Vec2, tolerance};
use crate::invariants::{Tolerances, is_valid};
use crate::piece::{Apexes, Dart, EdgeName, Pattern, Piece};

/// The seam takes the blade's fullness up on the width line where it crosses it at least so far
/// from the armscye, in millimetres; else on the underarm line.
const FROM_ARMSCYE: f64 = 30.0;

/// A seam led over a place bends about circles of at least these radii, in millimetres: tighter it
/// looks like a corner (an assumption), and is tried last.
const RADII: [f64; 2] = [38.0, 20.0];

/// So many parts of the width line are tried for the place where the seam crosses it.
const PLACES: u32 = 8;

/// Two notches on a seam stand at least so far apart, in millimetres.
const NOTCHED_APART: f64 = 25.0;

/// A dart points at a seam at most so far away, in millimetres.
const FAR: f64 = 300.0;

/// How often the armscye is moved at most until the back is as wide as it was, and how closely, in
/// millimetres.
const ROUNDS: usize = 8;
const SAME_WIDTH: f64 = 1e-8;

/// A seam ready to divide a piece.
pub(in crate::alterations) struct Ready {
    pub piece: Piece,
    pub through: Through,
    pub path: PanelPath,
}

/// What is divided: the pattern, its piece with the darts to be taken up, and where the seam
/// starts, as an opening and as a share of its edge.
pub(in crate::alterations) struct BackSeam<'a> {
    pub pattern: &'a Pattern,
    pub piece: &'a Piece,
    pub names: &'a [&'a str],
    pub place: &'a Opening,
    pub share: f64,
    /// Divides the piece along a seam.
    pub cut: &'a dyn Fn(Ready) -> Result<Pattern, AlterationError>,
    /// The lines along which a girth is measured.
    pub lines: &'a [&'a Curve],
}

/// The two darts of a seam and where the upper is turned: a place on its way, and how far along.
struct Turning<'a> {
    upper: &'a Dart,
    lower: &'a Dart,
    calm: Calm,
    at: f64,
    aimed: Piece,
}

impl BackSeam<'_> {
    /// The pattern with its back divided; nothing where the seam does not run from the armscye of a
    /// back into a waist dart that ends below the underarm line.
    pub fn made(&self) -> Result<Option<Pattern>, AlterationError> {
        let Some((lower, upper)) = self.darts() else {
            return Ok(None);
        };
        let Some(level) = self.piece.line("underarm").map(|line| &line.curve) else {
            return Ok(None);
        };
        let through = plan(self.piece, &[&lower.name], Some(self.place.clone()))?;
        let Some((sweep, end)) = Sweep::through(&through.nodes, level) else {
            return Ok(None);
        };
        let calm = sweep.drawn()?;
        if let Some(upper) = upper {
            return self.with_blade((lower, upper), &sweep, &calm).map(Some);
        }
        let [one, other] = calm.ways()?;
        let begun = Begun {
            curves: [Some(one), Some(other)],
            notches: vec![(format!("{} apex", lower.name), calm.common.length())],
            node: end,
        };
        let ready = Ready {
            path: drawn_on(begun, &through.nodes, self.lines)?,
            piece: self.piece.clone(),
            through,
        };
        (self.cut)(ready).map(Some)
    }

    /// The waist dart, and the dart over the blade if it goes into the seam.
    fn darts(&self) -> Option<(&Dart, Option<&Dart>)> {
        if self.piece.bust_point().is_some() || self.place.edge != EdgeName::ARMSCYE {
            return None;
        }
        let at_waist =
            |d: &&Dart| d.edge == Some(EdgeName::WAIST) || matches!(d.apexes, Apexes::Two(..));
        let darts: Vec<&Dart> = self
            .names
            .iter()
            .filter_map(|n| self.piece.dart(n))
            .collect();
        let lower = darts.iter().copied().find(at_waist)?;
        let others: Vec<&Dart> = darts.into_iter().filter(|d| d.name != lower.name).collect();
        match others.as_slice() {
            [] => Some((lower, None)),
            [upper] if !at_waist(upper) => Some((lower, Some(upper))),
            _ => None,
        }
    }

    /// The seam with the dart over the blade brought into it. Its tip goes to the seam first: where
    /// that crosses the width line, or where the dart points at it, or from low on the armscye where
    /// it crosses the underarm line. What the longer dart takes from the back width is given back at
    /// the armscye.
    fn with_blade(
        &self,
        (lower, upper): (&Dart, &Dart),
        sweep: &Sweep<'_>,
        calm: &Calm,
    ) -> Result<Pattern, AlterationError> {
        let over = |name: &str| met(&calm.common, &self.piece.line(name)?.curve).map(|m| m.1);
        let underarm = over("underarm").unwrap_or(calm.common.length()) - PAST;
        let ahead = met(&calm.common, &self.ahead(upper)?).map(|m| m.1);
        let lower_down = [ahead, Some(underarm)].into_iter().flatten();
        let lower_down = lower_down.map(|at| (calm.clone(), at));
        let [calmest, sharper] =
            RADII.map(|radius| self.over_the_width_line(upper, (sweep, radius), calm));
        let (calmest, sharper) = (calmest?, sharper?);
        let between = self.between_the_lines(upper, sweep)?;
        let mut refused = None;
        for (calm, at) in calmest
            .into_iter()
            .chain(lower_down)
            .chain(sharper)
            .chain(between)
        {
            if !(FROM_ARMSCYE..=underarm).contains(&at) {
                continue;
            }
            let pivot = calm.common.point_at(at)?.0;
            let made = aimed_at(self.piece, upper, pivot)
                .map_err(|_| unreached(upper))
                .and_then(|aimed| {
                    self.as_wide(&Turning {
                        upper,
                        lower,
                        calm,
                        at,
                        aimed,
                    })
                });
            match made {
                Ok(made) if is_valid(&made, &Tolerances::altered()) => return Ok(made),
                made => refused = refused.or(Some(made)),
            }
        }
        refused.unwrap_or_else(|| Err(unreached(upper)))
    }

    /// The line in which a dart points.
    fn ahead(&self, dart: &Dart) -> Result<Curve, AlterationError> {
        let axis = (dart.apex() - dart.legs[0].midpoint(dart.legs[1])).normalize();
        Ok(Curve::line(dart.apex(), dart.apex() + axis * FAR)?)
    }

    /// The seams led over a place on the width line, from where the dart points at it to where the
    /// straight sweep would cross it, and how far along that is.
    fn over_the_width_line(
        &self,
        upper: &Dart,
        (sweep, radius): (&Sweep<'_>, f64),
        straight: &Calm,
    ) -> Result<Vec<(Calm, f64)>, AlterationError> {
        let Some(width) = self.piece.line("width").map(|line| &line.curve) else {
            return Ok(Vec::new());
        };
        let ahead = met(&self.ahead(upper)?, width).map(|m| m.0);
        let (Some(from), Some((to, _))) = (ahead, met(&straight.common, width)) else {
            return Ok(Vec::new());
        };
        let places = (0..=PLACES).map(|place| {
            from.lerp(to, f64::from(place) / f64::from(PLACES)) - Vec2::new(0.0, PAST)
        });
        Ok(places
            .filter_map(|place| sweep.drawn_over(place, radius).ok())
            .collect())
    }

    /// The seams led over places where the dart points, from the width line down to the underarm line.
    fn between_the_lines(
        &self,
        upper: &Dart,
        sweep: &Sweep<'_>,
    ) -> Result<Vec<(Calm, f64)>, AlterationError> {
        let ahead = self.ahead(upper)?;
        let on = |name: &str| met(&ahead, &self.piece.line(name)?.curve).map(|m| m.0);
        let (Some(from), Some(to)) = (on("width"), on("underarm")) else {
            return Ok(Vec::new());
        };
        let places = (1..PLACES).rev();
        let places = places.map(|place| from.lerp(to, f64::from(place) / f64::from(PLACES)));
        let over = |place| sweep.drawn_over(place, RADII[1]).ok();
        Ok(places.filter_map(over).collect())
    }

    /// The seam with the armscye moved at the width line until the back is as wide as it was.
    fn as_wide(&self, turning: &Turning<'_>) -> Result<Pattern, AlterationError> {
        let width = |pattern: &Pattern| {
            let width = pattern
                .girths()
                .iter()
                .find(|g| g.base_name() == "back_width");
            width.map_or(0.0, |girth| pattern.finished(girth))
        };
        let wanted = width(self.pattern);
        let aimed = replaced(self.pattern, turning.aimed.clone())?;
        let mut made = self.turned(turning, turning.aimed.clone())?;
        // By how much the armscye has moved out, and how much each millimetre of that widens it.
        let (mut out, mut by_out) = (0.0, 2.0);
        let mut narrower = wanted - width(&made);
        let taken = narrower;
        for _ in 0..ROUNDS {
            if narrower.abs() <= SAME_WIDTH {
                break;
            }
            let step = narrower / by_out;
            out += step;
            let sketch = widened(&UpperHalf::back(&aimed)?, out)
                .map_err(|_| too_narrow(turning.upper, taken))?;
            made = self.turned(turning, sketch.finish()?)?;
            let left = wanted - width(&made);
            let gained = (narrower - left) / step;
            by_out = if gained > 0.5 { gained } else { by_out };
            narrower = left;
        }
        if narrower.abs() > tolerance::POINT {
            return Err(too_narrow(turning.upper, taken));
        }
        Ok(made)
    }

    fn turned(&self, turning: &Turning<'_>, aimed: Piece) -> Result<Pattern, AlterationError> {
        let (calm, at, upper) = (&turning.calm, turning.at, turning.upper);
        let place = Opening::place(&aimed, &self.place.edge, self.share)?;
        let edge = aimed.outline().edge(&place.edge).map(|e| e.curve());
        let start = edge.map(|e| e.point_at(place.from)).transpose()?;
        let start = start.map_or(calm.common.start(), |(point, _)| point);
        let above = from_beside(&calm.common.part(0.0, at)?, start, SWEPT)?;
        let below = (calm.common.length() - at > tolerance::PRINT)
            .then(|| calm.common.part(at, calm.common.length()))
            .transpose()?;
        let swing = Swing {
            piece: &aimed,
            dart: aimed.dart(&upper.name).ok_or_else(|| unreached(upper))?,
            share: 1.0,
            into: place,
            name: upper.name.clone(),
        };
        let piece = swing.made_for_seam(&above)?;
        let through = plan(&piece, &[&upper.name, &turning.lower.name], None)?;
        let starts = through.nodes.first().map(|node| node.at);
        let nodes = through.nodes.iter().enumerate().skip(1);
        let end = nodes.into_iter().find(|(_, node)| !node.is_common());
        let (Some(starts), Some((end, _))) = (starts, end) else {
            return Err(unreached(upper));
        };
        let way = |above: Curve, parted: &Curve| -> Result<Curve, AlterationError> {
            let way = match &below {
                Some(below) => above.then(below)?,
                None => above,
            };
            Ok(way.then(parted)?)
        };
        let ([one, other], [one_parted, other_parted]) = (pair(&above, starts)?, &calm.parted);
        let mut notches = vec![(format!("{} apex", upper.name), at)];
        if calm.common.length() - at > NOTCHED_APART {
            notches.push((format!("{} apex", turning.lower.name), calm.common.length()));
        }
        let begun = Begun {
            curves: [Some(way(one, one_parted)?), Some(way(other, other_parted)?)],
            notches,
            node: end,
        };
        let path = drawn_on(begun, &through.nodes, self.lines)?;
        (self.cut)(Ready {
            piece,
            through,
            path,
        })
    }
}

/// A back with its armscye moved out at the width line, as long as it was: running to nothing at the
/// shoulder point, or where it is too straight for that with the shoulder point, whose dart takes up
/// what the shoulder gets longer.
fn widened(back: &UpperHalf<'_>, out: f64) -> Result<Sketch, AlterationError> {
    let by = Vec2::new(out, 0.0);
    let mut sketch = Sketch::of(back.piece);
    let tip = back.armscye.start();
    if let Ok((armscye, width_point)) = back.armscye_kept(tip, 0.0, (by, Vec2::ZERO)) {
        back.put_armscye(&mut sketch, armscye, width_point)?;
        return Ok(sketch);
    }
    let tip = tip + by;
    let shoulder = back.shoulder_to(tip)?;
    back.put_shoulder(&mut sketch, &shoulder, shoulder.turn_at_neck)?;
    let (armscye, width_point) = back.armscye_kept(tip, shoulder.turn_at_tip, (by, Vec2::ZERO))?;
    back.put_armscye(&mut sketch, armscye, width_point)?;
    Ok(sketch)
}

fn too_narrow(dart: &Dart, narrower: f64) -> AlterationError {
    AlterationError::First {
        why: format!(
            "brought so low the {} dart would make the back {:.0} mm narrower, more than its armscye can give back",
            dart.name,
            narrower.abs()
        ),
        advice:
            "choose a place higher on the armscye, or take the waist dart alone (dart: and to:)"
                .to_owned(),
    }
}

fn unreached(dart: &Dart) -> AlterationError {
    AlterationError::First {
        why: format!(
            "a seam from there passes too far beside the point of the {} dart to take it up",
            dart.name
        ),
        advice: "choose a place higher or lower on the armscye, or take the waist dart alone (dart: and to:)"
            .to_owned(),
    }
}
