//! What a toile on screen measures.

use super::lines::{FrontOrBack, Station, level_line, small_of_back, stations};
use super::sewn::Toile;
use super::space::{Space, add_to, direction, dot, length, sub};
use serde::Serialize;

/// What a toile on screen measures, in mm, degrees, percent and N. A picture's figures: good to about
/// 5 mm.
///
/// ```
/// use blockwright::toile::Toile;
/// /// By how much the hem hangs lower at the side than at the back, in mm.
/// fn dip(toile: &Toile) -> Option<f64> {
///     let hem = toile.measures().hem?;
///     Some(hem.back - hem.side)
/// }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ToileMeasures {
    /// Cloth that lies in folds across, at stations from the middle to the side.
    pub slack: Vec<Slack>,
    /// Slack of the back on average over its middle four tenths: what lies in folds at the small of the
    /// back. Whether a single thread lies in a fold or beside it is chance, over a band it is not.
    pub small_of_back: Option<f64>,
    /// Heights of the hem above the waist of the body; negative below it.
    pub hem: Option<Heights>,
    /// Heights of the pattern's waist line.
    pub waist: Option<Heights>,
    /// The side seam below the waist.
    pub side_seam: Option<Plumb>,
    /// How far the threads are stretched.
    pub strain: Strain,
    /// How far cloth stands off the body.
    pub gaps: Vec<Gap>,
    /// How far cloth is inside the body at the worst point: an error of the picture.
    pub deepest: f64,
    /// What all pins pull, and the hardest of them, in N.
    pub pins: Option<Pulls>,
}

/// Cloth along a line down the pattern from neckline or shoulder to the hip.
///
/// ```
/// use blockwright::toile::Slack;
/// let middle = Slack { piece: "back".into(), share: 0.0, cloth: 612.0, taut: 600.0, slack: 12.0 };
/// assert_eq!(middle.cloth - middle.taut, middle.slack);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Slack {
    /// The piece.
    pub piece: String,
    /// How far from the middle, as a share of the piece's width.
    pub share: f64,
    /// Length of the line as it lies, seen from beside.
    pub cloth: f64,
    /// Length of a thread drawn taut over it.
    pub taut: f64,
    /// By how much the cloth is longer: what lies in folds, and what lies in the body's own hollow.
    pub slack: f64,
}

/// Heights above the waist of the body, in mm.
///
/// ```
/// use blockwright::toile::Heights;
/// let level = Heights { back: -300.0, side: -301.0, front: -299.0 };
/// assert!((level.back - level.front).abs() < 2.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Heights {
    /// In the middle of the back.
    pub back: f64,
    /// At the side seam.
    pub side: f64,
    /// In the middle of the front.
    pub front: f64,
}

/// How a side seam hangs below the waist.
///
/// ```
/// use blockwright::toile::Plumb;
/// let plumb = Plumb { forward: 4.0, degrees: 0.8 };
/// assert!(plumb.degrees < 1.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Plumb {
    /// How much farther forward its lower end is than its place at the waist, in mm.
    pub forward: f64,
    /// The same as an angle.
    pub degrees: f64,
}

/// How far threads are stretched, in percent of their length.
///
/// ```
/// use blockwright::toile::Strain;
/// let easy = Strain { most: 0.8, tight_share: 0.0 };
/// assert!(easy.most < 1.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Strain {
    /// Of the twentieth of the cloth that is stretched most, the least.
    pub most: f64,
    /// How much of the cloth is stretched by more than 1 %, in percent.
    pub tight_share: f64,
}

/// How far cloth stands off the body at a level.
///
/// ```
/// use blockwright::toile::Gap;
/// let waist = Gap { level: "waist", mean: 12.0, most: 30.0 };
/// assert!(waist.most > waist.mean);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Gap {
    /// `bust`, `waist` or `hip`.
    pub level: &'static str,
    /// On average, in mm.
    pub mean: f64,
    /// The most, in mm.
    pub most: f64,
}

/// What pins pull, in N.
///
/// ```
/// use blockwright::toile::Pulls;
/// let pins = Pulls { all: 2.0, hardest: 0.4 };
/// assert!(pins.hardest < pins.all);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Pulls {
    /// The sum.
    pub all: f64,
    /// The hardest.
    pub hardest: f64,
}

/// Threads stretched by more are tight.
const TIGHT: f64 = 0.01;

/// A band about a level, in mm to either side.
const BAND: f64 = 12.0;

impl Toile {
    /// What it measures.
    #[must_use]
    pub fn measures(&self) -> ToileMeasures {
        let slack = stations(self).into_iter().map(slack_of).collect();
        ToileMeasures {
            slack,
            small_of_back: self.small_of_back(),
            hem: self.heights(Level::Hem),
            waist: self.heights(Level::Waist),
            side_seam: self.plumb(),
            strain: self.strain(),
            gaps: self.gaps(),
            deepest: self.deepest(),
            pins: (!self.pulls.is_empty()).then(|| Pulls {
                all: self.pulls.iter().sum(),
                hardest: self.pulls.iter().copied().fold(0.0, f64::max),
            }),
        }
    }

    fn small_of_back(&self) -> Option<f64> {
        let slacks: Vec<f64> = small_of_back(self)
            .into_iter()
            .map(|line| slack_of(line).slack)
            .collect();
        let count = u32::try_from(slacks.len()).ok().filter(|n| *n > 0)?;
        Some(slacks.iter().sum::<f64>() / f64::from(count))
    }

    fn heights(&self, level: Level) -> Option<Heights> {
        let line = |which| match level {
            Level::Hem => self.hem_line(which),
            Level::Waist => level_line(self, which, "waist"),
        };
        let (back, front) = (line(FrontOrBack::Back), line(FrontOrBack::Front));
        Some(Heights {
            back: back.first()?[1],
            side: 0.5 * (back.last()?[1] + front.last()?[1]),
            front: front.first()?[1],
        })
    }

    fn plumb(&self) -> Option<Plumb> {
        let hem = *self.hem_line(FrontOrBack::Back).last()?;
        let waist = *level_line(self, FrontOrBack::Back, "waist").last()?;
        let (down, forward) = (waist[1] - hem[1], hem[2] - waist[2]);
        (down > 50.0).then(|| Plumb {
            forward,
            degrees: crate::geometry::elementary::atan2(forward, down).to_degrees(),
        })
    }

    fn strain(&self) -> Strain {
        let sheet = &self.garment.sheet;
        let areas = sheet
            .flat
            .iter()
            .map(|flat| 0.5 * super::sheet::twice_area(flat));
        let most = sheet
            .stretches(&self.places)
            .into_iter()
            .map(|[u, v]| u.max(v));
        let mut all: Vec<(f64, f64)> = most.zip(areas).collect();
        all.sort_by(|a, b| b.0.total_cmp(&a.0));
        let whole: f64 = all.iter().map(|(_, area)| area).sum();
        let tight: f64 = all
            .iter()
            .filter(|(s, _)| *s > TIGHT)
            .map(|(_, area)| area)
            .sum();
        let mut seen = 0.0;
        let twentieth = all.iter().find(|(_, area)| {
            seen += area;
            seen >= 0.05 * whole
        });
        Strain {
            most: 100.0 * twentieth.map_or(0.0, |(s, _)| *s),
            tight_share: 100.0 * tight / whole.max(1e-9),
        }
    }

    fn gaps(&self) -> Vec<Gap> {
        let levels = &self.stand.levels;
        let at = [("bust", levels.bust), ("waist", 0.0), ("hip", levels.hip)];
        let gap = |(level, height): (&'static str, f64)| {
            let near = self.places.iter().filter(|p| (p[1] - height).abs() < BAND);
            let off: Vec<f64> = near.map(|p| self.stand.gap(*p)).collect();
            (!off.is_empty()).then(|| Gap {
                level,
                mean: off.iter().sum::<f64>() / off.len() as f64,
                most: off.iter().copied().fold(0.0, f64::max),
            })
        };
        at.into_iter().filter_map(gap).collect()
    }

    pub(super) fn deepest(&self) -> f64 {
        let inside = self.places.iter().map(|p| -self.stand.gap(*p));
        inside.fold(0.0, f64::max)
    }
}

#[derive(Debug, Clone, Copy)]
enum Level {
    Hem,
    Waist,
}

fn slack_of(station: Station) -> Slack {
    let seen = from_beside(&station.places);
    let (cloth, taut) = (long(&seen), long(&hull(&seen)));
    Slack {
        piece: station.piece,
        share: station.share,
        cloth,
        taut,
        slack: cloth - taut,
    }
}

/// A line that goes down a body, seen from beside: in the upright plane through its ends and its
/// middle, along its chord and outward from it.
fn from_beside(line: &[Space]) -> Vec<[f64; 2]> {
    let (Some(first), Some(last)) = (line.first(), line.last()) else {
        return Vec::new();
    };
    let mut out = [0.0; 3];
    for p in line {
        add_to(&mut out, 1.0, [p[0], 0.0, p[2] - AXIS]);
    }
    let Some(down) = direction(sub(*last, *first)) else {
        return Vec::new();
    };
    let along = dot(out, down);
    add_to(&mut out, -along, down);
    let Some(out) = direction(out) else {
        return Vec::new();
    };
    let seen = line.iter().map(|p| sub(*p, *first));
    seen.map(|from| [dot(from, down), dot(from, out)]).collect()
}

/// A thread drawn taut over the outside of a line.
fn hull(line: &[[f64; 2]]) -> Vec<[f64; 2]> {
    let mut hull: Vec<[f64; 2]> = Vec::new();
    for &next in line {
        while let [.., a, b] = hull[..] {
            let turn = (b[0] - a[0]) * (next[1] - a[1]) - (b[1] - a[1]) * (next[0] - a[0]);
            if turn < 0.0 && next[0] > b[0] {
                break;
            }
            hull.pop();
        }
        hull.push(next);
    }
    hull
}

fn long(line: &[[f64; 2]]) -> f64 {
    let steps = line.iter().zip(line.iter().skip(1));
    steps
        .map(|(a, b)| length([b[0] - a[0], b[1] - a[1], 0.0]))
        .sum()
}

/// How far forward the upright axis of a body is, in mm, where z = 0 touches the shoulder blades.
const AXIS: f64 = 100.0;
