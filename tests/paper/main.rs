//! What comes out: drawings and their words, the pattern document, printed pages, exchange files,
//! the fitting page, the lay on cloth.
#![allow(missing_docs)]

mod document;
mod exchange;
mod fitting_page;
mod lay;
mod marks;
mod pictures;
mod printing;
mod same_bytes;
#[path = "../support/mod.rs"]
mod support;
mod traced;
