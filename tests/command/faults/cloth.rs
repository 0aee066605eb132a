//! Cloth and searches that cannot be.

use super::files::place;
use super::guard::refused;

#[test]
fn cloth_and_searches_that_cannot_be_are_refused_at_once() {
    let place = place();
    let lay = |more: &[&str]| refused(&place, &[&["lay", "job.yaml", "-o", "out"], more].concat());
    for width in [
        "0", "0cm", "-5", "-5cm", "=-5cm", "1e300", "1e300cm", "1e999m", "nan", "nancm", "inf",
        "inf m", "", "140 ells", "1e-300mm",
    ] {
        let message = lay(&[&format!("--width={width}"), "--seed", "1"]);
        assert!(
            message.contains("width") || message.contains(" mm"),
            "{width}: {message}"
        );
    }
    for more in [
        "--seconds=nan",
        "--seconds=0",
        "--seconds=-1",
        "--seconds=1e9",
        "--seconds=99999999999999999999",
        "--rounds=4294967295",
        "--rounds=1000000001",
        "--rounds=-1",
        "--rounds=nan",
        "--seed=-1",
        "--seed=1e3",
        "--seed=18446744073709551616",
        "--gap=nan",
        "--gap=1e300m",
        "--gap=-1mm",
    ] {
        let message = lay(&["--width", "140cm", more]);
        let name = more.split('=').next().unwrap_or_default();
        assert!(
            message.contains(name.trim_start_matches('-')),
            "{more}: {message}"
        );
    }
}

#[test]
fn numbers_of_the_other_commands_are_refused_too() {
    let place = place();
    for args in [
        &[
            "batch",
            "job.yaml",
            "people.csv",
            "-o",
            "out",
            "--threads",
            "0",
        ][..],
        &[
            "batch",
            "job.yaml",
            "people.csv",
            "-o",
            "out",
            "--threads",
            "100000",
        ],
        &["draft", "job.yaml", "-o", "out", "--paper", "../a4"],
        &[
            "grade",
            "job.yaml",
            "table.yaml",
            "-o",
            "out",
            "--size",
            "../../x",
        ],
        &[
            "grade",
            "job.yaml",
            "table.yaml",
            "-o",
            "out",
            "--align",
            "\u{1b}[2J",
        ],
        &["measurements", "--unit", "ells"],
    ] {
        refused(&place, args);
    }
}
