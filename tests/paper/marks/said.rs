//! What a cutter looks for on a piece: the centres, the hems, how large the garment is, where a dart
//! is snipped and an opening stops; and balance lines that leave open darts alone.

use blockwright::draft::{Block, draft};
use blockwright::drawing::{PatternLabels, pattern_sheet};
use blockwright::measurements::Measurement;
use blockwright::piece::{Apexes, EdgeRole, Pattern};
use blockwright::units::Unit;
use geo::{Area, BooleanOps, Line, LineString, MultiLineString, Polygon};
use kurbo::Point;

use super::sheet::{Kind, Sheet};
use super::{set, usual, with_sleeve};

fn drafted(block: Block, wearer: &str) -> Pattern {
    draft(set(wearer).body(), &with_sleeve(block)).unwrap()
}

#[test]
fn centres_hems_snips_and_stops_are_marked() {
    for wearer in ["ines", "odile", "tilde"] {
        for block in Block::ALL {
            let pattern = drafted(block, wearer);
            let sheet = Sheet::of(&pattern_sheet(&pattern, &usual()).unwrap());
            let times = |text: &str| sheet.words.iter().filter(|w| w.text == text).count();
            let marks = |kind: Kind| sheet.strokes.iter().filter(|s| s.kind == kind).count();
            let edges = || pattern.pieces().iter().flat_map(|p| p.outline().edges());
            let named = |name: &str| edges().filter(|e| e.name().as_str() == name).count();
            let what = format!("{} for {wearer}", block.name());
            assert!(
                named("centre_back") > 0 && named("centre_front") > 0,
                "{what}"
            );
            assert_eq!(times("CENTRE BACK"), named("centre_back"), "{what}");
            assert_eq!(times("CENTRE FRONT"), named("centre_front"), "{what}");
            let hems = edges().filter(|e| e.role() == EdgeRole::Hem).count();
            let said = sheet
                .words
                .iter()
                .filter(|w| w.text.starts_with("hem"))
                .count();
            assert_eq!(said, hems, "{what}");
            let open: usize = pattern
                .pieces()
                .iter()
                .flat_map(|p| p.darts())
                .filter(|d| d.edge.is_some())
                .count();
            let cuts: usize = pattern
                .pieces()
                .iter()
                .flat_map(|p| p.notches())
                .map(|n| n.cuts().len())
                .sum();
            assert_eq!(marks(Kind::Notch), cuts + 2 * open, "{what}: snips");
            let zips = |name: &str| {
                let notches = pattern.pieces().iter().flat_map(|p| p.notches());
                notches.filter(|n| n.name == name).count()
            };
            assert_eq!(times("zip starts here"), zips("zip top"), "{what}");
            assert_eq!(times("zip ends here"), zips("zip end"), "{what}");
            assert_eq!(
                marks(Kind::Stop),
                zips("zip top") + zips("zip end"),
                "{what}"
            );
            let points = || pattern.pieces().iter().flat_map(|p| p.points());
            let busts = points().filter(|p| p.name == "bust_point").count();
            assert_eq!(marks(Kind::Ring), busts, "{what}");
            let slits = points().filter(|p| p.name == "wrist_slit_end").count();
            assert_eq!(marks(Kind::Slit), slits, "{what}");
        }
    }
}

/// What is written along a line is the body's girth and its ease, in the unit of the labels.
#[test]
fn girths_are_written_as_they_will_be_sewn() {
    let pattern = drafted(Block::Dress, "ines");
    let body = set("ines").body().value(Measurement::BustGirth);
    let bust = pattern.girths().iter().find(|g| g.name == "bust").unwrap();
    assert!((bust.body - body).abs() < 1e-6);
    let finished = body + bust.ease;
    for (unit, length) in [
        (Unit::Mm, format!("{finished:.0} mm")),
        (Unit::Cm, format!("{} cm", (finished).round() / 10.0)),
    ] {
        let labels = PatternLabels { unit, ..usual() };
        let sheet = Sheet::of(&pattern_sheet(&pattern, &labels).unwrap());
        let words = format!("underarm line · finished bust {length}");
        let times = sheet.words.iter().filter(|w| w.text == words).count();
        assert_eq!(times, 2, "{words}");
    }
    let labels = PatternLabels {
        unit: Unit::In,
        ..usual()
    };
    let sheet = Sheet::of(&pattern_sheet(&pattern, &labels).unwrap());
    let all: Vec<&str> = sheet.words.iter().map(|w| w.text.as_str()).collect();
    assert!(
        all.iter()
            .any(|text| text.starts_with("hip line · finished hip") && text.ends_with(" in"))
    );
    assert!(!all.iter().any(|text| text.ends_with(" mm")), "{all:?}");
}

/// No balance line runs through the cloth that an open dart takes up.
#[test]
fn balance_lines_are_broken_at_open_darts() {
    let mut broken = 0;
    for wearer in ["ines", "odile"] {
        for block in Block::ALL {
            let pattern = drafted(block, wearer);
            for piece in pattern.pieces() {
                // Each piece by itself, so that it is drawn where it lies.
                let mut alone = pattern.clone().into_parts();
                alone.pieces = vec![piece.clone()];
                alone.seams.clear();
                alone.girths.clear();
                let alone = Pattern::new(alone).unwrap();
                let parts = blockwright::drawing::pattern_parts(&alone, &usual(), None).unwrap();
                let sheet = Sheet::of(&parts[0].drawing);
                let lines: Vec<Line<f64>> = sheet
                    .strokes
                    .iter()
                    .filter(|s| s.kind == Kind::Balance)
                    .flat_map(|s| s.lines.clone())
                    .collect();
                let drawn = MultiLineString(lines.iter().map(|l| LineString::from(*l)).collect());
                let whole: f64 = piece.lines().iter().map(|l| l.curve.length()).sum();
                for dart in piece.darts() {
                    let ring = |points: Vec<Point>| {
                        let ring = points.into_iter().map(|p| (p.x, p.y)).collect::<Vec<_>>();
                        Polygon::new(LineString::from(ring), vec![])
                    };
                    let [a, b] = dart.legs;
                    let taken = match dart.apexes {
                        Apexes::One(apex) => ring(vec![apex, a, b]),
                        Apexes::Two(upper, lower) => ring(vec![upper, a, lower, b]),
                    };
                    assert!(taken.unsigned_area() > 1.0);
                    let inside = taken.clip(&drawn, false);
                    let length: f64 = inside.0.iter().map(length_of).sum();
                    assert!(length < 0.2, "{} {}: {length} mm", piece.name(), dart.name);
                }
                let seen: f64 = lines.iter().map(|l| length_of(&LineString::from(*l))).sum();
                broken += usize::from(seen < whole - 5.0);
                assert!(seen > 0.5 * whole, "{} keeps its lines", piece.name());
            }
        }
    }
    assert!(broken > 6, "{broken} pieces have a line across a dart");
}

fn length_of(line: &LineString<f64>) -> f64 {
    line.lines().map(|l| l.dx().hypot(l.dy())).sum()
}
