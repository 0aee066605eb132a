//! A garment put on a stand, roughly, before it settles.

#![expect(
    clippy::indexing_slicing,
    reason = "panels and points are numbered by the garment; rings have points"
)]

use super::chains::Chain;
use super::garment::Garment;
use super::panel::Panel;
use super::space::{Space, add_to, direction, scaled, within};
use super::stand::Stand;
use crate::piece::BodySide;

/// Below the shoulder, how far down cloth has come to lie along the rings of the body, in mm.
const SHOULDER: f64 = 170.0;

/// How much farther out than the body cloth starts, in mm.
const OUTSIDE: f64 = 6.0;

/// Where a panel lies round the body.
#[derive(Debug, Clone, Copy)]
struct Place {
    /// Counted from the middle of the back, or of the front.
    back: bool,
    /// Of the panels in the same chain, how many are nearer the middle.
    chain: usize,
    place: usize,
}

/// Places of all points of the sheet.
pub(super) fn dress(garment: &Garment, chains: &[Chain], stand: &Stand) -> Vec<Space> {
    let mut sums = vec![([0.0; 3], 0.0); garment.sheet.holds.len()];
    for (index, (panel, joined)) in garment.panels.iter().zip(&garment.joined).enumerate() {
        let found = chains
            .iter()
            .enumerate()
            .find_map(|(chain, Chain { back, front, .. })| {
                let at = |list: &Vec<usize>| list.iter().position(|&p| p == index);
                at(back)
                    .map(|place| Place {
                        back: true,
                        chain,
                        place,
                    })
                    .or_else(|| {
                        at(front).map(|place| Place {
                            back: false,
                            chain,
                            place,
                        })
                    })
            });
        let Some(place) = found else { continue };
        let Chain { back, front, .. } = &chains[place.chain];
        let before: Vec<&Panel> = if place.back {
            &back[..place.place]
        } else {
            &front[..place.place]
        }
        .iter()
        .map(|&p| &garment.panels[p])
        .collect();
        let all: Vec<&Panel> = back
            .iter()
            .chain(front)
            .map(|&p| &garment.panels[p])
            .collect();
        let waist = panel.waist;
        let mirror = if panel.side == Some(BodySide::Right) {
            -1.0
        } else {
            1.0
        };
        for (point, &to) in panel.points.iter().zip(joined) {
            let down = point.y - waist;
            let level = |p: &Panel| p.waist + down;
            let arc = before
                .iter()
                .map(|p| covered(p, level(p), f64::INFINITY))
                .sum::<f64>()
                + covered(panel, point.y, point.x);
            let whole: f64 = all
                .iter()
                .map(|p| covered(p, level(p), f64::INFINITY))
                .sum();
            let mut at = laid(stand, -down, arc, whole, place.back, point.x.abs());
            at[0] *= mirror;
            add_to(&mut sums[to].0, 1.0, at);
            sums[to].1 += 1.0;
        }
    }
    sums.into_iter()
        .zip(&garment.sheet.holds)
        .map(|((sum, count), hold)| {
            let mut at = if count > 0.0 {
                scaled(sum, 1.0 / count)
            } else {
                sum
            };
            for _ in 0..8 {
                let near = stand
                    .surface()
                    .distance(at)
                    .filter(|(d, _)| *d < 0.5 * OUTSIDE);
                let Some((d, out)) = near.and_then(|(d, n)| Some((d, direction(n)?))) else {
                    break;
                };
                add_to(&mut at, 0.5 * OUTSIDE + 0.5 - d, out);
            }
            if hold.on_fold() {
                at[0] = 0.0;
            }
            at
        })
        .collect()
}

/// A place for a point of cloth so far above the waist, so far round from the middle.
fn laid(stand: &Stand, above: f64, arc: f64, whole: f64, back: bool, out: f64) -> Space {
    let levels = &stand.levels;
    let (neck, tip) = (stand.landmarks.neck_side, stand.landmarks.shoulder);
    let slope = (levels.shoulder - levels.neck_side) / (tip.x - neck.x).max(1.0);
    let ridge = levels.neck_side + slope * (out - neck.x).max(0.0);
    let under = above.min(levels.armpit);
    // Below the armpit cloth goes round; above it hangs from the ridge of the shoulder.
    let share = within((ridge - above) / SHOULDER, 0.0, 1.0);
    let height = above.min(ridge - 2.0);
    let ring = stand.half_ring(height);
    let long = along(&ring);
    let body = long.last().copied().unwrap_or(1.0);
    let half = (body + OUTSIDE * 3.2).max(if above < levels.armpit { whole } else { 0.0 });
    let turn = if above < levels.armpit || under < above && whole > body {
        arc / whole.max(half * 0.5)
    } else {
        arc / half
    };
    let turn = if back { turn } else { 1.0 - turn };
    let middle = scaled(
        ring.iter().fold([0.0; 3], |mut sum, p| {
            add_to(&mut sum, 1.0, *p);
            sum
        }),
        1.0 / ring.len().max(1) as f64,
    );
    let swell = half / body;
    let mut round = at_share(&ring, &long, within(turn, 0.0, 1.0));
    round[0] *= swell;
    round[2] = middle[2] + (round[2] - middle[2]) * swell;
    if share >= 1.0 {
        return round;
    }
    let straight = beside(&ring, out, back);
    let mut at = scaled(round, share);
    add_to(&mut at, 1.0 - share, straight);
    at
}

/// The point of half a ring so far out, on its back or its front.
fn beside(ring: &[Space], out: f64, back: bool) -> Space {
    let tip = ring
        .iter()
        .enumerate()
        .max_by(|a, b| a.1[0].total_cmp(&b.1[0]))
        .map_or(0, |(i, _)| i);
    let part: Vec<&Space> = if back {
        ring[..=tip].iter().collect()
    } else {
        ring[tip..].iter().rev().collect()
    };
    for (a, b) in part.iter().zip(part.iter().skip(1)) {
        if a[0] <= out && out < b[0] {
            let t = (out - a[0]) / (b[0] - a[0]);
            let mut at = scaled(**a, 1.0 - t);
            add_to(&mut at, t, **b);
            at[2] += if back { -OUTSIDE } else { OUTSIDE };
            return at;
        }
    }
    let mut at = part.last().map_or([0.0; 3], |p| **p);
    at[0] = at[0].max(out.min(at[0] + 40.0));
    at
}

fn along(ring: &[Space]) -> Vec<f64> {
    let mut sum = 0.0;
    let mut long = vec![0.0];
    for (a, b) in ring.iter().zip(ring.iter().skip(1)) {
        sum += super::space::length(super::space::sub(*b, *a));
        long.push(sum);
    }
    long
}

fn at_share(ring: &[Space], long: &[f64], share: f64) -> Space {
    let want = share * long.last().copied().unwrap_or(0.0);
    let after = long
        .partition_point(|l| *l <= want)
        .max(1)
        .min(ring.len().saturating_sub(1));
    let (a, b) = (ring[after - 1], ring[after]);
    let t = (want - long[after - 1]) / (long[after] - long[after - 1]).max(1e-9);
    let mut at = scaled(a, 1.0 - t);
    add_to(&mut at, t, b);
    at
}

/// How much cloth of a panel lies between the middle and a point, at a level.
fn covered(panel: &Panel, level: f64, until: f64) -> f64 {
    let mut sum = 0.0;
    for t in &panel.triangles {
        let corners = t.map(|i| panel.points[i]);
        let (mut from, mut to) = (f64::INFINITY, f64::NEG_INFINITY);
        for k in 0..3 {
            let (a, b) = (corners[k], corners[(k + 1) % 3]);
            if (a.y > level) != (b.y > level) {
                let x = a.x + (b.x - a.x) * (level - a.y) / (b.y - a.y);
                from = from.min(x);
                to = to.max(x);
            }
        }
        if to > from {
            sum += (to.min(until) - from).max(0.0);
        }
    }
    sum
}
