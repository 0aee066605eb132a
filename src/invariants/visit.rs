//! One walk over all laws, from which validity, the first and all violations follow.

use super::{LAWS, Report, Tolerances, Violation, size_sane};
use crate::piece::Pattern;
use std::ops::ControlFlow;

/// Walks all laws and reports every violation until asked to stop.
///
/// Pieces too large to be cloth are reported alone: nothing measured on them means anything.
///
/// ```
/// use blockwright::invariants::{Tolerances, visit};
/// use blockwright::piece::{Girth, Pattern, PatternParts};
/// let waist = Girth { name: "waist".into(), side: None, body: 700.0, ease: 20.0, limb: false, runs: vec![] };
/// let pattern = Pattern::new(PatternParts { block: "skirt".into(), pieces: vec![], seams: vec![], girths: vec![waist], warnings: vec![] })?;
/// use std::ops::ControlFlow;
/// let mut reported = Vec::new();
/// let _ = visit(&pattern, &Tolerances::drafted(), &mut |violation| {
///     reported.push(violation.to_string());
///     ControlFlow::Continue(())
/// });
/// assert_eq!(reported.len(), 1);
/// # Ok::<(), blockwright::piece::PieceError>(())
/// ```
pub fn visit(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    if !pattern.pieces().iter().all(size_sane::is_sane) {
        return (size_sane::LAW.check)(pattern, tolerances, report);
    }
    for law in LAWS {
        (law.check)(pattern, tolerances, report)?;
    }
    ControlFlow::Continue(())
}

/// Every violation of every law; empty when the pattern can be sewn.
///
/// ```
/// use blockwright::invariants::{Tolerances, check_all};
/// use blockwright::piece::{Girth, Pattern, PatternParts};
/// let waist = Girth { name: "waist".into(), side: None, body: 700.0, ease: 20.0, limb: false, runs: vec![] };
/// let pattern = Pattern::new(PatternParts { block: "skirt".into(), pieces: vec![], seams: vec![], girths: vec![waist], warnings: vec![] })?;
/// let found = check_all(&pattern, &Tolerances::drafted());
/// assert_eq!(found.len(), 1);
/// assert_eq!(found[0].law(), "girths_as_asked");
/// # Ok::<(), blockwright::piece::PieceError>(())
/// ```
#[must_use]
pub fn check_all(pattern: &Pattern, tolerances: &Tolerances) -> Vec<Violation> {
    let mut found = Vec::new();
    let _ = visit(pattern, tolerances, &mut |violation| {
        found.push(violation);
        ControlFlow::Continue(())
    });
    found
}

/// The first violation, looking no further.
///
/// ```
/// use blockwright::invariants::{Tolerances, first};
/// use blockwright::piece::{Girth, Pattern, PatternParts};
/// let waist = Girth { name: "waist".into(), side: None, body: 700.0, ease: 20.0, limb: false, runs: vec![] };
/// let pattern = Pattern::new(PatternParts { block: "skirt".into(), pieces: vec![], seams: vec![], girths: vec![waist], warnings: vec![] })?;
/// let found = first(&pattern, &Tolerances::drafted());
/// assert!(found.is_some_and(|violation| violation.law() == "girths_as_asked"));
/// # Ok::<(), blockwright::piece::PieceError>(())
/// ```
#[must_use]
pub fn first(pattern: &Pattern, tolerances: &Tolerances) -> Option<Violation> {
    let mut found = None;
    let _ = visit(pattern, tolerances, &mut |violation| {
        found = Some(violation);
        ControlFlow::Break(())
    });
    found
}

/// Whether the pattern meets every law.
///
/// ```
/// use blockwright::invariants::{Tolerances, is_valid};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// assert!(is_valid(&pattern, &Tolerances::drafted()));
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn is_valid(pattern: &Pattern, tolerances: &Tolerances) -> bool {
    first(pattern, tolerances).is_none()
}
