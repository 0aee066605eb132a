//! The shapes of SVG as paths.

use super::TracedError;
use super::fault::fault;
use crate::geometry::kurbo::{BezPath, Ellipse, Rect, Shape as _};
use roxmltree::Node;
use svgtypes::{PointsParser, SimplePathSegment, SimplifyingPathParser};

/// How closely cubics follow a circle, in millimetres: circles are points here.
const ROUND: f64 = 0.01;

/// The most segments of one path: a sleeve cap traced point by point has some hundreds.
const MOST: usize = 5000;

/// The path of a shape in its own units; none of what is no shape.
pub(super) fn shape(node: Node<'_, '_>) -> Result<Option<BezPath>, TracedError> {
    let number = |key: &str| match node.attribute(key) {
        None => Ok(0.0),
        Some(text) => text.trim().trim_end_matches("px").parse().map_err(|_| {
            let problem = format!("its `{key}` is not a number");
            fault(node, problem, "write it in user units")
        }),
    };
    let path = match node.tag_name().name() {
        "path" => path(node)?,
        "line" => {
            let mut path = BezPath::new();
            path.move_to((number("x1")?, number("y1")?));
            path.line_to((number("x2")?, number("y2")?));
            path
        }
        "polyline" => points(node, false),
        "polygon" => points(node, true),
        "rect" => {
            let (x, y) = (number("x")?, number("y")?);
            Rect::new(x, y, x + number("width")?, y + number("height")?).to_path(ROUND)
        }
        "circle" => {
            let radius = number("r")?;
            Ellipse::new((number("cx")?, number("cy")?), (radius, radius), 0.0).to_path(ROUND)
        }
        "ellipse" => {
            let radii = (number("rx")?, number("ry")?);
            Ellipse::new((number("cx")?, number("cy")?), radii, 0.0).to_path(ROUND)
        }
        _ => return Ok(None),
    };
    Ok(Some(path))
}

fn path(node: Node<'_, '_>) -> Result<BezPath, TracedError> {
    let data = node.attribute("d").unwrap_or_default();
    let mut path = BezPath::new();
    for segment in SimplifyingPathParser::from(data) {
        let segment = segment.map_err(|_| {
            let cure = "save the drawing as plain SVG, or draw the path again";
            fault(node, "its path data cannot be read", cure)
        })?;
        match segment {
            SimplePathSegment::MoveTo { x, y } => path.move_to((x, y)),
            SimplePathSegment::LineTo { x, y } => path.line_to((x, y)),
            SimplePathSegment::CurveTo {
                x1,
                y1,
                x2,
                y2,
                x,
                y,
            } => path.curve_to((x1, y1), (x2, y2), (x, y)),
            SimplePathSegment::Quadratic { x1, y1, x, y } => path.quad_to((x1, y1), (x, y)),
            SimplePathSegment::ClosePath => path.close_path(),
        }
        if path.elements().len() > MOST {
            let problem = format!("it has more than {MOST} segments");
            return Err(fault(node, problem, "draw it with fewer points"));
        }
    }
    Ok(path)
}

fn points(node: Node<'_, '_>, closed: bool) -> BezPath {
    let mut path = BezPath::new();
    let list = node.attribute("points").unwrap_or_default();
    for at in PointsParser::from(list).take(MOST) {
        if path.elements().is_empty() {
            path.move_to(at);
        } else {
            path.line_to(at);
        }
    }
    if closed && !path.elements().is_empty() {
        path.close_path();
    }
    path
}
