//! The cut line has room, on every block, for many bodies and widths.

use super::garments::many;
use blockwright::allowance::{Allowances, cut_line};
use blockwright::geometry::signed_area;
use geo::{LineString, Polygon, Validation};

fn widths() -> Vec<Allowances> {
    let plain = |w| Allowances::all_round(w).unwrap();
    vec![
        Allowances::usual(),
        plain(0.0),
        plain(6.0),
        plain(15.0),
        plain(15.0).with("hem", 0.0).unwrap(),
        plain(15.0)
            .with("side_seam", 0.0)
            .unwrap()
            .with("armscye", 0.0)
            .unwrap(),
        plain(15.0).with("hem", 100.0).unwrap(),
        plain(25.0),
        plain(40.0),
        plain(15.0)
            .with("neckline", 6.0)
            .unwrap()
            .with("hem", 50.0)
            .unwrap(),
    ]
}

#[test]
fn every_block_has_a_cut_line() {
    let mut faults = Vec::new();
    let count = many(12, |who, pattern| {
        for widths in widths() {
            for piece in pattern.pieces() {
                match cut_line(piece, &widths) {
                    Ok(line) => {
                        let area = signed_area(line.segments());
                        let closed = line.start().distance(line.end()) < 1e-9;
                        // Whether it crosses itself says a library of another make.
                        let mut chain = line.to_polyline(0.01).unwrap();
                        // Two points of one joint that differ by rounding are no line.
                        chain.dedup_by(|a, b| a.distance(*b) < 1e-9);
                        let ring: LineString = chain.iter().map(|p| (p.x, p.y)).collect();
                        let simple = Polygon::new(ring, Vec::new()).is_valid();
                        if !closed || !simple || area < piece.outline().area() - 1e-6 {
                            faults.push(format!("{who} {}: not sound", piece.name()));
                        }
                    }
                    Err(e) => faults.push(format!("{who}, {}: {e}", widths.words())),
                }
            }
        }
    });
    assert!(count > 40, "{count}");
    println!("{count} patterns");
    let n = faults.len();
    assert!(
        faults.is_empty(),
        "{n}:\n{}",
        faults[..n.min(30)].join("\n")
    );
}

#[test]
fn the_widest_allowances_are_made_or_refused_by_name() {
    let (mut made, mut refused) = (0, Vec::new());
    many(6, |who, pattern| {
        for width in [60.0, 80.0, 100.0] {
            let widths = Allowances::all_round(width).unwrap();
            for piece in pattern.pieces() {
                match cut_line(piece, &widths) {
                    Ok(_) => made += 1,
                    Err(e) => refused.push(format!("{who}: {e}")),
                }
            }
        }
    });
    println!("{made} made, {} refused", refused.len());
    for message in &refused {
        assert!(message.contains("narrower"), "{message}");
    }
    assert!(made > refused.len(), "{}", refused.join("\n"));
}
