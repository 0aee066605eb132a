//! Reading how much ease is wanted, and where.

use super::field::length;
use super::read_block::unknown;
use crate::draft::{Block, DraftOptions, Ease, Fit, SleeveLength};
use crate::measurements::{Node, NodeValue, Reader, join};

pub(super) const FITS: [Fit; 3] = [Fit::Close, Fit::Regular, Fit::Loose];

/// A place that ease can be given for by name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum EasePlace {
    Bust,
    Waist,
    Hip,
    BackWidth,
    UpperArm,
    Wrist,
    ArmscyeDepth,
}

impl EasePlace {
    pub(super) const ALL: [Self; 7] = [
        Self::Bust,
        Self::Waist,
        Self::Hip,
        Self::BackWidth,
        Self::UpperArm,
        Self::Wrist,
        Self::ArmscyeDepth,
    ];

    /// The name in job files.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Bust => "bust",
            Self::Waist => "waist",
            Self::Hip => "hip",
            Self::BackWidth => "back_width",
            Self::UpperArm => "upper_arm",
            Self::Wrist => "wrist",
            Self::ArmscyeDepth => "armscye_depth",
        }
    }

    /// Whether the block has that place.
    pub(super) fn is_used_by(self, options: &DraftOptions) -> bool {
        let block = options.block;
        match self {
            // Without darts the line of the side seam decides how wide the waist is.
            Self::Waist => options.shapes_waist(),
            Self::Hip => block.has_hem(),
            Self::Bust | Self::BackWidth | Self::ArmscyeDepth => block.has_armscye(),
            // Only a sleeve goes around the arm.
            Self::UpperArm => options.sleeve.is_some(),
            Self::Wrist => options.sleeve == Some(SleeveLength::Long),
        }
    }

    /// The least and most in mm.
    const fn reach(self) -> (f64, f64) {
        match self {
            Self::Bust | Self::Waist | Self::Hip => Ease::OF_GIRTHS,
            Self::BackWidth | Self::ArmscyeDepth => Ease::OF_WIDTHS,
            Self::UpperArm | Self::Wrist => Ease::OF_ARMS,
        }
    }

    /// What is given at the place, in mm.
    pub(super) const fn value(self, ease: &Ease) -> f64 {
        match self {
            Self::Bust => ease.bust,
            Self::Waist => ease.waist,
            Self::Hip => ease.hip,
            Self::BackWidth => ease.back_width,
            Self::UpperArm => ease.upper_arm,
            Self::Wrist => ease.wrist,
            Self::ArmscyeDepth => ease.armscye_depth,
        }
    }

    fn of(self, ease: &mut Ease) -> &mut f64 {
        match self {
            Self::Bust => &mut ease.bust,
            Self::Waist => &mut ease.waist,
            Self::Hip => &mut ease.hip,
            Self::BackWidth => &mut ease.back_width,
            Self::UpperArm => &mut ease.upper_arm,
            Self::Wrist => &mut ease.wrist,
            Self::ArmscyeDepth => &mut ease.armscye_depth,
        }
    }
}

/// A fit, or ease by place over one; with the places that were named.
pub(super) fn ease(reader: &mut Reader, node: &Node, block: Block) -> (Ease, Vec<EasePlace>) {
    let of = |fit: Fit| Ease::for_block(block, fit);
    let regular = of(Fit::Regular);
    if !matches!(node.value, NodeValue::Map(_)) {
        let fit = fit(reader, node, "ease");
        return (fit.map_or(regular, of), Vec::new());
    }
    let places = EasePlace::ALL.map(EasePlace::name);
    let [
        bust,
        waist,
        hip,
        back_width,
        upper_arm,
        wrist,
        armscye_depth,
    ] = places;
    let keys = [
        "fit",
        bust,
        waist,
        hip,
        back_width,
        upper_arm,
        wrist,
        armscye_depth,
    ];
    let [base, by_place @ ..] = reader.fields(node, "ease", keys, "a fit, or ease by place");
    let base = base.and_then(|(_, node)| fit(reader, node, "ease.fit"));
    let mut ease = base.map_or(regular, of);
    let mut named = Vec::new();
    for (place, field) in EasePlace::ALL.into_iter().zip(by_place) {
        let Some((_, node)) = field else { continue };
        named.push(place);
        let path = join("ease", place.name());
        if let Some(mm) = length(reader, node, &path, place.reach()) {
            *place.of(&mut ease) = mm;
        }
    }
    (ease, named)
}

pub(super) fn fit(reader: &mut Reader, node: &Node, path: &str) -> Option<Fit> {
    let NodeValue::Text(text) = &node.value else {
        let expected = "`close`, `regular` or `loose`, or ease by place such as `{bust: 80}`";
        reader.shape(node, path, expected);
        return None;
    };
    let word = text.trim().to_lowercase();
    let fit = FITS.into_iter().find(|fit| fit.name() == word);
    if fit.is_none() {
        let names = FITS.iter().map(|fit| fit.name());
        reader.wrong(node.place, path, unknown(text, "fit", names));
    }
    fit
}

#[cfg(test)]
mod tests {
    use super::{Block, Ease, EasePlace, Fit};

    #[test]
    fn every_fit_lies_within_reach() {
        for fit in super::FITS {
            for block in Block::ALL {
                let mut ease = Ease::for_block(block, fit);
                for place in EasePlace::ALL {
                    let (low, high) = place.reach();
                    assert!((low..=high).contains(place.of(&mut ease)), "{place:?}");
                }
            }
        }
        assert_eq!(Fit::Close.name(), "close");
    }
}
