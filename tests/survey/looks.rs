//! What a cutter would judge by eye, in numbers, over surveyed women, every block with an armscye
//! and every ease: armscye,
//! neck, shoulder, side seam, darts, waist line, sleeve cap. A sample, or everybody with
//! `BLOCKWRIGHT_WHOLE=1`; `BLOCKWRIGHT_WORST=<folder>` writes the ten drafts at the worse end of each
//! quantity there, to be looked at.

use super::tally::{FITS, Garment, Outcome, attempt};
use crate::support::survey::{body_of, sample, tell};
use blockwright::draft::Block;
use blockwright::drawing::{PatternLabels, pattern_sheet};
use blockwright::geometry::{Curve, Point, Vec2};
use blockwright::piece::{Apexes, Dart, EdgeName, EdgeRef, Pattern, Piece, Pressed};
use blockwright::render::svg;
use std::collections::BTreeMap;

/// Which end of a quantity a cutter would doubt.
#[derive(Clone, Copy, PartialEq)]
enum Worse {
    Low,
    High,
}

use Worse::{High, Low};

/// A quantity, its worse end, and what no draft of the survey passes there: values only ever made
/// tighter. Lengths in millimetres, angles in degrees.
const JUDGED: [(&str, Worse, f64); 16] = [
    ("armscye radius back", Low, 7.0),
    ("armscye radius front", Low, 11.5),
    ("armscye reach back", Low, 22.0),
    ("armscye reach front", Low, 35.0),
    ("neck depth of width", High, 1.7),
    ("neck radius front", Low, 12.5),
    ("shoulder front slope", High, 37.0),
    ("shoulder longer", High, 30.0),
    ("side radius back", Low, 45.0),
    ("side bend at bust dart", High, 36.0),
    ("side slant at underarm", High, 26.0),
    ("bust dart angle", High, 35.0),
    ("waist dart steepness", High, 0.96),
    ("waist edge rise", High, 35.0),
    ("cap of armscye", High, 0.36),
    ("cap of armscye low", Low, 0.175),
];

fn edge<'p>(piece: &'p Piece, name: &EdgeName) -> Option<&'p Curve> {
    Some(piece.outline().edge(name)?.curve())
}

/// Directions along a curve every two millimetres.
fn headings(curve: &Curve, from: f64, to: f64) -> Vec<Vec2> {
    let count = ((to - from) / 2.0).ceil().max(1.0) as u32;
    let at = |i: u32| from + (to - from) * f64::from(i) / f64::from(count);
    let headings = (0..=count).filter_map(|i| curve.point_at(at(i)).ok());
    headings.map(|(_, way)| way).collect()
}

fn turn(one: Vec2, other: Vec2) -> f64 {
    one.cross(other).atan2(one.dot(other))
}

/// The smallest radius about which a curve bends over 8 mm, in millimetres.
fn radius(curve: &Curve) -> f64 {
    let ways = headings(curve, 0.0, curve.length());
    let sharpest = ways
        .windows(5)
        .map(|w| turn(w[0], w[4]).abs())
        .fold(1e-6, f64::max);
    8.0 / sharpest
}

/// By how many degrees an edge turns over 60 mm on either side of a dart's mouth, the more of both.
fn bend_beside(curve: &Curve, dart: &Dart) -> f64 {
    let [a, b] = dart.legs.map(|leg| curve.nearest(leg).1);
    let (first, last) = (a.min(b), a.max(b));
    let bend = |from: f64, to: f64| {
        let ways = headings(curve, from.max(0.0), to.min(curve.length()));
        let turns = ways.windows(2).map(|w| turn(w[0], w[1]));
        turns.sum::<f64>().abs().to_degrees()
    };
    bend(first - 60.0, first - 0.1).max(bend(last + 0.1, last + 60.0))
}

/// The quantities of a pattern, in the order of `JUDGED`; none where it lacks the part.
fn judged(pattern: &Pattern, shoulder_length: f64) -> Vec<(&'static str, f64)> {
    let mut found = Vec::new();
    let (Some(back), Some(front)) = (pattern.piece("back"), pattern.piece("front")) else {
        return found;
    };
    for (piece, radius_name, reach_name) in [
        (back, "armscye radius back", "armscye reach back"),
        (front, "armscye radius front", "armscye reach front"),
    ] {
        let armscye = edge(piece, &EdgeName::ARMSCYE).expect("an armscye");
        found.push((radius_name, radius(armscye)));
        let width = piece.line("width").expect("a width line").curve.end();
        found.push((reach_name, armscye.end().x - width.x));
    }
    let neck = edge(front, &EdgeName::NECKLINE).expect("a neckline");
    let size = neck.bounds();
    found.push(("neck depth of width", size.height() / size.width()));
    found.push(("neck radius front", radius(neck)));
    let shoulder = edge(front, &EdgeName::SHOULDER).expect("a shoulder");
    let falls = shoulder.end() - shoulder.start();
    found.push((
        "shoulder front slope",
        falls.y.atan2(falls.x.abs()).to_degrees(),
    ));
    found.push((
        "shoulder longer",
        (shoulder.length() - shoulder_length).abs(),
    ));
    let side = edge(back, &EdgeName::SIDE_SEAM).expect("a side seam");
    found.push(("side radius back", radius(side).min(9999.0)));
    let leaves = side.start_direction();
    found.push((
        "side slant at underarm",
        leaves.x.abs().atan2(leaves.y).to_degrees(),
    ));
    if let Some(dart) = front.dart("bust") {
        let side = edge(front, &EdgeName::SIDE_SEAM).expect("a side seam");
        found.push(("side bend at bust dart", bend_beside(side, dart)));
        found.push(("bust dart angle", front.dart_angle(dart).to_degrees()));
    }
    let darts = [back, front].into_iter().filter_map(|p| p.dart("waist"));
    let steep = darts.map(|d| d.intake() / d.legs[0].midpoint(d.legs[1]).distance(d.apex()));
    found.extend(
        steep
            .reduce(f64::max)
            .map(|most| ("waist dart steepness", most)),
    );
    let waists = [back, front].map(|p| edge(p, &EdgeName::WAIST).map(|w| w.bounds().height()));
    found.extend(
        waists
            .into_iter()
            .flatten()
            .reduce(f64::max)
            .map(|most| ("waist edge rise", most)),
    );
    if let Some(sleeve) = pattern.piece("sleeve") {
        let armscye: f64 = ["back", "front"]
            .into_iter()
            .filter_map(|piece| pattern.seam_length(&EdgeRef::new(piece, EdgeName::ARMSCYE)))
            .sum();
        let cap = edge(sleeve, &EdgeName::SLEEVE_CAP).expect("a cap");
        let of = -cap.bounds().y0 / armscye;
        found.extend([("cap of armscye", of), ("cap of armscye low", of)]);
    }
    found
}

/// One draft's value and whose it is.
struct Value {
    value: f64,
    who: String,
    garment: Garment,
    fit: usize,
}

#[test]
fn a_cutter_would_believe_the_worst() {
    let table = sample(24, 47);
    let blocks = [Block::Bodice, Block::Dress, Block::Tunic, Block::Shirt];
    let mut all: BTreeMap<&str, Vec<Value>> = BTreeMap::new();
    for garment in blocks.map(Garment::sleeved) {
        for (fit, ease) in FITS.into_iter().enumerate() {
            for row in &table.rows {
                let made = attempt(garment, &body_of(row), ease);
                let Outcome::Drafted(pattern, _) = made else {
                    continue;
                };
                for (name, value) in judged(&pattern, row.number("shoulder_length")) {
                    assert!(value.is_finite(), "{name} of {}", row.text("id"));
                    all.entry(name).or_default().push(Value {
                        value,
                        who: row.text("id").to_owned(),
                        garment,
                        fit,
                    });
                }
            }
        }
    }
    let mut faults = Vec::new();
    for (name, worse, most) in JUDGED {
        let values = all.get_mut(name).expect("a quantity of every block");
        values.sort_by(|a, b| a.value.total_cmp(&b.value));
        let at = |share: f64| values[((values.len() - 1) as f64 * share).round() as usize].value;
        tell(&format!(
            "{name:<24} least {:.2}  5 % {:.2}  median {:.2}  95 % {:.2}  most {:.2}",
            at(0.0),
            at(0.05),
            at(0.5),
            at(0.95),
            at(1.0)
        ));
        if worse == High {
            values.reverse();
        }
        // Each woman once, at her worst.
        let mut worst: Vec<&Value> = Vec::new();
        for value in values.iter() {
            if worst.len() < 10 && worst.iter().all(|w| w.who != value.who) {
                worst.push(value);
            }
        }
        let message = worst.iter().map(|v| {
            let fit = FITS[v.fit].name();
            format!("{} {} {fit} {:.2}", v.who, v.garment.block.name(), v.value)
        });
        tell(&format!("    {}", message.collect::<Vec<_>>().join("; ")));
        let first = worst[0];
        let past = match worse {
            High => first.value > most,
            Low => first.value < most,
        };
        if past {
            faults.push(format!("{name}: {:.2} for {}", first.value, first.who));
        }
        write_out(name, &worst, &table);
    }
    assert!(faults.is_empty(), "\n  {}\n", faults.join("\n  "));
}

/// Writes drafts of women into the folder for the worst, if there is one.
fn write_out(name: &str, worst: &[&Value], table: &crate::support::survey::Table) {
    let Some(folder) = std::env::var_os("BLOCKWRIGHT_WORST").map(std::path::PathBuf::from) else {
        return;
    };
    std::fs::create_dir_all(&folder).expect("a folder");
    for (rank, value) in worst.iter().enumerate() {
        let row = table.rows.iter().find(|r| r.text("id") == value.who);
        let body = body_of(row.expect("a woman"));
        let Outcome::Drafted(pattern, _) = attempt(value.garment, &body, FITS[value.fit]) else {
            continue;
        };
        let title = format!("{name} {:.2}: {}", value.value, value.who);
        let labels = PatternLabels::new(title);
        let sheet = pattern_sheet(&pattern, &labels).expect("a sheet");
        let picture = svg::render(&sheet);
        let file = format!("{}-{rank}.svg", name.replace(' ', "-"));
        std::fs::write(folder.join(file), picture).expect("a picture");
    }
}

/// A circle's radius is found, and a dart's bend.
#[test]
fn quantities_are_measured() {
    let k = 0.552_284_75;
    let r = 40.0;
    let quarter = Curve::cubic(
        Point::new(r, 0.0),
        Point::new(r, k * r),
        Point::new(k * r, r),
        Point::new(0.0, r),
    )
    .expect("an arc");
    assert!((radius(&quarter) - r).abs() < 1.0);
    // A dart a third of the way along: less than 60 mm of the edge lie on either side of it.
    let long = quarter.length();
    let leg = |at: f64| quarter.point_at(at).expect("on the arc").0;
    let dart = Dart {
        name: "bust".to_owned(),
        edge: Some(EdgeName::SIDE_SEAM),
        legs: [leg(0.3 * long), leg(0.4 * long)],
        apexes: Apexes::One(Point::ORIGIN),
        pressed: Pressed::TowardFirstLeg,
    };
    // An arc turns by its share of the right angle: six tenths of it lie beyond the dart.
    assert!((bend_beside(&quarter, &dart) - 0.6 * 90.0).abs() < 0.5);
}
