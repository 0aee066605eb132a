//! Messages in JSON, answered in JSON: everything the page asks for, whether a server answers or the
//! library itself as a WebAssembly module.
//!
//! A message is an object with `ask` and what belongs to it; [`answer`] gives an object with `status`:
//! `ok`, or `refused` (the pattern or a measurement) or `wrong` (the message or a file), and then
//! `errors`, each with `code`, `text`, `cure` and where it is known `place`, `key`, `line`, `column`.
//! Lengths are millimetres and angles degrees, but for texts, which are in the wearer's unit. No message
//! names a file: texts of files go in and come out, whoever asks reads and writes them.
//!
//! | `ask` | with | answer |
//! |---|---|---|
//! | `describe` | | measurements, blocks, ease, alterations with their settings, papers, places of allowance |
//! | `measure` | `set`, `unit`, `focus` | every measurement taken or estimated, doubts, a figure with the tape |
//! | `form` | `set`, `unit`, `paper` | a form to take measurements with, PDF |
//! | `signs` | `words`, `unit` | signs of fit with drawings, and the step of each |
//! | `draft` | `job`, `files`, `report` | pieces before and after, seams, and with `report` all that there is to say |
//! | `fit_map` | `job`, `files` | the wearer's body in the round, drawn, and the map of the pieces on it; the wearer is `wearer` of the job, or its body |
//! | `most` | `job`, `files`, `step` | how far that step can be taken both ways |
//! | `fit` | `job`, `files`, `wearer` | the steps that fit the job's block to the wearer |
//! | `output` | `job`, `files`, `what` ... | files to print, to cut by, to hand on |
//! | `read` | `text`, `name`, `files` | a job, a measurement set, a size table |
//! | `write` | `job`, `files`, `wearer`, `off` | the same as YAML files of the command |

mod answer;
mod asked;
mod described;
mod drafted;
mod fitted;
mod made_files;
mod mapped;
mod measured;
mod most;
mod opened;
mod outputs;
mod pieces;
mod problem;
mod settings;
mod shown_signs;
mod written_files;

pub use answer::{LONGEST_MESSAGE, answer};
