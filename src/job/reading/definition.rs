//! What a job is, once everything it refers to is at hand.

use crate::draft::Block;
use crate::job::{Outputs, PrintOptions};
use crate::measurements::MeasurementSet;
use crate::recipe::{MadePattern, MakeError, Recipe, Ways, make_for, one_line};

/// The most characters of a wearer's name that are written on paper.
const LONGEST_NAME: usize = 60;

/// What is made, for whom, and how it is printed.
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
/// job.recipe.options.length = Some(650.0);
/// assert_eq!(job.wearer(), Some("Ada".to_owned()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Job {
    /// What the pattern is made from.
    pub recipe: Recipe,
    /// The wearer and her measurements.
    pub set: MeasurementSet,
    /// How it is printed.
    pub print: PrintOptions,
    /// Which files are made.
    pub outputs: Outputs,
    /// Whether the ways of making a step are compared, for the report and the fitting page.
    pub ways: Ways,
    /// Whether the files are handed on to somebody who is to learn nothing of the wearer: they have
    /// neither her name nor her measurements.
    pub private: bool,
    /// Another wearer, on whom the pattern is looked at: where it is too long or too short for her.
    #[cfg(feature = "form")]
    pub compared: Option<MeasurementSet>,
    /// In which cloth a toile on screen is sewn, if the job says it.
    #[cfg(feature = "toile")]
    pub cloth: Option<crate::toile::Fabric>,
}

impl Job {
    /// A job for the block as it usually is, with regular ease, no sleeve and no alterations,
    /// printed on A4.
    #[must_use]
    pub fn new(title: impl Into<String>, block: Block, set: MeasurementSet) -> Self {
        Self::of(Recipe::new(title, block), set)
    }

    /// A recipe made for a wearer, printed on A4.
    #[must_use]
    pub fn of(recipe: Recipe, set: MeasurementSet) -> Self {
        Self {
            recipe,
            set,
            print: PrintOptions::default(),
            outputs: Outputs::usual(),
            ways: Ways::Compared,
            private: false,
            #[cfg(feature = "form")]
            compared: None,
            #[cfg(feature = "toile")]
            cloth: None,
        }
    }

    /// Makes the pattern; amounts asked for with `to: form` are those of the wearer whom it is compared
    /// with, or else of the body it is drafted for. Nothing is drawn.
    pub(crate) fn make(&self, ways: Ways) -> Result<MadePattern, MakeError> {
        let body = self.set.body();
        #[cfg(feature = "form")]
        let wearer = self.compared.as_ref().map_or(body, MeasurementSet::body);
        #[cfg(not(feature = "form"))]
        let wearer = body;
        make_for(&self.recipe, (body, wearer), self.set.unit(), ways)
    }

    /// The wearer's name as it is written on paper, if there is one and the job is not private: on one
    /// line, and shortened if long.
    #[must_use]
    pub fn wearer(&self) -> Option<String> {
        if self.private {
            return None;
        }
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
