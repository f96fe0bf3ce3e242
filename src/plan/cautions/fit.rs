use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::model::SeatPlan;
use crate::plan::sentence::say;
use crate::quantity::{Length, Toward};

const UNCERTAINTY: &str = "ISO 14253-1 (decision rules with measuring uncertainty), from memory";

/// What the fit at 20 °C itself asks to be said.
pub(super) fn of_seat(seat: &SeatPlan, found: &mut Vec<Caution>) {
    let (zero, clearance) = (Length::default(), seat.fit.clearance);
    if let Some(uncertainty) = seat.fit.uncertainty.filter(|_| seat.fit.undecided()) {
        let sentence = say(format!("{} seat: the measurement cannot decide. It is uncertain by ", seat.seat.name()))
            .small(uncertainty, Toward::Up)
            .text(", and the joint may have anything from ")
            .small(-clearance.tightest, Toward::Nearest)
            .text(" of interference to ")
            .small(clearance.loosest, Toward::Nearest)
            .text(" of clearance. Measure bore and ring again with a bore gauge and a micrometer of finer reading.");
        found.push(Caution::new("cannot-decide", Level::Warning, sentence, UNCERTAINTY));
    } else if clearance.tightest >= zero {
        let sentence = say(format!("{} seat: the fit is loose in every case, by ", seat.seat.name()))
            .small(clearance.tightest, Toward::Down)
            .text(" to ")
            .small(clearance.loosest, Toward::Up)
            .text(". A ring that turns with its load will creep in its seat: check that this class is wanted, and what holds the \
                   part in its place.");
        found.push(Caution::new("loose-fit", Level::Caution, sentence, PRACTICE));
    } else if clearance.loosest > zero {
        let sentence = say(format!("{} seat: part of the band is loose at 20 °C, by up to ", seat.seat.name()))
            .small(clearance.loosest, Toward::Up)
            .text(". Measure both parts, or choose a tighter class, if the ring must not creep.");
        found.push(Caution::new("loose-in-part", Level::Caution, sentence, PRACTICE));
    }
}
