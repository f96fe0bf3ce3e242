//! Cold ring, warm housing: against finite elements, and against a two-node solution of the same inputs.

use super::*;

#[test]
fn without_inner_resistance_the_two_node_solution_is_met() {
    let checks = prove("Two bodies without resistance inside");
    let temperatures = checks.iter().filter(|check| check.unit == "°C").count();
    assert!(temperatures >= 2 * 20, "{temperatures} temperatures compared");
}

#[test]
fn the_grip_is_never_later_than_by_finite_elements() {
    // None of the resistance is up to 12 % early, the half that the model counts up to 5 %.
    for pair in prove("Time of the grip, finite elements").chunks(2) {
        let [bare, counted] = [&pair[0], &pair[1]].map(|check| check.computed / check.expected - 1.0);
        assert!(counted > bare || counted > -0.001, "{pair:?}: inner resistance must delay the grip");
    }
}

#[test]
fn temperatures_and_clearance_follow_the_finite_elements() {
    prove("Temperatures and clearance, finite elements");
}

#[test]
fn thick_thin_and_solid_parts_grip_no_later_than_with_heat_resolved_along_the_radius() {
    prove("Time of the grip, thick, thin and solid parts");
}
