//! How a job is printed, as the PDF writer has it.

use super::laid_parts::LaidParts;
use super::outcome::OutputFile;
use crate::job::{
    JobError, Output, Outputs, PageTurn, PagesReport, PaperSize, PrintOptions, PrintTarget,
};
use crate::render::pdf::{self, Orientation, PaperFormat, PrintInfo, TileOptions};

/// Adds the tiled file and the sheet, as far as they are wanted, under names that begin alike, and
/// returns how many pages there are.
pub(in crate::job) fn print(
    laid: &LaidParts,
    (wanted, print): (Outputs, &PrintOptions),
    info: &PrintInfo,
    name: &str,
    files: &mut Vec<OutputFile>,
) -> Result<Option<PagesReport>, JobError> {
    let mut pages = None;
    if wanted.has(Output::Pages) && print.target == PrintTarget::Projector {
        files.push(OutputFile {
            name: format!("{name}-projector.pdf"),
            bytes: pdf::projector(&laid.sheet, info)?,
        });
    } else if wanted.has(Output::Pages) {
        let (report, bytes) = tiled(laid, print, info, name)?;
        let name = report.file.clone();
        files.push(OutputFile { name, bytes });
        pages = Some(report);
    }
    if wanted.has(Output::Sheet) {
        files.push(OutputFile {
            name: format!("{name}-sheet.pdf"),
            bytes: pdf::sheet(&laid.sheet, info)?,
        });
    }
    Ok(pages)
}

fn tiled(
    laid: &LaidParts,
    print: &PrintOptions,
    info: &PrintInfo,
    name: &str,
) -> Result<(PagesReport, Vec<u8>), JobError> {
    let paper = print.paper.into();
    let tiled = pdf::tiles_of(&laid.parts, &laid.placements, paper, &print.into(), info)?;
    let plan = tiled.plan;
    let report = PagesReport {
        file: format!("{name}-{}.pdf", print.paper.name()),
        paper: print.paper,
        pages: plan.page_count(),
        plain_grid: plan.plain_page_count,
        rows: plan.rows,
        columns: plan.columns,
        landscape: plan.landscape,
    };
    Ok((report, tiled.bytes))
}

impl From<PaperSize> for PaperFormat {
    fn from(size: PaperSize) -> Self {
        match size {
            PaperSize::A4 => Self::A4,
            PaperSize::Letter => Self::Letter,
            PaperSize::A3 => Self::A3,
            PaperSize::Legal => Self::Legal,
            PaperSize::A0 => Self::A0,
            PaperSize::Roll594 => Self::Roll { width: 594.0 },
            PaperSize::Roll610 => Self::Roll { width: 610.0 },
            PaperSize::Roll841 => Self::Roll { width: 841.0 },
            PaperSize::Roll914 => Self::Roll { width: 914.0 },
            PaperSize::Roll1067 => Self::Roll { width: 1067.0 },
        }
    }
}

impl From<&PrintOptions> for TileOptions {
    fn from(print: &PrintOptions) -> Self {
        Self {
            margin: print.margin,
            overlap: print.overlap,
            orientation: match print.orientation {
                PageTurn::FewerPages => Orientation::FewerPages,
                PageTurn::Portrait => Orientation::Portrait,
                PageTurn::Landscape => Orientation::Landscape,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{PaperSize, PrintOptions};
    use crate::drawing::{Drawing, DrawnPath, Layer, Pen};
    use crate::render::pdf::{PrintInfo, tiles};

    #[test]
    fn the_ends_of_what_a_job_may_say_can_be_printed() {
        let mut layer = Layer::new("line");
        layer.push(DrawnPath::line((0.0, 0.0), (100.0, 100.0), Pen::solid(1.0)));
        let drawing = Drawing::new(vec![layer]).unwrap();
        let can = |margin, overlap| {
            let print = PrintOptions {
                margin,
                overlap,
                paper: PaperSize::A3,
                ..PrintOptions::default()
            };
            let info = PrintInfo::new("line");
            tiles(&drawing, print.paper.into(), &(&print).into(), &info).is_ok()
        };
        let (margins, overlaps) = (PrintOptions::MARGINS, PrintOptions::OVERLAPS);
        assert!(can(margins.0, overlaps.0) && can(margins.1, overlaps.1));
        assert!(!can(margins.0 - 0.1, overlaps.0) && !can(margins.1 + 0.1, overlaps.0));
        assert!(!can(margins.0, overlaps.0 - 0.1) && !can(margins.0, overlaps.1 + 0.1));
    }
}
