//! One dart closed, wholly or in part, and its angle opened in another place: the panel
//! between the two is turned about the apex.

use super::dart_lines::{Cuts, redrawn};
use super::dart_obstacle::{Dividing, obstacle};
use super::dart_opening::{LONGEST_MOUTH, Opening, USUAL_MOUTH, hangs_over, mouth_share, pressed};
use super::dart_ring::{Fragment, Kind, Ring};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Region, Rigid, angle_between, tolerance};
use crate::piece::{Apexes, Cut, Dart, EdgeName, Piece, Pressed, shaped_mouth};

/// What becomes of the mouth of the new dart.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Mouth {
    /// It is shaped to lie in the seam, folded.
    Folded,
    /// It stays open: the piece is divided there.
    Open,
}

/// A step: how much of which dart goes where.
#[derive(Debug, Clone)]
pub(in crate::alterations) struct Swing<'p> {
    pub piece: &'p Piece,
    pub dart: &'p Dart,
    /// Share of the dart's angle that goes; all of it closes the dart.
    pub share: f64,
    pub into: Opening,
    /// Name of the dart opened.
    pub name: String,
}

impl Swing<'_> {
    /// The piece after it.
    pub fn made(&self) -> Result<Piece, AlterationError> {
        let made = self.made_anyhow()?;
        match hangs_over(&made, &self.name) {
            Some(why) => Err(AlterationError::Setting(why)),
            None => Ok(made),
        }
    }

    /// The piece after it, even where the fold of its new dart hangs over the next edge.
    pub fn made_anyhow(&self) -> Result<Piece, AlterationError> {
        match self.obstacle()? {
            Some(why) => Err(AlterationError::Setting(why)),
            None => self.turned(Mouth::Folded, None),
        }
    }

    /// The piece after it when a seam takes the new dart's place: its mouth is never folded, and
    /// the cut may be curved, so that nothing stands against it yet.
    pub fn made_for_seam(&self, cut: &Curve) -> Result<Piece, AlterationError> {
        self.turned(Mouth::Open, Some(cut))
    }

    /// The panel turned; it is cut straight, or along a curve from the new place to the apex.
    fn turned(&self, mouth: Mouth, cut: Option<&Curve>) -> Result<Piece, AlterationError> {
        let ring = Ring::of(self.piece, self.dart, &self.into)?;
        let [first, second] = self.dart.legs;
        let apex = self.dart.apex();
        let turn = angle_between(second - apex, first - apex) * self.share;
        let follows_moves = !ring.still_follows()?;
        let motion = Rigid::turn_about(apex, if follows_moves { turn } else { -turn });
        let of = |follows: bool| {
            if follows == follows_moves {
                motion
            } else {
                Rigid::IDENTITY
            }
        };
        let (follows, leads) = (of(true), of(false));
        let closed = self.share >= 1.0;
        let gap = [follows.apply(ring.slash[0]), leads.apply(ring.slash[1])];
        let opened = Dart {
            name: self.name.clone(),
            edge: Some(self.into.edge.clone()),
            legs: gap,
            apexes: Apexes::One(apex),
            pressed: pressed(self.piece, apex, gap),
        };
        let kept = Dart {
            legs: [leads.apply(first), follows.apply(second)],
            ..self.dart.clone()
        };

        let mut sketch = Sketch::of(self.piece);
        let opened = self.draw(
            &mut sketch,
            &ring,
            &of,
            (opened, (!closed).then_some(&kept), mouth),
        )?;
        let panel = ring.panel(follows_moves)?;
        self.darts(
            &mut sketch,
            (&ring, &of, &panel, follows_moves),
            opened,
            (!closed).then_some(kept),
        );
        for point in sketch.points_mut() {
            if panel.surrounds(point.at) {
                point.at = motion.apply(point.at);
            }
        }
        let cuts = Cuts {
            apex,
            legs: self.dart.legs,
            slash: ring.slash,
            cut,
            panel,
            still: ring.panel(!follows_moves)?,
            motion,
            closed,
        };
        if self.piece.cut() != Cut::Fold {
            sketch.parts_mut().grain = ring.uncut_grain()?;
        }
        // The bust line runs through the point that all turns about: it is drawn anew.
        for line in sketch.lines_mut().iter_mut().filter(|l| l.name != "bust") {
            line.curve = redrawn(&line.curve, &cuts)?;
        }
        sketch.finish_sewn(self.piece)
    }

    /// What stands against it, in words, if something does.
    pub fn obstacle(&self) -> Result<Option<String>, AlterationError> {
        let ring = Ring::of(self.piece, self.dart, &self.into)?;
        let panel = ring.panel(true)?;
        obstacle(&Dividing {
            piece: self.piece,
            dart: self.dart,
            into: (&self.into.edge, self.into.from),
            widens: self.into.widens.as_deref(),
            panel: &panel,
        })
    }

    /// Draws every edge. Where the new dart would stand out of the edge as a point when pressed to
    /// the usual side, because the edge there runs along the leg, it is pressed to the other if
    /// that makes a shorter mouth.
    fn draw(
        &self,
        sketch: &mut Sketch,
        ring: &Ring<'_>,
        of: &impl Fn(bool) -> Rigid,
        (opened, kept, mouth): (Dart, Option<&Dart>, Mouth),
    ) -> Result<Dart, AlterationError> {
        let edges = self.piece.outline().edges();
        let other = Dart {
            pressed: opened.pressed.other(),
            ..opened.clone()
        };
        let mut best: Option<(f64, Dart, Vec<Curve>)> = None;
        for dart in [opened, other] {
            let drawn: Result<Vec<Curve>, _> = edges
                .iter()
                .map(|edge| self.edge(edge.name(), ring, of, (&dart, kept, mouth)))
                .collect();
            let Ok(drawn) = drawn else { continue };
            let mouth = edges
                .iter()
                .zip(&drawn)
                .find(|(edge, _)| edge.name() == &self.into.edge)
                .map_or(f64::INFINITY, |(_, curve)| mouth_share(curve, &dart));
            if best.as_ref().is_none_or(|(least, ..)| mouth < *least) {
                best = Some((mouth, dart, drawn));
            }
            if mouth <= USUAL_MOUTH {
                break;
            }
        }
        let Some((_, dart, drawn)) = best else {
            return Err(AlterationError::Setting(format!(
                "the {} runs so nearly along the dart there that its fold would not lie on the seam",
                self.into.edge
            )));
        };
        for (edge, curve) in edges.iter().zip(drawn) {
            sketch.replace(edge.name(), curve)?;
        }
        Ok(dart)
    }

    /// One edge, its parts moved, mouths shaped where a dart opened or got narrower.
    fn edge(
        &self,
        name: &EdgeName,
        ring: &Ring<'_>,
        of: &impl Fn(bool) -> Rigid,
        (opened, kept, open): (&Dart, Option<&Dart>, Mouth),
    ) -> Result<Curve, AlterationError> {
        // Parts of the edge, and in between the darts whose mouths are to be shaped.
        let mut parts: Vec<Result<Curve, &Dart>> = Vec::new();
        let (mut from, mut closed) = (None, false);
        for fragment in ring.fragments.iter().filter(|f| f.edge.name() == name) {
            let here = name == &self.into.edge
                && (fragment.from - self.into.from).abs() <= tolerance::POINT;
            if here && from.is_some() {
                parts.push(Err(opened));
            }
            from = Some(fragment.from);
            match fragment.kind {
                Kind::Gap => {}
                Kind::Old => parts.extend(kept.map(Err)),
                Kind::Plain | Kind::Mouth => {
                    let part = ring.curve(fragment)?.moved(&of(fragment.follows));
                    // Where the old dart closed the edge runs on: a fold beside may lie across.
                    let joined = match parts.last() {
                        Some(Ok(before)) if closed => Some(met(before, &part)?),
                        _ => None,
                    };
                    match (joined, parts.last_mut()) {
                        (Some(whole), Some(last)) => *last = Ok(whole),
                        _ => parts.push(Ok(part)),
                    }
                }
            }
            closed = fragment.kind == Kind::Old;
        }
        let mut whole: Option<Curve> = None;
        for (place, part) in parts.iter().enumerate() {
            let part = match part {
                Ok(curve) => curve.clone(),
                Err(dart) if open == Mouth::Open => Curve::line(dart.legs[0], dart.legs[1])?,
                Err(dart) => {
                    let beside = match dart.pressed {
                        Pressed::TowardFirstLeg => place.checked_sub(1).and_then(|p| parts.get(p)),
                        Pressed::TowardSecondLeg => parts.get(place + 1),
                    };
                    let Some(Ok(beside)) = beside else {
                        return Err(GeometryError::Empty.into());
                    };
                    let mouth = shaped_mouth(dart.apex(), dart.legs, beside, dart.pressed)?;
                    if mouth.length() > LONGEST_MOUTH * dart.intake() {
                        return Err(GeometryError::Parallel.into());
                    }
                    mouth
                }
            };
            whole = Some(match whole {
                None => part,
                Some(before) => met(&before, &part)?,
            });
        }
        whole.ok_or_else(|| GeometryError::Empty.into())
    }

    /// The darts: each goes with its panel, the old one is closed, the new one opened.
    fn darts<F: Fn(bool) -> Rigid>(
        &self,
        sketch: &mut Sketch,
        (ring, of, panel, follows_moves): (&Ring<'_>, &F, &Region, bool),
        opened: Dart,
        kept: Option<Dart>,
    ) {
        let moving = |dart: &Dart| {
            let Some(name) = &dart.edge else {
                return panel.surrounds(dart.legs[0]);
            };
            let mouths = self.piece.mouths(name);
            let at = mouths.iter().find(|(d, ..)| d.name == dart.name);
            let within = |f: &&Fragment<'_>| {
                f.edge.name() == name
                    && at.is_some_and(|(_, from, _)| (f.from - from).abs() <= tolerance::POINT)
            };
            ring.fragments
                .iter()
                .find(within)
                .is_some_and(|f| f.follows == follows_moves)
        };
        let motion = of(follows_moves);
        let (mut opened, mut kept) = (Some(opened), kept);
        let mut darts = Vec::new();
        for dart in self.piece.darts() {
            if dart.name == self.dart.name {
                darts.extend(kept.take());
                if self.into.widens.is_none() {
                    darts.extend(opened.take());
                }
            } else if Some(&dart.name) == self.into.widens.as_ref() {
                darts.extend(opened.take());
            } else if moving(dart) {
                let mut dart = dart.clone();
                dart.legs = dart.legs.map(|leg| motion.apply(leg));
                dart.apexes = match dart.apexes {
                    Apexes::One(a) => Apexes::One(motion.apply(a)),
                    Apexes::Two(a, b) => Apexes::Two(motion.apply(a), motion.apply(b)),
                };
                darts.push(dart);
            } else {
                darts.push(dart.clone());
            }
        }
        *sketch.darts_mut() = darts;
    }
}

/// Two parts end to end, a rounding apart: they were turned by the angle between the legs.
fn met(before: &Curve, part: &Curve) -> Result<Curve, GeometryError> {
    if before.end().distance(part.start()) <= tolerance::SEAM_ALTERED {
        return before.ending_at(part.start())?.then(part);
    }
    before.clone().then(part)
}
