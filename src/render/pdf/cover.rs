//! The first page: squares to measure, the plan of the pages, how to join them.

use kurbo::{Affine, Point, Rect, Shape as _, Size, Vec2};

use crate::drawing::{Anchor, Drawing, DrawnPath, Face, Ink, Item, Level, Pen, Text, TextStyle};
use crate::geometry::counted;

use super::coverage::Coverage;
use super::grid::{FOOTER, Grid};
use super::marks::GREY;
use super::plan::{TilePlan, tile_label};
use super::{PaperFormat, PdfError, PrintInfo, TileOptions, scale, tile_page};

/// The least width and height in mm between the margins that the page needs.
const LEAST: Size = Size::new(165.0, 235.0);

/// Line spacing of the text, in mm.
const LINE: f64 = 4.7;

/// A drawing and how it was cut into pages.
pub(super) struct Tiling<'a> {
    pub(super) drawing: &'a Drawing,
    pub(super) coverage: &'a Coverage,
    pub(super) plan: &'a TilePlan,
    pub(super) grid: &'a Grid,
}

/// Whether the first page fits on the paper.
pub(super) fn check(paper: PaperFormat, options: &TileOptions) -> Result<(), PdfError> {
    options.check()?;
    paper.check()?;
    let page = paper.portrait();
    let room = page - Size::new(2.0 * options.margin, 2.0 * options.margin);
    if room.width >= LEAST.width && room.height >= LEAST.height {
        return Ok(());
    }
    Err(PdfError::PaperTooSmall {
        width: page.width,
        height: page.height,
        margin: options.margin,
        overlap: options.overlap,
        least_width: LEAST.width + 2.0 * options.margin,
        least_height: LEAST.height + 2.0 * options.margin,
    })
}

/// Where the drawing is shown small: within a window of the page, by a motion from its own mm to
/// those of the page.
pub(super) struct Small {
    pub(super) window: Rect,
    pub(super) place: Affine,
}

/// Everything on the first page, in its mm, but the drawing, which lies over its plan.
pub(super) fn items(tiling: &Tiling<'_>, info: &PrintInfo) -> (Vec<Item>, Small) {
    let plan = tiling.plan;
    let page = plan.paper.portrait();
    let room = Rect::from_origin_size(Point::ZERO, page).inset(-plan.margin);
    let mut column = Column::new(room);
    // Room for an accent on a capital.
    column.y += 1.8;
    column.line(&info.title, TextStyle::new(Face::Bold, 8.0), 8.5);
    if !info.subtitle.is_empty() {
        column.line(&info.subtitle, body(), LINE + 0.5);
    }
    let way = if plan.landscape { ", landscape" } else { "" };
    let summary = format!(
        "Full size on {} of {}{way}, and this one: {} pages; a plain grid would take {}.",
        pages(plan.tiles.len()),
        plan.paper.name(),
        plan.page_count(),
        plan.plain_page_count,
    );
    column.line(&summary, body().ink(Ink::Grey(70)), LINE);

    column.heading("1   Print this page first, and measure both squares");
    squares(&mut column);

    column.heading("2   Print the rest, cut and join");
    let lines = list_lines(info, room.width() / 2.0 - 4.0);
    let contents = lines.len().div_ceil(2).min(10);
    let below = 10.0 + contents as f64 * LINE + 14.0 + FOOTER;
    let map_room = Rect::new(
        room.x0,
        column.y,
        room.x0 + room.width() * 0.56,
        room.y1 - below,
    );
    let small = map(&mut column.items, tiling, map_room);
    let beside = Rect::new(map_room.x1 + 6.0, column.y, room.x1, room.y1);
    let text_end = joining(&mut column.items, plan, beside);
    column.y = small.window.y1.max(text_end);

    if !info.contents.is_empty() {
        column.heading("3   What is on it");
        list(&mut column, &lines, room.y1 - FOOTER - 9.0);
    }
    column.y = room.y1 - FOOTER - 5.0;
    column.line(
        "Sew a trial garment (a toile) in cheap cloth before you cut good fabric.",
        TextStyle::new(Face::Bold, 3.5),
        LINE,
    );
    let foot = [
        format!("Page 1 of {}", plan.page_count()),
        info.title.clone(),
    ];
    let mut items = column.items;
    items.extend(tile_page::footer(room.x0, room.x1, room.y1, "", &foot));
    (items, small)
}

fn pages(count: usize) -> String {
    if count == 1 {
        return "one page".to_owned();
    }
    format!("{count} pages")
}

fn body() -> TextStyle {
    TextStyle::new(Face::Regular, 3.4)
}

/// A column of text, filled from the top.
struct Column {
    room: Rect,
    y: f64,
    items: Vec<Item>,
}

impl Column {
    fn new(room: Rect) -> Self {
        Self {
            room,
            y: room.y0,
            items: Vec::new(),
        }
    }

    /// A line cut off with "…" if it is too long.
    fn line(&mut self, text: &str, style: TextStyle, height: f64) {
        let text = style.fit(text, self.room.width());
        let at = (self.room.x0, self.y);
        self.items
            .push(Text::new(at, text, style).level(Level::Top).into());
        self.y += height;
    }

    /// As many lines as the text needs.
    fn paragraph(&mut self, text: &str, style: TextStyle) {
        for line in style.wrap(text, self.room.width()) {
            self.line(&line, style, LINE);
        }
    }

    fn heading(&mut self, text: &str) {
        self.y += 3.0;
        let rule = Pen::solid(0.25).ink(Ink::Grey(150));
        let (x0, x1) = (self.room.x0, self.room.x1);
        self.items
            .push(DrawnPath::line((x0, self.y), (x1, self.y), rule).into());
        self.y += 2.6;
        self.line(text, TextStyle::new(Face::Bold, 4.2), 6.0);
    }
}

fn squares(column: &mut Column) {
    let at = Point::new(column.room.x0, column.y + 0.5);
    let inches = scale::INCH * 2.0;
    column.items.extend(scale::square(at, 50.0, "50 mm"));
    let second = at + Vec2::new(55.0, 0.0);
    column.items.extend(scale::square(second, inches, "2 in"));
    let mut text = Column::new(Rect::new(
        second.x + inches + 5.0,
        at.y,
        column.room.x1,
        column.room.y1,
    ));
    text.paragraph(
        "Print at 100 % or “actual size”.",
        TextStyle::new(Face::Bold, 3.4),
    );
    text.y += 1.0;
    text.paragraph("Switch off “fit”, “shrink” and “scale to page”.", body());
    text.y += 1.0;
    for rest in [
        "Lay a ruler along the sides of both squares. If one is wrong, change the settings of the \
         printer and print this page again: 1 mm too little here is 20 mm in a metre.",
        "Print the other pages when both are right.",
    ] {
        text.paragraph(rest, body());
        text.y += 1.0;
    }
    column.items.append(&mut text.items);
    column.y = at.y + inches + 0.5;
}

/// The plan of the pages in at most a room, and where the drawing lies on it.
fn map(items: &mut Vec<Item>, tiling: &Tiling<'_>, room: Rect) -> Small {
    let (plan, grid) = (tiling.plan, tiling.grid);
    let whole = Size::new(
        plan.columns as f64 * plan.pitch.width + plan.overlap,
        plan.rows as f64 * plan.pitch.height + plan.overlap,
    );
    let scale = (room.width() / whole.width)
        .min(room.height() / whole.height)
        .min(0.25);
    let place = Affine::translate(room.origin().to_vec2())
        * Affine::scale(scale)
        * Affine::translate(-grid.origin.to_vec2());
    let cell = |row, column| place.transform_rect_bbox(grid.cell(row, column));
    let label = TextStyle::new(
        Face::Bold,
        (plan.pitch.width.min(plan.pitch.height) * scale * 0.36).min(4.6),
    )
    .ink(Ink::Grey(110));
    for row in 0..plan.rows {
        for column in 0..plan.columns {
            let mut rect = cell(row, column);
            if plan.tile(row, column).is_some() {
                // Where the pattern ends, a page shows its strip too.
                if plan.tile(row, column + 1).is_none() {
                    rect.x1 += plan.overlap * scale;
                }
                if plan.tile(row + 1, column).is_none() {
                    rect.y1 += plan.overlap * scale;
                }
                let tint = Ink::Grey(238);
                items.push(DrawnPath::filled(rect.to_path(0.1), tint).into());
                let edge = Pen::solid(0.2).ink(GREY);
                items.push(DrawnPath::rectangle(rect, edge).into());
                let text = tile_label(row, column);
                let size = Size::new(label.width(&text) + 1.0, label.cap_height() + 1.0);
                let at = place * clear_place(tiling.coverage, grid.cell(row, column), size / scale);
                items.push(
                    Text::new(at, text, label)
                        .anchor(Anchor::Middle)
                        .level(Level::Middle)
                        .into(),
                );
            } else {
                let edge = Pen::solid(0.15).dashed(&[0.5, 0.8]).ink(Ink::Grey(150));
                items.push(DrawnPath::rectangle(rect.inset(-0.4), edge).into());
            }
        }
    }
    let window = Rect::from_origin_size(room.origin(), whole * scale);
    Small { window, place }
}

/// The middle of the place of some size in a cell that the drawing crosses least: the middle of
/// the cell if it makes no difference, else a corner or the middle of a side.
fn clear_place(coverage: &Coverage, cell: Rect, size: Size) -> Point {
    let near = coverage.near(cell);
    let room = Vec2::new(size.width, size.height) / 2.0;
    let free = (cell.size() - size) * 0.45;
    let centre = cell.center();
    [
        (0, 0),
        (-1, -1),
        (1, -1),
        (-1, 1),
        (1, 1),
        (-1, 0),
        (1, 0),
        (0, -1),
        (0, 1),
    ]
    .into_iter()
    .map(|(x, y)| centre + Vec2::new(f64::from(x) * free.width, f64::from(y) * free.height))
    .min_by_key(|&at| near.crossings(Rect::from_points(at - room, at + room)))
    .unwrap_or(centre)
}

/// How to join the pages; gives back where the text ends.
fn joining(items: &mut Vec<Item>, plan: &TilePlan, room: Rect) -> f64 {
    let mut text = Column::new(room);
    if plan.tiles.len() == 1 {
        text.paragraph(
            "There is only one page more: nothing needs joining.",
            body(),
        );
        items.append(&mut text.items);
        return text.y;
    }
    let mut lay = "Lay the pages out as on this plan, by the label at the foot of each.".to_owned();
    if !plan.omitted.is_empty() {
        lay.push_str(" Dotted places have no page.");
    }
    for step in [
        lay.as_str(),
        "Cut each page along its solid lines: left and top, where it has them.",
        "Lay the cut edge over its neighbour’s grey strip, onto the dashed line.",
        "It is right when the two halves of the circle meet and both show the same pair, such \
         as A1|A2. Then glue.",
        "Join the pages of a row first, then row to row.",
    ] {
        text.paragraph(step, body());
        text.y += 1.6;
    }
    items.append(&mut text.items);
    text.y
}

/// The contents broken into lines; all but the first line of an entry are set in.
fn list_lines(info: &PrintInfo, width: f64) -> Vec<String> {
    let entry = |text: &String| {
        let lines = body().wrap(text, width - 4.0);
        let set_in = |(index, line)| {
            if index == 0 {
                line
            } else {
                format!("    {line}")
            }
        };
        lines
            .into_iter()
            .enumerate()
            .map(set_in)
            .collect::<Vec<_>>()
    };
    info.contents.iter().flat_map(entry).collect()
}

/// The contents in two columns down to a level; says how many lines did not fit.
fn list(column: &mut Column, lines: &[String], end: f64) {
    let room = counted((end - column.y) / LINE).max(1);
    let rows = room.min(lines.len().div_ceil(2));
    let shown = if rows * 2 >= lines.len() {
        lines.len()
    } else {
        rows * 2 - 1
    };
    let more = format!("… and {} more lines", lines.len() - shown);
    let more = (shown < lines.len()).then_some(more);
    let width = column.room.width() / 2.0;
    for (index, line) in lines.iter().take(shown).chain(more.as_ref()).enumerate() {
        let at = Point::new(
            column.room.x0 + index.div_euclid(rows) as f64 * width,
            column.y + (index % rows) as f64 * LINE,
        );
        let line = body().fit(line, width - 4.0);
        let line = Text::new(at, line, body()).level(Level::Top);
        column.items.push(line.into());
    }
    column.y += rows as f64 * LINE;
}
