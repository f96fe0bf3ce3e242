//! Any number of rings in one another, on a solid or hollow core.

mod contact;

use super::error::MechanicsError;
use super::press::Press;
use super::ring::{CheckedRing, Ends, Ring, RingState};
use super::seam::{LARGEST_SHARE, checked_interference, compliance, inside_at, outside_at};
use crate::quantity::{Force, Length, Pressure, Ratio, not_negative, within};
use contact::Seams;
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;

/// One ring of a [`Compound`]; the innermost may be solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// The ring at the reference temperature.
    pub ring: Ring,
    /// Free strain since then, mostly thermal, `α ΔT`; positive when the ring has grown.
    pub free_strain: Ratio,
}

/// Where two layers meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interface {
    /// Nominal diameter.
    pub diameter: Length,
    /// Diametral interference at the reference temperature; negative for a clearance.
    pub interference: Length,
}

/// Concentric layers from the inside out, with one interface between each two.
#[derive(Clone, Debug, PartialEq)]
pub struct Compound {
    /// Layers, two or more.
    pub layers: Vec<Layer>,
    /// Interfaces, one fewer than the layers.
    pub interfaces: Vec<Interface>,
    /// What holds the ends of all layers.
    pub ends: Ends,
}

/// What becomes of an interface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InterfaceState {
    /// Nominal diameter.
    pub diameter: Length,
    /// Contact pressure; zero when open.
    pub pressure: Pressure,
    /// Diametral clearance; zero when the layers bear on each other.
    pub gap: Length,
}

/// What becomes of a [`Compound`].
#[derive(Clone, Debug, PartialEq)]
pub struct CompoundState {
    /// Each layer; its changes of diameter are total ones, thermal and elastic.
    pub layers: Vec<RingState>,
    /// Each interface.
    pub interfaces: Vec<InterfaceState>,
}

impl InterfaceState {
    /// Sum of the normal forces on a contact of this length, `N = p π D L`. For a length of one it is the force per
    /// length.
    ///
    /// # Errors
    /// A length that is negative.
    pub fn normal_force(&self, length: Length) -> Result<Force, MechanicsError> {
        let length = not_negative("length of the contact", length.get::<meter>(), "m")?;
        Ok(Force::new::<newton>(self.pressure.get::<pascal>() * PI * self.diameter.get::<meter>() * length))
    }

    /// The interface as press and drive see it; gives axial force and torque.
    pub fn press(&self, length: Length, friction: f64) -> Press {
        Press { pressure: self.pressure, diameter: self.diameter, length, friction }
    }
}

impl Compound {
    /// Pressures, gaps, stresses and total changes of size.
    ///
    /// At each interface k, of diameter D, what both layers give way makes good the interference and the difference of
    /// their free strains: `ΔD_outer(p) - ΔD_inner(p) = δ_k + D (ε_inner - ε_outer) + g_k` with Lamé's changes of size, a gap
    /// `g_k ≥ 0` where the pressure is zero. An interface that would pull is open; one that a neighbour's pressure closes
    /// is closed. There is one such state, and the search for it ends after as many rounds as there are interfaces at
    /// the latest. Pressures are in the order of the interfaces, inside first.
    ///
    /// **Valid for** elastic, round, concentric layers of equal width, each at one strain; ends after [`Ends`]. Interference
    /// counts against the sizes at the reference temperature, all changes to first order.
    ///
    /// # Errors
    /// [`MechanicsError`]: fewer than two layers, or not one interface fewer than layers; a solid layer but the innermost;
    /// surfaces that differ from their interface by more than 2 %; interfaces that do not rise, so that a layer has no
    /// wall; an interference or a free strain above 2 %.
    ///
    /// **Source**: as for [`Ring::under`], applied to every layer.
    pub fn solve(&self) -> Result<CompoundState, MechanicsError> {
        let rings = self.checked_layers()?;
        let seams = self.seams(&rings)?;
        let (pressures, gaps) = seams.solve();
        let at = |seam: Option<usize>| seam.and_then(|seam| pressures.get(seam)).copied().unwrap_or(0.0);
        let layer = |(k, ring): (usize, &CheckedRing)| ring.state(at(k.checked_sub(1)), at(Some(k)));
        let interface = |((interface, pressure), gap): ((&Interface, &f64), &f64)| InterfaceState {
            diameter: interface.diameter,
            pressure: Pressure::new::<pascal>(*pressure),
            gap: Length::new::<meter>(*gap),
        };
        Ok(CompoundState {
            layers: rings.iter().enumerate().map(layer).collect(),
            interfaces: self.interfaces.iter().zip(&pressures).zip(&gaps).map(interface).collect(),
        })
    }

    fn checked_layers(&self) -> Result<Vec<CheckedRing>, MechanicsError> {
        let (layers, interfaces) = (self.layers.len(), self.interfaces.len());
        if layers < 2 || interfaces + 1 != layers {
            return Err(MechanicsError::LayersAndInterfaces { layers, interfaces });
        }
        self.layers.iter().enumerate().map(|(k, layer)| self.checked_layer(k, layer)).collect()
    }

    /// A layer, both its surfaces brought to the interfaces.
    fn checked_layer(&self, k: usize, layer: &Layer) -> Result<CheckedRing, MechanicsError> {
        let mut ring = layer.ring;
        if let Some(inner) = k.checked_sub(1) {
            ring = inside_at(self.interfaces[inner].diameter, ring)?;
        }
        if let Some(outer) = self.interfaces.get(k) {
            ring = outside_at(outer.diameter, ring)?;
        }
        let strain = within("free strain", layer.free_strain.get::<ratio>(), (-LARGEST_SHARE, LARGEST_SHARE), "")?;
        Ok(ring.check()?.with(strain, self.ends))
    }

    fn seams(&self, rings: &[CheckedRing]) -> Result<Seams, MechanicsError> {
        let count = self.interfaces.len();
        let zeros = || Vec::with_capacity(count);
        let mut seams = Seams { own: zeros(), from_inside: zeros(), from_outside: zeros(), interference: zeros() };
        for (pair, interface) in rings.windows(2).zip(&self.interfaces) {
            let (inner, outer) = (&pair[0], &pair[1]);
            let diameter = interface.diameter.get::<meter>();
            let at_reference = checked_interference(interface.interference, interface.diameter)?;
            let now = at_reference + diameter * (inner.free_strain - outer.free_strain);
            checked_interference(Length::new::<meter>(now), interface.diameter)?;
            seams.own.push(compliance(inner, outer));
            seams.from_inside.push(-inner.change(1.0, 0.0, inner.outside_radius));
            seams.from_outside.push(outer.change(0.0, 1.0, outer.inside_radius));
            seams.interference.push(now);
        }
        Ok(seams)
    }
}
