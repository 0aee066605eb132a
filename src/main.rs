//! The command-line tool; everything it does stands in the library, save touching files.

mod cli;

fn main() -> std::process::ExitCode {
    cli::main()
}
