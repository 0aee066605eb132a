//! A DXF file taken apart into group codes and values, without any library.

/// A group: code and value.
pub(crate) type Group = (u16, String);

/// An entity, block or section mark: the group with code 0 and those behind it.
#[derive(Debug)]
pub(crate) struct Record(pub(crate) Vec<Group>);

impl Record {
    pub(crate) fn kind(&self) -> &str {
        &self.0[0].1
    }

    pub(crate) fn value(&self, code: u16) -> Option<&str> {
        let found = self.0.iter().find(|(c, _)| *c == code);
        found.map(|(_, value)| value.as_str())
    }

    pub(crate) fn number(&self, code: u16) -> f64 {
        self.value(code).unwrap().parse().unwrap()
    }
}

/// The groups of a file; every code has its value.
pub(crate) fn groups(text: &str) -> Vec<Group> {
    assert!(text.is_ascii());
    let whole = text.strip_suffix("\r\n").expect("a last line with its end");
    let lines: Vec<&str> = whole.split("\r\n").collect();
    assert_eq!(lines.len() % 2, 0, "codes and values pair up");
    let pairs = lines.chunks_exact(2);
    pairs
        .map(|pair| {
            assert!(!pair[1].contains(['\r', '\n']));
            assert!(pair[1].len() <= 255, "{}", pair[1]);
            (pair[0].trim().parse().unwrap(), pair[1].to_owned())
        })
        .collect()
}

/// The records of a file.
pub(crate) fn records(text: &str) -> Vec<Record> {
    let mut records: Vec<Record> = Vec::new();
    for group in groups(text) {
        if group.0 == 0 {
            records.push(Record(vec![group]));
        } else {
            records.last_mut().expect("a 0 first").0.push(group);
        }
    }
    records
}
