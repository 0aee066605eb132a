//! The joint distribution: against a reference library, against women it never saw, and against
//! bodies larger than those it rests on.

use blockwright::measurements::{Body, Kind, Measurement as M, Source};
use nalgebra::{DMatrix, DVector};

use super::derive_estimates::{Column, read};
use super::known::*;
use crate::support::survey::{survey_text, tell};

const FOLDS: usize = 5;

/// What is usually taken, beside height, bust, waist and hip.
const TAKEN: [(&str, &[M]); 5] = [
    ("four girths", &[]),
    ("and the back waist", &[M::BackWaistLength]),
    (
        "and the front waist",
        &[M::BackWaistLength, M::FrontWaistLength],
    ),
    (
        "all lengths",
        &[
            M::BackWaistLength,
            M::FrontWaistLength,
            M::CentreFrontWaistLength,
            M::WaistToHip,
            M::WaistToKnee,
            M::ArmLength,
            M::ScyeDepth,
            M::NeckToBustPoint,
            M::ShoulderLength,
        ],
    ),
    (
        "ten measurements",
        &[
            M::BackWaistLength,
            M::BackWidth,
            M::NeckBaseGirth,
            M::UpperArmGirth,
            M::ShoulderLength,
            M::WristGirth,
        ],
    ),
];

/// The same distribution written again with a reference library.
struct Reference {
    centre: DVector<f64>,
    mean: DVector<f64>,
    covariance: DMatrix<f64>,
    women: f64,
}

impl Reference {
    fn of(columns: &[Column], women: &[usize]) -> Self {
        let n = women.len() as f64;
        let centre = DVector::from_fn(columns.len(), |k, _| {
            women.iter().map(|w| columns[k].values[*w]).sum::<f64>() / n
        });
        let z = DMatrix::from_fn(women.len(), columns.len(), |w, k| {
            deviation(columns[k].of, columns[k].values[women[w]], centre[k])
        });
        let mean = z.row_mean().transpose();
        let centred = DMatrix::from_fn(z.nrows(), z.ncols(), |w, k| z[(w, k)] - mean[k]);
        let covariance = centred.transpose() * &centred / (n - 1.0);
        Self {
            centre,
            mean,
            covariance,
            women: n,
        }
    }

    /// Value and spread of every measurement that is not taken.
    fn estimate(
        &self,
        columns: &[Column],
        woman: usize,
        taken: &[usize],
    ) -> Vec<(usize, f64, f64)> {
        let z = DVector::from_fn(taken.len(), |i, _| {
            let k = taken[i];
            let column = &columns[k];
            deviation(column.of, column.values[woman], self.centre[k]) - self.mean[k]
        });
        let inner = DMatrix::from_fn(taken.len(), taken.len(), |i, j| {
            self.covariance[(taken[i], taken[j])]
        });
        let inverse = inner.try_inverse().expect("measurements vary");
        let distance = z.dot(&(&inverse * &z));
        // Every spread is wider for a bust beyond half a spread above the mean.
        let bust = taken.iter().position(|k| columns[*k].of == M::BustGirth);
        let bust = bust.map(|i| z[i] / self.covariance[(taken[i], taken[i])].sqrt());
        let wider = 1.0 + 0.05 * (bust.expect("a bust").min(5.0) - 0.5).max(0.0);
        (0..columns.len())
            .filter(|k| !taken.contains(k))
            .map(|k| {
                let with = DVector::from_fn(taken.len(), |i, _| self.covariance[(k, taken[i])]);
                let at = self.mean[k] + with.dot(&(&inverse * &z));
                let rest = self.covariance[(k, k)] - with.dot(&(&inverse * &with));
                let spread = wider * (rest * (1.0 + (1.0 + distance) / self.women)).sqrt();
                let c = self.centre[k];
                match columns[k].of.kind() {
                    Kind::Angle => (k, c * (1.0 + 2.0 * at), 2.0 * c * spread),
                    Kind::Length => {
                        let steep = 2.0 * c / (1.0 - at).powi(2);
                        (k, c * (1.0 + at) / (1.0 - at), steep * spread)
                    }
                }
            })
            .collect()
    }
}

fn deviation(of: M, x: f64, c: f64) -> f64 {
    match of.kind() {
        Kind::Angle => (x - c) / (2.0 * c),
        Kind::Length => (x - c) / (x + c),
    }
}

fn places(columns: &[Column], more: &[M]) -> Vec<usize> {
    let all = M::REQUIRED.iter().chain(more);
    all.map(|m| columns.iter().position(|c| c.of == *m).expect("a column"))
        .collect()
}

#[test]
fn every_estimate_is_that_of_a_reference_library() {
    let columns = read(&survey_text()).expect("a survey");
    let women = columns[0].values.len();
    let reference = Reference::of(&columns, &(0..women).collect::<Vec<_>>());
    for (_, more) in TAKEN {
        let taken = places(&columns, more);
        for woman in (0..women).step_by(9) {
            let given = taken
                .iter()
                .map(|k| (columns[*k].of, columns[*k].values[woman]));
            let body = Body::from_taken(given).expect("a body");
            if !body.doubts().is_empty() {
                continue;
            }
            for (k, value, spread) in reference.estimate(&columns, woman, &taken) {
                let found = body.estimate(columns[k].of).expect("an estimate");
                let Source::Estimated { spread: own } = found.source else {
                    panic!("{} was not taken", columns[k].of);
                };
                // The table is written to ten digits.
                approx::assert_relative_eq!(found.value, value, max_relative = 1e-5);
                approx::assert_relative_eq!(own, spread, max_relative = 1e-4);
            }
        }
    }
}

/// How estimates of women that were left out of the fit came out.
struct Tested {
    of: M,
    /// Error and error over spread, by quintile of the bust.
    by_quintile: [Vec<(f64, f64)>; 5],
}

impl Tested {
    fn rms(&self) -> f64 {
        let all = self.by_quintile.iter().flatten();
        let (count, sum) = all.fold((0.0, 0.0), |(n, s), (e, _)| (n + 1.0, s + e * e));
        f64::sqrt(sum / count)
    }

    /// Root mean square of error over spread, and the shares within one spread and two.
    fn spreads(&self, quintile: usize) -> [f64; 3] {
        let found = &self.by_quintile[quintile];
        let n = found.len() as f64;
        let within = |most: f64| found.iter().filter(|(_, z)| z.abs() < most).count() as f64 / n;
        let squares: f64 = found.iter().map(|(_, z)| z * z).sum();
        [(squares / n).sqrt(), within(1.0), within(2.0)]
    }
}

fn cross_validated(columns: &[Column], more: &[M]) -> Vec<Tested> {
    let women = columns[0].values.len();
    let taken = places(columns, more);
    let bust = &columns[places(columns, &[])[1]].values;
    let quintile = |woman: usize| {
        let below = bust.iter().filter(|b| **b < bust[woman]).count();
        (below * 5 / women).min(4)
    };
    let mut tested: Vec<Option<Tested>> = columns
        .iter()
        .enumerate()
        .map(|(k, column)| {
            (!taken.contains(&k)).then(|| Tested {
                of: column.of,
                by_quintile: Default::default(),
            })
        })
        .collect();
    for fold in 0..FOLDS {
        let seen: Vec<usize> = (0..women).filter(|w| w % FOLDS != fold).collect();
        let reference = Reference::of(columns, &seen);
        for woman in (0..women).filter(|w| w % FOLDS == fold) {
            for (k, value, spread) in reference.estimate(columns, woman, &taken) {
                let off = columns[k].values[woman] - value;
                if let Some(tested) = &mut tested[k] {
                    tested.by_quintile[quintile(woman)].push((off, off / spread));
                }
            }
        }
    }
    tested.into_iter().flatten().collect()
}

/// Five-fold cross-validation: every woman is estimated from a distribution that never saw her.
/// The spreads must hold in every fifth of the women by bust. Normal residuals would give a root
/// mean square of 1, 68 % within one spread and 95 % within two; of a fifth, 221 women, one
/// standard error of these is 0.05, 3 % and 1.5 %.
#[test]
fn women_left_out_are_estimated_within_calibrated_spreads() {
    let columns = read(&survey_text()).expect("a survey");
    for (name, more) in TAKEN {
        let tested = cross_validated(&columns, more);
        let mut text = format!(
            "\ntaken: {name}\n  rms mm or deg; rms/spread, % in 1, % in 2 by bust quintile\n"
        );
        let mut sums = [[0.0; 3]; 5];
        for one in &tested {
            let rms = match one.of.kind() {
                Kind::Length => one.rms(),
                Kind::Angle => one.rms().to_degrees(),
            };
            text += &format!("  {:<26}{rms:5.1} ", one.of.name());
            for (quintile, sum) in sums.iter_mut().enumerate() {
                let found = one.spreads(quintile);
                let [ratio, one_spread, two] = found;
                text += &format!(
                    "  {ratio:.2} {:2.0} {:2.0}",
                    100.0 * one_spread,
                    100.0 * two
                );
                assert!((0.8..1.2).contains(&ratio), "{name}, {}: {found:?}", one.of);
                assert!(
                    (0.55..0.85).contains(&one_spread),
                    "{name}, {}: {found:?}",
                    one.of
                );
                assert!(
                    (0.89..0.999).contains(&two),
                    "{name}, {}: {found:?}",
                    one.of
                );
                for (sum, part) in sum.iter_mut().zip(found) {
                    *sum += part / tested.len() as f64;
                }
            }
            text.push('\n');
        }
        text += &format!("  {:<31} ", "all");
        for [ratio, one_spread, two] in sums {
            text += &format!(
                "  {ratio:.2} {:2.0} {:2.0}",
                100.0 * one_spread,
                100.0 * two
            );
            assert!((0.95..1.05).contains(&ratio), "{name}: {sums:?}");
            assert!((0.65..0.72).contains(&one_spread), "{name}: {sums:?}");
            assert!((0.93..0.97).contains(&two), "{name}: {sums:?}");
        }
        tell(&text);
        let rms = |of: M| tested.iter().find(|t| t.of == of).map(Tested::rms);
        if name == "and the back waist" {
            // Asked for: 16.5 and 15. Regressions on four girths alone left 21 and 19.
            assert!(rms(M::FrontWaistLength).is_some_and(|rms| rms < 16.5));
            assert!(rms(M::WaistToKnee).is_some_and(|rms| rms < 15.0));
        }
    }
}

/// Beyond the survey: bands of the women of the 2012 Anthropometric Survey of U.S. Army
/// Personnel, means of each (computed): height, bust, hip, neck base, back width, flexed upper
/// arm, wrist, hand. Its waist is at the navel; the natural waist is taken as 35 mm less, as in
/// the survey of 1988 at this size. The arm is measured at the armpit here, 10 to 20 mm above.
#[test]
fn large_bodies_follow_a_second_survey() {
    let mut text = String::from("\nbust  neck       back       upper arm  wrist      hand\n");
    for [height, bust, waist, hip, neck, back, arm, wrist, hand] in [
        [
            1648.0, 1042.0, 925.0, 1081.0, 386.0, 393.0, 332.0, 159.0, 191.0,
        ],
        [
            1654.0, 1094.0, 974.0, 1113.0, 394.0, 408.0, 345.0, 162.0, 192.0,
        ],
        [
            1658.0, 1150.0, 1027.0, 1148.0, 404.0, 422.0, 363.0, 165.0, 195.0,
        ],
        [
            1684.0, 1206.0, 1070.0, 1182.0, 417.0, 432.0, 371.0, 169.0, 196.0,
        ],
    ] {
        let body = body(height, bust, waist, hip);
        text += &format!("{bust}");
        for (of, mean, above) in [
            (M::NeckBaseGirth, neck, 0.0),
            (M::BackWidth, back, 0.0),
            (M::UpperArmGirth, arm, 15.0),
            (M::WristGirth, wrist, 0.0),
            (M::HandGirth, hand, 0.0),
        ] {
            let value = body.value(of);
            text += &format!("  {value:4.0} {mean:4.0}");
            let spreads = (value - mean - above).abs() / spread(&body, of);
            assert!(
                spreads < 1.6,
                "bust {bust}: {of} {value}, {mean}: {spreads}"
            );
        }
        text.push('\n');
    }
    tell(&text);
}

/// The upper arm of a size table drawn on to its end, and beyond: the handbook's arm column adds
/// 20 mm for each 60 mm of bust from 332 at 1040 (Aldrich, as transcribed, to bust 1220), the
/// line of the 2012 survey is 43 + 0.2775 bust flexed, 15 less than at the armpit (computed, to
/// 1250). Waist and hip as in EN 13402-3 (value from memory).
#[test]
fn no_upper_arm_is_far_too_thick_on_a_large_body() {
    let mut text = String::from("\nbust  upper arm  handbook  survey line\n");
    for (bust, waist, hip) in [
        (1040.0, 880.0, 1120.0),
        (1220.0, 1060.0, 1270.0),
        (1280.0, 1120.0, 1320.0),
        (1340.0, 1180.0, 1370.0),
        (1400.0, 1240.0, 1420.0),
        (1460.0, 1300.0, 1470.0),
        (1520.0, 1360.0, 1520.0),
        (1600.0, 1440.0, 1590.0),
    ] {
        let body = body(1680.0, bust, waist, hip);
        let arm = body.value(M::UpperArmGirth);
        let handbook = 332.0 + (bust - 1040.0) / 3.0;
        let line = 43.0 + 0.2775 * bust + 15.0;
        text += &format!("{bust}  {arm:6.0}  {handbook:6.0}  {line:6.0}\n");
        let (low, high) = (line.min(handbook) - 25.0, line.max(handbook) + 25.0);
        assert!(
            (low..high).contains(&arm),
            "bust {bust}: {arm}, {low} to {high}"
        );
    }
    tell(&text);
}

/// Without the back, the front follows the handbooks; with it, her own back.
#[test]
fn the_front_width_follows_bust_and_back() {
    for bust in [760.0, 880.0, 1000.0, 1100.0] {
        let plain = body(1650.0, bust, bust - 170.0, bust + 70.0);
        let narrower = plain.value(M::BackWidth) - plain.value(M::FrontWidth);
        // Front 0.30 B + 60, back 0.25 B + 124 (Aldrich, as transcribed), and 24 at every size
        // (Bunka, value from memory): between the two, and a little for the rest of her build.
        let (aldrich, bunka) = (64.0 - 0.05 * bust, 24.0);
        let (low, high) = (aldrich.min(bunka) - 4.0, aldrich.max(bunka) + 4.0);
        assert!((low..high).contains(&narrower), "bust {bust}: {narrower}");
        for by in [-40.0, 40.0] {
            let back = plain.value(M::BackWidth) + by;
            let own = plain.with_taken(M::BackWidth, back).expect("a body");
            let moved = own.value(M::FrontWidth) - plain.value(M::FrontWidth);
            // Two widths of one rib cage, not one width twice: the front follows by 0.8 (an
            // assumption), and a little for the shoulder that is expected to go with the back.
            assert!(
                (moved / by - 0.8).abs() < 0.1,
                "bust {bust}: {moved} for {by}"
            );
        }
        let back = plain
            .with_taken(M::BackWidth, plain.value(M::BackWidth))
            .expect("a body");
        let chest = back.value(M::UpperChestGirth);
        let fuller = back
            .with_taken(M::UpperChestGirth, chest + 30.0)
            .expect("a body");
        assert!(fuller.value(M::FrontWidth) > back.value(M::FrontWidth) + 2.0);
        // The sources disagree by 27 mm about their mean: that much is left, whatever is taken.
        assert!(spread(&fuller, M::FrontWidth) > 0.9 * 27.0 * bust / 908.0);
    }
}

/// The first that is asked for leaves less uncertainty than any other would.
#[test]
fn the_measurement_asked_for_helps_most() {
    let drafted = |m: &M| {
        let unused = [
            M::ArmscyeGirth,
            M::NapeHeight,
            M::WaistHeight,
            M::BackHollow,
            M::NapePlumb,
            M::WaistPlumb,
            M::BustDepth,
            M::SeatDepth,
            M::HeadGirth,
            M::HandGirth,
        ];
        !unused.contains(m)
    };
    for four in [
        (1628.0, 908.0, 726.0, 967.0),
        (1600.0, 1150.0, 980.0, 1150.0),
    ] {
        let plain = body(four.0, four.1, four.2, four.3);
        let left = |with: &Body| -> f64 {
            M::ALL
                .into_iter()
                .filter(drafted)
                .filter(|m| !with.is_taken(*m))
                .map(|m| match m.kind() {
                    Kind::Length => spread(with, m),
                    // At the end of a shoulder of mean length.
                    Kind::Angle => 124.0 * spread(with, m),
                })
                .map(|spread| spread * spread)
                .sum()
        };
        let asked = plain.most_helpful(4);
        let rest = |m: M| left(&plain.with_taken(m, plain.value(m)).expect("a body"));
        for other in M::ALL
            .into_iter()
            .filter(drafted)
            .filter(|m| !plain.is_taken(*m))
        {
            let (first, second) = (rest(asked[0]), rest(other));
            assert!(
                first <= 1.01 * second,
                "{asked:?}: {first}, {other}: {second}"
            );
        }
        tell(&format!("asked of bust {}: {asked:?}", four.1));
    }
}
