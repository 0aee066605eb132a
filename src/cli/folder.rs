//! Writing a folder whole or not at all.
//!
//! Everything is written into a temporary folder beside the one wanted
//! (`.blockwright-…`), flushed to the disk, and moved into place in one step. Whenever the
//! command is killed, what stands under the wanted name is whole; an interrupted run can leave
//! the temporary folder behind. Replacing an earlier result takes two steps, moving the old
//! folder aside and the new one in: killed between the two, the old one stands in the
//! temporary folder as `old`.
//!
//! The folder around the wanted one is never made: a slip in a long path would grow a tree.

use std::fs::{self, File};
use std::io::{self, Read as _, Write as _};
use std::path::{Path, PathBuf};

use blockwright::job::{OutputFile, is_output_name};
use thiserror::Error;

use super::problem::{Failure, Problem};
use super::swap;

/// How much of a pattern document is read to know it by.
const HEAD: u64 = 256;

/// Why a folder was not written; what stood there before stands there still, unless it says
/// otherwise.
#[derive(Debug, Error)]
pub(super) enum FolderError {
    #[error("the folder around it, {}, is not there; make it first or give another place", .parent.display())]
    NoParent { parent: PathBuf },
    #[error("this is not a folder; give a folder, new or empty")]
    NotFolder,
    #[error("this is the folder the command runs in; give a new folder, such as `-o pattern`")]
    RunsIn,
    #[error("this cannot be the name of a new folder; give a plain name, such as `-o pattern`")]
    NoName,
    #[error(
        "the folder holds something already ({names}); give a new folder, or --force to replace \
         an earlier result"
    )]
    NotEmpty { names: String },
    #[error(
        "the folder is left as it was: --force replaces nothing but an earlier result, and here \
         is also {names}; move that away or give another folder"
    )]
    Foreign { names: String },
    #[error(
        "the folder is left as it was: --force replaces nothing but an earlier result, and it \
         has no pattern.json of one; give another folder"
    )]
    NoResult,
    #[error("nothing was written: cannot {doing} {}: {source}", .path.display())]
    Io {
        doing: &'static str,
        path: PathBuf,
        source: io::Error,
    },
    #[error(
        "the new result could not be moved in and the old one not back: {source}; the old one \
         is in {}, move it back by hand", .old.display()
    )]
    Aside { old: PathBuf, source: io::Error },
}

impl FolderError {
    const fn code(&self) -> &'static str {
        match self {
            Self::NoParent { .. } => "no_folder_around",
            Self::NotFolder => "not_a_folder",
            Self::RunsIn => "runs_in_folder",
            Self::NoName => "no_folder_name",
            Self::NotEmpty { .. } => "folder_not_empty",
            Self::Foreign { .. } => "foreign_files",
            Self::NoResult => "no_earlier_result",
            Self::Io { .. } => "cannot_write",
            Self::Aside { .. } => "old_result_aside",
        }
    }
}

/// A failed step of the file system at a path.
pub(super) fn failed(doing: &'static str, path: &Path) -> impl FnOnce(io::Error) -> FolderError {
    let path = path.to_path_buf();
    move |source| FolderError::Io {
        doing,
        path,
        source,
    }
}

/// What stands under the wanted name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Found {
    Nothing,
    Empty,
    EarlierResult,
}

/// Writes the files into a folder, which must be new or empty, or with `force` may hold an
/// earlier result and nothing else.
pub(super) fn write(folder: &Path, files: &[OutputFile], force: bool) -> Result<(), Failure> {
    try_write(folder, files, force).map_err(|error| {
        let problem = Problem::new(error.code(), error.to_string());
        Failure::wrong(problem.in_file(folder.display().to_string()))
    })
}

fn try_write(folder: &Path, files: &[OutputFile], force: bool) -> Result<(), FolderError> {
    let (target, found) = look(folder, force)?;
    let parent = target.parent().ok_or(FolderError::NoName)?;
    let temporary = tempfile::Builder::new()
        .prefix(".blockwright-")
        .tempdir_in(parent)
        .map_err(failed("make a folder in", parent))?;
    // Inside, since a temporary folder is closed to others and the result is not.
    let new = temporary.path().join("new");
    fs::create_dir(&new).map_err(failed("make the folder", &new))?;
    for file in files {
        write_file(&new.join(&file.name), &file.bytes)
            .map_err(failed("write", &folder.join(&file.name)))?;
    }
    swap::sync(&new);
    swap::place(&target, found, &new, temporary)
}

fn write_file(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = File::create_new(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// The path to move to, without links, and what stands there.
fn look(folder: &Path, force: bool) -> Result<(PathBuf, Found), FolderError> {
    let named = match fs::symlink_metadata(folder) {
        Ok(_) => fs::canonicalize(folder).map_err(failed("follow the link", folder))?,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return new(folder),
        Err(error) => return Err(failed("look at", folder)(error)),
    };
    let metadata = fs::metadata(&named).map_err(failed("look at", folder))?;
    if !metadata.is_dir() {
        return Err(FolderError::NotFolder);
    }
    if named.parent().is_none() {
        return Err(FolderError::NoName);
    }
    // Moved away under a shell, the folder would be gone from where the user stands.
    let here = std::env::current_dir().and_then(fs::canonicalize);
    if here.is_ok_and(|here| here == named) {
        return Err(FolderError::RunsIn);
    }
    let names = entries(&named)?;
    if names.is_empty() {
        return Ok((named, Found::Empty));
    }
    if !force {
        let names = few(&names.into_iter().map(|(name, _)| name).collect::<Vec<_>>());
        return Err(FolderError::NotEmpty { names });
    }
    must_be_earlier_result(&named)?;
    Ok((named, Found::EarlierResult))
}

fn new(folder: &Path) -> Result<(PathBuf, Found), FolderError> {
    let name = folder.file_name().ok_or(FolderError::NoName)?;
    let parent = match folder.parent() {
        Some(parent) if parent != Path::new("") => parent,
        _ => Path::new("."),
    };
    if !parent.is_dir() {
        let parent = parent.to_path_buf();
        return Err(FolderError::NoParent { parent });
    }
    Ok((parent.join(name), Found::Nothing))
}

/// Refuses a folder that holds anything but the files of an earlier result.
pub(super) fn must_be_earlier_result(folder: &Path) -> Result<(), FolderError> {
    let foreign: Vec<String> = entries(folder)?
        .into_iter()
        .filter(|(name, is_file)| !is_file || !is_output_name(name))
        .map(|(name, _)| name)
        .collect();
    if !foreign.is_empty() {
        let names = few(&foreign);
        return Err(FolderError::Foreign { names });
    }
    let mut head = Vec::new();
    let read = File::open(folder.join("pattern.json"))
        .and_then(|file| file.take(HEAD).read_to_end(&mut head));
    let ours = "\"format\": \"blockwright-pattern\"";
    if read.is_ok() && String::from_utf8_lossy(&head).contains(ours) {
        Ok(())
    } else {
        Err(FolderError::NoResult)
    }
}

/// The names in a folder, in order, and whether each is a plain file.
fn entries(folder: &Path) -> Result<Vec<(String, bool)>, FolderError> {
    let read = || -> io::Result<Vec<(String, bool)>> {
        fs::read_dir(folder)?
            .map(|entry| {
                let entry = entry?;
                let name = entry.file_name().to_string_lossy().into_owned();
                Ok((name, entry.file_type()?.is_file()))
            })
            .collect()
    };
    let mut names = read().map_err(failed("list", folder))?;
    names.sort();
    Ok(names)
}

/// A few names, and how many more there are.
fn few(names: &[String]) -> String {
    const FEW: usize = 5;
    let mut text = names[..names.len().min(FEW)].join(", ");
    if names.len() > FEW {
        text.push_str(&format!(" and {} more", names.len() - FEW));
    }
    text
}
