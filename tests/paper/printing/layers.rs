//! Layers as an independent parser reads them and an independent viewer switches them.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use blockwright::draft::Block;
use blockwright::drawing::{Drawing, DrawnPath, Ink, Item, Pen, lay};
use blockwright::grading::MOST_SIZES;
use blockwright::render::pdf::{PaperFormat, TileOptions, sheet, tiles_of};
use lopdf::content::Content;
use lopdf::{Dictionary, Document, Object, ObjectId};

use super::demo::info;
use super::jobs::{BUILDS, graded, nests, parts, pattern};
use super::picture::{COARSE, Picture};
use super::tools::{folder, have, sheet_shift, write};

fn resolved<'a>(document: &'a Document, object: &'a Object) -> &'a Object {
    document.dereference(object).unwrap().1
}

/// The names of the layers, in the order in which a viewer lists them; checks that this list holds
/// every layer once.
fn layers(document: &Document) -> Vec<(String, ObjectId)> {
    let properties = document.catalog().unwrap().get(b"OCProperties").unwrap();
    let properties = resolved(document, properties).as_dict().unwrap();
    let ids = |array: &Object| -> Vec<ObjectId> {
        let array = array.as_array().unwrap().iter();
        array.map(|id| id.as_reference().unwrap()).collect()
    };
    let all = ids(properties.get(b"OCGs").unwrap());
    let default = properties.get(b"D").unwrap().as_dict().unwrap();
    let order = ids(default.get(b"Order").unwrap());
    let set: BTreeSet<ObjectId> = order.iter().copied().collect();
    assert_eq!(set.len(), order.len());
    assert_eq!(set, all.into_iter().collect());
    // No group in the file that the list does not have.
    let groups = document.objects.iter().filter(|(_, object)| {
        object.as_dict().is_ok_and(|dict| {
            dict.get(b"Type")
                .is_ok_and(|kind| kind.as_name().is_ok_and(|name| name == b"OCG"))
        })
    });
    assert_eq!(groups.count(), order.len());
    let name = |id: &ObjectId| {
        let group = document.get_dictionary(*id).unwrap();
        let name = group.get(b"Name").unwrap().as_str().unwrap();
        (String::from_utf8_lossy(name).into_owned(), *id)
    };
    order.iter().map(name).collect()
}

fn dictionary<'a>(document: &'a Document, of: &'a Dictionary, key: &[u8]) -> &'a Dictionary {
    resolved(document, of.get(key).unwrap()).as_dict().unwrap()
}

/// Whatever is painted belongs to a layer; gives back how many operators paint in each.
fn painted(document: &Document, bytes: &[u8], resources: &Dictionary) -> BTreeMap<ObjectId, usize> {
    let properties = dictionary(document, resources, b"Properties");
    let mut open: Vec<ObjectId> = Vec::new();
    let mut found = BTreeMap::new();
    for operation in Content::decode(bytes).unwrap().operations {
        match operation.operator.as_str() {
            "BDC" => {
                assert_eq!(operation.operands[0].as_name().unwrap(), b"OC");
                let name = operation.operands[1].as_name().unwrap();
                open.push(properties.get(name).unwrap().as_reference().unwrap());
            }
            "EMC" => assert!(open.pop().is_some()),
            "S" | "s" | "f" | "F" | "f*" | "B" | "B*" | "b" | "b*" | "Tj" | "TJ" | "'" | "\"" => {
                let layer = open.last().expect("what is painted is in a layer");
                *found.entry(*layer).or_insert(0) += 1;
            }
            _ => {}
        }
    }
    assert!(open.is_empty());
    found
}

/// Checks every page and every form; gives back the names of the layers.
fn check(bytes: &[u8]) -> Vec<String> {
    let document = Document::load_mem(bytes).unwrap();
    let layers = layers(&document);
    let mut used: BTreeMap<ObjectId, usize> = BTreeMap::new();
    let tree = document.catalog().unwrap().get(b"Pages").unwrap();
    let tree = resolved(&document, tree).as_dict().unwrap();
    for id in document.get_pages().into_values() {
        let content = document.get_page_content(id);
        let resources = dictionary(&document, tree, b"Resources");
        for (layer, count) in painted(&document, &content, resources) {
            *used.entry(layer).or_insert(0) += count;
        }
    }
    for object in document.objects.values() {
        let Ok(stream) = object.as_stream() else {
            continue;
        };
        if stream
            .dict
            .get(b"Subtype")
            .is_ok_and(|kind| kind.as_name().is_ok_and(|name| name == b"Form"))
        {
            let content = stream.get_plain_content().unwrap();
            let resources = dictionary(&document, &stream.dict, b"Resources");
            for (layer, count) in painted(&document, &content, resources) {
                *used.entry(layer).or_insert(0) += count;
            }
        }
    }
    for (name, id) in &layers {
        assert!(
            used.get(id).is_some_and(|count| *count > 0),
            "{name} is empty"
        );
    }
    assert!(
        used.keys()
            .all(|id| layers.iter().any(|(_, other)| other == id))
    );
    layers.into_iter().map(|(name, _)| name).collect()
}

fn named(drawing: &Drawing) -> Vec<String> {
    let names = drawing.layers().iter().map(|layer| layer.name.clone());
    names.chain(["page marks".to_owned()]).collect()
}

#[test]
fn all_that_is_painted_belongs_to_a_layer_in_the_list() {
    let single = parts(&pattern(Block::Dress, BUILDS[1]));
    let nest = nests(&graded(Block::Dress, 4));
    for (parts, placements) in [&single, &nest] {
        let options = TileOptions::default();
        let tiled = tiles_of(parts, placements, PaperFormat::A4, &options, &info()).unwrap();
        assert_eq!(check(&tiled.bytes), named(&tiled.drawing));
        let whole = lay(parts, placements).unwrap();
        assert_eq!(check(&sheet(&whole, &info()).unwrap()), named(&whole));
    }
    let tiled = tiles_of(
        &nest.0,
        &nest.1,
        PaperFormat::A4,
        &TileOptions::default(),
        &info(),
    )
    .unwrap();
    let sizes = [
        "size s0",
        "size s1",
        "size s2",
        "size s3",
        "words",
        "page marks",
    ];
    assert_eq!(check(&tiled.bytes), sizes);
    assert!(named(&lay(&single.0, &single.1).unwrap()).contains(&"stitching lines".to_owned()));
}

/// The drawing's part of its sheet.
fn seen(folder: &Path, name: &str, bytes: &[u8], drawing: &Drawing) -> Picture {
    let file = write(folder, name, bytes);
    Picture::part(
        &file,
        1,
        drawing.bounds().expand() + sheet_shift(drawing),
        COARSE / 2.0,
    )
}

#[test]
fn a_size_switched_off_is_gone_and_nothing_else() {
    if !have("pdftoppm") {
        return;
    }
    let folder = folder("layers");
    let (parts, placements) = nests(&graded(Block::Skirt, 4));
    let all = lay(&parts, &placements).unwrap();
    let bytes = sheet(&all, &info()).unwrap();
    let full = seen(&folder, "all.pdf", &bytes, &all);
    let off = seen(&folder, "off.pdf", &without(&bytes, "size s2"), &all);
    // What the layer alone shows.
    let only = ["size s0", "size s1", "size s3", "words", "page marks"]
        .iter()
        .fold(bytes.clone(), |bytes, name| without(&bytes, name));
    let only = seen(&folder, "only.pdf", &only, &all);
    let (mut gone, mut of_it) = (0_usize, 0_usize);
    for index in 0..full.pixels.len() {
        let (before, after) = (full.pixels[index], off.pixels[index]);
        let it = only.pixels[index];
        assert!(after >= before, "ink was added");
        of_it += usize::from(it < 255);
        if after != before {
            gone += 1;
            assert!(it < 255, "ink of something else is gone");
        }
    }
    eprintln!("{gone} of {of_it} pixels of the size are gone");
    // Where another line runs over it, its ink stays.
    assert!(of_it > 5_000 && gone * 10 > of_it * 7, "{gone} of {of_it}");
}

/// The file with a layer more switched off, as a viewer does it.
fn without(bytes: &[u8], name: &str) -> Vec<u8> {
    let mut document = Document::load_mem(bytes).unwrap();
    let (_, id) = layers(&document).into_iter().find(|l| l.0 == name).unwrap();
    let properties = document.catalog_mut().unwrap().get_mut(b"OCProperties");
    let default = properties.unwrap().as_dict_mut().unwrap().get_mut(b"D");
    let default = default.unwrap().as_dict_mut().unwrap();
    let mut off = match default.get(b"OFF") {
        Ok(off) => off.as_array().unwrap().clone(),
        Err(_) => Vec::new(),
    };
    off.push(Object::Reference(id));
    default.set("OFF", Object::Array(off));
    let mut out = Vec::new();
    document.save_to(&mut out).unwrap();
    out
}

#[test]
fn up_to_the_most_sizes_each_has_its_own_line_and_its_name() {
    let (parts, placements) = nests(&graded(Block::Skirt, MOST_SIZES));
    let drawing = lay(&parts, &placements).unwrap();
    let sizes: Vec<_> = drawing
        .layers()
        .iter()
        .filter_map(|layer| Some((layer.name.strip_prefix("size ")?, &layer.items)))
        .collect();
    assert_eq!(sizes.len(), MOST_SIZES);
    let mut pens: Vec<Pen> = Vec::new();
    for (label, items) in sizes {
        let says = |item: &Item| matches!(item, Item::Text(text) if text.text == label);
        // In the key of either piece, at least.
        assert!(
            items.iter().filter(|item| says(item)).count() >= 2,
            "{label}"
        );
        let Item::Path(DrawnPath { pen: Some(pen), .. }) = &items[0] else {
            panic!("{label} begins with no line");
        };
        // Black, since printers have no more; told apart by dashes, or by half the width more.
        assert_eq!(pen.ink, Ink::BLACK);
        let alike = |other: &Pen| {
            let (less, more) = (pen.width.min(other.width), pen.width.max(other.width));
            pen.dash == other.dash && more < less * 1.5
        };
        assert!(!pens.iter().any(alike), "{label} looks like another");
        pens.push(pen.clone());
        // The line of the key stands just before the name.
        let in_key = items.windows(2).any(|pair| {
            says(&pair[1]) && matches!(&pair[0], Item::Path(f) if f.pen.as_ref() == Some(pen))
        });
        assert!(in_key, "{label} has no line in the key");
    }
}
