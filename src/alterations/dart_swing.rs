//! One dart closed, wholly or in part, and its angle opened in another place: the panel
//! between the two is turned about the apex.

use super::dart_lines::{Cuts, redrawn};
use super::dart_obstacle::{Dividing, obstacle};
use super::sketch::ending_at;
use super::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Rigid, angle_between, tolerance};
use crate::piece::{Apexes, Dart, EdgeName, EdgeRole, Piece, Pressed, shaped_mouth};
use kurbo::{BezPath, Shape};

/// Where a dart is opened on an edge, along the edge with its darts open, in millimetres.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Opening {
    pub edge: EdgeName,
    pub from: f64,
    /// Where the dart that is there already has its second leg; `from` when there is none.
    pub to: f64,
    /// The dart that is there already and gets wider.
    pub widens: Option<String>,
}

impl Opening {
    /// A new place, given as a share of the sewn length of an edge.
    pub fn place(piece: &Piece, edge: &EdgeName, share: f64) -> Result<Self, AlterationError> {
        let missing = || AlterationError::Missing {
            what: format!("an edge {edge} on the {}", piece.name()),
            advice: "name an edge of the piece that carries the dart",
        };
        let sewn = piece.seam_length(edge).ok_or_else(missing)?;
        if !(0.0..=1.0).contains(&share) {
            return Err(AlterationError::Setting(format!(
                "the place along the {edge} is {share}; it is a share of the edge, from 0 to 1"
            )));
        }
        let at = piece.open_position(edge, share * sewn);
        Ok(Self {
            edge: edge.clone(),
            from: at,
            to: at,
            widens: None,
        })
    }

    /// The place of a dart that is there and gets wider.
    pub fn dart(piece: &Piece, name: &str) -> Option<Self> {
        let edge = piece.dart(name)?.edge.clone()?;
        let mouths = piece.mouths(&edge);
        let (_, from, to) = mouths.iter().find(|(d, ..)| d.name == name)?;
        Some(Self {
            from: *from,
            to: *to,
            widens: Some(name.to_owned()),
            edge: edge.clone(),
        })
    }
}

/// A part of an edge between corners, mouths and the new place.
struct Fragment {
    edge: usize,
    from: f64,
    to: f64,
    kind: Kind,
    /// Whether it lies in the panel that follows the old dart along the outline.
    follows: bool,
}

#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Plain,
    /// The mouth of a dart that goes with its panel.
    Mouth,
    /// The mouth of the dart that is closed.
    Old,
    /// The mouth of the dart that gets wider.
    Gap,
}

/// A step: how much of which dart goes where.
#[derive(Debug, Clone)]
pub(super) struct Swing<'p> {
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
        if let Some(why) = self.obstacle()? {
            return Err(AlterationError::Setting(why));
        }
        let ring = self.ring()?;
        let [first, second] = self.dart.legs;
        let apex = self.dart.apex();
        let turn = angle_between(second - apex, first - apex) * self.share;
        let follows_moves = !self.still_follows(&ring)?;
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
        let gap = [
            follows.apply(self.on_ring(self.into.from)?),
            leads.apply(self.on_ring(self.into.to)?),
        ];
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
        for (index, edge) in self.piece.outline().edges().iter().enumerate() {
            let curve = self.edge(index, &ring, &of, (&opened, (!closed).then_some(&kept)))?;
            sketch.replace(edge.name(), curve)?;
        }
        let panel = self.panel(&ring, follows_moves)?;
        self.darts(
            &mut sketch,
            (&ring, &of, &panel, follows_moves),
            opened,
            (!closed).then_some(kept),
        );
        let cuts = Cuts {
            apex,
            legs: self.dart.legs,
            slash: [self.on_ring(self.into.from)?, self.on_ring(self.into.to)?],
            panel,
            motion,
            closed,
        };
        for line in sketch.lines_mut() {
            line.curve = redrawn(&line.curve, &cuts)?;
        }
        self.notched(sketch.finish()?)
    }

    /// What stands against it, in words, if something does.
    pub fn obstacle(&self) -> Result<Option<String>, AlterationError> {
        let ring = self.ring()?;
        let panel = self.panel(&ring, true)?;
        obstacle(&Dividing {
            piece: self.piece,
            dart: self.dart,
            into: (&self.into.edge, self.into.from),
            widens: self.into.widens.as_deref(),
            panel: &panel,
        })
    }

    fn on_ring(&self, at: f64) -> Result<Point, AlterationError> {
        let edge = self.piece.outline().edge(&self.into.edge);
        let curve = edge.ok_or(GeometryError::Empty)?.curve();
        Ok(curve.point_at(at)?.0)
    }

    /// The outline taken apart.
    fn ring(&self) -> Result<Vec<Fragment>, AlterationError> {
        let mut ring: Vec<Fragment> = Vec::new();
        for (index, edge) in self.piece.outline().edges().iter().enumerate() {
            let length = edge.curve().length();
            let mouths = self.piece.mouths(edge.name());
            let mut stops = vec![0.0, length];
            stops.extend(mouths.iter().flat_map(|(_, from, to)| [*from, *to]));
            if edge.name() == &self.into.edge {
                stops.extend([self.into.from, self.into.to]);
            }
            stops.sort_by(f64::total_cmp);
            stops.dedup_by(|a, b| (*a - *b).abs() <= tolerance::POINT);
            for pair in stops.windows(2) {
                let middle = 0.5 * (pair[0] + pair[1]);
                let within = mouths.iter().find(|(_, a, b)| (*a..*b).contains(&middle));
                let kind = match within {
                    Some((d, ..)) if d.name == self.dart.name => Kind::Old,
                    Some((d, ..)) if Some(&d.name) == self.into.widens.as_ref() => Kind::Gap,
                    Some(_) => Kind::Mouth,
                    None => Kind::Plain,
                };
                ring.push(Fragment {
                    edge: index,
                    from: pair[0],
                    to: pair[1],
                    kind,
                    follows: false,
                });
            }
        }
        // Walk once round from the old mouth: until the new place it is the panel that follows.
        let old = ring.iter().position(|f| f.kind == Kind::Old);
        let old = old.ok_or_else(|| AlterationError::Missing {
            what: format!("a {} dart that opens on an edge", self.dart.name),
            advice: "only a dart with one apex, open on an edge, can be moved",
        })?;
        let edges = self.piece.outline().edges();
        let starts_here = |f: &Fragment| {
            edges[f.edge].name() == &self.into.edge
                && (f.from - self.into.from).abs() <= tolerance::POINT
        };
        let count = ring.len();
        for step in 1..count {
            let fragment = &mut ring[(old + step) % count];
            if starts_here(fragment) {
                break;
            }
            fragment.follows = true;
        }
        Ok(ring)
    }

    /// Whether the panel that follows the old dart stays: it has the fold, or the grain.
    fn still_follows(&self, ring: &[Fragment]) -> Result<bool, AlterationError> {
        let edges = self.piece.outline().edges();
        let fold = ring.iter().find(|f| edges[f.edge].role() == EdgeRole::Fold);
        if let Some(fold) = fold {
            return Ok(fold.follows);
        }
        let [low, high] = self.piece.grain();
        Ok(self.panel(ring, true)?.contains(low.midpoint(high)))
    }

    /// The panel that follows the old dart, or the one that leads up to it.
    fn panel(&self, ring: &[Fragment], follows: bool) -> Result<BezPath, AlterationError> {
        let old = ring.iter().position(|f| f.kind == Kind::Old).unwrap_or(0);
        let mut path = BezPath::new();
        path.move_to(self.dart.apex());
        for step in 1..ring.len() {
            let fragment = &ring[(old + step) % ring.len()];
            if fragment.follows != follows || fragment.kind == Kind::Gap {
                continue;
            }
            let curve = self.curve(fragment)?;
            path.line_to(curve.start());
            for segment in curve.segments() {
                path.push(segment.as_path_el());
            }
        }
        path.close_path();
        Ok(path)
    }

    fn curve(&self, fragment: &Fragment) -> Result<Curve, GeometryError> {
        let edge = &self.piece.outline().edges()[fragment.edge];
        edge.curve().part(fragment.from, fragment.to)
    }

    /// One edge, its parts moved, mouths shaped where a dart opened or got narrower.
    fn edge(
        &self,
        index: usize,
        ring: &[Fragment],
        of: &impl Fn(bool) -> Rigid,
        (opened, kept): (&Dart, Option<&Dart>),
    ) -> Result<Curve, AlterationError> {
        let name = self.piece.outline().edges()[index].name();
        // Parts of the edge, and in between the darts whose mouths are to be shaped.
        let mut parts: Vec<Result<Curve, &Dart>> = Vec::new();
        let mut from = None;
        for fragment in ring.iter().filter(|f| f.edge == index) {
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
                    parts.push(Ok(self.curve(fragment)?.moved(&of(fragment.follows))));
                }
            }
        }
        let mut whole: Option<Curve> = None;
        for (place, part) in parts.iter().enumerate() {
            let part = match part {
                Ok(curve) => curve.clone(),
                Err(dart) => {
                    let beside = match dart.pressed {
                        Pressed::TowardFirstLeg => place.checked_sub(1).map(|p| &parts[p]),
                        Pressed::TowardSecondLeg => parts.get(place + 1),
                    };
                    let Some(Ok(beside)) = beside else {
                        return Err(GeometryError::Empty.into());
                    };
                    shaped_mouth(dart.apex(), dart.legs, beside, dart.pressed)?
                }
            };
            whole = Some(match whole {
                None => part,
                // Rounding only: the parts were turned by the angle between the legs.
                Some(before) if before.end().distance(part.start()) <= tolerance::SEAM_ALTERED => {
                    ending_at(&before, part.start())?.then(&part)?
                }
                Some(before) => before.then(&part)?,
            });
        }
        whole.ok_or_else(|| GeometryError::Empty.into())
    }

    /// The darts: each goes with its panel, the old one is closed, the new one opened.
    fn darts<F: Fn(bool) -> Rigid>(
        &self,
        sketch: &mut Sketch,
        (ring, of, panel, follows_moves): (&[Fragment], &F, &BezPath, bool),
        opened: Dart,
        kept: Option<Dart>,
    ) {
        let edges = self.piece.outline().edges();
        let moving = |dart: &Dart| {
            let Some(name) = &dart.edge else {
                return panel.contains(dart.legs[0]);
            };
            let mouths = self.piece.mouths(name);
            let at = mouths.iter().find(|(d, ..)| d.name == dart.name);
            let within = |f: &&Fragment| {
                edges[f.edge].name() == name
                    && at.is_some_and(|(_, from, _)| (f.from - from).abs() <= tolerance::POINT)
            };
            ring.iter()
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

    /// The piece with every notch at the sewn place it had.
    fn notched(&self, piece: Piece) -> Result<Piece, AlterationError> {
        let places: Vec<f64> = self
            .piece
            .notches()
            .iter()
            .map(|n| piece.open_position(&n.edge, self.piece.sewn_position(&n.edge, n.at)))
            .collect();
        let mut parts = piece.into_parts();
        for (notch, at) in parts.notches.iter_mut().zip(places) {
            let edge = parts.outline.edge(&notch.edge);
            notch.at = at.min(edge.map_or(at, |e| e.curve().length()));
        }
        Ok(Piece::new(parts)?)
    }
}

/// To which side a dart is pressed, by common practice: an upright one toward the centre, a
/// level one down.
pub(super) fn pressed(piece: &Piece, apex: Point, legs: [Point; 2]) -> Pressed {
    let toward = legs[0].midpoint(legs[1]) - apex;
    let fold = piece
        .outline()
        .edges()
        .iter()
        .find(|e| e.role() == EdgeRole::Fold);
    let centre = fold.map_or(piece.grain()[0].x, |f| f.curve().start().x);
    let first = if toward.y.abs() >= toward.x.abs() {
        (legs[0].x - centre).abs() <= (legs[1].x - centre).abs()
    } else {
        legs[0].y >= legs[1].y
    };
    if first {
        Pressed::TowardFirstLeg
    } else {
        Pressed::TowardSecondLeg
    }
}
