//! The shape of `seatwise.section/1`. Names here are relied on by other programs: more may be added, none may change.

use crate::job::Job;
use crate::plan::drawing::{Closing, PlaneSeat, SectionPlan, ShoulderLoad};
use crate::quantity::Length;
use crate::report::json::JobDocument;
use crate::report::json::units::{celsius, mm, mpa, newtons, um};
use crate::section::{Contact, Peak, PressureAt, StressAt, WallState};
use schemars::JsonSchema;
use serde::Serialize;

/// The sections of a job's seats.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SectionDocument {
    /// Always `seatwise.section/1`.
    pub format: &'static str,
    /// Title block.
    pub job: JobDocument,
    /// One object for each seat.
    pub seats: Vec<SeatSectionDocument>,
}

/// The section of one seat at a moment.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SeatSectionDocument {
    /// `housing` or `shaft`.
    pub seat: &'static str,
    /// `room`, `bore`, `hottest` or `coldest`.
    pub moment: &'static str,
    /// `tightest`, `middle` or `loosest`.
    pub case: &'static str,
    /// Nominal diameter of the seat.
    pub nominal_mm: f64,
    /// Temperature of the inner part.
    pub inner_c: f64,
    /// Temperature of the outer part.
    pub outer_c: f64,
    /// Interference on the diameter that bears; negative is clearance.
    pub interference_um: f64,
    /// Whether the job gives the length of the seat.
    pub length_stated: bool,
    /// Mean pressure with the longer seat the other way round; null where there is no other way.
    pub other_way_pressure_mpa: Option<f64>,
    /// Mean pressure.
    pub mean_pressure_mpa: f64,
    /// Length along which ring and seat face one another, chamfers left out.
    pub contact_length_mm: f64,
    /// Share of the length that touches, 0 to 1.
    pub touching: f64,
    /// Coefficient of friction that the force counts with.
    pub friction: f64,
    /// Force to press home, or what the fit holds along the axis in service.
    pub force_n: f64,
    /// The same with what friction, and a longer seat where the length is not stated, may add: the most that the plan counts with.
    pub force_most_n: f64,
    /// How far the ring closes in a housing, or grows on a shaft; null where it has no such surface.
    pub ring_change: Option<ClosingDocument>,
    /// Largest stresses of each part, from the inside outward, away from singular places.
    pub stresses: Vec<PartStressDocument>,
    /// Pressure along the seat, from back to front; nothing is given beside singular ends.
    pub pressure: Vec<PressureDocument>,
    /// Nothing is read within this distance of the ends of a contact and the inner corners of shoulder and step.
    pub unread_mm: f64,
    /// The shoulder while the ring is pushed against it; null where there is none, or nothing is pushed.
    pub shoulder: Option<ShoulderDocument>,
    /// The seam of a liner and the housing around it; null without a liner.
    pub seam: Option<SeamDocument>,
    /// The same seat as two plain rings of equal width.
    pub plane: PlaneDocument,
}

/// The seam of a liner and its housing.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SeamDocument {
    /// Nominal diameter of the seam.
    pub nominal_mm: f64,
    /// Interference on the diameter before the liner is fitted, at the temperature of the housing; negative where it would stand
    /// apart.
    pub interference_um: f64,
    /// Whether the liner is cast in, so that the seam may pull.
    pub bonded: bool,
    /// Length along which liner and housing face one another.
    pub contact_length_mm: f64,
    /// Mean pressure with the ring in its seat; negative where the seam pulls.
    pub mean_pressure_mpa: f64,
    /// The same of plain rings of equal width.
    pub plane_pressure_mpa: Option<f64>,
    /// Share of the length that touches, 0 to 1.
    pub touching: f64,
    /// Pressure along the seam, from back to front; nothing is given beside singular ends.
    pub pressure: Vec<PressureDocument>,
}

/// How far a ring closes, or grows, on its diameter.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ClosingDocument {
    /// At the front face.
    pub front_um: f64,
    /// At mid-width.
    pub middle_um: f64,
    /// At the back face.
    pub back_um: f64,
    /// At the middle of the raceway's groove; of the width where no groove is known, or the part is no bearing.
    pub raceway_um: f64,
    /// Mean over the width.
    pub mean_um: f64,
}

/// Largest stresses of a part.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PartStressDocument {
    /// Which part.
    pub part: &'static str,
    /// Id of its material.
    pub material: String,
    /// Largest von Mises stress.
    pub von_mises: StressDocument,
    /// Largest hoop stress.
    pub hoop: StressDocument,
}

/// A stress with its place.
#[derive(Debug, JsonSchema, Serialize)]
pub struct StressDocument {
    /// Stress.
    pub stress_mpa: f64,
    /// Diameter of the place.
    pub diameter_mm: f64,
    /// Its distance from the back face of the ring, negative behind it.
    pub from_back_mm: f64,
}

/// Pressure at a place.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PressureDocument {
    /// Distance from the back face of the ring.
    pub from_back_mm: f64,
    /// Pressure.
    pub pressure_mpa: f64,
}

/// A shoulder under fit and push.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ShoulderDocument {
    /// Force on it.
    pub force_n: f64,
    /// Under the fit alone.
    pub fitted: WallStressDocument,
    /// Under fit and force.
    pub pushed: WallStressDocument,
}

/// A wall; bending is positive when it pulls on the side of the ring.
#[derive(Debug, JsonSchema, Serialize)]
pub struct WallStressDocument {
    /// Radial membrane stress at the root.
    pub root_membrane_mpa: f64,
    /// Radial bending stress at the root.
    pub root_bending_mpa: f64,
    /// Axial displacement of its edge, away from the ring.
    pub edge_deflection_um: f64,
}

/// Two plain rings of equal width.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PlaneDocument {
    /// Pressure.
    pub pressure_mpa: f64,
    /// Force along the axis.
    pub force_n: f64,
    /// How far the ring closes, or grows; null for a solid inner part.
    pub ring_change_um: Option<f64>,
    /// Largest von Mises stress of each part, from the inside outward.
    pub von_mises_mpa: Vec<f64>,
    /// Largest hoop stress of each part.
    pub hoop_mpa: Vec<f64>,
}

impl SectionDocument {
    pub(super) fn new(job: &Job, seats: &[SectionPlan]) -> Self {
        Self {
            format: "seatwise.section/1",
            job: JobDocument::new(&job.heading),
            seats: seats.iter().map(SeatSectionDocument::new).collect(),
        }
    }
}

impl SeatSectionDocument {
    fn new(seat: &SectionPlan) -> Self {
        let contact = &seat.state.contacts[0];
        Self {
            seat: seat.seat.name(),
            moment: seat.moment.name(),
            case: seat.case.name(),
            nominal_mm: mm(seat.nominal),
            inner_c: celsius(seat.temperatures[0]),
            outer_c: celsius(seat.temperatures[1]),
            interference_um: um(seat.interference),
            length_stated: seat.length_stated,
            other_way_pressure_mpa: seat.softer.map(mpa),
            mean_pressure_mpa: mpa(contact.mean_pressure),
            contact_length_mm: mm(contact.length),
            touching: crate::report::json::figures(contact.touching),
            friction: seat.friction,
            force_n: newtons(seat.force),
            force_most_n: newtons(seat.force_most),
            ring_change: seat.closing.as_ref().map(closing),
            stresses: stresses(seat),
            pressure: pressures(contact),
            unread_mm: mm(seat.field.unread),
            shoulder: seat.shoulder.as_ref().map(shoulder),
            seam: seam(seat),
            plane: plane(&seat.plane),
        }
    }
}

fn pressures(contact: &Contact) -> Vec<PressureDocument> {
    let at = |at: &PressureAt| PressureDocument { from_back_mm: mm(at.position), pressure_mpa: mpa(at.pressure) };
    contact.pressure.iter().map(at).collect()
}

fn seam(seat: &SectionPlan) -> Option<SeamDocument> {
    let (seam, contact) = seat.seam.as_ref().zip(seat.state.contacts.get(1))?;
    Some(SeamDocument {
        nominal_mm: mm(contact.diameter),
        interference_um: um(seam.interference),
        bonded: seam.bonded,
        contact_length_mm: mm(contact.length),
        mean_pressure_mpa: mpa(contact.mean_pressure),
        plane_pressure_mpa: seat.plane.seam.map(mpa),
        touching: crate::report::json::figures(contact.touching),
        pressure: pressures(contact),
    })
}

fn closing(closing: &Closing) -> ClosingDocument {
    let of = |length: Length| um(length);
    ClosingDocument {
        front_um: of(closing.front),
        middle_um: of(closing.middle),
        back_um: of(closing.back),
        raceway_um: of(closing.raceway),
        mean_um: of(closing.mean),
    }
}

fn stresses(seat: &SectionPlan) -> Vec<PartStressDocument> {
    let parts = seat.parts.iter().zip(&seat.materials).zip(&seat.peaks);
    let of = |((part, material), peak): ((&&'static str, &String), &Peak)| {
        let (von_mises, hoop) = (stress(&peak.von_mises), stress(&peak.hoop));
        PartStressDocument { part, material: material.clone(), von_mises, hoop }
    };
    parts.map(of).collect()
}

fn stress(at: &StressAt) -> StressDocument {
    StressDocument { stress_mpa: mpa(at.stress), diameter_mm: mm(at.diameter), from_back_mm: mm(at.position) }
}

fn shoulder(shoulder: &ShoulderLoad) -> ShoulderDocument {
    let wall = |wall: &WallState| WallStressDocument {
        root_membrane_mpa: mpa(wall.root_membrane),
        root_bending_mpa: mpa(wall.root_bending),
        edge_deflection_um: um(wall.edge_deflection),
    };
    let (fitted, pushed) = (wall(&shoulder.fitted), wall(&shoulder.pushed));
    ShoulderDocument { force_n: newtons(shoulder.force), fitted, pushed }
}

fn plane(plane: &PlaneSeat) -> PlaneDocument {
    PlaneDocument {
        pressure_mpa: mpa(plane.pressure),
        force_n: newtons(plane.force),
        ring_change_um: plane.closing.map(um),
        von_mises_mpa: plane.von_mises.iter().copied().map(mpa).collect(),
        hoop_mpa: plane.hoop.iter().copied().map(mpa).collect(),
    }
}
