//! Dart relocation: a dart moved to another edge or another place on its edge.

use super::dart_finding::{SAME_GIRTH, found, free_places, kept_of, turned_darts};
use super::dart_opening::{Opening, hangs_over};
use super::dart_swing::Swing;
use super::dart_tip::{bust_fullness, tip_backed_off, tip_to_fullness};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise};
use crate::piece::{Dart, EdgeName, Pattern, Piece, Warning, wide_darts};
use serde::{Deserialize, Serialize};

/// Moves a dart to any edge of its piece.
///
/// For a dart with one apex (bust, waist, shoulder, elbow) that is wanted elsewhere. The paper
/// is slashed from the new place to that point, the old dart closed by turning the panel between
/// the two about the point of fullness, and the new dart opens there by the same angle. That
/// point is the bust point for a dart that points at it, else the dart's own apex. Then the tip
/// is backed off from the bust point along the new centre line, as far as its place wants: 25 to
/// 40 mm from the shoulder, 25 to 50 from the side, 20 to 25 from the waist, more for a fuller
/// bust. The panel with the fold, or on a piece without fold that with the grain, stays. The new mouth is shaped so that the
/// folded dart lies flush; an upright dart is pressed toward the centre, a level one down.
///
/// The dart keeps its name. The angle about the point of fullness, every sewn length and every girth stay;
/// notches keep their sewn place, and balance lines are broken at the legs of the new dart.
///
/// ```
/// use blockwright::alterations::{Alteration, DartRelocation, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let mut figure = Figure::cylinder(920.0);
/// figure.waist_girth = 740.0;
/// let pattern = draft_figure(&figure, &DraftOptions::of(Block::Bodice))?;
/// let step: Box<dyn Alteration> = Box::new(DartRelocation::to("shoulder", "neckline", 0.5));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("back", EdgeName::SHOULDER);
/// let length = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((length(&pattern) - length(&done.pattern)).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/dart_relocation.svg")]
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DartRelocation {
    /// Name of the dart: `bust`, `waist`, `shoulder`, `elbow`.
    pub dart: String,
    /// The edge it goes to: `shoulder`, `neckline`, `armscye`, `side_seam`, `waist`.
    pub to: String,
    /// Where along that edge as sewn, from 0 at its start to 1; the middle unless given.
    #[serde(default = "middle")]
    pub at: f64,
    /// The piece, where several have a dart of that name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub piece: Option<String>,
}

pub(in crate::alterations) fn middle() -> f64 {
    0.5
}

impl DartRelocation {
    /// Moves the one dart of that name to a place on an edge.
    #[must_use]
    pub fn to(dart: impl Into<String>, edge: impl Into<String>, at: f64) -> Self {
        Self {
            dart: dart.into(),
            to: edge.into(),
            at,
            piece: None,
        }
    }

    /// The same on the piece of that name.
    #[must_use]
    pub fn on(self, piece: impl Into<String>) -> Self {
        Self {
            piece: Some(piece.into()),
            ..self
        }
    }
}

impl Alteration for DartRelocation {
    fn name(&self) -> &'static str {
        "dart_relocation"
    }

    fn amount(&self) -> Option<f64> {
        None
    }

    fn with_amount(&self, _amount: f64) -> Box<dyn Alteration> {
        Box::new(self.clone())
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let Ok((piece, dart)) = found(before, &self.dart, self.piece.as_deref()) else {
            return Vec::new();
        };
        let mut promises = kept_of(before, piece, dart);
        promises.push(turned_darts(piece, dart, 0.0));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let (piece, dart) = found(pattern, &self.dart, self.piece.as_deref())?;
        let edge = EdgeName::new(self.to.clone());
        if there_already(piece, dart, &edge, self.at) {
            return Ok(pattern.clone().into());
        }
        let fullness = bust_fullness(piece, dart);
        let piece = tip_to_fullness(piece, dart)?;
        let dart = piece.dart(&self.dart).unwrap_or(dart);
        let swing = Swing {
            piece: &piece,
            dart,
            share: 1.0,
            into: Opening::place(&piece, &edge, self.at)?,
            name: dart.name.clone(),
        };
        // The piece with the dart there, and why it cannot stay where its fold would hang over.
        let at = |at: f64| -> Result<(Piece, Option<String>), AlterationError> {
            let into = Opening::place(&piece, &edge, at)?;
            let there = Swing {
                into,
                ..swing.clone()
            };
            let made = there.made_anyhow()?;
            if let Some(why) = hangs_over(&made, &self.dart) {
                return Ok((made, Some(why)));
            }
            let made = tip_backed_off(&made, &self.dart, fullness)?;
            let hangs = hangs_over(&made, &self.dart);
            Ok((made, hangs))
        };
        let (made, aside) = match at(self.at) {
            Ok((made, None)) => (made, None),
            Ok((_, Some(why))) => {
                let mut beside = ASIDE.iter().map(|by| self.at + by);
                let found = beside.find_map(|share| match at(share) {
                    Ok((made, None)) => Some((made, Some(share))),
                    _ => None,
                });
                found.ok_or_else(|| free_places(&swing, &edge, why))?
            }
            Err(AlterationError::Setting(why)) => return Err(free_places(&swing, &edge, why)),
            Err(other) => return Err(other),
        };
        let mut warnings = wide_darts([&made]);
        warnings.extend(aside.map(|share| {
            Warning::new(
                "dart_moved_aside",
                format!(
                    "the {} dart opens at {share:.2} of the {edge}, not at {:.2}: there its fold would hang over the next edge",
                    self.dart, self.at
                ),
            )
        }));
        let altered = replaced(pattern, made)?;
        check_lines(pattern, &altered, &edge)?;
        Ok(Altered {
            warnings,
            pattern: altered,
        })
    }
}

/// Refuses a place so near to a line along which a girth is measured that the mouth of the dart
/// lies across it.
fn check_lines(before: &Pattern, after: &Pattern, edge: &EdgeName) -> Result<(), AlterationError> {
    for girth in before.girths() {
        let (old, new) = (before.finished(girth), after.finished(girth));
        if (new - old).abs() > SAME_GIRTH {
            return Err(AlterationError::First {
                why: format!(
                    "the mouth of the dart would lie across the line on which the {} girth is measured",
                    girth.name
                ),
                advice: format!("choose a place on the {edge} farther from that line"),
            });
        }
    }
    Ok(())
}

/// Where a wide dart is opened instead whose fold would hang over the end of its edge, as shares of the
/// edge from the place wanted.
const ASIDE: [f64; 10] = [
    0.03, -0.03, 0.06, -0.06, 0.09, -0.09, 0.12, -0.12, 0.15, -0.15,
];

/// A dart that opens so near to the place wanted, in millimetres, is there already.
const THERE: f64 = 0.5;

fn there_already(piece: &Piece, dart: &Dart, edge: &EdgeName, share: f64) -> bool {
    let mouths = piece.mouths(edge);
    let mouth = mouths.iter().find(|(d, ..)| d.name == dart.name);
    let Some(((_, from, _), sewn)) = mouth.zip(piece.seam_length(edge)) else {
        return false;
    };
    (piece.sewn_position(edge, *from) - share * sewn).abs() <= THERE
}
