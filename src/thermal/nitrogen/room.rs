use super::super::error::ThermalError;
use super::{ICE_POINT_K, RANGE_KPA, SEA_LEVEL_PA, shown};
use crate::quantity::{Mass, Pressure, ThermodynamicTemperature, not_negative, positive, within};
use uom::si::f64::Volume;
use uom::si::mass::kilogram;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::volume::cubic_meter;

/// Oxygen share below which air is oxygen-deficient: 19.5 % by volume.
///
/// **Source**: OSHA 29 CFR 1910.134(b) and 1910.146(b), definition of an oxygen-deficient atmosphere (from memory).
pub const OXYGEN_DEFICIENT: f64 = 0.195;
/// Carbon dioxide over a working day: 5000 ppm, mean of eight hours.
///
/// **Source**: ACGIH TLV-TWA; NIOSH recommended limit; OSHA 29 CFR 1910.1000 Table Z-1 (from memory).
pub const CARBON_DIOXIDE_LONG_TERM_LIMIT: f64 = 5000e-6;
/// Carbon dioxide for a quarter of an hour: 30 000 ppm.
///
/// **Source**: ACGIH TLV-STEL; NIOSH short-term limit (from memory).
pub const CARBON_DIOXIDE_SHORT_TERM_LIMIT: f64 = 30_000e-6;

/// Share of oxygen in the air of a room before, the figure of safety practice (dry air holds 20.95 %; from memory).
const OXYGEN_OF_AIR: f64 = 0.209;
/// Share of carbon dioxide in outdoor air, about 420 ppm (from memory).
const CARBON_DIOXIDE_OF_AIR: f64 = 420e-6;
/// Density of nitrogen at 20 °C and 101 325 Pa, kg/m³ (Span and others 2000, as given by CoolProp 8.0.0).
const NITROGEN_GAS_DENSITY: f64 = 1.1648;
/// Density of carbon dioxide at 20 °C and 101 325 Pa, kg/m³ (R. Span, W. Wagner, J. Phys. Chem. Ref. Data 25 (1996)
/// 1509-1596, as given by CoolProp 8.0.0).
const CARBON_DIOXIDE_GAS_DENSITY: f64 = 1.8393;
/// Coldest and hottest room, °C.
const ROOM_C: (f64, f64) = (-40.0, 60.0);

/// What turns to gas in the room.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Coolant {
    /// Liquid nitrogen.
    Nitrogen,
    /// Dry ice, solid carbon dioxide.
    DryIce,
}

/// Air of a room after a coolant has turned to gas in it, shares by volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RoomAir {
    /// Share of oxygen, 0.209 before.
    pub oxygen: f64,
    /// Share of carbon dioxide, 0.00042 before.
    pub carbon_dioxide: f64,
    /// Volume of the gas at the temperature and pressure of the room.
    pub gas: Volume,
}

/// Air of a room after the whole of `coolant` has turned to gas: mixed at once, no air change, the surplus pushed out.
///
/// Every bit of gas pushes out as much mixed air: `oxygen = 20.9 % × exp(-V_gas / V_room)`. Cold gas does not mix at once:
/// it lies on the floor and in pits, where the air is far worse than this mean.
///
/// **Valid for** rooms of -40 to 60 °C at 50 to 110 kPa, ideal gas.
///
/// # Errors
/// A negative mass, a room without volume, a temperature or pressure outside that range.
///
/// **Source**: balance of a perfectly mixed volume.
pub fn room_air_after(
    coolant: Coolant,
    mass: Mass,
    room: Volume,
    temperature: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<RoomAir, ThermalError> {
    let kilograms = not_negative("mass of the coolant", mass.get::<kilogram>(), "kg")?;
    let volume = positive("volume of the room", room.get::<cubic_meter>(), "m³")?;
    let celsius = within("temperature of the room", shown(temperature.get::<kelvin>() - ICE_POINT_K), ROOM_C, "°C")?;
    let pascals = pressure.get::<pascal>();
    within("pressure of the room", shown(pascals * 1e-3), RANGE_KPA, "kPa")?;
    let density_at_20 = match coolant {
        Coolant::Nitrogen => NITROGEN_GAS_DENSITY,
        Coolant::DryIce => CARBON_DIOXIDE_GAS_DENSITY,
    };
    let density = density_at_20 * pascals / SEA_LEVEL_PA * super::super::REFERENCE_K / (celsius + ICE_POINT_K);
    let gas = kilograms / density;
    let air_left = (-gas / volume).exp();
    let added = match coolant {
        Coolant::Nitrogen => 0.0,
        Coolant::DryIce => 1.0 - air_left,
    };
    Ok(RoomAir {
        oxygen: OXYGEN_OF_AIR * air_left,
        carbon_dioxide: CARBON_DIOXIDE_OF_AIR * air_left + added,
        gas: Volume::new::<cubic_meter>(gas),
    })
}
