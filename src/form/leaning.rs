//! A body that leans, where no upright one has the lengths that were taken.

use super::faults::fault;
use super::form_of_body::Form;
use super::parameter::ShapeParameter;
use super::solve::{Asked, DOWN, Solved, solve};
use crate::geometry::Span;
use crate::measurements::{Body, Measurement as M};

/// Standard deviation of a lean beside what upright bodies have already, in radians: 6.5 degrees (an
/// assumption), and the most of them.
const SPREAD: f64 = 0.1134;
const MOST: f64 = 4.0;

/// A front is longer by this share of the waist girth for each radian, beside what is expected of it
/// with that back: half the depth of the waist, and half of the other half (an assumption).
const REACH: f64 = 0.19;

/// Shares of the angle that is found so, of which the one with the least cost is taken.
const TRIED: [f64; 3] = [1.0, 0.75, 1.25];

/// Rounds after which lengths of a leaning body are met.
const ROUNDS: usize = 4;

/// The form of a body that leans; `None` if its lengths do not ask for it, or none has them.
pub(super) fn leaning(
    body: &Body,
    more: &[(ShapeParameter, f64)],
    upright: &Solved,
) -> Option<Form> {
    let lengths = [M::BackWaistLength, M::CentreFrontWaistLength];
    if !lengths.iter().all(|of| body.is_taken(*of)) || super::solve::says_more_than_tapes(body) {
        return None;
    }
    let expected = body.estimate(M::CentreFrontWaistLength)?.value;
    let off = body.value(M::CentreFrontWaistLength) - expected;
    let guess = off / (REACH * body.value(M::WaistGirth));
    let most = Span::from_low(-MOST * SPREAD, 2.0 * MOST * SPREAD);
    let tried = TRIED.into_iter().filter_map(|share| {
        let angle = most.nearest(share * guess);
        let (form, cost) = at(body, more, upright, angle)?;
        Some((form, cost + (angle / SPREAD) * (angle / SPREAD)))
    });
    let best = tried.min_by(|a, b| a.1.total_cmp(&b.1));
    best.map(|(form, _)| form)
}

/// The form at an angle whose lengths are met there, and its cost.
fn at(
    body: &Body,
    more: &[(ShapeParameter, f64)],
    upright: &Solved,
    angle: f64,
) -> Option<(Form, f64)> {
    let mut solved = upright.clone();
    for round in 0..ROUNDS {
        let form = Form::from_solved(body, &solved, angle);
        // What is longer upright than on the body that leans.
        let longer: Vec<(M, f64)> = solved
            .targets
            .iter()
            .zip(&solved.found)
            .filter(|(target, _)| DOWN.contains(&target.of))
            .filter_map(|(target, found)| Some((target.of, found - form.tape(target.of)?)))
            .collect();
        let mut down = form
            .reproduced()
            .iter()
            .filter(|one| DOWN.contains(&one.of));
        let is_met = down.all(|one| one.miss().abs() < 0.2);
        // What is still out of reach after the first round stays so.
        if round > 0 && fault(&solved).is_some() {
            return None;
        }
        if is_met && round > 0 {
            return Some((form, solved.cost));
        }
        let asked = Asked {
            more,
            longer: &longer,
            loosely: false,
        };
        solved = solve(body, &asked);
    }
    None
}
