//! Cloth brought to rest: the shape of least energy, judged by the forces left.

use super::balance::{Balance, Pin, total};
use super::contact::Support;
use super::error::ToileError;
use super::fabric::Fabric;
use super::sheet::Sheet;
use super::space::{Space, add_to, dot, length, scaled, sub};
use crate::progress::Progress;
use serde::Serialize;
use std::ops::ControlFlow;

/// What acts on a sheet besides its weight.
///
/// ```
/// use blockwright::toile::{Fabric, Loads};
/// let hanging = Loads { cloth: Fabric::PLAIN_WOOL, surface: None, pins: vec![] };
/// assert!(hanging.surface.is_none());
/// ```
#[derive(Debug, Clone)]
pub struct Loads<'a> {
    /// What the sheet is made of.
    pub cloth: Fabric,
    /// What it rests on.
    pub surface: Option<&'a dyn Support>,
    /// Where it is pinned.
    pub pins: Vec<Pin>,
}

/// When to stop.
///
/// ```
/// use blockwright::toile::Patience;
/// let usual = Patience::default();
/// assert_eq!(usual.residual, 0.02);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patience {
    /// The cloth rests when the forces left are this share of its weight.
    pub residual: f64,
    /// How many rounds are made at most.
    pub rounds: u32,
    /// The farthest that a point goes in one step, in mm.
    pub stride: f64,
}

impl Default for Patience {
    fn default() -> Self {
        Self {
            residual: 0.02,
            rounds: 200,
            stride: 15.0,
        }
    }
}

/// How cloth came to rest.
///
/// ```
/// use blockwright::toile::Rest;
/// let rest = Rest { residual: 0.01, rounds: 40, energy: 1.0, touching: 12 };
/// assert!(rest.residual < 0.02);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Rest {
    /// Forces left, as a share of the weight: the sum of what is out of balance at each point.
    pub residual: f64,
    /// Rounds made.
    pub rounds: u32,
    /// The energy, in N mm.
    pub energy: f64,
    /// Points that touch the surface.
    pub touching: usize,
}

/// Steps made with one factored matrix, at most.
const STEPS: u32 = 10;
/// A step may go so much farther than the one before.
const LONGER: f64 = 4.0;
/// A round that brings the forces down to this share has done enough.
const ENOUGH: f64 = 0.1;
/// By how much threads resist being turned in a round, as a share of their stiffness: so much for each
/// weight of the sheet that is out of balance. Far from rest threads turn far, near it hardly.
const TURNING: f64 = 0.003;
/// How far a point may first fall in a round, in mm; and the least and the most it becomes.
const FALL: f64 = 40.0;
const LEAST_FALL: f64 = 2.0;
const MOST_FALL: f64 = 1e5;

/// Brings a sheet to rest from where it is: the places change.
///
/// Each round factors the matrix of second derivatives, without what would make it indefinite, and
/// makes some steps with it that learn from one another (L-BFGS; Nocedal, *Updating quasi-Newton
/// matrices with limited storage*, 1980). Points that touch stick where they are as long as what pulls
/// them is below friction, so that what is found is a true balance with friction. One thread, a fixed
/// order of sums: the same bits everywhere.
///
/// # Errors
/// [`ToileError::Cloth`] for a cloth out of range, [`ToileError::BadPlaces`] for places or pins that are
/// not the sheet's, [`ToileError::Stopped`] when `watch` breaks. A sheet that has not come to rest
/// within its rounds is no error: see [`Rest::residual`].
///
/// ```
/// use blockwright::toile::{Fabric, Hold, Loads, Patience, Sheet, settle};
/// use std::ops::ControlFlow;
/// let square = Sheet::new(
///     vec![[0, 1, 2], [0, 2, 3]],
///     vec![
///         [[0.0, 0.0], [100.0, 0.0], [100.0, 100.0]],
///         [[0.0, 0.0], [100.0, 100.0], [0.0, 100.0]],
///     ],
///     vec![Hold::Free, Hold::Free, Hold::Still, Hold::Still],
/// )?;
/// let mut places = vec![[0.0, 0.0, 0.0], [100.0, 0.0, 0.0], [100.0, 100.0, 0.0], [0.0, 100.0, 0.0]];
/// let loads = Loads { cloth: Fabric::PLAIN_WOOL, surface: None, pins: vec![] };
/// let rest = settle(&square, &mut places, &loads, &Patience::default(), &mut |_| ControlFlow::Continue(()))?;
/// assert!(rest.residual < 0.02 && places[0][1] < 0.0); // it hangs, stretched a little
/// # Ok::<(), blockwright::toile::ToileError>(())
/// ```
pub fn settle(
    sheet: &Sheet,
    places: &mut Vec<[f64; 3]>,
    loads: &Loads<'_>,
    patience: &Patience,
    watch: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Rest, ToileError> {
    let cloth = loads.cloth.checked()?;
    let points = sheet.count();
    let finite = |place: &Space| place.iter().all(|v| v.abs() < 1e6);
    let pinned = loads
        .pins
        .iter()
        .all(|pin| pin.point < points && finite(&pin.place) && (0.0..1e6).contains(&pin.pull));
    if places.len() != points || !places.iter().all(finite) || !pinned {
        return Err(ToileError::BadPlaces { points });
    }
    let mut balance = Balance::new(sheet, &cloth, loads.surface, &loads.pins, places);
    let weight = balance.weight().max(1e-12);
    let mut slope = vec![[0.0; 3]; points];
    let mut fall = FALL;
    let mut round = 0;
    loop {
        balance.look(places);
        let energy = balance.energy(places, &mut slope);
        let rest = Rest {
            residual: total(&slope) / weight,
            rounds: round,
            energy,
            touching: balance.contact.count(),
        };
        if rest.residual < patience.residual || round >= patience.rounds {
            return Ok(rest);
        }
        let progress = Progress::new(u64::from(round), u64::from(patience.rounds));
        if watch(progress).is_break() {
            return Err(ToileError::Stopped);
        }
        let across = (TURNING * rest.residual).min(1.0);
        while !balance.factor(places, 1.0 / fall, across) {
            fall *= 0.25;
            if fall < 1e-9 {
                return Ok(rest);
            }
        }
        let whole = steps(
            &balance,
            places,
            energy,
            &mut slope,
            1.0 / fall,
            patience.stride,
        );
        if whole > 0.6 {
            fall = (fall * 2.0).min(MOST_FALL);
        } else if whole < 0.3 {
            fall = (fall * 0.5).max(LEAST_FALL);
        }
        round += 1;
    }
}

/// A step that was made, the change of the slope, and the inverse of their product.
type Learnt = (Vec<Space>, Vec<Space>, f64);

/// Makes steps with one factored matrix; the share of them that went their whole length.
fn steps(
    balance: &Balance<'_>,
    places: &mut Vec<Space>,
    mut energy: f64,
    slope: &mut Vec<Space>,
    steady: f64,
    stride: f64,
) -> f64 {
    let origin = places.clone();
    let mut next_slope = slope.clone();
    let mut learnt: Vec<Learnt> = Vec::new();
    let at_first = total(slope);
    let (mut made_in_all, mut made_whole) = (0.0_f64, 0.0);
    let mut last = 1.0;
    for _ in 0..STEPS {
        let step = direction(balance, slope, &learnt);
        let down = product(&step, slope);
        if !(down > 0.0 && down.is_finite()) {
            break;
        }
        let far = step.iter().map(|d| length(*d)).fold(0.0, f64::max);
        let mut by = (stride / far).min(LONGER * last).min(1.0);
        let mut made = None;
        for _ in 0..12 {
            let tried: Vec<Space> = places
                .iter()
                .zip(&step)
                .map(|(p, d)| sub(*p, scaled(*d, by)))
                .collect();
            let cost = balance.energy(&tried, &mut next_slope)
                + balance.steadied(&tried, &origin, steady, &mut next_slope);
            if cost <= energy - 1e-4 * by * down {
                made = Some((tried, cost));
                break;
            }
            by *= 0.5;
        }
        made_in_all += 1.0;
        let Some((tried, cost)) = made else { break };
        last = by;
        made_whole += if by >= 1.0 { 1.0 } else { 0.0 };
        let moved: Vec<Space> = tried
            .iter()
            .zip(places.iter())
            .map(|(a, b)| sub(*a, *b))
            .collect();
        let turned: Vec<Space> = next_slope
            .iter()
            .zip(slope.iter())
            .map(|(a, b)| sub(*a, *b))
            .collect();
        let bend = product(&moved, &turned);
        *places = tried;
        energy = cost;
        std::mem::swap(slope, &mut next_slope);
        if bend > 1e-14 {
            learnt.push((moved, turned, 1.0 / bend));
        }
        if total(slope) < ENOUGH * at_first {
            break;
        }
    }
    made_whole / made_in_all.max(1.0)
}

/// The way down, to be subtracted: the matrix's answer, corrected by what was learnt since.
fn direction(balance: &Balance<'_>, slope: &[Space], learnt: &[Learnt]) -> Vec<Space> {
    let mut way = slope.to_vec();
    let mut shares = Vec::with_capacity(learnt.len());
    for (moved, turned, inverse) in learnt.iter().rev() {
        let share = inverse * product(moved, &way);
        for (w, t) in way.iter_mut().zip(turned) {
            add_to(w, -share, *t);
        }
        shares.push(share);
    }
    balance.answer(&mut way);
    for ((moved, turned, inverse), share) in learnt.iter().zip(shares.iter().rev()) {
        let by = share - inverse * product(turned, &way);
        for (w, m) in way.iter_mut().zip(moved) {
            add_to(w, by, *m);
        }
    }
    way
}

fn product(a: &[Space], b: &[Space]) -> f64 {
    a.iter().zip(b).map(|(a, b)| dot(*a, *b)).sum()
}
