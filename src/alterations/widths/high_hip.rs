//! Width at the high hip, at the side seams.

use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{all_but_side_and_hem_stay, girths_stay};
use crate::alterations::cutting::quarter::{line_on_side, over_hips, waist_and_hip};
use crate::alterations::cutting::side_moves::{SideMove, with_sides_moved};
use crate::alterations::cutting::stations::Station;
use crate::alterations::{Alteration, AlterationError, Altered, Part, Promise, StructureChange};
use crate::geometry::{Curve, Point, Span, Vec2, crossings};
use crate::piece::{BalanceLine, EdgeName, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Widens (or narrows) the garment at the high hip, between waist and hip.
///
/// For a skirt that strains and creeps up over a high, full hip or a belly while waist and hip are
/// right, or hangs hollow there. A quarter of the amount is added at each side edge: nothing at
/// the waist, all of it at the high hip, nothing at the hip; the seam runs smooth through all
/// three. Darts, waist and hip stay. A line `high_hip` is drawn where there is none: 80 to 100 mm
/// below the waist at the side, as a share of the hip depth (many size tables measure it 3 to 4 in
/// below the waist; value from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, HighHip, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{Measure, Pattern};
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let pattern = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let by = |amount| Box::new(HighHip { amount }) as Box<dyn Alteration>;
/// let done = alter(&pattern, &[by(8.0), by(8.0)])?;
/// let high = done.accounts[1].changes.iter().find(|c| c.measure == Measure::line_girth("high_hip"));
/// assert!(high.and_then(|c| c.difference()).is_some_and(|wider| (wider - 8.0).abs() < 1e-6));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/high_hip.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HighHip {
    /// By how much the whole garment gets wider there, in millimetres: usually 8 to 24, narrower
    /// with a minus (values from memory).
    pub amount: f64,
}

/// Most that one side edge is moved, in millimetres: over so short a way more would show as a
/// bulge (value from memory).
const MOST_AN_EDGE: f64 = 8.0;

/// Edges at the sides of the whole garment.
const EDGES: f64 = 4.0;

/// The line of it.
const LINE: &str = "high_hip";

/// Where a new line is drawn: at this share of the way from waist to hip, and so many millimetres
/// below the waist.
const SHARE: f64 = 0.45;
const BELOW_WAIST: (f64, f64) = (80.0, 100.0);
/// No lower than this share of the way, on a very short hip.
const LOWEST: f64 = 0.6;

impl Alteration for HighHip {
    fn name(&self) -> &'static str {
        "high_hip"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    /// The line is drawn where there is none.
    fn structure_change(&self, before: &Pattern) -> StructureChange {
        over_hips(before).fold(StructureChange::none(), |change, piece| {
            change.adds(Part::Line(piece.name().to_owned(), LINE.to_owned()))
        })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let high = Promise::changes_by(Measure::line_girth(LINE), self.amount);
        let mut promises = vec![high.if_there()];
        promises.extend(girths_stay(before, &[]));
        for piece in over_hips(before) {
            promises.extend(all_but_side_and_hem_stay(piece));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let edge = number(self.amount)? / EDGES;
        let most = EDGES * MOST_AN_EDGE;
        at_most(
            self.amount,
            (-most, most),
            "mm",
            "each side edge moves by a quarter of it, and by no more than 8 mm at once",
        )?;
        if over_hips(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: "a hip line above its hem".to_owned(),
                advice: "the high hip is altered on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            });
        }
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let lined: Vec<Piece> = over_hips(pattern).map(lined).collect::<Result<_, _>>()?;
        let moves: Vec<SideMove<'_>> = lined
            .iter()
            .map(|piece| Ok((piece, side_stations(piece, edge)?)))
            .collect::<Result<_, AlterationError>>()?;
        let altered = with_sides_moved(pattern, moves)?;
        Ok(altered.into())
    }
}

/// What it needs of a piece.
const ADVICE: &str = "the high hip is altered on a piece with a side seam, a waist and a hip line";

fn missing(piece: &Piece, what: &str) -> AlterationError {
    AlterationError::Missing {
        what: format!("{what} on the {}", piece.name()),
        advice: ADVICE,
    }
}

/// The piece with a line at the high hip.
fn lined(piece: &Piece) -> Result<Piece, AlterationError> {
    if piece.line(LINE).is_some() {
        return Ok(piece.clone());
    }
    let (waist, hip) = waist_and_hip(piece, ADVICE)?;
    let side = piece.outline().edge(&EdgeName::SIDE_SEAM);
    let side = side.ok_or_else(|| missing(piece, "a side seam"))?.curve();
    let [from, to] = [side.point_at(waist)?.0, side.point_at(hip)?.0];
    let depth = to.y - from.y;
    let down = Span::from_low(BELOW_WAIST.0, BELOW_WAIST.1).nearest(SHARE * depth);
    let level = from.y + down.min(LOWEST * depth);
    let start = piece.line("hip").map_or(0.0, |line| line.curve.start().x);
    let reach = 2.0 * to.x;
    let across = Curve::line(Point::new(start, level), Point::new(reach, level))?;
    let below_waist = side.part(waist, hip)?;
    let met = crossings(across.segments(), below_waist.segments());
    let end = met
        .first()
        .ok_or_else(|| missing(piece, "a side seam below the waist"))?;
    let mut parts = piece.clone().into_parts();
    parts.lines.push(BalanceLine {
        name: LINE.to_owned(),
        curve: Curve::line(Point::new(start, level), Point::new(end.point.x, level))?,
    });
    Ok(Piece::new(parts)?)
}

/// How the side seam of a piece moves: out at the high hip, not at the waist nor at the hip.
fn side_stations(piece: &Piece, by: f64) -> Result<Vec<Station>, AlterationError> {
    let (waist, hip) = waist_and_hip(piece, ADVICE)?;
    let high = line_on_side(piece, LINE).ok_or_else(|| missing(piece, "a line at the high hip"))?;
    Ok(vec![
        Station::new(waist, Vec2::ZERO),
        Station::new(high, Vec2::new(by, 0.0)),
        Station::new(hip, Vec2::ZERO),
    ])
}
