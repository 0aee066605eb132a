//! SVG at real size.

use std::fmt::Write as _;

use crate::drawing::{Drawing, DrawnPath, Face, Ink, Item, Text};

use crate::geometry::path_data::{fixed, path_data};

/// The drawing as an SVG document of real size: `width` and `height` in mm and a view box in mm,
/// exactly the drawing's bounds. Each layer is a group with an `id` made from its name and the
/// name itself as `data-name`; a path that has a name bears it as its `id`. Numbers have three decimals; the same drawing gives the same text.
///
/// Text keeps the letters it was given, also those that the standard faces lack; it was measured
/// as [`printable`](crate::drawing::printable) has it.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::svg;
///
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (100.0, 0.0), Pen::solid(1.0)));
/// let text = svg::render(&Drawing::new(vec![layer])?);
/// assert!(text.contains(r#"width="101.000mm""#));
/// assert!(text.contains(r#"id="seam-lines""#));
/// # Ok::<(), blockwright::drawing::DrawingError>(())
/// ```
#[must_use]
pub fn render(drawing: &Drawing) -> String {
    let bounds = drawing.bounds();
    let (width, height) = (number(bounds.width()), number(bounds.height()));
    let mut out = String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    line(
        &mut out,
        format_args!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
             viewBox=\"{} {} {width} {height}\" style=\"background:#fff\" fill=\"none\" stroke-linejoin=\"round\" \
             font-family=\"Helvetica, Arial, sans-serif\">",
            number(bounds.x0),
            number(bounds.y0),
        ),
    );
    let mut ids: Vec<String> = Vec::new();
    for layer in drawing.layers() {
        let id = unique_id(&layer.name, &ids);
        let hidden = if layer.hidden {
            " style=\"display:none\""
        } else {
            ""
        };
        let name = escape(&layer.name);
        line(
            &mut out,
            format_args!("<g id=\"{id}\" data-name=\"{name}\"{hidden}>"),
        );
        ids.push(id);
        for item in &layer.items {
            match item {
                Item::Path(each) => {
                    let id = each.name.as_ref().map(|name| unique_id(name, &ids));
                    figure(&mut out, each, id.as_deref(), 3);
                    ids.extend(id);
                }
                Item::Text(each) => text(&mut out, each),
            }
        }
        out.push_str("</g>\n");
    }
    out.push_str("</svg>\n");
    out
}

/// The drawing as an element within a page of HTML or XML: as wide as the page has it, no `id` in it,
/// with words that say what it shows (escaped already).
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::svg;
/// let mut layer = Layer::new("cut");
/// layer.push(DrawnPath::line((0.0, 0.0), (100.0, 0.0), Pen::solid(1.0)));
/// let text = svg::inline(&Drawing::new(vec![layer])?, "A cut");
/// assert!(text.starts_with("<svg") && text.contains("aria-label=\"A cut\"") && !text.contains("id="));
/// # Ok::<(), blockwright::drawing::DrawingError>(())
/// ```
#[must_use]
pub fn inline(drawing: &Drawing, label: &str) -> String {
    let bounds = drawing.bounds();
    let mut out = String::new();
    line(
        &mut out,
        format_args!(
            "<svg viewBox=\"{} {} {} {}\" role=\"img\" aria-label=\"{label}\" \
             style=\"background:#fff\" fill=\"none\" stroke-linejoin=\"round\" \
             font-family=\"Helvetica, Arial, sans-serif\">",
            number(bounds.x0),
            number(bounds.y0),
            number(bounds.width()),
            number(bounds.height()),
        ),
    );
    let shown = drawing.layers().iter().filter(|layer| !layer.hidden);
    for item in shown.flat_map(|layer| &layer.items) {
        match item {
            Item::Path(each) => figure(&mut out, each, None, 2),
            Item::Text(each) => text(&mut out, each),
        }
    }
    out.push_str("</svg>\n");
    out
}

fn line(out: &mut String, text: std::fmt::Arguments<'_>) {
    // Writing to a String cannot fail.
    let _ = out.write_fmt(text);
    out.push('\n');
}

fn figure(out: &mut String, figure: &DrawnPath, id: Option<&str>, decimals: usize) {
    let id = id.map_or_else(String::new, |id| format!("id=\"{id}\" "));
    let mut attributes = String::new();
    if let Some(fill) = figure.fill {
        let _ = write!(attributes, " fill=\"{}\"", colour(fill));
    }
    if let Some(pen) = &figure.pen {
        let _ = write!(
            attributes,
            " stroke=\"{}\" stroke-width=\"{}\"",
            colour(pen.ink),
            number(pen.width)
        );
        if !pen.dash.is_empty() {
            let dash: Vec<_> = pen.dash.iter().map(|&length| number(length)).collect();
            let _ = write!(attributes, " stroke-dasharray=\"{}\"", dash.join(" "));
        }
    }
    line(
        out,
        format_args!(
            "<path {id}d=\"{}\"{attributes}/>",
            path_data(&figure.path, decimals)
        ),
    );
}

fn text(out: &mut String, text: &Text) {
    let at = text.motion();
    let [a, b, c, d, x, y] = at.as_coeffs();
    let [a, b, c, d] = [a, b, c, d].map(|part| fixed(part, 6));
    let (x, y) = (number(x), number(y));
    // Asked of what is written: a turn by less than that is none.
    let place = if a == "1.000000" && b == "0.000000" {
        format!("x=\"{x}\" y=\"{y}\"")
    } else {
        format!("transform=\"matrix({a} {b} {c} {d} {x} {y})\"")
    };
    let weight = match text.style.face {
        Face::Regular => "",
        Face::Bold => " font-weight=\"bold\"",
    };
    line(
        out,
        format_args!(
            "<text {place} font-size=\"{}\"{weight} fill=\"{}\" xml:space=\"preserve\">{}</text>",
            number(text.style.size),
            colour(text.style.ink),
            escape(&text.text)
        ),
    );
}

/// Three decimals, and no minus before a zero.
fn number(value: f64) -> String {
    fixed(value, 3)
}

fn colour(ink: Ink) -> String {
    let (r, g, b) = ink.rgb();
    format!("#{r:02x}{g:02x}{b:02x}")
}

/// Escaped for XML; what XML 1.0 cannot carry becomes a space.
fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{fffe}' | '\u{ffff}' => out.push(' '),
            _ if letter.is_control() => out.push(' '),
            _ => out.push(letter),
        }
    }
    out
}

/// The name as an id: letters, digits and points kept, the rest as "-", never starting with a digit,
/// and numbered if another came out the same: the second cut of a double notch is `…_notch-2`.
fn unique_id(name: &str, taken: &[String]) -> String {
    let mut id: String = name
        .chars()
        .map(|letter| {
            if letter.is_ascii_alphanumeric() || matches!(letter, '_' | '.') {
                letter.to_ascii_lowercase()
            } else {
                '-'
            }
        })
        .collect();
    if !id.starts_with(|first: char| first.is_ascii_alphabetic()) {
        id.insert_str(0, "layer-");
    }
    let mut candidate = id.clone();
    let mut count = 2;
    while taken.contains(&candidate) {
        candidate = format!("{id}-{count}");
        count += 1;
    }
    candidate
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_fixed() {
        assert_eq!(number(-0.000_4), "0.000");
        assert_eq!(number(-0.000_6), "-0.001");
        assert_eq!(number(12.0), "12.000");
    }

    #[test]
    fn ids_are_unique() {
        let first = unique_id("1 seam", &[]);
        assert_eq!(first, "layer-1-seam");
        assert_eq!(unique_id("1/seam", &[first]), "layer-1-seam-2");
    }
}
