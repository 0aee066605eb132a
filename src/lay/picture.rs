//! The lay as a picture for one page, to a scale.

use super::picture_piece::{Brush, arrow_head, piece};
use super::{Lay, LayError, Stretch};
use crate::drawing::{Anchor, Drawing, DrawnPath, Face, Ink, Layer, Level, Pen, Text, TextStyle};
use crate::units::{Length, LengthStyle};
use kurbo::{Point, Rect, Size};

/// What stands on the picture besides the lay.
///
/// ```
/// use blockwright::lay::LayLabels;
/// use blockwright::units::{LengthStyle, Unit};
/// let labels = LayLabels { title: "Apron".into(), lines: vec![], notes: vec![], style: LengthStyle::usual(Unit::Cm) };
/// assert_eq!(labels.title, "Apron");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LayLabels {
    /// What is made.
    pub title: String,
    /// What is said below the title, a line each.
    pub lines: Vec<String>,
    /// What is said below the lay, a line each; broken where it is too long.
    pub notes: Vec<String>,
    /// How lengths are written.
    pub style: LengthStyle,
}

/// The most room the cloth takes on the page, in mm on paper: with what stands round it, both A4
/// and Letter lying level hold it.
const ROOM: Size = Size::new(240.0, 117.0);

/// Scales, as what is one millimetre on paper; beyond them in tens.
const SCALES: [f64; 11] = [1.0, 2.0, 3.0, 4.0, 5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0];

/// Between a folded stretch and the opened one after it, in mm on paper.
const BETWEEN: f64 = 14.0;

/// The lay drawn to a scale for one page: the cloth with its fold, selvedges and measures, each
/// piece with its name, how it is cut, and its grain, the arrow at its upper end.
///
/// ```
/// use blockwright::lay::{Cloth, CutShape, LayLabels, LayPart, Search, picture};
/// use blockwright::units::{LengthStyle, Unit};
/// let part = LayPart::new("pocket", CutShape::rectangle(160.0, 140.0)?);
/// let lay = Search::new(&Cloth::new(900.0)?, vec![part], 1)?.lay();
/// let labels = LayLabels { title: "Pockets".into(), lines: vec![], notes: vec![], style: LengthStyle::usual(Unit::Cm) };
/// let drawing = picture(&lay, &labels)?;
/// assert!(drawing.bounds().width() < 280.0 && drawing.bounds().height() < 200.0);
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
///
/// # Errors
/// When something lies too far away to be drawn.
pub fn picture(lay: &Lay, labels: &LayLabels) -> Result<Drawing, LayError> {
    let scale = scale(lay);
    let mut words = Layer::new("words");
    let mut cloth = Layer::new("cloth");
    let mut pieces = Layer::new("pieces");
    let mut grain = Layer::new("grain");
    let mut y = heading(&mut words, labels, scale);
    y += 16.0;
    let mut x = 22.0;
    let mut lowest: f64 = y;
    for stretch in &lay.stretches {
        let origin = Point::new(x, y);
        let brush = Brush { origin, scale };
        let on_paper = Size::new(stretch.length, stretch.width) * (1.0 / scale);
        let rect = Rect::from_origin_size(origin, on_paper);
        lie(&mut cloth, &mut words, stretch, rect, labels.style);
        for laid in &stretch.pieces {
            piece(laid, &brush, &mut pieces, &mut grain, &mut words);
        }
        x = rect.x1 + BETWEEN;
        lowest = lowest.max(rect.y1);
    }
    if lay.stretches.len() > 1 {
        let (from, to) = (22.0, x - BETWEEN);
        let at = lowest + 13.0;
        let all = format!("together {}", shown(lay.length(), labels.style));
        measure(&mut cloth, &mut words, [from, to], at, &all);
        lowest = at;
    }
    let mut y = lowest + 15.0;
    let small = TextStyle::new(Face::Regular, 3.0);
    for line in labels.notes.iter().flat_map(|n| small.wrap(n, 262.0)) {
        words.push(Text::new((8.0, y), line, small));
        y += 4.2;
    }
    let layers = [cloth, pieces, grain, words];
    let layers = layers.into_iter().filter(|l| !l.items.is_empty()).collect();
    Ok(Drawing::new(layers)?)
}

/// What is one millimetre on paper, in millimetres of cloth.
fn scale(lay: &Lay) -> f64 {
    let gaps = BETWEEN * (lay.stretches.len().saturating_sub(1)) as f64;
    let widest = lay.stretches.iter().map(|s| s.width).fold(1.0, f64::max);
    let least = (lay.length() / (ROOM.width - gaps)).max(widest / ROOM.height);
    let whole = SCALES.into_iter().find(|scale| *scale >= least);
    whole.unwrap_or_else(|| (least / 10.0).ceil() * 10.0)
}

/// Title and lines; how far down they reach.
fn heading(words: &mut Layer, labels: &LayLabels, scale: f64) -> f64 {
    let (bold, plain) = (
        TextStyle::new(Face::Bold, 5.4),
        TextStyle::new(Face::Regular, 3.6),
    );
    let mut y = 6.0;
    words.push(Text::new((8.0, y), bold.fit(&labels.title, 262.0), bold));
    let drawn = format!(
        "Drawn 1 : {scale}, to look at; cut nothing by this picture. Arrows run with the grain to the \
         upper end of a piece; dark pieces lie face down."
    );
    for line in labels.lines.iter().chain([&drawn]) {
        y += 5.2;
        words.push(Text::new((8.0, y), plain.fit(line, 262.0), plain));
    }
    y
}

/// The cloth as it lies: its edges named and measured.
fn lie(cloth: &mut Layer, words: &mut Layer, stretch: &Stretch, rect: Rect, style: LengthStyle) {
    let plain = TextStyle::new(Face::Regular, 3.2);
    let edge = |y: f64| (Point::new(rect.x0, y), Point::new(rect.x1, y));
    let (fold, thin) = (
        Pen::solid(0.7).dashed(&[9.0, 2.0, 1.5, 2.0]),
        Pen::solid(0.25).ink(Ink::Grey(90)),
    );
    for x in [rect.x0, rect.x1] {
        cloth.push(DrawnPath::line((x, rect.y0), (x, rect.y1), thin.clone()));
    }
    let (upper, lower) = (edge(rect.y0), edge(rect.y1));
    let pen = |fold_there: bool| {
        if fold_there {
            fold.clone()
        } else {
            Pen::solid(0.7)
        }
    };
    cloth.push(DrawnPath::line(upper.0, upper.1, pen(stretch.folded)));
    cloth.push(DrawnPath::line(lower.0, lower.1, pen(false)));
    let names = if stretch.folded {
        ["fold", "selvedges, both together"]
    } else {
        ["selvedge", "selvedge"]
    };
    let width = shown(stretch.width, style);
    let wide = if stretch.folded {
        format!("{width} folded")
    } else {
        width
    };
    words.push(Text::new((rect.center().x, rect.y0 - 1.8), names[0], plain).anchor(Anchor::Middle));
    words.push(
        Text::new((rect.center().x, rect.y1 + 1.8), names[1], plain)
            .anchor(Anchor::Middle)
            .level(Level::Top),
    );
    let long = shown(stretch.length, style);
    measure(cloth, words, [rect.x0, rect.x1], rect.y0 - 8.0, &long);
    // Its width, read from below.
    let x = rect.x0 - 4.0;
    arrows(cloth, Point::new(x, rect.y0), Point::new(x, rect.y1));
    words.push(
        Text::new((x - 1.4, rect.center().y), wide, plain)
            .anchor(Anchor::Middle)
            .turned(-90.0),
    );
}

/// A measure along the cloth with its words above.
fn measure(cloth: &mut Layer, words: &mut Layer, [from, to]: [f64; 2], y: f64, text: &str) {
    arrows(cloth, Point::new(from, y), Point::new(to, y));
    let plain = TextStyle::new(Face::Regular, 3.2);
    words.push(Text::new((0.5 * (from + to), y - 1.4), text, plain).anchor(Anchor::Middle));
}

/// A line with an arrow head at both ends.
fn arrows(layer: &mut Layer, from: Point, to: Point) {
    layer.push(DrawnPath::line(from, to, Pen::solid(0.2)));
    let along = (to - from).normalize();
    for (tip, back) in [(from, along), (to, -along)] {
        layer.push(arrow_head(tip, back, 2.0));
    }
}

fn shown(mm: f64, style: LengthStyle) -> String {
    Length::from_mm(mm).map_or_else(|_| format!("{mm:.0} mm"), |length| length.to_text(style))
}
