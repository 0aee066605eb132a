//! What stands under the name of a folder to be written, and what may be replaced.

use std::fs::{self, File};
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

use super::output_names::is_output_name;
use thiserror::Error;

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
         has no pattern.json, range.json or lay.json of one; give another folder"
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
    pub(super) const fn code(&self) -> &'static str {
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
    let says = |name: &str, format: &str| {
        let mut head = Vec::new();
        let read =
            File::open(folder.join(name)).and_then(|file| file.take(HEAD).read_to_end(&mut head));
        read.is_ok()
            && String::from_utf8_lossy(&head).contains(&format!("\"format\": \"{format}\""))
    };
    if says("pattern.json", "blockwright-pattern")
        || says("range.json", "blockwright-range")
        || says("lay.json", "blockwright-lay")
    {
        Ok(())
    } else {
        Err(FolderError::NoResult)
    }
}

/// The names in a folder, in order, and whether each is a plain file.
pub(super) fn entries(folder: &Path) -> Result<Vec<(String, bool)>, FolderError> {
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
pub(super) fn few(names: &[String]) -> String {
    const FEW: usize = 5;
    let first: Vec<&str> = names.iter().take(FEW).map(String::as_str).collect();
    let mut text = first.join(", ");
    if names.len() > FEW {
        text.push_str(&format!(" and {} more", names.len() - FEW));
    }
    text
}
