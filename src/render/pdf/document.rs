//! The file around the pages: fonts, layers, the drawing stored once, preferences of the viewer.

use kurbo::{Affine, Rect, Size};
use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::types::PageMode;
use pdf_writer::{Content, Filter, Finish, Name, Pdf, Ref, TextStr};

use crate::drawing::{Drawing, Face, Item};

use super::paint::{self, POINTS, fine, font_name, short};

/// The name under which pages show the drawing.
const DRAWING: Name<'static> = Name(b"Drawing");

/// How hard streams are squeezed, 1 to 10: the usual trade of time for size.
const SQUEEZE: u8 = 6;

/// The longest side of a page in points; beyond it the unit of the page is made larger.
const LONGEST: f64 = 14_400.0;

/// A file in the making.
pub(super) struct Document<'a> {
    drawing: &'a Drawing,
    title: &'a str,
    pages: Vec<Page>,
}

struct Page {
    size: [f32; 2],
    user_unit: Option<f32>,
    content: Vec<u8>,
}

/// The operators of one page, in mm and y down.
pub(super) struct Canvas {
    content: Content,
    size: Size,
    user_unit: f64,
    marks: Vec<u8>,
}

impl Canvas {
    /// An empty page of a size in mm.
    pub(super) fn new(size: Size) -> Self {
        let user_unit = (size.width.max(size.height) * POINTS / LONGEST)
            .ceil()
            .max(1.0);
        let scale = POINTS / user_unit;
        let mut content = Content::new();
        content.transform([
            fine(scale),
            0.0,
            0.0,
            fine(-scale),
            0.0,
            short(size.height * scale),
        ]);
        Self {
            content,
            size,
            user_unit,
            marks: layer_name(usize::MAX),
        }
    }

    /// Paints items that belong to the page and not to the drawing, as the layer "page marks".
    pub(super) fn marks(&mut self, items: &[Item]) {
        self.content
            .begin_marked_content_with_properties(Name(b"OC"))
            .properties_named(Name(&self.marks));
        paint::items(&mut self.content, items);
        self.content.end_marked_content();
    }

    /// Shows the drawing within a window of the page (in mm), moved by `shift` from its own
    /// coordinates to those of the page.
    pub(super) fn drawing(&mut self, window: Rect, shift: kurbo::Vec2) {
        self.content
            .save_state()
            .rect(
                short(window.x0),
                short(window.y0),
                short(window.width()),
                short(window.height()),
            )
            .clip_nonzero()
            .end_path()
            .transform(Affine::translate(shift).as_coeffs().map(short))
            .x_object(DRAWING)
            .restore_state();
    }
}

/// The name of a layer in a stream's resources; the page marks come last.
fn layer_name(index: usize) -> Vec<u8> {
    if index == usize::MAX {
        return b"Marks".to_vec();
    }
    format!("L{index}").into_bytes()
}

impl<'a> Document<'a> {
    pub(super) fn new(drawing: &'a Drawing, title: &'a str) -> Self {
        Self {
            drawing,
            title,
            pages: Vec::new(),
        }
    }

    pub(super) fn add(&mut self, canvas: Canvas) {
        let scale = POINTS / canvas.user_unit;
        self.pages.push(Page {
            size: [canvas.size.width, canvas.size.height].map(|side| short(side * scale)),
            user_unit: (canvas.user_unit > 1.0).then(|| short(canvas.user_unit)),
            content: canvas.content.finish().into_vec(),
        });
    }

    /// The operators of the drawing, each layer marked as such.
    fn form(&self) -> Vec<u8> {
        let mut content = Content::new();
        for (index, layer) in self.drawing.layers().iter().enumerate() {
            content
                .begin_marked_content_with_properties(Name(b"OC"))
                .properties_named(Name(&layer_name(index)));
            paint::items(&mut content, &layer.items);
            content.end_marked_content();
        }
        content.finish().into_vec()
    }

    /// Writes the file.
    pub(super) fn finish(self) -> Vec<u8> {
        let form = self.form();
        let mut ids = Ids(0);
        let (catalog, tree, info, drawing) = (ids.next(), ids.next(), ids.next(), ids.next());
        let fonts = [(Face::Regular, ids.next()), (Face::Bold, ids.next())];
        let layers: Vec<Ref> = self.drawing.layers().iter().map(|_| ids.next()).collect();
        let marks = ids.next();
        let pages: Vec<(Ref, Ref)> = self
            .pages
            .iter()
            .map(|_| (ids.next(), ids.next()))
            .collect();

        let mut pdf = Pdf::new();
        let mut writer = pdf.catalog(catalog);
        writer.pages(tree).page_mode(PageMode::UseNone);
        let mut preferences = writer.viewer_preferences();
        preferences.display_doc_title(true);
        preferences.pair(Name(b"PrintScaling"), Name(b"None"));
        preferences.pair(Name(b"PickTrayByPDFSize"), true);
        preferences.finish();
        let mut optional = writer.insert(Name(b"OCProperties")).dict();
        let all = || layers.iter().copied().chain([marks]);
        optional.insert(Name(b"OCGs")).array().items(all());
        let mut default = optional.insert(Name(b"D")).dict();
        default.pair(Name(b"BaseState"), Name(b"ON"));
        default.insert(Name(b"Order")).array().items(all());
        default.finish();
        optional.finish();
        writer.finish();

        let names = self
            .drawing
            .layers()
            .iter()
            .map(|layer| layer.name.as_str());
        for (id, name) in all().zip(names.chain(["page marks"])) {
            let mut group = pdf.indirect(id).dict();
            group.pair(Name(b"Type"), Name(b"OCG"));
            group.pair(Name(b"Name"), TextStr(name));
        }
        pdf.document_info(info).title(TextStr(self.title));
        for (face, id) in fonts {
            let mut font = pdf.type1_font(id);
            font.base_font(match face {
                Face::Regular => Name(b"Helvetica"),
                Face::Bold => Name(b"Helvetica-Bold"),
            });
            font.encoding_predefined(Name(b"WinAnsiEncoding"));
        }

        let squeezed = compress_to_vec_zlib(&form, SQUEEZE);
        let mut object = pdf.form_xobject(drawing, &squeezed);
        object.filter(Filter::FlateDecode);
        // Half a mm more than the bounds, so that rounding cuts nothing off.
        let bounds = self.drawing.bounds().inflate(0.5, 0.5);
        object.bbox(rect(bounds));
        let mut resources = object.resources();
        font_resources(&mut resources, &fonts);
        let mut properties = resources.insert(Name(b"Properties")).dict();
        for (index, &id) in layers.iter().enumerate() {
            properties.pair(Name(&layer_name(index)), id);
        }
        properties.finish();
        resources.finish();
        object.finish();

        let mut writer = pdf.pages(tree);
        writer.kids(pages.iter().map(|&(page, _)| page));
        writer.count(i32::try_from(pages.len()).unwrap_or(i32::MAX));
        let mut resources = writer.resources();
        font_resources(&mut resources, &fonts);
        resources.x_objects().pair(DRAWING, drawing);
        let mut properties = resources.insert(Name(b"Properties")).dict();
        properties.pair(Name(&layer_name(usize::MAX)), marks);
        properties.finish();
        resources.finish();
        writer.finish();

        let mut hash = Hash::new();
        hash.add(self.title.as_bytes());
        hash.add(&form);
        for (page, &(id, stream)) in self.pages.iter().zip(&pages) {
            let mut writer = pdf.page(id);
            let [width, height] = page.size;
            writer
                .parent(tree)
                .media_box(pdf_writer::Rect::new(0.0, 0.0, width, height))
                .contents(stream);
            if let Some(unit) = page.user_unit {
                writer.user_unit(unit);
            }
            writer.finish();
            hash.add(&page.content);
            let squeezed = compress_to_vec_zlib(&page.content, SQUEEZE);
            pdf.stream(stream, &squeezed).filter(Filter::FlateDecode);
        }
        let id = hash.bytes();
        pdf.set_file_id((id.clone(), id));
        pdf.finish()
    }
}

fn font_resources(resources: &mut pdf_writer::writers::Resources<'_>, fonts: &[(Face, Ref)]) {
    let mut dict = resources.fonts();
    for &(face, id) in fonts {
        dict.pair(font_name(face), id);
    }
}

fn rect(rect: Rect) -> pdf_writer::Rect {
    pdf_writer::Rect::new(
        short(rect.x0),
        short(rect.y0),
        short(rect.x1),
        short(rect.y1),
    )
}

/// Object numbers, each given out once.
struct Ids(i32);

impl Ids {
    fn next(&mut self) -> Ref {
        self.0 += 1;
        Ref::new(self.0)
    }
}

/// A hash of what the file holds, for its identifier: the same for the same content. Two runs of
/// FNV-1a from different starts.
struct Hash([u64; 2]);

impl Hash {
    fn new() -> Self {
        Self([0xcbf2_9ce4_8422_2325, 0x6c62_272e_07bb_0142])
    }

    fn add(&mut self, bytes: &[u8]) {
        for half in &mut self.0 {
            for &byte in bytes {
                *half = (*half ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
            }
        }
    }

    fn bytes(&self) -> Vec<u8> {
        self.0.iter().flat_map(|half| half.to_be_bytes()).collect()
    }
}
