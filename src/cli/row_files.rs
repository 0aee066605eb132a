//! The files of every wearer of a batch: a folder each.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use blockwright::job::OutputFile;

use super::earlier::{FolderError, failed};
use super::folder::try_write;

/// The folder in which the folders of the rows stand.
pub(super) const FILES: &str = "files";

/// The most bytes of the name of a folder.
const LONGEST: usize = 80;

/// The folders of the rows of a batch.
#[derive(Debug)]
pub(super) struct RowFiles {
    folder: PathBuf,
    /// Names that are given away, in lower case: some systems know no other.
    taken: BTreeSet<String>,
}

impl RowFiles {
    /// Folders within one.
    pub(super) fn within(folder: &Path) -> Self {
        Self {
            folder: folder.join(FILES),
            taken: BTreeSet::new(),
        }
    }

    /// The name of the folder of a row: its id, what a file name cannot hold as `_`, and the number of
    /// the row behind it where another has the name already. To be asked in the order of the rows.
    pub(super) fn name(&mut self, id: &str, row: u64) -> String {
        let mut name = String::new();
        for letter in id.trim().chars() {
            let kept = letter.is_alphanumeric() || matches!(letter, '-' | '_' | '.' | ' ');
            let letter = if kept { letter } else { '_' };
            if name.len() + letter.len_utf8() > LONGEST {
                break;
            }
            name.push(letter);
        }
        let mut name = name.trim_matches(['.', ' ']).to_owned();
        if name.is_empty() {
            name = format!("row {row}");
        }
        while !self.taken.insert(name.to_lowercase()) {
            name = format!("{name} {row}");
        }
        name
    }

    /// Writes the files of a row into its folder, whole or not at all; what an earlier run wrote there
    /// is replaced.
    pub(super) fn write(&self, name: &str, files: &[OutputFile]) -> Result<(), FolderError> {
        if !self.folder.is_dir() {
            fs::create_dir(&self.folder).map_err(failed("make the folder", &self.folder))?;
        }
        try_write(&self.folder.join(name), files, true).map(|_| ())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_has_a_name_of_its_own_that_is_no_path() {
        let mut files = RowFiles::within(Path::new("out"));
        assert_eq!(files.name("Ines", 1), "Ines");
        assert_eq!(files.name("ines", 2), "ines 2");
        assert_eq!(files.name("../../etc", 3), "_.._etc");
        assert_eq!(files.name("..", 4), "row 4");
        assert_eq!(files.name("Марія", 5), "Марія");
        assert!(files.name(&"x".repeat(300), 6).len() <= LONGEST);
    }
}
