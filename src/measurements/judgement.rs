//! Which taken values the others make hard to believe, and how much of them an estimate heeds.

use super::doubt::{Against, Doubt, DoubtCode};
use super::joint::{Conditioned, Estimate};
use super::measurement::{Kind, Measurement};

/// A taken value is doubted beyond so many spreads of what the other taken values expect.
const DOUBT_SPREADS: f64 = 3.0;

/// Two values contradict each other if leaving out the one makes the other believable, and its
/// spreads fall to this share at most.
const SETTLED_SHARE: f64 = 0.6;

/// What two tapings of the same person differ by, in mm and in radians (common practice: half a
/// centimetre; the slope is read off with a protractor). The survey's own were made by trained
/// measurers, so that its spreads hold less of it.
const REPEATED: (f64, f64) = (5.0, 0.035);

/// Taken values, judged.
pub(super) struct Judged {
    /// Those that the others make hard to believe, the worst first.
    pub(super) doubts: Vec<Doubt>,
    /// What the estimates rest on: each value as taken, a doubted one as the nearest that would
    /// not be doubted, so that a slip of the tape does not carry everything else with it.
    pub(super) heeded: Vec<(Measurement, f64)>,
}

/// Judges the taken values by one another.
///
/// The worst is set aside, the others are judged without it, and so on until all that are left
/// go together. Height, bust, waist and hip are never set aside: the women surveyed were fit, and
/// what is rare among them need not be rare.
pub(super) fn judge(taken: &[(Measurement, f64)]) -> Judged {
    let mut believed = taken.to_vec();
    let mut aside = Vec::new();
    let mut doubts = Vec::new();
    while let Some(worst) = worst(&believed) {
        let Worst {
            place,
            taken: (measurement, value),
            conditioned,
            expected,
        } = worst;
        doubts.push(Doubt {
            code: DoubtCode::FarFromEstimate,
            measurement,
            value,
            against: against(&conditioned, &believed, measurement, expected),
            reason: "",
        });
        if let Some(doubt) = doubts.last_mut()
            && matches!(doubt.against, Against::Contradicting { .. })
        {
            doubt.code = DoubtCode::PairDisagrees;
        }
        aside.push(believed.remove(place));
    }
    let mut heeded = believed.clone();
    if let Some(conditioned) = Conditioned::on(believed)
        && !aside.is_empty()
    {
        for (measurement, value) in aside {
            let near = conditioned.estimate(measurement).map(|expected| {
                let most = DOUBT_SPREADS * tolerated(measurement, expected.spread);
                value.max(expected.value - most).min(expected.value + most)
            });
            heeded.extend(near.map(|near| (measurement, near)));
        }
    }
    Judged { doubts, heeded }
}

/// A value that the others make hard to believe.
struct Worst {
    /// Its place in the list.
    place: usize,
    taken: (Measurement, f64),
    /// The distribution given the whole list.
    conditioned: Conditioned,
    /// What the others let expect.
    expected: Estimate,
}

/// The value that the others make hardest to believe, if it is beyond belief.
fn worst(believed: &[(Measurement, f64)]) -> Option<Worst> {
    if believed
        .iter()
        .all(|(measurement, _)| measurement.is_required())
    {
        return None;
    }
    let conditioned = Conditioned::on(believed.iter().copied())?;
    let mut found: Option<(usize, (Measurement, f64), Estimate, f64)> = None;
    for (measurement, expected) in conditioned.each_from_the_others() {
        let mut places = believed.iter().enumerate();
        let (place, taken) = places.find(|(_, (m, _))| *m == measurement)?;
        let off = (taken.1 - expected.value).abs();
        let spreads = off / tolerated(measurement, expected.spread);
        let most = found.map_or(DOUBT_SPREADS, |(.., most)| most);
        if !measurement.is_required() && spreads > most {
            found = Some((place, *taken, expected, spreads));
        }
    }
    found.map(|(place, taken, expected, _)| Worst {
        place,
        taken,
        conditioned,
        expected,
    })
}

/// What a doubtful value contradicts: one other taken value, if all is well without that one and
/// that one is well without this, or else its estimate.
fn against(
    conditioned: &Conditioned,
    believed: &[(Measurement, f64)],
    measurement: Measurement,
    expected: Estimate,
) -> Against {
    let other = conditioned
        .without_both(measurement)
        .into_iter()
        .filter(|(_, off)| {
            off.one.abs() <= DOUBT_SPREADS.min(SETTLED_SHARE * off.one_beside.abs())
                && off.other.abs() <= DOUBT_SPREADS
        })
        .min_by(|(_, a), (_, b)| a.one.abs().total_cmp(&b.one.abs()));
    let pair = other.and_then(|(other, _)| {
        let (_, value) = *believed.iter().find(|(m, _)| *m == other)?;
        let each = conditioned.each_from_the_others();
        let (_, other_expected) = each.into_iter().find(|(m, _)| *m == other)?;
        Some(Against::Contradicting {
            measurement: other,
            value,
            expected: expected.value,
            other_expected: other_expected.value,
        })
    });
    pair.unwrap_or(Against::Estimate {
        value: expected.value,
        spread: tolerated(measurement, expected.spread),
    })
}

/// The spread of an estimate together with that of taping.
fn tolerated(measurement: Measurement, spread: f64) -> f64 {
    let (length, angle) = REPEATED;
    let repeated = match measurement.kind() {
        Kind::Length => length,
        Kind::Angle => angle,
    };
    (spread * spread + repeated * repeated).sqrt()
}
