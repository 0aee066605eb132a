//! The cloth that every size of a range needs, as a chart to publish.

use crate::grading::{Graded, GradedSize};
use crate::job::reports::lay_report::to_be_bought;
use crate::job::reports::lay_report_text::to_buy;
use crate::job::reports::rounding::shown;
use crate::lay::{Cloth, Search, parts};
use crate::units::Unit;

/// Widths of cloth, in millimetres and in inches (common practice).
const WIDTHS_MM: [f64; 3] = [1150.0, 1400.0, 1500.0];
const WIDTHS_INCHES: [f64; 3] = [45.0, 55.0, 60.0];

/// The search of each lay: short, so that a range of nine sizes takes less than a second.
const SEED: u64 = 1;
const ROUNDS: u32 = 60;

/// What every size needs on cloth of one width.
pub(in crate::job) struct ClothRow {
    /// The width, in words.
    pub(in crate::job) width: String,
    /// The length to be bought, in mm, of every size; none where a piece finds no room.
    lengths: Vec<Option<f64>>,
}

/// Cloth per size and width, folded lengthwise, in the unit of the table.
pub(in crate::job) struct ClothChart {
    unit: Unit,
    /// The narrowest first.
    pub(in crate::job) rows: Vec<ClothRow>,
    /// Whether every size carries its seam allowance.
    allowance: bool,
}

impl ClothChart {
    /// Lays every size on cloth of every usual width. What lies on a narrower cloth lies on a wider one
    /// too: a wider one never needs more.
    pub(in crate::job) fn new(graded: &Graded, unit: Unit) -> Self {
        let widths = match unit {
            Unit::In => WIDTHS_INCHES.map(|inches| unit.to_mm(inches)),
            _ => WIDTHS_MM,
        };
        let sizes = graded.sizes();
        let mut least: Vec<Option<f64>> = vec![None; sizes.len()];
        let rows = widths.into_iter().map(|width| {
            for (least, size) in least.iter_mut().zip(sizes) {
                let found = length(size, width);
                *least = [*least, found].into_iter().flatten().reduce(f64::min);
            }
            let lengths = least
                .iter()
                .map(|length| length.map(|length| to_be_bought(length, unit)));
            ClothRow {
                width: shown(width, unit),
                lengths: lengths.collect(),
            }
        });
        Self {
            unit,
            rows: rows.collect(),
            allowance: sizes.iter().all(|size| size.cut().is_some()),
        }
    }

    /// The unit of lengths of cloth in a file for programs: yards where cloth is sold by them.
    pub(in crate::job) fn unit_name(&self) -> &'static str {
        match self.unit {
            Unit::In => "yd",
            unit => unit.name(),
        }
    }

    /// The lengths of a row in that unit, as numbers; nothing where a piece finds no room.
    pub(in crate::job) fn numbers(&self, row: &ClothRow) -> Vec<String> {
        let number = |mm: f64| match self.unit {
            Unit::In => format!("{:.3}", self.unit.from_mm(mm) / 36.0),
            unit => format!("{}", unit.from_mm(mm).round()),
        };
        let lengths = row.lengths.iter();
        lengths
            .map(|length| length.map_or_else(String::new, number))
            .collect()
    }

    /// The lengths of a row as they are asked for in a shop.
    pub(in crate::job) fn words(&self, row: &ClothRow) -> Vec<String> {
        let words = |mm| to_buy(mm, self.unit);
        let lengths = row.lengths.iter();
        lengths
            .map(|length| length.map_or_else(|| "no room".to_owned(), words))
            .collect()
    }

    /// How far the lengths can be relied on.
    pub(in crate::job) fn note(&self) -> String {
        let allowance = if self.allowance {
            "Seam allowances are included."
        } else {
            "Seam allowances are not included."
        };
        format!(
            "Cloth to buy is what a quick lay needs ({ROUNDS} rounds, seed {SEED}): folded lengthwise, \
             pieces both ways, no facings, no shrinkage. {allowance} A longer search by the command lay \
             may find less, and so may cloth that is not folded; where it says no room, a piece is wider \
             than the folded cloth."
        )
    }
}

/// The length that a quick lay of a size needs on folded cloth.
fn length(size: &GradedSize, width: f64) -> Option<f64> {
    let cloth = Cloth::new(width).ok()?.folded();
    let laid = parts(size.pattern(), size.cut(), &cloth).ok()?;
    let mut search = Search::new(&cloth, laid, SEED).ok()?;
    while search.rounds() < ROUNDS {
        search.round();
    }
    Some(search.length())
}
