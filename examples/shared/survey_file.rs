//! The file of a survey, and what a program that derives a table from it does besides.

use std::collections::BTreeMap;
use std::process::ExitCode;

/// Reads the file that is the first argument and prints what is made of its text.
pub fn print_table(program: &str, table: impl Fn(&str) -> Result<String, String>) -> ExitCode {
    let Some(path) = std::env::args_os().nth(1) else {
        eprintln!("usage: {program} women.csv");
        return ExitCode::from(2);
    };
    let made = std::fs::read_to_string(&path)
        .map_err(|error| error.to_string())
        .and_then(|text| table(&text));
    match made {
        Ok(table) => {
            print!("{table}");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("{}: {error}", path.display());
            ExitCode::FAILURE
        }
    }
}

/// The columns of a comma-separated table of numbers; `id` is left out.
///
/// # Errors
///
/// A text that says which line is wrong.
pub fn columns(text: &str) -> Result<BTreeMap<String, Vec<f64>>, String> {
    let mut lines = text.lines();
    let header = lines.next().ok_or("the file is empty")?;
    let names: Vec<&str> = header.split(',').collect();
    let mut columns: BTreeMap<String, Vec<f64>> = BTreeMap::new();
    for (number, line) in lines.enumerate().filter(|(_, line)| !line.is_empty()) {
        let cells: Vec<&str> = line.split(',').collect();
        if cells.len() != names.len() {
            return Err(format!("line {}: {} cells", number + 2, cells.len()));
        }
        for (name, cell) in names.iter().zip(cells).filter(|(name, _)| **name != "id") {
            let value: f64 = cell
                .parse()
                .map_err(|_| format!("line {}: `{cell}` is not a number", number + 2))?;
            columns.entry((*name).to_owned()).or_default().push(value);
        }
    }
    Ok(columns)
}

/// `back_width` as the name of its variant, `BackWidth`.
pub fn variant(name: &str) -> String {
    name.split('_')
        .map(|word| word[..1].to_uppercase() + &word[1..])
        .collect()
}
