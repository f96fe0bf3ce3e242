//! Screws of the cover in the document.

use super::figures;
use super::units::{mm, mpa, newtons};
use crate::assembly::screws::UnitSlip;
use crate::plan::fasteners::{FastenersPlan, GroupPlan, StripPlan, TorqueLimit};
use crate::quantity::{System, Torque};
use crate::report::words;
use schemars::JsonSchema;
use serde::Serialize;
use uom::si::torque::newton_meter;

/// The screws of a cover.
#[derive(Debug, JsonSchema, Serialize)]
pub struct FastenersDocument {
    /// One object for each kind.
    pub groups: Vec<ScrewGroupDocument>,
    /// Each screw in its place; its number is its place in this list, from 1.
    pub screws: Vec<ScrewPlaceDocument>,
    /// Numbers of the screws in the order in which to tighten.
    pub order: Vec<usize>,
    /// Shares of the torque, round by round.
    pub stages: Vec<f64>,
    /// When to begin.
    pub before: String,
}

/// A screw in its place.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ScrewPlaceDocument {
    /// To the right of the origin.
    pub x_mm: f64,
    /// Above the origin.
    pub y_mm: f64,
    /// Number of its kind, from 1.
    pub group: usize,
}

/// Screws of one kind.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ScrewGroupDocument {
    /// Thread.
    pub thread: String,
    /// Strength class with its standard; null where no class covers the size.
    pub class: Option<String>,
    /// How many there are.
    pub count: usize,
    /// Torque to tighten with.
    pub torque_nm: f64,
    /// The same.
    pub torque_in_lb: f64,
    /// The same.
    pub torque_ft_lb: f64,
    /// The same.
    pub torque_kgf_m: f64,
    /// Torque of each round.
    pub round_torques_nm: Vec<f64>,
    /// Whether the job states it; else it is estimated.
    pub torque_stated: bool,
    /// Largest torque that stays below every limit in every case; null where no class is known.
    pub torque_limit_nm: Option<f64>,
    /// `yield`, `proof load` or `threads`; null as `torque_limit_nm`.
    pub limited_by: Option<&'static str>,
    /// By how much of itself the torque may be off.
    pub torque_within_share: f64,
    /// Friction in thread and under the head, low and high.
    pub friction_low: f64,
    /// See `friction_low`.
    pub friction_high: f64,
    /// Preload with the highest friction and the tool at its lowest.
    pub preload_least_n: f64,
    /// Preload with the mean friction and the tool as set.
    pub preload_middle_n: f64,
    /// Preload with the lowest friction and the tool at its highest.
    pub preload_most_n: f64,
    /// Most over least.
    pub tightening_factor: f64,
    /// Proof load; null where no class is known.
    pub proof_load_n: Option<f64>,
    /// Highest preload over proof load; null as `proof_load_n`.
    pub share_of_proof: Option<f64>,
    /// Length of engagement; null where the job does not state it.
    pub engagement_mm: Option<f64>,
    /// The threads in their hole; null where the job does not say into what.
    pub threads: Option<StripDocument>,
    /// Torque that was probably meant, a factor of 12 away; null where the one stated suits the screw.
    pub probably_meant_nm: Option<f64>,
}

/// A thread in its hole.
#[derive(Debug, JsonSchema, Serialize)]
pub struct StripDocument {
    /// Material of the hole.
    pub material: String,
    /// Its tensile strength used.
    pub tensile_mpa: f64,
    /// Whether that is stated in the job.
    pub tensile_stated: bool,
    /// Shear over tensile strength used.
    pub shear_ratio: f64,
    /// Force that strips the hole's thread; null where the engagement is not stated.
    pub hole_n: Option<f64>,
    /// Force that strips the screw's thread; null as `hole_n`.
    pub screw_n: Option<f64>,
    /// The lower one over the highest preload; null as `hole_n`.
    pub reserve: Option<f64>,
    /// Engagement that gives a reserve of 1.25.
    pub needed_mm: f64,
}

/// Newton metres of an inch pound, a foot pound and a kilogram-force metre, exact.
const INCH_POUND: f64 = 4.448_221_615_260_5 * 0.0254;
const FOOT_POUND: f64 = 12.0 * INCH_POUND;
const KILOGRAM_FORCE_METRE: f64 = 9.806_65;

fn nm(torque: Torque) -> f64 {
    figures(torque.get::<newton_meter>())
}

pub(super) fn fasteners(plan: &FastenersPlan) -> FastenersDocument {
    FastenersDocument {
        groups: plan.groups.iter().map(group).collect(),
        screws: plan
            .screws
            .iter()
            .map(|screw| ScrewPlaceDocument {
                x_mm: mm(screw.place.x),
                y_mm: mm(screw.place.y),
                group: screw.group + 1,
            })
            .collect(),
        order: plan.order.iter().map(|number| number + 1).collect(),
        stages: plan.stages.iter().copied().map(figures).collect(),
        before: words::sentence(&plan.before, System::Metric),
    }
}

fn group(group: &GroupPlan) -> ScrewGroupDocument {
    let newton_metres = group.torque.get::<newton_meter>();
    ScrewGroupDocument {
        thread: group.thread.clone(),
        class: group.class.clone(),
        count: group.count,
        torque_nm: nm(group.torque),
        torque_in_lb: figures(newton_metres / INCH_POUND),
        torque_ft_lb: figures(newton_metres / FOOT_POUND),
        torque_kgf_m: figures(newton_metres / KILOGRAM_FORCE_METRE),
        round_torques_nm: group.stage_torques.iter().copied().map(nm).collect(),
        torque_stated: group.stated,
        torque_limit_nm: group.torque_limit.map(|(torque, _)| nm(torque)),
        limited_by: group.torque_limit.map(|(_, limit)| match limit {
            TorqueLimit::Yield => "yield",
            TorqueLimit::ProofLoad => "proof load",
            TorqueLimit::Strip => "threads",
        }),
        torque_within_share: figures(group.torque_within),
        friction_low: figures(group.friction.0),
        friction_high: figures(group.friction.1),
        preload_least_n: newtons(group.preload.least),
        preload_middle_n: newtons(group.preload.middle),
        preload_most_n: newtons(group.preload.most),
        tightening_factor: figures(group.preload.tightening_factor()),
        proof_load_n: group.proof_load.map(newtons),
        share_of_proof: group.share_of_proof().map(figures),
        engagement_mm: group.engagement.map(mm),
        threads: group.strip.as_ref().map(strip),
        probably_meant_nm: group.slip.map(|slip| match slip {
            UnitSlip::InchPoundsMeant(torque) | UnitSlip::FootPoundsMeant(torque) => nm(torque),
        }),
    }
}

fn strip(strip: &StripPlan) -> StripDocument {
    StripDocument {
        material: strip.material.clone(),
        tensile_mpa: mpa(strip.tensile),
        tensile_stated: strip.tensile_stated,
        shear_ratio: figures(strip.shear_ratio),
        hole_n: strip.loads.map(|loads| newtons(loads.hole)),
        screw_n: strip.loads.map(|loads| newtons(loads.screw)),
        reserve: strip.reserve.map(figures),
        needed_mm: mm(strip.needed),
    }
}
