//! The command-line tool; everything it does stands in the library, save touching files.

#![cfg_attr(not(test), deny(clippy::disallowed_methods))]

mod cli;

fn main() -> std::process::ExitCode {
    cli::main()
}
