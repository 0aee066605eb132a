//! Drawings to print.

use blockwright::drawing::{
    Anchor, Drawing, DrawnPath, Face, Ink, Item, Layer, Level, Pen, Text, TextStyle,
};
use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, TilePlan, tiles};
use kurbo::{BezPath, Circle, Point, Shape as _, Vec2};

/// Two lines of known length that cross several pages, in mm.
pub(crate) const LONG: f64 = 600.0;

/// Where the upright one stands: its x, and the y of its upper end, in mm.
pub(crate) const UPRIGHT: (f64, f64) = (650.0, 300.0);

/// The y of the level one, which begins at x = 0, in mm.
pub(crate) const LEVEL: f64 = 985.0;

pub(crate) fn piece(layers: &mut [Layer; 3], at: Vec2, name: &str, width: f64, length: f64) {
    let mut seam = BezPath::new();
    seam.move_to((0.0, 70.0));
    seam.curve_to((40.0, 68.0), (70.0, 40.0), (74.0, 0.0));
    seam.line_to((width * 0.62, 40.0));
    seam.curve_to(
        (width * 0.56, 140.0),
        (width * 0.6, 230.0),
        (width * 0.9, 238.0),
    );
    seam.curve_to(
        (width * 0.82, length * 0.4),
        (width, length * 0.6),
        (width, length),
    );
    seam.line_to((0.0, length));
    seam.close_path();
    layers[0].push(Item::from(DrawnPath::stroked(seam, Pen::solid(0.6))).moved(at));
    let mut dart = BezPath::new();
    dart.move_to((width * 0.38, length * 0.3));
    dart.line_to((width * 0.34, length * 0.5));
    dart.line_to((width * 0.38, length * 0.7));
    dart.line_to((width * 0.42, length * 0.5));
    dart.close_path();
    let dashed = Pen::solid(0.35).dashed(&[6.0, 2.0]);
    layers[1].push(Item::from(DrawnPath::stroked(dart, dashed)).moved(at));
    let grain = DrawnPath::line(
        (width * 0.2, 150.0),
        (width * 0.2, length - 80.0),
        Pen::solid(0.3),
    );
    layers[1].push(Item::from(grain).moved(at));
    let text = |y: f64, text: &str, face: Face, size: f64| {
        Text::new(
            Point::new(width * 0.5, y) + at,
            text,
            TextStyle::new(face, size),
        )
        .anchor(Anchor::Middle)
        .level(Level::Middle)
    };
    layers[2].push(text(length * 0.8, name, Face::Bold, 9.0));
    layers[2].push(text(
        length * 0.8 + 10.0,
        "Cut 1 · Ärmelloch ½",
        Face::Regular,
        5.0,
    ));
    layers[2].push(text(length * 0.45, "grain", Face::Regular, 4.0).turned(90.0));
}

/// Three pieces with curves, dashes and text, rings about a place where four A4 pages meet, and
/// two long straight lines.
pub(crate) fn demo() -> Drawing {
    let mut layers = ["seam lines", "darts & grain", "words"].map(Layer::new);
    piece(&mut layers, Vec2::new(3.0, 3.0), "Back", 290.0, 940.0);
    piece(&mut layers, Vec2::new(320.0, 3.0), "Front", 310.0, 960.0);
    piece(&mut layers, Vec2::new(660.0, 10.0), "Sleeve", 180.0, 420.0);
    let pen = || Pen::solid(0.5);
    let (x, y) = UPRIGHT;
    layers[1].push(DrawnPath::line((0.0, LEVEL), (LONG, LEVEL), pen()));
    layers[1].push(DrawnPath::line((x, y), (x, y + LONG), pen()));
    for radius in [4.0, 20.0] {
        let ring = Circle::new((176.0, 253.0), radius).to_path(0.01);
        layers[1].push(DrawnPath::stroked(
            ring,
            Pen::solid(0.25).ink(Ink::Rgb(200, 30, 60)),
        ));
    }
    Drawing::new(layers.to_vec()).unwrap()
}

pub(crate) fn info() -> PrintInfo {
    PrintInfo::new("Linen tunic, second toile")
        .subtitle("Drafted for Inês: bust 920, waist 740, hip 990 mm; regular ease")
        .contents([
            "Back: cut 1 on the fold",
            "Front: cut 1 on the fold",
            "Sleeve: cut a pair",
            "Seam allowance 15 mm included, hem 40 mm",
        ])
}

pub(crate) fn demo_tiles(paper: PaperFormat) -> (Vec<u8>, TilePlan) {
    tiles(&demo(), paper, &TileOptions::default(), &info()).unwrap()
}

pub(crate) fn one_line(from: (f64, f64), to: (f64, f64)) -> Drawing {
    let mut layer = Layer::new("line");
    layer.push(DrawnPath::line(from, to, Pen::solid(0.5)));
    Drawing::new(vec![layer]).unwrap()
}
