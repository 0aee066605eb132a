//! A pattern sewn on a form.

use super::both_sides::both_sides;
use super::chains::{Chain, chains};
use super::dressing::dress;
use super::error::ToileError;
use super::garment::Garment;
use super::refining::refined;
use super::seating::pins;
use super::settings::ToileSettings;
use super::settle::{Loads, Rest, settle};
use super::space::{Space, length, sub, within};
use super::stand::Stand;
use crate::form::Form;
use crate::piece::{EdgeName, Pattern, Piece};
use crate::progress::Progress;
use std::ops::ControlFlow;
use std::sync::Arc;

/// A pattern sewn on a form: cloth at rest.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::toile::{Quality, Toile, ToileSettings};
/// use std::ops::ControlFlow;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let skirt = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let settings = ToileSettings { quality: Quality::Sketch, ..ToileSettings::default() };
/// let toile = Toile::sew(&skirt, &Form::of(&body)?, &settings, &mut |_| ControlFlow::Continue(()))?;
/// assert!(toile.rest().residual < 0.5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct Toile {
    pub(super) garment: Garment,
    pub(super) chains: Vec<Chain>,
    pub(super) places: Vec<Space>,
    pub(super) stand: Arc<Stand>,
    pub(super) settings: ToileSettings,
    pub(super) rest: Rest,
    /// Pins, and how hard each pulls, in N.
    pub(super) pulls: Vec<f64>,
    pub(super) along_neck: bool,
}

/// Progress is given in so many steps.
const STEPS: u64 = 1000;

/// How much of the work a mesh is, by the number of its points.
fn share_of(edge: f64) -> f64 {
    1.0 / (edge * edge * edge)
}

impl Toile {
    /// Sews a pattern on a form and lets it hang: half of it where the sides are alike. Sleeves are left
    /// out and armholes stay open, since the form has no arms.
    ///
    /// # Errors
    /// [`ToileError`] when an outline or a seam cannot be followed, the cloth is out of range, or
    /// `watch` stops it.
    pub fn sew(
        pattern: &Pattern,
        form: &Form,
        settings: &ToileSettings,
        watch: &mut dyn FnMut(Progress) -> ControlFlow<()>,
    ) -> Result<Self, ToileError> {
        let unlike = pattern.pieces().iter().any(|p| p.side().is_some());
        let doubled = if unlike {
            Some(both_sides(pattern)?)
        } else {
            None
        };
        let pattern = doubled.as_ref().unwrap_or(pattern);
        let stand = Arc::new(Stand::of(form));
        let edges = settings.quality.edges();
        let all: f64 = edges.iter().map(|e| share_of(*e)).sum();
        let mut done = 0.0;
        let mut last: Option<Self> = None;
        for (stage, edge) in edges.iter().enumerate() {
            let garment = Garment::of(pattern, &hangs, *edge)?;
            let chains = chains(&garment);
            let placed = chains
                .iter()
                .map(|c| c.back.len() + c.front.len())
                .sum::<usize>();
            if placed == 0 {
                return Err(ToileError::Nothing);
            }
            if let Some(lost) = unplaced(&garment, &chains) {
                return Err(ToileError::unsewable(&lost, "side"));
            }
            let mut places = match &last {
                None => dress(&garment, &chains, &stand),
                Some(coarse) => refined(&garment, &coarse.garment, &coarse.places),
            };
            let (pins, along_neck) = pins(&garment, &chains, &stand, settings.seating);
            let loads = Loads {
                cloth: settings.cloth,
                surface: Some(stand.surface()),
                pins,
            };
            let share = share_of(*edge) / all;
            let patience = settings.quality.patience(stage);
            let rest = settle(
                &garment.sheet,
                &mut places,
                &loads,
                &patience,
                &mut |progress| {
                    let part = progress.done as f64 / progress.total.max(1) as f64;
                    watch(Progress::new(step(done + share * part), STEPS))
                },
            )?;
            done += share;
            let pulls = pulls(&loads, &places);
            last = Some(Self {
                garment,
                chains,
                places,
                stand: Arc::clone(&stand),
                settings: *settings,
                rest,
                pulls,
                along_neck,
            });
        }
        let toile = last.ok_or(ToileError::Nothing)?;
        // Far from rest nothing is shown.
        let left = toile.rest.residual;
        if left.is_nan() || left > MOST_RESIDUAL {
            return Err(ToileError::Restless { left: 100.0 * left });
        }
        Ok(toile)
    }

    /// How the cloth came to rest.
    #[must_use]
    pub const fn rest(&self) -> Rest {
        self.rest
    }

    /// Whether left and right are sewn each for itself, since they differ.
    #[must_use]
    pub const fn is_whole(&self) -> bool {
        self.garment.whole
    }

    /// Whether it could be pinned as asked: a neckline that is much longer than the base of the neck
    /// does not lie along it, and is not pinned.
    #[must_use]
    pub const fn is_pinned_as_asked(&self) -> bool {
        self.along_neck
    }

    /// The sheet, in triangles: of the wearer's left half where the sides are alike.
    #[must_use]
    pub const fn sheet(&self) -> &super::sheet::Sheet {
        &self.garment.sheet
    }

    /// Where its points are, in mm, in the frame of the form.
    #[must_use]
    pub fn places(&self) -> &[[f64; 3]] {
        &self.places
    }
}

/// How hard each pin pulls, in N.
fn pulls(loads: &Loads<'_>, places: &[Space]) -> Vec<f64> {
    let pulls = loads.pins.iter().filter_map(|pin| {
        let away = sub(*places.get(pin.point)?, pin.place);
        Some(pin.pull * length(away))
    });
    pulls.collect()
}

/// With more of its weight out of balance the cloth is still moving.
const MOST_RESIDUAL: f64 = 0.5;

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a share of one"
)]
fn step(share: f64) -> u64 {
    (within(share, 0.0, 1.0) * STEPS as f64) as u64
}

/// Whether a piece hangs on the trunk: a sleeve does not, and what is neither back nor front.
fn hangs(piece: &Piece) -> bool {
    let has = |name: &EdgeName| piece.outline().edge(name).is_some();
    let trunk = [
        EdgeName::SIDE_SEAM,
        EdgeName::CENTRE_BACK,
        EdgeName::CENTRE_FRONT,
        EdgeName::HEM,
    ];
    !has(&EdgeName::SLEEVE_CAP) && trunk.iter().any(has)
}

/// A panel that is in no chain round the body.
fn unplaced(garment: &Garment, chains: &[Chain]) -> Option<String> {
    let is_placed = |p: &usize| {
        chains
            .iter()
            .any(|c| c.back.contains(p) || c.front.contains(p))
    };
    let lost = garment
        .panels
        .iter()
        .enumerate()
        .find(|(p, _)| !is_placed(p));
    lost.map(|(_, panel)| panel.name.clone())
}
