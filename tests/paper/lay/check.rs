//! What must be true of every lay, proved with `geo`.

use blockwright::allowance::CutLines;
use blockwright::lay::{Cloth, Laid, Lay, Search, parts};
use blockwright::piece::{Cut, EdgeRole, Pattern, Piece};
use geo::{
    Area, BooleanOps, BoundingRect, Coord, Distance, Euclidean, LineString, MultiPolygon, Polygon,
};
use kurbo::{PathEl, Shape};

/// What rounding may take, in millimetres.
const ROUNDING: f64 = 0.02;

pub(crate) fn polygon(laid: &Laid) -> Polygon {
    ring(laid.shape.points().iter().map(|p| (p.x, p.y)))
}

fn ring(points: impl Iterator<Item = (f64, f64)>) -> Polygon {
    let coords: Vec<Coord> = points.map(Coord::from).collect();
    Polygon::new(LineString::new(coords), vec![])
}

/// The outline to be cut, in the piece's own coordinates, finely.
fn drawn(piece: &Piece, cut: Option<&CutLines>) -> kurbo::BezPath {
    let segments = match cut {
        Some(cut) => cut.of(piece.name()).unwrap().segments().to_vec(),
        None => piece.outline().segments(),
    };
    let mut path = kurbo::BezPath::new();
    for (k, segment) in segments.iter().enumerate() {
        if k == 0 {
            path.move_to(kurbo::ParamCurve::start(segment));
        }
        path.push(segment.as_path_el());
    }
    path.close_path();
    path
}

/// The lay of a pattern after some rounds, checked.
pub(crate) fn lay(pattern: &Pattern, cut: Option<&CutLines>, cloth: &Cloth, rounds: u32) -> Lay {
    lay_from(5, pattern, cut, cloth, rounds)
}

/// The same, from another seed.
pub(crate) fn lay_from(
    seed: u64,
    pattern: &Pattern,
    cut: Option<&CutLines>,
    cloth: &Cloth,
    rounds: u32,
) -> Lay {
    let parts = parts(pattern, cut, cloth).unwrap();
    let mut search = Search::new(cloth, parts, seed).unwrap();
    let first = search.length();
    for _ in 0..rounds {
        search.round();
    }
    let lay = search.lay();
    assert!(lay.length() <= first, "{} > {first}", lay.length());
    sound(&lay);
    whole(&lay, pattern, cut);
    lay
}

/// Nothing overlaps, nothing lies beyond the cloth, the gap is kept.
pub(crate) fn sound(lay: &Lay) {
    let gap = lay.cloth.gap();
    for stretch in &lay.stretches {
        assert!(!stretch.folded || lay.cloth.is_folded());
        let folds = if stretch.folded { 2.0 } else { 1.0 };
        assert_eq!(stretch.width * folds, lay.cloth.width());
        let polygons: Vec<Polygon> = stretch.pieces.iter().map(polygon).collect();
        for (laid, one) in stretch.pieces.iter().zip(&polygons) {
            let name = &laid.name;
            let bounds = one.bounding_rect().unwrap();
            assert!(bounds.min().x >= gap - ROUNDING, "{name}: {bounds:?}");
            assert!(
                bounds.max().x <= stretch.length - gap + ROUNDING,
                "{name}: {bounds:?}"
            );
            assert!(
                bounds.max().y <= stretch.width - gap + ROUNDING,
                "{name}: {bounds:?}"
            );
            if laid.on_fold {
                assert!(stretch.folded, "{name}");
                assert_eq!(bounds.min().y, 0.0, "{name} lies on the fold");
            } else {
                assert!(bounds.min().y >= gap - ROUNDING, "{name}: {bounds:?}");
            }
            let [low, high] = laid.grain;
            assert!((low.y - high.y).abs() < 1e-6, "{name} keeps the grain");
            assert_eq!(high.x < low.x, laid.pose.turned, "{name}");
            assert!(!(laid.pose.turned && lay.cloth.is_one_way()), "{name}");
        }
        for (k, one) in polygons.iter().enumerate() {
            for (other, laid) in polygons[..k].iter().zip(&stretch.pieces) {
                let names = format!("{} and {}", laid.name, stretch.pieces[k].name);
                let common = one.intersection(other).unsigned_area();
                assert!(common < 0.05, "{names} share {common} square mm");
                let apart = Euclidean.distance(one, other);
                assert!(apart >= gap - ROUNDING, "{names} lie {apart} mm apart");
            }
        }
    }
    let least = lay.area() / lay.cloth.width();
    assert!(lay.length() >= least - ROUNDING);
    assert!(lay.length() >= lay.least_length - 0.1);
    let density = lay.area() / (lay.cloth.width() * lay.length());
    assert!((lay.density() - density).abs() < 1e-12 && density <= 1.0 + 1e-9);
}

/// Every piece lies there as often as it is cut, in its own outline, face up or down as it says.
fn whole(lay: &Lay, pattern: &Pattern, cut: Option<&CutLines>) {
    let all: Vec<(&Laid, bool)> = lay
        .stretches
        .iter()
        .flat_map(|s| s.pieces.iter().map(|laid| (laid, s.folded)))
        .collect();
    let mut area = 0.0;
    let mut count = 0;
    for piece in pattern.pieces() {
        let path = drawn(piece, cut);
        let mine: Vec<(&Laid, bool)> = all
            .iter()
            .copied()
            .filter(|(l, _)| l.name == piece.name())
            .collect();
        count += mine.len();
        area += path.area().abs() * piece.cut().halves();
        let faces: Vec<bool> = mine.iter().map(|(l, _)| l.pose.face_down).collect();
        let layers: Vec<u8> = mine.iter().map(|(l, _)| l.layers).collect();
        let on_fold = mine.iter().all(|(l, _)| l.on_fold);
        let folded = lay.cloth.is_folded();
        match (piece.cut(), folded) {
            (Cut::Fold, false) => assert_eq!((layers, on_fold), (vec![1], false)),
            (Cut::Fold, true) => assert_eq!((layers, on_fold), (vec![2], true)),
            (Cut::Pair, false) => {
                assert_eq!(layers, [1, 1]);
                assert_ne!(faces[0], faces[1], "one of a pair lies face down");
            }
            (Cut::Pair, true) => assert_eq!((layers, on_fold), (vec![2], false)),
            (one, _) => {
                assert_eq!((layers, faces), (vec![1], vec![one == Cut::SingleFaceDown]));
                assert!(!mine[0].1, "cut from one layer");
            }
        }
        for (laid, in_folded) in mine {
            let unfold = piece.cut() == Cut::Fold && !in_folded;
            same_outline(laid, piece, &path, unfold);
        }
    }
    assert_eq!(count, all.len(), "no piece that is not in the pattern");
    let density = area / (lay.cloth.width() * lay.length());
    assert!((density - lay.density()).abs() < 1e-3 * density);
}

/// The laid outline is the drawn one turned with the page or mirrored, by no other motion.
fn same_outline(laid: &Laid, piece: &Piece, path: &kurbo::BezPath, unfold: bool) {
    // Page coordinates: x to the right, y down, the piece's upper end at the top. Along the cloth
    // x grows toward the upper end, and y to the right of who looks there.
    let pose = |x: f64, y: f64| match (laid.pose.turned, laid.pose.face_down) {
        (false, false) => (-y, x),
        (true, false) => (y, -x),
        (false, true) => (-y, -x),
        (true, true) => (y, x),
    };
    let mut points = Vec::new();
    kurbo::flatten(path, 0.01, |el| {
        if let PathEl::MoveTo(p) | PathEl::LineTo(p) = el {
            points.push((p.x, p.y));
        }
    });
    let half = ring(points.iter().map(|p| pose(p.0, p.1)));
    let mut expected = MultiPolygon::new(vec![half]);
    if unfold {
        let mut edges = piece.outline().edges().iter();
        let fold = edges.find(|e| e.role() == EdgeRole::Fold).unwrap();
        let at = fold.curve().start().x;
        let mirrored = ring(points.iter().map(|p| pose(2.0 * at - p.0, p.1)));
        expected = expected.union(&MultiPolygon::new(vec![mirrored]));
    }
    let (want, got) = (
        expected.bounding_rect().unwrap().min(),
        laid.shape.bounds().origin(),
    );
    let moved = geo::Translate::translate(&expected, got.x - want.x, got.y - want.y);
    let off = moved
        .xor(&MultiPolygon::new(vec![polygon(laid)]))
        .unsigned_area();
    // Straight edges stray from curves by a tenth of a millimetre at most.
    let length = path.perimeter(0.1);
    assert!(off < 0.1 * length, "{}: {off} of {length}", laid.name);
}
