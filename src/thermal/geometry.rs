use super::error::ThermalError;
use super::lumped::ConductionPath;
use crate::quantity::{Area, Length, Mass, positive};
use std::f64::consts::PI;
use uom::si::area::square_meter;
use uom::si::f64::{MassDensity, Volume};
use uom::si::length::{meter, millimeter};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::volume::cubic_meter;

/// Volume, exposed area and conduction path of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// Volume inside the outline.
    pub volume: Volume,
    /// Surface that exchanges heat.
    pub area: Area,
    /// How far heat travels inside.
    pub path: ConductionPath,
}

/// A ring with all faces exposed: bearing ring, bush, seal case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Bore diameter.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Axial width.
    pub width: Length,
}

/// A solid cylinder with all faces exposed: plug, pin, short shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plug {
    /// Outside diameter.
    pub outside: Length,
    /// Axial length.
    pub length: Length,
}

/// The part of a housing around the seat, all faces exposed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Boss {
    /// Bore diameter of the seat.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Axial length, the back wall included.
    pub length: Length,
    /// Wall that closes the bore at one end, if any.
    pub back_wall: Option<BackWall>,
}

/// The wall at the end of a blind bore.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BackWall {
    /// Thickness along the axis.
    pub thickness: Length,
    /// Diameter of the hole in it; `None` when it is closed.
    pub hole: Option<Length>,
}

/// A length of a longer shaft: heat passes through its outside only, not through the cuts or the bore.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftLength {
    /// Outside diameter.
    pub outside: Length,
    /// Bore diameter; `None` when it is solid.
    pub bore: Option<Length>,
    /// Axial length.
    pub length: Length,
}

impl Shape {
    /// Mass of the part, `volume × density × fill`.
    ///
    /// `fill` is the share of the outline that is metal: 1 for a solid part, less for a whole bearing.
    ///
    /// # Errors
    /// [`ThermalError::Value`] for the density, [`ThermalError::Value`] for a fill that is not above 0 and
    /// at most 1.
    pub fn mass(&self, density: MassDensity, fill: f64) -> Result<Mass, ThermalError> {
        positive("density", density.get::<kilogram_per_cubic_meter>(), "kg/m³")?;
        positive("fill", fill, "")?;
        crate::quantity::within("fill", fill, (0.0, 1.0), "")?;
        Ok(self.volume * density * fill)
    }

    fn new(volume: f64, area: f64, path: ConductionPath) -> Self {
        Self { volume: Volume::new::<cubic_meter>(volume), area: Area::new::<square_meter>(area), path }
    }
}

impl Ring {
    /// Its shape: `V = π/4 (D² - d²) b`, `A = π (D + d) b + π/2 (D² - d²)`; heat takes the shorter of wall and width.
    ///
    /// # Errors
    /// Sizes that are not positive, or an outside that is not larger than the bore.
    pub fn shape(&self) -> Result<Shape, ThermalError> {
        let width = positive("width", self.width.get::<meter>(), "m")?;
        let (bore, outside) = diameters("outside of the ring", self.outside, "bore of the ring", self.bore)?;
        let face = annulus(bore, outside);
        let wall = ConductionPath::both_faces((self.outside - self.bore) / 2.0);
        let path = wall.shorter_of(ConductionPath::both_faces(self.width));
        Ok(Shape::new(face * width, PI * (outside + bore) * width + 2.0 * face, path))
    }
}

impl Plug {
    /// Its shape: `V = π/4 D² b`, `A = π D b + π/2 D²`; heat takes the shorter of radius and half length.
    ///
    /// # Errors
    /// Sizes that are not positive.
    pub fn shape(&self) -> Result<Shape, ThermalError> {
        let outside = positive("outside of the plug", self.outside.get::<meter>(), "m")?;
        let length = positive("length", self.length.get::<meter>(), "m")?;
        let face = annulus(0.0, outside);
        let path = ConductionPath::cylinder(self.outside).shorter_of(ConductionPath::both_faces(self.length));
        Ok(Shape::new(face * length, PI * outside * length + 2.0 * face, path))
    }
}

impl Boss {
    /// Its shape; heat travels through the wall between bore and outside, cooled on both faces.
    ///
    /// # Errors
    /// Sizes that are not positive; an outside not larger than the bore; a wall as thick as the whole length; a hole
    /// not smaller than the bore.
    pub fn shape(&self) -> Result<Shape, ThermalError> {
        let length = positive("length", self.length.get::<meter>(), "m")?;
        let (bore, outside) = diameters("outside of the housing", self.outside, "bore of the housing", self.bore)?;
        let path = ConductionPath::both_faces((self.outside - self.bore) / 2.0);
        let path = path.shorter_of(ConductionPath::both_faces(self.length));
        let (wall, hole) = self.wall_and_hole()?;
        let (front, back, inside) = (annulus(bore, outside), annulus(hole, outside), annulus(hole, bore));
        let closing = if wall > 0.0 { inside } else { 0.0 };
        let volume = front * length + inside * wall;
        let curved = PI * (outside * length + bore * (length - wall) + hole * wall);
        Ok(Shape::new(volume, curved + front + back + closing, path))
    }

    /// Thickness of the back wall and diameter of its hole; without a wall, none and the whole bore.
    fn wall_and_hole(&self) -> Result<(f64, f64), ThermalError> {
        let Some(wall) = self.back_wall else { return Ok((0.0, self.bore.get::<meter>())) };
        diameters("length of the housing", self.length, "thickness of its back wall", wall.thickness)?;
        let hole = match wall.hole {
            Some(hole) => diameters("bore of the housing", self.bore, "hole in its back wall", hole)?.0,
            None => 0.0,
        };
        Ok((wall.thickness.get::<meter>(), hole))
    }
}

impl ShaftLength {
    /// Its shape: the outside `π D b` is exposed. Heat travels the radius of a solid shaft, the wall of a hollow one.
    ///
    /// # Errors
    /// Sizes that are not positive, or a bore that is not smaller than the outside.
    pub fn shape(&self) -> Result<Shape, ThermalError> {
        let length = positive("length", self.length.get::<meter>(), "m")?;
        let outside = positive("outside of the shaft", self.outside.get::<meter>(), "m")?;
        let (bore, path) = match self.bore {
            None => (0.0, ConductionPath::cylinder(self.outside)),
            Some(bore) => {
                let (inside, _) = diameters("outside of the shaft", self.outside, "bore of the shaft", bore)?;
                (inside, ConductionPath::one_face((self.outside - bore) / 2.0))
            }
        };
        Ok(Shape::new(annulus(bore, outside) * length, PI * outside * length, path))
    }
}

/// Area between two diameters.
fn annulus(bore: f64, outside: f64) -> f64 {
    PI / 4.0 * (outside - bore) * (outside + bore)
}

/// Smaller and larger size in metres, checked.
fn diameters(
    larger: &'static str,
    large: Length,
    smaller: &'static str,
    small: Length,
) -> Result<(f64, f64), ThermalError> {
    positive(smaller, small.get::<meter>(), "m")?;
    positive(larger, large.get::<meter>(), "m")?;
    if large <= small {
        // To the nanometre, so that the message shows what was written and not the rounding of its conversion.
        let shown = |length: Length| (length.get::<millimeter>() * 1e6).round() / 1e6;
        let (larger_mm, smaller_mm) = (shown(large), shown(small));
        return Err(ThermalError::NotLarger { larger, larger_mm, smaller, smaller_mm });
    }
    Ok((small.get::<meter>(), large.get::<meter>()))
}
