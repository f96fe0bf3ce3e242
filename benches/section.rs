//! How long a section takes, from its sizes and from its unit solutions.

#![allow(clippy::unwrap_used, reason = "the sections are ones that the tests solve")]

use seatwise::quantity::{Force, Length, Pressure, Ratio};
use seatwise::section::{
    Accuracy, Back, Chamfers, Elastic, Housing, Loads, Model, RingSection, Seat, Section, Support,
};
use uom::si::{force::newton, length::millimeter, pressure::gigapascal, ratio::ratio};

fn main() {
    divan::main();
}

const SEATS: [&str; 3] = ["through bore", "blind bore", "thin wall"];

fn section(name: &str) -> Section {
    let mm = Length::new::<millimeter>;
    let elastic = |modulus, poisson| Elastic { modulus: Pressure::new::<gigapascal>(modulus), poisson };
    let wall = |thickness| Back::Wall { thickness: mm(thickness), hole: Some(mm(40.0)) };
    let (back, front) = match name {
        "through bore" => (Back::Open { beyond: mm(0.0) }, 0.0),
        "blind bore" => (wall(5.0), 4.0),
        _ => (wall(3.0), 10.0),
    };
    let chamfers = Chamfers { back: mm(1.0), front: mm(1.0) };
    let (bore, outside, width, groove) = (mm(52.0), mm(62.0), mm(16.0), None);
    let ring = RingSection { bore, outside, width, chamfers, groove, material: elastic(208.0, 0.3) };
    let housing = Housing { outside: mm(90.0), step: None, front: mm(front), back, material: elastic(70.0, 0.33) };
    Section { ring, liner: None, seat: Seat::Housing(housing), support: Support::Free }
}

fn loads(interference: f64) -> Loads {
    Loads {
        interference: vec![Length::new::<millimeter>(interference)],
        strain: vec![Ratio::new::<ratio>(1e-5); 2],
        axial: Force::new::<newton>(0.0),
    }
}

#[divan::bench(args = SEATS)]
fn from_sizes_to_state(bencher: divan::Bencher, name: &str) {
    let (section, loads) = (section(name), loads(0.03));
    bencher.bench(|| Model::new(divan::black_box(&section), Accuracy::Normal).unwrap().solve(&loads).unwrap());
}

#[divan::bench(args = SEATS)]
fn another_load_solved_directly(bencher: divan::Bencher, name: &str) {
    let model = Model::new(&section(name), Accuracy::Normal).unwrap();
    let loads = loads(0.03);
    bencher.bench(|| model.solve(divan::black_box(&loads)).unwrap());
}

#[divan::bench(args = SEATS)]
fn another_load_from_unit_solutions(bencher: divan::Bencher, name: &str) {
    let model = Model::new(&section(name), Accuracy::Normal).unwrap();
    let mut units = model.units(&loads(0.03)).unwrap();
    let other = loads(0.02);
    bencher.bench_local(|| units.state(&model, divan::black_box(&other)).unwrap());
}
