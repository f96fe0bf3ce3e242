//! What table and picture say alike.

use crate::plan::SeatKind;
use crate::plan::drawing::{Moment, SectionPlan};
use crate::quantity::{
    Length, System, Toward, show_pressure, show_rough_size, show_size, show_small_length, show_temperature,
};
use crate::section::{Housing, Seat};

/// "38.2 µm of interference on the diameter", or the clearance.
fn interference(seat: &SectionPlan, system: System) -> String {
    let open = seat.interference < Length::default();
    let (size, what) = if open { (-seat.interference, "clearance") } else { (seat.interference, "interference") };
    format!("{} of {what} on the diameter", show_small_length(size, system, Toward::Nearest))
}

/// The answer in a sentence.
pub(crate) fn title(seat: &SectionPlan, system: System) -> String {
    if !seat.touches() {
        return format!("The {} is free in its seat {}", seat.ring, seat.moment.words());
    }
    let pressure = show_pressure(seat.state.contacts[0].mean_pressure, system, Toward::Nearest);
    let change = seat.closing.map(|closing| {
        let verb = if seat.seat == SeatKind::Housing { "closes" } else { "grows" };
        format!(", and it {verb} by {}", show_small_length(closing.raceway, system, Toward::Nearest))
    });
    format!("{pressure} on the {}{}", seat.ring, change.unwrap_or_default())
}

/// Seat, moment and case in a line.
pub(crate) fn readings(seat: &SectionPlan, system: System) -> String {
    let [inner, outer] = seat.temperatures.map(|at| show_temperature(at, system, 0, Toward::Nearest));
    let size = show_rough(seat.nominal, system);
    let warm = if seat.moment == Moment::Room {
        format!("both at {inner}")
    } else {
        format!("{}: {} at {inner}, {} at {outer}", seat.moment.words(), seat.parts[0], outer_parts(seat))
    };
    format!("{} seat, {size}; {warm}; {} case, {}", seat.seat.name(), seat.case.name(), interference(seat, system))
}

/// "housing", or "liner and housing".
fn outer_parts(seat: &SectionPlan) -> String {
    seat.parts[1..].join(" and ")
}

/// What has an inner corner beside which nothing is read.
pub(crate) fn corner(seat: &SectionPlan) -> Option<&'static str> {
    let stepped = matches!(seat.section.seat, Seat::Housing(Housing { step: Some(_), .. }));
    match (seat.state.wall.is_some(), stepped) {
        (true, true) => Some("shoulder and of the step"),
        (true, false) => Some("shoulder"),
        (false, true) => Some("step"),
        (false, false) => None,
    }
}

/// Where nothing is read, and why.
pub(crate) fn unread(seat: &SectionPlan, system: System) -> String {
    if seat.field.singular.is_empty() {
        return "Pressure and stress are read up to the ends of the contact: no part goes on beyond them.".to_owned();
    }
    let corner = corner(seat).map_or(String::new(), |of| format!(", and of the inner corner of the {of}"));
    let distance = show_rough_size(seat.field.unread, system, Toward::Nearest);
    format!(
        "Pressure and stress are not read within {distance} of an end of the contact beyond which a part goes on{corner}: \
         elasticity sets no limit there, and a finer mesh only shows more."
    )
}

/// A nominal size without the noise of its conversion: "62 mm", "2.4409 in".
fn show_rough(size: Length, system: System) -> String {
    let text = show_size(size, system, Toward::Nearest);
    let Some((number, unit)) = text.split_once(' ') else { return text };
    format!("{} {unit}", number.trim_end_matches('0').trim_end_matches('.'))
}
