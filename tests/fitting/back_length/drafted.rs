//! The hinges on drafted backs.

use crate::support::measures::reading;
use blockwright::alterations::{Alteration, AlterationError, BackLengthReduction, Hinge, Readings};
use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{EdgeName, Pattern, shoulder_slope};

/// Dress (with a shoulder dart) and tunic (without), with and without shape at the waist.
fn patterns() -> Vec<(String, Pattern)> {
    let mut found = Vec::new();
    for block in [Block::Dress, Block::Tunic] {
        for (girth, waist) in [(820.0, 0.75), (900.0, 0.8), (1060.0, 1.0)] {
            let mut figure = Figure::cylinder(girth);
            figure.waist_girth = girth * waist;
            let mut options = DraftOptions::of(block);
            options.sleeve = Some(SleeveLength::Long);
            let pattern = draft_figure(&figure, &options).expect("a pattern");
            found.push((format!("{} {girth} {waist}", block.name()), pattern));
        }
    }
    found
}

#[test]
fn the_slope_follows_the_closed_form_and_every_law_holds() {
    for (which, pattern) in patterns() {
        let back = pattern.piece("back").unwrap();
        let shoulder = back.outline().edge(&EdgeName::SHOULDER).unwrap().curve();
        let reach = shoulder.start().distance(shoulder.end());
        let s = shoulder_slope(back).unwrap();
        for (hinge, k) in [(Hinge::Plain, 0.0), (Hinge::Shared, 0.5)] {
            for amount in [-10.0, 12.0, 25.0] {
                let step = BackLengthReduction {
                    amount,
                    hinge,
                    hips_checked: true,
                };
                let after = step
                    .alter(&pattern)
                    .unwrap_or_else(|e| panic!("{which}: {e}"))
                    .pattern;
                let altered = after.piece("back").unwrap();
                let new = shoulder_slope(altered).unwrap();
                // A negative amount is the way back from the positive one.
                let (from, to, reach) = if amount < 0.0 {
                    let edge = altered.outline().edge(&EdgeName::SHOULDER).unwrap().curve();
                    (new, s, edge.start().distance(edge.end()))
                } else {
                    (s, new, reach)
                };
                let wanted = (from.sin() - (1.0 - k) * f64::abs(amount) / reach).asin();
                assert!(
                    (to - wanted).abs() < 1e-6,
                    "{which} {hinge:?} {amount}: {to} {wanted}"
                );
                assert_eq!(
                    check_all(&after, &Tolerances::altered()),
                    [],
                    "{which} {hinge:?} {amount}"
                );
                let (old, new) = (Readings::of(&pattern), Readings::of(&after));
                for promise in step.promises(&pattern) {
                    promise
                        .check(&old, &new)
                        .unwrap_or_else(|e| panic!("{which}: {e}"));
                }
                let gained =
                    |what: &str| reading(&after, what).unwrap() - reading(&pattern, what).unwrap();
                let miss = gained("back armscye length") - gained("sleeve sleeve_cap length");
                assert!(miss.abs() < 0.02, "{which} {hinge:?} {amount}: {miss}");
            }
        }
    }
}

#[test]
fn no_amount_changes_nothing() {
    for (which, pattern) in patterns() {
        for hinge in [Hinge::Plain, Hinge::Shared] {
            let step = BackLengthReduction {
                amount: 0.0,
                hinge,
                hips_checked: false,
            };
            assert_eq!(
                step.alter(&pattern).unwrap().pattern,
                pattern,
                "{which} {hinge:?}"
            );
        }
    }
}

#[test]
fn no_number_is_refused_as_such() {
    let (_, pattern) = patterns().remove(0);
    for amount in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let refused = BackLengthReduction::by(amount).alter(&pattern);
        assert!(
            matches!(refused, Err(AlterationError::Setting(_))),
            "{refused:?}"
        );
    }
    for amount in [-1e300, -1e3, 1e3, 1e300] {
        for hinge in [Hinge::Plain, Hinge::Shared] {
            let step = BackLengthReduction {
                amount,
                hinge,
                hips_checked: true,
            };
            assert!(step.alter(&pattern).is_err(), "{hinge:?} {amount}");
        }
    }
}

/// Built without the solver, the method says so and what does instead.
#[cfg(not(feature = "least-distortion"))]
#[test]
fn the_least_distortion_names_the_feature_it_needs() {
    let (_, pattern) = patterns().remove(0);
    let step = BackLengthReduction {
        amount: 12.0,
        hinge: Hinge::LeastDistortion,
        hips_checked: true,
    };
    let refused = step.alter(&pattern).unwrap_err();
    assert!(matches!(refused, AlterationError::NotBuilt { .. }));
    let text = refused.to_string();
    assert!(
        text.contains("feature least-distortion") && text.contains("shared"),
        "{text}"
    );
}
