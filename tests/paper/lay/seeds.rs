//! The same seed and rounds give the same lay; more rounds never a longer one.

use super::garments::drafted;
use blockwright::draft::{Block, SleeveLength};
use blockwright::job::{Job, LayRun};
use blockwright::lay::{Cloth, Search, parts};
use blockwright::measurements::{Body, Measurement, MeasurementSet};
use blockwright::units::Unit;

#[test]
fn the_same_seed_gives_the_same_lay_however_it_is_asked() {
    let pattern = drafted(Block::Tunic, Some(SleeveLength::Long));
    let cloth = Cloth::new(1400.0).unwrap();
    let new = |seed| Search::new(&cloth, parts(&pattern, None, &cloth).unwrap(), seed).unwrap();
    let (mut one, mut two, mut three) = (new(9), new(9), new(10));
    let mut lengths = vec![one.length()];
    for _ in 0..400 {
        let before = one.length();
        assert_eq!(one.round(), one.length() < before);
        lengths.push(one.length());
        two.round();
        three.round();
    }
    assert!(lengths.windows(2).all(|w| w[1] <= w[0]));
    assert!(
        lengths[400] < 0.99 * lengths[0],
        "{} of {}",
        lengths[400],
        lengths[0]
    );
    assert_eq!(one.lay(), two.lay());
    assert_ne!(one.lay().stretches, three.lay().stretches);
    assert_eq!((one.lay().seed, one.lay().rounds), (9, 400));
}

#[test]
fn files_are_the_same_byte_for_byte() {
    let body = Body::from_taken([
        (Measurement::Height, 1680.0),
        (Measurement::BustGirth, 920.0),
        (Measurement::WaistGirth, 760.0),
        (Measurement::HipGirth, 1000.0),
    ])
    .unwrap();
    let set = MeasurementSet::new("Ada", Unit::Cm, body);
    let job = Job::new("Bodice", Block::Bodice, set);
    let cloth = Cloth::new(900.0).unwrap();
    let made = || {
        let mut run = LayRun::new(&job, &cloth, 4).unwrap();
        for _ in 0..100 {
            run.search.round();
        }
        run.outcome().unwrap()
    };
    let (one, two) = (made(), made());
    assert_eq!(one, two);
    assert!(one.files.iter().all(|file| !file.bytes.is_empty()));
}
