//! Pages of jobs.

use blockwright::job::{JobFile, Output, Outputs, run};
use std::fs;
use std::path::Path;

/// The page of a job of the repository, with parts of its text replaced.
pub(crate) fn page(job: &str, replaced: &[(&str, &str)]) -> String {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut text = fs::read_to_string(root.join(job)).unwrap();
    for (old, new) in replaced {
        assert!(text.contains(old), "{old}");
        text = text.replace(old, new);
    }
    let set = fs::read_to_string(root.join("measurement-sets/ines.yaml")).unwrap();
    let mut job = JobFile::parse(&text).unwrap().resolve(Some(&set)).unwrap();
    job.outputs = Outputs::none().with(Output::Fitting);
    let outcome = run(&job).unwrap();
    String::from_utf8(outcome.file("fitting.html").unwrap().bytes.clone()).unwrap()
}

pub(crate) const TUNIC: &str = "examples/jobs/linen-tunic.yaml";

/// Captions that an altered pattern's tables have.
pub(crate) const CAPTIONS: [&str; 6] = [
    "What changed",
    "Ways to shorten this back",
    "The sewn garment beside the body",
    "Taken, or estimated with its spread",
    "Lengths with the darts closed",
    "Darts",
];
