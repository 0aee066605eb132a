//! The sweep itself: a seeded sample of cases, or every one.

use super::steps::with_long_sleeve;
use super::steps::{Step, steps};
use super::sweep::Bench;
use super::table::Findings;
use crate::support::bodies::{Dice, set};
use crate::support::survey::{body_of, tell, whole, women};
use blockwright::draft::{Block, draft};
use blockwright::measurements::Body;
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};

/// The wearers of the repository, on whom examples are made.
const WEARERS: [&str; 4] = ["ines", "maren", "odile", "tilde"];

/// Of a hundred pairs of alterations that move no dart, so many are made at least.
const LEAST_MADE: f64 = 99.0;

/// Of a hundred pairs so many come to the same in both orders, to half a millimetre.
const LEAST_ORDER: f64 = 98.5;

/// Of a hundred steps so many are taken back by their opposite, to a twentieth of a millimetre.
const LEAST_BACK: f64 = 99.0;

/// Surveyed women of the whole sweep, unless `BLOCKWRIGHT_PAIRS` names another number.
const WOMEN: usize = 100;

/// Surveyed women for whom every pair is tried; none in a short run.
fn everything_for() -> Option<usize> {
    let named = std::env::var("BLOCKWRIGHT_PAIRS").ok();
    named
        .and_then(|count| count.parse().ok())
        .or(whole().then_some(WOMEN))
}

/// Pairs that a short run draws.
const CASES: usize = 5_000;

/// The bodies: the wearers, and women drawn from the survey by a seed of the sweep's own.
fn bodies(count: usize) -> Vec<Body> {
    let wearers = WEARERS.iter().map(|name| set(name).body().clone());
    let mut rows = women().rows;
    let mut dice = Dice::new(2_026);
    let drawn = (0..count).map(|_| {
        let at = dice.within(0.0, rows.len() as f64) as usize;
        body_of(&rows.swap_remove(at))
    });
    wearers.chain(drawn.collect::<Vec<_>>()).collect()
}

/// Every two of so many steps, once in each order of the sweep, or as many of them as wanted.
fn pairs(suited: &[usize], wanted: Option<usize>, dice: &mut Dice) -> Vec<[usize; 2]> {
    let mut all: Vec<[usize; 2]> = Vec::new();
    for (place, a) in suited.iter().enumerate() {
        all.extend(suited[place..].iter().map(|b| [*a, *b]));
    }
    let Some(wanted) = wanted else { return all };
    (0..wanted.min(all.len()))
        .map(|_| all.swap_remove(dice.within(0.0, all.len() as f64) as usize))
        .collect()
}

/// Walks the cases on as many threads as there are cores.
fn walk(bodies: &[Body], steps: &[Step], wanted: Option<usize>) -> Findings {
    let work: Vec<(&Body, Block)> = bodies
        .iter()
        .flat_map(|body| Block::ALL.map(|block| (body, block)))
        .collect();
    let findings = Mutex::new(Findings::default());
    let next = AtomicUsize::new(0);
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    std::thread::scope(|scope| {
        for _ in 0..threads {
            scope.spawn(|| {
                loop {
                    let at = next.fetch_add(1, Ordering::Relaxed);
                    let Some((body, block)) = work.get(at) else {
                        break;
                    };
                    let Ok(pattern) = draft(body, &with_long_sleeve(*block)) else {
                        continue;
                    };
                    let suited = steps.iter().enumerate().filter(|(_, s)| s.suits(*block));
                    let suited: Vec<usize> = suited.map(|(place, _)| place).collect();
                    let mut bench = Bench::new(pattern, steps);
                    let mut dice = Dice::new(at as u64);
                    let chosen = pairs(&suited, wanted, &mut dice);
                    let paired: Vec<_> = chosen.iter().flat_map(|p| bench.pair(*p)).collect();
                    let alone: Vec<_> = suited.iter().map(|step| bench.alone(*step)).collect();
                    let mut findings = findings.lock().unwrap();
                    alone.iter().for_each(|a| findings.add_alone(*block, a));
                    paired.iter().for_each(|p| findings.add_pair(*block, p));
                }
            });
        }
    });
    findings.into_inner().unwrap()
}

#[test]
fn every_ordered_pair_is_made() {
    let steps = steps();
    let began = std::time::Instant::now();
    let findings = match everything_for() {
        Some(women) => walk(&bodies(women), &steps, None),
        None => {
            let bodies = bodies(4);
            let each = CASES / 2 / (bodies.len() * Block::ALL.len());
            walk(&bodies, &steps, Some(each))
        }
    };
    if everything_for().is_some() {
        findings.lines(&steps).iter().for_each(|line| tell(line));
    }
    let share = findings.share_of(|first, second| {
        let moves = steps[first].moves_a_dart() || steps[second].moves_a_dart();
        !moves && first != second
    });
    let [back, order] = findings.shares_close();
    tell(&format!(
        "{share:.2} % of pairs of two alterations that move no dart are made, {order:.2} % come to \
         the same in both orders, {back:.2} % of steps are taken back by their opposite, in {:.0} s",
        began.elapsed().as_secs_f64()
    ));
    assert!(share >= LEAST_MADE && order >= LEAST_ORDER && back >= LEAST_BACK);
}
