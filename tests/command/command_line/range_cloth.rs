//! The cloth that every size of a range needs.

use crate::support::command::Place;
use serde_json::Value;

const SIZES: [&str; 3] = ["36", "40", "44"];

/// A range whose girths grow by the same step.
fn place(unit: &str, girths: [[f64; 3]; 3], height: f64) -> Place {
    let place = Place::with_job("title: Dress\nblock: dress\nsleeve: long\nallowance: 10 mm\n");
    let mut table = format!("name: Chorus\nunit: {unit}\ncommon: {{height: {height}}}\nsizes:\n");
    for (size, [bust, waist, hip]) in SIZES.iter().zip(girths) {
        table.push_str(&format!(
            "  '{size}': {{bust_girth: {bust}, waist_girth: {waist}, hip_girth: {hip}}}\n"
        ));
    }
    place.write("table.yaml", table);
    place
}

/// The widths of the chart, and what it says each size needs.
fn cloth(place: &Place, unit: &str) -> Vec<(String, Vec<f64>)> {
    place
        .run(&["grade", "job.yaml", "table.yaml", "-o", "out"])
        .done();
    let chart = std::fs::read_to_string(place.path().join("out/size-chart.csv")).unwrap();
    let rows = chart.lines().filter_map(|line| {
        let (what, values) = line
            .strip_prefix("Cloth to buy,")?
            .split_once(&format!(",{unit},"))?;
        let width = what.strip_suffix(" wide folded (quick lay)")?.to_owned();
        let values = values.split(',').map(|value| value.parse().unwrap());
        Some((width, values.collect()))
    });
    rows.collect()
}

/// What the command `lay` says of one size, in millimetres.
fn laid(place: &Place, size: &str, width: &str) -> f64 {
    let lay = "lay job.yaml --table table.yaml --folded --seed 1 --rounds 60 --json --force -o lay";
    let more = ["--size", size, "--width", width];
    let args: Vec<&str> = lay.split(' ').chain(more).collect();
    let report: Value = serde_json::from_str(&place.run(&args).done()).unwrap();
    report["length_to_buy"].as_f64().unwrap()
}

#[test]
fn every_size_has_its_cloth_in_usual_widths_as_lay_says() {
    let girths = [[84.0, 66.0, 91.0], [92.0, 74.0, 99.0], [100.0, 82.0, 107.0]];
    let place = place("cm", girths, 168.0);
    let rows = cloth(&place, "cm");
    let widths: Vec<&str> = rows.iter().map(|(width, _)| width.as_str()).collect();
    assert_eq!(widths, ["115 cm", "140 cm", "150 cm"]);
    assert!(rows.iter().all(|(_, needed)| needed.len() == SIZES.len()));
    // A larger size needs no less, and a wider cloth no more; at least one needs less.
    for (width, needed) in &rows {
        assert!(needed.is_sorted(), "{width}: {needed:?}");
    }
    for pair in rows.windows(2) {
        let fewer = pair[0].1.iter().zip(&pair[1].1);
        assert!(
            fewer.into_iter().all(|(narrow, wide)| wide <= narrow),
            "{rows:?}"
        );
    }
    assert_ne!(rows[0].1, rows[2].1);
    let mut least = f64::INFINITY;
    for (width, needed) in &rows {
        least = least.min(laid(&place, "40", &width.replace(' ', "")));
        assert_eq!(10.0 * needed[1], least, "{width}");
    }
    let page = std::fs::read_to_string(place.path().join("out/size-chart.html")).unwrap();
    assert!(page.contains("Cloth to buy, folded lengthwise"), "{page}");
    assert!(
        page.contains("quick lay needs (60 rounds, seed 1)"),
        "{page}"
    );
    assert!(page.contains("Seam allowances are included"), "{page}");
    assert!(
        page.contains(&format!("<td>{} cm</td>", rows[0].1[0])),
        "{page}"
    );
}

#[test]
fn cloth_for_a_table_in_inches_is_in_eighths_of_a_yard() {
    let girths = [[34.0, 27.0, 37.0], [36.0, 29.0, 39.0], [38.0, 31.0, 41.0]];
    let place = place("in", girths, 66.0);
    let rows = cloth(&place, "yd");
    let widths: Vec<&str> = rows.iter().map(|(width, _)| width.as_str()).collect();
    assert_eq!(widths, ["45 in", "55 in", "60 in"]);
    for yards in rows.iter().flat_map(|(_, needed)| needed) {
        assert_eq!((8.0 * yards).fract(), 0.0, "{rows:?}");
    }
    let said = laid(&place, "44", "45in") - 914.4 * rows[0].1[2];
    assert!(said.abs() < 0.001, "{said} {rows:?}");
    let page = std::fs::read_to_string(place.path().join("out/size-chart.html")).unwrap();
    assert!(
        page.contains("/8 yd</td>") || page.contains("/4 yd</td>"),
        "{page}"
    );
}
