//! A dress with a long sleeve for twelve women of the survey, each the most or the least of 1,104 in
//! one thing: outline, darts and notches, thin the balance lines and the grain.

use blockwright::draft::{Block, DraftOptions, Fit, SleeveLength, draft};
use blockwright::drawing::{Drawing, DrawnPath, Face, Layer, Pen, Text, TextStyle};
use blockwright::geometry::{Point, Vec2};
use blockwright::piece::Pattern;
use blockwright::render::svg;

use super::alterations::{GAP, guides, lines, moved};
use crate::support::survey::{Row, body_of, women};

/// What a woman has most of.
type Measure = fn(&Row) -> f64;

/// What each of the twelve has most of.
const EXTREMES: [(&str, Measure); 12] = [
    ("shortest", |r| -r.number("height")),
    ("tallest", |r| r.number("height")),
    ("smallest-bust", |r| -r.number("bust_girth")),
    ("largest-bust", |r| r.number("bust_girth")),
    ("largest-waist-to-bust", |r| {
        r.number("waist_girth") / r.number("bust_girth")
    }),
    ("largest-hip-to-waist", |r| {
        r.number("hip_girth") / r.number("waist_girth")
    }),
    ("largest-cup", |r| {
        r.number("bust_girth") - r.number("underbust_girth")
    }),
    ("narrowest-back", |r| -r.number("back_width")),
    ("widest-back", |r| r.number("back_width")),
    ("shortest-back", |r| -r.number("back_waist_length")),
    ("longest-back", |r| r.number("back_waist_length")),
    ("steepest-shoulder", |r| r.number("shoulder_slope_deg")),
];

/// The woman who has most of something.
fn most(rows: &[Row], of: Measure) -> &Row {
    let most = rows.iter().max_by(|a, b| of(a).total_cmp(&of(b)));
    most.expect("a woman")
}

fn drawing(title: &str, pattern: &Pattern) -> Drawing {
    let (mut drawn, mut words) = (Layer::new("pieces"), Layer::new("words"));
    let (mut right, mut top) = (0.0, 0.0f64);
    for piece in pattern.pieces() {
        let bounds = piece.outline().bounds();
        let place = Vec2::new(right - bounds.x0, 0.0);
        drawn.push(DrawnPath::stroked(
            moved(&guides(piece), place),
            Pen::solid(0.3),
        ));
        drawn.push(DrawnPath::stroked(
            moved(&lines(piece), place),
            Pen::solid(0.9),
        ));
        right += bounds.width() + GAP;
        top = top.min(bounds.y0);
    }
    let style = TextStyle::new(Face::Regular, 14.0);
    words.push(Text::new(Point::new(0.0, top - GAP), title, style));
    Drawing::new(vec![drawn, words]).unwrap()
}

#[test]
fn twelve_women_at_the_extremes_look_as_they_did() {
    let table = women();
    let mut options = DraftOptions::fitting(Block::Dress, Fit::Regular);
    options.sleeve = Some(SleeveLength::Long);
    super::held(EXTREMES.into_iter().map(|(name, of)| {
        let woman = most(&table.rows, of);
        let pattern = draft(&body_of(woman), &options).unwrap();
        let title = format!("{}, dress, {}", name.replace('-', " "), woman.text("id"));
        let picture = svg::render(&drawing(&title, &pattern));
        (format!("extreme-{name}"), picture)
    }));
}
