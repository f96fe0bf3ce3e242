//! The shape of `seatwise.plan/1`. Names here are relied on by other programs: more may be added, none may change.

use super::basis::BasisDocument;
use super::fasteners::FastenersDocument;
use super::inspection::{InspectionDocument, UnevenWallDocument};
use super::push::{
    InternalClearanceDocument, LinerDocument, MeansDocument, RemovalDocument, ShapeDocument, StandingDocument,
    TakesSetDocument, TighterDocument, WallDocument,
};
use super::range::RangeDocument;
use super::scatter::ScatterDocument;
use super::seal::SealDocument;
use super::section_heat::SectionHeatDocument;
use super::stack::StackDocument;
use crate::job::Heading;
use schemars::JsonSchema;
use serde::Serialize;

/// One planned job.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PlanDocument {
    /// Always `seatwise.plan/1`.
    pub format: &'static str,
    /// Title block.
    pub job: JobDocument,
    /// The worst verdict of the seats.
    pub verdict: VerdictDocument,
    /// One object for each seat: housing first.
    pub seats: Vec<SeatDocument>,
    /// Internal clearance of a bearing; null where it is not known.
    pub internal_clearance: Option<InternalClearanceDocument>,
    /// The screws of the cover; null where the job has none.
    pub fasteners: Option<FastenersDocument>,
    /// Readings, findings and what to look at; null where the job says nothing of it.
    pub inspection: Option<InspectionDocument>,
    /// The seat with the ends of an uneven wall; null where the wall is the same all round.
    pub uneven_wall: Option<UnevenWallDocument>,
    /// The shaft seal; null where the job does not give its sizes.
    pub seal: Option<SealDocument>,
    /// What stands along the axis; null where the job does not say.
    pub stack: Option<StackDocument>,
    /// What can go wrong or hurt someone, gravest first.
    pub cautions: Vec<CautionDocument>,
    /// Every value as typed, and as read.
    pub entries: Vec<EntryDocument>,
    /// Every default that was used.
    pub assumptions: Vec<AssumptionDocument>,
    /// Where the numbers come from.
    pub sources: Vec<SourceDocument>,
    /// What share of parts does what; null where no parts were drawn.
    pub scatter: Option<ScatterDocument>,
    /// Why `scatter` is null.
    pub scatter_reason: Option<&'static str>,
}

/// Title block of the job.
#[derive(Debug, JsonSchema, Serialize)]
pub struct JobDocument {
    /// What the job is.
    pub title: String,
    /// Reference number.
    pub reference: Option<String>,
    /// Revision.
    pub revision: Option<String>,
}

impl JobDocument {
    pub(in crate::report) fn new(heading: &Heading) -> Self {
        Self { title: heading.title.clone(), reference: heading.reference.clone(), revision: heading.revision.clone() }
    }
}

/// What to expect.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
pub enum VerdictDocument {
    /// Even the tightest case has the placing clearance.
    #[serde(rename = "drops in")]
    DropsIn,
    /// The middle case has it, the tightest has not.
    #[serde(rename = "some will not")]
    SomeWillNot,
    /// The part must be pressed.
    #[serde(rename = "press")]
    Press,
    /// A limit is passed.
    #[serde(rename = "do not")]
    DoNot,
}

/// The plan of one seat.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SeatDocument {
    /// `housing` or `shaft`.
    pub seat: &'static str,
    /// Nominal diameter.
    pub nominal_mm: f64,
    /// What to expect at this seat.
    pub verdict: VerdictDocument,
    /// Fit at 20 °C.
    pub fit: FitDocument,
    /// Chilling of the inner part.
    pub chill: Option<SoakDocument>,
    /// Warming of the outer part.
    pub warm: Option<SoakDocument>,
    /// State at the mouth of the seat.
    pub at_bore: AtBoreDocument,
    /// Shortest hold that gives the placing clearance, from the first piece's going into its medium; longer than the planned
    /// hold where that is too short; null where none is known.
    pub time_to_clear_s: RangeDocument<Option<f64>>,
    /// Why an entry of `time_to_clear_s` is null.
    pub time_to_clear_reason: Option<String>,
    /// Share of its full change that the chilled piece, or else the warmed one, has made by then; null as `time_to_clear_s`.
    pub share_at_clear: RangeDocument<Option<f64>>,
    /// Why an entry of `share_at_clear` is null.
    pub share_at_clear_reason: Option<String>,
    /// Latest moment to start pushing: time in shop air until the placing clearance is gone; null where it never goes.
    pub window_s: RangeDocument<Option<f64>>,
    /// Why an entry of `window_s` is null.
    pub window_reason: Option<String>,
    /// Time in the seat until it grips; null where it does not within four hours, or where nothing is chilled or warmed.
    pub grip_s: RangeDocument<Option<f64>>,
    /// Why an entry of `grip_s` is null.
    pub grip_reason: Option<String>,
    /// `grip_s` of the tightest case when the part lies on one side: the pessimistic bound.
    pub grip_one_sided_s: Option<f64>,
    /// `grip_s` of the tightest case when the push starts at the latest moment; null where there is none.
    pub grip_at_latest_s: Option<f64>,
    /// Whether the part stays free until both have cooled to the lock temperature, so that it must be held; tightest case.
    pub held_until_lock: bool,
    /// Whether chilling the part shortens the time in the seat, where the warm part alone would do.
    pub chilling_shortens: bool,
    /// Common temperature that frees a part which has stopped half-way; null where none does.
    pub frees_at_c: Option<f64>,
    /// Common temperature of both parts at which the joint closes; null where it does not.
    pub lock_c: RangeDocument<Option<f64>>,
    /// Why an entry of `lock_c` is null.
    pub lock_reason: Option<String>,
    /// Pressing at the temperature of the shop.
    pub press: PressDocument,
    /// Force of the tightest case after standing in the seat, when it has stopped half-way; empty where nothing is treated.
    pub standing: Vec<StandingDocument>,
    /// The liner of the bore; null where there is none.
    pub liner: Option<LinerDocument>,
    /// The wall behind the part; null where there is no shoulder.
    pub wall: Option<WallDocument>,
    /// What presses; null where the job does not say.
    pub means: Option<MeansDocument>,
    /// How the part comes out again.
    pub removal: RemovalDocument,
    /// The nearest class of the seat that keeps the fit in service; null where nothing is loose, or none does.
    pub tighter: Option<TighterDocument>,
    /// The fit at the ends of service.
    pub service: Vec<ServiceDocument>,
    /// Temperatures on arrival that give the tightest case its placing clearance.
    pub clears_at: ClearsAtDocument,
    /// The driver that pushes the part by one of its rings; null for a part without rings of its own.
    pub driver: Option<DriverDocument>,
    /// Temperatures by conduction in the section; null where they are not followed.
    pub section_heat: Option<SectionHeatDocument>,
    /// Why they are not followed in the section; null where they are.
    pub section_heat_reason: Option<String>,
    /// What the numbers are worked from.
    pub basis: BasisDocument,
}

/// Sizes of a driver.
#[derive(Debug, JsonSchema, Serialize)]
pub struct DriverDocument {
    /// Least diameter of its bore.
    pub inside_mm: f64,
    /// Largest outside diameter.
    pub outside_mm: f64,
}

/// Limits of size and the fit at 20 °C.
#[derive(Debug, JsonSchema, Serialize)]
pub struct FitDocument {
    /// Deviations of the inner part from nominal.
    pub inner_limits_um: LimitsDocument,
    /// What the inner limits are.
    pub inner_basis: String,
    /// Deviations of the outer part from nominal.
    pub outer_limits_um: LimitsDocument,
    /// What the outer limits are.
    pub outer_basis: String,
    /// Interference: positive is tight.
    pub interference_um: RangeDocument<f64>,
    /// Interference after smoothing of the rough peaks.
    pub effective_interference_um: RangeDocument<f64>,
    /// Measuring uncertainty of the joint; null when nothing was measured.
    pub uncertainty_um: Option<f64>,
    /// Whether the measurement leaves open if the joint is loose or tight.
    pub undecided: bool,
}

/// Limit deviations.
#[derive(Debug, JsonSchema, Serialize)]
pub struct LimitsDocument {
    /// Lower limit deviation.
    pub lower: f64,
    /// Upper limit deviation.
    pub upper: f64,
}

/// Chilling or warming of one piece.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SoakDocument {
    /// What is treated.
    pub part: String,
    /// In what.
    pub medium: String,
    /// Temperature of the medium.
    pub medium_c: f64,
    /// `lumped`: bodies of one temperature each, with their internal resistance; `section`: conduction in the section.
    pub model: &'static str,
    /// Biot number.
    pub biot: f64,
    /// Convective film coefficient used: the slower end of the range.
    pub film_w_m2k: f64,
    /// Whether radiation is added to it.
    pub radiates: bool,
    /// Time constant at the start; null where a power sets the pace.
    pub time_constant_s: Option<f64>,
    /// Time in the medium.
    pub hold_s: f64,
    /// Temperature on leaving.
    pub end_c: f64,
    /// Temperature on leaving with the quicker end of the film range.
    pub end_quick_c: f64,
    /// Mass treated.
    pub mass_kg: f64,
    /// Surface exposed.
    pub area_m2: f64,
    /// 1, or 3 for a bearing as outer ring, rolling elements and inner ring.
    pub bodies: u8,
    /// Largest difference of the inner ring from the outer one on the way; null for one body.
    pub ring_difference_k: Option<f64>,
    /// By how much of itself the time may be off; null for a shape without a bound.
    pub time_error_share: Option<f64>,
    /// Share of the full change that is reached; null where a power sets the pace.
    pub share_reached: Option<f64>,
    /// Time after which waiting longer gains nothing (95 % of the full change); null where a power sets the pace.
    pub enough_after_s: Option<f64>,
    /// By how much the medium warms, or cools (negative), at most while it takes up the heat; null where it is taken as large.
    pub medium_drift_k: Option<f64>,
    /// How long the innermost place of the piece, such as the middle of a wall, is behind its mean temperature.
    pub middle_lag_s: f64,
    /// Coolant that evaporates to take up the heat of the piece; null for other media.
    pub coolant_kg: Option<f64>,
    /// The same as liquid or solid block.
    pub coolant_l: Option<f64>,
    /// Water and frost on the piece by the time it is warm; null when the humidity is not known.
    pub water_g: Option<f64>,
}

/// State at the mouth of the seat.
#[derive(Debug, JsonSchema, Serialize)]
pub struct AtBoreDocument {
    /// Time after leaving the medium.
    pub after_s: f64,
    /// Temperature of the inner part.
    pub inner_c: f64,
    /// Temperature of the outer part.
    pub outer_c: f64,
    /// Clearance: positive is loose.
    pub clearance_um: RangeDocument<f64>,
    /// Clearance that lets the part drop in.
    pub placing_clearance_um: f64,
    /// Pressure in the joint at that moment.
    pub pressure_mpa: RangeDocument<f64>,
    /// Force to press home at that moment.
    pub force_n: RangeDocument<f64>,
}

/// Pressing at the temperature of the shop.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PressDocument {
    /// Pressure in the joint.
    pub pressure_mpa: RangeDocument<f64>,
    /// Force at full depth.
    pub force_n: RangeDocument<f64>,
    /// Hoop stress at the bore of the outer part.
    pub hoop_outer_mpa: RangeDocument<f64>,
    /// Strength over elastic stress at the weaker part; null where there is no stress.
    pub yield_factor: RangeDocument<Option<f64>>,
    /// Why an entry of `yield_factor` is null.
    pub yield_factor_reason: Option<String>,
    /// The weaker part.
    pub weaker_part: String,
    /// Interference at which the weaker part reaches its strength.
    pub elastic_limit_um: f64,
    /// Friction used, low and high.
    pub friction_low: f64,
    /// See `friction_low`.
    pub friction_high: f64,
    /// The same by Tresca; null for a brittle weaker part.
    pub elastic_limit_tresca_um: Option<f64>,
    /// Length of the joint.
    pub length_mm: f64,
    /// What the seat is beyond two rings of equal width; pressures and forces have it in them.
    pub shape: ShapeDocument,
    /// By how much the ring closes in its housing (the bore of a bush, the raceway of a bearing: positive is smaller) or grows on
    /// its shaft; null for a plug.
    pub ring_change_um: Option<RangeDocument<f64>>,
    /// A bush or hollow shaft that yields in the tightest case and goes on holding; null where none does.
    pub takes_set: Option<TakesSetDocument>,
    /// Hoop stress at which such a part flows at the most, by von Mises, where that and not elasticity bounds the pressure of the
    /// tightest case; null elsewhere.
    pub flow_high_mpa: Option<f64>,
    /// Outside of the plastic zone over the bore then; null as before.
    pub plastic_ratio_high: Option<f64>,
}

/// The fit at one end of service.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ServiceDocument {
    /// `coldest` or `hottest`.
    pub state: &'static str,
    /// Temperature of the inner part.
    pub inner_c: f64,
    /// Temperature of the outer part.
    pub outer_c: f64,
    /// Interference: positive is tight.
    pub interference_um: RangeDocument<f64>,
    /// Interference that the tightest case then loses for good because a bush or hollow shaft yields, beyond what fitting it took;
    /// null where none does.
    pub yields_um: Option<f64>,
    /// Axial force that the fit holds, lowest friction, once fitting and service have taken what yields.
    pub holds_n: RangeDocument<f64>,
    /// Torque that it holds, lowest friction, without axial force.
    pub holds_nm: RangeDocument<f64>,
}

/// What clears the tightest case.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ClearsAtDocument {
    /// Temperature of the inner part on arrival, or colder, the outer as planned; null where none does.
    pub inner_c: Option<f64>,
    /// Temperature of the outer part on arrival, or warmer, the inner as planned; null where none does.
    pub outer_c: Option<f64>,
    /// Why one of the two is null.
    pub reason: Option<String>,
}

/// A finding.
#[derive(Debug, JsonSchema, Serialize)]
pub struct CautionDocument {
    /// Stable code.
    pub code: &'static str,
    /// `danger`, `warning`, `caution` or `note`.
    pub level: &'static str,
    /// Signal word of the texts: `danger`, `warning` or `caution` where someone may be hurt, `notice` where a part or the job
    /// may suffer, `note`.
    pub signal: &'static str,
    /// The finding and what to do, in metric units.
    pub text: String,
    /// Where the rule comes from.
    pub source: String,
    /// Whether the job must not be done as planned.
    pub forbids: bool,
}

/// A value as typed.
#[derive(Debug, JsonSchema, Serialize)]
pub struct EntryDocument {
    /// Section and key.
    pub key: String,
    /// As typed.
    pub typed: String,
    /// As read, in metric units.
    pub metric: String,
    /// As read, in inch units.
    pub inch: String,
}

/// A value that was put in.
#[derive(Debug, JsonSchema, Serialize)]
pub struct AssumptionDocument {
    /// What it is the value of.
    pub what: String,
    /// The value, in metric units.
    pub value: String,
    /// Why this value, and how to state another.
    pub why: String,
}

/// Where a number comes from.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SourceDocument {
    /// What comes from it.
    pub what: String,
    /// Standard, book, dataset, or the words that there is none.
    pub text: String,
}
