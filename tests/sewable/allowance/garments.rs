//! Blocks for bodies within what people are, the same on every run.

pub use crate::support::bodies::Dice;
use blockwright::draft::{Block, DraftOptions, Ease, Fit, SleeveLength, draft};
use blockwright::measurements::{Body, Measurement as M, Source};
use blockwright::piece::Pattern;

/// A body: the four required, and half of the others within two spreads of what all before them
/// lead to expect.
pub fn body(dice: &mut Dice) -> Body {
    let (height, bust) = (dice.within(1450.0, 1900.0), dice.within(740.0, 1450.0));
    let waist = dice.within((bust - 300.0).max(560.0), bust + 60.0);
    let hip = dice.within((waist - 20.0).max(780.0), waist + 320.0);
    let required = [
        (M::Height, height),
        (M::BustGirth, bust),
        (M::WaistGirth, waist),
        (M::HipGirth, hip),
    ];
    let plain = Body::from_taken(required).unwrap();
    M::ALL.into_iter().fold(plain, |body, m| {
        let Some(estimate) = body.estimate(m) else {
            return body;
        };
        let Source::Estimated { spread } = estimate.source else {
            return body;
        };
        let by = dice.within(-2.0, 2.0);
        let range = m.range();
        let value = (estimate.value + by * spread)
            .max(range.low)
            .min(range.high);
        if dice.within(0.0, 1.0) < 0.5 {
            body.with_taken(m, value).unwrap()
        } else {
            body
        }
    })
}

/// Every block there is for a body; what cannot be drafted is left out.
pub fn patterns(body: &Body, fit: Fit, sleeve: SleeveLength) -> Vec<(Block, Pattern)> {
    let made = |block: Block| {
        let mut options = DraftOptions::of(block);
        options.ease = Ease::of(fit);
        options.sleeve = block.has_armscye().then_some(sleeve);
        Some((block, draft(body, &options).ok()?))
    };
    Block::ALL.into_iter().filter_map(made).collect()
}

/// Patterns of all blocks for so many bodies.
pub fn many(bodies: u64, mut each: impl FnMut(String, &Pattern)) -> usize {
    let mut count = 0;
    for seed in 1..=bodies {
        let mut dice = Dice::new(seed);
        let body = body(&mut dice);
        let fit = [Fit::Close, Fit::Regular, Fit::Loose][(seed % 3) as usize];
        let sleeve = [SleeveLength::Short, SleeveLength::Long][(seed % 2) as usize];
        for (block, pattern) in patterns(&body, fit, sleeve) {
            count += 1;
            each(format!("body {seed}, {}", block.name()), &pattern);
        }
    }
    count
}
