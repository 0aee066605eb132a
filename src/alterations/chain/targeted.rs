//! An alteration asked for by what it is to arrive at, instead of by its amount.

use crate::alterations::{Alteration, AlterationError, Altered, Promise, StructureChange};
use crate::piece::{Measure, MeasureUnit, Pattern};

/// How closely a target is met, in the unit of the measure.
const CLOSE: f64 = 0.01;

/// An amount as good as nothing.
const NOTHING: f64 = 1e-3;

/// Steps after which a target that is not met counts as out of reach.
const STEPS: usize = 40;

/// An alteration whose amount is found so that a measure of the pattern arrives at a value:
/// "make the centre back 395 mm".
///
/// The amount depends on the pattern, so that the same target asks for nothing where the
/// pattern is right already. A chain of alterations finds it before the step and gives it in
/// the account.
///
/// ```
/// use blockwright::alterations::{Alteration, BackLengthReduction, Targeted, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let centre = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// let length = |p: &Pattern| p.measured(&centre).unwrap_or(0.0);
/// let wanted = length(&pattern) - 18.0;
/// let step = Targeted::new(Box::new(BackLengthReduction::by(0.0)), centre.clone(), wanted);
/// let done = alter(&pattern, &[Box::new(step)])?;
/// assert!((length(&done.pattern) - wanted).abs() < 0.01);
/// assert!((done.accounts[0].amount.unwrap_or(0.0) - 18.0).abs() < 0.01);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug)]
pub struct Targeted {
    inner: Box<dyn Alteration>,
    measure: Measure,
    to: f64,
}

impl Targeted {
    /// The alteration by whatever amount brings the measure to `to` millimetres or degrees.
    #[must_use]
    pub fn new(inner: Box<dyn Alteration>, measure: Measure, to: f64) -> Self {
        Self { inner, measure, to }
    }

    /// By how much the measure misses the target after an amount.
    fn miss(&self, pattern: &Pattern, amount: f64) -> Option<f64> {
        let altered = self.inner.with_amount(amount).alter(pattern).ok()?;
        altered
            .pattern
            .measured(&self.measure)
            .map(|now| now - self.to)
            .filter(|miss| miss.is_finite())
    }

    /// The amount, by the secant through the last two that could be made.
    ///
    /// When the pattern does not bear the way there, the amount that a straight line leads to:
    /// making it shows what stands against it.
    fn amount_on(&self, pattern: &Pattern) -> Result<f64, AlterationError> {
        if !self.to.is_finite() {
            return Err(AlterationError::Setting(
                "the target is no number; write a length such as `395 mm`".to_owned(),
            ));
        }
        // Along a line that the alteration draws it is measured with as good as nothing altered.
        let drawn = || self.miss(pattern, NOTHING).map(|miss| miss + self.to);
        let before = pattern.measured(&self.measure).or_else(drawn);
        let before = before.ok_or_else(|| AlterationError::Missing {
            what: format!("the measure `{}`", self.measure),
            advice: "a target needs it; give an amount instead",
        })?;
        let mut last = (0.0, before - self.to);
        if last.1.abs() <= CLOSE {
            return Ok(0.0);
        }
        let Some(mut now) = [1.0, -1.0, 0.1, -0.1]
            .into_iter()
            .find_map(|probe| Some((probe, self.miss(pattern, probe)?)))
        else {
            // Nothing can be made at all: the smallest amount shows why.
            return Ok(1.0);
        };
        let mut best = if now.1.abs() < last.1.abs() {
            now
        } else {
            last
        };
        let mut straight = None;
        for _ in 0..STEPS {
            if now.1.abs() <= 0.1 * CLOSE {
                return Ok(now.0);
            }
            let slope = (now.1 - last.1) / (now.0 - last.0);
            if !slope.is_finite() || slope.abs() < 1e-6 {
                break;
            }
            let mut next = now.0 - now.1 / slope;
            let guess = *straight.get_or_insert(next);
            let mut tried = None;
            for _ in 0..STEPS {
                tried = self.miss(pattern, next).map(|miss| (next, miss));
                if tried.is_some() || (next - best.0).abs() < CLOSE {
                    break;
                }
                next = 0.5 * (next + best.0);
            }
            let Some(found) = tried.filter(|(amount, _)| *amount != now.0) else {
                return Ok(guess);
            };
            (last, now) = (now, found);
            if now.1.abs() < best.1.abs() {
                best = now;
            }
        }
        if best.1.abs() <= CLOSE {
            return Ok(best.0);
        }
        match straight {
            // Every amount on the way was taken back: the pattern does not bear it.
            Some(guess) if self.miss(pattern, guess).is_none() => Ok(guess),
            _ => Err(AlterationError::OutOfReach {
                measure: Box::new(self.measure.clone()),
                before,
                to: self.to,
                nearest: best.1 + self.to,
                unit: self.inner.unit().symbol().trim_start(),
            }),
        }
    }
}

impl Alteration for Targeted {
    fn name(&self) -> &'static str {
        self.inner.name()
    }

    /// None: it is known once there is a pattern.
    fn amount(&self) -> Option<f64> {
        None
    }

    fn unit(&self) -> MeasureUnit {
        self.inner.unit()
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        self.inner.with_amount(amount)
    }

    fn settled(&self, pattern: &Pattern) -> Result<Option<Box<dyn Alteration>>, AlterationError> {
        let amount = self.amount_on(pattern)?;
        Ok(Some(self.inner.with_amount(amount)))
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        self.amount_on(before).map_or_else(
            |_| Vec::new(),
            |amount| self.inner.with_amount(amount).promises(before),
        )
    }

    fn structure_change(&self, before: &Pattern) -> StructureChange {
        self.amount_on(before).map_or_else(
            |_| StructureChange::none(),
            |amount| self.inner.with_amount(amount).structure_change(before),
        )
    }

    fn takes_unlike_halves(&self) -> bool {
        self.inner.takes_unlike_halves()
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = self.amount_on(pattern)?;
        self.inner.with_amount(amount).alter(pattern)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::panic)]

    use super::Targeted;
    use crate::alterations::{Alteration, AlterationError, Altered, BackLengthReduction, Promise};
    use crate::piece::{EdgeName, Measure, Pattern, PatternParts};

    fn empty() -> Pattern {
        Pattern::new(PatternParts {
            block: "none".into(),
            pieces: vec![],
            seams: vec![],
            girths: vec![crate::piece::Girth {
                name: "bust".into(),
                side: None,
                body: 900.0,
                ease: 60.0,
                limb: false,
                runs: vec![],
            }],
            warnings: vec![],
        })
        .unwrap()
    }

    /// Does nothing, whatever the amount, and refuses beyond one.
    #[derive(Debug, Clone, Copy)]
    struct Idle(f64, f64);

    impl Alteration for Idle {
        fn name(&self) -> &'static str {
            "idle"
        }
        fn amount(&self) -> Option<f64> {
            Some(self.0)
        }
        fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
            Box::new(Self(amount, self.1))
        }
        fn promises(&self, _: &Pattern) -> Vec<Promise> {
            vec![]
        }
        fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
            if self.0.abs() > self.1 {
                return Err(AlterationError::Setting("too much".into()));
            }
            Ok(pattern.clone().into())
        }
    }

    #[test]
    fn a_measure_that_is_not_there_is_reported() {
        let step = Targeted::new(
            Box::new(BackLengthReduction::by(0.0)),
            Measure::edge_length("back", EdgeName::CENTRE_BACK),
            400.0,
        );
        let error = step.settled(&empty()).unwrap_err();
        assert!(error.to_string().contains("back centre_back length"));
        let nan = Targeted::new(Box::new(Idle(0.0, 9.0)), Measure::girth("bust"), f64::NAN);
        assert!(nan.alter(&empty()).is_err());
    }

    #[test]
    fn an_amount_without_effect_reaches_nothing_but_what_is_there() {
        let pattern = empty();
        assert_eq!(pattern.measured(&Measure::girth("bust")), Some(0.0));
        let to = |value| Targeted::new(Box::new(Idle(0.0, 9.0)), Measure::girth("bust"), value);
        let settled = to(0.005).settled(&pattern).unwrap().unwrap();
        assert_eq!(settled.amount(), Some(0.0));
        let error = to(5.0).settled(&pattern).unwrap_err();
        assert!(matches!(error, AlterationError::OutOfReach { nearest, .. } if nearest == 0.0));
    }

    #[test]
    fn what_refuses_every_amount_says_why_itself() {
        let step = Targeted::new(Box::new(Idle(0.0, 0.01)), Measure::girth("bust"), 5.0);
        assert_eq!(
            step.alter(&empty()).unwrap_err(),
            AlterationError::Setting("too much".into())
        );
    }
}
