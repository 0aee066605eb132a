//! Every alteration in one list, which tests and job files walk.

use super::{
    Alteration, BackLengthReduction, DartDivision, DartMerging, DartRelocation, DartToSeam,
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

/// Blocks with a waist seam and a bust dart.
const BODICES: &[&str] = &["bodice", "bodice and skirt"];

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
        name: "dart_relocation",
        says: "moves a dart with one apex to any edge of its piece, by a slash to the apex and a turn about it",
        keeps: "the angle about the apex, every sewn length, every girth",
        blocks: ALL,
        target: None,
        example: || Box::new(DartRelocation::to("bust", "shoulder", 0.5)),
        read: read::<DartRelocation>,
    },
    Entry {
        name: "dart_division",
        says: "moves parts of a dart's angle to other places, for a dart too wide to press or fullness wanted in several places",
        keeps: "the sum of angles about the apex, every sewn length, every girth",
        blocks: ALL,
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
        blocks: ALL,
        target: None,
        example: || Box::new(DartToSeam::of("shoulder", "waist")),
        read: read::<DartToSeam>,
    },
];

/// The entry of that name.
#[must_use]
pub fn find(name: &str) -> Option<&'static Entry> {
    CATALOGUE.iter().find(|entry| entry.name == name)
}
