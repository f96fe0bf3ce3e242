//! Quantities with the figures that it takes to work with them by hand.

use super::rounding::{Rounded, decimals, to_figures};
use super::unit::{Kind, Unit};
use super::units::{
    CELSIUS, FAHRENHEIT, FILM_INCH, FILM_METRIC, INCH_POUND, INCHES, KILOGRAM, KILONEWTON, MEGAPASCAL, MICROMETRE, MM,
    NEWTON, NEWTON_METRE, POUNDS, POUNDS_FORCE, PSI, THOU,
};
use super::{
    Area, Force, HeatTransfer, Length, Mass, Pressure, System, TemperatureInterval, ThermodynamicTemperature, Time,
    Torque, Toward, to_step,
};
use uom::si::f64::{SpecificHeatCapacity, TemperatureCoefficient};
use uom::si::{
    area::square_meter, force::newton, heat_transfer::watt_per_square_meter_kelvin, length::meter, mass::kilogram,
    pressure::pascal, specific_heat_capacity::joule_per_kilogram_kelvin, temperature_coefficient::per_kelvin,
    temperature_interval, thermodynamic_temperature::kelvin, time::second, torque::newton_meter,
};

/// A quantity as a person who works it through needs it: with enough figures, and never rounded to a safe side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Worked {
    /// A diameter, to a tenth of a micrometre.
    Size(Length),
    /// A diameter or length for which a hundredth of a millimetre will do.
    RoughSize(Length),
    /// A small length.
    Small(Length),
    /// A change of length for each length.
    Strain(f64),
    /// A temperature.
    Temperature(ThermodynamicTemperature),
    /// A difference of temperatures.
    Step(TemperatureInterval),
    /// An elastic modulus.
    Modulus(Pressure),
    /// A pressure or stress.
    Pressure(Pressure),
    /// A force.
    Force(Force),
    /// A torque.
    Torque(Torque),
    /// A time.
    Time(Time),
    /// A plain number.
    Number(f64),
    /// A mass.
    Mass(Mass),
    /// A surface.
    Area(Area),
    /// A film coefficient.
    Film(HeatTransfer),
    /// A heat capacity for each kilogram.
    HeatCapacity(SpecificHeatCapacity),
    /// A coefficient of expansion.
    Coefficient(TemperatureCoefficient),
}

const GIGAPASCAL: Unit =
    Unit { kind: Kind::Pressure, names: &["GPa"], factor: 1e9, zero: 0.0, system: Some(System::Metric) };
const MEGA_PSI: Unit =
    Unit { kind: Kind::Pressure, names: &["Mpsi"], factor: PSI.factor * 1e6, zero: 0.0, system: Some(System::Inch) };
const MICROSTRAIN: Unit =
    Unit { kind: Kind::Bare, names: &["µm/m"], factor: 1e-6, zero: 0.0, system: Some(System::Metric) };
const MICROINCH_PER_INCH: Unit =
    Unit { kind: Kind::Bare, names: &["µin/in"], factor: 1e-6, zero: 0.0, system: Some(System::Inch) };
const KELVIN: Unit = Unit { kind: Kind::Step, names: &["K"], factor: 1.0, zero: 0.0, system: Some(System::Metric) };
const FAHRENHEIT_DEGREES: Unit =
    Unit { kind: Kind::Step, names: &["°F"], factor: 5.0 / 9.0, zero: 0.0, system: Some(System::Inch) };
const SECOND: Unit = Unit { kind: Kind::Duration, names: &["s"], factor: 1.0, zero: 0.0, system: None };
const SQUARE_MM: Unit =
    Unit { kind: Kind::Bare, names: &["mm²"], factor: 1e-6, zero: 0.0, system: Some(System::Metric) };
const SQUARE_INCH: Unit =
    Unit { kind: Kind::Bare, names: &["in²"], factor: 0.0254 * 0.0254, zero: 0.0, system: Some(System::Inch) };
const JOULE_PER_KG_K: Unit =
    Unit { kind: Kind::HeatCapacity, names: &["J/(kg·K)"], factor: 1.0, zero: 0.0, system: Some(System::Metric) };
/// Btu of the international table, exact: 1055.05585262 J over 0.45359237 kg and 5/9 K.
const BTU_PER_LB_F: Unit =
    Unit { kind: Kind::HeatCapacity, names: &["Btu/(lb·°F)"], factor: 4186.8, zero: 0.0, system: Some(System::Inch) };
const MICROSTRAIN_PER_K: Unit =
    Unit { kind: Kind::Expansion, names: &["µm/(m·K)"], factor: 1e-6, zero: 0.0, system: Some(System::Metric) };
const MICROSTRAIN_PER_F: Unit =
    Unit { kind: Kind::Expansion, names: &["µin/(in·°F)"], factor: 1.8e-6, zero: 0.0, system: Some(System::Inch) };
const PLAIN: Unit = Unit { kind: Kind::Bare, names: &[""], factor: 1.0, zero: 0.0, system: None };

/// How many figures are kept, or to which step a number is given.
#[derive(Clone, Copy)]
enum Kept {
    Step(f64),
    Figures(i32),
}

impl Worked {
    /// The quantity in SI units; a temperature in kelvin.
    pub fn si(self) -> f64 {
        match self {
            Self::Size(length) | Self::RoughSize(length) | Self::Small(length) => length.get::<meter>(),
            Self::Strain(number) | Self::Number(number) => number,
            Self::Temperature(temperature) => temperature.get::<kelvin>(),
            Self::Step(step) => step.get::<temperature_interval::kelvin>(),
            Self::Modulus(pressure) | Self::Pressure(pressure) => pressure.get::<pascal>(),
            Self::Force(force) => force.get::<newton>(),
            Self::Torque(torque) => torque.get::<newton_meter>(),
            Self::Time(time) => time.get::<second>(),
            Self::Mass(mass) => mass.get::<kilogram>(),
            Self::Area(area) => area.get::<square_meter>(),
            Self::Film(film) => film.get::<watt_per_square_meter_kelvin>(),
            Self::HeatCapacity(capacity) => capacity.get::<joule_per_kilogram_kelvin>(),
            Self::Coefficient(coefficient) => coefficient.get::<per_kelvin>(),
        }
    }

    /// The same kind of quantity with another value, in SI units.
    #[must_use]
    pub fn with(self, si: f64) -> Self {
        match self {
            Self::Size(_) => Self::Size(Length::new::<meter>(si)),
            Self::RoughSize(_) => Self::RoughSize(Length::new::<meter>(si)),
            Self::Small(_) => Self::Small(Length::new::<meter>(si)),
            Self::Strain(_) => Self::Strain(si),
            Self::Number(_) => Self::Number(si),
            Self::Temperature(_) => Self::Temperature(ThermodynamicTemperature::new::<kelvin>(si)),
            Self::Step(_) => Self::Step(TemperatureInterval::new::<temperature_interval::kelvin>(si)),
            Self::Modulus(_) => Self::Modulus(Pressure::new::<pascal>(si)),
            Self::Pressure(_) => Self::Pressure(Pressure::new::<pascal>(si)),
            Self::Force(_) => Self::Force(Force::new::<newton>(si)),
            Self::Torque(_) => Self::Torque(Torque::new::<newton_meter>(si)),
            Self::Time(_) => Self::Time(Time::new::<second>(si)),
            Self::Mass(_) => Self::Mass(Mass::new::<kilogram>(si)),
            Self::Area(_) => Self::Area(Area::new::<square_meter>(si)),
            Self::Film(_) => Self::Film(HeatTransfer::new::<watt_per_square_meter_kelvin>(si)),
            Self::HeatCapacity(_) => Self::HeatCapacity(SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(si)),
            Self::Coefficient(_) => Self::Coefficient(TemperatureCoefficient::new::<per_kelvin>(si)),
        }
    }

    /// Number and unit in a system of units: "62.0000" and "mm".
    pub fn show(self, system: System) -> (String, &'static str) {
        let (unit, kept) = self.unit(system);
        let number = unit.number(self.si());
        let rounded = match kept {
            Kept::Step(step) => Rounded { value: to_step(number, step, Toward::Nearest), step },
            Kept::Figures(_) if number.abs() < 1e-9 => Rounded { value: 0.0, step: 1.0 },
            Kept::Figures(figures) => to_figures(number, figures, 1e-9, Toward::Nearest),
        };
        let text = format!("{:.places$}", rounded.value, places = decimals(rounded.step));
        let text = match self {
            // 0.3, not 0.300000: such numbers are mostly stated, not computed.
            Self::Number(_) | Self::RoughSize(_) if text.contains('.') => {
                text.trim_end_matches('0').trim_end_matches('.').to_owned()
            }
            _ => text,
        };
        (text, unit.name())
    }

    fn unit(self, system: System) -> (&'static Unit, Kept) {
        let pick = |metric: (&'static Unit, Kept), inch: (&'static Unit, Kept)| match system {
            System::Metric => metric,
            System::Inch => inch,
        };
        match self {
            Self::Size(_) => pick((&MM, Kept::Step(1e-4)), (&INCHES, Kept::Step(1e-6))),
            Self::RoughSize(_) => pick((&MM, Kept::Step(1e-2)), (&INCHES, Kept::Step(1e-4))),
            Self::Small(_) => pick((&MICROMETRE, Kept::Step(0.1)), (&THOU, Kept::Step(1e-3))),
            Self::Strain(_) => pick((&MICROSTRAIN, Kept::Step(0.1)), (&MICROINCH_PER_INCH, Kept::Step(0.1))),
            Self::Temperature(_) => pick((&CELSIUS, Kept::Step(0.1)), (&FAHRENHEIT, Kept::Step(0.1))),
            Self::Step(_) => pick((&KELVIN, Kept::Step(0.1)), (&FAHRENHEIT_DEGREES, Kept::Step(0.1))),
            Self::Modulus(_) => pick((&GIGAPASCAL, Kept::Figures(4)), (&MEGA_PSI, Kept::Figures(4))),
            Self::Pressure(_) => pick((&MEGAPASCAL, Kept::Figures(4)), (&PSI, Kept::Figures(4))),
            Self::Force(force) => {
                let unit = if force.get::<newton>().abs() < 1000.0 { &NEWTON } else { &KILONEWTON };
                pick((unit, Kept::Figures(4)), (&POUNDS_FORCE, Kept::Figures(4)))
            }
            Self::Torque(_) => pick((&NEWTON_METRE, Kept::Figures(4)), (&INCH_POUND, Kept::Figures(4))),
            Self::Time(_) => (&SECOND, Kept::Step(0.1)),
            Self::Number(_) => (&PLAIN, Kept::Figures(5)),
            Self::Mass(_) => pick((&KILOGRAM, Kept::Figures(4)), (&POUNDS, Kept::Figures(4))),
            Self::Area(_) => pick((&SQUARE_MM, Kept::Figures(4)), (&SQUARE_INCH, Kept::Figures(4))),
            Self::Film(_) => pick((&FILM_METRIC, Kept::Figures(4)), (&FILM_INCH, Kept::Figures(4))),
            Self::HeatCapacity(_) => pick((&JOULE_PER_KG_K, Kept::Figures(4)), (&BTU_PER_LB_F, Kept::Figures(4))),
            Self::Coefficient(_) => pick((&MICROSTRAIN_PER_K, Kept::Step(0.1)), (&MICROSTRAIN_PER_F, Kept::Step(0.01))),
        }
    }
}
