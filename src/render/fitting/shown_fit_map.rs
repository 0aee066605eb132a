//! A fit map as it is given to the page.

use crate::fit_map::FitMap;
use crate::form::Form;

/// A fit map of a wearer.
///
/// ```
/// use blockwright::fit_map::FitMap;
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::fitting::ShownFitMap;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let map = FitMap { stations: vec![], girths: vec![], advice: vec![] };
/// let form = Form::of(&body)?;
/// let shown = ShownFitMap { wearer: "Ines", map: &map, form: &form, caution: "Sew a toile." };
/// assert_eq!(shown.wearer, "Ines");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct ShownFitMap<'a> {
    /// Whom the pattern is compared with.
    pub wearer: &'a str,
    /// The map.
    pub map: &'a FitMap,
    /// The body that it was made on.
    pub form: &'a Form,
    /// What must be known about any map.
    pub caution: &'a str,
}
