//! Every block for people of every build.

use blockwright::draft::{Block, draft};
use blockwright::drawing::pattern_sheet;
use blockwright::measurements::{Body, Measurement, SizeTable};
use kurbo::{BezPath, Point, Shape};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};

use super::faults::beside_pieces;
use super::sheet::{Kind, Sheet};
use super::{faults_of, none, set, usual, with_sleeve};

#[test]
fn wearers() {
    let mut faults = Vec::new();
    for wearer in ["ines", "maren", "odile", "tilde"] {
        for block in Block::ALL {
            let pattern = draft(set(wearer).body(), &with_sleeve(block)).unwrap();
            let what = format!("{} for {wearer}", block.name());
            faults.extend(faults_of(&pattern, &what));
            let sheet = pattern_sheet(&pattern, &usual()).unwrap();
            assert_eq!(beside_pieces(&sheet), Vec::<String>::new(), "{what}");
        }
    }
    none(&faults);
}

#[test]
fn sizes_of_a_table() {
    let mut faults = Vec::new();
    let file = format!(
        "{}/measurement-sets/en-13402-3-women.yaml",
        env!("CARGO_MANIFEST_DIR")
    );
    let table = SizeTable::parse(&std::fs::read_to_string(file).unwrap()).unwrap();
    for size in table.sizes() {
        for block in [Block::BodiceAndSkirt, Block::Dress] {
            let Ok(pattern) = draft(size.body(), &with_sleeve(block)) else {
                continue;
            };
            faults.extend(faults_of(
                &pattern,
                &format!("{} in size {}", block.name(), size.label()),
            ));
        }
    }
    none(&faults);
}

fn bodies() -> impl Strategy<Value = [f64; 4]> {
    (1000.0..1950.0, 560.0..1500.0_f64).prop_flat_map(|(height, bust)| {
        let (waist, hip) = (bust - 250.0..bust + 60.0, bust - 40.0..bust + 220.0);
        (Just(height), Just(bust), waist, hip).prop_map(|(a, b, c, d)| [a, b, c, d])
    })
}

/// Bodies the same on every run, from children to the largest; who cannot be measured or
/// drafted is left out, and most can.
#[test]
fn random_bodies() {
    let mut faults = Vec::new();
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &[11; 32]);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let (mut drawn, mut small) = (0, 0);
    for _ in 0..24 {
        let four = bodies().new_tree(&mut runner).unwrap().current();
        let names = [
            Measurement::Height,
            Measurement::BustGirth,
            Measurement::WaistGirth,
            Measurement::HipGirth,
        ];
        let Ok(body) = Body::from_taken(names.into_iter().zip(four)) else {
            continue;
        };
        for block in Block::ALL {
            if let Ok(pattern) = draft(&body, &with_sleeve(block)) {
                faults.extend(faults_of(
                    &pattern,
                    &format!("{} for {four:.0?}", block.name()),
                ));
                drawn += 1;
                small += u32::from(four[0] < 1450.0);
            }
        }
    }
    assert!(
        drawn > 60 && small > 9,
        "{drawn} drawn, {small} of them small"
    );
    none(&faults);
}

/// Single notches on the front and double ones on the back of armscye and cap; on a side seam,
/// where front meets back, one kind on both (the law `notches_meet`).
#[test]
fn what_must_be_on_a_piece_is_there() {
    for block in Block::ALL {
        let pattern = draft(set("ines").body(), &with_sleeve(block)).unwrap();
        let drawing = pattern_sheet(&pattern, &usual()).unwrap();
        let sheet = Sheet::of(&drawing);
        let count = pattern.pieces().len();
        let times = |text: &str| sheet.words.iter().filter(|w| w.text == text).count();
        let marks = |kind: Kind| sheet.strokes.iter().filter(|s| s.kind == kind).count();
        for (index, piece) in pattern.pieces().iter().enumerate() {
            assert_eq!(times(&piece.name().to_uppercase()), 1);
            assert_eq!(times(&format!("piece {} of {count}", index + 1)), 1);
            // Nearly as long as the piece is along it.
            let [low, high] = piece.grain();
            let outline = BezPath::from_path_segments(piece.outline().segments().into_iter());
            let beyond = |from: Point, to: Point| {
                let on = (to - from).normalize();
                (0..)
                    .find(|mm| outline.winding(to + on * f64::from(*mm)) == 0)
                    .unwrap()
            };
            let rest = beyond(low, high) + beyond(high, low);
            let length = low.distance(high);
            assert!(
                length > 0.8 * (length + f64::from(rest)),
                "{}: {rest}",
                piece.name()
            );
        }
        for text in [
            "size 40",
            "for Ines",
            "2026-03-14",
            "Linen tunic, second toile",
            "grain",
        ] {
            assert_eq!(times(text), count, "{}: {text}", block.name());
        }
        let folds = pattern
            .pieces()
            .iter()
            .filter(|p| p.cut().name() == "fold")
            .count();
        assert_eq!(times("cut 1 on the fold"), folds);
        assert_eq!(times("place on the fold"), folds);
        assert_eq!(marks(Kind::Bracket), folds);
        assert_eq!(marks(Kind::Grain), count);
        let points: Vec<&str> = pattern
            .pieces()
            .iter()
            .flat_map(|p| p.points())
            .map(|p| p.name.as_str())
            .collect();
        assert_eq!(marks(Kind::Point), points.len());
        for name in &points {
            let named = points.iter().filter(|n| n == &name).count();
            assert_eq!(times(&name.replace('_', " ")), named, "{name}");
        }
        assert_eq!(marks(Kind::Head), 2 * (folds + count));
        let darts: usize = pattern.pieces().iter().map(|p| p.darts().len()).sum();
        assert!(marks(Kind::Drill) >= darts);
        // Bodice halves and skirt quarters have one double line, blocks in one two, a long
        // sleeve two and a short one one.
        let lines = match block {
            Block::Bodice => 2 + 2,
            Block::Skirt => 2,
            Block::BodiceAndSkirt => 2 + 2 + 2,
            Block::Dress | Block::Tunic => 4 + 2,
            Block::Shirt => 4 + 1,
            other => panic!("say what {other:?} has"),
        };
        assert_eq!(times("lengthen or shorten here"), lines, "{}", block.name());
        assert_eq!(marks(Kind::Lengthen), 2 * lines, "{}", block.name());
    }
}

/// The lines lie where a piece is lengthened by common practice, square to the grain, and off
/// the points of its darts.
#[test]
fn lengthen_lines_lie_where_they_should() {
    for wearer in ["ines", "maren", "odile", "tilde"] {
        for block in Block::ALL {
            let pattern = draft(set(wearer).body(), &with_sleeve(block)).unwrap();
            let sheet = Sheet::of(&pattern_sheet(&pattern, &usual()).unwrap());
            for stroke in sheet.strokes.iter().filter(|s| s.kind == Kind::Lengthen) {
                let y = stroke.bounds.min().y;
                assert!(
                    stroke.bounds.height() < 1e-6,
                    "grain is upright, lines are level"
                );
                let near = |kind: Kind, reach: f64| {
                    sheet
                        .strokes
                        .iter()
                        .filter(move |s| s.kind == kind)
                        .any(|s| {
                            let (b, at) = (s.bounds, stroke.bounds);
                            let beside = b.min().x <= at.max().x && at.min().x <= b.max().x;
                            beside && (b.min().y - reach..=b.max().y + reach).contains(&y)
                        })
                };
                let what = format!("{} for {wearer}", block.name());
                assert!(!near(Kind::Drill, 2.0), "{what}: at a drill point");
                assert!(!near(Kind::Balance, 4.0), "{what}: at a level line");
                assert!(!near(Kind::Notch, 1.0), "{what}: at a notch");
            }
        }
    }
}
