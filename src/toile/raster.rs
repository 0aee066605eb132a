//! Triangles and lines drawn into a picture, the nearer over the farther.

#![expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::indexing_slicing,
    reason = "pixels are counted within the picture; triangles name their points"
)]

use super::space::{Space, add_to, dot, length, scaled, within};

/// A colour: red, green, blue, each from 0 to 1.
pub(super) type Colour = [f64; 3];

/// How a surface is coloured.
#[derive(Debug, Clone, Copy)]
pub(super) enum Paint<'a> {
    /// One colour, in full light and shade.
    Plain(Colour),
    /// By a value at every point: the colour of the first bound above it, in soft light.
    Bands {
        values: &'a [f64],
        bands: &'a [(f64, Colour)],
    },
}

/// A direction to look from: turned about the upright axis, from the front towards the wearer's left.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct View {
    pub sine: f64,
    pub cosine: f64,
    /// The place in the middle of the picture.
    pub middle: Space,
    /// Pixels a mm.
    pub scale: f64,
}

impl View {
    /// Right and down in pixels from the middle, and how near.
    fn project(&self, p: Space) -> Space {
        let (x, y, z) = (
            p[0] - self.middle[0],
            p[1] - self.middle[1],
            p[2] - self.middle[2],
        );
        [
            (x * self.cosine - z * self.sine) * self.scale,
            -y * self.scale,
            x * self.sine + z * self.cosine,
        ]
    }

    fn turned(&self, n: Space) -> Space {
        [
            n[0] * self.cosine - n[2] * self.sine,
            n[1],
            n[0] * self.sine + n[2] * self.cosine,
        ]
    }
}

/// A picture with how near each of its pixels is.
#[derive(Debug, Clone)]
pub(super) struct Raster {
    wide: usize,
    high: usize,
    colour: Vec<Colour>,
    near: Vec<f64>,
}

/// From where light comes, in the viewer's frame; and a weaker one from the other side.
const LIGHT: Space = [-0.45, 0.62, 0.64];
const FILL: Space = [0.75, 0.15, 0.55];

impl Raster {
    pub fn new(wide: usize, high: usize, ground: Colour) -> Self {
        Self {
            wide,
            high,
            colour: vec![ground; wide * high],
            near: vec![f64::NEG_INFINITY; wide * high],
        }
    }

    /// Draws triangles with a direction and a colour at every point.
    pub fn triangles(
        &mut self,
        view: &View,
        points: &[Space],
        normals: &[Space],
        triangles: &[[usize; 3]],
        paint: Paint<'_>,
    ) {
        let (mid_x, mid_y) = (0.5 * self.wide as f64, 0.5 * self.high as f64);
        let seen: Vec<Space> = points
            .iter()
            .map(|p| {
                let q = view.project(*p);
                [q[0] + mid_x, q[1] + mid_y, q[2]]
            })
            .collect();
        let lit: Vec<Space> = normals.iter().map(|n| view.turned(*n)).collect();
        for t in triangles {
            let [a, b, c] = t.map(|i| seen[i]);
            let whole = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
            if whole.abs() < 1e-9 {
                continue;
            }
            let bound = |v: f64, most: usize| within(v, 0.0, most as f64) as usize;
            let (left, right) = (
                bound(a[0].min(b[0]).min(c[0]).floor(), self.wide),
                bound(a[0].max(b[0]).max(c[0]).ceil() + 1.0, self.wide),
            );
            let (top, bottom) = (
                bound(a[1].min(b[1]).min(c[1]).floor(), self.high),
                bound(a[1].max(b[1]).max(c[1]).ceil() + 1.0, self.high),
            );
            for y in top..bottom {
                for x in left..right {
                    let p = [x as f64 + 0.5, y as f64 + 0.5];
                    let share = |u: Space, v: Space| {
                        ((u[0] - p[0]) * (v[1] - p[1]) - (u[1] - p[1]) * (v[0] - p[0])) / whole
                    };
                    let shares = [share(b, c), share(c, a), share(a, b)];
                    if shares.iter().any(|s| *s < 0.0) {
                        continue;
                    }
                    let near = shares[0] * a[2] + shares[1] * b[2] + shares[2] * c[2];
                    let at = y * self.wide + x;
                    if near <= self.near[at] {
                        continue;
                    }
                    let mut n = [0.0; 3];
                    let mut value = 0.0;
                    for (s, i) in shares.iter().zip(t) {
                        add_to(&mut n, *s, lit[*i]);
                        if let Paint::Bands { values, .. } = paint {
                            value += s * values[*i];
                        }
                    }
                    self.near[at] = near;
                    self.colour[at] = match paint {
                        Paint::Plain(colour) => scaled(colour, light(n)),
                        Paint::Bands { bands, .. } => {
                            scaled(banded(value, bands), 0.62 + 0.38 * light(n))
                        }
                    };
                }
            }
        }
    }

    /// Draws a chain of places as a line, where nothing is nearer.
    pub fn line(
        &mut self,
        view: &View,
        places: &[Space],
        colour: Colour,
        wide: f64,
        dash: Option<[f64; 2]>,
    ) {
        let (mid_x, mid_y) = (0.5 * self.wide as f64, 0.5 * self.high as f64);
        let mut gone = 0.0;
        for (a, b) in places.iter().zip(places.iter().skip(1)) {
            let (p, q) = (view.project(*a), view.project(*b));
            let far = length([q[0] - p[0], q[1] - p[1], 0.0]);
            let count = (2.0 * far).ceil().max(1.0);
            let mut k = 0.0;
            while k <= count {
                let t = k / count;
                k += 1.0;
                let along = gone + far * t;
                if dash.is_some_and(|[on, off]| along % (on + off) > on) {
                    continue;
                }
                let at = [
                    p[0] + (q[0] - p[0]) * t + mid_x,
                    p[1] + (q[1] - p[1]) * t + mid_y,
                ];
                self.dot(at, p[2] + (q[2] - p[2]) * t + 4.0, colour, wide);
            }
            gone += far;
        }
    }

    fn dot(&mut self, at: [f64; 2], near: f64, colour: Colour, wide: f64) {
        let reach = 0.5 * wide;
        let bound = |v: f64, most: usize| within(v, 0.0, most as f64) as usize;
        for y in
            bound((at[1] - reach).round(), self.high)..bound((at[1] + reach).round(), self.high)
        {
            for x in
                bound((at[0] - reach).round(), self.wide)..bound((at[0] + reach).round(), self.wide)
            {
                let index = y * self.wide + x;
                if near > self.near[index] {
                    self.colour[index] = colour;
                }
            }
        }
    }

    /// The picture at half its size, in rows of red, green and blue bytes.
    pub fn halved(&self) -> (usize, usize, Vec<u8>) {
        let (wide, high) = (self.wide >> 1, self.high >> 1);
        let mut bytes = Vec::with_capacity(3 * wide * high);
        for y in 0..high {
            for x in 0..wide {
                let mut sum = [0.0; 3];
                for (dx, dy) in [(0, 0), (1, 0), (0, 1), (1, 1)] {
                    add_to(
                        &mut sum,
                        0.25,
                        self.colour[(2 * y + dy) * self.wide + 2 * x + dx],
                    );
                }
                bytes.extend(sum.map(|v| (255.0 * within(v, 0.0, 1.0)).round() as u8));
            }
        }
        (wide, high, bytes)
    }
}

fn banded(value: f64, bands: &[(f64, Colour)]) -> Colour {
    let found = bands
        .iter()
        .find(|(bound, _)| value < *bound)
        .or(bands.last());
    found.map_or([0.5; 3], |(_, colour)| *colour)
}

/// How bright a surface is; it is lit on both sides.
fn light(n: Space) -> f64 {
    let n = super::space::direction(n).unwrap_or([0.0, 0.0, 1.0]);
    let n = if n[2] < 0.0 { scaled(n, -1.0) } else { n };
    let (key, fill) = (dot(n, LIGHT).max(0.0), dot(n, FILL).max(0.0));
    (0.26 + 0.70 * key + 0.16 * fill).min(1.12)
}
