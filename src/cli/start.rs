//! From arguments to exit code.

use std::process::ExitCode;

use clap::Parser as _;
use clap::error::ErrorKind;

use super::args::{Args, Command};
#[cfg(feature = "page")]
use super::paging;
use super::problem::{Failure, Problem};
use super::{batching, drafting, fitting, grading, laying, measuring, output, sewing, signs};

/// Runs the command line.
pub(crate) fn main() -> ExitCode {
    let args = match Args::try_parse() {
        Ok(args) => args,
        Err(error) => return usage(&error),
    };
    let done = match &args.command {
        Command::Draft {
            job,
            output,
            paper,
            dxf,
            demonstration,
            wearer,
            force,
        } => {
            let wanted = drafting::Wanted {
                wearer: wearer.clone(),
                paper: *paper,
                dxf: *dxf,
                demonstration: *demonstration,
                force: *force,
            };
            drafting::draft(job, output, &wanted, args.json)
        }
        Command::Grade {
            job,
            table,
            output,
            size,
            align,
            paper,
            dxf,
            force,
        } => {
            let wanted = grading::Wanted {
                labels: size,
                align: *align,
                paper: *paper,
                dxf: *dxf,
                force: *force,
            };
            grading::grade(job, table, output, &wanted, args.json)
        }
        Command::Fit {
            job,
            wearer,
            output,
            least,
            least_angle,
            force,
        } => {
            let wanted = fitting::Wanted {
                least: *least,
                least_degrees: *least_angle,
                output: output.clone(),
                force: *force,
                json: args.json,
            };
            fitting::fit(job, wearer, &wanted)
        }
        Command::Toile {
            job,
            wearer,
            output,
            draft,
            seating,
            weight,
            bending_length,
            force,
        } => {
            let wanted = sewing::Wanted {
                wearer: wearer.clone(),
                draft: *draft,
                seating: *seating,
                weight: *weight,
                bending_length: *bending_length,
                force: *force,
            };
            sewing::toile(job, output, &wanted, args.json)
        }
        Command::Lay {
            job,
            width,
            table,
            size,
            wearer,
            folded,
            one_way,
            gap,
            seconds,
            seed,
            rounds,
            output,
            force,
        } => {
            let wanted = laying::Wanted {
                width: *width,
                table: table.clone(),
                sizes: size.clone(),
                wearers: wearer.clone(),
                folded: *folded,
                one_way: *one_way,
                gap: *gap,
                seconds: *seconds,
                seed: *seed,
                rounds: *rounds,
                force: *force,
            };
            laying::lay(job, output, &wanted, args.json)
        }
        Command::Batch {
            job,
            people,
            output,
            fit,
            patterns,
            files,
            threads,
            force,
        } => {
            let wanted = batching::Wanted {
                fit: *fit,
                patterns: *patterns,
                files: *files,
                threads: *threads,
                force: *force,
                json: args.json,
            };
            batching::batch(job, people, output.as_deref(), &wanted)
        }
        Command::Check {
            job,
            document: true,
            wearer,
            ..
        } => drafting::document(job, wearer.clone()),
        Command::Check {
            job,
            against: Some(earlier),
            ..
        } => drafting::compare(job, earlier, args.json),
        Command::Check { job, wearer, .. } => drafting::check(job, wearer.clone(), args.json),
        #[cfg(feature = "page")]
        Command::Page {
            folder,
            no_open,
            port,
        } => paging::page(folder.as_deref(), *port, !no_open, args.json),
        Command::Signs {
            words,
            output,
            force,
        } => signs::signs(words, output.as_deref(), *force, args.json),
        Command::Measurements {
            file,
            unit,
            output: Some(output),
            paper,
            force,
            ..
        } => measuring::form(file.as_deref(), *unit, (output, *paper, *force), args.json),
        Command::Measurements {
            file: None, unit, ..
        } => measuring::catalogue(*unit, args.json),
        Command::Measurements {
            file: Some(file),
            unit,
            ..
        } => measuring::file(file, *unit, args.json),
    };
    let printed = done.and_then(|report| output::print(&report));
    match printed {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => tell(&failure, args.json),
    }
}

fn tell(failure: &Failure, json: bool) -> ExitCode {
    output::complain(&if json {
        failure.json()
    } else {
        failure.to_string()
    });
    ExitCode::from(failure.exit())
}

/// Help and version are reports; anything else is a wrong command.
fn usage(error: &clap::Error) -> ExitCode {
    let text = error.render().to_string();
    if matches!(
        error.kind(),
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion
    ) {
        return match output::print(&text) {
            Ok(()) => ExitCode::SUCCESS,
            Err(failure) => tell(&failure, false),
        };
    }
    // The arguments could not be read, so whether JSON was asked for is seen by hand.
    if std::env::args_os().any(|arg| arg == "--json") {
        let problem = Problem::new("usage", text.trim_end());
        return tell(&Failure::wrong(problem), true);
    }
    output::complain(&text);
    ExitCode::from(2)
}
