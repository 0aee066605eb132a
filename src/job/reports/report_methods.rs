//! The ways of a back-length reduction, for programs.

use serde::Serialize;

use super::rounding::rounded;
use crate::alterations::{MethodChoice, MethodFigures, MethodRow};

/// The ways of one back-length reduction, side by side.
///
/// ```
/// use blockwright::job::MethodsReport;
/// let methods = MethodsReport { step: 1, amount: 25.0, rows: vec![] };
/// assert_eq!(methods.step, 1);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MethodsReport {
    /// Which alteration of the job, counted from one.
    pub step: usize,
    /// By how much the centre back gets shorter, in mm.
    pub amount: f64,
    /// The ways.
    pub rows: Vec<MethodRowReport>,
}

/// One way of a back-length reduction.
///
/// ```
/// use blockwright::job::MethodRowReport;
/// let row = MethodRowReport {
///     hinge: "shared", chosen: true, figures: None, refused: Some("too much".into()),
/// };
/// assert!(row.chosen && row.figures.is_none());
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MethodRowReport {
    /// The way, as in jobs.
    pub hinge: &'static str,
    /// Whether the pattern was made so.
    pub chosen: bool,
    /// What it does; none when it is refused.
    pub figures: Option<MethodFiguresReport>,
    /// Why it is refused, if it is.
    pub refused: Option<String>,
}

/// What one way does, in mm and degrees.
///
/// ```
/// use blockwright::job::MethodFiguresReport;
/// let figures = MethodFiguresReport {
///     slope_before: 17.0, slope_after: 5.7, armscye: -0.2, fold_gain: 4.0,
///     sleeve_cap: None, smallest_stretch: None, largest_stretch: None,
/// };
/// assert!(figures.slope_after < figures.slope_before);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MethodFiguresReport {
    /// Slope of the back shoulder before.
    pub slope_before: f64,
    /// Slope of the back shoulder after.
    pub slope_after: f64,
    /// By how much the back armscye gets longer.
    pub armscye: f64,
    /// By how much the fold moves away from the shoulder point.
    pub fold_gain: f64,
    /// By how much the sleeve cap gets longer, where there is a sleeve.
    pub sleeve_cap: Option<f64>,
    /// The most shortened place of the cloth: 1 is as cut. None without the feature
    /// `least-distortion`.
    pub smallest_stretch: Option<f64>,
    /// The most lengthened.
    pub largest_stretch: Option<f64>,
}

impl MethodsReport {
    pub(in crate::job) fn new(choice: &MethodChoice) -> Self {
        let row = |row: &MethodRow| MethodRowReport {
            hinge: row.hinge.name(),
            chosen: row.hinge == choice.chosen,
            figures: row.outcome.figures().map(MethodFiguresReport::new),
            refused: row.outcome.refused().map(str::to_owned),
        };
        Self {
            step: choice.step,
            amount: rounded(choice.table.amount),
            rows: choice.table.rows.iter().map(row).collect(),
        }
    }
}

impl MethodFiguresReport {
    fn new(figures: &MethodFigures) -> Self {
        Self {
            slope_before: rounded(figures.slope_before),
            slope_after: rounded(figures.slope_after),
            armscye: rounded(figures.armscye),
            fold_gain: rounded(figures.fold_gain),
            sleeve_cap: figures.sleeve_cap.map(rounded),
            smallest_stretch: figures.stretch.map(|s| rounded(s.smallest)),
            largest_stretch: figures.stretch.map(|s| rounded(s.largest)),
        }
    }
}
