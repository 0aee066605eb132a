//! Every alteration of the catalogue, walked.

use super::{body, drafted, scaled, suited};
use blockwright::alterations::{CATALOGUE, alter};
use blockwright::geometry::Point;
use blockwright::piece::Pattern;

#[test]
fn every_example_holds_on_every_block_it_suits() {
    let bodies = [
        body(1600.0, 860.0, 680.0, 930.0),
        body(1680.0, 940.0, 780.0, 1020.0),
        body(1720.0, 1080.0, 930.0, 1140.0),
    ];
    for entry in CATALOGUE {
        for block in suited(entry) {
            let mut held = 0;
            for body in &bodies {
                let pattern = drafted(body, block).unwrap();
                match alter(&pattern, &[(entry.example)()]) {
                    Ok(done) => {
                        held += 1;
                        let promised = (entry.example)().promises(&pattern);
                        assert!(!promised.is_empty(), "{} promises nothing", entry.name);
                        assert!(
                            !done.accounts[0].changes.is_empty(),
                            "{} changes nothing on a {}",
                            entry.name,
                            block.name()
                        );
                    }
                    Err(refused) => eprintln!("{} on a {}: {refused}", entry.name, block.name()),
                }
            }
            assert!(
                held >= 2,
                "{} on a {}: held for {held} of 3",
                entry.name,
                block.name()
            );
        }
    }
}

/// Points along every edge of a pattern, a hundredth of the edge apart.
fn points(pattern: &Pattern) -> Vec<Point> {
    let mut found = Vec::new();
    for piece in pattern.pieces() {
        for edge in piece.outline().edges() {
            let (curve, length) = (edge.curve(), edge.curve().length());
            found.extend((0..=20).map(|i| curve.point_at(length * f64::from(i) / 20.0).unwrap().0));
        }
    }
    found
}

#[test]
fn an_alteration_by_nothing_changes_nothing() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    for entry in CATALOGUE {
        if (entry.example)().amount().is_none() {
            continue;
        }
        for block in suited(entry) {
            let pattern = drafted(&body, block).unwrap();
            let same = alter(&pattern, &[scaled(entry, 0.0)]).unwrap().pattern;
            for (a, b) in points(&pattern).into_iter().zip(points(&same)) {
                assert!(
                    a.distance(b) < 1e-3,
                    "{} on a {}: {a:?} {b:?}",
                    entry.name,
                    block.name()
                );
            }
        }
    }
}

#[test]
fn a_target_is_met_where_one_can_be_named() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    for entry in CATALOGUE {
        let Some(target) = entry.target else { continue };
        for block in suited(entry) {
            let pattern = drafted(&body, block).unwrap();
            // A pattern of joined blocks names its pieces apart.
            let Some(before) = pattern.measured(&target()) else {
                continue;
            };
            let after = alter(&pattern, &[(entry.example)()]).unwrap().pattern;
            let moved = after.measured(&target()).unwrap() - before;
            assert!(
                moved.abs() > 1e-3,
                "{}: {} does not move",
                entry.name,
                target()
            );
        }
    }
}
