//! How long a heat history of a section takes: a ring chilled in boiling nitrogen, carried through the shop and put into the
//! blind bore of a boss, until it has long gripped.

#![allow(clippy::unwrap_used, reason = "sizes and temperatures are given here and lie in every range")]

use seatwise::quantity::{HeatTransfer, Length, Pressure, ThermodynamicTemperature, Time, celsius};
use seatwise::section::heat::{
    Conduction, Exposed, FaceLaw, Faces, Film, Gap, Growth, HeatHistory, Placement, Property, Seating, Solid, Stage,
    Until,
};
use seatwise::section::{Accuracy, Back, Chamfers, Elastic, Housing, Model, RingSection, Seat, Section, Support};
use uom::si::f64::MassDensity;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{micrometer, millimeter};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::gigapascal;
use uom::si::time::second;

fn main() {
    divan::main();
}

fn section() -> Section {
    let mm = Length::new::<millimeter>;
    let elastic = |modulus, poisson| Elastic { modulus: Pressure::new::<gigapascal>(modulus), poisson };
    let chamfers = Chamfers { back: mm(1.0), front: mm(1.0) };
    let (bore, outside, width, groove) = (mm(52.0), mm(62.0), mm(16.0), None);
    let ring = RingSection { bore, outside, width, chamfers, groove, material: elastic(208.0, 0.3) };
    let back = Back::Wall { thickness: mm(5.0), hole: Some(mm(40.0)) };
    let housing = Housing { outside: mm(90.0), step: None, front: mm(4.0), back, material: elastic(70.0, 0.33) };
    Section { ring, liner: None, seat: Seat::Housing(housing), support: Support::Free }
}

/// Steel and cast aluminium whose heat capacity and conductivity change with temperature. Round values for the clock only.
fn solids() -> [Solid; 2] {
    let table = |rows: &[(f64, f64)]| Property::new(rows).unwrap();
    let density = MassDensity::new::<kilogram_per_cubic_meter>;
    let steel = Solid {
        density: density(7810.0),
        capacity: table(&[(70.0, 170.0), (120.0, 300.0), (200.0, 410.0), (300.0, 460.0), (500.0, 530.0)]),
        conductivity: table(&[(70.0, 30.0), (150.0, 38.0), (300.0, 43.0), (500.0, 42.0)]),
        strain: table(&[(70.0, -2.1e-3), (150.0, -1.5e-3), (220.0, -8.5e-4), (293.15, 0.0), (500.0, 2.6e-3)]),
    };
    let aluminium = Solid {
        density: density(2700.0),
        capacity: table(&[(70.0, 350.0), (120.0, 580.0), (200.0, 800.0), (300.0, 900.0), (500.0, 990.0)]),
        conductivity: table(&[(70.0, 90.0), (300.0, 150.0), (500.0, 165.0)]),
        strain: table(&[(70.0, -4.0e-3), (150.0, -2.9e-3), (220.0, -1.6e-3), (293.15, 0.0), (500.0, 5.0e-3)]),
    };
    [steel, aluminium]
}

/// A boiling curve: film boiling, the fall to its least, transition, and nucleate boiling. Round values for the clock only.
fn nitrogen() -> Exposed {
    let over = |excess: f64, film: f64| (77.36 + excess, film);
    let rows = [
        over(-2.0, 800.0),
        over(2.0, 1000.0),
        over(10.0, 9000.0),
        over(14.0, 6000.0),
        over(30.0, 200.0),
        over(300.0, 150.0),
    ];
    let film = Film::OverSurface(Property::new(&rows).unwrap());
    Exposed {
        film,
        emissivity: 0.0,
        surroundings: ThermodynamicTemperature::new::<uom::si::thermodynamic_temperature::kelvin>(77.36),
    }
}

fn history<'c>(conduction: &'c Conduction<'c>, growth: Growth) -> HeatHistory<'c> {
    let film = HeatTransfer::new::<watt_per_square_meter_kelvin>;
    let seconds = |value| Until::Elapsed(Time::new::<second>(value));
    let (bath, air) =
        (nitrogen(), Exposed { film: Film::Constant(film(10.0)), emissivity: 0.3, surroundings: celsius(20.0) });
    let (cold, shop) = (Faces::all(FaceLaw::Exposed(&bath)), Faces::all(FaceLaw::Exposed(&air)));
    let gap = Gap {
        air: Property::line(8.1e-5, 300.0 - 0.0263 / 8.1e-5),
        smallest: Length::new::<micrometer>(1.0),
        emissivity: 0.3,
        contact: film(5000.0),
        placement: Placement::Concentric,
    };
    let seating =
        Seating { interference: vec![Length::new::<millimeter>(0.03)], gap, growth, shoulder: Some(film(2000.0)) };
    let stages = [
        Stage { around: vec![cold, shop], seating: None, until: seconds(300.0) },
        Stage { around: vec![shop; 2], seating: None, until: seconds(20.0) },
        Stage { around: vec![shop; 2], seating: Some(seating), until: seconds(120.0) },
    ];
    let start = conduction.uniform(&[celsius(20.0); 2]).unwrap();
    conduction.run(&start, &stages).unwrap()
}

#[divan::bench]
fn conduction_from_the_model(bencher: divan::Bencher) {
    let (model, solids) = (Model::new(&section(), Accuracy::Normal).unwrap(), solids());
    bencher.bench(|| Conduction::new(divan::black_box(&model), &solids).unwrap());
}

const CASES: [&str; 3] = ["coarse, local growth", "normal, local growth", "normal, mean growth"];

fn case(name: &str) -> (Accuracy, Growth) {
    let accuracy = if name.starts_with("coarse") { Accuracy::Coarse } else { Accuracy::Normal };
    (accuracy, if name.ends_with("local growth") { Growth::Local } else { Growth::Mean })
}

#[divan::bench(args = CASES)]
fn chill_carry_bore(bencher: divan::Bencher, name: &str) {
    let (accuracy, growth) = case(name);
    let model = Model::new(&section(), accuracy).unwrap();
    let conduction = Conduction::new(&model, &solids()).unwrap();
    let stages = history(&conduction, growth).stages();
    assert!(stages[2].grip.is_some());
    bencher.bench(|| history(divan::black_box(&conduction), growth));
}

/// Everything, from the sizes on.
#[divan::bench(args = CASES)]
fn from_sizes_to_history(bencher: divan::Bencher, name: &str) {
    let ((accuracy, growth), section, solids) = (case(name), section(), solids());
    bencher.bench(|| {
        let model = Model::new(divan::black_box(&section), accuracy).unwrap();
        let conduction = Conduction::new(&model, &solids).unwrap();
        history(&conduction, growth).stages()
    });
}
