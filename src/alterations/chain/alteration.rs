//! What every alteration is.

use crate::alterations::{AlterationError, Promise, StructureChange};
use crate::piece::{MeasureUnit, Pattern, Warning};
use std::fmt;

/// A pattern altered, and what the cutter should know of it.
///
/// ```
/// use blockwright::alterations::Altered;
/// fn message(altered: &Altered) -> usize { altered.warnings.len() }
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Altered {
    /// The new pattern.
    pub pattern: Pattern,
    /// What should be known.
    pub warnings: Vec<Warning>,
}

impl From<Pattern> for Altered {
    fn from(pattern: Pattern) -> Self {
        Self {
            pattern,
            warnings: Vec::new(),
        }
    }
}

/// An alteration: a value that makes a new pattern from a pattern.
///
/// Laws, promises and structure are not its business: the pipeline checks them after every step. An
/// alteration of one's own is written like those here, in the verbs of [`Paper`](crate::alterations::Paper)
/// and [`Sketch`](crate::alterations::Sketch). It can be sent to other threads and shared between them.
///
/// ```
/// use blockwright::alterations::{Abdomen, Alteration};
/// let by_one: Box<dyn Alteration> = Box::new(Abdomen { amount: 10.0 });
/// let by_two = by_one.with_amount(20.0);
/// assert_eq!((by_two.name(), by_two.amount()), ("abdomen", Some(20.0)));
/// ```
pub trait Alteration: fmt::Debug + Send + Sync {
    /// The trade name in snake case, as in job files.
    fn name(&self) -> &'static str;

    /// The amount, where there is one.
    fn amount(&self) -> Option<f64>;

    /// Unit of the amount.
    fn unit(&self) -> MeasureUnit {
        MeasureUnit::Millimetres
    }

    /// The same alteration by another amount.
    fn with_amount(&self, amount: f64) -> Box<dyn Alteration>;

    /// What is kept on this pattern. Each promise must speak of something that the pattern has,
    /// unless it is made [if it is there](Promise::if_there).
    fn promises(&self, before: &Pattern) -> Vec<Promise>;

    /// What it removes from this pattern by name, and what it adds. Everything else has to
    /// survive: pieces, edges, darts, notches, lines, named points, seams, girths.
    fn structure_change(&self, _before: &Pattern) -> StructureChange {
        StructureChange::none()
    }

    /// The alteration with its amount known, where the amount follows from the pattern; nothing
    /// where it is known as it stands.
    ///
    /// # Errors
    /// When no amount does what is asked.
    fn settled(&self, _pattern: &Pattern) -> Result<Option<Box<dyn Alteration>>, AlterationError> {
        Ok(None)
    }

    /// Whether it takes a pattern whose halves are unlike as it is; others are made on each
    /// half for itself.
    fn takes_unlike_halves(&self) -> bool {
        false
    }

    /// Refuses to be made on one side of the body only, of which `half` is the pattern, where what it
    /// changes is one thing for both sides. What only lengthens or shortens the centre is no reason:
    /// both sides meet there half way, as [`OneSided`](crate::alterations::OneSided) says.
    ///
    /// # Errors
    /// When it cannot be made on one side only, with the reason.
    fn check_one_side(&self, _half: &Pattern) -> Result<(), AlterationError> {
        Ok(())
    }

    /// Makes the new pattern.
    ///
    /// # Errors
    /// When the pattern has not what the alteration works on, or does not bear the amount.
    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError>;
}
