//! An outline taken apart where a dart closes and another opens.

use super::dart_opening::Opening;
use crate::alterations::AlterationError;
use crate::geometry::{Curve, GeometryError, Point, Region, along, crossings, tolerance};
use crate::piece::{Dart, Edge, EdgeRole, Piece};
use kurbo::BezPath;

/// A grain line shortened at a cut ends so far from it, in millimetres.
const GRAIN_CLEAR: f64 = 8.0;

/// A part of an edge between corners, mouths and the new place.
pub(in crate::alterations) struct Fragment<'p> {
    pub edge: &'p Edge,
    pub from: f64,
    pub to: f64,
    pub kind: Kind,
    /// Whether it lies in the panel that follows the old dart along the outline.
    pub follows: bool,
}

#[derive(Clone, Copy, PartialEq)]
pub(in crate::alterations) enum Kind {
    Plain,
    /// The mouth of a dart that goes with its panel.
    Mouth,
    /// The mouth of the dart that is closed.
    Old,
    /// The mouth of the dart that gets wider.
    Gap,
}

/// The parts of an outline in order.
pub(in crate::alterations) struct Ring<'p> {
    piece: &'p Piece,
    dart: &'p Dart,
    /// Ends on the edge of the cuts to the apex: equal for a new dart.
    pub slash: [Point; 2],
    pub fragments: Vec<Fragment<'p>>,
}

impl<'p> Ring<'p> {
    /// The outline taken apart.
    pub fn of(piece: &'p Piece, dart: &'p Dart, into: &Opening) -> Result<Self, AlterationError> {
        let edge = piece.outline().edge(&into.edge);
        let curve = edge.ok_or(GeometryError::Empty)?.curve();
        let slash = [curve.point_at(into.from)?.0, curve.point_at(into.to)?.0];
        let mut ring: Vec<Fragment<'_>> = Vec::new();
        for edge in piece.outline().edges() {
            let length = edge.curve().length();
            let mouths = piece.mouths(edge.name());
            let mut stops = vec![0.0, length];
            stops.extend(mouths.iter().flat_map(|(_, from, to)| [*from, *to]));
            if edge.name() == &into.edge {
                stops.extend([into.from, into.to]);
            }
            stops.sort_by(f64::total_cmp);
            stops.dedup_by(|a, b| (*a - *b).abs() <= tolerance::POINT);
            for &[from, to] in stops.array_windows() {
                let middle = 0.5 * (from + to);
                let within = mouths.iter().find(|(_, a, b)| (*a..*b).contains(&middle));
                let kind = match within {
                    Some((d, ..)) if d.name == dart.name => Kind::Old,
                    Some((d, ..)) if Some(&d.name) == into.widens.as_ref() => Kind::Gap,
                    Some(_) => Kind::Mouth,
                    None => Kind::Plain,
                };
                ring.push(Fragment {
                    edge,
                    from,
                    to,
                    kind,
                    follows: false,
                });
            }
        }
        // Walk once round from the old mouth: until the new place it is the panel that follows.
        let old = ring.iter().position(|f| f.kind == Kind::Old);
        let old = old.ok_or_else(|| AlterationError::Missing {
            what: format!("a {} dart that opens on an edge", dart.name),
            advice: "only a dart with one apex, open on an edge, can be moved",
        })?;
        let starts_here = |f: &Fragment<'_>| {
            f.edge.name() == &into.edge && (f.from - into.from).abs() <= tolerance::POINT
        };
        let (before, from_old) = ring.split_at_mut(old);
        for fragment in from_old.iter_mut().skip(1).chain(before) {
            if starts_here(fragment) {
                break;
            }
            fragment.follows = true;
        }
        Ok(Self {
            piece,
            dart,
            slash,
            fragments: ring,
        })
    }

    /// Whether the panel that follows the old dart stays: it has the fold, or the grain.
    pub fn still_follows(&self) -> Result<bool, AlterationError> {
        let mut fragments = self.fragments.iter();
        if let Some(fold) = fragments.find(|f| f.edge.role() == EdgeRole::Fold) {
            return Ok(fold.follows);
        }
        let [low, high] = self.uncut_grain()?;
        Ok(self.panel(true)?.surrounds(low.midpoint(high)))
    }

    /// The longest part of the grain line that no cut runs through, a little clear of the cut.
    pub fn uncut_grain(&self) -> Result<[Point; 2], AlterationError> {
        let [low, high] = self.piece.grain();
        let line = Curve::line(low, high)?;
        let apex = self.dart.apex();
        let mut stops = vec![0.0, line.length()];
        for end in self.slash.iter().chain(&self.dart.legs) {
            let cut = Curve::line(apex, *end)?;
            let met = crossings(line.segments(), cut.segments());
            stops.extend(met.iter().map(|c| line.nearest(c.point).1));
        }
        stops.sort_by(f64::total_cmp);
        let longest = stops
            .array_windows()
            .max_by(|[a, b], [c, d]| (b - a).total_cmp(&(d - c)));
        let (from, to) = longest.map_or((0.0, line.length()), |[from, to]| (*from, *to));
        let clear = |cut: bool| if cut { GRAIN_CLEAR } else { 0.0 };
        let (from, to) = (from + clear(from > 0.0), to - clear(to < line.length()));
        Ok([along(low, high, from), along(low, high, to)])
    }

    /// The panel that follows the old dart, or the one that leads up to it.
    pub fn panel(&self, follows: bool) -> Result<Region, AlterationError> {
        let ring = &self.fragments;
        let old = ring.iter().position(|f| f.kind == Kind::Old).unwrap_or(0);
        let mut path = BezPath::new();
        path.move_to(self.dart.apex());
        for fragment in ring
            .iter()
            .cycle()
            .skip(old + 1)
            .take(ring.len().saturating_sub(1))
        {
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
        Ok(Region::within(path.segments().collect()))
    }

    /// The line of a part.
    pub fn curve(&self, fragment: &Fragment<'_>) -> Result<Curve, GeometryError> {
        fragment.edge.curve().part(fragment.from, fragment.to)
    }
}
