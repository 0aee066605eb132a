//! Names of blocks.

/// The longest name of a block: R12 takes 31 letters (value from memory).
const LONGEST: usize = 31;

/// A name for the block of a piece in a size, unlike those already taken: capitals, digits, `-`
/// and `_`, as old readers want them. The size is left out where there is only one.
pub(super) fn block_name(piece: &str, size: Option<&str>, taken: &[String]) -> String {
    let whole = match size {
        Some(size) => format!("{piece}-{size}"),
        None => piece.to_owned(),
    };
    let letters = whole.chars().map(|letter| match letter {
        '-' => '-',
        _ if letter.is_ascii_alphanumeric() => letter.to_ascii_uppercase(),
        _ => '_',
    });
    let plain: String = letters.collect();
    let mut name: String = plain.chars().take(LONGEST).collect();
    let mut count = 2;
    while name.is_empty() || taken.contains(&name) {
        let number = format!("_{count}");
        name = plain.chars().take(LONGEST - number.len()).collect();
        name.push_str(&number);
        count += 1;
    }
    name
}

#[cfg(test)]
mod tests {
    use super::block_name;

    #[test]
    fn names_are_plain_and_differ() {
        assert_eq!(block_name("bodice back", None, &[]), "BODICE_BACK");
        let first = block_name("back", Some("44/46"), &[]);
        assert_eq!(first, "BACK-44_46");
        assert_eq!(block_name("back", Some("44 46"), &[first]), "BACK-44_46_2");
        let long = "x".repeat(60);
        let first = block_name(&long, None, &[]);
        assert_eq!(first.len(), 31);
        let second = block_name(&long, None, std::slice::from_ref(&first));
        assert!(second.len() == 31 && second.ends_with("_2"));
        assert_eq!(block_name("", None, &[]), "_2");
    }
}
