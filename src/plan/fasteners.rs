//! The screws of the cover: torque, preload, what screw and threads bear, and the order.

use super::PlanError;
use super::sentence::{Sentence, say};
use crate::assembly::screws::{
    Place, Preload, ScrewsError, StripLoads, ThreadPair, Tightening, UnitSlip, assembly_preload, opposite_first,
    unit_slip,
};
use crate::job::{Job, ScrewGroup, Tapped};
use crate::mechanics::{Screw, ScrewFriction, ScrewFrictionRange, nut_face_diameter};
use crate::quantity::{Force, Length, Pressure, Torque, Toward};
use crate::stock::material::Family;
use uom::si::ratio::ratio;

/// Share of the yield strength that a torque without the maker's value uses.
///
/// **Source**: VDI 2230 Part 1 (from memory).
const YIELD_SHARE: f64 = 0.9;
/// Force at which threads strip over the highest preload, from which they are taken to be safe.
///
/// Common practice, no published source.
pub const STRIP_RESERVE: f64 = 1.25;
/// Shear over tensile strength of a steel screw.
///
/// **Source**: VDI 2230 Part 1 (from memory).
const SCREW_SHEAR: f64 = 0.6;

/// The screws of a cover.
#[derive(Clone, Debug)]
pub struct FastenersPlan {
    /// Screws of one kind each.
    pub groups: Vec<GroupPlan>,
    /// Where each screw sits and of which group it is; its number is its place in this list, from 0.
    pub screws: Vec<PlacedScrew>,
    /// Numbers of the screws, from 0, in the order in which to tighten.
    pub order: Vec<usize>,
    /// Shares of the torque, stage by stage.
    pub stages: Vec<f64>,
    /// When to begin.
    pub before: Sentence,
}

/// A screw in its place.
#[derive(Clone, Copy, Debug)]
pub struct PlacedScrew {
    /// Where it sits.
    pub place: Place,
    /// Number of its group, from 0.
    pub group: usize,
    /// Diameter of its head.
    pub head: Length,
}

/// Screws of one kind.
#[derive(Clone, Debug)]
pub struct GroupPlan {
    /// The thread.
    pub thread: String,
    /// Its class with the standard; none where no class covers the size.
    pub class: Option<String>,
    /// How many there are.
    pub count: usize,
    /// Torque to tighten with.
    pub torque: Torque,
    /// The torque of each stage.
    pub stage_torques: Vec<Torque>,
    /// Whether that is the maker's; else it is estimated.
    pub stated: bool,
    /// What limits an estimated torque; none for a stated one.
    pub limited_by: Option<TorqueLimit>,
    /// Largest torque that keeps within proof load, twist and tapped thread in every case; none where no class is known.
    pub torque_limit: Option<(Torque, TorqueLimit)>,
    /// By how much the torque may be off, as a share.
    pub torque_within: f64,
    /// Friction in thread and under the head, low and high.
    pub friction: (f64, f64),
    /// Pull of the screw.
    pub preload: Preload,
    /// Proof load; none where no class is known.
    pub proof_load: Option<Force>,
    /// Force that tears the screw, least tensile strength; none where no class is known.
    pub tensile_load: Option<Force>,
    /// Length of engagement, where the job states it.
    pub engagement: Option<Length>,
    /// The threads in their hole; none where the job does not say into what.
    pub strip: Option<StripPlan>,
    /// What torque was probably meant instead; none where the one stated suits the screw.
    pub slip: Option<UnitSlip>,
}

/// What limits a torque.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TorqueLimit {
    /// Pull and twist of the screw at 90 % of its yield strength.
    Yield,
    /// The proof load of the screw.
    ProofLoad,
    /// The thread in the hole, or on the screw.
    Strip,
}

impl TorqueLimit {
    /// What it is, in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Yield => "90 % of the screw's yield strength, twist included",
            Self::ProofLoad => "the proof load of the screw",
            Self::Strip => "the tapped thread",
        }
    }
}

/// A thread in its hole.
#[derive(Clone, Debug)]
pub struct StripPlan {
    /// Material of the hole.
    pub material: String,
    /// Its tensile strength used.
    pub tensile: Pressure,
    /// Whether that was stated, and is not the record's strength.
    pub tensile_stated: bool,
    /// Shear over tensile strength used.
    pub shear_ratio: f64,
    /// Forces at which the threads strip at the stated engagement; none where it is not stated.
    pub loads: Option<StripLoads>,
    /// The lower of them over the highest preload; none as `loads`.
    pub reserve: Option<f64>,
    /// Engagement that gives the reserve of 1.25 at this torque.
    pub needed: Length,
}

/// The screws of a job.
pub(super) fn fasteners(job: &Job) -> Result<Option<FastenersPlan>, PlanError> {
    let Some(fasteners) = &job.fasteners else { return Ok(None) };
    let groups = fasteners.groups.iter().map(|one| group(one, &fasteners.stages)).collect::<Result<Vec<_>, _>>()?;
    let screws: Vec<PlacedScrew> = fasteners
        .groups
        .iter()
        .enumerate()
        .flat_map(|(number, group)| {
            group.places.iter().map(move |place| PlacedScrew { place: *place, group: number, head: group.head })
        })
        .collect();
    let places: Vec<Place> = screws.iter().map(|screw| screw.place).collect();
    Ok(Some(FastenersPlan {
        groups,
        order: opposite_first(&places),
        screws,
        stages: fasteners.stages.clone(),
        before: before(job),
    }))
}

/// Run in, and once nothing is warm or cold any more.
fn before(job: &Job) -> Sentence {
    let run_in = "Run all in by hand first.";
    if job.warm.is_none() && job.chill.is_none() {
        return say(run_in);
    }
    say(format!(
        "{run_in} Tighten only when housing, bearing and cover are at one temperature: what cools or warms later changes the preload."
    ))
}

fn tightening(group: &ScrewGroup) -> Result<Tightening, PlanError> {
    let (low, high) = group.friction;
    Ok(Tightening {
        screw: Screw {
            thread: (&group.thread).into(),
            face_diameter: Some(nut_face_diameter(group.head, group.hole)?),
        },
        friction: ScrewFrictionRange { low: ScrewFriction::both(low), high: ScrewFriction::both(high) },
        tool: group.torque_within,
    })
}

fn group(group: &ScrewGroup, stages: &[f64]) -> Result<GroupPlan, PlanError> {
    let tightening = tightening(group)?;
    let proof_load = group.class.as_ref().map(|class| tightening.screw.thread.proof_load(class.proof)).transpose()?;
    let torque_limit = torque_limit(group, &tightening, proof_load)?;
    let torque = group.torque.or(torque_limit.map(|(torque, _)| torque)).unwrap_or_default();
    let preload = tightening.preload(torque)?;
    let slip = proof_load
        .filter(|_| group.torque.is_some())
        .map(|proof| unit_slip(&tightening, torque, proof))
        .transpose()?
        .flatten();
    Ok(GroupPlan {
        thread: group.thread.designation.clone(),
        class: group.class.as_ref().map(|class| class.name()),
        count: group.places.len(),
        torque,
        stage_torques: stages.iter().map(|share| torque * *share).collect(),
        stated: group.torque.is_some(),
        limited_by: torque_limit.filter(|_| group.torque.is_none()).map(|(_, limit)| limit),
        torque_limit,
        torque_within: group.torque_within,
        friction: group.friction,
        preload,
        proof_load,
        tensile_load: group.class.as_ref().map(|class| group.thread.stress_area() * class.tensile),
        engagement: group.engagement,
        strip: strip(group, preload.most)?,
        slip,
    })
}

/// The largest torque that nothing is too weak for, and what limits it.
fn torque_limit(
    group: &ScrewGroup,
    tightening: &Tightening,
    proof_load: Option<Force>,
) -> Result<Option<(Torque, TorqueLimit)>, PlanError> {
    let Some((class, proof)) = group.class.as_ref().zip(proof_load) else { return Ok(None) };
    let yielding = assembly_preload(&tightening.screw, group.friction.0, class.yield_strength, YIELD_SHARE)?;
    let threads = match (&group.into, group.engagement) {
        (Some(tapped), Some(engagement)) => {
            Some((strip_loads(group, tapped, engagement)?.least() / STRIP_RESERVE, TorqueLimit::Strip))
        }
        _ => None,
    };
    let limits = [(yielding, TorqueLimit::Yield), (proof, TorqueLimit::ProofLoad)].into_iter().chain(threads);
    let least = limits.reduce(|one, other| if other.0 < one.0 { other } else { one });
    let Some((force, limit)) = least else { return Ok(None) };
    Ok(Some((tightening.torque_below(force)?, limit)))
}

/// Shear over tensile strength of the material of a hole.
///
/// **Source**: VDI 2230 Part 1, ratios by material (from memory), the low end of each.
fn shear_ratio(family: Family) -> f64 {
    match family {
        Family::Steel | Family::Titanium => 0.6,
        Family::CastIron => 0.9,
        Family::LightAlloy | Family::CopperAlloy => 0.7,
        Family::Ceramic | Family::Polymer => 0.5,
    }
}

fn strip_loads(group: &ScrewGroup, tapped: &Tapped, engagement: Length) -> Result<StripLoads, ScrewsError> {
    let hole = tapped.tensile * shear_ratio(tapped.material.family());
    // Where the screw's own strength is not known, it is taken to be as strong as the hole.
    let screw = group.class.as_ref().map_or(hole, |class| class.tensile * SCREW_SHEAR);
    ThreadPair::least_metal(&group.thread, engagement)?.strip_loads(hole, screw)
}

fn strip(group: &ScrewGroup, most: Force) -> Result<Option<StripPlan>, PlanError> {
    let Some(tapped) = &group.into else { return Ok(None) };
    let loads = group.engagement.map(|length| strip_loads(group, tapped, length)).transpose()?;
    // Both loads go with the length, so one trial gives the length for any force.
    let trial = group.thread.nominal;
    let per_trial = strip_loads(group, tapped, trial)?.least();
    Ok(Some(StripPlan {
        material: tapped.material.id().to_owned(),
        tensile: tapped.tensile,
        tensile_stated: tapped.stated,
        shear_ratio: shear_ratio(tapped.material.family()),
        reserve: loads.map(|loads| (loads.least() / most).get::<ratio>()),
        loads,
        needed: trial * (STRIP_RESERVE * most / per_trial),
    }))
}

impl GroupPlan {
    /// How its torques are rounded: to what a spanner is set to where the maker's is stated, and never above the limit that an
    /// estimate keeps.
    pub fn rounding(&self) -> Toward {
        if self.stated { Toward::Nearest } else { Toward::Down }
    }

    /// Highest preload over proof load; none where no class is known.
    pub fn share_of_proof(&self) -> Option<f64> {
        self.proof_load.map(|proof| (self.preload.most / proof).get::<ratio>())
    }
}
