//! The comparison.

use super::advice::Advice;
use super::girths::{RoundStation, round};
use super::panel::Panel;
use super::thread::{Band, Thread, ThreadPlace};
use crate::form::{Form, Half};
use crate::geometry::Point;
use crate::measurements::{Body, Measurement as M};
use crate::piece::Pattern;
use serde::Serialize;

/// Threads tell no less than this, in mm: what a tape is read to, and what is invented between levels.
const WORTH_SAYING: f64 = 3.0;

/// An underarm lies so far below the armpit where nothing says how far (common practice, 15 to 25 mm).
const BELOW_ARMPIT: f64 = 20.0;

/// Shares of the way from the middle to the side.
const SHARES: [f64; 3] = [0.25, 0.5, 0.75];

/// What a pattern was drafted from: the draft, before any alteration, and the body it is for.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::fit_map::Origin;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Dress))?;
/// let origin = Origin { draft: &pattern, body: &body };
/// assert_eq!(origin.draft.block(), "dress");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct Origin<'a> {
    /// The pattern as drafted.
    pub draft: &'a Pattern,
    /// The body that it was drafted for.
    pub body: &'a Body,
}

/// Where a pattern is too long or too short for a body.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::fit_map::{Advice, Origin, fit_map};
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let size = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
///     (Measurement::BackWaistLength, 410.0), (Measurement::CentreFrontWaistLength, 340.0),
/// ])?;
/// let block = draft(&size, &DraftOptions::of(Block::Dress))?;
/// // She has the size's girths and front, and a back that is 20 mm shorter.
/// let wearer = size.with_taken(Measurement::BackWaistLength, 390.0)?;
/// let origin = Origin { draft: &block, body: &size };
/// let map = fit_map(&block, Some(origin), &wearer, &Form::of(&wearer)?);
/// let centre = map.centre_back().ok_or("no back")?;
/// assert!((centre.excess() - 20.0).abs() < 1.0);
/// assert!(map.advice.iter().any(|a| matches!(a, Advice::ReduceBack { amount } if (amount - 20.0).abs() < 1.0)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FitMap {
    /// Threads down to the waist and from there to the hip, piece by piece from the middle to the side.
    pub stations: Vec<Thread>,
    /// Levels round the body.
    pub girths: Vec<RoundStation>,
    /// What follows from that.
    pub advice: Vec<Advice>,
}

impl FitMap {
    /// The thread down the middle of the back.
    #[must_use]
    pub fn centre_back(&self) -> Option<&Thread> {
        self.at(Half::Back, ThreadPlace::Centre)
    }

    /// The thread down the middle of the front.
    #[must_use]
    pub fn centre_front(&self) -> Option<&Thread> {
        self.at(Half::Front, ThreadPlace::Centre)
    }

    fn at(&self, half: Half, place: ThreadPlace) -> Option<&Thread> {
        let mut stations = self.stations.iter();
        stations.find(|station| {
            station.band == Band::ToWaist && station.half == half && station.place == place
        })
    }
}

/// Compares a pattern with a wearer. Without an origin the pattern's underarm is taken to lie 20 mm
/// below the armpit, and nothing is known of the numbers it was made from.
///
/// Pieces without a centre and a waist are left out: side panels, sleeves.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::fit_map::fit_map;
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let block = draft(&body, &DraftOptions::of(Block::Bodice))?;
/// // Who leans back has a shorter back than her block.
/// let hollow = Form::of(&body)?.leaned(8_f64.to_radians());
/// let map = fit_map(&block, None, &body, &hollow);
/// assert!(map.centre_back().is_some_and(|thread| thread.excess() > 8.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn fit_map(
    pattern: &Pattern,
    origin: Option<Origin<'_>>,
    wearer: &Body,
    form: &Form,
) -> FitMap {
    let below_armpit = origin
        .and_then(|origin| below_armpit(&origin))
        .unwrap_or(BELOW_ARMPIT);
    let panels: Vec<Panel<'_>> = pattern.pieces().iter().filter_map(Panel::of).collect();
    let stations: Vec<Thread> = panels
        .iter()
        .flat_map(|panel| {
            let mut all = match panel.half {
                _ if !panel.has_neck => Vec::new(),
                Half::Back => back(panel, form, below_armpit),
                Half::Front => front(panel, form, wearer, below_armpit),
            };
            all.extend(to_hip(panel, form));
            all
        })
        .collect();
    let advice = advise(&stations, origin, wearer, form);
    FitMap {
        girths: round(pattern, wearer),
        stations,
        advice,
    }
}

/// How far below the armpit the underarm of a draft lies.
fn below_armpit(origin: &Origin<'_>) -> Option<f64> {
    let mut panels = origin.draft.pieces().iter().filter_map(Panel::of);
    let back = panels.find(|panel| panel.has_neck && panel.half == Half::Back)?;
    let depth = back.underarm()?.y - back.neck.y;
    Some((depth - origin.body.value(M::ScyeDepth)).max(0.0))
}

fn station(panel: &Panel<'_>, place: ThreadPlace, ends: [Point; 2], lengths: [f64; 2]) -> Thread {
    let [pattern, body] = lengths;
    Thread {
        piece: panel.piece.name().to_owned(),
        half: panel.half,
        band: Band::ToWaist,
        place,
        ends,
        pattern,
        body,
    }
}

/// From the nape at the centre; elsewhere from the level of the armpits, which runs in the pattern from
/// the nape's scye depth to the underarm.
fn back(panel: &Panel<'_>, form: &Form, below_armpit: f64) -> Vec<Thread> {
    let mut out = Vec::new();
    let levels = form.levels();
    let scye = form.tape(M::ScyeDepth).unwrap_or(0.0);
    let at_centre = Point::new(panel.neck.x, panel.neck.y + scye);
    if let (Some(waist), Some(body)) = (panel.waist_at(0.0), form.tape(M::BackWaistLength)) {
        let ends = [panel.neck, waist];
        let lengths = [waist.y - panel.neck.y, body];
        out.push(station(panel, ThreadPlace::Centre, ends, lengths));
    }
    let Some(underarm) = panel.underarm() else {
        return out;
    };
    let at_side = Point::new(underarm.x, underarm.y - below_armpit);
    for share in SHARES {
        let Some(waist) = panel.waist_at(share) else {
            continue;
        };
        let top = at_centre.y + share * (at_side.y - at_centre.y);
        let ends = [Point::new(waist.x, top), waist];
        let body = form.thread(Half::Back, share, levels.waist, levels.armpit);
        let place = ThreadPlace::Share(share);
        out.push(station(panel, place, ends, [waist.y - top, body]));
    }
    out.extend(side(panel, form, at_side));
    out
}

/// Over the bust point only where that was taped: an estimated front is no reason for an alarm.
fn front(panel: &Panel<'_>, form: &Form, wearer: &Body, below_armpit: f64) -> Vec<Thread> {
    let mut out = Vec::new();
    if let (Some(waist), Some(body)) = (panel.waist_at(0.0), form.tape(M::CentreFrontWaistLength)) {
        let ends = [panel.neck, waist];
        let lengths = [waist.y - panel.neck.y, body];
        out.push(station(panel, ThreadPlace::Centre, ends, lengths));
    }
    if wearer.is_taken(M::FrontWaistLength) {
        out.extend(over_bust(panel, form));
    }
    if let Some(underarm) = panel.underarm() {
        let at_side = Point::new(underarm.x, underarm.y - below_armpit);
        out.extend(side(panel, form, at_side));
    }
    out
}

/// As the tape runs for the front waist length.
fn over_bust(panel: &Panel<'_>, form: &Form) -> Option<Thread> {
    let bust = panel.piece.point("bust_point")?;
    let (neck, waist) = (panel.neck_side()?, panel.waist_below(bust.x)?);
    let body = form.tape(M::FrontWaistLength)?;
    let pattern = (bust - neck).hypot() + waist.y - bust.y;
    Some(station(
        panel,
        ThreadPlace::OverBust,
        [neck, waist],
        [pattern, body],
    ))
}

fn side(panel: &Panel<'_>, form: &Form, top: Point) -> Option<Thread> {
    let waist = panel.waist_at(1.0)?;
    let levels = form.levels();
    let body = form.thread(panel.half, 1.0, levels.waist, levels.armpit);
    let pattern = waist.y - top.y - panel.taken_at_side(waist.y);
    Some(station(
        panel,
        ThreadPlace::Side,
        [top, waist],
        [pattern, body],
    ))
}

/// From the waist to the level of the fullest seat. That level is taped straight down, while the side of
/// a body runs outward, so that it is a few millimetres longer: so much is taken off every thread.
fn to_hip(panel: &Panel<'_>, form: &Form) -> Vec<Thread> {
    let levels = form.levels();
    let side = form.plumb_thread(panel.half, 1.0, levels.hip, levels.waist);
    let outward = side - (levels.waist - levels.hip);
    let places = [0.0].into_iter().chain(SHARES).chain([1.0]);
    let threads = places.filter_map(|share| {
        let ends = panel.to_hip(share)?;
        let place = match share {
            0.0 => ThreadPlace::Centre,
            1.0 => ThreadPlace::Side,
            _ => ThreadPlace::Share(share),
        };
        let body = form.plumb_thread(panel.half, share, levels.hip, levels.waist) - outward;
        let [from, to] = ends.map(|end| end.y);
        let pattern = to - from;
        Some(Thread {
            band: Band::WaistToHip,
            ..station(panel, place, ends, [pattern, body])
        })
    });
    threads.collect()
}

/// What the wearer's lengths were, and whether they say more than the pattern knew.
fn advise(
    stations: &[Thread],
    origin: Option<Origin<'_>>,
    wearer: &Body,
    form: &Form,
) -> Vec<Advice> {
    let knew = origin.is_some_and(|origin| {
        let lengths = [
            M::BackWaistLength,
            M::CentreFrontWaistLength,
            M::FrontWaistLength,
            M::ScyeDepth,
            M::WaistToHip,
        ];
        let of = |body: &Body, of: M| body.value(of).to_bits();
        let same = lengths
            .into_iter()
            .all(|m| of(origin.body, m) == of(wearer, m));
        same && !form.says_more_than_tapes()
    });
    let find = |half, place| {
        let mut all = stations.iter();
        all.find(|s| s.band == Band::ToWaist && s.half == half && s.place == place)
            .map(Thread::excess)
    };
    let back = find(Half::Back, ThreadPlace::Centre);
    let front = find(Half::Front, ThreadPlace::Centre)
        .filter(|_| wearer.is_taken(M::CentreFrontWaistLength));
    let over =
        find(Half::Front, ThreadPlace::OverBust).filter(|_| wearer.is_taken(M::FrontWaistLength));
    let mut missing = Vec::new();
    if !wearer.is_taken(M::BackWaistLength) {
        missing.push(M::BackWaistLength);
    }
    if !wearer.is_taken(M::CentreFrontWaistLength) && !wearer.is_taken(M::FrontWaistLength) {
        missing.push(M::CentreFrontWaistLength);
    }
    let mut out = Vec::new();
    if back.is_none() {
        return out;
    }
    let fronts = || [front, over].into_iter().flatten();
    let short = fronts().map(|excess| -excess).fold(0.0, f64::max);
    let long = fronts().fold(f64::INFINITY, f64::min);
    let looks_long = back.is_some_and(|excess| excess >= WORTH_SAYING);
    if short >= WORTH_SAYING {
        out.push(Advice::ShortFront {
            amount: short.round(),
            back_looks_long: looks_long,
        });
    } else if long.is_finite() && long >= WORTH_SAYING {
        out.push(Advice::LongFront {
            amount: long.round(),
        });
    }
    if missing.is_empty() {
        match back {
            Some(excess) if excess >= WORTH_SAYING && short < WORTH_SAYING => {
                out.push(Advice::ReduceBack {
                    amount: excess.round(),
                })
            }
            Some(excess) if excess <= -WORTH_SAYING => out.push(Advice::LengthenBack {
                amount: -excess.round(),
            }),
            _ => {}
        }
    }
    if out.is_empty() && knew {
        out.push(Advice::AgreesByConstruction);
    } else if !missing.is_empty() {
        out.push(Advice::NotMeasured { missing });
    } else if out.is_empty() {
        out.push(Advice::Agrees);
    }
    out
}
