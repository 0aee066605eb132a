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

/// What the script says of each drawing and its document, and whether it found nothing wrong. One
/// run reads them all: to load the library takes longer than to read a file.
fn compared(python: &str, pairs: &[(String, String)]) -> Vec<(bool, String)> {
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/paper/exchange/reread.py");
    let mut command = Command::new(python);
    command.arg("-B").arg(script);
    for (number, (dxf, json)) in pairs.iter().enumerate() {
        for (ending, text) in [("dxf", dxf), ("json", json)] {
            let file = folder.path().join(format!("{number}.{ending}"));
            fs::write(&file, text).unwrap();
            command.arg(file);
        }
    }
    let output = command.output().unwrap();
    let failed = String::from_utf8_lossy(&output.stderr);
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    let mut found = Vec::new();
    let mut lines = String::new();
    for line in said.lines() {
        if let Some(status) = line.strip_prefix("-- status ") {
            found.push((status == "0", std::mem::take(&mut lines)));
        } else {
            lines.push_str(line);
            lines.push('\n');
        }
    }
    assert_eq!(found.len(), pairs.len(), "{said}{failed}");
    found
}

#[test]
fn ezdxf_finds_every_piece_as_the_document_has_it() {
    let Some(python) = python() else { return };
    let outcomes: Vec<_> = CASES.iter().map(|case| (case, case.outcome())).collect();
    let pairs: Vec<_> = outcomes
        .iter()
        .map(|(_, outcome)| (text(outcome, "pattern.dxf"), text(outcome, "pattern.json")))
        .collect();
    for ((case, outcome), (sound, said)) in outcomes.iter().zip(compared(&python, &pairs)) {
        assert!(sound, "{}:\n{said}", case.name);
        let edges = outcome.pattern.pieces().iter();
        let edges: usize = edges.map(|p| p.outline().edges().len()).sum();
        let pieces = outcome.pattern.pieces().len();
        let counted = format!("{pieces} pieces, {edges} edges and ");
        assert!(said.starts_with(&counted), "{}: {said}", case.name);
    }
}

#[test]
fn ezdxf_finds_every_size_of_a_range() {
    let Some(python) = python() else { return };
    let widths = Allowances::usual().with("side_seam", 20.0).unwrap();
    let pairs: Vec<_> = [None, Some(widths)]
        .into_iter()
        .map(|allowances| {
            let outcome = range(allowances);
            (
                range_text(&outcome, "range.dxf"),
                range_text(&outcome, "range.json"),
            )
        })
        .collect();
    for (sound, said) in compared(&python, &pairs) {
        assert!(sound && said.starts_with("15 pieces, "), "{said}");
    }
}

/// A script that finds nothing wrong with anything would prove nothing.
#[test]
fn the_script_sees_what_is_spoiled() {
    let Some(python) = python() else { return };
    let outcome = CASES[0].outcome();
    let [dxf, json] = ["pattern.dxf", "pattern.json"].map(|name| text(&outcome, name));
    let mut cases = Vec::new();
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
        cases.push((spoiled, wanted));
    }
    // As if y had not been turned round: every piece comes out mirrored.
    let mut lines: Vec<String> = dxf.split("\r\n").map(str::to_owned).collect();
    for place in (0..lines.len() - 1).step_by(2) {
        if [" 20", " 21"].contains(&lines[place].as_str()) {
            let y: f64 = lines[place + 1].parse().unwrap();
            lines[place + 1] = format!("{:.4}", -y);
        }
    }
    cases.push((lines.join("\r\n"), "does not run clockwise"));
    let pairs: Vec<_> = cases
        .iter()
        .map(|(spoiled, _)| (spoiled.clone(), json.clone()))
        .collect();
    for ((_, wanted), (sound, said)) in cases.iter().zip(compared(&python, &pairs)) {
        assert!(!sound && said.contains(wanted), "{wanted}: {said}");
    }
}
