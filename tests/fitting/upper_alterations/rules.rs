//! What every alteration owes.

use super::wardrobe::{Garment, wardrobe};
use crate::support::measures::reading;
use blockwright::alterations::{Alteration, Chain, alter, changes};
use blockwright::geometry::Curve;
use blockwright::piece::Pattern;

/// Alters every garment by each amount, laws and promises proved, and looks at each.
///
/// `may_refuse` says which garments may be refused, with the reason as text.
pub fn on_all(
    make: impl Fn(f64) -> Box<dyn Alteration>,
    amounts: &[f64],
    may_refuse: impl Fn(&Garment, f64, &str) -> bool,
    look: impl Fn(&Garment, f64, &Chain),
) {
    let mut refused = Vec::new();
    for garment in wardrobe() {
        for amount in amounts {
            match alter(&garment.pattern, &[make(*amount)]) {
                Ok(done) => look(&garment, *amount, &done),
                Err(why) if may_refuse(&garment, *amount, &why.to_string()) => {}
                Err(why) => refused.push(format!("{} by {amount}: {why}", garment.what)),
            }
        }
    }
    assert!(
        refused.is_empty(),
        "{} refused:\n{}",
        refused.len(),
        refused.join("\n")
    );
}

/// By none, nothing changes.
pub fn none_changes_nothing(
    make: impl Fn(f64) -> Box<dyn Alteration>,
    suits: impl Fn(&Garment) -> bool,
) {
    for garment in wardrobe().into_iter().filter(suits) {
        let done = alter(&garment.pattern, &[make(0.0)]).unwrap();
        let off = farthest(&garment.pattern, &done.pattern);
        assert!(off < 1e-6, "{}: {off}", garment.what);
        assert!(changes(&garment.pattern, &done.pattern).is_empty());
    }
}

/// There and back again, within a tenth of a millimetre.
pub fn undone(
    make: impl Fn(f64) -> Box<dyn Alteration>,
    amount: f64,
    suits: impl Fn(&Garment) -> bool,
) {
    for garment in wardrobe().into_iter().filter(suits) {
        let done = alter(&garment.pattern, &[make(amount), make(-amount)]);
        let done = done.unwrap_or_else(|why| panic!("{}: {why}", garment.what));
        let off = farthest(&garment.pattern, &done.pattern);
        assert!(off < 0.1, "{}: {off}", garment.what);
    }
}

/// What cannot be borne is refused, and what is no number.
pub fn too_much_is_refused(make: impl Fn(f64) -> Box<dyn Alteration>) {
    let pattern = super::wardrobe::pattern(blockwright::draft::Block::Dress, true, 1);
    for amount in [
        1e3,
        -1e3,
        1e300,
        -1e300,
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
    ] {
        assert!(alter(&pattern, &[make(amount)]).is_err(), "{amount}");
    }
}

/// How far the outline of one pattern lies off that of the other.
fn farthest(one: &Pattern, other: &Pattern) -> f64 {
    let mut most: f64 = 0.0;
    for piece in one.pieces() {
        let partner = other.piece(piece.name()).unwrap();
        for edge in piece.outline().edges() {
            let line: &Curve = partner.outline().edge(edge.name()).unwrap().curve();
            let length = edge.curve().length();
            for step in 0..=8 {
                let at = length * f64::from(step) / 8.0;
                most = most.max(line.nearest(edge.curve().point_at(at).unwrap().0).0);
            }
        }
    }
    most
}

/// A reading of a pattern; over a skirt, that of the bodice.
pub fn read(pattern: &Pattern, what: &str) -> f64 {
    reading(pattern, what)
        .or_else(|| reading(pattern, &format!("bodice {what}")))
        .unwrap_or_else(|| panic!("no {what}"))
}

/// Every one is read from settings that name nothing else, and refuses what it does not know.
#[test]
fn settings_are_read_and_unknown_ones_refused() {
    for (name, settings) in [
        (
            "back_length_increase",
            r#"{"amount": 8, "fullness": "dart"}"#,
        ),
        ("shoulder_slope", r#"{"degrees": 3, "underarm": "keep"}"#),
        ("forward_shoulder", r#"{"amount": 8}"#),
        ("shoulder_width", r#"{"amount": -8}"#),
        ("armscye_depth", r#"{"amount": 8}"#),
        ("neckline_depth", r#"{"amount": 10}"#),
        ("neckline_width", r#"{"amount": 6}"#),
        ("neckline_gape", r#"{"amount": 6}"#),
        ("shoulder_blade", r#"{"amount": 6}"#),
        ("bust_point", r#"{"amount": 15, "direction": "down"}"#),
        ("back_neck_gape", r#"{"amount": 5, "fullness": "dart"}"#),
        ("armscye_gape", r#"{"amount": 6, "side": "back"}"#),
        ("back_width", r#"{"amount": 10, "shoulder": "keep"}"#),
        ("bust_girth", r#"{"amount": 16}"#),
        ("front_length", r#"{"amount": -8}"#),
        ("front_width", r#"{"amount": 10}"#),
    ] {
        let read = blockwright::alterations::find(name).unwrap().read;
        let mut value: serde_json::Value = serde_json::from_str(settings).unwrap();
        assert_eq!(read(value.clone()).unwrap().name(), name);
        value["colour"] = "red".into();
        assert!(read(value).is_err(), "{name}");
    }
}
