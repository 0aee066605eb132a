//! Reading which cloth a toile on screen is sewn in.

use crate::measurements::{FileCause, Node, NodeValue, Reader};
use crate::recipe::{length, said, unknown};
use crate::toile::Fabric;
use serde::ser::{Serialize, SerializeMap, Serializer};

/// What stands under `cloth`: a name, or weight and bending length.
pub(in crate::job) fn cloth(reader: &mut Reader, node: &Node) -> Option<Fabric> {
    if let NodeValue::Text(text) = &node.value {
        let found = Fabric::named(text.trim());
        if found.is_none() {
            let names = Fabric::NAMED.iter().map(|(name, _)| *name);
            reader.wrong(node.place, "cloth", unknown(text, "cloth", names));
        }
        return found;
    }
    let expected =
        "a cloth by its name, such as `plain_wool`, or `{weight: 150, bending_length: 20 mm}`";
    let keys = ["weight", "bending_length", "stretch"];
    let [weight, bending, stretch] = reader.fields(node, "cloth", keys, expected);
    node.entries()?;
    let missing = [("weight", &weight), ("bending_length", &bending)];
    for (key, _) in missing.iter().filter(|(_, field)| field.is_none()) {
        let hint = "a cloth of your own has `weight` in g/m² and `bending_length`";
        reader.wrong(node.place, "cloth", FileCause::MissingKey { key, hint });
    }
    let weight =
        said(weight).and_then(|node| number(reader, node, "cloth.weight", "g/m²", Fabric::WEIGHTS));
    let bending = said(bending).and_then(|node| {
        length(
            reader,
            node,
            "cloth.bending_length",
            Fabric::BENDING_LENGTHS,
        )
    });
    let stretch = match said(stretch) {
        None => Some(None),
        Some(node) => number(reader, node, "cloth.stretch", "N/m", Fabric::STRETCHES).map(Some),
    };
    let mut own = Fabric::new(weight?, bending?).ok()?;
    if let Some(stretch) = stretch? {
        own.stretch = [stretch; 2];
    }
    Some(own)
}

/// A number within a range.
fn number(
    reader: &mut Reader,
    node: &Node,
    path: &str,
    unit: &str,
    (low, high): (f64, f64),
) -> Option<f64> {
    let NodeValue::Number(number) = node.value else {
        reader.shape(node, path, "a number, without a unit");
        return None;
    };
    if (low..=high).contains(&number) {
        return Some(number);
    }
    let problem = format!("{number} {unit} is out of reach: {low} to {high} {unit} are taken");
    let hint = "write a number within that";
    reader.wrong(node.place, path, FileCause::Senseless { problem, hint });
    None
}

/// A cloth as it is written in a job.
pub(in crate::job) struct Written(pub Fabric);

impl Serialize for Written {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        if let Some(name) = self.0.name() {
            return serializer.serialize_str(name);
        }
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("weight", &self.0.weight)?;
        let [bending, _] = self.0.bending_length;
        map.serialize_entry("bending_length", &bending)?;
        let [stretch, _] = self.0.stretch;
        map.serialize_entry("stretch", &stretch)?;
        map.end()
    }
}
