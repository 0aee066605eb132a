//! The places of a finer mesh from those of a coarser one.

#![expect(
    clippy::indexing_slicing,
    reason = "both garments are made of the same panels; triangles name their points"
)]

use super::garment::Garment;
use super::panel::Panel;
use super::space::{Space, add_to, scaled};
use crate::geometry::Point;

/// The sheet's places from those of a coarser garment of the same pattern.
pub(super) fn refined(fine: &Garment, coarse: &Garment, at: &[Space]) -> Vec<Space> {
    let mut sums = vec![([0.0; 3], 0.0); fine.sheet.holds.len()];
    for (index, (panel, joined)) in fine.panels.iter().zip(&fine.joined).enumerate() {
        let (Some(from), Some(from_joined)) = (coarse.panels.get(index), coarse.joined.get(index))
        else {
            continue;
        };
        for (point, &to) in panel.points.iter().zip(joined) {
            let Some((corners, shares)) = holding(from, *point) else {
                continue;
            };
            let mut place = [0.0; 3];
            for (corner, share) in corners.iter().zip(shares) {
                add_to(&mut place, share, at[from_joined[*corner]]);
            }
            add_to(&mut sums[to].0, 1.0, place);
            sums[to].1 += 1.0;
        }
    }
    sums.into_iter()
        .map(|(sum, count)| {
            if count > 0.0 {
                scaled(sum, 1.0 / count)
            } else {
                sum
            }
        })
        .collect()
}

/// The triangle that holds a point, or is nearest to it, and the shares of its corners.
pub(super) fn holding(panel: &Panel, p: Point) -> Option<([usize; 3], [f64; 3])> {
    let mut best: Option<(f64, [usize; 3], [f64; 3])> = None;
    for t in &panel.triangles {
        let [a, b, c] = t.map(|i| panel.points[i]);
        let whole = (b - a).cross(c - a);
        let shares = [
            (b - p).cross(c - p) / whole,
            (c - p).cross(a - p) / whole,
            (a - p).cross(b - p) / whole,
        ];
        let least = shares[0].min(shares[1]).min(shares[2]);
        if best.as_ref().is_none_or(|(most, _, _)| least > *most) {
            best = Some((least, *t, shares));
        }
        if least >= 0.0 {
            break;
        }
    }
    best.map(|(_, t, shares)| (t, shares))
}
