//! The ways of a back-length reduction side by side, so that a fitter can choose.

use super::back_length_reduction::{BackLengthReduction, backs};
use super::distortion::distortion;
use super::hinge::Hinge;
use super::stretch::{LocalStretch, Swing};
use crate::alterations::{Alteration, AlterationError, alter};
use crate::geometry::elementary::cos;
use crate::piece::{EdgeName, Pattern, Piece, shoulder_slope};
use serde::{Deserialize, Serialize};
use std::fmt;

/// What one way of a back-length reduction does to a back, in millimetres and degrees.
///
/// ```
/// use blockwright::alterations::MethodFigures;
/// fn flattened(figures: &MethodFigures) -> f64 { figures.slope_before - figures.slope_after }
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct MethodFigures {
    /// Slope of the back shoulder before, in degrees.
    pub slope_before: f64,
    /// Slope of the back shoulder after, in degrees.
    pub slope_after: f64,
    /// By how much the back armscye got longer.
    pub armscye: f64,
    /// By how much the fold moved away from the shoulder point, taken off at armscye and side.
    pub fold_gain: f64,
    /// By how much the sleeve cap got longer, where there is a sleeve.
    pub sleeve_cap: Option<f64>,
    /// Local stretch of the cloth above the waist; none without the feature `least-distortion`.
    pub stretch: Option<LocalStretch>,
}

/// What came of one way.
///
/// ```
/// use blockwright::alterations::MethodOutcome;
/// let refused = MethodOutcome::Refused("the shoulder would fall below level".into());
/// assert!(refused.figures().is_none());
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MethodOutcome {
    /// It keeps every law and promise, with these figures.
    Done(MethodFigures),
    /// It is refused, and why.
    Refused(String),
}

impl MethodOutcome {
    /// The figures, where it was not refused.
    #[must_use]
    pub fn figures(&self) -> Option<&MethodFigures> {
        match self {
            Self::Done(figures) => Some(figures),
            Self::Refused(_) => None,
        }
    }

    /// Why it was refused, where it was.
    #[must_use]
    pub fn refused(&self) -> Option<&str> {
        match self {
            Self::Done(_) => None,
            Self::Refused(why) => Some(why),
        }
    }
}

/// One way and what came of it.
///
/// ```
/// use blockwright::alterations::{Hinge, MethodOutcome, MethodRow};
/// let row = MethodRow { hinge: Hinge::Shared, outcome: MethodOutcome::Refused("too much".into()) };
/// assert_eq!(row.hinge.name(), "shared");
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct MethodRow {
    /// The way.
    pub hinge: Hinge,
    /// What came of it.
    pub outcome: MethodOutcome,
}

/// Every way of a back-length reduction by one amount, side by side.
///
/// Printed, it is a table.
///
/// ```
/// use blockwright::alterations::{MethodTable, compare_methods};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let table: MethodTable = compare_methods(&pattern, 15.0)?;
/// assert_eq!(table.rows.len(), 3);
/// assert!(table.to_string().contains("least_distortion"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[non_exhaustive]
pub struct MethodTable {
    /// By how much the centre back gets shorter, in millimetres.
    pub amount: f64,
    /// The ways, in the order of [`Hinge::ALL`].
    pub rows: Vec<MethodRow>,
}

impl MethodTable {
    /// The row of that way.
    #[must_use]
    pub fn row(&self, hinge: Hinge) -> Option<&MethodRow> {
        self.rows.iter().find(|row| row.hinge == hinge)
    }
}

/// Tries every way of a back-length reduction on a pattern, laws and promises checked.
///
/// The hips are taken as checked: what is compared is the shoulder.
///
/// ```
/// use blockwright::alterations::{Hinge, compare_methods};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let table = compare_methods(&pattern, 15.0)?;
/// let slope = |hinge| {
///     let figures = table.row(hinge).and_then(|row| row.outcome.figures());
///     figures.map_or(f64::NAN, |f| f.slope_after)
/// };
/// assert!(slope(Hinge::Shared) > slope(Hinge::Plain));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the pattern has no back in one piece, so that there is nothing to choose.
pub fn compare_methods(pattern: &Pattern, amount: f64) -> Result<MethodTable, AlterationError> {
    let back = backs(pattern)
        .find(|p| p.outline().edge(&EdgeName::WAIST).is_none() && shoulder_slope(p).is_some())
        .ok_or(AlterationError::Missing {
            what: "a back in one piece from shoulder to hem".to_owned(),
            advice: "the ways differ on a dress, tunic or shirt only",
        })?;
    let rows = Hinge::ALL
        .into_iter()
        .map(|hinge| MethodRow {
            hinge,
            outcome: tried(pattern, back, amount, hinge),
        })
        .collect();
    Ok(MethodTable { amount, rows })
}

fn tried(pattern: &Pattern, back: &Piece, amount: f64, hinge: Hinge) -> MethodOutcome {
    let step: Box<dyn Alteration> = Box::new(BackLengthReduction {
        amount,
        hinge,
        hips_checked: true,
    });
    let after = match alter(pattern, &[step]) {
        Ok(done) => done.pattern,
        Err(refused) => {
            let most = refused
                .most
                .map(|m| format!("; about {m:.1} mm would hold"))
                .unwrap_or_default();
            return MethodOutcome::Refused(format!("{}{most}", refused.reason));
        }
    };
    figures(pattern, &after, back, amount).map_or_else(
        || MethodOutcome::Refused("there is no shoulder and no armscye to compare".to_owned()),
        MethodOutcome::Done,
    )
}

/// What a way did; on a pattern with unlike halves on the side of this back.
fn figures(before: &Pattern, after: &Pattern, back: &Piece, amount: f64) -> Option<MethodFigures> {
    let gained = |piece: &Piece, edge: &EdgeName| {
        let altered = after.piece(piece.name())?;
        Some(altered.seam_length(edge)? - piece.seam_length(edge)?)
    };
    let cap = |piece: &&Piece| {
        piece.outline().edge(&EdgeName::SLEEVE_CAP).is_some() && piece.side() == back.side()
    };
    let cap = before.pieces().iter().find(cap);
    let shoulder = back.outline().edge(&EdgeName::SHOULDER)?.curve();
    let reach = shoulder.start().distance(shoulder.end());
    let slopes = (
        shoulder_slope(back)?,
        shoulder_slope(after.piece(back.name())?)?,
    );
    Some(MethodFigures {
        slope_before: slopes.0.to_degrees(),
        slope_after: slopes.1.to_degrees(),
        armscye: gained(back, &EdgeName::ARMSCYE)?,
        fold_gain: reach * (cos(slopes.1) - cos(slopes.0)),
        sleeve_cap: cap.and_then(|piece| gained(piece, &EdgeName::SLEEVE_CAP)),
        stretch: distortion(back, amount, Swing::To(slopes.1))
            .ok()
            .map(|found| found.stretch),
    })
}

impl fmt::Display for MethodTable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        writeln!(f, "centre back shorter by {:.1} mm", self.amount)?;
        writeln!(
            f,
            "{:<17} {:>15}  {:>8}  {:>9}  {:>8}  local stretch",
            "hinge", "shoulder slope", "armscye", "fold gain", "cap"
        )?;
        for row in &self.rows {
            let name = row.hinge.name();
            match &row.outcome {
                MethodOutcome::Refused(why) => writeln!(f, "{name:<17} refused: {why}")?,
                MethodOutcome::Done(d) => {
                    let slopes = format!("{:.1}° to {:.1}°", d.slope_before, d.slope_after);
                    let cap = d
                        .sleeve_cap
                        .map_or("-".to_owned(), |c| format!("{c:+.1} mm"));
                    let stretch = d.stretch.map_or("-".to_owned(), |s| s.to_string());
                    writeln!(
                        f,
                        "{name:<17} {slopes:>15}  {:>+5.1} mm  {:>+6.1} mm  {cap:>8}  {stretch}",
                        d.armscye, d.fold_gain
                    )?;
                }
            }
        }
        Ok(())
    }
}
