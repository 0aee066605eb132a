//! Writing a folder whole or not at all.
//!
//! Everything is written into a temporary folder beside the one wanted
//! (`.blockwright-…`), flushed to the disk, and moved into place in one step. Whenever the
//! command is killed, what stands under the wanted name is whole; an interrupted run can leave
//! the temporary folder behind. An earlier result is exchanged for the new one in one step too.
//! Where the system cannot exchange folders that takes two, moving the old folder aside and the
//! new one in: killed between the two, the old one stands in the temporary folder as `old`.
//!
//! The folder around the wanted one is never made: a slip in a long path would grow a tree.

use std::fs::{self, File};
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use blockwright::job::OutputFile;

use super::earlier::{FolderError, Found, entries, failed, few, must_be_earlier_result};
use super::kept::{Kept, keep_edited, list};
use super::output_names::LIST;
use super::problem::{Failure, Problem};
use super::swap;

/// Writes the files into a folder, which must be new or empty, or with `force` may hold an
/// earlier result and nothing else; which of its files were edited and are kept.
pub(super) fn write(
    folder: &Path,
    files: &[OutputFile],
    force: bool,
) -> Result<Vec<Kept>, Failure> {
    try_write(folder, files, force).map_err(|error| {
        let problem = Problem::new(error.code(), error.to_string());
        Failure::wrong(problem.in_file(folder.display().to_string()))
    })
}

/// The same, with what went wrong.
pub(super) fn try_write(
    folder: &Path,
    files: &[OutputFile],
    force: bool,
) -> Result<Vec<Kept>, FolderError> {
    let (target, found) = look(folder, force)?;
    let parent = target.parent().ok_or(FolderError::NoName)?;
    let temporary = tempfile::Builder::new()
        .prefix(".blockwright-")
        .tempdir_in(parent)
        .map_err(failed("make a folder in", parent))?;
    // Inside, since a temporary folder is closed to others and the result is not.
    let new = temporary.path().join("new");
    fs::create_dir(&new).map_err(failed("make the folder", folder))?;
    for file in files {
        write_file(&new.join(&file.name), &file.bytes)
            .map_err(failed("write", &folder.join(&file.name)))?;
    }
    let listed = new.join(LIST);
    write_file(&listed, &list(files)).map_err(failed("write", &folder.join(LIST)))?;
    let kept = match found {
        Found::EarlierResult => keep_edited(&target, &new, files)?,
        Found::Nothing | Found::Empty => Vec::new(),
    };
    swap::sync(&new);
    swap::place((folder, &target), found, &new, temporary)?;
    Ok(kept)
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
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            return Ok((new_folder(folder)?, Found::Nothing));
        }
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
        let names = names.into_iter().map(|(name, _)| name);
        let names = few(&names.filter(|name| name != LIST).collect::<Vec<_>>());
        return Err(FolderError::NotEmpty { names });
    }
    must_be_earlier_result(&named)?;
    Ok((named, Found::EarlierResult))
}

/// The path of a folder that is not there yet; the one around it must be.
pub(super) fn new_folder(folder: &Path) -> Result<PathBuf, FolderError> {
    let name = folder.file_name().ok_or(FolderError::NoName)?;
    let parent = match folder.parent() {
        Some(parent) if parent != Path::new("") => parent,
        _ => Path::new("."),
    };
    if !parent.is_dir() {
        let parent = parent.to_path_buf();
        return Err(FolderError::NoParent { parent });
    }
    Ok(parent.join(name))
}
