//! Alterations of length, girth, seat, abdomen and sleeve: every law and promise on many bodies
//! and blocks, both ways, and back again.
#![allow(clippy::unwrap_used)]

mod each;
mod laws;
mod refused;

use blockwright::alterations::{
    Abdomen, Alteration, Bust, HipGirth, Length, LengthAt, Seat, UpperArm, WaistGirth,
};
use blockwright::draft::{Block, DraftOptions, Fit, SleeveLength, draft};
use blockwright::measurements::{Body, Measurement};
use blockwright::piece::Pattern;
use std::path::{Path, PathBuf};

fn body(height: f64, bust: f64, waist: f64, hip: f64) -> Body {
    Body::from_taken([
        (Measurement::Height, height),
        (Measurement::BustGirth, bust),
        (Measurement::WaistGirth, waist),
        (Measurement::HipGirth, hip),
    ])
    .unwrap()
}

/// Bodies spread as a survey's are: bust, and what waist, hip and height differ from it by.
fn bodies(count: usize) -> Vec<Body> {
    let mut state = 20_251_125_u64;
    let mut next = move || {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (state >> 11) as f64 / (1u64 << 53) as f64
    };
    (0..count)
        .map(|_| {
            let bust = 820.0 + 260.0 * next();
            let waist = bust - 90.0 - 110.0 * next();
            let hip = bust + 20.0 + 90.0 * next();
            body(1540.0 + 220.0 * next(), bust, waist, hip)
        })
        .collect()
}

/// Every so many of the women of the survey, which is not part of this repository.
fn women(every: usize) -> Option<Vec<Body>> {
    let path = std::env::var_os("BLOCKWRIGHT_SURVEY").map_or_else(
        || Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/survey/women.csv"),
        PathBuf::from,
    );
    let Ok(text) = std::fs::read_to_string(&path) else {
        eprintln!("SKIPPED: the survey is not at {}", path.display());
        return None;
    };
    let mut rows = text.lines();
    let header: Vec<&str> = rows.next()?.split(',').collect();
    let body = |row: &str| {
        let taken = header
            .iter()
            .zip(row.split(','))
            .filter_map(|(name, value)| {
                let value: f64 = value.parse().ok()?;
                if *name == "shoulder_slope_deg" {
                    return Some((Measurement::ShoulderSlope, value.to_radians()));
                }
                let measurement: Measurement = name.parse().ok()?;
                // The draft never sees the armscye girth.
                (measurement != Measurement::ArmscyeGirth).then_some((measurement, value))
            });
        Body::from_taken(taken.collect::<Vec<_>>()).unwrap()
    };
    Some(rows.step_by(every).map(body).collect())
}

fn drafted(body: &Body, block: Block, sleeve: SleeveLength) -> Option<Pattern> {
    let mut options = DraftOptions::fitting(block, Fit::Regular);
    options.sleeve = block.has_armscye().then_some(sleeve);
    draft(body, &options).ok()
}

type Make = fn(f64) -> Box<dyn Alteration>;

/// One case: the alteration, the blocks it suits, and usual amounts less and more.
struct Case {
    make: Make,
    blocks: fn(Block) -> bool,
    amounts: [f64; 4],
}

fn with_hips(block: Block) -> bool {
    block != Block::Bodice
}

fn cases() -> Vec<Case> {
    let case = |make: Make, blocks, amounts| Case {
        make,
        blocks,
        amounts,
    };
    let bodied: fn(Block) -> bool = Block::has_armscye;
    vec![
        case(
            |amount| {
                Box::new(Length {
                    at: LengthAt::Bodice,
                    amount,
                })
            },
            bodied,
            [-15.0, -6.0, 6.0, 25.0],
        ),
        case(
            |amount| {
                Box::new(Length {
                    at: LengthAt::Skirt,
                    amount,
                })
            },
            with_hips,
            [-40.0, -10.0, 10.0, 120.0],
        ),
        case(
            |amount| {
                Box::new(Length {
                    at: LengthAt::Sleeve,
                    amount,
                })
            },
            bodied,
            [-25.0, -10.0, 10.0, 40.0],
        ),
        case(
            |amount| Box::new(WaistGirth { amount }),
            |_| true,
            [-24.0, -8.0, 8.0, 24.0],
        ),
        case(
            |amount| Box::new(HipGirth { amount }),
            with_hips,
            [-20.0, -8.0, 8.0, 40.0],
        ),
        case(
            |amount| Box::new(Seat { amount }),
            with_hips,
            [-12.0, -6.0, 10.0, 25.0],
        ),
        case(
            |amount| Box::new(Abdomen { amount }),
            with_hips,
            [-8.0, -4.0, 10.0, 20.0],
        ),
        case(
            |amount| Box::new(UpperArm { amount }),
            bodied,
            [-15.0, -6.0, 6.0, 25.0],
        ),
        case(
            |amount| Box::new(Bust { amount }),
            bodied,
            [-8.0, -4.0, 8.0, 20.0],
        ),
    ]
}
