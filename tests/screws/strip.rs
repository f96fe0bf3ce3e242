//! Stripping of threads.

use super::{mm, mpa, near};
use crate::checked::prove;
use proptest::prelude::*;
use seatwise::assembly::screws::{ThreadPair, ThreadSizes};
use seatwise::stock::threads::{Thread, threads};
use uom::si::area::square_millimeter;
use uom::si::force::newton;
use uom::si::length::inch;

#[test]
fn shear_areas_are_those_of_a_printed_table() {
    assert_eq!(prove("Shear areas of threads").len(), 2 * 15);
}

#[test]
fn the_relation_itself_gives_the_printed_area_of_m10_to_its_last_digit() {
    // Limits of M10 6g and 6H as ISO 965-2 prints them (from memory), which the table's author used.
    let sizes =
        ThreadSizes { screw_major: mm(9.732), screw_pitch: mm(8.862), hole_pitch: mm(9.206), hole_minor: mm(8.676) };
    let pair = ThreadPair { sizes, pitch: mm(1.5), engagement: mm(10.0) };
    near(pair.hole_area().get::<square_millimeter>(), 214.77, 3e-5, "hole");
    near(pair.screw_area().get::<square_millimeter>(), 155.80, 3e-5, "screw");
}

#[test]
fn sizes_of_half_inch_coarse_are_those_of_the_unified_standard() {
    // 1/2-13 UNC-2A in 2B, ASME B1.1 (from memory): 0.4876, 0.4435, 0.4565, 0.434 in.
    let thread = Thread::parse("1/2-13 UNC").unwrap();
    let sizes = ThreadPair::least_metal(&thread, mm(12.7)).unwrap().sizes;
    for (size, wanted) in [
        (sizes.screw_major, 0.4876),
        (sizes.screw_pitch, 0.4435),
        (sizes.hole_pitch, 0.4565),
        (sizes.hole_minor, 0.434),
    ] {
        assert!((size.get::<inch>() - wanted).abs() <= 5e-4, "{} in, wanted {wanted}", size.get::<inch>());
    }
}

proptest! {
    #[test]
    fn load_goes_with_length_and_strength_and_the_hole_has_the_larger_area(
        number in 0..threads().unwrap().len(), turns in 2.0..30.0, strength in 50.0..800.0,
    ) {
        let thread = &threads().unwrap()[number];
        let pair = |turns: f64| ThreadPair::least_metal(thread, turns * thread.pitch).unwrap();
        let loads = |turns, hole| pair(turns).strip_loads(mpa(hole), mpa(500.0)).unwrap();
        let (one, two) = (loads(turns, strength), loads(2.0 * turns, strength));
        prop_assert!(((two.hole / one.hole).value - 2.0).abs() < 1e-9);
        prop_assert!(((loads(turns, 2.0 * strength).hole / one.hole).value - 2.0).abs() < 1e-9);
        prop_assert!(one.screw.get::<newton>() > 0.0 && one.least() <= one.hole);
        prop_assert!(pair(turns).hole_area() > pair(turns).screw_area());
    }
}

#[test]
fn an_engagement_of_less_than_a_turn_is_refused() {
    let thread = Thread::parse("M8").unwrap();
    let said = ThreadPair::least_metal(&thread, mm(1.0)).unwrap_err().to_string();
    super::says(&said, &["length of engagement is 1", "from 1.25 to 500 mm"]);
}
