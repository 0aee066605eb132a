//! Every woman of the survey, in one batch with three alterations.
//!
//! The survey is the 1988 Anthropometric Survey of U.S. Army Personnel (NATICK/TR-89/044), which
//! is not part of this repository: `BLOCKWRIGHT_SURVEY`, or `../shared/survey/women.csv`.

use std::path::PathBuf;

use crate::company::{DRESS, batch, lines, place};

#[test]
fn every_woman_of_the_survey_has_her_line() {
    let path = std::env::var_os("BLOCKWRIGHT_SURVEY").map_or_else(
        || PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../shared/survey/women.csv"),
        PathBuf::from,
    );
    let Ok(table) = std::fs::read_to_string(&path) else {
        eprintln!("SKIPPED: the survey is not at {}", path.display());
        return;
    };
    let place = place(DRESS, &table);
    let told = batch(&place, &[]).done();
    eprintln!("{told}");
    let all = lines(&place);
    assert_eq!(all.len(), 1104);
    let ids = table.lines().skip(1).map(|l| l.split(',').next().unwrap());
    let mut made = 0;
    for (line, id) in all.iter().zip(ids) {
        assert_eq!(line["id"], id);
        if line["status"] == "ok" {
            made += 1;
            let (armscye, cap) = (&line["armscye"], &line["sleeve_cap"]);
            assert!(cap.as_f64() > armscye.as_f64() && line["reason"].is_null());
        } else {
            // A dart that a flat chest has not, and nothing else.
            let reason = line["reason"].as_str().unwrap();
            assert!(reason.starts_with("dart_relocation_refused: "), "{reason}");
        }
    }
    assert!(made > 1070, "{made} of 1104");
    assert!(told.contains(&format!(
        "1104 wearers: {made} made, {} refused",
        1104 - made
    )));
    // The survey writes the unit of the slope into its name; that is not read, and said so.
    assert!(
        told.contains("shoulder_slope_deg (did you mean shoulder_slope?)"),
        "{told}"
    );
}
