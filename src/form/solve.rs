//! The parameters that reproduce what was measured and stay near the survey.
#![expect(
    clippy::indexing_slicing,
    reason = "matrices have a row for each target, a column for each parameter"
)]

use super::folds::fold_reach;
use super::parameter::{COUNT, ShapeParameter, Values};
use super::prior::Priors;
use super::section::{STEPS, Turns};
use super::shape::Shape;
use super::taped::taped;
use crate::measurements::{Body, Measurement as M, Source};
use nalgebra::{Cholesky, DMatrix, DVector};

/// A value that the form has to reproduce.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Target {
    pub(super) of: M,
    pub(super) value: f64,
    /// A miss by this much counts as a parameter that is off by one spread.
    pub(super) tolerance: f64,
    pub(super) is_taken: bool,
}

/// A form that was solved for.
#[derive(Debug, Clone)]
pub(super) struct Solved {
    pub(super) shape: Shape,
    pub(super) values: Values,
    pub(super) priors: Priors,
    pub(super) targets: Vec<Target>,
    /// What a tape finds for each target.
    pub(super) found: Vec<f64>,
    /// Sum of the squares of all misses, in tolerances, and of all deviations.
    pub(super) cost: f64,
    /// Change of each miss, in tolerances, with each independent deviation.
    pub(super) slopes: DMatrix<f64>,
    /// What the misses would be without any deviation, as the slopes have it.
    pub(super) expected: DVector<f64>,
}

/// Lengths and girths in the order of reports, each with its tolerance in mm.
const TAPED: [(M, f64); 11] = [
    (M::UpperChestGirth, 0.3),
    (M::BustGirth, 0.3),
    (M::UnderbustGirth, 0.3),
    (M::WaistGirth, 0.3),
    (M::HipGirth, 0.3),
    (M::NeckBaseGirth, 0.3),
    (M::NeckToBustPoint, 0.15),
    (M::ScyeDepth, 0.15),
    (M::BackWaistLength, 0.15),
    (M::FrontWaistLength, 0.15),
    (M::CentreFrontWaistLength, 0.15),
];

/// How closely heights, depths and what a plumb line shows are reproduced, in mm.
const STOOD: f64 = 0.4;

/// What says more of a body than girths and taped lengths do, apart from heights.
const BESIDE_TAPES: [M; 5] = [
    M::BackHollow,
    M::NapePlumb,
    M::WaistPlumb,
    M::BustDepth,
    M::SeatDepth,
];

/// Lengths down back and front, which follow from the posture where they were not taken.
pub(super) const DOWN: [M; 5] = [
    M::NeckToBustPoint,
    M::ScyeDepth,
    M::BackWaistLength,
    M::FrontWaistLength,
    M::CentreFrontWaistLength,
];

/// Whether heights, depths or a plumb line say more of a body than tapes do.
pub(super) fn says_more_than_tapes(body: &Body) -> bool {
    let heights = body.is_taken(M::NapeHeight) && body.is_taken(M::WaistHeight);
    heights || BESIDE_TAPES.iter().any(|of| body.is_taken(*of))
}

/// Whether a length that was estimated gives way, since it follows from the posture: all down the body
/// from heights and plumb lines, those over the bust from its depth.
fn follows(body: &Body, of: M) -> bool {
    let heights = body.is_taken(M::NapeHeight) && body.is_taken(M::WaistHeight);
    let mut lines = [M::BackHollow, M::NapePlumb, M::WaistPlumb].into_iter();
    let is_over_bust = matches!(
        of,
        M::NeckToBustPoint | M::FrontWaistLength | M::CentreFrontWaistLength
    );
    DOWN.contains(&of)
        && (heights
            || lines.any(|of| body.is_taken(of))
            || (is_over_bust && body.is_taken(M::BustDepth)))
}

/// What a form of a body has to reproduce. Estimates count as much as what was taken, since drafts use
/// them so; `loosely` gives them the room of their spread, which lengths that follow from the posture always
/// have. `longer` says what has to be longer than it is given.
pub(super) fn targets(body: &Body, loosely: bool, longer: &[(M, f64)]) -> Vec<Target> {
    let mut out: Vec<Target> = TAPED
        .into_iter()
        .filter_map(|(of, tolerance)| {
            let measured = body.get(of)?;
            let tolerance = match measured.source {
                Source::Estimated { spread } if loosely || follows(body, of) => {
                    spread.max(tolerance)
                }
                _ => tolerance,
            };
            let by = longer.iter().find(|(one, _)| *one == of);
            Some(Target {
                of,
                value: measured.value + by.map_or(0.0, |(_, by)| *by),
                tolerance,
                is_taken: measured.source.is_taken(),
            })
        })
        .collect();
    let mut stood = |of, value| {
        out.push(Target {
            of,
            value,
            tolerance: STOOD,
            is_taken: true,
        });
    };
    if body.is_taken(M::NapeHeight) && body.is_taken(M::WaistHeight) {
        let rise = body.value(M::NapeHeight) - body.value(M::WaistHeight);
        stood(M::NapeHeight, rise);
    }
    for of in [M::BackWidth, M::FrontWidth] {
        if body.is_taken(of) {
            stood(of, body.value(of));
        }
    }
    for of in BESIDE_TAPES.into_iter().filter(|of| body.is_taken(*of)) {
        stood(of, body.value(of));
    }
    out
}

/// How a form is to be found.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Asked<'a> {
    /// By how much more is expected of dimensions.
    pub(super) more: &'a [(ShapeParameter, f64)],
    /// By how much more lengths have to be.
    pub(super) longer: &'a [(M, f64)],
    /// Whether estimates have the room of their spread.
    pub(super) loosely: bool,
}

/// A state of the search.
struct State {
    shape: Shape,
    found: Vec<f64>,
    miss: DVector<f64>,
}

struct Search<'a> {
    body: &'a Body,
    priors: Priors,
    targets: Vec<Target>,
    turns: Turns,
}

impl Search<'_> {
    fn at(&self, deviations: &DVector<f64>) -> State {
        let shape = Shape::of(self.body, &self.priors.values(deviations));
        let found: Vec<f64> = self
            .targets
            .iter()
            .map(|target| match target.of {
                // As wide as it is given, or up to the sides.
                M::BackWidth | M::FrontWidth => {
                    let back = target.of == M::BackWidth;
                    2.0 * fold_reach(&shape, back, 0.5 * target.value, &self.turns)
                }
                of => taped(&shape, of, &self.turns).unwrap_or(target.value),
            })
            .collect();
        let misses = self.targets.iter().zip(&found);
        let miss = misses.map(|(target, found)| (found - target.value) / target.tolerance);
        let miss = DVector::from_iterator(self.targets.len(), miss);
        State { shape, found, miss }
    }

    fn slopes(&self, at: &DVector<f64>, miss: &DVector<f64>) -> DMatrix<f64> {
        const STEP: f64 = 1e-3;
        let mut slopes = DMatrix::zeros(self.targets.len(), COUNT);
        for column in 0..COUNT {
            let mut moved = at.clone();
            moved[column] += STEP;
            slopes.set_column(column, &((self.at(&moved).miss - miss) / STEP));
        }
        slopes
    }
}

/// Gauss and Newton's method, damped after Levenberg and Marquardt where it overshoots. From step to step
/// the slopes are mended after Broyden, and taken anew where little is gained.
pub(super) fn solve(body: &Body, asked: &Asked<'_>) -> Solved {
    const ROUNDS: usize = 40;
    let search = Search {
        body,
        priors: Priors::of(body, asked.more),
        targets: targets(body, asked.loosely, asked.longer),
        turns: Turns::quarter(STEPS),
    };
    let mut at = DVector::<f64>::zeros(COUNT);
    let mut state = search.at(&at);
    let mut cost = state.miss.norm_squared();
    let mut slopes = search.slopes(&at, &state.miss);
    let (mut damping, mut is_fresh) = (0.0, true);
    for _ in 0..ROUNDS {
        let downhill = slopes.tr_mul(&state.miss) + &at;
        let curvature = slopes.tr_mul(&slopes);
        let mut gained = 0.0;
        for _ in 0..8 {
            let damped = &curvature + DMatrix::identity(COUNT, COUNT) * (1.0 + damping);
            let Some(factor) = Cholesky::new(damped) else {
                break;
            };
            let step = -factor.solve(&downhill);
            let next = &at + &step;
            let there = search.at(&next);
            let now = there.miss.norm_squared() + next.norm_squared();
            if now < cost {
                gained = cost - now;
                let change = &there.miss - &state.miss;
                slopes += (change - &slopes * &step) * step.transpose() / step.norm_squared();
                (at, state, cost) = (next, there, now);
                damping = if damping < 0.01 { 0.0 } else { 0.2 * damping };
                break;
            }
            if !is_fresh {
                break;
            }
            damping = if damping == 0.0 { 1.0 } else { 8.0 * damping };
        }
        if gained > 0.02 * cost.max(1.0) {
            is_fresh = false;
        } else if is_fresh && gained < 1e-4 * cost.max(1.0) {
            break;
        } else {
            slopes = search.slopes(&at, &state.miss);
            is_fresh = true;
        }
    }
    let expected = &state.miss - &slopes * &at;
    Solved {
        values: search.priors.values(&at),
        shape: state.shape,
        found: state.found,
        priors: search.priors,
        targets: search.targets,
        cost,
        slopes,
        expected,
    }
}
