//! Reading a file of bounded size as text.

use std::fs::File;
use std::io::{self, Read as _};
use std::path::Path;

use thiserror::Error;

/// The largest file that is read, in bytes: a job or a size table needs a hundredth.
const LARGEST: u64 = 1024 * 1024;

/// The path that stands for standard input.
const STANDARD_INPUT: &str = "-";

/// Why a file is no text to read.
#[derive(Debug, Error)]
pub(super) enum ReadError {
    #[error("the file cannot be read: {0}")]
    Io(#[from] io::Error),
    #[error("this is a folder; give the file in it")]
    Folder,
    #[error("this is a named pipe, which waits for a writer; give a file, or `/dev/stdin`")]
    NamedPipe,
    #[error(
        "the file is larger than {LARGEST} bytes; a job or a set of measurements needs a hundredth of that"
    )]
    TooLarge,
    #[error("the file is not text: byte {byte} at line {line} is not UTF-8; save it as UTF-8")]
    NotText { byte: u8, line: usize },
}

impl ReadError {
    /// A code for programs.
    pub(super) const fn code(&self) -> &'static str {
        match self {
            Self::Io(_) => "cannot_read",
            Self::Folder => "is_folder",
            Self::NamedPipe => "named_pipe",
            Self::TooLarge => "too_large",
            Self::NotText { .. } => "not_text",
        }
    }
}

/// A file that was read, to show its lines beside what is wrong with them.
#[derive(Debug)]
pub(super) struct SourceFile {
    shown: String,
    text: String,
}

impl SourceFile {
    /// Reads a file; standard input where the path is `-`.
    pub(super) fn read_or_input(path: &Path) -> Result<Self, ReadError> {
        if path.as_os_str() == STANDARD_INPUT {
            return Self::from_reader("standard input".to_owned(), io::stdin().lock());
        }
        Self::read(path)
    }

    /// Reads a file.
    pub(super) fn read(path: &Path) -> Result<Self, ReadError> {
        if is_named_pipe(path) {
            return Err(ReadError::NamedPipe);
        }
        let file = File::open(path)?;
        if file.metadata()?.is_dir() {
            return Err(ReadError::Folder);
        }
        Self::from_reader(path.display().to_string(), file)
    }

    fn from_reader(shown: String, from: impl io::Read) -> Result<Self, ReadError> {
        let mut bytes = Vec::new();
        from.take(LARGEST + 1).read_to_end(&mut bytes)?;
        if bytes.len() as u64 > LARGEST {
            return Err(ReadError::TooLarge);
        }
        let text = String::from_utf8(bytes).map_err(|error| {
            let good = error.utf8_error().valid_up_to();
            let bytes = error.as_bytes();
            ReadError::NotText {
                byte: bytes.get(good).copied().unwrap_or_default(),
                line: 1 + bytes.iter().take(good).filter(|b| **b == b'\n').count(),
            }
        })?;
        Ok(Self {
            shown,
            // Some editors begin a file with a byte order mark.
            text: text.strip_prefix('\u{feff}').unwrap_or(&text).to_owned(),
        })
    }

    /// The path as it was given.
    pub(super) fn shown(&self) -> &str {
        &self.shown
    }

    /// The text.
    pub(super) fn text(&self) -> &str {
        &self.text
    }

    /// A line, counted from one.
    pub(super) fn line(&self, number: u64) -> Option<&str> {
        let before = usize::try_from(number.checked_sub(1)?).ok()?;
        self.text.lines().nth(before)
    }
}

/// Whether a path leads to a pipe that stands in a folder: opening it would wait for a writer,
/// for ever if none comes. A pipe that a shell has made, `/dev/stdin` or `<(…)`, has no path of
/// its own and a writer from the start.
#[cfg(unix)]
fn is_named_pipe(path: &Path) -> bool {
    use std::os::unix::fs::FileTypeExt as _;
    std::fs::canonicalize(path)
        .and_then(std::fs::metadata)
        .is_ok_and(|metadata| metadata.file_type().is_fifo())
}

#[cfg(not(unix))]
fn is_named_pipe(_: &Path) -> bool {
    false
}
