//! Moving a finished folder into place.

use std::fs::{self, File};
use std::io;
use std::path::Path;

use tempfile::TempDir;

use super::earlier::{FolderError, Found, failed, must_be_earlier_result};
use super::output;

/// Moves `new`, which stands in `temporary`, to `target`, which the user calls `shown`.
pub(super) fn place(
    (shown, target): (&Path, &Path),
    found: Found,
    new: &Path,
    temporary: TempDir,
) -> Result<(), FolderError> {
    if found != Found::Nothing {
        // As open to others as the folder it replaces.
        let metadata = fs::metadata(target).map_err(failed("look at", shown))?;
        fs::set_permissions(new, metadata.permissions())
            .map_err(failed("set the permissions of", shown))?;
    }
    let temporary = match found {
        Found::Nothing => {
            move_in(new, (shown, target))?;
            temporary
        }
        Found::Empty => {
            // Elsewhere a folder cannot be moved onto an empty one.
            if cfg!(not(unix)) {
                fs::remove_dir(target).map_err(failed("remove the empty folder", shown))?;
            }
            move_in(new, (shown, target))?;
            temporary
        }
        Found::EarlierResult => replace((shown, target), new, temporary, exchange)?,
    };
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

fn move_in(new: &Path, (shown, target): (&Path, &Path)) -> Result<(), FolderError> {
    fs::rename(new, target).map_err(failed("move the result to", shown))
}

/// Puts `new` in the place of an earlier result, which comes to lie in `temporary`: in one step
/// if the system can exchange two folders, else the old one is moved aside first.
fn replace(
    (shown, target): (&Path, &Path),
    new: &Path,
    temporary: TempDir,
    exchange: impl Fn(&Path, &Path) -> io::Result<()>,
) -> Result<TempDir, FolderError> {
    let exchanged = exchange(new, target).is_ok();
    let old = if exchanged {
        new.to_path_buf()
    } else {
        let old = temporary.path().join("old");
        fs::rename(target, &old).map_err(failed("move aside", shown))?;
        old
    };
    // Again, since something may have been put there in the meantime.
    let is_result = must_be_earlier_result(&old);
    let (done, undo): (_, &dyn Fn() -> io::Result<()>) = if exchanged {
        (is_result, &|| exchange(&old, target))
    } else {
        let moved = is_result.and_then(|()| move_in(new, (shown, target)));
        (moved, &|| fs::rename(&old, target))
    };
    if let Err(error) = done {
        if let Err(source) = undo() {
            // The temporary folder now holds the only copy: it must stay.
            let _ = temporary.keep();
            return Err(FolderError::Aside { old, source });
        }
        return Err(error);
    }
    Ok(temporary)
}

/// Exchanges two folders of one file system in one step.
#[cfg(any(target_os = "linux", target_vendor = "apple"))]
fn exchange(one: &Path, other: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    Ok(renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE)?)
}

#[cfg(not(any(target_os = "linux", target_vendor = "apple")))]
fn exchange(_: &Path, _: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}

/// Flushes a folder's list of files, where the system can.
pub(super) fn sync(folder: &Path) {
    if let Ok(folder) = File::open(folder) {
        let _ = folder.sync_all();
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    const DOCUMENT: &str = "{\n  \"format\": \"blockwright-pattern\"\n}\n";

    /// A folder with an earlier result, `out`, and a new one in a temporary folder.
    fn earlier_and_new() -> (TempDir, TempDir) {
        let around = tempfile::tempdir().unwrap();
        let temporary = tempfile::tempdir_in(around.path()).unwrap();
        for folder in [around.path().join("out"), temporary.path().join("new")] {
            fs::create_dir(&folder).unwrap();
            fs::write(folder.join("pattern.json"), DOCUMENT).unwrap();
        }
        fs::write(temporary.path().join("new/pattern.svg"), "new").unwrap();
        (around, temporary)
    }

    fn cannot(_: &Path, _: &Path) -> io::Result<()> {
        Err(io::ErrorKind::Unsupported.into())
    }

    type Exchange = fn(&Path, &Path) -> io::Result<()>;

    #[test]
    fn an_earlier_result_is_replaced_whether_or_not_folders_can_be_exchanged() {
        for way in [exchange as Exchange, cannot] {
            let (around, temporary) = earlier_and_new();
            let (target, new) = (around.path().join("out"), temporary.path().join("new"));
            let temporary = replace((&target, &target), &new, temporary, way).unwrap();
            assert_eq!(
                fs::read_to_string(target.join("pattern.svg")).unwrap(),
                "new"
            );
            let left = temporary.path().to_path_buf();
            temporary.close().unwrap();
            assert!(!left.exists() && target.join("pattern.json").exists());
        }
    }

    #[test]
    fn what_came_in_meanwhile_stays_where_it_was_put() {
        for way in [exchange as Exchange, cannot] {
            let (around, temporary) = earlier_and_new();
            let (target, new) = (around.path().join("out"), temporary.path().join("new"));
            fs::write(target.join("notes.txt"), "hem").unwrap();
            let error = replace((&target, &target), &new, temporary, way).unwrap_err();
            assert!(
                matches!(&error, FolderError::Foreign { names } if names == "notes.txt"),
                "{error}"
            );
            assert_eq!(fs::read_to_string(target.join("notes.txt")).unwrap(), "hem");
            assert!(!target.join("pattern.svg").exists());
            assert_eq!(fs::read_dir(around.path()).unwrap().count(), 1);
        }
    }

    #[test]
    fn an_old_result_that_cannot_be_put_back_is_kept_and_reported() {
        let (around, temporary) = earlier_and_new();
        let (target, new) = (around.path().join("out"), temporary.path().join("new"));
        fs::write(target.join("notes.txt"), "hem").unwrap();
        // Once, and then no more.
        let left = std::cell::Cell::new(1);
        let once = |one: &Path, other: &Path| match left.replace(0) {
            0 => cannot(one, other),
            _ => {
                let third = around.path().join("third");
                fs::rename(one, &third)?;
                fs::rename(other, one)?;
                fs::rename(third, other)
            }
        };
        let error = replace((&target, &target), &new, temporary, once).unwrap_err();
        let FolderError::Aside { old, .. } = &error else {
            unreachable!("{error}");
        };
        assert_eq!(fs::read_to_string(old.join("notes.txt")).unwrap(), "hem");
    }
}
