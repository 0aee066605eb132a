//! Derives what the survey says of breadths, depths and heights, from which a body in the round starts.
//!
//! Usage: `cargo run --release --example derive_form -- tests/data/women.csv > surveyed.rs`, then moved to
//! `src/form/surveyed.rs`.
//!
//! Only every other woman is used, from the first: what the others are found to be was not seen. Each
//! shape that was surveyed is fitted by least squares to what a tape measures; the table has the
//! relation, the spread that it leaves, and how those spreads go together. Of shapes that were not
//! surveyed the table has means with which the forms of those women meet their surveyed heights,
//! breadths and depths on average, as near as can be to the means from which it starts.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::process::ExitCode;

use blockwright::form::{Form, ShapeParameter};
use blockwright::measurements::{Body, Measurement};
use nalgebra::{Cholesky, DMatrix, DVector};

#[path = "shared/survey_file.rs"]
mod survey_file;
use survey_file::variant;

fn main() -> ExitCode {
    survey_file::print_table("derive_form", |survey| {
        let means = means(survey)?;
        Ok(relations(survey)? + &means_written(&means))
    })
}

type Columns = BTreeMap<String, Vec<f64>>;

/// The women from whom the table is derived: every other one.
fn seen(survey: &str) -> Result<Columns, String> {
    let mut columns = survey_file::columns(survey)?;
    for column in columns.values_mut() {
        *column = column.iter().copied().step_by(2).collect();
    }
    Ok(columns)
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

/// The values of a shape that was surveyed, one a woman.
fn surveyed(columns: &Columns, (_, plus, minus, _): &Shape) -> Result<Vec<f64>, String> {
    let mut values = column(columns, plus)?.clone();
    if let Some(minus) = minus {
        for (value, other) in values.iter_mut().zip(column(columns, minus)?) {
            *value -= other;
        }
    }
    if plus.starts_with("waist_") {
        // Surveyed at the navel: the shape is the same, the girth is that of the natural waist.
        let natural = column(columns, "waist_girth")?;
        let navel = column(columns, "umbilicus_waist_girth")?;
        for (value, (natural, navel)) in values.iter_mut().zip(natural.iter().zip(navel)) {
            *value *= natural / navel;
        }
    }
    Ok(values)
}

fn column<'a>(columns: &'a Columns, name: &str) -> Result<&'a Vec<f64>, String> {
    columns
        .get(name)
        .ok_or_else(|| format!("the column `{name}` is missing"))
}

fn fits(columns: &Columns) -> Result<Vec<Fit>, String> {
    let each = SHAPES.iter().map(|shape| {
        let (name, .., regressors) = shape;
        let taped: Vec<&Vec<f64>> = regressors
            .iter()
            .map(|name| column(columns, name))
            .collect::<Result<_, _>>()?;
        fit(&surveyed(columns, shape)?, &taped).ok_or_else(|| format!("{name} cannot be fitted"))
    });
    each.collect()
}

/// The relations and correlations of `surveyed.rs` from the text of the survey.
///
/// # Errors
///
/// A text that says which column or line of the survey is wrong.
pub fn relations(survey: &str) -> Result<String, String> {
    let columns = seen(survey)?;
    let fits = fits(&columns)?;
    let (women, shapes) = (fits[0].left.len(), SHAPES.len());
    let mut out = format!(
        "//! What the survey says of breadths, depths and heights: written by a program, not by hand.\n\
         //!\n\
         //! `cargo run --release --example derive_form -- tests/data/women.csv`. Each of the first is a\n\
         //! linear relation to what is taped, fitted by least squares over {women} women, every other one\n\
         //! (NATICK/TR-89/044, public domain), with the spread that it leaves and how those spreads go\n\
         //! together. Means of the assumed are those with which forms of these women meet their surveyed\n\
         //! heights, breadths and depths on average; their spreads are assumptions.\n\n\
         use super::parameter::ShapeParameter as P;\nuse super::relation::Relation;\n\
         use crate::measurements::Measurement as M;\n\n\
         pub(super) const SURVEYED: [Relation; {shapes}] = [\n",
    );
    for ((name, .., regressors), fit) in SHAPES.iter().zip(&fits) {
        let terms: Vec<String> = regressors
            .iter()
            .zip(&fit.coefficients)
            .map(|(name, coefficient)| format!("(M::{}, {coefficient:.5})", variant(name)))
            .collect();
        let _ = writeln!(
            out,
            "    Relation {{ of: P::{name}, constant: {:.4}, terms: &[{}], spread: {:.3} }},",
            fit.constant,
            terms.join(", "),
            fit.spread,
        );
    }
    let _ = writeln!(
        out,
        "];\n\npub(super) const CORRELATION: [[f64; {shapes}]; {shapes}] = ["
    );
    for one in &fits {
        let cells: Vec<String> = fits
            .iter()
            .map(|other| format!("{:.4}", correlation(&one.left, &other.left)))
            .collect();
        let _ = writeln!(out, "    [{}],", cells.join(", "));
    }
    out.push_str("];\n");
    Ok(out)
}

/// A shape that was not surveyed: its name, the girth that it is a share of, the mean from which the
/// program starts, and its spread; both are assumptions.
type Assumed = (&'static str, Option<&'static str>, f64, f64);

const ASSUMED: [Assumed; 16] = [
    ("NapeForward", None, 60.0, 14.0),
    ("WaistForward", None, 30.0, 14.0),
    ("SeatForward", None, 5.0, 14.0),
    ("BladeShare", None, 0.5, 0.04),
    ("BustRecess", None, 15.0, 6.0),
    ("ChestBreadth", Some("upper_chest_girth"), 0.37, 12.0),
    ("UnderbustBreadth", Some("underbust_girth"), 0.34, 10.0),
    ("UnderbustDepth", Some("underbust_girth"), 0.28, 10.0),
    ("NeckHalf", Some("neck_base_girth"), 0.15, 3.0),
    ("NeckDepth", Some("neck_base_girth"), 0.2, 8.0),
    ("NeckSideShare", None, 0.55, 0.06),
    ("ChestRoundness", None, 2.4, 0.2),
    ("BustRoundness", None, 3.0, 0.25),
    ("UnderbustRoundness", None, 2.2, 0.15),
    ("WaistRoundness", None, 2.2, 0.15),
    ("HipRoundness", None, 2.9, 0.25),
];

/// Of the women seen the means are fitted to every so many.
const EVERY: usize = 6;

/// A mean that is one spread from where it starts weighs as much as forms that miss by a twentieth of
/// a spread on average.
const STAY: f64 = 0.05;

/// A woman whose form is to meet what was surveyed of her.
struct Woman {
    body: Body,
    /// What the library expects of every dimension.
    expected: Vec<(ShapeParameter, f64)>,
    /// What the relations make of the surveyed ones, and what was surveyed.
    related: Vec<(ShapeParameter, f64, f64)>,
    /// The girths of the assumed ones; 1 for those that are no share.
    girths: Vec<f64>,
}

fn parameter(name: &str) -> Result<ShapeParameter, String> {
    let mut all = ShapeParameter::ALL.into_iter();
    all.find(|one| format!("{one:?}") == name)
        .ok_or_else(|| format!("there is no dimension {name}"))
}

fn women(columns: &Columns) -> Result<Vec<Woman>, String> {
    let fits = fits(columns)?;
    let shapes: Vec<Vec<f64>> = SHAPES
        .iter()
        .map(|shape| surveyed(columns, shape))
        .collect::<Result<_, _>>()?;
    let mut out = Vec::new();
    for row in (0..column(columns, "height")?.len()).step_by(EVERY) {
        let at = |name: &str| column(columns, name).map(|column| column[row]);
        let taken = Measurement::ALL.into_iter().filter_map(|of| match of {
            // Heights are what is to be found; the survey's front waist length is one in part.
            Measurement::NapeHeight | Measurement::WaistHeight => None,
            Measurement::FrontWaistLength | Measurement::ArmscyeGirth => None,
            Measurement::ShoulderSlope => Some((of, at("shoulder_slope_deg").ok()?.to_radians())),
            _ => Some((of, at(of.name()).ok()?)),
        });
        let body = Body::from_taken(taken).map_err(|error| error.to_string())?;
        let Ok(form) = Form::of(&body) else { continue };
        let dimensions = form.dimensions().iter();
        let mut related = Vec::new();
        for ((shape, fit), values) in SHAPES.iter().zip(&fits).zip(&shapes) {
            let mut mean = fit.constant;
            for (name, coefficient) in shape.3.iter().zip(&fit.coefficients) {
                mean += coefficient * at(name)?;
            }
            related.push((parameter(shape.0)?, mean, values[row]));
        }
        out.push(Woman {
            expected: dimensions.map(|one| (one.of, one.expected)).collect(),
            related,
            girths: ASSUMED
                .iter()
                .map(|(_, of, ..)| of.map_or(Ok(1.0), &at))
                .collect::<Result<_, _>>()?,
            body,
        });
    }
    Ok(out)
}

/// By how many spreads the forms are off on average in each dimension that was surveyed.
fn misses(women: &[Woman], spreads: &[f64], means: &DVector<f64>) -> Result<DVector<f64>, String> {
    let mut sums = DVector::zeros(SHAPES.len());
    let mut count = 0.0;
    for woman in women {
        let library = |of: ShapeParameter| {
            let mut all = woman.expected.iter();
            all.find(|(one, _)| *one == of)
                .map_or(0.0, |(_, mean)| *mean)
        };
        let mut more = Vec::new();
        for (place, (name, ..)) in ASSUMED.iter().enumerate() {
            let of = parameter(name)?;
            more.push((of, means[place] * woman.girths[place] - library(of)));
        }
        more.extend(
            woman
                .related
                .iter()
                .map(|(of, mean, _)| (*of, mean - library(*of))),
        );
        let Ok(form) = Form::expecting(&woman.body, &more) else {
            continue;
        };
        count += 1.0;
        for (place, (of, _, surveyed)) in woman.related.iter().enumerate() {
            let mut all = form.dimensions().iter();
            let value = all.find(|one| one.of == *of).map_or(0.0, |one| one.value);
            sums[place] += (value - surveyed) / spreads[place];
        }
    }
    Ok(sums / count)
}

/// The means of the shapes that were not surveyed.
///
/// # Errors
///
/// A text that says which column or line of the survey is wrong.
pub fn means(survey: &str) -> Result<Vec<f64>, String> {
    let columns = seen(survey)?;
    let women = women(&columns)?;
    let spreads: Vec<f64> = fits(&columns)?.iter().map(|fit| fit.spread).collect();
    let count = ASSUMED.len();
    let girths: Vec<f64> = (0..count)
        .map(|place| women.iter().map(|w| w.girths[place]).sum::<f64>() / women.len() as f64)
        .collect();
    let step = |place: usize| ASSUMED[place].3 / girths[place];
    let start = DVector::from_fn(count, |place, _| ASSUMED[place].2);
    let mut at = start.clone();
    for round in 0..3 {
        let miss = misses(&women, &spreads, &at)?;
        eprintln!("round {round}: {:.2?}", miss.as_slice());
        let mut slopes = DMatrix::zeros(SHAPES.len(), count);
        for place in 0..count {
            let mut moved = at.clone();
            moved[place] += 0.25 * step(place);
            let there = misses(&women, &spreads, &moved)?;
            slopes.set_column(place, &((there - &miss) / 0.25));
        }
        let off = DVector::from_fn(count, |place, _| (at[place] - start[place]) / step(place));
        let curvature = slopes.tr_mul(&slopes) + DMatrix::identity(count, count) * (STAY * STAY);
        let downhill = slopes.tr_mul(&miss) + off * (STAY * STAY);
        let factor = Cholesky::new(curvature).ok_or("the means cannot be fitted")?;
        let moved = factor.solve(&downhill);
        for place in 0..count {
            at[place] -= moved[place] * step(place);
        }
    }
    eprintln!("left: {:.2?}", misses(&women, &spreads, &at)?.as_slice());
    Ok(at.iter().copied().collect())
}

fn means_written(means: &[f64]) -> String {
    let mut out = format!(
        "\npub(super) const ASSUMED: [Relation; {}] = [\n",
        ASSUMED.len()
    );
    for ((name, girth, _, spread), mean) in ASSUMED.iter().zip(means) {
        let _ = match girth {
            None => writeln!(
                out,
                "    Relation {{ of: P::{name}, constant: {mean:.4}, terms: &[], spread: {spread:?} }},"
            ),
            Some(girth) => writeln!(
                out,
                "    Relation {{ of: P::{name}, constant: 0.0, terms: &[(M::{}, {mean:.5})], spread: {spread:?} }},",
                variant(girth)
            ),
        };
    }
    out.push_str("];\n");
    out
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
