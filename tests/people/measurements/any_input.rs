//! Any input at all.

use blockwright::measurements::{Body, Measurement as M, MeasurementSet, SizeTable};
use blockwright::units::{Angle, Fraction, Length, LengthStyle, Unit};
use proptest::prelude::*;

/// The same cases on every run.
fn fixed(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        rng_algorithm: prop::test_runner::RngAlgorithm::ChaCha,
        rng_seed: prop::test_runner::RngSeed::Fixed(0x5e_0d),
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

proptest! {
    #![proptest_config(fixed(2000))]

    #[test]
    fn no_text_breaks_the_readers(text in "\\PC{0,40}") {
        let _ = text.parse::<Angle>();
        let _ = text.parse::<M>();
        let _ = Length::parse(&text, Some(Unit::Cm));
        if let Ok(length) = Length::parse_signed(&text, Some(Unit::In)) {
            prop_assert!(length.mm().is_finite());
        }
    }

    #[test]
    fn no_near_miss_breaks_the_readers(text in "[-+0-9 .,/'\"½mcinft°]{0,16}") {
        let _ = text.parse::<Angle>();
        if let Ok(length) = Length::parse(&text, Some(Unit::In)) {
            prop_assert!(length.mm() >= 0.0 && length.mm().is_finite());
        }
    }

    #[test]
    fn a_length_is_read_back_as_written(mm in -99_999.0..99_999.0_f64, places in 0..6_u8) {
        let length = Length::from_mm(mm).unwrap();
        for unit in Unit::ALL {
            let text = length.to_text(LengthStyle::Decimal { unit, places });
            let back = Length::parse_signed(&text, None).unwrap();
            let half_a_step = unit.to_mm(0.5 * 0.1_f64.powi(i32::from(places)));
            prop_assert!((back.mm() - mm).abs() <= half_a_step + 1e-9, "{}", text);
        }
        for fraction in [Fraction::Eighths, Fraction::Sixteenths] {
            let style = LengthStyle::Inches(fraction);
            let back = Length::parse_signed(&length.to_text(style), None).unwrap();
            let half_a_step = 12.7 / f64::from(fraction.parts());
            prop_assert!((back.mm() - mm).abs() <= half_a_step + 1e-9);
            prop_assert_eq!(back.to_text(style), length.to_text(style));
        }
    }

    #[test]
    fn any_four_numbers_make_a_body_or_an_error(
        four in prop::array::uniform4(prop_oneof![
            any::<f64>(),
            400.0..2200.0_f64,
            400.0..2200.0_f64,
            400.0..2200.0_f64,
        ]),
        extra in 0..24_usize,
        value in prop_oneof![any::<f64>(), 0.0..1000.0_f64, 0.0..0.9_f64],
    ) {
        let taken = M::REQUIRED.into_iter().zip(four).chain([(M::ALL[extra], value)]);
        if let Ok(body) = Body::from_taken(taken) {
            for (measurement, measured) in body.iter() {
                prop_assert!(measurement.range().contains(measured.value));
            }
            prop_assert!(!serde_json::to_string(&body).unwrap().contains("null"));
        }
    }
}

proptest! {
    #![proptest_config(fixed(500))]

    #[test]
    fn no_file_breaks_the_readers(
        lines in prop::collection::vec("( {0,4})(name|unit|measurements|sizes|base|steps|labels|per_size|bust_girth|height|\\PC{0,8})(: |:|- )(\\PC{0,8}|cm|92|\\[1, 2\\]|\\{a: 1\\})", 0..10),
    ) {
        let text = lines.join("\n");
        let _ = MeasurementSet::parse(&text);
        let _ = SizeTable::parse(&text);
    }
}
