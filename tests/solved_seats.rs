//! Plans that share the sections of their seats are the plans that each would be alone.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

use seatwise::job::{self, Job};
use seatwise::plan::{self, Method, SolvedSeats};
use seatwise::report;
use seatwise::stock::Library;

/// A 6206 in a blind bore with its length stated, of this class and outside.
fn seat(class: &str, outside_mm: u32) -> Job {
    with(class, outside_mm, "")
}

/// The same with its friction stated.
fn rubbing(class: &str, outside_mm: u32, friction: &str) -> Job {
    with(class, outside_mm, &format!("[press]\nfriction = \"{friction}\"\n"))
}

fn with(class: &str, outside_mm: u32, more: &str) -> Job {
    let text = format!(
        "[bearing]\ndesignation = \"6206\"\n[housing]\nbore_limits = \"{class}\"\noutside = \"{outside_mm} mm\"\n\
         length = \"22 mm\"\nmaterial = \"cast-aluminium\"\nshoulder = {{ inside = \"50 mm\", wall = \"5 mm\" }}\n\
         {more}"
    );
    job::check(&text, &Library::default()).unwrap()
}

fn json(plan: &plan::Plan<'_>) -> String {
    report::json::plan(plan).unwrap()
}

#[test]
fn a_shared_section_gives_the_same_plan_to_the_last_digit() {
    let solved = SolvedSeats::default();
    for (class, outside) in [("N7", 90), ("P7", 90), ("N7", 80), ("M7", 90), ("P7", 80), ("N7", 90)] {
        let job = seat(class, outside);
        let shared = plan::plan_among(&job, Method::Auto, &solved).unwrap();
        assert_eq!(json(&shared), json(&plan::plan(&job).unwrap()), "{class} in {outside} mm");
    }
    // Friction is part of what a section gives: another one must not find the first one's.
    for friction in ["0.1", "0.3"] {
        let job = rubbing("N7", 90, friction);
        let shared = plan::plan_among(&job, Method::Auto, &solved).unwrap();
        assert_eq!(json(&shared), json(&plan::plan(&job).unwrap()), "friction {friction}");
    }
}

#[test]
fn a_history_is_shared_only_by_jobs_that_agree_in_all_it_depends_on() {
    let alike = |heat_capacity: u32| {
        format!(
            "{{ name = \"case alloy\", family = \"light alloy\", density = \"2700 kg/m3\", modulus = \"70 GPa\", poisson = \"0.33\", \
             strength = \"160 MPa\", expansion = \"23.0 um/mK\", heat_capacity = \"{heat_capacity} J/kgK\", \
             conductivity = \"150 W/mK\", hottest = \"200 °C\", source = \"textbook figures\" }}"
        )
    };
    let job = |material: &str, medium: &str, bench: &str| {
        let text = format!(
            "[bearing]\ndesignation = \"6206\"\n[housing]\nbore_limits = \"N7\"\noutside = \"90 mm\"\n\
             material = {material}\n[warm]\npart = \"housing\"\nmedium = \"oven\"\n{medium}\n[bench]\n{bench}\n"
        );
        job::check(&text, &Library::default()).unwrap()
    };
    let (usual, bench) = ("temperature = \"90 °C\"\nhold = \"20 min\"", "temperature = \"20 °C\"\ncarry = \"20 s\"");
    let solved = SolvedSeats::default();
    // Two of the materials differ in nothing but their heat capacity.
    let (light, slow, iron) = (alike(900), alike(1100), "\"grey-iron\"".to_owned());
    // How many are kept after each: what was followed once is not followed again.
    for (material, medium, bench, kept) in [
        (&light, usual, bench, 1),
        (&slow, usual, bench, 2),
        (&light, usual, bench, 2),
        (&iron, usual, bench, 3),
        (&light, "temperature = \"90 °C\"\nhold = \"25 min\"", bench, 4),
        (&light, "temperature = \"80 °C\"\nhold = \"20 min\"", bench, 5),
        (&light, "temperature = \"90 °C\"\nuntil = \"60 °C\"", bench, 6),
        (&light, "temperature = \"90 °C\"\nuntil = \"70 °C\"", bench, 7),
        (&light, "temperature = \"90 °C\"\nuntil = \"settled\"", bench, 8),
        (&light, "temperature = \"90 °C\"\nuntil = \"60 °C\"", bench, 8),
        (&light, usual, "temperature = \"25 °C\"\ncarry = \"20 s\"", 9),
        (&light, usual, "temperature = \"20 °C\"\ncarry = \"20 s\"\nhumidity = \"50 %\"", 10),
        (&light, usual, "temperature = \"20 °C\"\ncarry = \"40 s\"", 10),
    ] {
        let job = job(material, medium, bench);
        let shared = plan::plan_among(&job, Method::Plane, &solved).unwrap();
        let alone = plan::plan_by(&job, Method::Plane).unwrap();
        assert_eq!(json(&shared), json(&alone), "{material}, {medium}, {bench}");
        let count = format!("Histories {{ count: {kept} }}");
        assert!(format!("{solved:?}").contains(&count), "not {count} after {material}, {medium}, {bench}: {solved:?}");
    }
}

#[test]
fn a_seat_is_solved_once_for_all_its_classes_and_another_seat_again() {
    let solved = SolvedSeats::default();
    assert!(solved.is_empty());
    for (class, outside, known) in [("N7", 90, 1), ("P7", 90, 1), ("M7", 90, 1), ("N7", 80, 2), ("P7", 80, 2)] {
        plan::plan_among(&seat(class, outside), Method::Auto, &solved).unwrap();
        assert_eq!(solved.len(), known, "{class} in {outside} mm");
    }
    plan::plan_among(&rubbing("N7", 90, "0.3"), Method::Auto, &solved).unwrap();
    assert_eq!(solved.len(), 3, "another friction is another seat");
    assert!(!solved.is_empty());
}

#[test]
fn a_plan_of_a_list_has_the_numbers_and_cautions_of_the_plan_and_no_curves() {
    let solved = SolvedSeats::default();
    let chilled = "[chill]\npart = \"bearing\"\nmedium = \"domestic-freezer\"\nhold = \"45 min\"\n";
    for more in ["", chilled] {
        let job = with("N7", 90, more);
        let (listed, alone) = (
            plan::plan_in_list(&job, Method::Auto, &solved).unwrap(),
            plan::plan_among(&job, Method::Auto, &solved).unwrap(),
        );
        assert_eq!(report::batch::planned_json(&listed), report::batch::planned_json(&alone));
        assert_eq!(report::csv::plan(&listed).unwrap(), report::csv::plan(&alone).unwrap());
        let said = |plan: &plan::Plan<'_>| {
            plan.cautions.iter().map(|caution| (caution.code(), caution.level())).collect::<Vec<_>>()
        };
        assert_eq!(said(&listed), said(&alone));
        assert_eq!(format!("{:?}", listed.seats[0].grip), format!("{:?}", alone.seats[0].grip));
        assert!(listed.sources.is_empty() && listed.seats[0].history.points.is_empty());
        assert!(!alone.sources.is_empty() && !alone.seats[0].history.points.is_empty());
    }
}
