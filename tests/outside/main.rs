//! Drafts and curves against what was published elsewhere: handbooks, tables, geometry libraries.
#![allow(missing_docs)]

#[cfg(feature = "toile")]
mod cloth;
mod handbook;
mod reference_library;
#[path = "../support/mod.rs"]
mod support;
