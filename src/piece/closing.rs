//! Edges as they are when their darts are sewn.

use super::{Apexes, Dart, EdgeName, Piece};
use crate::geometry::{Curve, Point, Rigid, crossings, tolerance};
use kurbo::{Line, PathSeg};

impl Piece {
    /// The darts that open on an edge, each with where its mouth starts and ends along the
    /// edge in millimetres, in order along the edge.
    #[must_use]
    pub fn mouths(&self, edge: &EdgeName) -> Vec<(&Dart, f64, f64)> {
        let Some(on) = self.outline().edge(edge) else {
            return Vec::new();
        };
        let mut mouths: Vec<_> = self
            .darts()
            .iter()
            .filter(|d| d.edge.as_ref() == Some(edge))
            .filter_map(|d| {
                Some((
                    d,
                    on.curve().joint_at(d.legs[0])?,
                    on.curve().joint_at(d.legs[1])?,
                ))
            })
            .collect();
        mouths.sort_by(|a, b| a.1.total_cmp(&b.1));
        mouths
    }

    /// Length of an edge as it is sewn: without the mouths of its darts, in millimetres.
    #[must_use]
    pub fn seam_length(&self, edge: &EdgeName) -> Option<f64> {
        let length = self.outline().edge(edge)?.curve().length();
        Some(
            length
                - self
                    .mouths(edge)
                    .iter()
                    .map(|(_, from, to)| to - from)
                    .sum::<f64>(),
        )
    }

    /// Where a place on the open edge comes to lie along the sewn edge, in millimetres.
    ///
    /// A place inside a mouth lies where the mouth closes.
    #[must_use]
    pub fn sewn_position(&self, edge: &EdgeName, at: f64) -> f64 {
        let before = |(_, from, to): &(&Dart, f64, f64)| (at.min(*to) - from).max(0.0);
        at - self.mouths(edge).iter().map(before).sum::<f64>()
    }

    /// Where a place on the sewn edge lies along the open edge, in millimetres.
    #[must_use]
    pub fn open_position(&self, edge: &EdgeName, sewn: f64) -> f64 {
        let mut at = sewn;
        for (_, from, to) in self.mouths(edge) {
            if at > from + tolerance::POINT {
                at += to - from;
            }
        }
        at
    }

    /// The parts of an edge between its darts, laid together as they are when the darts
    /// are closed; the first part stays where it is.
    #[must_use]
    pub fn closed_edge(&self, edge: &EdgeName) -> Vec<Curve> {
        let Some(on) = self.outline().edge(edge) else {
            return Vec::new();
        };
        let length = on.curve().length();
        let mut parts = Vec::new();
        let mut motion = Rigid::IDENTITY;
        let mut from = 0.0;
        let mut add = |from: f64, to: f64, motion: &Rigid| {
            if let Ok(part) = on.curve().part(from, to) {
                parts.push(part.moved(motion));
            }
        };
        for (dart, start, end) in self.mouths(edge) {
            add(from, start, &motion);
            motion = dart.closing().then(motion);
            from = end;
        }
        add(from, length, &motion);
        parts
    }

    /// Length along a curve across the piece that lies outside every dart, in millimetres.
    ///
    /// This is the width the sewn piece has there. A dart whose tip is backed off from the bust
    /// point counts as sewn to that point: what it leaves open there is the roundness of the
    /// bust, on top of the width that the block was drafted with.
    #[must_use]
    pub fn sewn_length(&self, across: &Curve) -> f64 {
        let inside = |dart| length_inside(dart, self.fullness(dart), across);
        let taken: f64 = self.darts().iter().map(inside).sum();
        across.length() - taken
    }
}

/// Length of the part of a curve that lies inside a dart's triangle or lozenge.
fn length_inside(dart: &Dart, fullness: Point, across: &Curve) -> f64 {
    let [first, second] = dart.legs;
    // The mouth itself is no boundary for a line that runs along it: only the legs are.
    let legs = match dart.apexes {
        Apexes::One(_) if dart.edge.is_some() => vec![(fullness, first), (second, fullness)],
        Apexes::One(a) => vec![(a, first), (first, second), (second, a)],
        Apexes::Two(a, b) => vec![(a, first), (first, b), (b, second), (second, a)],
    };
    let mut cuts: Vec<f64> = Vec::with_capacity(4);
    for (from, to) in legs {
        let leg = [PathSeg::Line(Line::new(from, to))];
        let met = crossings(across.segments(), &leg);
        cuts.extend(met.into_iter().map(|c| across.length_to(c.first)));
    }
    cuts.sort_by(f64::total_cmp);
    cuts.dedup_by(|a, b| (*a - *b).abs() < tolerance::SEAM_DRAFTED);
    let (pairs, _) = cuts.as_chunks();
    pairs.iter().map(|[from, to]| to - from).sum()
}
