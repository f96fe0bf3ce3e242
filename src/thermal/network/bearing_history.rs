use super::super::error::ThermalError;
use super::bearing_section::{BearingPart, Section};
use super::history::NetworkHistory;
use crate::quantity::{Length, TemperatureInterval, ThermodynamicTemperature, Time};
use crate::stock::Curve;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Temperatures of the three parts of a bearing against time.
#[derive(Clone, Debug, PartialEq)]
pub struct BearingHistory {
    network: NetworkHistory,
    section: Section,
}

impl BearingHistory {
    pub(super) fn new(network: NetworkHistory, section: Section) -> Self {
        Self { network, section }
    }

    /// Temperature of a part at a time since the beginning.
    ///
    /// # Errors
    /// [`ThermalError::TimeOutside`].
    pub fn temperature_at(&self, part: BearingPart, time: Time) -> Result<ThermodynamicTemperature, ThermalError> {
        self.network.temperature_at(part.index(), time)
    }

    /// First time at which a part has this temperature.
    pub fn first_time_at(&self, part: BearingPart, temperature: ThermodynamicTemperature) -> Option<Time> {
        self.network.first_time_at(part.index(), temperature)
    }

    /// Temperatures at the end, with which the next stage may begin.
    pub fn end(&self) -> [ThermodynamicTemperature; 3] {
        let end = self.network.length().get::<second>();
        [0, 1, 2].map(|body| ThermodynamicTemperature::new::<kelvin>(self.network.kelvin_at(body, end)))
    }

    /// When the rings differ most, and by how much: inner ring less outer ring.
    pub fn largest_ring_difference(&self) -> (Time, TemperatureInterval) {
        let none = (self.network.length(), TemperatureInterval::default());
        // Both rings exist, so there is always an answer.
        self.network.largest_difference(BearingPart::InnerRing.index(), BearingPart::OuterRing.index()).unwrap_or(none)
    }

    /// Change of the radial internal clearance at a time, by the temperatures of the three parts alone; negative when it
    /// closes.
    ///
    /// `(d_m + D_w) e(T_outer) - (d_m - D_w) e(T_inner) - 2 D_w e(T_ball)`, with e = ΔL/L from 20 °C: zero whenever all three
    /// are equally warm. The clearance is the whole play across the diameter, as ISO 5753-1 has it.
    ///
    /// **Valid for** rings that are free: in a seat, the fit changes the clearance as well.
    ///
    /// # Errors
    /// [`ThermalError::TimeOutside`]; [`ThermalError::Property`] when the table does not cover a temperature.
    pub fn clearance_change(&self, time: Time, expansion: &Curve) -> Result<Length, ThermalError> {
        let parts = [BearingPart::OuterRing, BearingPart::RollingElements, BearingPart::InnerRing];
        let mut strains = [0.0; 3];
        for (strain, part) in strains.iter_mut().zip(parts) {
            let t = self.temperature_at(part, time)?.get::<kelvin>();
            let known = expansion.at(t);
            *strain = known.map_err(|source| ThermalError::Property { property: "thermal expansion", source })?;
        }
        Ok(Length::new::<meter>(self.play(strains)))
    }

    /// When the internal clearance differs most from that of a bearing equally warm, and by how much.
    ///
    /// # Errors
    /// As for [`BearingHistory::clearance_change`].
    pub fn largest_clearance_change(&self, expansion: &Curve) -> Result<(Time, Length), ThermalError> {
        let strains = |at: &dyn Fn(usize) -> f64| self.play([0, 1, 2].map(|body| expansion.at_inside(at(body))));
        let (time, _) = self.network.extreme(strains);
        let time = Time::new::<second>(time);
        // The ends are the extremes of every temperature that matters, and must be known as well.
        self.clearance_change(Time::new::<second>(0.0), expansion)?;
        self.clearance_change(self.network.length(), expansion)?;
        Ok((time, self.clearance_change(time, expansion)?))
    }

    /// The network's own record: heat account, water on each part.
    pub fn network(&self) -> &NetworkHistory {
        &self.network
    }

    fn play(&self, [outer, ball, inner]: [f64; 3]) -> f64 {
        let Section { ball: diameter, pitch, .. } = self.section;
        (pitch + diameter) * outer - (pitch - diameter) * inner - 2.0 * diameter * ball
    }
}
