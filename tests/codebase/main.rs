//! What the source itself must be: floors, the public interface, guides that stay true.
#![allow(missing_docs)]

mod api;
mod architecture;
mod guides;
