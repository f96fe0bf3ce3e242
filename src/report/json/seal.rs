//! The shaft seal in the document.

use super::document::{AssumptionDocument, CautionDocument, EntryDocument, JobDocument, SourceDocument};
use super::figures;
use super::range::RangeDocument;
use super::units::{celsius, mm, newtons, range, um};
use crate::plan::seal::{Demand, Overlap, SealPlan};
use crate::quantity::{System, Velocity};
use crate::report::words;
use schemars::JsonSchema;
use serde::Serialize;
use uom::si::velocity::meter_per_second;

/// One planned shaft seal that goes in alone.
#[derive(Debug, JsonSchema, Serialize)]
pub(super) struct SealAloneDocument {
    /// Always `seatwise.seal/1`.
    pub format: &'static str,
    /// Title block.
    pub job: JobDocument,
    /// The seal.
    pub seal: SealDocument,
    /// What can go wrong or hurt someone, gravest first.
    pub cautions: Vec<CautionDocument>,
    /// Every value as typed, and as read.
    pub entries: Vec<EntryDocument>,
    /// Every default that was used.
    pub assumptions: Vec<AssumptionDocument>,
    /// Where the numbers come from.
    pub sources: Vec<SourceDocument>,
}

/// A shaft seal.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SealDocument {
    /// Shaft, bore and width in mm.
    pub name: String,
    /// `rubber` or `metal`.
    pub case: &'static str,
    /// How far its outside stands above the nominal bore, least; null beyond the table.
    pub allowance_least_um: Option<f64>,
    /// The same, most.
    pub allowance_most_um: Option<f64>,
    /// Where that comes from.
    pub allowance_source: String,
    /// Lower limit deviation of the bore.
    pub bore_lower_um: f64,
    /// Upper limit deviation of the bore.
    pub bore_upper_um: f64,
    /// What these limits are.
    pub bore_basis: String,
    /// Lower limit deviation of the shaft under the lip.
    pub shaft_lower_um: f64,
    /// Upper limit deviation of the shaft under the lip.
    pub shaft_upper_um: f64,
    /// What these limits are.
    pub shaft_basis: String,
    /// Whether it is the bore of the bearing.
    pub shares_bore: bool,
    /// Interference in the bore; null beyond the table.
    pub interference_um: Option<RangeDocument<f64>>,
    /// Force to press it home, least: a rough estimate.
    pub force_least_n: Option<f64>,
    /// The same, most.
    pub force_most_n: Option<f64>,
    /// Outside diameter of the driver.
    pub driver_mm: f64,
    /// Depth below the face of the face that goes in first.
    pub depth_mm: f64,
    /// How far the shoulder keeps it from the depth that was asked.
    pub short_by_mm: f64,
    /// How far the outer face lies below the face of the housing once seated, least; negative is proud.
    pub reading_least_mm: f64,
    /// The same, most.
    pub reading_most_mm: f64,
    /// How far a hole behind it stays open; negative where the seal lies over it; null where there is none.
    pub drain_behind_mm: Option<f64>,
    /// How far to move the lip off a worn track; null where there is none.
    pub shift_mm: Option<f64>,
    /// How far the seal itself is moved for it, included in the depths: deeper above zero, nearer the face below.
    pub moved_mm: f64,
    /// What stands in the bearing's bore where the seal would lie; empty where nothing does or the job does not say how deep.
    pub overlaps: Vec<OverlapDocument>,
    /// Speed of the shaft under the lip; null where the speed is not known.
    pub lip_speed_m_s: Option<f64>,
    /// Up to which every table of the elastomer goes along; null where none is known.
    pub lip_speed_safe_m_s: Option<f64>,
    /// Beyond which none does.
    pub lip_speed_limit_m_s: Option<f64>,
    /// Coldest that the lip bears.
    pub coldest_c: f64,
    /// Hottest that the lip bears.
    pub hottest_c: f64,
    /// What the heat or the cold of its neighbour does to it.
    pub neighbour: String,
    /// What bore and shaft must be.
    pub demands: Vec<DemandDocument>,
    /// What to do, in order.
    pub steps: Vec<String>,
}

/// What stands where the seal would lie, at the worse limits; depths below the face of the housing.
#[derive(Debug, JsonSchema, Serialize)]
pub struct OverlapDocument {
    /// What it is.
    pub what: String,
    /// Where it begins.
    pub from_mm: f64,
    /// Where it ends.
    pub to_mm: f64,
    /// By how much the two overlap.
    pub by_mm: f64,
}

fn overlap(overlap: &Overlap) -> OverlapDocument {
    OverlapDocument {
        what: overlap.what.clone(),
        from_mm: mm(overlap.stands.0),
        to_mm: mm(overlap.stands.1),
        by_mm: mm(overlap.by),
    }
}

/// What is wanted of a bore or a shaft.
#[derive(Debug, JsonSchema, Serialize)]
pub struct DemandDocument {
    /// Of what.
    pub what: &'static str,
    /// Low end, in words; null where only the high end counts.
    pub low: Option<String>,
    /// High end, in words; null where only the low end counts.
    pub high: Option<String>,
    /// What the job says, in words; null where it says nothing.
    pub given: Option<String>,
    /// Whether that is as wanted; null where the job says nothing.
    pub met: Option<bool>,
    /// Where the range comes from.
    pub source: String,
}

pub(super) fn document(seal: &SealPlan) -> SealDocument {
    let speed = |speed: Velocity| figures(speed.get::<meter_per_second>());
    let run = seal.lip_speed;
    SealDocument {
        name: seal.name.clone(),
        case: seal.case,
        allowance_least_um: seal.allowance.map(|allowance| um(allowance.least)),
        allowance_most_um: seal.allowance.map(|allowance| um(allowance.most)),
        allowance_source: seal.allowance_source.clone(),
        bore_lower_um: um(seal.bore.0),
        bore_upper_um: um(seal.bore.1),
        bore_basis: seal.bore_basis.clone(),
        shaft_lower_um: um(seal.shaft.0),
        shaft_upper_um: um(seal.shaft.1),
        shaft_basis: seal.shaft_basis.clone(),
        shares_bore: seal.shares_bore,
        interference_um: seal.interference.map(|fit| range(fit.map(um))),
        force_least_n: seal.force.map(|force| newtons(force.least)),
        force_most_n: seal.force.map(|force| newtons(force.most)),
        driver_mm: mm(seal.driver),
        depth_mm: mm(seal.stand.reached),
        short_by_mm: mm(seal.stand.short_by),
        reading_least_mm: mm(seal.reading.0),
        reading_most_mm: mm(seal.reading.1),
        drain_behind_mm: seal.stand.drain_behind.map(mm),
        shift_mm: seal.shift.map(mm),
        moved_mm: mm(seal.stand.moved),
        overlaps: seal.overlaps.iter().map(overlap).collect(),
        lip_speed_m_s: run.map(|run| speed(run.speed)),
        lip_speed_safe_m_s: run.and_then(|run| run.safe).map(speed),
        lip_speed_limit_m_s: run.and_then(|run| run.limit).map(speed),
        coldest_c: celsius(seal.coldest),
        hottest_c: celsius(seal.hottest),
        neighbour: words::sentence(&seal.neighbour, System::Metric),
        demands: seal.demands.iter().map(demand).collect(),
        steps: seal.steps.iter().map(|step| words::sentence(step, System::Metric)).collect(),
    }
}

fn demand(demand: &Demand) -> DemandDocument {
    let shown = |value: &crate::job::AnyValue| words::value(value, System::Metric);
    DemandDocument {
        what: demand.what,
        low: demand.low.as_ref().map(shown),
        high: demand.high.as_ref().map(shown),
        given: demand.given.as_ref().map(shown),
        met: demand.met,
        source: demand.source.clone(),
    }
}
