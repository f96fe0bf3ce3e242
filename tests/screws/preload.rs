//! Torque and preload.

use super::{mm, near, newton_metres, newtons};
use crate::checked::prove;
use proptest::prelude::*;
use seatwise::assembly::screws::{Tightening, UnitSlip, assembly_preload, unit_slip};
use seatwise::mechanics::{Screw, ScrewFriction, ScrewFrictionRange};
use seatwise::quantity::{Toward, show_torque_in_each, torque};
use seatwise::stock::threads::{Thread, threads};
use uom::si::force::newton;
use uom::si::torque::newton_meter;

fn screw(thread: &str, face_mm: f64) -> (Thread, Screw) {
    let thread = Thread::parse(thread).unwrap();
    let screw = Screw { thread: (&thread).into(), face_diameter: Some(mm(face_mm)) };
    (thread, screw)
}

fn tightening(thread: &str, face_mm: f64, low: f64, high: f64, tool: f64) -> Tightening {
    let friction = ScrewFrictionRange { low: ScrewFriction::both(low), high: ScrewFriction::both(high) };
    Tightening { screw: screw(thread, face_mm).1, friction, tool }
}

#[test]
fn preload_and_torque_are_those_of_a_printed_table_of_vdi_2230() {
    assert_eq!(prove("Cover screws, VDI 2230").len(), 2 * 81);
}

#[test]
fn torques_of_common_practice_are_echoed_in_every_unit() {
    // Common practice: an M6 cover screw at 90 in·lb, an M8 at 17.7 ft·lb; exact factors.
    for (typed, nm, shown) in [
        ("90 in·lb", 10.168_634_612, "10.2 N·m (90.0 in·lb, 7.50 ft·lb, 1.04 kgf·m)"),
        ("17.7 ft·lb", 23.997_977_685, "24.0 N·m (212 in·lb, 17.7 ft·lb, 2.45 kgf·m)"),
        ("120 in.lb", 13.558_179_483, "13.6 N·m (120 in·lb, 10.0 ft·lb, 1.38 kgf·m)"),
        ("120 ft.lb", 162.698_153_8, "163 N·m (1440 in·lb, 120 ft·lb, 16.6 kgf·m)"),
        ("2.5 kgf·m", 24.516_625, "24.5 N·m (217 in·lb, 18.1 ft·lb, 2.50 kgf·m)"),
    ] {
        let read = torque(typed).unwrap().value;
        near(read.get::<newton_meter>(), nm, 1e-9, typed);
        assert_eq!(show_torque_in_each(read, Toward::Nearest), shown);
    }
}

#[test]
fn a_factor_of_twelve_is_noticed_and_nothing_else() {
    let m8 = tightening("M8", 11.0, 0.10, 0.16, 0.06);
    let proof = newtons(580.0 * 36.6);
    let slip = |nm: f64| unit_slip(&m8, newton_metres(nm), proof).unwrap();
    let Some(UnitSlip::InchPoundsMeant(meant)) = slip(162.7) else { panic!("120 ft·lb on M8") };
    near(meant.get::<newton_meter>(), 13.558, 1e-3, "a twelfth");
    let Some(UnitSlip::FootPoundsMeant(meant)) = slip(1.7) else { panic!("15 in·lb on M8") };
    near(meant.get::<newton_meter>(), 20.4, 1e-9, "twelve times");
    for sound in [5.0, 13.6, 24.0, 30.0] {
        assert_eq!(slip(sound), None, "{sound} N·m");
    }
    // Too much in any unit is no slip of the unit.
    assert_eq!(slip(2000.0), None);
}

fn any_thread() -> impl Strategy<Value = Thread> {
    let all = threads().unwrap();
    (0..all.len()).prop_map(move |number| all[number].clone())
}

proptest! {
    #[test]
    fn torque_and_preload_round_trip_and_scatter_holds_the_middle(
        thread in any_thread(), low in 0.05..0.2, wide in 0.0..0.15, tool in 0.0..0.3, pull in 10.0..1e5,
    ) {
        let face = 1.3 * thread.nominal;
        let friction = ScrewFrictionRange { low: ScrewFriction::both(low), high: ScrewFriction::both(low + wide) };
        let tightening = Tightening { screw: Screw { thread: (&thread).into(), face_diameter: Some(face) }, friction, tool };
        let pull = newtons(pull);
        let torque = tightening.screw.torque(pull, ScrewFriction::both(low + wide / 2.0)).unwrap().total();
        let middle = tightening.preload(torque).unwrap();
        prop_assert!(((middle.middle / pull).value - 1.0).abs() < 1e-9);
        prop_assert!(middle.least <= middle.middle * 1.000_001 && middle.middle <= middle.most * 1.000_001);
        // The largest torque never gives more than it may.
        let most = tightening.preload(tightening.torque_below(pull).unwrap()).unwrap().most;
        prop_assert!(((most / pull).value - 1.0).abs() < 1e-9);
        prop_assert!(middle.tightening_factor() >= 1.0 - 1e-12);
    }

    #[test]
    fn more_friction_or_less_yield_never_permits_more_preload(
        thread in any_thread(), friction in 0.02..0.3, more in 0.0..0.2, strength in 100.0..1200.0,
    ) {
        let screw = Screw { thread: (&thread).into(), face_diameter: None };
        let at = |friction, mpa| assembly_preload(&screw, friction, super::mpa(mpa), 0.9).unwrap().get::<newton>();
        prop_assert!(at(friction + more, strength) <= at(friction, strength) * (1.0 + 1e-12));
        prop_assert!(at(friction, 0.9 * strength) < at(friction, strength));
        // Twist only takes away: never above 90 % of the yield load.
        let yield_load = thread.stress_area() * super::mpa(strength);
        prop_assert!(at(friction, strength) < 0.9 * yield_load.get::<newton>());
    }
}
