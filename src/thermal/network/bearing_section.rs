//! The parts of a bearing and their sizes, by rule.

use super::super::error::ThermalError;
use super::super::{ConductionPath, Ring};
use super::contact::AIR_W_MK;
use crate::quantity::Length;
use crate::stock::dimensions::{BALL_SHARE, RING_SHARE};
use std::f64::consts::PI;
use uom::si::length::meter;

/// Whether the medium gets between the rings.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seal {
    /// Open: the rolling elements see the surroundings through the two ring-shaped openings.
    Open,
    /// Shields or seals, which belong to the outer ring.
    Closed,
}

/// Share of the pitch circle that balls take; common practice (assembly by displacing one ring allows about 0.6). With the
/// shares of ring and ball it meets commonly quoted bearing masses within 10 % (see the tests).
const FILL_SHARE: f64 = 0.6;

/// One of the three bodies of a bearing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BearingPart {
    /// Outer ring: its temperature counts for the fit in a housing.
    OuterRing,
    /// Balls or rollers with their cage.
    RollingElements,
    /// Inner ring: its temperature counts for the fit on a shaft.
    InnerRing,
}

/// Sizes in metres that follow from the rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Section {
    bore: f64,
    outside: f64,
    width: f64,
    ring: f64,
    pub(super) ball: f64,
    pub(super) pitch: f64,
}

impl BearingPart {
    pub(crate) fn index(self) -> usize {
        match self {
            BearingPart::OuterRing => 0,
            BearingPart::RollingElements => 1,
            BearingPart::InnerRing => 2,
        }
    }
}

impl Section {
    /// The sizes of a bearing with this outline.
    pub(super) fn of(outline: &Ring) -> Result<Self, ThermalError> {
        outline.shape()?;
        let (bore, outside) = (outline.bore.get::<meter>(), outline.outside.get::<meter>());
        let height = outside - bore;
        Ok(Self {
            bore,
            outside,
            width: outline.width.get::<meter>(),
            ring: RING_SHARE * height,
            ball: BALL_SHARE * height,
            pitch: 0.5 * (bore + outside),
        })
    }

    /// Number of balls that the rule gives; need not be whole.
    pub(super) fn balls(&self) -> f64 {
        FILL_SHARE * PI * self.pitch / self.ball
    }

    /// Shares of the volume.
    pub(super) fn shares(&self) -> [f64; 3] {
        let ring = |mean_diameter: f64| PI * mean_diameter * self.ring * self.width;
        let balls = self.balls() * PI / 6.0 * self.ball.powi(3);
        let volumes = [ring(self.outside - self.ring), balls, ring(self.bore + self.ring)];
        let whole: f64 = volumes.iter().sum();
        volumes.map(|volume| volume / whole)
    }

    /// Outside or bore with the two faces of each ring; the openings between them belong to the balls, or, shielded, to
    /// the outer ring.
    pub(super) fn areas(&self, seal: Seal) -> [f64; 3] {
        let faces = |large: f64, small: f64| 2.0 * PI / 4.0 * (large * large - small * small);
        let (inside, over) = (self.outside - 2.0 * self.ring, self.bore + 2.0 * self.ring);
        let outer = PI * self.outside * self.width + faces(self.outside, inside);
        let inner = PI * self.bore * self.width + faces(over, self.bore);
        let openings = faces(inside, over);
        match seal {
            Seal::Open => [outer, openings, inner],
            Seal::Closed => [outer + openings, 0.0, inner],
        }
    }

    /// Rings give their heat to the outside or bore and to both faces, balls all round (n = 5 for a sphere).
    pub(super) fn paths(&self) -> [ConductionPath; 3] {
        let ring = ConductionPath::one_face(Length::new::<meter>(self.ring));
        let ring = ring.shorter_of(ConductionPath::both_faces(Length::new::<meter>(self.width)));
        let ball = ConductionPath { length: Length::new::<meter>(0.5 * self.ball), divisor: 5.0 };
        [ring, ball, ring]
    }

    /// Still air between the two rings, beside the balls: `2π k b / ln(r_2/r_1)`, W/K.
    pub(super) fn gas_between_rings(&self) -> f64 {
        let (inside, over) = (self.outside - 2.0 * self.ring, self.bore + 2.0 * self.ring);
        (1.0 - FILL_SHARE) * 2.0 * PI * AIR_W_MK * self.width / (inside / over).ln()
    }
}
