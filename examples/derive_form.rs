//! Derives what the survey says of breadths, depths and heights, from which a body in the round starts.
//!
//! Usage: `cargo run --example derive_form -- tests/data/women.csv > surveyed.rs`, then moved to
//! `src/form/surveyed.rs`.
//!
//! Each shape is fitted by least squares to what a tape measures; the table has the relation, the spread
//! that it leaves, and how those spreads go together.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::process::ExitCode;

use nalgebra::{Cholesky, DMatrix, DVector};

fn main() -> ExitCode {
    let Some(path) = std::env::args_os().nth(1) else {
        eprintln!("usage: derive_form women.csv");
        return ExitCode::from(2);
    };
    let table = std::fs::read_to_string(&path)
        .map_err(|error| error.to_string())
        .and_then(|text| table(&text));
    match table {
        Ok(table) => {
            print!("{table}");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("{}: {error}", path.display());
            ExitCode::FAILURE
        }
    }
}

/// A tape's measurements that say something of heights.
const LENGTHS: &[&str] = &[
    "height",
    "bust_girth",
    "waist_girth",
    "hip_girth",
    "neck_base_girth",
    "neck_to_bust_point",
    "scye_depth",
    "back_waist_length",
    "centre_front_waist_length",
];

/// Those that say something of the chest.
const CHEST: &[&str] = &[
    "height",
    "bust_girth",
    "upper_chest_girth",
    "underbust_girth",
    "back_width",
];

const WAIST: &[&str] = &["height", "waist_girth"];
const HIP: &[&str] = &["height", "waist_girth", "hip_girth"];

/// A shape: its name, a plus column, a minus column, what it is fitted to.
type Shape = (
    &'static str,
    &'static str,
    Option<&'static str>,
    &'static [&'static str],
);

const SHAPES: [Shape; 11] = [
    ("NapeRise", "nape_height", Some("waist_height"), LENGTHS),
    (
        "NeckSideDrop",
        "nape_height",
        Some("neck_side_height"),
        LENGTHS,
    ),
    (
        "FrontNeckDrop",
        "nape_height",
        Some("sternum_notch_height"),
        LENGTHS,
    ),
    (
        "BustRise",
        "bust_point_height",
        Some("waist_height"),
        LENGTHS,
    ),
    ("ArmpitRise", "armpit_height", Some("waist_height"), LENGTHS),
    ("BustBreadth", "chest_breadth", None, CHEST),
    ("BustDepth", "chest_depth", None, CHEST),
    ("WaistBreadth", "waist_breadth", None, WAIST),
    ("WaistDepth", "waist_depth", None, WAIST),
    ("HipBreadth", "hip_breadth", None, HIP),
    ("HipDepth", "buttock_depth", None, HIP),
];

/// The whole of `surveyed.rs` from the text of the survey.
///
/// # Errors
///
/// A text that says which column or line of the survey is wrong.
pub fn table(survey: &str) -> Result<String, String> {
    let columns = columns(survey)?;
    let column = |name: &str| {
        columns
            .get(name)
            .ok_or_else(|| format!("the column `{name}` is missing"))
    };
    let mut rows = String::new();
    let mut left: Vec<Vec<f64>> = Vec::new();
    for (name, plus, minus, regressors) in SHAPES {
        let mut values = column(plus)?.clone();
        if let Some(minus) = minus {
            for (value, other) in values.iter_mut().zip(column(minus)?) {
                *value -= other;
            }
        }
        if plus.starts_with("waist_") {
            // Surveyed at the navel: the shape is the same, the girth is that of the natural waist.
            let (natural, navel) = (column("waist_girth")?, column("umbilicus_waist_girth")?);
            for (value, (natural, navel)) in values.iter_mut().zip(natural.iter().zip(navel)) {
                *value *= natural / navel;
            }
        }
        let taped: Vec<&Vec<f64>> = regressors
            .iter()
            .map(|name| column(name))
            .collect::<Result<_, _>>()?;
        let fit = fit(&values, &taped).ok_or_else(|| format!("{name} cannot be fitted"))?;
        let terms: Vec<String> = regressors
            .iter()
            .zip(&fit.coefficients)
            .map(|(name, coefficient)| format!("(M::{}, {coefficient:.5})", variant(name)))
            .collect();
        let _ = writeln!(
            rows,
            "    Relation {{ of: P::{name}, constant: {:.4}, terms: &[{}], spread: {:.3} }},",
            fit.constant,
            terms.join(", "),
            fit.spread,
        );
        left.push(fit.left);
    }
    let mut out = format!(
        "//! What the survey says of breadths, depths and heights: written by a program, not by hand.\n\
         //!\n\
         //! `cargo run --example derive_form -- tests/data/women.csv`. Each is a linear relation to what is\n\
         //! taped, fitted by least squares over {} women (NATICK/TR-89/044, public domain), with the spread\n\
         //! that it leaves and how those spreads go together.\n\n\
         use super::parameter::ShapeParameter as P;\nuse super::relation::Relation;\n\
         use crate::measurements::Measurement as M;\n\n\
         pub(super) const SURVEYED: [Relation; {}] = [\n{rows}];\n\n\
         pub(super) const CORRELATION: [[f64; {}]; {}] = [\n",
        left.first().map_or(0, Vec::len),
        SHAPES.len(),
        SHAPES.len(),
        SHAPES.len(),
    );
    for one in &left {
        let cells: Vec<String> = left
            .iter()
            .map(|other| format!("{:.4}", correlation(one, other)))
            .collect();
        let _ = writeln!(out, "    [{}],", cells.join(", "));
    }
    out.push_str("];\n");
    Ok(out)
}

struct Fit {
    constant: f64,
    coefficients: Vec<f64>,
    /// Standard deviation of what is left, for so many coefficients.
    spread: f64,
    left: Vec<f64>,
}

/// Least squares of deviations from the means.
fn fit(values: &[f64], taped: &[&Vec<f64>]) -> Option<Fit> {
    let count = values.len();
    let mean = |values: &[f64]| values.iter().sum::<f64>() / count as f64;
    let means: Vec<f64> = taped.iter().map(|column| mean(column)).collect();
    let design = DMatrix::from_fn(count, taped.len(), |row, column| {
        taped[column][row] - means[column]
    });
    let centre = mean(values);
    let off = DVector::from_iterator(count, values.iter().map(|value| value - centre));
    let factor = Cholesky::new(design.tr_mul(&design))?;
    let coefficients = factor.solve(&design.tr_mul(&off));
    let left: Vec<f64> = (&off - &design * &coefficients).iter().copied().collect();
    let free = count
        .checked_sub(taped.len() + 1)
        .filter(|free| *free > 0)?;
    let squares: f64 = left.iter().map(|value| value * value).sum();
    let coefficients: Vec<f64> = coefficients.iter().copied().collect();
    let shift: f64 = coefficients.iter().zip(&means).map(|(a, b)| a * b).sum();
    Some(Fit {
        constant: centre - shift,
        coefficients,
        spread: (squares / free as f64).sqrt(),
        left,
    })
}

fn correlation(a: &[f64], b: &[f64]) -> f64 {
    let product = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
    product(a, b) / (product(a, a) * product(b, b)).sqrt()
}

/// The columns of a comma-separated table of numbers; `id` is left out.
fn columns(text: &str) -> Result<BTreeMap<String, Vec<f64>>, String> {
    let mut lines = text.lines();
    let header = lines.next().ok_or("the file is empty")?;
    let names: Vec<&str> = header.split(',').collect();
    let mut columns: BTreeMap<String, Vec<f64>> = BTreeMap::new();
    for (number, line) in lines.enumerate().filter(|(_, line)| !line.is_empty()) {
        let cells: Vec<&str> = line.split(',').collect();
        if cells.len() != names.len() {
            return Err(format!("line {}: {} cells", number + 2, cells.len()));
        }
        for (name, cell) in names.iter().zip(cells).filter(|(name, _)| **name != "id") {
            let value: f64 = cell
                .parse()
                .map_err(|_| format!("line {}: `{cell}` is not a number", number + 2))?;
            columns.entry((*name).to_owned()).or_default().push(value);
        }
    }
    Ok(columns)
}

/// `back_width` as the name of its variant, `BackWidth`.
fn variant(name: &str) -> String {
    name.split('_')
        .map(|word| word[..1].to_uppercase() + &word[1..])
        .collect()
}
