//! Readings, checks and an uneven wall in the document.

use super::figures;
use super::range::RangeDocument;
use super::units::{mm, mpa, newtons, range, um};
use crate::assembly::readings::Widest;
use crate::plan::inspection::{FormPlan, InspectionPlan};
use crate::plan::{UnevenWallPlan, WallEnd};
use crate::quantity::System;
use crate::report::words;
use schemars::JsonSchema;
use serde::Serialize;

/// What was read, and what to look at.
#[derive(Debug, JsonSchema, Serialize)]
pub struct InspectionDocument {
    /// Form of each diameter that was read at several places.
    pub forms: Vec<FormDocument>,
    /// `new`, `nothing found against it yet`, `look at it first` or `replace it`; null where nothing is said of a bearing.
    pub bearing: Option<&'static str>,
    /// Radial run-out of the shaft as found; null where none is stated.
    pub run_out_um: Option<f64>,
    /// Most that it may be; null as `run_out_um`.
    pub run_out_allowed_um: Option<f64>,
    /// What to look at; empty where the job has no `[inspection]`.
    pub checks: Vec<CheckDocument>,
}

/// Form of a diameter.
#[derive(Debug, JsonSchema, Serialize)]
pub struct FormDocument {
    /// `housing` or `shaft`.
    pub seat: &'static str,
    /// What was read.
    pub name: &'static str,
    /// The readings: one row a depth from the mouth inwards, one column a direction.
    pub readings_mm: Vec<Vec<f64>>,
    /// Mean of all.
    pub mean_mm: f64,
    /// Smallest.
    pub smallest_mm: f64,
    /// Largest.
    pub largest_mm: f64,
    /// Largest less smallest at the worst depth; null with one direction.
    pub out_of_round_um: Option<f64>,
    /// Largest less smallest mean of a depth; null with one depth.
    pub taper_um: Option<f64>,
    /// `mouth`, `bottom` or `between`, where the mean is largest; null with one depth.
    pub widest: Option<&'static str>,
    /// Most that out-of-round and taper of a bearing seat may be.
    pub allowed_um: f64,
}

/// One thing to look at.
#[derive(Debug, JsonSchema, Serialize)]
pub struct CheckDocument {
    /// The part.
    pub part: &'static str,
    /// What to look for, in metric units.
    pub text: String,
    /// `to do`, `good` or `not in order`.
    pub state: &'static str,
}

/// The seat with the ends of an uneven wall, each as a ring with that wall all round, at the temperature of the shop.
#[derive(Debug, JsonSchema, Serialize)]
pub struct UnevenWallDocument {
    /// The thinnest wall.
    pub thin: WallEndDocument,
    /// The wall of the ring that stands for the boss; the plan uses it.
    pub equivalent: WallEndDocument,
    /// The thickest wall.
    pub thick: WallEndDocument,
    /// The thin side as it is, under the pressure of the equivalent wall; null for a bore with a liner.
    pub thin_side: Option<ThinSideDocument>,
}

/// Stress at the thin side of a boss.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ThinSideDocument {
    /// Hoop stress at the bore or the outside, the larger of the two.
    pub hoop_mpa: RangeDocument<f64>,
    /// Strength over stress; null where there is no stress.
    pub yield_factor: RangeDocument<Option<f64>>,
}

/// The seat with one wall all round.
#[derive(Debug, JsonSchema, Serialize)]
pub struct WallEndDocument {
    /// The wall.
    pub wall_mm: f64,
    /// Pressure in the joint.
    pub pressure_mpa: RangeDocument<f64>,
    /// Force at full depth.
    pub force_n: RangeDocument<f64>,
    /// By how much the ring closes; null for a plug.
    pub ring_change_um: Option<RangeDocument<f64>>,
}

pub(super) fn inspection(plan: &InspectionPlan) -> InspectionDocument {
    InspectionDocument {
        forms: plan.forms.iter().map(form).collect(),
        bearing: plan.reuse.map(|reuse| reuse.words()),
        run_out_um: plan.run_out.map(|(found, _)| um(found)),
        run_out_allowed_um: plan.run_out.map(|(_, allowed)| um(allowed)),
        checks: plan
            .checks
            .iter()
            .map(|check| CheckDocument {
                part: check.part,
                text: words::sentence(&check.text, System::Metric),
                state: check.state.words(),
            })
            .collect(),
    }
}

fn form(plan: &FormPlan) -> FormDocument {
    let form = plan.form;
    // Seven figures: a size of 52 mm to a hundredth of a micrometre.
    let size = |length: crate::quantity::Length| (length.get::<uom::si::length::nanometer>() / 10.0).round() / 1e5;
    FormDocument {
        seat: plan.seat.name(),
        name: plan.name,
        readings_mm: plan.readings.rows().iter().map(|row| row.iter().copied().map(size).collect()).collect(),
        mean_mm: size(form.mean),
        smallest_mm: size(form.smallest),
        largest_mm: size(form.largest),
        out_of_round_um: form.out_of_round.map(um),
        taper_um: form.taper.map(um),
        widest: form.widest.map(|widest| match widest {
            Widest::Mouth => "mouth",
            Widest::Bottom => "bottom",
            Widest::Between => "between",
        }),
        allowed_um: um(plan.allowed),
    }
}

pub(super) fn uneven_wall(plan: &UnevenWallPlan) -> UnevenWallDocument {
    UnevenWallDocument {
        thin: wall(&plan.thin),
        equivalent: wall(&plan.equivalent),
        thick: wall(&plan.thick),
        thin_side: plan.thin_side.map(|side| ThinSideDocument {
            hoop_mpa: range(side.hoop.map(mpa)),
            yield_factor: range(side.yield_factor.map(|factor| factor.map(figures))),
        }),
    }
}

fn wall(end: &WallEnd) -> WallEndDocument {
    WallEndDocument {
        wall_mm: mm(end.wall),
        pressure_mpa: range(end.pressure.map(mpa)),
        force_n: range(end.force.map(newtons)),
        ring_change_um: end.ring_change.map(|change| range(change.map(um))),
    }
}
