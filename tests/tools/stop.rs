//! The torque that takes a part home, and the one that must not be exceeded.

use super::{close, mm, mpa, newtons};
use proptest::prelude::*;
use seatwise::mechanics::*;
use seatwise::stock::threads::Thread;
use uom::si::force::newton;
use uom::si::torque::newton_meter;

fn m12() -> Screw {
    Screw { thread: ScrewThread::from(&Thread::parse("M12").unwrap()), face_diameter: Some(mm(15.75)) }
}

fn range(low: f64, high: f64) -> ScrewFrictionRange {
    ScrewFrictionRange { low: ScrewFriction::both(low), high: ScrewFriction::both(high) }
}

#[test]
fn running_counts_with_high_friction_and_the_limit_with_low() {
    // Reference rows M12: 10 kN take 16.98403 N·m at 0.10 and 31.25860 N·m at 0.20.
    let stop = StopTorque::of(&m12(), &range(0.1, 0.2), newtons(10_000.0), newtons(20_000.0)).unwrap();
    close(stop.running_low.get::<newton_meter>(), 16.984_025_139_3, 1e-9, "low");
    close(stop.running_high.get::<newton_meter>(), 31.258_597_497_1, 1e-9, "high");
    close(stop.limit.get::<newton_meter>(), 2.0 * 16.984_025_139_3, 1e-9, "limit");
    close(stop.margin().unwrap(), 2.0 * 16.984_025_139_3 / 31.258_597_497_1, 1e-9, "margin");
    assert!(!stop.crosses());
}

#[test]
fn a_wall_that_bears_more_than_the_part_needs_may_still_break() {
    // 15 kN of wall for 10 kN of part looks safe, but the friction range eats it.
    let stop = StopTorque::of(&m12(), &range(0.1, 0.2), newtons(10_000.0), newtons(15_000.0)).unwrap();
    assert!(stop.crosses() && stop.margin().unwrap() < 1.0);
    let well_known = StopTorque::of(&m12(), &range(0.14, 0.16), newtons(10_000.0), newtons(15_000.0)).unwrap();
    assert!(!well_known.crosses());
}

#[test]
fn the_wall_of_a_real_seat_sets_the_limit() {
    let wall =
        Wall { edge: mm(62.0), hole: Some(mm(40.0)), thickness: mm(5.0), elastic_modulus: mpa(70e3), poisson: 0.33 };
    let zone = LoadZone { inside: mm(52.0), outside: mm(62.0) };
    let allowed = wall.allowable_force(&zone, &Strength::brittle(mpa(120.0)), Edge::Fixed).unwrap();
    // Reference C03: 10 kN give 29.81624 MPa at the root.
    close(allowed.force.get::<newton>(), 1e4 * 120.0 / 29.816_24, 1e-6, "force");
    assert_eq!(allowed.place, WallPlace::Root);
    let stop = StopTorque::of(&m12(), &range(0.1, 0.2), newtons(4_000.0), allowed.force).unwrap();
    assert!(!stop.crosses());
}

#[test]
fn nothing_needed_has_no_margin_and_nothing_allowed_is_refused() {
    let none = StopTorque::of(&m12(), &range(0.1, 0.2), newtons(0.0), newtons(1.0)).unwrap();
    assert_eq!((none.margin(), none.crosses()), (None, false));
    for allowed in [0.0, -1.0, f64::NAN] {
        assert!(StopTorque::of(&m12(), &range(0.1, 0.2), newtons(1.0), newtons(allowed)).is_err());
    }
    let said = StopTorque::of(&m12(), &range(0.2, 0.1), newtons(1.0), newtons(1.0)).unwrap_err().to_string();
    assert!(said.contains("lowest friction in the thread is 0.2"), "{said}");
}

proptest! {
    #[test]
    fn at_the_limit_no_friction_of_the_range_overloads_the_wall(
        low in 0.02..0.3_f64, wider in 1.0..3.0_f64, within in 0.0..1.0_f64, allowed in 10.0..1e5_f64,
    ) {
        let (screw, friction) = (m12(), range(low, low * wider));
        let stop = StopTorque::of(&screw, &friction, newtons(1.0), newtons(allowed)).unwrap();
        let some = ScrewFriction::both(low + within * low * (wider - 1.0));
        let force = screw.force(stop.limit, some).unwrap().get::<newton>();
        prop_assert!(force <= allowed * (1.0 + 1e-12));
    }
}
