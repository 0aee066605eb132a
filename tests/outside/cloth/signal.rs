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
        let slack = measures.small_of_back.expect("a back");
        println!(
            "{quality:?} {seating:?} {amount} mm: {slack:.1} mm of slack, hem {:?}, {:?}",
            measures.hem,
            toile.rest()
        );
        assert!(toile.rest().residual < 0.02);
        slack
    };
    let falls = |all: &[f64]| all.iter().zip(&all[1..]).all(|(a, b)| a > b);
    if !whole() {
        let all = [0.0, 12.0, 25.0, 31.0];
        let all = all.map(|mm| slack(mm, Quality::Sketch, Seating::NeckPoints));
        assert!(falls(&all) && all[2] < 0.4 * all[0], "{all:?}");
        return;
    }
    for seating in [Seating::Neckline, Seating::NeckPoints] {
        let tables = [Quality::Draft, Quality::Usual].map(|quality| {
            let all = [0.0, 6.0, 12.0, 18.0, 25.0, 31.0].map(|mm| slack(mm, quality, seating));
            assert!(falls(&all), "{quality:?} {seating:?} {all:?}");
            // What lay in folds was some 25 mm, and hardly any is left once that is taken out.
            assert!(
                (20.0..32.0).contains(&all[0]) && all[4] < 5.0 && all[5] < 5.0,
                "{all:?}"
            );
            all
        });
        // Finer triangles show the same, within what a picture is good to.
        for (coarse, fine) in tables[0].iter().zip(&tables[1]) {
            assert!((coarse - fine).abs() < 5.0, "{tables:?}");
        }
    }
}
