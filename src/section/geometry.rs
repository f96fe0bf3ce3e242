use crate::quantity::{Length, Pressure};

/// Elastic constants of an isotropic part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Elastic {
    /// Elastic modulus.
    pub modulus: Pressure,
    /// Poisson ratio, 0 to 0.49; quadratic elements of full integration stiffen near 0.5.
    pub poisson: f64,
}

/// The section of a ring: the outer ring of a bearing in a housing, the inner ring on a shaft, a bush, a seal's case.
///
/// Positions along the axis count from the ring's **back face**, which is the one towards the shoulder, to its front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RingSection {
    /// Inside diameter.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// Width along the axis.
    pub width: Length,
    /// Chamfers on the side of the seat.
    pub chamfers: Chamfers,
    /// Raceway groove on the other side: in the bore of a ring in a housing, on the outside of a ring on a shaft.
    pub groove: Option<Groove>,
    /// Material.
    pub material: Elastic,
}

/// Chamfers of 45° at both ends of a ring, on the side of the seat. Zero is a sharp edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chamfers {
    /// At the back face, the one towards the shoulder.
    pub back: Length,
    /// At the front face.
    pub front: Length,
}

/// A raceway groove whose section is an arc of a circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Groove {
    /// Largest depth.
    pub depth: Length,
    /// Width between its edges.
    pub width: Length,
    /// Distance of its middle from the back face.
    pub middle: Length,
}

/// A sleeve between ring and seat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Liner {
    /// Thickness of its wall.
    pub thickness: Length,
    /// Length beyond the ring's front face; negative when it ends before. It begins at the ring's back face.
    pub front: Length,
    /// Whether it is cast in or bonded to the seat, so that the seam bears tension across it too; it slides along the axis.
    pub bonded: bool,
    /// Material.
    pub material: Elastic,
}

/// What a ring sits in or on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Seat {
    /// The ring sits in a bore.
    Housing(Housing),
    /// The ring sits on a shaft.
    Shaft(Shaft),
}

/// The boss around a bore. The bore has the ring's outside diameter, and a liner's outside where there is one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Housing {
    /// Outside diameter of the boss; with a step, in front of it.
    pub outside: Length,
    /// Another outside diameter behind a step.
    pub step: Option<Step>,
    /// Length of the bore beyond the ring's front face; negative when the bore ends before the ring does.
    pub front: Length,
    /// What is behind the ring.
    pub back: Back,
    /// Material.
    pub material: Elastic,
}

/// A step in the outside of a boss, with a sharp inner corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Outside diameter from the step to the back.
    pub outside: Length,
    /// Distance of the step from the ring's back face, towards the front; negative behind it.
    pub position: Length,
}

/// What is behind the ring in a housing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Back {
    /// The bore goes through and is longer than the ring by this much at the back; zero when both end together.
    Open {
        /// Length of the bore behind the ring's back face.
        beyond: Length,
    },
    /// A wall that the ring stops against.
    Wall {
        /// Thickness of the wall.
        thickness: Length,
        /// Diameter of the hole in it; `None` when it is closed.
        hole: Option<Length>,
    },
}

/// The shaft in a ring. Its seat has the ring's bore, less a liner where there is one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shaft {
    /// Diameter of its own bore; `None` when it is solid.
    pub bore: Option<Length>,
    /// Length beyond the ring's front face; negative when the shaft ends before the ring does.
    pub front: Length,
    /// Length behind the ring's back face.
    pub behind: Length,
    /// Diameter behind the ring: the shoulder that the ring stops against; `None` when the shaft goes on plain.
    pub shoulder: Option<Length>,
    /// Material.
    pub material: Elastic,
}

/// Where the seat is held along the axis against the ring's push.
///
/// The face takes the push and nothing else: it does not keep the seat flat when interference makes it flare.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Support {
    /// Nowhere but on one circle, which keeps it from drifting and takes no force.
    Free,
    /// The boss, or the shaft, rests on its front face and may slide radially.
    Front,
    /// The boss, or the shaft, rests on its back face and may slide radially; a wall inside the boss, or a shoulder
    /// around the shaft, hangs free.
    Back {
        /// Inside diameter of what it rests on, when that is wider than the bore of the boss or shaft.
        opening: Option<Length>,
    },
}

/// Ring and seat as they are drawn: a section through the axis. Sizes are rounded to 0.1 µm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Ring.
    pub ring: RingSection,
    /// Sleeve between ring and seat.
    pub liner: Option<Liner>,
    /// Housing or shaft.
    pub seat: Seat,
    /// Where the housing or shaft is held along the axis.
    pub support: Support,
}

/// How fine the section is divided; each step halves the elements.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Accuracy {
    /// For a first look.
    Coarse,
    /// For work.
    #[default]
    Normal,
    /// For checking the others.
    Fine,
}
