use super::super::error::ThermalError;
use super::air_values::AirValues;
use super::correlation::{ForcedConvection, NaturalConvection, across_cylinder, squared};
use super::outline::{Air, Axis, Face, RoundPart, Surface};
use crate::quantity::{Area, HeatTransfer, Pressure, ThermodynamicTemperature, positive, within};
use uom::si::area::square_meter;
use uom::si::f64::Velocity;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::velocity::meter_per_second;

/// Difference of temperature at which free convection stops fading, K. Draughts and the conduction of air keep a film
/// alive that the correlations would let vanish; the difference enters them as `√(ΔT² + 0.1²)` (engineer's choice; it
/// adds 0.13 % at 1 K and nothing above).
pub(super) const FLOOR_K: f64 = 0.1;
/// Slowest and fastest wind, m/s.
const WIND_M_S: (f64, f64) = (0.0, 50.0);
/// Rayleigh numbers for a face that the air leaves freely, with the small faces that McAdams does not cover.
const FREE_FACE_RAYLEIGH: (f64, f64) = (1.0, 1e11);

/// The air around a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AirAround {
    /// Its temperature, away from the part.
    pub air: ThermodynamicTemperature,
    /// Its pressure.
    pub pressure: Pressure,
    /// Speed at which it passes the part; `None` when it is still.
    pub air_speed: Option<Velocity>,
    /// How the axis of the part stands.
    pub axis: Axis,
}

/// Film coefficient of one face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FaceFilm {
    /// Which face.
    pub surface: Surface,
    /// Its area.
    pub area: Area,
    /// Its film coefficient, convection alone.
    pub film: HeatTransfer,
    /// Whether its size and temperature lie in the published range of the correlations used.
    pub within_range: bool,
}

/// Film coefficient of a whole part.
#[derive(Clone, Debug, PartialEq)]
pub struct PartFilm {
    /// Mean over the surface of the part, convection alone.
    pub mean: HeatTransfer,
    /// The faces it is made of; those without area are left out.
    pub faces: Vec<FaceFilm>,
}

/// Film coefficient of a part in still or moving air: the mean over its faces, weighted with their area.
///
/// Air properties at the mean of surface and air. By face and axis:
///
/// | face | axis horizontal (part standing) | axis vertical (part lying flat) |
/// |---|---|---|
/// | outside | Churchill-Chu, horizontal cylinder | Churchill-Chu, vertical plate of the part's width |
/// | bore | the same on the bore diameter, for the length that fresh air reaches | upright channel (below) |
/// | faces | Churchill-Chu, vertical plate of height area/diameter | horizontal faces (below) |
///
/// - *Lying bore*: counts in full for half a diameter from every open end (engineer's choice, no published source).
/// - *Upright channel*: `h = (h_plate⁻² + h_full⁻²)^(-1/2)`, `Nu_full = Ra D / (128 l)` on the diameter D and length l, the
///   balance of laminar flow that leaves as warm as the wall. Joined as by A. Bar-Cohen, W. M. Rohsenow, J. Heat Transfer
///   106 (1984) 116-123 (from memory). A blind bore counts with twice its depth (engineer's choice).
/// - *Horizontal faces*: left freely (warm face up, cold face down), the greatest of `0.96 Ra^(1/6)` (small faces: R. J.
///   Goldstein, E. M. Sparrow, D. C. Jones, Int. J. Heat Mass Transfer 16 (1973) 1025-1035, from memory), `0.54 Ra^(1/4)`
///   and `0.15 Ra^(1/3)` (McAdams), so that nothing jumps where one takes over; held back, `0.27 Ra^(1/4)`, carried on
///   below its published range.
/// - *Wind*: Churchill-Bernstein on the outside; laminar plate on the faces (mean chord) and on the bore (diameter), the
///   last an engineer's choice. Joined with free convection as `h³ = h_free³ + h_wind³` (S. W. Churchill, AIChE J. 23
///   (1977) 10-16, from memory).
///
/// All faces are exposed; a part that rests on a plate gives less on that face and more through contact. Near zero
/// difference the coefficient stays finite: the difference counts as `√(ΔT² + (0.1 K)²)`.
///
/// # Errors
/// Sizes as for [`super::super::Ring::shape`] and its like; film temperature outside -120 to 300 °C, pressure outside 50 to
/// 110 kPa, wind outside 0 to 50 m/s. A face outside the range of its correlation is not an error but marked.
pub fn part_in_air(
    part: &RoundPart,
    around: &AirAround,
    surface: ThermodynamicTemperature,
) -> Result<PartFilm, ThermalError> {
    let exposed = Exposed::new(part, around)?;
    let film = Film::new(&exposed, positive("temperature of the surface", surface.get::<kelvin>(), "K")?)?;
    let present = exposed.faces.iter().filter(|face| face.area > 0.0);
    let faces = present.map(|face| FaceFilm {
        surface: face.surface,
        area: Area::new::<square_meter>(face.area),
        film: HeatTransfer::new::<watt_per_square_meter_kelvin>(film.on(face)),
        within_range: film.covers(face),
    });
    let mean = HeatTransfer::new::<watt_per_square_meter_kelvin>(film.mean(&exposed.faces));
    Ok(PartFilm { mean, faces: faces.collect() })
}

/// A part and its air in plain SI, checked.
pub(super) struct Exposed {
    faces: [Face; 5],
    air: f64,
    pressure: f64,
    wind: Option<f64>,
}

impl Exposed {
    pub(super) fn new(part: &RoundPart, around: &AirAround) -> Result<Self, ThermalError> {
        let speed = |speed: Velocity| within("speed of the air", speed.get::<meter_per_second>(), WIND_M_S, "m/s");
        Ok(Self {
            faces: part.faces(around.axis)?,
            air: positive("temperature of the air", around.air.get::<kelvin>(), "K")?,
            pressure: around.pressure.get::<pascal>(),
            wind: around.air_speed.map(speed).transpose()?,
        })
    }

    /// Mean film coefficient, W/(m² K), at a surface temperature in K.
    pub(super) fn mean(&self, surface: f64) -> Result<f64, ThermalError> {
        Ok(Film::new(self, surface)?.mean(&self.faces))
    }
}

/// What every face has in common at one surface temperature.
struct Film {
    /// `Ra / length³`, and its roots.
    strength: f64,
    third_root: f64,
    fourth_root: f64,
    sixth_root: f64,
    conductivity: f64,
    prandtl: f64,
    cylinder: f64,
    plate: f64,
    /// Whether the surface is warmer than the air.
    warm: bool,
    wind: Option<Wind>,
}

struct Wind {
    /// Reynolds number of 1 m.
    strength: f64,
    across: f64,
    along: f64,
}

impl Film {
    fn new(exposed: &Exposed, surface: f64) -> Result<Self, ThermalError> {
        let mean = 0.5 * (surface + exposed.air);
        let air = AirValues::at("film temperature, mean of surface and air,", mean, exposed.pressure)?;
        let difference = (squared(surface - exposed.air) + squared(FLOOR_K)).sqrt();
        let strength = air.rayleigh * difference;
        let third_root = strength.cbrt();
        let wind =
            |speed: f64| Wind { strength: speed * air.reynolds, across: air.across, along: 0.664 * air.prandtl.cbrt() };
        Ok(Self {
            strength,
            third_root,
            fourth_root: strength.sqrt().sqrt(),
            sixth_root: third_root.sqrt(),
            conductivity: air.conductivity,
            prandtl: air.prandtl,
            cylinder: air.cylinder,
            plate: air.plate,
            warm: surface >= exposed.air,
            wind: exposed.wind.map(wind),
        })
    }

    fn mean(&self, faces: &[Face; 5]) -> f64 {
        let (mut power, mut area) = (0.0, 0.0);
        for face in faces.iter().filter(|face| face.area > 0.0) {
            power += self.on(face) * face.area;
            area += face.area;
        }
        power / area
    }

    /// Film coefficient of a face with an area, W/(m² K).
    fn on(&self, face: &Face) -> f64 {
        let free = self.free(face.air);
        match &self.wind {
            None => free,
            Some(wind) => (free.powi(3) + wind.on(face, self.conductivity).powi(3)).cbrt(),
        }
    }

    fn free(&self, air: Air) -> f64 {
        match air {
            Air::Around { diameter, share } => {
                let nusselt = squared(0.6 + self.cylinder * self.sixth_root * diameter.sqrt());
                share * nusselt * self.conductivity / diameter
            }
            Air::Along { height } => self.along(height),
            Air::Through { diameter, path } => {
                let full = self.strength * diameter.powi(3) / (128.0 * path) * self.conductivity;
                1.0 / (squared(1.0 / self.along(path)) + squared(1.0 / full)).sqrt()
            }
            Air::From { length, faces_up } => {
                let quarter = self.fourth_root * (length * length.sqrt()).sqrt();
                let nusselt = if faces_up == self.warm {
                    let small = 0.96 * self.sixth_root * length.sqrt();
                    small.max(0.54 * quarter).max(0.15 * self.third_root * length)
                } else {
                    0.27 * quarter
                };
                nusselt * self.conductivity / length
            }
        }
    }

    fn along(&self, height: f64) -> f64 {
        squared(0.825 + self.plate * self.sixth_root * height.sqrt()) * self.conductivity / height
    }

    /// Whether the correlations used on this face are inside their published ranges.
    fn covers(&self, face: &Face) -> bool {
        let (length, (from, to)) = match face.air {
            Air::Around { diameter, .. } => (diameter, NaturalConvection::HorizontalCylinder.rayleigh_range()),
            Air::Along { height } => (height, NaturalConvection::VerticalPlate.rayleigh_range()),
            Air::Through { path, .. } => (path, NaturalConvection::VerticalPlate.rayleigh_range()),
            Air::From { length, faces_up } if faces_up == self.warm => (length, FREE_FACE_RAYLEIGH),
            Air::From { length, .. } => (length, NaturalConvection::HeldFace.rayleigh_range()),
        };
        let free = (from..=to).contains(&(self.strength * length.powi(3)));
        free && self.wind.as_ref().is_none_or(|wind| wind.covers(face, self.prandtl))
    }
}

impl Wind {
    fn on(&self, face: &Face, conductivity: f64) -> f64 {
        let reynolds = self.strength * face.wind_length;
        let nusselt = match face.surface {
            Surface::Outside => across_cylinder(reynolds, self.across),
            _ => self.along * reynolds.sqrt(),
        };
        nusselt * conductivity / face.wind_length
    }

    fn covers(&self, face: &Face, prandtl: f64) -> bool {
        let correlation = match face.surface {
            Surface::Outside => ForcedConvection::CylinderAcross,
            _ => ForcedConvection::LaminarPlate,
        };
        let (from, to) = correlation.reynolds_range(prandtl);
        (from..=to).contains(&(self.strength * face.wind_length))
    }
}
