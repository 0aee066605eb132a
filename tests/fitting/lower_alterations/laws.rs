//! Laws and promises, both ways, on many bodies; nothing by nothing; there and back.

use super::{bodies, body, cases, drafted, women};
use blockwright::alterations::{Reason, alter};
use blockwright::draft::{Block, SleeveLength};
use blockwright::geometry::Point;
use blockwright::measurements::Body;
use blockwright::piece::Pattern;

#[test]
fn hold_on_every_block_and_many_bodies() {
    proved(&bodies(10), 93);
}

/// Women of the survey, every so many of them.
#[test]
fn hold_on_measured_women() {
    let every = std::env::var("BLOCKWRIGHT_EVERY").ok();
    let every = every.and_then(|e| e.parse().ok()).unwrap_or(120);
    proved(&women(every), 85);
}

/// Every case on every block: laws and promises hold, or the step is refused by name; at least
/// so many in a hundred are made.
fn proved(bodies: &[Body], least: usize) {
    let mut faults = Vec::new();
    let (mut made, mut asked) = (0, 0);
    for (number, body) in bodies.iter().enumerate() {
        let sleeve = if number % 2 == 0 {
            SleeveLength::Long
        } else {
            SleeveLength::Short
        };
        for block in Block::ALL {
            let Some(pattern) = drafted(body, block, sleeve) else {
                continue;
            };
            for case in cases().iter().filter(|c| (c.blocks)(block)) {
                for amount in case.amounts {
                    let step = (case.make)(amount);
                    let what = format!("body {number}, {}, {step:?}", block.name());
                    asked += 1;
                    match alter(&pattern, &[step]) {
                        Ok(_) => made += 1,
                        Err(refused) => match refused.reason {
                            Reason::Alteration(_) => eprintln!("{what}: {refused}"),
                            _ => faults.push(format!("{what}: {refused}")),
                        },
                    }
                }
            }
        }
    }
    eprintln!("{made} of {asked} made");
    assert!(
        faults.is_empty(),
        "{} faults of {asked}:\n{}",
        faults.len(),
        faults.join("\n")
    );
    assert!(made * 100 >= asked * least, "{made} of {asked}");
}

/// Points along every edge, a twentieth of it apart.
pub fn points(pattern: &Pattern) -> Vec<Point> {
    let mut found = Vec::new();
    for piece in pattern.pieces() {
        for edge in piece.outline().edges() {
            let (curve, length) = (edge.curve(), edge.curve().length());
            found.extend((0..=20).map(|i| curve.point_at(length * f64::from(i) / 20.0).unwrap().0));
        }
        found.extend(piece.darts().iter().flat_map(|d| d.apexes.points()));
    }
    found
}

fn furthest(one: &Pattern, other: &Pattern) -> f64 {
    let (one, other) = (points(one), points(other));
    assert_eq!(one.len(), other.len());
    let apart = one.iter().zip(&other).map(|(a, b)| a.distance(*b));
    apart.fold(0.0, f64::max)
}

#[test]
fn nothing_changes_nothing_and_there_and_back_is_where_it_was() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    for block in Block::ALL {
        let pattern = drafted(&body, block, SleeveLength::Long).unwrap();
        for case in cases().iter().filter(|c| (c.blocks)(block)) {
            let still = alter(&pattern, &[(case.make)(0.0)]).unwrap().pattern;
            assert!(furthest(&pattern, &still) < 1e-6);
            let amount = case.amounts[2];
            let chain = [(case.make)(amount), (case.make)(-amount)];
            let back = alter(&pattern, &chain).unwrap().pattern;
            let off = furthest(&pattern, &back);
            assert!(off < 0.1, "{}, {:?}: {off}", block.name(), chain[0]);
            // A little moves little.
            let little = alter(&pattern, &[(case.make)(0.01)]).unwrap().pattern;
            let off = furthest(&pattern, &little);
            assert!(off < 0.1, "{}, {:?}: {off}", block.name(), chain[0]);
        }
    }
}

#[test]
fn a_chain_of_all_holds() {
    for block in Block::ALL {
        let mut made = 0;
        for body in &bodies(4) {
            let Some(pattern) = drafted(body, block, SleeveLength::Long) else {
                continue;
            };
            let chain: Vec<_> = cases()
                .iter()
                .filter(|c| (c.blocks)(block))
                .map(|c| (c.make)(c.amounts[2]))
                .collect();
            match alter(&pattern, &chain) {
                Ok(_) => made += 1,
                Err(refused) => eprintln!("{}: {refused}", block.name()),
            }
        }
        assert!(made >= 3, "{}: {made} of 4", block.name());
    }
}
