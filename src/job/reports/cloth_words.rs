//! How much cloth a pattern takes, in words for its cover.

use crate::recipe::MadePattern;
use crate::units::Unit;

/// Widths of dress fabrics, in millimetres (common practice).
#[cfg(feature = "lay")]
const WIDTHS: [f64; 2] = [1150.0, 1500.0];

/// About how much cloth it takes, folded, in usual widths: a first lay, which a search shortens. A width
/// on which a piece finds no room is left out.
#[cfg(feature = "lay")]
pub(in crate::job) fn cloth_words(made: &MadePattern, unit: Unit) -> Vec<String> {
    use crate::lay::{Cloth, Search, parts};
    use crate::units::{Length, LengthStyle};
    let length = |width: f64| {
        let cloth = Cloth::new(width).ok()?.folded();
        let laid = parts(&made.pattern, made.cut.as_ref(), &cloth).ok()?;
        Some(Search::new(&cloth, laid, 1).ok()?.length())
    };
    let said = WIDTHS.into_iter().filter_map(|width| {
        // Up to the next five centimetres, as it is bought.
        let length = (length(width)? / 50.0).ceil() * 50.0;
        let style = LengthStyle::usual(unit);
        let text = |mm: f64| Length::from_mm(mm).map(|length| length.to_text(style)).ok();
        Some(format!("{} of cloth {} wide", text(length)?, text(width)?))
    });
    let said: Vec<String> = said.collect();
    let more = if made.cut.is_some() {
        ""
    } else {
        ", seam allowances not counted"
    };
    if said.is_empty() {
        return said;
    }
    vec![format!("About {}, folded{more}.", said.join(", or "))]
}

#[cfg(not(feature = "lay"))]
pub(in crate::job) fn cloth_words(_: &MadePattern, _: Unit) -> Vec<String> {
    Vec::new()
}
