//! Quantities and sentences in the chosen system of units. All rounding of a report happens here.

use crate::job::{AnyValue, Job, Piece};
use crate::plan::{Sentence, Word};
use crate::quantity::{
    Angle, Length, Mass, System, Toward, show_body_heat_capacity, show_duration, show_elevation, show_film_coefficient,
    show_force, show_limits, show_mass, show_power, show_pressure, show_rough_size, show_roughness, show_share,
    show_size, show_small_length, show_speed_of_turning, show_surface_speed, show_temperature, show_temperature_step,
    show_torque, to_step,
};
use uom::si::angle::degree;
use uom::si::length::{microinch, micrometer};
use uom::si::mass::gram;
use uom::si::ratio::ratio;

/// The word that a job uses for a piece.
pub(crate) fn piece(job: &Job, piece: Piece) -> &'static str {
    match piece {
        Piece::Part => job.part.kind.noun(),
        Piece::Housing => "housing",
        Piece::Shaft => "shaft",
    }
}

/// A value, to the nearest step that its kind is printed in.
pub(crate) fn value(value: &AnyValue, system: System) -> String {
    rounded(value, system, Toward::Nearest)
}

fn rounded(value: &AnyValue, system: System, toward: Toward) -> String {
    match value {
        AnyValue::Size(length) => show_size(*length, system, toward),
        AnyValue::RoughSize(length) => show_rough_size(*length, system, toward),
        AnyValue::SmallLength(length) => small_length(*length, system, toward),
        AnyValue::Elevation(height) => show_elevation(*height, system, toward),
        AnyValue::Limits(limits) => show_limits(*limits, system),
        AnyValue::Temperature(temperature) => show_temperature(*temperature, system, 0, toward),
        AnyValue::TemperatureStep(step) => show_temperature_step(*step, system, toward),
        AnyValue::Duration(time) => show_duration(*time, toward),
        AnyValue::Mass(mass) => show_mass(*mass, system, toward),
        AnyValue::SmallMass(mass) => grams(*mass, toward),
        AnyValue::Force(force) => show_force(*force, system, toward),
        AnyValue::Torque(torque) => show_torque(*torque, system, toward),
        AnyValue::Angle(angle) => turned(*angle, toward),
        AnyValue::Pressure(pressure) => show_pressure(*pressure, system, toward),
        AnyValue::Power(power) => show_power(*power, system, toward),
        AnyValue::BodyHeat(capacity) => show_body_heat_capacity(*capacity, system, toward),
        AnyValue::Turning(speed) => show_speed_of_turning(*speed, toward),
        AnyValue::Roughness(roughness) => show_roughness(*roughness, system, toward),
        AnyValue::SurfaceSpeed(speed) => show_surface_speed(*speed, system, toward),
        AnyValue::Film(low, high) => film(*low, *high, system),
        AnyValue::Share(share) => show_share(*share, toward),
        AnyValue::Number(number) => plain(*number, toward),
        AnyValue::Text(text) => text.clone(),
    }
}

/// A deviation or a clearance. A figure that is rounded to one side is the result of a calculation and is given to a whole
/// micrometre or a tenth of a thousandth of an inch; a tenth of a micrometre would promise what no shop can hold.
pub(crate) fn small_length(length: Length, system: System, toward: Toward) -> String {
    if toward == Toward::Nearest {
        return show_small_length(length, system, toward);
    }
    let step = match system {
        System::Metric => Length::new::<micrometer>(1.0),
        System::Inch => Length::new::<microinch>(100.0),
    };
    let rounded = to_step((length / step).get::<ratio>(), 1.0, toward) * step;
    show_small_length(rounded, system, Toward::Nearest)
}

fn film(low: crate::quantity::HeatTransfer, high: crate::quantity::HeatTransfer, system: System) -> String {
    let (low, high) =
        (show_film_coefficient(low, system, Toward::Nearest), show_film_coefficient(high, system, Toward::Nearest));
    if low == high { low } else { format!("{low} to {high}") }
}

/// Grams to one decimal; a shop that works in inches weighs small things in grams too.
fn grams(mass: Mass, toward: Toward) -> String {
    format!("{:.1} g", to_step(mass.get::<gram>(), 0.1, toward))
}

/// An angle to a whole degree.
pub(crate) fn turned(angle: Angle, toward: Toward) -> String {
    format!("{:.0}°", to_step(angle.get::<degree>(), 1.0, toward))
}

/// A plain number to two decimals.
pub(crate) fn plain(number: f64, toward: Toward) -> String {
    let text = format!("{:.2}", crate::quantity::to_step(number, 0.01, toward));
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// A sentence with its quantities in `system`.
pub(crate) fn sentence(sentence: &Sentence, system: System) -> String {
    sentence.words.iter().map(|word| one_word(word, system)).collect()
}

fn one_word(word: &Word, system: System) -> String {
    match word {
        Word::Text(text) => text.to_string(),
        Word::Value(value, toward) => rounded(value, system, *toward),
    }
}
