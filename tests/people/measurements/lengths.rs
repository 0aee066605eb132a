//! Lengths and angles as they are written.

use approx::assert_relative_eq;
use blockwright::units::{Angle, Fraction, Length, LengthStyle, Unit, UnitError};

use super::known::*;

#[test]
fn inches_of_a_published_table_come_to_its_millimetres() {
    for (text, mm) in D5585_BUST {
        // The table itself rounds 1069.975 to 1070.
        assert_eq!(inches(text).round(), mm, "{text}");
        assert_eq!(inches(text), inches(&format!("{text} in")));
        assert_eq!(inches(text), inches(&text.replace(' ', "-")));
        let eighths = LengthStyle::Inches(Fraction::Eighths);
        let back = Length::from_mm(mm).unwrap().to_text(eighths);
        assert_eq!(back, format!("{text} in"));
    }
}

#[test]
fn every_way_to_write_a_length_is_read() {
    for (text, mm) in [
        ("920mm", 920.0),
        ("92 cm", 920.0),
        ("92.5cm", 925.0),
        ("92,5 cm", 925.0),
        ("0,125 in", 3.175),
        ("1.68 m", 1680.0),
        ("36 1/2 in", 927.1),
        ("36½\"", 927.1),
        ("36 ½ ″", 927.1),
        ("36½ inches", 927.1),
        ("36.5 IN", 927.1),
        ("1/2 in", 12.7),
        ("½ in", 12.7),
        ("5'4 1/2\"", 1638.3),
        ("5’4½”", 1638.3),
        ("5 ft 4 in", 1625.6),
        ("5 ft", 1524.0),
        ("5' 4", 1625.6),
        ("36½''", 927.1),
        ("  +92 cm ", 920.0),
        ("0 mm", 0.0),
    ] {
        let read = text.parse::<Length>().map(Length::mm);
        assert!(
            read.as_ref().is_ok_and(|l| (l - mm).abs() < 1e-9),
            "{text}: {read:?}"
        );
    }
}

#[test]
fn what_is_no_length_is_refused_by_its_own_error() {
    let error = |text: &str| Length::parse(text, None).expect_err(text);
    assert_eq!(error("  "), UnitError::Empty);
    for text in [
        "cm",
        "nan cm",
        "inf",
        "NaN",
        "1.2.3 cm",
        "36 1 in",
        "1 2/3 4/5 in",
        "- 4-",
    ] {
        let is_number_error = matches!(error(text), UnitError::NotANumber { .. });
        assert!(is_number_error, "{text}: {:?}", error(text));
    }
    for text in [
        "36 1/0 in",
        "36 3/2 in",
        "1/ in",
        "/2 in",
        "1/2/3 in",
        "1/99999 in",
    ] {
        let is_fraction_error = matches!(error(text), UnitError::BadFraction { .. });
        assert!(is_fraction_error, "{text}: {:?}", error(text));
    }
    for text in ["1,250 mm", "1,250,000 mm", "1.250,5 mm"] {
        let is_comma_error = matches!(error(text), UnitError::AmbiguousComma { .. });
        assert!(is_comma_error, "{text}: {:?}", error(text));
    }
    for text in ["92 ells", "1e3 mm", "5' 4 cm", "92 cm cm"] {
        let is_unit_error = matches!(error(text), UnitError::UnknownUnit { .. });
        assert!(is_unit_error, "{text}: {:?}", error(text));
    }
    assert!(matches!(error("92"), UnitError::MissingUnit { .. }));
    assert!(matches!(error("-92 cm"), UnitError::Negative { .. }));
    assert!(matches!(error("99999 m"), UnitError::TooLarge { .. }));
    let endless = "9".repeat(1000) + " mm";
    assert!(matches!(error(&endless), UnitError::TooLarge { .. }));
    assert!(error(&("x".repeat(1000))).to_string().len() < 300);
    assert_eq!(Length::from_mm(f64::NAN), Err(UnitError::NotFinite));
    assert!(Length::new(f64::INFINITY, Unit::Mm).is_err());
}

#[test]
fn angles_are_read_in_degrees_and_radians() {
    for (text, degrees) in [
        ("23", 23.0),
        ("23°", 23.0),
        ("23.5 deg", 23.5),
        ("22½°", 22.5),
        ("-3", -3.0),
        ("0.5 rad", 0.5_f64.to_degrees()),
    ] {
        let angle: Angle = text.parse().expect(text);
        assert_relative_eq!(angle.degrees(), degrees, epsilon = 1e-12);
    }
    for text in ["", "cm", "23 cm", "4000", "7 rad", "nan"] {
        assert!(text.parse::<Angle>().is_err(), "{text}");
    }
}
