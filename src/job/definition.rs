//! What a job is, once everything it refers to is at hand.

use super::PrintOptions;
use crate::allowance::Allowances;
use crate::alterations::Request;
use crate::draft::{Block, DraftOptions};
use crate::measurements::MeasurementSet;
use crate::piece::Warning;

/// The most characters a title may have: more finds no room on a piece.
pub const LONGEST_TITLE: usize = 120;

/// The most characters of a wearer's name that are written on paper.
const LONGEST_NAME: usize = 60;

/// Everything that is needed to make a pattern.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::Job;
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let mut job = Job::new("First block", Block::Skirt, MeasurementSet::new("Ada", Unit::Cm, body));
/// job.options.length = Some(650.0);
/// assert_eq!(job.wearer(), Some("Ada".to_owned()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Job {
    /// What the work is called.
    pub title: String,
    /// The size that is written on the pieces, if any.
    pub size: Option<String>,
    /// The date that is written on the pieces, as it is, if any.
    pub date: Option<String>,
    /// The block and what is wanted of it.
    pub options: DraftOptions,
    /// The alterations of the draft, made in this order.
    pub alterations: Vec<Request>,
    /// The seam allowances; without them only stitching lines are drawn.
    pub allowances: Option<Allowances>,
    /// The wearer and her measurements.
    pub set: MeasurementSet,
    /// How it is printed.
    pub print: PrintOptions,
    /// Whether the pieces are also written as DXF.
    pub dxf: bool,
    /// What was noticed when the job was read; it becomes warnings of the pattern.
    pub notes: Vec<Warning>,
}

impl Job {
    /// A job for the block as it usually is, with regular ease, no sleeve and no alterations, printed on A4.
    #[must_use]
    pub fn new(title: impl Into<String>, block: Block, set: MeasurementSet) -> Self {
        Self {
            title: title.into(),
            size: None,
            date: None,
            options: DraftOptions::of(block),
            alterations: Vec::new(),
            allowances: None,
            set,
            print: PrintOptions::default(),
            dxf: false,
            notes: Vec::new(),
        }
    }

    /// The wearer's name as it is written on paper, if there is one: on one line, and
    /// shortened if long.
    #[must_use]
    pub fn wearer(&self) -> Option<String> {
        let name = one_line(self.set.name());
        if name.is_empty() || name == MeasurementSet::UNNAMED {
            return None;
        }
        let mut short: String = name.chars().take(LONGEST_NAME).collect();
        if short.len() < name.len() {
            short.push('…');
        }
        Some(short)
    }
}

/// The text on one line, without control characters.
pub(super) fn one_line(text: &str) -> String {
    let words = text.split(|c: char| c.is_whitespace() || c.is_control());
    words
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}
