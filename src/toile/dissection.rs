//! An order of elimination that keeps a sparse factor small: nested dissection by place.
//!
//! A sheet of cloth is cut in two by a narrow band of its points, each half again, and so on; the
//! bands are eliminated after what they divide (George, *Nested dissection of a regular finite
//! element mesh*, SIAM J. Numer. Anal. 10, 1973). Places decide, ties go by number: the same order
//! everywhere.

#![expect(
    clippy::indexing_slicing,
    clippy::needless_range_loop,
    reason = "corners, neighbours and blocks are numbered by the sheet itself"
)]

use super::space::Space;

/// Parts of so many points are not divided further.
const SMALL: usize = 20;

/// A set of points eliminated together, and the set that waits for it.
#[derive(Debug, Clone)]
pub(super) struct Band {
    pub own: Vec<usize>,
    pub parent: Option<usize>,
}

/// Bands in an order in which every one comes before its parent.
pub(super) fn dissect(neighbours: &[Vec<usize>], places: &[Space]) -> Vec<Band> {
    let mut bands = Vec::new();
    let mut side = vec![0u8; places.len()];
    let all: Vec<usize> = (0..places.len()).collect();
    divide(all, neighbours, places, &mut side, &mut bands);
    bands
}

/// Divides a part; the number of its last band, if it has any.
fn divide(
    part: Vec<usize>,
    neighbours: &[Vec<usize>],
    places: &[Space],
    side: &mut [u8],
    bands: &mut Vec<Band>,
) -> Option<usize> {
    if part.is_empty() {
        return None;
    }
    let halves = (part.len() > SMALL)
        .then(|| best_cut(&part, neighbours, places, side))
        .flatten();
    let Some((one, other, band)) = halves else {
        bands.push(Band {
            own: part,
            parent: None,
        });
        return Some(bands.len() - 1);
    };
    let children = [
        divide(one, neighbours, places, side, bands),
        divide(other, neighbours, places, side, bands),
    ];
    bands.push(Band {
        own: band,
        parent: None,
    });
    let at = bands.len() - 1;
    for child in children.into_iter().flatten() {
        bands[child].parent = Some(at);
    }
    Some(at)
}

type Halves = (Vec<usize>, Vec<usize>, Vec<usize>);

/// The cut across one of the three axes that takes the fewest points; none where no cut divides.
fn best_cut(
    part: &[usize],
    neighbours: &[Vec<usize>],
    places: &[Space],
    side: &mut [u8],
) -> Option<Halves> {
    let mut best: Option<(f64, Halves)> = None;
    for axis in 0..3 {
        let mut sorted = part.to_vec();
        sorted.sort_by(|&a, &b| places[a][axis].total_cmp(&places[b][axis]).then(a.cmp(&b)));
        let half = sorted.len().div_ceil(2);
        let (low, high) = sorted.split_at(half);
        for &i in low {
            side[i] = 1;
        }
        for &i in high {
            side[i] = 2;
        }
        let touches = |i: usize, other: u8| neighbours[i].iter().any(|&j| side[j] == other);
        let of = |from: &[usize], other: u8| -> (Vec<usize>, Vec<usize>) {
            from.iter().partition(|&&i| touches(i, other))
        };
        let (band_low, rest_low) = of(low, 2);
        let (band_high, rest_high) = of(high, 1);
        let halves = if band_low.len() <= band_high.len() {
            (rest_low, high.to_vec(), band_low)
        } else {
            (low.to_vec(), rest_high, band_high)
        };
        for &i in part {
            side[i] = 0;
        }
        if halves.0.is_empty() || halves.1.is_empty() {
            continue;
        }
        let uneven = halves.0.len().abs_diff(halves.1.len());
        let cost = halves.2.len() as f64 + 0.1 * uneven as f64;
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            best = Some((cost, halves));
        }
    }
    best.map(|(_, halves)| halves)
}
