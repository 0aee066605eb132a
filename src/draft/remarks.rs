//! What a draft says about measurements that it used otherwise than taken, or not at all.

use super::Figure;
use crate::measurements::{Body, Measurement};
use crate::piece::{EdgeName, EdgeRef, Pattern, Warning};

/// Front lengths that disagree by more than this are reported, in millimetres.
const DISAGREE: f64 = 1.0;

/// The remarks on a pattern drafted for a body.
pub(super) fn remarks(body: &Body, figure: &Figure, pattern: &Pattern) -> Vec<Warning> {
    let Some(armscye) = armscye(pattern) else {
        return Vec::new();
    };
    [
        front_length(body, figure),
        front_lengths_disagree(body, figure),
        armscye_compared(body, armscye),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn taken(body: &Body, measurement: Measurement) -> Option<f64> {
    let found = body.get(measurement)?;
    found.source.is_taken().then_some(found.value)
}

fn front_length(body: &Body, figure: &Figure) -> Option<Warning> {
    if body.is_taken(Measurement::FrontWaistLength) {
        return None;
    }
    let from = if body.is_taken(Measurement::CentreFrontWaistLength) {
        "from centre_front_waist_length and the depth of the front neck"
    } else {
        "its estimate"
    };
    Some(Warning::new(
        "front_length_not_taken",
        format!(
            "front_waist_length was not taken: drafted with {:.0} mm, {from}; the bust dart follows from it, so take it for a second toile",
            figure.front_waist_length
        ),
    ))
}

fn front_lengths_disagree(body: &Body, figure: &Figure) -> Option<Warning> {
    let front = taken(body, Measurement::FrontWaistLength)?;
    let centre = taken(body, Measurement::CentreFrontWaistLength)?;
    let depth = figure.front_neck_depth?;
    let drafted = figure.front_waist_length;
    ((drafted - front).abs() > DISAGREE).then(|| {
        Warning::new(
            "front_lengths_disagree",
            format!(
                "front_waist_length {front:.0} mm and centre_front_waist_length {centre:.0} mm leave a front neck {:.0} mm deep; drafted with {depth:.0} mm and a front of {drafted:.0} mm from the neck side point: measure both again",
                front - centre
            ),
        )
    })
}

/// Length of the armscye of back and front together, of a pattern that has one.
fn armscye(pattern: &Pattern) -> Option<f64> {
    let of = |half: &str| {
        let joined = format!("bodice {half}");
        let piece = [half, joined.as_str()].into_iter().find(|name| {
            pattern
                .piece(name)
                .is_some_and(|p| p.outline().edge(&EdgeName::ARMSCYE).is_some())
        })?;
        pattern.seam_length(&EdgeRef::new(piece, EdgeName::ARMSCYE))
    };
    Some(of("back")? + of("front")?)
}

fn armscye_compared(body: &Body, drafted: f64) -> Option<Warning> {
    let girth = taken(body, Measurement::ArmscyeGirth)?;
    Some(Warning::new(
        "armscye_compared",
        format!(
            "armscye_girth is {girth:.0} mm, the drafted armscye {drafted:.0} mm: {:.0} mm of ease. It follows from the other measurements; if the ease is not what you want, check scye_depth and back_width or change the ease armscye_depth",
            drafted - girth
        ),
    ))
}
