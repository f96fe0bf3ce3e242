//! Force, wall, means, removal and internal clearance in the document.

use super::figures;
use super::range::RangeDocument;
use super::units::{celsius, mm, mpa, newtons, range, seconds, um};
use crate::mechanics::{ClearanceRange, WallPlace};
use crate::plan::LinerPlan;
use crate::plan::push::{
    ForceCourse, HowNear, InternalClearancePlan, MeansPlan, Removal, ScrewPlan, ShapeFactor, StopReason, TakesSet,
    Tighter, WallModel, WallPlan,
};
use crate::quantity::Torque;
use schemars::JsonSchema;
use serde::Serialize;
use uom::si::angle::degree;
use uom::si::torque::newton_meter;

/// By what factor the plane formula of two rings of equal width is exceeded.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ShapeDocument {
    /// Factor of the force, low and high.
    pub force_low: f64,
    /// See `force_low`.
    pub force_high: f64,
    /// Factor of the mean pressure, low and high.
    pub pressure_low: f64,
    /// See `pressure_low`.
    pub pressure_high: f64,
    /// Factor of the closing or growth of the ring, low and high.
    pub closing_low: f64,
    /// See `closing_low`.
    pub closing_high: f64,
    /// `exact`, `computed`, `interpolated` or `bounds`.
    pub known: &'static str,
}

/// A bush or hollow shaft that yields from its bore outward in the tightest case and goes on holding.
#[derive(Debug, JsonSchema, Serialize)]
pub struct TakesSetDocument {
    /// Share of the wall's section that has yielded.
    pub plastic_share: f64,
    /// Pressure that it surely bears, by Tresca in plane stress.
    pub bears_mpa: f64,
    /// How far its bore closes on the diameter, elastic and plastic: positive is smaller.
    pub bore_closes_um: f64,
    /// Interference that is missing at a second fitting.
    pub lost_um: f64,
    /// Interference beyond that at which the whole wall is plastic, which only closes the bore; null where it is plastic in part.
    pub surplus_um: Option<f64>,
    /// Hoop stress at which it flows: its strength.
    pub flow_mpa: f64,
}

/// Force of the tightest case at full depth after standing in the seat for a time.
#[derive(Debug, JsonSchema, Serialize)]
pub struct StandingDocument {
    /// Time in the seat; zero is the planned moment.
    pub after_s: f64,
    /// Force to press home then.
    pub force_n: f64,
}

/// The wall behind the part.
#[derive(Debug, JsonSchema, Serialize)]
pub struct WallDocument {
    /// `section` where it was computed in the section of the seat, else `plate`.
    pub model: &'static str,
    /// Force that it bears with the reserve; null where it is too thick for a plate and no section was computed.
    pub allowable_n: Option<f64>,
    /// As a plate, if its edge could turn freely: the other bound; null in the section.
    pub allowable_free_n: Option<f64>,
    /// In the section, with the housing resting on its front face; null as a plate.
    pub allowable_on_front_n: Option<f64>,
    /// In the section, with the housing resting on its back face; null as a plate.
    pub allowable_on_back_n: Option<f64>,
    /// As a plate held at its edge, for comparison; null where it is too thick for one.
    pub as_plate_n: Option<f64>,
    /// Strength over stress at that force.
    pub reserve: f64,
    /// `root`, `hole` or `shear`; null as `allowable_n`.
    pub place: Option<&'static str>,
    /// Stress at the root at the force needed: of bending as a plate; linearised, with that of the fit, in the section.
    pub root_stress_mpa: Option<f64>,
    /// How far it gives way then at the least: the free edge of a plate, the mean under the ring in the section.
    pub deflection_um: Option<f64>,
    /// Pressure of the ring's face on the shoulder then.
    pub face_pressure_mpa: f64,
    /// Why an entry is null.
    pub reason: Option<String>,
}

/// A liner in the bore.
#[derive(Debug, JsonSchema, Serialize)]
pub struct LinerDocument {
    /// Wall of the liner.
    pub wall_mm: f64,
    /// Material of the liner.
    pub material: String,
    /// Least interference with which it is pressed in; null where it is cast in.
    pub interference_least_um: Option<f64>,
    /// Most interference; null as before.
    pub interference_most_um: Option<f64>,
    /// Expansion of the bore around 20 °C.
    pub bore_expansion_um_per_mk: f64,
    /// Pressure between liner and housing with the ring in it; negative where a cast liner pulls.
    pub between_mpa: RangeDocument<f64>,
    /// Hoop stress of the housing at the liner, tightest case.
    pub housing_hoop_mpa: f64,
    /// Least strength over stress of the liner, with and without the ring, in the shop, while it is warm and in service; null
    /// where nothing strains it.
    pub liner_factor: Option<f64>,
    /// When that is, in words; null as before.
    pub liner_factor_when: Option<String>,
    /// The same of the housing around it.
    pub housing_factor: Option<f64>,
    /// When that is, in words; null as before.
    pub housing_factor_when: Option<String>,
    /// Common temperature from which a pressed liner is free; null where there is none.
    pub free_from_c: Option<f64>,
    /// Common temperature from which downwards it is free; null where there is none.
    pub free_below_c: Option<f64>,
}

pub(super) fn liner(liner: &LinerPlan) -> LinerDocument {
    let (of_liner, of_housing) = (liner.liner_reserves.worst(), liner.housing_reserves.worst());
    LinerDocument {
        wall_mm: mm(liner.wall),
        material: liner.liner.clone(),
        interference_least_um: liner.pressed.map(|(least, _)| um(least)),
        interference_most_um: liner.pressed.map(|(_, most)| um(most)),
        bore_expansion_um_per_mk: figures(1e6 * liner.bore_expansion_per_k),
        between_mpa: range(liner.between.map(mpa)),
        housing_hoop_mpa: mpa(liner.housing_hoop),
        liner_factor: of_liner.map(|reserve| figures(reserve.least)),
        liner_factor_when: of_liner.map(|reserve| reserve.when.clone()),
        housing_factor: of_housing.map(|reserve| figures(reserve.least)),
        housing_factor_when: of_housing.map(|reserve| reserve.when.clone()),
        free_from_c: liner.free_from.hot.map(celsius),
        free_below_c: liner.free_from.cold.map(celsius),
    }
}

/// What presses.
#[derive(Debug, JsonSchema, Serialize)]
pub struct MeansDocument {
    /// What it is.
    pub name: &'static str,
    /// Force that the tightest case may need.
    pub needed_n: f64,
    /// Force that it surely gives; null where the job does not say.
    pub available_n: Option<f64>,
    /// Gauge pressure of a hydraulic press at the force needed.
    pub gauge_mpa: Option<f64>,
    /// Force above which to stop.
    pub alarm_n: f64,
    /// The screw of a jig.
    pub screw: Option<ScrewDocument>,
}

/// A screw jig.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ScrewDocument {
    /// Thread.
    pub thread: String,
    /// Strength class.
    pub class: Option<String>,
    /// Torque at the force needed, lowest friction.
    pub running_low_nm: f64,
    /// The same, highest friction.
    pub running_high_nm: f64,
    /// Torque that must not be exceeded; null where nothing limits it.
    pub stop_nm: Option<f64>,
    /// `wall` or `rod`.
    pub stop_because_of: Option<&'static str>,
    /// Least turn from the highest running torque to the stop once the part is on its shoulder; null without a shoulder.
    pub turn_to_stop_deg: Option<f64>,
    /// Rise of the torque there for a tenth of a turn, lowest friction; null as `turn_to_stop_deg`.
    pub rise_per_tenth_turn_low_nm: Option<f64>,
    /// The same, highest friction.
    pub rise_per_tenth_turn_high_nm: Option<f64>,
    /// Whether the torque needed is above the one that must not be exceeded.
    pub crosses: bool,
    /// Stress of the rod over its proof stress at the force needed.
    pub rod_share: Option<f64>,
    /// Proof load of the rod.
    pub proof_load_n: Option<f64>,
}

/// How the part comes out again.
#[derive(Debug, JsonSchema, Serialize)]
pub struct RemovalDocument {
    /// What comes out before it, in order: `seal`, `retaining ring`.
    pub first_out: Vec<&'static str>,
    /// Temperature of the outer part alone that frees the tightest case; null where none does.
    pub outer_alone_c: Option<f64>,
    /// The limit that this passes; null where it passes none.
    pub outer_limit_c: Option<f64>,
    /// Common temperature of both parts that frees the tightest case; null where none does.
    pub both_c: Option<f64>,
    /// Force to break it loose at the temperature of the shop.
    pub pull_n: RangeDocument<f64>,
    /// Torque of the jig's screw then, highest friction.
    pub torque_nm: Option<f64>,
    /// Stress of its rod over the proof stress then.
    pub rod_share: Option<f64>,
}

/// A tighter class that keeps the fit in service.
#[derive(Debug, JsonSchema, Serialize)]
pub struct TighterDocument {
    /// The class of the seat.
    pub class: String,
    /// Least interference in service.
    pub least_um: f64,
    /// Largest interference at 20 °C.
    pub most_um: f64,
    /// Whether the weaker part stays elastic with it.
    pub elastic: bool,
}

/// A range with two ends.
#[derive(Debug, JsonSchema, Serialize)]
pub struct EndsDocument {
    /// Lower end.
    pub least: f64,
    /// Upper end.
    pub most: f64,
}

/// Internal clearance of a bearing, across the diameter.
#[derive(Debug, JsonSchema, Serialize)]
pub struct InternalClearanceDocument {
    /// ISO 5753-1 group; null where limits were stated.
    pub group: Option<String>,
    /// As delivered.
    pub delivered_um: EndsDocument,
    /// Lost in the housing; null without such a seat.
    pub outer_ring_um: Option<EndsDocument>,
    /// Lost on the shaft; null without such a seat.
    pub inner_ring_um: Option<EndsDocument>,
    /// Lost to the warmer inner ring in service.
    pub temperature_um: EndsDocument,
    /// Fitted, at one temperature.
    pub fitted_um: EndsDocument,
    /// Running, without load.
    pub running_um: EndsDocument,
    /// Running, without load, in 997 of 1000: root of the summed squares about the middle.
    pub usual_um: EndsDocument,
    /// The tightest group that keeps play in 997 of 1000; null where none does or none is wanted.
    pub usual_group: Option<String>,
    /// The tightest group that keeps play in every case; null where none does or none is wanted.
    pub sure_group: Option<String>,
    /// Where the delivered limits come from.
    pub source: String,
}

fn newton_metres(torque: Torque) -> f64 {
    figures(torque.get::<newton_meter>())
}

pub(super) fn shape(shape: &ShapeFactor) -> ShapeDocument {
    ShapeDocument {
        force_low: figures(shape.force.0),
        force_high: figures(shape.force.1),
        pressure_low: figures(shape.pressure.0),
        pressure_high: figures(shape.pressure.1),
        closing_low: figures(shape.closing.0),
        closing_high: figures(shape.closing.1),
        known: match shape.known {
            HowNear::Exact => "exact",
            HowNear::Computed => "computed",
            HowNear::Interpolated => "interpolated",
            HowNear::Bounds => "bounds",
        },
    }
}

pub(super) fn takes_set(set: &TakesSet) -> TakesSetDocument {
    TakesSetDocument {
        plastic_share: figures(set.share),
        bears_mpa: mpa(set.pressure),
        bore_closes_um: um(set.closes),
        lost_um: um(set.lost),
        surplus_um: set.surplus.map(um),
        flow_mpa: mpa(set.flow),
    }
}

pub(super) fn standing(course: &ForceCourse) -> Vec<StandingDocument> {
    let entry = |(time, force): &_| StandingDocument { after_s: seconds(*time), force_n: newtons(*force) };
    course.after.iter().map(entry).collect()
}

pub(super) fn wall(wall: &WallPlan) -> WallDocument {
    WallDocument {
        model: match wall.model {
            WallModel::Plate => "plate",
            WallModel::Section => "section",
        },
        allowable_n: wall.allowable.map(newtons),
        allowable_free_n: wall.allowable_free.map(newtons),
        allowable_on_front_n: wall.supports.map(|(front, _)| newtons(front)),
        allowable_on_back_n: wall.supports.map(|(_, back)| newtons(back)),
        as_plate_n: wall.as_plate.map(newtons),
        reserve: figures(wall.reserve),
        place: wall.place.map(|place| match place {
            WallPlace::Root => "root",
            WallPlace::Hole => "hole",
            WallPlace::Shear => "shear",
        }),
        root_stress_mpa: wall.root_stress.map(mpa),
        deflection_um: wall.deflection.map(um),
        face_pressure_mpa: mpa(wall.face_pressure),
        reason: match (wall.model, wall.allowable) {
            (WallModel::Plate, None) => Some("the wall is too thick for a plate".to_owned()),
            (WallModel::Plate, Some(_)) => Some("the section of the seat was not computed".to_owned()),
            (WallModel::Section, _) => Some("in the section the edge is held as it is".to_owned()),
        },
    }
}

pub(super) fn means(means: &MeansPlan) -> MeansDocument {
    MeansDocument {
        name: means.name,
        needed_n: newtons(means.needed),
        available_n: means.available.map(newtons),
        gauge_mpa: means.gauge.map(mpa),
        alarm_n: newtons(means.alarm),
        screw: means.screw.as_ref().map(screw),
    }
}

fn screw(screw: &ScrewPlan) -> ScrewDocument {
    ScrewDocument {
        thread: screw.thread.clone(),
        class: screw.class.clone(),
        running_low_nm: newton_metres(screw.running.0),
        running_high_nm: newton_metres(screw.running.1),
        stop_nm: screw.stop.map(|(torque, _)| newton_metres(torque)),
        stop_because_of: screw.stop.map(|(_, reason)| match reason {
            StopReason::Wall => "wall",
            StopReason::Rod => "rod",
        }),
        turn_to_stop_deg: screw.landing.map(|landing| figures(landing.turn_to_limit.get::<degree>())),
        rise_per_tenth_turn_low_nm: screw.landing.map(|landing| newton_metres(landing.rise.0)),
        rise_per_tenth_turn_high_nm: screw.landing.map(|landing| newton_metres(landing.rise.1)),
        crosses: screw.crosses,
        rod_share: screw.rod_share.map(figures),
        proof_load_n: screw.proof_load.map(newtons),
    }
}

pub(super) fn removal(removal: &Removal) -> RemovalDocument {
    RemovalDocument {
        first_out: removal.first_out.clone(),
        outer_alone_c: removal.outer_alone.map(celsius),
        outer_limit_c: removal.outer_limit.map(celsius),
        both_c: removal.both.map(celsius),
        pull_n: range(removal.pull.map(newtons)),
        torque_nm: removal.torque.map(newton_metres),
        rod_share: removal.rod_share.map(figures),
    }
}

pub(super) fn tighter(tighter: &Tighter) -> TighterDocument {
    TighterDocument {
        class: tighter.class.clone(),
        least_um: um(tighter.least),
        most_um: um(tighter.most),
        elastic: tighter.elastic,
    }
}

pub(super) fn internal_clearance(play: &InternalClearancePlan) -> InternalClearanceDocument {
    let ends = |range: ClearanceRange| EndsDocument { least: um(range.least), most: um(range.most) };
    InternalClearanceDocument {
        group: play.group.clone(),
        delivered_um: ends(play.delivered),
        outer_ring_um: play.outer_ring.map(ends),
        inner_ring_um: play.inner_ring.map(ends),
        temperature_um: ends(play.temperature),
        fitted_um: ends(play.fitted),
        running_um: ends(play.running),
        usual_um: ends(play.usual),
        usual_group: play.usual_group.clone(),
        sure_group: play.sure_group.clone(),
        source: play.source.clone(),
    }
}
