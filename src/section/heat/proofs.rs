//! Convergence in space and time, and thermal stress, against exact solutions.

use super::face::{Exposed, FaceLaw, Faces};
use super::growth::thermal_forces;
use super::sparse::{Entry, Sparse, rows};
use super::stage::{Stage, Until};
use super::step::Stepper;
use super::{Conduction, Property, Solid};
use crate::quantity::{HeatTransfer, Length, Pressure, TemperatureInterval, Time, celsius};
use crate::section::body::Body;
use crate::section::element;
use crate::section::envelope::Envelope;
use crate::section::mesh::Mesh;
use crate::section::outline::{Cut, Outline, Rest};
use crate::section::{Accuracy, Back, Chamfers, Elastic, Housing, Model, RingSection, Seat, Section, Support};
use uom::si::f64::MassDensity;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::millimeter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::gigapascal;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::time::second;

const MODULUS: f64 = 70e9;
const POISSON: f64 = 0.33;
/// Bore and outside of the tubes, m.
const TUBE: (f64, f64) = (0.010, 0.030);

fn even(from: f64, to: f64, count: usize) -> Vec<f64> {
    (0..=count).map(|k| from + (to - from) * k as f64 / count as f64).collect()
}

/// A tube of so many elements over its wall and its length, m.
fn tube(across: usize, along: usize, length: f64) -> (Outline, Mesh) {
    let (inner, outer) = TUBE;
    let (inner_cut, outer_cut) = (Cut::default(), Cut::default());
    let (part, front, rear, modulus, poisson) = ("tube", length, None, MODULUS, POISSON);
    let outline = Outline { part, inner, outer, front, inner_cut, outer_cut, rear, step: None, modulus, poisson };
    let mesh = Mesh::new(&outline, &even(inner, outer, across), &even(0.0, length, along)).unwrap();
    (outline, mesh)
}

/// `(T(r) - T(b))/(T(a) - T(b)) = ln(b/r)/ln(b/a)`.
fn exact(radius: f64) -> f64 {
    let (a, b) = TUBE;
    (b / radius).ln() / (b / a).ln()
}

/// Errors of the steady temperature and of its slope in a tube held at one inside and zero outside, in the root mean square
/// over the volume, as shares of their largest values. The slope is read at all 3 × 3 points, not only where it is best.
fn steady_errors(elements: usize) -> [f64; 2] {
    let (_, mesh) = tube(elements, 2, 0.008);
    let rows = rows(&[&mesh]);
    let sparse = Sparse::new(&[&mesh], &rows, &[1.0]).unwrap();
    let (a, b) = TUBE;
    let mut held = vec![None; sparse.size()];
    for (node, &row) in rows[0].iter().enumerate() {
        let radius = mesh.nodes[node][0];
        held[row] = if radius <= a * 1.000_001 { Some(1.0) } else { (radius >= b * 0.999_999).then_some(0.0) };
    }
    let free: Vec<usize> = (0..sparse.size()).filter(|&row| held[row].is_none()).collect();
    let mut matrix = Envelope::new(vec![0; free.len()]);
    let mut found = vec![0.0; free.len()];
    let entries: Vec<&[Entry]> = sparse.rows().collect();
    for (place, &row) in free.iter().enumerate() {
        for &Entry { column, stiff, .. } in entries[row] {
            match held[column] {
                Some(value) => found[place] -= stiff * value,
                None if column <= row => matrix.add(place, free.binary_search(&column).unwrap(), stiff),
                None => {}
            }
        }
    }
    matrix.factor().unwrap().solve(&mut found);
    let mut values: Vec<f64> = held.iter().map(|held| held.unwrap_or(0.0)).collect();
    free.iter().zip(found).for_each(|(&row, value)| values[row] = value);
    let (mut off, mut slope_off, mut volume) = (0.0, 0.0, 0.0);
    for element in &mesh.elements {
        let nodes = mesh.corners_of(element);
        for point in element::points(&nodes).flatten() {
            let sum = |of: &dyn Fn(usize) -> f64| -> f64 { (0..8).map(of).sum() };
            let radius = sum(&|k| point.shape[k] * nodes[k][0]);
            let value = sum(&|k| point.shape[k] * values[rows[0][element[k]]]);
            let slope = sum(&|k| point.gradient[k][0] * values[rows[0][element[k]]]);
            off += point.volume * (value - exact(radius)).powi(2);
            slope_off += point.volume * (slope + 1.0 / (radius * (b / a).ln())).powi(2);
            volume += point.volume;
        }
    }
    [(off / volume).sqrt(), (slope_off / volume).sqrt() * a * (b / a).ln()]
}

#[test]
fn temperatures_converge_with_the_third_power_and_fluxes_with_the_second() {
    let errors = [4, 8, 16, 32].map(steady_errors);
    for pair in errors.windows(2) {
        let orders = [0, 1].map(|k: usize| (pair[0][k] / pair[1][k]).log2());
        assert!(orders[0] >= 2.8 && orders[1] >= 1.8, "{errors:?}: orders {orders:?}");
    }
    assert!(errors[3][0] < 1e-5 && errors[3][1] < 2e-3, "{errors:?}");
}

pub(super) fn solid() -> Solid {
    Solid {
        density: MassDensity::new::<kilogram_per_cubic_meter>(7810.0),
        capacity: Property::new(&[(70.0, 170.0), (200.0, 410.0), (300.0, 460.0), (500.0, 530.0)]).unwrap(),
        conductivity: Property::new(&[(70.0, 30.0), (300.0, 43.0), (500.0, 42.0)]).unwrap(),
        strain: Property::line(12.5e-6, 293.15),
    }
}

fn section() -> Section {
    let mm = Length::new::<millimeter>;
    let elastic = |modulus, poisson| Elastic { modulus: Pressure::new::<gigapascal>(modulus), poisson };
    let chamfers = Chamfers { back: mm(0.0), front: mm(0.0) };
    let (bore, outside, width, groove) = (mm(52.0), mm(62.0), mm(16.0), None);
    let ring = RingSection { bore, outside, width, chamfers, groove, material: elastic(208.0, 0.3) };
    let back = Back::Open { beyond: mm(0.0) };
    let housing = Housing { outside: mm(90.0), step: None, front: mm(0.0), back, material: elastic(70.0, 0.33) };
    Section { ring, liner: None, seat: Seat::Housing(housing), support: Support::Free }
}

/// Stretch of the chill that is stepped through, s: the sudden start lies behind it.
const STRETCH: (f64, f64) = (20.0, 50.0);

/// Largest error of a step of the history that the others are held against, K.
const CLOSELY: f64 = 1e-7;

#[test]
fn steps_of_each_order_converge_with_its_power() {
    let model = Model::new(&section(), Accuracy::Coarse).unwrap();
    // Tables would have kinks; what is curved is the radiation.
    let even = Solid { capacity: Property::constant(460.0), conductivity: Property::constant(40.0), ..solid() };
    let conduction = Conduction::new(&model, &[even.clone(), even]).unwrap();
    let conduction = conduction.with_tolerance(TemperatureInterval::new::<step_kelvin>(CLOSELY)).unwrap();
    let film = Exposed::film(HeatTransfer::new::<watt_per_square_meter_kelvin>(200.0), celsius(-72.0));
    let bath = Exposed { emissivity: 0.8, ..film };
    let around = vec![Faces::all(FaceLaw::Exposed(&bath)), Faces::all(FaceLaw::Insulated)];
    let stage = Stage { around, seating: None, until: Until::Elapsed(Time::new::<second>(STRETCH.1)) };
    let start = conduction.uniform(&[celsius(20.0); 2]).unwrap();
    let closely = conduction.run(&start, std::slice::from_ref(&stage)).unwrap();
    let system = conduction.system(0, &stage, None);
    let at = |time: f64| system.gather(&closely.temperatures(Time::new::<second>(time)).unwrap());
    let end = at(STRETCH.1);
    // Largest error of a node after even steps of one order, from close values before them.
    let after = |order: usize, steps: u32| {
        let length = (STRETCH.1 - STRETCH.0) / f64::from(steps);
        let past: Vec<Vec<f64>> = (0..=order).map(|k| at(STRETCH.0 - length * k as f64)).collect();
        let mut stepper = Stepper::new(&system, past[0].clone(), (CLOSELY, STRETCH.1));
        stepper.go_on_from((STRETCH.0, length), &past);
        (0..steps).for_each(|_| stepper.evenly());
        stepper.temperatures.iter().zip(&end).fold(0.0, |most: f64, (found, end)| most.max((found - end).abs()))
    };
    let mut before = f64::INFINITY;
    for order in 1..=4 {
        let [long, short] = [8, 16].map(|steps| after(order, steps));
        let power = (long / short).log2();
        assert!(power > order as f64 - 0.3 && power < order as f64 + 2.1, "order {order}: {long} K and {short} K");
        assert!(short < 0.2 * before, "order {order}: {short} K, one order lower {before} K");
        before = short;
    }
}

/// Hoop stress of steady radial heat flow, as a share of `α E (T_a - T_b)/(2 ln(b/a))`, at the bore and at the outside of a
/// thin disc; a long cylinder has `1/(1 - ν)` of it (S. P. Timoshenko and J. N. Goodier, "Theory of Elasticity", art. 151 of
/// the 3rd edition, from memory, and `∫ σ_t dr = 0`).
fn steady_hoop() -> [f64; 2] {
    let (a, b) = TUBE;
    let log = (b / a).ln();
    [1.0 - 2.0 * b * b / (b * b - a * a) * log, 1.0 - 2.0 * a * a / (b * b - a * a) * log]
        .map(|part| part / (2.0 * log))
}

/// Hoop stress in the middle of a tube with that temperature, at the bore and the outside, as a share of `α E (T_a - T_b)`.
fn found_hoop((across, along): (usize, usize), length: f64) -> [f64; 2] {
    let (outline, mesh) = tube(across, along, length);
    let body = Body::new(outline, mesh, Rest::Circle).unwrap();
    let strain: Vec<f64> = body.mesh.nodes.iter().map(|node| 1e-3 * exact(node[0])).collect();
    let moved = body.solve(&thermal_forces(&body, &strain));
    let stresses = body.stresses_under(&moved, |node| strain[node]);
    [TUBE.0, TUBE.1].map(|radius| {
        let node = body.mesh.along(radius, (length / 2.0, length / 2.0))[0];
        stresses[node][2] / (1e-3 * MODULUS)
    })
}

#[test]
fn a_thin_disc_has_the_hoop_stress_of_plane_stress() {
    for (found, exact) in found_hoop((24, 2), 0.000_5).into_iter().zip(steady_hoop()) {
        assert!((found / exact - 1.0).abs() < 5e-3, "{found} and {exact}");
    }
}

#[test]
fn the_middle_of_a_long_cylinder_has_the_hoop_stress_of_plane_strain() {
    for (found, exact) in found_hoop((24, 40), 0.240).into_iter().zip(steady_hoop()) {
        let exact = exact / (1.0 - POISSON);
        assert!((found / exact - 1.0).abs() < 5e-3, "{found} and {exact}");
    }
}

/// A free body takes a temperature that is linear along the axis without stress: it becomes a slight cone.
#[test]
fn heat_along_the_axis_makes_no_stress() {
    let (outline, mesh) = tube(4, 8, 0.016);
    let body = Body::new(outline, mesh, Rest::Circle).unwrap();
    // A tube is not simply connected, yet ε = β z is a compatible strain: u_r = β z r, u_z = β (z² - r²)/2.
    let strain: Vec<f64> = body.mesh.nodes.iter().map(|node| 0.1 * node[1]).collect();
    let moved = body.solve(&thermal_forces(&body, &strain));
    let stresses = body.stresses_under(&moved, |node| strain[node]);
    assert!(stresses.iter().flatten().all(|stress| stress.abs() < 1e-9 * MODULUS * 1e-3));
}
