//! Every kind of garment on every kind of cloth.

use super::check::{lay, lay_from};
use crate::support::bodies::body;
use blockwright::allowance::{Allowances, CutLines};
use blockwright::alterations::{OneSided, ShoulderSlope, alter};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::lay::{Cloth, LayError, Search, parts};
use blockwright::piece::{BodySide, Pattern};

pub(crate) fn drafted(block: Block, sleeve: Option<SleeveLength>) -> Pattern {
    let body = body(1680.0, 920.0, 760.0, 1000.0);
    let mut options = DraftOptions::of(block);
    options.sleeve = sleeve;
    draft(&body, &options).unwrap()
}

fn cloths() -> Vec<Cloth> {
    let mut cloths = Vec::new();
    for width in [900.0, 1400.0, 1500.0] {
        let cloth = Cloth::new(width).unwrap();
        cloths.extend([cloth, cloth.folded(), cloth.one_way()]);
        cloths.extend([cloth.folded().one_way(), cloth.with_gap(0.0).unwrap()]);
    }
    cloths
}

#[test]
fn every_block_lies_on_every_cloth_that_holds_it() {
    let mut laid = 0;
    let mut refused = 0;
    for (at, (block, sleeve)) in [
        (Block::Bodice, None),
        (Block::Skirt, None),
        (Block::BodiceAndSkirt, Some(SleeveLength::Short)),
        (Block::Dress, None),
        (Block::Tunic, Some(SleeveLength::Long)),
        (Block::Shirt, Some(SleeveLength::Long)),
    ]
    .into_iter()
    .enumerate()
    {
        let pattern = drafted(block, sleeve);
        let cut = CutLines::new(&pattern, &Allowances::usual()).unwrap();
        for (k, cloth) in cloths().into_iter().enumerate() {
            // Every cloth with and without allowances, in turns from block to block.
            let cut = ((k + at) % 2 == 0).then_some(&cut);
            let parts = parts(&pattern, cut, &cloth).unwrap();
            match Search::new(&cloth, parts, 1) {
                Ok(_) => {
                    lay(&pattern, cut, &cloth, 30);
                    laid += 1;
                }
                Err(LayError::TooNarrow { needs, gives, .. }) => {
                    assert!(needs > gives);
                    refused += 1;
                }
                Err(other) => panic!("{other}"),
            }
        }
    }
    assert!(laid >= 75, "{laid} laid, {refused} refused");
}

#[test]
fn pieces_of_one_body_side_come_from_one_layer() {
    let pattern = drafted(Block::Dress, Some(SleeveLength::Short));
    let slope = OneSided::new(BodySide::Left, Box::new(ShoulderSlope::by(3.0)));
    let pattern = alter(&pattern, &[Box::new(slope)]).unwrap().pattern;
    let cut = CutLines::new(&pattern, &Allowances::usual()).unwrap();
    let open = lay(&pattern, Some(&cut), &Cloth::new(1400.0).unwrap(), 300);
    assert_eq!(open.stretches.len(), 1);
    let folded = Cloth::new(1400.0).unwrap().folded();
    let folded = lay(&pattern, Some(&cut), &folded, 300);
    let pairs = pattern.pieces().iter().filter(|p| p.cut().name() == "pair");
    let expected = if pairs.count() > 0 { 2 } else { 1 };
    assert_eq!(folded.stretches.len(), expected);
    assert!(!folded.stretches.last().unwrap().folded);
}

#[test]
fn cloth_that_is_wider_or_lies_both_ways_needs_no_more_length() {
    let pattern = drafted(Block::Tunic, Some(SleeveLength::Long));
    // Of five seeds four come to 1809.0 mm either way; the fifth search of both ways rests 2 mm above.
    let at = |cloth: Cloth| lay_from(7, &pattern, None, &cloth, 1500).length();
    let cloth = |width| Cloth::new(width).unwrap();
    let narrow = at(cloth(900.0));
    assert!(at(cloth(1400.0)) < 0.75 * narrow);
    assert!(at(cloth(900.0).one_way()) >= narrow - 0.1);
}
