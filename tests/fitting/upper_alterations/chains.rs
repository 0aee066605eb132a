//! One after another, as a fitter does them.

use super::wardrobe::{eased, wardrobe};
use blockwright::alterations::{
    Alteration, ArmscyeGape, BackLengthIncrease, BackWidth, ForwardShoulder, FrontWidth, GapeSide,
    NecklineGape, ShoulderSlope, ShoulderWidth, alter,
};
use blockwright::invariants::{Tolerances, check_all};

#[test]
fn every_alteration_bears_the_others_before_it() {
    for garment in wardrobe() {
        let mut chain: Vec<Box<dyn Alteration>> = vec![
            Box::new(BackLengthIncrease::by(4.0)),
            Box::new(ShoulderSlope::by(2.0)),
            Box::new(ForwardShoulder::by(6.0)),
            Box::new(ShoulderWidth::by(-5.0)),
            Box::new(NecklineGape::by(4.0)),
            Box::new(ArmscyeGape {
                amount: 4.0,
                side: GapeSide::Front,
            }),
            Box::new(BackWidth::by(4.0)),
            Box::new(FrontWidth::by(-4.0)),
        ];
        if !eased(&garment.pattern) {
            chain.push(Box::new(ArmscyeGape {
                amount: 3.0,
                side: GapeSide::Back,
            }));
        }
        let done = alter(&garment.pattern, &chain);
        let done = done.unwrap_or_else(|why| panic!("{}: {why}", garment.what));
        assert_eq!(done.accounts.len(), chain.len());
        assert_eq!(check_all(&done.pattern, &Tolerances::altered()), vec![]);
    }
}
