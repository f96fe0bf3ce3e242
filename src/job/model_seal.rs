//! The shaft seal of a job.

use crate::fit::Limits;
use crate::quantity::{AngularVelocity, Length, Roughness};
use crate::stock::closure::Elastomer;
use crate::stock::seal_seats::SealCase;

/// The shaft seal beside the bearing.
#[derive(Clone, Debug)]
pub struct Seal {
    /// Elastomer of the lip, with its temperature limits.
    pub lip: Elastomer,
    /// Whether it is already in the housing when the bearing goes in.
    pub fitted_first: bool,
    /// The seal itself, where the job gives its sizes.
    pub body: Option<Box<SealBody>>,
}

/// How many lips a seal has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SealLips {
    /// One, with its spring.
    Single,
    /// One and a second one against dirt.
    Double,
}

impl SealLips {
    /// Both with the name that a job uses.
    pub const NAMES: [(&'static str, SealLips); 2] = [("single", Self::Single), ("double", Self::Double)];
}

/// What the lip is passed over while the seal, or the shaft, goes in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PassesOver {
    /// A thread.
    Thread,
    /// A spline.
    Spline,
    /// A keyway.
    Keyway,
    /// A shaft with a plain end.
    PlainShaft,
}

impl PassesOver {
    /// Each with the name that a job uses.
    pub const NAMES: [(&'static str, PassesOver); 4] = [
        ("thread", Self::Thread),
        ("spline", Self::Spline),
        ("keyway", Self::Keyway),
        ("plain shaft", Self::PlainShaft),
    ];

    /// The name that a job uses.
    pub fn name(self) -> &'static str {
        Self::NAMES.iter().find(|(_, thing)| *thing == self).map_or("shaft", |(name, _)| name)
    }
}

/// The bore that a seal sits in.
#[derive(Clone, Debug)]
pub enum SealBore {
    /// The bore of the bearing.
    OfBearing,
    /// One of its own.
    Own {
        /// Its limits.
        limits: Limits,
        /// What they were given as.
        basis: String,
    },
}

/// A seal by its sizes, with what is known of its bore, its shaft and its place.
#[derive(Clone, Debug)]
pub struct SealBody {
    /// Nominal inside: the shaft.
    pub inside: Length,
    /// Nominal outside: the bore.
    pub outside: Length,
    /// Width.
    pub width: Length,
    /// What its outside is of.
    pub case: SealCase,
    /// How many lips it has.
    pub lips: SealLips,
    /// The bore.
    pub bore: SealBore,
    /// Limits of the shaft under the lip.
    pub shaft: Limits,
    /// What they were given as.
    pub shaft_basis: String,
    /// Roughness of the bore, when given.
    pub bore_roughness: Option<Roughness>,
    /// Roughness of the shaft under the lip, when given.
    pub shaft_roughness: Option<Roughness>,
    /// Hardness of the shaft under the lip, HRC, when given.
    pub shaft_hardness: Option<f64>,
    /// Length of the lead-in of the bore, when given.
    pub chamfer: Option<Length>,
    /// Diameter of the thin end of the shaft's lead-in, when given.
    pub shaft_end: Option<Length>,
    /// Depth below the face of the housing of the face that goes in first.
    pub depth: Length,
    /// Depth of the shoulder behind it, when there is one.
    pub shoulder: Option<Length>,
    /// Depth of the nearer edge of a hole behind it, when there is one.
    pub drain: Option<Length>,
    /// Width of the track that an old lip has worn into the shaft, when there is one.
    pub worn_track: Option<Length>,
    /// What the lip is passed over, when given.
    pub passes_over: Option<PassesOver>,
    /// Whether sealant goes on the bore.
    pub sealant: bool,
    /// Speed of the shaft, when given here or for the service.
    pub speed: Option<AngularVelocity>,
}
