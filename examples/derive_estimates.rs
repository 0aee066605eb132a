//! Derives the table by which missing measurements are estimated.
//!
//! Usage: `cargo run --example derive_estimates -- women.csv > src/measurements/estimates.rs`
//!
//! The file has one row a woman and one column a measurement: lengths in mm,
//! `shoulder_slope_deg` in degrees. Each column that is a measurement is fitted by least
//! squares on height, bust, waist and hip. The normal equations are not formed: the
//! problem is solved by singular values on centred columns.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::process::ExitCode;

use blockwright::measurements::Measurement;
use nalgebra::{DMatrix, DVector, Matrix4, Vector4};

/// Lengths along the trunk and limbs, whose share of the height hardly depends on girth.
const SHARES: [Measurement; 6] = [
    Measurement::BackWaistLength,
    Measurement::FrontWaistLength,
    Measurement::CentreFrontWaistLength,
    Measurement::WaistToHip,
    Measurement::WaistToKnee,
    Measurement::ArmLength,
];

fn main() -> ExitCode {
    let Some(path) = std::env::args_os().nth(1) else {
        eprintln!("usage: derive_estimates women.csv");
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

/// The whole of `estimates.rs` from the text of the survey.
///
/// # Errors
///
/// A text that says which column or line of the survey is wrong.
pub fn table(survey: &str) -> Result<String, String> {
    let columns = read(survey)?;
    let column = |name: &str| {
        columns
            .get(name)
            .ok_or_else(|| format!("the column `{name}` is missing"))
    };
    let known: Vec<&Vec<f64>> = Measurement::REQUIRED
        .iter()
        .map(|m| column(m.name()))
        .collect::<Result<_, _>>()?;
    let n = known[0].len();
    let means = Vector4::from_iterator(known.iter().map(|c| c.iter().sum::<f64>() / n as f64));
    let centred = DMatrix::from_fn(n, 4, |row, k| known[k][row] - means[k]);
    let scatter = centred.transpose() * &centred;
    let inverse = Matrix4::from_iterator(scatter.iter().copied())
        .try_inverse()
        .ok_or("height, bust, waist and hip do not vary independently")?;

    let mut out = String::from(HEADER);
    write_surveyed(&mut out, n, &known, &means, &inverse);
    let svd = centred.svd(true, true);
    let mut unexplained = BTreeMap::new();
    out.push_str("pub(super) const ROWS: &[Row] = &[\n");
    for measurement in Measurement::ALL {
        let name = match measurement {
            Measurement::ShoulderSlope => "shoulder_slope_deg",
            other => other.name(),
        };
        let (false, Some(values)) = (measurement.is_required(), columns.get(name)) else {
            continue;
        };
        let values: Vec<f64> = match measurement {
            Measurement::ShoulderSlope => values.iter().map(|deg| deg.to_radians()).collect(),
            _ => values.clone(),
        };
        let mean = values.iter().sum::<f64>() / n as f64;
        let target = DVector::from_iterator(n, values.iter().map(|v| v - mean));
        let slopes = svd.solve(&target, 1e-12).map_err(str::to_owned)?;
        let fitted: Vec<f64> = (0..n)
            .map(|row| (0..4).map(|k| slopes[k] * (known[k][row] - means[k])).sum())
            .collect();
        let rest: Vec<f64> = target.iter().zip(&fitted).map(|(t, f)| t - f).collect();
        let squares: f64 = rest.iter().map(|r| r * r).sum();
        unexplained.insert(name, rest);
        let spread = (squares / (n as f64 - 5.0)).sqrt();
        let share = SHARES.contains(&measurement).then(|| {
            values
                .iter()
                .zip(known[0])
                .map(|(v, height)| v / height)
                .fold((f64::INFINITY, 0.0_f64), |(low, high), share| {
                    (low.min(share), high.max(share))
                })
        });
        let share = share.map_or("None".to_owned(), |(low, high)| {
            format!("Some(({low:.4}, {high:.4}))")
        });
        let slopes: Vec<String> = slopes.iter().map(|s| format!("{s:.6e}")).collect();
        let _ = writeln!(
            out,
            "    Row {{ of: Measurement::{}, mean: {mean:.6}, slopes: [{}], spread: {spread:.6}, share_of_height: {share} }},",
            variant(measurement),
            slopes.join(", ")
        );
    }
    out.push_str("];\n\n");
    let (back, front) = ("back_waist_length", "front_waist_length");
    let rest = |name: &str| {
        unexplained
            .get(name)
            .ok_or_else(|| format!("the column `{name}` is missing"))
    };
    let (back, front) = (rest(back)?, rest(front)?);
    let together: f64 = back.iter().zip(front).map(|(b, f)| b * f).sum();
    let squares = |rest: &[f64]| rest.iter().map(|r| r * r).sum::<f64>();
    let _ = writeln!(
        out,
        "/// Change of what the regression leaves of the first for each unit left of the second.\n\
         pub(super) const PARTNERS: [(Measurement, Measurement, f64); 2] = [\n    \
         (Measurement::FrontWaistLength, Measurement::BackWaistLength, {:.6}),\n    \
         (Measurement::BackWaistLength, Measurement::FrontWaistLength, {:.6}),\n];",
        together / squares(back),
        together / squares(front),
    );
    Ok(out)
}

const HEADER: &str = "\
//! Regressions of body measurements on height, bust, waist and hip. Written by
//! `examples/derive_estimates.rs`; do not edit.
//!
//! Source: 1988 Anthropometric Survey of U.S. Army Personnel, women, working database
//! (Gordon et al. 1989, report NATICK/TR-89/044; public domain, a work of the U.S.
//! government). Computed from a random half of its 2,208 women. Millimetres; the
//! shoulder slope in radians. Front width was not surveyed.

use super::measurement::Measurement;

/// One regression: `mean + slopes · (required - REQUIRED_MEANS)`.
pub(super) struct Row {
    /// What is estimated.
    pub(super) of: Measurement,
    /// Its mean over the women surveyed.
    pub(super) mean: f64,
    /// Change for each unit of height, bust, waist and hip.
    pub(super) slopes: [f64; 4],
    /// Standard deviation of what the four do not explain, on n - 5 degrees of freedom.
    pub(super) spread: f64,
    /// Smallest and largest share of the height found, for lengths of trunk and limbs.
    pub(super) share_of_height: Option<(f64, f64)>,
}

";

fn write_surveyed(
    out: &mut String,
    n: usize,
    known: &[&Vec<f64>],
    means: &Vector4<f64>,
    inverse: &Matrix4<f64>,
) {
    let _ = writeln!(out, "/// Women the table rests on.");
    let _ = writeln!(out, "pub(super) const WOMEN: f64 = {n}.0;\n");
    let _ = writeln!(
        out,
        "/// Mean height, bust, waist and hip.\npub(super) const REQUIRED_MEANS: [f64; 4] = [{:.4}, {:.4}, {:.4}, {:.4}];\n",
        means[0], means[1], means[2], means[3]
    );
    let ends: Vec<String> = known
        .iter()
        .map(|column| {
            let low = column.iter().copied().fold(f64::INFINITY, f64::min);
            let high = column.iter().copied().fold(0.0, f64::max);
            format!("({low:.1}, {high:.1})")
        })
        .collect();
    let _ = writeln!(
        out,
        "/// Smallest and largest height, bust, waist and hip.\npub(super) const REQUIRED_ENDS: [(f64, f64); 4] = [{}];\n",
        ends.join(", ")
    );
    out.push_str("/// Inverse of the summed products of the four about their means, in 1/mm².\n");
    out.push_str("pub(super) const INVERSE_SCATTER: [[f64; 4]; 4] = [\n");
    for row in inverse.row_iter() {
        let cells: Vec<String> = row.iter().map(|cell| format!("{cell:.6e}")).collect();
        let _ = writeln!(out, "    [{}],", cells.join(", "));
    }
    out.push_str("];\n\n/// The regressions.\n");
}

/// The columns of a comma-separated table of numbers; `id` is passed over.
fn read(text: &str) -> Result<BTreeMap<String, Vec<f64>>, String> {
    let mut lines = text.lines();
    let names: Vec<&str> = lines
        .next()
        .ok_or("the file is empty")?
        .split(',')
        .collect();
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
fn variant(measurement: Measurement) -> String {
    measurement
        .name()
        .split('_')
        .map(|word| word[..1].to_uppercase() + &word[1..])
        .collect()
}
