//! Arc lengths, and where a length along an edge lies.

use super::flat::{edges, flattened, walked};

/// What a length may differ by: the reference is a chain of chords, which is shorter by less.
const BOUND: f64 = 1e-4;

#[test]
fn edges_are_as_long_as_the_reference_measures_them() {
    let mut worst: f64 = 0.0;
    for (name, edge) in edges() {
        let off = edge.length() - walked(&flattened(&edge));
        assert!(off.abs() <= BOUND, "{name}: {off} mm");
        worst = worst.max(off.abs());
    }
    println!("largest difference of a length {worst:.2e} mm");
}

#[test]
fn an_edge_is_cut_where_the_reference_comes_to() {
    for (name, edge) in edges() {
        let points = flattened(&edge);
        for share in [0.08, 0.31, 0.5, 0.77, 0.96] {
            let at = share * edge.length();
            let (head, tail) = edge.split_at(at).expect("inside the edge");
            // The reference walks its chords to the same length.
            let mut left = at;
            let mut found = points[0];
            for pair in points.windows(2) {
                let (dx, dy) = (pair[1].x - pair[0].x, pair[1].y - pair[0].y);
                let step = dx.hypot(dy);
                if step >= left {
                    found.x = pair[0].x + dx * left / step;
                    found.y = pair[0].y + dy * left / step;
                    break;
                }
                left -= step;
            }
            let off = (head.end().x - found.x).hypot(head.end().y - found.y);
            assert!(off <= 2.0 * BOUND, "{name} at {at}: {off} mm");
            for (part, wanted) in [(&head, at), (&tail, edge.length() - at)] {
                let off = walked(&flattened(part)) - wanted;
                assert!(off.abs() <= BOUND, "{name} cut at {at}: {off} mm");
            }
        }
    }
}
