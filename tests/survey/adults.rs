//! 507 adults, drafted from height, three girths, two arm girths and estimates.
//!
//! Heinz, Peterson, Johnson & Kerk 2003, "Exploring Relationships in Body Dimensions", Journal
//! of Statistics Education 11(2). Physically active people, 247 of them men: bodies that the
//! rules were not made for and must meet all the same. `.ci/bdims` makes the table.

use super::tally::{FITS, Garment, Tally};
use crate::support::survey::{Row, Table, body_of, table, tell};
use blockwright::draft::Fit;
use blockwright::measurements::Body;

/// At least so many of the women, and of the men, must come to a pattern.
const LEAST_DRAFTED: [(&str, f64); 2] = [("woman", 0.99), ("man", 0.99)];

fn adults(test: &str) -> Option<Table> {
    let found = table(
        test,
        "BLOCKWRIGHT_BDIMS",
        "target/bdims.csv",
        "make it with .ci/bdims or set BLOCKWRIGHT_BDIMS",
    )?;
    assert_eq!(found.rows.len(), 507, "all adults");
    Some(found)
}

#[test]
fn every_block_for_each_adult() {
    let Some(table) = adults("blocks for 507 adults") else {
        return;
    };
    let mut faults = Vec::new();
    for (sex, least) in LEAST_DRAFTED {
        let rows: Vec<&Row> = table.rows.iter().filter(|r| r.text("sex") == sex).collect();
        let bodies: Vec<(&str, Body)> = rows.iter().map(|r| (r.text("id"), body_of(r))).collect();
        for garment in Garment::all() {
            // Sleeves bring the whole draft with them: without, one fit will do.
            let one = [Fit::Regular];
            let fits = if garment.sleeved { &FITS[..] } else { &one[..] };
            for &fit in fits {
                let people = bodies.iter().map(|(who, body)| (*who, body));
                let tally = Tally::of(garment, fit, people);
                let what = format!("{sex}, {}, {}", garment.name(), fit.name());
                tell(&tally.report(&what));
                if tally.share_drafted() < least {
                    faults.push(format!("{what}: {} drafted", tally.drafted));
                }
                faults.extend(tally.laws_broken().iter().map(|l| format!("{what}: {l}")));
                faults.extend(
                    tally
                        .panicked
                        .iter()
                        .map(|p| format!("{what}: {p} panicked")),
                );
            }
        }
    }
    assert!(faults.is_empty(), "\n  {}\n", faults.join("\n  "));
}
