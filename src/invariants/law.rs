//! The table of laws.

use super::{
    Tolerances, Violation, cap_ease, darts_true, edges_smooth, fold_straight, girths_as_asked,
    marks_clear, mouths_flush, notches_meet, one_way, outline_simple, seams_match, size_sane,
    smooth_joins, square_to_fold, waists_meet,
};
use crate::piece::Pattern;
use std::ops::ControlFlow;

/// Where a law reports what it finds; the answer says whether to go on looking.
///
/// ```
/// use blockwright::invariants::{Report, Violation};
/// use std::ops::ControlFlow;
/// /// A law of one's own that finds nothing.
/// fn silent(_report: Report<'_>) -> ControlFlow<()> { ControlFlow::Continue(()) }
/// let mut found: Vec<Violation> = Vec::new();
/// let _ = silent(&mut |violation| { found.push(violation); ControlFlow::Break(()) });
/// assert!(found.is_empty());
/// ```
pub type Report<'a> = &'a mut dyn FnMut(Violation) -> ControlFlow<()>;

/// One law: its name, what it says, how it is checked.
///
/// ```
/// use blockwright::invariants::{LAWS, Tolerances};
/// use blockwright::piece::{Pattern, PatternParts};
/// let empty = Pattern::new(PatternParts { block: "skirt".into(), pieces: vec![], seams: vec![], girths: vec![], warnings: vec![] })?;
/// for law in LAWS {
///     assert!(law.violations(&empty, &Tolerances::drafted()).is_empty(), "{}: {}", law.name, law.says);
/// }
/// # Ok::<(), blockwright::piece::PieceError>(())
/// ```
#[derive(Debug, Clone, Copy)]
#[non_exhaustive]
pub struct Law {
    /// Name in snake case.
    pub name: &'static str,
    /// What it says, in one sentence.
    pub says: &'static str,
    /// Reports everything that breaks it.
    pub check: fn(&Pattern, &Tolerances, Report<'_>) -> ControlFlow<()>,
}

impl Law {
    /// Everything that breaks this one law.
    #[must_use]
    pub fn violations(&self, pattern: &Pattern, tolerances: &Tolerances) -> Vec<Violation> {
        let mut found = Vec::new();
        let _ = (self.check)(pattern, tolerances, &mut |violation| {
            found.push(violation);
            ControlFlow::Continue(())
        });
        found
    }
}

/// Every law, in the order in which they are checked.
pub const LAWS: &[Law] = &[
    size_sane::LAW,
    outline_simple::LAW,
    edges_smooth::LAW,
    one_way::LAW,
    fold_straight::LAW,
    square_to_fold::LAW,
    darts_true::LAW,
    mouths_flush::LAW,
    seams_match::LAW,
    cap_ease::LAW,
    smooth_joins::LAW,
    notches_meet::LAW,
    marks_clear::LAW,
    waists_meet::LAW,
    girths_as_asked::LAW,
];
