//! Moving a finished folder into place.

use std::fs::{self, File};
use std::path::Path;

use tempfile::TempDir;

use super::earlier::{FolderError, Found, failed, must_be_earlier_result};
use super::output;

/// Moves `new`, which stands in `temporary`, to `target`.
pub(super) fn place(
    target: &Path,
    found: Found,
    new: &Path,
    temporary: TempDir,
) -> Result<(), FolderError> {
    let move_in = || fs::rename(new, target).map_err(failed("move the result to", target));
    if found != Found::Nothing {
        // As open to others as the folder it replaces.
        let metadata = fs::metadata(target).map_err(failed("look at", target))?;
        fs::set_permissions(new, metadata.permissions())
            .map_err(failed("set the permissions of", new))?;
    }
    match found {
        Found::Nothing => move_in()?,
        Found::Empty => {
            // Elsewhere a folder cannot be moved onto an empty one.
            if cfg!(not(unix)) {
                fs::remove_dir(target).map_err(failed("remove the empty folder", target))?;
            }
            move_in()?;
        }
        Found::EarlierResult => {
            let old = temporary.path().join("old");
            fs::rename(target, &old).map_err(failed("move aside", target))?;
            // Again, since something may have been put there in the meantime.
            let moved = must_be_earlier_result(&old).and_then(|()| move_in());
            if let Err(error) = moved {
                if let Err(source) = fs::rename(&old, target) {
                    // The temporary folder now holds the only copy: it must stay.
                    let old = temporary.keep().join("old");
                    return Err(FolderError::Aside { old, source });
                }
                return Err(error);
            }
        }
    }
    if let Some(parent) = target.parent() {
        sync(parent);
    }
    let left = temporary.path().to_path_buf();
    if let Err(error) = temporary.close() {
        output::complain(&format!(
            "note: the result is complete; {} could not be removed: {error}",
            left.display()
        ));
    }
    Ok(())
}

/// Flushes a folder's list of files, where the system can.
pub(super) fn sync(folder: &Path) {
    if let Ok(folder) = File::open(folder) {
        let _ = folder.sync_all();
    }
}
