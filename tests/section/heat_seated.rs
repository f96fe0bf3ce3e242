//! A cold ring in a warm housing, against independent finite elements.

use crate::checked::prove;
pub use crate::checked::section_seated::{gap, seated};
use crate::heat_alone::{aluminium, film, in_celsius, reference_section, seconds, steel};
use crate::rows::mm;
use seatwise::quantity::celsius;
use seatwise::section::heat::{Conduction, Growth, Placement, Stage, Until};
use seatwise::section::{Accuracy, Model};

#[test]
fn contact_comes_when_the_reference_says() {
    let moments = prove("A ring until it grips").iter().filter(|check| check.unit == "µm").count();
    assert!(moments >= 24, "{moments}");
}

/// A part that is given one temperature has it everywhere, and the other keeps its own.
#[test]
fn a_part_may_be_given_one_temperature() {
    let model = Model::new(&reference_section(52.0), Accuracy::Coarse).unwrap();
    let conduction = Conduction::new(&model, &[steel(), aluminium()]).unwrap();
    let start = conduction.uniform(&[celsius(-70.0), celsius(80.0)]).unwrap();
    assert_eq!(
        start.clone().with_even(0, celsius(5.0)).unwrap(),
        conduction.uniform(&[celsius(5.0), celsius(80.0)]).unwrap()
    );
    assert!(start.clone().with_even(2, celsius(5.0)).is_err() && start.with_even(1, celsius(-300.0)).is_err());
}

/// A stage that begins with the seat closed is over at once, and the next one begins from the same temperatures.
#[test]
fn a_seat_that_begins_closed_has_gripped() {
    let model = Model::new(&reference_section(52.0), Accuracy::Coarse).unwrap();
    let conduction = Conduction::new(&model, &[steel(), aluminium()]).unwrap();
    let air = film(10.0, 20.0);
    let stage = || seated(&air, (mm(0.03), gap(Placement::Concentric), Growth::Mean), 5.0);
    let closed = Stage { until: Until::Elapsed(seconds(2.0)), ..stage() };
    let start = conduction.uniform(&[celsius(40.0), celsius(20.0)]).unwrap();
    let history = conduction.run(&start, &[stage(), closed]).unwrap();
    let stages = history.stages();
    assert!(stages[0].grip.is_some_and(|grip| grip == seconds(0.0)) && stages[0].to == seconds(0.0), "{stages:?}");
    assert!((stages[1].to - seconds(2.0)).abs() < seconds(1e-9));
    // Metal contact evens the two out within seconds.
    let at = |part: usize, time: f64| in_celsius(history.part(part, seconds(time)).unwrap().mean);
    assert!((at(0, 0.0) - 40.0).abs() < 1e-9 && at(0, 2.0) < 30.0 && at(1, 2.0) > 21.0, "{}", at(0, 2.0));
}
