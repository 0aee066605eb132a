//! What proves a step must not be fooled: promises of things that are not there, alterations that
//! lose or add parts, sides that are no more than the end of a name.
#![allow(clippy::unwrap_used, clippy::panic)]

mod pairs;
mod promises;
mod structure;
mod written;

use crate::support::bodies::{body, with_usual_sleeve};
use blockwright::alterations::{
    Alteration, AlterationError, Altered, Promise, Reason, StructureChange, alter,
};
use blockwright::draft::{Block, draft};
use blockwright::piece::{Pattern, PatternParts};

/// The pattern of a block for a woman of the middle sizes, with a sleeve where it can have one.
fn drafted(block: Block) -> Pattern {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    draft(&body, &with_usual_sleeve(block)).unwrap()
}

/// An alteration that does to the parts of a pattern whatever it is made with.
#[derive(Debug, Clone)]
struct Rogue {
    change: fn(&mut PatternParts),
    promises: Vec<Promise>,
    declared: StructureChange,
}

impl Rogue {
    fn that(change: fn(&mut PatternParts)) -> Self {
        Self {
            change,
            promises: Vec::new(),
            declared: StructureChange::none(),
        }
    }

    fn promising(self, promises: impl IntoIterator<Item = Promise>) -> Self {
        Self {
            promises: promises.into_iter().collect(),
            ..self
        }
    }

    fn declaring(self, declared: StructureChange) -> Self {
        Self { declared, ..self }
    }

    fn refused(self, pattern: &Pattern) -> Reason {
        alter(pattern, &[Box::new(self)]).unwrap_err().reason
    }
}

impl Alteration for Rogue {
    fn name(&self) -> &'static str {
        "rogue"
    }

    fn amount(&self) -> Option<f64> {
        None
    }

    fn with_amount(&self, _: f64) -> Box<dyn Alteration> {
        Box::new(self.clone())
    }

    fn promises(&self, _: &Pattern) -> Vec<Promise> {
        self.promises.clone()
    }

    fn structure_change(&self, _: &Pattern) -> StructureChange {
        self.declared.clone()
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let mut parts = pattern.clone().into_parts();
        (self.change)(&mut parts);
        Ok(Pattern::new(parts)?.into())
    }
}
