//! A fit map as a document keeps it.

use serde::{Deserialize, Serialize};

/// How a pattern lies on a wearer, as a document keeps it: figures, from which nothing is made.
///
/// ```
/// use blockwright::render::json::FitMapRecord;
/// let record = FitMapRecord { wearer: "Ines".into(), stations: vec![], girths: vec![], advice: vec![] };
/// assert!(serde_json::to_string(&record)?.contains("Ines"));
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "fit_map"))]
#[serde(deny_unknown_fields)]
pub struct FitMapRecord {
    /// Whom the pattern is compared with.
    pub wearer: String,
    /// Threads down to the waist and from there to the hip, in the pattern and on the wearer.
    pub stations: Vec<StationRecord>,
    /// Levels round the body.
    pub girths: Vec<RoundRecord>,
    /// What follows.
    pub advice: Vec<AdviceRecord>,
}

/// A thread; lengths in mm to a tenth.
///
/// ```
/// use blockwright::render::json::StationRecord;
/// let centre = StationRecord {
///     piece: "back".into(), half: "back".into(), band: None, place: "centre".into(),
///     ends: [[0.0, 0.0], [0.0, 410.0]], pattern: 410.0, body: 385.0, excess: 25.0,
/// };
/// assert_eq!(centre.pattern - centre.body, centre.excess);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "fit_map_station"))]
#[serde(deny_unknown_fields)]
pub struct StationRecord {
    /// The piece.
    pub piece: String,
    /// `back` or `front`.
    pub half: String,
    /// `to waist`, also where it is left out, or `waist to hip`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub band: Option<String>,
    /// Where between the middle and the side.
    pub place: String,
    /// The upper and the lower end on the piece.
    pub ends: [[f64; 2]; 2],
    /// Length in the pattern, darts closed.
    pub pattern: f64,
    /// Length on the body.
    pub body: f64,
    /// By how much the pattern is longer; negative where it is short.
    pub excess: f64,
}

/// A level round the body; girths in mm to a tenth.
///
/// ```
/// use blockwright::render::json::RoundRecord;
/// let hip = RoundRecord { name: "hip".into(), body: 1000.0, finished: 1030.0, ease: 30.0, excess: -20.0 };
/// assert_eq!(hip.finished - hip.body, hip.ease);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "fit_map_girth"))]
#[serde(deny_unknown_fields)]
pub struct RoundRecord {
    /// The girth.
    pub name: String,
    /// The wearer's.
    pub body: f64,
    /// The finished garment's.
    pub finished: f64,
    /// The difference.
    pub ease: f64,
    /// By how much that is more than the ease the block is made with.
    pub excess: f64,
}

/// What follows from a fit map.
///
/// ```
/// use blockwright::render::json::AdviceRecord;
/// let advice = AdviceRecord { code: "agrees".into(), text: "Lengths agree within 3 mm.".into() };
/// assert_eq!(advice.code, "agrees");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "fit_map_advice"))]
#[serde(deny_unknown_fields)]
pub struct AdviceRecord {
    /// A short name for programs.
    pub code: String,
    /// A sentence; lengths in mm.
    pub text: String,
}

#[cfg(feature = "form")]
impl FitMapRecord {
    /// Of a map of a wearer by her name.
    ///
    /// ```
    /// use blockwright::fit_map::FitMap;
    /// use blockwright::render::json::FitMapRecord;
    /// let map = FitMap { stations: vec![], girths: vec![], advice: vec![] };
    /// assert_eq!(FitMapRecord::of("Ines", &map).wearer, "Ines");
    /// ```
    #[must_use]
    pub fn of(wearer: &str, map: &crate::fit_map::FitMap) -> Self {
        let tenth = crate::fit_map::tenth;
        Self {
            wearer: wearer.to_owned(),
            stations: map
                .stations
                .iter()
                .map(|station| StationRecord {
                    piece: station.piece.clone(),
                    half: station.half.name().to_owned(),
                    band: Some(station.band.name().to_owned()),
                    place: station.place.name().to_owned(),
                    ends: station.ends.map(|end| [tenth(end.x), tenth(end.y)]),
                    pattern: tenth(station.pattern),
                    body: tenth(station.body),
                    excess: tenth(station.excess()),
                })
                .collect(),
            girths: map
                .girths
                .iter()
                .map(|girth| RoundRecord {
                    name: girth.name.clone(),
                    body: tenth(girth.body),
                    finished: tenth(girth.finished),
                    ease: tenth(girth.ease()),
                    excess: tenth(girth.excess()),
                })
                .collect(),
            advice: map
                .advice
                .iter()
                .map(|advice| AdviceRecord {
                    code: advice.code().to_owned(),
                    text: advice.to_string(),
                })
                .collect(),
        }
    }
}
