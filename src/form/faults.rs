//! What a form may not be.

use super::error::OutOfReach;
use super::parameter::ShapeParameter as P;
use super::solve::{Solved, Target};

/// A tape may miss a measurement by so much, in mm, and a girth by this share of it.
const MISS: f64 = 2.0;
const GIRTH_MISS: f64 = 0.003;

/// A dimension may be so many spreads off.
const SPREADS: f64 = 4.0;

/// What of a solution is out of reach, the worst first; `None` if nothing is.
pub(super) fn fault(solved: &Solved) -> Option<OutOfReach> {
    let missed = solved
        .targets
        .iter()
        .zip(&solved.found)
        .filter(|(target, found)| {
            let miss = (*found - target.value).abs();
            let spared = !target.is_taken && target.tolerance > 1.0;
            !spared && (miss.is_nan() || miss > MISS.max(GIRTH_MISS * target.value))
        });
    let worst = missed.max_by(|a, b| share(a.0, *a.1).total_cmp(&share(b.0, *b.1)));
    if let Some((target, found)) = worst {
        return Some(OutOfReach::Measurement {
            of: target.of,
            found: *found,
        });
    }
    let off = P::ALL
        .into_iter()
        .zip(solved.priors.distances(&solved.values));
    off.filter(|(_, spreads)| spreads.is_nan() || spreads.abs() > SPREADS)
        .max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()))
        .map(|(of, spreads)| OutOfReach::Dimension { of, spreads })
}

fn share(target: &Target, found: f64) -> f64 {
    ((found - target.value) / target.value).abs()
}
