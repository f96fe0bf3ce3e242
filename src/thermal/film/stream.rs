//! A stream of heated air that cannot give more than it carries.

use super::super::error::ThermalError;
use crate::quantity::{Area, HeatTransfer, Power, TemperatureInterval, not_negative, positive};
use uom::si::area::square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin;

/// Film coefficient that a part sees in a stream of limited power: the stream cools along the part.
///
/// `h' = C/A (1 - exp(-h A/C))` with the heat that the stream carries for each kelvin, `C = P/ΔT`: a heater of power P
/// has warmed it by ΔT above the room. A weak stream on a large part gives `C/A`, whatever the film.
///
/// **Arguments**: the film coefficient of the stream on the surface, the surface, the power of the heater, and by how
/// much the stream leaves the heater hotter than the room.
///
/// **Valid for** a stream that all passes over the part, whose temperature hardly changes along it.
///
/// # Errors
/// [`ThermalError::Value`] for area, power or rise; a film coefficient below zero.
///
/// **Source**: effectiveness of a heat exchanger one side of which keeps its temperature, `1 - exp(-NTU)`; Incropera,
/// "Fundamentals of Heat and Mass Transfer", chapter on heat exchangers (from memory).
pub fn stream_film(
    film: HeatTransfer,
    area: Area,
    power: Power,
    rise: TemperatureInterval,
) -> Result<HeatTransfer, ThermalError> {
    let film = not_negative("film coefficient", film.get::<watt_per_square_meter_kelvin>(), "W/(m² K)")?;
    let area = positive("exposed area", area.get::<square_meter>(), "m²")?;
    let rise = positive("rise of the stream above the room", rise.get::<kelvin>(), "K")?;
    let carried = positive("power of the heater", power.get::<watt>(), "W")? / rise;
    // 1 - e^-x without losing a small x.
    let seen = carried / area * -(-film * area / carried).exp_m1();
    Ok(HeatTransfer::new::<watt_per_square_meter_kelvin>(seen))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn seen(film: f64, area_m2: f64, power_w: f64) -> f64 {
        let film = HeatTransfer::new::<watt_per_square_meter_kelvin>(film);
        let (area, power) = (Area::new::<square_meter>(area_m2), Power::new::<watt>(power_w));
        let rise = TemperatureInterval::new::<kelvin>(400.0);
        stream_film(film, area, power, rise).unwrap().get::<watt_per_square_meter_kelvin>()
    }

    #[test]
    fn a_small_part_sees_the_film_and_a_large_one_no_more_than_the_heater_gives() {
        assert!((seen(50.0, 1e-4, 2000.0) / 50.0 - 1.0).abs() < 1e-3);
        // 2000 W over 400 K on 1 m²: 5 W/(m² K) at most.
        assert!((seen(5000.0, 1.0, 2000.0) - 5.0).abs() < 1e-9);
        assert!(seen(50.0, 0.1, 1000.0) < seen(50.0, 0.1, 2000.0));
    }
}
