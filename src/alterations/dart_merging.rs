//! Dart merging: two darts of one piece become one.

use super::dart_finding::{found, kept_edges};
use super::dart_opening::Opening;
use super::dart_swing::Swing;
use super::promise::girths_stay;
use super::sleeve::replaced;
use super::true_up::{blend_end, blend_start, with_mouth};
use super::{Alteration, AlterationError, Altered, Part, Promise, Sketch, StructureChange};
use crate::geometry::{Point, Rigid, angle_between, intersect_lines, tolerance};
use crate::piece::{Apexes, Dart, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Makes one dart of two.
///
/// For two darts with one apex each, on one piece, that point at the same fullness: the bust
/// dart and the waist dart of a bodice front. Drafted darts end short of the bust point, so
/// their apexes differ; both are first aimed again at one point, where their centre lines meet
/// (on a bodice front the bust point itself). On its own centre line a dart keeps its two legs
/// equal and its intake, so every sewn length stays. Then the panel between them is turned
/// about that point until the one is closed and the other has both angles.
///
/// Aimed farther, a dart is a degree or two narrower at its new apex, so its edge would close
/// with that corner. Half of it is spread over the last [`CORNER_BLEND`] millimetres of the edge on
/// either side of the dart, which lengthens the edge by some thousandths of a millimetre.
///
/// Refused when the apexes lie farther than [`APEX_REACH`] from that point: the darts shape
/// different places of the body, and one cannot do the work of the other.
///
/// ```
/// use blockwright::alterations::DartMerging;
/// let merging = DartMerging::of("waist", "bust");
/// assert_eq!(merging.darts, ["waist", "bust"]);
/// ```
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

/// Over so many millimetres of edge a corner is spread, where the edge is long enough.
pub const CORNER_BLEND: f64 = 40.0;

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
        let named = |name: &str, on| found(pattern, name, on);
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
        let apex = aim(kept, gone)?;
        let aimed = aimed(&aimed(piece, kept, apex)?, gone, apex)?;
        let swing = Swing {
            dart: aimed.dart(&gone_name).unwrap_or(gone),
            share: 1.0,
            into: Opening::dart(&aimed, &kept_name).ok_or_else(|| AlterationError::Missing {
                what: format!("a {kept_name} dart that opens on an edge"),
                advice: "only darts with one apex, open on an edge, can be merged",
            })?,
            name: kept_name,
            piece: &aimed,
        };
        Ok(replaced(pattern, swing.made()?)?.into())
    }
}

/// Where the centre lines of two darts meet, when that lies near both apexes.
fn aim(one: &Dart, other: &Dart) -> Result<Point, AlterationError> {
    let (a, b) = (one.apex(), other.apex());
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
                |p| format!("meet {:.0} mm from an apex, where {APEX_REACH:.0} are allowed", far(p))
            )
        ),
        advice: "move one of them next to the other instead (dart_relocation), or leave both".to_owned(),
    })
}

/// The piece with a dart aimed at a point on its centre line: legs end where they did, the mouth
/// is shaped anew, and the edge meets the legs so that it still closes without a corner.
fn aimed(piece: &Piece, dart: &Dart, apex: Point) -> Result<Piece, AlterationError> {
    let old = dart.apex();
    if old.distance(apex) <= tolerance::POINT {
        return Ok(piece.clone());
    }
    let missing = || AlterationError::Missing {
        what: format!("an edge with the {} dart", dart.name),
        advice: "only darts with one apex, open on an edge, can be merged",
    };
    let name = dart.edge.as_ref().ok_or_else(missing)?;
    let curve = piece.outline().edge(name).ok_or_else(missing)?.curve();
    let mouths = piece.mouths(name);
    let place = mouths.iter().position(|(d, ..)| d.name == dart.name);
    let place = place.ok_or_else(missing)?;
    let (_, from, to) = mouths[place];
    // Plain edge beside the dart, to the corner or the next dart.
    let room_before = from - place.checked_sub(1).map_or(0.0, |p| mouths[p].2);
    let room_after = mouths.get(place + 1).map_or(curve.length(), |m| m.1) - to;
    let over = |room: f64| CORNER_BLEND.min(0.6 * room);

    let [first, second] = dart.legs;
    let opens = |at: Point| angle_between(second - at, first - at);
    let corner = 0.5 * (opens(old) - opens(apex));
    let turned =
        |angle: f64, direction| Rigid::turn_about(Point::ORIGIN, angle).apply_direction(direction);
    let (before, after) = (curve.part(0.0, from)?, curve.part(to, curve.length())?);
    let before = blend_end(
        &before,
        first,
        turned(-corner, before.end_direction()),
        over(room_before),
    )?;
    let after = blend_start(
        &after,
        second,
        turned(corner, after.start_direction()),
        over(room_after),
    )?;
    let dart = Dart {
        apexes: Apexes::One(apex),
        ..dart.clone()
    };
    let drawn = with_mouth(&before, &dart, &after)?;
    let mut sketch = Sketch::of(piece);
    sketch.replace(name, drawn)?;
    if let Some(slot) = sketch.dart_mut(&dart.name) {
        *slot = dart;
    }
    let whole = sketch.finish()?;
    let mut parts = whole.clone().into_parts();
    for notch in parts.notches.iter_mut().filter(|n| &n.edge == name) {
        notch.at = whole.open_position(name, piece.sewn_position(name, notch.at));
    }
    Ok(Piece::new(parts)?)
}
