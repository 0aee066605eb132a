//! The demonstration of an alteration, whichever it is.

use super::bench::Bench;
use super::change::changed;
use super::error::{DemonstrationError, Tried};
use super::instruction::Instruction;
use super::slash::Slash;
use super::words::mm;
use super::{
    bodice_slashes as bodice, bust_slashes as bust, dart_slashes as darts, hip_slashes as hips,
    length_slashes as lengths, neck_slashes as neck, panel_slashes as panels,
    sleeve_slashes as sleeves, width_slashes as widths,
};
use crate::piece::{EdgeName, Pattern, Piece};

/// An alteration shown on paper.
///
/// # Guarantees
/// Every piece that the alteration changed is there: cut and moved, or among those that follow.
///
/// ```
/// use blockwright::demonstration::Demonstration;
/// fn pieces(shown: &Demonstration) -> usize { shown.slashes.len() + shown.follows.len() }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Demonstration {
    /// The alteration's name.
    pub alteration: String,
    /// The pieces that are cut.
    pub slashes: Vec<Slash>,
    /// What is said about pieces that are drawn again because of it, a sentence each, with lengths
    /// in millimetres.
    pub follows: Vec<String>,
}

/// Cuts a piece on the table; nothing for a piece that only follows.
type Cutter = fn(&mut Bench<'_>) -> Tried<Option<Instruction>>;

/// How each alteration is cut.
const CUTTERS: &[(&str, Cutter)] = &[
    ("back_length_reduction", lengths::back_shorter),
    ("back_length_increase", lengths::back_longer),
    ("front_length", lengths::front_longer),
    ("shoulder_blade", bodice::shoulder_blade),
    ("shoulder_slope", bodice::shoulder_slope),
    ("forward_shoulder", bodice::forward_shoulder),
    ("shoulder_width", bodice::shoulder_width),
    ("armscye_depth", bodice::armscye_depth),
    ("neckline_depth", neck::neckline),
    ("neckline_width", neck::neckline),
    ("neckline_gape", neck::neckline_gape),
    ("back_neck_gape", neck::neckline_gape),
    ("armscye_gape", neck::armscye_gape),
    ("back_width", widths::back_width),
    ("front_width", widths::width_at_armscye),
    ("length", lengths::longer),
    ("bust_point", bust::bust_point),
    ("bust", bust::bust),
    ("bust_girth", widths::bust_girth),
    ("waist_girth", hips::waist_girth),
    ("high_hip", hips::high_hip),
    ("hip_girth", hips::hip_girth),
    ("side_seam", hips::hip_girth),
    ("seat", hips::centre_length),
    ("abdomen", hips::centre_length),
    ("upper_arm", sleeves::upper_arm),
    ("elbow_width", sleeves::elbow_width),
    ("forearm_width", sleeves::forearm_width),
    ("wrist_width", sleeves::wrist_width),
    ("sleeve_pitch", sleeves::sleeve_pitch),
    ("dart_relocation", darts::moved),
    ("dart_division", darts::moved),
    ("dart_merging", darts::moved),
    ("dart_to_seam", panels::divided),
];

/// Shows an alteration on paper: the slash that it stands for, from the pattern before and after
/// it alone.
///
/// ```
/// use blockwright::alterations::{Alteration, FrontLength, alter};
/// use blockwright::demonstration::{OpeningKind, demonstrate};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let before = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(FrontLength::by(8.0));
/// let after = alter(&before, &[step])?.pattern;
/// let shown = demonstrate("front_length", &before, &after)?;
/// let front = &shown.slashes[0];
/// assert_eq!(front.panels.len(), 2);
/// let gap = front.openings.iter().find(|o| o.kind == OpeningKind::Gap);
/// assert!(gap.is_some_and(|gap| (gap.amount - 8.0).abs() < 0.01));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When the catalogue has no alteration of that name.
pub fn demonstrate(
    alteration: &str,
    before: &Pattern,
    after: &Pattern,
) -> Result<Demonstration, DemonstrationError> {
    let cutter = CUTTERS.iter().find(|(name, _)| *name == alteration);
    let (_, cutter) = cutter.ok_or_else(|| DemonstrationError::Unknown {
        alteration: alteration.to_owned(),
    })?;
    let mut shown = Demonstration {
        alteration: alteration.to_owned(),
        slashes: Vec::new(),
        follows: Vec::new(),
    };
    for change in changed(before, after) {
        let mut bench = Bench::of(change.before, change.after.clone());
        match cutter(&mut bench) {
            // The other half of a step on one side is trued where both meet, and not cut.
            Ok(Some(_)) if bench.is_still() => shown.follows.push(followed(&bench)),
            Ok(Some(said)) => shown.slashes.push(bench.finish(said)),
            Ok(None) => shown.follows.push(followed(&bench)),
            Err(_) => {
                let bench = Bench::of(change.before, change.after);
                shown.slashes.push(not_cut(bench));
            }
        }
    }
    Ok(shown)
}

/// A piece on which the usual slash finds no place: it is drawn.
fn not_cut(bench: Bench<'_>) -> Slash {
    bench.finish(Instruction::new(
        "Nothing is cut on this piece: there is no room for the usual cut, or the dart along which it runs was moved before.",
        "Lay the old outline under fresh paper.",
    ))
}

/// What is said about a piece that only follows.
fn followed(bench: &Bench<'_>) -> String {
    let new = bench.new.first();
    let name = new.map_or(bench.old.name(), |piece| piece.name());
    let cap = |piece: &Piece| {
        piece
            .outline()
            .edge(&EdgeName::SLEEVE_CAP)
            .map(|e| e.curve().length())
    };
    let new = bench.new.first().and_then(|piece| cap(piece));
    match (cap(bench.old), new) {
        (Some(old), Some(new)) if (new - old).abs() >= 0.5 => format!(
            "The {name} is drawn again to the new armscye: its cap gets {} {}.",
            mm(new - old),
            if new > old { "longer" } else { "shorter" }
        ),
        (Some(_), Some(_)) => format!("The {name} is drawn again to the new armscye."),
        _ => format!("The {name} is trued where it meets what was cut."),
    }
}
