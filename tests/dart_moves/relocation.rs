use crate::people::{block, body, usual};
use crate::pictures::show;
use blockwright::alterations::{Alteration, Chain, DartRelocation, Refused, alter};
use blockwright::draft::Block;
use blockwright::geometry::Curve;
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{Pattern, Piece};

fn moved(pattern: &Pattern, steps: &[DartRelocation]) -> Result<Chain, Box<Refused>> {
    let chain: Vec<Box<dyn Alteration>> = steps
        .iter()
        .map(|s| Box::new(s.clone()) as Box<dyn Alteration>)
        .collect();
    alter(pattern, &chain)
}

/// How far two outlines lie apart, sampled.
fn apart(one: &Piece, other: &Piece) -> f64 {
    let ring = Curve::new(other.outline().segments()).unwrap();
    let mut most: f64 = 0.0;
    for edge in one.outline().edges() {
        let length = edge.curve().length();
        for k in 0..=40 {
            let (p, _) = edge
                .curve()
                .point_at(length * f64::from(k) / 40.0)
                .unwrap();
            most = most.max(ring.nearest(p).0);
        }
    }
    most
}

#[test]
fn every_dart_goes_everywhere_it_can() {
    let cases = [
        (Block::Bodice, "front", "bust"),
        (Block::Bodice, "front", "waist"),
        (Block::Bodice, "back", "shoulder"),
        (Block::Bodice, "back", "waist"),
        (Block::Dress, "front", "bust"),
        (Block::Dress, "back", "shoulder"),
        (Block::Skirt, "back", "waist"),
        (Block::Tunic, "front", "bust"),
        (Block::BodiceAndSkirt, "bodice front", "bust"),
    ];
    for (of, piece, dart) in cases {
        let pattern = usual(of);
        for p in pattern.pieces() {
            println!(
                "{of:?} {} darts {:?}",
                p.name(),
                p.darts().iter().map(|d| (&d.name, d.angle().to_degrees())).collect::<Vec<_>>()
            );
        }
        let Some(on) = pattern.piece(piece) else { continue };
        for edge in on.outline().edges() {
            for at in [0.1, 0.3, 0.5, 0.7, 0.9] {
                let step = DartRelocation::to(dart, edge.name().as_str(), at).on(piece);
                match moved(&pattern, &[step]) {
                    Ok(done) => {
                        println!("{of:?} {piece} {dart} to {} at {at}: ok", edge.name());
                        let _ = check_all(&done.pattern, &Tolerances::altered());
                        show(&format!("{}-{piece}-{dart}-{}-{at}", of.name(), edge.name()), &done.pattern);
                    }
                    Err(e) => println!("{of:?} {piece} {dart} to {} at {at}: {e}", edge.name()),
                }
            }
        }
    }
    let _ = (block, body, apart);
}
