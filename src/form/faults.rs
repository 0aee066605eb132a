//! What a form may not be.

use super::error::OutOfReach;
use super::levels::Levels;
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
    if let Some(order) = disorder(&solved.shape.levels) {
        return Some(order);
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

/// The least distances of levels, in mm; among the women surveyed the smallest are 39 from the waist to
/// the bust points, 6 from there to the armpits, 97 from there to the front neck and 124 from the
/// armpits to the nape.
fn disorder(levels: &Levels) -> Option<OutOfReach> {
    let pairs = [
        ("waist", "bust points", levels.bust - levels.waist, 25.0),
        ("bust points", "armpits", levels.armpit - levels.bust, -15.0),
        (
            "bust points",
            "front neck",
            levels.front_neck - levels.bust,
            60.0,
        ),
        ("armpits", "nape", levels.nape - levels.armpit, 60.0),
    ];
    let mut out = pairs.into_iter().filter(|(.., gap, least)| gap < least);
    out.next()
        .map(|(lower, upper, gap, least)| OutOfReach::Levels {
            lower,
            upper,
            gap,
            least,
        })
}
