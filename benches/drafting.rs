//! How long a draft, every alteration and all laws take, each beside its floor: the bare arc
//! lengths of the same edges by kurbo, without which no seam can be compared with another.
//!
//! `cargo bench --manifest-path benches/Cargo.toml --bench drafting`; a part of it by name: the same
//! with `-- laws`.

mod three_alterations;
mod wearers;

use std::hint::black_box;

use blockwright::alterations::{CATALOGUE, alter};
use blockwright::draft::{Block, DraftOptions, draft};
use blockwright::geometry::tolerance::ARC_LENGTH;
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::Pattern;
use criterion::{Criterion, criterion_group, criterion_main};
use kurbo::ParamCurveArclen;
use three_alterations::three;
use wearers::{body, dress};

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

fn whole(c: &mut Criterion) {
    let (body, options, chain) = (body(920.0), dress(), three());
    let drafted = draft(&body, &options).expect("the dress is drafted");
    let altered = alter(&drafted, &chain).expect("and altered").pattern;
    let mut group = c.benchmark_group("dress with sleeve");
    group.bench_function("floor: arc lengths of its edges", |b| {
        b.iter(|| arc_lengths(black_box(&altered)));
    });
    group.bench_function("draft", |b| b.iter(|| draft(black_box(&body), &options)));
    group.bench_function("all laws", |b| {
        b.iter(|| {
            // Lengths are kept once they are known: a pattern just made has none.
            let fresh = black_box(&drafted).clone();
            check_all(&fresh, &Tolerances::drafted())
        });
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

/// Each alteration with its laws and promises, on a dress with sleeve or, where it does not suit
/// one, on a bodice and a skirt.
fn alterations(c: &mut Criterion) {
    let body = body(920.0);
    let mut bodice = DraftOptions::of(Block::BodiceAndSkirt);
    bodice.sleeve = dress().sleeve;
    let patterns = [dress(), bodice].map(|o| draft(&body, &o).expect("the block is drafted"));
    let mut group = c.benchmark_group("alteration");
    for entry in CATALOGUE {
        let chain = [(entry.example)()];
        let Some(pattern) = patterns.iter().find(|p| alter(p, &chain).is_ok()) else {
            continue;
        };
        let title = format!("{} on a {}", entry.name, pattern.block());
        group.bench_function(title, |b| b.iter(|| alter(black_box(pattern), &chain)));
    }
    group.finish();
}

criterion_group!(benches, whole, alterations);
criterion_main!(benches);
