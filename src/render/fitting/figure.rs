//! One piece before and after, one over the other.

use super::align::Align;
use super::markup::{escaped, title_words};
use crate::geometry::path_data::{fixed, path_data};
use crate::geometry::{Curve, Point, Vec2, perpendicular};
use crate::piece::{Apexes, Pattern, Piece};
use kurbo::{ParamCurve as _, Rect};
use std::fmt::Write as _;

/// White around a piece, in millimetres.
const MARGIN: f64 = 14.0;

/// Length of the scale bar, in millimetres.
const BAR: f64 = 100.0;

/// A piece before and after, where it is there.
#[derive(Clone, Copy)]
pub(crate) struct Sides<'a> {
    pub before: Option<&'a Piece>,
    pub after: Option<&'a Piece>,
}

/// The pieces of two patterns in pairs: each piece after with the one before that it was made
/// of, and those before of which none is left.
pub(crate) fn pairs<'a>(before: &'a Pattern, after: &'a Pattern) -> Vec<(&'a str, Sides<'a>)> {
    let mut found: Vec<_> = after
        .pieces()
        .iter()
        .map(|piece| {
            let sides = Sides {
                before: made_of(before, piece),
                after: Some(piece),
            };
            (piece.name(), sides)
        })
        .collect();
    for piece in before.pieces() {
        let lives_on = after
            .pieces()
            .iter()
            .filter_map(|new| made_of(before, new))
            .any(|old| old.name() == piece.name());
        if !lives_on {
            let sides = Sides {
                before: Some(piece),
                after: None,
            };
            found.push((piece.name(), sides));
        }
    }
    found
}

/// The piece before that a piece was made of: that of its name; of its name without a body
/// side, when both halves were alike; or the whole of which it is a panel.
fn made_of<'a>(before: &'a Pattern, piece: &Piece) -> Option<&'a Piece> {
    let base = piece.base_name();
    let panel_of = |old: &&Piece| {
        let rest = base.strip_prefix(old.base_name());
        rest.is_some_and(|rest| rest.starts_with(' '))
            && (old.side().is_none() || old.side() == piece.side())
    };
    before
        .piece(piece.name())
        .or_else(|| before.piece(base))
        .or_else(|| {
            let wholes = before.pieces().iter().filter(panel_of);
            wholes.max_by_key(|old| old.name().len())
        })
}

/// The figure of a piece. `description` says in words what is to be seen.
pub(super) fn figure(
    out: &mut String,
    index: usize,
    (name, sides): (&str, Sides<'_>),
    altered: bool,
    description: &str,
) {
    let shifts = Align::ALL.map(|align| match (sides.before, sides.after) {
        (Some(before), Some(after)) => align.shift(before, after),
        _ => Vec2::ZERO,
    });
    let view = view(sides, &shifts);
    let [x, y, width, height] =
        [view.x0, view.y0, view.width(), view.height()].map(|v| fixed(v, 1));
    // Writing to a string cannot fail.
    let _ = writeln!(
        out,
        "<figure class=\"piece piece-{index}\" style=\"--width:{width}\">\n\
         <svg viewBox=\"{x} {y} {width} {height}\" role=\"img\" \
         aria-labelledby=\"title-{index} description-{index}\">\n\
         <title id=\"title-{index}\">{}</title>\n<desc id=\"description-{index}\">{}</desc>",
        title_words(name),
        escaped(description),
    );
    if let Some(piece) = sides.after {
        let _ = writeln!(out, "<path class=\"cloth\" d=\"{}\"/>", ring(piece));
    }
    if let Some(piece) = sides.before.filter(|_| altered) {
        let at = |v: Vec2, unit: &str| {
            let sep = if unit.is_empty() { " " } else { "," };
            format!("{}{unit}{sep}{}{unit}", fixed(v.x, 3), fixed(v.y, 3))
        };
        let styles: Vec<String> = Align::ALL
            .iter()
            .zip(&shifts)
            .map(|(align, shift)| format!("--{}:{}", align.key(), at(*shift, "px")))
            .collect();
        let _ = writeln!(
            out,
            "<g class=\"before\" transform=\"translate({})\" style=\"{}\">",
            at(shifts[0], ""),
            styles.join(";"),
        );
        drawn(out, piece);
        out.push_str("</g>\n");
    }
    if let Some(piece) = sides.after {
        out.push_str("<g class=\"after\">\n");
        drawn(out, piece);
        words(out, piece);
        out.push_str("</g>\n");
    }
    scale_bar(out, view);
    let cut = sides
        .after
        .or(sides.before)
        .map_or("", |piece| piece.cut().words());
    let gone = if sides.after.is_none() {
        ", no longer there"
    } else {
        ""
    };
    let _ = writeln!(
        out,
        "</svg>\n<figcaption><b>{}</b>, {cut}{gone}</figcaption>\n</figure>",
        title_words(name)
    );
}

/// What is seen: both pieces however they are laid, and room for the scale bar.
fn view(sides: Sides<'_>, shifts: &[Vec2]) -> Rect {
    let mut seen: Option<Rect> = None;
    let mut add = |rect: Rect| seen = Some(seen.map_or(rect, |s| s.union(rect)));
    if let Some(after) = sides.after {
        add(after.outline().bounds());
    }
    if let Some(before) = sides.before {
        for shift in shifts {
            add(before.outline().bounds() + *shift);
        }
    }
    let rect = seen.unwrap_or_default().inflate(MARGIN, MARGIN);
    Rect::new(
        rect.x0,
        rect.y0,
        rect.x1.max(rect.x0 + BAR + 2.0 * MARGIN),
        rect.y1 + 18.0,
    )
}

pub(super) fn ring(piece: &Piece) -> String {
    let mut path = kurbo::BezPath::new();
    for (index, segment) in piece.outline().segments().iter().enumerate() {
        if index == 0 {
            path.move_to(segment.start());
        }
        path.push(segment.as_path_el());
    }
    path.close_path();
    path_data(&path, 2)
}

fn curve(curve: &Curve) -> String {
    path_data(&curve.to_path(), 2)
}

fn stroke(points: &[Point]) -> String {
    let joined: Vec<String> = points
        .iter()
        .map(|p| format!("{} {}", fixed(p.x, 2), fixed(p.y, 2)))
        .collect();
    format!("M{}", joined.join("L"))
}

/// The lines of a piece: guides, outline, darts, grain and notches.
fn drawn(out: &mut String, piece: &Piece) {
    let _ = write!(out, "<g class=\"guides\">");
    for line in piece.lines() {
        let _ = write!(out, "<path d=\"{}\"/>", curve(&line.curve));
    }
    let _ = write!(out, "</g>\n<g class=\"outline\">");
    for edge in piece.outline().edges() {
        let _ = write!(
            out,
            "<path class=\"{}\" d=\"{}\"/>",
            edge.role().name(),
            curve(edge.curve())
        );
    }
    let _ = write!(out, "</g>\n<g class=\"darts\">");
    for dart in piece.darts() {
        let legs = match dart.apexes {
            Apexes::One(apex) => stroke(&[dart.legs[0], apex, dart.legs[1]]),
            Apexes::Two(upper, lower) => stroke(&[upper, dart.legs[0], lower, dart.legs[1], upper]),
        };
        let _ = write!(out, "<path d=\"{legs}\"/>");
    }
    let _ = write!(out, "</g>\n<g class=\"marks\">");
    let [low, high] = piece.grain();
    let along = high - low;
    if along.hypot() > 0.0 {
        let along = along.normalize();
        let wings = |tip: Point, back: Vec2| {
            let side = perpendicular(along) * 3.0;
            stroke(&[tip + back + side, tip, tip + back - side])
        };
        let arrow = [
            stroke(&[low, high]),
            wings(high, along * -7.0),
            wings(low, along * 7.0),
        ];
        let _ = write!(out, "<path d=\"{}\"/>", arrow.concat());
    }
    for notch in piece.notches() {
        let Some(edge) = piece.outline().edge(&notch.edge) else {
            continue;
        };
        if let Ok((at, along)) = edge.curve().point_at(notch.at) {
            let inside = at + perpendicular(along) * 7.0;
            let _ = write!(out, "<path d=\"{}\"/>", stroke(&[at, inside]));
        }
    }
    out.push_str("</g>\n");
}

/// What is written on a piece: its name, clear of its balance lines, and theirs beside the
/// grain.
fn words(out: &mut String, piece: &Piece) {
    let bounds = piece.outline().bounds();
    let mut levels: Vec<f64> = piece
        .lines()
        .iter()
        .map(|line| line.curve.start().y)
        .chain([bounds.y0, bounds.y1])
        .collect();
    levels.sort_by(f64::total_cmp);
    let widest = levels
        .iter()
        .zip(levels.iter().skip(1))
        .max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)));
    let level = widest.map_or(bounds.center().y, |(from, to)| 0.5 * (from + to));
    let _ = write!(
        out,
        "<g class=\"words\"><text class=\"name\" x=\"{}\" y=\"{}\">{}</text>",
        fixed(bounds.x0 + 0.6 * bounds.width(), 1),
        fixed(level, 1),
        title_words(piece.name()),
    );
    for line in piece.lines() {
        let along = line.curve.bounds();
        let usual = along.x0 + 0.15 * along.width();
        let grain = piece.grain()[0].x;
        // A name is about so wide.
        let crossed = (usual - 2.0..usual + 55.0).contains(&grain);
        let _ = write!(
            out,
            "<text class=\"line\" x=\"{}\" y=\"{}\">{} line</text>",
            fixed(if crossed { grain + 5.0 } else { usual }, 1),
            fixed(along.y0 - 3.5, 1),
            super::markup::words(&line.name),
        );
    }
    out.push_str("</g>\n");
}

fn scale_bar(out: &mut String, view: Rect) {
    let (x, y) = (view.x0 + MARGIN, view.y1 - 8.0);
    let ends = [Point::new(x, y), Point::new(x + BAR, y)];
    let tick = Vec2::new(0.0, 3.0);
    let path = [
        stroke(&ends),
        stroke(&[ends[0] - tick, ends[0] + tick]),
        stroke(&[ends[1] - tick, ends[1] + tick]),
    ];
    let _ = writeln!(
        out,
        "<g class=\"scale\"><path d=\"{}\"/><text x=\"{}\" y=\"{}\">10 cm on the cloth</text></g>",
        path.concat(),
        fixed(x + 0.5 * BAR, 1),
        fixed(y - 4.0, 1),
    );
}
