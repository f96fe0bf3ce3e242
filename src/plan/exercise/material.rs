//! Materials for a class: constant, rounded values, so that a calculation on paper meets the plan.

/// A material with constant values.
#[derive(Clone, Copy, Debug)]
pub struct ClassMaterial {
    /// Its name in the problem.
    pub name: &'static str,
    /// The record of the library whose values were rounded.
    pub id: &'static str,
    family: &'static str,
    /// Density, kg/m³.
    pub density: u16,
    /// Elastic modulus at 20 °C, GPa.
    pub modulus: u16,
    /// Poisson ratio, hundredths.
    pub poisson: u16,
    /// Strength, MPa.
    pub strength: u16,
    /// Coefficient of expansion, tenths of a µm/(m K).
    pub expansion: u16,
    /// Heat capacity at 20 °C, J/(kg K).
    pub heat_capacity: u16,
    /// Conductivity at 20 °C, W/(m K).
    pub conductivity: u16,
}

/// Every material for a class. The expansion is the mean from 20 to 100 °C; a test holds each value against its record.
pub const CLASS_MATERIALS: [ClassMaterial; 4] = [
    ClassMaterial {
        name: "classroom steel",
        id: "low-alloy-steel",
        family: "steel",
        density: 7850,
        modulus: 205,
        poisson: 29,
        strength: 650,
        expansion: 123,
        heat_capacity: 440,
        conductivity: 44,
    },
    ClassMaterial {
        name: "classroom grey iron",
        id: "grey-iron",
        family: "cast iron",
        density: 7200,
        modulus: 110,
        poisson: 26,
        strength: 250,
        expansion: 110,
        heat_capacity: 440,
        conductivity: 47,
    },
    ClassMaterial {
        name: "classroom light alloy",
        id: "aluminium-6061-t6",
        family: "light alloy",
        density: 2700,
        modulus: 70,
        poisson: 33,
        strength: 275,
        expansion: 237,
        heat_capacity: 900,
        conductivity: 154,
    },
    ClassMaterial {
        name: "classroom bronze",
        id: "bronze",
        family: "copper alloy",
        density: 8930,
        modulus: 100,
        poisson: 34,
        strength: 125,
        expansion: 180,
        heat_capacity: 376,
        conductivity: 59,
    },
];

impl ClassMaterial {
    /// As a job states it.
    pub(super) fn text(&self) -> String {
        format!(
            "{{ name = \"{}\", family = \"{}\", density = \"{} kg/m3\", modulus = \"{} GPa\", poisson = \"0.{}\", \
             strength = \"{} MPa\", expansion = \"{} um/mK\", heat_capacity = \"{} J/kgK\", conductivity = \"{} W/mK\", \
             coldest = \"-100 °C\", hottest = \"150 °C\", source = \"{} of this library, held constant and rounded for a class\" }}",
            self.name,
            self.family,
            self.density,
            self.modulus,
            self.poisson,
            self.strength,
            f64::from(self.expansion) / 10.0,
            self.heat_capacity,
            self.conductivity,
            self.id,
        )
    }
}
