//! Size tables.

use blockwright::measurements::{Measurement as M, SizeTable};

use super::known::*;

#[test]
fn a_size_table_is_read_size_by_size() {
    let table = SizeTable::parse(&set_file("en-13402-3-women.yaml")).unwrap();
    assert_eq!(table.labels().count(), 16);
    let size = table.body("116").unwrap();
    assert_eq!(size.value(M::WaistGirth), 1000.0);
    assert_eq!(size.value(M::HipGirth), 1220.0);
    assert_eq!(size.value(M::Height), 1680.0);
    let error = table.body("118").unwrap_err().to_string();
    assert!(error.contains("116"), "{error}");
}

#[test]
fn all_problems_of_a_size_table_are_reported() {
    let errors = SizeTable::parse(
        "name: A range\n\
         unit: cm\n\
         common: {height: 168}\n\
         base:\n  \
           label: '38'\n  \
           measurements: {bust_girth: 88, waist_girth: 72, hip_girth: 96}\n\
         steps:\n  \
           labels: ['36', '38', '40', '40']\n  \
           per_size: {bust_girth: 4, waist_girth: [4, 4], wrist_girth: 1, hip_girth: 95}\n",
    )
    .unwrap_err();
    let text = errors.to_string();
    for expected in [
        "2 steps given, 3 needed",
        "wrist_girth: `wrist_girth` is missing",
        "size `40` stands twice",
        "sizes.36: hip_girth 1 cm is impossible",
        "sizes.40: hip_girth",
    ] {
        assert!(text.contains(expected), "{expected} in\n{text}");
    }
    let both = SizeTable::parse("name: a\nunit: cm\nsizes: {}\nbase: {}\n").unwrap_err();
    assert!(both.to_string().contains("either `sizes:`"), "{both}");
}

#[test]
fn steps_are_added_up_from_the_base() {
    let table = SizeTable::parse(&set_file("workshop-range.yaml")).unwrap();
    let bust = |label: &str| table.body(label).unwrap().value(M::BustGirth);
    assert_eq!(
        ["smallest", "small", "middle", "large", "largest"].map(bust),
        [840.0, 890.0, 940.0, 1000.0, 1080.0]
    );
    let largest = table.body("largest").unwrap();
    assert_eq!(largest.value(M::BackWaistLength), 390.0);
    assert_eq!(largest.value(M::Height), 1690.0);
}
