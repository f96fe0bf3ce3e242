//! Factors between units, as entries are read.

use super::reference_rows::{number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::quantity::{self as q, Entered, QuantityError};
use uom::si::{
    force::newton, heat_transfer::watt_per_square_meter_kelvin, length::meter, mass::kilogram, power::watt,
    pressure::pascal, ratio::ratio, temperature_interval as step, thermodynamic_temperature as level, time::second,
    torque::newton_meter,
};

pub const SETS: &[Set] =
    &[Set { family: "Units", title: "Factors between units", allowed: "1e-12 of the factor", checks: factors }];

/// Reads `text` as a quantity of `kind`, in SI units.
pub fn si(kind: &str, text: &str) -> Result<Entered<f64>, QuantityError> {
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

fn factors() -> Vec<Check> {
    let mut sheet = Sheet::of("units.csv");
    for row in read("units.csv") {
        let [from, to] = ["from", "to"].map(|column| si(&row["kind"], &row[column]).unwrap().value);
        sheet.row(format!("{}: {} in {}", row["kind"], row["from"], row["to"]));
        sheet.within(("factor", ""), [number(&row, "factor"), from / to], 1e-12 * number(&row, "factor"));
    }
    sheet.done()
}
