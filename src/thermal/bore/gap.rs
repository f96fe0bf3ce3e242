use super::air::AirConductivity;
use crate::quantity::positive;
use crate::quantity::{HeatTransfer, Length};
use crate::thermal::ThermalError;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::{meter, micrometer};

/// Smallest gap when nothing better is known, µm: the peaks of a ground ring and a finely turned bore (Ra 0.4 + 0.8 µm,
/// less what they interlock) and the temperature jump of the air at a wall (some 0.1 µm). Common practice, no published
/// source; a small value errs to the safe side, the seat grips earlier.
const SMALLEST_UM: f64 = 1.0;
/// Conductance of the gripped seat, W/(m² K): middle of the textbook ranges for machined metal faces pressed together by
/// some MPa, 2000 to 12 000 (from memory). It bears on how fast the two even out after they grip, not on the grip.
const CONTACT_W_M2K: f64 = 5000.0;

/// How far below zero, in smallest gaps, the law of the open gap goes on for the solver's trial steps.
const FARTHEST_BELOW: f64 = -2.0;

/// What lies between the two parts.
///
/// `h = k(T_film) / (gap + smallest) + radiation`, with the radial `gap` and `T_film` the mean of the two parts; between
/// grey cylinders this close radiation is `σ (T₁ + T₂)(T₁² + T₂²) / (1/ε₁ + 1/ε₂ - 1)`. Once the seat grips, the
/// conductance of the metal contact is added to that of the closed gap.
///
/// **Source**: conduction through a thin layer and radiation between close grey surfaces, any textbook of heat transfer.
#[derive(Clone, Copy, Debug)]
pub struct Gap<'a> {
    /// How the air conducts.
    pub air: AirConductivity<'a>,
    /// Thickness of the air that is left when the parts touch: roughness and the temperature jump at the walls.
    pub smallest: Length,
    /// Conductance of the metal contact once the seat grips.
    pub contact: HeatTransfer,
    /// How the inner part lies in the outer one.
    pub placement: Placement,
}

/// How the inner part lies in the outer one.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Placement {
    /// The same gap all round.
    Concentric,
    /// It touches on one side and the gap is double on the other: `gap (1 + cos φ)`.
    ///
    /// The mean of `1 / (gap (1 + cos φ) + s)` round the seat is `1 / √(s (s + 2 gap))`, s the smallest gap: always more
    /// than `1 / (gap + s)`, so a seat that grips while the parts even out does so earlier. A pair that is held free
    /// locks at its lock temperature either way, give or take the small difference that the losses keep up between the
    /// parts. Each part is still at one temperature, so this is the bound for a ring that lies on one side, and the
    /// default. **Source**: elementary integral of `1 / (a + b cos φ)`.
    #[default]
    OneSide,
}

impl Gap<'_> {
    /// Still air, a smallest gap of 1 µm, 5000 W/(m² K) once gripped: assumptions to be stated where they are used.
    pub fn usual(placement: Placement) -> Gap<'static> {
        Gap {
            air: AirConductivity::StillAir,
            smallest: Length::new::<micrometer>(SMALLEST_UM),
            contact: HeatTransfer::new::<watt_per_square_meter_kelvin>(CONTACT_W_M2K),
            placement,
        }
    }
}

/// The gap in plain SI, checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct CheckedGap<'a> {
    pub(super) air: AirConductivity<'a>,
    smallest: f64,
    contact: f64,
    placement: Placement,
}

impl<'a> Gap<'a> {
    pub(super) fn check(&self) -> Result<CheckedGap<'a>, ThermalError> {
        if let AirConductivity::Table(table) = self.air {
            positive("conductivity of the air", table.extremes().0, "W/(m K)")?;
        }
        Ok(CheckedGap {
            air: self.air,
            smallest: positive("smallest gap", self.smallest.get::<meter>(), "m")?,
            contact: positive("contact conductance", self.contact.get::<watt_per_square_meter_kelvin>(), "W/(m² K)")?,
            placement: self.placement,
        })
    }
}

impl CheckedGap<'_> {
    /// Conductance of the air (W/(m² K)) over a radial gap (m).
    ///
    /// Below zero, where only trial steps of the solver come, it goes on as the second-order series: a law with a kink at
    /// the grip would be followed badly just before it.
    pub(super) fn open(&self, gap: f64, film_temperature: f64) -> f64 {
        let (air, smallest) = (self.air.at_inside(film_temperature), self.smallest);
        if gap >= 0.0 {
            return match self.placement {
                Placement::Concentric => air / (smallest + gap),
                Placement::OneSide => air / (smallest * (smallest + 2.0 * gap)).sqrt(),
            };
        }
        let x = (gap / smallest).max(FARTHEST_BELOW);
        let share = match self.placement {
            Placement::Concentric => 1.0 - x + x * x,
            Placement::OneSide => 1.0 - x + 1.5 * x * x,
        };
        air / smallest * share
    }

    /// Conductance of the gripped seat, W/(m² K): metal contacts, and the air between them.
    pub(super) fn gripped(&self, film_temperature: f64) -> f64 {
        self.contact + self.air.at_inside(film_temperature) / self.smallest
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_closed_form_of_the_touching_ring_is_the_mean_round_the_seat() {
        let gap = Gap::usual(Placement::OneSide).check().unwrap();
        let (clear, s) = (14e-6, 1e-6);
        let share = |i: u32| (f64::from(i) + 0.5) / 20_000.0 * std::f64::consts::TAU;
        let mean = (0..20_000).map(|i| 1.0 / (clear * (1.0 + share(i).cos()) + s)).sum::<f64>() / 20_000.0;
        let closed = gap.open(clear, 293.15) / gap.air.at_inside(293.15);
        assert!((closed / mean - 1.0).abs() < 1e-9, "{closed} {mean}");
    }
}
