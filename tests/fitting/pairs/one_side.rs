//! Every alteration on one side of the body: alone, then on the other side too, and before every other.

use super::differences::measures_apart;
use super::steps::{Step, steps, with_long_sleeve};
use crate::support::bodies::{Dice, set};
use crate::support::survey::{body_of, tell, whole, women};
use blockwright::alterations::{Alteration, OneSided, alter};
use blockwright::draft::{Block, draft};
use blockwright::invariants::{Tolerances, first};
use blockwright::measurements::Body;
use blockwright::piece::{BodySide, Pattern};
use std::collections::BTreeMap;

/// How closely the same on the left and then on the right comes to what it is on both, in
/// millimetres.
const APART: f64 = 0.5;

/// Pairs that a short run draws.
const CASES: usize = 60;

/// Of a hundred pairs that are made on both sides, so many are made with the first step on one.
const LEAST_MADE: f64 = 99.0;

fn on(side: BodySide, step: &Step) -> Box<dyn Alteration> {
    Box::new(OneSided::new(side, step.alteration()))
}

/// A wearer of the repository, and in whole sweeps another and women of the survey besides.
fn bodies() -> Vec<Body> {
    let mut bodies = ["ines", "odile"]
        .map(|name| set(name).body().clone())
        .to_vec();
    if whole() {
        let rows = women().rows;
        bodies.extend(rows.iter().step_by(rows.len() / 10).map(body_of));
    }
    bodies
}

/// Every block of every body.
fn patterns() -> Vec<(Block, Pattern)> {
    let mut patterns = Vec::new();
    for body in bodies() {
        for block in Block::ALL {
            let drafted = draft(&body, &with_long_sleeve(block));
            patterns.extend(drafted.ok().map(|pattern| (block, pattern)));
        }
    }
    patterns
}

/// What meets the other half at the centre, where it cannot be on one side only, and on which blocks.
fn meets_at_centre(step: &Step, block: Block) -> bool {
    match step.entry.name {
        "neckline_depth" => true,
        "back_length_reduction" => !block.is_one_piece(),
        _ => false,
    }
}

#[test]
fn left_then_right_comes_to_both_or_is_refused_with_its_reason() {
    let steps = steps();
    let mut wrong = BTreeMap::<String, usize>::new();
    let mut fault = |text: String| *wrong.entry(text).or_default() += 1;
    for (block, pattern) in patterns() {
        for step in steps.iter().filter(|s| s.suits(block) && !s.moves_a_dart()) {
            let Ok(both) = alter(&pattern, &[step.alteration()]) else {
                continue;
            };
            let name = format!("{} on a {}", step.name, block.name());
            let left = alter(&pattern, &[on(BodySide::Left, step)]);
            if meets_at_centre(step, block) {
                let text = left.map_or_else(|why| why.to_string(), |_| "made".to_owned());
                if !text.contains("both sides") || !text.contains("leave out side") {
                    fault(format!("{name}: {text}"));
                }
                continue;
            }
            let done = left.and_then(|left| {
                let kept = &left.accounts.first().unwrap().kept;
                assert!(!kept.is_empty(), "{name} reports nothing kept");
                alter(&left.pattern, &[on(BodySide::Right, step)])
            });
            match done {
                Err(why) => fault(format!("{name}: {why}")),
                Ok(done) => {
                    let (apart, what) = measures_apart(&both.pattern, &done.pattern);
                    if apart > APART {
                        fault(format!("{name}: {apart:.2} mm apart, {what}"));
                    }
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}

#[test]
fn a_one_sided_first_step_breaks_no_second_one() {
    let steps = steps();
    let patterns = patterns();
    let mut cases = Vec::new();
    for (index, (block, _)) in patterns.iter().enumerate() {
        let suited = |step: &&Step| step.suits(*block) && !step.moves_a_dart();
        for first in steps.iter().filter(suited) {
            let seconds = steps.iter().filter(suited);
            cases.extend(seconds.map(|second| (index, first, second)));
        }
    }
    if !whole() {
        let mut dice = Dice::new(12);
        let drawn = |_| cases.swap_remove(dice.within(0.0, cases.len() as f64) as usize);
        cases = (0..CASES).map(drawn).collect();
    }
    let (mut tried, mut refused) = (0, BTreeMap::<String, usize>::new());
    for (index, first, second) in cases {
        let (block, pattern) = &patterns[index];
        // What is refused on both sides is no matter of sides.
        let both = alter(pattern, &[first.alteration(), second.alteration()]);
        if both.is_err() || meets_at_centre(first, *block) {
            continue;
        }
        let Ok(left) = alter(pattern, &[on(BodySide::Left, first)]) else {
            panic!("{} on the left of a {}", first.name, block.name());
        };
        let mut seconds = vec![second.alteration()];
        if !meets_at_centre(second, *block) {
            seconds.push(on(BodySide::Right, second));
        }
        for step in seconds {
            tried += 1;
            match alter(&left.pattern, &[step]) {
                Ok(done) => {
                    let broken = first_broken(&done.pattern);
                    assert_eq!(broken, None, "{}, {}", first.name, second.name);
                }
                Err(why) => {
                    let pair = format!("{}: {}, {}", block.name(), first.name, second.name);
                    *refused.entry(format!("{pair}: {why}")).or_default() += 1;
                }
            }
        }
    }
    let share = 100.0 * (1.0 - refused.values().sum::<usize>() as f64 / f64::from(tried));
    tell(&format!(
        "a step on the left, then another: {share:.2} % of {tried} made"
    ));
    assert!(share >= LEAST_MADE, "{refused:#?}");
}

fn first_broken(pattern: &Pattern) -> Option<String> {
    first(pattern, &Tolerances::altered()).map(|violation| violation.to_string())
}
