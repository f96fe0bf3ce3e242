use crate::quantity::ValueError;
use thiserror::Error;

/// Why a mechanical question has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum MechanicsError {
    /// A number that cannot be taken.
    #[error(transparent)]
    Value(#[from] ValueError),
    /// A number must lie between two others and not on them.
    #[error("the {what} is {value}; it must lie between {from} and {to}")]
    NotBetween {
        /// What the number means.
        what: &'static str,
        /// The number.
        value: f64,
        /// It must be above this.
        from: f64,
        /// It must be below this.
        to: f64,
    },
    /// A wall is no plate.
    #[error(
        "a wall of {thickness_mm:.2} mm is thicker than its span of {span_mm:.2} mm to the edge; plate theory says nothing \
         of such a block: check the pressure under the ring's face instead"
    )]
    NoPlate {
        /// Thickness of the wall, mm.
        thickness_mm: f64,
        /// Span from hole, or middle, to edge, mm.
        span_mm: f64,
    },
    /// A screw that no torque moves.
    #[error(
        "a thread with a lead of {lead_mm:.2} mm on a pitch diameter of {diameter_mm:.2} mm jams with a friction of \
         {friction}: no torque moves it; check the lead and the friction"
    )]
    Jams {
        /// Lead, mm.
        lead_mm: f64,
        /// Pitch diameter, mm.
        diameter_mm: f64,
        /// Coefficient of friction in the thread.
        friction: f64,
    },
    /// The ends of a range are no numbers or the wrong way round.
    #[error(
        "the range of the {what} goes from {least_um:.2} to {most_um:.2} µm; give two numbers, the smaller one first"
    )]
    NoRange {
        /// What the range means.
        what: &'static str,
        /// Its lower end, µm.
        least_um: f64,
        /// Its upper end, µm.
        most_um: f64,
    },
    /// Two sizes of one part contradict each other.
    #[error(
        "the {larger} is {larger_mm:.4} mm and the {smaller} {smaller_mm:.4} mm; the {larger} must be the larger one"
    )]
    WrongOrder {
        /// What should be larger.
        larger: &'static str,
        /// Its size, mm.
        larger_mm: f64,
        /// What should be smaller.
        smaller: &'static str,
        /// Its size, mm.
        smaller_mm: f64,
    },
    /// A ring has no wall.
    #[error(
        "the ring has an outside of {outside_mm:.4} mm and a bore of {inside_mm:.4} mm; the outside must be larger"
    )]
    NoWall {
        /// Inside diameter, mm.
        inside_mm: f64,
        /// Outside diameter, mm.
        outside_mm: f64,
    },
    /// The outer ring of a joint, or a layer around another, is solid.
    #[error("the outer part has no bore; give the bore that the inner part goes into")]
    OuterIsSolid,
    /// Layers and interfaces that do not make a compound.
    #[error(
        "{layers} layers with {interfaces} interfaces; give two layers or more, and one interface between each two"
    )]
    LayersAndInterfaces {
        /// Number of layers.
        layers: usize,
        /// Number of interfaces.
        interfaces: usize,
    },
    /// A ring does not meet its partner at the diameter of the joint.
    #[error(
        "the joint has a diameter of {joint_mm:.4} mm but the {surface} is {surface_mm:.4} mm; the two may differ by 2 % \
         at most"
    )]
    NotAtJoint {
        /// Diameter of the joint, mm.
        joint_mm: f64,
        /// Which surface.
        surface: &'static str,
        /// Its diameter, mm.
        surface_mm: f64,
    },
    /// An interference beyond that at which the theory of a partly plastic hub ends.
    #[error(
        "an interference of {interference_mm:.4} mm is more than the {largest_mm:.4} mm up to which a partly plastic outer part \
         is computed; beyond it the wall is plastic throughout, or the bore is pressed as hard as the metal flows"
    )]
    BeyondPlastic {
        /// Interference, mm.
        interference_mm: f64,
        /// Largest interference with an answer, mm.
        largest_mm: f64,
    },
    /// The inner part of a joint with a partly plastic hub yields as well.
    #[error(
        "the inner part is stressed to {stress_mpa:.0} MPa but yields at {strength_mpa:.0} MPa; a joint in which both parts \
         yield is not computed"
    )]
    InnerYields {
        /// Largest stress by Tresca, MPa.
        stress_mpa: f64,
        /// Yield strength, MPa.
        strength_mpa: f64,
    },
    /// A bush without a bore has none to yield from.
    #[error("the inner part is solid; only a hollow one yields from its bore outward: give its bore")]
    InnerIsSolid,
    /// An interference beyond that up to which a yielded bush is computed.
    #[error(
        "an interference of {interference_mm:.4} mm is more than the {largest_mm:.4} mm at which the bore of the inner part has \
         closed by 0.5 %; a metal strained further hardens, and is not computed"
    )]
    BeyondPlasticBush {
        /// Interference, mm.
        interference_mm: f64,
        /// Largest interference with an answer, mm.
        largest_mm: f64,
    },
    /// The outer part of a joint with a yielded bush passes its strength as well.
    #[error(
        "the outer part has only {factor:.2} of the strength that the pressure of the inner part asks for; a joint in which both \
         parts yield is not computed"
    )]
    OuterYields {
        /// Strength over stress, below one.
        factor: f64,
    },
    /// An interference that no metal joint can have.
    #[error(
        "an interference of {interference_mm:.4} mm on {joint_mm:.4} mm is more than 2 %; check the units of both sizes"
    )]
    TooTight {
        /// Interference, mm.
        interference_mm: f64,
        /// Diameter of the joint, mm.
        joint_mm: f64,
    },
}

/// `value` when it lies between the ends and not on them.
pub(super) fn between(what: &'static str, value: f64, (from, to): (f64, f64)) -> Result<f64, MechanicsError> {
    if value > from && value < to { Ok(value) } else { Err(MechanicsError::NotBetween { what, value, from, to }) }
}

/// A size and its name, in metres.
pub(super) type Named = (&'static str, f64);

/// Refuses a larger size that is not larger.
pub(super) fn ordered((smaller, small): Named, (larger, large): Named) -> Result<(), MechanicsError> {
    if small < large {
        Ok(())
    } else {
        Err(MechanicsError::WrongOrder { larger, larger_mm: large * 1e3, smaller, smaller_mm: small * 1e3 })
    }
}
