use super::load::LoadZone;
use super::plate::{Edge, Solved, Wall};
use crate::mechanics::elastic::Strength;
use crate::mechanics::error::{MechanicsError, positive};
use crate::mechanics::ring::Stress;
use crate::quantity::{Force, Pressure};
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::pressure::pascal;

/// Where a wall reaches its strength first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WallPlace {
    /// By bending at the root, where it meets the housing.
    Root,
    /// By bending at the edge of the hole, or in the middle when there is none.
    Hole,
    /// By bending between the two.
    Span,
    /// By shear around the loaded zone.
    Shear,
}

/// Force that a wall bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AllowableForce {
    /// The force at which the strength is just reached; there is no factor of safety in it.
    pub force: Force,
    /// Where.
    pub place: WallPlace,
}

impl Wall {
    /// Force at which the wall just reaches a strength, by bending or by mean shear around the loaded zone.
    ///
    /// Bending stress on both faces by the criterion of the strength (largest tension for brittle materials), at 35 radii
    /// from hole to edge; mean shear `τ = F/(π D_zone t)` as pure shear by the same criterion (von Mises √3 τ, Tresca 2 τ,
    /// largest tension τ).
    ///
    /// Take [`Edge::Fixed`] for the root of an integral wall. When [`Wall::thickness_share`] is beyond a half, the hole of a
    /// wall in a slim housing may bear up to 19 % more than that root: keep that in hand.
    ///
    /// **Valid for** what [`Wall::under`] is valid for; sharp corners and casting flaws are not in it.
    ///
    /// # Errors
    /// As for [`Wall::under`]; a strength that is not positive.
    ///
    /// **Source**: as for [`Wall::under`]; advice on the edge from finite elements of a 62 mm seat with walls of 3 to 8 mm.
    pub fn allowable_force(
        &self,
        zone: &LoadZone,
        strength: &Strength,
        edge: Edge,
    ) -> Result<AllowableForce, MechanicsError> {
        let limit = positive("strength of the wall", strength.limit.get::<pascal>(), "Pa")?;
        let plate = self.check(zone)?;
        let solved = plate.solve(edge);
        let shear = 1.0 / (2.0 * PI * plate.zone.outside * plate.thickness);
        let mut worst = (stress_of(strength, (shear, -shear)), WallPlace::Shear);
        let places = [(solved.edge_radius(), WallPlace::Root), (solved.hole_radius(), WallPlace::Hole)];
        // Root and hole first: the span governs only where it is truly higher than both.
        for (radius, place) in places.into_iter().chain(solved.radii().map(|radius| (radius, WallPlace::Span))) {
            let stress = bending(strength, &solved, radius);
            if stress > worst.0 * (1.0 + 1e-12) {
                worst = (stress, place);
            }
        }
        let force = positive("force that the wall bears", limit / worst.0, "N")?;
        Ok(AllowableForce { force: Force::new::<newton>(force), place: worst.1 })
    }
}

/// Stress after the criterion on the face that is worse, for a force of one.
fn bending(strength: &Strength, solved: &Solved, radius: f64) -> f64 {
    let (radial, hoop) = solved.stress(radius);
    stress_of(strength, (radial, hoop)).max(stress_of(strength, (-radial, -hoop)))
}

fn stress_of(strength: &Strength, (radial, hoop): (f64, f64)) -> f64 {
    let [radial, hoop] = [radial, hoop].map(Pressure::new::<pascal>);
    strength.criterion.stress(&Stress { radial, hoop })
}
