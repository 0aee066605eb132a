//! A pattern from its traced pieces.

use super::TracedError;
use super::named_path::NamedPath;
use super::place::Level;
use super::svg_paths::named_paths;
use super::traced_piece::Drawn;
use crate::draft::{Block, DraftOptions, SleeveLength, draft};
use crate::geometry::tolerance;
use crate::measurements::{Body, nearest};
use crate::piece::{
    EaseOn, EdgeName, Girth, Pattern, PatternParts, Piece, RunAlong, Seam, Warning,
};
use crate::units::Unit;

/// Two edges that are sewn together may differ by this, in millimetres: the longer one is eased in,
/// which nobody sees (value from memory), and a warning says so.
const EASED: f64 = 2.0;

/// Reads a block of a kind from an SVG drawing in true size.
///
/// `names` gives paths of the drawing, by their ids, the names that they have here. The body is the one that the block
/// was made for: girths are compared with it. Outlines are closed over at most
/// [`CLOSED_WITHIN`](super::CLOSED_WITHIN), darts get legs of one length and a mouth that lies flush.
/// The pattern is not proved yet: [`OwnBlock`](crate::recipe::OwnBlock) proves it.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::drawing::{PatternLabels, pattern_sheet};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::{svg, traced::trace};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let skirt = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let drawing = svg::render(&pattern_sheet(&skirt, &PatternLabels::new("Skirt"))?);
/// let read = trace(&drawing, Block::Skirt, &[], &body)?;
/// let hem = |pattern: &blockwright::piece::Pattern| pattern.pieces()[0].outline().edges()[2].length();
/// assert!((hem(&read) - hem(&skirt)).abs() < 0.01);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`TracedError`] with the place in the drawing and what to do.
pub fn trace(
    text: &str,
    kind: Block,
    names: &[(String, String)],
    body: &Body,
) -> Result<Pattern, TracedError> {
    let paths = named_paths(text, names)?;
    let model = draft(body, &options(kind, &paths)).map_err(|source| TracedError::Draft {
        source,
        unit: Unit::Cm,
    })?;
    let pieces = || model.pieces().iter().map(Piece::name);
    if let Some(path) = paths
        .iter()
        .find(|path| !pieces().any(|name| name == path.piece))
    {
        let all = pieces().collect::<Vec<_>>().join("`, `").replace(' ', "-");
        let cure = nearest(&path.piece, pieces()).map_or_else(
            || format!("its pieces are `{all}`"),
            |near| format!("did you mean the piece `{}`?", near.replace(' ', "-")),
        );
        return Err(path.fault(format!("a {kind} block has no such piece"), cure));
    }
    let mut drawn: Vec<Drawn<'_>> = model
        .pieces()
        .iter()
        .map(|piece| Drawn::of(&paths, piece))
        .collect::<Result<_, _>>()?;
    share_levels(&mut drawn, model.pieces());
    let traced = drawn.iter().map(Drawn::piece).collect::<Result<_, _>>()?;
    sewn(traced, &model)
}

/// The options of the draft whose pieces these are.
fn options(kind: Block, paths: &[NamedPath]) -> DraftOptions {
    let mut options = DraftOptions::of(kind);
    let mut sleeve = paths
        .iter()
        .filter(|path| path.piece.ends_with("sleeve"))
        .peekable();
    if sleeve.peek().is_some() {
        let long = sleeve.any(|path| path.part == EdgeName::WRIST.as_str());
        options.sleeve = Some(if long {
            SleeveLength::Long
        } else {
            SleeveLength::Short
        });
    }
    if kind.is_one_piece() {
        options.waist_darts = Some(paths.iter().any(|path| path.part == "waist_dart"));
    }
    options
}

/// Lets the pieces down to levels they share: backs by the nape, fronts by the waist of their backs;
/// skirt fronts by their waists, skirt backs by the hips.
fn share_levels(drawn: &mut [Drawn<'_>], models: &[Piece]) {
    let has = |piece: &Piece, name: &EdgeName| piece.outline().edge(name).is_some();
    // The piece at which a level begins, and the one that shares it.
    for on_trunk in [true, false] {
        let of = |fold: &EdgeName| {
            models
                .iter()
                .position(|piece| has(piece, fold) && has(piece, &EdgeName::NECKLINE) == on_trunk)
        };
        let (back, front) = (of(&EdgeName::CENTRE_BACK), of(&EdgeName::CENTRE_FRONT));
        let (first, second) = if on_trunk {
            (back, front)
        } else {
            (front, back)
        };
        let (Some(first), Some(second)) = (first, second) else {
            continue;
        };
        if let Some(first) = drawn.get_mut(first) {
            first.move_down(-first.first_corner());
        }
        let levels: &[Level] = if on_trunk {
            &[Level::Waist, Level::Hip, Level::Hem]
        } else {
            &[Level::Hip, Level::Hem]
        };
        let shared = levels.iter().find_map(|level| {
            let here = drawn.get(first)?.level(*level)?;
            Some(here - drawn.get(second)?.level(*level)?)
        });
        if let (Some(by), Some(second)) = (shared, drawn.get_mut(second)) {
            second.move_down(by);
        }
    }
}

/// The pieces sewn as the model's are, with the ease and the girths that they have.
fn sewn(pieces: Vec<Piece>, model: &Pattern) -> Result<Pattern, TracedError> {
    for girth in model.girths() {
        has_runs(&pieces, girth)?;
    }
    let wrong = |source| TracedError::Parts {
        name: model.block().to_owned(),
        source,
    };
    let parts = PatternParts {
        block: model.block().to_owned(),
        pieces,
        seams: model.seams().to_vec(),
        girths: model.girths().to_vec(),
        warnings: Vec::new(),
    };
    let pattern = Pattern::new(parts).map_err(wrong)?;
    let mut warnings = Vec::new();
    let seams = pattern
        .seams()
        .iter()
        .map(|seam| eased(seam, &pattern, &mut warnings));
    let seams = seams.collect();
    let girths = pattern.girths().iter().map(|girth| {
        let mut girth = girth.clone();
        girth.ease = pattern.finished(&girth) - girth.body;
        girth
    });
    let girths = girths.collect();
    let mut parts = pattern.into_parts();
    parts.seams = seams;
    parts.girths = girths;
    parts.warnings = warnings;
    Pattern::new(parts).map_err(wrong)
}

/// Refuses pieces that lack a line along which a girth is measured.
fn has_runs(pieces: &[Piece], girth: &Girth) -> Result<(), TracedError> {
    for run in &girth.runs {
        let RunAlong::Line(name) = &run.along else {
            continue;
        };
        let piece = pieces.iter().find(|piece| piece.name() == run.piece);
        if piece.is_none_or(|piece| piece.line(name).is_none()) {
            return Err(TracedError::Missing {
                name: format!("{}.{name}_line", run.piece).replace(' ', "-"),
                place: format!(
                    "the {} girth is measured along this line, from the fold or seam straight across",
                    girth.name
                ),
            });
        }
    }
    Ok(())
}

/// A seam with the ease that its edges have.
fn eased(seam: &Seam, pattern: &Pattern, warnings: &mut Vec<Warning>) -> Seam {
    let length = |side: &[crate::piece::EdgeRef]| -> f64 {
        side.iter()
            .filter_map(|edge| pattern.seam_length(edge))
            .sum()
    };
    let more = length(&seam.a) - length(&seam.b);
    let longer = if more > 0.0 { EaseOn::A } else { EaseOn::B };
    let mut seam = seam.clone();
    let wanted = seam.ease_on == Some(longer);
    if wanted {
        seam.ease = more.abs();
    } else if more.abs() <= tolerance::SEAM_ALTERED {
        (seam.ease, seam.ease_on) = (0.0, None);
    } else if more.abs() <= EASED {
        (seam.ease, seam.ease_on) = (more.abs(), Some(longer));
        let side = if more > 0.0 { &seam.a } else { &seam.b };
        let names: Vec<String> = side.iter().map(ToString::to_string).collect();
        let text = format!(
            "in the seam `{}` {} is drawn {:.1} mm longer and is eased in",
            seam.name,
            names.join(" + "),
            more.abs()
        );
        warnings.push(Warning::new("drawn_unequal", text));
    }
    seam
}
