//! Recipes and what they are made of, written with the keys of a job file, so that what was read goes
//! out as it came in. Lengths are numbers in millimetres; what is as usual is left out.

use super::read_ease::{EasePlace, FITS};
use super::{OwnBlock, Recipe};
use crate::allowance::Allowances;
use crate::alterations::Request;
use crate::draft::{Block, DraftOptions, Ease, Fit, Side, SleeveLength, SleeveWidth};
use serde::ser::{Serialize, SerializeMap, Serializer};

/// Words are written by their names.
macro_rules! serialize_by_name {
    ($($name:ty),+) => {$(
        /// By its name in job files.
        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.serialize_str(self.name())
            }
        }
    )+};
}

serialize_by_name!(Block, Fit, Side, SleeveLength);

/// Ease by place, all places in millimetres.
impl Serialize for Ease {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        for place in EasePlace::ALL {
            map.serialize_entry(place.name(), &place.value(self))?;
        }
        map.end()
    }
}

/// Ease beside the fit that leaves the fewest places to be written: a block has no use for some of
/// them, and is not asked for those where a fit says the same.
struct EaseOf<'a>(&'a DraftOptions);

impl EaseOf<'_> {
    fn beside(&self, fit: Fit) -> Vec<(&'static str, f64)> {
        let usual = Ease::for_block(self.0.block, fit);
        EasePlace::ALL
            .into_iter()
            .filter(|place| {
                // Asked for by itself, the ease of the upper arm is meant to the millimetre.
                let exact =
                    *place == EasePlace::UpperArm && self.0.sleeve_width == SleeveWidth::Exact;
                exact || place.value(&self.0.ease) != place.value(&usual)
            })
            .map(|place| (place.name(), place.value(&self.0.ease)))
            .collect()
    }
}

impl Serialize for EaseOf<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let beside = FITS.map(|fit| (fit, self.beside(fit)));
        let nearest = beside.iter().min_by_key(|(_, places)| places.len());
        let Some((fit, places)) = nearest else {
            return self.0.ease.serialize(serializer);
        };
        if places.is_empty() {
            return fit.serialize(serializer);
        }
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("fit", fit)?;
        for (place, value) in places {
            map.serialize_entry(place, value)?;
        }
        map.end()
    }
}

fn write_options<M: SerializeMap>(map: &mut M, options: &DraftOptions) -> Result<(), M::Error> {
    map.serialize_entry("block", &options.block)?;
    map.serialize_entry("ease", &EaseOf(options))?;
    optional(map, "length", options.length)?;
    optional(map, "sleeve", options.sleeve)?;
    optional(map, "cap_ease", options.cap_ease)?;
    optional(map, "waist_darts", options.waist_darts)?;
    optional(map, "side", options.side)
}

/// What is not said is not written.
pub(crate) fn optional<M: SerializeMap>(
    map: &mut M,
    key: &'static str,
    value: Option<impl Serialize>,
) -> Result<(), M::Error> {
    value.map_or(Ok(()), |value| map.serialize_entry(key, &value))
}

/// With the keys of a job file.
impl Serialize for DraftOptions {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        write_options(&mut map, self)?;
        map.end()
    }
}

/// Widths by place: `{"default": 15.0, "hem": 40.0}`.
impl Serialize for Allowances {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("default", &self.default_width())?;
        for (place, width) in self.named_widths() {
            map.serialize_entry(place, &width)?;
        }
        map.end()
    }
}

/// Name and settings: `{"back_length_reduction": {"amount": 25.4}}`.
impl Serialize for Request {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(1))?;
        map.serialize_entry(self.name(), self.settings())?;
        map.end()
    }
}

/// The file, and what the job says about a drawing.
impl Serialize for OwnBlock {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("file", self.path())?;
        optional(&mut map, "kind", self.drawn_kind())?;
        let names = self.drawn_names();
        if !names.is_empty() {
            let names: std::collections::BTreeMap<_, _> = names.iter().cloned().collect();
            map.serialize_entry("edges", &names)?;
        }
        map.end()
    }
}

/// With the keys of a job file. Notes say what had no effect in the file that was read; they are no
/// part of what is asked for.
impl Serialize for Recipe {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        self.write(&mut map)?;
        map.end()
    }
}

impl Recipe {
    /// Writes the keys of the recipe, among which a job has others.
    pub(crate) fn write<M: SerializeMap>(&self, map: &mut M) -> Result<(), M::Error> {
        map.serialize_entry("title", &self.title)?;
        map.serialize_entry("unit", "mm")?;
        optional(map, "size", self.size.as_ref())?;
        optional(map, "date", self.date.as_ref())?;
        match &self.own {
            Some(own) => map.serialize_entry("block", own)?,
            None => write_options(map, &self.options)?,
        }
        if !self.alterations.is_empty() {
            map.serialize_entry("alterations", &self.alterations)?;
        }
        optional(map, "allowance", self.allowances.as_ref())
    }
}
