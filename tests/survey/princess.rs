//! Princess seams over surveyed women (a sample, or everybody): the bust dart brought to shoulder or
//! armscye and made into a seam with the waist dart, front and back.

use super::tally::{Garment, Outcome, attempt};
use crate::support::survey::{body_of, sample, tell, whole};
use blockwright::alterations::{Alteration, DartRelocation, DartToSeam, alter};
use blockwright::draft::{Block, Fit};
use blockwright::geometry::{Curve, Point, Vec2};
use blockwright::piece::{EdgeName, EdgeRef, Pattern, Piece};

/// The seam on a piece, from its upper end down.
fn seam(piece: &Piece) -> Curve {
    let edge = piece.outline().edge(&EdgeName::new("panel_seam"));
    let curve = edge.expect("a panel seam").curve().clone();
    if curve.start().y <= curve.end().y {
        curve
    } else {
        curve.reversed()
    }
}

/// How far a seam turns to the one side and to the other from 80 mm before a point to so far behind
/// it, in degrees: an even curve turns to one side only.
fn turns(curve: &Curve, near: Point, behind: f64) -> (f64, f64) {
    let over = curve.nearest(near).1;
    let (from, to) = (
        (over - 80.0).max(1.0),
        (over + behind).min(curve.length() - 1.0),
    );
    let count = 64;
    let headings: Vec<Vec2> = (0..=count)
        .filter_map(|i| {
            curve
                .point_at(from + (to - from) * f64::from(i) / f64::from(count))
                .ok()
        })
        .map(|(_, way)| way)
        .collect();
    let (mut left, mut right) = (0.0, 0.0);
    for pair in headings.windows(2) {
        let turn = pair[0].cross(pair[1]).to_degrees();
        if turn > 0.0 {
            right += turn
        } else {
            left -= turn
        }
    }
    (left, right)
}

struct Made {
    beside: f64,
    counter: [f64; 2],
    turn: [f64; 2],
    differ: f64,
}

fn measured(old: &Pattern, new: &Pattern, piece: &str) -> Made {
    let pieces =
        ["centre", "side"].map(|part| new.piece(&format!("{piece} {part}")).expect("a panel"));
    let seams = pieces.map(seam);
    let front = old.piece(piece).expect("the piece before");
    let full = front.bust_point();
    let beside = full.map_or(f64::NAN, |p| {
        seams.iter().map(|s| s.nearest(p).0).fold(0.0, f64::max)
    });
    let near = full.unwrap_or_else(|| seams[0].point_at(seams[0].length() / 2.0).expect("on it").0);
    // From there on a dress turns into its waist, on the front of a low bust.
    let dress = full.is_some() && front.dart("waist").is_some_and(|d| d.edge.is_none());
    let behind = if dress { 25.0 } else { 80.0 };
    let turned = [0, 1].map(|i| turns(&seams[i], near, behind));
    let edge = EdgeName::new("panel_seam");
    let lengths = pieces.map(|p| {
        new.seam_length(&EdgeRef::new(p.name(), edge.clone()))
            .expect("its length")
    });
    Made {
        beside,
        counter: turned.map(|(a, b)| a.min(b)),
        turn: turned.map(|(a, b)| a.max(b)),
        differ: (lengths[0] - lengths[1]).abs(),
    }
}

/// A style line takes up the fullness when it runs through the bust point or close by (a dart
/// hand-out; 8 mm are asked here), the side panel has one even curve over the bust and the centre
/// panel no counter-curve (common practice); both edges are equally long (K. Fasanella: no ease).
#[test]
fn run_over_the_bust() {
    // Every fourth woman for whole sweeps.
    let table = sample(24, 41);
    let step = if whole() { 4 } else { 1 };
    let blocks = [Block::Bodice, Block::Dress];
    let mut failed = Vec::new();
    for block in blocks {
        const ARMSCYE: &[(&str, f64)] = &[
            ("armscye", 0.2),
            ("armscye", 0.35),
            ("armscye", 0.5),
            ("armscye", 0.65),
            ("armscye", 0.8),
        ];
        for (piece, dart, places) in [
            ("back", "waist", ARMSCYE),
            ("front", "waist", ARMSCYE),
            (
                "front",
                "bust",
                &[
                    ("shoulder", 0.5),
                    ("armscye", 0.2),
                    ("armscye", 0.35),
                    ("armscye", 0.5),
                    ("armscye", 0.65),
                    ("armscye", 0.8),
                ][..],
            ),
            (
                "back",
                "shoulder",
                &[
                    ("shoulder", 0.5),
                    ("armscye", 0.2),
                    ("armscye", 0.35),
                    ("armscye", 0.5),
                    ("armscye", 0.65),
                    ("armscye", 0.8),
                ][..],
            ),
        ] {
            for (edge, at) in places {
                let (mut made, mut suited) = (Vec::new(), 0);
                let mut refused: std::collections::BTreeMap<String, (usize, String)> =
                    Default::default();
                for row in table.rows.iter().step_by(step) {
                    let Outcome::Drafted(old, _) =
                        attempt(Garment::plain(block), &body_of(row), Fit::Regular)
                    else {
                        continue;
                    };
                    let on = old.piece(piece).expect("the piece");
                    if on.dart(dart).is_none() || on.dart("waist").is_none() {
                        continue;
                    }
                    suited += 1;
                    let mut steps: Vec<Box<dyn Alteration>> = Vec::new();
                    if (piece, *edge) == ("front", "shoulder") {
                        steps.push(Box::new(DartRelocation::to(dart, *edge, *at).on(piece)));
                    }
                    steps.push(match (dart, *edge) {
                        ("waist", _) => {
                            Box::new(DartToSeam::through("waist", *edge, *at).on(piece))
                        }
                        (_, "armscye") => {
                            Box::new(DartToSeam::of(dart, "waist").by(*edge, *at).on(piece))
                        }
                        _ => Box::new(DartToSeam::of(dart, "waist").on(piece)),
                    });
                    match alter(&old, &steps) {
                        Ok(done) => made.push(measured(&old, &done.pattern, piece)),
                        Err(e) => {
                            let why: String = e
                                .to_string()
                                .chars()
                                .filter(|c| !c.is_ascii_digit())
                                .take(90)
                                .collect();
                            let slot = refused
                                .entry(why)
                                .or_insert((0, format!("{}: {e}", row.text("id"))));
                            slot.0 += 1;
                        }
                    }
                }
                let most = |f: &dyn Fn(&Made) -> f64| made.iter().map(f).fold(0.0, f64::max);
                let name = format!("{} {piece} {dart} by {edge} {at}", block.name());
                tell(&format!(
                    "{name}: {} of {suited}; beside at most {:.1} mm, counter-curve centre {:.2} side {:.2} degrees, turns centre {:.0} side {:.0}, edges differ by {:.1e}",
                    made.len(),
                    most(&|m| m.beside),
                    most(&|m| m.counter[0]),
                    most(&|m| m.counter[1]),
                    most(&|m| m.turn[0]),
                    most(&|m| m.turn[1]),
                    most(&|m| m.differ)
                ));
                for (count, first) in refused.values() {
                    tell(&format!("    {count} x {first}"));
                }
                let front = piece == "front";
                // What the step itself refuses for a dress, and half a degree for rounding.
                let wave = if block == Block::Bodice { 0.5 } else { 4.5 };
                let least = match (piece, dart, *at) {
                    // On a very straight armscye not even part of the dart over the blade can be made so
                    // long; the refusal says so and names the way out. Two of 24 are that in the sample.
                    ("back", "shoulder", _) if *edge == "armscye" => match (whole(), *at < 0.4) {
                        (true, _) => 0.97,
                        (false, true) => 0.94,
                        (false, false) => 0.91,
                    },
                    // So high on the armscye of a few women no bow keeps the panel's end sewable.
                    ("front", "bust", ..0.3) => 0.91,
                    _ => 0.98,
                };
                // From the armscye of a back the side panel has one even curve, the centre panel no
                // counter-curve to speak of: a dress turns back into its waist.
                let calm = piece == "front"
                    || *edge != "armscye"
                    || block != Block::Bodice
                    || (most(&|m| m.counter[1]) <= 4.0 && most(&|m| m.counter[0]) <= 11.0);
                let sound = made.len() as f64 >= least * f64::from(suited)
                    && (!front || most(&|m| m.beside) <= 8.0)
                    && (!front || most(&|m| m.counter[0].max(m.counter[1])) <= wave)
                    && calm
                    && most(&|m| m.differ) <= 0.01;
                if !sound {
                    failed.push(name)
                }
            }
        }
    }
    assert!(failed.is_empty(), "{failed:?}");
}
