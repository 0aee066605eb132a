//! A page as pixels.

use std::path::{Path, PathBuf};
use std::process::Command;

use kurbo::Rect;

use super::tools::run;

/// Pixels in a mm of the renderings that are laid over each other. Pages then begin on whole
/// pixels, since the grid stands on whole millimetres, and differ by no more than rounding.
pub(crate) const COARSE: f64 = 5.0;

/// Pixels in a mm of the renderings that are measured.
pub(crate) const FINE: f64 = 20.0;

/// A rendering: 0 black to 255 white.
pub(crate) struct Picture {
    pub(crate) width: usize,
    pub(crate) pixels: Vec<u8>,
}

impl Picture {
    /// A part of a page, both in mm.
    pub(crate) fn part(pdf: &Path, page: usize, window: Rect, per_mm: f64) -> Self {
        let px = |mm: f64| format!("{:.0}", mm * per_mm);
        let out = pdf.with_extension(format!("{page}"));
        run(Command::new("pdftoppm")
            .args(["-gray", "-singlefile", "-r", &format!("{}", per_mm * 25.4)])
            .args(["-f", &page.to_string(), "-l", &page.to_string()])
            .args(["-x", &px(window.x0), "-y", &px(window.y0)])
            .args(["-W", &px(window.width()), "-H", &px(window.height())])
            .arg(pdf)
            .arg(&out));
        let file = PathBuf::from(format!("{}.pgm", out.display()));
        let bytes = std::fs::read(&file).unwrap();
        std::fs::remove_file(&file).unwrap();
        // "P5 width height 255", then the pixels.
        let fields: Vec<&[u8]> = bytes.splitn(4, |byte| byte.is_ascii_whitespace()).collect();
        let number =
            |field: &[u8]| -> usize { std::str::from_utf8(field).unwrap().parse().unwrap() };
        assert_eq!(fields[0], b"P5");
        let (width, height) = (number(fields[1]), number(fields[2]));
        let pixels = bytes[bytes.len() - width * height..].to_vec();
        Self { width, pixels }
    }

    pub(crate) fn height(&self) -> usize {
        self.pixels.len() / self.width
    }

    pub(crate) fn at(&self, x: usize, y: usize) -> u8 {
        self.pixels[y * self.width + x]
    }

    pub(crate) fn dark(&self, x: usize, y: usize) -> f64 {
        f64::from(255 - self.at(x, y))
    }

    /// The centre of gravity of all ink in pixels from the left and the top.
    pub(crate) fn centre(&self) -> (f64, f64) {
        let (mut sum, mut along, mut down) = (0.0, 0.0, 0.0);
        for y in 0..self.height() {
            for x in 0..self.width {
                let dark = self.dark(x, y);
                sum += dark;
                along += dark * (x as f64 + 0.5);
                down += dark * (y as f64 + 0.5);
            }
        }
        assert!(sum > 0.0, "no ink where some was expected");
        (along / sum, down / sum)
    }
}
