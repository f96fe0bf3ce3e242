//! Unit solutions added against solutions of their own.

use crate::rows::{self, elastic, in_mm, in_mpa, mm};
use seatwise::section::{Accuracy, Liner, Loads, Model, Section, State, Support, Units};

fn with_liner() -> Section {
    let liner = Liner { thickness: mm(3.0), front: mm(2.0), bonded: false, material: elastic((110.0, 0.25)) };
    let seat = rows::housing(90.0, 4.0, rows::wall(5.0, 40.0));
    let section = rows::plain(rows::ring(1.0, Some(rows::groove())), seat);
    Section { liner: Some(liner), support: Support::Back { opening: None }, ..section }
}

fn numbers(state: &State) -> Vec<f64> {
    let mut numbers = Vec::new();
    for contact in &state.contacts {
        numbers.extend([in_mpa(contact.mean_pressure), contact.normal_force.value, contact.touching]);
        numbers.extend(contact.pressure.iter().map(|at| in_mpa(at.pressure)));
        numbers.push(1e3 * in_mm(contact.mean_clearance));
    }
    for part in &state.parts {
        let inside = part.inside.iter().flat_map(|surface| &surface.along);
        numbers.extend(inside.chain(&part.outside.along).map(|at| 1e3 * in_mm(at.change)));
        numbers.push(1e3 * in_mm(part.outside.at_raceway));
    }
    let wall = state.wall.unwrap();
    numbers.extend([wall.root_membrane, wall.root_bending, wall.edge_membrane, wall.edge_bending].map(in_mpa));
    numbers.extend([1e3 * in_mm(wall.edge_deflection), 1e3 * in_mm(wall.edge_deflection_from_rim)]);
    numbers
}

fn agree(model: &Model, units: &mut Units, loads: &Loads) {
    let (added, direct) = (units.state(model, loads).unwrap(), model.solve(loads).unwrap());
    let (added, direct) = (numbers(&added), numbers(&direct));
    assert_eq!(added.len(), direct.len());
    let scale = direct.iter().fold(1.0_f64, |most, value| most.max(value.abs()));
    for (added, direct) in added.iter().zip(&direct) {
        assert!((added - direct).abs() < 1e-10 * scale, "{added} and {direct} for {loads:?}");
    }
}

#[test]
fn added_units_are_the_direct_solution() {
    let model = Model::new(&with_liner(), Accuracy::Coarse).unwrap();
    let first = rows::pressed(&[0.03, 0.05], &[0.0; 3], 0.0);
    let mut units = model.units(&first).unwrap();
    agree(&model, &mut units, &first);
    agree(&model, &mut units, &rows::pressed(&[0.02, 0.04], &[-2e-4, 1e-4, 3e-4], 0.0));
    agree(&model, &mut units, &rows::pressed(&[0.05, 0.06], &[3e-4, 1e-4, 0.0], 4000.0));
}

/// A push on the wall opens part of a light seat, heat opens all of it: other nodes touch, and the units are made anew.
#[test]
fn units_are_made_anew_when_other_nodes_touch() {
    let model = Model::new(&with_liner(), Accuracy::Coarse).unwrap();
    let mut units = model.units(&rows::pressed(&[0.03, 0.05], &[0.0; 3], 0.0)).unwrap();
    let partly = rows::pressed(&[0.002, 0.01], &[0.0; 3], 40_000.0);
    let touching = model.solve(&partly).unwrap().contacts[0].touching;
    assert!(touching > 0.0 && touching < 1.0, "{touching}");
    agree(&model, &mut units, &partly);
    let open = rows::pressed(&[0.01, 0.02], &[-1e-3, 0.0, 2e-3], 0.0);
    assert!(model.solve(&open).unwrap().contacts.iter().all(|contact| contact.touching < 1e-12));
    agree(&model, &mut units, &open);
    agree(&model, &mut units, &rows::pressed(&[0.03, 0.05], &[0.0; 3], 1000.0));
}
