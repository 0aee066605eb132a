//! Jobs and the files that they make.

use crate::support::bodies::repository_file as repository;
use blockwright::allowance::Allowances;
use blockwright::job::{JobFile, Outcome, Output, Outputs, RangeOutcome, run, run_range};
use blockwright::measurements::SizeTable;

/// A job: what it is called here, and its text without the body.
pub(crate) struct Case {
    pub(crate) name: &'static str,
    job: &'static str,
}

/// Several blocks, with and without allowance, darts and sleeves, altered, and uneven. The
/// letters of one title need care in a DXF file.
pub(crate) const CASES: [Case; 9] = [
    Case {
        name: "bodice and skirt",
        job: "title: First block\nblock: [bodice, skirt]\n",
    },
    Case {
        name: "bodice and skirt to cut",
        job: "title: First block\nblock: [bodice, skirt]\nallowance: usual\n",
    },
    Case {
        name: "dress, altered",
        job: "title: 'Überkleid 50%%c ^J \\P'\nblock: dress\nsleeve: long\nalterations:\n  \
              - bust: {amount: 8}\n  - dart_relocation: {dart: bust, to: shoulder, at: 0.5}\n",
    },
    Case {
        name: "dress, altered, to cut",
        job: "title: A dress\nblock: dress\nsleeve: long\nalterations:\n  \
              - hip_girth: {amount: 20}\nallowance: {default: 15, neckline: 0, hem: 40}\n",
    },
    Case {
        name: "tunic",
        job: "title: A tunic\nblock: tunic\nsleeve: short\nalterations:\n  \
              - back_length_reduction: {amount: 20, hips_checked: true}\n",
    },
    Case {
        name: "tunic to cut",
        job: "title: A tunic\nblock: tunic\nsleeve: long\nallowance: 10\n",
    },
    Case {
        name: "uneven dress",
        job: "title: One shoulder falls\nblock: dress\nsleeve: long\nalterations:\n  \
              - shoulder_slope: {degrees: 3, side: left}\n",
    },
    Case {
        name: "uneven dress to cut",
        job: "title: One shoulder falls\nblock: dress\nsleeve: short\nalterations:\n  \
              - shoulder_slope: {degrees: 3, side: left}\nallowance: usual\n",
    },
    Case {
        name: "bodice with panel seams, to cut",
        job: "title: Panels\nblock: bodice\nalterations:\n  \
              - dart_to_seam: {darts: [shoulder, waist]}\nallowance: {default: 10, hem: 30}\n",
    },
];

/// What the tests read: nothing is printed for them.
fn read_here() -> Outputs {
    [Output::Document, Output::Dxf].into_iter().collect()
}

impl Case {
    /// The job run, its pieces written as DXF.
    pub(crate) fn outcome(&self) -> Outcome {
        let text = format!("{}body: ines.yaml\ndxf: true\n", self.job);
        let set = repository("measurement-sets/ines.yaml");
        let file = JobFile::parse(&text).unwrap_or_else(|e| panic!("{}: {e}", self.name));
        let mut job = file.resolve(Some(&set)).unwrap();
        job.outputs = read_here();
        run(&job).unwrap_or_else(|e| panic!("{}: {e}", self.name))
    }
}

/// The example tunic in the sizes of the example table, with allowances if some are given.
pub(crate) fn range(allowances: Option<Allowances>) -> RangeOutcome {
    let table = SizeTable::parse(&repository("measurement-sets/workshop-range.yaml")).unwrap();
    let file = JobFile::parse_for_range(&repository("examples/jobs/linen-tunic.yaml")).unwrap();
    let mut job = file.for_table(table);
    job.outputs = read_here();
    job.recipe.allowances = allowances;
    run_range(&job).unwrap()
}

/// The text of a file of an outcome.
pub(crate) fn text(outcome: &Outcome, name: &str) -> String {
    String::from_utf8(outcome.file(name).unwrap().bytes.clone()).unwrap()
}

/// The text of a file of a range.
pub(crate) fn range_text(outcome: &RangeOutcome, name: &str) -> String {
    let file = outcome.files.iter().find(|file| file.name == name).unwrap();
    String::from_utf8(file.bytes.clone()).unwrap()
}
