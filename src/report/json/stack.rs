//! What stands along the axis, in the document.

use super::figures;
use super::units::mm;
use crate::assembly::stack::{Change, Ends, Way};
use crate::plan::Sentence;
use crate::plan::stack::{BedPlan, Binds, PairPlan, SpacerFit, StackPlan};
use crate::quantity::{Length, System};
use crate::report::words;
use schemars::JsonSchema;
use serde::Serialize;

/// What stands along the axis.
#[derive(Debug, JsonSchema, Serialize)]
pub struct StackDocument {
    /// Parts on a shoulder with their ring; null where the job has none.
    pub ring: Option<BedDocument>,
    /// Two bearings with a spacer between their inner rings; null where the job has none.
    pub pair: Option<PairDocument>,
}

/// Parts on a shoulder with their ring.
#[derive(Debug, JsonSchema, Serialize)]
pub struct BedDocument {
    /// Name of the ring.
    pub name: String,
    /// Whether it goes into its groove: `always`, `sometimes` or `never`.
    pub closes: &'static str,
    /// Every dimension.
    pub dimensions: Vec<DimensionDocument>,
    /// Play in the worst cases.
    pub play_mm: PlayDocument,
    /// Play by the root of the summed squares.
    pub play_root_sum_square_mm: PlayDocument,
    /// Play of 98 of 100 assemblies when every size within its limits is as likely as any other.
    pub play_scatter_mm: SpanDocument,
    /// Share of these with less play than is wanted.
    pub share_short: f64,
    /// Share of these with more; null where more is not limited.
    pub share_long: Option<f64>,
    /// Least play that is wanted.
    pub least_wanted_mm: f64,
    /// Most play that is wanted; null where it is not limited.
    pub most_wanted_mm: Option<f64>,
    /// Width of the groove less thickness of the ring.
    pub groove_slack_mm: SpanDocument,
    /// Land between groove and face, least; null where it is not known.
    pub land_mm: Option<f64>,
    /// The least that it should be.
    pub land_wanted_mm: Option<f64>,
    /// What mends it: `none`, `fixed` (one shim for all) or `chosen` (a shim for each assembly).
    pub mend: &'static str,
    /// Thickness to add, negative to take off; null where nothing is to be done.
    pub mend_mm: Option<SpanDocument>,
    /// The dimension whose limits lie farthest apart.
    pub widest: String,
    /// How far they lie apart.
    pub widest_mm: f64,
    /// Depth of the bearing's outer face below the face, seated; null where the depth of the shoulder is not given.
    pub reading_mm: Option<SpanDocument>,
    /// Gap between the last part and the wall that holds the ring, before the ring is in.
    pub gap_mm: SpanDocument,
    /// What to do, in order.
    pub steps: Vec<String>,
}

/// One dimension of a stack.
#[derive(Debug, JsonSchema, Serialize)]
pub struct DimensionDocument {
    /// What it is.
    pub what: String,
    /// `opens` or `fills` the play.
    pub way: &'static str,
    /// Lower limit.
    pub least_mm: f64,
    /// Upper limit.
    pub most_mm: f64,
    /// Where the limits come from.
    pub basis: String,
}

/// A play: negative is too full.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PlayDocument {
    /// Least.
    pub least: f64,
    /// In the middle.
    pub middle: f64,
    /// Most.
    pub most: f64,
}

/// Two ends.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SpanDocument {
    /// Least.
    pub least: f64,
    /// Most.
    pub most: f64,
}

/// Two bearings with a spacer between their inner rings.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PairDocument {
    /// Distance of the shoulders.
    pub shoulders_mm: SpanDocument,
    /// Length of the spacer.
    pub spacer_mm: SpanDocument,
    /// Spacer less shoulders: positive is a spacer that is too long.
    pub difference_mm: PlayDocument,
    /// The spacer is `longer`, `shorter` or `equal` in every case, or `either`.
    pub spacer_is: &'static str,
    /// Whether the bearings bind with both outer rings home: `never`, `sometimes`, `always`; null where their play is not known.
    pub binds: Option<&'static str>,
    /// Axial play of one bearing as fitted, about; null where its internal clearance is not known.
    pub axial_play_mm: Option<SpanDocument>,
    /// What to do, in order.
    pub steps: Vec<String>,
}

pub(super) fn document(stack: &StackPlan) -> StackDocument {
    StackDocument { ring: stack.bed.as_ref().map(bed), pair: stack.pair.as_ref().map(pair) }
}

fn bed(bed: &BedPlan) -> BedDocument {
    let (mend, thickness) = match bed.change {
        Change::None => ("none", None),
        Change::Fixed { least, most } => ("fixed", Some((least, most))),
        Change::Chosen { least, most } => ("chosen", Some((least, most))),
    };
    BedDocument {
        name: bed.ring.clone(),
        closes: bed.closes.words(),
        dimensions: bed
            .rows
            .iter()
            .map(|row| DimensionDocument {
                what: row.what.clone(),
                way: if row.way == Way::Opens { "opens" } else { "fills" },
                least_mm: mm(row.least),
                most_mm: mm(row.most),
                basis: row.basis.clone(),
            })
            .collect(),
        play_mm: ends(bed.play),
        play_root_sum_square_mm: ends(bed.usual_play),
        play_scatter_mm: span(bed.scatter),
        share_short: figures(bed.share_short),
        share_long: bed.share_long.map(figures),
        least_wanted_mm: mm(bed.least_wanted),
        most_wanted_mm: bed.most_wanted.map(mm),
        groove_slack_mm: span(bed.slack),
        land_mm: bed.land.map(|(land, _)| mm(land)),
        land_wanted_mm: bed.land.map(|(_, wanted)| mm(wanted)),
        mend,
        mend_mm: thickness.map(span),
        widest: bed.rows[bed.widest].what.clone(),
        widest_mm: mm(bed.widest_by),
        reading_mm: bed.reading.map(span),
        gap_mm: span(bed.gap),
        steps: steps(&bed.steps),
    }
}

fn pair(pair: &PairPlan) -> PairDocument {
    PairDocument {
        shoulders_mm: span(pair.shoulders),
        spacer_mm: span(pair.spacer),
        difference_mm: ends(pair.difference),
        spacer_is: match pair.fit {
            SpacerFit::Equal => "equal",
            SpacerFit::Longer => "longer",
            SpacerFit::Shorter => "shorter",
            SpacerFit::Either => "either",
        },
        binds: pair.binds.map(|binds| match binds {
            Binds::Never => "never",
            Binds::Sometimes => "sometimes",
            Binds::Always => "always",
        }),
        axial_play_mm: pair.axial_play.map(span),
        steps: steps(&pair.steps),
    }
}

fn ends(ends: Ends) -> PlayDocument {
    PlayDocument { least: mm(ends.least), middle: mm(ends.middle), most: mm(ends.most) }
}

fn span((least, most): (Length, Length)) -> SpanDocument {
    SpanDocument { least: mm(least), most: mm(most) }
}

fn steps(steps: &[Sentence]) -> Vec<String> {
    steps.iter().map(|step| words::sentence(step, System::Metric)).collect()
}
