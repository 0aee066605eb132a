//! Any body in any block on any cloth: laid soundly or refused for the width.

use super::check::lay;
use blockwright::allowance::{Allowances, CutLines};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::lay::{Cloth, LayError, Search, parts};
use blockwright::measurements::{Body, Measurement};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

#[test]
fn any_body_is_laid_or_refused_for_the_width() {
    let blocks = [Block::Bodice, Block::Skirt, Block::Dress, Block::Tunic];
    let strategy = (
        (
            1450.0..1900.0_f64,
            760.0..1400.0_f64,
            -250.0..50.0_f64,
            -20.0..250.0_f64,
        ),
        (0..blocks.len(), any::<bool>(), any::<bool>(), any::<bool>()),
        (800.0..1600.0_f64, 0.0..20.0_f64),
    );
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &[41; 32]);
    let mut runner = TestRunner::new_with_rng(Config::with_cases(24), rng);
    let laid = std::cell::Cell::new(0);
    runner
        .run(
            &strategy,
            |((height, bust, waist, hip), (block, allowance, folded, one_way), (width, gap))| {
                let body = Body::from_taken([
                    (Measurement::Height, height),
                    (Measurement::BustGirth, bust),
                    (Measurement::WaistGirth, bust + waist),
                    (Measurement::HipGirth, bust + hip),
                ]);
                let mut options = DraftOptions::of(blocks[block]);
                options.sleeve = blocks[block].has_armscye().then_some(SleeveLength::Long);
                // Whether a body is drafted is for other tests.
                let Some(pattern) = body.ok().and_then(|body| draft(&body, &options).ok()) else {
                    return Ok(());
                };
                let cut = allowance
                    .then(|| CutLines::new(&pattern, &Allowances::usual()).ok())
                    .flatten();
                let mut cloth = Cloth::new(width).unwrap().with_gap(gap).unwrap();
                if folded {
                    cloth = cloth.folded();
                }
                if one_way {
                    cloth = cloth.one_way();
                }
                match Search::new(&cloth, parts(&pattern, cut.as_ref(), &cloth).unwrap(), 1) {
                    Ok(_) => {
                        lay(&pattern, cut.as_ref(), &cloth, 40);
                        laid.set(laid.get() + 1);
                    }
                    Err(LayError::TooNarrow { needs, gives, .. }) => prop_assert!(needs > gives),
                    Err(other) => panic!("{other}"),
                }
                Ok(())
            },
        )
        .unwrap();
    assert!(laid.get() >= 12, "{} laid", laid.get());
}
