//! What a shop writes is read as it was meant, or refused with the way to write it; what is printed reads back.

mod accepted;
mod exact;
mod print;
mod refused;

use seatwise::quantity as q;
use seatwise::quantity::{Entered, QuantityError};
use uom::si::{
    force::newton, heat_transfer::watt_per_square_meter_kelvin, length::meter, mass::kilogram, power::watt,
    pressure::pascal, ratio::ratio, temperature_interval as step, thermodynamic_temperature as level, time::second,
    torque::newton_meter,
};

/// Reads `text` as a quantity of `kind`, in SI units.
fn si(kind: &str, text: &str) -> Result<Entered<f64>, QuantityError> {
    Ok(match kind {
        "length" => q::length(text)?.map(|v| v.get::<meter>()),
        "deviation" => q::deviation(text)?.map(|v| v.get::<meter>()),
        "temperature" => q::temperature(text)?.map(|v| v.get::<level::kelvin>()),
        "step" => q::temperature_step(text)?.map(|v| v.get::<step::kelvin>()),
        "duration" => q::duration(text)?.map(|v| v.get::<second>()),
        "mass" => q::mass(text)?.map(|v| v.get::<kilogram>()),
        "pressure" => q::pressure(text)?.map(|v| v.get::<pascal>()),
        "force" => q::force(text)?.map(|v| v.get::<newton>()),
        "torque" => q::torque(text)?.map(|v| v.get::<newton_meter>()),
        "power" => q::power(text)?.map(|v| v.get::<watt>()),
        "film" => q::film_coefficient(text)?.map(|v| v.get::<watt_per_square_meter_kelvin>()),
        "share" => q::share(text)?.map(|v| v.get::<ratio>()),
        "roughness" => q::roughness(text)?.map(|v| v.height().get::<meter>()),
        "number" => q::number(text)?,
        "limits" => q::limits(text)?.map(|v| v.upper.um()),
        "sized limits" => q::sized_limits(text)?.map(|v| v.nominal.mm()),
        other => panic!("no reader for {other}"),
    })
}
