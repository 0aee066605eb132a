//! The command `measurements`.

use std::path::Path;

use blockwright::measurements::{
    CatalogueEntry, FileErrors, MeasurementFile, MeasurementSet, SetReport, catalogue_text,
};
use blockwright::units::Unit;
use serde::Serialize;

use super::done::as_json;
use super::problem::{Failure, read_argument};
use super::source_file::SourceFile;

/// The catalogue of measurements.
pub(super) fn catalogue(unit: Option<Unit>, json: bool) -> Result<String, Failure> {
    if json {
        return Ok(as_json(&CatalogueEntry::all()));
    }
    Ok(catalogue_text(unit.unwrap_or(Unit::Cm)))
}

/// A size table as JSON: each size is reported as a set is, under its label.
#[derive(Debug, Serialize)]
struct Table<'a> {
    name: &'a str,
    unit: Unit,
    sizes: &'a [SetReport],
}

/// The report of a set or of every size of a table.
pub(super) fn file(path: &Path, unit: Option<Unit>, json: bool) -> Result<String, Failure> {
    let file = read_argument(path)?;
    report(&file, unit, json).map_err(|errors| Failure::of_file(&file, &errors))
}

fn report(file: &SourceFile, unit: Option<Unit>, json: bool) -> Result<String, FileErrors> {
    let table = match MeasurementFile::parse(file.text())? {
        MeasurementFile::Table(table) => table,
        MeasurementFile::Set(set) => {
            let report = SetReport::new(&set).in_unit(unit.unwrap_or(set.unit()));
            return Ok(if json {
                as_json(&report)
            } else {
                report.text()
            });
        }
    };
    let unit = unit.unwrap_or(table.unit());
    let sizes: Vec<SetReport> = table
        .sizes()
        .iter()
        .map(|size| {
            let set = MeasurementSet::new(size.label(), unit, size.body().clone());
            SetReport::new(&set)
        })
        .collect();
    if json {
        return Ok(as_json(&Table {
            name: table.name(),
            unit,
            sizes: &sizes,
        }));
    }
    let texts: Vec<String> = sizes
        .iter()
        .map(|size| format!("Size {}", size.text()))
        .collect();
    Ok(format!("{}\n\n{}", table.name(), texts.join("\n")))
}
