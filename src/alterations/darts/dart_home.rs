//! Darts brought back to where a block is altered, and away again.
//!
//! A cutter alters the block with its darts where they were drafted: the bust dart at the side seam,
//! the dart over the blade on the shoulder. One that was moved is brought back there for an
//! alteration that needs it there, and then to its new place again.

use super::dart_opening::Opening;
use super::dart_swing::Swing;
use super::dart_tip::{bust_fullness, tip_backed_off, tip_to_fullness};
use crate::alterations::AlterationError;
use crate::alterations::cutting::refit::redrawn;
use crate::alterations::sleeves::sleeve::replaced;
use crate::geometry::Span;
use crate::piece::{Apexes, BodySide, Dart, EdgeName, Pattern, Piece};

/// The bust dart is brought to the side seam at a level so far below the bust point, in
/// millimetres, but clear of the underarm and of the waist.
const BELOW_BUST: f64 = 20.0;
const CLEAR: f64 = 45.0;

/// The dart over the blade is brought to the shoulder at this share of it from the neck (value from
/// memory: near the middle).
const ON_SHOULDER: f64 = 0.45;

/// Places beside the wanted one that are tried where that is taken, as shares of the edge.
const BESIDE: [f64; 5] = [0.0, 0.08, -0.08, 0.16, -0.16];

/// How a dart goes away again.
#[derive(Debug, Clone)]
struct Away {
    /// Base name of its piece, and the side that it is for where the halves are unlike.
    piece: String,
    side: Option<BodySide>,
    /// The dart at home that it is part of, or is.
    home: String,
    name: String,
    edge: EdgeName,
    /// Where on that edge as sewn, as a share of it.
    at: f64,
    /// Which share of what is at home then goes.
    share: f64,
}

/// A pattern with its darts at home.
pub(in crate::alterations) struct AtHome {
    pub pattern: Pattern,
    /// In the order in which they go away again.
    away: Vec<Away>,
}

impl AtHome {
    /// The pattern with its darts brought home; nothing where all of them are.
    pub fn of(pattern: &Pattern) -> Result<Option<Self>, AlterationError> {
        let mut home = Self {
            pattern: pattern.clone(),
            away: Vec::new(),
        };
        for piece in pattern.pieces() {
            home.bring(piece)?;
        }
        Ok((!home.away.is_empty()).then_some(home))
    }

    /// An altered pattern with its darts where they were.
    pub fn away_again(&self, altered: &Pattern) -> Result<Pattern, AlterationError> {
        let mut pattern = altered.clone();
        for away in &self.away {
            for piece in altered.pieces() {
                let piece = pattern.piece(piece.name()).unwrap_or(piece);
                let own = piece.base_name() == away.piece
                    && (away.side.is_none() || piece.side() == away.side);
                let Some(dart) = piece.dart(&away.home).filter(|_| own) else {
                    continue;
                };
                let place = |piece: &Piece| Opening::place(piece, &away.edge, away.at);
                let moved = moved(piece, dart, (&place, &away.name), away.share)?;
                pattern = replaced(&pattern, moved)?;
            }
        }
        Ok(pattern)
    }

    /// Brings the darts of one piece home.
    fn bring(&mut self, piece: &Piece) -> Result<(), AlterationError> {
        let Some((edge, darts)) = astray(piece) else {
            return Ok(());
        };
        let mut at_home = piece
            .darts()
            .iter()
            .find(|d| d.edge.as_ref() == Some(&edge) && belongs(piece, d))
            .map(|d| d.name.clone());
        let mut piece = piece.clone();
        for name in darts {
            let Some(dart) = piece.dart(&name).cloned() else {
                continue;
            };
            let Some((from, at)) = place_of(&piece, &dart) else {
                continue;
            };
            let mut away = Away {
                piece: piece.base_name().to_owned(),
                side: piece.side(),
                home: name.clone(),
                name: name.clone(),
                edge: from,
                at,
                share: 1.0,
            };
            if let Some(home) = &at_home {
                let there = piece.dart(home).map_or(0.0, |d| piece.dart_angle(d));
                let own = piece.dart_angle(&dart);
                away.share = own / (own + there);
                away.home.clone_from(home);
                let missing = || AlterationError::Missing {
                    what: format!("the {home} dart on an edge"),
                    advice: "move darts that open on an edge",
                };
                let widened = |piece: &Piece| Opening::dart(piece, home).ok_or_else(missing);
                piece = moved(&piece, &dart, (&widened, home), 1.0)?;
            } else {
                piece = brought(&piece, &dart, &edge)?;
                at_home = Some(name.clone());
            }
            piece = redrawn(piece, &away.edge)?;
            // What came last goes first.
            self.away.insert(0, away);
        }
        self.pattern = replaced(&self.pattern, piece)?;
        Ok(())
    }
}

/// The edge at which the darts of a piece are at home, and the names of those that are elsewhere.
fn astray(piece: &Piece) -> Option<(EdgeName, Vec<String>)> {
    let has = |name: &EdgeName| piece.outline().edge(name).is_some();
    if !has(&EdgeName::ARMSCYE) || !has(&EdgeName::SHOULDER) || !has(&EdgeName::SIDE_SEAM) {
        return None;
    }
    let home = if piece.bust_point().is_some() {
        EdgeName::SIDE_SEAM
    } else {
        EdgeName::SHOULDER
    };
    let elsewhere = |d: &&Dart| d.edge.as_ref() != Some(&home) && belongs(piece, d);
    let darts: Vec<String> = piece
        .darts()
        .iter()
        .filter(elsewhere)
        .map(|d| d.name.clone())
        .collect();
    (!darts.is_empty()).then_some((home, darts))
}

/// Whether a dart is one for the bust, or for the blade: it points at the bust point, or opens on an
/// upper edge of a back.
fn belongs(piece: &Piece, dart: &Dart) -> bool {
    let Some(edge) = dart
        .edge
        .as_ref()
        .filter(|_| matches!(dart.apexes, Apexes::One(_)))
    else {
        return false;
    };
    let drafted_below = *edge == EdgeName::WAIST && dart.name.starts_with("waist");
    match piece.bust_point() {
        Some(_) => !drafted_below && piece.fullness(dart) != dart.apex(),
        None => [EdgeName::SHOULDER, EdgeName::NECKLINE, EdgeName::ARMSCYE].contains(edge),
    }
}

/// Where a dart opens: the edge, and the share of it as sewn.
fn place_of(piece: &Piece, dart: &Dart) -> Option<(EdgeName, f64)> {
    let edge = dart.edge.clone()?;
    let mouths = piece.mouths(&edge);
    let (_, from, _) = mouths.iter().find(|(d, ..)| d.name == dart.name)?;
    let at = piece.sewn_position(&edge, *from) / piece.seam_length(&edge)?;
    Some((edge, at))
}

/// The piece with a dart brought to an edge where it is at home.
fn brought(piece: &Piece, dart: &Dart, edge: &EdgeName) -> Result<Piece, AlterationError> {
    let wanted = if *edge == EdgeName::SIDE_SEAM {
        level_with_bust(piece).unwrap_or(0.4)
    } else {
        ON_SHOULDER
    };
    let mut refused = None;
    for beside in BESIDE {
        let at = Span::from_low(0.02, 0.96).nearest(wanted + beside);
        let place = |piece: &Piece| Opening::place(piece, edge, at);
        match moved(piece, dart, (&place, &dart.name), 1.0) {
            Ok(made) => return Ok(made),
            Err(e) => refused = refused.or(Some(e)),
        }
    }
    Err(refused.unwrap_or_else(|| crate::geometry::GeometryError::Empty.into()))
}

/// The share of the side seam as sewn that lies a little below the bust point.
fn level_with_bust(piece: &Piece) -> Option<f64> {
    let seam = piece.outline().edge(&EdgeName::SIDE_SEAM)?.curve();
    let bust = piece.bust_point()?;
    let waist = piece.line("waist").map(|line| line.curve.end());
    let waist = waist.map_or(seam.length(), |end| seam.nearest(end).1);
    let at = (bust.y + BELOW_BUST - seam.start().y)
        .min(waist - CLEAR)
        .max(CLEAR);
    let sewn = piece.sewn_position(&EdgeName::SIDE_SEAM, at);
    Some(sewn / piece.seam_length(&EdgeName::SIDE_SEAM)?)
}

/// Where on a piece a dart is opened.
type Place<'a> = &'a dyn Fn(&Piece) -> Result<Opening, AlterationError>;

/// The piece with a share of a dart moved to a place, under a name there; all tips as far from the
/// bust point as their places want.
fn moved(
    piece: &Piece,
    dart: &Dart,
    (place, name): (Place<'_>, &str),
    share: f64,
) -> Result<Piece, AlterationError> {
    let fullness = bust_fullness(piece, dart);
    let mut aimed = tip_to_fullness(piece, dart)?;
    if let Some(other) = aimed.dart(name).filter(|_| name != dart.name).cloned() {
        aimed = tip_to_fullness(&aimed, &other)?;
    }
    let swing = Swing {
        piece: &aimed,
        dart: aimed.dart(&dart.name).unwrap_or(dart),
        share,
        into: place(&aimed)?,
        name: name.to_owned(),
    };
    let made = tip_backed_off(&swing.made()?, name, fullness)?;
    if name == dart.name || share >= 1.0 {
        return Ok(made);
    }
    tip_backed_off(&made, &dart.name, fullness)
}
