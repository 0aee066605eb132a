//! The folds of a back that is too long for its wearer, and how they go as it is shortened.

use crate::support::survey::whole;
use blockwright::alterations::{Alteration, BackLengthReduction, alter};
use blockwright::draft::{Block, DraftOptions, draft};
use blockwright::form::Form;
use blockwright::measurements::{Body, Measurement};
use blockwright::toile::{Quality, Seating, Toile, ToileSettings};
use std::ops::ControlFlow;

/// A body that leans back by 14.4 degrees is some 25 mm shorter down the middle of the back than the
/// one that drafted the block: what is too much lies in folds above the waist, less of it as
/// the back is shortened.
#[test]
fn folds_at_the_small_of_the_back_go_as_it_is_shortened() {
    let body = Body::from_taken([
        (Measurement::Height, 1680.0),
        (Measurement::BustGirth, 920.0),
        (Measurement::WaistGirth, 760.0),
        (Measurement::HipGirth, 1000.0),
    ])
    .expect("a body");
    let tunic = draft(&body, &DraftOptions::of(Block::Tunic)).expect("a tunic");
    let form = Form::of(&body)
        .expect("a form")
        .leaned(14.4_f64.to_radians());
    let slack = |amount: f64, quality, seating| {
        let mut step = BackLengthReduction::by(amount);
        step.hips_checked = true;
        let steps: Vec<Box<dyn Alteration>> = vec![Box::new(step)];
        let pattern = match amount {
            0.0 => tunic.clone(),
            _ => alter(&tunic, &steps).expect("a shorter back").pattern,
        };
        let settings = ToileSettings {
            quality,
            seating,
            ..ToileSettings::default()
        };
        let toile = Toile::sew(&pattern, &form, &settings, &mut |_| {
            ControlFlow::Continue(())
        });
        let toile = toile.expect("a toile");
        let measures = toile.measures();
        let middle = measures
            .slack
            .iter()
            .find(|s| s.piece == "back" && s.share == 0.0);
        println!(
            "{quality:?} {seating:?} {amount}: {:.1} mm, {:?}",
            middle.expect("a back").slack,
            toile.rest()
        );
        middle.expect("a back").slack
    };
    if !whole() {
        let long = slack(0.0, Quality::Sketch, Seating::Neckline);
        let short = slack(25.0, Quality::Sketch, Seating::Neckline);
        assert!(long > short + 10.0, "{long} {short}");
        return;
    }
    // Between, cloth may come to rest in folds that lie across or down: the table is printed.
    for seating in [Seating::Neckline, Seating::NeckPoints] {
        let all = [0.0, 6.0, 12.0, 18.0, 25.0, 31.0].map(|mm| slack(mm, Quality::Draft, seating));
        assert!(all[0] > all[4] + 10.0, "{seating:?} {all:?}");
    }
}
