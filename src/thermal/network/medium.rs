//! A medium that warms while it takes up the part's heat.

use super::super::Wrap;
use super::super::error::ThermalError;
use super::{Exchange, Network, NetworkBody, Partner};
use crate::quantity::{Area, HeatTransfer, Mass, Power, ThermodynamicTemperature, not_negative, positive};
use crate::stock::{Curve, CurveError};
use crate::thermal::SurfaceFilm;
use uom::si::area::square_meter;
use uom::si::f64::HeatCapacity;
use uom::si::heat_capacity::joule_per_kelvin;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::mass::kilogram;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::kelvin;

/// Heat capacity per kilogram given to the medium's body, J/(kg K); only its product with the mass means anything.
const UNIT_CAPACITY: f64 = 1000.0;
/// Temperatures over which it is kept constant, K.
const RANGE_K: (f64, f64) = (4.0, 2500.0);

/// A freezer, bath or oven of limited heat capacity and power.
///
/// Without a part in it, it stays at its temperature: its machine's power equals what comes through the walls from the room. With
/// a part, it drifts, and comes back with the time constant `C (T_room - T) / P`. A thermostat with power to spare holds it
/// closer; this is the pessimistic end.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadedMedium {
    temperature: f64,
    heat_capacity: f64,
    power: f64,
    room: ThermodynamicTemperature,
    capacity: Curve,
}

impl LoadedMedium {
    /// A medium of this heat capacity (air, shelf and inner walls of a freezer; liquid of a bath), held at a temperature
    /// by a machine of this power in a room. Power zero: nothing holds it.
    ///
    /// # Errors
    /// A heat capacity or temperature that is not above zero, a power below zero, or a machine that holds the temperature of the room.
    pub fn new(
        temperature: ThermodynamicTemperature,
        heat_capacity: HeatCapacity,
        holding: Power,
        room: ThermodynamicTemperature,
    ) -> Result<Self, ThermalError> {
        let property = |source: CurveError| ThermalError::Property { property: "heat capacity", source };
        let at = positive("temperature of the medium", temperature.get::<kelvin>(), "K")?;
        let power = not_negative("power of the machine", holding.get::<watt>(), "W")?;
        let off = positive("temperature of the room", room.get::<kelvin>(), "K")? - at;
        if power > 0.0 {
            positive("difference between medium and room", off.abs(), "K")?;
        }
        Ok(Self {
            temperature: at,
            heat_capacity: positive("heat capacity of the medium", heat_capacity.get::<joule_per_kelvin>(), "J/K")?,
            // Cold below the room: heat is taken out.
            power: if off > 0.0 { -power } else { power },
            room,
            capacity: Curve::constant(UNIT_CAPACITY, RANGE_K.0, RANGE_K.1).map_err(property)?,
        })
    }
}

impl<'a> Network<'a> {
    /// Adds a medium as a body, with its walls to the room, and gives its place among the bodies, for [`Partner::Body`].
    pub fn add_medium(&mut self, medium: &'a LoadedMedium) -> usize {
        let body = self.bodies.len();
        self.bodies.push(NetworkBody {
            mass: Mass::new::<kilogram>(medium.heat_capacity / UNIT_CAPACITY),
            heat_capacity: &medium.capacity,
            start: ThermodynamicTemperature::new::<kelvin>(medium.temperature),
            power: Power::new::<watt>(medium.power),
        });
        if medium.power.abs() > 0.0 {
            let room = self.surroundings.len();
            self.surroundings.push(medium.room);
            // One square metre of wall whose film is the whole conductance.
            let walls = medium.power / (medium.temperature - medium.room.get::<kelvin>());
            self.exchanges.push(Exchange {
                body,
                with: Partner::Surroundings(room),
                area: Area::new::<square_meter>(1.0),
                film: SurfaceFilm::Constant(HeatTransfer::new::<watt_per_square_meter_kelvin>(walls)),
                emissivity: 0.0,
                inside: None,
                wrap: Wrap::none(),
                moisture: None,
            });
        }
        body
    }
}
