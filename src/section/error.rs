use crate::quantity::ValueError;
use thiserror::Error;

/// Why a section has no answer.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum SectionError {
    /// A number that cannot be taken.
    #[error(transparent)]
    Value(#[from] ValueError),
    /// A part has no wall, or too little of one to be divided into elements.
    #[error(
        "the {part} has {inside_mm:.4} mm inside and {outside_mm:.4} mm outside; the outside must be larger by 0.1 % at \
         least"
    )]
    NoWall {
        /// Which part.
        part: &'static str,
        /// Inside diameter, mm.
        inside_mm: f64,
        /// Outside diameter, mm.
        outside_mm: f64,
    },
    /// The chamfers leave no seat.
    #[error(
        "the chamfers of {back_mm:.3} mm and {front_mm:.3} mm leave no seat on a ring {width_mm:.3} mm wide; a tenth of \
         the width must be left"
    )]
    ChamferTooWide {
        /// Chamfer at the back face, mm.
        back_mm: f64,
        /// Chamfer at the front face, mm.
        front_mm: f64,
        /// Width of the ring, mm.
        width_mm: f64,
    },
    /// Groove and chamfers leave less than a fifth of the ring's wall, or the groove runs out of a face.
    #[error(
        "a groove {depth_mm:.3} mm deep from {from_mm:.3} to {to_mm:.3} mm does not fit a ring {width_mm:.3} mm wide \
         with a wall of {wall_mm:.3} mm; it must end within the width and leave a fifth of the wall"
    )]
    GrooveTooLarge {
        /// Depth of the groove, mm.
        depth_mm: f64,
        /// Where it begins, from the back face, mm.
        from_mm: f64,
        /// Where it ends, from the back face, mm.
        to_mm: f64,
        /// Width of the ring, mm.
        width_mm: f64,
        /// Wall of the ring, mm.
        wall_mm: f64,
    },
    /// Ring and seat do not meet along an axial length worth the name.
    #[error(
        "ring and seat touch along {length_mm:.3} mm only, of a ring {width_mm:.3} mm wide; a tenth of it is the least"
    )]
    NoContact {
        /// Length along which they face one another, mm.
        length_mm: f64,
        /// Width of the ring, mm.
        width_mm: f64,
    },
    /// The sizes are so far apart that the mesh would not fit the machine.
    #[error(
        "this section needs {nodes} nodes and {limit} are allowed; take a coarser accuracy or a shorter or thinner seat"
    )]
    MeshTooLarge {
        /// Nodes that it needs.
        nodes: usize,
        /// Most nodes allowed.
        limit: usize,
    },
    /// An element of the mesh is turned inside out.
    #[error(
        "the section cannot be divided into elements near z = {z_mm:.3} mm; make its groove or chamfers less steep"
    )]
    Distorted {
        /// Axial position, mm from the back face of the ring.
        z_mm: f64,
    },
    /// A stiffness matrix that is not positive definite: the sizes or moduli are too far apart for the arithmetic.
    #[error("the {part} is too slender for its stiffness to be worked out; check its sizes")]
    NotStiff {
        /// Which part.
        part: &'static str,
    },
    /// Loads that do not belong to the section.
    #[error("the loads have {given} {what} and the section needs {needed}; give one for each, from the inside outward")]
    WrongLoads {
        /// What is counted.
        what: &'static str,
        /// How many were given.
        given: usize,
        /// How many are needed.
        needed: usize,
    },
    /// An axial force on a seat that cannot take it.
    #[error(
        "an axial force of {force_n:.1} N was given but {why}; leave it at zero, or give the seat a wall to push on and \
         a face to rest on"
    )]
    NoAbutment {
        /// Axial force, N.
        force_n: f64,
        /// What is missing.
        why: &'static str,
    },
    /// A ring that is in its seat while that is finished.
    #[error("the ring touches its seat while that is finished; give it an interference below zero there")]
    InTheWay,
    /// A seat that was finished with a liner in place has no unit solutions.
    #[error("a seat that was finished after its liner was fitted has no unit solutions; solve its loads one by one")]
    Finished,
    /// Friction of parts that do not touch.
    #[error(
        "the ring does not touch its seat under these loads, so that friction does nothing; give it an interference"
    )]
    NotTouching,
    /// The contact did not settle, which arithmetic allows only for numbers near its limits.
    #[error("the contact did not settle within {steps} steps; check sizes and interference")]
    NotSettled {
        /// Steps that were made.
        steps: usize,
    },
}
