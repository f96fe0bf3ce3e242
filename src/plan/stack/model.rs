use crate::assembly::stack::{Change, Ends, Way};
use crate::plan::sentence::Sentence;
use crate::plan::work::StepKind;
use crate::quantity::Length;

/// What stands along the axis.
#[derive(Clone, Debug)]
pub struct StackPlan {
    /// The parts on a shoulder, with their ring.
    pub bed: Option<BedPlan>,
    /// Two bearings with a spacer between their inner rings.
    pub pair: Option<PairPlan>,
}

impl StackPlan {
    /// Takes the steps away.
    pub(in crate::plan) fn clear_steps(&mut self) {
        self.bed.iter_mut().for_each(|bed| bed.steps.clear());
        self.pair.iter_mut().for_each(|pair| pair.steps.clear());
    }
}

/// One dimension of a stack.
#[derive(Clone, Debug)]
pub struct StackRow {
    /// What it is.
    pub what: String,
    /// Lower limit.
    pub least: Length,
    /// Upper limit.
    pub most: Length,
    /// What it does to the play.
    pub way: Way,
    /// Where the limits come from.
    pub basis: String,
}

/// Whether the ring goes into its groove.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Closes {
    /// In every case within the limits.
    Always,
    /// In some, not in all.
    Sometimes,
    /// In none.
    Never,
}

impl Closes {
    /// The words that every output uses.
    pub fn words(self) -> &'static str {
        match self {
            Self::Always => "always",
            Self::Sometimes => "sometimes",
            Self::Never => "never",
        }
    }
}

/// The parts on a shoulder, with their ring.
#[derive(Clone, Debug)]
pub struct BedPlan {
    /// Name of the ring.
    pub ring: String,
    /// Every dimension, the one that opens the play first.
    pub rows: Vec<StackRow>,
    /// Play in the worst cases.
    pub play: Ends,
    /// Play by the root of the summed squares.
    pub usual_play: Ends,
    /// Play that 98 of 100 assemblies have, when every size within its limits is as likely as any other.
    pub scatter: (Length, Length),
    /// Share of these whose play is less than wanted.
    pub share_short: f64,
    /// Share of these whose play is more than wanted; none where any more is welcome.
    pub share_long: Option<f64>,
    /// Least play that is wanted.
    pub least_wanted: Length,
    /// Most play that is wanted.
    pub most_wanted: Option<Length>,
    /// Whether the ring goes into its groove with the play at zero or more.
    pub closes: Closes,
    /// Width of the groove less thickness of the ring, least and most.
    pub slack: (Length, Length),
    /// Land between groove and face, least, and the least that it should be.
    pub land: Option<(Length, Length)>,
    /// What mends it.
    pub change: Change,
    /// The row whose limits lie farthest apart.
    pub widest: usize,
    /// How far they lie apart.
    pub widest_by: Length,
    /// Depth of the bearing's outer face below the face once it is seated, least and most; none where the depth of the
    /// shoulder is not given.
    pub reading: Option<(Length, Length)>,
    /// The gap between the last part and the wall that holds the ring, before the ring is in, least and most.
    pub gap: (Length, Length),
    /// What to do, in order.
    pub steps: Vec<Sentence>,
    /// What sort of step each is.
    pub kinds: Vec<StepKind>,
}

/// How a spacer stands to the distance of the shoulders, within the limits of both.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpacerFit {
    /// As long, to the nanometre.
    Equal,
    /// Longer in every case.
    Longer,
    /// Shorter in every case.
    Shorter,
    /// Longer in some cases and shorter in others.
    Either,
}

/// Whether two bearings bind on their spacer once both outer rings are home and the axle is tight.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Binds {
    /// Their axial play takes it up in every case.
    Never,
    /// In some cases.
    Sometimes,
    /// In every case.
    Always,
}

/// Two bearings with a spacer between their inner rings.
#[derive(Clone, Debug)]
pub struct PairPlan {
    /// Distance of the shoulders, least and most.
    pub shoulders: (Length, Length),
    /// Length of the spacer, least and most.
    pub spacer: (Length, Length),
    /// Spacer less distance of the shoulders: positive is a spacer that is too long.
    pub difference: Ends,
    /// Which of the two is longer.
    pub fit: SpacerFit,
    /// Axial play of one bearing as fitted, least and most; none where its internal clearance is not known.
    pub axial_play: Option<(Length, Length)>,
    /// Whether the bearings bind; none where their axial play is not known.
    pub binds: Option<Binds>,
    /// What to do, in order.
    pub steps: Vec<Sentence>,
}
