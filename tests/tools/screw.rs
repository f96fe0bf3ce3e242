//! Torque and force of a screw against an exact balance of the flank, a textbook example, and what must always hold.

use super::{close, mm, mpa, newton_metres, newtons, number, rows};
use crate::checked::prove;
use crate::checked::screws::power_screw;
use proptest::prelude::*;
use seatwise::mechanics::*;
use seatwise::stock::threads::{Thread, threads};
use uom::si::angle::degree;
use uom::si::f64::Angle;
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::ratio::ratio;
use uom::si::torque::newton_meter;

#[test]
fn all_columns_of_the_exact_flank_balance_to_nine_digits() {
    assert_eq!(prove("Screws, exact balance of the flank").len(), 14 * 63);
}

#[test]
fn a_textbook_power_screw_to_its_printed_digits() {
    prove("Printed power screws");
    for row in rows("power_screws.csv") {
        let (screw, friction) = power_screw(&row);
        // The load would turn the thread by itself; only the collar holds it.
        let down = screw.lowering_torque(newtons(number(&row, "F_N")), friction).unwrap();
        assert!(down.thread.get::<newton_meter>() < 0.0 && !screw.is_self_locking(friction).unwrap());
    }
}

#[test]
fn a_frictionless_screw_would_be_the_inclined_plane() {
    let thread = ScrewThread::from(&Thread::parse("M16").unwrap());
    let screw = Screw { thread, face_diameter: None };
    let efficiency = screw.efficiency(ScrewFriction::both(1e-9)).unwrap().get::<ratio>();
    assert!((efficiency - 1.0).abs() < 1e-6, "{efficiency}");
}

#[test]
fn the_rod_bears_tension_and_twist_together() {
    let thread = ScrewThread::from(&Thread::parse("M12").unwrap());
    // As = 84.2665 mm², ds = 10.35817 mm: σ = 118.67 MPa, τ = 16·9109.025/(π·1111.36) = 41.744 MPa by hand.
    let stress = thread.rod_stress(newtons(10_000.0), newton_metres(9.109_025)).unwrap();
    close(stress.tension.get::<megapascal>(), 118.671, 1e-5, "tension");
    close(stress.torsion.get::<megapascal>(), 41.743, 1e-4, "torsion");
    close(stress.combined.get::<megapascal>(), 118.671_f64.hypot(3.0_f64.sqrt() * 41.743), 1e-4, "both");
    let check = thread.rod_check(newtons(10_000.0), newton_metres(9.109_025), mpa(580.0)).unwrap();
    close(check.share_of_proof_load, 10_000.0 / 48_874.589, 1e-6, "proof load");
    assert!(check.share_of_proof_stress > check.share_of_proof_load);
}

#[test]
fn numbers_that_make_no_screw_are_refused_in_words() {
    let thread = ScrewThread::from(&Thread::parse("M12").unwrap());
    let screw = Screw { thread, face_diameter: Some(mm(15.0)) };
    for coefficient in [0.0, 1.0, -0.1, 1.2, f64::NAN, f64::INFINITY] {
        let said = screw.torque(newtons(1e3), ScrewFriction::both(coefficient)).unwrap_err().to_string();
        assert!(said.contains("friction in the thread") && said.contains("between 0 and 1"), "{said}");
        let face = ScrewFriction { thread: 0.1, face: coefficient };
        assert!(screw.force(newton_metres(1.0), face).unwrap_err().to_string().contains("under the nut"));
    }
    let good = ScrewFriction::both(0.1);
    for force in [-1.0, f64::NAN, f64::INFINITY] {
        assert!(screw.torque(newtons(force), good).is_err() && screw.force(newton_metres(force), good).is_err());
        assert!(thread.rod_stress(newtons(force), newton_metres(1.0)).is_err());
        assert!(thread.proof_load(mpa(force)).is_err());
    }
    for broken in [
        ScrewThread { lead: mm(0.0), ..thread },
        ScrewThread { lead: mm(40.0), ..thread },
        ScrewThread { pitch_diameter: mm(f64::NAN), ..thread },
        ScrewThread { flank_angle: Angle::new::<degree>(46.0), ..thread },
        ScrewThread { flank_angle: Angle::new::<degree>(f64::NAN), ..thread },
    ] {
        assert!(Screw { thread: broken, face_diameter: None }.torque(newtons(1.0), good).is_err(), "{broken:?}");
    }
    // So steep and rough that it wedges.
    let steep = ScrewThread { lead: mm(33.0), flank_angle: Angle::new::<degree>(45.0), ..thread };
    let jammed =
        Screw { thread: steep, face_diameter: None }.torque(newtons(1.0), ScrewFriction::both(0.99)).unwrap_err();
    assert!(jammed.to_string().contains("jams with a friction of 0.99"), "{jammed}");
    let pitch = thread.pitch_diameter.get::<millimeter>();
    let sizes = format!("a lead of 33.00 mm on a pitch diameter of {pitch:.2} mm");
    assert!(jammed.to_string().contains(&sizes), "{jammed}");
    let said = nut_face_diameter(mm(10.0), mm(11.0)).unwrap_err().to_string();
    assert!(said.contains("hole under the nut 11.0000 mm"), "{said}");
}

fn any_screw() -> impl Strategy<Value = Screw> {
    let all = threads().unwrap();
    (0..all.len(), prop::option::of(1.0..3.0_f64)).prop_map(move |(i, face)| {
        let face_diameter = face.map(|times| all[i].nominal * times);
        Screw { thread: ScrewThread::from(&all[i]), face_diameter }
    })
}

proptest! {
    #[test]
    fn torque_rises_with_force_and_friction_and_force_is_its_inverse(
        screw in any_screw(), force in 1.0..1e5_f64, more in 1.001..10.0_f64, low in 0.01..0.4_f64, higher in 1.001..2.0_f64,
    ) {
        let (slippery, sticky) = (ScrewFriction::both(low), ScrewFriction::both(low * higher));
        let torque = |force: f64, friction| screw.torque(newtons(force), friction).unwrap();
        let base = torque(force, slippery).total();
        prop_assert!(torque(force * more, slippery).total() > base);
        prop_assert!(torque(force, sticky).total() > base);
        let back = screw.force(base, slippery).unwrap().get::<newton>();
        prop_assert!((back / force - 1.0).abs() < 1e-12);
        let share = screw.efficiency(slippery).unwrap().get::<ratio>();
        prop_assert!(share > 0.0 && share < 1.0 && screw.efficiency(sticky).unwrap().get::<ratio>() < share);
        // Raising always costs more than lowering, and a locked thread costs something to lower.
        let lower = screw.lowering_torque(newtons(force), slippery).unwrap();
        prop_assert!(lower.total() < base);
        prop_assert_eq!(lower.thread.get::<newton_meter>() > 0.0, screw.is_self_locking(slippery).unwrap());
    }
}
