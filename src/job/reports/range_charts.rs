//! The charts that a designer publishes: body measurements and finished measurements of every size, and
//! the cloth that it needs.

use crate::grading::Graded;
use crate::grading::field;
#[cfg(feature = "lay")]
use crate::job::making::range_cloth::ClothChart;
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

/// The charts of a range, to be written.
pub(in crate::job) struct Charts<'a> {
    graded: &'a Graded,
    #[cfg(feature = "lay")]
    cloth: ClothChart,
}

impl<'a> Charts<'a> {
    /// Lays the sizes on cloth, where the lay is built in; the rest is read from them.
    #[cfg_attr(
        not(feature = "lay"),
        expect(unused_variables, reason = "for the cloth")
    )]
    pub(in crate::job) fn new(graded: &'a Graded, unit: Unit) -> Self {
        Self {
            graded,
            #[cfg(feature = "lay")]
            cloth: ClothChart::new(graded, unit),
        }
    }
}

/// The charts of measurements: their headings and lines.
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

/// The charts as comma-separated values: measurements in centimetres and in inches, cloth in the unit of
/// the table.
pub(in crate::job) fn csv(all: &Charts<'_>) -> String {
    let graded = all.graded;
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
    #[cfg(feature = "lay")]
    for row in &all.cloth.rows {
        let (unit, values) = (all.cloth.unit_name(), all.cloth.numbers(row).join(","));
        let what = format!("{} wide folded (quick lay)", row.width);
        out.push_str(&format!(
            "Cloth to buy,{},{unit},{values}\r\n",
            field(&what)
        ));
    }
    out
}

/// The charts as a page to print, without scripts and network.
pub(in crate::job) fn page(all: &Charts<'_>, title: &str, table: &str) -> String {
    let graded = all.graded;
    let (title, table) = (escaped(&one_line(title)), escaped(&one_line(table)));
    let mut out = format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <title>{title}: size chart</title>\n<style>{STYLE}</style>\n</head>\n<body>\n\
         <h1>{title}</h1>\n<p>Sizes of {table}</p>\n"
    );
    for unit in UNITS {
        for (heading, rows) in charts(graded) {
            begin_table(&mut out, &format!("{heading}, {}", unit.plural()), graded);
            for row in rows {
                let values = row
                    .values
                    .iter()
                    .map(|value| value.map_or_else(String::new, |v| shown(v, row.degrees, unit)));
                add_row(&mut out, &row.what, values);
            }
            out.push_str("</tbody>\n</table>\n");
        }
    }
    #[cfg(feature = "lay")]
    {
        begin_table(&mut out, "Cloth to buy, folded lengthwise", graded);
        for row in &all.cloth.rows {
            add_row(
                &mut out,
                &format!("{} wide", row.width),
                all.cloth.words(row),
            );
        }
        let note = all.cloth.note();
        out.push_str(&format!("</tbody>\n</table>\n<p>{note}</p>\n"));
    }
    out.push_str(
        "<p>Finished measurements are those of the garment, between stitching lines, darts closed; \
         edges are those of one piece.</p>\n</body>\n</html>\n",
    );
    out
}

/// A table with a column for every size, up to its first row.
fn begin_table(out: &mut String, caption: &str, graded: &Graded) {
    out.push_str(&format!(
        "<table>\n<caption>{caption}</caption>\n<thead><tr><th></th>"
    ));
    for label in graded.labels() {
        out.push_str(&format!("<th scope=\"col\">{}</th>", escaped(label)));
    }
    out.push_str("</tr></thead>\n<tbody>\n");
}

fn add_row(out: &mut String, what: &str, values: impl IntoIterator<Item = String>) {
    out.push_str(&format!("<tr><th scope=\"row\">{}</th>", escaped(what)));
    for value in values {
        out.push_str(&format!("<td>{value}</td>"));
    }
    out.push_str("</tr>\n");
}

const STYLE: &str = "body{font:11pt/1.4 Helvetica,Arial,sans-serif;margin:15mm;color:#000}\
h1{font-size:16pt;margin:0}table{border-collapse:collapse;margin:0 0 8mm;break-inside:avoid}\
caption{text-align:left;font-weight:bold;padding:2mm 0}\
th,td{border:.2mm solid #666;padding:.8mm 2mm;text-align:right}\
tbody th{text-align:left;font-weight:normal}thead th{background:#eee}\
@media print{body{margin:0}}";
