//! Lengths, sides and darts of the blocks in one piece.

use super::{builds, must_be_lawful};
use blockwright::draft::{Block, DraftOptions, Side, draft};
use blockwright::measurements::Measurement;
use blockwright::piece::EdgeName;

#[test]
fn any_length_from_high_hip_to_below_the_knee() {
    for (index, body) in builds().iter().enumerate() {
        let knee = body.value(Measurement::WaistToKnee);
        for block in [Block::Dress, Block::Tunic, Block::Shirt] {
            for length in [90.0, 130.0, 180.0, 215.0, 240.0, 400.0, knee, knee + 300.0] {
                let mut options = DraftOptions::of(block);
                options.length = Some(length);
                let what = format!("body {index}, {}, {length}", block.name());
                let pattern = draft(body, &options).unwrap();
                must_be_lawful(&pattern, &what);
                let back = pattern.piece("back").unwrap();
                let waist = back.line("waist").unwrap().curve.start().y;
                let hem = back.outline().edge(&EdgeName::HEM).unwrap().curve().end().y;
                assert!((hem - waist - length).abs() < 1e-6, "{what}");
            }
        }
    }
}

#[test]
fn darts_and_side_are_as_chosen() {
    for (index, body) in builds().iter().enumerate() {
        for block in [Block::Dress, Block::Tunic, Block::Shirt] {
            for side in [Side::Shaped, Side::Straight] {
                for darts in [false, true] {
                    let mut options = DraftOptions::of(block);
                    (options.side, options.waist_darts) = (Some(side), Some(darts));
                    let what = format!("body {index}, {}, {side:?}, darts {darts}", block.name());
                    let pattern = draft(body, &options).unwrap();
                    must_be_lawful(&pattern, &what);
                    let back = pattern.piece("back").unwrap();
                    if !darts {
                        assert!(back.dart("waist").is_none(), "{what}");
                    }
                    // A tunic and a shirt ease the back shoulder, a dress darts it.
                    let shoulder = pattern
                        .seams()
                        .iter()
                        .find(|s| s.name == "shoulder")
                        .unwrap();
                    assert_eq!(shoulder.ease > 0.0, block != Block::Dress, "{what}");
                    assert_eq!(
                        back.dart("shoulder").is_some(),
                        block == Block::Dress,
                        "{what}"
                    );
                }
            }
        }
    }
}

#[test]
fn tunic_is_easier_than_dress() {
    for body in builds() {
        let finished = |block: Block, name: &str| {
            let pattern = draft(&body, &DraftOptions::of(block)).unwrap();
            let girth = pattern
                .girths()
                .iter()
                .find(|g| g.name == name)
                .cloned()
                .unwrap();
            pattern.finished(&girth)
        };
        for girth in ["bust", "waist", "hip", "back_width"] {
            assert!(
                finished(Block::Tunic, girth) > finished(Block::Dress, girth),
                "{girth}"
            );
        }
    }
}
