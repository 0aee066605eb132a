//! Every alteration of the catalogue after every one-sided first step, on a dress with a sleeve.

use super::drafted;
use crate::support::measures::reading;
use blockwright::alterations::{Alteration, CATALOGUE, OneSided, Reason, Refused, alter};
use blockwright::draft::Block;
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{BodySide, Pattern};

fn on_left(step: Box<dyn Alteration>) -> Box<dyn Alteration> {
    Box::new(OneSided::new(BodySide::Left, step))
}

/// The first step on one side, the second on both.
fn one_sided_first(
    pattern: &Pattern,
    first: Box<dyn Alteration>,
    second: Box<dyn Alteration>,
) -> Result<Pattern, Box<Refused>> {
    alter(pattern, &[on_left(first), second]).map(|done| done.pattern)
}

#[test]
fn a_one_sided_first_step_breaks_no_second_one() {
    let pattern = drafted(Block::Dress);
    let entries: Vec<_> = CATALOGUE
        .iter()
        .filter(|entry| entry.blocks.contains(&"dress"))
        .collect();
    let (mut tried, mut wrong) = (0, Vec::new());
    for first in &entries {
        if let Err(why) = alter(&pattern, &[on_left((first.example)())]) {
            eprintln!("{} on the left alone: {why}", first.name);
            continue;
        }
        for second in &entries {
            let mixed = one_sided_first(&pattern, (first.example)(), (second.example)());
            tried += 1;
            match mixed {
                Ok(pattern) => {
                    assert!(check_all(&pattern, &Tolerances::altered()).is_empty());
                }
                Err(why) => {
                    // What is refused after the first on both sides is no matter of sides.
                    let both = alter(&pattern, &[(first.example)(), (second.example)()]);
                    let alone = alter(&pattern, &[(second.example)()]);
                    let text = why.to_string();
                    assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
                    eprintln!(
                        "{} on the left, then {}: {text} [on both sides: {}]",
                        first.name,
                        second.name,
                        both.as_ref().map_or_else(
                            |e| e.to_string(),
                            |done| {
                                let side = |p| reading(&done.pattern, p).unwrap_or(0.0);
                                let apart =
                                    side("back side_seam length") - side("front side_seam length");
                                format!("made, side seams {apart:.3} mm apart")
                            }
                        )
                    );
                    // A promise or a part that is lost in the mixed chain only is the mixing's fault.
                    let same = both.as_ref().err().is_some_and(|both| {
                        std::mem::discriminant(&both.reason) == std::mem::discriminant(&why.reason)
                    });
                    let lost = matches!(why.reason, Reason::Promise(_) | Reason::Structure(_));
                    if (lost && !same) || (both.is_ok() && alone.is_ok()) {
                        wrong.push(format!("{} then {}: {text}", first.name, second.name));
                    }
                }
            }
        }
    }
    eprintln!("{tried} pairs, {} refused wrongly", wrong.len());
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
