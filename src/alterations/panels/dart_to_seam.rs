//! Darts made into a seam that divides their piece in two.

use super::panel_back::{BackSeam, Ready};
use super::panel_bow;
use super::panel_corner::Bow;
use super::panel_lines::{check_bent_once, check_climb, measured_lines};
use super::panel_path::panel_path;
use super::panel_pieces::{Division, PARTS, part_name};
use super::panel_plan::{Through, plan};
use crate::alterations::chain::promise::girths_stay;
use crate::alterations::darts::dart_finding::SAME_GIRTH;
use crate::alterations::darts::dart_opening::Opening;
use crate::alterations::darts::dart_tip::tip_to_fullness;
use crate::alterations::shoulders::blade_eased::{KEPT, eased_warning, with_dart_eased};
use crate::alterations::{Alteration, AlterationError, Altered, Part, Promise, StructureChange};
use crate::geometry::{GeometryError, tolerance};
use crate::invariants::{Tolerances, is_valid};
use crate::piece::{
    EdgeName, EdgeRef, GirthRun, Measure, Pattern, PatternParts, Piece, RunAlong, Seam,
};
use serde::{Deserialize, Serialize};

/// Takes up darts in a seam through their apexes, which divides the piece in two.
///
/// For a panelled cut: the bust dart, moved to shoulder or armscye, and the waist dart become
/// one seam from edge to edge. Give two darts, or one dart and the place where the seam ends, or
/// two darts and a place: then the first of them is brought to the seam from there, also where no
/// straight dart would fit, high on an armscye. A double-pointed waist dart is followed down one
/// side, and on from its lower point to the hem.
///
/// The seam runs over the point of fullness, on a front the bust point: the tips of its darts,
/// backed off from there, are brought back first. It follows the legs of the darts, bent once on
/// each piece over at most 60 mm on either side, so that the side piece has one even curve over
/// the bust and the centre piece no counter-curve. Both bends are placed so that the edges are
/// equally long, every girth stays, and the seam passes within 8 mm of the point. It is notched
/// 45 mm above and below. Where two darts end in different places, it is rounded at each apex.
///
/// From the armscye of a back the seam sweeps into the waist dart in one bend. The tip of the dart
/// over the blade goes to it first: from high on the armscye where it crosses the width line, from
/// lower where it crosses the underarm line. What the longer dart takes from the back width is
/// given back at the armscye; where the armscye cannot, part of the dart is eased into the shoulder.
///
/// The pieces are named after the old one, `front centre` and `front side`. The centre piece
/// keeps the fold, the side piece is cut as a pair, its grain parallel to that of the centre.
/// Every seam that crosses the new one then has two edges on that side.
///
/// ```
/// use blockwright::alterations::{Alteration, DartRelocation, DartToSeam, alter};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0),
///     (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 740.0),
///     (Measurement::HipGirth, 990.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Bodice))?;
/// let steps: [Box<dyn Alteration>; 2] = [
///     Box::new(DartRelocation::to("bust", "shoulder", 0.5)),
///     Box::new(DartToSeam::of("bust", "waist").on("front")),
/// ];
/// let done = alter(&pattern, &steps)?;
/// assert!(done.pattern.piece("front side").is_some());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/dart_to_seam.svg")]
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DartToSeam {
    /// Names of two darts that the seam takes up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub darts: Option<[String; 2]>,
    /// Name of the one dart that it takes up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub dart: Option<String>,
    /// The edge where the seam's other end is; with two darts, where the first is brought to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<String>,
    /// Where along that edge as sewn, from 0 at its start to 1; the middle unless given.
    #[serde(default = "middle")]
    pub at: f64,
    /// The piece, where several have darts of those names.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub piece: Option<String>,
}

fn middle() -> f64 {
    0.5
}

impl DartToSeam {
    /// A seam through two darts.
    #[must_use]
    pub fn of(first: impl Into<String>, second: impl Into<String>) -> Self {
        Self {
            darts: Some([first.into(), second.into()]),
            dart: None,
            to: None,
            at: middle(),
            piece: None,
        }
    }

    /// A seam through one dart to a place on an edge.
    #[must_use]
    pub fn through(dart: impl Into<String>, edge: impl Into<String>, at: f64) -> Self {
        Self {
            darts: None,
            dart: Some(dart.into()),
            to: Some(edge.into()),
            at,
            piece: None,
        }
    }

    /// With two darts, the first brought to a place on an edge.
    #[must_use]
    pub fn by(self, edge: impl Into<String>, at: f64) -> Self {
        Self {
            to: Some(edge.into()),
            at,
            ..self
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

    /// Names of the darts, and the place where the seam ends when there is one.
    fn wanted(&self) -> Result<(Vec<&str>, Option<&str>), AlterationError> {
        match (&self.darts, &self.dart, &self.to) {
            (Some([one, other]), None, to) if one != other => {
                Ok((vec![one, other], to.as_deref()))
            }
            (None, Some(dart), Some(to)) => Ok((vec![dart], Some(to))),
            _ => Err(AlterationError::Setting(
                "say either darts: with two names, and to: where the first is to go to another edge, or dart: and to: with the edge where the seam ends"
                    .to_owned(),
            )),
        }
    }

    /// The one piece that has the darts.
    fn piece<'p>(&self, pattern: &'p Pattern) -> Result<&'p Piece, AlterationError> {
        let (names, _) = self.wanted()?;
        let having: Vec<&Piece> = pattern
            .pieces()
            .iter()
            .filter(|p| self.piece.as_deref().is_none_or(|on| p.name() == on))
            .filter(|p| names.iter().all(|name| p.dart(name).is_some()))
            .collect();
        match having.as_slice() {
            [one] => Ok(one),
            [] => Err(AlterationError::Missing {
                what: format!("a piece with the darts named ({})", names.join(", ")),
                advice: "a seam is made of darts that lie on one piece",
            }),
            several => {
                let names: Vec<&str> = several.iter().map(|p| p.name()).collect();
                Err(AlterationError::Setting(format!(
                    "several pieces have such darts; say which with piece: {}",
                    names.join(" or ")
                )))
            }
        }
    }
}

impl Alteration for DartToSeam {
    fn name(&self) -> &'static str {
        "dart_to_seam"
    }

    fn amount(&self) -> Option<f64> {
        None
    }

    fn with_amount(&self, _amount: f64) -> Box<dyn Alteration> {
        Box::new(self.clone())
    }

    /// The piece gives way to its parts, named after it, and to the seam between them.
    fn structure_change(&self, before: &Pattern) -> StructureChange {
        let Ok(divided) = self.piece(before) else {
            return StructureChange::none();
        };
        let change = StructureChange::none().removes(Part::piece(divided.name()));
        let name = seam_name(divided, &fresh(divided));
        PARTS
            .into_iter()
            .fold(change.adds(Part::seam(name)), |change, part| {
                change.adds(Part::piece(part_name(divided, part)))
            })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let Ok(divided) = self.piece(before) else {
            return Vec::new();
        };
        let others = before
            .pieces()
            .iter()
            .filter(|p| p.name() != divided.name());
        let edges = others.flat_map(|piece| {
            let edges = piece.outline().edges().iter();
            edges.map(|e| Measure::edge_length(piece.name(), e.name().clone()))
        });
        // The tips of darts backed off from the bust point are brought back there.
        let brought_back = divided.bust_point().is_some();
        let kept = girths_stay(before, &[]).map(|p| {
            if brought_back {
                p.within(SAME_GIRTH)
            } else {
                p
            }
        });
        edges.map(Promise::exactly).chain(kept).collect()
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let (names, to) = self.wanted()?;
        let piece = tips_to_fullness(self.piece(pattern)?, &names)?;
        let place = to
            .map(|to| Opening::place(&piece, &EdgeName::new(to.to_owned()), self.at))
            .transpose()?;
        let (mut refused, mut broken) = (None, None);
        if let Some(place) = &place {
            match self.back_seam(pattern, &piece, place) {
                Ok(Some(made)) if sound(pattern, &made) => return Ok(made.into()),
                // With the blade's dart no other way is as calm.
                made @ (Ok(Some(_)) | Err(_)) if names.len() == 2 => {
                    return match self.partly_eased(pattern, &piece)? {
                        Some(eased) => Ok(eased),
                        None => Ok(made?.ok_or(GeometryError::Empty)?.into()),
                    };
                }
                Ok(made) => broken = made,
                Err(e) => refused = Some(e),
            }
        }
        for (slimmest, even) in panel_bow::SLIMMEST {
            for off in panel_bow::BOWS {
                let (routed, bow) = match (&place, names.as_slice()) {
                    (Some(place), [dart, other]) => {
                        panel_bow::brought(&piece, [*dart, *other], place, off)?
                    }
                    _ => (piece.clone(), Bow::default()),
                };
                let place = place.clone().filter(|_| names.len() == 1);
                let wanted = (&routed, names.as_slice(), place);
                match self.seamed(pattern, wanted, (off, bow), (slimmest, even)) {
                    Ok(made) if is_valid(&made, &Tolerances::altered()) => {
                        return Ok(made.into());
                    }
                    Ok(made) => broken = broken.or(Some(made)),
                    Err(e) => refused = refused.or(Some(e)),
                }
                if to.is_none() {
                    break;
                }
            }
        }
        match (broken, refused) {
            // Which rule it breaks is reported where every step is checked.
            (Some(broken), _) => Ok(broken.into()),
            (None, refused) => Err(refused.unwrap_or_else(|| GeometryError::Empty.into())),
        }
    }
}

impl DartToSeam {
    /// The pattern with a seam from the armscye of a back; nothing where it is another.
    fn back_seam(
        &self,
        pattern: &Pattern,
        piece: &Piece,
        place: &Opening,
    ) -> Result<Option<Pattern>, AlterationError> {
        let (names, _) = self.wanted()?;
        let seam = BackSeam {
            pattern,
            piece,
            names: &names,
            place,
            share: self.at,
            cut: &|ready| cut_along(pattern, ready, &names, 0.0),
            lines: &measured_lines(pattern, piece),
        };
        seam.made()
    }

    /// The same with part of a shoulder dart eased into the shoulder, as little as will do; nothing
    /// where that does not help.
    fn partly_eased(
        &self,
        pattern: &Pattern,
        piece: &Piece,
    ) -> Result<Option<Altered>, AlterationError> {
        let (names, Some(to)) = self.wanted()? else {
            return Ok(None);
        };
        let on_shoulder = |name: &&&str| {
            let dart = piece.dart(name);
            dart.is_some_and(|d| d.edge == Some(EdgeName::SHOULDER))
        };
        let Some(name) = names.iter().find(on_shoulder) else {
            return Ok(None);
        };
        for share in KEPT {
            let Some(eased) = with_dart_eased(pattern, piece, name, share)? else {
                break;
            };
            let on = self.piece(&eased)?;
            let place = Opening::place(on, &EdgeName::new(to.to_owned()), self.at)?;
            if let Ok(Some(made)) = self.back_seam(&eased, on, &place)
                && sound(pattern, &made)
            {
                let warnings = vec![eased_warning(pattern, &made, name)];
                return Ok(Some(Altered {
                    pattern: made,
                    warnings,
                }));
            }
        }
        Ok(None)
    }

    /// The pattern with the piece divided by a seam that is bowed by so much at its start.
    fn seamed(
        &self,
        pattern: &Pattern,
        (piece, names, place): (&Piece, &[&str], Option<Opening>),
        (off, bow): (f64, Bow),
        (slimmest, even): (f64, bool),
    ) -> Result<Pattern, AlterationError> {
        let one_dart = place.is_some();
        let mut through: Through = plan(piece, names, place)?;
        if let [start, over, to, ..] = through.nodes.as_mut_slice() {
            start.bow = if one_dart {
                Bow {
                    even,
                    ..Bow::sharing(off, &start.at, over.at[0], &to.at)
                }
            } else {
                bow
            };
        }
        let path = panel_path(&through.nodes, &measured_lines(pattern, piece))?;
        check_bent_once(piece, &through.nodes, &path)?;
        let ready = Ready {
            piece: piece.clone(),
            through,
            path,
        };
        cut_along(pattern, ready, names, slimmest)
    }
}

/// Whether a pattern can be sewn, with every girth as it was.
fn sound(before: &Pattern, made: &Pattern) -> bool {
    let stays = |(old, new)| (before.finished(old) - made.finished(new)).abs();
    let mut girths = before.girths().iter().zip(made.girths());
    girths.all(|pair| stays(pair) <= tolerance::SEAM_DRAFTED)
        && is_valid(made, &Tolerances::altered())
}

/// The pattern with the piece divided along a seam.
fn cut_along(
    pattern: &Pattern,
    ready: Ready,
    names: &[&str],
    slimmest: f64,
) -> Result<Pattern, AlterationError> {
    let piece = &ready.piece;
    let division = Division {
        piece,
        path: ready.path,
        ends: ready.through.ends,
        seam: fresh(piece),
        taken: names.iter().map(|n| (*n).to_owned()).collect(),
    };
    check_climb(&measured_lines(pattern, piece), &division)?;
    panel_bow::check_in_cloth(piece, &division, slimmest)?;
    let pieces = division.pieces()?;
    divided(pattern, &division, pieces)
}

/// The piece with the tips of the darts at their points of fullness: the seam runs there.
fn tips_to_fullness(piece: &Piece, names: &[&str]) -> Result<Piece, AlterationError> {
    let mut aimed = piece.clone();
    for name in names {
        if let Some(dart) = aimed.dart(name).filter(|d| d.edge.is_some()) {
            aimed = tip_to_fullness(&aimed, dart)?;
        }
    }
    Ok(aimed)
}

/// A name for the seam's edges that no edge of the piece has.
fn fresh(piece: &Piece) -> EdgeName {
    let numbered = (2..).map(|n| format!("panel_seam_{n}"));
    let mut names = std::iter::once("panel_seam".to_owned()).chain(numbered);
    let free = |name: &String| piece.outline().edge(&EdgeName::new(name.clone())).is_none();
    EdgeName::new(names.find(free).unwrap_or_default())
}

/// The name of the seam between the parts of a piece.
fn seam_name(piece: &Piece, seam: &EdgeName) -> String {
    format!("{} {}", piece.name(), seam.as_str().replace('_', " "))
}

/// The pattern with the piece divided: seams and girths run over both pieces.
fn divided(
    pattern: &Pattern,
    division: &Division<'_>,
    pieces: [Piece; 2],
) -> Result<Pattern, AlterationError> {
    let mut parts: PatternParts = pattern.clone().into_parts();
    let old = division.piece.name();
    for seam in &mut parts.seams {
        for side in [&mut seam.a, &mut seam.b] {
            *side = side
                .iter()
                .flat_map(|edge| {
                    if edge.piece == old {
                        split(edge, division, &pieces)
                    } else {
                        vec![edge.clone()]
                    }
                })
                .collect();
        }
    }
    for girth in &mut parts.girths {
        girth.runs = girth
            .runs
            .iter()
            .flat_map(|run| {
                if run.piece != old {
                    return vec![run.clone()];
                }
                let has = |piece: &&Piece| match &run.along {
                    RunAlong::Edge(name) => piece.outline().edge(name).is_some(),
                    RunAlong::Line(name) => piece.line(name).is_some(),
                };
                let on = |piece: &Piece| GirthRun {
                    piece: piece.name().to_owned(),
                    along: run.along.clone(),
                };
                pieces.iter().filter(has).map(on).collect()
            })
            .collect();
    }
    let seam = &division.seam;
    let name = seam_name(division.piece, seam);
    parts.seams.push(Seam::plain(
        name,
        EdgeRef::new(pieces[1].name(), seam.clone()),
        EdgeRef::against(pieces[0].name(), seam.clone()),
    ));
    let at = parts.pieces.iter().position(|p| p.name() == old);
    let at = at.unwrap_or(parts.pieces.len());
    let mut pieces = pieces.to_vec();
    // The centre piece first, as it is laid out.
    pieces.sort_by_key(|p| p.name() != part_name(division.piece, PARTS[0]));
    parts
        .pieces
        .splice(at..(at + 1).min(parts.pieces.len()), pieces);
    Ok(Pattern::new(parts)?)
}

/// An edge of the old piece on the new ones, in the order in which it was walked.
fn split(edge: &EdgeRef, division: &Division<'_>, pieces: &[Piece; 2]) -> Vec<EdgeRef> {
    // Along the outline the seam's start is reached on the piece before it, its end on the one
    // that follows the start.
    let starts_here = division.ends[0].edge == edge.edge;
    let [following, before] = pieces;
    let order = if starts_here == edge.against {
        [following, before]
    } else {
        [before, following]
    };
    order
        .into_iter()
        .filter(|piece| piece.outline().edge(&edge.edge).is_some())
        .map(|piece| EdgeRef {
            piece: piece.name().to_owned(),
            ..edge.clone()
        })
        .collect()
}
