//! What stands in the file, group by group.

use super::files::{CASES, text};
use super::groups::{Record, records};
use blockwright::piece::Cut;

fn of_kind<'a>(records: &'a [Record], kind: &str) -> Vec<&'a Record> {
    records.iter().filter(|r| r.kind() == kind).collect()
}

#[test]
fn sections_stand_in_order_and_blocks_are_ended_and_put_once() {
    for case in &CASES {
        let outcome = case.outcome();
        let records = records(&text(&outcome, "pattern.dxf"));
        let sections: Vec<_> = of_kind(&records, "SECTION")
            .iter()
            .map(|section| section.value(2).unwrap())
            .collect();
        assert_eq!(sections, ["HEADER", "BLOCKS", "ENTITIES"]);
        assert_eq!(of_kind(&records, "ENDSEC").len(), 3);
        assert_eq!(records.last().unwrap().kind(), "EOF");
        let named = |kind| -> Vec<&str> {
            let found = of_kind(&records, kind);
            found.iter().map(|r| r.value(2).unwrap()).collect()
        };
        let pieces = outcome.pattern.pieces().len();
        assert_eq!(named("BLOCK").len(), pieces, "{}", case.name);
        assert_eq!(named("BLOCK"), named("INSERT"));
        assert_eq!(of_kind(&records, "ENDBLK").len(), pieces);
        // Every entity is one of those that old readers know, on a layer of the practice.
        for record in &records {
            let kind = record.kind();
            if ["SECTION", "ENDSEC", "EOF"].contains(&kind) {
                continue;
            }
            let known = [
                "BLOCK", "ENDBLK", "INSERT", "POLYLINE", "VERTEX", "SEQEND", "LINE", "POINT",
                "TEXT",
            ];
            assert!(known.contains(&kind), "{kind}");
            let layer: u8 = record.value(8).unwrap().parse().unwrap();
            assert!([1, 2, 3, 4, 6, 7, 8, 13, 14, 15].contains(&layer));
        }
        assert_eq!(
            of_kind(&records, "POLYLINE").len(),
            of_kind(&records, "SEQEND").len()
        );
    }
}

#[test]
fn no_date_and_no_author_are_written_and_again_gives_the_same_bytes() {
    for case in &CASES[..3] {
        let first = text(&case.outcome(), "pattern.dxf");
        assert_eq!(first, text(&case.outcome(), "pattern.dxf"));
        for unknown in ["Creation", "Author", "Material", "$TD"] {
            assert!(!first.contains(unknown), "{unknown}");
        }
    }
}

#[test]
fn pieces_say_how_often_they_are_cut() {
    for case in &CASES {
        let outcome = case.outcome();
        let records = records(&text(&outcome, "pattern.dxf"));
        let texts: Vec<&str> = of_kind(&records, "TEXT")
            .iter()
            .map(|t| t.value(1).unwrap())
            .collect();
        let with = |start: &str| -> Vec<&str> {
            let found = texts.iter().filter_map(|t| t.strip_prefix(start));
            found.collect()
        };
        let pieces = outcome.pattern.pieces();
        let names: Vec<_> = pieces.iter().map(|p| p.name()).collect();
        assert_eq!(with("Piece Name: "), names);
        let cuts: Vec<_> = pieces
            .iter()
            .map(|p| if p.cut() == Cut::Pair { "1,1" } else { "1" })
            .collect();
        assert_eq!(with("Quantity: "), cuts);
        assert_eq!(with("Units: "), ["METRIC"]);
        assert_eq!(with("Size: "), vec!["Ines"; pieces.len()]);
        assert_eq!(with("Sample Size: "), ["Ines"]);
    }
}

/// A piece for which the print is laid face down lies in the file as it is cut: it is the left
/// back that reaches to the left of the centre, the right one to the right.
#[test]
fn pieces_of_one_side_lie_as_in_the_garment() {
    let outcome = CASES[6].outcome();
    let text = text(&outcome, "pattern.dxf");
    let mut seen = 0;
    for piece in outcome.pattern.pieces() {
        assert!(matches!(piece.cut(), Cut::Single | Cut::SingleFaceDown));
        let name = piece.name().to_uppercase().replace(' ', "_");
        let start = text.find(&format!("BLOCK\r\n  8\r\n1\r\n  2\r\n{name}\r\n"));
        let rest = &text[start.unwrap()..];
        let block = records(&format!(
            "  0\r\n{}",
            &rest[..rest.find("ENDBLK").unwrap() - 5]
        ));
        let drawn = outcome.pattern.piece(piece.name()).unwrap().outline();
        let middle = |low: f64, high: f64| low.midpoint(high);
        let at = block
            .iter()
            .filter(|r| r.kind() == "VERTEX" && r.value(8) == Some("1"));
        let xs: Vec<f64> = at.map(|v| v.number(10)).collect();
        let low = xs.iter().copied().fold(f64::INFINITY, f64::min);
        let high = xs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let on_page = middle(drawn.bounds().x0, drawn.bounds().x1);
        let side = if piece.cut() == Cut::SingleFaceDown {
            -1.0
        } else {
            1.0
        };
        assert!((middle(low, high) - side * on_page).abs() < 0.02);
        if piece.name().starts_with("back") {
            assert_eq!(middle(low, high) < 0.0, piece.name() == "back left");
            seen += 1;
        }
    }
    assert_eq!(seen, 2);
}
