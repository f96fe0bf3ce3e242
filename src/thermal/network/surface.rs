//! Heat through one surface: film, radiation, wrap, moisture, and the resistance inside the body.

use super::super::error::ThermalError;
use super::super::frost::latent_heat;
use super::super::root::root;
use super::check::{known, place};
use super::{Exchange, Inside, MoistAir, Partner};
use crate::quantity::{not_negative, positive, within};
use crate::stock::Curve;
use crate::thermal::SurfaceFilm;
use uom::si::area::square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::meter;

/// Stefan-Boltzmann constant, W/(m² K⁴); CODATA 2018, exact by the 2019 SI.
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Temperature to which that of a surface is found by bracket, K.
const SURFACE_TOLERANCE_K: f64 = 1e-7;
/// Last secant step, K. The error after it is far smaller, being the product of the last two.
const LAST_SECANT_K: f64 = 1e-4;
/// Resistance inside over that of the film below which the surface is as warm as the mean for the film's sake: the film
/// is then read at a temperature off by less than this share of the difference, and itself off by a third of that.
const THIN: f64 = 0.005;
/// Secant steps before the surface temperature is searched by bracket.
const SECANT_STEPS: usize = 8;
/// Parts of the way from the mean temperature to the surroundings in which a bracket is looked for.
const PARTS: u32 = 24;

/// A surface in plain SI, checked.
#[derive(Clone, Copy, Debug)]
pub(super) struct Surface<'a> {
    pub(super) body: usize,
    pub(super) with: Partner,
    pub(super) area: f64,
    pub(super) moisture: Option<MoistAir>,
    film: Film<'a>,
    /// ε σ.
    radiation: f64,
    /// Resistance of the wrap, m² K/W.
    wrap: f64,
    inside: Way<'a>,
}

#[derive(Clone, Copy, Debug)]
enum Film<'a> {
    Constant(f64),
    Table(&'a Curve),
}

/// Resistance from the mean temperature to the surface, m² K/W.
#[derive(Clone, Copy, Debug)]
enum Way<'a> {
    Constant(f64),
    /// `L/n` and the conductivity.
    Table(f64, &'a Curve),
}

/// What passes through a surface.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Flux {
    /// Heat that leaves to the surroundings by film and radiation, W/m².
    pub(super) outward: f64,
    /// Latent heat that arrives, W/m².
    pub(super) latent: f64,
    /// Water that arrives, kg/(m² s).
    pub(super) water: f64,
    /// Temperature of the surface, K.
    pub(super) surface: f64,
}

impl<'a> Surface<'a> {
    pub(super) fn new(exchange: &Exchange<'a>, (bodies, surroundings): (usize, usize)) -> Result<Self, ThermalError> {
        place("body of a surface", exchange.body, bodies)?;
        match exchange.with {
            Partner::Surroundings(index) => place("surroundings of a surface", index, surroundings)?,
            Partner::Body(index) => place("body that a surface faces", index, bodies)?,
        }
        let emissivity = within("emissivity", exchange.emissivity, (0.0, 1.0), "")?;
        Ok(Self {
            body: exchange.body,
            with: exchange.with,
            area: positive("exposed area", exchange.area.get::<square_meter>(), "m²")?,
            moisture: exchange.moisture.filter(|_| !exchange.wrap.is_vapour_tight()),
            film: film(&exchange.film)?,
            radiation: STEFAN_BOLTZMANN * emissivity,
            wrap: exchange.wrap.resistance_m2k_w(),
            inside: exchange.inside.as_ref().map_or(Ok(Way::Constant(0.0)), inside)?,
        })
    }

    /// What passes when the body has the mean temperature `t` and what it faces `other`.
    pub(super) fn flux(&self, t: f64, other: f64) -> Flux {
        let resistance = self.inside(t);
        let varies = matches!(self.film, Film::Table(_)) || self.moisture.is_some();
        let film = self.film(t);
        let outer = self.outer(film, t, other);
        if varies && outer * resistance > THIN {
            return self.at_surface(self.surface((t, film, outer), other, resistance), other);
        }
        // As for one body: the coefficient at the mean temperature, then the resistance in series.
        let outward = outer * (t - other) / (1.0 + outer * resistance);
        let (latent, water) = self.wetting(film, t);
        Flux { outward, latent, water, surface: t - (outward - latent) * resistance }
    }

    fn at_surface(&self, surface: f64, other: f64) -> Flux {
        let film = self.film(surface);
        let (latent, water) = self.wetting(film, surface);
        Flux { outward: self.outer(film, surface, other) * (surface - other), latent, water, surface }
    }

    /// Temperature at which the surface passes on what comes from inside: `q(T_s) R = T - T_s`.
    ///
    /// A boiling curve may allow three; the one nearest to the mean temperature is meant, since a part that cools keeps
    /// its vapour film until its surface falls below the least temperature of film boiling.
    ///
    /// `film` and `outer` are those at the mean temperature `t`.
    fn surface(&self, (t, film, outer): (f64, f64, f64), other: f64, resistance: f64) -> f64 {
        let excess = |s: f64| {
            let flux = self.at_surface(s, other);
            (flux.outward - flux.latent) * resistance - (t - s)
        };
        let at_mean = (outer * (t - other) - self.wetting(film, t).0) * resistance;
        let (mut a, mut fa) = (t, at_mean);
        let mut b = t - fa / (1.0 + outer * resistance);
        for _ in 0..SECANT_STEPS {
            let fb = excess(b);
            let next = b - fb * (b - a) / (fb - fa);
            if (next - b).abs() < LAST_SECANT_K || fb.abs() < SURFACE_TOLERANCE_K {
                return if next.is_finite() { next } else { b };
            }
            (a, fa, b) = (b, fb, next);
            if !b.is_finite() || (b - t) * (b - other) > (t - other).powi(2) {
                break;
            }
        }
        bracketed(excess, t, other)
    }

    /// Film, radiation and wrap together, W/(m² K).
    fn coefficient(&self, surface: f64, other: f64) -> f64 {
        self.outer(self.film(surface), surface, other)
    }

    /// The same where the film there is known.
    fn outer(&self, film: f64, surface: f64, other: f64) -> f64 {
        let mut outer = film;
        if self.radiation > 0.0 {
            outer += self.radiation * (surface * surface + other * other) * (surface + other);
        }
        outer / (1.0 + outer * self.wrap)
    }

    /// Latent heat and mass of the water that settles, with the film there.
    fn wetting(&self, film: f64, surface: f64) -> (f64, f64) {
        let Some(air) = &self.moisture else { return (0.0, 0.0) };
        let water = air.deposit(surface, film / (1.0 + film * self.wrap));
        (water * latent_heat(surface), water)
    }

    fn film(&self, surface: f64) -> f64 {
        match self.film {
            Film::Constant(value) => value,
            Film::Table(curve) => curve.at_inside(surface),
        }
    }

    fn inside(&self, t: f64) -> f64 {
        match self.inside {
            Way::Constant(value) => value,
            Way::Table(length, conductivity) => length / conductivity.at_inside(t),
        }
    }

    /// Heat per kelvin that leaves through this surface, W/K.
    pub(super) fn conductance(&self, t: f64, other: f64) -> f64 {
        let outer = self.coefficient(t, other);
        self.area * outer / (1.0 + outer * self.inside(t))
    }

    /// An error unless the tables cover the body's and the surface's temperature.
    pub(super) fn check_covered(&self, t: f64, other: f64) -> Result<(), ThermalError> {
        if let Way::Table(_, conductivity) = self.inside {
            known(conductivity, t, "thermal conductivity")?;
        }
        match self.film {
            Film::Constant(_) => Ok(()),
            Film::Table(curve) => known(curve, self.flux(t, other).surface, "film coefficient"),
        }
    }
}

/// Root between mean temperature and surroundings, the first from the mean; the mean when there is none.
fn bracketed(excess: impl Fn(f64) -> f64, t: f64, other: f64) -> f64 {
    let at = |part: u32| t + (other - t) * f64::from(part) / f64::from(PARTS);
    let first = excess(t);
    for part in 1..=PARTS {
        if excess(at(part)) * first <= 0.0 {
            return root(&excess, (at(part - 1), at(part)), SURFACE_TOLERANCE_K);
        }
    }
    t
}

fn film<'a>(law: &SurfaceFilm<'a>) -> Result<Film<'a>, ThermalError> {
    match *law {
        SurfaceFilm::Constant(value) => {
            let value = value.get::<watt_per_square_meter_kelvin>();
            Ok(Film::Constant(not_negative("film coefficient", value, "W/(m² K)")?))
        }
        SurfaceFilm::OverSurface(curve) => {
            not_negative("film coefficient", curve.extremes().0, "W/(m² K)")?;
            Ok(Film::Table(curve))
        }
    }
}

fn inside<'a>(inside: &Inside<'a>) -> Result<Way<'a>, ThermalError> {
    let length = not_negative("conduction length", inside.path.length.get::<meter>(), "m")?;
    let length = length / positive("divisor of the Biot number", inside.path.divisor, "")?;
    let (least, most) = inside.conductivity.extremes();
    positive("conductivity", least, "W/(m K)")?;
    let constant = length <= 0.0 || most - least <= f64::EPSILON * most;
    Ok(if constant { Way::Constant(length / least) } else { Way::Table(length, inside.conductivity) })
}
