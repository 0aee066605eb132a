//! The figures that this program prints: they are right, and they are printed.

use crate::support::statistics::{Statistics, correlation, table};
use crate::support::survey::{sample, whole, women};
use std::process::Command;

#[test]
fn a_table_says_how_values_are_distributed() {
    let values: Vec<f64> = (0..=100).map(f64::from).collect();
    let row = Statistics::of(&values);
    assert_eq!((row.count(), row.mean), (101, 50.0));
    assert!((row.spread - 29.300_17).abs() < 1e-5, "{}", row.spread);
    let quantiles = [0.0, 0.05, 0.5, 0.995, 1.0].map(|share| row.quantile(share));
    assert_eq!(quantiles, [0.0, 5.0, 50.0, 99.5, 100.0]);
    assert!((row.share_within(0.0, 50.0) - 51.0 / 101.0).abs() < 1e-12);
    let text = table("counted", &[("to a hundred".to_owned(), row)]);
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 2);
    assert!(lines[0].starts_with("counted       count "), "{text}");
    assert_eq!(lines[0].len(), lines[1].len(), "{text}");
    assert!(
        lines[1].starts_with("to a hundred    101     50.00    29.30"),
        "{text}"
    );
    let doubled: Vec<f64> = values.iter().map(|v| 3.0 - 2.0 * v).collect();
    assert!((correlation(&values, &doubled) + 1.0).abs() < 1e-12);
}

#[test]
fn a_sample_is_the_same_on_every_run_and_in_order() {
    let ids = |seed| -> Vec<String> {
        let rows = sample(200, seed).rows;
        rows.iter().map(|row| row.text("id").to_owned()).collect()
    };
    let (one, again, other) = (ids(1), ids(1), ids(2));
    assert_eq!(one, again);
    if whole() {
        assert_eq!(one.len(), 1104);
        return;
    }
    assert_eq!((one.len(), other.len()), (200, 200));
    assert_ne!(one, other);
    let all = women().rows;
    let place = |id: &String| all.iter().position(|row| row.text("id") == id);
    let places: Vec<usize> = one.iter().filter_map(place).collect();
    assert!(places.len() == 200 && places.is_sorted());
}

/// What a cutter reads beside pass and fail gets past the capture of the test runner.
#[test]
fn figures_are_printed_when_a_test_passes() {
    let out = Command::new(std::env::current_exe().expect("this program"))
        .args(["--exact", "armscye::follows_the_armscye_of_the_woman"])
        .output()
        .expect("it runs");
    let said = String::from_utf8_lossy(&out.stderr);
    assert!(said.contains("armscye, regular: "), "{said}");
    assert!(
        said.contains(" r = 0.") && said.contains("spread about it"),
        "{said}"
    );
}
