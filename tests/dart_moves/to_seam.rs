//! Darts made into a seam that divides the piece.

use crate::people::{block, body, usual};
use crate::pictures::show;
use blockwright::alterations::{Alteration, Chain, DartRelocation, DartToSeam, Refused, alter};
use blockwright::draft::Block;
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{Cut, EdgeName, Pattern};
use proptest::prelude::*;

fn seamed(
    pattern: &Pattern,
    move_first: Option<DartRelocation>,
    seam: DartToSeam,
) -> Result<Chain, Box<Refused>> {
    let mut steps: Vec<Box<dyn Alteration>> = Vec::new();
    if let Some(step) = move_first {
        steps.push(Box::new(step));
    }
    steps.push(Box::new(seam));
    alter(pattern, &steps)
}

fn assert_divided(before: &Pattern, after: &Pattern, piece: &str) {
    let broken = check_all(after, &Tolerances::altered());
    assert!(broken.is_empty(), "{piece}: {broken:?}");
    for girth in before.girths() {
        let off = after.finished(girth_of(after, &girth.name)) - before.finished(girth);
        assert!(off.abs() < 1e-4, "{}: {off}", girth.name);
    }
    let [centre, side] =
        ["centre", "side"].map(|part| after.piece(&format!("{piece} {part}")).unwrap());
    assert_eq!(centre.cut(), before.piece(piece).unwrap().cut());
    assert_ne!(side.cut(), Cut::Fold);
    let seam = EdgeName::new("panel_seam");
    let [a, b] = [centre, side].map(|p| p.seam_length(&seam).unwrap());
    assert!((a - b).abs() < 1e-4, "{a} {b}");
    let notched =
        |p: &blockwright::piece::Piece| p.notches().iter().filter(|n| n.edge == seam).count();
    assert!(notched(centre) > 0);
    assert_eq!(notched(centre), notched(side));
}

fn girth_of<'p>(pattern: &'p Pattern, name: &str) -> &'p blockwright::piece::Girth {
    pattern.girths().iter().find(|g| g.name == name).unwrap()
}

/// Block, piece, where the first dart goes before, and the seam.
fn cases() -> Vec<(Block, &'static str, Option<DartRelocation>, DartToSeam)> {
    let bust = |edge: &str, at| Some(DartRelocation::to("bust", edge, at));
    vec![
        (
            Block::Bodice,
            "front",
            bust("shoulder", 0.5),
            DartToSeam::of("bust", "waist"),
        ),
        (
            Block::Bodice,
            "front",
            bust("armscye", 0.6),
            DartToSeam::of("bust", "waist"),
        ),
        (
            Block::Bodice,
            "front",
            None,
            DartToSeam::of("bust", "waist"),
        ),
        (
            Block::Bodice,
            "back",
            None,
            DartToSeam::of("shoulder", "waist"),
        ),
        (
            Block::Bodice,
            "back",
            None,
            DartToSeam::through("waist", "armscye", 0.5),
        ),
        (
            Block::BodiceAndSkirt,
            "bodice front",
            bust("shoulder", 0.4),
            DartToSeam::of("waist", "bust"),
        ),
        (
            Block::Dress,
            "back",
            None,
            DartToSeam::of("shoulder", "waist"),
        ),
        (
            Block::Dress,
            "front",
            bust("shoulder", 0.5),
            DartToSeam::of("bust", "waist"),
        ),
        (
            Block::Dress,
            "front",
            bust("armscye", 0.6),
            DartToSeam::of("waist", "bust"),
        ),
        (
            Block::Dress,
            "back",
            None,
            DartToSeam::through("waist", "armscye", 0.5),
        ),
        (
            Block::Tunic,
            "front",
            bust("shoulder", 0.5),
            DartToSeam::through("bust", "hem", 0.5),
        ),
        (
            Block::Skirt,
            "back",
            None,
            DartToSeam::through("waist inner", "hem", 0.6),
        ),
        (
            Block::Skirt,
            "front",
            None,
            DartToSeam::through("waist", "hem", 0.5),
        ),
    ]
}

#[test]
fn the_usual_panels() {
    for (index, (of, piece, first, seam)) in cases().into_iter().enumerate() {
        let before = usual(of);
        let done = seamed(&before, first, seam.clone().on(piece))
            .unwrap_or_else(|e| panic!("{of:?} {piece} {seam:?}: {e}"));
        show(&format!("panel-{index}-{of:?}-{piece}"), &done.pattern);
        assert_divided(&before, &done.pattern, piece);
    }
}
