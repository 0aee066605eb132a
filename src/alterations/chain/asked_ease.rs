//! Ease that an alteration changes on purpose.

use super::girths::with_girth_ease;
use crate::alterations::AlterationError;
use crate::alterations::cutting::slowing::slowed_between;
use crate::geometry::tolerance;
use crate::piece::{EaseOn, EdgeName, EdgeRef, Pattern, Warning};

/// The pattern with the ease of a girth as its pieces now have it.
pub(in crate::alterations) fn with_girth_as_drawn(
    pattern: Pattern,
    name: &str,
) -> Result<Pattern, AlterationError> {
    let by = pattern
        .girths()
        .iter()
        .find(|g| g.name == name)
        .map_or(0.0, |g| pattern.finished(g) - g.asked());
    with_girth_ease(&pattern, name, by)
}

/// Tells a change of the ease at the bust that came with a wedge.
pub(in crate::alterations) fn bust_ease_taken(before: &Pattern, after: &Pattern) -> Vec<Warning> {
    let bust = |pattern: &Pattern| pattern.girths().iter().find(|g| g.name == "bust").cloned();
    let (Some(old), Some(new)) = (bust(before), bust(after)) else {
        return Vec::new();
    };
    let change = new.ease - old.ease;
    if change.abs() < TOLD_BUST {
        return Vec::new();
    }
    vec![Warning::new(
        "bust_ease_changed",
        format!(
            "the wedge crosses the underarm line: the finished bust girth there goes from {:.0} to {:.0} mm, its ease from {:.0} to {:.0} mm",
            old.asked(),
            new.asked(),
            old.ease,
            new.ease
        ),
    )]
}

/// A change of the bust girth smaller than this is not worth a warning, in millimetres; the
/// account has it.
const TOLD_BUST: f64 = 3.0;

/// The pattern with the ease of the seam of two edges as their sewn lengths now have it.
///
/// # Errors
/// When the pattern does not hold together any more.
pub(in crate::alterations) fn with_shoulder_ease(
    pattern: Pattern,
) -> Result<Pattern, AlterationError> {
    let shoulder = |side: &[EdgeRef]| match side {
        [edge] if edge.edge == EdgeName::SHOULDER => {
            Some(pattern.seam_length(edge).unwrap_or(f64::NAN))
        }
        _ => None,
    };
    let mut seams = pattern.seams().to_vec();
    let found = seams.iter_mut().find_map(|seam| {
        let longer = shoulder(&seam.a)? - shoulder(&seam.b)?;
        Some((seam, longer))
    });
    let Some((seam, longer)) = found else {
        return Ok(pattern);
    };
    seam.ease = longer.abs();
    seam.ease_on = if longer > tolerance::POINT {
        Some(EaseOn::A)
    } else if longer < -tolerance::POINT {
        Some(EaseOn::B)
    } else {
        seam.ease = 0.0;
        None
    };
    let mut parts = pattern.into_parts();
    parts.seams = seams;
    Ok(Pattern::new(parts)?)
}

/// The most that a back shoulder is eased onto the front, in millimetres: a quarter to half an
/// inch is usual (6 to 13 mm; a quarter read in a drafting lesson, the upper end a value from
/// memory).
pub(in crate::alterations) const MOST_SHOULDER_EASE: f64 = 13.0;

/// How near to its least and its most the ease of a shoulder slows down, in millimetres.
pub(in crate::alterations) const NEAR_MOST: f64 = 3.0;

/// What of a length that a back shoulder gains goes into its ease, or comes out of it, in
/// millimetres: as much as cloth can be eased. The rest is left to the shoulder point, which the
/// body has where it had it.
pub(in crate::alterations) fn taken_by_ease(pattern: &Pattern, longer: f64) -> f64 {
    let seam = pattern.seams().iter().find(|s| s.base_name() == "shoulder");
    let eased = seam.map_or(0.0, |s| match s.ease_on {
        Some(EaseOn::B) => -s.ease,
        _ => s.ease,
    });
    slowed_between(eased, longer, (0.0, MOST_SHOULDER_EASE), NEAR_MOST) - eased
}
