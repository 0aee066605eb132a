//! The nest: one layer a size, aligned, with a readable key.

use blockwright::draft::Block;
use blockwright::drawing::{Drawing, Ink, Item};
use blockwright::grading::{Align, COLOURS, NestLabels, line_style, nest};
use blockwright::render::svg;

use super::table::graded;

fn drawn(block: Block, align: Align) -> Drawing {
    let labels = NestLabels {
        title: "A range".into(),
        date: None,
        colour: false,
        ..NestLabels::new("")
    };
    nest(&graded(block), align, &labels).unwrap()
}

fn texts(drawing: &Drawing, layer: &str) -> Vec<String> {
    let layer = drawing.layers().iter().find(|l| l.name == layer).unwrap();
    let texts = layer.items.iter().filter_map(|item| match item {
        Item::Text(text) => Some(text.text.clone()),
        Item::Path(_) => None,
    });
    texts.collect()
}

#[test]
fn every_size_has_its_layer_and_stands_in_the_key() {
    let drawing = drawn(Block::Dress, Align::WaistCentre);
    let names: Vec<_> = drawing.layers().iter().map(|l| l.name.as_str()).collect();
    assert_eq!(names.len(), 14);
    assert_eq!((names[0], names[13]), ("size 76", "words"));
    for label in ["76", "104", "134"] {
        let said = texts(&drawing, &format!("size {label}"));
        // Once in the key of every piece, and at its corners.
        assert!(said.iter().filter(|t| *t == label).count() >= 6, "{said:?}");
        assert!(said.iter().all(|t| t == label), "{said:?}");
    }
    let words = texts(&drawing, "words");
    assert_eq!(words.iter().filter(|t| *t == "sizes 76 to 134").count(), 3);
}

#[test]
fn no_word_lies_on_another() {
    for block in Block::ALL {
        let drawing = drawn(block, Align::WaistCentre);
        let boxes: Vec<_> = drawing
            .layers()
            .iter()
            .flat_map(|l| &l.items)
            .filter(|item| matches!(item, Item::Text(_)))
            .map(|item| (item.bounds(), item))
            .collect();
        for (at, (a, one)) in boxes.iter().enumerate() {
            for (b, other) in &boxes[..at] {
                assert!(
                    a.intersect(*b).area() < 1e-6,
                    "{}: {one:?} {other:?}",
                    block.name()
                );
            }
        }
    }
}

/// What is seen of a dashed line through a window that begins at a phase of its dashes: how many marks
/// it shows whole, the longest and the shortest of them, and the share of ink.
fn seen(dash: &[f64], phase: f64, window: f64) -> [f64; 4] {
    let (mut marks, mut ink) = (Vec::new(), 0.0);
    let (mut at, mut part) = (-phase, 0);
    while at < window && !dash.is_empty() {
        let end = at + dash[part % dash.len()];
        if part % 2 == 0 && end > 0.0 {
            ink += end.min(window) - at.max(0.0);
            if at >= 0.0 && end <= window {
                marks.push(end - at);
            }
        }
        (at, part) = (end, part + 1);
    }
    if dash.is_empty() {
        return [0.0, window, window, 1.0];
    }
    let most = |far: f64, by: fn(f64, f64) -> f64| marks.iter().copied().fold(far, by);
    let count = marks.len() as f64;
    [
        count,
        most(0.0, f64::max),
        most(99.0, f64::min),
        ink / window,
    ]
}

#[test]
fn nine_sizes_are_told_apart_on_a_stretch_of_25_millimetres() {
    const WINDOW: f64 = 25.0;
    // The least and the most that is seen from any phase.
    let ranges: Vec<[(f64, f64); 4]> = (0..9)
        .map(|number| {
            let dash = line_style(number).dash;
            let period: f64 = dash.iter().sum();
            assert!(period <= 9.5, "{dash:?}");
            let mut ranges = [(f64::INFINITY, f64::NEG_INFINITY); 4];
            for step in 0..200 {
                let each = seen(&dash, period * f64::from(step) / 200.0, WINDOW);
                for (range, value) in ranges.iter_mut().zip(each) {
                    *range = (range.0.min(value), range.1.max(value));
                }
            }
            ranges
        })
        .collect();
    for a in 0..9 {
        for b in 0..a {
            let apart = |(x, y): (&(f64, f64), &(f64, f64))| {
                let (low, high) = if x.0 < y.0 { (x, y) } else { (y, x) };
                high.0 > 1.2 * low.1
            };
            let by_dashes = ranges[a].iter().zip(&ranges[b]).any(apart);
            assert!(by_dashes, "{a} {b}: {:?} {:?}", ranges[a], ranges[b]);
        }
    }
}

/// Linear light of a colour (sRGB, IEC 61966-2-1: value from memory).
fn linear(ink: Ink) -> [f64; 3] {
    let (r, g, b) = ink.rgb();
    [r, g, b].map(|c| {
        let c = f64::from(c) / 255.0;
        if c <= 0.04045 {
            c / 12.92
        } else {
            ((c + 0.055) / 1.055).powf(2.4)
        }
    })
}

fn times(matrix: &[[f64; 3]; 3], v: [f64; 3]) -> [f64; 3] {
    matrix.map(|row| row.iter().zip(v).map(|(m, v)| m * v).sum::<f64>())
}

/// CIELAB under D65, from linear light (matrix of sRGB: value from memory).
fn lab(linear: [f64; 3]) -> [f64; 3] {
    let to_xyz = [
        [0.412_456_4, 0.357_576_1, 0.180_437_5],
        [0.212_672_9, 0.715_152_2, 0.072_175_0],
        [0.019_333_9, 0.119_192_0, 0.950_304_1],
    ];
    let white = times(&to_xyz, [1.0; 3]);
    let xyz = times(&to_xyz, linear.map(|c| c.clamp(0.0, 1.0)));
    let f = |at: usize| {
        let v = xyz[at] / white[at];
        if v > 216.0 / 24389.0 {
            v.cbrt()
        } else {
            (24389.0 / 27.0 * v + 16.0) / 116.0
        }
    };
    [
        116.0 * f(1) - 16.0,
        500.0 * (f(0) - f(1)),
        200.0 * (f(1) - f(2)),
    ]
}

/// The difference of two colours by CIEDE2000 (G. Sharma, W. Wu, E. N. Dalal, 2005: formula from
/// memory, checked below by the first pair of their test data).
fn difference(one: [f64; 3], other: [f64; 3]) -> f64 {
    let chroma = |lab: [f64; 3]| lab[1].hypot(lab[2]);
    let mean = f64::midpoint(chroma(one), chroma(other));
    let bend = |c: f64| (c.powi(7) / (c.powi(7) + 25.0_f64.powi(7))).sqrt();
    let g = 0.5 * (1.0 - bend(mean));
    let polar = |lab: [f64; 3]| {
        let a = lab[1] * (1.0 + g);
        (
            lab[0],
            a.hypot(lab[2]),
            lab[2].atan2(a).to_degrees().rem_euclid(360.0),
        )
    };
    let ((l1, c1, h1), (l2, c2, h2)) = (polar(one), polar(other));
    let grey = c1 * c2 == 0.0;
    let turn = |d: f64| {
        if d > 180.0 {
            d - 360.0
        } else if d < -180.0 {
            d + 360.0
        } else {
            d
        }
    };
    let dh = if grey { 0.0 } else { turn(h2 - h1) };
    let big = 2.0 * (c1 * c2).sqrt() * (dh / 2.0).to_radians().sin();
    let (l, c) = (f64::midpoint(l1, l2), f64::midpoint(c1, c2));
    let h = match (grey, (h1 - h2).abs() <= 180.0, h1 + h2 < 360.0) {
        (true, ..) => h1 + h2,
        (_, true, _) => f64::midpoint(h1, h2),
        (.., true) => f64::midpoint(h1, h2) + 180.0,
        _ => f64::midpoint(h1, h2) - 180.0,
    };
    let cos = |degrees: f64| degrees.to_radians().cos();
    let t = 1.0 - 0.17 * cos(h - 30.0) + 0.24 * cos(2.0 * h) + 0.32 * cos(3.0 * h + 6.0)
        - 0.20 * cos(4.0 * h - 63.0);
    let swing = 30.0 * (-((h - 275.0) / 25.0).powi(2)).exp();
    let sl = 1.0 + 0.015 * (l - 50.0).powi(2) / (20.0 + (l - 50.0).powi(2)).sqrt();
    let (sc, sh) = (1.0 + 0.045 * c, 1.0 + 0.015 * c * t);
    let rt = -(2.0 * swing).to_radians().sin() * 2.0 * bend(c);
    let (dl, dc, dh) = ((l2 - l1) / sl, (c2 - c1) / sc, big / sh);
    (dl * dl + dc * dc + dh * dh + rt * dc * dh).sqrt()
}

/// G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, IEEE TVCG 2009: people without one of the three
/// cones, severity 1, on linear light (matrices as read in several independent copies).
const WITHOUT: [(&str, [[f64; 3]; 3]); 4] = [
    (
        "all cones",
        [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
    ),
    (
        "protan",
        [
            [0.152_286, 1.052_583, -0.204_868],
            [0.114_503, 0.786_281, 0.099_216],
            [-0.003_882, -0.048_116, 1.051_998],
        ],
    ),
    (
        "deutan",
        [
            [0.367_322, 0.860_646, -0.227_968],
            [0.280_085, 0.672_501, 0.047_413],
            [-0.011_820, 0.042_940, 0.968_881],
        ],
    ),
    (
        "tritan",
        [
            [1.255_528, -0.076_749, -0.178_779],
            [-0.078_411, 0.930_809, 0.147_602],
            [0.004_733, 0.691_367, 0.303_900],
        ],
    ),
];

#[test]
fn colours_of_sizes_are_told_apart_by_people_who_lack_a_cone() {
    let known = difference([50.0, 2.6772, -79.7751], [50.0, 0.0, -82.7485]);
    assert!((known - 2.0425).abs() < 1e-4, "{known}");
    let mut least = f64::INFINITY;
    for (who, matrix) in &WITHOUT {
        assert!(
            matrix
                .iter()
                .all(|row| (row.iter().sum::<f64>() - 1.0).abs() < 2e-6)
        );
        let seen = COLOURS.map(|ink| lab(times(matrix, linear(ink))));
        for a in 0..seen.len() {
            for b in 0..a {
                let apart = difference(seen[a], seen[b]);
                // About five times what is seen at a glance side by side.
                assert!(apart > 18.0, "{who}: {a} {b} {apart:.1}");
                least = least.min(apart);
            }
        }
    }
    // WCAG 2.2, 1.4.11: lines have at least 3 : 1 against the paper.
    for ink in COLOURS {
        let [r, g, b] = linear(ink);
        let light = 0.2126 * r + 0.7152 * g + 0.0722 * b;
        assert!(1.05 / (light + 0.05) >= 3.0, "{ink:?}");
    }
    assert!((18.5..20.0).contains(&least), "{least}");
}

#[test]
fn a_nest_labels_every_dart_and_shoulder_and_has_one_grain_line_a_piece() {
    for block in Block::ALL {
        let graded = graded(block);
        let drawing = drawn(block, Align::WaistCentre);
        for size in graded.sizes() {
            let pieces = size.pattern().pieces();
            let darts: usize = pieces.iter().map(|piece| piece.darts().len()).sum();
            let shoulders = pieces
                .iter()
                .filter(|piece| {
                    let mut edges = piece.outline().edges().iter();
                    edges.any(|edge| edge.name().as_str() == "shoulder")
                })
                .count();
            // And in the key of every piece.
            let wanted = darts + shoulders + pieces.len();
            let said = texts(&drawing, &format!("size {}", size.label()));
            assert!(
                said.len() >= wanted,
                "{} {}: {}",
                block.name(),
                size.label(),
                said.len()
            );
        }
        let words = texts(&drawing, "words");
        let pieces = graded.sizes()[0].pattern().pieces();
        let grains = words.iter().filter(|text| *text == "grain").count();
        assert_eq!(grains, pieces.len(), "{}", block.name());
        if block.has_hem() {
            assert!(words.iter().any(|text| text == "hip line"), "{words:?}");
        }
    }
}

#[test]
fn the_same_range_gives_the_same_bytes_and_another_alignment_others() {
    let one = svg::render(&drawn(Block::BodiceAndSkirt, Align::WaistCentre));
    assert_eq!(
        one,
        svg::render(&drawn(Block::BodiceAndSkirt, Align::WaistCentre))
    );
    for align in [Align::Nape, Align::Underarm, Align::HemCentre] {
        assert_ne!(
            one,
            svg::render(&drawn(Block::BodiceAndSkirt, align)),
            "{align:?}"
        );
    }
    if let Some(folder) = std::env::var_os("BLOCKWRIGHT_NESTS") {
        for block in Block::ALL {
            let path = std::path::Path::new(&folder).join(format!("{}.svg", block.name()));
            std::fs::write(path, svg::render(&drawn(block, Align::WaistCentre))).unwrap();
        }
    }
}
