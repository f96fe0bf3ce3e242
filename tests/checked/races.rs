//! Cold ring, warm housing: when the seat grips, and the temperatures until then.

use super::reference_rows::{Row, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::quantity::{Area, HeatTransfer, Length, Mass, ThermodynamicTemperature, Time};
use seatwise::stock::Curve;
use seatwise::thermal::bore::{AirConductivity, Exchange, Gap, Insertion, Joint, Placement, SeatBody, SeatSizes};
use seatwise::thermal::*;
use std::f64::consts::PI;
use uom::si::area::square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

pub const SETS: &[Set] = &[
    Set {
        family: "Until the seat grips",
        title: "Two bodies without resistance inside",
        allowed: "time of the grip 8e-6 of its value: the solver holds each step to 1e-6 of the difference, and the gap \
                  closes ever faster; temperatures 0.005 K",
        checks: two_nodes,
    },
    Set {
        family: "Until the seat grips",
        title: "Time of the grip, finite elements",
        allowed: "never late; 12 % early without the resistance inside, 5 % with the half of it that is counted",
        checks: grip_by_elements,
    },
    Set {
        family: "Until the seat grips",
        title: "Temperatures and clearance, finite elements",
        allowed: "ring 3 K, wall 1 K, clearance 3 µm: largest shortly before the grip, where it falls by 9 µm/s",
        checks: until_the_grip,
    },
    Set {
        family: "Until the seat grips",
        title: "Time of the grip, thick, thin and solid parts",
        allowed: "never late; 20 % early when concentric, 30 % when touching: most of the resistance is then inside, and \
                  half of it is counted. Early is the safe side",
        checks: radial_races,
    },
];

pub fn rows(file: &str) -> Vec<Row> {
    read(&format!("bore/{file}"))
}

pub fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}
pub fn seconds(t: f64) -> Time {
    Time::new::<second>(t)
}
pub fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
pub fn um(length: f64) -> Length {
    Length::new::<micrometer>(length)
}
pub fn film(h: f64) -> HeatTransfer {
    HeatTransfer::new::<watt_per_square_meter_kelvin>(h)
}
pub fn constant(value: f64) -> Curve {
    Curve::constant(value, 60.0, 700.0).unwrap()
}
/// ΔL/L of a constant coefficient (1/K).
pub fn linear(coefficient: f64) -> Curve {
    Curve::new(&[(60.0, coefficient * (60.0 - 293.15)), (700.0, coefficient * (700.0 - 293.15))]).unwrap()
}

/// A material and the shape of a part.
#[derive(Clone, Debug)]
pub struct Part {
    pub mass: f64,
    pub capacity: Curve,
    pub conductivity: Curve,
    pub expansion: Curve,
    pub emissivity: f64,
    pub radiates: bool,
    pub to_joint: ConductionPath,
    pub free_area: f64,
    pub film: f64,
    pub start: f64,
}

impl Part {
    /// `[rho, c, k, coefficient]` and the volume (m³) and free area (m²).
    pub fn new([rho, c, k, coefficient]: [f64; 4], volume: f64, free_area: f64, start: f64) -> Self {
        Self {
            mass: rho * volume,
            capacity: constant(c),
            conductivity: constant(k),
            expansion: linear(coefficient),
            emissivity: 0.3,
            radiates: true,
            to_joint: ConductionPath::none(),
            free_area,
            film: 10.0,
            start,
        }
    }

    pub fn body(&self) -> SeatBody<'_> {
        SeatBody {
            mass: Mass::new::<kilogram>(self.mass),
            heat_capacity: &self.capacity,
            conductivity: &self.conductivity,
            expansion: &self.expansion,
            emissivity: self.emissivity,
            to_joint: self.to_joint,
            to_air: ConductionPath::none(),
            free_area: Area::new::<square_meter>(self.free_area),
            film: film(self.film),
            radiates: self.radiates,
            start: celsius(self.start),
        }
    }
}

/// Density, heat capacity, conductivity, expansion; inputs of the finite-element rows.
pub const STEEL: [f64; 4] = [7810.0, 460.0, 40.0, 12.5e-6];
pub const ALUMINIUM: [f64; 4] = [2700.0, 900.0, 150.0, 23.2e-6];
pub const IRON: [f64; 4] = [7200.0, 500.0, 50.0, 10.5e-6];

/// Area of an annulus between two radii, mm, in m².
pub fn annulus(inside: f64, outside: f64) -> f64 {
    PI * (outside * outside - inside * inside) * 1e-6
}
/// Curved surface of a radius and length, mm, in m².
pub fn curved(radius: f64, length: f64) -> f64 {
    2.0 * PI * radius * length * 1e-6
}

/// A ring whose outside is the joint.
pub fn ring(material: [f64; 4], (inside, outside): (f64, f64), width: f64, start: f64) -> Part {
    let face = annulus(inside, outside);
    Part::new(material, face * width * 1e-3, curved(inside, width) + 2.0 * face, start)
}

/// A boss round the joint, as long as the joint.
pub fn boss(material: [f64; 4], (inside, outside): (f64, f64), length: f64, start: f64) -> Part {
    let face = annulus(inside, outside);
    Part::new(material, face * length * 1e-3, curved(outside, length) + 2.0 * face, start)
}

/// Both parts of one insertion.
#[derive(Clone, Debug)]
pub struct Seat {
    pub inner: Part,
    pub outer: Part,
    pub diameter: f64,
    pub length: f64,
    pub interference_um: f64,
}

impl Seat {
    pub fn exchange<'a>(&'a self, gap: Gap<'a>) -> Exchange<'a> {
        Exchange {
            inner: self.inner.body(),
            outer: self.outer.body(),
            joint: Joint { diameter: mm(self.diameter), length: mm(self.length) },
            gap,
            shop: celsius(20.0),
        }
    }

    pub fn sizes(&self) -> SeatSizes {
        sizes(self.diameter, self.interference_um)
    }

    pub fn run(&self, placement: Placement, longest: f64) -> Insertion<'_> {
        self.exchange(Gap::usual(placement)).run(self.sizes(), seconds(longest)).unwrap()
    }

    /// Seconds until the concentric ring grips.
    pub fn grip(&self) -> Option<f64> {
        grip(&self.run(Placement::Concentric, 7200.0))
    }
}

pub fn sizes(diameter: f64, interference_um: f64) -> SeatSizes {
    SeatSizes { inner_at_20: mm(diameter), outer_at_20: mm(diameter) - um(interference_um) }
}

pub fn grip(insertion: &Insertion) -> Option<f64> {
    insertion.grip().map(|time| time.get::<second>())
}

pub fn in_celsius((inner, outer): (ThermodynamicTemperature, ThermodynamicTemperature)) -> (f64, f64) {
    (inner.get::<degree_celsius>(), outer.get::<degree_celsius>())
}

/// A steel ring 52 by 42 mm, 15 mm wide, in an aluminium boss of 70 or 90 mm.
pub fn light_alloy(boss_outside: f64, ring_start: f64, boss_start: f64, interference_um: f64) -> Seat {
    Seat {
        inner: ring(STEEL, (21.0, 26.0), 15.0, ring_start),
        outer: boss(ALUMINIUM, (26.0, boss_outside / 2.0), 20.0, boss_start),
        diameter: 52.0,
        length: 15.0,
        interference_um,
    }
}

/// The two bodies of the finite-element rows; `inside` counts the resistance inside them.
pub fn race(row: &Row, inside: bool) -> Seat {
    let mut inner = ring(STEEL, (26.0, 31.0), 16.0, number(row, "T_ring0_C"));
    let wall = annulus(31.0, 45.0);
    let back = annulus(20.0, 31.0);
    let volume = wall * 21e-3 + back * 5e-3;
    // Everything but the joint: outside, hole, both ends, the front of the back wall.
    let free = curved(45.0, 21.0) + curved(20.0, 5.0) + wall + annulus(20.0, 45.0) + back;
    let mut outer = Part::new(ALUMINIUM, volume, free, number(row, "T_housing0_C"));
    for part in [&mut inner, &mut outer] {
        // The rows have one film coefficient on the free faces, and radiation in the gap only.
        part.radiates = false;
    }
    // ... and take the growth of the bore from the nominal diameter; the model takes it from the bore itself, which is
    // smaller by the interference. Up to 0.07 um, but 1.2 s in the slow race G4.
    let interference = number(row, "delta_mm");
    outer.expansion = linear(ALUMINIUM[3] * 62.0 / (62.0 - interference));
    if inside {
        inner.to_joint = ConductionPath::one_face(mm(5.0));
        outer.to_joint = ConductionPath::one_face(mm(14.0));
    }
    Seat { inner, outer, diameter: 62.0, length: 16.0, interference_um: interference * 1e3 }
}

/// The law of the rows: `0.0263 + 8.1e-5 (T - 300)` W/(m K).
pub fn air_of_the_rows() -> Curve {
    let law = |t: f64| (t, 0.0263 + 8.1e-5 * (t - 300.0));
    Curve::new(&[law(60.0), law(700.0)]).unwrap()
}

/// The insertion of a row, concentric as in the rows.
pub fn followed<'a>(seat: &'a Seat, air: &'a Curve) -> Insertion<'a> {
    let gap = Gap { air: AirConductivity::Table(air), ..Gap::usual(Placement::Concentric) };
    seat.exchange(gap).run(seat.sizes(), seconds(5000.0)).unwrap()
}

/// The seat of a row of the radial races, with the ways inside that a user would give.
pub fn radial_race(row: &Row) -> Seat {
    let material = |column: &str| match row[column].as_str() {
        "steel" => STEEL,
        "aluminium" => ALUMINIUM,
        _ => IRON,
    };
    let [bore, joint, outside, length] = ["bore_mm", "joint_mm", "outside_mm", "length_mm"].map(|key| number(row, key));
    let interference_um = number(row, "interference_um");
    let mut inner = ring(material("inner"), (bore / 2.0, joint / 2.0), length, number(row, "inner_C"));
    let mut outer = boss(material("outer"), (joint / 2.0, outside / 2.0), length, number(row, "outer_C"));
    inner.to_joint = if bore > 0.0 {
        ConductionPath::one_face(mm((joint - bore) / 2.0))
    } else {
        ConductionPath::cylinder(mm(joint))
    };
    outer.to_joint = ConductionPath::one_face(mm((outside - joint) / 2.0));
    outer.expansion = linear(material("outer")[3] * joint / (joint - interference_um * 1e-3));
    (inner.radiates, outer.radiates) = (false, false);
    Seat { inner, outer, diameter: joint, length, interference_um }
}

fn two_nodes() -> Vec<Check> {
    let (air, mut sheet) = (air_of_the_rows(), Sheet::of("bore/fe_transient_gap.csv"));
    for row in rows("fe_transient_gap.csv") {
        let seat = race(&row, false);
        let insertion = followed(&seat, &air);
        let (grip, time) = (grip(&insertion).unwrap(), number(&row, "t_s"));
        sheet.row(format!("{}, {time} s", row["case"]));
        sheet.column(&row, "t_contact_lumped_s", grip, [8e-6, 0.0]);
        if time <= grip {
            let (inner, outer) = in_celsius(insertion.temperatures_at(seconds(time)).unwrap());
            // Printed to six digits; between its steps the solver is good to 2e-5 of 210 K.
            sheet.column(&row, "T_ring_lumped_C", inner, [0.0, 5e-3]);
            sheet.column(&row, "T_housing_lumped_C", outer, [0.0, 5e-3]);
        }
    }
    sheet.done()
}

fn grip_by_elements() -> Vec<Check> {
    let (air, mut sheet) = (air_of_the_rows(), Sheet::of("bore/fe_transient_gap.csv"));
    for row in rows("fe_transient_gap.csv").iter().filter(|row| row["t_s"] == "0") {
        let expected = number(row, "t_contact_s");
        for (what, inside, early) in [("grip, none inside", false, 0.12), ("grip, half inside", true, 0.05)] {
            let found = grip(&followed(&race(row, inside), &air)).unwrap();
            sheet.row(format!("{}, {}", row["case"], what.trim_start_matches("grip, ")));
            sheet.between((what, "s"), [expected, found], [early * expected, 0.0]);
        }
    }
    sheet.done()
}

fn until_the_grip() -> Vec<Check> {
    let (air, mut sheet) = (air_of_the_rows(), Sheet::of("bore/fe_transient_gap.csv"));
    for row in rows("fe_transient_gap.csv") {
        let seat = race(&row, true);
        let insertion = followed(&seat, &air);
        let time = number(&row, "t_s");
        if time > grip(&insertion).unwrap() {
            continue;
        }
        let (inner, outer) = in_celsius(insertion.temperatures_at(seconds(time)).unwrap());
        let clearance = insertion.clearance_at(seconds(time)).unwrap().get::<micrometer>();
        sheet.row(format!("{}, {time} s", row["case"]));
        sheet.column(&row, "T_ring_mean_C", inner, [0.0, 3.0]);
        sheet.column(&row, "T_wall_mean_C", outer, [0.0, 1.0]);
        sheet.column(&row, "clearance_dia_um", clearance, [0.0, 3.0]);
    }
    sheet.done()
}

fn radial_races() -> Vec<Check> {
    let (air, mut sheet) = (air_of_the_rows(), Sheet::of("bore/radial_races.csv"));
    for row in rows("radial_races.csv") {
        let (seat, touching) = (radial_race(&row), row["touching"] == "yes");
        let placement = if touching { Placement::OneSide } else { Placement::Concentric };
        let gap = Gap { air: AirConductivity::Table(&air), ..Gap::usual(placement) };
        let found = grip(&seat.exchange(gap).run(seat.sizes(), seconds(3000.0)).unwrap()).unwrap();
        // Rings to 13 % early when concentric and to 27 % when touching, solid parts to 20 % and 29 %: the resistance
        // inside, of which half is counted, is then most of what there is. Early is the safe side.
        let (expected, early) = (number(&row, "grip_s"), if touching { 0.30 } else { 0.20 });
        sheet.row(format!("{}, {}", row["case"], if touching { "touching" } else { "concentric" }));
        sheet.between(("grip", "s"), [expected, found], [early * expected, 0.0]);
    }
    sheet.done()
}
