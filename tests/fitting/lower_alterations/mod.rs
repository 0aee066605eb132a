//! Alterations of length, girth, seat, abdomen and sleeve: every law and promise on many bodies
//! and blocks, both ways, and back again.
#![allow(clippy::unwrap_used, clippy::panic)]

mod each;
mod high_hip;
mod laws;
mod refused;
mod sleeves;
mod undarted;

use crate::support::bodies::body;
use crate::support::survey::bodies as women;
use blockwright::alterations::{
    Abdomen, Alteration, Bust, HipGirth, LengthAt, LengthChange, Seat, SideSeam, UpperArm,
    WaistGirth,
};
use blockwright::draft::{Block, DraftOptions, Fit, SleeveLength, draft};
use blockwright::measurements::Body;
use blockwright::piece::Pattern;

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
                Box::new(LengthChange {
                    at: LengthAt::Bodice,
                    amount,
                })
            },
            bodied,
            [-15.0, -6.0, 6.0, 25.0],
        ),
        case(
            |amount| {
                Box::new(LengthChange {
                    at: LengthAt::Skirt,
                    amount,
                })
            },
            with_hips,
            [-40.0, -10.0, 10.0, 120.0],
        ),
        case(
            |amount| {
                Box::new(LengthChange {
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
            |amount| Box::new(SideSeam { amount }),
            with_hips,
            [-12.0, -5.0, 5.0, 12.0],
        ),
        case(
            |amount| Box::new(Seat::by(amount)),
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
