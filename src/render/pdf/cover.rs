//! The first page: squares to measure, the plan of the pages, how to join them.

use kurbo::{Point, Rect, Size, Vec2};

use crate::drawing::{DrawnPath, Face, Ink, Item, Level, Pen, Text, TextStyle};
use crate::geometry::counted;

use super::grid::FOOTER;
use super::page_plan::Small;
use super::plan::TilePlan;
use super::tiling::Tiling;
use super::{PaperFormat, PdfError, PrintInfo, TileOptions, page_plan, scale, tile_page};

/// The least width and height in mm between the margins that the page needs.
const LEAST: Size = Size::new(165.0, 235.0);

/// Line spacing of the text, in mm.
const LINE: f64 = 4.7;

/// The least width of the words beside the plan, in mm, and what is between the two.
const BESIDE: f64 = 62.0;
const GAP: f64 = 6.0;

/// The height of a heading with what is before it, in mm.
const HEADING: f64 = 12.0;

/// The height of the words below the plan, in mm.
const BELOW: f64 = 62.0;

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
    let low = Rect::new(room.x0, column.y, room.x1, room.y1 - FOOTER - 9.0);
    let small = plan_and_words(&mut column.items, tiling, info, low);
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

/// The plan with what belongs to it beside it or below it, whichever leaves it larger.
fn plan_and_words(
    items: &mut Vec<Item>,
    tiling: &Tiling<'_>,
    info: &PrintInfo,
    room: Rect,
) -> Small {
    let plan = tiling.plan;
    let beside = Rect::new(room.x0, room.y0, room.x1 - BESIDE - GAP, room.y1);
    let above = Rect::new(room.x0, room.y0, room.x1, room.y1 - BELOW);
    let is_above =
        page_plan::scale_in(plan, above.size()) > page_plan::scale_in(plan, beside.size());
    let small = page_plan::draw(items, tiling, if is_above { above } else { beside });
    // Words stand close to a plan that needs less than its room.
    let (join, list) = if is_above {
        let top = small.window.y1 + 4.0;
        let middle = room.x0 + 0.5 * room.width();
        (
            Rect::new(room.x0, top, middle - GAP, room.y1),
            Rect::new(middle, top, room.x1, room.y1),
        )
    } else {
        let left = (small.window.x1 + GAP).max(room.x1 - 1.5 * BESIDE);
        let side = Rect::new(left, room.y0, room.x1, room.y1);
        (side, side)
    };
    let end = joining(items, plan, join);
    let top = if is_above { list.y0 } else { end + 2.0 };
    let mut column = Column::new(Rect { y0: top, ..list });
    if !info.contents.is_empty() {
        column.heading("3   What is on it");
        contents(&mut column, info);
    }
    sewing(&mut column, info);
    items.append(&mut column.items);
    small
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

/// Cloth and order of sewing down to the end of a column, as small as they must be; left out where
/// they find no room at the least size.
fn sewing(column: &mut Column, info: &PrintInfo) {
    if info.cloth.is_empty() && info.sewing.is_empty() {
        return;
    }
    let steps = info.sewing.iter().zip(1..);
    let entries: Vec<String> = info
        .cloth
        .iter()
        .cloned()
        .chain(steps.map(|(step, number)| format!("{number}. {step}")))
        .collect();
    let room = column.room.y1 - column.y - HEADING;
    for size in [3.4, 3.1, 2.8, 2.5, 2.2] {
        let style = TextStyle::new(Face::Regular, size);
        let line = size * LINE / 3.4;
        let lines: Vec<Vec<String>> = entries
            .iter()
            .map(|entry| style.wrap(entry, column.room.width()))
            .collect();
        let count: usize = lines.iter().map(Vec::len).sum();
        let height = count as f64 * line + entries.len() as f64 * 0.25 * line;
        if height > room {
            continue;
        }
        column.heading("4   Cloth, and the order of sewing");
        for entry in lines {
            for text in entry {
                column.line(&text, style, line);
            }
            column.y += 0.25 * line;
        }
        return;
    }
}

/// The contents down to the end of a column, all but the first line of an entry set in; says how
/// many lines did not fit.
fn contents(column: &mut Column, info: &PrintInfo) {
    let width = column.room.width();
    let lines: Vec<String> = info
        .contents
        .iter()
        .flat_map(|entry| {
            let lines = body().wrap(entry, width - 4.0).into_iter().enumerate();
            lines.map(|(index, line)| {
                if index == 0 {
                    line
                } else {
                    format!("    {line}")
                }
            })
        })
        .collect();
    let room = counted((column.room.y1 - column.y) / LINE).max(1);
    let shown = if lines.len() <= room {
        lines.len()
    } else {
        room - 1
    };
    for line in lines.iter().take(shown) {
        column.line(line, body(), LINE);
    }
    if shown < lines.len() {
        let more = format!("… and {} more lines", lines.len() - shown);
        column.line(&more, body(), LINE);
    }
}
