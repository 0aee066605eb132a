//! Allowances in every size of a range, held against distances that a geometry library measures.

use blockwright::allowance::{Allowances, CutLines};
use blockwright::draft::Block;
use blockwright::drawing::{Drawing, DrawnPath, Item, Layer, SheetPart};
use blockwright::explain::Explain;
use blockwright::grading::{Align, Graded, GradingError, NestLabels, grade, nest, nest_parts};
use blockwright::measurements::SizeTable;
use blockwright::piece::{EdgeRole, Piece};
use blockwright::recipe::MakeError;
use geo::{Closest, ClosestPoint, Contains, Distance, Euclidean, LineString, Polygon};
use kurbo::{BezPath, ParamCurve, PathEl, PathSeg, Point, Vec2};

use super::table::{recipe, sleeved_table, table};

/// How far two lines may lie apart, in mm: chords of curves do as much.
const SAME: f64 = 0.05;

/// Two tables in every block: a name, the range as it is sewn, and the same with allowances.
fn ranges(widths: &Allowances) -> Vec<(String, Graded, Graded)> {
    let tables = [
        ("published", sleeved_table()),
        ("workshop", table("workshop-range")),
    ];
    let both = |block: Block| {
        tables.each_ref().map(|(name, table)| {
            let (stitched, cut) = pair(block, table, widths);
            (format!("{name} {}", block.name()), stitched, cut)
        })
    };
    Block::ALL.into_iter().flat_map(both).collect()
}

/// A table in a block as it is sewn, and the same with allowances.
fn pair(block: Block, table: &SizeTable, widths: &Allowances) -> (Graded, Graded) {
    let mut recipe = recipe(block);
    let stitched = grade(&recipe, table).unwrap();
    recipe.allowances = Some(widths.clone());
    (stitched, grade(&recipe, table).unwrap())
}

fn labels() -> NestLabels {
    NestLabels {
        title: "A range".into(),
        date: None,
        colour: false,
        ..NestLabels::new("")
    }
}

fn parts(graded: &Graded) -> Vec<SheetPart> {
    nest_parts(graded, Align::WaistCentre, &labels()).unwrap()
}

fn figures<'a>(drawing: &'a Drawing, label: &str) -> Vec<&'a DrawnPath> {
    let name = format!("size {label}");
    let of = |layer: &'a Layer| layer.items.iter();
    let items = drawing.layers().iter().filter(|l| l.name == name);
    let figure = |item: &'a Item| match item {
        Item::Path(figure) => Some(figure),
        Item::Text(_) => None,
    };
    items.flat_map(of).filter_map(figure).collect()
}

fn start(path: &BezPath) -> Point {
    path.segments().next().unwrap().start()
}

/// Points on a chain, close together on its curves.
fn points(segments: &[PathSeg]) -> Vec<(f64, f64)> {
    let along = |s: &PathSeg| {
        let steps = match s {
            PathSeg::Line(_) => 1,
            _ => 40,
        };
        let at = |k: i32| s.eval(f64::from(k) / f64::from(steps));
        (0..=steps).map(at).map(|p| (p.x, p.y)).collect::<Vec<_>>()
    };
    segments.iter().flat_map(along).collect()
}

/// An edge of a piece as a geometry library has it: its line and its width.
struct Sewn {
    line: LineString,
    width: f64,
}

fn sewn(piece: &Piece, widths: &Allowances) -> Vec<Sewn> {
    let edges = piece.outline().edges().iter();
    edges
        .map(|edge| Sewn {
            line: points(edge.curve().segments()).into(),
            width: match edge.role() {
                EdgeRole::Fold => 0.0,
                _ => widths.of(edge),
            },
        })
        .collect()
}

/// Where the stitching line turns, and how far round it the cut line may be squared or mirrored.
fn corners(piece: &Piece, widths: &Allowances) -> Vec<(Point, f64)> {
    let edges = piece.outline().edges().iter();
    let all: Vec<(PathSeg, f64)> = edges
        .flat_map(|e| e.curve().segments().iter().map(|s| (*s, widths.of(e))))
        .collect();
    let direction = |s: &PathSeg, from: f64, to: f64| (s.eval(to) - s.eval(from)).normalize();
    let pairs = all.iter().zip(all.iter().cycle().skip(1));
    pairs
        .filter(|((a, wide), (b, next))| {
            let turn = direction(a, 0.999, 1.0).cross(direction(b, 0.0, 0.001));
            turn.abs() > 0.01 || wide != next
        })
        .map(|((a, wide), (_, next))| (a.end(), 2.5 * wide.max(*next)))
        .collect()
}

/// The line on which a piece is cut lies outside its stitching line, by the width of the nearest
/// edge wherever no corner is near; gives back at how many places that was measured.
fn measured(ring: &BezPath, piece: &Piece, widths: &Allowances, what: &str) -> usize {
    let edges = sewn(piece, widths);
    let corners = corners(piece, widths);
    let inside = Polygon::new(points(&piece.outline().segments()).into(), vec![]);
    let mut count = 0;
    let places = ring
        .segments()
        .flat_map(|s| (0..6).map(move |k| s.eval((f64::from(k) + 0.5) / 6.0)));
    for Point { x, y } in places {
        let p = geo::Point::new(x, y);
        let off = |e: &Sewn| Euclidean.distance(&p, &e.line);
        let nearest = edges.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
        let nearest = nearest.unwrap();
        let away = off(nearest);
        assert!(
            away < SAME || !inside.contains(&p),
            "{what}: ({x}, {y}) inside"
        );
        let (Closest::SinglePoint(foot) | Closest::Intersection(foot)) =
            nearest.line.closest_point(&p)
        else {
            continue;
        };
        let foot = Point::new(foot.x(), foot.y());
        if corners.iter().any(|(q, reach)| q.distance(foot) < *reach) {
            continue;
        }
        assert!(
            (away - nearest.width).abs() < SAME,
            "{what}: {away} mm instead of {} at ({x}, {y})",
            nearest.width
        );
        count += 1;
    }
    count
}

#[test]
fn every_size_is_cut_its_allowance_outside_its_stitching_line() {
    let widths = Allowances::usual();
    let mut count = 0;
    for (name, stitched, cut) in ranges(&widths) {
        for (before, after) in parts(&stitched).iter().zip(&parts(&cut)) {
            for size in stitched.sizes() {
                let what = format!("{name}, {} {}", after.name, size.label());
                let Some(piece) = size.pattern().piece(&after.name) else {
                    continue;
                };
                // The nest of stitching lines tells where the size lies.
                let sewn = figures(&before.drawing, size.label())[0].path.clone();
                let by = start(&sewn) - piece.outline().edges()[0].curve().start();
                let drawn = figures(&after.drawing, size.label());
                let ring = moved(&drawn[0].path, -by);
                let places = measured(&ring, piece, &widths, &what);
                assert!(places > 5, "{what}: {places}");
                count += places;
                assert!(drawn.iter().all(|figure| figure.path != sewn), "{what}");
                marked(&drawn, &ring, piece, by, &what);
            }
        }
    }
    println!("{count} places");
}

fn moved(path: &BezPath, by: Vec2) -> BezPath {
    kurbo::Affine::translate(by) * path
}

/// Every notch is a snip from the cut line inward, and every leg of a dart reaches it.
fn marked(drawn: &[&DrawnPath], ring: &BezPath, piece: &Piece, by: Vec2, what: &str) {
    let line: LineString = points(&ring.segments().collect::<Vec<_>>()).into();
    let on = |p: Point| Euclidean.distance(&geo::Point::new(p.x, p.y), &line) < SAME;
    let strokes: Vec<(Point, Point)> = drawn
        .iter()
        .filter_map(|figure| match figure.path.elements() {
            [PathEl::MoveTo(a), PathEl::LineTo(b)] => Some((*a - by, *b - by)),
            _ => None,
        })
        .filter(|(from, _)| on(*from))
        .collect();
    let legs: Vec<Point> = piece
        .darts()
        .iter()
        .filter(|dart| dart.edge.is_some())
        .flat_map(|dart| dart.legs)
        .collect();
    for leg in &legs {
        let reached = strokes.iter().any(|(_, end)| end.distance(*leg) < 1e-6);
        assert!(reached, "{what}: a dart ends short of the cut line");
    }
    let cuts: usize = piece.notches().iter().map(|n| n.cuts().len()).sum();
    let snips = strokes.iter().filter(|(from, to)| {
        let to_leg = legs.iter().any(|leg| to.distance(*leg) < 1e-6);
        !to_leg && from.distance(*to) < 6.001
    });
    assert_eq!(snips.count(), cuts, "{what}: notches");
}

#[test]
fn layers_and_key_are_those_of_the_nest_without() {
    let (stitched, cut) = pair(Block::Dress, &sleeved_table(), &Allowances::usual());
    let drawn = |graded: &Graded| nest(graded, Align::Nape, &labels()).unwrap();
    let (before, after) = (drawn(&stitched), drawn(&cut));
    let names = |d: &Drawing| {
        let shown = d.layers().iter().filter(|l| !l.hidden);
        shown.map(|l| l.name.clone()).collect::<Vec<_>>()
    };
    // The stitching lines of every size, until they are asked for.
    let hidden = after.layers().iter().filter(|l| l.hidden);
    assert_eq!(hidden.count(), cut.sizes().len());
    assert_eq!(names(&before), names(&after));
    let said = |drawing: &Drawing, wanted: &dyn Fn(&str) -> bool| {
        let items = drawing.layers().iter().flat_map(|l| &l.items);
        items
            .filter(|item| matches!(item, Item::Text(text) if wanted(&text.text)))
            .count()
    };
    // A label in the key of every piece, and at its corners.
    for label in stitched.labels() {
        assert!(said(&after, &|t| t == label) >= 6, "{label}");
    }
    let shown: &dyn Fn(&str) -> bool = &|t| t.starts_with("cut lines shown,");
    let add: &dyn Fn(&str) -> bool = &|t| t.contains("add seam allowance");
    assert_eq!((said(&before, shown), said(&before, add)), (0, 3));
    assert_eq!((said(&after, shown), said(&after, add)), (3, 0));
    // What grows are the stitching lines.
    let [a, b] = [&stitched, &cut].map(|g| g.increments(Align::Nape));
    assert_eq!(a, b);
}

#[test]
fn a_size_without_room_is_named() {
    let table = table("workshop-range");
    let mut dress = recipe(Block::Dress);
    let graded = grade(&dress, &table).unwrap();
    let mut partly = 0;
    for width in (20..=100).step_by(4).map(f64::from) {
        let widths = Allowances::all_round(width).unwrap();
        let refused: Vec<&str> = graded
            .sizes()
            .iter()
            .filter(|size| CutLines::new(size.pattern(), &widths).is_err())
            .map(|size| size.label())
            .collect();
        partly += usize::from((1..5).contains(&refused.len()));
        dress.allowances = Some(widths);
        match grade(&dress, &table) {
            Ok(cut) => {
                assert!(refused.is_empty(), "{width}");
                assert!(cut.sizes().iter().all(|size| size.cut().is_some()));
            }
            Err(error) => {
                let GradingError::Size { source, .. } = &error else {
                    panic!("{width}: {error}");
                };
                assert!(
                    matches!(source, MakeError::Allowance { .. }),
                    "{width}: {error}"
                );
                assert_eq!(error.size(), refused.first().copied());
                assert_eq!(error.code(), "no_room_for_allowance");
                let message = error.to_string();
                let expected = format!("size {}: the seam allowance", refused[0]);
                assert!(message.starts_with(&expected), "{message}");
            }
        }
    }
    assert!(
        partly > 0,
        "at some width some sizes have room and others none"
    );
}
