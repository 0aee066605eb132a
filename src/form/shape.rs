//! The surface of a form: a section at every height.

use super::fullness::Fullness;
use super::levels::Levels;
use super::parameter::{ShapeParameter as P, Values};
use super::profile::Profile;
use super::section::{Section, Turns};
use crate::geometry::elementary::{cos, sin};
use crate::measurements::{Body, Measurement as M};

/// How far above the nape a form ends, in mm.
pub(super) const NECK_STUMP: f64 = 60.0;

/// How far the tip of the shoulder bone is beyond the end of a sewn shoulder seam, in mm (common
/// practice, 10 to 25).
const BEYOND_SEAM: f64 = 20.0;

/// The underbust is so far below the bust points, as a share of the height (an assumption).
const UNDERBUST_SHARE: f64 = 0.045;

/// A body as smooth functions of the height above its waist. Lengths in mm.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Shape {
    pub(super) levels: Levels,
    pub(super) neck_half: f64,
    pub(super) shoulder_half: f64,
    pub(super) acromion_half: f64,
    /// From the middle to the bust point.
    pub(super) bust_point: f64,
    blades: f64,
    back: Profile,
    front: Profile,
    side: Profile,
    half: Profile,
    power: Profile,
    fullness: Fullness,
}

/// How far forward the side of a section is.
fn side_between(back: f64, front: f64) -> f64 {
    0.52 * back + 0.48 * front
}

impl Shape {
    pub(super) fn of(body: &Body, values: &Values) -> Self {
        let p = |of: P| values.of(of);
        let (slope, length) = (body.value(M::ShoulderSlope), body.value(M::ShoulderLength));
        let neck_half = p(P::NeckHalf);
        let neck_side = p(P::NapeRise) - p(P::NeckSideDrop);
        let along = |length: f64| {
            let (out, down) = (length * cos(slope), length * sin(slope));
            (neck_half + out, neck_side - down)
        };
        let (shoulder_half, shoulder) = along(length);
        let (acromion_half, acromion) = along(length + BEYOND_SEAM);
        let bust = p(P::BustRise);
        let below = (UNDERBUST_SHARE * body.value(M::Height)).min(0.5 * bust.max(20.0));
        let levels = Levels {
            nape: p(P::NapeRise),
            neck_side,
            front_neck: p(P::NapeRise) - p(P::FrontNeckDrop),
            acromion,
            shoulder,
            armpit: p(P::ArmpitRise),
            bust,
            underbust: bust - below,
            waist: 0.0,
            hip: -body.value(M::WaistToHip),
            knee: -body.value(M::WaistToKnee),
        };
        let bust_point = 0.5 * body.value(M::BustPointWidth);
        let back = back_profile(&levels, values);
        let chest = Chest::of(
            &levels,
            values,
            bust_point,
            back.at(bust),
            back.at(levels.underbust),
        );
        let front = front_profile(&levels, values, &chest);
        Self {
            side: side_profile(&levels, values, &chest, (&back, &front)),
            half: half_profile(&levels, values, (shoulder_half, acromion_half)),
            power: power_profile(&levels, values),
            blades: p(P::BladeShare) * levels.nape,
            fullness: chest.fullness,
            levels,
            neck_half,
            shoulder_half,
            acromion_half,
            bust_point,
            back,
            front,
        }
    }

    /// The section at a height, without the fullness of the bust.
    pub(super) fn section(&self, y: f64) -> Section {
        Section {
            y,
            half: self.half.at(y).max(1.0),
            side: self.side.at(y),
            back: self.back.at(y),
            front: self.front.at(y),
            power: self.power.at(y),
        }
    }

    /// The height at which the shoulder blades are fullest.
    pub(super) const fn blades(&self) -> f64 {
        self.blades
    }

    /// How far forward the middle of the back is.
    pub(super) fn back_at(&self, y: f64) -> f64 {
        self.back.at(y)
    }

    /// How far forward the side is.
    pub(super) fn side_at(&self, y: f64) -> f64 {
        self.side.at(y)
    }

    /// How far forward the front is beside the middle.
    pub(super) fn front_at(&self, x: f64, y: f64) -> f64 {
        let section = self.section(y);
        section.side + (section.front - section.side) * section.reach(x) + self.bulge(x, &section)
    }

    /// How far forward the back is beside the middle.
    pub(super) fn rear_at(&self, x: f64, y: f64) -> f64 {
        let section = self.section(y);
        section.side + (section.back - section.side) * section.reach(x)
    }

    /// Half a ring from the middle of the back to the middle of the front, `(x, z)`.
    pub(super) fn half_ring(&self, y: f64, turns: &Turns) -> Vec<(f64, f64)> {
        let section = self.section(y);
        let mut ring = section.half_ring(turns);
        for (x, z) in ring.iter_mut().skip(turns.behind()) {
            *z += self.bulge(*x, &section);
        }
        ring
    }

    fn bulge(&self, x: f64, section: &Section) -> f64 {
        self.fullness.amount * self.fullness.share(x, section.y, section.half)
    }
}

/// The chest at the bust points and below.
struct Chest {
    fullness: Fullness,
    side: f64,
    /// How far forward the ribs are in the middle, at the bust points and below.
    ribs: f64,
    under: f64,
}

impl Chest {
    fn of(levels: &Levels, values: &Values, bust_point: f64, back: f64, back_under: f64) -> Self {
        let p = |of: P| values.of(of);
        let tip = back + p(P::BustDepth);
        let middle = tip - p(P::BustRecess);
        let side = side_between(back, middle);
        let half = 0.5 * p(P::BustBreadth);
        let mut fullness = Fullness {
            amount: 0.0,
            x: bust_point,
            y: levels.bust,
            inward: bust_point + 5.0,
            outward: 1.25 * (half - bust_point).max(20.0),
            up: 0.7 * (levels.front_neck - levels.bust).max(40.0),
            down: 1.1 * (levels.bust - levels.underbust),
            edge: 1.0,
        };
        fullness.edge = fullness.share(bust_point, levels.bust, half).max(0.01);
        let section = Section {
            y: levels.bust,
            half,
            side,
            back,
            front: middle,
            power: p(P::BustRoundness),
        };
        // What the ribs do not reach at the bust point is fullness; a little of it lies in the middle.
        let (ribs, shared) = (
            section.reach(bust_point),
            fullness.share(0.0, levels.bust, half),
        );
        fullness.amount = (tip - side - (middle - side) * ribs) / (1.0 - shared * ribs);
        Self {
            ribs: middle - fullness.amount * shared,
            under: back_under + p(P::UnderbustDepth),
            fullness,
            side,
        }
    }
}

/// Where the column below the seat has come to its form.
fn below_seat(levels: &Levels) -> f64 {
    levels.hip + 0.32 * (levels.knee - levels.hip)
}

fn back_profile(levels: &Levels, values: &Values) -> Profile {
    let p = |of: P| values.of(of);
    let (seat, nape) = (p(P::SeatForward), p(P::NapeForward));
    Profile::through(&[
        (levels.knee, seat + 40.0),
        (below_seat(levels), seat + 26.0),
        (levels.hip, seat),
        (levels.waist, p(P::WaistForward)),
        (p(P::BladeShare) * levels.nape, 0.0),
        (levels.nape, nape),
        (levels.nape + NECK_STUMP, nape + 28.0),
    ])
}

fn front_profile(levels: &Levels, values: &Values, chest: &Chest) -> Profile {
    let p = |of: P| values.of(of);
    let (seat, depth) = (p(P::SeatForward), p(P::HipDepth));
    let waist = p(P::WaistForward) + p(P::WaistDepth);
    let neck = p(P::NapeForward) + p(P::NeckDepth);
    Profile::through(&[
        (levels.knee, seat + 0.66 * depth),
        (below_seat(levels), seat + 0.86 * depth),
        (levels.hip, seat + depth),
        (0.45 * levels.hip, 0.5 * (waist + seat + depth) + 6.0),
        (levels.waist, waist),
        (levels.underbust, chest.under),
        (levels.bust, chest.ribs),
        // The breastbone is nearly straight.
        (
            0.5 * (levels.bust + levels.front_neck),
            neck + 0.6 * (chest.ribs - neck),
        ),
        (levels.front_neck, neck),
        (levels.nape, neck + 22.0),
        (levels.nape + NECK_STUMP, neck + 34.0),
    ])
}

fn side_profile(
    levels: &Levels,
    values: &Values,
    chest: &Chest,
    (back, front): (&Profile, &Profile),
) -> Profile {
    let p = |of: P| values.of(of);
    let between = |y: f64| (y, side_between(back.at(y), front.at(y)));
    let neck = |share: f64| p(P::NapeForward) + share * p(P::NeckDepth);
    Profile::through(&[
        between(levels.knee),
        between(levels.hip),
        between(levels.waist),
        (levels.bust, chest.side),
        (levels.acromion - 20.0, neck(0.22)),
        (levels.neck_side, neck(p(P::NeckSideShare))),
        (levels.nape + NECK_STUMP, 28.0 + neck(0.5)),
    ])
}

fn half_profile(levels: &Levels, values: &Values, (shoulder, acromion): (f64, f64)) -> Profile {
    let p = |of: P| values.of(of);
    let (waist, hip) = (0.5 * p(P::WaistBreadth), 0.5 * p(P::HipBreadth));
    let neck = p(P::NeckHalf);
    Profile::through(&[
        (levels.knee, 0.76 * hip),
        (below_seat(levels), 0.95 * hip),
        (levels.hip, hip),
        (0.5 * levels.hip, 0.5 * (waist + hip) + 4.0),
        (levels.waist, waist),
        (levels.underbust, 0.5 * p(P::UnderbustBreadth)),
        (levels.bust, 0.5 * p(P::BustBreadth)),
        (armpit(levels), 0.5 * p(P::ChestBreadth)),
        (levels.acromion - 18.0, acromion),
        (levels.acromion, acromion - 5.0),
        (levels.shoulder, shoulder),
        (
            0.5 * (levels.shoulder + levels.neck_side),
            0.5 * (shoulder + neck),
        ),
        (levels.neck_side, neck),
        (levels.neck_side + 12.0, 0.93 * neck),
        (levels.nape + NECK_STUMP, 0.88 * neck),
    ])
}

fn power_profile(levels: &Levels, values: &Values) -> Profile {
    let p = |of: P| values.of(of);
    let (waist, hip) = (p(P::WaistRoundness), p(P::HipRoundness));
    Profile::through(&[
        (levels.knee, 2.2),
        (levels.hip, hip),
        (0.5 * levels.hip, 0.5 * (hip + waist)),
        (levels.waist, waist),
        (levels.underbust, p(P::UnderbustRoundness)),
        (levels.bust, p(P::BustRoundness)),
        (armpit(levels), p(P::ChestRoundness)),
        (levels.acromion - 20.0, 2.2),
        (0.5 * (levels.acromion + levels.neck_side), 1.5),
        (levels.neck_side - 6.0, 1.7),
        (levels.nape + 20.0, 2.1),
        (levels.nape + NECK_STUMP, 2.1),
    ])
}

/// The level at which the section of the armpits stands, clear of the bust points.
fn armpit(levels: &Levels) -> f64 {
    levels.armpit.max(levels.bust + 50.0)
}
