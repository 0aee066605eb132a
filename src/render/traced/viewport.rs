//! How large a drawing is: units and view boxes.

use super::TracedError;
use super::fault::fault;
use crate::geometry::kurbo::Affine;
use roxmltree::Node;
use svgtypes::{Align, AspectRatio, Length, LengthUnit, ViewBox};

/// A user unit without a view box: 96 to the inch (CSS Values and Units, 6.2).
const PIXEL: f64 = 25.4 / 96.0;

/// From user units inside an `svg` element to those outside, which are millimetres for the outermost.
pub(super) fn viewport(node: Node<'_, '_>, outermost: bool) -> Result<Affine, TracedError> {
    let unit = if outermost { 1.0 } else { PIXEL };
    let size = |key| Ok::<_, TracedError>(millimetres(node, key)?.map(|mm| mm / unit));
    let (width, height) = (size("width")?, size("height")?);
    let place = |key| Ok::<_, TracedError>(millimetres(node, key)?.map_or(0.0, |mm| mm / unit));
    let moved = if outermost {
        Affine::IDENTITY
    } else {
        Affine::translate((place("x")?, place("y")?))
    };
    let Some(text) = node.attribute("viewBox") else {
        return Ok(moved * Affine::scale(if outermost { PIXEL } else { 1.0 }));
    };
    let read: Result<ViewBox, _> = text.parse();
    let seen = read
        .ok()
        .filter(|seen| seen.w > 0.0 && seen.h > 0.0)
        .ok_or_else(|| {
            fault(
                node,
                "its `viewBox` is not four numbers",
                "write left, top, width, height",
            )
        })?;
    let aspect: AspectRatio = match node.attribute("preserveAspectRatio") {
        None => AspectRatio::default(),
        Some(text) => text.parse().map_err(|_| {
            let cure = "leave it out, or write one of the words of SVG";
            fault(node, "its `preserveAspectRatio` cannot be read", cure)
        })?,
    };
    let scales = (width.map(|w| w / seen.w), height.map(|h| h / seen.h));
    let (across, down) = match scales {
        (Some(across), Some(down)) => (across, down),
        (Some(one), None) | (None, Some(one)) => (one, one),
        (None, None) if outermost => return Err(no_size(node)),
        (None, None) => (1.0, 1.0),
    };
    let to_corner = Affine::translate((-seen.x, -seen.y));
    if aspect.align == Align::None {
        return Ok(moved * Affine::scale_non_uniform(across, down) * to_corner);
    }
    let scale = if aspect.slice {
        across.max(down)
    } else {
        across.min(down)
    };
    let left = width.map_or(0.0, |w| w - scale * seen.w);
    let above = height.map_or(0.0, |h| h - scale * seen.h);
    let (x, y) = shares(aspect.align);
    let aligned = Affine::translate((x * left, y * above));
    Ok(moved * aligned * Affine::scale(scale) * to_corner)
}

/// Which share of the room that is left lies before the drawing.
const fn shares(align: Align) -> (f64, f64) {
    let x = match align {
        Align::None | Align::XMinYMin | Align::XMinYMid | Align::XMinYMax => 0.0,
        Align::XMidYMin | Align::XMidYMid | Align::XMidYMax => 0.5,
        Align::XMaxYMin | Align::XMaxYMid | Align::XMaxYMax => 1.0,
    };
    let y = match align {
        Align::None | Align::XMinYMin | Align::XMidYMin | Align::XMaxYMin => 0.0,
        Align::XMinYMid | Align::XMidYMid | Align::XMaxYMid => 0.5,
        Align::XMinYMax | Align::XMidYMax | Align::XMaxYMax => 1.0,
    };
    (x, y)
}

/// A length in millimetres, if it is there and of a unit that paper has.
fn millimetres(node: Node<'_, '_>, key: &str) -> Result<Option<f64>, TracedError> {
    let Some(text) = node.attribute(key) else {
        return Ok(None);
    };
    let read: Result<Length, _> = text.trim().parse();
    let length = read.map_err(|_| {
        let problem = format!("its `{key}` is not a length");
        fault(node, problem, "write a number with a unit, such as `600mm`")
    })?;
    let unit = match length.unit {
        LengthUnit::Mm => 1.0,
        LengthUnit::Cm => 10.0,
        LengthUnit::In => 25.4,
        LengthUnit::Pt => 25.4 / 72.0,
        LengthUnit::Pc => 25.4 / 6.0,
        LengthUnit::Px | LengthUnit::None => PIXEL,
        LengthUnit::Em | LengthUnit::Ex | LengthUnit::Percent => return Ok(None),
    };
    Ok(Some(length.number * unit))
}

fn no_size(node: Node<'_, '_>) -> TracedError {
    let at = node.document().text_pos_at(node.range().start);
    TracedError::NoSize {
        line: at.row,
        column: at.col,
    }
}
