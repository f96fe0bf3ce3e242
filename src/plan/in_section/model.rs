//! What a plan holds of the temperatures in the section of a seat.

use crate::job::Piece;
use crate::quantity::{Cases, Length, Pressure, ThermodynamicTemperature, Time};
use std::fmt;

/// Temperatures of a seat by conduction in its section, with the clearance that follows.
#[derive(Clone, Debug)]
pub struct SectionHeat {
    /// The pieces that are followed in their section from their media on; any other comes to the seat with one temperature.
    pub pieces: Vec<PieceHeat>,
    /// Clearance of the tightest case along the seat as the part reaches it: distance from the back face of the ring, clearance
    /// of the free parts.
    pub along: Vec<(Length, Length)>,
    /// The same seat with one temperature for each body.
    pub one_body: OneBody,
    /// The part in its seat; none where the tightest case does not go in, or is free for longer than is followed.
    pub race: Option<Race>,
}

/// Why temperatures are not followed in the section.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WithoutSection {
    /// Nothing is chilled or warmed.
    Untreated,
    /// One body for each piece was asked for, or the plan is one of many, where a history in the section takes too long.
    NotAsked,
    /// The time of each piece as one body is within 5 %, and its Biot number is at most 1.
    OneBodyIsEnough,
    /// A liner has no temperature of its own here.
    Lined,
    /// No piece of the seat can be followed in its section until it is seated.
    NoPiece,
    /// The section cannot be drawn from the job, or only with a length that it does not state.
    NotDrawn,
    /// The section could not be followed; the words say why.
    NotFollowed(String),
}

impl WithoutSection {
    /// Whether a section was asked for or needed.
    pub fn is_lacking(&self) -> bool {
        !matches!(self, Self::Untreated | Self::NotAsked | Self::OneBodyIsEnough)
    }
}

impl fmt::Display for WithoutSection {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Untreated => "nothing is chilled or warmed",
            Self::NotAsked => "one temperature for each body was asked for, or is taken where many plans are made",
            Self::OneBodyIsEnough => {
                "one temperature for each body is enough: its time is within 5 %, its Biot number at most 1"
            }
            Self::Lined => "the seat has a liner, whose temperature is taken as that of the housing",
            Self::NoPiece => {
                "no treated piece is drawn whole in the section: a bearing, and a piece on a plate, in a wrap, in a medium that \
                 warms with it, heated from within, with a mass of its own or cold in moist air, is followed as bodies"
            }
            Self::NotDrawn => "the section cannot be drawn from the job: state the length of the seat",
            Self::NotFollowed(why) => why,
        })
    }
}

/// A piece in its section.
#[derive(Clone, Debug)]
pub struct PieceHeat {
    /// Which.
    pub piece: Piece,
    /// On leaving its medium.
    pub end: Spread,
    /// As the part reaches the seat.
    pub at_bore: Spread,
    /// One temperature for the whole piece on leaving its medium.
    pub one_body_end: ThermodynamicTemperature,
    /// Stress of its uneven temperature at the moment at which it bears most.
    pub stress: UnevenStress,
}

/// Temperatures of a piece at one moment.
#[derive(Clone, Copy, Debug)]
pub struct Spread {
    /// Mean over the volume.
    pub mean: ThermodynamicTemperature,
    /// Coldest place.
    pub least: ThermodynamicTemperature,
    /// Warmest place.
    pub most: ThermodynamicTemperature,
    /// The even temperature at which the piece would be as large at the seat: the one that counts for the fit.
    pub fit: ThermodynamicTemperature,
}

/// Stress of uneven heating or quenching, of the free piece.
#[derive(Clone, Copy, Debug)]
pub struct UnevenStress {
    /// Largest tension of a brittle piece, von Mises of any other.
    pub stress: Pressure,
    /// The same over the strength of the material.
    pub share: f64,
    /// Whether the material is brittle.
    pub brittle: bool,
    /// Time since the first piece went into its medium.
    pub after: Time,
}

/// The seat with one temperature for each body.
#[derive(Clone, Copy, Debug)]
pub struct OneBody {
    /// Inner part as it reaches the seat.
    pub inner: ThermodynamicTemperature,
    /// Outer part then.
    pub outer: ThermodynamicTemperature,
    /// Clearance of the tightest case then.
    pub clearance: Length,
    /// When the tightest case grips; none where it does not, or does not go in.
    pub grip: Option<Time>,
}

/// The part in its seat, over a gap that follows the temperatures at each place of it.
#[derive(Clone, Debug)]
pub struct Race {
    /// When the tightest case first touches anywhere; none where it does not while it is followed.
    pub first_touch: Option<Time>,
    /// When each case grips, its mean clearance gone; none where it does not while it is followed.
    pub grip: Cases<Option<Time>>,
    /// When the tightest case grips that lies on one side from the beginning.
    pub one_sided: Option<Time>,
    /// Least, mean and largest clearance along the seat against time, tightest case.
    pub clearance: Vec<(Time, [Length; 3])>,
}
