//! The one folder whose files are read and written, under names that are fixed here.

use std::collections::BTreeMap;
use std::fs::{self, File};
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

use blockwright::job::JobFile;
use sha2::{Digest as _, Sha256};

use crate::whole_file::beside;

/// What a piece of work is kept in. A page never names a file.
const OWN: [&str; 5] = [
    "wearer.yaml",
    "made-for.yaml",
    "own-block.json",
    "own-block.svg",
    JOB,
];
const JOB: &str = "job.yaml";

/// The longest file that is read: 1 MiB, as everywhere.
const LONGEST: u64 = 1 << 20;

pub(super) struct Folder {
    path: PathBuf,
    /// The folder itself, locked so that another server notices it; let go with it.
    _held: Option<File>,
    alone: bool,
}

/// What stands in the folder.
pub(super) struct Kept {
    pub files: BTreeMap<String, String>,
    /// Changes whenever one of its own files does.
    pub digest: String,
}

/// Why nothing was written.
pub(super) enum SaveError {
    /// Somebody else wrote in the meantime.
    Changed,
    /// A name that is none of those.
    Name,
    Write(io::Error),
}

impl Folder {
    pub(super) fn open(path: &Path) -> io::Result<Self> {
        let path = path.canonicalize()?;
        fs::read_dir(&path)?;
        // On systems where a folder cannot be locked, what each has read is compared when it writes.
        let held = File::open(&path).ok();
        let alone = held
            .as_ref()
            .is_none_or(|file| !matches!(file.try_lock(), Err(fs::TryLockError::WouldBlock)));
        Ok(Self {
            path,
            _held: held,
            alone,
        })
    }

    /// The last part of its path.
    pub(super) fn name(&self) -> String {
        let name = self.path.file_name().unwrap_or(self.path.as_os_str());
        name.to_string_lossy().into_owned()
    }

    /// Whether no other server has it open.
    pub(super) fn is_alone(&self) -> bool {
        self.alone
    }

    /// A file of the folder: a plain one, no link that leads elsewhere.
    fn text(&self, name: &str) -> Option<String> {
        let path = self.path.join(name);
        let metadata = fs::symlink_metadata(&path).ok()?;
        if !metadata.is_file() || metadata.len() > LONGEST {
            return None;
        }
        let mut text = String::new();
        let file = File::open(path).ok()?;
        file.take(LONGEST + 1).read_to_string(&mut text).ok()?;
        (text.len() as u64 <= LONGEST).then_some(text)
    }

    /// Its own files, those that are there.
    fn own(&self) -> BTreeMap<String, String> {
        let own = OWN
            .iter()
            .filter_map(|name| Some(((*name).to_owned(), self.text(name)?)));
        own.collect()
    }

    /// Changes whenever one of its own files does.
    pub(super) fn digest(&self) -> String {
        digest(&self.own())
    }

    pub(super) fn read(&self) -> Kept {
        let mut files = self.own();
        let digest = digest(&files);
        // A job written by hand names its files as it likes, as long as they lie beside it.
        let job = files.get(JOB).and_then(|text| JobFile::parse(text).ok());
        let named = job
            .iter()
            .flat_map(|job| [job.body_path(), job.block_path()]);
        for name in named.flatten().filter(|name| is_plain(name)) {
            if let Some(text) = self.text(name) {
                files.entry(name.to_owned()).or_insert(text);
            }
        }
        Kept { files, digest }
    }

    /// Writes the files, each whole or not at all, if what is there is what was read; what is there then.
    pub(super) fn save(
        &self,
        files: &[(String, String)],
        read: Option<&str>,
    ) -> Result<Kept, SaveError> {
        if read.is_some_and(|read| read != self.digest()) {
            return Err(SaveError::Changed);
        }
        let mut written = Vec::new();
        for own in OWN {
            for (_, text) in files.iter().filter(|(name, _)| name == own) {
                let file = beside(&self.path, text.as_bytes()).map_err(SaveError::Write)?;
                written.push((own, file));
            }
        }
        if files.iter().any(|(name, _)| !OWN.contains(&name.as_str())) {
            return Err(SaveError::Name);
        }
        // The job last: it names the others.
        for (name, file) in written {
            let target = self.path.join(name);
            file.persist(target)
                .map_err(|error| SaveError::Write(error.error))?;
        }
        Ok(self.read())
    }
}

/// Whether a name has no way to another folder.
fn is_plain(name: &str) -> bool {
    !name.is_empty()
        && !name.starts_with('.')
        && !name.contains(['/', '\\', ':', '\0'])
        && Path::new(name).components().count() == 1
}

fn digest(files: &BTreeMap<String, String>) -> String {
    let mut hash = Sha256::new();
    for (name, text) in files {
        for part in [name, text] {
            hash.update((part.len() as u64).to_le_bytes());
            hash.update(part.as_bytes());
        }
    }
    hash.finalize()
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{Folder, SaveError, is_plain};
    use std::fs;

    fn pair(name: &str, text: &str) -> (String, String) {
        (name.to_owned(), text.to_owned())
    }

    #[test]
    fn what_somebody_else_wrote_is_not_lost() {
        let at = tempfile::tempdir().unwrap();
        let folder = Folder::open(at.path()).unwrap();
        let empty = folder.read();
        let job = [pair("job.yaml", "title: A\n")];
        let kept = folder.save(&job, Some(&empty.digest)).ok().unwrap();
        assert_eq!(kept.files["job.yaml"], "title: A\n");
        fs::write(at.path().join("job.yaml"), "title: theirs\n").unwrap();
        let refused = folder.save(&job, Some(&kept.digest)).err().unwrap();
        assert!(matches!(refused, SaveError::Changed));
        let text = fs::read_to_string(at.path().join("job.yaml")).unwrap();
        assert_eq!(text, "title: theirs\n");
        // Asked for again, in full knowledge.
        assert!(folder.save(&job, None).is_ok());
        let left: Vec<_> = fs::read_dir(at.path()).unwrap().collect();
        assert_eq!(left.len(), 1, "no file in the making is left");
    }

    #[test]
    fn nothing_outside_the_folder_is_named_or_read() {
        let at = tempfile::tempdir().unwrap();
        let inside = at.path().join("work");
        fs::create_dir(&inside).unwrap();
        fs::write(at.path().join("secret.yaml"), "name: secret\n").unwrap();
        let folder = Folder::open(&inside).unwrap();
        for name in [
            "../secret.yaml",
            "secret.yaml",
            "/etc/passwd",
            "job.yaml/..",
            "",
        ] {
            let refused = folder.save(&[pair(name, "x")], None).err().unwrap();
            assert!(matches!(refused, SaveError::Name), "{name}");
        }
        let job = "title: A\nblock: skirt\nbody: ../secret.yaml\n";
        fs::write(inside.join("job.yaml"), job).unwrap();
        assert_eq!(folder.read().files.len(), 1);
        #[cfg(unix)]
        {
            let link = inside.join("wearer.yaml");
            std::os::unix::fs::symlink(at.path().join("secret.yaml"), &link).unwrap();
            assert_eq!(folder.read().files.len(), 1, "a link is not followed");
            folder
                .save(&[pair("wearer.yaml", "mine\n")], None)
                .ok()
                .unwrap();
            let secret = fs::read_to_string(at.path().join("secret.yaml")).unwrap();
            assert_eq!(secret, "name: secret\n", "nor written through");
        }
        for name in ["../a", "a/b", "a\\b", "C:x", ".hidden", "..", ""] {
            assert!(!is_plain(name), "{name}");
        }
        assert!(is_plain("ines.yaml"));
    }

    #[cfg(target_os = "linux")]
    #[test]
    fn a_second_server_on_a_folder_is_noticed() {
        let at = tempfile::tempdir().unwrap();
        let first = Folder::open(at.path()).unwrap();
        assert!(first.is_alone());
        assert!(!Folder::open(at.path()).unwrap().is_alone());
        drop(first);
        assert!(Folder::open(at.path()).unwrap().is_alone());
    }
}
