//! Two roads to one pattern: the block of a table size fitted to a woman, beside the draft for her.
//!
//! Prints what is missed, edge by edge, and names the women for whom something is. A sample by default; 300 women with `BLOCKWRIGHT_WHOLE=1`.

#![allow(clippy::unwrap_used)]

use crate::support::bodies::repository_file;
use crate::support::survey::{body_of, tell, whole, women};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::fit::{FitSettings, Fitted, fit, nearest_size};
use blockwright::invariants::{Tolerances, is_valid};
use blockwright::measurements::{Body, SizeTable};
use blockwright::piece::{EdgeName, Measure, MeasureKind, Pattern};
use blockwright::units::Unit;
use std::collections::BTreeMap;

/// How far a finished girth and an edge may be off, in millimetres, as a fitter would let it pass
/// (common practice).
const GIRTH: f64 = 1.0;
const EDGE: f64 = 3.0;

/// The edges by which a fitter judges a dress.
const JUDGED: [EdgeName; 7] = [
    EdgeName::CENTRE_BACK,
    EdgeName::CENTRE_FRONT,
    EdgeName::SIDE_SEAM,
    EdgeName::SHOULDER,
    EdgeName::ARMSCYE,
    EdgeName::NECKLINE,
    EdgeName::HEM,
];

fn dress() -> DraftOptions {
    let mut options = DraftOptions::of(Block::Dress);
    options.sleeve = Some(SleeveLength::Long);
    options
}

/// The published table: EN 13402-3 as transcribed in its file.
fn table() -> SizeTable {
    SizeTable::parse(&repository_file("measurement-sets/en-13402-3-women.yaml")).unwrap()
}

/// The women of the check: every so many.
fn checked() -> Vec<(String, Body)> {
    let all = women();
    let (every, count) = if whole() { (3, 300) } else { (131, 8) };
    let rows = all.rows.iter().step_by(every).take(count);
    rows.map(|row| (row.text("id").to_owned(), body_of(row)))
        .collect()
}

/// A woman's nearest size fitted to her, and the draft for her.
fn both(table: &SizeTable, woman: &Body, settings: &FitSettings) -> Option<(Fitted, Pattern)> {
    let size = nearest_size(table, woman).unwrap().chosen.size;
    let own = table.body(&size).unwrap();
    let (block, hers) = (draft(own, &dress()).ok()?, draft(woman, &dress()).ok()?);
    let fitted = fit(&block, &dress(), (own, woman), Unit::Mm, settings);
    Some((fitted.unwrap(), hers))
}

/// By how much a measure may be off: `girth` for a finished girth, `edge` for an edge.
fn limit(measure: &Measure, (girth, at_edge): (f64, f64)) -> Option<f64> {
    match measure.kind() {
        MeasureKind::FinishedGirth { .. } => Some(girth),
        MeasureKind::EdgeLength { edge, piece } if piece != "sleeve" => {
            JUDGED.contains(edge).then_some(at_edge)
        }
        MeasureKind::EdgeLength { edge, .. } if edge.to_string().starts_with("underarm") => {
            Some(at_edge)
        }
        _ => None,
    }
}

fn judge(settings: &FitSettings, limits: (f64, f64), title: &str) {
    let table = table();
    let mut misses: BTreeMap<String, Vec<f64>> = BTreeMap::new();
    let (mut within, mut women, mut steps) = (0, 0, 0);
    let mut beyond: BTreeMap<String, usize> = BTreeMap::new();
    let mut named = Vec::new();
    for (name, woman) in checked() {
        let Some((fitted, hers)) = both(&table, &woman, settings) else {
            continue;
        };
        assert!(is_valid(&fitted.pattern, &Tolerances::altered()));
        women += 1;
        steps += fitted.steps.len();
        let mut missed = Vec::new();
        for (measure, wanted) in hers.measures() {
            let (Some(limit), Some(is)) =
                (limit(&measure, limits), fitted.pattern.measured(&measure))
            else {
                continue;
            };
            let miss = (is - wanted).abs();
            if miss > limit {
                missed.push(format!("{measure} {:+.1}", is - wanted));
                *beyond.entry(measure.to_string()).or_default() += 1;
            }
            misses.entry(measure.to_string()).or_default().push(miss);
        }
        within += usize::from(missed.is_empty());
        if !missed.is_empty() {
            named.push(format!("  {name}: {}", missed.join(", ")));
        }
    }
    tell(&format!(
        "{title}: {within} of {women} women within {:.0} mm (girths) and {:.0} mm (edges), {:.1} steps each",
        limits.0,
        limits.1,
        steps as f64 / f64::from(women)
    ));
    for (what, misses) in &mut misses {
        misses.sort_by(f64::total_cmp);
        let at = |share: f64| misses[((misses.len() - 1) as f64 * share) as usize];
        let over = beyond.get(what).copied().unwrap_or(0);
        tell(&format!(
            "  {what:<34} median {:5.2}, 95 % within {:5.2}, most {:6.2}, beyond {over}",
            at(0.5),
            at(0.95),
            at(1.0)
        ));
        assert!(
            over as f64 <= (0.05 * f64::from(women)).max(1.0),
            "{what} is off for {over} of {women}"
        );
    }
    named.iter().for_each(|line| tell(line));
    let most = if whole() {
        0.05 * f64::from(women)
    } else {
        1.0
    };
    assert!(named.len() as f64 <= most, "{} of {women}", named.len());
}

#[test]
fn a_size_fitted_to_a_woman_is_the_draft_for_her() {
    judge(&FitSettings::exact(), (GIRTH, EDGE), "every amount");
}

#[test]
fn with_amounts_that_a_fitter_bothers_with_it_is_nearly_so() {
    let usual = FitSettings::default();
    let near = usual.least_length + 1.0;
    judge(&usual, (near, near), "3 mm and more");
}

/// Nobody differs from herself.
#[test]
fn a_block_of_her_own_asks_for_nothing() {
    for (_, woman) in checked().into_iter().take(4) {
        let block = draft(&woman, &dress()).unwrap();
        let fitted = fit(
            &block,
            &dress(),
            (&woman, &woman),
            Unit::Mm,
            &FitSettings::default(),
        );
        let fitted = fitted.unwrap();
        assert!(fitted.steps.is_empty() && fitted.left.is_empty());
        assert_eq!(fitted.pattern, block);
    }
}

/// The steps written as requests of a job make the same pattern.
#[test]
fn the_steps_are_those_of_a_job() {
    let table = table();
    for (_, woman) in checked().iter().take(3) {
        let size = nearest_size(&table, woman).unwrap().chosen.size;
        let block = draft(table.body(&size).unwrap(), &dress()).unwrap();
        let (fitted, _) = both(&table, woman, &FitSettings::default()).unwrap();
        let chain: Vec<_> = fitted
            .steps
            .iter()
            .map(|s| s.request.alteration().unwrap())
            .collect();
        let again = blockwright::alterations::alter(&block, &chain).unwrap();
        assert_eq!(again.pattern, fitted.pattern);
        for step in &fitted.steps {
            let least = if step.request.name() == "shoulder_slope" {
                0.5
            } else {
                3.0
            };
            assert!(
                step.amount.abs() >= least,
                "{} {}",
                step.request.name(),
                step.amount
            );
            assert!(
                !step.asked.is_empty(),
                "{} is asked for",
                step.request.name()
            );
        }
    }
}
