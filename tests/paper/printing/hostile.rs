//! What cannot be printed is refused; odd letters break nothing.

use blockwright::drawing::{
    Drawing, DrawingError, DrawnPath, Face, Ink, Layer, Pen, Text, TextStyle,
};
use blockwright::render::pdf::{
    MAX_PAGES, PaperFormat, PdfError, PrintInfo, TileOptions, sheet, tiles,
};
use blockwright::render::svg;
use kurbo::{BezPath, Rect, Shape as _};

use super::demo::{demo, info, one_line};

#[test]
fn what_cannot_be_printed_is_refused() {
    let drawing = demo();
    let tiled = |drawing: &Drawing, paper, options: &TileOptions| {
        tiles(drawing, paper, options, &info()).map(|(_, plan)| plan.page_count())
    };
    let usual = TileOptions::default();
    for (width, height) in [(20.0, 20.0), (0.0, 0.0), (100.0, 150.0), (210.0, 200.0)] {
        let refused = tiled(&drawing, PaperFormat::Custom { width, height }, &usual);
        assert!(
            matches!(refused, Err(PdfError::PaperTooSmall { .. })),
            "{width} × {height}"
        );
    }
    for side in [f64::NAN, f64::INFINITY, -210.0, 1e6] {
        for (width, height) in [(side, 297.0), (297.0, side), (side, side)] {
            let refused = tiled(&drawing, PaperFormat::Custom { width, height }, &usual);
            assert!(
                matches!(refused, Err(PdfError::BadOption { .. })),
                "{width} × {height}"
            );
        }
    }
    for value in [f64::NAN, f64::INFINITY, -1.0, 0.0, 1e9] {
        for options in [
            TileOptions {
                margin: value,
                ..usual
            },
            TileOptions {
                overlap: value,
                ..usual
            },
        ] {
            let refused = tiled(&drawing, PaperFormat::A4, &options);
            assert!(
                matches!(refused, Err(PdfError::BadOption { .. })),
                "{value}"
            );
        }
    }
    let many = Err(PdfError::TooManyPages { limit: MAX_PAGES });
    // 50 m each way, along the diagonal, around the edge and filled.
    let diagonal = one_line((0.0, 0.0), (50_000.0, 50_000.0));
    assert_eq!(tiled(&diagonal, PaperFormat::A4, &usual), many);
    let mut layer = Layer::new("field");
    let field = Rect::new(0.0, 0.0, 50_000.0, 50_000.0).to_path(0.1);
    layer.push(DrawnPath::filled(field, Ink::BLACK));
    assert_eq!(
        tiled(&Drawing::new(vec![layer]).unwrap(), PaperFormat::A4, &usual),
        many
    );
    // Two specks 200 m apart.
    let mut layer = Layer::new("specks");
    for at in [-99_990.0, 99_990.0] {
        layer.push(DrawnPath::line((at, at), (at + 1.0, at), Pen::solid(0.5)));
    }
    let specks = Drawing::new(vec![layer]).unwrap();
    assert_eq!(tiled(&specks, PaperFormat::A4, &usual), many);
    assert!(sheet(&specks, &info()).is_ok());
    // A straight line of 50 m along one row is long, but can be printed.
    let straight = one_line((0.0, 0.0), (50_000.0, 0.0));
    assert!(tiled(&straight, PaperFormat::A4, &usual).unwrap() > 150);

    let mut layer = Layer::new("white");
    layer.push(DrawnPath::line(
        (0.0, 0.0),
        (10.0, 0.0),
        Pen::solid(0.5).ink(Ink::WHITE),
    ));
    layer.push(Text::new(
        (0.0, 0.0),
        "  ",
        TextStyle::new(Face::Regular, 4.0),
    ));
    let white = Drawing::new(vec![layer]).unwrap();
    assert_eq!(
        tiled(&white, PaperFormat::A4, &usual),
        Err(PdfError::NothingToPrint)
    );
    assert_eq!(sheet(&white, &info()), Err(PdfError::NothingToPrint));
}

#[test]
fn odd_letters_break_nothing() {
    let style = TextStyle::new(Face::Regular, 5.0);
    let odd = "<b>&\"' ]]> \u{0}\u{1}\u{b}\u{7f}\u{fffe}\u{202e} 裁縫 👗 e\u{301} (\\) ½″";
    let mut layer = Layer::new("<&\"\u{0}裁>");
    layer.push(Text::new((0.0, 0.0), odd, style));
    layer.push(Text::new((0.0, 10.0), "", style));
    layer.push(Text::new((0.0, 20.0), "x".repeat(5_000), style));
    let drawing = Drawing::new(vec![layer]).unwrap();
    let text = svg::render(&drawing);
    let document = roxmltree::Document::parse(&text).unwrap();
    assert_eq!(
        document
            .descendants()
            .filter(|node| node.has_tag_name("text"))
            .count(),
        3
    );
    let info = PrintInfo::new(odd).subtitle(odd).contents([odd, ""]);
    let (bytes, _) = tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &info).unwrap();
    assert!(lopdf::Document::load_mem(&bytes).is_ok());
    assert!(lopdf::Document::load_mem(&sheet(&drawing, &info).unwrap()).is_ok());
}

/// Why a layer "a" holding a sound line and one more item is refused.
fn refused(item: impl Into<blockwright::drawing::Item>) -> DrawingError {
    let mut layer = Layer::new("a");
    layer.push(DrawnPath::line((0.0, 0.0), (1.0, 0.0), Pen::solid(0.5)));
    layer.push(item);
    Drawing::new(vec![layer]).unwrap_err()
}

#[test]
fn a_drawing_says_what_is_wrong_and_where() {
    let line = |x: f64, pen: Pen| DrawnPath::line((0.0, 0.0), (x, 0.0), pen);
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let error = refused(line(bad, Pen::solid(0.5)));
        assert!(matches!(error, DrawingError::NotFinite { item: 2, .. }));
        assert!(
            error.to_string().starts_with("layer 'a', item 2: x is"),
            "{error}"
        );
        let error = refused(line(1.0, Pen::solid(bad)));
        assert!(matches!(
            error,
            DrawingError::NotFinite {
                what: "line width",
                ..
            }
        ));
        let dashed = Pen::solid(0.5).dashed(&[1.0, bad]);
        assert!(matches!(
            refused(line(1.0, dashed)),
            DrawingError::BadSize { what: "dash", .. }
        ));
        let text = |size, turned| {
            Text::new((0.0, 0.0), "x", TextStyle::new(Face::Bold, size)).turned(turned)
        };
        assert!(matches!(
            refused(text(bad, 0.0)),
            DrawingError::NotFinite { .. }
        ));
        assert!(matches!(
            refused(text(4.0, bad)),
            DrawingError::NotFinite { .. }
        ));
    }
    let error = refused(line(1e9, Pen::solid(0.5)));
    assert!(matches!(error, DrawingError::TooFar { .. }), "{error}");
    for width in [0.0, -1.0, 1e6] {
        let error = refused(line(1.0, Pen::solid(width)));
        assert!(matches!(error, DrawingError::BadSize { .. }), "{error}");
    }
    let nothing = Pen::solid(0.5).dashed(&[0.0, 0.0]);
    assert!(matches!(
        refused(line(1.0, nothing)),
        DrawingError::BadSize { .. }
    ));
    let moved = BezPath::from_vec(vec![kurbo::PathEl::MoveTo((0.0, 0.0).into())]);
    for path in [BezPath::new(), moved] {
        let error = refused(DrawnPath::stroked(path, Pen::solid(0.5)));
        assert!(matches!(error, DrawingError::BadPath { .. }), "{error}");
    }
    assert_eq!(Drawing::new(vec![]), Err(DrawingError::Empty));
    assert_eq!(
        Drawing::new(vec![Layer::new("a")]),
        Err(DrawingError::Empty)
    );
    let twice = vec![Layer::new("a"), Layer::new("a")];
    assert!(matches!(
        Drawing::new(twice),
        Err(DrawingError::DuplicateLayer { .. })
    ));
    assert!(matches!(
        Drawing::new(vec![Layer::new(" ")]),
        Err(DrawingError::UnnamedLayer { number: 1 })
    ));
}
