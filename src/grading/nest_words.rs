//! What is written on a nest: the piece, the key of the sizes, a label at every corner.

use super::laid::Laid;
use super::leaders::{Labelled, lead};
use super::line_style::pen_of;
use super::nest_labels::NestLabels;

use crate::drawing::{
    DrawnPath, Face, FoldBracket, Ink, Layer, Level, Pen, Room, Text, TextStyle, edge_text,
    grain_text, listed, outside_darts, write_beside,
};
use crate::geometry::{Curve, Rigid, with_next};
use crate::piece::{Cut, EdgeRole};
use crate::units::speak;
use kurbo::{Point, Rect, Size, Vec2};

/// Length of the line shown in the key, in mm: long enough for the longest dash and its gap.
const SAMPLE: f64 = 44.0;
/// Rows of the key before it gets a second column.
const ROWS: usize = 12;
/// Distance of a label from its corner and from other labels, in mm.
const CLEAR: f64 = 1.6;

/// How far below a hem its label may stand, in mm.
const REACH: f64 = 150.0;

/// The widest line of the heading, in mm.
const WIDEST: f64 = 84.0;

/// Writes on the nest of one piece, which has a number.
pub(super) fn write_on(
    layers: &mut [Layer],
    room: &mut Room,
    laid: &[Laid<'_>],
    smallest: &Laid<'_>,
    (labels, number): (&NestLabels, &str),
) {
    let bracket = (smallest.piece.cut() == Cut::Fold)
        .then(|| bracket(layers, room, smallest))
        .flatten();
    let heading = heading(laid, smallest, labels, number);
    let bounds = smallest.piece.outline().bounds() + smallest.by;
    let wish = Point::new(
        bounds.x0 + 0.55 * bounds.width(),
        bounds.y0 + 0.62 * bounds.height(),
    );
    let inside = [1.0, 0.8, 0.6].into_iter().find_map(|scale| {
        let found = room.place(size_of(&heading, laid, scale), wish)?;
        Some((scale, found.origin()))
    });
    let (scale, at) = inside.unwrap_or_else(|| {
        // No room inside: below everything.
        let low = laid
            .iter()
            .map(|l| l.cut_bounds().y1)
            .fold(bounds.y1, f64::max);
        let at = Point::new(bounds.x0, low + 25.0);
        room.take_box(Rect::from_origin_size(at, size_of(&heading, laid, 1.0)));
        (1.0, at)
    });
    block(layers, &heading, laid, (scale, at), labels.colour);
    if let (Some(text), Some(words)) = (
        bracket.and_then(|bracket| bracket.words(room)),
        layers.last_mut(),
    ) {
        words.push(text);
    }
    edge_words(layers, room, smallest);
    grain_word(layers, room, smallest);
    guide_words(layers, room, smallest);
    dart_labels(layers, room, laid);
    shoulder_labels(layers, room, laid);
    corner_labels(layers, room, laid);
}

/// The word beside the grain line of the smallest size.
fn grain_word(layers: &mut [Layer], room: &mut Room, smallest: &Laid<'_>) {
    let word = grain_text(room, smallest.piece.grain().map(|end| end + smallest.by));
    if let (Some(text), Some(words)) = (word, layers.last_mut()) {
        words.push(text);
    }
}

/// The centres and the hem, beside the edges of the smallest size.
fn edge_words(layers: &mut [Layer], room: &mut Room, smallest: &Laid<'_>) {
    for edge in smallest.piece.outline().edges() {
        let text = edge_text(room, edge, &edge.curve().moved(&Rigid::shift(smallest.by)));
        if let (Some(text), Some(words)) = (text, layers.last_mut()) {
            words.push(text);
        }
    }
}

/// The names of the balance lines, beside those of the smallest size, where there is room.
fn guide_words(layers: &mut [Layer], room: &mut Room, smallest: &Laid<'_>) {
    let style = TextStyle::new(Face::Regular, 3.0);
    for line in smallest.piece.lines() {
        let parts = outside_darts(smallest.piece, &line.curve);
        let moved = |part: Curve| part.moved(&Rigid::shift(smallest.by));
        let parts: Vec<Curve> = parts.into_iter().map(moved).collect();
        let words = format!("{} line", line.name);
        let text = write_beside(room, &parts, &words, style, 0.3);
        if let (Some(text), Some(words)) = (text, layers.last_mut()) {
            words.push(text);
        }
    }
}

/// The size of every dart, at the ends of the darts of one name.
fn dart_labels(layers: &mut [Layer], room: &mut Room, laid: &[Laid<'_>]) {
    let mut names: Vec<&str> = Vec::new();
    for dart in laid.iter().flat_map(|size| size.piece.darts()) {
        if !names.contains(&dart.name.as_str()) {
            names.push(&dart.name);
        }
    }
    for name in names {
        let darts = laid.iter().filter_map(|size| {
            let dart = size.piece.darts().iter().find(|dart| dart.name == name)?;
            Some((size, dart))
        });
        let darts: Vec<_> = darts.collect();
        let Some((_, first)) = darts.first() else {
            continue;
        };
        // Beyond the apex, as the dart points.
        let mouth = first.legs[0].midpoint(first.legs[1]);
        let points: Vec<Labelled<'_>> = darts
            .iter()
            .map(|(size, dart)| Labelled {
                layer: size.number,
                label: size.label,
                at: dart.apex() + size.by,
            })
            .collect();
        lead(layers, room, &points, first.apex() - mouth);
    }
}

/// The size of every shoulder, at the shoulder points.
fn shoulder_labels(layers: &mut [Layer], room: &mut Room, laid: &[Laid<'_>]) {
    let points: Vec<Labelled<'_>> = laid
        .iter()
        .filter_map(|size| {
            let edges = size.piece.outline().edges();
            let (edge, next) = with_next(edges).find(|(edge, next)| {
                let pair = [edge.name().as_str(), next.name().as_str()];
                pair.contains(&"shoulder") && pair.contains(&"armscye")
            })?;
            Some(Labelled {
                layer: size.number,
                label: size.label,
                at: size.cut_corner(edge, next),
            })
        })
        .collect();
    lead(layers, room, &points, Vec2::new(1.0, -0.3));
}

type Line = (String, TextStyle);

fn heading(laid: &[Laid<'_>], smallest: &Laid<'_>, labels: &NestLabels, number: &str) -> Vec<Line> {
    let regular = |size| TextStyle::new(Face::Regular, size);
    let bold = |size| TextStyle::new(Face::Bold, size);
    let sizes = match laid {
        [one] => format!("size {}", one.label),
        [first, .., last] => format!("sizes {} to {}", first.label, last.label),
        [] => String::new(),
    };
    let piece = smallest.piece;
    let mut statements = vec![
        (piece.name().to_uppercase(), bold(7.0)),
        (number.to_owned(), bold(4.6)),
        (sizes, bold(5.0)),
        (piece.cut().words().to_owned(), regular(4.6)),
        (labels.title.clone(), regular(3.8)),
    ];
    statements.extend(labels.date.iter().map(|date| (date.clone(), regular(3.8))));
    let words = match smallest.cut {
        None => "stitching lines shown: add seam allowance".to_owned(),
        Some(cut) => format!(
            "cut lines shown, seam allowance included: {}",
            speak(&cut.allowances().widths(), labels.unit)
        ),
    };
    statements.extend(listed(&words).map(|line| (line, regular(3.8))));
    statements.push(("sew a toile first".to_owned(), regular(3.8)));
    statements
        .into_iter()
        .flat_map(|(text, style)| {
            style
                .broken(&text, WIDEST)
                .into_iter()
                .map(move |t| (t, style))
        })
        .collect()
}

fn key_style(scale: f64) -> TextStyle {
    TextStyle::new(Face::Regular, 3.8 * scale)
}

fn key_row(scale: f64) -> f64 {
    5.6 * scale
}

/// Widths of a column of the key and how many there are.
fn columns(laid: &[Laid<'_>], scale: f64) -> (f64, usize) {
    let style = key_style(scale);
    let widest = laid
        .iter()
        .map(|l| style.width(l.label))
        .fold(0.0, f64::max);
    (
        SAMPLE * scale + 3.0 + widest + 6.0,
        laid.len().div_ceil(ROWS).max(1),
    )
}

fn heading_height(heading: &[Line], scale: f64) -> f64 {
    heading
        .iter()
        .map(|(_, s)| 1.35 * s.size * scale)
        .sum::<f64>()
        + 3.0
}

fn size_of(heading: &[Line], laid: &[Laid<'_>], scale: f64) -> Size {
    let (column, count) = columns(laid, scale);
    let words = heading
        .iter()
        .map(|(t, s)| TextStyle::new(s.face, s.size * scale).width(t));
    let rows = laid.len().min(ROWS) as f64;
    Size::new(
        words.fold(column * count as f64, f64::max),
        heading_height(heading, scale) + rows * key_row(scale),
    )
}

/// The heading, and below it the key: a piece of every line and its size, each in its layer.
#[expect(clippy::indexing_slicing, reason = "a layer was made for every size")]
fn block(
    layers: &mut [Layer],
    heading: &[Line],
    laid: &[Laid<'_>],
    (scale, at): (f64, Point),
    colour: bool,
) {
    let mut y = at.y;
    if let Some(words) = layers.last_mut() {
        for (text, style) in heading {
            let style = TextStyle::new(style.face, style.size * scale);
            let place = Point::new(at.x, y + 0.15 * style.size);
            words.push(Text::new(place, text.as_str(), style).level(Level::Top));
            y += 1.35 * style.size;
        }
    }
    let top = at.y + heading_height(heading, scale);
    let (column, _) = columns(laid, scale);
    for (place, size) in laid.iter().enumerate() {
        let left = at.x + column * place.div_euclid(ROWS) as f64;
        let middle = top + key_row(scale) * ((place % ROWS) as f64 + 0.5);
        let right = left + SAMPLE * scale;
        let layer = &mut layers[size.number];
        layer.push(DrawnPath::line(
            (left, middle),
            (right, middle),
            pen_of(size.number, colour),
        ));
        layer.push(
            Text::new((right + 3.0, middle), size.label, key_style(scale)).level(Level::Middle),
        );
    }
}

/// The label of every size beyond its far corners, clear of every line and of other labels; none
/// where there is no such place near.
#[expect(clippy::indexing_slicing, reason = "a layer was made for every size")]
fn corner_labels(layers: &mut [Layer], room: &mut Room, laid: &[Laid<'_>]) {
    let style = TextStyle::new(Face::Regular, 3.0);
    for size in laid {
        for (corner, out) in far_corners(size) {
            // The label may go past the hems of larger sizes: it stays under its side.
            let mut away = CLEAR;
            while away <= REACH {
                let text = Text::new(corner + out * away, size.label, style)
                    .level(Level::Middle)
                    .turned(out.atan2().to_degrees());
                if room.is_clear(&text.corners(), 0.3) {
                    room.take_text(&text);
                    layers[size.number].push(text);
                    break;
                }
                away += CLEAR;
            }
        }
    }
}

/// The lowest corners of the line that is cut on either side that are not on a fold, and the direction
/// down from them.
fn far_corners(size: &Laid<'_>) -> Vec<(Point, Vec2)> {
    let edges = size.piece.outline().edges();
    let mut found: Vec<(Point, Vec2)> = Vec::new();
    for (edge, next) in with_next(edges) {
        let (a, b) = (edge.name().as_str(), next.name().as_str());
        let low = |name: &str| matches!(name, "hem" | "waist" | "wrist");
        let side = |name: &str| name == "side_seam" || name.starts_with("underarm");
        let at = size.cut_corner(edge, next);
        let bounds = size.piece.outline().bounds() + size.by;
        let is_low = edge.curve().end().y + size.by.y > bounds.center().y;
        if is_low && ((low(a) && side(b)) || (side(a) && low(b))) {
            found.push((at, Vec2::new(0.0, 1.0)));
        }
    }
    found
}

/// A bracket beside the fold that all sizes share, drawn once.
fn bracket(layers: &mut [Layer], room: &mut Room, smallest: &Laid<'_>) -> Option<FoldBracket> {
    let edges = smallest.piece.outline().edges();
    let fold = edges.iter().find(|edge| edge.role() == EdgeRole::Fold)?;
    let bracket = FoldBracket::of(&fold.curve().moved(&Rigid::shift(smallest.by)));
    bracket.take(room);
    let words = layers.last_mut()?;
    words.push(DrawnPath::stroked(bracket.line.clone(), Pen::solid(0.3)));
    for head in &bracket.heads {
        words.push(DrawnPath::filled(head.clone(), Ink::BLACK));
    }
    Some(bracket)
}
