//! Law: the darts above and below a waist seam meet.

use super::corner::{Corner, corner};
use super::walk::{Walk, sides};
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::piece::{EdgeName, EdgeRole, Pattern};
use std::ops::ControlFlow;
use thiserror::Error;

/// A waist dart with none to meet across the seam.
///
/// ```
/// use blockwright::invariants::WaistDartAlone;
/// let fault = WaistDartAlone {
///     seam: "back waist".into(), piece: "bodice back".into(), dart: "waist".into(),
///     found: 81.0, nearest: Some(84.0), tolerance: 0.5,
/// };
/// assert!(fault.to_string().contains("the nearest on the other side 84.00 mm"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error(
    "seam {seam}: the {dart} dart of {piece} closes {found:.2} mm from the centre, {}; they must meet within {tolerance} mm",
    nearest.map_or_else(|| "and there is none left to meet it".to_owned(), |n| format!("the nearest on the other side {n:.2} mm"))
)]
pub struct WaistDartAlone {
    /// Name of the seam.
    pub seam: String,
    /// Name of the piece with the fewer darts.
    pub piece: String,
    /// Name of its dart.
    pub dart: String,
    /// Sewn distance of the dart from the centre, in millimetres.
    pub found: f64,
    /// That of the nearest dart across the seam that has no other partner.
    pub nearest: Option<f64>,
    /// The distance allowed between the two, in millimetres.
    pub tolerance: f64,
}

pub(super) const LAW: Law = Law {
    name: "waists_meet",
    says: "across a waist seam, every dart of the side with fewer darts meets one of the other side",
    check,
};

/// A waist dart where the sewn seam has it.
struct Closed<'p> {
    piece: &'p str,
    dart: &'p str,
    /// Sewn distance from the centre, in millimetres.
    from_centre: f64,
}

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for seam in pattern.seams() {
        let walks = sides(pattern, seam);
        let waist = |w: &Walk<'_>| w.steps.iter().all(|s| s.edge.name() == &EdgeName::WAIST);
        if !walks.iter().all(waist) {
            continue;
        }
        let [a, b] = walks.each_ref().map(closed_darts);
        let (fewer, mut more) = if a.len() <= b.len() { (a, b) } else { (b, a) };
        for dart in fewer {
            let off = |other: &Closed<'_>| (other.from_centre - dart.from_centre).abs();
            let nearest = more
                .iter()
                .enumerate()
                .min_by(|(_, one), (_, other)| off(one).total_cmp(&off(other)))
                .map(|(index, other)| (index, other.from_centre));
            match nearest {
                Some((index, at)) if (at - dart.from_centre).abs() <= tolerances.waist_dart => {
                    more.remove(index);
                }
                _ => report(
                    WaistDartAlone {
                        seam: seam.name.clone(),
                        piece: dart.piece.to_owned(),
                        dart: dart.dart.to_owned(),
                        found: dart.from_centre,
                        nearest: nearest.map(|(_, at)| at),
                        tolerance: tolerances.waist_dart,
                    }
                    .into(),
                )?,
            }
        }
    }
    ControlFlow::Continue(())
}

/// The darts on one side of a waist seam.
fn closed_darts<'p>(walk: &Walk<'p>) -> Vec<Closed<'p>> {
    let from_start = !centre_at_end(walk);
    let mut found = Vec::new();
    for step in &walk.steps {
        for (dart, opens, _) in step.piece.mouths(step.edge.name()) {
            let walked = step.walked_to(opens);
            found.push(Closed {
                piece: step.piece.name(),
                dart: &dart.name,
                from_centre: if from_start {
                    walked
                } else {
                    walk.length - walked
                },
            });
        }
    }
    found
}

/// Whether the walk ends at the centre, rather than starting there.
fn centre_at_end(walk: &Walk<'_>) -> bool {
    let centre = |corner: Corner<'_>| {
        corner.neighbour.role() == EdgeRole::Fold
            || [EdgeName::CENTRE_BACK, EdgeName::CENTRE_FRONT].contains(corner.neighbour.name())
    };
    let Some(last) = walk.steps.last() else {
        return false;
    };
    corner(last.piece, last.edge.name(), last.entered().other()).is_some_and(centre)
}

impl Explain for WaistDartAlone {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(format!(
            "seam {}: {} dart of {}",
            self.seam, self.dart, self.piece
        ))
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
