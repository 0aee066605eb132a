//! Labels of sizes at points that lie too close together to be written beside: a column of labels in
//! free room, each with a thin line to its point.

use crate::drawing::{DrawnPath, Face, Layer, Level, Pen, Room, Text, TextStyle, misses, stroke};
use kurbo::{BezPath, Point, Rect, Vec2};

/// Height of the labels and of their rows, in mm.
const SIZE: f64 = 3.0;
const ROW: f64 = 3.9;
/// What a column keeps clear of lines and words, and a leader of its label, in mm.
const CLEAR: f64 = 0.8;
/// How far from the points a column is looked for, and the step of the search, in mm.
const NEAR: f64 = 8.0;
const FAR: f64 = 190.0;
const STEP: f64 = 6.0;
/// In how many directions it is looked for.
const WAYS: usize = 24;
/// Width of a leader, in mm.
const LEADER: f64 = 0.13;

/// A point of one size.
pub(super) struct Labelled<'a> {
    /// The number of its layer.
    pub layer: usize,
    pub label: &'a str,
    pub at: Point,
}

/// Labels the points of a group in a column of its own, the nearest that is free on the side `toward`
/// looks to; whether there was room.
#[expect(clippy::indexing_slicing, reason = "a layer was made for every size")]
pub(super) fn lead(
    layers: &mut [Layer],
    room: &mut Room,
    points: &[Labelled<'_>],
    toward: Vec2,
) -> bool {
    if points.is_empty() {
        return true;
    }
    let style = TextStyle::new(Face::Regular, SIZE);
    let widest = points
        .iter()
        .map(|point| style.width(point.label))
        .fold(0.0, f64::max);
    let height = ROW * points.len() as f64;
    let count = points.len() as f64;
    let middle = points
        .iter()
        .fold(Vec2::ZERO, |sum, point| sum + point.at.to_vec2() / count);
    let size = (widest, height);
    let Some(rows) = columns(middle.to_point(), size, toward)
        .find_map(|column| free_rows(room, column, points, style))
    else {
        return false;
    };
    for row in rows {
        room.take_text(&row.text);
        let leader: BezPath = stroke(&[row.start, row.point.at]);
        room.take_stroke(&leader);
        let layer = &mut layers[row.point.layer];
        layer.push(DrawnPath::stroked(leader, Pen::solid(LEADER)));
        layer.push(row.text);
    }
    true
}

/// A label and where its leader begins.
struct Row<'a> {
    point: &'a Labelled<'a>,
    text: Text,
    start: Point,
}

/// The rows of a column, if it is free and no leader runs over words.
fn free_rows<'a>(
    room: &Room,
    column: Rect,
    points: &'a [Labelled<'a>],
    style: TextStyle,
) -> Option<Vec<Row<'a>>> {
    let corners = [
        (column.x0, column.y0),
        (column.x1, column.y0),
        (column.x1, column.y1),
        (column.x0, column.y1),
    ]
    .map(Point::from);
    if !room.is_clear(&corners, 1.5 * CLEAR) {
        return None;
    }
    let middle = points.iter().map(|point| point.at.x).sum::<f64>() / points.len() as f64;
    let right = column.center().x > middle;
    // Rows in the order in which their points lie, so that few leaders cross.
    let mut order: Vec<&Labelled<'_>> = points.iter().collect();
    let key = |point: &Labelled<'_>| (point.at.y * 4.0).round();
    order.sort_by(|a, b| {
        let level = key(a).total_cmp(&key(b));
        let across = a.at.x.total_cmp(&b.at.x);
        level.then(if right { across.reverse() } else { across })
    });
    let rows: Vec<Row<'_>> = order
        .into_iter()
        .enumerate()
        .map(|(row, point)| {
            let y = column.y0 + ROW * (row as f64 + 0.5);
            let width = style.width(point.label);
            let (x, start) = match right {
                true => (column.x0, column.x0 - CLEAR),
                false => (column.x1 - width, column.x1 + CLEAR),
            };
            Row {
                point,
                text: Text::new(Point::new(x, y), point.label, style).level(Level::Middle),
                start: Point::new(start, y),
            }
        })
        .collect();
    let own: Vec<_> = rows.iter().map(|row| row.text.corners()).collect();
    let clear = |row: &Row<'_>| {
        room.misses_words(row.start, row.point.at) && misses(row.start, row.point.at, &own)
    };
    rows.iter().all(clear).then_some(rows)
}

/// Columns near a point, the nearest first, and at every distance the one that lies `toward` first.
fn columns(middle: Point, (width, height): (f64, f64), toward: Vec2) -> impl Iterator<Item = Rect> {
    let start = toward.atan2();
    let turns = (0..WAYS).map(|way| {
        let step = way.div_ceil(2) as f64 * std::f64::consts::TAU / WAYS as f64;
        if way % 2 == 0 { step } else { -step }
    });
    let turns: Vec<f64> = turns.collect();
    let distances = std::iter::successors(Some(NEAR), |away| {
        (away + STEP <= FAR).then_some(away + STEP)
    });
    distances.flat_map(move |away| {
        let columns = turns.iter().filter_map(|turn| {
            let direction = Vec2::from_angle(start + turn);
            let reach = away + 0.5 * width * direction.x.abs() + 0.5 * height * direction.y.abs();
            // Beside the points, so that leaders come in from one side.
            (direction.x.abs() >= 0.25)
                .then(|| Rect::from_center_size(middle + direction * reach, (width, height)))
        });
        columns.collect::<Vec<_>>()
    })
}
