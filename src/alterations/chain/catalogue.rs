//! Every alteration in one list, which tests and job files walk.

use crate::alterations::{
    Abdomen, Alteration, ArmscyeDepth, ArmscyeGape, BackLengthIncrease, BackLengthReduction,
    BackNeckGape, BackWidth, Bust, BustDirection, BustGirth, BustPoint, DartDivision, DartMerging,
    DartRelocation, DartToSeam, ElbowWidth, ForearmWidth, ForwardShoulder, FrontLength, FrontWidth,
    GapeSide, HighHip, HipGirth, LengthAt, LengthChange, NecklineDepth, NecklineGape,
    NecklineWidth, Seat, ShoulderBlade, ShoulderDrop, ShoulderSlope, ShoulderWidth, SideSeam,
    SleevePitch, UpperArm, WaistGirth, WristWidth,
};
use crate::piece::{EdgeName, Measure};
use serde::de::DeserializeOwned;

/// One alteration of the catalogue.
///
/// ```
/// use blockwright::alterations::CATALOGUE;
/// assert!(CATALOGUE.iter().all(|entry| (entry.example)().name() == entry.name));
/// ```
#[derive(Debug, Clone, Copy)]
#[non_exhaustive]
pub struct Entry {
    /// The trade name in snake case, as in job files.
    pub name: &'static str,
    /// What it is for and what it does, in one sentence.
    pub says: &'static str,
    /// What it keeps, in one sentence.
    pub keeps: &'static str,
    /// Names of the blocks it suits.
    pub blocks: &'static [&'static str],
    /// The measure of the pattern by which a target can be given instead of an amount.
    pub target: Option<fn() -> Measure>,
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

/// A shoulder slope by degrees, or by how far the shoulder point drops.
fn read_slope(settings: serde_json::Value) -> Result<Box<dyn Alteration>, serde_json::Error> {
    if settings.get("drop").is_some() && settings.get("degrees").is_none() {
        return read::<ShoulderDrop>(settings);
    }
    read::<ShoulderSlope>(settings)
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

/// Blocks with a bodice.
const WITH_BODICE: &[&str] = &["bodice", "bodice and skirt", "dress", "tunic", "shirt"];

/// Blocks that reach over the hips.
const WITH_HIPS: &[&str] = &["skirt", "bodice and skirt", "dress", "tunic", "shirt"];

/// Blocks that may have a sleeve.
const WITH_SLEEVE: &[&str] = &["bodice", "bodice and skirt", "dress", "tunic", "shirt"];

/// Blocks with a waist seam and a bust dart.
const BODICES: &[&str] = &["bodice", "bodice and skirt"];

/// Blocks with a shoulder and a waist dart at the back.
const WITH_BACK_DARTS: &[&str] = &["bodice", "bodice and skirt", "dress"];

/// The alterations, in the order in which a fitter works: length and balance, shoulders and
/// neck, bust and back, waist, hip, sleeve, darts.
pub const CATALOGUE: &[Entry] = &[
    Entry {
        name: "back_length_reduction",
        says: "shortens the centre back above the waist, for horizontal folds at the small of the back where the side seams are right",
        keeps: "side seam, neckline, shoulder and every girth; the centre back changes by exactly the amount",
        blocks: ALL,
        target: Some(|| Measure::edge_length("back", EdgeName::CENTRE_BACK)),
        example: || Box::new(BackLengthReduction::by(15.0)),
        read: read::<BackLengthReduction>,
    },
    Entry {
        name: "back_length_increase",
        says: "lengthens the centre back over the shoulder blades, for a rounded back whose neckline stands off and whose hem rises",
        keeps: "neckline, armscye, side seam and every girth; the centre back changes by exactly the amount",
        blocks: WITH_BODICE,
        target: Some(|| Measure::edge_length("back", EdgeName::CENTRE_BACK)),
        example: || Box::new(BackLengthIncrease::by(8.0)),
        read: read::<BackLengthIncrease>,
    },
    Entry {
        name: "front_length",
        says: "lengthens the front above the chest, for creases dragged down the front shoulder, or shortens it, for loose folds across the chest",
        keeps: "back, neckline, shoulder, side seam and every girth; the centre front changes by exactly the amount, the sleeve follows",
        blocks: WITH_BODICE,
        target: Some(|| Measure::edge_length("front", EdgeName::CENTRE_FRONT)),
        example: || Box::new(FrontLength::by(8.0)),
        read: read::<FrontLength>,
    },
    Entry {
        name: "shoulder_blade",
        says: "gives length and width over a prominent shoulder blade, for strain over it and an armhole that stands off, or takes them",
        keeps: "centre back, neckline, armscye, side seam and every girth; the shoulder too where it has a dart",
        blocks: WITH_BODICE,
        target: Some(|| Measure::dart_intake("back", "shoulder")),
        example: || Box::new(ShoulderBlade::by(6.0)),
        read: read::<ShoulderBlade>,
    },
    Entry {
        name: "shoulder_slope",
        says: "slopes the shoulders more, for folds from the neck to the underarm, or less, for folds from the shoulder point to the centre",
        keeps: "shoulder, neckline and every girth; the armscye and its sleeve too while the underarm follows",
        blocks: WITH_BODICE,
        target: Some(|| Measure::shoulder_slope("front")),
        example: || Box::new(ShoulderSlope::by(3.0)),
        read: read_slope,
    },
    Entry {
        name: "forward_shoulder",
        says: "moves the shoulder seam forward at the shoulder point, for folds at the back armscye and a strained front",
        keeps: "shoulder, neckline, both armscyes together, the sleeve and every girth",
        blocks: WITH_BODICE,
        target: None,
        example: || Box::new(ForwardShoulder::by(8.0)),
        read: read::<ForwardShoulder>,
    },
    Entry {
        name: "shoulder_width",
        says: "makes the shoulders broader, for a sleeve seam that rides up, or narrower, for one that hangs over the arm",
        keeps: "neckline, armscye, side seam, sleeve and every girth",
        blocks: WITH_BODICE,
        target: Some(|| Measure::edge_length("front", EdgeName::SHOULDER)),
        example: || Box::new(ShoulderWidth::by(8.0)),
        read: read::<ShoulderWidth>,
    },
    Entry {
        name: "armscye_depth",
        says: "lowers the armhole, for one that cuts under the arm, or raises it, for a sleeve that lifts the garment with the arm",
        keeps: "neckline, shoulder and every girth; both side seams change by exactly the amount, the sleeve follows",
        blocks: WITH_BODICE,
        target: None,
        example: || Box::new(ArmscyeDepth::by(8.0)),
        read: read::<ArmscyeDepth>,
    },
    Entry {
        name: "neckline_depth",
        says: "lowers the front neckline at the centre, for one that presses on the throat, or raises it",
        keeps: "back neckline, shoulders, armscye, side seam and every girth; the centre front changes by exactly the amount",
        blocks: WITH_BODICE,
        target: None,
        example: || Box::new(NecklineDepth::by(10.0)),
        read: read::<NecklineDepth>,
    },
    Entry {
        name: "neckline_width",
        says: "widens the neckline along the shoulders, for one that stands against the neck at the sides, or narrows it",
        keeps: "both centres, armscye, side seam and every girth; both shoulders change by exactly the amount",
        blocks: WITH_BODICE,
        target: None,
        example: || Box::new(NecklineWidth::by(6.0)),
        read: read::<NecklineWidth>,
    },
    Entry {
        name: "neckline_gape",
        says: "takes in a front neckline that stands off, by a wedge passed into the bust dart",
        keeps: "centre front, shoulder, armscye, side seam and waist; the bust girth loses a little of its ease",
        blocks: WITH_BODICE,
        target: Some(|| Measure::edge_length("front", EdgeName::NECKLINE)),
        example: || Box::new(NecklineGape::by(6.0)),
        read: read::<NecklineGape>,
    },
    Entry {
        name: "back_neck_gape",
        says: "takes in a back neckline that stands off, by a wedge passed into the shoulder dart, eased into the shoulder or sewn as a neck dart",
        keeps: "centre back, armscye, side seam and every girth; the shoulder too where it has a dart",
        blocks: WITH_BODICE,
        target: Some(|| Measure::edge_length("back", EdgeName::NECKLINE)),
        example: || Box::new(BackNeckGape::by(5.0)),
        read: read::<BackNeckGape>,
    },
    Entry {
        name: "armscye_gape",
        says: "takes in an armscye that stands off, by a wedge passed into the bust dart or the shoulder dart",
        keeps: "neckline, shoulder, side seam and waist; the sleeve is solved again",
        blocks: WITH_BODICE,
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
        blocks: WITH_BODICE,
        target: Some(|| Measure::girth("back_width")),
        example: || Box::new(BackWidth::by(10.0)),
        read: read::<BackWidth>,
    },
    Entry {
        name: "front_width",
        says: "makes the front broader between the armscyes, for strain across the chest, or narrower",
        keeps: "shoulder, neckline, side seam and every girth; the armscye changes and the sleeve with it",
        blocks: WITH_BODICE,
        target: None,
        example: || Box::new(FrontWidth::by(8.0)),
        read: read::<FrontWidth>,
    },
    Entry {
        name: "length",
        says: "lengthens or shortens bodice, hips, skirt, sleeve or forearm by a parallel spread or tuck",
        keeps: "every girth, neckline, shoulder, armscye and waist; back and front change alike",
        blocks: WITH_BODICE,
        target: None,
        example: || {
            Box::new(LengthChange {
                at: LengthAt::Bodice,
                amount: 15.0,
            })
        },
        read: read::<LengthChange>,
    },
    Entry {
        name: "bust_point",
        says: "moves the bust point up, down, in or out with its darts, for darts that end above, below or beside the fullest place",
        keeps: "the intake of every dart, every edge and every girth",
        blocks: WITH_BODICE,
        target: None,
        example: || {
            Box::new(BustPoint {
                amount: 15.0,
                direction: BustDirection::Down,
            })
        },
        read: read::<BustPoint>,
    },
    Entry {
        name: "bust",
        says: "gives room for a full bust or takes it from a small one, by amount at the bust point of each half",
        keeps: "armscye, shoulder, neckline, side seam with its dart closed, waist and hip, back",
        blocks: WITH_BODICE,
        target: Some(|| Measure::dart_angle("front", "bust")),
        example: || Box::new(Bust { amount: 10.0 }),
        read: read::<Bust>,
    },
    Entry {
        name: "bust_girth",
        says: "widens or narrows the garment under the arms, at the side seams, for strain or slack all round the chest where the cup fits",
        keeps: "neckline, shoulder, side seam, waist and every other girth; armscye and sleeve follow",
        blocks: WITH_BODICE,
        target: Some(|| Measure::girth("bust")),
        example: || Box::new(BustGirth::by(16.0)),
        read: read::<BustGirth>,
    },
    Entry {
        name: "waist_girth",
        says: "widens or narrows the waist at side seams and darts",
        keeps: "every other girth, both centres, neckline, shoulder, armscye and hem",
        blocks: ALL,
        target: Some(|| Measure::girth("waist")),
        example: || Box::new(WaistGirth { amount: 16.0 }),
        read: read::<WaistGirth>,
    },
    Entry {
        name: "high_hip",
        says: "widens or narrows at the high hip, between waist and hip, for strain over a full hip or belly there",
        keeps: "waist, hip and every other girth, both centres, the darts",
        blocks: WITH_HIPS,
        target: Some(|| Measure::line_girth("high_hip")),
        example: || Box::new(HighHip { amount: 12.0 }),
        read: read::<HighHip>,
    },
    Entry {
        name: "hip_girth",
        says: "widens or narrows the hips at the side seams, nothing at the waist, parallel below the hip",
        keeps: "the waist and every other girth, both centres; the hem is square",
        blocks: WITH_HIPS,
        target: Some(|| Measure::girth("hip")),
        example: || Box::new(HipGirth { amount: 24.0 }),
        read: read::<HipGirth>,
    },
    Entry {
        name: "side_seam",
        says: "swings the side seams forward or back over the hips where they do not hang plumb: the back wider by so much, the front narrower",
        keeps: "every girth, the waist, both centres, the darts; both side seams of one length",
        blocks: WITH_HIPS,
        target: Some(|| Measure::edge_length("back", EdgeName::HEM)),
        example: || Box::new(SideSeam { amount: 6.0 }),
        read: read::<SideSeam>,
    },
    Entry {
        name: "seat",
        says: "gives length over a prominent seat, and width on the back alone where it is wanted, or takes them over a flat one",
        keeps: "side seam, front, waist and every girth but the hip with a width; the centre back changes by exactly the amount",
        blocks: WITH_HIPS,
        target: Some(|| Measure::edge_length("back", EdgeName::CENTRE_BACK)),
        example: || Box::new(Seat::by(12.0)),
        read: read::<Seat>,
    },
    Entry {
        name: "abdomen",
        says: "gives length over a prominent abdomen, or takes it over a flat one",
        keeps: "side seam, back, waist and every girth; the centre front changes by exactly the amount",
        blocks: WITH_HIPS,
        target: Some(|| Measure::edge_length("front", EdgeName::CENTRE_FRONT)),
        example: || Box::new(Abdomen { amount: 12.0 }),
        read: read::<Abdomen>,
    },
    Entry {
        name: "upper_arm",
        says: "widens or narrows the sleeve at the biceps",
        keeps: "the cap's length and ease, its notches, the wrist, both underarm seams of one length",
        blocks: WITH_SLEEVE,
        target: Some(|| Measure::girth("upper_arm")),
        example: || Box::new(UpperArm { amount: 15.0 }),
        read: read::<UpperArm>,
    },
    Entry {
        name: "elbow_width",
        says: "widens or narrows a long sleeve at the elbow",
        keeps: "the cap, biceps and wrist, the elbow dart's tip and angle, both underarm seams of one length",
        blocks: WITH_SLEEVE,
        target: Some(|| Measure::line_girth("elbow")),
        example: || Box::new(ElbowWidth { amount: 12.0 }),
        read: read::<ElbowWidth>,
    },
    Entry {
        name: "forearm_width",
        says: "widens or narrows a long sleeve at the forearm, below the elbow",
        keeps: "the cap, biceps and wrist, the elbow dart's tip and angle, both underarm seams of one length",
        blocks: WITH_SLEEVE,
        target: Some(|| Measure::line_girth("forearm")),
        example: || Box::new(ForearmWidth { amount: 10.0 }),
        read: read::<ForearmWidth>,
    },
    Entry {
        name: "wrist_width",
        says: "widens or narrows a long sleeve at the wrist, to nothing at the elbow",
        keeps: "the cap, the upper arm, both underarm seams and the elbow dart; the wrist changes by exactly the amount",
        blocks: WITH_SLEEVE,
        target: Some(|| Measure::girth("wrist")),
        example: || Box::new(WristWidth { amount: 10.0 }),
        read: read::<WristWidth>,
    },
    Entry {
        name: "sleeve_pitch",
        says: "turns the sleeve in the armscye, forward or back, for folds slanting from the cap to the elbow",
        keeps: "the cap, the wrist and every girth, both underarm seams of one length; nothing on the bodice",
        blocks: WITH_SLEEVE,
        target: None,
        example: || Box::new(SleevePitch::by(10.0)),
        read: read::<SleevePitch>,
    },
    Entry {
        name: "dart_relocation",
        says: "moves a dart with one apex to any edge of its piece, by a turn about the bust point or its apex",
        keeps: "the angle about that point, every sewn length, every girth",
        blocks: WITH_BODICE,
        target: None,
        example: || Box::new(DartRelocation::to("bust", "shoulder", 0.5)),
        read: read::<DartRelocation>,
    },
    Entry {
        name: "dart_division",
        says: "moves parts of a dart's angle to other places, for a dart too wide to press or fullness wanted in several places",
        keeps: "the sum of angles about the apex, every sewn length, every girth",
        blocks: WITH_BODICE,
        target: None,
        example: || Box::new(DartDivision::of("bust").part("shoulder", 0.5, 0.5)),
        read: read::<DartDivision>,
    },
    Entry {
        name: "dart_merging",
        says: "makes one dart of two that point at the same fullness, aimed at where their centre lines meet",
        keeps: "every sewn length to a twentieth of a millimetre, every girth",
        blocks: BODICES,
        target: None,
        example: || Box::new(DartMerging::of("waist", "bust")),
        read: read::<DartMerging>,
    },
    Entry {
        name: "dart_to_seam",
        says: "takes up darts in a seam through their apexes that divides the piece in a centre and a side piece",
        keeps: "every girth; every edge of the other pieces",
        blocks: WITH_BACK_DARTS,
        target: None,
        example: || Box::new(DartToSeam::of("shoulder", "waist")),
        read: read::<DartToSeam>,
    },
];

/// The entry of that name.
///
/// ```
/// use blockwright::alterations::find;
/// assert!(find("abdomen").is_some_and(|entry| entry.blocks.contains(&"skirt")));
/// assert!(find("abdomin").is_none());
/// ```
#[must_use]
pub fn find(name: &str) -> Option<&'static Entry> {
    CATALOGUE.iter().find(|entry| entry.name == name)
}
