use super::curves::Curves;
use super::error::HeatError;
use super::property::Property;
use crate::quantity::{ValueError, positive, within};
use uom::si::f64::MassDensity;
use uom::si::mass_density::kilogram_per_cubic_meter;

/// Largest free strain of a part; no metal joint has more.
const LARGEST_STRAIN: f64 = 0.02;

/// What a part is made of, as far as heat is concerned. Tables are over temperature in K.
#[derive(Clone, Debug, PartialEq)]
pub struct Solid {
    /// Density at 20 °C. A bearing's ring set counts as a body of less density.
    pub density: MassDensity,
    /// Heat capacity, J/(kg K).
    pub capacity: Property,
    /// Conductivity, W/(m K).
    pub conductivity: Property,
    /// Free thermal strain ΔL/L since the temperature at which sizes are stated (20 °C, ISO 1).
    pub strain: Property,
}

/// A solid in plain SI, checked.
#[derive(Clone, Debug)]
pub(super) struct Checked {
    pub(super) density: f64,
    pub(super) capacity: Property,
    pub(super) conductivity: Property,
    pub(super) strain: Property,
    pub(super) curves: Curves,
}

impl Solid {
    pub(super) fn check(&self) -> Result<Checked, HeatError> {
        let density = positive("density", self.density.get::<kilogram_per_cubic_meter>(), "kg/m³")?;
        above_zero("heat capacity", &self.capacity, "J/(kg K)")?;
        above_zero("conductivity", &self.conductivity, "W/(m K)")?;
        finite("free thermal strain", &self.strain, "m/m")?;
        if self.strain.range().is_some() {
            let (least, most) = self.strain.extremes();
            for strain in [least, most] {
                within("free thermal strain", strain, (-LARGEST_STRAIN, LARGEST_STRAIN), "m/m")?;
            }
        }
        let (capacity, conductivity) = (self.capacity.clone(), self.conductivity.clone());
        let curves = Curves::new(&capacity, &conductivity, &self.strain);
        Ok(Checked { density, capacity, conductivity, strain: self.strain.clone(), curves })
    }
}

/// Refuses a table whose least value is not above zero.
pub(super) fn above_zero(what: &'static str, table: &Property, unit: &'static str) -> Result<(), HeatError> {
    finite(what, table, unit)?;
    positive(what, table.extremes().0, unit)?;
    Ok(())
}

fn finite(what: &'static str, table: &Property, unit: &'static str) -> Result<(), HeatError> {
    if table.finite() {
        return Ok(());
    }
    Err(ValueError::OutOfRange { what, value: f64::NAN, from: f64::MIN, to: f64::MAX, unit }.into())
}
