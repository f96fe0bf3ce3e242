use crate::assembly::seal::{Allowance, CaseForce, Stand};
use crate::job::AnyValue;
use crate::plan::sentence::Sentence;
use crate::plan::work::StepKind;
use crate::quantity::{Cases, Length, ThermodynamicTemperature, Velocity};

/// A shaft seal: its fit, its force, its place, and what its bore and shaft must be.
#[derive(Clone, Debug)]
pub struct SealPlan {
    /// Shaft, bore and width.
    pub name: String,
    /// What its outside is of: `rubber` or `metal`.
    pub case: &'static str,
    /// How far its outside stands above the nominal bore; none beyond the table.
    pub allowance: Option<Allowance>,
    /// Where that comes from.
    pub allowance_source: String,
    /// Lower and upper limit deviation of the bore.
    pub bore: (Length, Length),
    /// What the limits of the bore are.
    pub bore_basis: String,
    /// Lower and upper limit deviation of the shaft under the lip.
    pub shaft: (Length, Length),
    /// What the limits of the shaft are.
    pub shaft_basis: String,
    /// Whether it is the bore of the bearing.
    pub shares_bore: bool,
    /// Interference of the seal in its bore.
    pub interference: Option<Cases<Length>>,
    /// Estimate of the force that presses it home.
    pub force: Option<CaseForce>,
    /// Where it comes to lie.
    pub stand: Stand,
    /// How far its outer face lies below the face of the housing once it is seated, least and most; negative is proud.
    pub reading: (Length, Length),
    /// Outside diameter of the driver.
    pub driver: Length,
    /// How far to move the lip off a worn track.
    pub shift: Option<Length>,
    /// What stands in the bearing's bore where the seal would lie.
    pub overlaps: Vec<Overlap>,
    /// Speed of the shaft under the lip, where the speed of the shaft is known.
    pub lip_speed: Option<LipSpeed>,
    /// What bore and shaft must be, and what the job says of them.
    pub demands: Vec<Demand>,
    /// Coldest that the lip bears.
    pub coldest: ThermodynamicTemperature,
    /// Hottest that the lip bears.
    pub hottest: ThermodynamicTemperature,
    /// What the heat or the cold of its neighbour does to it.
    pub neighbour: Sentence,
    /// What to do, in order.
    pub steps: Vec<Sentence>,
    /// What sort of step each is.
    pub kinds: Vec<StepKind>,
}

/// What stands in the same bore where the seal would lie, at the worse limits.
#[derive(Clone, Debug)]
pub struct Overlap {
    /// What it is.
    pub what: String,
    /// From where to where it stands, below the face of the housing.
    pub stands: (Length, Length),
    /// From where to where the seal would lie.
    pub seal: (Length, Length),
    /// By how much the two overlap.
    pub by: Length,
}

/// Speed of the shaft's surface under the lip.
#[derive(Clone, Copy, Debug)]
pub struct LipSpeed {
    /// The speed.
    pub speed: Velocity,
    /// Up to which every table of this elastomer goes along; none for an elastomer without a figure.
    pub safe: Option<Velocity>,
    /// Beyond which none does.
    pub limit: Option<Velocity>,
}

/// What is wanted of a bore or a shaft.
#[derive(Clone, Debug)]
pub struct Demand {
    /// Of what.
    pub what: &'static str,
    /// Low end; none where only the high end counts.
    pub low: Option<AnyValue>,
    /// High end; none where only the low end counts.
    pub high: Option<AnyValue>,
    /// What the job says of it.
    pub given: Option<AnyValue>,
    /// Whether that is as wanted.
    pub met: Option<bool>,
    /// Where the range comes from.
    pub source: String,
}
