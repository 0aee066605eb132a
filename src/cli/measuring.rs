//! The command `measurements`.

use std::path::Path;

use blockwright::job::PaperSize;
use blockwright::measurements::{
    Body, CatalogueEntry, FileErrors, MeasurementFile, MeasurementSet, SetReport, catalogue_text,
    likely_required,
};
use blockwright::measuring_form::measuring_form;
use blockwright::render::pdf::PaperFormat;
use blockwright::units::Unit;
use serde::Serialize;

use crate::whole_file::beside;

use super::done::as_json;
use super::problem::{Failure, Problem, read_argument};
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

/// What came of writing a form.
#[derive(Debug, Serialize)]
struct FormDone<'a> {
    status: &'static str,
    file: &'a str,
}

/// Writes the form to take measurements with.
pub(super) fn form(
    set: Option<&Path>,
    unit: Option<Unit>,
    (output, paper, force): (&Path, Option<PaperSize>, bool),
    json: bool,
) -> Result<String, Failure> {
    let set = set.map(read_set).transpose()?;
    let body = match &set {
        Some(set) => set.body().clone(),
        // Nobody yet: a body as the survey has it on the mean.
        None => Body::from_taken(likely_required(&[]).iter().map(|(of, m)| (*of, m.value)))
            .map_err(|error| Failure::wrong(Problem::of(&error)))?,
    };
    let unit = unit
        .or(set.as_ref().map(MeasurementSet::unit))
        .unwrap_or(Unit::Cm);
    let name = set.as_ref().map(MeasurementSet::name);
    let paper = match paper {
        Some(PaperSize::Letter) => PaperFormat::Letter,
        _ => PaperFormat::A4,
    };
    let bytes = measuring_form(&body, name, unit, paper)
        .map_err(|error| Failure::wrong(Problem::of(&error)))?;
    if output.exists() && !force {
        let text = format!(
            "{} is there already; give another name, or --force to replace it",
            output.display()
        );
        return Err(Failure::wrong(Problem::new("file_exists", text)));
    }
    write_whole(output, &bytes).map_err(|error| {
        let text = format!(
            "the form cannot be written to {}: {error}",
            output.display()
        );
        Failure::wrong(Problem::new("output", text))
    })?;
    let file = output.to_string_lossy();
    Ok(if json {
        as_json(&FormDone {
            status: "ok",
            file: &file,
        })
    } else {
        format!("Written: {file}\n")
    })
}

/// Writes a file whole or not at all.
fn write_whole(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let folder = path
        .parent()
        .filter(|folder| !folder.as_os_str().is_empty());
    let file = beside(folder.unwrap_or(Path::new(".")), bytes)?;
    file.persist(path).map_err(|error| error.error)?;
    Ok(())
}

fn read_set(path: &Path) -> Result<MeasurementSet, Failure> {
    let file = read_argument(path)?;
    MeasurementSet::parse(file.text()).map_err(|errors| Failure::of_file(&file, &errors))
}
