//! The files read again by ezdxf, and measured against the pattern document by `reread.py`.

use super::files::{CASES, range, range_text, text};
use blockwright::allowance::Allowances;
use std::fs;
use std::path::Path;
use std::process::Command;

/// The python to read with, if it has ezdxf: `BLOCKWRIGHT_PYTHON`, or `python3`.
fn python() -> Option<String> {
    let python = std::env::var("BLOCKWRIGHT_PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let has = Command::new(&python).args(["-c", "import ezdxf"]).output();
    if has.is_ok_and(|output| output.status.success()) {
        return Some(python);
    }
    eprintln!(
        "SKIPPED: {python} has no ezdxf, DXF files were not read again; install it, or name \
         another python in BLOCKWRIGHT_PYTHON"
    );
    None
}

/// What the script says of a drawing and its document, and whether it found nothing wrong.
fn compared(python: &str, dxf: &str, json: &str) -> (bool, String) {
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let (drawing, document) = (folder.path().join("a.dxf"), folder.path().join("a.json"));
    fs::write(&drawing, dxf).unwrap();
    fs::write(&document, json).unwrap();
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/paper/exchange/reread.py");
    let output = Command::new(python)
        .arg("-B")
        .args([&script, &drawing, &document])
        .output()
        .unwrap();
    let told = String::from_utf8_lossy(&output.stdout).into_owned();
    let failed = String::from_utf8_lossy(&output.stderr);
    (output.status.success(), format!("{told}{failed}"))
}

#[test]
fn ezdxf_finds_every_piece_as_the_document_has_it() {
    let Some(python) = python() else { return };
    for case in &CASES {
        let outcome = case.outcome();
        let [dxf, json] = ["pattern.dxf", "pattern.json"].map(|name| text(&outcome, name));
        let (sound, told) = compared(&python, &dxf, &json);
        assert!(sound, "{}:\n{told}", case.name);
        let edges = outcome.pattern.pieces().iter();
        let edges: usize = edges.map(|p| p.outline().edges().len()).sum();
        let pieces = outcome.pattern.pieces().len();
        let counted = format!("{pieces} pieces, {edges} edges and ");
        assert!(told.starts_with(&counted), "{}: {told}", case.name);
    }
}

#[test]
fn ezdxf_finds_every_size_of_a_range() {
    let Some(python) = python() else { return };
    let widths = Allowances::usual().with("side_seam", 20.0).unwrap();
    for allowances in [None, Some(widths)] {
        let outcome = range(allowances);
        let [dxf, json] = ["range.dxf", "range.json"].map(|name| range_text(&outcome, name));
        let (sound, told) = compared(&python, &dxf, &json);
        assert!(sound && told.starts_with("15 pieces, "), "{told}");
    }
}

/// A script that finds nothing wrong with anything would prove nothing.
#[test]
fn the_script_sees_what_is_spoiled() {
    let Some(python) = python() else { return };
    let outcome = CASES[0].outcome();
    let [dxf, json] = ["pattern.dxf", "pattern.json"].map(|name| text(&outcome, name));
    for (from, to, wanted) in [
        (" 70\r\n1\r\n", " 70\r\n0\r\n", "boundary is open"),
        (
            "LINE\r\n  8\r\n7\r\n",
            "LINE\r\n  8\r\n6\r\n",
            "mirror line",
        ),
        (
            "POINT\r\n  8\r\n2\r\n",
            "POINT\r\n  8\r\n13\r\n",
            "without its point",
        ),
        ("Quantity: 1\r\n", "Quantity: 1,1\r\n", "quantity"),
        ("  2\r\nBODICE_BACK\r\n", "  2\r\nOTHER\r\n", "differ"),
    ] {
        let spoiled = dxf.replacen(from, to, 1);
        assert_ne!(spoiled, dxf, "{wanted}");
        let (sound, told) = compared(&python, &spoiled, &json);
        assert!(!sound && told.contains(wanted), "{wanted}: {told}");
    }
    // As if y had not been turned round: every piece comes out mirrored.
    let mut lines: Vec<String> = dxf.split("\r\n").map(str::to_owned).collect();
    for place in (0..lines.len() - 1).step_by(2) {
        if [" 20", " 21"].contains(&lines[place].as_str()) {
            let y: f64 = lines[place + 1].parse().unwrap();
            lines[place + 1] = format!("{:.4}", -y);
        }
    }
    let (sound, told) = compared(&python, &lines.join("\r\n"), &json);
    assert!(!sound && told.contains("does not run clockwise"), "{told}");
}
