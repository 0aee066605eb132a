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
    let mut all = Vec::new();
    let Some(chain) = toile.chains.first() else {
        return all;
    };
    let hip = -toile.stand.levels.hip;
    for &index in chain.back.first().into_iter().chain(chain.front.first()) {
        let panel = &toile.garment.panels[index];
        let wide = panel
            .points
            .iter()
            .filter(|p| (p.y - panel.waist).abs() < 15.0)
            .map(|p| p.x.abs())
            .fold(0.0, f64::max);
        let top = panel
            .points
            .iter()
            .map(|p| p.y)
            .fold(f64::INFINITY, f64::min);
        let hem = panel
            .points
            .iter()
            .map(|p| p.y)
            .fold(f64::NEG_INFINITY, f64::max);
        let low = (panel.waist + hip).min(hem);
        for share in SHARES {
            let x = share * wide;
            let down = along(top, low).map(|y| Point::new(x, y));
            let places: Vec<Space> = down.filter_map(|p| on_cloth(toile, index, p)).collect();
            if places.len() > 10 {
                all.push(Station {
                    piece: panel.name.clone(),
                    share,
                    places,
                });
            }
        }
    }
    all
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
