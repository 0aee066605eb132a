//! Derives the joint distribution by which missing measurements are estimated.
//!
//! Usage: `cargo run --example derive_estimates -- women.csv > src/measurements/estimates.rs`
//!
//! The file has one row a woman and one column a measurement: lengths in mm,
//! `shoulder_slope_deg` in degrees. Of each column that is a measurement the deviations from its
//! mean are taken, and of all of them together mean and covariance. Front width has no column:
//! it is written as what two handbooks make of back width, bust and upper chest.

use std::fmt::Write as _;
use std::process::ExitCode;

use blockwright::measurements::{Kind, Measurement};

#[path = "shared/survey_file.rs"]
mod survey_file;
use survey_file::variant;

/// Lengths along the trunk and limbs, whose share of the height hardly depends on girth.
const SHARES: [Measurement; 8] = [
    Measurement::BackWaistLength,
    Measurement::FrontWaistLength,
    Measurement::CentreFrontWaistLength,
    Measurement::WaistToHip,
    Measurement::WaistToKnee,
    Measurement::ArmLength,
    Measurement::NapeHeight,
    Measurement::WaistHeight,
];

/// By how much the front is narrower than the back at a bust of zero, in mm, and what each mm of
/// bust takes off that. The middle of two drafts, front 0.30 B + 60 less back 0.25 B + 124
/// (Aldrich, the table as transcribed, to a bust of 1040) and 24 at every size (Bunka, value from
/// memory), and 2 mm.
const FRONT_NARROWER: (f64, f64) = (46.0, 0.025);

/// Of what a back is wider than backs of that bust, the front follows this share: two widths of
/// one rib cage, not one width twice (an assumption).
const FRONT_FOLLOWS_BACK: f64 = 0.8;

/// How much of a longer shoulder the front is wider (an assumption: the chest ends under the
/// shoulder's end).
const FRONT_OF_SHOULDER: f64 = 0.2;

/// Spread of the front width of one woman about that, in mm: how far the sources lie from the
/// mean of the two. At a bust of 900 they say -19 (Aldrich), -24 (Bunka) and +25 (Schmit, read),
/// whose root mean square about -21.5 is 27.
const FRONT_SPREAD: f64 = 27.0;

/// The share of an upper chest larger than those of that bust and back that lies across the front
/// (an assumption).
const FRONT_OF_UPPER_CHEST: f64 = 0.1;

/// The fronts of the handbook's table, bust 76 to 122 cm (Aldrich, as transcribed).
const FRONT_ENDS: (f64, f64) = (288.0, 426.0);

fn main() -> ExitCode {
    survey_file::print_table("derive_estimates", |survey| Ok(table(&read(survey)?)))
}

/// One measurement of all women: mm, or radians.
#[derive(Debug, Clone)]
pub struct Column {
    /// Which.
    pub of: Measurement,
    /// One value a woman.
    pub values: Vec<f64>,
}

/// The measurements of the survey, in the order of [`Measurement::ALL`], without those that it
/// does not have. Angles are in radians, and the front waist length is as a tape finds it.
///
/// # Errors
///
/// A text that says which column or line of the survey is wrong.
pub fn read(survey: &str) -> Result<Vec<Column>, String> {
    let columns = survey_file::columns(survey)?;
    let column = |name: &str| {
        columns
            .get(name)
            .ok_or_else(|| format!("the column `{name}` is missing"))
    };
    let mut out = Vec::new();
    for of in Measurement::ALL {
        let values = match of {
            Measurement::FrontWidth
            | Measurement::BackHollow
            | Measurement::NapePlumb
            | Measurement::WaistPlumb => continue,
            Measurement::BustDepth => column("chest_depth")?.clone(),
            Measurement::SeatDepth => column("buttock_depth")?.clone(),
            Measurement::ShoulderSlope => {
                let degrees = column("shoulder_slope_deg")?;
                degrees.iter().map(|value| value.to_radians()).collect()
            }
            Measurement::FrontWaistLength => {
                let [bust, underbust, waist, bust_point] = [
                    column("bust_girth")?,
                    column("underbust_girth")?,
                    column("waist_girth")?,
                    column("neck_to_bust_point")?,
                ];
                let level = column("front_waist_length")?;
                (0..level.len())
                    .map(|i| {
                        let radii = (bust[i] - waist[i]) / (2.0 * std::f64::consts::PI);
                        let cup = (bust[i] - underbust[i]) / 4.0;
                        taped_front(level[i], bust_point[i], radii.max(0.0) + cup.max(0.0))
                    })
                    .collect()
            }
            _ => column(of.name())?.clone(),
        };
        out.push(Column { of, values });
    }
    Ok(out)
}

/// A front waist length as taped, from one that runs along the body only to the bust point and
/// below it is a difference of heights, as the survey has it.
///
/// A tape slants: the bust point stands in front of the waist by the difference of the two
/// girths' radii and by what the bust adds, which is all in front, here taken as a quarter of
/// bust less underbust (an assumption). On the mean woman that is 17 mm.
#[must_use]
pub fn taped_front(level: f64, neck_to_bust_point: f64, in_front: f64) -> f64 {
    neck_to_bust_point + (level - neck_to_bust_point).max(0.0).hypot(in_front)
}

/// A measurement among the others, in deviations from the mean.
struct Part {
    of: Measurement,
    centre: f64,
    ends: (f64, f64),
    share_of_height: Option<(f64, f64)>,
    mean: f64,
}

/// The whole of `estimates.rs` from the columns of the survey.
#[must_use]
pub fn table(columns: &[Column]) -> String {
    let women = columns.first().map_or(0, |column| column.values.len());
    let mean = |values: &[f64]| values.iter().sum::<f64>() / women as f64;
    let ends = |values: &mut dyn Iterator<Item = f64>| {
        values.fold((f64::INFINITY, 0.0_f64), |(low, high), value| {
            (low.min(value), high.max(value))
        })
    };
    let height = &columns[0].values;
    let mut parts = Vec::new();
    let mut deviations = Vec::new();
    for Column { of, values } in columns {
        let centre = mean(values);
        let mut z: Vec<f64> = values
            .iter()
            .map(|x| match of.kind() {
                Kind::Angle => (x - centre) / (2.0 * centre),
                Kind::Length => (x - centre) / (x + centre),
            })
            .collect();
        let share = SHARES.contains(of).then(|| {
            let mut shares = values
                .iter()
                .zip(height)
                .map(|(value, height)| value / height);
            ends(&mut shares)
        });
        parts.push(Part {
            of: *of,
            centre,
            ends: ends(&mut values.iter().copied()),
            share_of_height: share,
            mean: mean(&z),
        });
        let middle = mean(&z);
        z.iter_mut().for_each(|z| *z -= middle);
        deviations.push(z);
    }
    let mut covariance: Vec<Vec<f64>> = deviations
        .iter()
        .map(|a| {
            deviations
                .iter()
                .map(|b| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>() / (women as f64 - 1.0))
                .collect()
        })
        .collect();
    let distance = farthest(&covariance, &deviations, &parts);
    add_front_width(&mut parts, &mut covariance);
    write(women, distance, &parts, &covariance)
}

/// The largest squared distance of a woman's height, bust, waist and hip from their mean.
fn farthest(covariance: &[Vec<f64>], deviations: &[Vec<f64>], parts: &[Part]) -> f64 {
    let places: Vec<usize> = (0..parts.len())
        .filter(|place| parts[*place].of.is_required())
        .collect();
    let four = nalgebra::Matrix4::from_fn(|i, j| covariance[places[i]][places[j]]);
    let inverse = four.try_inverse().unwrap_or_default();
    (0..deviations[0].len())
        .map(|woman| {
            let z = nalgebra::Vector4::from_fn(|i, _| deviations[places[i]][woman]);
            z.dot(&(inverse * z))
        })
        .fold(0.0, f64::max)
}

/// Adds the front width: a weighted sum of back width, bust, upper chest and shoulder, and a
/// spread.
fn add_front_width(parts: &mut Vec<Part>, covariance: &mut Vec<Vec<f64>>) {
    let place = |of| parts.iter().position(|part| part.of == of).unwrap_or(0);
    let back = place(Measurement::BackWidth);
    let bust = place(Measurement::BustGirth);
    let chest = place(Measurement::UpperChestGirth);
    let shoulder = place(Measurement::ShoulderLength);
    let centre = |place: usize| parts[place].centre;
    let (narrower, slope) = FRONT_NARROWER;
    let front = centre(back) - narrower + slope * centre(bust);
    // Near the mean a deviation is 1 / (2 centre) of a millimetre: slopes in mm for each mm.
    let mm = |i: usize, j: usize| 4.0 * centre(i) * centre(j) * covariance[i][j];
    let back_of_bust = mm(back, bust) / mm(bust, bust);
    let det = mm(back, back) * mm(bust, bust) - mm(back, bust).powi(2);
    let chest_of_back = (mm(chest, back) * mm(bust, bust) - mm(chest, bust) * mm(back, bust)) / det;
    let chest_of_bust = (mm(chest, bust) * mm(back, back) - mm(chest, back) * mm(back, bust)) / det;
    let slopes = [
        (
            back,
            FRONT_FOLLOWS_BACK - FRONT_OF_UPPER_CHEST * chest_of_back,
        ),
        (
            bust,
            (1.0 - FRONT_FOLLOWS_BACK) * back_of_bust + slope
                - FRONT_OF_UPPER_CHEST * chest_of_bust,
        ),
        (chest, FRONT_OF_UPPER_CHEST),
        (shoulder, FRONT_OF_SHOULDER),
    ];
    let weights = slopes.map(|(place, slope)| (place, slope * centre(place) / front));
    let with: Vec<f64> = covariance
        .iter()
        .map(|row| {
            weights
                .iter()
                .map(|(place, weight)| weight * row[*place])
                .sum()
        })
        .collect();
    let own: f64 = weights
        .iter()
        .map(|(place, weight)| weight * with[*place])
        .sum();
    let mean = weights
        .iter()
        .map(|(place, weight)| weight * parts[*place].mean)
        .sum();
    for (row, cell) in covariance.iter_mut().zip(&with) {
        row.push(*cell);
    }
    let spread = FRONT_SPREAD / (2.0 * front);
    covariance.push(with.into_iter().chain([own + spread * spread]).collect());
    parts.push(Part {
        of: Measurement::FrontWidth,
        centre: front,
        ends: FRONT_ENDS,
        share_of_height: None,
        mean,
    });
}

const HEADER: &str = "\
//! Mean and covariance of all measurements together. Written by
//! `examples/derive_estimates.rs`; do not edit.
//!
//! Source: 1988 Anthropometric Survey of U.S. Army Personnel, women, working database
//! (Gordon et al. 1989, report NATICK/TR-89/044; public domain, a work of the U.S.
//! government). Computed from a random half of its 2,208 women. Millimetres; the
//! shoulder slope in radians. The front waist length is corrected to one that is taped over
//! the bust. Front width was not surveyed: its row follows from handbooks (Aldrich, as
//! transcribed; Bunka, value from memory; Schmit, read), its spread from their disagreement.

use super::measurement::Measurement;

/// One measurement.
#[derive(Debug)]
pub(super) struct Row {
    /// Which.
    pub(super) of: Measurement,
    /// Its mean, from which deviations are counted.
    pub(super) centre: f64,
    /// Smallest and largest value found.
    pub(super) ends: (f64, f64),
    /// Smallest and largest share of the height found, for lengths of trunk and limbs.
    pub(super) share_of_height: Option<(f64, f64)>,
    /// Its mean deviation.
    pub(super) mean: f64,
}

";

fn write(women: usize, distance: f64, parts: &[Part], covariance: &[Vec<f64>]) -> String {
    let mut out = String::from(HEADER);
    let _ = writeln!(
        out,
        "/// Women the table rests on.\npub(super) const WOMEN: u32 = {women};\n"
    );
    let _ = writeln!(
        out,
        "/// Largest squared distance of a woman's height, bust, waist and hip from their mean, in\n\
         /// spreads.\npub(super) const FARTHEST: f64 = {distance:.4};\n"
    );
    let _ = writeln!(
        out,
        "/// The measurements, in the order of the covariance.\npub(super) const ROWS: [Row; {}] = [",
        parts.len()
    );
    for part in parts {
        let share = part
            .share_of_height
            .map_or("None".to_owned(), |(low, high)| {
                format!("Some(({low:.4}, {high:.4}))")
            });
        let _ = writeln!(
            out,
            "    Row {{ of: Measurement::{}, centre: {:.6}, ends: ({:.4}, {:.4}), share_of_height: {share}, mean: {:.9e} }},",
            variant(part.of.name()),
            part.centre,
            part.ends.0,
            part.ends.1,
            part.mean,
        );
    }
    let _ = writeln!(
        out,
        "];\n\n/// Covariance of the deviations: of each row with those up to its own.\n\
         pub(super) const COVARIANCE: [&[f64]; {}] = [",
        parts.len()
    );
    for (place, row) in covariance.iter().enumerate() {
        let cells: Vec<String> = row[..=place]
            .iter()
            .map(|cell| format!("{cell:.9e}"))
            .collect();
        let _ = writeln!(out, "    &[{}],", cells.join(", "));
    }
    out.push_str("];\n");
    out
}
