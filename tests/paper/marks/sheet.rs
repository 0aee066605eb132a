//! A finished drawing seen from outside: the pieces' outlines, what is drawn, what is written.
//! Read from strokes and texts alone; nothing here knows how the drawing was made.

use blockwright::drawing::{Anchor, Drawing, DrawnPath, Face, Item, Level, Text};
use geo::{Coord, Line, LineString, Polygon, Rect};
use kurbo::{PathEl, Point};

/// What a stroke is, told by its layer and its shape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    Outline,
    Dart,
    Notch,
    Drill,
    Grain,
    Bracket,
    Head,
    Point,
    /// The ring of the bust point.
    Ring,
    /// The bar where a zip stops.
    Stop,
    Slit,
    Balance,
    Lengthen,
}

pub struct Stroke {
    pub kind: Kind,
    pub lines: Vec<Line<f64>>,
    pub bounds: Rect<f64>,
}

pub struct Words {
    pub text: String,
    pub size: f64,
    pub corners: Polygon<f64>,
    pub bounds: Rect<f64>,
}

pub struct Sheet {
    /// The outermost closed line of every piece.
    pub outlines: Vec<Polygon<f64>>,
    pub strokes: Vec<Stroke>,
    pub words: Vec<Words>,
}

/// Ends nearer than this are one, in millimetres.
const JOINED: f64 = 0.02;

impl Sheet {
    pub fn of(drawing: &Drawing) -> Self {
        let mut sheet = Self {
            outlines: Vec::new(),
            strokes: Vec::new(),
            words: Vec::new(),
        };
        let cut = drawing.layers().iter().any(|l| l.name == "cutting lines");
        let mut open = Vec::new();
        for layer in drawing.layers() {
            for item in &layer.items {
                match item {
                    Item::Text(text) => sheet.words.push(words(text)),
                    Item::Path(figure) => {
                        let lines = flat(figure);
                        let kind = kind(&layer.name, figure);
                        let fold = figure.pen.as_ref().is_some_and(|p| p.dash.len() == 4);
                        if layer.name == "cutting lines"
                            || (layer.name == "stitching lines" && (!cut || fold))
                        {
                            open.push(points(&lines));
                        }
                        let bounds = around(lines.iter().flat_map(|l| [l.start, l.end]));
                        sheet.strokes.push(Stroke {
                            kind,
                            lines,
                            bounds,
                        });
                    }
                }
            }
        }
        sheet.outlines = rings(open);
        sheet
    }
}

fn kind(layer: &str, figure: &DrawnPath) -> Kind {
    let curved = figure
        .path
        .elements()
        .iter()
        .any(|e| matches!(e, PathEl::CurveTo(..) | PathEl::QuadTo(..)));
    let corners = figure.path.elements().len();
    let width = figure.pen.as_ref().map_or(0.0, |pen| pen.width);
    match layer {
        "stitching lines" | "cutting lines" => Kind::Outline,
        "darts" => Kind::Dart,
        "balance lines" => Kind::Balance,
        "lengthen or shorten lines" => Kind::Lengthen,
        "marks" if figure.fill.is_some() => Kind::Head,
        "marks" if figure.pen.as_ref().is_some_and(|pen| !pen.dash.is_empty()) => Kind::Slit,
        "marks" if (width - 0.45).abs() < 1e-9 => Kind::Stop,
        "marks" if curved && (width - 0.25).abs() < 1e-9 => Kind::Ring,
        "marks" if curved => Kind::Drill,
        "marks" if (width - 0.25).abs() < 1e-9 => Kind::Point,
        "marks" if corners == 4 => Kind::Bracket,
        "marks" if (width - 0.3).abs() < 1e-9 => Kind::Grain,
        "marks" => Kind::Notch,
        other => panic!("unknown layer {other}"),
    }
}

pub fn flat(figure: &DrawnPath) -> Vec<Line<f64>> {
    let coord = |p: Point| Coord { x: p.x, y: p.y };
    let (mut lines, mut at, mut start) = (Vec::new(), Point::ZERO, Point::ZERO);
    kurbo::flatten(&figure.path, 0.05, |el| match el {
        PathEl::MoveTo(p) => (at, start) = (p, p),
        PathEl::LineTo(p) => {
            lines.push(Line::new(coord(at), coord(p)));
            at = p;
        }
        PathEl::ClosePath => lines.push(Line::new(coord(at), coord(start))),
        _ => unreachable!("flattened"),
    });
    lines
}

fn points(lines: &[Line<f64>]) -> Vec<Coord<f64>> {
    let mut all: Vec<_> = lines.iter().map(|l| l.start).collect();
    all.extend(lines.last().map(|l| l.end));
    all
}

fn near(a: Coord<f64>, b: Coord<f64>) -> bool {
    (a.x - b.x).hypot(a.y - b.y) < JOINED
}

/// Stretches joined end to end until each ring is closed.
fn rings(mut open: Vec<Vec<Coord<f64>>>) -> Vec<Polygon<f64>> {
    let mut found = Vec::new();
    while let Some(mut ring) = open.pop() {
        while !near(ring[0], *ring.last().unwrap()) {
            let end = *ring.last().unwrap();
            let next = open
                .iter()
                .position(|o| near(o[0], end) || near(*o.last().unwrap(), end))
                .expect("the outline of a piece is closed");
            let mut next = open.swap_remove(next);
            if !near(next[0], end) {
                next.reverse();
            }
            ring.extend(next.into_iter().skip(1));
        }
        found.push(Polygon::new(LineString::new(ring), vec![]));
    }
    found
}

/// The box a text takes: from above an accented capital to below the lowest letter, placed here
/// anew from what its anchor, level and turn say.
pub fn words(text: &Text) -> Words {
    let size = text.style.size;
    let width = text.style.face.width(&text.text, size);
    let left = match text.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => -0.5 * width,
        Anchor::End => -width,
    };
    let foot = match text.level {
        Level::Baseline => 0.0,
        Level::Middle => 0.5 * Face::CAP_HEIGHT * size,
        Level::Top => Face::CAP_HEIGHT * size,
    };
    let (sin, cos) = text.rotation.to_radians().sin_cos();
    let (top, low) = (foot - Face::ASCENT * size, foot + Face::DESCENT * size);
    let corner = |x: f64, y: f64| Coord {
        x: text.at.x + x * cos - y * sin,
        y: text.at.y + x * sin + y * cos,
    };
    let ring = vec![
        corner(left, top),
        corner(left + width, top),
        corner(left + width, low),
        corner(left, low),
    ];
    let bounds = around(ring.iter().copied());
    Words {
        text: text.text.clone(),
        size,
        corners: Polygon::new(LineString::new(ring), vec![]),
        bounds,
    }
}

fn around(points: impl Iterator<Item = Coord<f64>>) -> Rect<f64> {
    let (mut low, mut high) = (
        Coord {
            x: f64::INFINITY,
            y: f64::INFINITY,
        },
        Coord {
            x: f64::NEG_INFINITY,
            y: f64::NEG_INFINITY,
        },
    );
    for p in points {
        low = Coord {
            x: low.x.min(p.x),
            y: low.y.min(p.y),
        };
        high = Coord {
            x: high.x.max(p.x),
            y: high.y.max(p.y),
        };
    }
    Rect::new(low, high)
}
