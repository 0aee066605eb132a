//! The guides: how to measure, draft, fit, grade, print, lay and embed, readable offline.
//!
//! Each is a file of Markdown in `src/guide`; the commands that they show run in a test.

pub mod alterations;
pub mod batch;
pub mod document;
pub mod embedding;
pub mod fit;
pub mod lay;
pub mod measuring;
pub mod own_block;
pub mod page;
pub mod range;
pub mod signs;
pub mod toile;
pub mod tunic;
