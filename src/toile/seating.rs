//! Where a garment is pinned to the stand.

#![expect(
    clippy::indexing_slicing,
    reason = "panels and points are numbered by the garment"
)]

use super::balance::Pin;
use super::chains::Chain;
use super::garment::Garment;
use super::space::{Space, add_to, length, scaled, sub};
use super::stand::Stand;
use crate::piece::{BodySide, EdgeName};
use serde::Serialize;

/// How a garment is held on the body. It decides what a toile shows: not pinned, a back that is too
/// long slides down instead of folding.
///
/// ```
/// use blockwright::toile::Seating;
/// assert_eq!(Seating::named("neck_points"), Some(Seating::NeckPoints));
/// assert_eq!(Seating::default().name(), "neckline");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Seating {
    /// The whole neckline is pinned to the base of the neck; what has no neckline, to the waist.
    #[default]
    Neckline,
    /// Nape and neck side points are pinned; what has no neckline, the middles and the sides of its
    /// waist.
    NeckPoints,
    /// Nothing is pinned: shoulders carry it, or hips.
    Loose,
}

impl Seating {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Neckline, Self::NeckPoints, Self::Loose];

    /// The name in commands and documents.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Neckline => "neckline",
            Self::NeckPoints => "neck_points",
            Self::Loose => "loose",
        }
    }

    /// The seating of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|seating| seating.name() == name)
    }

    /// What it means, for people.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Neckline => "pinned along the whole neckline",
            Self::NeckPoints => "pinned at nape and neck points",
            Self::Loose => "not pinned",
        }
    }
}

/// How hard a pin holds, in N/mm.
const PULL: f64 = 1.0;

/// A neckline that is so much longer or shorter than the base of the neck does not lie along it.
const ALIKE: f64 = 0.15;

/// The pins of a garment, and whether its neckline lies along the base of the neck.
pub(super) fn pins(
    garment: &Garment,
    chains: &[Chain],
    stand: &Stand,
    seating: Seating,
) -> (Vec<Pin>, bool) {
    let mut pins = Vec::new();
    let mut along_neck = true;
    if seating == Seating::Loose {
        return (pins, along_neck);
    }
    let has_neck = has_edge(garment, chains, &EdgeName::NECKLINE);
    for chain in chains {
        let (edge, halves) = if has_neck {
            (
                EdgeName::NECKLINE,
                parted(&stand.neck_half(), neck_side(stand)),
            )
        } else {
            let waist = stand.half_ring(0.0);
            let side = widest(&waist);
            (EdgeName::WAIST, parted(&waist, side))
        };
        for (panels, line) in [(&chain.back, &halves[0]), (&chain.front, &halves[1])] {
            let run = along_edge(garment, panels, &edge);
            let whole = run.last().map_or(0.0, |(_, at)| *at);
            let ring = long(line);
            if whole <= 0.0 || ring <= 0.0 {
                continue;
            }
            if has_neck && (whole / ring - 1.0).abs() > ALIKE {
                along_neck = false;
            }
            for (index, (point, at)) in run.iter().enumerate() {
                let end = index == 0 || index + 1 == run.len();
                if seating == Seating::NeckPoints && !end {
                    continue;
                }
                // The hollow of the front neck is no neck point.
                if seating == Seating::NeckPoints
                    && has_neck
                    && index == 0
                    && std::ptr::eq(panels, &chain.front)
                {
                    continue;
                }
                let mut place = at_share(line, at / whole);
                if chain.side == Some(BodySide::Right) {
                    place[0] = -place[0];
                }
                pins.push(Pin {
                    point: *point,
                    place,
                    pull: PULL,
                });
            }
        }
    }
    // What is sewn is pinned once.
    pins.sort_by_key(|pin| pin.point);
    pins.dedup_by_key(|pin| pin.point);
    (if along_neck { pins } else { Vec::new() }, along_neck)
}

fn has_edge(garment: &Garment, chains: &[Chain], name: &EdgeName) -> bool {
    let panels = chains.iter().flat_map(|c| c.back.iter().chain(&c.front));
    panels
        .into_iter()
        .any(|&p| garment.panels[p].edges.iter().any(|(n, _, _)| n == name))
}

/// Points of the sheet along an edge of panels, from the middle out, with how far along they are.
fn along_edge(garment: &Garment, panels: &[usize], name: &EdgeName) -> Vec<(usize, f64)> {
    let mut run = Vec::new();
    let mut from = 0.0;
    for &index in panels {
        let panel = &garment.panels[index];
        let Some((_, _, points)) = panel.edges.iter().find(|(n, _, _)| n == name) else {
            continue;
        };
        let mut points = points.clone();
        let ends =
            [points.first(), points.last()].map(|p| p.map_or(0.0, |&p| panel.points[p].x.abs()));
        if ends[0] > ends[1] {
            points.reverse();
        }
        let mut last = None;
        for &p in &points {
            if let Some(before) = last {
                // Over the mouth of a dart that is sewn shut there is no way.
                if garment.joined[index][p] != garment.joined[index][before] {
                    from += panel.points[p].distance(panel.points[before]);
                }
            }
            run.push((garment.joined[index][p], from));
            last = Some(p);
        }
    }
    run.dedup_by_key(|(point, _)| *point);
    run
}

/// A half ring parted at a place: from the middle of the back to it, and from the middle of the front.
fn parted(ring: &[Space], at: usize) -> [Vec<Space>; 2] {
    let back = ring.iter().take(at + 1).copied().collect();
    let front = ring.iter().skip(at).rev().copied().collect();
    [back, front]
}

fn neck_side(stand: &Stand) -> usize {
    let side = stand.landmarks.neck_side;
    let far = |p: &Space| length(sub(*p, [side.x, side.y, side.z]));
    let half = stand.neck_half();
    let nearest = half
        .iter()
        .enumerate()
        .min_by(|a, b| far(a.1).total_cmp(&far(b.1)));
    nearest.map_or(0, |(index, _)| index)
}

fn widest(ring: &[Space]) -> usize {
    let widest = ring
        .iter()
        .enumerate()
        .max_by(|a, b| a.1[0].total_cmp(&b.1[0]));
    widest.map_or(0, |(index, _)| index)
}

fn long(line: &[Space]) -> f64 {
    line.iter()
        .zip(line.iter().skip(1))
        .map(|(a, b)| length(sub(*b, *a)))
        .sum()
}

/// The place at a share of a line's length.
fn at_share(line: &[Space], share: f64) -> Space {
    let mut left = share * long(line);
    for (a, b) in line.iter().zip(line.iter().skip(1)) {
        let step = length(sub(*b, *a));
        if step >= left && step > 0.0 {
            let mut place = scaled(*a, 1.0 - left / step);
            add_to(&mut place, left / step, *b);
            return place;
        }
        left -= step;
    }
    line.last().copied().unwrap_or_default()
}
