//! Writing to standard output and standard error, of which either may be gone.

use std::io::{ErrorKind, Write as _};

use super::problem::{Failure, Problem};

/// Prints a report.
///
/// A reader that has seen enough (`| head`) is no failure.
pub(super) fn print(text: &str) -> Result<(), Failure> {
    let mut out = std::io::stdout().lock();
    let written = out
        .write_all(harmless(text).as_bytes())
        .and_then(|()| out.flush());
    match written {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            let text = format!("the report cannot be written to standard output: {error}");
            Err(Failure::wrong(Problem::new("output", text)))
        }
        _ => Ok(()),
    }
}

/// Prints a problem; nothing can be done if that fails too.
pub(super) fn complain(text: &str) {
    let text = harmless(text);
    let mut out = std::io::stderr().lock();
    let _ = writeln!(out, "{}", text.trim_end());
}

/// The text without control characters that a file may have brought in: a terminal would
/// obey them.
fn harmless(text: &str) -> String {
    text.chars()
        .map(|c| if c.is_control() && c != '\n' { ' ' } else { c })
        .collect()
}
