//! Darts made into a seam that divides the piece.

use super::people::{block, body, usual};
use super::pictures::show;
use blockwright::alterations::{
    Alteration, Chain, DartMerging, DartRelocation, DartToSeam, Reason, Refused, alter, find,
};
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
        // The tip of a bust dart is brought back to the bust point, which truing its edge costs.
        assert!(off.abs() < 0.1, "{}: {off}", girth.name);
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

#[test]
fn what_makes_no_seam_is_refused_by_name() {
    let bodice = usual(Block::Bodice);
    let message = |step: DartToSeam| seamed(&bodice, None, step).unwrap_err().to_string();
    assert!(message(DartToSeam::of("bust", "bust")).contains("say either"));
    assert!(message(DartToSeam::of("bust", "shoulder")).contains("a piece with the darts"));
    assert!(message(DartToSeam::through("waist", "hem", 0.5)).contains("several pieces"));
    let front = |step: DartToSeam| message(step.on("front"));
    assert!(front(DartToSeam::through("waist", "waist", 0.2)).contains("both ends"));
    assert!(front(DartToSeam::through("bust", "centre_front", 0.5)).contains("on the fold"));
    assert!(front(DartToSeam::through("bust", "neckline", 0.01)).contains("from the corner"));
    assert!(front(DartToSeam::through("bust", "yoke", 0.5)).contains("an edge yoke"));
    assert!(front(DartToSeam::through("bust", "neckline", f64::NAN)).contains("from 0 to 1"));
}

/// The usual alterations, by their catalogue's amounts.
const USUAL: [&str; 8] = [
    "back_length_reduction",
    "length",
    "waist_girth",
    "hip_girth",
    "bust",
    "back_width",
    "shoulder_width",
    "shoulder_slope",
];

#[test]
fn what_comes_after_the_seam_is_made_on_the_whole_piece() {
    for of in [Block::Bodice, Block::Dress] {
        let before = usual(of);
        let finishes: [&dyn Fn() -> Box<dyn Alteration>; 2] = [
            &|| Box::new(DartToSeam::of("shoulder", "waist").on("back")),
            &|| Box::new(DartMerging::of("waist", "bust").on("front")),
        ];
        // A dress has no waist dart that a bust dart is merged into.
        let finishes = finishes
            .iter()
            .take(if of == Block::Bodice { 2 } else { 1 });
        for finish in finishes {
            let entries = USUAL.map(|name| find(name).unwrap());
            for entry in entries.iter().filter(|e| e.blocks.contains(&of.name())) {
                let steps = [finish(), (entry.example)()];
                let after = alter(&before, &steps).unwrap_or_else(|e| panic!("{of:?}: {e}"));
                let steps = [(entry.example)(), finish()];
                let sooner = alter(&before, &steps).unwrap();
                let name = entry.name;
                assert_eq!(
                    after.pattern.pieces(),
                    sooner.pattern.pieces(),
                    "{of:?} {name}"
                );
                assert_eq!(after.accounts[1].alteration, name);
                assert!(!after.accounts[1].changes.is_empty(), "{of:?} {name}");
                let broken = check_all(&after.pattern, &Tolerances::altered());
                assert!(broken.is_empty(), "{of:?} {name}: {broken:?}");
            }
        }
    }
}

#[test]
fn panels_alone_refuse_with_the_cure() {
    let before = usual(Block::Dress);
    let seam = DartToSeam::of("shoulder", "waist").on("back");
    let panels = seamed(&before, None, seam).unwrap().pattern;
    let step: [Box<dyn Alteration>; 1] = [(find("back_width").unwrap().example)()];
    let refused = alter(&panels, &step).unwrap_err().to_string();
    assert!(
        refused.contains("the back is divided into panels"),
        "{refused}"
    );
    assert!(refused.contains("make it before dart_to_seam"), "{refused}");
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 30, failure_persistence: None,
        rng_seed: proptest::test_runner::RngSeed::Fixed(0x5ea), ..ProptestConfig::default()
    })]

    /// Any body's panels keep every law and girth, or are refused by the alteration in words.
    #[test]
    fn any_body_is_divided_or_refused(
        bust in 800.0..1200.0_f64, drop in 80.0..240.0_f64, hips in 0.0..120.0_f64,
        height in 1550.0..1800.0_f64, which in 0..13_usize,
    ) {
        let (of, piece, first, seam) = cases().swap_remove(which);
        let Some(before) = block(of, &body(bust, bust - drop, bust + hips, height)) else {
            return Ok(());
        };
        match seamed(&before, first, seam.clone().on(piece)) {
            Ok(done) => assert_divided(&before, &done.pattern, piece),
            Err(refused) => prop_assert!(
                matches!(refused.reason, Reason::Alteration(_)),
                "{of:?} {piece} {seam:?}: {refused}"
            ),
        }
    }
}
