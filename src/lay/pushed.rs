//! Parts that lie beside one another pushed toward the start of the cloth, as far as they go.

use super::clearances::Clearances;
use super::strip::Place;

/// How far into another a part may seem to lie where numbers were rounded, in millimetres.
const ROUNDED: f64 = 0.01;

/// Of two parts, how much farther along the second lies at least than the first.
struct AtLeast {
    first: usize,
    second: usize,
    by: f64,
}

/// The places moved along the cloth alone, each as near to its start as the others let it, by exact
/// outlines; none where two overlap.
///
/// Between two parts at their places across, the free stretch that holds them bounds by how much one
/// lies farther along than the other: the least places that meet all bounds are the longest ways in
/// the graph of bounds.
#[expect(
    clippy::indexing_slicing,
    reason = "places are counted from the list itself"
)]
pub(super) fn pushed(
    clearances: &mut Clearances,
    gap: f64,
    places: &[Place],
) -> Option<Vec<Place>> {
    let (mut bounds, mut overlaps) = (Vec::new(), Vec::new());
    for (k, one) in places.iter().enumerate() {
        for (other_at, other) in places.iter().enumerate().take(k) {
            let across = one.across - other.across;
            overlaps.clear();
            clearances.add((one.posed, other.posed), across, 0.0, &mut overlaps);
            let shift = one.along - other.along;
            let (mut low, mut high) = (None, None);
            for &(from, to) in &overlaps {
                if shift < from + ROUNDED {
                    high = Some(from);
                    break;
                }
                if shift < to - ROUNDED {
                    return None;
                }
                low = Some(to);
            }
            if let Some(by) = low {
                bounds.push(AtLeast {
                    first: other_at,
                    second: k,
                    by,
                });
            }
            if let Some(by) = high {
                bounds.push(AtLeast {
                    first: k,
                    second: other_at,
                    by: -by,
                });
            }
        }
    }
    let mut along = vec![gap; places.len()];
    // A way visits each part once, so that as many passes find the longest.
    for _ in 0..places.len() + 2 {
        let mut moved = false;
        for bound in &bounds {
            let least = along[bound.first] + bound.by;
            if along[bound.second] < least {
                along[bound.second] = least;
                moved = true;
            }
        }
        if !moved {
            let moved = places.iter().zip(along);
            return Some(
                moved
                    .map(|(place, along)| Place { along, ..*place })
                    .collect(),
            );
        }
    }
    None
}
