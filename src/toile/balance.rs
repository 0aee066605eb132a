//! The forces on a sheet: their energy, its slope, and the matrix of its second derivatives.

#![expect(
    clippy::indexing_slicing,
    reason = "pins and points are seen to be those of the sheet before it settles"
)]

use super::bending::{Bending, neighbours};
use super::contact::{Contact, Support};
use super::fabric::Fabric;
use super::factor::{BlockMatrix, Factor};
use super::membrane::Membrane;
use super::sheet::Sheet;
use super::space::{Space, add_to, dot, length, sub};

/// A point drawn to a place by a spring.
///
/// ```
/// use blockwright::toile::Pin;
/// let nape = Pin { point: 0, place: [0.0, 380.0, 60.0], pull: 1.0 };
/// assert_eq!(nape.pull, 1.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pin {
    /// The point of the sheet.
    pub point: usize,
    /// Where it is drawn to, in mm.
    pub place: [f64; 3],
    /// How hard, in N for each mm.
    pub pull: f64,
}

/// All forces on a sheet.
#[derive(Debug)]
pub(super) struct Balance<'a> {
    sheet: &'a Sheet,
    membrane: Membrane,
    bending: Bending,
    pub contact: Contact,
    surface: Option<&'a dyn Support>,
    pins: &'a [Pin],
    matrix: BlockMatrix,
    factor: Factor,
    /// Weight of a mm², in N.
    load: f64,
}

/// How hard what stays is held, in N/mm.
const STILL: f64 = 1e6;

impl<'a> Balance<'a> {
    pub fn new(
        sheet: &'a Sheet,
        cloth: &Fabric,
        surface: Option<&'a dyn Support>,
        pins: &'a [Pin],
        places: &[Space],
    ) -> Self {
        let near = neighbours(sheet);
        let matrix = BlockMatrix::of(&near);
        Self {
            membrane: Membrane::of(sheet, cloth.plane(), &matrix),
            bending: Bending::of(sheet, cloth.rigidity(), &matrix),
            contact: Contact::new(cloth.friction, surface, sheet.count()),
            factor: Factor::plan(&matrix, &near, places),
            load: cloth.load(),
            matrix,
            sheet,
            surface,
            pins,
        }
    }

    /// Weight of the whole sheet, in N.
    pub fn weight(&self) -> f64 {
        self.load * self.sheet.area()
    }

    /// Sees which points touch the surface.
    pub fn look(&mut self, at: &[Space]) {
        if let Some(surface) = self.surface {
            self.contact.look(at, &self.sheet.share, surface);
        }
    }

    /// The energy in N mm, and its slope.
    pub fn energy(&self, at: &[Space], slope: &mut [Space]) -> f64 {
        slope.fill([0.0; 3]);
        let mut energy = self.membrane.energy(at, slope) + self.bending.energy(at, slope);
        for ((p, share), s) in at.iter().zip(&self.sheet.share).zip(slope.iter_mut()) {
            energy += self.load * share * p[1];
            s[1] += self.load * share;
        }
        if let Some(surface) = self.surface {
            energy += self.contact.energy(at, &self.sheet.share, surface, slope);
        }
        for pin in self.pins {
            let away = sub(at[pin.point], pin.place);
            energy += 0.5 * pin.pull * dot(away, away);
            add_to(&mut slope[pin.point], pin.pull, away);
        }
        self.keep_held(slope);
        energy
    }

    /// What it costs to go far from where a round began, which keeps the cloth near where the round's
    /// matrix holds: so much for each mm and the weight of each point.
    pub fn steadied(&self, at: &[Space], origin: &[Space], by: f64, slope: &mut [Space]) -> f64 {
        let mut energy = 0.0;
        let pairs = at.iter().zip(origin).zip(&self.sheet.share);
        for (((p, o), share), s) in pairs.zip(slope.iter_mut()) {
            let (away, pull) = (sub(*p, *o), by * self.load * share);
            energy += 0.5 * pull * dot(away, away);
            add_to(s, pull, away);
        }
        self.keep_held(slope);
        energy
    }

    /// Takes out of slopes and steps what holds do not let move.
    fn keep_held(&self, steps: &mut [Space]) {
        for (hold, step) in self.sheet.holds.iter().zip(steps) {
            if hold.still() {
                *step = [0.0; 3];
            } else if hold.on_fold() {
                step[0] = 0.0;
            }
        }
    }

    /// Factors the matrix of second derivatives, made steadier by so much for each point's weight, and by
    /// a share of the threads' stiffness across them; false where it is not positive definite.
    pub fn factor(&mut self, at: &[Space], steady: f64, across: f64) -> bool {
        self.matrix.clear();
        self.membrane.stiffness(at, across, &mut self.matrix);
        self.bending.stiffness(&mut self.matrix);
        self.contact
            .stiffness(at, &self.sheet.share, &mut self.matrix);
        for (i, hold) in self.sheet.holds.iter().enumerate() {
            let block = &mut self.matrix.blocks[self.matrix.start[i]];
            let more = steady * self.load * self.sheet.share[i];
            let side = if hold.still() || hold.on_fold() {
                STILL
            } else {
                0.0
            };
            let other = if hold.still() { STILL } else { 0.0 };
            block[0] += more + side;
            block[4] += more + other;
            block[8] += more + other;
        }
        for pin in self.pins {
            let block = &mut self.matrix.blocks[self.matrix.start[pin.point]];
            for c in 0..3 {
                block[4 * c] += pin.pull;
            }
        }
        self.factor.fill(&self.matrix)
    }

    /// What the factored matrix answers to a slope.
    pub fn answer(&self, slope: &mut [Space]) {
        self.factor.solve(slope);
        self.keep_held(slope);
    }
}

/// The sum of all forces, each by its size.
pub(super) fn total(slope: &[Space]) -> f64 {
    slope.iter().map(|s| length(*s)).sum()
}
