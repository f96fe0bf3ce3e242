//! What was read beside what was expected, and the film that the readings speak for.
//!
//! The fit is one film coefficient, constant over the way, by least squares of the temperatures: what `film = "..."` in a job
//! takes, so that the job with it gives the fitted curve. Radiation, wrap and what the piece rests on stay as they are, in the
//! middle of their ranges. Its uncertainty comes from the curvature of the sum of squares (linear regression in the logarithm
//! of the film), with a coverage factor of 2 (JCGM 100, 6.3.3); it says nothing of a thermometer that reads wrong.

mod course;
mod fit;
mod own_medium;

pub use own_medium::{NoMedium, own_medium};

use super::PlanError;
use crate::job::{Job, Log, Piece, PieceReadings, treatment_of};
use crate::plan::Verdict;
use crate::quantity::{HeatTransfer, TemperatureInterval, ThermodynamicTemperature, Time, warming};
use course::Course;
use uom::si::thermodynamic_temperature::kelvin;

/// By how much a thermometer of a shop may read wrong, K.
///
/// Common practice, no published source.
const THERMOMETER_K: f64 = 2.0;

/// Points of a curve that is drawn.
const CURVE_POINTS: usize = 160;

/// What a log says of a job.
#[derive(Clone, Debug)]
pub struct LogPlan<'j> {
    /// The job.
    pub job: &'j Job,
    /// One for each piece that was read.
    pub pieces: Vec<PieceLog>,
    /// Rows without a value.
    pub empty_rows: usize,
    /// Verdict of the plan as the job stands.
    pub verdict_planned: Verdict,
    /// Verdict with every fitted film in the job; none where nothing could be fitted.
    pub verdict_fitted: Option<Verdict>,
}

/// What the readings of one piece say.
#[derive(Clone, Debug)]
pub struct PieceLog {
    /// The piece.
    pub piece: Piece,
    /// What it was put into.
    pub medium: String,
    /// Temperature of the medium in the job.
    pub medium_temperature: ThermodynamicTemperature,
    /// Temperature when it went in.
    pub start: ThermodynamicTemperature,
    /// Whether that was read, or is the shop's.
    pub start_read: bool,
    /// Each reading beside what was expected then.
    pub points: Vec<LogPoint>,
    /// The expected range, and the fitted curve, from 0 s on.
    pub curve: Vec<CurvePoint>,
    /// How far the middle of the expected range is off.
    pub expected_off: Deviation,
    /// Readings inside the expected range.
    pub inside: usize,
    /// Film of the expectation, slow end and quick end, half-way.
    pub expected_film: (HeatTransfer, HeatTransfer),
    /// The fitted film, or why there is none.
    pub fitted: Result<FittedFilm, NoFilm>,
    /// A stretch without readings that is long against the whole.
    pub gap: Option<(Time, Time)>,
    /// Time to the temperature that the plan counts on; none where no film was fitted, unless it is heated from within.
    pub target: Option<Target>,
}

/// A reading beside what was expected.
#[derive(Clone, Copy, Debug)]
pub struct LogPoint {
    /// Time since it went in.
    pub time: Time,
    /// What was read.
    pub read: ThermodynamicTemperature,
    /// Expected: slow end, middle, quick end of every range.
    pub expected: [ThermodynamicTemperature; 3],
    /// With the fitted film.
    pub fitted: Option<ThermodynamicTemperature>,
}

/// A point of the curves.
#[derive(Clone, Copy, Debug)]
pub struct CurvePoint {
    /// Time since it went in.
    pub time: Time,
    /// Slow end, middle, quick end of every range.
    pub expected: [ThermodynamicTemperature; 3],
    /// With the fitted film.
    pub fitted: Option<ThermodynamicTemperature>,
}

/// Readings less a curve.
#[derive(Clone, Copy, Debug)]
pub struct Deviation {
    /// Root of the mean of the squares.
    pub root_mean_square: TemperatureInterval,
    /// The largest, with its sign: positive where the piece was warmer than the curve.
    pub worst: TemperatureInterval,
    /// When.
    pub worst_at: Time,
}

/// A film that was fitted.
#[derive(Clone, Copy, Debug)]
pub struct FittedFilm {
    /// The film coefficient of convection.
    pub film: HeatTransfer,
    /// The film less and plus two standard uncertainties of its logarithm.
    pub range: (HeatTransfer, HeatTransfer),
    /// How far the fitted curve is off.
    pub off: Deviation,
    /// The films of the earlier and the later half of the readings, where they differ by more than they scatter.
    pub halves: Option<(HeatTransfer, HeatTransfer)>,
    /// Whether it stands at an end of what a job may state: the readings do not bound it.
    pub unbounded: bool,
}

/// Why no film was fitted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFilm {
    /// The piece is heated from within.
    Heated,
    /// The film of boiling nitrogen changes tenfold on the way.
    Boiling,
    /// The piece hardly moved: its readings say nothing of the film.
    Still,
}

/// The time to a temperature.
#[derive(Clone, Copy, Debug)]
pub struct Target {
    /// The temperature at which the plan takes it out, at the slow end.
    pub temperature: ThermodynamicTemperature,
    /// Time of the plan.
    pub planned: Time,
    /// Time with the fitted film; none where it is never reached, and where no film was fitted.
    pub fitted: Option<Time>,
}

/// Compares the readings of a log with their job.
///
/// # Errors
/// [`PlanError`] when a temperature lies outside a material's table.
pub fn compare<'j>(job: &'j Job, log: &Log) -> Result<LogPlan<'j>, PlanError> {
    let pieces = log.pieces.iter().map(|readings| piece(job, readings)).collect::<Result<Vec<_>, _>>()?;
    let mut fitted = job.clone();
    let mut any = false;
    for piece in &pieces {
        if let Ok(found) = &piece.fitted {
            fitted = course::with_film(&fitted, piece.piece, found.film);
            any = true;
        }
    }
    Ok(LogPlan {
        job,
        empty_rows: log.empty,
        verdict_planned: super::plan(job)?.verdict,
        verdict_fitted: any.then(|| super::plan(&fitted)).transpose()?.map(|plan| plan.verdict),
        pieces,
    })
}

fn piece(job: &Job, readings: &PieceReadings) -> Result<PieceLog, PlanError> {
    // The piece starts as it was read; in its medium the air of the shop no longer counts.
    let mut own = job.clone();
    own.bench.temperature = readings.start;
    let expected = Course { job: &own, piece: readings.piece };
    let last = readings.readings.iter().map(|reading| reading.time).fold(Time::default(), Time::max);
    let runs = expected.ends(last)?;
    let fitted = fit::film(&own, readings)?;
    let fitted_job = fitted.as_ref().ok().map(|found| course::with_film(&own, readings.piece, found.film));
    let fitted_course = fitted_job.as_ref().map(|job| Course { job, piece: readings.piece });
    let fitted_run = fitted_course.as_ref().map(|course| course.middle(last)).transpose()?;
    let at = |time: Time| CurvePoint {
        time,
        expected: [0, 1, 2].map(|end| temperature(runs[end].kelvin(time))),
        fitted: fitted_run.as_ref().map(|run| temperature(run.kelvin(time))),
    };
    let points: Vec<LogPoint> = readings
        .readings
        .iter()
        .map(|reading| {
            let CurvePoint { time, expected, fitted } = at(reading.time);
            LogPoint { time, read: reading.temperature, expected, fitted }
        })
        .collect();
    let steps = (0..=CURVE_POINTS).map(|step| last * (step as f64 / CURVE_POINTS as f64));
    let off: Vec<(Time, f64)> = points.iter().map(|p| (p.time, kelvins(p.read, p.expected[1]))).collect();
    let half_way = temperature(0.5 * (readings.start.get::<kelvin>() + expected.heads_for()?.get::<kelvin>()));
    let treatment = treatment_of(job, readings.piece);
    Ok(PieceLog {
        piece: readings.piece,
        medium: treatment.map(|treatment| treatment.medium.id().to_owned()).unwrap_or_default(),
        medium_temperature: treatment.map_or(readings.start, |treatment| treatment.temperature),
        start: readings.start,
        start_read: readings.start_read,
        curve: steps.map(at).collect(),
        expected_off: deviation(&off),
        inside: points.iter().filter(|point| is_inside(point)).count(),
        expected_film: expected.films(half_way)?,
        gap: readings.gap,
        target: target(&expected, fitted_course.as_ref())?,
        points,
        fitted,
    })
}

fn is_inside(point: &LogPoint) -> bool {
    let [slow, _, quick] = point.expected;
    let (low, high) = if slow < quick { (slow, quick) } else { (quick, slow) };
    point.read >= low && point.read <= high
}

/// When the plan takes it out, and when the fitted curve is as far.
fn target(expected: &Course<'_>, fitted: Option<&Course<'_>>) -> Result<Option<Target>, PlanError> {
    if fitted.is_none() && !expected.is_powered()? {
        return Ok(None);
    }
    let (temperature, planned) = expected.held()?;
    Ok(Some(Target { temperature, planned, fitted: fitted.and_then(|course| course.time_to(temperature)) }))
}

impl PieceLog {
    /// The last reading, where the plan has taken the piece out by then and it is colder, by more than a thermometer is off,
    /// than the plan would have it: the heater does not put in what the job says. None for a piece that is not heated from
    /// within, since a fitted film says that of it.
    pub fn behind(&self) -> Option<(&Target, &LogPoint)> {
        let target = self.target.as_ref().filter(|_| self.fitted.as_ref().is_err_and(|why| *why == NoFilm::Heated))?;
        let last = self.points.last().filter(|last| last.time > target.planned)?;
        (kelvins(target.temperature, last.read) > THERMOMETER_K).then_some((target, last))
    }
}

fn deviation(off: &[(Time, f64)]) -> Deviation {
    let squares: f64 = off.iter().map(|(_, off)| off * off).sum();
    let worst = off
        .iter()
        .fold((Time::default(), 0.0_f64), |worst, now| if now.1.abs() > worst.1.abs() { *now } else { worst });
    let step = TemperatureInterval::new::<uom::si::temperature_interval::kelvin>;
    Deviation {
        root_mean_square: step((squares / off.len().max(1) as f64).sqrt()),
        worst: step(worst.1),
        worst_at: worst.0,
    }
}

fn temperature(kelvins: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(kelvins)
}

fn kelvins(read: ThermodynamicTemperature, expected: ThermodynamicTemperature) -> f64 {
    warming(read, expected).get::<uom::si::temperature_interval::kelvin>()
}
