//! How a job is printed, as the PDF writer has it.

use super::{PageTurn, PaperSize, PrintOptions};
use crate::render::pdf::{Orientation, Paper, TileOptions};

impl From<PaperSize> for Paper {
    fn from(size: PaperSize) -> Self {
        match size {
            PaperSize::A4 => Self::A4,
            PaperSize::Letter => Self::Letter,
            PaperSize::A3 => Self::A3,
            PaperSize::Legal => Self::Legal,
            PaperSize::A0 => Self::A0,
        }
    }
}

impl From<PrintOptions> for TileOptions {
    fn from(print: PrintOptions) -> Self {
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
    use crate::drawing::{Drawing, Figure, Layer, Pen};
    use crate::render::pdf::{PrintInfo, tiles};

    #[test]
    fn the_ends_of_what_a_job_may_say_can_be_printed() {
        let mut layer = Layer::new("line");
        layer.push(Figure::line((0.0, 0.0), (100.0, 100.0), Pen::solid(1.0)));
        let drawing = Drawing::new(vec![layer]).unwrap();
        let can = |margin, overlap| {
            let print = PrintOptions {
                margin,
                overlap,
                paper: PaperSize::A3,
                ..PrintOptions::default()
            };
            let info = PrintInfo::new("line");
            tiles(&drawing, print.paper.into(), &print.into(), &info).is_ok()
        };
        let (margins, overlaps) = (PrintOptions::MARGINS, PrintOptions::OVERLAPS);
        assert!(can(margins.0, overlaps.0) && can(margins.1, overlaps.1));
        assert!(!can(margins.0 - 0.1, overlaps.0) && !can(margins.1 + 0.1, overlaps.0));
        assert!(!can(margins.0, overlaps.0 - 0.1) && !can(margins.0, overlaps.1 + 0.1));
    }
}
