//! Wider between waist and hip alone.

use super::{body, drafted};
use crate::support::measures::reading;
use blockwright::alterations::{Alteration, HighHip, Request, alter};
use blockwright::draft::{Block, SleeveLength};
use blockwright::geometry::Vec2;
use blockwright::piece::{EdgeName, Measure, Pattern};

fn wider(amount: f64) -> Box<dyn Alteration> {
    Box::new(HighHip { amount })
}

const BLOCKS: [Block; 5] = [
    Block::Skirt,
    Block::BodiceAndSkirt,
    Block::Dress,
    Block::Tunic,
    Block::Shirt,
];

#[test]
fn the_side_goes_out_between_waist_and_hip_alone() {
    for (height, bust, waist, hip) in [
        (1560.0, 840.0, 660.0, 920.0),
        (1680.0, 940.0, 780.0, 1020.0),
        (1700.0, 1120.0, 1000.0, 1150.0),
    ] {
        for block in BLOCKS {
            let old = drafted(&body(height, bust, waist, hip), block, SleeveLength::Long).unwrap();
            for amount in [16.0, -12.0] {
                let new = alter(&old, &[wider(amount)]).unwrap().pattern;
                for piece in new.pieces().iter().filter(|p| p.line("hip").is_some()) {
                    let what = format!("{} {} by {amount}", block.name(), piece.name());
                    let was = old.piece(piece.name()).unwrap();
                    let side = |p: &blockwright::piece::Piece| {
                        p.outline()
                            .edge(&EdgeName::SIDE_SEAM)
                            .unwrap()
                            .curve()
                            .clone()
                    };
                    let line = piece.line("high_hip").unwrap().curve.clone();
                    let level = line.end().y;
                    let (off, at) = side(piece).nearest(line.end());
                    assert!(off < 0.05, "{what}: {off}");
                    // Out by a quarter, level, from where the seam was.
                    let from = line.end() - Vec2::new(amount / 4.0, 0.0);
                    assert!(side(was).nearest(from).0 < 0.3, "{what}");
                    // The seam runs on there without a corner.
                    let [before, after] =
                        [-0.5, 0.5].map(|by| side(piece).point_at(at + by).unwrap().1);
                    let corner = before.cross(after).atan2(before.dot(after));
                    assert!(corner.abs() < 0.03, "{what}: {corner}");
                    // 80 to 100 mm below the waist, on these bodies.
                    let hip = piece.line("hip").unwrap().curve.end();
                    assert!(level < hip.y - 60.0, "{what}");
                    assert!(
                        (hip - was.line("hip").unwrap().curve.end()).hypot() < 1e-9,
                        "{what}"
                    );
                }
                let stays = ["waist finished", "hip finished"];
                for measure in stays {
                    let by = reading(&new, measure).unwrap() - reading(&old, measure).unwrap();
                    assert!(by.abs() < 0.01, "{measure}: {by}");
                }
                assert!(
                    new.pieces()
                        .iter()
                        .all(|p| p.darts() == old.piece(p.name()).unwrap().darts())
                );
            }
        }
    }
}

#[test]
fn there_and_back_and_to_a_width() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    for block in BLOCKS {
        let old = drafted(&body, block, SleeveLength::Long).unwrap();
        let chain = alter(&old, &[wider(12.0), wider(-12.0)]).unwrap();
        for piece in old.pieces() {
            let again = chain.pattern.piece(piece.name()).unwrap();
            for edge in piece.outline().edges() {
                let line = again.outline().edge(edge.name()).unwrap().curve();
                for step in 0..=8 {
                    let at = edge.curve().length() * f64::from(step) / 8.0;
                    let off = line.nearest(edge.curve().point_at(at).unwrap().0).0;
                    assert!(off < 0.01, "{} {}: {off}", piece.name(), edge.name());
                }
            }
        }
        let high = Measure::line_girth("high_hip");
        let was = chain.pattern.measured(&high).unwrap();
        let read = |p: &Pattern| p.measured(&high).unwrap();
        // A target, on a pattern that has no such line yet.
        let to = Request::new("high_hip", serde_json::json!({"to": was + 10.0})).unwrap();
        let done = alter(&old, &[to.alteration().unwrap()]).unwrap();
        assert!(
            (read(&done.pattern) - was - 10.0).abs() < 0.02,
            "{}",
            block.name()
        );
        assert!((done.accounts[0].amount.unwrap() - 10.0).abs() < 0.02);
    }
}

#[test]
fn too_much_and_no_hips_are_refused() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    let skirt = drafted(&body, Block::Skirt, SleeveLength::Long).unwrap();
    for amount in [33.0, -33.0, 1e6, f64::NAN, f64::NEG_INFINITY] {
        assert!(alter(&skirt, &[wider(amount)]).is_err(), "{amount}");
    }
    let bodice = drafted(&body, Block::Bodice, SleeveLength::Long).unwrap();
    let refused = alter(&bodice, &[wider(8.0)]).unwrap_err();
    assert!(refused.to_string().contains("hip line"), "{refused}");
}
