//! Presses give pressure times area, and a hammer gets no number.

use super::{close, mm, mpa, newton_metres, newtons};
use seatwise::mechanics::*;
use seatwise::stock::threads::Thread;
use uom::si::force::newton;
use uom::si::pressure::{bar, megapascal};

#[test]
fn a_ram_gives_pressure_times_area() {
    // 50 mm ram: 1963.495 mm²; at 100 bar 19.635 kN.
    let force = hydraulic_force(mm(50.0), mpa(10.0)).unwrap();
    close(force.get::<newton>(), 19_634.954, 1e-7, "force");
    close(hydraulic_pressure(mm(50.0), force).unwrap().get::<bar>(), 100.0, 1e-12, "pressure");
    let press = Means::Hydraulic { ram: mm(50.0), most_pressure: mpa(10.0) };
    let reach = press.check(newtons(9_817.477)).unwrap();
    let Reach::Known { share, .. } = reach else { panic!("{reach:?}") };
    close(share, 0.5, 1e-7, "share");
    assert_eq!((reach.reaches(), press.caution()), (Some(true), None));
}

#[test]
fn a_rated_press_reaches_up_to_its_capacity_and_not_beyond() {
    let press = Means::Arbor { capacity: newtons(10_000.0) };
    for (force, reaches) in [(0.0, true), (10_000.0, true), (10_001.0, false)] {
        assert_eq!(press.check(newtons(force)).unwrap().reaches(), Some(reaches), "{force}");
    }
}

#[test]
fn a_screw_counts_with_its_highest_friction() {
    let screw = Screw { thread: ScrewThread::from(&Thread::parse("M12").unwrap()), face_diameter: Some(mm(15.75)) };
    let friction = ScrewFrictionRange { low: ScrewFriction::both(0.1), high: ScrewFriction::both(0.2) };
    let jig = Means::Screw { screw, friction, most_torque: newton_metres(31.258_597_497_1) };
    // The reference row M12, 0.20: 31.2586 N·m give 10 kN; with 0.10 they would give 18.4 kN.
    close(jig.available().unwrap().unwrap().get::<newton>(), 10_000.0, 1e-9, "force");
    assert_eq!(jig.check(newtons(12_000.0)).unwrap().reaches(), Some(false));
    let upside_down = ScrewFrictionRange { low: friction.high, high: friction.low };
    let said = Means::Screw { screw, friction: upside_down, most_torque: newton_metres(10.0) }.available().unwrap_err();
    assert!(said.to_string().contains("lowest friction"), "{said}");
}

#[test]
fn a_hammer_gets_a_caution_and_no_number() {
    let hammer = Means::HammerAndSleeve;
    let reach = hammer.check(newtons(1.0)).unwrap();
    assert_eq!((reach, reach.reaches(), hammer.available().unwrap()), (Reach::Unknown, None, None));
    assert!(hammer.caution().unwrap().contains("rolling elements"));
    assert!(hammer.check(newtons(f64::NAN)).is_err());
}

#[test]
fn presses_without_size_or_force_are_refused() {
    for bad in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(hydraulic_pressure(mm(bad), newtons(1.0)).is_err());
        assert!(Means::Arbor { capacity: newtons(bad) }.check(newtons(1.0)).is_err());
        assert!(Means::Hydraulic { ram: mm(50.0), most_pressure: mpa(bad) }.check(newtons(1.0)).is_err());
    }
    assert!(hydraulic_force(mm(50.0), mpa(-1.0)).is_err());
}

#[test]
fn force_over_the_static_rating_is_a_plain_share() {
    close(share_of_static_rating(newtons(5_600.0), newtons(11_200.0)).unwrap(), 0.5, 1e-15, "share");
    let said = share_of_static_rating(newtons(1.0), newtons(0.0)).unwrap_err().to_string();
    assert!(said.contains("static load rating C0"), "{said}");
    assert!(STATIC_RATING_CAUTION.contains("raceways"));
}

#[test]
fn the_pressure_on_a_shoulder_is_force_over_ring_face() {
    // π/4 (62² - 52²) = 895.354 mm²
    let zone = LoadZone { inside: mm(52.0), outside: mm(62.0) };
    close(zone.face_pressure(newtons(10_000.0)).unwrap().get::<megapascal>(), 11.168_76, 1e-6, "pressure");
}
