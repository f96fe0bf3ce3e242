//! Temperatures of a seat in its section, beside those of one body for each piece.

use super::show::Show;
use crate::plan::in_section::{PieceHeat, Race, SectionHeat};
use crate::plan::{Plan, SeatPlan};
use crate::quantity::{Length, Time, Toward, show_duration};
use crate::report::words;

/// What conduction in the section says.
pub(super) fn text(plan: &Plan<'_>, seat: &SeatPlan, heat: &SectionHeat, show: Show) -> String {
    let mut text = "Temperatures by conduction in the section of the seat (finite elements):".to_owned();
    for followed in &heat.pieces {
        text.push_str(&of_piece(plan, followed, show));
    }
    let least = heat.along.iter().map(|(_, clearance)| *clearance).reduce(Length::min).unwrap_or_default();
    text.push_str(&format!(
        " At the seat the tightest case has {} in the mean and {} at the tightest place",
        show.small(seat.at_bore.clearance.tightest, Toward::Down),
        show.small(least, Toward::Down)
    ));
    text.push_str(&format!(
        "; with one temperature for each body it would be {}",
        show.small(heat.one_body.clearance, Toward::Down)
    ));
    if let Some(race) = &heat.race {
        text.push_str(&in_seat(race, heat.one_body.grip));
    }
    text + "."
}

fn of_piece(plan: &Plan<'_>, followed: &PieceHeat, show: Show) -> String {
    let (end, stress) = (&followed.end, &followed.stress);
    format!(
        " the {} comes out at {} in the mean, {} to {} across it, as large at its seat as one of {} throughout (as one body {}); \
         its uneven temperature strains it to {} ({}), {:.0} % of its strength.",
        words::piece(plan.job, followed.piece),
        show.temperature(end.mean),
        show.temperature(end.least),
        show.temperature(end.most),
        show.temperature(end.fit),
        show.temperature(followed.one_body_end),
        show.pressure(stress.stress),
        if stress.brittle { "largest tension" } else { "von Mises" },
        (100.0 * stress.share).ceil(),
    )
}

fn in_seat(race: &Race, one_body: Option<Time>) -> String {
    let down = |time: Time| show_duration(time, Toward::Down);
    let or = |time: Option<Time>| time.map_or_else(|| "not while it is followed".to_owned(), down);
    let touch = race.first_touch.map_or_else(String::new, |touch| format!("first touches after {}, ", down(touch)));
    format!(
        ". In the seat it {touch}grips after {} ({} lying on one side, {} as two bodies)",
        or(race.grip.tightest),
        or(race.one_sided),
        or(one_body)
    )
}
