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
    #[error("the header is not text: `{shown}` is not UTF-8; save the file as CSV in UTF-8")]
    NotText { shown: String },
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
    delimiter: u8,
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
        let delimiter = delimiter(path)?;
        let mut rows = Rows::open(path, delimiter)?;
        let header = if rows.advance()? {
            header(&rows.record)?
        } else {
            Vec::new()
        };
        let mut count = 0;
        while rows.advance()? {
            count += 1;
        }
        Ok(Self {
            path: path.to_path_buf(),
            delimiter,
            header,
            rows: count,
            digest: rows.digest(),
        })
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
        let mut rows = Rows::open(&self.path, self.delimiter)?;
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

/// What stands between the cells: a comma, or a semicolon or tab if the header has more of them.
fn delimiter(path: &Path) -> Result<u8, PeopleError> {
    let mut line = Vec::new();
    let file = File::open(path)?.take(LONGEST_ROW);
    BufReader::new(file).read_until(b'\n', &mut line)?;
    let count = |sign: u8| line.iter().filter(|byte| **byte == sign).count();
    let others = [b';', b'\t'].into_iter().max_by_key(|sign| count(*sign));
    Ok(others
        .filter(|sign| count(*sign) > count(b','))
        .unwrap_or(b','))
}

fn header(record: &ByteRecord) -> Result<Vec<String>, PeopleError> {
    let cells = record.iter().map(|cell| match std::str::from_utf8(cell) {
        Ok(text) => Ok(text.to_owned()),
        Err(_) => Err(PeopleError::NotText {
            shown: String::from_utf8_lossy(cell).chars().take(40).collect(),
        }),
    });
    cells.collect()
}

/// The rows of a table, one after the other.
pub(super) struct Rows {
    reader: Reader<Watched>,
    record: ByteRecord,
}

impl Rows {
    fn open(path: &Path, delimiter: u8) -> Result<Self, PeopleError> {
        let watched = Watched {
            file: File::open(path)?,
            hasher: Sha256::new(),
            left: LONGEST_ROW,
        };
        let reader = ReaderBuilder::new()
            .has_headers(false)
            .flexible(true)
            .delimiter(delimiter)
            .from_reader(watched);
        Ok(Self {
            reader,
            record: ByteRecord::new(),
        })
    }

    /// The cells of the next row. What is not UTF-8 in them is replaced by a sign that is no
    /// number.
    pub(super) fn next(&mut self) -> Result<Option<Vec<String>>, PeopleError> {
        if !self.advance()? {
            return Ok(None);
        }
        let cells = self.record.iter();
        let texts = cells.map(|cell| String::from_utf8_lossy(cell).into_owned());
        Ok(Some(texts.collect()))
    }

    fn advance(&mut self) -> Result<bool, PeopleError> {
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
