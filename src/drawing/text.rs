//! One line of text at a place.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _, Vec2};

use super::{Face, Ink};

/// Face, size and colour of a text.
///
/// ```
/// use blockwright::drawing::{Face, Ink, TextStyle};
///
/// let label = TextStyle::new(Face::Bold, 6.0);
/// assert_eq!(label.ink, Ink::BLACK);
/// assert!((label.cap_height() - 4.308).abs() < 1e-9);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct TextStyle {
    /// The face.
    pub face: Face,
    /// The size in mm, as printers count it: from the top of the tallest letter to below the
    /// lowest. Capitals are 0.718 of it.
    pub size: f64,
    /// The colour.
    pub ink: Ink,
}

impl TextStyle {
    /// Black text of `size` mm.
    #[must_use]
    pub fn new(face: Face, size: f64) -> Self {
        Self {
            face,
            size,
            ink: Ink::BLACK,
        }
    }

    /// The same style in another colour.
    #[must_use]
    pub fn ink(mut self, ink: Ink) -> Self {
        self.ink = ink;
        self
    }

    /// The height of its capitals in mm.
    #[must_use]
    pub fn cap_height(&self) -> f64 {
        self.size * Face::CAP_HEIGHT
    }

    /// The width of a text in mm.
    #[must_use]
    pub fn width(&self, text: &str) -> f64 {
        self.face.width(text, self.size)
    }

    /// The text broken between words into lines no wider than `width` mm. A word wider than that
    /// stands alone on its line, whole.
    #[must_use]
    pub fn wrap(&self, text: &str, width: f64) -> Vec<String> {
        let mut lines: Vec<String> = Vec::new();
        for word in text.split_whitespace() {
            match lines.last_mut() {
                Some(line) if self.width(&format!("{line} {word}")) <= width => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => lines.push(word.to_owned()),
            }
        }
        lines
    }

    /// The text on lines as [`wrap`](Self::wrap) has them, but a word wider than `width` mm is cut
    /// where its line ends.
    pub(crate) fn broken(&self, text: &str, width: f64) -> Vec<String> {
        let mut lines = Vec::new();
        for whole in self.wrap(text, width) {
            let mut line = String::new();
            for letter in whole.chars() {
                line.push(letter);
                if self.width(&line) > width && line.chars().count() > 1 {
                    line.pop();
                    lines.push(std::mem::replace(&mut line, letter.to_string()));
                }
            }
            lines.push(line);
        }
        lines
    }

    /// The text if it fits into `width` mm, else as much of its beginning as fits with "…".
    #[must_use]
    pub fn fit(&self, text: &str, width: f64) -> String {
        if self.width(text) <= width {
            return text.to_owned();
        }
        let room = width - self.width("…");
        let mut kept = String::new();
        let mut used = 0.0;
        let mut buffer = [0; 4];
        for letter in text.chars() {
            used += self.width(letter.encode_utf8(&mut buffer));
            if used > room {
                break;
            }
            kept.push(letter);
        }
        kept.truncate(kept.trim_end().len());
        kept.push('…');
        kept
    }
}

/// Which point of the line of text stands at its place.
///
/// ```
/// use blockwright::drawing::{Anchor, Text, TextStyle, Face};
///
/// let style = TextStyle::new(Face::Regular, 4.0);
/// let text = Text::new((50.0, 0.0), "waist", style).anchor(Anchor::End);
/// assert!((text.bounds().x1 - 50.0).abs() < 1e-9);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Anchor {
    /// Its left end.
    #[default]
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

/// Which height of the line of text stands at its place.
///
/// ```
/// use blockwright::drawing::{Face, Level, Text, TextStyle};
///
/// let style = TextStyle::new(Face::Regular, 10.0);
/// let on = Text::new((0.0, 0.0), "A", style);
/// let below = Text::new((0.0, 0.0), "A", style).level(Level::Top);
/// assert!((below.bounds().y0 - on.bounds().y0 - 7.18).abs() < 1e-9);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Level {
    /// The foot of the letters.
    #[default]
    Baseline,
    /// Half the height of a capital.
    Middle,
    /// The top of a capital.
    Top,
}

/// One line of text at a place.
///
/// What the standard faces cannot show is written as near as possible, see
/// [`printable`](super::printable).
///
/// ```
/// use blockwright::drawing::{Anchor, Face, Level, Text, TextStyle};
///
/// let text = Text::new((100.0, 40.0), "Back, cut 1 on the fold", TextStyle::new(Face::Bold, 5.0))
///     .anchor(Anchor::Middle)
///     .level(Level::Middle)
///     .turned(90.0);
/// assert!(text.bounds().height() > text.bounds().width());
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// The place in mm.
    pub at: Point,
    /// The text: one line.
    pub text: String,
    /// Face, size, colour.
    pub style: TextStyle,
    /// Which point along the line stands at the place.
    pub anchor: Anchor,
    /// Which height of the line stands at the place.
    pub level: Level,
    /// Turned about the place, in degrees clockwise as seen on the page.
    pub rotation: f64,
}

impl Text {
    /// Text that starts at a place on its baseline, not turned.
    pub fn new(at: impl Into<Point>, text: impl Into<String>, style: TextStyle) -> Self {
        Self {
            at: at.into(),
            text: text.into(),
            style,
            anchor: Anchor::Start,
            level: Level::Baseline,
            rotation: 0.0,
        }
    }

    /// The same text anchored otherwise.
    #[must_use]
    pub fn anchor(mut self, anchor: Anchor) -> Self {
        self.anchor = anchor;
        self
    }

    /// The same text at another level.
    #[must_use]
    pub fn level(mut self, level: Level) -> Self {
        self.level = level;
        self
    }

    /// The same text turned about its place by degrees, clockwise as seen on the page.
    #[must_use]
    pub fn turned(mut self, degrees: f64) -> Self {
        self.rotation = degrees;
        self
    }

    /// Its width in mm along its own line.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.style.width(&self.text)
    }

    /// The left end of its baseline, before it is turned, relative to its place.
    pub(crate) fn shift(&self) -> Vec2 {
        let x = match self.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => -self.width() / 2.0,
            Anchor::End => -self.width(),
        };
        let y = match self.level {
            Level::Baseline => 0.0,
            Level::Middle => self.style.cap_height() / 2.0,
            Level::Top => self.style.cap_height(),
        };
        Vec2::new(x, y)
    }

    /// The motion that carries a text starting at the origin to where this one stands.
    pub(crate) fn motion(&self) -> Affine {
        Affine::translate(self.at.to_vec2())
            * Affine::rotate(self.rotation.to_radians())
            * Affine::translate(self.shift())
    }

    /// Whether there is anything to see.
    #[must_use]
    pub fn leaves_ink(&self) -> bool {
        let seen = |letter: char| !letter.is_whitespace() && !letter.is_control();
        !self.style.ink.is_white() && self.text.chars().any(seen)
    }

    /// The four corners of its line, turned with it: from above an accented capital to below the
    /// lowest letter.
    #[must_use]
    pub fn outline(&self) -> BezPath {
        self.motion() * self.line().to_path(0.1)
    }

    /// The same corners as points, in order round the line.
    pub(crate) fn corners(&self) -> [Point; 4] {
        let (line, motion) = (self.line(), self.motion());
        [
            (line.x0, line.y0),
            (line.x1, line.y0),
            (line.x1, line.y1),
            (line.x0, line.y1),
        ]
        .map(|corner| motion * Point::from(corner))
    }

    /// Its line from the left end of its baseline.
    fn line(&self) -> Rect {
        let size = self.style.size;
        Rect::new(
            0.0,
            -size * Face::ASCENT,
            self.width(),
            size * Face::DESCENT,
        )
    }

    /// The box around it in mm.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.outline().bounding_box()
    }
}
