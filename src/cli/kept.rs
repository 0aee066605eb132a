//! Files of an earlier result that somebody edited since: they are kept beside the new ones.
//!
//! Every folder that is written holds a hidden list of its files with their digests. A file that has
//! another digest than the list says was edited; `pattern.svg` is kept as `pattern.edited.svg`.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use blockwright::job::OutputFile;
use serde::{Deserialize, Serialize};

use super::digest::digest_of;
use super::earlier::{FolderError, entries, failed};
use super::output_names::{LIST, unedited};

/// What is in the name of a file that was edited.
const EDITED: &str = ".edited";

/// The most edited files of one name.
const MOST: usize = 999;

#[derive(Debug, Serialize, Deserialize)]
struct Files {
    format: String,
    /// Digests (SHA-256) by name.
    files: BTreeMap<String, String>,
}

/// A file that was edited, and the name under which it is kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct Kept {
    pub(super) name: String,
    pub(super) kept_as: String,
}

/// The list of some files.
pub(super) fn list(files: &[OutputFile]) -> Vec<u8> {
    let digests = files
        .iter()
        .map(|file| (file.name.clone(), digest_of(&file.bytes)));
    let list = Files {
        format: "blockwright-files".to_owned(),
        files: digests.collect(),
    };
    // Strings only: nothing that JSON cannot hold.
    serde_json::to_vec_pretty(&list).unwrap_or_default()
}

/// Copies what was edited in an earlier result into the folder of the new one, and what was kept of
/// even earlier ones.
pub(super) fn keep_edited(
    old: &Path,
    new: &Path,
    files: &[OutputFile],
) -> Result<Vec<Kept>, FolderError> {
    let list = fs::read(old.join(LIST)).ok();
    let list = list.and_then(|bytes| serde_json::from_slice::<Files>(&bytes).ok());
    let mut kept = Vec::new();
    for (name, _) in entries(old)? {
        let path = old.join(&name);
        let copy_to = |as_name: &str| {
            let to = new.join(as_name);
            fs::copy(&path, &to)
                .map_err(failed("keep", &path))
                .map(|_| ())
        };
        if unedited(&name).is_some() {
            copy_to(&name)?;
            continue;
        }
        let Some(digest) = list.as_ref().and_then(|list| list.files.get(&name)) else {
            continue;
        };
        let bytes = fs::read(&path).map_err(failed("read", &path))?;
        let same = files
            .iter()
            .any(|file| file.name == name && file.bytes == bytes);
        if digest_of(&bytes) == *digest || same {
            continue;
        }
        let kept_as = free_name(old, new, &name);
        copy_to(&kept_as)?;
        kept.push(Kept { name, kept_as });
    }
    Ok(kept)
}

/// A name for an edited file that none has yet.
fn free_name(old: &Path, new: &Path, name: &str) -> String {
    let (stem, ending) = name.rsplit_once('.').unwrap_or((name, ""));
    let numbered = |number: usize| match number {
        1 => format!("{stem}{EDITED}.{ending}"),
        _ => format!("{stem}{EDITED}-{number}.{ending}"),
    };
    let free = |name: &String| !old.join(name).exists() && !new.join(name).exists();
    (1..=MOST)
        .map(numbered)
        .find(free)
        .unwrap_or_else(|| numbered(MOST))
}
