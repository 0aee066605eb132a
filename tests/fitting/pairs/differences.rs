//! By how much two patterns differ.

use blockwright::piece::{BodySide, MeasureKind, Pattern};

/// The largest difference of an edge length or of a girth, and whose it is. A measure that only
/// one of the patterns has is infinitely far from the other, unless that has it on each side.
pub fn measures_apart(a: &Pattern, b: &Pattern) -> (f64, String) {
    let mut most = (0.0, String::new());
    for (measure, value) in a.measures() {
        let compared = matches!(
            measure.kind(),
            MeasureKind::EdgeLength { .. } | MeasureKind::FinishedGirth { .. }
        );
        if !compared {
            continue;
        }
        let on_sides = BodySide::BOTH.map(|side| b.measured(&measure.on(side)));
        let others = b
            .measured(&measure)
            .map_or(on_sides, |other| [Some(other); 2]);
        let apart = others
            .iter()
            .map(|other| (value - other.unwrap_or(f64::INFINITY)).abs())
            .fold(0.0, f64::max);
        if apart > most.0 {
            most = (apart, measure.to_string());
        }
    }
    most
}

/// The largest distance between what two patterns have at the same places: edges, darts with their
/// tips, points, notches.
pub fn points_apart(a: &Pattern, b: &Pattern) -> (f64, String) {
    let mut most = (0.0, String::new());
    let mut compare = |apart: f64, what: &dyn Fn() -> String| {
        if apart > most.0 {
            most = (apart, what());
        }
    };
    for piece in a.pieces() {
        let name = piece.name();
        let Some(other) = b.piece(name) else {
            compare(f64::INFINITY, &|| format!("the {name}"));
            continue;
        };
        for edge in piece.outline().edges() {
            let curve = edge.curve();
            let what = || format!("{} of the {name}", edge.name());
            let Some(theirs) = other.outline().edge(edge.name()) else {
                compare(f64::INFINITY, &what);
                continue;
            };
            for i in 0..=20 {
                let at = curve.length() * f64::from(i) / 20.0;
                let point = curve.point_at(at).unwrap().0;
                compare(theirs.curve().nearest(point).0, &what);
            }
            compare(curve.start().distance(theirs.curve().start()), &what);
            compare(curve.end().distance(theirs.curve().end()), &what);
        }
        for dart in piece.darts() {
            let what = || format!("{} dart of the {name}", dart.name);
            let Some(theirs) = other.dart(&dart.name) else {
                compare(f64::INFINITY, &what);
                continue;
            };
            for (p, q) in dart.legs.iter().zip(&theirs.legs) {
                compare(p.distance(*q), &what);
            }
            let tips = || format!("tip of the {} dart of the {name}", dart.name);
            for (p, q) in dart.apexes.points().iter().zip(theirs.apexes.points()) {
                compare(p.distance(q), &tips);
            }
        }
        for point in piece.points() {
            let theirs = other.point(&point.name);
            compare(
                theirs.map_or(f64::INFINITY, |q| point.at.distance(q)),
                &|| format!("{} of the {name}", point.name),
            );
        }
        for line in piece.lines() {
            // A line that an alteration drew where there was none stays as a mark.
            let Some(theirs) = other.line(&line.name) else {
                continue;
            };
            let what = || format!("{} line of the {name}", line.name);
            compare(line.curve.start().distance(theirs.curve.start()), &what);
            compare(line.curve.end().distance(theirs.curve.end()), &what);
        }
        for (notch, theirs) in piece.notches().iter().zip(other.notches()) {
            compare((notch.at - theirs.at).abs(), &|| {
                format!("notch {} on the {} of the {name}", notch.name, notch.edge)
            });
        }
    }
    most
}
