//! Pieces laid for the pages: fewer of them, nothing lost, nothing over another. What is tested
//! is the outlines of the pieces themselves, by a geometry library that had no part in it.

use blockwright::draft::Block;
use blockwright::drawing::{Placement, lay};
use blockwright::piece::{Cut, Pattern};
use blockwright::render::pdf::{Orientation, PaperFormat, TileOptions, TilePlan, tiles_of};
use geo::{Distance, Euclidean, Intersects, LineString, Polygon};
use kurbo::{Affine, BezPath, Point};

use super::demo::info;
use super::jobs::{BUILDS, parts, pattern};

const PAPERS: [PaperFormat; 8] = [
    PaperFormat::A4,
    PaperFormat::Letter,
    PaperFormat::Roll { width: 594.0 },
    PaperFormat::A3,
    PaperFormat::Legal,
    PaperFormat::A0,
    PaperFormat::Roll { width: 914.0 },
    PaperFormat::Roll { width: 1067.0 },
];

/// The outline of every piece as it lies, as a polygon with points at most a few mm apart.
fn outlines(pattern: &Pattern, placements: &[Placement]) -> Vec<Vec<Point>> {
    let laid = pattern.pieces().iter().zip(placements);
    laid.map(|(piece, placement)| {
        let turn = if placement.turned { -1.0 } else { 1.0 };
        let motion = Affine::translate(placement.by) * Affine::scale(turn);
        let mut path = BezPath::new();
        for edge in piece.outline().edges() {
            for number in 0..200 {
                let at = edge.curve().length() * f64::from(number) / 200.0;
                let (point, _) = edge.curve().point_at(at).unwrap();
                if path.is_empty() {
                    path.move_to(motion * point);
                } else {
                    path.line_to(motion * point);
                }
            }
        }
        let points = path.elements().iter().filter_map(|el| el.end_point());
        points.collect()
    })
    .collect()
}

fn polygon(points: &[Point]) -> Polygon<f64> {
    let ring: LineString<f64> = points.iter().map(|p| (p.x, p.y)).collect();
    Polygon::new(ring, Vec::new())
}

fn shown(plan: &TilePlan, at: Point) -> bool {
    let inside = |rect: kurbo::Rect| rect.inflate(1e-6, 1e-6).contains(at);
    plan.tiles.iter().any(|tile| inside(tile.shown))
}

#[test]
fn never_more_pages_and_no_piece_lost_or_over_another() {
    let (mut found, mut plain) = (0, 0);
    for block in Block::ALL {
        for build in BUILDS {
            let pattern = pattern(block, build);
            let (parts, sheet) = parts(&pattern);
            let all = if build == BUILDS[1] { 8 } else { 3 };
            for paper in PAPERS.into_iter().take(all) {
                let what = format!("{} {build:?} {}", block.name(), paper.name());
                let options = TileOptions::default();
                let tiled = tiles_of(&parts, &sheet, paper, &options, &info()).unwrap();
                let plan = &tiled.plan;
                assert!(plan.page_count() <= plan.plain_page_count, "{what}");
                assert_eq!(tiled.drawing, lay(&parts, &tiled.placements).unwrap());
                if matches!(paper, PaperFormat::A4 | PaperFormat::Letter) {
                    found += plan.page_count();
                    plain += plan.plain_page_count;
                }
                for (piece, placement) in pattern.pieces().iter().zip(&tiled.placements) {
                    assert!(!placement.turned || piece.cut() != Cut::Fold, "{what}");
                }
                let outlines = outlines(&pattern, &tiled.placements);
                for (number, outline) in outlines.iter().enumerate() {
                    assert!(outline.iter().all(|at| shown(plan, *at)), "{what}");
                    for other in &outlines[..number] {
                        let (one, other) = (polygon(outline), polygon(other));
                        assert!(!one.intersects(&other), "{what}");
                        let apart = Euclidean.distance(&one, &other);
                        assert!(apart > 5.0, "{what}: only {apart:.1} mm apart");
                    }
                }
            }
        }
    }
    // Much is saved on the whole, not only here and there.
    eprintln!("{found} pages where plain grids take {plain}");
    assert!(found * 100 < plain * 85, "{found} pages, {plain} plain");
}

#[test]
fn the_same_pieces_always_lie_alike_and_either_way_round_is_kept() {
    let (parts, sheet) = parts(&pattern(Block::Dress, BUILDS[1]));
    for (orientation, landscape) in [
        (Orientation::Portrait, false),
        (Orientation::Landscape, true),
    ] {
        let options = TileOptions {
            orientation,
            ..TileOptions::default()
        };
        let tile = || tiles_of(&parts, &sheet, PaperFormat::A4, &options, &info()).unwrap();
        let once = tile();
        assert_eq!(once.plan.landscape, landscape);
        assert_eq!(once, tile());
    }
}

#[test]
fn a_page_from_a_roll_is_as_wide_as_the_roll_and_as_long_as_needed() {
    let (parts, sheet) = parts(&pattern(Block::Dress, BUILDS[1]));
    let options = TileOptions::default();
    let mut last = f64::INFINITY;
    for width in [594.0, 610.0, 841.0, 914.0, 1067.0] {
        let paper = PaperFormat::Roll { width };
        let tiled = tiles_of(&parts, &sheet, paper, &options, &info()).unwrap();
        let plan = &tiled.plan;
        assert_eq!(plan.tiles.len(), 1, "{width}");
        assert_eq!(plan.page_size.width, width);
        // Margins, the foot, and less than 3 mm lost.
        let needed = tiled.drawing.bounds().height() + 2.0 * options.margin + 10.0;
        let spare = plan.page_size.height - needed;
        assert!((0.0..3.0).contains(&spare), "{width}: {spare} mm to spare");
        assert!(plan.page_size.height <= last);
        last = plan.page_size.height;
        let document = lopdf::Document::load_mem(&tiled.bytes).unwrap();
        let page = document.get_dictionary(document.get_pages()[&2]).unwrap();
        assert!(page.get(b"UserUnit").is_err());
    }
}

#[test]
fn what_is_wider_than_the_roll_is_cut_into_strips() {
    // A skirt panel of 800 mm on a roll that shows 570.
    let drawing = super::demo::one_line((0.0, 0.0), (800.0, 900.0));
    let part = blockwright::drawing::SheetPart::new("panel", drawing, false);
    let sheet = [Placement {
        turned: false,
        by: (0.0, 0.0).into(),
    }];
    let paper = PaperFormat::Roll { width: 594.0 };
    let options = TileOptions::default();
    let tiled = tiles_of(&[part], &sheet, paper, &options, &info()).unwrap();
    assert_eq!((tiled.plan.rows, tiled.plan.columns), (1, 2));
    assert_eq!(
        tiled.plan.tiles[1].area.x0 - tiled.plan.tiles[0].area.x0,
        560.0
    );
}

#[test]
fn what_is_longer_than_a_page_can_be_goes_on_below() {
    let drawing = super::demo::one_line((0.0, 0.0), (100.0, 12_000.0));
    let part = blockwright::drawing::SheetPart::new("sash", drawing, false);
    let sheet = [Placement {
        turned: false,
        by: (0.0, 0.0).into(),
    }];
    let paper = PaperFormat::Roll { width: 914.0 };
    let options = TileOptions::default();
    let tiled = tiles_of(&[part], &sheet, paper, &options, &info()).unwrap();
    assert_eq!((tiled.plan.rows, tiled.plan.columns), (3, 1));
    assert!(tiled.plan.page_size.height <= 5000.0);
}
