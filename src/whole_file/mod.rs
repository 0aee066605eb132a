//! Files that are written whole or not at all.

mod beside;

pub(crate) use beside::beside;
