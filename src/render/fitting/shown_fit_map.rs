//! A fit map as it is given to the page.

use crate::fit_map::FitMap;

/// A fit map of a wearer.
///
/// ```
/// use blockwright::fit_map::FitMap;
/// use blockwright::render::fitting::ShownFitMap;
/// let map = FitMap { stations: vec![], girths: vec![], advice: vec![] };
/// let shown = ShownFitMap { wearer: "Ines", map: &map, caution: "Sew a toile." };
/// assert_eq!(shown.wearer, "Ines");
/// ```
#[derive(Debug, Clone, Copy)]
pub struct ShownFitMap<'a> {
    /// Whom the pattern is compared with.
    pub wearer: &'a str,
    /// The map.
    pub map: &'a FitMap,
    /// What must be known about any map.
    pub caution: &'a str,
}
