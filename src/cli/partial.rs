//! The results of a batch while they are being written, and taken up again.
//!
//! They grow in `results.jsonl.part` in the wanted folder and get their name `results.jsonl` in
//! one step when all is done: whenever the command is killed, a `results.jsonl` that is there is
//! whole. Beside the part stands `results.jsonl.part.json`, which says of which job and people
//! it is, so that the same command takes it up and another leaves it alone. The part is locked
//! while it is written.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io::{self, BufRead as _, BufReader, Read as _, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use thiserror::Error;

use super::earlier::{FolderError, entries, failed, few};
use super::folder::new_folder;
use super::row_files::FILES;
use super::swap::sync;

/// The finished results.
pub(super) const RESULTS: &str = "results.jsonl";
/// The results so far.
const PART: &str = "results.jsonl.part";
/// Of what they are the results.
const PART_OF: &str = "results.jsonl.part.json";

/// How much of a file is read to know it by.
const HEAD: u64 = 4096;

/// Why the results cannot be written.
#[derive(Debug, Error)]
pub(super) enum PartError {
    #[error(transparent)]
    Folder(#[from] FolderError),
    #[error("another run is writing this folder; wait for it or give another folder")]
    Busy,
    #[error(
        "the folder holds an unfinished batch, and {differs}; run the command that began it, \
         give another folder, or --force to begin anew"
    )]
    Other { differs: &'static str },
    #[error(
        "cannot {doing} {}: {source}; what was finished is kept, run the same command again to \
         go on", .path.display()
    )]
    Stopped {
        doing: &'static str,
        path: PathBuf,
        source: io::Error,
    },
}

impl PartError {
    /// A code for programs.
    pub(super) const fn code(&self) -> &'static str {
        match self {
            Self::Folder(error) => error.code(),
            Self::Busy => "folder_in_use",
            Self::Other { .. } => "unfinished_batch",
            Self::Stopped { .. } => "cannot_write",
        }
    }
}

/// Of what job and people the results are.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct PartOf {
    /// `blockwright-batch-part`.
    pub(super) format: String,
    /// The version of this program.
    pub(super) program: String,
    /// Digest of the job file.
    pub(super) job: String,
    /// Digest of the table of people.
    pub(super) people: String,
    /// Whether the pattern documents are written.
    pub(super) patterns: bool,
    /// Whether files are written for every wearer.
    #[serde(default)]
    pub(super) files: bool,
}

impl PartOf {
    /// That job for those people.
    pub(super) fn new(job: String, people: String, (patterns, files): (bool, bool)) -> Self {
        Self {
            format: "blockwright-batch-part".to_owned(),
            program: env!("CARGO_PKG_VERSION").to_owned(),
            job,
            people,
            patterns,
            files,
        }
    }

    /// In what a part of `self` differs from one of `other`.
    fn differs(&self, other: &Self) -> Option<&'static str> {
        if self.format != other.format {
            Some("nothing says which job it belongs to")
        } else if self.program != other.program {
            Some("another version of this program began it")
        } else if self.job != other.job {
            Some("its job file was another or was changed since")
        } else if self.people != other.people {
            Some("its people file was another or was changed since")
        } else if self.patterns != other.patterns {
            Some("it differs in --patterns")
        } else if self.files != other.files {
            Some("it differs in --files")
        } else {
            None
        }
    }
}

/// What is looked at in a line of an earlier run.
#[derive(Debug, Deserialize)]
pub(super) struct EarlierLine {
    pub(super) id: String,
    pub(super) reason: Option<String>,
}

/// The results so far, locked and open for more.
#[derive(Debug)]
pub(super) struct Part {
    folder: PathBuf,
    file: File,
}

impl Part {
    /// Takes a folder that is new, empty or holds an unfinished batch of the same; with `force`
    /// also one that holds an earlier result or the unfinished batch of something else.
    pub(super) fn open(folder: &Path, of: &PartOf, force: bool) -> Result<Self, PartError> {
        let folder = take(folder, force)?;
        let path = folder.join(PART);
        let file = OpenOptions::new()
            .read(true)
            .write(true)
            .create(true)
            .truncate(false)
            .open(&path)
            .map_err(failed("open", &path))?;
        match file.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Err(PartError::Busy),
            Err(TryLockError::Error(source)) => {
                return Err(failed("lock", &path)(source).into());
            }
        }
        // Finished and renamed by another run between opening and locking.
        if !path.exists() {
            return Err(PartError::Busy);
        }
        let length = file.metadata().map_err(failed("look at", &path))?.len();
        let part = Self { folder, file };
        match part.differs(of) {
            None => {}
            Some(differs) if length > 0 && !force => return Err(PartError::Other { differs }),
            Some(_) => part.begin(of)?,
        }
        Ok(part)
    }

    fn differs(&self, of: &PartOf) -> Option<&'static str> {
        let mut head = Vec::new();
        let read = File::open(self.folder.join(PART_OF))
            .and_then(|file| file.take(HEAD).read_to_end(&mut head));
        let found = read.ok().and_then(|_| serde_json::from_slice(&head).ok());
        found.map_or(
            Some("nothing says which job it belongs to"),
            |found: PartOf| found.differs(of),
        )
    }

    /// Nothing done yet. The part is emptied before it says of what it is: killed between the
    /// two, it holds nothing that could be taken for something else.
    fn begin(&self, of: &PartOf) -> Result<(), PartError> {
        let path = self.folder.join(PART);
        self.file.set_len(0).map_err(failed("empty", &path))?;
        let path = self.folder.join(PART_OF);
        // Strings only: nothing that JSON cannot hold.
        let mut text = serde_json::to_string_pretty(of).unwrap_or_default();
        text.push('\n');
        fs::write(&path, text).map_err(failed("write", &path))?;
        Ok(())
    }

    /// Reads the lines of an earlier run, as long as each is whole and `known` accepts it; what
    /// follows is cut off.
    pub(super) fn take_up<E: From<PartError>>(
        &mut self,
        mut known: impl FnMut(EarlierLine) -> Result<bool, E>,
    ) -> Result<(), E> {
        let path = self.folder.join(PART);
        let stopped = |doing, source| PartError::Stopped {
            doing,
            path: path.clone(),
            source,
        };
        self.file.rewind().map_err(|e| stopped("read", e))?;
        let mut whole = 0;
        let mut lines = BufReader::new(&self.file);
        let mut line = Vec::new();
        loop {
            line.clear();
            lines
                .read_until(b'\n', &mut line)
                .map_err(|e| stopped("read", e))?;
            if line.pop() != Some(b'\n') {
                break;
            }
            let Ok(read) = serde_json::from_slice(&line) else {
                break;
            };
            if !known(read)? {
                break;
            }
            whole += line.len() as u64 + 1;
        }
        let mut file = &self.file;
        file.set_len(whole).map_err(|e| stopped("cut", e))?;
        file.seek(SeekFrom::Start(whole))
            .map_err(|e| stopped("write", e))?;
        Ok(())
    }

    /// Adds lines, each with its line break.
    pub(super) fn add(&mut self, lines: &str) -> Result<(), PartError> {
        self.file
            .write_all(lines.as_bytes())
            .map_err(|source| self.stopped("write", source))
    }

    /// All is done: the results get their name.
    pub(super) fn finish(self) -> Result<(), PartError> {
        self.file
            .sync_all()
            .and_then(|()| fs::rename(self.folder.join(PART), self.folder.join(RESULTS)))
            .map_err(|source| self.stopped("finish", source))?;
        let path = self.folder.join(PART_OF);
        fs::remove_file(&path).map_err(|source| PartError::Stopped {
            doing: "remove",
            path,
            source,
        })?;
        sync(&self.folder);
        Ok(())
    }

    fn stopped(&self, doing: &'static str, source: io::Error) -> PartError {
        PartError::Stopped {
            doing,
            path: self.folder.join(PART),
            source,
        }
    }
}

/// The folder, made if it is not there; refused if it holds what must not be lost.
fn take(folder: &Path, force: bool) -> Result<PathBuf, FolderError> {
    match fs::symlink_metadata(folder) {
        Ok(_) => {}
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            let new = new_folder(folder)?;
            fs::create_dir(&new).map_err(failed("make the folder", folder))?;
            return Ok(new);
        }
        Err(error) => return Err(failed("look at", folder)(error)),
    }
    if !fs::metadata(folder)
        .map_err(failed("look at", folder))?
        .is_dir()
    {
        return Err(FolderError::NotFolder);
    }
    let part = [PART, PART_OF];
    let mut others: Vec<String> = entries(folder)?
        .into_iter()
        .filter(|(name, is_file)| !is_file || !part.contains(&name.as_str()))
        .map(|(name, _)| name)
        .collect();
    // The folders of the rows belong to the results beside them.
    let has_results = [PART, RESULTS]
        .iter()
        .any(|name| folder.join(name).is_file());
    others.retain(|name| !(has_results && name == FILES && folder.join(name).is_dir()));
    if others.is_empty() {
        return Ok(folder.to_path_buf());
    }
    if !force {
        return Err(FolderError::NotEmpty {
            names: few(&others),
        });
    }
    let is_results = |name: &String| name == RESULTS && folder.join(name).is_file();
    let foreign: Vec<String> = others
        .into_iter()
        .filter(|name| !is_results(name))
        .collect();
    if !foreign.is_empty() {
        return Err(FolderError::Foreign {
            names: few(&foreign),
        });
    }
    must_be_results(&folder.join(RESULTS))?;
    Ok(folder.to_path_buf())
}

/// Refuses a file of that name that a batch did not write. A batch of nobody is empty.
fn must_be_results(path: &Path) -> Result<(), FolderError> {
    let mut head = Vec::new();
    File::open(path)
        .and_then(|file| file.take(HEAD).read_to_end(&mut head))
        .map_err(failed("read", path))?;
    if head.is_empty() || head.starts_with(b"{\"id\":\"") {
        Ok(())
    } else {
        Err(FolderError::Foreign {
            names: format!("{RESULTS} of another program"),
        })
    }
}
