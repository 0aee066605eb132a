//! Drafts sewing blocks from body measurements, proves that they can be sewn, and prints them
//! full size.
//!
//! # The way through
//!
//! 1. [`measurements`]: a [`Body`](measurements::Body) from what was taken; what is missing is
//!    estimated, with its spread.
//! 2. [`draft`]: a block for that body, closed by solving.
//! 3. [`invariants`]: the laws that a pattern can be sewn, checked by code that never saw how
//!    it was made.
//! 4. [`alterations`]: what a fitting asks for, each proved and with an account of what changed.
//!    [`signs`] leads from what a toile shows to the step that follows, [`demonstration`] shows with
//!    scissors and tape what a step does to paper.
//! 5. [`allowance`]: the line to cut along, outside the stitching line.
//! 6. [`drawing`] and [`render`]: finished positions, then SVG, PDF (feature `pdf`), JSON and
//!    DXF; a page for the fitting.
//! 7. [`grading`]: every size of a table made in that way, its increments and the nest.
//! 8. `form` and `fit_map` (feature `form`): the body in the round, and where a pattern is long or short
//!    on it; `toile` (feature `toile`): a pattern sewn on it, as a picture.
//! 9. `lay` (feature `lay`): how the pieces lie on cloth, and how much of it they need.
//! 10. [`job`]: all of that from one description, as the command-line tool does it.
//!
//! # Draft, alter, draw
//!
//! ```
//! use blockwright::alterations::{Alteration, BackLengthReduction, alter};
//! use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
//! use blockwright::drawing::{PatternLabels, pattern_sheet};
//! use blockwright::invariants::{Tolerances, is_valid};
//! use blockwright::measurements::{Body, Measurement};
//! use blockwright::render::svg;
//!
//! # fn main() -> Result<(), Box<dyn std::error::Error>> {
//! let body = Body::from_taken([
//!     (Measurement::Height, 1680.0), // millimetres
//!     (Measurement::BustGirth, 920.0),
//!     (Measurement::WaistGirth, 760.0),
//!     (Measurement::HipGirth, 1000.0),
//!     (Measurement::BackWaistLength, 402.0), // whatever is taken is used as taken
//! ])?;
//! let mut options = DraftOptions::of(Block::Dress);
//! options.sleeve = Some(SleeveLength::Long);
//! let pattern = draft(&body, &options)?;
//! assert!(is_valid(&pattern, &Tolerances::drafted()));
//!
//! // Folds lie across the small of the back: take 10 mm out there.
//! let shorter: Box<dyn Alteration> = Box::new(BackLengthReduction::by(10.0));
//! let altered = alter(&pattern, &[shorter])?; // every law and promise proved again
//! for change in &altered.accounts[0].changes {
//!     let end = |value: Option<f64>| value.map_or("nothing".into(), |mm| format!("{mm:.1}"));
//!     println!("{}: {} instead of {}", change.measure, end(change.after), end(change.before));
//! }
//!
//! let labels = PatternLabels::new("Dress block");
//! let picture = svg::render(&pattern_sheet(&altered.pattern, &labels)?);
//! assert!(picture.starts_with("<?xml"));
//! # Ok(())
//! # }
//! ```
//!
//! # Where to go on
//!
//! * Every alteration there is, by name: [`CATALOGUE`](alterations::CATALOGUE); one by name and
//!   settings: [`Request`](alterations::Request); one of your own: the trait
//!   [`Alteration`](alterations::Alteration) and the example `own_alteration`.
//! * All that the command-line tool writes, in memory: [`run`](job::run) and
//!   [`run_range`](job::run_range).
//! * What is refused is a typed error that says what was wrong, where, what was expected and what
//!   to do, as [`DraftError`](draft::DraftError) and [`Refused`](alterations::Refused) do.
//! * Every value can be sent to other threads, also a chain of alterations.
//!
//! # Guides
//!
//! [`guide`] holds what the command's users read: measuring, the job file, fitting, every alteration,
//! signs, ranges, batches, cloth, a block of one's own, embedding.
//!
//! # Features
//!
//! | feature | adds | on |
//! |---|---|---|
//! | `cli` | the command-line tool, and with it `fit`, `form`, `lay`, `pdf`, `toile` and `yaml` | yes |
//! | `fit` | `fit`: a block fitted to a wearer | by `cli` |
//! | `form` | `form`: a body in the round from measurements; `fit_map`: where a pattern is long or short on it | by `cli` |
//! | `lay` | `lay`, and `LayRun` in [`job`] | by `cli` |
//! | `least-distortion` | the method [`Hinge::LeastDistortion`](alterations::Hinge) | yes |
//! | `message` | `message`: everything by messages in JSON, as the command's page and a WebAssembly module ask; `measuring_form` | by `page` |
//! | `pdf` | `render::pdf`, and the printed files of a [`job`] | by `cli` |
//! | `schema` | JSON Schemas of documents: `job::schema`, `measurements::set_schema`, `measurements::table_schema`, `render::json::schema` | no |
//! | `toile` | `toile`: a pattern sewn on a `form` on screen | by `cli` |
//! | `yaml` | reading sets, size tables and jobs: `MeasurementSet::parse`, `SizeTable::parse`, `JobFile` | by `cli` |
//!
//! A program that only drafts, alters and draws takes `default-features = false`. Points and
//! vectors are those of [`geometry::kurbo`].
//!
//! Millimetres and radians inside, units only at the edge; y runs down the page and positive
//! angles turn clockwise. The library does no I/O and reads no clock: the same input gives the
//! same bytes.
//!
//! # Caution
//!
//! A block is drafted from numbers. Measure the test square of a print before anything else,
//! sew a toile before cutting good cloth, and leave medical garments to licensed practice.

#![cfg_attr(docsrs, feature(doc_cfg))]
#![warn(
    clippy::expect_used,
    clippy::get_unwrap,
    clippy::unimplemented,
    clippy::unreachable
)]
// Unit tests, which clippy.toml frees of the rest, may count and compare as they like.
#![cfg_attr(
    not(test),
    deny(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        clippy::disallowed_methods,
        clippy::indexing_slicing,
        clippy::integer_division
    )
)]

pub mod allowance;
pub mod alterations;
pub mod demonstration;
pub mod draft;
pub mod drawing;
pub mod explain;
#[cfg(feature = "fit")]
pub mod fit;
#[cfg(feature = "form")]
pub mod fit_map;
#[cfg(feature = "form")]
pub mod form;
pub mod geometry;
pub mod grading;
pub mod guide;
pub mod invariants;
pub mod job;
#[cfg(feature = "lay")]
pub mod lay;
pub mod measurements;
#[cfg(feature = "pdf")]
pub mod measuring_form;
#[cfg(feature = "message")]
pub mod message;
pub mod piece;
pub mod progress;
pub mod recipe;
pub mod render;
pub mod signs;
pub mod silhouette;
#[cfg(feature = "toile")]
pub mod toile;
pub mod units;
