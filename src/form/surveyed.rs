//! What the survey says of breadths, depths and heights: written by a program, not by hand.
//!
//! `cargo run --example derive_form -- tests/data/women.csv`. Each is a linear relation to what is
//! taped, fitted by least squares over 1104 women (NATICK/TR-89/044, public domain), with the spread
//! that it leaves and how those spreads go together.

use super::parameter::ShapeParameter as P;
use super::relation::Relation;
use crate::measurements::Measurement as M;

pub(super) const SURVEYED: [Relation; 11] = [
    Relation { of: P::NapeRise, constant: 4.3888, terms: &[(M::Height, 0.02752), (M::BustGirth, -0.02389), (M::WaistGirth, -0.02104), (M::HipGirth, -0.00144), (M::NeckBaseGirth, 0.04650), (M::NeckToBustPoint, 0.01735), (M::ScyeDepth, -0.05232), (M::BackWaistLength, 0.64560), (M::CentreFrontWaistLength, 0.29664)], spread: 7.161 },
    Relation { of: P::NeckSideDrop, constant: -3.6579, terms: &[(M::Height, -0.01352), (M::BustGirth, 0.00980), (M::WaistGirth, 0.00420), (M::HipGirth, -0.00265), (M::NeckBaseGirth, -0.03240), (M::NeckToBustPoint, -0.07736), (M::ScyeDepth, 0.21878), (M::BackWaistLength, 0.14670), (M::CentreFrontWaistLength, -0.11058)], spread: 6.347 },
    Relation { of: P::FrontNeckDrop, constant: -11.7372, terms: &[(M::Height, -0.00008), (M::BustGirth, -0.00356), (M::WaistGirth, -0.01098), (M::HipGirth, -0.00790), (M::NeckBaseGirth, 0.04496), (M::NeckToBustPoint, 0.00969), (M::ScyeDepth, 0.20706), (M::BackWaistLength, 0.38521), (M::CentreFrontWaistLength, -0.28781)], spread: 8.025 },
    Relation { of: P::BustRise, constant: 8.9130, terms: &[(M::Height, 0.02800), (M::BustGirth, 0.08026), (M::WaistGirth, -0.02446), (M::HipGirth, -0.00996), (M::NeckBaseGirth, 0.04169), (M::NeckToBustPoint, -0.83352), (M::ScyeDepth, -0.27701), (M::BackWaistLength, 0.26294), (M::CentreFrontWaistLength, 0.58259)], spread: 11.185 },
    Relation { of: P::ArmpitRise, constant: -3.1928, terms: &[(M::Height, 0.01486), (M::BustGirth, -0.00315), (M::WaistGirth, -0.00718), (M::HipGirth, -0.00020), (M::NeckBaseGirth, -0.03845), (M::NeckToBustPoint, -0.02007), (M::ScyeDepth, -0.71271), (M::BackWaistLength, 0.67261), (M::CentreFrontWaistLength, 0.21903)], spread: 9.954 },
    Relation { of: P::BustBreadth, constant: -17.9571, terms: &[(M::Height, 0.00409), (M::BustGirth, 0.04080), (M::UpperChestGirth, 0.08806), (M::UnderbustGirth, 0.17187), (M::BackWidth, 0.12436)], spread: 8.525 },
    Relation { of: P::BustDepth, constant: -2.6236, terms: &[(M::Height, -0.01411), (M::BustGirth, 0.34071), (M::UpperChestGirth, -0.00897), (M::UnderbustGirth, -0.02725), (M::BackWidth, -0.04277)], spread: 8.872 },
    Relation { of: P::WaistBreadth, constant: 13.1349, terms: &[(M::Height, 0.01152), (M::WaistGirth, 0.32166)], spread: 7.574 },
    Relation { of: P::WaistDepth, constant: 9.0487, terms: &[(M::Height, -0.02243), (M::WaistGirth, 0.29596)], spread: 8.848 },
    Relation { of: P::HipBreadth, constant: -4.6219, terms: &[(M::Height, 0.01482), (M::WaistGirth, -0.03066), (M::HipGirth, 0.35681)], spread: 8.948 },
    Relation { of: P::HipDepth, constant: -4.3056, terms: &[(M::Height, -0.02867), (M::WaistGirth, 0.10835), (M::HipGirth, 0.20663)], spread: 11.679 },
];
pub(super) const CORRELATION: [[f64; 11]; 11] = [
    [1.0000, 0.2740, 0.3854, 0.3171, 0.5416, 0.0677, -0.1042, 0.0936, -0.0578, 0.1416, -0.1071],
    [0.2740, 1.0000, 0.4228, -0.3105, -0.1991, -0.0405, 0.0106, -0.0739, 0.0643, -0.0101, 0.0276],
    [0.3854, 0.4228, 1.0000, -0.2634, -0.0155, 0.0517, -0.1720, 0.0833, -0.1367, 0.1518, -0.1373],
    [0.3171, -0.3105, -0.2634, 1.0000, 0.4471, -0.0360, 0.1181, -0.0047, 0.0635, -0.0013, 0.0519],
    [0.5416, -0.1991, -0.0155, 0.4471, 1.0000, 0.0615, -0.0272, 0.1294, -0.0575, 0.1085, -0.0628],
    [0.0677, -0.0405, 0.0517, -0.0360, 0.0615, 1.0000, -0.2102, 0.1562, -0.0939, 0.2205, -0.1302],
    [-0.1042, 0.0106, -0.1720, 0.1181, -0.0272, -0.2102, 1.0000, -0.0407, 0.1334, -0.0358, 0.0815],
    [0.0936, -0.0739, 0.0833, -0.0047, 0.1294, 0.1562, -0.0407, 1.0000, -0.3890, 0.4137, -0.3217],
    [-0.0578, 0.0643, -0.1367, 0.0635, -0.0575, -0.0939, 0.1334, -0.3890, 1.0000, -0.3153, 0.2945],
    [0.1416, -0.0101, 0.1518, -0.0013, 0.1085, 0.2205, -0.0358, 0.4137, -0.3153, 1.0000, -0.5434],
    [-0.1071, 0.0276, -0.1373, 0.0519, -0.0628, -0.1302, 0.0815, -0.3217, 0.2945, -0.5434, 1.0000],
];
