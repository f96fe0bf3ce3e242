//! Screws: torque and force, preloads, shear areas.

use super::mechanics_units::{mm, mpa};
use super::reference_rows::{Row, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::assembly::screws::{ThreadPair, assembly_preload};
use seatwise::mechanics::*;
use seatwise::quantity::{Force, Torque};
use seatwise::stock::threads::{Thread, strength_class};
use uom::si::angle::degree;
use uom::si::area::square_millimeter;
use uom::si::f64::Angle;
use uom::si::force::{kilonewton, newton};
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::ratio::ratio;
use uom::si::torque::newton_meter;

pub const SETS: &[Set] = &[
    Set {
        family: "Pushing home",
        title: "Screws, exact balance of the flank",
        allowed: "1e-9 of the value",
        checks: flank_balance,
    },
    Set {
        family: "Pushing home",
        title: "Printed power screws",
        allowed: "half a unit of the last printed digit",
        checks: power_screws,
    },
    Set {
        family: "Assembly",
        title: "Cover screws, VDI 2230",
        allowed: "half a unit of the last printed digit and 0.2 % of the preload, 0.8 % of the torque: the flank is \
                  balanced exactly here, the guideline adds lead and friction angle",
        checks: preloads,
    },
    Set {
        family: "Assembly",
        title: "Shear areas of threads",
        allowed: "1 % of the hole's area and 1.2 % of the screw's: the tables of ISO 965-1 round the formulas used here",
        checks: shear_areas,
    },
];

/// The screw of a row with its nut face.
pub fn screw_of(row: &Row) -> Screw {
    let thread = ScrewThread::from(&Thread::parse(&row["thread"]).unwrap());
    let face = nut_face_diameter(mm(number(row, "nut_af_mm")), mm(number(row, "hole_mm"))).unwrap();
    Screw { thread, face_diameter: Some(face) }
}

fn flank_balance() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/screw_jig.csv");
    for row in read("mechanics/screw_jig.csv") {
        let get = |column: &str| number(&row, column);
        let (friction, force) = (ScrewFriction { thread: get("mu_thread"), face: get("mu_face") }, get("F_N"));
        sheet.row(format!("{}, friction {} and {}", row["thread"], row["mu_thread"], row["mu_face"]));
        let mut same = |column: &str, computed: f64| sheet.column(&row, column, computed, [1e-9, 0.0]);
        let thread = Thread::parse(&row["thread"]).unwrap();
        same("d2_mm", thread.pitch_diameter().get::<millimeter>());
        same("d1_mm", thread.minor_diameter().get::<millimeter>());
        same("d3_mm", thread.root_diameter().get::<millimeter>());
        same("P_mm", thread.pitch.get::<millimeter>());
        same("As_mm2", thread.stress_area().get::<square_millimeter>());
        let (screw, force) = (screw_of(&row), Force::new::<newton>(force));
        same("Dm_face_mm", screw.face_diameter.unwrap().get::<millimeter>());
        let torque = screw.torque(force, friction).unwrap();
        same("T_thread_Nm", torque.thread.get::<newton_meter>());
        same("T_face_Nm", torque.face.get::<newton_meter>());
        same("T_total_Nm", torque.total().get::<newton_meter>());
        let lower = screw.lowering_torque(force, friction).unwrap();
        same("T_lower_thread_Nm", lower.thread.get::<newton_meter>());
        let bare = Screw { face_diameter: None, ..screw };
        same("efficiency_thread", bare.efficiency(friction).unwrap().get::<ratio>());
        let ten = Torque::new::<newton_meter>(10.0);
        same("F_from_10Nm_total_N", screw.force(ten, friction).unwrap().get::<newton>());
        same("proof_8_8_N", screw.thread.proof_load(mpa(get("Sp_8_8_MPa"))).unwrap().get::<newton>());
        same("proof_10_9_N", screw.thread.proof_load(mpa(get("Sp_10_9_MPa"))).unwrap().get::<newton>());
    }
    sheet.done()
}

/// Half a unit in the last digit of a printed figure.
pub fn half_a_digit(printed: &str) -> f64 {
    let decimals = printed.split_once('.').map_or(0, |(_, after)| after.len());
    0.5 * 10_f64.powi(-i32::try_from(decimals).unwrap())
}

/// The screw and friction of a textbook's power screw.
pub fn power_screw(row: &Row) -> (Screw, ScrewFriction) {
    let get = |column: &str| number(row, column);
    let thread = ScrewThread {
        pitch_diameter: mm(get("d2_mm")),
        lead: mm(get("lead_mm")),
        flank_angle: Angle::new::<degree>(get("flank_deg")),
        stress_diameter: mm(get("root_mm")),
    };
    let friction = ScrewFriction { thread: get("mu_thread"), face: get("mu_face") };
    (Screw { thread, face_diameter: Some(mm(get("face_mm"))) }, friction)
}

fn power_screws() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/power_screws.csv");
    for row in read("mechanics/power_screws.csv") {
        let ((screw, friction), force) = (power_screw(&row), Force::new::<newton>(number(&row, "F_N")));
        sheet.row(row["id"].clone());
        sheet.source(&row["source"], &row["status"]);
        let mut printed = |column: &str, computed: f64| {
            sheet.column(&row, column, computed, [0.0, half_a_digit(&row[column]) * 1.000_001]);
        };
        let up = screw.torque(force, friction).unwrap().total();
        printed("raise_Nm", up.get::<newton_meter>());
        printed("lower_Nm", screw.lowering_torque(force, friction).unwrap().total().get::<newton_meter>());
        printed("efficiency", screw.efficiency(friction).unwrap().get::<ratio>());
        // The book twists the body with the whole torque, collar included.
        let stress = screw.thread.rod_stress(force, up).unwrap();
        printed("torsion_MPa", stress.torsion.get::<megapascal>());
        printed("tension_MPa", stress.tension.get::<megapascal>());
    }
    sheet.done()
}

fn preloads() -> Vec<Check> {
    let mut sheet = Sheet::of("assembly/preloads.csv");
    for row in read("assembly/preloads.csv") {
        let thread = Thread::parse(&row["thread"]).unwrap();
        let screw = Screw { thread: (&thread).into(), face_diameter: Some(mm(number(&row, "face_mm"))) };
        let class = strength_class(&row["class"], thread.nominal).unwrap();
        let friction = number(&row, "friction");
        sheet.row(format!("{}, {}, friction {friction}", row["thread"], row["class"]));
        let preload = assembly_preload(&screw, friction, class.yield_strength, 0.9).unwrap();
        sheet.column(&row, "preload_kn", preload.get::<kilonewton>(), [0.002, half_a_digit(&row["preload_kn"])]);
        let torque = screw.torque(preload, ScrewFriction::both(friction)).unwrap().total();
        sheet.column(&row, "torque_nm", torque.get::<newton_meter>(), [0.008, half_a_digit(&row["torque_nm"])]);
    }
    sheet.done()
}

fn shear_areas() -> Vec<Check> {
    let mut sheet = Sheet::of("assembly/strip_areas.csv");
    for row in read("assembly/strip_areas.csv") {
        let thread = Thread::parse(&row["thread"]).unwrap();
        let pair = ThreadPair::least_metal(&thread, thread.nominal).unwrap();
        sheet.row(row["thread"].clone());
        sheet.column(&row, "hole_mm2", pair.hole_area().get::<square_millimeter>(), [0.01, 0.0]);
        sheet.column(&row, "screw_mm2", pair.screw_area().get::<square_millimeter>(), [0.012, 0.0]);
    }
    sheet.done()
}
