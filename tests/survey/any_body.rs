//! Random bodies within what people are: each block is drafted with no law broken, or refused
//! by a name that says why.

use super::tally::{FITS, Garment, Outcome, Tally, attempt};
use crate::support::survey::tell;
use blockwright::draft::Fit;
use blockwright::explain::Explain;
use blockwright::measurements::{Body, Measurement as M, Source};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

/// Estimates are varied by up to so many of their spreads.
const SPREADS: f64 = 2.5;

const CASES: usize = 300;

/// A body: the four required, and every other measurement either left to be estimated or taken
/// within [`SPREADS`] of what all before it lead to expect.
fn bodies() -> impl Strategy<Value = Body> {
    let four = (1400.0..1950.0, 700.0..1600.0_f64)
        .prop_flat_map(|(height, bust)| {
            // No waist and no hip that `Body` itself calls impossible.
            let waist = (bust - 350.0_f64).max(M::WaistGirth.range().low)..bust + 100.0;
            (Just(height), Just(bust), waist)
        })
        .prop_flat_map(|(height, bust, waist)| {
            let (low, high) = (M::HipGirth.range().low, M::HipGirth.range().high);
            let hip = (waist - 50.0_f64).max(low)..(waist + 400.0).min(high);
            (Just(height), Just(bust), Just(waist), hip)
        });
    let varied = prop::collection::vec(prop::option::of(-SPREADS..SPREADS), M::ALL.len());
    (four, varied).prop_map(|((height, bust, waist, hip), varied)| {
        let required = [
            (M::Height, height),
            (M::BustGirth, bust),
            (M::WaistGirth, waist),
            (M::HipGirth, hip),
        ];
        let plain = Body::from_taken(required).expect("the four are possible");
        let varied = M::ALL.into_iter().zip(varied);
        varied.fold(plain, |body, (m, by)| {
            let value = by.zip(body.estimate(m)).and_then(|(by, estimate)| {
                let Source::Estimated { spread } = estimate.source else {
                    return None;
                };
                let range = m.range();
                Some((estimate.value + by * spread).clamp(range.low, range.high))
            });
            match value {
                Some(value) => body.with_taken(m, value).expect("all are in range"),
                None => body,
            }
        })
    })
}

/// A runner whose bodies are the same on every run.
fn runner() -> TestRunner {
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]);
    TestRunner::new_with_rng(Config::default(), rng)
}

fn described(body: &Body) -> String {
    let values = body.taken().map(|(m, value)| match m {
        M::ShoulderSlope => format!("{m} {:.2} deg", value.to_degrees()),
        _ => format!("{m} {value:.1}"),
    });
    values.collect::<Vec<_>>().join(", ")
}

#[test]
fn is_drafted_whole_or_refused_by_name() {
    let (mut runner, strategy) = (runner(), bodies());
    let bodies: Vec<Body> = (0..CASES)
        .map(|_| strategy.new_tree(&mut runner).expect("a body").current())
        .collect();
    let mut faults = Vec::new();
    for garment in Garment::all() {
        let mut tally = Tally::default();
        for (index, body) in bodies.iter().enumerate() {
            let fit: Fit = FITS[index % FITS.len()];
            let outcome = attempt(garment, body, fit);
            let who = format!("body {index}");
            match &outcome {
                Outcome::Drafted(_, broken) if !broken.is_empty() => faults.push(format!(
                    "{who}, {}, {}: {}\n      {}",
                    garment.name(),
                    fit.name(),
                    broken[0],
                    described(body)
                )),
                // A draft that does not close is a fault of the draft, no answer to a body.
                Outcome::Refused(error) if error.code() == "draft_does_not_close" => {
                    faults.push(format!(
                        "{who}, {}: {error}\n      {}",
                        garment.name(),
                        described(body)
                    ));
                }
                Outcome::Panicked => {
                    faults.push(format!(
                        "{who}, {}: panicked\n      {}",
                        garment.name(),
                        described(body)
                    ));
                }
                _ => {}
            }
            tally.add(&who, &outcome);
        }
        tell(&tally.report(&format!("random bodies, {}", garment.name())));
    }
    let shown = faults
        .iter()
        .take(12)
        .cloned()
        .collect::<Vec<_>>()
        .join("\n  ");
    assert!(faults.is_empty(), "\n{} faults:\n  {shown}\n", faults.len());
}

#[test]
fn the_same_bodies_on_every_run() {
    let first = |mut runner: TestRunner| bodies().new_tree(&mut runner).expect("a body").current();
    assert_eq!(first(runner()), first(runner()));
}
