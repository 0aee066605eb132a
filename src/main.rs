//! The command-line tool; everything it does stands in the library.
fn main() {}
