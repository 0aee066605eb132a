//! Every alteration in one list, which tests and job files walk.

use super::{
    Alteration, ArmscyeGape, BackLengthIncrease, BackLengthReduction, BackWidth, ForwardShoulder,
    FrontWidth, GapeSide, NecklineGape, ShoulderSlope, ShoulderWidth,
};
use serde::de::DeserializeOwned;

/// One alteration of the catalogue.
///
/// ```
/// use blockwright::alterations::CATALOGUE;
/// assert!(CATALOGUE.iter().all(|entry| (entry.example)().name() == entry.name));
/// ```
#[derive(Debug, Clone, Copy)]
pub struct Entry {
    /// The trade name in snake case, as in job files.
    pub name: &'static str,
    /// What it is for and what it does, in one sentence.
    pub says: &'static str,
    /// What it keeps, in one sentence.
    pub keeps: &'static str,
    /// Names of the blocks it suits.
    pub blocks: &'static [&'static str],
    /// The measure of the pattern by which a target can be given instead of an amount, as in
    /// accounts.
    pub target: Option<&'static str>,
    /// A usual case of it.
    pub example: fn() -> Box<dyn Alteration>,
    /// Reads it from the settings of a job.
    pub read: fn(serde_json::Value) -> Result<Box<dyn Alteration>, serde_json::Error>,
}

/// Reads an alteration from its settings.
fn read<A: Alteration + DeserializeOwned + 'static>(
    settings: serde_json::Value,
) -> Result<Box<dyn Alteration>, serde_json::Error> {
    Ok(Box::new(serde_json::from_value::<A>(settings)?))
}

/// All blocks.
const ALL: &[&str] = &[
    "bodice",
    "skirt",
    "bodice and skirt",
    "dress",
    "tunic",
    "shirt",
];

/// Blocks with shoulders.
const UPPER: &[&str] = &["bodice", "bodice and skirt", "dress", "tunic", "shirt"];

/// The alterations, in the order in which a fitter works: length and balance, shoulders and
/// neck, bust and back, waist, hip, sleeve, darts.
pub const CATALOGUE: &[Entry] = &[
    Entry {
        name: "back_length_reduction",
        says: "shortens the centre back above the waist, for horizontal folds at the small of the back where the side seams are right",
        keeps: "side seam, neckline, shoulder and every girth; the centre back changes by exactly the amount",
        blocks: ALL,
        target: Some("back centre_back length"),
        example: || Box::new(BackLengthReduction::by(15.0)),
        read: read::<BackLengthReduction>,
    },
    Entry {
        name: "back_length_increase",
        says: "lengthens the centre back over the shoulder blades, for a rounded back whose neckline stands off and whose hem rises",
        keeps: "neckline, armscye, side seam and every girth; the centre back changes by exactly the amount",
        blocks: UPPER,
        target: Some("back centre_back length"),
        example: || Box::new(BackLengthIncrease::by(8.0)),
        read: read::<BackLengthIncrease>,
    },
    Entry {
        name: "shoulder_slope",
        says: "slopes the shoulders more, for folds from the neck to the underarm, or less, for folds from the shoulder point to the centre",
        keeps: "shoulder, neckline and every girth; the armscye and its sleeve too while the underarm follows",
        blocks: UPPER,
        target: Some("front shoulder slope"),
        example: || Box::new(ShoulderSlope::by(3.0)),
        read: read::<ShoulderSlope>,
    },
    Entry {
        name: "forward_shoulder",
        says: "moves the shoulder seam forward at the shoulder point, for folds at the back armscye and a strained front",
        keeps: "shoulder, neckline, both armscyes together, the sleeve and every girth",
        blocks: UPPER,
        target: None,
        example: || Box::new(ForwardShoulder::by(8.0)),
        read: read::<ForwardShoulder>,
    },
    Entry {
        name: "shoulder_width",
        says: "makes the shoulders broader, for a sleeve seam that rides up, or narrower, for one that hangs over the arm",
        keeps: "neckline, armscye, side seam, sleeve and every girth",
        blocks: UPPER,
        target: Some("front shoulder length"),
        example: || Box::new(ShoulderWidth::by(8.0)),
        read: read::<ShoulderWidth>,
    },
    Entry {
        name: "neckline_gape",
        says: "takes in a front neckline that stands off, by a wedge passed into the bust dart",
        keeps: "centre front, shoulder, armscye, side seam and waist; the bust girth loses a little of its ease",
        blocks: UPPER,
        target: Some("front neckline length"),
        example: || Box::new(NecklineGape::by(6.0)),
        read: read::<NecklineGape>,
    },
    Entry {
        name: "armscye_gape",
        says: "takes in an armscye that stands off, by a wedge passed into the bust dart or the shoulder dart",
        keeps: "neckline, shoulder, side seam and waist; the sleeve is solved again",
        blocks: UPPER,
        target: None,
        example: || {
            Box::new(ArmscyeGape {
                amount: 6.0,
                side: GapeSide::Front,
            })
        },
        read: read::<ArmscyeGape>,
    },
    Entry {
        name: "back_width",
        says: "makes the back broader between the armscyes, for strain across the blades, or narrower, for folds down the back",
        keeps: "neckline, side seam and every girth but the back width itself; the shoulder too where it has a dart",
        blocks: UPPER,
        target: Some("back_width finished"),
        example: || Box::new(BackWidth::by(10.0)),
        read: read::<BackWidth>,
    },
    Entry {
        name: "front_width",
        says: "makes the front broader between the armscyes, for strain across the chest, or narrower",
        keeps: "shoulder, neckline, side seam and every girth; the armscye changes and the sleeve with it",
        blocks: UPPER,
        target: None,
        example: || Box::new(FrontWidth::by(8.0)),
        read: read::<FrontWidth>,
    },
];

/// The entry of that name.
#[must_use]
pub fn find(name: &str) -> Option<&'static Entry> {
    CATALOGUE.iter().find(|entry| entry.name == name)
}
