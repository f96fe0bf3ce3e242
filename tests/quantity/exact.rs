//! Sizes and deviations arrive as whole nanometres.

use proptest::prelude::*;
use seatwise::quantity as q;
use seatwise::quantity::Nanometres;

proptest! {
    #[test]
    fn five_decimals_of_an_inch_are_whole_nanometres(count in 0_i64..12_401_574) {
        let text = format!("{}.{:05} in", count / 100_000, count % 100_000);
        prop_assert_eq!(Nanometres::from_length(q::length(&text).unwrap().value), Nanometres(count * 254));
    }

    #[test]
    fn limits_in_tenths_of_a_micrometre_are_exact(a in -9999_i64..9999, b in -9999_i64..9999) {
        let one = |tenths: i64| format!("{}{}.{}", if tenths < 0 { '-' } else { '+' }, tenths.abs() / 10, tenths.abs() % 10);
        let got = q::limits(&format!("{}/{} um", one(a), one(b))).unwrap().value;
        prop_assert_eq!((got.lower.0, got.upper.0), (a.min(b) * 100, a.max(b) * 100));
    }
}

/// Every size to 130 mm, then every 101st to the end of ISO 286-1 (3150 mm);
/// the rest agrees too, but takes half a minute.
fn counts(all_to: i64, end: i64) -> impl Iterator<Item = i64> {
    (0..=all_to).chain((all_to..=end).step_by(101))
}

#[test]
fn every_thousandth_of_a_millimetre_is_exact() {
    for count in counts(130_000, 3_150_000) {
        let text = format!("{}.{:03} mm", count / 1000, count % 1000);
        let got = Nanometres::from_length(q::length(&text).unwrap().value);
        assert_eq!(got, Nanometres(count * 1000), "{text}");
    }
}

#[test]
fn every_ten_thousandth_of_an_inch_is_exact() {
    for count in counts(51_181, 1_240_157) {
        let text = format!("{}.{:04} in", count / 10_000, count % 10_000);
        let got = Nanometres::from_length(q::length(&text).unwrap().value);
        assert_eq!(got, Nanometres(count * 2540), "{text}");
    }
}
