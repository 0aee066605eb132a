//! Tables of measured people.

use blockwright::measurements::{Body, Measurement as M};
use std::collections::HashMap;
use std::io::Write as _;
use std::path::PathBuf;

/// Writes past the capture of the test runner.
pub fn tell(text: &str) {
    let _ = writeln!(std::io::stderr(), "{text}");
}

/// A table with a header, values by column name.
pub struct Table {
    pub rows: Vec<Row>,
}

pub struct Row {
    cells: HashMap<String, String>,
}

impl Table {
    pub fn read(text: &str) -> Self {
        let mut lines = text.lines();
        let header: Vec<&str> = lines.next().unwrap_or_default().split(',').collect();
        let rows = lines
            .map(|line| Row {
                cells: header
                    .iter()
                    .map(|name| (*name).to_owned())
                    .zip(line.split(',').map(str::to_owned))
                    .collect(),
            })
            .collect();
        Self { rows }
    }
}

impl Row {
    pub fn text(&self, column: &str) -> &str {
        self.cells.get(column).map_or("", String::as_str)
    }

    /// The value of a column; not a number where there is none.
    pub fn number(&self, column: &str) -> f64 {
        self.text(column).parse().unwrap_or(f64::NAN)
    }
}

/// The table named by an environment variable or at its usual place; says loudly when there is
/// none.
pub fn table(test: &str, variable: &str, place: &str, advice: &str) -> Option<Table> {
    let path = std::env::var_os(variable).map_or_else(
        || PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(place),
        PathBuf::from,
    );
    let Ok(text) = std::fs::read_to_string(&path) else {
        tell(&format!(
            "SKIPPED: {test}: no table at {}; {advice}",
            path.display()
        ));
        return None;
    };
    Some(Table::read(&text))
}

/// The file of the survey.
pub fn survey_text() -> String {
    super::bodies::repository_file("tests/data/women.csv")
}

/// 1,104 women of the 1988 Anthropometric Survey of U.S. Army Personnel (NATICK/TR-89/044), public
/// domain; `tests/data/README.md` names the columns.
pub fn women() -> Table {
    let found = Table::read(&survey_text());
    assert_eq!(found.rows.len(), 1104, "the whole survey");
    found
}

/// Whether sweeps go over everybody: `BLOCKWRIGHT_WHOLE=1`. Without it those that take long draw a
/// sample.
pub fn whole() -> bool {
    std::env::var_os("BLOCKWRIGHT_WHOLE").is_some_and(|value| value != "0")
}

/// So many of the women, drawn by a seed in their order, and all of them for whole sweeps.
pub fn sample(count: usize, seed: u64) -> Table {
    drawn(women(), count, seed)
}

/// So many of the women whom the tables of the form were not derived from: every other one, from the
/// second.
pub fn unseen(count: usize, seed: u64) -> Table {
    let mut table = women();
    let mut seen = false;
    table.rows.retain(|_| {
        seen = !seen;
        !seen
    });
    drawn(table, count, seed)
}

fn drawn(mut table: Table, count: usize, seed: u64) -> Table {
    let (mut left, mut wanted) = (table.rows.len(), count);
    let mut dice = super::bodies::Dice::new(seed);
    // Knuth's selection sampling; The Art of Computer Programming 2, 3.4.2 S; value from memory.
    table.rows.retain(|_| {
        let chosen = whole() || dice.within(0.0, left as f64) < wanted as f64;
        left -= 1;
        wanted = wanted.saturating_sub(usize::from(chosen));
        chosen
    });
    table
}

/// The bodies of every so many of the women.
pub fn bodies(every: usize) -> Vec<Body> {
    women().rows.iter().step_by(every).map(body_of).collect()
}

/// What was taken of the woman of a row: every column that is a measurement but the armscye
/// girth, which is kept back as a check.
pub fn taken_of(row: &Row) -> Vec<(M, f64)> {
    let taken = M::ALL.into_iter().filter(|m| *m != M::ArmscyeGirth);
    let taken = taken.filter_map(|m| {
        let value = match m {
            M::ShoulderSlope => row.number("shoulder_slope_deg").to_radians(),
            _ => row.number(m.name()),
        };
        (!value.is_nan()).then_some((m, value))
    });
    taken.collect()
}

/// The body of a row, every column that is a measurement taken but the armscye girth.
pub fn body_of(row: &Row) -> Body {
    Body::from_taken(taken_of(row)).expect("a body that is possible")
}
