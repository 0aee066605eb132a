//! The sleeves of the surveyed women, a sample of them or everybody (`BLOCKWRIGHT_WHOLE=1`): how high
//! their caps are, how wide they are at arm and wrist.

use super::tally::{FITS, Garment, Outcome, attempt};
use crate::support::survey::{body_of, sample, tell};
use blockwright::draft::Block;
use blockwright::piece::{EdgeName, EdgeRef, Pattern};

/// What a cutter looks at in a sleeve.
struct Sleeve {
    who: String,
    /// Cap height as a share of the armscye.
    cap: f64,
    cap_ease: f64,
    arm_ease: f64,
    /// Finished wrist less wrist and ease.
    wrist_miss: f64,
}

fn sleeve(who: &str, pattern: &Pattern) -> Sleeve {
    let piece = pattern.piece("sleeve").expect("a sleeve");
    let armscye: f64 = ["back", "front"]
        .into_iter()
        .filter_map(|piece| pattern.seam_length(&EdgeRef::new(piece, EdgeName::ARMSCYE)))
        .sum();
    let girth = |name: &str| {
        let girth = pattern.girths().iter().find(|g| g.name == name);
        girth.expect("a girth of the sleeve")
    };
    let cap = piece.outline().edge(&EdgeName::SLEEVE_CAP).expect("a cap");
    // A short sleeve has a hem, but no wrist whose girth was asked for.
    let wrist = piece.outline().edge(&EdgeName::WRIST).expect("a wrist");
    let asked = pattern.girths().iter().find(|g| g.name == "wrist");
    Sleeve {
        who: who.to_owned(),
        cap: -cap.curve().bounds().y0 / armscye,
        cap_ease: cap.curve().length() - armscye,
        arm_ease: pattern.finished(girth("upper_arm")) - girth("upper_arm").body,
        wrist_miss: asked.map_or(0.0, |g| wrist.curve().length() - g.body - g.ease),
    }
}

fn spread(what: &str, digits: usize, mut values: Vec<f64>) {
    values.sort_by(f64::total_cmp);
    let at = |share: f64| values[((values.len() - 1) as f64 * share).round() as usize];
    tell(&format!(
        "  {what:<22} least {:.digits$}  5 % {:.digits$}  median {:.digits$}  95 % {:.digits$}  most {:.digits$}",
        at(0.0),
        at(0.05),
        at(0.5),
        at(0.95),
        at(1.0)
    ));
}

/// Cap height a quarter to a third of the armscye where the sleeve fits closely, a fifth to a
/// quarter in shirt and tunic: a third (a mid-20th-century drafting course, as transcribed); caps
/// of 12 to 15 cm are 0.27 to 0.34 of armscyes of 42 to 46, of 9 to 12 less than 0.27
/// (computed); a quarter to a fifth for shirts (value from memory).
fn caps_suit(block: Block, (low, high): (f64, f64), ease: (f64, f64)) {
    let table = sample(300, 44);
    for fit in FITS {
        let mut sleeves = Vec::new();
        for row in &table.rows {
            let made = attempt(Garment::sleeved(block), &body_of(row), fit);
            if let Outcome::Drafted(pattern, _) = made {
                sleeves.push(sleeve(row.text("id"), &pattern));
            }
        }
        tell(&format!(
            "sleeves, {}, {}: {} women",
            block.name(),
            fit.name(),
            sleeves.len()
        ));
        spread(
            "cap height / armscye",
            3,
            sleeves.iter().map(|s| s.cap).collect(),
        );
        spread("cap ease", 1, sleeves.iter().map(|s| s.cap_ease).collect());
        spread(
            "upper arm ease",
            1,
            sleeves.iter().map(|s| s.arm_ease).collect(),
        );
        sleeves.sort_by(|a, b| a.cap.total_cmp(&b.cap));
        let names = |some: &[Sleeve]| {
            let names: Vec<&str> = some.iter().map(|s| s.who.as_str()).collect();
            names.join(" ")
        };
        tell(&format!(
            "  lowest caps: {}; highest: {}",
            names(&sleeves[..5]),
            names(&sleeves[sleeves.len() - 5..])
        ));
        let inside = sleeves.iter().filter(|s| (low..=high).contains(&s.cap));
        let share = inside.count() as f64 / sleeves.len() as f64;
        tell(&format!(
            "  {:.1} % of the caps from {low} to {high}",
            100.0 * share
        ));
        assert!(share >= 0.97, "{} {}: {share}", block.name(), fit.name());
        assert!(sleeves.len() as f64 >= 0.99 * table.rows.len() as f64);
        for s in &sleeves {
            assert!(
                (ease.0..=ease.1).contains(&s.cap_ease),
                "{}: {}",
                s.who,
                s.cap_ease
            );
            assert!(
                s.wrist_miss.abs() <= 0.01,
                "{}: wrist {}",
                s.who,
                s.wrist_miss
            );
        }
    }
}

// Cap ease 25 to 48 mm for a woven dress sleeve (Santa Rosa Junior College, FASH 60), 0 to 15
// for a shirt (value from memory).
#[test]
fn caps_of_fitted_sleeves_are_a_quarter_to_a_third_of_the_armscye() {
    caps_suit(Block::Bodice, (0.25, 0.33), (25.0, 48.0));
    caps_suit(Block::Dress, (0.25, 0.33), (25.0, 48.0));
}

#[test]
fn caps_of_tunic_and_shirt_are_low() {
    caps_suit(Block::Tunic, (0.18, 0.25), (0.0, 20.0));
    caps_suit(Block::Shirt, (0.18, 0.25), (0.0, 20.0));
}
