use super::load::LoadZone;
use super::plate::{Edge, Solved, Wall};
use crate::mechanics::elastic::Strength;
use crate::mechanics::error::MechanicsError;
use crate::mechanics::stress::Stress;
use crate::quantity::{Force, Pressure, positive};
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
    /// Bending stress on both faces by the criterion of the strength (largest tension for brittle materials), at the root and
    /// at the hole or the middle, between which it is never higher than at both (a test looks); mean shear `τ = F/(π D_zone t)` as pure shear by the same criterion (von Mises √3 τ, Tresca 2 τ,
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
        for (radius, place) in places {
            let stress = bending(strength, &solved, radius);
            if stress > worst.0 {
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
    strength.criterion.stress(&Stress { radial, hoop, axial: Pressure::default() })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Length;
    use uom::si::length::meter;

    fn wall(hole: f64, poisson: f64) -> Wall {
        let [edge, hole, thickness] = [2.0, 2.0 * hole, 0.01].map(Length::new::<meter>);
        let hole = (hole > Length::default()).then_some(hole);
        Wall { edge, hole, thickness, elastic_modulus: Pressure::new::<pascal>(1e11), poisson }
    }

    /// Highest stress at 33 radii from hole to edge over that at the two ends.
    fn span_over_ends(wall: &Wall, zone: &LoadZone, strength: &Strength, edge: Edge) -> f64 {
        let solved = wall.check(zone).unwrap().solve(edge);
        let (from, to) = (solved.hole_radius(), solved.edge_radius());
        let at = |i: u8| bending(strength, &solved, from + (to - from) * f64::from(i) / 32.0);
        (1..32).map(at).fold(0.0, f64::max) / at(0).max(at(32))
    }

    #[test]
    fn no_plate_is_stressed_more_between_its_ends_than_at_both() {
        let one = Pressure::new::<pascal>(1.0);
        let mut looked_at = 0;
        for hole in [0.0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7] {
            for (start, width) in (0..10).flat_map(|i| [0.04, 0.2, 0.5, 1.0].map(|width| (f64::from(i) / 10.0, width)))
            {
                let inside = hole + (1.0 - hole) * start;
                let outside = inside + (1.0 - inside) * width;
                let [inside, outside] = [2.0 * inside, 2.0 * outside].map(Length::new::<meter>);
                for (poisson, edge) in
                    [0.0, 0.15, 0.3, 0.45].into_iter().flat_map(|p| [(p, Edge::Fixed), (p, Edge::Simple)])
                {
                    for strength in [Strength::brittle(one), Strength::ductile(one)] {
                        let share =
                            span_over_ends(&wall(hole, poisson), &LoadZone { inside, outside }, &strength, edge);
                        assert!(share <= 1.0 + 1e-9, "{share}: hole {hole}, {start}, {width}, {poisson}, {edge:?}");
                        looked_at += 1;
                    }
                }
            }
        }
        assert_eq!(looked_at, 8 * 40 * 8 * 2);
    }
}
