//! What a shop writes, and what it would never write.

use super::{can_be_underlined, cases};
use proptest::prelude::*;
use seatwise::fit::{self, Ring, RingClass, ToleranceClass};
use seatwise::quantity::{self as q, Nanometres, QuantityError, System, Toward};
use seatwise::stock::closure::Closure;
use seatwise::stock::dimensions::Designation;
use seatwise::stock::threads::Thread;
use uom::si::f64::{Force, Length, Pressure, ThermodynamicTemperature, Time, Torque};
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::{force::newton, length::meter, pressure::pascal, time::second, torque::newton_meter};

/// Signs and words that stand in quantities, and some that do not.
#[rustfmt::skip]
pub const PIECES: &[&str] = &[
    "0", "1", "7", "62", "-", "+", "−", "–", "±", "/", ".", ",", "e", "1e308", "-1e-320", "99999999999999999999", " ",
    "\u{a0}", "\u{2009}", "\t", "\n", "mm", "um", "µm", "μm", "in", "\"", "'", "ft", "thou", "mil", "tenths", "°C", "℃",
    "°F", "K", "N", "kN", "lbf", "N·m", "in·lb", "MPa", "psi", "kg", "lb", "oz", "min", "h", "s", "d", ":", "m3", "1/K",
    "W/m2K", "W/(m² K)", "J/kgK", "W/mK", "kg/m3", "rpm", "%", "Ra", "Rz", "H7", "zc18", "js", "IT", "to", "at", "½",
    "Ø", "３", "٣", "NaN", "inf", "∞", "M12", "x1.5", "G1/2", "UNF", "6206", "-2RS", "C3", "ISO 492", "P6", "4", "\u{0}",
    "\u{202e}", "e\u{301}", "👨\u{200d}🔧", "ß", "İ", "x",
];

/// A reader of a quantity, with the value in SI.
type Read = fn(&str) -> Result<f64, QuantityError>;

const READERS: &[Read] = &[
    |text| Ok(q::length(text)?.value.value),
    |text| Ok(q::coordinate(text)?.value.value),
    |text| Ok(q::deviation(text)?.value.value),
    |text| Ok(q::temperature(text)?.value.value),
    |text| Ok(q::temperature_step(text)?.value.value),
    |text| Ok(q::duration(text)?.value.value),
    |text| Ok(q::mass(text)?.value.value),
    |text| Ok(q::pressure(text)?.value.value),
    |text| Ok(q::force(text)?.value.value),
    |text| Ok(q::torque(text)?.value.value),
    |text| Ok(q::power(text)?.value.value),
    |text| Ok(q::film_coefficient(text)?.value.value),
    |text| Ok(q::share(text)?.value.value),
    |text| Ok(q::number(text)?.value),
    |text| Ok(q::volume(text)?.value.value),
    |text| Ok(q::density(text)?.value.value),
    |text| Ok(q::expansion_coefficient(text)?.value.value),
    |text| Ok(q::heat_capacity(text)?.value.value),
    |text| Ok(q::speed_of_turning(text)?.value.value),
    |text| Ok(q::body_heat_capacity(text)?.value.value),
    |text| Ok(q::conductivity(text)?.value.value),
    |text| Ok(q::roughness(text)?.value.height().value),
    |text| Ok(q::limits(text)?.value.upper.mm() - q::limits(text)?.value.lower.mm()),
    |text| Ok(q::sized_limits(text)?.value.nominal.mm()),
];

/// A few pieces one after the other; one text in eight has hundreds.
pub fn text() -> impl Strategy<Value = String> {
    let pieces = || proptest::sample::select(PIECES);
    prop_oneof![
        4 => proptest::collection::vec(pieces(), 0..9).prop_map(|pieces| pieces.concat()),
        // What is nearly right goes deeper: a number, then words.
        3 => (-1e4..1e4_f64, 0..5_usize, proptest::collection::vec(pieces(), 1..4))
            .prop_map(|(number, places, words)| format!("{number:.places$} {}", words.concat())),
        1 => proptest::collection::vec(pieces(), 100..400).prop_map(|pieces| pieces.concat()),
    ]
}

proptest! {
    #![proptest_config(cases(400))]

    #[test]
    fn any_text_is_a_finite_quantity_or_is_refused_at_a_place_in_it(text in text()) {
        for (number, read) in READERS.iter().enumerate() {
            match read(&text) {
                Ok(value) => prop_assert!(value.is_finite(), "reader {number}: {text:?} is {value}"),
                Err(error) => {
                    prop_assert!(can_be_underlined(&text, &error.at), "reader {number}: {text:?} at {:?}", error.at);
                    prop_assert!(!error.help.is_empty() && error.problem.len() < 2000, "reader {number}: {error}");
                }
            }
        }
    }

    #[test]
    fn any_text_is_a_name_or_is_refused(text in text(), size in 1..4_000_000_000_i64) {
        // A class or a designation that is understood has limits, or a reason why not.
        let nominal = Nanometres(size);
        if let Ok(class) = ToleranceClass::parse(&text)
            && let Ok(limits) = fit::limits_of_size(nominal, class)
        {
            prop_assert!(limits.deviations.lower <= limits.deviations.upper, "{text:?} at {size} nm");
        }
        if let Ok(class) = RingClass::parse(&text) {
            for ring in [Ring::Outer, Ring::Inner] {
                let _ = fit::ring_limits(nominal, class, ring);
            }
        }
        let _ = (Designation::parse(&text), Thread::parse(&text), Closure::parse(&text));
    }

    #[test]
    fn any_number_is_printed(bits in any::<u64>()) {
        // Of every size, sign and kind: a report must not fall over a value that a library user hands it.
        let value = f64::from_bits(bits);
        for system in [System::Metric, System::Inch] {
            for toward in [Toward::Nearest, Toward::Up, Toward::Down] {
                let printed = [
                    q::show_size(Length::new::<meter>(value), system, toward),
                    q::show_small_length(Length::new::<meter>(value), system, toward),
                    q::show_force(Force::new::<newton>(value), system, toward),
                    q::show_pressure(Pressure::new::<pascal>(value), system, toward),
                    q::show_torque(Torque::new::<newton_meter>(value), system, toward),
                    q::show_temperature(ThermodynamicTemperature::new::<kelvin>(value), system, 1, toward),
                    q::show_duration(Time::new::<second>(value), toward),
                ];
                prop_assert!(printed.iter().all(|text| !text.is_empty() && text.len() < 700), "{printed:?}");
            }
        }
    }
}
