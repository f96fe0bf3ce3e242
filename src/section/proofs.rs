//! Elements and bodies against fields that they must hold exactly, and their convergence.

use super::body::{Body, Field};
use super::mesh::Mesh;
use super::model::Model;
use super::outline::{Arc, Cut, Outline, Rear, Rest};
use super::{Accuracy, Back, Chamfers, Elastic, Housing, Loads, RingSection, Seat, Section, Support};
use crate::quantity::{Force, Length, Pressure, Ratio};
use std::f64::consts::PI;
use uom::si::{force::newton, length::millimeter, pressure::gigapascal, ratio::ratio};

const MODULUS: f64 = 70e9;
const POISSON: f64 = 0.33;

fn tube(inner_cut: Cut, outer_cut: Cut, rear: Option<Rear>) -> Outline {
    let (part, inner, outer, front, modulus, poisson) = ("tube", 0.026, 0.031, 0.016, MODULUS, POISSON);
    Outline { part, inner, outer, front, inner_cut, outer_cut, rear, step: None, modulus, poisson }
}

/// A body of skewed and bowed elements, whose wall reaches the axis.
fn skewed() -> Body {
    let arc = Some(Arc { depth: 0.001_5, half_width: 0.004, middle: 0.008 });
    let outer = Cut { back: 0.001, front: 0.002, arc: None };
    let rear = Some(Rear { thickness: 0.004, inner: 0.0, outer: 0.031 });
    let outline = tube(Cut { arc, ..Cut::default() }, outer, rear);
    let radial = [0.0, 0.004, 0.012, 0.020, 0.026, 0.028, 0.030, 0.031];
    let axial = [-0.004, -0.001_5, 0.0, 0.001, 0.004, 0.007, 0.012, 0.014, 0.016];
    let mesh = Mesh::new(&outline, &radial, &axial).unwrap();
    Body::new(outline, mesh, Rest::Circle).unwrap()
}

fn field(body: &Body, of: impl Fn(f64, f64) -> [f64; 2]) -> Field {
    body.mesh.nodes.iter().map(|&[r, z]| of(r, z)).collect()
}

/// Nodes of the surface: those of edges that only one element has.
fn on_surface(body: &Body) -> Vec<bool> {
    const EDGES: [[usize; 3]; 4] = [[0, 4, 1], [1, 5, 2], [2, 6, 3], [3, 7, 0]];
    let edges: Vec<[usize; 3]> = body.mesh.elements.iter().flat_map(|e| EDGES.map(|edge| edge.map(|k| e[k]))).collect();
    let mut surface = vec![false; body.mesh.nodes.len()];
    for edge in &edges {
        if edges.iter().filter(|other| other[1] == edge[1]).count() == 1 {
            edge.iter().for_each(|&node| surface[node] = true);
        }
    }
    surface
}

/// Largest nodal force per length of circle, as a share of the stress times the smallest element.
fn largest(forces: &Field, keep: impl Fn(usize) -> bool) -> f64 {
    let kept = forces.iter().enumerate().filter(|(node, _)| keep(*node));
    kept.flat_map(|(_, force)| force).fold(0.0, |most, part| most.max(part.abs()))
}

#[test]
fn constant_strain_leaves_no_force_inside() {
    let body = skewed();
    let surface = on_surface(&body);
    assert!(surface.iter().any(|on| !on));
    let strained = field(&body, |r, z| [1e-3 * r, -2e-3 * z]);
    let forces = body.internal_forces(&strained, 0.0, |_| true);
    let scale = largest(&forces, |node| surface[node]);
    assert!(largest(&forces, |node| !surface[node]) < 1e-12 * scale);
    // σ = λ tr ε + 2μ ε
    let lambda = MODULUS * POISSON / ((1.0 + POISSON) * (1.0 - 2.0 * POISSON));
    let exact = |strain: f64| lambda * (2e-3 - 2e-3) + MODULUS / (1.0 + POISSON) * strain;
    for [radial, axial, hoop, shear] in body.stresses(&strained, 0.0) {
        let off = [radial - exact(1e-3), axial - exact(-2e-3), hoop - exact(1e-3), shear];
        assert!(off.iter().all(|off| off.abs() < 1e-9 * MODULUS * 1e-3), "{off:?}");
    }
}

#[test]
fn constant_shear_is_shear_alone() {
    let body = skewed();
    for [radial, axial, hoop, shear] in body.stresses(&field(&body, |r, _| [0.0, 1e-3 * r]), 0.0) {
        let exact = MODULUS / (2.0 * (1.0 + POISSON)) * 1e-3;
        assert!([radial, axial, hoop, shear - exact].iter().all(|off| off.abs() < 1e-9 * exact));
    }
}

#[test]
fn a_body_moved_along_the_axis_has_no_stress() {
    let body = skewed();
    let moved = field(&body, |_, _| [0.0, 1e-3]);
    let strained = field(&body, |r, z| [1e-3 * r, 1e-3 * z]);
    let scale = largest(&body.internal_forces(&strained, 0.0, |_| true), |_| true);
    assert!(largest(&body.internal_forces(&moved, 0.0, |_| true), |_| true) < 1e-10 * scale);
}

#[test]
fn a_warm_body_grows_and_has_no_stress() {
    let body = skewed();
    let free = body.mesh.nodes.iter().map(|&[r, z]| [r, z - 0.016]);
    for (found, exact) in body.expanded.iter().zip(free) {
        assert!((found[0] - exact[0]).abs() < 1e-12 && (found[1] - exact[1]).abs() < 1e-12, "{found:?} {exact:?}");
    }
    assert!(body.stresses(&body.expanded, 1.0).iter().flatten().all(|stress| stress.abs() < 1e-9 * MODULUS));
}

/// Error of the radial displacement of a thick tube under inside pressure, in the root mean square over the wall.
fn lame_error(elements: usize) -> f64 {
    let (a, b, pressure) = (0.010, 0.030, 50e6);
    let outline = Outline { inner: a, outer: b, ..tube(Cut::default(), Cut::default(), None) };
    let radial: Vec<f64> = (0..=elements).map(|k| a + (b - a) * k as f64 / elements as f64).collect();
    let axial: Vec<f64> = (0..=2).map(|k| 0.008 * f64::from(k)).collect();
    let body = Body::new(outline, Mesh::new(&outline, &radial, &axial).unwrap(), Rest::Circle).unwrap();
    let mut forces = vec![[0.0; 2]; body.mesh.nodes.len()];
    for edge in body.mesh.along(a, (0.0, 0.016)).windows(3).step_by(2) {
        for (&node, share) in edge.iter().zip([1.0, 4.0, 1.0]) {
            forces[node][0] += share / 6.0 * 0.008 * 2.0 * PI * a * pressure;
        }
    }
    let found = body.solve(&forces);
    // u = p a²/(E (b² - a²)) [(1 - ν) r + (1 + ν) b²/r]
    let exact =
        |r: f64| pressure * a * a / (MODULUS * (b * b - a * a)) * ((1.0 - POISSON) * r + (1.0 + POISSON) * b * b / r);
    let (mut sum, mut count) = (0.0, 0.0_f64);
    for edge in body.mesh.across(0.008, (a, b)).windows(3).step_by(2) {
        let u = [0, 1, 2].map(|k| found[edge[k]][0]);
        let r = [0, 2].map(|k| body.mesh.nodes[edge[k]][0]);
        for x in [-0.9_f64, -0.6, -0.3, 0.1, 0.4, 0.7] {
            let parabola = x * (x - 1.0) / 2.0 * u[0] + (1.0 - x * x) * u[1] + x * (x + 1.0) / 2.0 * u[2];
            let off = parabola - exact((r[0] + r[1]) / 2.0 + x * (r[1] - r[0]) / 2.0);
            sum += off * off;
            count += 1.0;
        }
    }
    (sum / count).sqrt() / exact(a)
}

#[test]
fn displacements_converge_with_the_third_power() {
    let errors = [4, 8, 16, 32].map(lame_error);
    for pair in errors.windows(2) {
        let order = (pair[0] / pair[1]).log2();
        assert!(order >= 2.8, "{errors:?}: order {order}");
    }
    assert!(errors[3] < 5e-6, "{errors:?}");
}

fn pressed() -> (Model, Vec<f64>) {
    let mm = Length::new::<millimeter>;
    let elastic = |modulus, poisson| Elastic { modulus: Pressure::new::<gigapascal>(modulus), poisson };
    let back = Back::Wall { thickness: mm(5.0), hole: Some(mm(40.0)) };
    let housing = Housing { outside: mm(80.0), step: None, front: mm(4.0), back, material: elastic(70.0, 0.33) };
    let (bore, outside, width, groove) = (mm(52.0), mm(62.0), mm(16.0), None);
    let chamfers = Chamfers { back: mm(1.0), front: mm(1.0) };
    let ring = RingSection { bore, outside, width, chamfers, groove, material: elastic(208.0, 0.3) };
    let section = Section { ring, liner: None, seat: Seat::Housing(housing), support: Support::Front };
    let model = Model::new(&section, Accuracy::Normal).unwrap();
    let (interference, strain) = (vec![mm(0.03)], vec![Ratio::new::<ratio>(0.0); 2]);
    let loads = model.plain(&Loads { interference, strain, axial: Force::new::<newton>(3000.0) }).unwrap();
    (model, loads)
}

/// What the ring's elements put on the seat is what the housing's elements take, and both are the normal force; the
/// support takes the axial force; inside, the elements hold one another.
#[test]
fn action_is_reaction() {
    let (model, loads) = pressed();
    let settled = model.settle(&loads).unwrap();
    let solution = model.solution(&loads, settled.pressure);
    let (touch, normal) = (&model.touches[0], model.touches[0].normal_force(&solution.pressure));
    let forces: Vec<Field> =
        (0..2).map(|b| model.bodies[b].internal_forces(&solution.fields[b], 0.0, |_| true)).collect();
    let (mut on_ring, mut on_housing) = (0.0, 0.0);
    for (&inner, &outer) in touch.inner.iter().zip(&touch.outer) {
        assert!((forces[0][inner][0] + forces[1][outer][0]).abs() < 1e-9 * normal);
        on_ring += forces[0][inner][0];
        on_housing += forces[1][outer][0];
    }
    assert!(
        (on_ring / normal + 1.0).abs() < 1e-9 && (on_housing / normal - 1.0).abs() < 1e-9,
        "{on_ring} {on_housing}"
    );
    let outline = &model.outlines.bodies[1];
    let rest = model.bodies[1].mesh.across(outline.front, (outline.inner, outline.outer));
    let reaction: f64 = rest.iter().map(|&node| forces[1][node][1]).sum();
    assert!((reaction / 3000.0 - 1.0).abs() < 1e-9, "{reaction}");
    let far = |node: usize| !touch.inner.contains(&node);
    assert!(largest(&forces[0], far) < 1e-9 * normal);
}

#[test]
fn a_mesh_that_is_too_large_is_refused() {
    let lines =
        |from: f64, to: f64| -> Vec<f64> { (0..=200).map(|k| from + (to - from) * f64::from(k) / 200.0).collect() };
    let outline = tube(Cut::default(), Cut::default(), None);
    let refused = Mesh::new(&outline, &lines(0.026, 0.031), &lines(0.0, 0.016)).unwrap_err();
    assert!(refused.to_string().contains("this section needs 160801 nodes and 60000 are allowed"), "{refused}");
}
