//! Patterns of every kind to write: all blocks, sleeves, alterations, one side, allowances.

use crate::support::bodies::{Dice, body, with_usual_sleeve};
use blockwright::allowance::{Allowances, CutLines};
use blockwright::alterations::{Alteration, CATALOGUE, OneSided, alter};
use blockwright::draft::{Block, draft};
use blockwright::piece::BodySide;
use blockwright::render::json::PatternDocument;

/// A whole number below `count`.
pub fn one_of(dice: &mut Dice, count: usize) -> usize {
    (dice.within(0.0, count as f64) as usize).min(count - 1)
}

/// A random garment, if it can be made: block, body, up to three alterations, each perhaps on one
/// side, and perhaps an allowance.
pub fn garment(seed: u64) -> Option<PatternDocument> {
    let dice = &mut Dice::new(seed + 1);
    let block = Block::ALL[one_of(dice, Block::ALL.len())];
    let bust = dice.within(800.0, 1150.0);
    let body = body(
        dice.within(1520.0, 1820.0),
        bust,
        bust - dice.within(60.0, 240.0),
        bust + dice.within(20.0, 150.0),
    );
    let drafted = draft(&body, &with_usual_sleeve(block)).ok()?;
    let title = format!("{} \"{seed}\" \u{e9}\\", block.name());
    let mut document = PatternDocument::new(title, &body, drafted);
    for _ in 0..one_of(dice, 4) {
        let suited: Vec<_> = CATALOGUE
            .iter()
            .filter(|entry| entry.blocks.contains(&block.name()))
            .collect();
        let entry = suited[one_of(dice, suited.len())];
        let example = (entry.example)();
        let share = dice.within(-0.8, 1.0);
        let step = match example.amount() {
            Some(amount) => example.with_amount(amount * share),
            None => example,
        };
        let step: Box<dyn Alteration> = match one_of(dice, 3) {
            0 => Box::new(OneSided::new(BodySide::BOTH[one_of(dice, 2)], step)),
            _ => step,
        };
        if let Ok(done) = alter(&document.pattern, &[step]) {
            document.pattern = done.pattern;
            document.accounts.extend(done.accounts);
        }
    }
    if one_of(dice, 2) == 0 {
        let width = dice.within(5.0, 20.0);
        let widths = Allowances::all_round(width).ok()?.with("hem", 40.0).ok()?;
        document.cut = CutLines::new(&document.pattern, &widths).ok();
    }
    Some(document)
}

/// A tunic with sleeves, altered on one side and with an allowance: it has every part that a
/// document can have.
pub fn rich() -> PatternDocument {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    let drafted = draft(&body, &with_usual_sleeve(Block::Dress)).unwrap();
    let slope = CATALOGUE
        .iter()
        .find(|entry| entry.name == "shoulder_slope");
    let step = OneSided::new(BodySide::Left, (slope.unwrap().example)());
    let step: Box<dyn Alteration> = Box::new(step);
    let done = alter(&drafted, &[step]).unwrap();
    let mut document = PatternDocument::new("Dress", &body, done.pattern);
    document.accounts = done.accounts;
    document.cut = CutLines::new(&document.pattern, &Allowances::usual()).ok();
    assert!(document.cut.is_some());
    document
}
