//! The alterations that measurements can ask for.

use super::FitSettings;
use crate::alterations::{Request, RequestError};
use crate::piece::MeasureUnit;
use serde_json::{Map, Value};

/// One alteration with its settings, whose amount is to be found.
///
/// What a sewn toile alone can show (gapes, a forward shoulder, a hollow back, a prominent seat)
/// is not among them: no tape says it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lever {
    /// Its name in the catalogue.
    pub name: &'static str,
    /// A setting besides the amount.
    pub setting: Option<(&'static str, &'static str)>,
    /// How little a fitter likes it, for each millimetre or degree: of two ways to the same she
    /// takes the one liked better. Our own judgement.
    pub dislike: f64,
    /// An amount small enough to see where it leads.
    pub probe: f64,
}

const fn lever(name: &'static str, dislike: f64, probe: f64) -> Lever {
    Lever {
        name,
        setting: None,
        dislike,
        probe,
    }
}

const fn with(name: &'static str, setting: (&'static str, &'static str), dislike: f64) -> Lever {
    Lever {
        name,
        setting: Some(setting),
        dislike,
        probe: 2.0,
    }
}

/// All of them, in the order in which a fitter works.
pub(super) const LEVERS: &[Lever] = &[
    lever("back_length_increase", 2.0, 2.0),
    lever("front_length", 1.2, 2.0),
    lever("shoulder_slope", 2.0, 0.5),
    lever("shoulder_width", 1.0, 2.0),
    lever("armscye_depth", 1.0, 2.0),
    lever("neckline_depth", 1.0, 2.0),
    lever("neckline_width", 1.0, 2.0),
    with("back_width", ("shoulder", "keep"), 0.5),
    lever("front_width", 0.5, 2.0),
    with("length", ("at", "bodice"), 0.6),
    with("length", ("at", "hips"), 0.6),
    with("length", ("at", "skirt"), 0.4),
    with("length", ("at", "sleeve"), 0.4),
    with("length", ("at", "forearm"), 0.4),
    lever("bust", 1.0, 2.0),
    lever("bust_girth", 0.25, 4.0),
    lever("waist_girth", 0.25, 4.0),
    lever("hip_girth", 0.25, 4.0),
    lever("side_seam", 0.6, 2.0),
    lever("upper_arm", 0.25, 4.0),
    lever("wrist_width", 0.25, 4.0),
];

impl Lever {
    /// The unit of its amount.
    pub fn unit(&self) -> MeasureUnit {
        if self.name == "shoulder_slope" {
            MeasureUnit::Degrees
        } else {
            MeasureUnit::Millimetres
        }
    }

    /// The step by an amount.
    pub fn step(&self, amount: f64) -> Result<Request, RequestError> {
        let mut settings = Map::new();
        if let Some((key, value)) = self.setting {
            settings.insert(key.to_owned(), Value::from(value));
        }
        let key = match self.unit() {
            MeasureUnit::Degrees => "degrees",
            MeasureUnit::Millimetres => "amount",
        };
        settings.insert(key.to_owned(), Value::from(amount));
        Request::new(self.name, Value::Object(settings))
    }

    /// The least amount that is made.
    pub fn least(&self, settings: &FitSettings) -> f64 {
        match self.unit() {
            MeasureUnit::Degrees => settings.least_degrees,
            MeasureUnit::Millimetres => settings.least_length,
        }
    }

    /// An amount rounded as it is to be written.
    pub fn rounded(&self, amount: f64, settings: &FitSettings) -> f64 {
        let step = match self.unit() {
            MeasureUnit::Degrees => settings.round_degrees,
            MeasureUnit::Millimetres => settings.round_length,
        };
        if step > 0.0 {
            (amount / step).round() * step
        } else {
            amount
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::LEVERS;
    use crate::alterations::{CATALOGUE, find};

    #[test]
    fn every_lever_is_in_the_catalogue_and_in_its_order() {
        let place = |name: &str| CATALOGUE.iter().position(|entry| entry.name == name);
        assert!(
            LEVERS
                .windows(2)
                .all(|w| place(w[0].name) <= place(w[1].name))
        );
        for lever in LEVERS {
            let step = lever.step(lever.probe).unwrap().alteration().unwrap();
            assert_eq!(
                (step.amount(), step.unit()),
                (Some(lever.probe), lever.unit())
            );
            assert!(find(lever.name).is_some());
        }
    }
}
