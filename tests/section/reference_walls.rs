//! Back walls pushed by the ring, against independent finite elements.

use crate::rows::{self, Row, in_mm, in_mpa, near, number};
use seatwise::job::{self, PressMeans};
use seatwise::mechanics::{Screw, ScrewFriction, nut_face_diameter};
use seatwise::plan;
use seatwise::plan::push::{StopReason, WallModel};
use seatwise::quantity::Force;
use seatwise::section::{Section, Support, WallState};
use seatwise::stock::Library;
use std::sync::LazyLock;
use uom::si::force::newton;

/// Inside diameter of what the back face of the reference rests on. Their notes do not give it: they hold all nodes
/// outside some radius, and this one brings all five rows to 2 %, of both outsides and all thicknesses.
const OPENING: f64 = 68.8;

fn pushed(row: &Row) -> WallState {
    let support =
        if row["support"] == "front" { Support::Front } else { Support::Back { opening: Some(rows::mm(OPENING)) } };
    let seat = rows::housing(number(row, "Do_mm"), 0.0, rows::wall(number(row, "t_mm"), 40.0));
    let section = Section { support, ..rows::plain(rows::ring(0.0, None), seat) };
    let loads = rows::pressed(&[-0.1], &[0.0; 2], number(row, "F_N"));
    rows::model(&section).solve(&loads).unwrap().wall.unwrap()
}

/// The rows, each solved once for all tests.
static SOLVED: LazyLock<Vec<(Row, WallState)>> = LazyLock::new(|| {
    let solved = |row: Row| (row.clone(), pushed(&row));
    rows::rows(include_str!("../reference/section/fe_plate_housing.csv")).into_iter().map(solved).collect()
});

#[test]
fn deflection_and_stress_at_the_hole() {
    for (row, wall) in SOLVED.iter() {
        near(row, "w_hole_edge_abs_mm", in_mm(wall.edge_deflection), 0.03);
        near(row, "w_hole_edge_rel_outer_mm", in_mm(wall.edge_deflection_from_rim), 0.03);
        // Ours is positive where it pulls on the side of the ring.
        near(row, "st_r20_bending_MPa", -in_mpa(wall.edge_bending), 0.03);
        // A small difference of large numbers where the support is not quite the same.
        let share = if row["support"] == "front" { 0.01 } else { 0.06 };
        near(row, "st_r20_membrane_MPa", in_mpa(wall.edge_membrane), share);
    }
}

/// The reference reads the root's stress beside a singular corner and is 3 to 9 % below the moment that balances the
/// wall, which a test beside the code holds ours against (1 %). Its membrane part does not balance the hoop stress.
#[test]
fn the_reference_stays_below_the_balanced_root() {
    for (row, wall) in SOLVED.iter() {
        let share = -number(row, "sr_r31_bending_MPa") / in_mpa(wall.root_bending);
        assert!((0.9..0.98).contains(&share), "{}: {share}", row["case"]);
    }
}

/// A face that takes no push does not hold the seat either.
#[test]
fn a_support_without_a_push_changes_nothing() {
    let free = rows::plain(rows::ring(1.0, None), rows::housing(80.0, 4.0, rows::wall(5.0, 40.0)));
    let pressure = |support| {
        let model = rows::model(&Section { support, ..free });
        in_mpa(model.solve(&rows::pressed(&[0.03], &[0.0; 2], 0.0)).unwrap().contacts[0].mean_pressure)
    };
    let expected = pressure(Support::Free);
    for support in [Support::Front, Support::Back { opening: None }] {
        // A mesh with the same lines; only the circle that is held differs.
        assert!((pressure(support) / expected - 1.0).abs() < 1e-9);
    }
}

/// The push alone, without the contact: the same wall as with a ring that is loose in its seat.
#[test]
fn a_push_alone_is_the_push_of_a_loose_ring() {
    let opening = Support::Back { opening: Some(rows::mm(OPENING)) };
    for support in [Support::Front, Support::Back { opening: None }, opening] {
        let section = rows::plain(rows::ring(0.0, None), rows::housing(80.0, 0.0, rows::wall(5.0, 40.0)));
        let model = rows::model(&Section { support, ..section });
        let loose = model.solve(&rows::pressed(&[-0.1], &[0.0; 2], 1e4)).unwrap().wall.unwrap();
        let free = rows::model(&Section { support: Support::Free, ..section });
        // An opening has a line of its own only in the mesh that was made for it.
        let divided_for_it = if support == opening { &model } else { &free };
        let alone = divided_for_it.pushed_wall(support, Force::new::<newton>(1e4)).unwrap().unwrap();
        assert!(free.pushed_wall(opening, Force::new::<newton>(1e4)).is_err());
        for (one, other) in [
            (in_mpa(loose.root_bending), in_mpa(alone.root_bending)),
            (in_mpa(loose.edge_bending), in_mpa(alone.edge_bending)),
            (in_mm(loose.edge_deflection), in_mm(alone.edge_deflection)),
            (in_mm(loose.face_deflection), in_mm(alone.face_deflection)),
        ] {
            assert!((one / other - 1.0).abs() < 1e-6, "{one} {other}");
        }
        // The ring presses between the root, which hardly moves, and the edge of the hole, which moves most.
        assert!(alone.face_deflection > 0.3 * alone.edge_deflection && alone.face_deflection < alone.edge_deflection);
        assert!(free.pushed_wall(Support::Free, Force::new::<newton>(1.0)).is_err());
    }
}

/// A bush that drops loosely into the housings of the reference: what the plan says of the wall is the section's, and the torque
/// at which to stop is that of the force that the wall bears.
#[test]
fn the_stop_torque_of_a_plan_is_that_of_the_wall_in_the_section() {
    for (row, _) in SOLVED.iter().filter(|(row, _)| row["support"] == "front") {
        let (outside, t) = (number(row, "Do_mm"), number(row, "t_mm"));
        let text = format!(
            "[bearing]\nkind = \"plain bush\"\nbore = \"52 mm\"\noutside = \"62 mm\"\nwidth = \"16 mm\"\n\
             outside_limits = \"h6\"\nmaterial = \"bearing-steel\"\n[housing]\nbore_limits = \"H7\"\noutside = \"{outside} mm\"\n\
             length = \"{} mm\"\nmaterial = \"cast-aluminium\"\nshoulder = {{ inside = \"40 mm\", wall = \"{t} mm\" }}\n\
             [press]\nmeans = \"screw jig\"\nthread = \"M24\"\n",
            16.0 + t
        );
        let job = job::check(&text, &Library::default()).unwrap_or_else(|error| panic!("{error}"));
        let plan = plan::plan(&job).unwrap();
        let wall = plan.seats[0].wall.as_ref().unwrap();
        assert_eq!(wall.model, WallModel::Section);
        let housing = job.housing.as_ref().unwrap();
        let strength = housing.material.strength().value;
        // Stress is in proportion to the force whatever the modulus; Poisson's ratio is that of the reference within 0.02.
        let (front, _) = wall.supports.unwrap();
        let at_limit = in_mpa(strength) / wall.reserve;
        let per_10_kn = at_limit / front.get::<newton>() * 1e4;
        let reference = -number(row, "sr_r31_bending_MPa") + number(row, "sr_r31_membrane_MPa");
        // See `the_reference_stays_below_the_balanced_root`.
        assert!((0.88..0.99).contains(&(reference / per_10_kn)), "{}: {reference} {per_10_kn}", row["case"]);
        let allowable = wall.allowable.unwrap();
        let (screw, jig) = (plan.seats[0].means.as_ref().unwrap().screw.as_ref().unwrap(), job.press.means.as_ref());
        let (torque, reason) = screw.stop.unwrap();
        assert_eq!(reason, StopReason::Wall);
        let Some(PressMeans::Screw(jig)) = jig else { panic!("a screw jig") };
        let face_diameter = jig.nut.as_ref().map(|nut| nut_face_diameter(nut.across_flats, nut.hole).unwrap());
        let thread = Screw { thread: (&jig.thread).into(), face_diameter };
        let turned = thread.torque(allowable, ScrewFriction::both(jig.friction.0)).unwrap().total();
        assert!((f64::from(torque / turned) - 1.0).abs() < 1e-9, "{torque:?} {turned:?}");
        // The plate is another model of the same wall.
        let plate = wall.as_plate.unwrap() / allowable;
        assert!((0.6..1.7).contains(&f64::from(plate)), "{}: {plate:?}", row["case"]);
    }
}
