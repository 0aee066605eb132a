//! The steps that pairs are made of: every entry of the catalogue by its usual amount and, where
//! there are negative ones, by its opposite.

use blockwright::alterations::{
    Alteration, ArmscyeGape, BackLengthReduction, CATALOGUE, Entry, GapeSide, LengthAt,
    LengthChange,
};
use blockwright::draft::{Block, DraftOptions, SleeveLength};

/// One step of a pair.
pub struct Step {
    /// The entry's name, what of it is meant where there are several, and the amount.
    pub name: String,
    pub entry: &'static Entry,
    /// The blocks that it suits, by name.
    blocks: &'static [&'static str],
    alteration: Box<dyn Alteration>,
}

/// What has no opposite: a wedge is taken from what stands off, and cloth that is not there cannot
/// stand off.
const NO_OPPOSITE: [&str; 2] = ["neckline_gape", "armscye_gape"];

impl Step {
    fn of(
        entry: &'static Entry,
        (what, blocks): (&str, &'static [&'static str]),
        alteration: Box<dyn Alteration>,
    ) -> Vec<Self> {
        let signs: &[f64] = match alteration.amount() {
            Some(_) if !NO_OPPOSITE.contains(&entry.name) => &[1.0, -1.0],
            _ => &[1.0],
        };
        let by = |sign: &f64| {
            let amount = alteration.amount().map(|amount| amount * sign);
            let named = amount.map_or(String::new(), |amount| format!(" {amount}"));
            Self {
                name: format!("{}{what}{named}", entry.name),
                entry,
                blocks,
                alteration: alteration.with_amount(amount.unwrap_or_default()),
            }
        };
        signs.iter().map(by).collect()
    }

    /// Whether a dart is moved from one place to another, by name.
    pub fn moves_a_dart(&self) -> bool {
        self.alteration.amount().is_none()
    }

    pub fn suits(&self, block: Block) -> bool {
        self.blocks.contains(&block.name())
    }

    pub fn alteration(&self) -> Box<dyn Alteration> {
        let amount = self.alteration.amount().unwrap_or_default();
        self.alteration.with_amount(amount)
    }

    /// The step that takes it back.
    pub fn opposite(&self) -> Option<Box<dyn Alteration>> {
        if NO_OPPOSITE.contains(&self.entry.name) {
            return None;
        }
        let amount = self.alteration.amount()?;
        Some(self.alteration.with_amount(-amount))
    }
}

/// Every step: the example of each entry, and the other places at which some of them work.
pub fn steps() -> Vec<Step> {
    let mut found = Vec::new();
    for entry in CATALOGUE {
        let example: Box<dyn Alteration> = match entry.name {
            // The hips are another step's matter.
            "back_length_reduction" => Box::new(BackLengthReduction {
                hips_checked: true,
                ..BackLengthReduction::by((entry.example)().amount().unwrap())
            }),
            _ => (entry.example)(),
        };
        let amount = example.amount().unwrap_or_default();
        found.extend(Step::of(entry, ("", entry.blocks), example));
        match entry.name {
            "length" => {
                let by = |at| Box::new(LengthChange { at, amount });
                found.extend(Step::of(entry, (" skirt", HEMMED), by(LengthAt::Skirt)));
                found.extend(Step::of(entry, (" sleeve", SLEEVED), by(LengthAt::Sleeve)));
            }
            "armscye_gape" => {
                let side = GapeSide::Back;
                let back = Box::new(ArmscyeGape { amount, side });
                found.extend(Step::of(entry, (" back", DARTED), back));
            }
            _ => {}
        }
    }
    found
}

/// Blocks with room between hip line and hem; a shirt's hem lies just below the hips.
const HEMMED: &[&str] = &["skirt", "bodice and skirt", "dress", "tunic"];

/// Blocks with a sleeve.
const SLEEVED: &[&str] = &["bodice", "bodice and skirt", "dress", "tunic", "shirt"];

/// Blocks with a dart at the back shoulder, into which a wedge of the back armscye goes.
const DARTED: &[&str] = &["bodice", "bodice and skirt", "dress"];

/// A block with the sleeve on which all of them can be made.
pub fn with_long_sleeve(block: Block) -> DraftOptions {
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(SleeveLength::Long);
    options
}
