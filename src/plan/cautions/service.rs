use crate::job::ServiceEnd;
use crate::plan::caution::{Caution, Level};
use crate::plan::model::SeatPlan;
use crate::plan::sentence::say;
use crate::quantity::{Length, Toward};

const EXPANSION: &str = "thermal expansion of both materials (see sources)";

/// Whether the fit keeps its grip in service.
pub(super) fn of_seat(seat: &SeatPlan, found: &mut Vec<Caution>) {
    for state in &seat.service {
        let clearance = state.clearance;
        if clearance.loosest <= Length::default() {
            continue;
        }
        let end = match state.end {
            ServiceEnd::Coldest => "coldest",
            ServiceEnd::Hottest => "hottest",
        };
        let share =
            if clearance.tightest > Length::default() { "every case is loose" } else { "part of the band is loose" };
        let sentence = say(format!("{} seat, {end} in service: {share}, by up to ", seat.seat.name()))
            .small(clearance.loosest, Toward::Up)
            .text(". Choose a tighter class, or hold the ring by other means, if it must not creep.");
        found.push(Caution::new("loose-in-service", Level::Warning, sentence, EXPANSION));
    }
}
