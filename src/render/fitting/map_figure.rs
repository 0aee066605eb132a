//! A fit map as pictures: tinted and hatched strips over the pieces.

use super::figure::ring;
use super::markup::{escaped, length, title_words};
use crate::fit_map::{FitMap, Thread};
use crate::geometry::path_data::fixed;
use crate::piece::{Pattern, Piece};
use crate::units::Unit;
use std::fmt::Write as _;

/// From this excess on, in mm, a strip is tinted, and more and more strongly.
const STEPS: [f64; 3] = [3.0, 8.0, 15.0];

/// Distance of the lines of a hatch for each step, in mm.
const HATCHES: [f64; 3] = [14.0, 9.0, 5.0];

/// The tints for each step: too long, too short.
const LONG: [&str; 3] = ["#fde8d0", "#f9c894", "#ef9d4d"];
const SHORT: [&str; 3] = ["#dbe8f6", "#a9c8ea", "#8ab7e5"];

/// So much of a piece is shown below the lowest thread, in mm.
const BELOW: f64 = 30.0;

/// White round a piece, in mm.
const MARGIN: f64 = 12.0;

/// A piece with its map.
pub(crate) struct MapFigure {
    /// The name of the piece.
    pub(crate) piece: String,
    /// How wide the picture is, in mm.
    pub(crate) width: String,
    /// The picture, with all its colours in it.
    pub(crate) svg: String,
}

/// The pieces that have threads. Their hatches stand in the [`map_legend`].
pub(crate) fn map_figures(pattern: &Pattern, map: &FitMap, unit: Unit) -> Vec<MapFigure> {
    let figures = pattern.pieces().iter().filter_map(|piece| {
        let stations = map.stations.iter();
        let own: Vec<&Thread> = stations.filter(|s| s.piece == piece.name()).collect();
        (!own.is_empty()).then(|| figure(piece, &own, unit))
    });
    figures.collect()
}

/// A length with its sign.
pub(super) fn signed(mm: f64, unit: Unit) -> String {
    let shown = length(mm.round(), unit);
    if mm >= 0.5 {
        format!("+{shown}")
    } else {
        shown
    }
}

/// The step of an excess, if it is worth a tint: `long` or `short`, how strong, and the tint.
fn tint(excess: f64) -> Option<(&'static str, usize, &'static str)> {
    let step = STEPS.iter().rposition(|least| excess.abs() >= *least)?;
    let (kind, tints) = if excess > 0.0 {
        ("long", LONG)
    } else {
        ("short", SHORT)
    };
    Some((kind, step, tints.get(step)?))
}

/// The hatches, and what they mean: rising lines where the pattern is long, level ones where it is
/// short, so that they are distinct without colour.
pub(crate) fn map_legend(unit: Unit) -> String {
    let mut out = String::from(
        "<svg class=\"fit-legend\" viewBox=\"0 0 660 64\" role=\"img\" aria-label=\"Legend of the fit map\">\n<defs>\n",
    );
    // Writing to a string cannot fail.
    for (step, distance) in HATCHES.iter().enumerate() {
        let _ = write!(
            out,
            "<pattern id=\"hatch-long-{step}\" width=\"{distance}\" height=\"{distance}\" \
             patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">\
             <path fill=\"none\" stroke=\"#3b342b\" stroke-width=\"1.2\" d=\"M0 0V{distance}\"/></pattern>\n\
             <pattern id=\"hatch-short-{step}\" width=\"{distance}\" height=\"{distance}\" \
             patternUnits=\"userSpaceOnUse\"><path fill=\"none\" stroke=\"#3b342b\" stroke-width=\"1.2\" \
             d=\"M0 0H{distance}\"/></pattern>\n",
        );
    }
    out.push_str("</defs>\n");
    for (index, least) in STEPS.iter().enumerate() {
        let from = length(*least, unit);
        for (row, (excess, word)) in [(*least, "too long"), (-*least, "too short")]
            .into_iter()
            .enumerate()
        {
            let Some((kind, _, colour)) = tint(excess) else {
                continue;
            };
            let (x, y) = (220 * index, 32 * row);
            let _ = writeln!(
                out,
                "<rect fill=\"{colour}\" x=\"{x}\" y=\"{y}\" width=\"40\" height=\"24\"/>\
                 <rect fill=\"url(#hatch-{kind}-{index})\" x=\"{x}\" y=\"{y}\" width=\"40\" height=\"24\"/>\
                 <text fill=\"currentColor\" x=\"{}\" y=\"{}\">{word}, from {from}</text>",
                x + 46,
                y + 17,
            );
        }
    }
    out.push_str("</svg>\n");
    out
}

/// A piece with a strip for each thread, wide as far as half way to its neighbours.
fn figure(piece: &Piece, stations: &[&Thread], unit: Unit) -> MapFigure {
    let mut bounds = piece.outline().bounds().inflate(MARGIN, MARGIN);
    // Below the threads nothing is compared.
    let low = |s: &Thread| s.ends.map(|end| end.y)[1];
    let lowest = stations.iter().map(|s| low(s)).fold(bounds.y0, f64::max);
    bounds.y1 = bounds.y1.min(lowest + BELOW);
    let id = piece.name().replace(' ', "-");
    let [x, y, width, height] =
        [bounds.x0, bounds.y0, bounds.width(), bounds.height()].map(|v| fixed(v, 1));
    let outline = ring(piece);
    let said: Vec<String> = stations
        .iter()
        .map(|s| {
            let (band, place) = (s.band.name(), s.place.name());
            format!("{band} {place} {}", signed(s.excess(), unit))
        })
        .collect();
    let mut svg = String::new();
    // Writing to a string cannot fail.
    let _ = writeln!(
        svg,
        "<svg viewBox=\"{x} {y} {width} {height}\" role=\"img\" aria-label=\"{}: {}\">\n\
         <clipPath id=\"fit-clip-{id}\"><path d=\"{outline}\"/></clipPath>\n\
         <path fill=\"#fff\" d=\"{outline}\"/>\n<g clip-path=\"url(#fit-clip-{id})\">",
        title_words(piece.name()),
        escaped(&said.join(", ")),
    );
    let mut figures = String::new();
    for band in [
        crate::fit_map::Band::ToWaist,
        crate::fit_map::Band::WaistToHip,
    ] {
        let own: Vec<&Thread> = stations
            .iter()
            .copied()
            .filter(|s| s.band == band)
            .collect();
        strips(&mut svg, &mut figures, own, (bounds.x0, bounds.x1), unit);
    }
    let _ = write!(
        svg,
        "</g>\n<path fill=\"none\" stroke=\"#3b342b\" stroke-width=\"2\" d=\"{outline}\"/>\n{figures}</svg>\n"
    );
    MapFigure {
        piece: piece.name().to_owned(),
        width,
        svg,
    }
}

fn strips(
    out: &mut String,
    figures: &mut String,
    mut threads: Vec<&Thread>,
    (x0, x1): (f64, f64),
    unit: Unit,
) {
    let foot = |thread: &Thread| thread.ends.map(|end| end.x)[1];
    threads.sort_by(|a, b| foot(a).total_cmp(&foot(b)));
    for (index, thread) in threads.iter().enumerate() {
        let here = foot(thread);
        let left = index
            .checked_sub(1)
            .and_then(|before| threads.get(before))
            .map_or(x0, |before| 0.5 * (foot(before) + here));
        let right = threads
            .get(index + 1)
            .map_or(x1, |after| 0.5 * (foot(after) + here));
        let [top, low] = thread.ends.map(|end| end.y);
        let strip = format!(
            "x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"",
            fixed(left, 1),
            fixed(top, 1),
            fixed(right - left, 1),
            fixed((low - top).max(0.0), 1),
        );
        if let Some((kind, step, colour)) = tint(thread.excess()) {
            let _ = writeln!(
                out,
                "<rect fill=\"{colour}\" {strip}/><rect fill=\"url(#hatch-{kind}-{step})\" {strip}/>"
            );
        }
        // One above the other, so that figures of neighbours never run into one another.
        let y = low - 18.0 - 26.0 * f64::from(u32::try_from(index % 4).unwrap_or(0));
        let x = here.max(x0 + MARGIN + 26.0).min(x1 - MARGIN - 26.0);
        let _ = writeln!(
            figures,
            "<text class=\"excess\" x=\"{}\" y=\"{}\" font-family=\"system-ui, sans-serif\" font-size=\"17\" \
             font-weight=\"600\" text-anchor=\"middle\" fill=\"#222\" stroke=\"#fff\" stroke-width=\"5\" \
             paint-order=\"stroke\">{}</text>",
            fixed(x, 1),
            fixed(y, 1),
            escaped(&signed(thread.excess(), unit)),
        );
    }
}
