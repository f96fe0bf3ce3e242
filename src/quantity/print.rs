//! Quantities as a report prints them: rounded once, to the safe side, in metric or inch units.
//!
//! Every writer takes the side of rounding, [`Toward`]; the caller knows which side is safe. A number that is not
//! finite is printed as "not known".

use super::rounding::{Rounded, decimals, to_figures};
use super::unit::Unit;
use super::{
    AngularVelocity, Deviations, Force, HeatCapacity, HeatTransfer, Length, Mass, Power, Pressure, Ratio, Roughness,
    System, TemperatureInterval, ThermodynamicTemperature, Time, Torque, Toward, Velocity, to_step, units,
};
use uom::si::{
    angular_velocity::radian_per_second,
    force::newton,
    heat_capacity::joule_per_kelvin,
    heat_transfer::watt_per_square_meter_kelvin,
    length::meter,
    mass::kilogram,
    power::watt,
    pressure::pascal,
    ratio::ratio,
    temperature_interval as step, thermodynamic_temperature as level,
    time::second,
    torque::newton_meter,
    velocity::{foot_per_minute, meter_per_second},
};

/// A size: "62.000 mm" or "2.44094 in".
pub fn show_size(size: Length, system: System, toward: Toward) -> String {
    let (unit, finest) = pick(system, (&units::MM, 1e-3), (&units::INCHES, 1e-5));
    fixed(unit.number(size.get::<meter>()), finest, unit.name(), toward)
}

/// A size that a caliper is good enough for: "52.4 mm" or "2.06 in".
pub fn show_rough_size(size: Length, system: System, toward: Toward) -> String {
    let (unit, finest) = pick(system, (&units::MM, 0.1), (&units::INCHES, 0.01));
    fixed(unit.number(size.get::<meter>()), finest, unit.name(), toward)
}

/// A height above the sea, whole: "914 m" or "3000 ft".
pub fn show_elevation(height: Length, system: System, toward: Toward) -> String {
    let unit = pick(system, &units::METRES, &units::FEET);
    fixed(unit.number(height.get::<meter>()), 1.0, unit.name(), toward)
}

/// A small length, with a sign only when negative: "-13 µm", "6.5 µm" or "-0.51 thou".
///
/// Thousandths have two decimals whatever they are, so that a column has one resolution: "1.00 thou" beside "0.35 thou".
pub fn show_small_length(length: Length, system: System, toward: Toward) -> String {
    let metres = length.get::<meter>();
    match system {
        System::Metric => {
            let unit = &units::MICROMETRE;
            shortest(unit.number(metres), 0.1, unit.name(), toward)
        }
        System::Inch => {
            let unit = &units::THOU;
            fixed(unit.number(metres), 0.01, unit.name(), toward)
        }
    }
}

/// A deviation, with its sign unless it is 0, which is exact and bare: "+8 µm", "-0.51 thou" or "0 thou".
pub fn show_deviation(deviation: Length, system: System, toward: Toward) -> String {
    let text = show_small_length(deviation, system, toward);
    let (number, unit) = text.split_once(' ').unwrap_or((&text, ""));
    if number.chars().all(|c| c == '0' || c == '.') {
        format!("0 {unit}")
    } else if number.starts_with(|c: char| c.is_ascii_digit()) {
        format!("+{text}")
    } else {
        text
    }
}

/// A pair of limit deviations, lower first, to the nearest step: "-13/0 µm" or "-0.51/0 thou".
pub fn show_limits(limits: Deviations, system: System) -> String {
    let [lower, upper] = [limits.lower, limits.upper].map(|d| show_deviation(d.length(), system, Toward::Nearest));
    let lower = lower.split(' ').next().unwrap_or_default();
    format!("{lower}/{upper}")
}

/// A roughness: "Ra 1.6 µm" or "Rz 250 µin".
pub fn show_roughness(roughness: Roughness, system: System, toward: Toward) -> String {
    let name = match roughness {
        Roughness::Ra(_) => "Ra",
        Roughness::Rz(_) => "Rz",
    };
    let (unit, finest) = pick(system, (&units::MICROMETRE, 0.01), (&units::MICROINCH, 1.0));
    format!("{name} {}", figures(roughness.height().get::<meter>(), unit, (2, finest), toward))
}

/// A temperature with a number of decimals: "90 °C" or "194 °F".
pub fn show_temperature(
    temperature: ThermodynamicTemperature,
    system: System,
    places: usize,
    toward: Toward,
) -> String {
    let unit = pick(system, &units::CELSIUS, &units::FAHRENHEIT);
    let finest = 10f64.powi(-(places.min(9) as i32));
    fixed(unit.number(temperature.get::<level::kelvin>()), finest, unit.name(), toward)
}

/// A difference of temperatures: "10 K" or "18 °F difference", with one decimal below 10.
///
/// "18 °F" alone would read as a temperature.
pub fn show_temperature_step(difference: TemperatureInterval, system: System, toward: Toward) -> String {
    let (unit, name) = pick(system, (&units::KELVIN_STEP, "K"), (&units::FAHRENHEIT_STEP, "°F difference"));
    let number = unit.number(difference.get::<step::kelvin>());
    shortest(number, if number.abs() < 10.0 { 0.1 } else { 1.0 }, name, toward)
}

/// A time: "8 s", "2 min 05 s" below ten minutes, "28 min" below an hour, "1 h 20 min" above.
pub fn show_duration(time: Time, toward: Toward) -> String {
    let seconds = time.get::<second>();
    if !seconds.is_finite() {
        return NOT_KNOWN.to_owned();
    }
    let rounded = to_step(seconds, if seconds.abs() < 600.0 { 1.0 } else { 60.0 }, toward);
    let sign = if rounded < 0.0 { "-" } else { "" };
    let whole = rounded.abs() as u64;
    let (hours, minutes, rest) = (whole / 3600, whole / 60 % 60, whole % 60);
    match whole {
        0..60 => format!("{sign}{rest} s"),
        60..600 => format!("{sign}{minutes} min {rest:02} s"),
        600..3600 => format!("{sign}{minutes} min"),
        _ => format!("{sign}{hours} h {minutes:02} min"),
    }
}

/// A force to two figures, whole below 100: "4.4 kN", "45 N" or "990 lbf".
pub fn show_force(force: Force, system: System, toward: Toward) -> String {
    let newtons = force.get::<newton>();
    match system {
        System::Metric => in_thousands(newtons, (&units::NEWTON, &units::KILONEWTON), (2, 1.0), toward),
        System::Inch => figures(newtons, &units::POUNDS_FORCE, (2, 1.0), toward),
    }
}

/// A pressure or stress to three figures: "8.14 MPa" or "1180 psi".
pub fn show_pressure(pressure: Pressure, system: System, toward: Toward) -> String {
    let (unit, finest) = pick(system, (&units::MEGAPASCAL, 0.01), (&units::PSI, 1.0));
    figures(pressure.get::<pascal>(), unit, (3, finest), toward)
}

/// A torque to three figures: "13.6 N·m", "120 in·lb" below 12 ft·lb, or "120 ft·lb".
pub fn show_torque(torque: Torque, system: System, toward: Toward) -> String {
    const INCH_POUNDS_END: f64 = 12.0;
    let newton_metres = torque.get::<newton_meter>();
    let small = units::FOOT_POUND.number(newton_metres).abs() < INCH_POUNDS_END;
    let inch = if small { &units::INCH_POUND } else { &units::FOOT_POUND };
    figures(newton_metres, pick(system, &units::NEWTON_METRE, inch), (3, 0.1), toward)
}

/// A torque in every unit that a spanner is marked in: "10.2 N·m (90.0 in·lb, 7.50 ft·lb, 1.04 kgf·m)".
pub fn show_torque_in_each(torque: Torque, toward: Toward) -> String {
    let newton_metres = torque.get::<newton_meter>();
    let shown = |unit, finest| figures(newton_metres, unit, (3, finest), toward);
    format!(
        "{} ({}, {}, {})",
        shown(&units::NEWTON_METRE, 0.1),
        shown(&units::INCH_POUND, 0.1),
        shown(&units::FOOT_POUND, 0.01),
        shown(&units::KILOGRAM_FORCE_METRE, 0.001)
    )
}

/// A mass to three figures: "0.204 kg" or "0.450 lb".
pub fn show_mass(mass: Mass, system: System, toward: Toward) -> String {
    figures(mass.get::<kilogram>(), pick(system, &units::KILOGRAM, &units::POUNDS), (3, 1e-3), toward)
}

/// A heat transfer coefficient to two figures: "12 W/(m²·K)" or "2.1 Btu/(h·ft²·°F)".
pub fn show_film_coefficient(film: HeatTransfer, system: System, toward: Toward) -> String {
    let (unit, finest) = pick(system, (&units::FILM_METRIC, 0.1), (&units::FILM_INCH, 0.01));
    figures(film.get::<watt_per_square_meter_kelvin>(), unit, (2, finest), toward)
}

/// A power to three figures: "950 W", "1.50 kW" or "5120 Btu/h".
pub fn show_power(power: Power, system: System, toward: Toward) -> String {
    let watts = power.get::<watt>();
    match system {
        System::Metric => in_thousands(watts, (&units::WATT, &units::KILOWATT), (3, 0.1), toward),
        System::Inch => figures(watts, &units::BTU_PER_HOUR, (3, 0.1), toward),
    }
}

/// A speed of turning to three figures: "3000 rpm".
pub fn show_speed_of_turning(speed: AngularVelocity, toward: Toward) -> String {
    figures(speed.get::<radian_per_second>(), &units::REVOLUTIONS_PER_MINUTE, (3, 1.0), toward)
}

/// The speed of a surface: "5.5 m/s", or whole feet a minute, "1083 ft/min".
pub fn show_surface_speed(speed: Velocity, system: System, toward: Toward) -> String {
    match system {
        System::Metric => fixed(speed.get::<meter_per_second>(), 0.1, "m/s", toward),
        System::Inch => fixed(speed.get::<foot_per_minute>(), 1.0, "ft/min", toward),
    }
}

/// The heat capacity of a whole body to three figures: "20.0 kJ/K" or "10.5 Btu/°F".
pub fn show_body_heat_capacity(capacity: HeatCapacity, system: System, toward: Toward) -> String {
    let (unit, finest) = pick(system, (&units::KILOJOULE_PER_KELVIN, 0.001), (&units::BTU_PER_FAHRENHEIT, 0.001));
    figures(capacity.get::<joule_per_kelvin>(), unit, (3, finest), toward)
}

/// A share to two figures: "55 %" or "0.066 %". Nearly all prints as "100 %" unless rounded down.
pub fn show_share(share: Ratio, toward: Toward) -> String {
    figures(share.get::<ratio>(), &units::PERCENT, (2, 1e-3), toward)
}

const NOT_KNOWN: &str = "not known";

/// Significant figures, and the finest step that is printed whatever they are.
type Figures = (i32, f64);

fn pick<T>(system: System, metric: T, inch: T) -> T {
    match system {
        System::Metric => metric,
        System::Inch => inch,
    }
}

/// A number to a fixed step.
fn fixed(number: f64, finest: f64, unit: &str, toward: Toward) -> String {
    write(Rounded { value: to_step(number, finest, toward), step: finest }, unit)
}

/// As [`fixed`], without decimals that are all 0.
fn shortest(number: f64, finest: f64, unit: &str, toward: Toward) -> String {
    let value = to_step(number, finest, toward);
    let whole = to_step(value, 1.0, Toward::Nearest);
    let step = if (value - whole).abs() < finest / 2.0 && finest < 1.0 { 1.0 } else { finest };
    write(Rounded { value, step }, unit)
}

/// A quantity (SI) to a number of significant figures.
fn figures(si: f64, unit: &Unit, (count, finest): Figures, toward: Toward) -> String {
    write(to_figures(unit.number(si), count, finest, toward), unit.name())
}

/// As [`figures`], in the greater unit from a thousand upward.
fn in_thousands(si: f64, (unit, thousand): (&Unit, &Unit), (count, finest): Figures, toward: Toward) -> String {
    let rounded = to_figures(unit.number(si), count, finest, toward);
    if rounded.value.abs() < 1000.0 {
        return write(rounded, unit.name());
    }
    write(Rounded { value: rounded.value / 1000.0, step: rounded.step / 1000.0 }, thousand.name())
}

fn write(rounded: Rounded, unit: &str) -> String {
    if !rounded.value.is_finite() {
        return NOT_KNOWN.to_owned();
    }
    let value = if rounded.value.abs() < rounded.step / 2.0 { 0.0 } else { rounded.value };
    format!("{value:.places$} {unit}", places = decimals(rounded.step))
}
