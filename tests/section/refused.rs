//! What cannot be is refused, with the numbers and what to do.

use crate::rows::{self, elastic, mm};
use seatwise::section::{
    Accuracy, Chamfers, Groove, Housing, Model, RingSection, Seat, Section, SectionError, Shaft, Step, Support,
};

fn refused(section: &Section) -> String {
    Model::new(section, Accuracy::Coarse).unwrap_err().to_string()
}

fn with_ring(change: impl Fn(RingSection) -> RingSection) -> Section {
    rows::plain(change(rows::ring(0.0, None)), rows::housing(90.0, 0.0, rows::open()))
}

#[test]
fn sizes_that_make_no_section() {
    let deep = Groove { depth: mm(4.5), width: mm(10.0), middle: mm(8.0) };
    let outside = Groove { depth: mm(1.0), width: mm(10.0), middle: mm(4.0) };
    let wide = Chamfers { back: mm(3.9), front: mm(3.9) };
    for (section, said) in [
        (with_ring(|ring| RingSection { bore: mm(62.0), ..ring }), "the ring has 62.0000 mm inside"),
        (with_ring(|ring| RingSection { width: mm(0.0), ..ring }), "the width of the ring is 0 m"),
        (with_ring(|ring| RingSection { width: mm(f64::NAN), ..ring }), "the width of the ring is NaN m"),
        (with_ring(|ring| RingSection { width: mm(8.0), chamfers: wide, ..ring }), "leave no seat on a ring 8.000 mm"),
        (
            with_ring(|ring| RingSection { groove: Some(deep), ..ring }),
            "a groove 4.500 mm deep from 3.000 to 13.000 mm",
        ),
        (with_ring(|ring| RingSection { groove: Some(outside), ..ring }), "from -1.000 to 9.000 mm does not fit"),
        (with_ring(|ring| RingSection { material: elastic((208.0, 0.5)), ..ring }), "the Poisson ratio is 0.5;"),
        (
            rows::plain(rows::ring(0.0, None), rows::housing(61.0, 0.0, rows::open())),
            "the housing has 62.0000 mm inside",
        ),
        (rows::plain(rows::ring(0.0, None), rows::housing(90.0, -15.0, rows::open())), "touch along 1.000 mm only"),
        (rows::plain(rows::ring(0.0, None), rows::housing(90.0, -17.0, rows::open())), "must be from -16 to"),
        (
            rows::plain(rows::ring(0.0, None), rows::housing(90.0, 0.0, rows::wall(5.0, 63.0))),
            "the shoulder has 63.0000",
        ),
        (
            rows::plain(rows::ring(0.0, None), rows::housing(90.0, 0.0, rows::wall(0.0, 40.0))),
            "thickness of the back wall",
        ),
    ] {
        let message = refused(&section);
        assert!(message.contains(said), "{message}\nand not: {said}");
    }
}

#[test]
fn steps_that_are_none() {
    let stepped = |outside: f64, position: f64| {
        let Seat::Housing(housing) = rows::housing(90.0, 4.0, rows::wall(5.0, 40.0)) else { unreachable!() };
        let step = Some(Step { outside: mm(outside), position: mm(position) });
        refused(&rows::plain(rows::ring(0.0, None), Seat::Housing(Housing { step, ..housing })))
    };
    for (outside, position, said) in [
        (62.0, 5.0, "the housing behind its step has 62.0000 mm inside and 62.0000 mm outside"),
        (80.0, 20.0, "the step from the ring's back face is 20 mm; it must be from -4.75 to 19.75 mm"),
        (80.0, -5.0, "must be from -4.75 to"),
        (80.0, f64::NAN, "is NaN mm"),
        (f64::INFINITY, 5.0, "the outside behind the step is inf m"),
    ] {
        let message = stepped(outside, position);
        assert!(message.contains(said), "{message}\nand not: {said}");
    }
}

#[test]
fn a_seat_is_finished_with_the_ring_away_and_gives_no_unit_solutions() {
    let section = with_ring(|ring| ring);
    let finished = |interference| rows::model(&section).finished(&rows::pressed(&[interference], &[0.0; 2], 0.0));
    assert!(matches!(finished(0.01), Err(SectionError::InTheWay)));
    let units = finished(-1.0).unwrap().units(&rows::pressed(&[0.01], &[0.0; 2], 0.0));
    assert!(matches!(units, Err(SectionError::Finished)));
}

#[test]
fn a_shaft_larger_than_its_shoulder() {
    let material = elastic(rows::STEEL);
    let shaft = Shaft { bore: None, front: mm(0.0), behind: mm(5.0), shoulder: Some(mm(50.0)), material };
    let section = rows::plain(rows::ring(0.0, None), Seat::Shaft(shaft));
    assert!(refused(&section).contains("the shoulder has 52.0000 mm inside and 50.0000 mm outside"));
}

#[test]
fn loads_that_do_not_belong() {
    let section = with_ring(|ring| ring);
    let model = rows::model(&section);
    let solve = |loads| model.solve(&loads).unwrap_err();
    let contact = &model.solve(&rows::pressed(&[0.03], &[0.0; 2], 0.0)).unwrap().contacts[0];
    assert!(contact.press_force(1.1).unwrap_err().to_string().contains("coefficient of friction is 1.1"));
    assert!((contact.press_force(0.12).unwrap() / contact.normal_force).value > 0.119);
    let few = solve(rows::pressed(&[0.03, 0.01], &[0.0; 2], 0.0));
    assert_eq!(few, SectionError::WrongLoads { what: "interferences", given: 2, needed: 1 });
    assert!(solve(rows::pressed(&[0.03], &[0.0; 3], 0.0)).to_string().contains("the section needs 2"));
    assert!(solve(rows::pressed(&[2.0], &[0.0; 2], 0.0)).to_string().contains("must be from -62 to 1.24 mm"));
    assert!(solve(rows::pressed(&[f64::NAN], &[0.0; 2], 0.0)).to_string().contains("interference is NaN"));
    assert!(solve(rows::pressed(&[0.03], &[0.0; 2], 10.0)).to_string().contains("nothing holds the seat"));
    let open = Section { support: Support::Front, ..section };
    let message = rows::model(&open).solve(&rows::pressed(&[0.03], &[0.0; 2], 10.0)).unwrap_err().to_string();
    assert!(message.contains("nothing is behind the ring"), "{message}");
}
