//! What the tests of this folder share: bodies, files, published tables.

pub use crate::support::bodies::body;
use crate::support::bodies::repository_file;
use blockwright::measurements::{Body, Measurement as M, Source};
use blockwright::units::{Length, Unit};

pub fn spread(body: &Body, measurement: M) -> f64 {
    match body.get(measurement).expect("an estimate").source {
        Source::Estimated { spread } => spread,
        // Fails every comparison: the test asked for the spread of a taken value.
        Source::Taken => f64::NAN,
    }
}

pub fn set_file(name: &str) -> String {
    repository_file(&format!("measurement-sets/{name}"))
}

/// ASTM D5585-11e1, part of table 1 as shown on the publisher's page (read): inches, and
/// the millimetres they round to.
pub const D5585_BUST: [(&str, f64); 12] = [
    ("31 1/8", 791.0),
    ("31 3/4", 806.0),
    ("33", 838.0),
    ("34 1/8", 867.0),
    ("35 1/4", 895.0),
    ("36 1/4", 921.0),
    ("37 1/4", 946.0),
    ("38 3/4", 984.0),
    ("40 3/8", 1026.0),
    ("42 1/8", 1070.0),
    ("44", 1118.0),
    ("46", 1168.0),
];
pub const D5585_NECK_BASE: [&str; 12] = [
    "13 1/4", "13 1/2", "13 3/4", "14", "14 1/4", "14 5/8", "14 7/8", "15 1/8", "15 1/2", "15 3/4",
    "16", "16 3/8",
];
pub const D5585_UNDERBUST: [&str; 12] = [
    "25 3/4", "26 1/2", "27 1/4", "28", "29", "30", "31", "32 1/2", "34", "35 3/4", "37 5/8",
    "39 5/8",
];
pub const D5585_UPPER_CHEST: [&str; 12] = [
    "31 3/4", "32 1/4", "33 1/4", "34 1/8", "35", "35 7/8", "36 3/4", "38", "39 1/4", "40 5/8",
    "42 1/4", "43 7/8",
];
pub const D5585_WAIST_CURVY: [&str; 12] = [
    "23 7/8", "24 5/8", "25 3/8", "26 1/8", "27", "28", "29", "30 3/4", "32 1/2", "34 1/2",
    "36 3/4", "39",
];
pub const D5585_WAIST_STRAIGHT: [&str; 12] = [
    "25 3/8", "26 1/8", "26 7/8", "27 5/8", "28 1/2", "29 1/2", "30 1/2", "32 1/4", "34", "36",
    "38 1/4", "40 1/2",
];

pub fn inches(text: &str) -> f64 {
    Length::parse(text, Some(Unit::In)).expect("inches").mm()
}
