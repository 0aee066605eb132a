//! A table of people (CSV), read row by row so that one of any length takes no more memory.

use std::fs::File;
use std::io::{self, BufRead as _, BufReader, Read};
use std::path::{Path, PathBuf};

use csv::{ByteRecord, Reader, ReaderBuilder};
use sha2::{Digest as _, Sha256};
use thiserror::Error;

use super::digest::hex;

/// The longest row that is read, in bytes. What is longer is a quote left open.
const LONGEST_ROW: u64 = 1024 * 1024;

/// Why a table of people cannot be read.
#[derive(Debug, Error)]
pub(super) enum PeopleError {
    #[error("the file cannot be read: {0}")]
    Io(#[from] io::Error),
    #[error("this is no plain file; give one, since it is read twice")]
    NotPlain,
    #[error(
        "the file is not text in UTF-8 or in Windows-1252 (Western European): byte {byte} in line \
         {line}; save it as CSV in UTF-8"
    )]
    NotText { byte: u8, line: u64 },
    #[error(
        "the row that begins in line {line} is longer than {LONGEST_ROW} bytes; is a quote left \
         open?"
    )]
    RowTooLong { line: u64 },
    #[error("the file was changed while it was read; run the command again")]
    Changed,
}

impl PeopleError {
    /// A code for programs.
    pub(super) const fn code(&self) -> &'static str {
        match self {
            Self::Io(_) => "cannot_read",
            Self::NotPlain => "not_a_plain_file",
            Self::NotText { .. } => "not_text",
            Self::RowTooLong { .. } => "row_too_long",
            Self::Changed => "file_changed",
        }
    }
}

/// A table that was read through once: its header, how many rows it has, and its digest.
#[derive(Debug)]
pub(super) struct PeopleFile {
    path: PathBuf,
    layout: Layout,
    header: Vec<String>,
    rows: u64,
    digest: String,
}

impl PeopleFile {
    /// Reads a table through, keeping nothing but the header.
    pub(super) fn open(path: &Path) -> Result<Self, PeopleError> {
        if !std::fs::metadata(path)?.is_file() {
            return Err(PeopleError::NotPlain);
        }
        let mut layout = layout(path)?;
        layout.western = !is_utf8(path, layout)?;
        let mut rows = Rows::open(path, layout)?;
        let header = if rows.advance()? {
            rows.texts()?
        } else {
            Vec::new()
        };
        let mut count = 0;
        while rows.advance()? {
            if layout.western {
                // What is no text is refused before anything is made.
                rows.texts()?;
            }
            count += 1;
        }
        Ok(Self {
            path: path.to_path_buf(),
            layout,
            header,
            rows: count,
            digest: rows.digest(),
        })
    }

    /// Whether it is not UTF-8 and was read as Windows-1252.
    pub(super) const fn is_western(&self) -> bool {
        self.layout.western
    }

    /// The names of the columns; none if the file is empty.
    pub(super) fn header(&self) -> &[String] {
        &self.header
    }

    /// How many rows there are without the header.
    pub(super) const fn count(&self) -> u64 {
        self.rows
    }

    /// The digest of its bytes.
    pub(super) fn digest(&self) -> &str {
        &self.digest
    }

    /// Its rows from the first behind the header.
    pub(super) fn rows(&self) -> Result<Rows, PeopleError> {
        let mut rows = Rows::open(&self.path, self.layout)?;
        rows.advance()?;
        Ok(rows)
    }

    /// Refuses a file that has other bytes than when it was opened; all rows have been read.
    pub(super) fn must_be_unchanged(&self, rows: Rows) -> Result<(), PeopleError> {
        if rows.digest() == self.digest {
            Ok(())
        } else {
            Err(PeopleError::Changed)
        }
    }
}

/// How a table is written.
#[derive(Debug, Clone, Copy)]
struct Layout {
    /// What stands between the cells.
    delimiter: u8,
    /// Whether a line before the header says so, `sep=;`, as some spreadsheets write it.
    said: bool,
    /// Whether it is Windows-1252.
    western: bool,
}

/// What stands between the cells: what the first line says, `sep=;`; or else a comma, or a semicolon
/// or tab if the header has more of them.
fn layout(path: &Path) -> Result<Layout, PeopleError> {
    let mut line = Vec::new();
    let file = File::open(path)?.take(LONGEST_ROW);
    BufReader::new(file).read_until(b'\n', &mut line)?;
    let line = line.strip_prefix(b"\xef\xbb\xbf").unwrap_or(&line);
    let said = line.trim_ascii_end().to_ascii_lowercase();
    let western = false;
    if let [b's', b'e', b'p', b'=', delimiter] = *said.trim_ascii_start() {
        let said = true;
        return Ok(Layout {
            delimiter,
            said,
            western,
        });
    }
    if said == b"sep=" && line.contains(&b'\t') {
        return Ok(Layout {
            delimiter: b'\t',
            said: true,
            western,
        });
    }
    let count = |sign: u8| line.iter().filter(|byte| **byte == sign).count();
    let others = [b';', b'\t'].into_iter().max_by_key(|sign| count(*sign));
    Ok(Layout {
        delimiter: others
            .filter(|sign| count(*sign) > count(b','))
            .unwrap_or(b','),
        said: false,
        western,
    })
}

/// Whether every cell of a table is UTF-8.
fn is_utf8(path: &Path, layout: Layout) -> Result<bool, PeopleError> {
    let mut rows = Rows::open(path, layout)?;
    while rows.advance()? {
        if std::str::from_utf8(rows.record.as_slice()).is_err() {
            return Ok(false);
        }
    }
    Ok(true)
}

/// The rows of a table, one after the other; those without anything in their cells are skipped.
pub(super) struct Rows {
    reader: Reader<Watched>,
    record: ByteRecord,
    western: bool,
}

impl Rows {
    fn open(path: &Path, layout: Layout) -> Result<Self, PeopleError> {
        let watched = Watched {
            file: File::open(path)?,
            hasher: Sha256::new(),
            left: LONGEST_ROW,
        };
        let reader = ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .delimiter(layout.delimiter)
            .from_reader(watched);
        let mut rows = Self {
            reader,
            record: ByteRecord::new(),
            western: layout.western,
        };
        if layout.said {
            rows.advance()?;
        }
        Ok(rows)
    }

    /// The cells of the next row.
    pub(super) fn next(&mut self) -> Result<Option<Vec<String>>, PeopleError> {
        if self.advance()? {
            self.texts().map(Some)
        } else {
            Ok(None)
        }
    }

    /// The cells of the row that was read last.
    fn texts(&self) -> Result<Vec<String>, PeopleError> {
        let line = self.record.position().map_or(0, csv::Position::line);
        let cells = self.record.iter().map(|cell| {
            let text = match self.western {
                true => western(cell),
                // A file that was changed since it was looked at.
                false => std::str::from_utf8(cell)
                    .map(str::to_owned)
                    .map_err(|e| cell.get(e.valid_up_to()).copied().unwrap_or_default()),
            };
            text.map_err(|byte| PeopleError::NotText { byte, line })
        });
        cells.collect()
    }

    /// Reads the next row that has something in it.
    fn advance(&mut self) -> Result<bool, PeopleError> {
        while self.advance_any()? {
            let blank = |cell: &[u8]| cell.iter().all(u8::is_ascii_whitespace);
            if !self.record.iter().all(blank) {
                return Ok(true);
            }
        }
        Ok(false)
    }

    fn advance_any(&mut self) -> Result<bool, PeopleError> {
        let line = self.reader.position().line();
        self.reader.get_mut().left = LONGEST_ROW;
        self.reader
            .read_byte_record(&mut self.record)
            .map_err(|error| {
                if self.reader.get_ref().left == 0 {
                    return PeopleError::RowTooLong { line };
                }
                PeopleError::Io(error.into())
            })
    }

    /// The digest of all bytes that were read.
    fn digest(self) -> String {
        hex(self.reader.into_inner().hasher)
    }
}

/// A file whose bytes are digested as they are read, and of which no more than `left` are read.
struct Watched {
    file: File,
    hasher: Sha256,
    left: u64,
}

impl Read for Watched {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        if self.left == 0 {
            return Err(io::Error::other("the row is too long"));
        }
        let read = self.file.read(buffer)?;
        self.hasher.update(buffer.get(..read).unwrap_or_default());
        self.left = self.left.saturating_sub(read as u64);
        Ok(read)
    }
}

/// The signs of Windows-1252 from 0x80 to 0x9f, where it differs from Latin-1 (as read in the table of
/// the encoding, from memory); a blank where it has none.
const WESTERN: &str = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ";

/// A cell in Windows-1252 as text; or the byte that is no sign of it, a NUL among them, which no text
/// has.
fn western(cell: &[u8]) -> Result<String, u8> {
    cell.iter()
        .map(|byte| match byte {
            0 => Err(*byte),
            0x80..=0x9f => {
                let place = usize::from(byte - 0x80);
                let sign = WESTERN.chars().nth(place).filter(|sign| *sign != ' ');
                sign.ok_or(*byte)
            }
            _ => Ok(char::from(*byte)),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::western;

    #[test]
    fn western_text_is_read_or_refused() {
        assert_eq!(
            western(b"Zo\xeb, Fran\xe7oise, 3 \x80"),
            Ok("Zoë, Françoise, 3 €".to_owned())
        );
        assert_eq!(western(b"\x9fves"), Ok("Ÿves".to_owned()));
        assert_eq!(western(b"a\x81"), Err(0x81));
        assert_eq!(western(b"a\0"), Err(0));
    }
}
