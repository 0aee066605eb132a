//! Finished girths: what was asked, and along which lines to measure it.

use super::side::base_name;
use super::{BodySide, EdgeName};

/// What a girth is measured along on one piece.
///
/// ```
/// use blockwright::piece::RunAlong;
/// assert_ne!(RunAlong::Line("underarm".into()), RunAlong::Line("hip".into()));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub enum RunAlong {
    /// The balance line of that name.
    Line(String),
    /// The edge of that name.
    Edge(EdgeName),
}

/// One part of a girth on one piece.
///
/// ```
/// use blockwright::piece::{GirthRun, RunAlong};
/// let run = GirthRun { piece: "back".into(), along: RunAlong::Line("underarm".into()) };
/// assert_eq!(run.piece, "back");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct GirthRun {
    /// Name of the piece.
    pub piece: String,
    /// The line or edge on it.
    pub along: RunAlong,
}

/// A girth (or width) of the finished garment: body and ease asked for, runs to measure.
///
/// ```
/// use blockwright::piece::Girth;
/// let bust = Girth { name: "bust".into(), side: None, body: 920.0, ease: 60.0, limb: false, runs: vec![] };
/// assert_eq!(bust.asked(), 980.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Girth {
    /// Name: `bust`, `waist`, `hip`, `back_width`.
    pub name: String,
    /// The side of the body whose limb it goes round, where left and right are unlike. The name
    /// then ends in the side's word: `upper_arm left`.
    pub side: Option<BodySide>,
    /// The body's measurement in millimetres.
    pub body: f64,
    /// Ease added, in millimetres.
    pub ease: f64,
    /// Whether it goes round a limb: then it is measured on one piece of a pair, not on both.
    pub limb: bool,
    /// The runs whose widths, darts closed and halves counted, make up the girth.
    pub runs: Vec<GirthRun>,
}

impl Girth {
    /// What the finished girth should be: body and ease, in millimetres.
    #[must_use]
    pub fn asked(&self) -> f64 {
        self.body + self.ease
    }

    /// What the girth is called where both sides are alike: `upper_arm` for `upper_arm left`.
    #[must_use]
    pub fn base_name(&self) -> &str {
        base_name(&self.name, self.side)
    }
}
