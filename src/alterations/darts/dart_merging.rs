//! Dart merging: two darts of one piece become one.

use super::dart_finding::{found, kept_edges};
use super::dart_opening::Opening;
use super::dart_swing::Swing;
use super::dart_tip::{aim_dart, bust_fullness, tip_backed_off};
use crate::alterations::chain::promise::girths_stay;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Part, Promise, StructureChange};
use crate::geometry::{Point, intersect_lines, tolerance};
use crate::piece::{Dart, Pattern, Piece, wide_darts};
use serde::{Deserialize, Serialize};

/// Makes one dart of two.
///
/// For two darts with one apex each, on one piece, that point at the same fullness: the bust
/// dart and the waist dart of a bodice front. Drafted darts end short of the bust point, so
/// their apexes differ; both are first aimed again at one point, where their centre lines meet
/// (on a bodice front the bust point itself). On its own centre line a dart keeps its two legs
/// equal. Then the panel between them is turned about that point until the one is closed and
/// the other has both angles, and its tip is backed off from the bust point again.
///
/// Aimed farther, a dart is some degrees narrower at its new apex, so its edge would close
/// with that corner. Half of it is spread over the last 40 mm of the edge on either side of the
/// dart, and the ends of the legs slide so that every sewn length stays.
///
/// Refused when the apexes lie farther than [`APEX_REACH`] from that point: the darts shape
/// different places of the body, and one cannot do the work of the other.
///
/// ```
/// use blockwright::alterations::DartMerging;
/// let merging = DartMerging::of("waist", "bust");
/// assert_eq!(merging.darts, ["waist", "bust"]);
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/dart_merging.svg")]
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DartMerging {
    /// Names of the two darts.
    pub darts: [String; 2],
    /// Which of the two remains, where it is; the first unless given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<String>,
    /// The piece, where several have darts of those names.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub piece: Option<String>,
}

/// The apexes of two darts to be merged lie at most so far from the point both are aimed at, in
/// millimetres: darts end up to 25 mm short of the bust point, and a wide dart up to twice
/// that (value from memory).
pub const APEX_REACH: f64 = 60.0;

/// How far sewn lengths may move for the corner that is spread, in millimetres.
const SPREAD: f64 = tolerance::SEAM_ALTERED / 2.0;

impl DartMerging {
    /// The second of two darts, merged into the first.
    #[must_use]
    pub fn of(first: impl Into<String>, second: impl Into<String>) -> Self {
        Self {
            darts: [first.into(), second.into()],
            to: None,
            piece: None,
        }
    }

    /// The same on the piece of that name.
    #[must_use]
    pub fn on(self, piece: impl Into<String>) -> Self {
        Self {
            piece: Some(piece.into()),
            ..self
        }
    }

    /// The piece, the dart that remains and the one that goes.
    fn both<'p>(
        &self,
        pattern: &'p Pattern,
    ) -> Result<(&'p Piece, &'p Dart, &'p Dart), AlterationError> {
        let [first, second] = &self.darts;
        if first == second {
            return Err(AlterationError::Setting(format!(
                "both darts to be merged are named {first}; name two"
            )));
        }
        let (kept, gone) = match &self.to {
            None => (first, second),
            Some(to) if to == first => (first, second),
            Some(to) if to == second => (second, first),
            Some(to) => {
                return Err(AlterationError::Setting(format!(
                    "the merged dart cannot stay as {to}: that is neither {first} nor {second}"
                )));
            }
        };
        // Where several pieces have the one, the other may tell which is meant.
        let named = |name: &str, on| {
            check_open(pattern, [first, second])?;
            found(pattern, name, on)
        };
        let (piece, kept) = match (named(kept, self.piece.as_deref()), self.piece.is_none()) {
            (Err(AlterationError::Setting(_)), true) => {
                let (piece, _) = named(gone, None)?;
                named(kept, Some(piece.name()))?
            }
            (other, _) => other?,
        };
        let (_, gone) = named(gone, Some(piece.name()))?;
        Ok((piece, kept, gone))
    }
}

impl Alteration for DartMerging {
    fn name(&self) -> &'static str {
        "dart_merging"
    }

    fn amount(&self) -> Option<f64> {
        None
    }

    fn with_amount(&self, _amount: f64) -> Box<dyn Alteration> {
        Box::new(self.clone())
    }

    fn structure_change(&self, before: &Pattern) -> StructureChange {
        self.both(before).map_or_else(
            |_| StructureChange::none(),
            |(piece, _, gone)| {
                StructureChange::none().removes(Part::dart(piece.name(), &gone.name))
            },
        )
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let Ok((piece, ..)) = self.both(before) else {
            return Vec::new();
        };
        let edges = kept_edges(piece).map(|p| p.within(SPREAD));
        let girths = girths_stay(before, &[]).map(|p| p.within(4.0 * SPREAD));
        edges.chain(girths).collect()
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let (piece, kept, gone) = self.both(pattern)?;
        let (kept_name, gone_name) = (kept.name.clone(), gone.name.clone());
        let apex = aim(piece, kept, gone)?;
        let fullness = bust_fullness(piece, kept);
        let aimed = aim_dart(&aim_dart(piece, kept, apex)?, gone, apex)?;
        let swing = Swing {
            dart: aimed.dart(&gone_name).unwrap_or(gone),
            share: 1.0,
            into: Opening::dart(&aimed, &kept_name).ok_or_else(|| AlterationError::Missing {
                what: format!("a {kept_name} dart that opens on an edge"),
                advice: "only darts with one apex, open on an edge, can be merged",
            })?,
            name: kept_name.clone(),
            piece: &aimed,
        };
        let made = tip_backed_off(&swing.made()?, &kept_name, fullness)?;
        Ok(Altered {
            warnings: wide_darts([&made]),
            pattern: replaced(pattern, made)?,
        })
    }
}

/// Refuses a dart with two apexes: it opens on no edge, so nothing can open there.
fn check_open(pattern: &Pattern, names: [&String; 2]) -> Result<(), AlterationError> {
    let inside = |name: &&&String| {
        let mut darts = pattern.pieces().iter().filter_map(|p| p.dart(name));
        darts.any(|d| d.edge.is_none())
    };
    let Some(name) = names.iter().find(inside) else {
        return Ok(());
    };
    Err(AlterationError::First {
        why: format!(
            "the {name} dart lies inside its piece with a point at either end, so that it cannot open any wider"
        ),
        advice: "take both darts into one seam from edge to edge (dart_to_seam), or bring the other dart next to it (dart_relocation)"
            .to_owned(),
    })
}

/// Where both darts are turned: the bust point when both point at it, else where their centre
/// lines meet, when that lies near both apexes.
fn aim(piece: &Piece, one: &Dart, other: &Dart) -> Result<Point, AlterationError> {
    let (a, b) = (one.apex(), other.apex());
    let (full, same) = (piece.fullness(one), piece.fullness(other));
    if full.distance(same) <= tolerance::POINT && full != a {
        return Ok(full);
    }
    if a.distance(b) <= tolerance::POINT {
        return Ok(a);
    }
    let centre = |d: &Dart| d.apex() - d.legs[0].midpoint(d.legs[1]);
    let met = intersect_lines(a, centre(one), b, centre(other)).ok();
    let far = |p: Point| p.distance(a).max(p.distance(b));
    let point = met.filter(|p| far(*p) <= APEX_REACH);
    point.ok_or_else(|| AlterationError::First {
        why: format!(
            "the {} and {} darts do not point at one place: their apexes lie {:.0} mm apart and their centre lines {}",
            one.name,
            other.name,
            a.distance(b),
            met.map_or_else(
                || "never meet".to_owned(),
                |p| format!("meet {:.0} mm from an apex, where {APEX_REACH:.0} mm are allowed", far(p))
            )
        ),
        advice: "move one of them next to the other instead (dart_relocation), or leave both".to_owned(),
    })
}
