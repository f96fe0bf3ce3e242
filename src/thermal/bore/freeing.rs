use super::exchange::{Exchange, SeatSizes};
use crate::quantity::{Length, ThermodynamicTemperature};
use crate::thermal::{ThermalError, contact_temperature, diameter_at};
use uom::si::length::meter;

/// What frees a ring that has stopped half-way, or an old ring, when both parts are brought to one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Freeing {
    /// It is free at the temperature of the shop: wait.
    FreeInTheShop,
    /// Both brought to this temperature leave the clearance asked for. Above the shop for a light-alloy housing; below it
    /// when the inner part shrinks more, as steel does in iron.
    BothAt(ThermodynamicTemperature),
    /// No common temperature does within the tables of both materials: warm the outer part alone, or press.
    NoCommonTemperature,
}

impl Exchange<'_> {
    /// Temperature to which both parts must come together to leave a clearance, zero for just free.
    ///
    /// The clearance is added to the inner part at 20 °C, so it is met within its own expansion, some thousandths of it.
    /// Where two temperatures do, the one nearer to 20 °C is given.
    ///
    /// # Errors
    /// Sizes that are not positive; [`ThermalError::Value`] for the clearance; [`ThermalError::Property`] when a table
    /// does not cover the shop.
    pub fn frees_at(&self, sizes: SeatSizes, clearance: Length) -> Result<Freeing, ThermalError> {
        crate::quantity::not_negative("clearance", clearance.get::<meter>(), "m")?;
        let inner = sizes.inner_at_20 + clearance;
        let in_shop = diameter_at(sizes.outer_at_20, self.outer.expansion, self.shop)?
            - diameter_at(inner, self.inner.expansion, self.shop)?;
        if in_shop >= Length::new::<meter>(0.0) {
            return Ok(Freeing::FreeInTheShop);
        }
        let common = contact_temperature(inner, self.inner.expansion, sizes.outer_at_20, self.outer.expansion);
        Ok(common.map_or(Freeing::NoCommonTemperature, Freeing::BothAt))
    }
}
