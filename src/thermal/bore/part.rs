use crate::quantity::{Area, HeatTransfer, Mass, ThermodynamicTemperature, not_negative, positive, within};
use crate::stock::Curve;
use crate::thermal::ThermalError;
use crate::thermal::lumped::ConductionPath;
use uom::si::area::square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::kelvin;

/// One of the two parts of a seat, at one temperature.
#[derive(Clone, Copy, Debug)]
pub struct SeatBody<'a> {
    /// Mass that takes part: a bearing's outer ring rather than the bearing, the boss rather than the whole case.
    pub mass: Mass,
    /// Specific heat capacity over temperature (K), J/(kg K).
    pub heat_capacity: &'a Curve,
    /// Thermal conductivity over temperature (K), W/(m K).
    pub conductivity: &'a Curve,
    /// ΔL/L from 20 °C over temperature (K).
    pub expansion: &'a Curve,
    /// Emissivity of its surfaces, 0 to 1.
    pub emissivity: f64,
    /// Way of the heat from the joint inward, see [`super::Exchange`]; [`ConductionPath::none`] is on the safe side.
    pub to_joint: ConductionPath,
    /// Way of the heat from inside to the free surface.
    pub to_air: ConductionPath,
    /// Surface that is not in the joint and gives heat to the shop.
    pub free_area: Area,
    /// Film coefficient on that surface, without radiation; zero when it is wrapped up.
    pub film: HeatTransfer,
    /// Whether that surface also radiates to the walls of the shop (a grey body in large surroundings).
    pub radiates: bool,
    /// Temperature when it comes into the seat.
    pub start: ThermodynamicTemperature,
}

/// A part in plain SI, checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedPart<'a> {
    pub(super) mass: f64,
    pub(super) heat_capacity: &'a Curve,
    conductivity: &'a Curve,
    pub(super) expansion: &'a Curve,
    pub(super) emissivity: f64,
    joint_way: f64,
    air_way: f64,
    pub(super) free_area: f64,
    pub(super) film: f64,
    /// Emissivity of the free surface; zero when it does not radiate.
    pub(super) free_emissivity: f64,
    pub(super) start: f64,
    /// Temperatures that the tables of capacity, conductivity and expansion have in common, K.
    covered: (f64, f64),
}

impl<'a> SeatBody<'a> {
    pub(super) fn check(&self) -> Result<CheckedPart<'a>, ThermalError> {
        positive("heat capacity", self.heat_capacity.extremes().0, "J/(kg K)")?;
        positive("conductivity", self.conductivity.extremes().0, "W/(m K)")?;
        let ranges = [self.heat_capacity, self.conductivity, self.expansion].map(Curve::range);
        let part = CheckedPart {
            mass: positive("mass", self.mass.get::<kilogram>(), "kg")?,
            heat_capacity: self.heat_capacity,
            conductivity: self.conductivity,
            expansion: self.expansion,
            emissivity: within("emissivity", self.emissivity, (0.0, 1.0), "")?,
            joint_way: way(self.to_joint)?,
            air_way: way(self.to_air)?,
            free_area: not_negative("free area", self.free_area.get::<square_meter>(), "m²")?,
            film: not_negative("film coefficient", self.film.get::<watt_per_square_meter_kelvin>(), "W/(m² K)")?,
            free_emissivity: if self.radiates { self.emissivity } else { 0.0 },
            start: positive("temperature at the start", self.start.get::<kelvin>(), "K")?,
            covered: ranges.iter().fold((0.0, f64::INFINITY), |all, one| (all.0.max(one.0), all.1.min(one.1))),
        };
        part.check_covered(part.start)?;
        Ok(part)
    }
}

/// Conduction length over its divisor, m.
fn way(path: ConductionPath) -> Result<f64, ThermalError> {
    let length = not_negative("conduction length", path.length.get::<meter>(), "m")?;
    Ok(length / positive("divisor of the Biot number", path.divisor, "")?)
}

impl CheckedPart<'_> {
    /// Heat capacity m c, J/K, at a temperature inside the table.
    pub(super) fn capacity(&self, temperature: f64) -> f64 {
        self.mass * self.heat_capacity.at_inside(temperature)
    }

    /// Size (m) at a temperature inside the table.
    pub(super) fn size(&self, at_20: f64, temperature: f64) -> f64 {
        at_20 * (1.0 + self.expansion.at_inside(temperature))
    }

    /// Resistances from inside to the joint and to the free surface, m² K/W, with the conductivity at a temperature.
    pub(super) fn resistances(&self, temperature: f64) -> (f64, f64) {
        let conductivity = self.conductivity.at_inside(temperature);
        (self.joint_way / conductivity, self.air_way / conductivity)
    }

    /// An error unless all tables of the part cover a temperature.
    pub(super) fn check_covered(&self, temperature: f64) -> Result<(), ThermalError> {
        let (from, to) = self.covered;
        if temperature >= from && temperature <= to {
            return Ok(());
        }
        let tables = [
            ("heat capacity", self.heat_capacity),
            ("thermal conductivity", self.conductivity),
            ("thermal expansion", self.expansion),
        ];
        for (property, table) in tables {
            table.at(temperature).map_err(|source| ThermalError::Property { property, source })?;
        }
        // Within the rounding that the tables forgive; anything that is no number has been refused above.
        Ok(())
    }

    /// Heat that the part takes up from one temperature to another, J: `m ∫ c dT`, Simpson's rule on each span of the
    /// table, which is exact because the curve is a cubic there.
    pub(super) fn heat_between(&self, from: f64, to: f64) -> f64 {
        let (low, high) = (from.min(to), from.max(to));
        let inside = self.heat_capacity.points().map(|row| row.0).filter(|&t| t > low && t < high);
        let mut ends: Vec<f64> = std::iter::once(low).chain(inside).collect();
        ends.push(high);
        let capacity = |t| self.capacity(t);
        let span = |ends: &[f64]| {
            let (a, b) = (ends[0], ends[1]);
            (b - a) / 6.0 * (capacity(a) + 4.0 * capacity(0.5 * (a + b)) + capacity(b))
        };
        let taken: f64 = ends.windows(2).map(span).sum();
        if to >= from { taken } else { -taken }
    }
}
