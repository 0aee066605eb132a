//! The charts that a designer publishes: body measurements and finished measurements of every size.

use crate::grading::Graded;
use crate::grading::field;
use crate::measurements::{Kind, Measurement};
use crate::piece::{Cut, EdgeName, Measure, Pattern};
use crate::recipe::one_line;
use crate::render::fitting::markup::escaped;
use crate::units::{Length, LengthStyle, Unit};

/// The units of a chart.
const UNITS: [Unit; 2] = [Unit::Cm, Unit::In];

/// Edges whose lengths are published.
const EDGES: [&str; 6] = [
    "centre_back",
    "centre_front",
    "shoulder",
    "side_seam",
    "underarm_back",
    "wrist",
];

/// One line of a chart: what is measured, and its value in every size, in mm or degrees.
struct Row {
    what: String,
    degrees: bool,
    values: Vec<Option<f64>>,
}

/// The two charts: their headings and lines.
fn charts(graded: &Graded) -> [(&'static str, Vec<Row>); 2] {
    [
        ("Body measurements", body_rows(graded)),
        ("Finished measurements", finished_rows(graded)),
    ]
}

/// What the table gives of any size.
fn body_rows(graded: &Graded) -> Vec<Row> {
    let sizes = graded.sizes();
    let taken = Measurement::ALL
        .into_iter()
        .filter(|measurement| sizes.iter().any(|size| size.body().is_taken(*measurement)));
    taken
        .map(|measurement| {
            let degrees = measurement.kind() == Kind::Angle;
            let values = sizes.iter().map(|size| {
                let value = size.body().value(measurement);
                size.body().is_taken(measurement).then_some(match degrees {
                    true => value.to_degrees(),
                    false => value,
                })
            });
            Row {
                what: measurement.name().replace('_', " "),
                degrees,
                values: values.collect(),
            }
        })
        .collect()
}

/// Finished girths, the hem all round, and the lengths of chosen edges.
fn finished_rows(graded: &Graded) -> Vec<Row> {
    let sizes = graded.sizes();
    let mut rows: Vec<Row> = Vec::new();
    let mut add = |what: String, read: &dyn Fn(&Pattern) -> Option<f64>| {
        let values: Vec<Option<f64>> = sizes.iter().map(|size| read(size.pattern())).collect();
        if values.iter().any(Option::is_some) && rows.iter().all(|row| row.what != what) {
            let degrees = false;
            rows.push(Row {
                what,
                degrees,
                values,
            });
        }
    };
    let first = sizes.first().map(|size| size.pattern());
    for girth in first.map_or(&[][..], Pattern::girths) {
        let name = &girth.name;
        add(name.replace('_', " "), &|pattern| {
            let girth = pattern.girths().iter().find(|girth| girth.name == *name)?;
            Some(pattern.finished(girth))
        });
    }
    add("hem, all round".to_owned(), &hem_round);
    for piece in first.map_or(&[][..], Pattern::pieces) {
        for edge in EDGES {
            let what = format!("{} {}", piece.name(), edge.replace('_', " "));
            let measure = Measure::edge_length(piece.name(), EdgeName::new(edge));
            add(what, &|pattern| pattern.measured(&measure));
        }
    }
    rows
}

/// The hem of the garment all round; none where it has none.
fn hem_round(pattern: &Pattern) -> Option<f64> {
    let of_piece = |piece: &crate::piece::Piece| {
        let edges = piece.outline().edges().iter();
        let hems = edges.filter(|edge| edge.name().as_str() == "hem");
        let halves = match piece.cut() {
            Cut::Fold | Cut::Pair => 2.0,
            Cut::Single | Cut::SingleFaceDown => 1.0,
        };
        halves * hems.map(|edge| edge.curve().length()).sum::<f64>()
    };
    let round: f64 = pattern.pieces().iter().map(of_piece).sum();
    (round > 0.0).then_some(round)
}

/// A value as it is published: centimetres to the millimetre, inches to the eighth.
fn shown(value: f64, degrees: bool, unit: Unit) -> String {
    if degrees {
        return format!("{value:.1}°");
    }
    let length = Length::from_mm(value);
    let text = length.map_or_else(
        |_| String::new(),
        |length| length.to_text(LengthStyle::usual(unit)),
    );
    text.trim_end_matches(unit.name()).trim_end().to_owned()
}

/// Both charts as comma-separated values, in centimetres and in inches.
pub(super) fn csv(graded: &Graded) -> String {
    let labels: Vec<String> = graded.labels().map(field).collect();
    let mut out = format!("chart,measure,unit,{}\r\n", labels.join(","));
    for unit in UNITS {
        for (heading, rows) in charts(graded) {
            for row in rows {
                let values = row.values.iter().map(|value| {
                    value.map_or_else(String::new, |value| match row.degrees {
                        true => format!("{value:.1}"),
                        false => format!("{:.2}", unit.from_mm(value)),
                    })
                });
                let values: Vec<String> = values.collect();
                let unit = if row.degrees { "deg" } else { unit.name() };
                let what = field(&row.what);
                out.push_str(&format!("{heading},{what},{unit},{}\r\n", values.join(",")));
            }
        }
    }
    out
}

/// Both charts as a page to print, without scripts and network.
pub(super) fn page(graded: &Graded, title: &str, table: &str) -> String {
    let (title, table) = (escaped(&one_line(title)), escaped(&one_line(table)));
    let mut out = format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <title>{title}: size chart</title>\n<style>{STYLE}</style>\n</head>\n<body>\n\
         <h1>{title}</h1>\n<p>Sizes of {table}</p>\n"
    );
    for unit in UNITS {
        for (heading, rows) in charts(graded) {
            let caption = format!("{heading}, {}", unit.plural());
            out.push_str(&format!(
                "<table>\n<caption>{caption}</caption>\n<thead><tr><th></th>"
            ));
            for label in graded.labels() {
                out.push_str(&format!("<th scope=\"col\">{}</th>", escaped(label)));
            }
            out.push_str("</tr></thead>\n<tbody>\n");
            for row in rows {
                out.push_str(&format!(
                    "<tr><th scope=\"row\">{}</th>",
                    escaped(&row.what)
                ));
                for value in &row.values {
                    let text = value.map_or_else(String::new, |v| shown(v, row.degrees, unit));
                    out.push_str(&format!("<td>{text}</td>"));
                }
                out.push_str("</tr>\n");
            }
            out.push_str("</tbody>\n</table>\n");
        }
    }
    out.push_str(
        "<p>Finished measurements are those of the garment, between stitching lines, darts closed; \
         edges are those of one piece.</p>\n</body>\n</html>\n",
    );
    out
}

const STYLE: &str = "body{font:11pt/1.4 Helvetica,Arial,sans-serif;margin:15mm;color:#000}\
h1{font-size:16pt;margin:0}table{border-collapse:collapse;margin:0 0 8mm;break-inside:avoid}\
caption{text-align:left;font-weight:bold;padding:2mm 0}\
th,td{border:.2mm solid #666;padding:.8mm 2mm;text-align:right}\
tbody th{text-align:left;font-weight:normal}thead th{background:#eee}\
@media print{body{margin:0}}";
