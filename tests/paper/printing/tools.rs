//! Files, the tools of the system, and where things stand on a page.

use std::path::{Path, PathBuf};
use std::process::Command;

use blockwright::drawing::Drawing;
use blockwright::render::pdf::SHEET_MARGIN_MM;
use kurbo::{Point, Rect, Size, Vec2};
use lopdf::Object;

/// A folder for one test's files; what is left there can be looked at.
pub(crate) fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// Whether a tool of the system can be run; says loudly when it cannot.
pub(crate) fn have(tool: &str) -> bool {
    let found = Command::new(tool).arg("--help").output().is_ok();
    if !found {
        eprintln!("SKIPPED: {tool} is not installed, this part of the test did not run");
    }
    found
}

pub(crate) fn run(command: &mut Command) -> String {
    let output = command.output().unwrap();
    let errors = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(
        output.status.success() && errors.is_empty(),
        "{command:?}: {errors}"
    );
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// The words on a page, as a viewer finds them.
pub(crate) fn words(pdf: &Path, page: usize) -> String {
    let number = page.to_string();
    run(Command::new("pdftotext")
        .args(["-raw", "-f", &number, "-l", &number])
        .arg(pdf)
        .arg("-"))
}

/// The file with the marks of the pages switched off, as in a viewer, so that the pattern alone is
/// seen.
pub(crate) fn without_marks(pdf: &[u8]) -> Vec<u8> {
    let mut document = lopdf::Document::load_mem(pdf).unwrap();
    let catalog = document.catalog_mut().unwrap();
    let layers = catalog
        .get_mut(b"OCProperties")
        .unwrap()
        .as_dict_mut()
        .unwrap();
    let marks = layers
        .get(b"OCGs")
        .unwrap()
        .as_array()
        .unwrap()
        .last()
        .unwrap()
        .clone();
    let default = layers.get_mut(b"D").unwrap().as_dict_mut().unwrap();
    default.set("OFF", Object::Array(vec![marks]));
    let mut bytes = Vec::new();
    document.save_to(&mut bytes).unwrap();
    bytes
}

pub(crate) fn write(folder: &Path, name: &str, bytes: &[u8]) -> PathBuf {
    let path = folder.join(name);
    std::fs::write(&path, bytes).unwrap();
    path
}

pub(crate) fn whole(size: Size) -> Rect {
    Rect::from_origin_size(Point::ZERO, size)
}

/// The shift from the drawing's mm to those of the sheet.
pub(crate) fn sheet_shift(drawing: &Drawing) -> Vec2 {
    Point::new(SHEET_MARGIN_MM, SHEET_MARGIN_MM) - drawing.bounds().expand().origin()
}
