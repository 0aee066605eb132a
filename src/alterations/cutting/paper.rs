//! Paper to cut: a piece slashed into panels, panels moved, the outline gathered again.

use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Region, Rigid, tolerance};
use crate::piece::{Apexes, EdgeName, Piece};

/// How near a slash must end to a panel's boundary to end on it, in millimetres.
const ON: f64 = tolerance::SEAM_DRAFTED;

/// What a side of a panel is.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Of {
    /// Part of an edge of the piece: its place among the edges, and where along it the part starts.
    Edge(usize, f64),
    /// A slash.
    Slash,
}

#[derive(Debug, Clone)]
struct Side {
    of: Of,
    curve: Curve,
}

#[derive(Debug, Clone)]
struct Panel {
    sides: Vec<Side>,
    motion: Rigid,
}

/// One panel of a cut paper.
///
/// ```
/// use blockwright::alterations::PanelId;
/// fn same(a: PanelId, b: PanelId) -> bool { a == b }
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct PanelId(usize);

/// A piece on paper, cut into rigid panels.
///
/// Slashes divide it, panels are moved, and [`gather`](Self::gather) walks round the moved
/// panels to make the new outline, which then has to be trued.
///
/// ```
/// use blockwright::alterations::Paper;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::geometry::{Curve, Point, Rigid, Vec2};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(600.0))?;
/// let back = pattern.piece("back").ok_or("no back")?;
/// let width = back.outline().bounds().x1;
/// let mut paper = Paper::of(back);
/// // Cut across below the hip, drop the lower part: a skirt 50 mm longer.
/// paper.slash(&Curve::line(Point::new(0.0, 400.0), Point::new(width, 400.0))?)?;
/// let lower = paper.panel_at(Point::new(50.0, 500.0))?;
/// paper.shift(lower, Vec2::new(0.0, 50.0));
/// let longer = paper.gather()?.finish()?;
/// assert!((longer.outline().bounds().height() - back.outline().bounds().height() - 50.0).abs() < 1e-6);
/// # Ok(()) }
/// ```
#[derive(Debug, Clone)]
pub struct Paper<'p> {
    piece: &'p Piece,
    panels: Vec<Panel>,
}

impl<'p> Paper<'p> {
    /// The piece on paper, uncut.
    #[must_use]
    pub fn of(piece: &'p Piece) -> Self {
        let sides = piece
            .outline()
            .edges()
            .iter()
            .enumerate()
            .map(|(index, edge)| Side {
                of: Of::Edge(index, 0.0),
                curve: edge.curve().clone(),
            })
            .collect();
        Self {
            piece,
            panels: vec![Panel {
                sides,
                motion: Rigid::IDENTITY,
            }],
        }
    }

    /// Cuts along a path that runs from boundary to boundary of one panel. A hinge is a path
    /// that ends on a corner of the outline.
    ///
    /// # Errors
    /// When no panel has both ends of the path on its boundary and the path inside.
    pub fn slash(&mut self, path: &Curve) -> Result<(), AlterationError> {
        let inside = middle(path);
        let index = self
            .panels
            .iter()
            .position(|p| {
                [path.start(), path.end()]
                    .iter()
                    .all(|q| on_boundary(p, *q).is_some())
                    && contains(p, inside)
            })
            .ok_or_else(|| AlterationError::Missing {
                what: format!(
                    "a panel to be cut from ({:.1}, {:.1}) to ({:.1}, {:.1}) mm",
                    path.start().x,
                    path.start().y,
                    path.end().x,
                    path.end().y
                ),
                advice: "a slash runs from edge to edge, inside the piece",
            })?;
        let panel = self.panels.swap_remove(index);
        let motion = panel.motion;
        let split = split_boundary(panel.sides, path.start())?;
        let (first, second) = halves(split, path)?;
        let slash = |curve: Curve| Side {
            of: Of::Slash,
            curve,
        };
        let mut one = first;
        one.push(slash(path.reversed()));
        let mut other = second;
        other.push(slash(path.clone()));
        self.panels.push(Panel { sides: one, motion });
        self.panels.push(Panel {
            sides: other,
            motion,
        });
        Ok(())
    }

    /// The panel that a point lies in, as the paper was before anything moved.
    ///
    /// # Errors
    /// When the point lies in none.
    pub fn panel_at(&self, point: Point) -> Result<PanelId, AlterationError> {
        self.panels
            .iter()
            .position(|p| contains(p, point))
            .map(PanelId)
            .ok_or_else(|| AlterationError::Missing {
                what: format!("a panel at ({:.1}, {:.1}) mm", point.x, point.y),
                advice: "the point lies outside the piece",
            })
    }

    /// Moves a panel, after whatever moved it before.
    pub fn turn(&mut self, panel: PanelId, motion: Rigid) {
        if let Some(p) = self.panels.get_mut(panel.0) {
            p.motion = p.motion.then(motion);
        }
    }

    /// Shifts a panel.
    pub fn shift(&mut self, panel: PanelId, by: kurbo::Vec2) {
        self.turn(panel, Rigid::shift(by));
    }

    /// Where a point of the uncut paper comes to lie. A point on the outline goes with the panel
    /// that has this part of it, one on a slash with the panel nearest to it.
    #[must_use]
    pub fn moved(&self, point: Point) -> Point {
        let on_outline = |side: &&Side| matches!(side.of, Of::Edge(..));
        let any = |_: &&Side| true;
        let home = self
            .nearest(point, on_outline)
            .filter(|(distance, _)| *distance <= ON)
            .map(|(_, panel)| panel)
            .or_else(|| self.panels.iter().find(|p| contains(p, point)))
            .or_else(|| self.nearest(point, any).map(|(_, panel)| panel));
        home.map_or(point, |p| p.motion.apply(point))
    }

    /// The panel of which such a side comes nearest to a point, and how near.
    fn nearest(&self, point: Point, wanted: impl Fn(&&Side) -> bool) -> Option<(f64, &Panel)> {
        let distance = |panel: &Panel| {
            let sides = panel.sides.iter().filter(&wanted);
            let distances = sides.map(|side| side.curve.nearest(point).0);
            distances.fold(f64::INFINITY, f64::min)
        };
        let all = self.panels.iter().map(|panel| (distance(panel), panel));
        all.min_by(|a, b| a.0.total_cmp(&b.0))
    }

    /// Walks round the moved panels and makes the new outline.
    ///
    /// Where a cut opened or closed an edge, the parts are joined straight: that edge has to be
    /// trued. Darts, notches, lines and named points go with their panels.
    ///
    /// # Errors
    /// When what comes out is no curve.
    pub fn gather(&self) -> Result<Sketch, AlterationError> {
        let mut sketch = Sketch::of(self.piece);
        for (index, edge) in self.piece.outline().edges().iter().enumerate() {
            let curve = self.gathered(index)?;
            sketch.replace(edge.name(), curve)?;
        }
        sketch.join_corners()?;
        for dart in sketch.darts_mut() {
            dart.legs = dart.legs.map(|leg| self.moved(leg));
            dart.apexes = match dart.apexes {
                Apexes::One(a) => Apexes::One(self.moved(a)),
                Apexes::Two(a, b) => Apexes::Two(self.moved(a), self.moved(b)),
            };
        }
        for line in sketch.lines_mut() {
            let (from, to) = (self.moved(line.curve.start()), self.moved(line.curve.end()));
            line.curve = Curve::line(from, to)?;
        }
        for point in sketch.points_mut() {
            point.at = self.moved(point.at);
        }
        let places: Vec<(EdgeName, f64)> = self
            .piece
            .notches()
            .iter()
            .map(|n| (n.edge.clone(), n.at))
            .collect();
        for (place, (edge, at)) in places.into_iter().enumerate() {
            let Some(original) = self.piece.outline().edge(&edge) else {
                continue;
            };
            let (point, _) = original.curve().point_at(at)?;
            sketch.put_notch(place, self.moved(point));
        }
        Ok(sketch)
    }

    /// The parts of one edge, moved and joined in their old order.
    fn gathered(&self, edge: usize) -> Result<Curve, GeometryError> {
        let mut parts: Vec<(f64, Curve)> = Vec::new();
        for panel in &self.panels {
            for side in &panel.sides {
                if let Of::Edge(of, from) = side.of
                    && of == edge
                {
                    parts.push((from, side.curve.moved(&panel.motion)));
                }
            }
        }
        parts.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut parts = parts.into_iter().map(|(_, curve)| curve);
        let Some(mut whole) = parts.next() else {
            return Err(GeometryError::Empty);
        };
        for part in parts {
            whole = joined(whole, &part)?;
        }
        Ok(whole)
    }
}

/// Two curves end to end, with a straight bridge where they do not meet.
fn joined(first: Curve, second: &Curve) -> Result<Curve, GeometryError> {
    let (from, to) = (first.end(), second.start());
    let gap = from.distance(to);
    if gap <= tolerance::POINT {
        return first.then(second);
    }
    first.then(&Curve::line(from, to)?)?.then(second)
}

fn middle(path: &Curve) -> Point {
    path.point_at(path.length() / 2.0)
        .map_or(path.start(), |(p, _)| p)
}

fn contains(panel: &Panel, point: Point) -> bool {
    let sides = panel.sides.iter().flat_map(|s| s.curve.segments());
    Region::within(sides.copied().collect()).surrounds(point)
}

/// The side on which a point lies and how far along it.
fn on_boundary(panel: &Panel, point: Point) -> Option<(usize, f64)> {
    panel.sides.iter().enumerate().find_map(|(index, side)| {
        let (distance, at) = side.curve.nearest(point);
        (distance <= ON).then_some((index, at))
    })
}

/// The boundary, rotated and split so that it starts at a point on it.
fn split_boundary(sides: Vec<Side>, at: Point) -> Result<Vec<Side>, GeometryError> {
    let found = sides.iter().enumerate().find_map(|(index, side)| {
        let (distance, along) = side.curve.nearest(at);
        (distance <= ON).then_some((index, along))
    });
    let Some((index, along)) = found else {
        return Err(GeometryError::Parallel);
    };
    let Some((head, [side, tail @ ..])) = sides.split_at_checked(index) else {
        return Err(GeometryError::Parallel);
    };
    let (mut head, mut tail) = (head.to_vec(), tail.to_vec());
    let length = side.curve.length();
    let mut around = Vec::with_capacity(sides.len() + 1);
    if along <= ON {
        around.push(side.clone());
        around.append(&mut tail);
        around.append(&mut head);
    } else if along >= length - ON {
        around.append(&mut tail);
        around.append(&mut head);
        around.push(side.clone());
    } else {
        let (before, after) = split_side(side, along)?;
        around.push(after);
        around.append(&mut tail);
        around.append(&mut head);
        around.push(before);
    }
    Ok(around)
}

fn split_side(side: &Side, along: f64) -> Result<(Side, Side), GeometryError> {
    let (before, after) = side.curve.split_at(along)?;
    let of_after = match side.of {
        Of::Edge(index, from) => Of::Edge(index, from + along),
        Of::Slash => Of::Slash,
    };
    Ok((
        Side {
            of: side.of,
            curve: before,
        },
        Side {
            of: of_after,
            curve: after,
        },
    ))
}

/// A boundary that starts where the path starts, divided where the path ends: the part from
/// the path's start to its end, and the part from there back.
fn halves(sides: Vec<Side>, path: &Curve) -> Result<(Vec<Side>, Vec<Side>), GeometryError> {
    let end = path.end();
    let mut first = Vec::new();
    let mut rest = sides.into_iter();
    for side in rest.by_ref() {
        let (distance, along) = side.curve.nearest(end);
        if distance > ON || along <= ON {
            if distance <= ON && !first.is_empty() {
                let mut second = vec![side];
                second.extend(rest);
                return Ok((first, second));
            }
            first.push(side);
            continue;
        }
        let mut second = Vec::new();
        if along >= side.curve.length() - ON {
            first.push(side);
        } else {
            let (before, after) = split_side(&side, along)?;
            first.push(before);
            second.push(after);
        }
        second.extend(rest);
        return Ok((first, second));
    }
    Err(GeometryError::Parallel)
}
