//! Liners that are bonded or finished in place, and bosses with a step.

use crate::rows::{self, elastic, in_mm, in_mpa, mm};
use seatwise::mechanics::{Held, LinedBore, Ring};
use seatwise::quantity::{Pressure, Ratio};
use seatwise::section::{Accuracy, Housing, Liner, Model, Seat, Section, Step};
use uom::si::{pressure::gigapascal, ratio::ratio};

const IRON: (f64, f64) = (110.0, 0.26);
const ALUMINIUM: (f64, f64) = (70.0, 0.33);
const FAR: f64 = -1.0;

fn lined(bonded: bool, seat: Seat) -> Section {
    let front = if let Seat::Housing(housing) = seat { housing.front } else { mm(0.0) };
    let liner = Liner { thickness: mm(3.5), front, bonded, material: elastic(IRON) };
    Section { liner: Some(liner), ..rows::plain(rows::ring(0.0, None), seat) }
}

/// The same liner and housing as plain rings, exact for equal widths: pressure at the seam and change of the bore.
fn exact(held: Held, pressure: f64, strains: [f64; 2]) -> (f64, f64) {
    let ring = |inside, outside, (modulus, poisson)| Ring {
        inside: Some(mm(inside)),
        outside: mm(outside),
        elastic_modulus: Pressure::new::<gigapascal>(modulus),
        poisson,
    };
    let bore = LinedBore { liner: ring(62.0, 69.0, IRON), housing: ring(69.0, 90.0, ALUMINIUM), seam: mm(69.0), held };
    let [liner, housing] = strains.map(Ratio::new::<ratio>);
    let state = bore.under(Pressure::new::<gigapascal>(pressure / 1e3), liner, housing).unwrap();
    (in_mpa(state.between), in_mm(state.liner.inside_change.unwrap()))
}

/// A liner that is cast in pulls where the housing outgrows it, with and without a ring in it; one that is pressed in comes free.
#[test]
fn a_bonded_seam_pulls_as_thick_rings_say() {
    let model = |bonded| rows::model(&lined(bonded, rows::housing(90.0, 0.0, rows::open())));
    let strains = [0.0, 0.0, 8e-4];
    let alone = model(true).solve(&rows::pressed(&[FAR, 0.0], &strains, 0.0)).unwrap();
    let (between, bore) = exact(Held::Bonded, 0.0, [0.0, 8e-4]);
    assert!(between < -1.0, "{between}");
    assert!((in_mpa(alone.contacts[1].mean_pressure) / between - 1.0).abs() < 1e-4);
    assert!((in_mm(alone.parts[1].inside.as_ref().unwrap().mean) / bore - 1.0).abs() < 1e-4);
    assert!((alone.contacts[1].touching - 1.0).abs() < 1e-12);
    let ring = model(true).solve(&rows::pressed(&[0.05, 0.0], &strains, 0.0)).unwrap();
    let (between, _) = exact(Held::Bonded, in_mpa(ring.contacts[0].mean_pressure), [0.0, 8e-4]);
    assert!((in_mpa(ring.contacts[1].mean_pressure) / between - 1.0).abs() < 1e-4);
    let free = model(false).solve(&rows::pressed(&[FAR, 0.0], &strains, 0.0)).unwrap();
    assert!(free.contacts[1].touching < 1e-12 && free.contacts[1].mean_clearance > mm(0.05));
}

/// In a blind bore a pressed liner closes more at one end than at the other. Finished after that, its bore is straight, and the ring
/// presses with what its own interference makes: liner and ring add up, while the seam bears all along.
#[test]
fn a_finished_bore_adds_the_fit_of_the_ring_to_that_of_the_liner() {
    let seat = rows::housing(90.0, 0.0, rows::wall(5.0, 40.0));
    let model = |bonded| rows::model(&lined(bonded, seat));
    let alone = rows::pressed(&[FAR, 0.085], &[0.0; 3], 0.0);
    let fitted = model(false).solve(&alone).unwrap();
    let bore = fitted.parts[1].inside.as_ref().unwrap();
    let ends = [0.0, 16.0].map(|z| in_mm(bore.at(mm(z))));
    assert!(ends[1] - ends[0] > 0.005, "straight anyway: {ends:?}");
    let both = model(false).finished(&alone).unwrap().solve(&rows::pressed(&[0.03, 0.085], &[0.0; 3], 0.0)).unwrap();
    let ring = model(true).solve(&rows::pressed(&[0.03, 0.0], &[0.0; 3], 0.0)).unwrap();
    let pressure = |state: &seatwise::section::State, k: usize| in_mpa(state.contacts[k].mean_pressure);
    assert!((pressure(&both, 0) / pressure(&ring, 0) - 1.0).abs() < 1e-9);
    assert!((pressure(&both, 1) / (pressure(&fitted, 1) + pressure(&ring, 1)) - 1.0).abs() < 1e-9);
    // Without being finished the same bore, straight before the liner was fitted, is nipped at its back.
    let raw = model(false).solve(&rows::pressed(&[0.03 + in_mm(bore.mean), 0.085], &[0.0; 3], 0.0)).unwrap();
    assert!((pressure(&raw, 0) / pressure(&ring, 0) - 1.0).abs() > 0.02);
}

fn stepped(outside: f64, step: Option<(f64, f64)>) -> f64 {
    let Seat::Housing(housing) = rows::housing(outside, 6.0, rows::wall(5.0, 40.0)) else { unreachable!() };
    let step = step.map(|(outside, position)| Step { outside: mm(outside), position: mm(position) });
    let section = rows::plain(rows::ring(0.0, None), Seat::Housing(Housing { step, ..housing }));
    let model = Model::new(&section, Accuracy::Normal).unwrap();
    let state = model.solve(&rows::pressed(&[0.03], &[0.0; 2], 0.0)).unwrap();
    in_mpa(state.contacts[0].mean_pressure)
}

/// A step of nothing changes nothing, and one of any kind lies between the plain bosses of both diameters, nearer to the one that
/// has more of the seat.
#[test]
fn a_stepped_boss_lies_between_its_two_diameters() {
    let (thin, thick) = (stepped(76.0, None), stepped(100.0, None));
    assert!(thick > 1.3 * thin);
    assert!((stepped(76.0, Some((76.0, 8.0))) / thin - 1.0).abs() < 2e-3);
    let positions = [-4.0, 0.0, 4.0, 8.0, 12.0, 16.0, 21.0];
    let at: Vec<f64> = positions.iter().map(|z| stepped(76.0, Some((100.0, *z)))).collect();
    assert!(at.windows(2).all(|pair| pair[0] < pair[1]), "more of the thick part presses more: {at:?}");
    assert!(at[0] > thin && at[6] < thick, "{thin} < {at:?} < {thick}");
    let around = stepped(100.0, Some((76.0, 8.0)));
    assert!(thin < around && around < thick, "{around}");
}
