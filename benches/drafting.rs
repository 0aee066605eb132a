//! How long a draft, every alteration and all laws take, each beside its floor: the bare arc
//! lengths of the same edges by kurbo, without which no seam can be compared with another.
//!
//! `cargo bench --bench drafting`; a part of it by name: `cargo bench --bench drafting -- laws`.

use std::hint::black_box;

use blockwright::alterations::{
    Alteration, BackLengthReduction, DartRelocation, ShoulderSlope, alter,
};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::measurements::{Body, Measurement};
use blockwright::piece::Pattern;
use criterion::{Criterion, criterion_group, criterion_main};
use kurbo::ParamCurveArclen;

/// What is asked of a length in a draft: a tenth of what seams may differ by.
const ARC_LENGTH: f64 = blockwright::geometry::tolerance::ARC_LENGTH;

fn body() -> Body {
    Body::from_taken([
        (Measurement::Height, 1680.0),
        (Measurement::BustGirth, 920.0),
        (Measurement::WaistGirth, 760.0),
        (Measurement::HipGirth, 1000.0),
    ])
    .expect("a plausible body")
}

fn dress() -> DraftOptions {
    let mut options = DraftOptions::of(Block::Dress);
    options.sleeve = Some(SleeveLength::Long);
    options
}

fn three() -> Vec<Box<dyn Alteration>> {
    let reduction = BackLengthReduction::by(20.0);
    vec![
        Box::new(reduction),
        Box::new(ShoulderSlope::by(3.0)),
        Box::new(DartRelocation::to("bust", "shoulder", 0.5)),
    ]
}

/// The length of every edge of a pattern, by kurbo alone.
fn arc_lengths(pattern: &Pattern) -> f64 {
    pattern
        .pieces()
        .iter()
        .flat_map(|piece| piece.outline().edges())
        .flat_map(|edge| edge.curve().segments())
        .map(|segment| segment.arclen(ARC_LENGTH))
        .sum()
}

fn drafting(c: &mut Criterion) {
    let (body, options, chain) = (body(), dress(), three());
    let drafted = draft(&body, &options).expect("the dress is drafted");
    let altered = alter(&drafted, &chain).expect("and altered").pattern;
    let mut group = c.benchmark_group("dress with sleeve");
    group.bench_function("floor: arc lengths of its edges", |b| {
        b.iter(|| arc_lengths(black_box(&altered)));
    });
    group.bench_function("draft", |b| b.iter(|| draft(black_box(&body), &options)));
    group.bench_function("all laws", |b| {
        b.iter(|| check_all(black_box(&altered), &Tolerances::altered()));
    });
    group.bench_function("draft, three alterations, all laws", |b| {
        b.iter(|| {
            let drafted = draft(black_box(&body), &options).expect("the dress is drafted");
            let laws = check_all(&drafted, &Tolerances::drafted());
            (alter(&drafted, &chain), laws)
        });
    });
    group.finish();
}

criterion_group!(benches, drafting);
criterion_main!(benches);
