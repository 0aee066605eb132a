//! Millimetres in a message for somebody who measures in another unit.

/// The first length in millimetres of a text for somebody who measures in another unit, with what
/// stands before it. What stands between backquotes is what a user wrote.
pub fn wrong_unit(text: &str, unit: &str) -> Option<String> {
    if unit == "mm" {
        return None;
    }
    text.split('`').step_by(2).find_map(|part| {
        let mut found = part.match_indices(" mm");
        // Of a number or a place, not of a word.
        let whole = |at: usize| {
            part[..at].ends_with(|c: char| c.is_ascii_digit() || c == ')')
                && !part[at + 3..].starts_with(|c: char| c.is_alphabetic())
        };
        let (at, _) = found.find(|(at, _)| whole(*at))?;
        let before: Vec<char> = part[..at].chars().rev().take(70).collect();
        Some(before.into_iter().rev().collect::<String>() + " mm")
    })
}

#[test]
fn what_is_said_in_another_unit_is_found() {
    let reply = "at most 47.3 mm";
    assert!(wrong_unit(reply, "in").is_some() && wrong_unit(reply, "cm").is_some());
    assert_eq!(wrong_unit(reply, "mm"), None);
    assert!(wrong_unit("they enclose 12 mm²", "in").is_some());
    assert_eq!(
        wrong_unit("`40 mm` is no angle; at most 1 7/8 in", "in"),
        None
    );
    assert_eq!(wrong_unit("2 mmore", "in"), None);
    assert_eq!(wrong_unit("was it meant in mm?", "in"), None);
    assert!(wrong_unit("it crosses itself at (12, 40) mm", "in").is_some());
    // A refusal that nobody turned into inches.
    let error = blockwright::lay::Cloth::new(25.4).unwrap_err();
    assert!(wrong_unit(&error.to_string(), "in").is_some());
    let error = blockwright::job::JobError::from(error);
    let said = error.in_unit(blockwright::units::Unit::In);
    assert_eq!(wrong_unit(&said.cause, "in"), None);
}
