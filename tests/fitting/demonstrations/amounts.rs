//! What opens on paper is what was asked for.

use super::{demonstrated, long_sleeved};
use blockwright::alterations::{
    Abdomen, Alteration, ArmscyeDepth, BackLengthIncrease, BackLengthReduction, Bust, BustGirth,
    FrontLength, HipGirth, LengthAt, LengthChange, Seat,
};
use blockwright::demonstration::{Demonstration, OpeningKind};
use blockwright::draft::Block;

fn openings(shown: &Demonstration, kind: OpeningKind) -> Vec<f64> {
    let openings = shown.slashes.iter().flat_map(|slash| &slash.openings);
    openings
        .filter(|o| o.kind == kind)
        .map(|o| o.amount)
        .collect()
}

/// Common practice: a parallel spread opens by the amount, a wedge by the amount at its open end, a
/// girth by a quarter of it at each of its four side edges.
#[test]
fn the_cut_opens_by_the_amount() {
    let by = |at, amount| Box::new(LengthChange { at, amount }) as Box<dyn Alteration>;
    let (gap, lap) = (OpeningKind::Gap, OpeningKind::Overlap);
    let cases: Vec<(Box<dyn Alteration>, Block, OpeningKind, f64)> = vec![
        (
            Box::new(BackLengthReduction::by(15.0)),
            Block::Tunic,
            lap,
            15.0,
        ),
        (
            Box::new(BackLengthReduction::by(15.0)),
            Block::Bodice,
            lap,
            15.0,
        ),
        (
            Box::new(BackLengthIncrease::by(10.0)),
            Block::Dress,
            gap,
            10.0,
        ),
        (Box::new(FrontLength::by(9.0)), Block::Dress, gap, 9.0),
        (Box::new(FrontLength::by(-9.0)), Block::Dress, lap, 9.0),
        (by(LengthAt::Bodice, 15.0), Block::Dress, gap, 15.0),
        (by(LengthAt::Bodice, -12.0), Block::Bodice, lap, 12.0),
        (by(LengthAt::Hips, 15.0), Block::Dress, gap, 15.0),
        (by(LengthAt::Skirt, 40.0), Block::Skirt, gap, 40.0),
        (by(LengthAt::Sleeve, 15.0), Block::Dress, gap, 15.0),
        (by(LengthAt::Forearm, -15.0), Block::Dress, lap, 15.0),
        (Box::new(ArmscyeDepth::by(8.0)), Block::Dress, gap, 8.0),
        (Box::new(ArmscyeDepth::by(-8.0)), Block::Dress, lap, 8.0),
        (Box::new(HipGirth { amount: 24.0 }), Block::Skirt, gap, 6.0),
        (Box::new(HipGirth { amount: -16.0 }), Block::Dress, lap, 4.0),
        (Box::new(BustGirth::by(24.0)), Block::Tunic, gap, 6.0),
        (Box::new(Seat::by(12.0)), Block::Skirt, gap, 12.0),
        (Box::new(Abdomen { amount: 12.0 }), Block::Dress, gap, 12.0),
        (Box::new(Bust { amount: 10.0 }), Block::Bodice, gap, 10.0),
    ];
    for (step, block, kind, wanted) in cases {
        let said = format!("{step:?} on {block:?}");
        let (_, _, shown) = demonstrated(step, &long_sleeved(block), "ines").unwrap();
        let open = openings(&shown, kind);
        // Along a slanting seam, or square to a slanting cut, it is a little more or less.
        let near = open
            .iter()
            .any(|o| (o - wanted).abs() < 0.05 + 0.03 * wanted);
        assert!(near, "{said}: {open:?} where {wanted} was asked for");
    }
}
