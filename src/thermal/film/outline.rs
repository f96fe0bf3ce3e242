use super::super::error::ThermalError;
use super::super::geometry::{Boss, Plug, Ring};
use crate::quantity::Length;
use std::f64::consts::PI;
use uom::si::length::meter;

/// A part of revolution, all faces exposed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RoundPart {
    /// Bearing ring, bush, whole bearing.
    Ring(Ring),
    /// Solid cylinder.
    Plug(Plug),
    /// The part of a housing around the seat.
    Boss(Boss),
}

/// How the axis of the part stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// The part stands on its rim.
    Horizontal,
    /// The part lies flat; a blind bore opens upwards.
    Vertical,
}

/// One surface of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// The outside.
    Outside,
    /// The bore, with the hole of a back wall.
    Bore,
    /// The open face; the upper one when the part lies flat.
    Front,
    /// The other face; the lower one when the part lies flat.
    Back,
    /// The bottom of a blind bore.
    BoreBottom,
}

/// How air moves along a face, with the lengths (m) that its correlation needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Air {
    /// Around a horizontal cylinder; `share` of it is reached by fresh air.
    Around { diameter: f64, share: f64 },
    /// Along an upright face of this height.
    Along { height: f64 },
    /// Through an upright bore.
    Through { diameter: f64, path: f64 },
    /// From a horizontal face, length = area / perimeter.
    From { length: f64, faces_up: bool },
}

/// A face with its area (m²), what air does along it, and the length (m) along which a wind passes it.
#[derive(Clone, Copy, Debug)]
pub(super) struct Face {
    pub(super) surface: Surface,
    pub(super) area: f64,
    pub(super) air: Air,
    pub(super) wind_length: f64,
}

/// Sizes in m: bore (0 for a plug), outside, length, back wall and the hole in it (the bore when there is no wall).
struct Sizes {
    bore: f64,
    outside: f64,
    length: f64,
    wall: f64,
    hole: f64,
}

impl From<Ring> for RoundPart {
    fn from(ring: Ring) -> Self {
        Self::Ring(ring)
    }
}

impl From<Plug> for RoundPart {
    fn from(plug: Plug) -> Self {
        Self::Plug(plug)
    }
}

impl From<Boss> for RoundPart {
    fn from(boss: Boss) -> Self {
        Self::Boss(boss)
    }
}

impl RoundPart {
    /// Its faces; those without area are left out by their area of zero.
    pub(super) fn faces(&self, axis: Axis) -> Result<[Face; 5], ThermalError> {
        Ok(self.sizes()?.faces(axis))
    }

    /// Checked by the same rules as its [`super::super::Shape`], so that the two have the same surface.
    fn sizes(&self) -> Result<Sizes, ThermalError> {
        let m = |length: Length| length.get::<meter>();
        match self {
            Self::Ring(ring) => {
                ring.shape()?;
                let bore = m(ring.bore);
                Ok(Sizes { bore, outside: m(ring.outside), length: m(ring.width), wall: 0.0, hole: bore })
            }
            Self::Plug(plug) => {
                plug.shape()?;
                Ok(Sizes { bore: 0.0, outside: m(plug.outside), length: m(plug.length), wall: 0.0, hole: 0.0 })
            }
            Self::Boss(boss) => {
                boss.shape()?;
                let bore = m(boss.bore);
                let (wall, hole) =
                    boss.back_wall.map_or((0.0, bore), |wall| (m(wall.thickness), wall.hole.map_or(0.0, m)));
                Ok(Sizes { bore, outside: m(boss.outside), length: m(boss.length), wall, hole })
            }
        }
    }
}

impl Sizes {
    fn faces(&self, axis: Axis) -> [Face; 5] {
        let Self { bore, outside, length, wall, hole } = *self;
        let deep = length - wall;
        [
            Face {
                surface: Surface::Outside,
                area: PI * outside * length,
                air: match axis {
                    Axis::Horizontal => Air::Around { diameter: outside, share: 1.0 },
                    Axis::Vertical => Air::Along { height: length },
                },
                wind_length: outside,
            },
            Face {
                surface: Surface::Bore,
                area: PI * (bore * deep + hole * wall),
                air: match axis {
                    Axis::Horizontal => Air::Around { diameter: bore, share: self.reached_share() },
                    Axis::Vertical => Air::Through { diameter: bore, path: self.bore_path() },
                },
                wind_length: bore,
            },
            flat(Surface::Front, (bore, outside), axis, true),
            flat(Surface::Back, (hole, outside), axis, false),
            flat(Surface::BoreBottom, (hole, bore), axis, true),
        ]
    }

    /// Share of a lying bore that fresh air reaches: half a diameter from every open end.
    fn reached_share(&self) -> f64 {
        if self.bore <= 0.0 {
            return 0.0;
        }
        let reach = if self.is_blind() { 0.5 * self.bore } else { self.bore };
        (reach / (self.length - self.wall)).min(1.0)
    }

    /// Way of the air through an upright bore: once its length, twice when it must turn at the bottom.
    fn bore_path(&self) -> f64 {
        if self.is_blind() { 2.0 * (self.length - self.wall) } else { self.length }
    }

    fn is_blind(&self) -> bool {
        self.wall > 0.0 && self.hole <= 0.0
    }
}

/// Face between two diameters. Upright: its height is its area over its diameter, the mean height of metal.
fn flat(surface: Surface, (inside, outside): (f64, f64), axis: Axis, faces_up: bool) -> Face {
    let area = PI / 4.0 * (outside - inside) * (outside + inside);
    let height = if outside > 0.0 { area / outside } else { 0.0 };
    let air = match axis {
        Axis::Horizontal => Air::Along { height },
        Axis::Vertical => Air::From { length: (outside - inside) / 4.0, faces_up },
    };
    Face { surface, area, air, wind_length: height }
}
