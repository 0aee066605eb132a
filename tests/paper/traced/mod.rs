//! A drawing read back as a block: what was drafted and exported is the same again, however the
//! drawing says it, and what is missing is named.
#![cfg(all(feature = "own-block", feature = "yaml"))]
#![allow(clippy::unwrap_used, clippy::panic)]

use crate::support::bodies::{set, with_usual_sleeve};
use blockwright::allowance::{Allowances, CutLines};
use blockwright::alterations::{
    Alteration, HipGirth, LengthAt, LengthChange, ShoulderWidth, alter,
};
use blockwright::draft::{Block, draft};
use blockwright::drawing::{PatternLabels, pattern_sheet, pattern_sheet_to_cut};
use blockwright::geometry::kurbo::{Affine, BezPath, PathEl};
use blockwright::geometry::{Curve, Point};
use blockwright::measurements::Body;
use blockwright::piece::{Pattern, Piece};
use blockwright::recipe::OwnBlock;
use blockwright::render::traced::{TracedError, trace};
use blockwright::render::{json, json::PatternDocument, svg};

/// How far anything may be off, in millimetres.
const SAME: f64 = 0.01;

fn drawing(pattern: &Pattern) -> String {
    svg::render(&pattern_sheet(pattern, &PatternLabels::new("Traced")).unwrap())
}

/// The same with seam and hem allowances.
fn drawing_with_allowances(pattern: &Pattern) -> String {
    let cut = CutLines::new(pattern, &Allowances::usual()).unwrap();
    svg::render(&pattern_sheet_to_cut(pattern, &PatternLabels::new("Traced"), &cut).unwrap())
}

fn same_curve(a: &Curve, b: &Curve, within: f64, what: &str) {
    for share in 0..=24 {
        let at = |curve: &Curve| {
            let along = curve.length() * f64::from(share) / 24.0;
            curve.point_at(along).unwrap().0
        };
        let off = at(a).distance(at(b));
        assert!(off < within, "{what}: {off:.4} mm off at {share}/24");
    }
}

fn same_piece(a: &Piece, b: &Piece, within: f64, what: &str) {
    let what = format!("{what}, {}", a.name());
    assert_eq!((a.name(), a.cut(), a.side()), (b.name(), b.cut(), b.side()));
    let edges = a.outline().edges().iter().zip(b.outline().edges());
    for (one, other) in edges {
        assert_eq!((one.name(), one.role()), (other.name(), other.role()));
        same_curve(
            one.curve(),
            other.curve(),
            within,
            &format!("{what} {}", one.name()),
        );
    }
    assert_eq!(a.darts().len(), b.darts().len(), "{what}");
    for one in a.darts() {
        let other = b.dart(&one.name).unwrap();
        assert_eq!(
            (&one.edge, one.pressed),
            (&other.edge, other.pressed),
            "{what}"
        );
        for (p, q) in one.to_polyline().iter().zip(other.to_polyline()) {
            assert!(p.distance(q) < within, "{what} {} dart", one.name);
        }
    }
    for line in a.lines() {
        same_curve(
            &line.curve,
            &b.line(&line.name).unwrap().curve,
            within,
            &what,
        );
    }
    for point in a.points() {
        let there = b
            .point(&point.name)
            .unwrap_or_else(|| panic!("{what}: no {}", point.name));
        assert!(point.at.distance(there) < within, "{what} {}", point.name);
    }
    assert_eq!(a.notches().len(), b.notches().len(), "{what}");
    for notch in a.notches() {
        let other = b
            .notches()
            .iter()
            .find(|other| other.name == notch.name)
            .unwrap();
        assert_eq!(
            (&notch.edge, notch.kind),
            (&other.edge, other.kind),
            "{what}"
        );
        assert!(
            (notch.at - other.at).abs() < within,
            "{what} notch {}",
            notch.name
        );
    }
    for (p, q) in a.grain().iter().zip(b.grain()) {
        assert!(p.distance(q) < within, "{what} grain");
    }
}

fn same(a: &Pattern, b: &Pattern, within: f64, what: &str) {
    assert_eq!(a.pieces().len(), b.pieces().len());
    for (one, other) in a.pieces().iter().zip(b.pieces()) {
        same_piece(one, other, within, what);
    }
    for (one, other) in a.seams().iter().zip(b.seams()) {
        assert_eq!(
            (&one.a, &one.b, one.ease_on),
            (&other.a, &other.b, other.ease_on),
            "{what}"
        );
        assert!(
            (one.ease - other.ease).abs() < 2.0 * within,
            "{what} {}",
            one.name
        );
    }
    for (one, other) in a.girths().iter().zip(b.girths()) {
        assert_eq!(
            (&one.name, &one.runs, one.body),
            (&other.name, &other.runs, other.body)
        );
        let off = a.finished(one) - b.finished(other);
        assert!(off.abs() < 4.0 * within, "{what} {}", one.name);
    }
}

fn steps(block: Block) -> Vec<Box<dyn Alteration>> {
    if block == Block::Bodice {
        return vec![Box::new(ShoulderWidth { amount: 6.0 })];
    }
    let length = LengthChange {
        at: LengthAt::Skirt,
        amount: 15.0,
    };
    vec![Box::new(HipGirth { amount: 16.0 }), Box::new(length)]
}

#[test]
fn every_block_comes_back_and_is_altered_as_it_was() {
    for block in Block::ALL {
        for wearer in ["tilde", "ines", "odile"] {
            let what = format!("{block} of {wearer}");
            let set = set(wearer);
            let body = set.body();
            let drafted = draft(body, &with_usual_sleeve(block)).unwrap();
            let traced = trace(&drawing(&drafted), block, &[], body);
            let traced = traced.unwrap_or_else(|error| panic!("{what}: {error}"));
            same(&drafted, &traced, SAME, &what);
            let to_cut = trace(&drawing_with_allowances(&drafted), block, &[], body);
            let to_cut = to_cut.unwrap_or_else(|error| panic!("{what} to cut: {error}"));
            same(&drafted, &to_cut, SAME, &what);
            let own = OwnBlock::new("mine.svg", traced.clone(), body.clone(), Vec::new());
            let own = own.unwrap_or_else(|error| panic!("{what}: {error}"));
            assert!(own.pattern().is_some());
            let before = alter(&drafted, &steps(block)).unwrap();
            let after = alter(&traced, &steps(block)).unwrap_or_else(|e| panic!("{what}: {e}"));
            same(&before.pattern, &after.pattern, 0.05, &what);
            let text = json::render(&after.pattern, body, "Traced", &after.accounts);
            let read = PatternDocument::read_proved(text.as_bytes()).unwrap();
            assert_eq!(read.pattern, after.pattern);
        }
    }
}

/// A body, a skirt drafted for it, and the skirt's drawing.
fn skirt() -> (Body, Pattern, String) {
    let body = set("ines").body().clone();
    let skirt = draft(&body, &with_usual_sleeve(Block::Skirt)).unwrap();
    let text = drawing(&skirt);
    (body, skirt, text)
}

fn data(path: &BezPath) -> String {
    let at = |p: &Point| format!("{:.9} {:.9}", p.x, p.y);
    let command = |element: &PathEl| match element {
        PathEl::MoveTo(p) => format!("M{}", at(p)),
        PathEl::LineTo(p) => format!("L{}", at(p)),
        PathEl::QuadTo(p, q) => format!("Q{} {}", at(p), at(q)),
        PathEl::CurveTo(p, q, r) => format!("C{} {} {}", at(p), at(q), at(r)),
        PathEl::ClosePath => "Z".to_owned(),
    };
    path.elements().iter().map(command).collect()
}

/// The path data of a drawing moved by `motion`, and its frame replaced.
fn redrawn(text: &str, motion: Affine, frame: &str, tail: &str) -> String {
    let document = roxmltree::Document::parse(text).unwrap();
    let mut out = String::from(frame);
    for node in document
        .descendants()
        .filter(|node| node.has_tag_name("path"))
    {
        let Some(id) = node.attribute("id") else {
            continue;
        };
        let path = motion * BezPath::from_svg(node.attribute("d").unwrap()).unwrap();
        out.push_str(&format!("<path id=\"{id}\" d=\"{}\"/>\n", data(&path)));
    }
    out + tail
}

#[test]
fn units_view_boxes_and_transforms_say_the_same_drawing() {
    let (body, skirt, text) = skirt();
    let inches = Affine::scale(1.0 / 25.4);
    let pixels = Affine::scale(96.0 / 25.4);
    let turned = Affine::translate((40.0, 30.0)) * Affine::rotate(0.35);
    let mirrored = Affine::new([-1.0, 0.0, 0.0, 1.0, 900.0, 0.0]);
    let cases = [
        (
            "inches",
            inches,
            "<svg width='40in' height='30in' viewBox='0 0 40 30'>",
            "</svg>",
        ),
        (
            "pixels",
            pixels,
            "<svg width='4000' height='3000px'>",
            "</svg>",
        ),
        (
            "a view box twice as fine",
            Affine::translate((100.0, -50.0)) * Affine::scale(2.0),
            "<svg width='100cm' height='80cm' viewBox='100 -50 2000 1600'>",
            "</svg>",
        ),
        (
            "a view box that is centred",
            Affine::scale(2.0),
            "<svg width='150cm' height='80cm' viewBox='0 0 2000 1600'>",
            "</svg>",
        ),
        (
            "groups in groups",
            turned.inverse() * Affine::scale(1.0 / 3.0),
            "<svg width='1000mm' height='800mm' viewBox='0 0 1000 800'><g transform='scale(3)'>\
             <g transform='translate(40 30)'><g transform='rotate(20.05352282957881)'>",
            "</g></g></g></svg>",
        ),
        (
            "a drawing in a drawing",
            Affine::scale(10.0),
            "<svg width='1000mm' height='800mm' viewBox='0 0 1000 800'>\
             <svg x='20' y='30' width='1000' height='800' viewBox='0 0 10000 8000'>",
            "</svg></svg>",
        ),
        (
            "a mirrored drawing on a tilted sheet",
            Affine::rotate(0.02) * mirrored,
            "<svg width='1000mm' height='800mm' viewBox='0 0 1000 800'>",
            "</svg>",
        ),
    ];
    for (what, motion, frame, tail) in cases {
        let name = " xmlns='http://www.w3.org/2000/svg'";
        let frame = frame.replacen("<svg", &format!("<svg{name}"), 1);
        let drawing = redrawn(&text, motion, &frame, tail);
        let traced = trace(&drawing, Block::Skirt, &[], &body);
        let traced = traced.unwrap_or_else(|error| panic!("{what}: {error}"));
        same(&skirt, &traced, SAME, what);
    }
}

/// The length of an arc is its radius times its angle.
#[test]
fn relative_commands_and_arcs_are_followed() {
    let (body, skirt, text) = skirt();
    let hem = skirt.pieces()[0].outline().edges()[2].curve().clone();
    let document = roxmltree::Document::parse(&text).unwrap();
    let mut nodes = document.descendants();
    let node = nodes
        .find(|node| node.attribute("id") == Some("back.hem"))
        .unwrap();
    let drawn = node.attribute("d").unwrap();
    let start = BezPath::from_svg(drawn).unwrap().segments().next().unwrap();
    let (width, from) = (hem.length(), start.to_cubic().p0);
    let radius = 3000.0;
    for (way, sweep) in [("in", 0), ("out", 1)] {
        let arc = format!(
            "m{} {}a{radius} {radius} 0 0 {sweep} {} 0",
            from.x, from.y, -width
        );
        let traced = trace(&text.replace(drawn, &arc), Block::Skirt, &[], &body).unwrap();
        let found = traced.pieces()[0].outline().edges()[2].length();
        let wanted = 2.0 * radius * (width / 2.0 / radius).asin();
        assert!((found - wanted).abs() < SAME, "{way}: {found} and {wanted}");
    }
}

#[test]
fn other_ids_are_given_names_and_what_is_missing_is_named_with_its_place() {
    let (body, skirt, text) = skirt();
    let names = [("path12".to_owned(), "back.side_seam".to_owned())];
    let other = text.replace("id=\"back.side_seam\"", "id=\"path12\"");
    let traced = trace(&other, Block::Skirt, &names, &body).unwrap();
    same(&skirt, &traced, SAME, "with another id");
    let refused = |text: &str, names: &[(String, String)]| {
        let error = trace(text, Block::Skirt, names, &body).unwrap_err();
        (error.to_string(), error)
    };
    let (said, _) = refused(&other, &[]);
    assert!(
        said.contains("no `back.side_seam`") && said.contains("`back.waist` and `back.hem`"),
        "{said}"
    );
    let (said, _) = refused(&text, &names);
    assert!(
        said.contains("path12") && said.contains("nothing has this id"),
        "{said}"
    );
    let (said, _) = refused(&text.replace("\"back.centre_back\"", "\"x\""), &[]);
    assert!(
        said.contains("it is the fold between `back.hem` and `back.waist`"),
        "{said}"
    );
    let (said, _) = refused(&text.replace("\"back.hip_line\"", "\"x\""), &[]);
    assert!(
        said.contains("no `back.hip_line`") && said.contains("hip girth"),
        "{said}"
    );
    let (said, _) = refused(&text.replace("\"back.hem\"", "\"back.hen\""), &[]);
    assert!(
        said.contains("did you mean `back.hem`?") && said.contains("line "),
        "{said}"
    );
    let (said, _) = refused(&text.replace("\"back.", "\"bakc."), &[]);
    assert!(said.contains("did you mean the piece `back`?"), "{said}");
    let short = text.replace(
        "id=\"front.hem\"",
        "id=\"front.hem\" transform=\"translate(0 9)\"",
    );
    let (said, error) = refused(&short, &[]);
    assert!(said.contains("9.0 mm apart near"), "{said}");
    assert!(matches!(error, TracedError::Open { gap, .. } if (gap - 9.0).abs() < 0.01));
    let (said, _) = refused(
        &text
            .replace("mm\" viewBox", "%\" viewBox")
            .replace("mm\" height", "%\" height"),
        &[],
    );
    assert!(said.contains("how large it is"), "{said}");
    let (said, _) = refused("<svg", &[]);
    assert!(said.contains("not an SVG"), "{said}");
    let (said, _) = refused(&format!("<!DOCTYPE svg>{text}"), &[]);
    assert!(
        said.contains("`<!DOCTYPE` declaration; delete it"),
        "{said}"
    );
    let (said, _) = refused(&text.replace("d=\"M", "d=\"MM"), &[]);
    assert!(said.contains("path data cannot be read"), "{said}");
    // A gap narrower than a pencil line is closed.
    let near = text.replace(
        "id=\"front.hem\"",
        "id=\"front.hem\" transform=\"translate(0 .6)\"",
    );
    let traced = trace(&near, Block::Skirt, &[], &body).unwrap();
    for (one, other) in skirt.pieces().iter().zip(traced.pieces()) {
        same_piece(one, other, 0.7, "a small gap");
    }
}
