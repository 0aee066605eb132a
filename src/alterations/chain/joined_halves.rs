//! A left and a right pattern put together again to one with unlike halves.

use crate::alterations::AlterationError;
use crate::geometry::{Curve, Point, tolerance};
use crate::piece::{
    BodySide, Cut, Edge, EdgeName, EdgeRef, EdgeRole, Girth, GirthRun, Outline, Pattern,
    PatternParts, Piece, Seam, Warning,
};
use kurbo::ParamCurve;

/// Puts the patterns of both sides together: pieces that agree are shared, the others are cut
/// once for each side, and a piece that was on the fold gets a seam down its middle.
///
/// # Errors
/// When the parts do not hold together.
pub(in crate::alterations) fn joined(
    left: &Pattern,
    right: &Pattern,
) -> Result<Pattern, AlterationError> {
    Halves::of(left, right).joined()
}

/// Both halves, and the names of the pieces in which they differ.
struct Halves<'p> {
    left: &'p Pattern,
    right: &'p Pattern,
    unlike: Vec<&'p str>,
}

impl<'p> Halves<'p> {
    fn of(left: &'p Pattern, right: &'p Pattern) -> Self {
        let differs =
            |p: &&Piece, other: &Pattern| other.piece(p.name()).is_none_or(|q| !alike(p, q));
        let mut unlike: Vec<&str> = Vec::new();
        for (pattern, other) in [(left, right), (right, left)] {
            let found = pattern.pieces().iter().filter(|p| differs(p, other));
            unlike.extend(found.map(Piece::name));
        }
        Self {
            left,
            right,
            unlike,
        }
    }

    fn side(&self, side: BodySide) -> &'p Pattern {
        match side {
            BodySide::Left => self.left,
            BodySide::Right => self.right,
        }
    }

    fn is_unlike(&self, piece: &str) -> bool {
        self.unlike.contains(&piece)
    }

    /// The unique name of a piece of one side.
    fn name(&self, piece: &str, side: BodySide) -> String {
        if self.is_unlike(piece) {
            side.name_of(piece)
        } else {
            piece.to_owned()
        }
    }

    fn joined(&self) -> Result<Pattern, AlterationError> {
        let mut seams = self.seams();
        seams.extend(self.middle_seams()?);
        Ok(Pattern::new(PatternParts {
            block: self.left.block().to_owned(),
            pieces: self.pieces()?,
            seams,
            girths: self.girths(),
            warnings: self.warnings(),
        })?)
    }

    /// The pieces in the left one's order, those that only the right half has behind them.
    fn pieces(&self) -> Result<Vec<Piece>, AlterationError> {
        let mut found = Vec::new();
        for piece in self.left.pieces() {
            if !self.is_unlike(piece.name()) {
                found.push(piece.clone());
                continue;
            }
            found.push(self.single(piece, BodySide::Left)?);
            if let Some(other) = self.right.piece(piece.name()) {
                found.push(self.single(other, BodySide::Right)?);
            }
        }
        for piece in self.right.pieces() {
            if self.left.piece(piece.name()).is_none() {
                found.push(self.single(piece, BodySide::Right)?);
            }
        }
        Ok(found)
    }

    /// The piece for one side of the body, its fold a seam.
    ///
    /// A back and a sleeve are drawn as the wearer's right looks from outside, a front as her
    /// left; the other side is cut with the pattern face down.
    fn single(&self, piece: &Piece, side: BodySide) -> Result<Piece, AlterationError> {
        let drawn_as = if is_front(self.side(side), piece) {
            BodySide::Left
        } else {
            BodySide::Right
        };
        let mut parts = piece.clone().into_parts();
        parts.name = side.name_of(&parts.name);
        parts.side = Some(side);
        parts.cut = if side == drawn_as {
            Cut::Single
        } else {
            Cut::SingleFaceDown
        };
        let edges = parts.outline.edges().iter().map(|edge| {
            let role = match edge.role() {
                EdgeRole::Fold => EdgeRole::Seam,
                other => other,
            };
            Edge::new(edge.name().clone(), role, edge.curve().clone())
        });
        parts.outline = Outline::new(edges.collect())?;
        Ok(Piece::new(parts)?)
    }

    /// The seams but those down the middle: shared where they are alike, else one on each side.
    fn seams(&self) -> Vec<Seam> {
        let find = |side, name: &str| -> Option<&'p Seam> {
            self.side(side).seams().iter().find(|s| s.name == name)
        };
        let mut found = Vec::new();
        let of_right = self.right.seams().iter();
        let only_right = of_right.filter(|s| find(BodySide::Left, &s.name).is_none());
        for seam in self.left.seams().iter().chain(only_right) {
            let sides = BodySide::BOTH.map(|side| find(side, &seam.name));
            let mut edges = seam.a.iter().chain(&seam.b);
            if sides[0] == sides[1] && !edges.any(|e| self.is_unlike(&e.piece)) {
                found.push(seam.clone());
                continue;
            }
            for (side, of) in BodySide::BOTH.into_iter().zip(sides) {
                let Some(mut own) = of.cloned() else { continue };
                own.name = side.name_of(&own.name);
                own.side = Some(side);
                for edge in own.a.iter_mut().chain(&mut own.b) {
                    edge.piece = self.name(&edge.piece, side);
                }
                found.push(own);
            }
        }
        found
    }

    /// A seam for every fold of which the halves have become unlike.
    fn middle_seams(&self) -> Result<Vec<Seam>, AlterationError> {
        let folds = |side: BodySide| {
            let pieces = self.side(side).pieces().iter();
            let unlike = pieces.filter(|p| self.is_unlike(p.name()));
            unlike.filter_map(|p| Some((p.name(), fold_of(p)?)))
        };
        let mut right: Vec<(&str, EdgeName)> = folds(BodySide::Right).collect();
        let mut found = Vec::new();
        for (piece, edge) in folds(BodySide::Left) {
            let at = right
                .iter()
                .position(|(name, _)| *name == piece)
                .or_else(|| right.iter().position(|(_, other)| *other == edge))
                .ok_or_else(|| no_partner(piece, &edge, BodySide::Right))?;
            let (other, other_edge) = right.remove(at);
            found.push(Seam::plain(
                format!("centre seam of the {piece}"),
                EdgeRef::new(self.name(piece, BodySide::Left), edge),
                EdgeRef::new(self.name(other, BodySide::Right), other_edge),
            ));
        }
        match right.first() {
            Some((piece, edge)) => Err(no_partner(piece, edge, BodySide::Left)),
            None => Ok(found),
        }
    }

    /// The girths: of the trunk each side gives its half, a limb has its own on each.
    fn girths(&self) -> Vec<Girth> {
        let find = |side, name: &str| -> Option<&'p Girth> {
            self.side(side).girths().iter().find(|g| g.name == name)
        };
        let mut found = Vec::new();
        let of_right = self.right.girths().iter();
        let only_right = of_right.filter(|g| find(BodySide::Left, &g.name).is_none());
        for girth in self.left.girths().iter().chain(only_right) {
            let sides = BodySide::BOTH.map(|side| find(side, &girth.name));
            let mut runs = sides.iter().flatten().flat_map(|g| &g.runs);
            if sides[0].is_some() && sides[1].is_some() {
                if !runs.any(|r| self.is_unlike(&r.piece)) {
                    found.push(girth.clone());
                    continue;
                }
                if !girth.limb {
                    found.push(self.around(girth, sides));
                    continue;
                }
            }
            for (side, of) in BodySide::BOTH.into_iter().zip(sides) {
                let Some(of) = of else { continue };
                found.push(Girth {
                    name: side.name_of(&of.name),
                    side: Some(side),
                    runs: self.runs(of, side),
                    ..of.clone()
                });
            }
        }
        found
    }

    fn runs(&self, girth: &Girth, side: BodySide) -> Vec<GirthRun> {
        let on = |run: &GirthRun| GirthRun {
            piece: self.name(&run.piece, side),
            along: run.along.clone(),
        };
        girth.runs.iter().map(on).collect()
    }

    /// A girth of the trunk: a shared piece, on the fold or cut as a pair, counts for both sides.
    fn around(&self, girth: &Girth, sides: [Option<&Girth>; 2]) -> Girth {
        let mut runs: Vec<GirthRun> = Vec::new();
        let mut ease = 0.0;
        for (side, of) in BodySide::BOTH.into_iter().zip(sides) {
            let Some(of) = of else { continue };
            ease += 0.5 * of.ease;
            let new = self.runs(of, side).into_iter();
            runs.extend(new.filter(|run| side == BodySide::Left || !self.shares(run)));
        }
        Girth {
            ease,
            runs,
            ..girth.clone()
        }
    }

    /// Whether a run lies on a piece that both halves share.
    fn shares(&self, run: &GirthRun) -> bool {
        self.left.piece(&run.piece).is_some() && !self.is_unlike(&run.piece)
    }

    fn warnings(&self) -> Vec<Warning> {
        let mut found = self.left.warnings().to_vec();
        for warning in self.right.warnings() {
            if !found.contains(warning) {
                found.push(warning.clone());
            }
        }
        found
    }
}

fn no_partner(piece: &str, edge: &EdgeName, side: BodySide) -> AlterationError {
    AlterationError::First {
        why: format!("the {edge} of the {piece} has nothing to be sewn to on the {side} side"),
        advice: "make the alteration on both sides".to_owned(),
    }
}

fn fold_of(piece: &Piece) -> Option<EdgeName> {
    let fold = |e: &&Edge| e.role() == EdgeRole::Fold;
    let edges = piece.outline().edges();
    edges.iter().find(fold).map(|e| e.name().clone())
}

/// Whether a piece covers the front of the body: it has the centre front, or hangs together with
/// a piece that has it by other seams than side, shoulder and armscye.
fn is_front(pattern: &Pattern, piece: &Piece) -> bool {
    let has_centre = |name: &str| {
        let found = pattern.piece(name);
        found.is_some_and(|p| p.outline().edge(&EdgeName::CENTRE_FRONT).is_some())
    };
    let bounds = [
        EdgeName::SIDE_SEAM,
        EdgeName::SHOULDER,
        EdgeName::ARMSCYE,
        EdgeName::SLEEVE_CAP,
    ];
    let mut reached = vec![piece.name()];
    let mut next = 0;
    while let Some(name) = reached.get(next).copied() {
        if has_centre(name) {
            return true;
        }
        next += 1;
        for seam in pattern.seams() {
            let mut edges = seam.a.iter().chain(&seam.b);
            if edges.any(|e| bounds.contains(&e.edge)) {
                continue;
            }
            let of = |edges: &'_ [EdgeRef]| edges.iter().any(|e| e.piece == name);
            let across = if of(&seam.a) {
                &seam.b
            } else if of(&seam.b) {
                &seam.a
            } else {
                continue;
            };
            for edge in across {
                if !reached.contains(&edge.piece.as_str()) {
                    reached.push(&edge.piece);
                }
            }
        }
    }
    false
}

/// Whether two pieces are the same but for rounding.
fn alike(a: &Piece, b: &Piece) -> bool {
    let close = |p: Point, q: Point| p.distance(q) <= tolerance::SEAM_DRAFTED * 0.1;
    let same = |a: &Curve, b: &Curve| {
        a.segments().len() == b.segments().len()
            && a.segments().iter().zip(b.segments()).all(|(s, t)| {
                let at = [0.0, 0.3, 0.7, 1.0];
                at.iter().all(|u| close(s.eval(*u), t.eval(*u)))
            })
    };
    let edges = pairs(a.outline().edges(), b.outline().edges(), |e, f| {
        e.name() == f.name() && e.role() == f.role() && same(e.curve(), f.curve())
    });
    let darts = pairs(a.darts(), b.darts(), |d, e| {
        d.name == e.name
            && d.edge == e.edge
            && close(d.apex(), e.apex())
            && close(d.legs[0], e.legs[0])
            && close(d.legs[1], e.legs[1])
    });
    let notches = pairs(a.notches(), b.notches(), |n, m| {
        n.name == m.name && n.edge == m.edge && (n.at - m.at).abs() <= tolerance::SEAM_DRAFTED
    });
    let lines = pairs(a.lines(), b.lines(), |l, m| {
        l.name == m.name && same(&l.curve, &m.curve)
    });
    let points = pairs(a.points(), b.points(), |p, q| {
        p.name == q.name && close(p.at, q.at)
    });
    edges && darts && notches && lines && points
}

/// Whether two lists are of one length and agree item by item.
fn pairs<T>(a: &[T], b: &[T], agree: impl Fn(&T, &T) -> bool) -> bool {
    a.len() == b.len() && a.iter().zip(b).all(|(x, y)| agree(x, y))
}
