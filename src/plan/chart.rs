//! A chart for the shop's wall: how hot the outer part is against how cold the inner one is, and what that gives.

use super::caution::Caution;
use super::model::{SeatKind, SeatPlan};
use super::options::{Worked, limits_of, run};
use super::sentence::Sentence;
use super::{Method, PlanError, SolvedSeats, plan_among};
use crate::job::{Hold, Job, Piece, Treatment};
use crate::quantity::{ThermodynamicTemperature, celsius, warming};
use crate::stock::medium::{Medium, embedded};
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;

/// By how much the oven that stands behind a row is hotter than the row says, K: the piece is taken out on its way.
const OVEN_AHEAD_K: f64 = 25.0;

/// Hottest outer part of a chart, °C: an oven of 250 °C brings a piece there.
pub const HOTTEST_C: f64 = 225.0;

/// The chart of one seat.
#[derive(Clone, Debug)]
pub struct Chart {
    /// Which seat.
    pub seat: SeatKind,
    /// The job with this seat alone.
    pub job: Job,
    /// The plan with both parts at the temperature of the shop: the fit, and the temperature at which it locks.
    pub cold: SeatPlan,
    /// What the inner part comes from; none where it is left at the temperature of the shop.
    pub columns: Vec<Option<Medium>>,
    /// One row for each temperature of the outer part.
    pub rows: Vec<Row>,
}

/// One temperature of the outer part.
#[derive(Clone, Debug)]
pub struct Row {
    /// Its temperature as it leaves the oven; that of the shop where it is not warmed.
    pub outer: ThermodynamicTemperature,
    /// What each column gives: the plan, or why not.
    pub cells: Vec<Result<Box<Worked>, Sentence>>,
}

impl Chart {
    /// The cautions of every cell that can be done.
    pub fn cautions(&self) -> impl Iterator<Item = &Caution> {
        self.rows.iter().flat_map(|row| &row.cells).flatten().flat_map(|worked| &worked.cautions)
    }
}

/// The charts of a job, one a seat; the outer part at the temperatures of `outer`, the inner one from each of `media`.
///
/// Temperatures that do not lie above the shop's stand for a part that is not warmed; the shop's is always the first row.
///
/// # Errors
/// [`PlanError`] when the fit itself cannot be planned; a cell that cannot be says why.
pub fn charts(job: &Job, outer: &[ThermodynamicTemperature], media: &[Medium]) -> Result<Vec<Chart>, PlanError> {
    [(Piece::Housing, SeatKind::Housing), (Piece::Shaft, SeatKind::Shaft)]
        .into_iter()
        .filter(|(piece, _)| if *piece == Piece::Housing { job.housing.is_some() } else { job.shaft.is_some() })
        .filter_map(|(piece, seat)| job.with_seat_only(piece).map(|job| (job, seat)))
        .map(|(job, seat)| chart(job, seat, outer, media))
        .collect()
}

/// The rows that a chart has unless others are asked for, coolest first: whole tens from 40 °C to one beyond the limit of
/// the outer part, at most to 150 °C.
pub fn usual_rows(job: &Job) -> Vec<ThermodynamicTemperature> {
    let limit = |piece, seat| limits_of(job, seat, piece).map(|limit| limit.get::<degree_celsius>());
    let housing = job.housing.as_ref().and_then(|_| limit(Piece::Housing, SeatKind::Housing));
    let shaft = job.shaft.as_ref().and_then(|_| limit(Piece::Part, SeatKind::Shaft));
    let highest = housing.into_iter().chain(shaft).fold(40.0, f64::max);
    let last = (((highest / 10.0 + 1e-9).floor() + 1.0) as i32).min(15);
    (4..=last).map(|tens| celsius(10.0 * f64::from(tens))).collect()
}

fn chart(job: Job, seat: SeatKind, outer: &[ThermodynamicTemperature], media: &[Medium]) -> Result<Chart, PlanError> {
    let shop = job.bench.temperature;
    // Without treatments there is nothing to refuse, and a job with one seat gives a plan with one seat.
    let untreated = job.with_treatments(None, None).unwrap_or_else(|_| job.clone());
    let solved = SolvedSeats::default();
    let cold = plan_among(&untreated, Method::Auto, &solved)?.seats.swap_remove(0);
    let columns: Vec<Option<Medium>> = std::iter::once(None).chain(media.iter().cloned().map(Some)).collect();
    let warm = outer.iter().copied().filter(|outer| *outer > shop);
    let rows = std::iter::once(shop)
        .chain(warm)
        .map(|outer| {
            let cells = columns.iter().map(|medium| cell(&job, seat, outer, medium.as_ref(), &solved)).collect();
            Row { outer, cells }
        })
        .collect();
    Ok(Chart { seat, job, cold, columns, rows })
}

fn cell(
    job: &Job,
    seat: SeatKind,
    outer: ThermodynamicTemperature,
    medium: Option<&Medium>,
    solved: &SolvedSeats,
) -> Result<Box<Worked>, Sentence> {
    let (inner_piece, outer_piece) = super::options::pieces(seat);
    let words = |error: crate::job::TreatmentError| super::sentence::say(error.to_string());
    let chill =
        medium.map(|medium| job.treatment_in(inner_piece, medium, None, Hold::Settled)).transpose().map_err(words)?;
    let warm = (outer > job.bench.temperature).then(|| taken_out_at(job, outer_piece, outer)).transpose()?;
    run(job, chill, warm, solved).map(Box::new)
}

/// The outer part as it leaves an oven at this temperature.
fn taken_out_at(job: &Job, piece: Piece, outer: ThermodynamicTemperature) -> Result<Treatment, Sentence> {
    let words = |error: &dyn std::fmt::Display| super::sentence::say(error.to_string());
    let oven = embedded("oven").map_err(|error| words(&error))?;
    let ahead = warming(oven.temperature().high, outer).get::<kelvin>().min(OVEN_AHEAD_K);
    let setting = crate::plan::soaking::from_kelvin(outer.value + ahead);
    let lowest = oven.temperature().low;
    let setting = if setting < lowest { lowest } else { setting };
    job.treatment_in(piece, &oven, Some(setting), Hold::Reaches(outer)).map_err(|error| words(&error))
}
