//! The outline and a tape as SVG, to stand in a page.

use super::outline::Silhouette;
use super::tape::{Stance, TapeRun};
use crate::geometry::path_data::path_data;
use crate::measurements::Measurement;
use kurbo::BezPath;
use std::fmt::Write as _;

/// Room around the body, in millimetres.
const MARGIN: f64 = 40.0;

/// The outline as SVG with the tape of a measurement, from where it is seen best, or the stance asked
/// for without one. Shapes carry classes (`shape`, `line`, `tape`, `hidden`, `guide`, `end`), so that
/// the page decides how they look.
///
/// ```
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::silhouette::{Silhouette, Stance, silhouette_svg};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let svg = silhouette_svg(&Silhouette::of(&body), Stance::Front, Some(Measurement::WaistGirth));
/// assert!(svg.starts_with("<svg") && svg.contains("class=\"tape\""));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn silhouette_svg(
    figure: &Silhouette,
    stance: Stance,
    measurement: Option<Measurement>,
) -> String {
    let run = measurement.map(|of| figure.tape(of));
    let stance = run.as_ref().map_or(stance, |run| run.stance);
    let bounds = figure.bounds(stance).inflate(MARGIN, MARGIN);
    let words = measurement.map_or_else(
        || format!("The body from the {stance}"),
        |of| {
            format!(
                "Where the tape runs: {}, from the {stance}",
                of.name().replace('_', " ")
            )
        },
    );
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{:.0} {:.0} {:.0} {:.0}\" role=\"img\" \
         aria-label=\"{words}\">",
        bounds.x0,
        bounds.y0,
        bounds.width(),
        bounds.height()
    );
    for shape in figure.shapes(stance) {
        path(&mut out, "shape", &shape);
    }
    for line in figure.lines(stance) {
        path(&mut out, "line", &line);
    }
    if let Some(run) = &run {
        tape(&mut out, run);
    }
    out.push_str("</svg>");
    out
}

fn tape(out: &mut String, run: &TapeRun) {
    for (class, part) in [
        ("guide", &run.guides),
        ("hidden", &run.hidden),
        ("tape", &run.seen),
    ] {
        if !part.elements().is_empty() {
            path(out, class, part);
        }
    }
    for (x, y) in &run.ends {
        // Writing to a string cannot fail.
        let _ = write!(
            out,
            "<circle class=\"end\" cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"9\"/>"
        );
    }
}

fn path(out: &mut String, class: &str, path: &BezPath) {
    // Writing to a string cannot fail.
    let data = path_data(path, 1);
    let _ = write!(out, "<path class=\"{class}\" d=\"{data}\"/>");
}
