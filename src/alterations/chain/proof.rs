//! One step of a chain, proved: every law, every promise, every part that has to survive.

use super::halves::{are_unlike, half};
use super::one_sided::on_both_halves;
use super::readings::Readings;
use super::refused::Reason;
use crate::alterations::darts::dart_home::AtHome;
use crate::alterations::panels::panel_pieces::PARTS;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, StructureChange};
use crate::invariants::{Tolerances, Violation, check_all, first};
use crate::piece::{BodySide, Pattern, Piece, Warning};

/// What one step has to keep on a pattern.
pub(in crate::alterations) struct Proof {
    pub promises: Vec<Promise>,
    pub structure: StructureChange,
}

impl Proof {
    /// Of a pattern whose halves are unlike: what the alteration keeps on each of them.
    pub fn of(pattern: &Pattern, alteration: &dyn Alteration) -> Result<Self, AlterationError> {
        if !on_each_half(pattern, alteration) {
            return Ok(Self {
                promises: alteration.promises(pattern),
                structure: alteration.structure_change(pattern),
            });
        }
        let mut proof = Self {
            promises: Vec::new(),
            structure: StructureChange::none(),
        };
        for side in BodySide::BOTH {
            let half = half(pattern, side)?;
            let promises = alteration.promises(&half);
            let on_side = promises.iter().map(|p| p.on(side, &half));
            proof.promises.extend(on_side);
            let structure = alteration.structure_change(&half).on(side);
            proof.structure = proof.structure.and(structure);
        }
        Ok(proof)
    }
}

/// Whether the alteration is made on each half for itself.
pub(in crate::alterations) fn on_each_half(pattern: &Pattern, alteration: &dyn Alteration) -> bool {
    are_unlike(pattern) && !alteration.takes_unlike_halves()
}

/// Alterations that take darts from where they are. Darts that are to be merged meet best at home.
pub(in crate::alterations) const FIND_DARTS: [&str; 3] =
    ["dart_relocation", "dart_division", "dart_to_seam"];

/// One step, proved; what came of it, and its measures. Where it cannot be made because darts were
/// moved, they are brought home for it.
pub(in crate::alterations) fn step(
    pattern: &Pattern,
    before: &Readings,
    alteration: &dyn Alteration,
    proof: &Proof,
) -> Result<(Altered, Readings), Reason> {
    proved(pattern, before, alteration, proof, Marks::Now).or_else(|reason| {
        if FIND_DARTS.contains(&alteration.name()) {
            return Err(reason);
        }
        let home = AtHome::of(pattern).ok().flatten();
        let at_home = home.map(|home| -> Result<(Altered, Readings), Reason> {
            let (altered, after) = step_at_home(&home, alteration)?;
            proof.structure.check(pattern, &altered.pattern)?;
            Ok((altered, after))
        });
        match (at_home, in_panels(pattern)) {
            (Some(Ok(made)), _) => Ok(made),
            (_, Some(piece)) if needs_whole_pieces(&reason) => Err(divided(piece)),
            (Some(Err(at_home)), _) => Err(at_home),
            (None, _) => Err(reason),
        }
    })
}

/// Whether a reason is that of a step which does not find on panels what it works on.
fn needs_whole_pieces(reason: &Reason) -> bool {
    !matches!(
        reason,
        Reason::Alteration(AlterationError::Setting(_) | AlterationError::NotBuilt { .. })
    )
}

/// The piece that a panel seam divided, by its name before.
fn in_panels(pattern: &Pattern) -> Option<&str> {
    let divided = |piece: &&Piece| {
        let mut edges = piece.outline().edges().iter();
        edges.any(|edge| edge.name().as_str().starts_with("panel_seam"))
    };
    let panel = pattern.pieces().iter().find(divided)?.base_name();
    let mut parts = PARTS.iter();
    let whole = parts.find_map(|part| panel.strip_suffix(part)?.strip_suffix(' '));
    Some(whole.unwrap_or(panel))
}

/// Why a step that works on whole pieces cannot be made on panels.
fn divided(piece: &str) -> Reason {
    Reason::Alteration(AlterationError::First {
        why: format!("the {piece} is divided into panels, which cannot be altered as one piece"),
        advice: "make it before dart_to_seam".to_owned(),
    })
}

/// Whether notches and drill points have to lie clear of the darts now, or once these are back where
/// they were moved to.
#[derive(Clone, Copy, PartialEq)]
pub(in crate::alterations) enum Marks {
    Now,
    Later,
}

/// Refuses a pattern that breaks a law.
fn check_laws(pattern: &Pattern, marks: Marks) -> Result<(), Reason> {
    let tolerances = Tolerances::altered();
    let violation = match (first(pattern, &tolerances), marks) {
        (Some(Violation::MarksClear(_)), Marks::Later) => check_all(pattern, &tolerances)
            .into_iter()
            .find(|violation| !matches!(violation, Violation::MarksClear(_))),
        (violation, _) => violation,
    };
    violation.map_or(Ok(()), |violation| Err(Reason::Law(Box::new(violation))))
}

/// One step with the darts of the pattern at home, proved there; then they go away again.
fn step_at_home(home: &AtHome, alteration: &dyn Alteration) -> Result<(Altered, Readings), Reason> {
    let proof = Proof::of(&home.pattern, alteration)?;
    let readings = Readings::of(&home.pattern);
    let (altered, _) = proved(&home.pattern, &readings, alteration, &proof, Marks::Later)?;
    let altered = Altered {
        pattern: home.away_again(&altered.pattern)?,
        ..altered
    };
    check_laws(&altered.pattern, Marks::Now)?;
    let after = Readings::of(&altered.pattern);
    Ok((altered, after))
}

/// One step, proved; what came of it, and its measures.
pub(in crate::alterations) fn proved(
    pattern: &Pattern,
    before: &Readings,
    alteration: &dyn Alteration,
    proof: &Proof,
    marks: Marks,
) -> Result<(Altered, Readings), Reason> {
    let altered = if on_each_half(pattern, alteration) {
        on_both_halves(alteration, pattern)?
    } else {
        alteration.alter(pattern)?
    };
    proof.structure.check(pattern, &altered.pattern)?;
    check_laws(&altered.pattern, marks)?;
    let after = Readings::of(&altered.pattern);
    for promise in &proof.promises {
        promise.check(before, &after)?;
    }
    Ok((altered, after))
}

/// The pattern with what is to be known about it besides.
pub(in crate::alterations) fn with_warnings(
    pattern: Pattern,
    warnings: Vec<Warning>,
) -> Result<Pattern, AlterationError> {
    if warnings.is_empty() {
        return Ok(pattern);
    }
    let mut parts = pattern.into_parts();
    parts.warnings.extend(warnings);
    Ok(Pattern::new(parts)?)
}
