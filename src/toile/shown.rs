//! A toile as pictures.

#![expect(
    clippy::indexing_slicing,
    reason = "panels and points are numbered by the garment"
)]

use super::lines::panel_lines;
use super::png::Picture;
use super::raster::{Colour, Paint, Raster, View};
use super::sewn::Toile;
use super::solid::Skin;
use super::space::{Space, add_to, cross, dot, scaled, sub, within};
use crate::geometry::elementary::{cos, sin};
use crate::piece::EdgeRole;
use serde::Serialize;

/// What of a toile a picture shows.
///
/// ```
/// use blockwright::toile::Shown;
/// assert_eq!(Shown::ALL.len(), 3);
/// assert!(Shown::Strain.bands().len() > 3);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Shown {
    /// The cloth in light and shade.
    Cloth,
    /// How far its threads are stretched.
    Strain,
    /// How far it stands off the body.
    Gap,
}

/// A band of a map: below which value, in which colour (red, green, blue from 0 to 1), in which words.
type Band = (f64, Colour, &'static str);

/// Light to dark, so that bands are told apart in black and white.
const STRAINS: [Band; 5] = [
    (0.005, [0.96, 0.95, 0.91], "below 0.5 %"),
    (0.01, [0.76, 0.86, 0.93], "0.5 to 1 %"),
    (0.02, [0.48, 0.70, 0.87], "1 to 2 %"),
    (0.04, [0.18, 0.48, 0.73], "2 to 4 %"),
    (f64::INFINITY, [0.04, 0.22, 0.45], "above 4 %"),
];
const GAPS: [Band; 5] = [
    (5.0, [0.97, 0.94, 0.88], "below 5 mm"),
    (15.0, [0.94, 0.80, 0.58], "5 to 15 mm"),
    (30.0, [0.86, 0.59, 0.26], "15 to 30 mm"),
    (60.0, [0.66, 0.36, 0.10], "30 to 60 mm"),
    (f64::INFINITY, [0.35, 0.16, 0.03], "above 60 mm"),
];

impl Shown {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Cloth, Self::Strain, Self::Gap];

    /// The name in files and documents.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cloth => "cloth",
            Self::Strain => "strain",
            Self::Gap => "gap",
        }
    }

    /// The legend: the colour of each band as red, green and blue bytes, and its words.
    #[must_use]
    pub fn bands(self) -> Vec<([u8; 3], &'static str)> {
        let bands: &[Band] = match self {
            Self::Cloth => &[],
            Self::Strain => &STRAINS,
            Self::Gap => &GAPS,
        };
        bands
            .iter()
            .map(|(_, colour, words)| (colour.map(byte), *words))
            .collect()
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a share of one"
)]
fn byte(share: f64) -> u8 {
    (255.0 * share).round() as u8
}

/// Directions from which pictures are made, in degrees from the front to the wearer's left.
const FACINGS: [f64; 4] = [0.0, 90.0, 180.0, 140.0];

/// Half the width of a picture, in mm, at least, and how much wider than the stand it is; how far it
/// goes on above and below.
const HALF: f64 = 270.0;
const BESIDE: f64 = 60.0;
const ABOVE: f64 = 30.0;

/// Pixels a mm.
const SCALE: f64 = 0.8;

/// The stand is drawn so much smaller, in mm, and by as much more as the cloth sinks into it: cloth of
/// straight triangles cuts into what is round.
const SMALLER: f64 = 2.5;

const GROUND: Colour = [1.0, 1.0, 1.0];
const STAND: Colour = [0.62, 0.52, 0.45];
const CLOTH: Colour = [0.87, 0.86, 0.81];
const SEAM: Colour = [0.22, 0.22, 0.27];
const LEVEL: Colour = [0.10, 0.30, 0.62];

impl Toile {
    /// The lowest place of cloth, in mm above the waist: pictures side by side are made down to the
    /// lowest of all.
    #[must_use]
    pub fn lowest(&self) -> f64 {
        self.places
            .iter()
            .map(|p| p[1])
            .fold(f64::INFINITY, f64::min)
    }

    /// Front, left side, back and a view from behind the left side, beside one another, down to a
    /// height in mm above the waist.
    #[must_use]
    pub fn picture(&self, shown: Shown, lowest: f64) -> Picture {
        let skin = self.skin();
        let normals = skin.normals();
        let stand = self.smaller_stand();
        let stand_normals = self.stand.skin.normals();
        let top = self
            .stand
            .skin
            .points
            .iter()
            .map(|p| p[1])
            .fold(0.0, f64::max)
            + ABOVE;
        let bottom = lowest - 3.0 * ABOVE;
        let (middle, half) = self.frame();
        let (wide, high) = (pixels(2.0 * half), pixels(top - bottom));
        let values = self.values(shown);
        let bands = bands(shown);
        let mut all = Picture {
            wide: small(wide * FACINGS.len()),
            high: small(high),
            rows: vec![255; 3 * wide * high * FACINGS.len()],
        };
        for (place, degrees) in FACINGS.into_iter().enumerate() {
            let turn = degrees.to_radians();
            let view = View {
                sine: sin(turn),
                cosine: cos(turn),
                middle: [0.0, 0.5 * (top + bottom), middle],
                scale: 2.0 * SCALE,
            };
            let mut raster = Raster::new(2 * wide, 2 * high, GROUND);
            raster.triangles(
                &view,
                &stand,
                &stand_normals,
                &self.stand.skin.triangles,
                Paint::Plain(STAND),
            );
            let paint = match shown {
                Shown::Cloth => Paint::Plain(CLOTH),
                _ => Paint::Bands {
                    values: &values,
                    bands: &bands,
                },
            };
            raster.triangles(&view, &skin.points, &normals, &skin.triangles, paint);
            self.draw_lines(&mut raster, &view);
            let (_, _, rows) = raster.halved();
            for (row, bytes) in rows.chunks_exact(3 * wide).enumerate() {
                let at = 3 * wide * (row * FACINGS.len() + place);
                all.rows[at..at + 3 * wide].copy_from_slice(bytes);
            }
        }
        all
    }

    /// The middle of the stand from back to front, and half the width of a picture of it from any side.
    fn frame(&self) -> (f64, f64) {
        let depths = || self.stand.skin.points.iter().map(|p| p[2]);
        let (back, front) = (
            depths().fold(f64::INFINITY, f64::min),
            depths().fold(f64::NEG_INFINITY, f64::max),
        );
        let middle = 0.5 * (back + front);
        let points = self.stand.skin.points.iter();
        let far = points.map(|p| super::space::length([p[0], 0.0, p[2] - middle]));
        (middle, far.fold(HALF - BESIDE, f64::max) + BESIDE)
    }

    /// Seams, hems and darts as full lines, levels as dashes: the waist blue.
    fn draw_lines(&self, raster: &mut Raster, view: &View) {
        let mut draw = |line: &[Space], colour: Colour, wide: f64, dash: Option<[f64; 2]>| {
            raster.line(view, line, colour, wide, dash);
            if !self.garment.whole {
                let other: Vec<Space> = line.iter().map(|p| [-p[0], p[1], p[2]]).collect();
                raster.line(view, &other, colour, wide, dash);
            }
        };
        for (index, (panel, joined)) in self
            .garment
            .panels
            .iter()
            .zip(&self.garment.joined)
            .enumerate()
        {
            let at = |p: &usize| self.places[joined[*p]];
            for (_, role, points) in &panel.edges {
                if *role != EdgeRole::Fold {
                    draw(&points.iter().map(at).collect::<Vec<_>>(), SEAM, 2.0, None);
                }
            }
            for (one, next) in panel.pairs.iter().zip(panel.pairs.iter().skip(1)) {
                if panel.points[one[0]].distance(panel.points[next[0]])
                    < 2.0 * self.settings.quality.edge()
                {
                    draw(&[at(&one[0]), at(&next[0])], SEAM, 2.0, None);
                }
            }
            for (name, line) in panel_lines(self, index) {
                let (colour, wide) = if name == "waist" {
                    (LEVEL, 3.0)
                } else {
                    ([0.55; 3], 2.0)
                };
                draw(&line, colour, wide, Some([9.0, 7.0]));
            }
        }
    }

    /// What a map shows at each point of the skin.
    fn values(&self, shown: Shown) -> Vec<f64> {
        let sheet = &self.garment.sheet;
        let mut values: Vec<f64> = match shown {
            Shown::Cloth => Vec::new(),
            Shown::Gap => self.places.iter().map(|p| self.stand.gap(*p)).collect(),
            Shown::Strain => {
                let mut sums = vec![(0.0, 0.0); sheet.count()];
                for ((corners, flat), [u, v]) in sheet
                    .triangles
                    .iter()
                    .zip(&sheet.flat)
                    .zip(sheet.stretches(&self.places))
                {
                    let area = super::sheet::twice_area(flat);
                    for &corner in corners {
                        sums[corner].0 += area * u.max(v);
                        sums[corner].1 += area;
                    }
                }
                sums.into_iter()
                    .map(|(sum, area)| sum / f64::max(area, 1e-9))
                    .collect()
            }
        };
        if !self.garment.whole {
            values.extend_from_within(..);
        }
        values
    }

    /// The cloth of both sides, its triangles anticlockwise seen from outside.
    pub(super) fn skin(&self) -> Skin {
        let sheet = &self.garment.sheet;
        let mut outward = vec![0.0; self.garment.panels.len()];
        for (corners, panel) in sheet.triangles.iter().zip(&self.garment.panel_of) {
            let [a, b, c] = corners.map(|i| self.places[i]);
            outward[*panel] += dot(cross(sub(b, a), sub(c, a)), [a[0], 0.0, a[2] - 100.0]);
        }
        let turned = |(corners, panel): (&[usize; 3], &usize)| {
            let [a, b, c] = *corners;
            if outward[*panel] < 0.0 {
                [a, c, b]
            } else {
                [a, b, c]
            }
        };
        let mut triangles: Vec<[usize; 3]> = sheet
            .triangles
            .iter()
            .zip(&self.garment.panel_of)
            .map(turned)
            .collect();
        let mut points = self.places.clone();
        if !self.garment.whole {
            let count = points.len();
            points.extend(self.places.iter().map(|p| [-p[0], p[1], p[2]]));
            let other = |i: usize| {
                if sheet.holds[i].on_fold() {
                    i
                } else {
                    i + count
                }
            };
            let mirrored: Vec<[usize; 3]> = triangles
                .iter()
                .map(|[a, b, c]| [other(*a), other(*c), other(*b)])
                .collect();
            triangles.extend(mirrored);
        }
        Skin { points, triangles }
    }

    pub(super) fn smaller_stand(&self) -> Vec<Space> {
        let skin = &self.stand.skin;
        let by = SMALLER + self.deepest();
        let shrunk = skin.points.iter().zip(skin.normals()).map(|(p, n)| {
            let mut q = *p;
            add_to(&mut q, -1.0, scaled(n, by));
            q
        });
        shrunk.collect()
    }
}

fn bands(shown: Shown) -> Vec<(f64, Colour)> {
    let bands: &[Band] = match shown {
        Shown::Gap => &GAPS,
        _ => &STRAINS,
    };
    bands
        .iter()
        .map(|(bound, colour, _)| (*bound, *colour))
        .collect()
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a body of one or two metres"
)]
fn pixels(mm: f64) -> usize {
    (within(mm, 10.0, 4000.0) * SCALE).round() as usize
}

fn small(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}
