//! Toiles as numbers that the script of `toile.html` draws.

use crate::toile::{Toile, ToileModel};

/// The toiles of a page.
#[derive(Debug, Clone, Copy)]
pub(in crate::job) struct Models<'a>(pub &'a [Toile]);

/// How far a picture goes on above and below what it shows, in mm.
const ROOM: f64 = 40.0;

impl Models<'_> {
    /// Points, triangles and seams of each, in tenths of a mm, as JSON: numbers alone.
    pub fn text(&self) -> String {
        let stand = self.0.first().map(Toile::stand_model);
        let points = || stand.iter().flat_map(|stand| &stand.points);
        let top = points().map(|p| p[1]).fold(0.0, f64::max) + ROOM;
        let back = points().map(|p| p[2]).fold(0.0, f64::min);
        let front = points().map(|p| p[2]).fold(0.0, f64::max);
        let lowest = self.0.iter().map(Toile::lowest).fold(0.0, f64::min);
        let cloths = self.0.iter().map(|toile| written(&toile.model()));
        let mut text = format!(
            "{{\"top\":{},\"bottom\":{},\"middle\":{},\"stand\":{},\"cloths\":[",
            tenths(top),
            tenths(lowest - ROOM),
            tenths(0.5 * (back + front)),
            stand.as_ref().map_or_else(|| "null".to_owned(), written)
        );
        text.push_str(&cloths.collect::<Vec<_>>().join(","));
        text.push_str("]}");
        text
    }
}

fn written(model: &ToileModel) -> String {
    format!(
        "{{\"points\":[{}],\"triangles\":[{}],\"seams\":[{}]}}",
        list(model.points.iter().flatten().map(|v| tenths(*v))),
        list(model.triangles.iter().flatten()),
        list(model.seams.iter().flatten())
    )
}

fn list(numbers: impl Iterator<Item = impl ToString>) -> String {
    numbers.map(|n| n.to_string()).collect::<Vec<_>>().join(",")
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "places on a body, within metres"
)]
fn tenths(mm: f64) -> i64 {
    (10.0 * mm).round() as i64
}
