//! The drafted armscye against the one measured on each woman, which no draft ever sees.

use super::tally::{FITS, Garment, Outcome, attempt};
use crate::support::statistics::{correlation, mean_and_spread};
use crate::support::survey::{body_of, tell, women};
use blockwright::draft::{Block, Fit};
use blockwright::piece::{EdgeName, EdgeRef, Pattern};

pub fn armscye(bodice: &Pattern) -> f64 {
    ["back", "front"]
        .into_iter()
        .filter_map(|piece| bodice.seam_length(&EdgeRef::new(piece, EdgeName::ARMSCYE)))
        .sum()
}

/// The armscye girth of the survey runs over the acromion with the arm hanging (computed data,
/// NATICK/TR-89/044). A drafted armscye is longer by an ease; about that ease it should follow
/// the woman. Upper arm girth alone leaves 13 mm, bust and height 14 mm (computed from all 2,208
/// women): 15 mm is what a draft from many measurements may miss, with an armscye depth and a
/// back width that are each uncertain by more than that.
#[test]
fn follows_the_armscye_of_the_woman() {
    let table = women();
    for fit in FITS {
        let (mut drafted, mut measured) = (Vec::new(), Vec::new());
        for row in &table.rows {
            if let Outcome::Drafted(bodice, _) =
                attempt(Garment::plain(Block::Bodice), &body_of(row), fit)
            {
                drafted.push(armscye(&bodice));
                measured.push(row.number("armscye_girth"));
            }
        }
        let differences: Vec<f64> = drafted.iter().zip(&measured).map(|(d, m)| d - m).collect();
        let (ease, spread) = mean_and_spread(&differences);
        let r = correlation(&drafted, &measured);
        tell(&format!(
            "armscye, {}: {} women, r = {r:.3}, ease {ease:.1} mm, spread about it {spread:.1} mm",
            fit.name(),
            drafted.len()
        ));
        if fit == Fit::Regular {
            assert!(r >= 0.8, "r = {r}");
            assert!(spread <= 15.0, "spread = {spread} mm");
        }
    }
}
