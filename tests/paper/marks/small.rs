//! Pieces too small or too narrow for their words: words shrink, then stand below the piece.

use blockwright::drawing::pattern_sheet;
use blockwright::geometry::{Curve, Point};
use blockwright::piece::{
    BalanceLine, Cut, Edge, EdgeName, EdgeRole, Outline, Pattern, PatternParts, Piece, PieceParts,
};

use super::sheet::Sheet;
use super::{faults_of, longest, none, usual};

/// A panel with a level line, its left edge on the fold if asked.
fn panel(name: &str, width: f64, height: f64, cut: Cut) -> Piece {
    let at = |x: f64, y: f64| Point::new(x * width, y * height);
    let role = if cut == Cut::Fold {
        EdgeRole::Fold
    } else {
        EdgeRole::Seam
    };
    let edge = |name, role, from, to| Edge::new(name, role, Curve::line(from, to).unwrap());
    let outline = Outline::new(vec![
        edge(EdgeName::WAIST, EdgeRole::Seam, at(0.0, 0.0), at(1.0, 0.0)),
        edge(
            EdgeName::SIDE_SEAM,
            EdgeRole::Seam,
            at(1.0, 0.0),
            at(1.0, 1.0),
        ),
        edge(EdgeName::HEM, EdgeRole::Hem, at(1.0, 1.0), at(0.0, 1.0)),
        edge(EdgeName::CENTRE_BACK, role, at(0.0, 1.0), at(0.0, 0.0)),
    ])
    .unwrap();
    let hip = Curve::line(at(0.0, 0.3), at(1.0, 0.3)).unwrap();
    Piece::new(PieceParts {
        name: name.into(),
        side: None,
        cut,
        outline,
        darts: vec![],
        grain: [at(0.6, 0.94), at(0.6, 0.06)],
        notches: vec![],
        lines: vec![BalanceLine {
            name: "hip".into(),
            curve: hip,
        }],
        drill_points: vec![],
        points: vec![],
    })
    .unwrap()
}

fn pattern(pieces: Vec<Piece>) -> Pattern {
    Pattern::new(PatternParts {
        block: "skirt".into(),
        pieces,
        seams: vec![],
        girths: vec![],
        warnings: vec![],
    })
    .unwrap()
}

#[test]
fn nothing_overlaps_on_pieces_of_any_size() {
    let mut faults = Vec::new();
    let sides = [22.0, 31.0, 44.0, 60.0, 85.0, 120.0, 300.0, 850.0];
    for width in sides {
        for height in sides {
            for cut in [Cut::Fold, Cut::Pair] {
                let piece = panel("side panel of the back", width, height, cut);
                faults.extend(faults_of(
                    &pattern(vec![piece]),
                    &format!("{width} by {height}, {cut:?}"),
                ));
            }
        }
    }
    none(&faults);
}

/// Whatever finds no room on a piece stands below it: nothing is lost.
#[test]
fn no_word_is_lost() {
    for (width, height) in [(22.0, 22.0), (24.0, 300.0), (60.0, 40.0), (300.0, 500.0)] {
        for labels in [usual(), longest()] {
            let pattern = pattern(vec![
                panel("yoke", width, height, Cut::Fold),
                panel("side", 200.0, 500.0, Cut::Pair),
            ]);
            let sheet = Sheet::of(&pattern_sheet(&pattern, &labels).unwrap());
            let all: String = sheet.words.iter().map(|w| w.text.as_str()).collect();
            let all: String = all.split_whitespace().collect();
            for wanted in [
                "piece 1 of 2",
                "piece 2 of 2",
                "cut 1 on the fold",
                "hip line",
            ] {
                let wanted: String = wanted.split_whitespace().collect();
                assert!(
                    all.contains(&wanted),
                    "{width} by {height}: {wanted} in {all}"
                );
            }
            for wanted in [&labels.title, labels.size.as_ref().unwrap()] {
                let wanted: String = wanted.split_whitespace().collect();
                assert_eq!(
                    all.matches(&wanted).count(),
                    2,
                    "{width} by {height}: {wanted}"
                );
            }
        }
    }
}
