use super::error::SectionError;
use super::outline::Outlines;
use crate::quantity::{Force, Length, Ratio, within};
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::ratio::ratio;

/// Largest interference as a share of the diameter, and largest free strain: no metal joint has more.
const LARGEST_SHARE: f64 = 0.02;
/// Largest force taken, N.
pub(super) const LARGEST_FORCE: f64 = 1e9;

/// What is put on a section.
#[derive(Clone, Debug, PartialEq)]
pub struct Loads {
    /// Diametral interference of each contact at the reference temperature, from the inside outward: ring and seat, or
    /// ring and liner and then liner and housing. Negative is clearance.
    pub interference: Vec<Length>,
    /// Free thermal strain ΔL/L of each part since the reference temperature, from the inside outward.
    pub strain: Vec<Ratio>,
    /// Force with which the ring's face presses on the wall or shoulder behind it, spread evenly.
    pub axial: Force,
}

impl Loads {
    /// Loads in plain SI, in the order of the unit solutions: half of each interference (m), each strain, the force (N).
    pub(super) fn plain(&self, outlines: &Outlines) -> Result<Vec<f64>, SectionError> {
        let bodies = &outlines.bodies;
        count("interferences", self.interference.len(), bodies.len() - 1)?;
        count("strains", self.strain.len(), bodies.len())?;
        let mut plain = Vec::with_capacity(2 * bodies.len());
        for (interference, body) in self.interference.iter().zip(bodies) {
            let most = LARGEST_SHARE * 2.0 * body.outer * 1e3;
            // An open joint may be as open as it is wide.
            let range = (-2.0 * body.outer * 1e3, most);
            let checked = within("interference", interference.get::<meter>() * 1e3, range, "mm")?;
            plain.push(checked / 2e3);
        }
        for strain in &self.strain {
            let strain = strain.get::<ratio>();
            plain.push(within("free thermal strain", strain, (-LARGEST_SHARE, LARGEST_SHARE), "m/m")?);
        }
        plain.push(within("axial force", self.axial.get::<newton>(), (0.0, LARGEST_FORCE), "N")?);
        Ok(plain)
    }
}

fn count(what: &'static str, given: usize, needed: usize) -> Result<(), SectionError> {
    if given == needed { Ok(()) } else { Err(SectionError::WrongLoads { what, given, needed }) }
}
