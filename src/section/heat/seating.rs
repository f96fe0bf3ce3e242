use super::error::HeatError;
use super::face::radiation;
use super::property::Property;
use super::solid::above_zero;
use crate::quantity::{HeatTransfer, Length, positive, within};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::meter;

/// How the inner part lies in the outer one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Placement {
    /// The same gap all round.
    #[default]
    Concentric,
    /// It touches on one side from the beginning and the gap is double on the other, `gap (1 + cos φ)`.
    ///
    /// The mean of `1/(gap (1 + cos φ) + s)` round the seat is `1/√(s (s + 2 gap))`, s the smallest gap: always more than
    /// `1/(gap + s)`. Temperatures stay axisymmetric, so this is the bound for a ring that lies on one side.
    /// **Source**: elementary integral of `1/(a + b cos φ)`.
    OneSide,
}

/// How the gap follows the temperatures.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Growth {
    /// Each place of the seat moves as the elastic body does under all its temperatures.
    #[default]
    Local,
    /// The whole seat of a part moves by `R ε`, ε the mean of the free strain over the volume of its tube: what a two-body
    /// estimate takes. For a tube without a wall it is the mean of [`Growth::Local`] exactly (Betti's theorem with the
    /// plane stress state of a pressed tube, whose σ_r + σ_t is the same everywhere).
    Mean,
}

/// What lies between two parts: air over the open gap, metal where it is closed.
///
/// `h = k(T_film)/(max(gap, 0) + smallest) + σ (T₁ + T₂)(T₁² + T₂²)/(1/ε₁ + 1/ε₂ - 1)`, gap the radial gap at the place and
/// T_film the mean of both surfaces. Where the parts touch the conductance of the metal contact is added. It grows from
/// nothing to its value while they come closer by one more `smallest`: the peaks of rough faces touch one by one, and a
/// jump would be followed badly.
///
/// **Source**: conduction through a thin layer and radiation between close grey surfaces, any textbook of heat transfer.
#[derive(Clone, Debug, PartialEq)]
pub struct Gap {
    /// Conductivity of the air, W/(m K) over K.
    pub air: Property,
    /// Thickness of the air that is left where the parts touch: roughness and the temperature jump at the walls.
    pub smallest: Length,
    /// Emissivity of both surfaces; zero leaves radiation out.
    pub emissivity: f64,
    /// Conductance of the metal contact.
    pub contact: HeatTransfer,
    /// How the inner part lies in the outer one.
    pub placement: Placement,
}

/// Parts that sit in one another.
#[derive(Clone, Debug, PartialEq)]
pub struct Seating {
    /// Diametral interference of each contact at 20 °C, from the inside outward, as in [`crate::section::Loads`].
    pub interference: Vec<Length>,
    /// What lies between the parts, the same in each contact.
    pub gap: Gap,
    /// How the gap follows the temperatures.
    pub growth: Growth,
    /// Conductance between the ring's face and the wall or shoulder behind it; `None` when the ring keeps off it, and
    /// both faces are exposed.
    pub shoulder: Option<HeatTransfer>,
}

/// Seating in plain SI, checked.
#[derive(Clone, Debug)]
pub(super) struct Checked {
    /// Half of each interference, m.
    pub(super) interference: Vec<f64>,
    air: Property,
    smallest: f64,
    /// `1/(1/ε₁ + 1/ε₂ - 1)`.
    emissivity: f64,
    contact: f64,
    placement: Placement,
    pub(super) growth: Growth,
    pub(super) shoulder: Option<f64>,
}

/// Largest interference as a share of the diameter; a joint may be as open as it is wide.
const LARGEST_SHARE: f64 = 0.02;

impl Seating {
    /// Checks against the diameters (m) of the contacts.
    pub(super) fn check(&self, diameters: &[f64]) -> Result<Checked, HeatError> {
        let (given, needed, what) = (self.interference.len(), diameters.len(), "interferences");
        if given != needed {
            return Err(crate::section::SectionError::WrongLoads { what, given, needed }.into());
        }
        let mut interference = Vec::new();
        for (value, diameter) in self.interference.iter().zip(diameters) {
            let range = (-1e3 * diameter, 1e3 * LARGEST_SHARE * diameter);
            interference.push(within("interference", value.get::<meter>() * 1e3, range, "mm")? / 2e3);
        }
        let gap = &self.gap;
        above_zero("conductivity of the air", &gap.air, "W/(m K)")?;
        let emissivity = within("emissivity in the gap", gap.emissivity, (0.0, 1.0), "")?;
        let conductance = |what, value: HeatTransfer| {
            positive(what, value.get::<watt_per_square_meter_kelvin>(), "W/(m² K)").map_err(HeatError::from)
        };
        Ok(Checked {
            interference,
            air: gap.air.clone(),
            smallest: positive("smallest gap", gap.smallest.get::<meter>(), "m")?,
            // 1/(2/ε - 1), zero for zero.
            emissivity: emissivity / (2.0 - emissivity),
            contact: conductance("contact conductance", gap.contact)?,
            placement: gap.placement,
            growth: self.growth,
            shoulder: self.shoulder.map(|value| conductance("conductance of the shoulder", value)).transpose()?,
        })
    }
}

impl Checked {
    /// Conductance (W/(m² K)) over a radial gap (m), negative where the free parts would overlap, between two surfaces (K).
    pub(super) fn conductance(&self, gap: f64, one: f64, other: f64) -> f64 {
        let (open, s) = (gap.max(0.0), self.smallest);
        let thickness = match self.placement {
            Placement::Concentric => open + s,
            Placement::OneSide => (s * (s + 2.0 * open)).sqrt(),
        };
        let closed = (-gap / s).clamp(0.0, 1.0);
        let air = self.air.at((one + other) / 2.0) / thickness;
        air + self.emissivity * radiation(one, other) + closed * self.contact
    }

    /// Temperatures that the table of the air covers, K.
    pub(super) fn air_range(&self) -> Option<(f64, f64)> {
        self.air.range()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uom::si::length::micrometer;

    fn gap(placement: Placement) -> Checked {
        let (air, smallest) = (Property::constant(0.026), Length::new::<micrometer>(1.0));
        let contact = HeatTransfer::new::<watt_per_square_meter_kelvin>(5000.0);
        let gap = Gap { air, smallest, emissivity: 0.3, contact, placement };
        Seating { interference: vec![], gap, growth: Growth::Mean, shoulder: None }.check(&[]).unwrap()
    }

    #[test]
    fn the_closed_form_of_a_ring_on_one_side_is_the_mean_round_the_seat() {
        let (one, clear) = (gap(Placement::OneSide), 14e-6);
        let angle = |i: u32| (f64::from(i) + 0.5) / 20_000.0 * std::f64::consts::TAU;
        let mean = (0..20_000).map(|i| 0.026 / (clear * (1.0 + angle(i).cos()) + 1e-6)).sum::<f64>() / 20_000.0;
        let radiation = 0.3 / 1.7 * radiation(250.0, 290.0);
        let found = one.conductance(clear, 250.0, 290.0) - radiation;
        assert!((found / mean - 1.0).abs() < 1e-9, "{found} {mean}");
    }

    #[test]
    fn conductance_has_no_jump_where_the_parts_touch() {
        let closed = gap(Placement::Concentric);
        let at = |gap: f64| closed.conductance(gap, 290.0, 290.0);
        assert!((at(1e-12) / at(-1e-12) - 1.0).abs() < 1e-5);
        assert!((at(-2e-6) - at(0.0) - 5000.0).abs() < 1e-6);
    }
}
