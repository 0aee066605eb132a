//! Lines of a pattern on the cloth as it hangs.

#![expect(
    clippy::indexing_slicing,
    reason = "panels and points are numbered by the garment"
)]

use super::refining::holding;
use super::sewn::Toile;
use super::space::{Space, add_to};
use crate::geometry::Point;
use crate::piece::{EdgeName, EdgeRole};

/// Which half of a garment.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum FrontOrBack {
    Front,
    Back,
}

/// A line down a piece, from neckline or shoulder to the hip.
#[derive(Debug, Clone)]
pub(super) struct Station {
    pub piece: String,
    pub share: f64,
    pub places: Vec<Space>,
}

/// How far stations are from the middle, as shares of the width at the waist.
const SHARES: [f64; 4] = [0.0, 0.3, 0.6, 0.9];

/// Points of a line are so far apart, in mm.
const STEP: f64 = 4.0;

/// Stations down the middle pieces of back and front; of the left side where sides differ.
pub(super) fn stations(toile: &Toile) -> Vec<Station> {
    let Some(chain) = toile.chains.first() else {
        return Vec::new();
    };
    let middles = chain.back.first().into_iter().chain(chain.front.first());
    middles
        .flat_map(|&index| SHARES.map(|share| station(toile, index, share)))
        .flatten()
        .collect()
}

/// The small of the back reaches so far from the middle, as a share of the width at the waist, and is
/// measured along so many lines.
const SMALL_OF_BACK: f64 = 0.4;
const LINES: u8 = 9;

/// Lines down the small of the back, evenly from its middle outward.
pub(super) fn small_of_back(toile: &Toile) -> Vec<Station> {
    let middle = toile.chains.first().and_then(|chain| chain.back.first());
    let Some(&index) = middle else {
        return Vec::new();
    };
    let shares = (0..LINES).map(|k| SMALL_OF_BACK * f64::from(k) / f64::from(LINES - 1));
    shares
        .filter_map(|share| station(toile, index, share))
        .collect()
}

/// The line down a panel at a share of its width.
fn station(toile: &Toile, index: usize, share: f64) -> Option<Station> {
    let panel = &toile.garment.panels[index];
    let levels = || panel.points.iter().map(|p| p.y);
    let near_waist = panel
        .points
        .iter()
        .filter(|p| (p.y - panel.waist).abs() < 15.0);
    let wide = near_waist.map(|p| p.x.abs()).fold(0.0, f64::max);
    let top = levels().fold(f64::INFINITY, f64::min);
    let hem = levels().fold(f64::NEG_INFINITY, f64::max);
    let low = (panel.waist - toile.stand.levels.hip).min(hem);
    let down = along(top, low).map(|y| Point::new(share * wide, y));
    let places: Vec<Space> = down.filter_map(|p| on_cloth(toile, index, p)).collect();
    (places.len() > 10).then(|| Station {
        piece: panel.name.clone(),
        share,
        places,
    })
}

/// A level line of the pattern as it lies, from the middle to the side.
pub(super) fn level_line(toile: &Toile, which: FrontOrBack, name: &str) -> Vec<Space> {
    let mut line = Vec::new();
    for index in panels(toile, which) {
        let panel = &toile.garment.panels[index];
        let Some((_, points)) = panel.lines.iter().find(|(n, _)| n == name) else {
            continue;
        };
        line.extend(points.iter().filter_map(|p| on_cloth(toile, index, *p)));
    }
    line
}

/// Every level line of a panel as it lies, with its name.
pub(super) fn panel_lines(toile: &Toile, index: usize) -> Vec<(&str, Vec<Space>)> {
    let lines = toile.garment.panels[index].lines.iter();
    let lain = lines.map(|(name, points)| {
        let places = points.iter().filter_map(|p| on_cloth(toile, index, *p));
        (name.as_str(), places.collect())
    });
    lain.collect()
}

impl Toile {
    /// The hem from the middle to the side.
    pub(super) fn hem_line(&self, which: FrontOrBack) -> Vec<Space> {
        let mut line = Vec::new();
        for index in panels(self, which) {
            let panel = &self.garment.panels[index];
            let hem = panel
                .edges
                .iter()
                .find(|(name, role, _)| *role == EdgeRole::Hem || *name == EdgeName::HEM);
            let Some((_, _, points)) = hem else { continue };
            let mut points = points.clone();
            let x = |p: Option<&usize>| p.map_or(0.0, |&p| panel.points[p].x.abs());
            if x(points.first()) > x(points.last()) {
                points.reverse();
            }
            line.extend(
                points
                    .iter()
                    .map(|&p| self.places[self.garment.joined[index][p]]),
            );
        }
        line
    }
}

/// Panels of the first side, from the middle to the side, of every storey.
fn panels(toile: &Toile, which: FrontOrBack) -> Vec<usize> {
    let Some(first) = toile.chains.first() else {
        return Vec::new();
    };
    let same = toile.chains.iter().filter(|chain| chain.side == first.side);
    let of = same.flat_map(|chain| match which {
        FrontOrBack::Back => &chain.back,
        FrontOrBack::Front => &chain.front,
    });
    of.copied().collect()
}

fn along(from: f64, to: f64) -> impl Iterator<Item = f64> {
    let mut next = from;
    std::iter::from_fn(move || {
        let at = next;
        next += STEP;
        (at <= to).then_some(at)
    })
}

/// Where a point of a panel's drawing is; none off its cloth.
fn on_cloth(toile: &Toile, index: usize, p: Point) -> Option<Space> {
    let (corners, shares) = holding(&toile.garment.panels[index], p)?;
    if shares.iter().any(|s| *s < -0.02) {
        return None;
    }
    let mut place = [0.0; 3];
    for (corner, share) in corners.iter().zip(shares) {
        add_to(
            &mut place,
            share,
            toile.places[toile.garment.joined[index][*corner]],
        );
    }
    Some(place)
}
