//! The answer to `describe`: what there is to choose from.

use super::drafted::unit_name;
use super::settings::{Setting, settings};
use crate::allowance::Allowances;
use crate::alterations::{CATALOGUE, Entry};
use crate::draft::{Block, DraftOptions, Ease, Fit};
use crate::job::PaperSize;
use crate::measurements::{CatalogueEntry, Measurement};
use crate::piece::MeasureUnit;
use crate::render::fitting::Align;
use crate::signs::SIGNS;
use crate::silhouette::Stance;
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(super) struct Description {
    version: &'static str,
    measurements: Vec<CatalogueEntry>,
    /// From where each is seen best, in the same order.
    stances: Vec<Stance>,
    blocks: Vec<BlockShown>,
    alterations: Vec<AlterationShown>,
    papers: Vec<&'static str>,
    aligns: Vec<AlignShown>,
    allowance_places: Vec<&'static str>,
    lengths: (f64, f64),
    cap_eases: (f64, f64),
}

#[derive(Debug, Serialize)]
struct BlockShown {
    name: &'static str,
    has_hem: bool,
    has_armscye: bool,
    one_piece: bool,
    /// Ease in millimetres, by fit.
    ease: Vec<(Fit, Ease)>,
}

#[derive(Debug, Serialize)]
struct AlterationShown {
    name: &'static str,
    says: &'static str,
    keeps: &'static str,
    blocks: &'static [&'static str],
    unit: &'static str,
    /// The setting that holds the amount; none where there is no amount.
    #[serde(skip_serializing_if = "Option::is_none")]
    key: Option<&'static str>,
    /// An amount to begin with.
    #[serde(skip_serializing_if = "Option::is_none")]
    amount: Option<f64>,
    /// What is usual, by the signs that lead to it.
    #[serde(skip_serializing_if = "Option::is_none")]
    usual: Option<[f64; 2]>,
    /// Whether what it is to arrive at can be given instead.
    target: bool,
    settings: &'static [Setting],
}

#[derive(Debug, Serialize)]
struct AlignShown {
    name: &'static str,
    label: &'static str,
}

pub(super) fn describe() -> Description {
    let figure = |measurement: Measurement| crate::silhouette::stance(measurement);
    Description {
        version: env!("CARGO_PKG_VERSION"),
        measurements: CatalogueEntry::all(),
        stances: Measurement::ALL.into_iter().map(figure).collect(),
        blocks: Block::ALL
            .into_iter()
            .map(|block| BlockShown {
                name: block.name(),
                has_hem: block.has_hem(),
                has_armscye: block.has_armscye(),
                one_piece: block.is_one_piece(),
                ease: [Fit::Close, Fit::Regular, Fit::Loose]
                    .map(|fit| (fit, Ease::for_block(block, fit)))
                    .to_vec(),
            })
            .collect(),
        alterations: CATALOGUE.iter().map(alteration).collect(),
        papers: PaperSize::ALL.map(PaperSize::name).to_vec(),
        aligns: Align::ALL
            .map(|align| AlignShown {
                name: align.key(),
                label: align.label(),
            })
            .into(),
        allowance_places: Allowances::PLACES.to_vec(),
        lengths: DraftOptions::LENGTHS,
        cap_eases: DraftOptions::CAP_EASES,
    }
}

fn alteration(entry: &Entry) -> AlterationShown {
    let example = (entry.example)();
    let amount = example.amount();
    AlterationShown {
        name: entry.name,
        says: entry.says,
        keeps: entry.keeps,
        blocks: entry.blocks,
        unit: unit_name(example.unit()),
        key: amount.map(|_| match example.unit() {
            MeasureUnit::Millimetres => "amount",
            MeasureUnit::Degrees => "degrees",
        }),
        amount,
        usual: usual(entry.name),
        target: entry.target.is_some(),
        settings: settings(entry.name),
    }
}

/// The usual amounts of all signs that lead to the alteration by its own amount.
fn usual(name: &str) -> Option<[f64; 2]> {
    SIGNS
        .iter()
        .filter(|sign| sign.alteration == name && ["amount", "degrees"].contains(&sign.key))
        .map(|sign| {
            let (a, b) = (sign.usual.0 * sign.factor, sign.usual.1 * sign.factor);
            [a.min(b), a.max(b)]
        })
        .reduce(|a, b| [a[0].min(b[0]), a[1].max(b[1])])
}
