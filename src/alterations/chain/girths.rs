//! Girths that an alteration changes on purpose.

use crate::alterations::AlterationError;
use crate::piece::Pattern;

/// The pattern with the ease of one girth changed, so that finished = body + ease stays true
/// after an alteration that widens or narrows it on purpose.
///
/// A girth that the pattern does not have is left out.
///
/// # Errors
/// When the pattern does not hold together.
///
/// ```
/// use blockwright::alterations::with_girth_ease;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let eased = with_girth_ease(&pattern, "hip", 20.0)?;
/// let ease = |p: &blockwright::piece::Pattern| p.girths().iter().find(|g| g.name == "hip").map(|g| g.ease);
/// assert_eq!(ease(&eased), ease(&pattern).map(|e| e + 20.0));
/// # Ok(()) }
/// ```
pub fn with_girth_ease(pattern: &Pattern, name: &str, by: f64) -> Result<Pattern, AlterationError> {
    let mut parts = pattern.clone().into_parts();
    for girth in &mut parts.girths {
        if girth.name == name {
            girth.ease += by;
        }
    }
    Ok(Pattern::new(parts)?)
}
