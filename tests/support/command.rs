//! A folder of one's own, and the tool run in it.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};

use tempfile::TempDir;

/// The measurements of a set that is written in place.
pub const BODY: &str = "{name: Ada, unit: cm, measurements: {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}}";

/// A job that needs no other file.
pub fn job(block: &str) -> String {
    format!("title: A block\nblock: {block}\nbody: {BODY}\n")
}

/// What a command left behind.
#[derive(Debug)]
pub struct Ran {
    pub code: i32,
    pub out: String,
    pub err: String,
}

impl Ran {
    pub fn from(output: &Output) -> Self {
        let ran = Self {
            code: output.status.code().expect("an exit code, not a signal"),
            out: String::from_utf8(output.stdout.clone()).unwrap(),
            err: String::from_utf8(output.stderr.clone()).unwrap(),
        };
        assert!(!ran.err.contains("panicked"), "{}", ran.err);
        assert!([0, 1, 2].contains(&ran.code), "{ran:?}");
        ran
    }

    /// It did what was asked and complained of nothing.
    pub fn done(self) -> String {
        assert_eq!((self.code, self.err.as_str()), (0, ""), "{}", self.out);
        self.out
    }

    /// It ended with this code and printed no report.
    pub fn failed(self, code: i32) -> String {
        assert_eq!((self.code, self.out.as_str()), (code, ""), "{}", self.err);
        self.err
    }
}

/// A folder that is gone after the test.
pub struct Place(TempDir);

impl Place {
    pub fn new() -> Self {
        Self(tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap())
    }

    pub fn with_job(text: &str) -> Self {
        let place = Self::new();
        place.write("job.yaml", text);
        place
    }

    pub fn path(&self) -> &Path {
        self.0.path()
    }

    pub fn write(&self, name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
        let path = self.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(&path, bytes).unwrap();
        path
    }

    pub fn command(&self, args: &[&str]) -> Command {
        let mut command = Command::new(env!("CARGO_BIN_EXE_blockwright"));
        command.args(args).current_dir(self.path());
        command
    }

    pub fn run(&self, args: &[&str]) -> Ran {
        Ran::from(&self.command(args).output().unwrap())
    }

    /// The names in a folder here, in order, hidden ones too but for the list of a result.
    pub fn names(&self, folder: &str) -> Vec<String> {
        let mut names: Vec<String> = std::fs::read_dir(self.path().join(folder))
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .filter(|name| name != ".blockwright-files.json")
            .collect();
        names.sort();
        names
    }
}

pub fn repository(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

pub fn skip(why: &str) {
    eprintln!("SKIPPED: {why}, this part of the test did not run");
}
