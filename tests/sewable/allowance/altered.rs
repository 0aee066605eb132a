//! After every alteration of the catalogue there is a cut line, and folded darts lie within it.

use super::garments::{many, patterns};
use crate::support::survey::{body_of, sample, tell, whole};
use blockwright::allowance::{Allowances, CutLines, cut_line};
use blockwright::alterations::{Alteration, Bust, CATALOGUE, alter};
use blockwright::draft::{Block, Fit, SleeveLength};
use blockwright::geometry::{Rigid, perpendicular};
use blockwright::piece::{Piece, Pressed};

/// Alone, and as the second step of a fitting: what is drawn with a hair's breadth of noise in its
/// lines is cut all the same.
#[test]
fn every_alteration_leaves_room_for_allowances() {
    let widths = [
        Allowances::usual(),
        Allowances::all_round(20.0)
            .unwrap()
            .with("hem", 50.0)
            .unwrap(),
    ];
    let (mut made, mut faults) = (0, Vec::new());
    for row in &sample(if whole() { 24 } else { 2 }, 1128).rows {
        for (block, pattern) in patterns(&body_of(row), Fit::Regular, SleeveLength::Long) {
            for entry in CATALOGUE
                .iter()
                .filter(|e| e.blocks.contains(&block.name()))
            {
                let first: Option<Box<dyn Alteration>> = (block != Block::Skirt)
                    .then(|| Box::new(Bust { amount: 8.0 }) as Box<dyn Alteration>);
                for before in [None, first] {
                    let second = before.is_some();
                    let steps: Vec<_> = before.into_iter().chain([(entry.example)()]).collect();
                    let Ok(chain) = alter(&pattern, &steps) else {
                        continue; // refused by name: nothing to cut
                    };
                    made += 1;
                    for widths in &widths {
                        if let Err(e) = CutLines::new(&chain.pattern, widths) {
                            let who = row.text("id");
                            let after = if second { " after bust" } else { "" };
                            let what = format!("{} {}{after}", block.name(), entry.name);
                            faults.push(format!("{who} {what}: {e}"));
                        }
                    }
                }
            }
        }
    }
    tell(&format!(
        "{made} altered patterns, {} cut lines refused",
        faults.len()
    ));
    assert!(made > 120, "{made}");
    let n = faults.len();
    assert!(
        faults.is_empty(),
        "{n}:\n{}",
        faults[..n.min(60)].join("\n")
    );
}

/// How far the allowance of the folded half of a dart's mouth misses the cut line it lies on.
fn fold_miss(piece: &Piece, width: f64) -> Option<f64> {
    let cut = cut_line(piece, &Allowances::all_round(width).unwrap()).unwrap();
    let mut worst: Option<f64> = None;
    for dart in piece.darts() {
        let Some(edge) = dart.edge.as_ref().and_then(|e| piece.outline().edge(e)) else {
            continue;
        };
        let [from, to] = dart.legs.map(|leg| edge.curve().joint_at(leg).unwrap());
        // The quarter of the mouth that lies beside the leg it is pressed to.
        let (leg, at) = match dart.pressed {
            Pressed::TowardFirstLeg => (dart.legs[0], from + (to - from) / 4.0),
            Pressed::TowardSecondLeg => (dart.legs[1], to - (to - from) / 4.0),
        };
        let (p, along) = edge.curve().point_at(at).unwrap();
        let outside = p - perpendicular(along) * width;
        // Beside the leg's own corner the two run together earlier.
        if cut.nearest(outside).0 > 1e-3 {
            continue;
        }
        let folded = Rigid::mirror(dart.apex(), leg - dart.apex()).apply(outside);
        let miss = cut.nearest(folded).0;
        worst = Some(worst.map_or(miss, |w: f64| w.max(miss)));
    }
    worst
}

#[test]
fn a_folded_dart_lies_within_the_allowance() {
    let (mut darts, mut worst) = (0, 0.0_f64);
    many(10, |who, pattern| {
        for piece in pattern.pieces() {
            if let Some(miss) = fold_miss(piece, 10.0) {
                darts += 1;
                worst = worst.max(miss);
                assert!(miss < 0.1, "{who} {}: {miss}", piece.name());
            }
        }
    });
    println!("{darts} pieces, at most {worst:.4} mm off");
    assert!(darts > 50, "{darts}");
}
