//! The alterations of a recipe, made one after the other.

use super::MakeError;
use super::step_order::order_matters;
use super::warnings::with_warnings;
use crate::alterations::{
    Account, Alteration, AlterationError, Chain, EarlierStep, Hinge, MethodChoice, Reason, Refused,
    Request, compare_methods, earlier_place,
};
use crate::draft::pattern_shoulder_slopes;
use crate::measurements::{Body, Measurement};
use crate::piece::{EdgeName, MeasureUnit, Pattern, Piece, shoulder_slope};

/// What the alterations made.
#[derive(Debug)]
pub(super) struct Altered {
    /// The altered pattern.
    pub pattern: Pattern,
    /// The account of every step.
    pub accounts: Vec<Account>,
    /// The ways there were, at every step that had several.
    pub choices: Vec<MethodChoice>,
    /// The pattern after every step, where somebody is there to look at it.
    pub steps: Vec<Pattern>,
}

/// Whether the ways there are to make a step are worked out beside the one that is made.
///
/// ```
/// use blockwright::recipe::Ways;
/// assert_eq!(Ways::default(), Ways::Skipped);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Ways {
    /// For a person who reads the report and chooses.
    Compared,
    /// Nobody is there to choose, and comparing takes a good part of the time.
    #[default]
    Skipped,
}

/// Makes the alterations in their order, proving the pattern after each. A step that is refused
/// is tried in the earlier places, so that the refusal says where it would hold.
pub(super) fn alter_in_order(
    drafted: &Pattern,
    requests: &[Request],
    (body, wearer): (&Body, &Body),
    ways: Ways,
) -> Result<Altered, MakeError> {
    altered(drafted, requests, (body, wearer), ways).map_err(|error| match error {
        MakeError::Alteration { mut refused, .. } => {
            let index = refused.step.saturating_sub(1);
            let holds = |order: &[usize]| {
                let order = order.iter().map(|&at| requests.get(at).cloned());
                order
                    .collect::<Option<Vec<Request>>>()
                    .is_some_and(|order| {
                        altered(drafted, &order, (body, wearer), Ways::Skipped).is_ok()
                    })
            };
            refused.before = earlier_place(index, holds).and_then(|at| {
                Some(EarlierStep {
                    step: at + 1,
                    alteration: requests.get(at)?.name().to_owned(),
                })
            });
            refused.into()
        }
        other => other,
    })
}

fn altered(
    drafted: &Pattern,
    requests: &[Request],
    (body, wearer): (&Body, &Body),
    ways: Ways,
) -> Result<Altered, MakeError> {
    let mut made = Chain::of(drafted.clone());
    let (mut choices, mut steps) = (Vec::new(), Vec::new());
    let mut orders = Vec::new();
    let mut last: Option<(Chain, Box<dyn Alteration>)> = None;
    for (index, request) in requests.iter().enumerate() {
        let counted = |mut refused: Box<Refused>| {
            refused.step = index + 1;
            refused
        };
        let alteration = if let Some(measure) = request.measure_of_body() {
            let wanted = drafted.measured(&measure);
            let absent = || AlterationError::Missing {
                what: format!("the measure `{measure}`"),
                advice: "`to: body` needs it; give an amount, or leave the step out",
            };
            let wanted = wanted
                .ok_or_else(|| refused(request, absent()))
                .map_err(counted)?;
            request.to(wanted)?.alteration()?
        } else if request.wants_body() {
            let amount = to_body(&made.pattern, body)
                .map_err(|reason| refused(request, reason))
                .map_err(counted)?;
            request.by(amount)?.alteration()?
        } else if request.wants_form() {
            let amount = to_form(&made.pattern, wearer)
                .map_err(|reason| refused(request, reason))
                .map_err(counted)?;
            request.by(amount)?.alteration()?
        } else {
            request.alteration()?
        };
        let before = (ways == Ways::Compared).then(|| made.clone());
        made.make(alteration.as_ref()).map_err(counted)?;
        if let Some(before) = before {
            let amount = made.accounts.last().and_then(|account| account.amount);
            let choice = |amount| choice(&before.pattern, request, amount, index + 1);
            choices.extend(amount.and_then(choice));
            steps.push(made.pattern.clone());
            orders.extend(last.as_ref().and_then(|(chain, earlier)| {
                let both = [earlier.as_ref(), alteration.as_ref()];
                order_matters(chain, both, (index, &made.pattern))
            }));
            last = Some((before, alteration));
        }
    }
    Ok(Altered {
        pattern: with_warnings(made.pattern, orders)?,
        accounts: made.accounts,
        choices,
        steps,
    })
}

/// The ways of a back-length reduction that shortens a back in one piece.
fn choice(before: &Pattern, request: &Request, amount: f64, step: usize) -> Option<MethodChoice> {
    if request.name() != "back_length_reduction" || amount <= 0.0 {
        return None;
    }
    let named = request.settings().get("hinge").and_then(|h| h.as_str());
    let chosen = Hinge::ALL.into_iter().find(|h| Some(h.name()) == named);
    Some(MethodChoice {
        step,
        chosen: chosen.unwrap_or_default(),
        // None on a back with a waist seam, where nothing is to be chosen.
        table: compare_methods(before, amount).ok()?,
    })
}

fn refused(request: &Request, reason: AlterationError) -> Box<Refused> {
    Box::new(Refused {
        step: 0,
        alteration: request.name().to_owned(),
        amount: None,
        unit: match request.measure_of_body() {
            Some(measure) => measure.unit(),
            None if request.wants_form() => MeasureUnit::Millimetres,
            None => MeasureUnit::Degrees,
        },
        most: None,
        before: None,
        reason: Reason::Alteration(reason),
    })
}

/// By how much the centre back is longer than the taut thread down the wearer's body in the round.
#[cfg(feature = "form")]
fn to_form(pattern: &Pattern, wearer: &Body) -> Result<f64, AlterationError> {
    use crate::explain::Explain as _;
    let form = crate::form::Form::of(wearer).map_err(|error| AlterationError::First {
        why: format!("`to: form` needs a body in the round, and {error}"),
        advice: error.cure(),
    })?;
    let map = crate::fit_map::fit_map(pattern, None, wearer, &form);
    let centre = map.centre_back().ok_or_else(|| AlterationError::Missing {
        what: "a back from the neckline to the waist".to_owned(),
        advice: "`to: form` needs it; give an amount, or leave the step out",
    })?;
    Ok(centre.excess())
}

#[cfg(not(feature = "form"))]
fn to_form(_: &Pattern, _: &Body) -> Result<f64, AlterationError> {
    Err(AlterationError::Setting(
        "`to: form` needs the feature `form`; give the amount".to_owned(),
    ))
}

/// By how many degrees the shoulders have to slope more, so that back and front together slope
/// as a draft's for this body. Both together, since a back-length reduction flattens the back
/// alone, while a shoulder is sloped at both alike.
fn to_body(pattern: &Pattern, body: &Body) -> Result<f64, AlterationError> {
    let slope_of_body = body.value(Measurement::ShoulderSlope).to_degrees();
    let (back, front) = pattern_shoulder_slopes(slope_of_body);
    let slope = |fold: &EdgeName| {
        let piece = pattern
            .pieces()
            .iter()
            .find(|p| p.outline().edge(fold).is_some() && shoulder_slope(p).is_some())
            .ok_or_else(|| AlterationError::Missing {
                what: format!("a shoulder on the piece with the {fold}"),
                advice: "a skirt has none; leave the step out",
            })?;
        if fold == &EdgeName::CENTRE_FRONT && has_shoulder_dart(piece) {
            return Err(AlterationError::First {
                why: "a dart opens on the front shoulder, so that its slope cannot be measured"
                    .to_owned(),
                advice: "put this step before the one that brings the dart there, or give degrees"
                    .to_owned(),
            });
        }
        Ok(shoulder_slope(piece).unwrap_or(0.0).to_degrees())
    };
    let now = slope(&EdgeName::CENTRE_BACK)? + slope(&EdgeName::CENTRE_FRONT)?;
    Ok(0.5 * (back + front - now))
}

fn has_shoulder_dart(piece: &Piece) -> bool {
    let mut darts = piece.darts().iter();
    darts.any(|dart| dart.edge == Some(EdgeName::SHOULDER))
}
