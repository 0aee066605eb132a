//! The letters of a font that a file uses, embedded.
//!
//! A letter is held as its place in Unicode, two bytes; a map in the file leads from there to its
//! picture, so that pages are written before it is known which letters there are.

use std::sync::OnceLock;

use pdf_writer::types::{CidFontType, FontFlags, SystemInfo};
use pdf_writer::{Chunk, Filter, Name, Rect, Ref, Str};
use subsetter::{GlyphRemapper, subset};
use ttf_parser::Face;

use super::order::plain;
use super::{FontFile, Run, Used, Which};
use crate::render::pdf::container::{Container, Ids};

/// The built-in font: see the README beside it.
const REGULAR: &[u8] = include_bytes!("sans-regular.ttf");
const BOLD: &[u8] = include_bytes!("sans-bold.ttf");

/// What stands for a letter that no font has: an empty box.
pub(super) const NO_LETTER: char = '□';

/// The built-in faces, read once.
fn built_in() -> Option<&'static [Face<'static>; 2]> {
    static FACES: OnceLock<Option<[Face<'static>; 2]>> = OnceLock::new();
    let read = || {
        let face = |bytes| Face::parse(bytes, 0).ok();
        Some([face(REGULAR)?, face(BOLD)?])
    };
    FACES.get_or_init(read).as_ref()
}

/// Whether the built-in font has a letter.
pub(super) fn built_in_has(letter: char) -> bool {
    built_in().is_some_and(|[regular, _]| regular.glyph_index(letter).is_some())
}

/// Whether a font has a letter.
pub(super) fn has(font: &[u8], letter: char) -> bool {
    Face::parse(font, 0).is_ok_and(|face| face.glyph_index(letter).is_some())
}

/// The width of a run as a part of the size.
pub(super) fn width(run: &Run, other: Option<&FontFile>) -> f64 {
    let of = |face: &Face<'_>| {
        run.letters
            .iter()
            .map(|letter| advance(face, *letter))
            .sum()
    };
    match (run.font, built_in(), other) {
        (Which::Regular, Some([face, _]), _) | (Which::Bold, Some([_, face]), _) => of(face),
        (Which::Other, _, Some(file)) => Face::parse(file.bytes(), 0).map_or(0.0, |face| of(&face)),
        _ => 0.0,
    }
}

/// The width of a letter as a part of the size.
fn advance(face: &Face<'_>, letter: char) -> f64 {
    let glyph = face.glyph_index(letter).unwrap_or_default();
    let width = face.glyph_hor_advance(glyph).unwrap_or_default();
    f64::from(width) / f64::from(face.units_per_em().max(1))
}

/// Writes the fonts of a file, of each the letters that it uses; gives back where each stands.
pub(in crate::render::pdf) fn write(
    file: &mut Container,
    ids: &mut Ids,
    other: Option<&FontFile>,
    used: &Used,
) -> Vec<(Which, Ref)> {
    let mut written = Vec::new();
    for which in Which::ALL {
        let mine = used.iter().filter(|(font, _)| *font == which);
        let letters: Vec<char> = mine.map(|(_, letter)| *letter).collect();
        let bytes = match which {
            Which::Regular => Some(REGULAR),
            Which::Bold => Some(BOLD),
            Which::Other => other.map(FontFile::bytes),
        };
        if let Some(bytes) = bytes.filter(|_| !letters.is_empty())
            && let Some(id) = one(file, ids, bytes, &letters)
        {
            written.push((which, id));
        }
    }
    written
}

/// One font with some letters.
fn one(file: &mut Container, ids: &mut Ids, bytes: &[u8], letters: &[char]) -> Option<Ref> {
    let face = Face::parse(bytes, 0).ok()?;
    let mut glyphs = GlyphRemapper::new();
    let mapped: Vec<(u16, u16, char)> = letters
        .iter()
        .filter_map(|letter| {
            let unit = u16::try_from(u32::from(*letter)).ok()?;
            let glyph = face.glyph_index(*letter)?;
            Some((unit, glyphs.remap(glyph.0), *letter))
        })
        .collect();
    let font = subset(bytes, 0, &glyphs).ok()?;
    let name = name_of(&face, letters);
    let (id, cid, about) = (ids.next(), ids.next(), ids.next());
    let (font_file, glyph_map, unicode) = (ids.next(), ids.next(), ids.next());
    file.stream(font_file, &font, |one, data, squeezed| {
        let mut stream = one.stream(font_file, data);
        if squeezed {
            stream.filter(Filter::FlateDecode);
        }
        stream.pair(
            Name(b"Length1"),
            i32::try_from(font.len()).unwrap_or(i32::MAX),
        );
    });
    let mut map = vec![0_u8; 2 * (mapped.last().map_or(0, |(unit, ..)| usize::from(*unit)) + 1)];
    for (unit, glyph, _) in &mapped {
        let at = 2 * usize::from(*unit);
        if let Some(place) = map.get_mut(at..at + 2) {
            place.copy_from_slice(&glyph.to_be_bytes());
        }
    }
    plain_stream(file, glyph_map, &map);
    plain_stream(file, unicode, &to_unicode(&mapped));
    file.object(id, |one| {
        one.type0_font(id)
            .base_font(Name(name.as_bytes()))
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(cid)
            .to_unicode(unicode);
    });
    file.object(cid, |one| {
        let mut font = one.cid_font(cid);
        font.subtype(CidFontType::Type2)
            .base_font(Name(name.as_bytes()))
            .system_info(SystemInfo {
                registry: Str(b"Adobe"),
                ordering: Str(b"Identity"),
                supplement: 0,
            })
            .font_descriptor(about)
            .default_width(0.0)
            .cid_to_gid_map_stream(glyph_map);
        let mut widths = font.widths();
        for stretch in mapped.chunk_by(|a, b| a.0 + 1 == b.0) {
            let thousandths =
                |(_, _, letter): &(u16, u16, char)| thousandths(advance(&face, *letter));
            if let Some((first, ..)) = stretch.first() {
                widths.consecutive(*first, stretch.iter().map(thousandths));
            }
        }
    });
    file.object(about, |one| {
        let em = f64::from(face.units_per_em().max(1));
        let part = |units: i16| thousandths(f64::from(units) / em);
        let bounds = face.global_bounding_box();
        one.font_descriptor(about)
            .name(Name(name.as_bytes()))
            .flags(FontFlags::SYMBOLIC)
            .bbox(Rect::new(
                part(bounds.x_min),
                part(bounds.y_min),
                part(bounds.x_max),
                part(bounds.y_max),
            ))
            .italic_angle(0.0)
            .ascent(part(face.ascender()))
            .descent(part(face.descender()))
            .cap_height(part(face.capital_height().unwrap_or(face.ascender())))
            .stem_v(if face.is_bold() { 140.0 } else { 80.0 })
            .font_file2(font_file);
    });
    Some(id)
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "thousandths of a size are small"
)]
fn thousandths(part: f64) -> f32 {
    (part * 1000.0).round() as f32
}

fn plain_stream(file: &mut Container, id: Ref, data: &[u8]) {
    file.stream(id, data, |one: &mut Chunk, data, squeezed| {
        let mut stream = one.stream(id, data);
        if squeezed {
            stream.filter(Filter::FlateDecode);
        }
    });
}

/// The name of the font with the six letters before it that say that it is a part, from the letters in
/// it.
fn name_of(face: &Face<'_>, letters: &[char]) -> String {
    let own = face
        .names()
        .into_iter()
        .filter(|name| name.name_id == ttf_parser::name_id::POST_SCRIPT_NAME)
        .find_map(|name| name.to_string());
    let plain = |letter: &char| letter.is_ascii_alphanumeric() || *letter == '-';
    let own: String = own.unwrap_or_default().chars().filter(plain).collect();
    let own = if own.is_empty() {
        "Font".to_owned()
    } else {
        own
    };
    let mut hash = 0xcbf2_9ce4_8422_2325_u64;
    for letter in letters {
        hash = (hash ^ u64::from(u32::from(*letter))).wrapping_mul(0x0100_0000_01b3);
    }
    let tag: String = (0..6)
        .filter_map(|place| {
            let letter = (hash >> (8 * place)) % 26;
            ('A'..='Z').nth(usize::try_from(letter).ok()?)
        })
        .collect();
    format!("{tag}+{own}")
}

/// What leads from the letters of the file back to those of the text.
fn to_unicode(mapped: &[(u16, u16, char)]) -> Vec<u8> {
    let mut text = String::from(
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CMapName /Letters def\n\
         /CMapType 2 def\n1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n",
    );
    for some in mapped.chunks(100) {
        text.push_str(&format!("{} beginbfchar\n", some.len()));
        for (unit, _, letter) in some {
            text.push_str(&format!(
                "<{unit:04X}> <{:04X}>\n",
                u32::from(plain(*letter))
            ));
        }
        text.push_str("endbfchar\n");
    }
    text.push_str("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n");
    text.into_bytes()
}
