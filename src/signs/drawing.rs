//! A small line drawing of a sign: a figure in a plain dress, and the folds on it.

use super::all::SIGNS;
use super::sign::{Sign, View};
use crate::geometry::elementary;
use std::fmt::Write as _;

/// Width and height of a drawing, in its own units.
const SIZE: (f64, f64) = (100.0, 180.0);

/// Half the dress, from the neck down on the viewer's left; the other half is its mirror.
const OUTLINE: [(f64, f64); 9] = [
    (43.0, 28.0),
    (28.0, 36.0),
    (27.0, 50.0),
    (30.0, 60.0),
    (33.0, 84.0),
    (27.0, 110.0),
    (27.0, 150.0),
    (50.0, 150.0),
    (50.0, 150.0),
];

/// Half a sleeve.
const SLEEVE: [(f64, f64); 4] = [(28.0, 36.0), (16.0, 62.0), (24.0, 66.0), (29.0, 56.0)];

/// The sign as SVG, to stand in a page.
///
/// ```
/// use blockwright::signs::{SIGNS, drawing};
/// let svg = drawing::drawing(&SIGNS[0]);
/// assert!(svg.starts_with("<svg") && svg.contains("<title>"));
/// ```
#[must_use]
pub fn drawing(sign: &Sign) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {} {}\" role=\"img\" fill=\"none\" \
         stroke=\"currentColor\" stroke-width=\"0.8\" stroke-linejoin=\"round\"><title>{}: {}</title>",
        SIZE.0, SIZE.1, sign.at, sign.shows
    );
    for mirrored in [false, true] {
        let at = |(x, y): (f64, f64)| if mirrored { (SIZE.0 - x, y) } else { (x, y) };
        for line in [&OUTLINE[..], &SLEEVE[..]] {
            path(&mut out, line.iter().map(|p| at(*p)));
        }
    }
    // The neckline: deeper in front.
    let depth = match sign.view {
        View::Front => 40.0,
        View::Back => 32.0,
    };
    let _ = write!(out, "<path d=\"M43 28 Q50 {depth} 57 28\"/>");
    // Head and neck stand for the side from which she is seen.
    let _ = write!(
        out,
        "<circle cx=\"50\" cy=\"13\" r=\"8\"/><path d=\"M46.5 20 L45 27 M53.5 20 L55 27\"/>"
    );
    if sign.view == View::Front {
        let _ = write!(out, "<path d=\"M47.5 16 Q50 18 52.5 16\"/>");
    }
    let _ = write!(out, "<g stroke-width=\"1.4\">");
    for fold in sign.folds {
        crease(&mut out, *fold);
    }
    out.push_str("</g></svg>");
    out
}

fn path(out: &mut String, points: impl Iterator<Item = (f64, f64)>) {
    out.push_str("<path d=\"");
    for (place, (x, y)) in points.enumerate() {
        let _ = write!(out, "{}{x} {y} ", if place == 0 { "M" } else { "L" });
    }
    out.push_str("\"/>");
}

/// A fold as a wave along its line.
fn crease(out: &mut String, [from, to]: [(f64, f64); 2]) {
    let (along, across) = (
        (to.0 - from.0, to.1 - from.1),
        (to.1 - from.1, from.0 - to.0),
    );
    let length = elementary::hypot(along.0, along.1).max(1.0);
    let wave = |share: f64, height: f64| {
        (
            from.0 + along.0 * share + across.0 * height / length,
            from.1 + along.1 * share + across.1 * height / length,
        )
    };
    let (a, b) = (wave(0.33, 1.6), wave(0.67, -1.6));
    let _ = write!(
        out,
        "<path d=\"M{} {} C{:.2} {:.2} {:.2} {:.2} {} {}\"/>",
        from.0, from.1, a.0, a.1, b.0, b.1, to.0, to.1
    );
}

/// Every sign on one page with its drawing, in plain HTML without scripts.
///
/// ```
/// use blockwright::signs::drawing::page;
/// assert!(page().contains("folds_small_of_back"));
/// ```
#[must_use]
pub fn page() -> String {
    let mut out = String::from(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\">\
         <meta name=\"viewport\" content=\"width=device-width\"><title>Signs of fit</title>\n<style>\
         body{font:16px/1.45 system-ui,sans-serif;margin:1.5rem auto;max-width:60rem;padding:0 1rem;\
         color:#111;background:#fff}article{display:grid;grid-template-columns:7rem 1fr;gap:1rem;\
         border-top:1px solid #999;padding:1rem 0}svg{width:7rem}h2{margin:0;font-size:1.05rem}\
         dl{margin:0;display:grid;grid-template-columns:9rem 1fr;gap:.1rem .7rem}dt{color:#444}dd{margin:0}\
         @media (max-width:34rem){article,dl{grid-template-columns:1fr}}\
         @media (prefers-color-scheme:dark){body{color:#eee;background:#111}dt{color:#bbb}}\
         </style></head><body>\n<h1>Signs of fit, and what follows</h1>\n<p>Look first whether the making is at \
         fault, whether the grain hangs level and plumb, and whether there is ease enough. Pin on a toile, \
         never on the finished garment; amounts are as pinned.</p>\n",
    );
    for sign in SIGNS {
        let _ = writeln!(
            out,
            "<article id=\"{name}\">{svg}<div><h2>{at}: {shows}</h2><dl><dt>Cause</dt><dd>{cause}</dd>\
             <dt>Rule out first</dt><dd>{rule}</dd><dt>Measure</dt><dd>{measure}</dd>\
             <dt>Step</dt><dd><code>{alteration}</code>, usually {low:.0} to {high:.0} mm {found}</dd>\
             <dt>Changes elsewhere</dt><dd>{elsewhere}</dd><dt>Source</dt><dd>{source}</dd></dl></div></article>",
            name = sign.name,
            svg = drawing(sign),
            at = sign.at,
            shows = sign.shows,
            cause = sign.cause,
            rule = sign.rule_out,
            measure = sign.measure,
            alteration = sign.alteration,
            low = sign.usual.0,
            high = sign.usual.1,
            found = sign.found.name(),
            elsewhere = sign.elsewhere,
            source = sign.source(),
        );
    }
    out.push_str("</body></html>\n");
    out
}
