use super::error::SectionError;
use crate::quantity::{Force, Length, Pressure, within};
use uom::si::length::{meter, nanometer};

/// Largest coefficient of friction taken as one; metals seizing dry come near it.
const LARGEST_FRICTION: f64 = 1.0;

/// What loads do to a section.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Contacts, from the inside outward.
    pub contacts: Vec<Contact>,
    /// Parts, from the inside outward.
    pub parts: Vec<PartChange>,
    /// Wall or shoulder behind the ring; `None` when there is none.
    pub wall: Option<WallState>,
}

/// A contact of two parts.
#[derive(Clone, Debug, PartialEq)]
pub struct Contact {
    /// Diameter.
    pub diameter: Length,
    /// Length along which the parts face one another.
    pub length: Length,
    /// Pressure against position, from back to front. Nothing is given within a sixteenth of the ring's width (1 mm on
    /// 16) of an end where one of the parts goes on: pressure has no limit there, and each finer mesh shows more.
    pub pressure: Vec<PressureAt>,
    /// Normal force over area of the whole length.
    pub mean_pressure: Pressure,
    /// Normal force, the integral of the pressure over the cylinder.
    pub normal_force: Force,
    /// Share of the length that touches.
    pub touching: f64,
    /// Mean diametral clearance where the parts do not touch; zero when they touch everywhere.
    pub mean_clearance: Length,
    /// Least diametral clearance; zero when they touch anywhere.
    pub least_clearance: Length,
}

/// Pressure at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureAt {
    /// Distance from the back face of the ring.
    pub position: Length,
    /// Pressure.
    pub pressure: Pressure,
}

/// Change of a diameter at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChangeAt {
    /// Distance from the back face of the ring.
    pub position: Length,
    /// Change of the diameter, positive when it grows.
    pub change: Length,
}

/// How the surfaces of a part change.
#[derive(Clone, Debug, PartialEq)]
pub struct PartChange {
    /// Inside; `None` when the part is solid.
    pub inside: Option<SurfaceChange>,
    /// Outside.
    pub outside: SurfaceChange,
}

/// How the diameters along a surface change, thermal part included.
#[derive(Clone, Debug, PartialEq)]
pub struct SurfaceChange {
    /// Change against position, from back to front; parabolas between every other place.
    pub along: Vec<ChangeAt>,
    /// Mean over the axial length.
    pub mean: Length,
    /// Change at the middle of the ring's groove, or of its width when it has none; at the nearest end of the surface
    /// when that ends before.
    pub at_raceway: Length,
}

/// The wall of a housing, or the shoulder of a shaft.
///
/// Stress through its thickness is replaced by the straight line with the same force and moment: membrane stress plus
/// bending stress. Bending is positive when it pulls on the side of the ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WallState {
    /// Radial membrane stress at the root, which is the cylinder of the seat.
    pub root_membrane: Pressure,
    /// Radial bending stress at the root.
    pub root_bending: Pressure,
    /// Hoop membrane stress at the free edge; at the centre when the wall is closed.
    pub edge_membrane: Pressure,
    /// Hoop bending stress at the free edge.
    pub edge_bending: Pressure,
    /// Axial displacement of the free edge, or of the centre, away from the ring; against the face that the seat rests
    /// on, and where interference makes that flare, against its outer circle.
    pub edge_deflection: Length,
    /// The same against the far circle of the seat's back face.
    pub edge_deflection_from_rim: Length,
    /// Mean axial displacement under the ring's face, counted as that of the free edge: what the push moves.
    pub face_deflection: Length,
}

impl Contact {
    /// Axial force that pushes the part along the whole seat: `F = μ N`, N the normal force.
    ///
    /// **Valid for** friction so low that it does not change the pressure; friction that holds the parts axially while
    /// they settle raises the pressure (by 0.4 % in an open bore and by 7 % in a blind one, at a friction of 0.12,
    /// against independent finite elements that let the whole interference act at once).
    ///
    /// # Errors
    /// A friction outside 0 to 1.
    ///
    /// **Source**: Coulomb friction on the contact area, as in DIN 7190-1 (from memory).
    pub fn press_force(&self, friction: f64) -> Result<Force, SectionError> {
        Ok(self.normal_force * within("coefficient of friction", friction, (0.0, LARGEST_FRICTION), "")?)
    }

    /// Pressure at a position, straight between the places given; `None` beyond them by more than a nanometre.
    pub fn pressure_at(&self, position: Length) -> Option<Pressure> {
        let rounding = Length::new::<nanometer>(1.0);
        let within =
            |pair: &&[PressureAt]| position >= pair[0].position - rounding && position <= pair[1].position + rounding;
        let pair = self.pressure.windows(2).find(within)?;
        let share: f64 = ((position - pair[0].position) / (pair[1].position - pair[0].position)).into();
        Some(pair[0].pressure + (pair[1].pressure - pair[0].pressure) * share.clamp(0.0, 1.0))
    }
}

impl SurfaceChange {
    /// Change of the diameter at a position, by the element's parabola; at the nearest end beyond the surface.
    pub fn at(&self, position: Length) -> Length {
        let edges = (0..self.along.len().saturating_sub(2)).step_by(2).map(|from| &self.along[from..from + 3]);
        let mut edges = edges.peekable();
        while let Some(edge) = edges.next() {
            if position <= edge[2].position || edges.peek().is_none() {
                return parabola(edge, position);
            }
        }
        Length::new::<meter>(0.0)
    }
}

fn parabola(edge: &[ChangeAt], position: Length) -> Length {
    let middle = (edge[0].position + edge[2].position) / 2.0;
    let x: f64 = ((position - middle) / (edge[2].position - middle)).into();
    let x = x.clamp(-1.0, 1.0);
    let shape = [x * (x - 1.0) / 2.0, 1.0 - x * x, x * (x + 1.0) / 2.0];
    edge.iter().zip(shape).map(|(at, shape)| at.change * shape).sum()
}
