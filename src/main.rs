//! The command-line tool; everything it does stands in the library, save touching files.

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

mod cli;
#[cfg(feature = "page")]
mod page;
mod whole_file;

fn main() -> std::process::ExitCode {
    cli::main()
}
