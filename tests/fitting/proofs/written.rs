//! What stands in the account, and in the document that is written of it.

use super::drafted;
use blockwright::alterations::{Alteration, CATALOGUE, OneSided, alter};
use blockwright::draft::Block;
use blockwright::piece::{BodySide, Measure};
use blockwright::render::json;
use serde_json::Value;

/// A measure object says the same as the words beside it, on pieces that the document has.
fn agrees(measure: &Value, words: &Value, document: &Value) {
    let typed: Measure = serde_json::from_value(measure.clone()).unwrap();
    assert_eq!(words.as_str(), Some(typed.to_string().as_str()));
    if let Some(piece) = measure.get("piece") {
        let pieces = document["pieces"].as_array().unwrap();
        assert!(pieces.iter().any(|p| p["name"] == *piece), "{measure}");
    } else if let Some(line) = measure.get("line") {
        let pieces = document["pieces"].as_array().unwrap();
        let mut lines = pieces.iter().flat_map(|p| p["lines"].as_array().unwrap());
        assert!(lines.any(|l| l["name"] == *line), "{measure}");
    } else {
        let girth = measure["girth"].as_str().unwrap();
        assert!(document["girths"].get(girth).is_some(), "{measure}");
    }
}

#[test]
fn a_typed_measure_stands_beside_the_words() {
    let body = crate::support::bodies::body(1680.0, 940.0, 780.0, 1020.0);
    for entry in CATALOGUE {
        if !entry.blocks.contains(&"dress") {
            continue;
        }
        for side in [None, Some(BodySide::Left)] {
            let example = (entry.example)();
            let step: Box<dyn Alteration> = match side {
                Some(side) => Box::new(OneSided::new(side, example)),
                None => example,
            };
            let Ok(done) = alter(&drafted(Block::Dress), &[step]) else {
                continue;
            };
            let document = json::document(&done.pattern, &body, "Dress", &done.accounts);
            let document = serde_json::to_value(document).unwrap();
            let account = &document["account"][0];
            let changes = account["changes"].as_array().unwrap();
            assert!(!changes.is_empty(), "{} changes nothing", entry.name);
            for change in changes {
                let pieces_gone = entry.name == "dart_to_seam";
                if !(pieces_gone && change["after"].is_null()) {
                    agrees(&change["measure"], &change["what"], &document);
                }
                assert!(change["before"].is_number() || change["after"].is_number());
            }
            let kept = account["kept"].as_array().unwrap();
            let measures = account["kept_measures"].as_array().unwrap();
            assert_eq!(kept.len(), measures.len());
            assert!(!kept.is_empty(), "{} kept nothing", entry.name);
            for (words, measure) in kept.iter().zip(measures) {
                agrees(measure, words, &document);
            }
            if let Some(side) = side {
                // On its side something changed; on the other all stayed but what meets it at the
                // centre half way, trued at the hem or at a bodice's waist.
                let of = |list: &[Value], side: BodySide| {
                    let named = |m: &&Value| m["side"] == side.name();
                    list.iter().filter(named).count()
                };
                let changed: Vec<Value> = changes.iter().map(|c| c["measure"].clone()).collect();
                let met = ["centre_back", "centre_front", "hem"];
                let mut alone = changed.clone();
                alone.retain(|m| !met.iter().any(|edge| m["edge"] == *edge));
                assert_eq!(of(&alone, side.other()), 0, "{}", entry.name);
                let unlike = done.pattern.pieces().iter().any(|p| p.side() == Some(side));
                assert!(!unlike || of(&changed, side) > 0, "{}", entry.name);
                // What is divided promises nothing of itself.
                let divides = entry.name == "dart_to_seam";
                let other = of(measures, side.other());
                assert!(!unlike || divides || other > 0, "{}", entry.name);
            }
        }
    }
}
