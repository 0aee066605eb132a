//! The pages of the form.

use crate::drawing::{Anchor, Drawing, DrawnPath, Face, Ink, Layer, Level, Pen, Text, TextStyle};
use crate::geometry::{Point, Vec2};
use crate::measurements::{Body, CatalogueEntry, Measurement};
use crate::render::pdf::{PaperFormat, PdfError, PrintInfo, stacked};
use crate::silhouette::{Silhouette, Stance};
use crate::units::Unit;
use kurbo::{Affine, BezPath, Rect, Shape as _};

/// What stays blank around a page, in mm.
const MARGIN: f64 = 12.0;
/// What the heading takes of every page.
const HEADING: f64 = 26.0;
/// Measurements beside each other and below each other.
const COLUMNS: usize = 2;
const ROWS: usize = 5;
/// Width of a picture.
const PICTURE: f64 = 27.0;

/// The form as PDF. Its pictures are of the body given; values are left to be written, in `unit`, for
/// the wearer of that name, or one to be written in.
///
/// ```
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::measuring_form::measuring_form;
/// use blockwright::render::pdf::PaperFormat;
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// assert!(measuring_form(&body, Some("Ada"), Unit::Cm, PaperFormat::A4)?.starts_with(b"%PDF-"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError`] where something cannot be drawn on this paper.
pub fn measuring_form(
    body: &Body,
    name: Option<&str>,
    unit: Unit,
    paper: PaperFormat,
) -> Result<Vec<u8>, PdfError> {
    let size = paper.portrait();
    let figure = Silhouette::of(body);
    let mut sheet = Sheet {
        ink: Layer::new("lines"),
        words: Layer::new("words"),
    };
    let pages: Vec<&[Measurement]> = Measurement::ALL.chunks(COLUMNS * ROWS).collect();
    let count = pages.len();
    for (page, measurements) in pages.into_iter().enumerate() {
        let top = size.height * page as f64;
        sheet.heading(top, size.width, (page + 1, count), name);
        let cell = Vec2::new(
            (size.width - 2.0 * MARGIN) / COLUMNS as f64,
            (size.height - 2.0 * MARGIN - HEADING) / ROWS as f64,
        );
        let places = (0..COLUMNS).flat_map(|column| (0..ROWS).map(move |row| (column, row)));
        for (measurement, (column, row)) in measurements.iter().zip(places) {
            let corner = Point::new(
                MARGIN + cell.x * column as f64,
                top + MARGIN + HEADING + cell.y * row as f64,
            );
            sheet.cell(
                &figure,
                *measurement,
                unit,
                Rect::from_origin_size(corner, cell.to_size()),
            );
        }
    }
    let drawing = Drawing::new(vec![sheet.ink, sheet.words])?;
    let title = name.map_or_else(
        || "Measuring form".to_owned(),
        |name| format!("Measuring form, {name}"),
    );
    stacked(&drawing, size, count, &PrintInfo::new(title))
}

struct Sheet {
    ink: Layer,
    words: Layer,
}

fn style(face: Face, size: f64) -> TextStyle {
    TextStyle::new(face, size)
}

impl Sheet {
    fn line(&mut self, from: (f64, f64), to: (f64, f64), pen: Pen) {
        self.ink.push(DrawnPath::line(from, to, pen));
    }

    fn word(&mut self, at: (f64, f64), text: &str, style: TextStyle) -> f64 {
        let text = Text::new(at, text, style).level(Level::Baseline);
        let width = text.width();
        self.words.push(text);
        width
    }

    fn heading(&mut self, top: f64, width: f64, (page, of): (usize, usize), name: Option<&str>) {
        let y = top + MARGIN + 6.0;
        self.word((MARGIN, y), "Measuring form", style(Face::Bold, 6.5));
        let number = Text::new(
            (width - MARGIN, y),
            format!("page {page} of {of}"),
            style(Face::Regular, 3.4),
        );
        self.words.push(number.anchor(Anchor::End));
        let y = y + 10.0;
        let third = (width - 2.0 * MARGIN) / 3.0;
        let known = [name.unwrap_or(""), "", ""];
        let small = style(Face::Regular, 3.4);
        for (index, (label, known)) in ["Name", "Date", "Taken by"]
            .into_iter()
            .zip(known)
            .enumerate()
        {
            let x = MARGIN + third * index as f64;
            let after = x + self.word((x, y), label, small) + 2.0;
            let end = x + third - 5.0;
            self.line((after, y + 1.0), (end, y + 1.0), Pen::solid(0.25));
            self.word(
                (after + 1.0, y),
                &small.fit(known, end - after - 1.0),
                small,
            );
        }
        let hint = "Measure over the underwear that will be worn; tie a cord round the natural waist first. \
                    The tape lies close and does not cut in.";
        let grey = style(Face::Regular, 2.9).ink(Ink::Grey(70));
        let hint = grey.fit(hint, width - 2.0 * MARGIN);
        self.word((MARGIN, y + 6.0), &hint, grey);
    }

    fn cell(&mut self, figure: &Silhouette, of: Measurement, unit: Unit, cell: Rect) {
        let pen = Pen::solid(0.2).ink(Ink::Grey(170));
        self.line((cell.x0, cell.y0), (cell.x1 - 4.0, cell.y0), pen);
        let window = Rect::new(cell.x0, cell.y0 + 2.5, cell.x0 + PICTURE, cell.y1 - 2.0);
        self.picture(figure, of, window);
        let (x, width) = (cell.x0 + PICTURE + 3.0, cell.width() - PICTURE - 8.0);
        let heading = style(Face::Bold, 3.7);
        let mut y = cell.y0 + 6.5;
        self.word((x, y), &heading.fit(&in_words(of), width), heading);
        let body = style(Face::Regular, 2.75);
        for line in body.wrap(of.definition(), width) {
            y += 3.5;
            self.word((x, y), &line, body);
        }
        let entry = CatalogueEntry::new(of);
        let y = cell.y1 - 6.0;
        let unit = if entry.is_angle() { "°" } else { unit.name() };
        self.line((x, y), (x + 34.0, y), Pen::solid(0.35));
        self.word((x + 35.5, y), unit, style(Face::Regular, 3.4));
        if of.is_required() {
            self.word((x + 45.0, y), "needed", style(Face::Bold, 2.9));
        }
    }

    /// The figure in a window, the tape in black.
    fn picture(&mut self, figure: &Silhouette, of: Measurement, window: Rect) {
        let run = figure.tape(of);
        let mut bounds = figure.bounds(run.stance);
        for path in [&run.seen, &run.guides] {
            if !path.elements().is_empty() {
                bounds = bounds.union(path.bounding_box());
            }
        }
        let scale = (window.width() / bounds.width()).min(window.height() / bounds.height());
        let place = Affine::translate(window.center().to_vec2())
            * Affine::scale(scale)
            * Affine::translate(-bounds.center().to_vec2());
        let set = |path: BezPath| place * path;
        for shape in figure.shapes(run.stance) {
            let mut drawn = DrawnPath::stroked(set(shape), Pen::solid(0.22).ink(Ink::Grey(120)));
            drawn.fill = Some(Ink::Grey(244));
            self.ink.push(drawn);
        }
        for line in figure.lines(run.stance) {
            let pen = Pen::solid(0.15).ink(Ink::Grey(150));
            self.ink.push(DrawnPath::stroked(set(line), pen));
        }
        if !run.guides.elements().is_empty() {
            let pen = Pen::solid(0.2).dashed(&[1.2, 0.9]).ink(Ink::Grey(90));
            self.ink.push(DrawnPath::stroked(set(run.guides), pen));
        }
        if !run.hidden.elements().is_empty() {
            let pen = Pen::solid(0.45).dashed(&[0.9, 0.7]);
            self.ink.push(DrawnPath::stroked(set(run.hidden), pen));
        }
        self.ink
            .push(DrawnPath::stroked(set(run.seen), Pen::solid(0.75)));
        for end in run.ends {
            let at = place * Point::from(end);
            let dot = kurbo::Circle::new(at, 0.75).to_path(0.05);
            self.ink.push(DrawnPath::filled(dot, Ink::BLACK));
        }
        let seen = match run.stance {
            Stance::Front => "front",
            Stance::Back => "back",
            Stance::Side => "side",
        };
        let grey = style(Face::Regular, 2.3).ink(Ink::Grey(110));
        self.word((window.x0, window.y0 + 2.0), seen, grey);
    }
}

/// A name as words, with a capital.
fn in_words(of: Measurement) -> String {
    let words = of.name().replace('_', " ");
    let mut letters = words.chars();
    let first = letters.next().map(char::to_uppercase);
    first.into_iter().flatten().chain(letters).collect()
}
