//! The file around the pages: fonts, layers, the drawing stored once, preferences of the viewer.

use std::collections::BTreeMap;

use kurbo::{Affine, Rect, Size, Vec2};
use pdf_writer::types::PageMode;
use pdf_writer::{Chunk, Content, Filter, Finish, Name, Ref, Settings, Str, TextStr};

use crate::drawing::{Drawing, Item};
use crate::geometry::counted;

use super::PrintInfo;
use super::container::{Container, Ids, dictionary};
use super::fonts::{Fonts, Used, Which};
use super::paint::{self, POINTS, fine, short};

/// The name under which pages show the drawing.
const DRAWING: Name<'static> = Name(b"Drawing");

/// The longest side of a page in points; beyond it the unit of the page is made larger.
const LONGEST: f64 = 14_400.0;

/// The most pages whose marks are stored together: a viewer goes through all of them for each.
const TOGETHER: usize = 100;

/// What is left at least between the marks of pages where they are stored, in mm.
const APART: f64 = 20.0;

/// A file in the making.
pub(super) struct Document<'a> {
    drawing: &'a Drawing,
    info: &'a PrintInfo,
    /// The letters of the marks.
    used: Used,
    pages: Vec<Page>,
    /// Operators that pages are made of, each stored once however many pages share it.
    parts: Vec<Vec<u8>>,
    numbers: BTreeMap<Vec<u8>, usize>,
    /// The marks of many pages, each with the box around them in mm.
    marks: Vec<(Vec<u8>, Rect)>,
}

struct Page {
    size: [f32; 2],
    user_unit: Option<f32>,
    /// The numbers of its parts, in their order.
    parts: Vec<usize>,
}

/// The operators of one page, in mm and y down.
pub(super) struct Canvas<'a> {
    content: Content,
    fonts: &'a Fonts,
    used: Used,
    size: Size,
    user_unit: f64,
}

/// One of many pages that show their parts of the drawing through the same window: its place on
/// the grid and its marks.
pub(super) struct Leaf {
    pub(super) row: usize,
    pub(super) column: usize,
    /// What belongs to the page and not to the drawing, in the page's mm.
    pub(super) marks: Vec<Item>,
}

fn content() -> Content {
    Content::with_settings(Settings { pretty: false })
}

fn translate(content: &mut Content, x: f64, y: f64) {
    content.transform(Affine::translate((x, y)).as_coeffs().map(short));
}

impl<'a> Canvas<'a> {
    /// An empty page of a size in mm.
    pub(super) fn new(size: Size, fonts: &'a Fonts) -> Self {
        let user_unit = (size.width.max(size.height) * POINTS / LONGEST)
            .ceil()
            .max(1.0);
        let scale = POINTS / user_unit;
        let mut content = content();
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
            fonts,
            used: Used::new(),
            size,
            user_unit,
        }
    }

    /// Paints items that belong to the page and not to the drawing, as the layer "page marks".
    pub(super) fn marks(&mut self, items: &[Item]) {
        mark(&mut self.content, items, self.fonts, &mut self.used);
    }

    /// Shows the drawing within a window of the page (in mm), placed by a motion from its own
    /// coordinates to those of the page.
    pub(super) fn drawing(&mut self, window: Rect, place: Affine) {
        self.content.save_state();
        look_through(&mut self.content, window);
        self.content
            .transform(place.as_coeffs().map(fine))
            .x_object(DRAWING)
            .restore_state();
    }
}

/// Paints items as the layer "page marks".
fn mark(content: &mut Content, items: &[Item], fonts: &Fonts, used: &mut Used) {
    content
        .begin_marked_content_with_properties(Name(b"OC"))
        .properties_named(Name(&layer_name(usize::MAX)));
    paint::alike(content, items, fonts, used);
    content.end_marked_content();
}

fn look_through(content: &mut Content, window: Rect) {
    content
        .rect(
            short(window.x0),
            short(window.y0),
            short(window.width()),
            short(window.height()),
        )
        .clip_nonzero()
        .end_path();
}

/// The name of the marks of some pages in a page's resources.
fn marks_name(index: usize) -> Vec<u8> {
    format!("M{index}").into_bytes()
}

/// The name of a layer in a stream's resources; the page marks come last.
fn layer_name(index: usize) -> Vec<u8> {
    if index == usize::MAX {
        return b"Marks".to_vec();
    }
    format!("L{index}").into_bytes()
}

impl<'a> Document<'a> {
    pub(super) fn new(drawing: &'a Drawing, info: &'a PrintInfo) -> Self {
        Self {
            drawing,
            info,
            used: Used::new(),
            pages: Vec::new(),
            parts: Vec::new(),
            numbers: BTreeMap::new(),
            marks: Vec::new(),
        }
    }

    pub(super) fn add(&mut self, canvas: Canvas<'_>) {
        self.used.extend(canvas.used);
        let (size, user_unit) = (canvas.size, canvas.user_unit);
        let part = self.part(canvas.content.finish().into_vec());
        self.add_page(size, user_unit, vec![part]);
    }

    fn add_page(&mut self, size: Size, user_unit: f64, parts: Vec<usize>) {
        let scale = POINTS / user_unit;
        self.pages.push(Page {
            size: [size.width, size.height].map(|side| short(side * scale)),
            user_unit: (user_unit > 1.0).then(|| short(user_unit)),
            parts,
        });
    }

    fn part(&mut self, operators: Vec<u8>) -> usize {
        let next = self.parts.len();
        let number = *self.numbers.entry(operators.clone()).or_insert(next);
        if number == next {
            self.parts.push(operators);
        }
        number
    }

    /// Adds pages of one size that show the drawing through one window, the first one moved by
    /// `shift` from its own coordinates to those of the page, and the others by whole steps of the
    /// grid more.
    ///
    /// The marks of many are stored side by side, so many steps apart that none shows on the page
    /// of another. A page is then nothing but steps to its marks and to its part of the drawing,
    /// and shares them with the others of its row and of its column: one page more takes few bytes.
    pub(super) fn add_leaves(
        &mut self,
        size: Size,
        (window, pitch, shift): (Rect, Size, Vec2),
        leaves: &[Leaf],
    ) {
        let apart = |size: f64, pitch: f64| ((size + APART) / pitch).ceil().max(1.0);
        let apart = (
            apart(size.width, pitch.width),
            apart(size.height, pitch.height),
        );
        let step = |leaf: &Leaf| {
            Vec2::new(
                leaf.column as f64 * pitch.width,
                leaf.row as f64 * pitch.height,
            )
        };
        let fonts = &self.info.fonts;
        let canvas = Canvas::new(size, fonts);
        let user_unit = canvas.user_unit;
        let scale = canvas.content.finish().into_vec();
        let start = self.part([scale.as_slice(), b"\nq"].concat());
        let end = [moved(shift.x, shift.y).as_slice(), b"\n/Drawing Do Q"].concat();
        let end = self.part(end);
        for together in leaves.chunks(TOGETHER) {
            let name = marks_name(self.marks.len());
            let mut stored = content();
            let mut bounds = Rect::ZERO;
            for leaf in together {
                let at = Vec2::new(step(leaf).x * apart.0, step(leaf).y * apart.1);
                stored.save_state();
                translate(&mut stored, at.x, at.y);
                mark(&mut stored, &leaf.marks, fonts, &mut self.used);
                stored.restore_state();
                bounds = bounds.union(Rect::from_origin_size(at.to_point(), size));
            }
            self.marks.push((stored.finish().into_vec(), bounds));
            let mut through = content();
            look_through(&mut through, window);
            let show = [b"/", name.as_slice(), b" Do Q q\n"].concat();
            let between = self.part([show, through.finish().into_vec()].concat());
            for leaf in together {
                let across = self.part(moved(-step(leaf).x, 0.0));
                let down = self.part(moved(0.0, -step(leaf).y));
                let mut parts = vec![start];
                parts.extend(std::iter::repeat_n(across, counted(apart.0)));
                parts.extend(std::iter::repeat_n(down, counted(apart.1)));
                parts.extend([between, across, down, end]);
                self.add_page(size, user_unit, parts);
            }
        }
    }

    /// The operators of the drawing, each layer marked as such.
    fn form(&self, used: &mut Used) -> Vec<u8> {
        let mut content = content();
        for (index, layer) in self.drawing.layers().iter().enumerate() {
            content
                .begin_marked_content_with_properties(Name(b"OC"))
                .properties_named(Name(&layer_name(index)));
            paint::items(&mut content, &layer.items, &self.info.fonts, used);
            content.end_marked_content();
        }
        content.finish().into_vec()
    }

    /// Writes the file.
    pub(super) fn finish(mut self) -> Vec<u8> {
        let mut used = std::mem::take(&mut self.used);
        let form = self.form(&mut used);
        let mut ids = Ids::default();
        let (catalog, tree, info, drawing) = (ids.next(), ids.next(), ids.next(), ids.next());
        let layers: Vec<Ref> = self.drawing.layers().iter().map(|_| ids.next()).collect();
        let marks_layer = ids.next();
        let marks: Vec<Ref> = self.marks.iter().map(|_| ids.next()).collect();
        let parts: Vec<Ref> = self.parts.iter().map(|_| ids.next()).collect();
        let pages: Vec<Ref> = self.pages.iter().map(|_| ids.next()).collect();

        let mut file = Container::new();
        let fonts = fonts(&mut file, &mut ids, &self.info.fonts, &used);
        let all = || layers.iter().copied().chain([marks_layer]);
        file.object(catalog, |one| {
            let hidden = self.drawing.layers().iter().zip(&layers);
            let hidden = hidden.filter(|(layer, _)| layer.hidden).map(|(_, id)| *id);
            let hidden: Vec<Ref> = hidden.collect();
            write_catalog(one, (catalog, tree), all(), &hidden);
        });
        let names = self
            .drawing
            .layers()
            .iter()
            .map(|layer| layer.name.as_str());
        for (id, name) in all().zip(names.chain(["page marks"])) {
            file.object(id, |one| {
                let mut group = dictionary(one, id);
                group.pair(Name(b"Type"), Name(b"OCG"));
                group.pair(Name(b"Name"), TextStr(name));
            });
        }
        file.object(info, |one| {
            let mut about = dictionary(one, info);
            about.pair(Name(b"Title"), TextStr(&self.info.title));
            if let Some(date) = self.info.date.as_deref().and_then(creation) {
                about.pair(Name(b"CreationDate"), Str(date.as_bytes()));
            }
        });

        let mut hash = Hash::new();
        hash.add(self.info.title.as_bytes());
        hash.add(&form);
        // Half a mm more than the bounds, so that rounding cuts nothing off.
        let bounds = self.drawing.bounds().inflate(0.5, 0.5);
        let names: Vec<(Vec<u8>, Ref)> =
            (0..).map(layer_name).zip(layers.iter().copied()).collect();
        file.stream(drawing, &form, |one, data, squeezed| {
            write_form(one, drawing, (data, squeezed), bounds, &fonts, &names);
        });
        let names = [(layer_name(usize::MAX), marks_layer)];
        for ((content, bounds), &id) in self.marks.iter().zip(&marks) {
            hash.add(content);
            file.stream(id, content, |one, data, squeezed| {
                write_form(one, id, (data, squeezed), *bounds, &fonts, &names);
            });
        }
        for (part, &id) in self.parts.iter().zip(&parts) {
            hash.add(part);
            file.stream(id, part, |one, data, squeezed| {
                let mut stream = one.stream(id, data);
                if squeezed {
                    stream.filter(Filter::FlateDecode);
                }
            });
        }

        file.object(tree, |one| {
            let mut writer = one.pages(tree);
            writer.kids(pages.iter().copied());
            writer.count(i32::try_from(pages.len()).unwrap_or(i32::MAX));
            let mut resources = writer.resources();
            font_resources(&mut resources, &fonts);
            let mut objects = resources.x_objects();
            objects.pair(DRAWING, drawing);
            for (index, &id) in marks.iter().enumerate() {
                objects.pair(Name(&marks_name(index)), id);
            }
            objects.finish();
            layer_resources(&mut resources, &names);
        });
        for (page, &id) in self.pages.iter().zip(&pages) {
            #[expect(
                clippy::indexing_slicing,
                reason = "`part` numbered every part it took in"
            )]
            let contents: Vec<Ref> = page.parts.iter().map(|&part| parts[part]).collect();
            file.object(id, |one| {
                let mut writer = one.page(id);
                let [width, height] = page.size;
                writer
                    .parent(tree)
                    .media_box(pdf_writer::Rect::new(0.0, 0.0, width, height))
                    .contents_array(contents);
                if let Some(unit) = page.user_unit {
                    writer.user_unit(unit);
                }
            });
        }
        file.finish(ids, catalog, info, &hash.bytes())
    }
}

/// The fonts: each with the letters of it that the file uses, or the faces that every viewer carries.
fn fonts(file: &mut Container, ids: &mut Ids, fonts: &Fonts, used: &Used) -> Vec<(Which, Ref)> {
    #[cfg(feature = "fonts")]
    if fonts.are_embedded() {
        return super::fonts::write(file, ids, fonts.other(), used);
    }
    #[cfg(not(feature = "fonts"))]
    let _ = (fonts, used);
    let faces = [
        (Which::Regular, Name(b"Helvetica")),
        (Which::Bold, Name(b"Helvetica-Bold")),
    ];
    let mut written = Vec::new();
    for (which, name) in faces {
        let id = ids.next();
        file.object(id, |one| {
            let mut font = one.type1_font(id);
            font.base_font(name);
            font.encoding_predefined(Name(b"WinAnsiEncoding"));
        });
        written.push((which, id));
    }
    written
}

/// A date of the form `2026-03-14` as PDF writes it; there is no other clock.
fn creation(date: &str) -> Option<String> {
    let digits =
        |text: &str, count| text.len() == count && text.bytes().all(|b| b.is_ascii_digit());
    let mut parts = date.trim().split('-');
    let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
    let is_date = digits(year, 4) && digits(month, 2) && digits(day, 2) && parts.next().is_none();
    is_date.then(|| format!("D:{year}{month}{day}"))
}

/// A shift as operators.
fn moved(x: f64, y: f64) -> Vec<u8> {
    let mut shift = content();
    translate(&mut shift, x, y);
    shift.finish().into_vec()
}

fn write_catalog(
    one: &mut Chunk,
    (id, tree): (Ref, Ref),
    layers: impl Iterator<Item = Ref> + Clone,
    hidden: &[Ref],
) {
    let mut writer = one.indirect(id).start::<pdf_writer::writers::Catalog<'_>>();
    // The words on the pages are English, whatever names stand among them.
    writer
        .pages(tree)
        .page_mode(PageMode::UseNone)
        .lang(TextStr("en"));
    let mut preferences = writer.viewer_preferences();
    preferences.display_doc_title(true);
    preferences.pair(Name(b"PrintScaling"), Name(b"None"));
    preferences.pair(Name(b"PickTrayByPDFSize"), true);
    preferences.finish();
    let mut optional = writer.insert(Name(b"OCProperties")).dict();
    optional.insert(Name(b"OCGs")).array().items(layers.clone());
    let mut default = optional.insert(Name(b"D")).dict();
    default.pair(Name(b"BaseState"), Name(b"ON"));
    default.insert(Name(b"Order")).array().items(layers);
    if !hidden.is_empty() {
        let hidden = hidden.iter().copied();
        default.insert(Name(b"OFF")).array().items(hidden);
    }
}

/// A form: operators with what they need, and the box around what they paint.
fn write_form(
    one: &mut Chunk,
    id: Ref,
    (data, squeezed): (&[u8], bool),
    bounds: Rect,
    fonts: &[(Which, Ref)],
    layers: &[(Vec<u8>, Ref)],
) {
    let mut object = one.form_xobject(id, data);
    if squeezed {
        object.filter(Filter::FlateDecode);
    }
    object.bbox(rect(bounds));
    let mut resources = object.resources();
    font_resources(&mut resources, fonts);
    layer_resources(&mut resources, layers);
}

fn layer_resources(resources: &mut pdf_writer::writers::Resources<'_>, layers: &[(Vec<u8>, Ref)]) {
    let mut properties = resources.insert(Name(b"Properties")).dict();
    for (name, id) in layers {
        properties.pair(Name(name), *id);
    }
}

fn font_resources(resources: &mut pdf_writer::writers::Resources<'_>, fonts: &[(Which, Ref)]) {
    let mut dict = resources.fonts();
    for &(font, id) in fonts {
        dict.pair(font.name(), id);
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
