//! The command `page`.

use std::path::Path;

use crate::page::{PageError, PageOptions, serve};

use super::output;
use super::problem::{Failure, Problem};

/// Serves the page until it is interrupted.
pub(super) fn page(
    folder: Option<&Path>,
    port: Option<u16>,
    open: bool,
    json: bool,
) -> Result<String, Failure> {
    let options = PageOptions {
        folder: folder.map(Path::to_path_buf),
        port: port.unwrap_or(0),
        open,
    };
    let mut printed = Ok(());
    let mut ready = |address: &str| {
        let text = if json {
            format!("{{\"status\": \"ok\", \"address\": \"{address}\"}}\n")
        } else {
            format!("{address}\nThe page is served to this machine alone. Ctrl-C ends it.\n")
        };
        printed = output::print(&text);
    };
    let served = serve(&options, &mut ready);
    printed?;
    match served {
        Ok(()) => Ok(String::new()),
        Err(error) => Err(failure(&error)),
    }
}

fn failure(error: &PageError) -> Failure {
    let code = match error {
        PageError::Folder { .. } => "folder",
        PageError::Port { .. } => "port",
        PageError::Run(_) | PageError::Token => "page",
    };
    Failure::wrong(Problem::new(code, error.to_string()))
}
