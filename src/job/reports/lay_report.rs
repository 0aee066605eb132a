//! What is to be said about a lay.

use serde::Serialize;

use super::rounding::{rounded, shown};
use crate::job::{Job, WarningReport};
use crate::lay::{Laid, Lay, Stretch};
use crate::units::Unit;

/// Cloth is sold by the step: 5 cm, or an eighth of a yard (common practice).
const STEP_MM: f64 = 50.0;
const STEP_INCHES_MM: f64 = 114.3;

/// What is bought beyond the length needed at least: shops cut, and cloth frays, askew.
const TO_SPARE_MM: f64 = 20.0;

/// The report of a lay, and the document `lay.json`; lengths in mm.
///
/// ```
/// use blockwright::job::LayReport;
/// fn to_buy(report: &LayReport) -> f64 { report.length_to_buy }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct LayReport {
    /// `blockwright-lay`.
    pub format: &'static str,
    /// Version of the format.
    pub version: u32,
    /// `mm`.
    pub units: &'static str,
    /// What the work is called.
    pub title: String,
    /// The block.
    pub block: String,
    /// The cloth.
    pub cloth: ClothReport,
    /// Length of cloth used.
    pub length: f64,
    /// That with 20 mm to spare, in the steps in which cloth is sold.
    pub length_to_buy: f64,
    /// Area of the pieces by area of the cloth used.
    pub density: f64,
    /// A length that no lay of these pieces can undercut.
    pub least_length: f64,
    /// Seed of the search.
    pub seed: u64,
    /// Rounds of the search; with the seed they give this lay again.
    pub rounds: u32,
    /// Whether the pieces carry their seam allowance.
    pub allowance: bool,
    /// The stretches of cloth, one after the other.
    pub stretches: Vec<StretchReport>,
    /// What the cutter should know about this lay.
    pub warnings: Vec<WarningReport>,
    /// What must be known about any lay.
    pub cautions: Vec<&'static str>,
    #[serde(skip)]
    pub(in crate::job) unit: Unit,
}

/// The cloth of a lay, lengths in mm.
///
/// ```
/// use blockwright::job::ClothReport;
/// let cloth = ClothReport { width: 1400.0, folded: true, one_way: false, gap: 5.0 };
/// assert!(cloth.folded);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ClothReport {
    /// Width between the selvedges.
    pub width: f64,
    /// Whether it is folded lengthwise.
    pub folded: bool,
    /// Whether all pieces lie one way.
    pub one_way: bool,
    /// What pieces keep from one another, the selvedges and the ends.
    pub gap: f64,
}

/// A stretch of cloth, lengths in mm.
///
/// ```
/// use blockwright::job::StretchReport;
/// let empty = StretchReport { folded: false, from: 0.0, length: 10.0, width: 900.0, pieces: vec![] };
/// assert_eq!(empty.from, 0.0);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StretchReport {
    /// Whether it is folded lengthwise.
    pub folded: bool,
    /// Where it begins along the cloth.
    pub from: f64,
    /// Its length.
    pub length: f64,
    /// Its width as it lies.
    pub width: f64,
    /// The pieces on it.
    pub pieces: Vec<LaidReport>,
}

/// A piece in its place, lengths in mm from the start of its stretch and its fold or first
/// selvedge.
///
/// ```
/// use blockwright::job::LaidReport;
/// fn name(piece: &LaidReport) -> &str { &piece.name }
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct LaidReport {
    /// Name of the piece.
    pub name: String,
    /// How it is cut, in words.
    pub cut: String,
    /// Degrees by which it is turned: 0 or 180.
    pub turn: u16,
    /// Whether the pattern lies face down.
    pub face_down: bool,
    /// Whether it lies on the fold.
    pub on_fold: bool,
    /// Layers cut through at once.
    pub layers: u8,
    /// Where its box begins, along and across the cloth.
    pub at: [f64; 2],
    /// The size of its box, along and across the cloth.
    pub size: [f64; 2],
    /// The corners of its outline, along and across the cloth.
    pub outline: Vec<[f64; 2]>,
}

impl LayReport {
    pub(in crate::job) fn new(job: &Job, lay: &Lay, allowance: bool, opened: Option<f64>) -> Self {
        let length = lay.length();
        let mut from = 0.0;
        let stretches = lay.stretches.iter().map(|stretch| {
            let report = of_stretch(stretch, from);
            from += stretch.length;
            report
        });
        Self {
            format: "blockwright-lay",
            version: 1,
            units: "mm",
            title: job.recipe.title.clone(),
            block: job.recipe.options.block.name().to_owned(),
            cloth: ClothReport {
                width: lay.cloth.width(),
                folded: lay.cloth.is_folded(),
                one_way: lay.cloth.is_one_way(),
                gap: lay.cloth.gap(),
            },
            length: rounded(length),
            length_to_buy: rounded(to_be_bought(length, job.set.unit())),
            density: rounded(lay.density()),
            least_length: rounded(lay.least_length),
            seed: lay.seed,
            rounds: lay.rounds,
            allowance,
            stretches: stretches.collect(),
            warnings: warnings(lay, allowance, opened, job.set.unit()),
            cautions: CAUTIONS.to_vec(),
            unit: job.set.unit(),
        }
    }

    /// The document `lay.json`.
    pub(in crate::job) fn document(&self) -> String {
        // Strings and finite numbers only: nothing that JSON cannot hold.
        let mut text = serde_json::to_string_pretty(self).unwrap_or_default();
        text.push('\n');
        text
    }
}

/// A length of cloth with what is to spare, in the steps in which cloth is sold, in mm.
pub(in crate::job) fn to_be_bought(length: f64, unit: Unit) -> f64 {
    let step = match unit {
        Unit::In => STEP_INCHES_MM,
        _ => STEP_MM,
    };
    ((length + TO_SPARE_MM) / step).ceil() * step
}

fn of_stretch(stretch: &Stretch, from: f64) -> StretchReport {
    StretchReport {
        folded: stretch.folded,
        from: rounded(from),
        length: rounded(stretch.length),
        width: rounded(stretch.width),
        pieces: stretch.pieces.iter().map(of_piece).collect(),
    }
}

fn of_piece(laid: &Laid) -> LaidReport {
    let bounds = laid.shape.bounds();
    let points = laid.shape.points().iter();
    LaidReport {
        name: laid.name.clone(),
        cut: laid.words_in_pose(),
        turn: if laid.pose.turned { 180 } else { 0 },
        face_down: laid.pose.face_down,
        on_fold: laid.on_fold,
        layers: laid.layers,
        at: [rounded(bounds.x0), rounded(bounds.y0)],
        size: [rounded(bounds.width()), rounded(bounds.height())],
        outline: points.map(|p| [rounded(p.x), rounded(p.y)]).collect(),
    }
}

/// From which part of its length on a lay of cloth not folded is worth telling.
const WORTH: f64 = 0.95;

/// What must be known before cloth is bought or cut.
const CAUTIONS: [&str; 5] = [
    "Sew a toile in cheap cloth before you buy or cut good cloth.",
    "Wash or steam the cloth as the garment will be washed, and press it, before you lay: cloth \
     shrinks, and no shrinkage is reckoned in.",
    "Measure the test square of the printed pattern, and your cloth between the selvedges.",
    "Only the pieces of this pattern are reckoned: facings, linings, pockets and bindings come on \
     top, and so does what a check or a large print takes to match.",
    "Lay every piece before you cut the first.",
];

fn warnings(lay: &Lay, allowance: bool, opened: Option<f64>, unit: Unit) -> Vec<WarningReport> {
    let mut warnings = Vec::new();
    let mut add = |code: &str, text: String| {
        warnings.push(WarningReport {
            code: code.to_owned(),
            text,
        });
    };
    if !allowance {
        add(
            "no_allowance",
            format!(
                "No seam allowance is included: the pieces lie {} apart along their stitching \
                 lines. Ask for an `allowance` in the job, or the cloth will be too short.",
                shown(lay.cloth.gap(), unit)
            ),
        );
    }
    if let Some(length) = opened.filter(|length| *length < WORTH * lay.length()) {
        add(
            "shorter_not_folded",
            format!(
                "Not folded, with every piece laid out whole, this cloth needs about {} instead of \
                 {}.",
                shown(length, unit),
                shown(lay.length(), unit)
            ),
        );
    }
    let mut opened = lay.stretches.iter().filter(|stretch| !stretch.folded);
    if lay.cloth.is_folded()
        && let Some(stretch) = opened.next()
    {
        let mut names: Vec<&str> = Vec::new();
        for piece in &stretch.pieces {
            names.push(&piece.name);
        }
        let where_to = if lay.stretches.len() > 1 {
            format!(
                "They lie on {} opened out to a single layer, right side up, after the folded cloth",
                shown(stretch.length, unit)
            )
        } else {
            "Nothing is cut from two layers: do not fold this cloth, lay it right side up"
                .to_owned()
        };
        add(
            "opened_stretch",
            format!("Cut once each: {}. {where_to}.", names.join(", ")),
        );
    }
    warnings
}
