//! Where two steps do not come to the same in both orders, whoever reads the report learns it.

use super::differences::measures_apart;
use crate::support::bodies::set;
use blockwright::alterations::{Request, alter, serde_json::json};
use blockwright::draft::{Block, draft};
use blockwright::recipe::{Recipe, Ways, make};
use blockwright::units::Unit;

/// A difference that is said, in millimetres.
const SAID: f64 = 0.5;

fn pairs() -> [[Request; 2]; 4] {
    let step = |name, settings| Request::new(name, settings).unwrap();
    let bust = || step("bust", json!({"amount": -10}));
    let gape = || step("armscye_gape", json!({"amount": 6, "side": "front"}));
    let point = || step("bust_point", json!({"amount": 10, "direction": "up"}));
    let waist = || step("waist_girth", json!({"amount": 16}));
    [
        [bust(), gape()],
        [gape(), bust()],
        [point(), waist()],
        [waist(), step("hip_girth", json!({"amount": 20}))],
    ]
}

#[test]
fn an_order_that_matters_is_reported_and_no_other() {
    let (mut said, mut silent) = (0, 0);
    for wearer in ["ines", "tilde"] {
        let set = set(wearer);
        for steps in pairs() {
            let mut recipe = Recipe::new("In this order", Block::Tunic);
            recipe.alterations = steps.to_vec();
            let made = make(&recipe, set.body(), Unit::Mm, Ways::Compared).unwrap();
            let drafted = draft(set.body(), &recipe.options).unwrap();
            let [first, second] = steps.map(|step| step.alteration().unwrap());
            let other = alter(&drafted, &[second, first]).map(|other| other.pattern);
            let apart = other.map_or(0.0, |other| measures_apart(&made.pattern, &other).0);
            let warnings = made.pattern.warnings().iter();
            let mut orders = warnings.filter(|warning| warning.code == "order_matters");
            match orders.next() {
                Some(warning) => {
                    said += 1;
                    let by = format!("{apart:.1} mm");
                    assert!(
                        apart > SAID && warning.text.contains(&by),
                        "{}",
                        warning.text
                    );
                }
                None => {
                    silent += 1;
                    assert!(apart <= SAID, "{wearer}: {apart} mm are not reported");
                }
            }
        }
    }
    assert!(said > 0 && silent > 0, "{said} said, {silent} not");
}
