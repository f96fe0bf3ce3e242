use super::error::HeatError;
use super::property::Property;
use super::solid::above_zero;
use crate::quantity::{HeatTransfer, ThermodynamicTemperature, ValueError, positive, within};
use std::fmt;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Stefan-Boltzmann constant, W/(m² K⁴) (CODATA 2018, exact by definition of the SI, rounded).
pub(super) const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;

/// A face of a part. Chamfers and grooves belong to the face that they are cut into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// Bore, and the hole in a wall.
    Inside,
    /// Outside.
    Outside,
    /// The end away from the shoulder.
    Front,
    /// The other end: of a ring the face towards the shoulder, of a housing the far side of its wall.
    Back,
    /// The side of a wall or shoulder that faces the ring.
    Shoulder,
}

impl Face {
    /// All, in the order in which accounts list them.
    pub const ALL: [Face; 5] = [Face::Inside, Face::Outside, Face::Front, Face::Back, Face::Shoulder];

    pub(super) fn place(self) -> usize {
        Self::ALL.iter().position(|face| *face == self).unwrap_or_default()
    }
}

/// Film coefficient of a face: convection, a bath or boiling, without radiation.
#[derive(Clone, Debug, PartialEq)]
pub enum Film {
    /// The same throughout.
    Constant(HeatTransfer),
    /// W/(m² K) over the temperature of the surface, K: a correlation or a boiling curve in a table.
    OverSurface(Property),
}

/// How heat passes a face: `q = (h(T) + ε σ (T² + T∞²)(T + T∞)) (T∞ - T)`, T the temperature of the surface at that place.
#[derive(Clone, Debug, PartialEq)]
pub struct Exposed {
    /// Film coefficient.
    pub film: Film,
    /// Emissivity towards surroundings of the same temperature, 0 to 1; zero leaves radiation out.
    pub emissivity: f64,
    /// Temperature of the fluid, the plate or the walls.
    pub surroundings: ThermodynamicTemperature,
}

/// What a face meets.
#[derive(Clone, Copy)]
pub enum FaceLaw<'a> {
    /// Nothing: no heat passes.
    Insulated,
    /// A film, with or without radiation.
    Exposed(&'a Exposed),
    /// Any law: heat into the part, W/m², of the temperature of the surface (K) and the time since the stage began (s).
    /// It is called at every place of the face in every step. It must be finite; a law that jumps is followed with small
    /// steps.
    Flux(&'a dyn Fn(f64, f64) -> f64),
}

impl fmt::Debug for FaceLaw<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Insulated => f.write_str("Insulated"),
            Self::Exposed(exposed) => f.debug_tuple("Exposed").field(exposed).finish(),
            Self::Flux(_) => f.write_str("Flux"),
        }
    }
}

/// What each face of a part meets. The seat is left out of it while the part is seated.
#[derive(Clone, Copy, Debug)]
pub struct Faces<'a> {
    /// Law of each face, in the order of [`Face::ALL`].
    laws: [FaceLaw<'a>; 5],
}

impl<'a> Faces<'a> {
    /// The same on every face.
    pub fn all(law: FaceLaw<'a>) -> Self {
        Self { laws: [law; 5] }
    }

    /// These with another law on one face.
    #[must_use]
    pub fn with(mut self, face: Face, law: FaceLaw<'a>) -> Self {
        self.laws[face.place()] = law;
        self
    }

    /// What a face meets.
    pub fn of(&self, face: Face) -> FaceLaw<'a> {
        self.laws[face.place()]
    }

    pub(super) fn check(&self) -> Result<(), HeatError> {
        self.laws.iter().try_for_each(FaceLaw::check)
    }
}

impl Exposed {
    /// A constant film without radiation.
    pub fn film(film: HeatTransfer, surroundings: ThermodynamicTemperature) -> Self {
        Self { film: Film::Constant(film), emissivity: 0.0, surroundings }
    }

    fn check(&self) -> Result<(), HeatError> {
        match &self.film {
            Film::Constant(film) => {
                let film = film.get::<watt_per_square_meter_kelvin>();
                within("film coefficient", film, (0.0, LARGEST_FILM), "W/(m² K)")?;
            }
            Film::OverSurface(table) => above_zero("film coefficient", table, "W/(m² K)")?,
        }
        within("emissivity", self.emissivity, (0.0, 1.0), "")?;
        positive("temperature of the surroundings", self.surroundings.get::<kelvin>(), "K")?;
        Ok(())
    }

    /// Heat into the part at a surface temperature (K), W/m².
    fn flux(&self, surface: f64) -> f64 {
        let around = self.surroundings.get::<kelvin>();
        let film = match &self.film {
            Film::Constant(film) => film.get::<watt_per_square_meter_kelvin>(),
            Film::OverSurface(table) => table.at(surface),
        };
        let radiation = self.emissivity * radiation(surface, around);
        (film + radiation) * (around - surface)
    }
}

/// Largest film coefficient taken, W/(m² K): it holds the surface at the temperature of what it meets.
const LARGEST_FILM: f64 = 1e7;

/// Radiation of black surfaces as a coefficient, W/(m² K).
pub(super) fn radiation(one: f64, other: f64) -> f64 {
    STEFAN_BOLTZMANN * (one * one + other * other) * (one + other)
}

impl FaceLaw<'_> {
    fn check(&self) -> Result<(), HeatError> {
        match self {
            Self::Exposed(exposed) => exposed.check(),
            Self::Flux(flux) => {
                let sample = flux(293.15, 0.0);
                let what = "flux of a face at 20 °C";
                let (value, from, to, unit) = (sample, -f64::MAX, f64::MAX, "W/m²");
                let refused = ValueError::OutOfRange { what, value, from, to, unit };
                if sample.is_finite() { Ok(()) } else { Err(refused.into()) }
            }
            Self::Insulated => Ok(()),
        }
    }

    /// Heat into the part, W/m².
    pub(super) fn flux(&self, surface: f64, time: f64) -> f64 {
        match self {
            Self::Insulated => 0.0,
            Self::Exposed(exposed) => exposed.flux(surface),
            Self::Flux(flux) => flux(surface, time),
        }
    }

    /// Temperatures that a table of this law covers, K.
    pub(super) fn range(&self) -> Option<(f64, f64)> {
        match self {
            Self::Exposed(Exposed { film: Film::OverSurface(table), .. }) => table.range(),
            _ => None,
        }
    }
}
