//! The fit map on the page: tinted and hatched strips over the pieces, and their figures.

use super::Fitting;
use super::figure::ring;
use super::markup::{Cells, escaped, length, table, title_words};
use crate::fit_map::Thread;
use crate::geometry::path_data::fixed;
use crate::piece::Piece;
use crate::units::{Unit, speak};
use std::fmt::Write as _;

/// From this excess on, in mm, a strip is tinted, and more and more strongly.
const STEPS: [f64; 3] = [3.0, 8.0, 15.0];

/// Distance of the lines of a hatch for each step, in mm.
const HATCHES: [f64; 3] = [14.0, 9.0, 5.0];

/// So much of a piece is shown below the waist, in mm.
const BELOW: f64 = 60.0;

/// White round a piece, in mm.
const MARGIN: f64 = 12.0;

impl Fitting<'_> {
    /// The section of the map, if there is one.
    pub(super) fn fit_map_section(&self, out: &mut String) {
        let Some(shown) = self.fit_map else { return };
        let unit = self.body.unit();
        // Writing to a string cannot fail.
        let _ = writeln!(
            out,
            "<p>Threads of the cloth down to the waist beside taut threads on the body of {}. {}</p>",
            escaped(shown.wearer),
            escaped(shown.caution)
        );
        out.push_str("<ul class=\"warnings\">\n");
        for advice in &shown.map.advice {
            let _ = writeln!(
                out,
                "<li>{}</li>",
                escaped(&speak(&advice.to_string(), unit))
            );
        }
        out.push_str("</ul>\n");
        legend(out, unit);
        out.push_str("<div class=\"pieces\">\n");
        for piece in self.after.pieces() {
            let stations = shown.map.stations.iter();
            let own: Vec<&Thread> = stations.filter(|s| s.piece == piece.name()).collect();
            if !own.is_empty() {
                figure(out, piece, &own, unit);
            }
        }
        out.push_str("</div>\n");
        let rows: Vec<Vec<String>> = shown
            .map
            .stations
            .iter()
            .map(|station| {
                vec![
                    format!("{} {}", title_words(&station.piece), station.place.name()),
                    length(station.pattern, unit),
                    length(station.body, unit),
                    signed(station.excess(), unit),
                ]
            })
            .collect();
        let heads = ["Thread", "Pattern", "Body", "Excess"];
        table(out, Cells::Numbers, "Down to the waist", &heads, &rows);
        let rows: Vec<Vec<String>> = shown
            .map
            .girths
            .iter()
            .map(|girth| {
                vec![
                    title_words(&girth.name),
                    length(girth.finished, unit),
                    length(girth.body, unit),
                    signed(girth.ease(), unit),
                    signed(girth.excess(), unit),
                ]
            })
            .collect();
        let heads = ["Level", "Finished", "Body", "Ease", "More than meant"];
        table(out, Cells::Numbers, "Round the body", &heads, &rows);
    }
}

fn signed(mm: f64, unit: Unit) -> String {
    let shown = length(mm.round(), unit);
    if mm >= 0.05 {
        format!("+{shown}")
    } else {
        shown
    }
}

/// The step of an excess: none, or how strong.
fn step(excess: f64) -> Option<usize> {
    STEPS.iter().rposition(|least| excess.abs() >= *least)
}

fn class(excess: f64) -> String {
    match step(excess) {
        None => "fit-even".to_owned(),
        Some(step) if excess > 0.0 => format!("fit-long-{step}"),
        Some(step) => format!("fit-short-{step}"),
    }
}

/// The hatches, and what they mean: rising lines where the pattern is long, level ones where it is
/// short, so that they are told apart without colour.
fn legend(out: &mut String, unit: Unit) {
    out.push_str("<svg class=\"fit-legend\" viewBox=\"0 0 660 64\" role=\"img\" aria-label=\"Legend of the fit map\">\n<defs>\n");
    for (step, distance) in HATCHES.iter().enumerate() {
        let _ = write!(
            out,
            "<pattern id=\"hatch-long-{step}\" width=\"{distance}\" height=\"{distance}\" \
             patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\">\
             <path class=\"hatch-long\" d=\"M0 0V{distance}\"/></pattern>\n\
             <pattern id=\"hatch-short-{step}\" width=\"{distance}\" height=\"{distance}\" \
             patternUnits=\"userSpaceOnUse\"><path class=\"hatch-short\" d=\"M0 0H{distance}\"/></pattern>\n",
        );
    }
    out.push_str("</defs>\n");
    for (index, least) in STEPS.iter().enumerate() {
        let from = length(*least, unit);
        for (row, (kind, word)) in [("long", "too long"), ("short", "too short")]
            .into_iter()
            .enumerate()
        {
            let (x, y) = (220 * index, 32 * row);
            let _ = writeln!(
                out,
                "<rect class=\"fit-{kind}-{index}\" x=\"{x}\" y=\"{y}\" width=\"40\" height=\"24\"/>\
                 <rect class=\"hatched\" x=\"{x}\" y=\"{y}\" width=\"40\" height=\"24\" \
                 fill=\"url(#hatch-{kind}-{index})\"/>\
                 <text x=\"{}\" y=\"{}\">{word}, from {from}</text>",
                x + 46,
                y + 17,
            );
        }
    }
    out.push_str("</svg>\n");
}

/// A piece with a strip for each thread, wide as far as half way to its neighbours.
fn figure(out: &mut String, piece: &Piece, stations: &[&Thread], unit: Unit) {
    let mut bounds = piece.outline().bounds().inflate(MARGIN, MARGIN);
    // Below the waist nothing is compared.
    let lowest = stations.iter().map(|s| s.ends.map(|end| end.y)[1]);
    let lowest = lowest.fold(bounds.y0, f64::max);
    bounds.y1 = bounds.y1.min(lowest + BELOW);
    let waist = |station: &Thread| station.ends.map(|end| end.x)[1];
    let mut sorted: Vec<&Thread> = stations.to_vec();
    sorted.sort_by(|a, b| waist(a).total_cmp(&waist(b)));
    let id = piece.name().replace(' ', "-");
    let [x, y, width, height] =
        [bounds.x0, bounds.y0, bounds.width(), bounds.height()].map(|v| fixed(v, 1));
    let outline = ring(piece);
    let said: Vec<String> = sorted
        .iter()
        .map(|s| format!("{} {}", s.place.name(), signed(s.excess(), unit)))
        .collect();
    let _ = writeln!(
        out,
        "<figure class=\"piece fit-map\" style=\"--width:{width}\">\n\
         <svg viewBox=\"{x} {y} {width} {height}\" role=\"img\" aria-label=\"{}: {}\">\n\
         <clipPath id=\"clip-{id}\"><path d=\"{outline}\"/></clipPath>\n\
         <path class=\"cloth\" d=\"{outline}\"/>\n<g clip-path=\"url(#clip-{id})\">",
        title_words(piece.name()),
        escaped(&said.join(", ")),
    );
    for (index, station) in sorted.iter().enumerate() {
        let here = waist(station);
        let left = index
            .checked_sub(1)
            .and_then(|before| sorted.get(before))
            .map_or(bounds.x0, |before| 0.5 * (waist(before) + here));
        let right = sorted
            .get(index + 1)
            .map_or(bounds.x1, |after| 0.5 * (waist(after) + here));
        let [top, low] = station.ends.map(|end| end.y);
        let strip = format!(
            "x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"",
            fixed(left, 1),
            fixed(top, 1),
            fixed(right - left, 1),
            fixed((low - top).max(0.0), 1),
        );
        let kind = class(station.excess());
        let _ = write!(out, "<rect class=\"{kind}\" {strip}/>");
        if let Some(hatch) = kind
            .strip_prefix("fit-")
            .filter(|_| step(station.excess()).is_some())
        {
            let _ = write!(
                out,
                "<rect class=\"hatched\" {strip} fill=\"url(#hatch-{hatch})\"/>"
            );
        }
        out.push('\n');
    }
    out.push_str("</g>\n");
    let _ = writeln!(out, "<g class=\"outline\"><path d=\"{outline}\"/></g>");
    for (index, station) in sorted.iter().enumerate() {
        let [_, low] = station.ends;
        // One above the other, so that figures of neighbours never run into one another.
        let y = low.y - 18.0 - 26.0 * f64::from(u32::try_from(index % 4).unwrap_or(0));
        let x = low
            .x
            .max(bounds.x0 + MARGIN + 26.0)
            .min(bounds.x1 - MARGIN - 26.0);
        let _ = writeln!(
            out,
            "<text class=\"figure\" x=\"{}\" y=\"{}\">{}</text>",
            fixed(x, 1),
            fixed(y, 1),
            escaped(&signed(station.excess(), unit)),
        );
    }
    let _ = writeln!(
        out,
        "</svg>\n<figcaption><b>{}</b></figcaption>\n</figure>",
        title_words(piece.name())
    );
}
