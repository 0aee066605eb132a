//! Random bodies, blocks and chains of up to six alterations.

use super::{body, drafted, scaled, suited};
use blockwright::alterations::{Alteration, CATALOGUE, alter};
use blockwright::draft::Block;
use blockwright::invariants::{Tolerances, check_all};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use std::cell::Cell;

#[test]
fn a_chain_holds_at_every_step_or_is_refused_by_name() {
    let mut runner = TestRunner::new_with_rng(
        Config {
            cases: 160,
            failure_persistence: None,
            ..Config::default()
        },
        TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]),
    );
    let step = (0..CATALOGUE.len(), -1.5..1.5f64);
    let bodies = (
        1500.0..1850.0f64,
        780.0..1250.0f64,
        -320.0..0.0f64,
        20.0..180.0f64,
    );
    let cases = (
        bodies,
        0..Block::ALL.len(),
        prop::collection::vec(step, 1..=6),
    );
    let (whole, steps, all) = (Cell::new(0), Cell::new(0), Cell::new(0));
    runner
        .run(&cases, |((height, bust, less, more), block, chain)| {
            let block = Block::ALL[block];
            let Some(pattern) = drafted(&body(height, bust, bust + less, bust + more), block)
            else {
                return Ok(());
            };
            let chain: Vec<Box<dyn Alteration>> = chain
                .iter()
                .map(|(index, share)| (&CATALOGUE[*index], *share))
                .filter(|(entry, _)| suited(entry).any(|b| b == block))
                .map(|(entry, share)| scaled(entry, share))
                .collect();
            all.set(all.get() + 1);
            match alter(&pattern, &chain) {
                Ok(done) => {
                    whole.set(whole.get() + 1);
                    steps.set(steps.get() + done.accounts.len());
                    let broken = check_all(&done.pattern, &Tolerances::altered());
                    prop_assert!(broken.is_empty(), "{broken:?}");
                }
                Err(refused) => {
                    prop_assert!(refused.step >= 1 && refused.step <= chain.len());
                    prop_assert!(!refused.reason.to_string().is_empty());
                }
            }
            Ok(())
        })
        .unwrap();
    let (whole, steps, all) = (whole.get(), steps.get(), all.get());
    eprintln!("chains: {whole} of {all} held whole, {steps} steps in them");
    assert!(whole * 3 > all, "{whole} of {all}");
}
