//! What the survey says of breadths, depths and heights: written by a program, not by hand.
//!
//! `cargo run --release --example derive_form -- tests/data/women.csv`. Each of the first is a
//! linear relation to what is taped, fitted by least squares over 552 women, every other one
//! (NATICK/TR-89/044, public domain), with the spread that it leaves and how those spreads go
//! together. Means of the assumed are those with which forms of these women meet their surveyed
//! heights, breadths and depths on average; their spreads are assumptions.

use super::parameter::ShapeParameter as P;
use super::relation::Relation;
use crate::measurements::Measurement as M;

pub(super) const SURVEYED: [Relation; 11] = [
    Relation { of: P::NapeRise, constant: 12.0658, terms: &[(M::Height, 0.02347), (M::BustGirth, -0.02368), (M::WaistGirth, -0.02146), (M::HipGirth, -0.00422), (M::NeckBaseGirth, 0.03891), (M::NeckToBustPoint, 0.02370), (M::ScyeDepth, -0.03474), (M::BackWaistLength, 0.65271), (M::CentreFrontWaistLength, 0.28756)], spread: 7.643 },
    Relation { of: P::NeckSideDrop, constant: -7.8910, terms: &[(M::Height, -0.01417), (M::BustGirth, 0.00846), (M::WaistGirth, -0.00246), (M::HipGirth, 0.00910), (M::NeckBaseGirth, -0.05257), (M::NeckToBustPoint, -0.07261), (M::ScyeDepth, 0.23335), (M::BackWaistLength, 0.16990), (M::CentreFrontWaistLength, -0.12692)], spread: 6.398 },
    Relation { of: P::FrontNeckDrop, constant: -14.0942, terms: &[(M::Height, -0.00364), (M::BustGirth, -0.00228), (M::WaistGirth, -0.01542), (M::HipGirth, 0.01054), (M::NeckBaseGirth, 0.01773), (M::NeckToBustPoint, -0.00743), (M::ScyeDepth, 0.20769), (M::BackWaistLength, 0.40034), (M::CentreFrontWaistLength, -0.28413)], spread: 8.055 },
    Relation { of: P::BustRise, constant: 7.6679, terms: &[(M::Height, 0.03038), (M::BustGirth, 0.07450), (M::WaistGirth, -0.01230), (M::HipGirth, -0.03097), (M::NeckBaseGirth, 0.07273), (M::NeckToBustPoint, -0.81821), (M::ScyeDepth, -0.26749), (M::BackWaistLength, 0.25034), (M::CentreFrontWaistLength, 0.59081)], spread: 11.552 },
    Relation { of: P::ArmpitRise, constant: 8.9645, terms: &[(M::Height, 0.00974), (M::BustGirth, -0.01064), (M::WaistGirth, 0.00235), (M::HipGirth, -0.01575), (M::NeckBaseGirth, -0.00512), (M::NeckToBustPoint, 0.00413), (M::ScyeDepth, -0.71406), (M::BackWaistLength, 0.64298), (M::CentreFrontWaistLength, 0.23368)], spread: 10.365 },
    Relation { of: P::BustBreadth, constant: -19.6580, terms: &[(M::Height, 0.00334), (M::BustGirth, 0.04494), (M::UpperChestGirth, 0.09081), (M::UnderbustGirth, 0.17287), (M::BackWidth, 0.11333)], spread: 8.696 },
    Relation { of: P::BustDepth, constant: -1.1643, terms: &[(M::Height, -0.01912), (M::BustGirth, 0.34661), (M::UpperChestGirth, -0.02196), (M::UnderbustGirth, -0.01519), (M::BackWidth, -0.03335)], spread: 8.776 },
    Relation { of: P::WaistBreadth, constant: 5.4146, terms: &[(M::Height, 0.01273), (M::WaistGirth, 0.32917)], spread: 7.554 },
    Relation { of: P::WaistDepth, constant: 9.1239, terms: &[(M::Height, -0.02191), (M::WaistGirth, 0.29544)], spread: 9.070 },
    Relation { of: P::HipBreadth, constant: -2.0278, terms: &[(M::Height, 0.01061), (M::WaistGirth, -0.02127), (M::HipGirth, 0.35377)], spread: 9.027 },
    Relation { of: P::HipDepth, constant: -12.1737, terms: &[(M::Height, -0.02490), (M::WaistGirth, 0.11239), (M::HipGirth, 0.20556)], spread: 11.635 },
];

pub(super) const CORRELATION: [[f64; 11]; 11] = [
    [1.0000, 0.2699, 0.4174, 0.3460, 0.5646, 0.0415, -0.1021, 0.0821, -0.0635, 0.1539, -0.1063],
    [0.2699, 1.0000, 0.4463, -0.3002, -0.2062, -0.0307, 0.0534, -0.0501, 0.0538, -0.0108, 0.0595],
    [0.4174, 0.4463, 1.0000, -0.2393, 0.0184, 0.0676, -0.1147, 0.1086, -0.1122, 0.1563, -0.1263],
    [0.3460, -0.3002, -0.2393, 1.0000, 0.4827, -0.0707, 0.0973, -0.0235, 0.0651, 0.0075, 0.0268],
    [0.5646, -0.2062, 0.0184, 0.4827, 1.0000, 0.0183, -0.0671, 0.1062, -0.0678, 0.1216, -0.0837],
    [0.0415, -0.0307, 0.0676, -0.0707, 0.0183, 1.0000, -0.2281, 0.1522, -0.0477, 0.2323, -0.1512],
    [-0.1021, 0.0534, -0.1147, 0.0973, -0.0671, -0.2281, 1.0000, -0.0453, 0.1221, -0.0778, 0.1096],
    [0.0821, -0.0501, 0.1086, -0.0235, 0.1062, 0.1522, -0.0453, 1.0000, -0.3166, 0.4095, -0.3301],
    [-0.0635, 0.0538, -0.1122, 0.0651, -0.0678, -0.0477, 0.1221, -0.3166, 1.0000, -0.2702, 0.2884],
    [0.1539, -0.0108, 0.1563, 0.0075, 0.1216, 0.2323, -0.0778, 0.4095, -0.2702, 1.0000, -0.5400],
    [-0.1063, 0.0595, -0.1263, 0.0268, -0.0837, -0.1512, 0.1096, -0.3301, 0.2884, -0.5400, 1.0000],
];

pub(super) const ASSUMED: [Relation; 16] = [
    Relation { of: P::NapeForward, constant: 51.5996, terms: &[], spread: 14.0 },
    Relation { of: P::WaistForward, constant: 19.9693, terms: &[], spread: 14.0 },
    Relation { of: P::SeatForward, constant: 4.9213, terms: &[], spread: 14.0 },
    Relation { of: P::BladeShare, constant: 0.4310, terms: &[], spread: 0.04 },
    Relation { of: P::BustRecess, constant: 17.6879, terms: &[], spread: 6.0 },
    Relation { of: P::ChestBreadth, constant: 0.0, terms: &[(M::UpperChestGirth, 0.35546)], spread: 12.0 },
    Relation { of: P::UnderbustBreadth, constant: 0.0, terms: &[(M::UnderbustGirth, 0.33840)], spread: 10.0 },
    Relation { of: P::UnderbustDepth, constant: 0.0, terms: &[(M::UnderbustGirth, 0.28762)], spread: 10.0 },
    Relation { of: P::NeckHalf, constant: 0.0, terms: &[(M::NeckBaseGirth, 0.13856)], spread: 3.0 },
    Relation { of: P::NeckDepth, constant: 0.0, terms: &[(M::NeckBaseGirth, 0.17699)], spread: 8.0 },
    Relation { of: P::NeckSideShare, constant: 0.6494, terms: &[], spread: 0.06 },
    Relation { of: P::ChestRoundness, constant: 2.2635, terms: &[], spread: 0.2 },
    Relation { of: P::BustRoundness, constant: 3.3779, terms: &[], spread: 0.25 },
    Relation { of: P::UnderbustRoundness, constant: 2.1960, terms: &[], spread: 0.15 },
    Relation { of: P::WaistRoundness, constant: 2.1600, terms: &[], spread: 0.15 },
    Relation { of: P::HipRoundness, constant: 3.0282, terms: &[], spread: 0.25 },
];
