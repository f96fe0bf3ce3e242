//! The film that brings the curve nearest to the readings.

use super::course::{Course, with_film};
use super::{FittedFilm, NoFilm, deviation};
use crate::job::{FilmChoice, Job, PieceReadings, Reading, treatment_of};
use crate::plan::PlanError;
use crate::quantity::{HeatTransfer, Time};
use crate::stock::medium::{Film, Law};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::kelvin;

/// Films that a job may state, W/(m² K).
const RANGE: (f64, f64) = (0.5, 20_000.0);
/// Films that are tried before the search narrows, a factor of 1.7 apart.
const TRIED: usize = 21;
/// Width of the search at its end, in the logarithm of the film.
const NARROW: f64 = 1e-5;
/// Share by which the film is moved to see how much the curve moves.
const NUDGE: f64 = 1e-3;
/// Coverage factor of the stated range (JCGM 100, 6.3.3).
const COVERAGE: f64 = 2.0;
/// A film that is so near to an end of the range is the end.
const AT_END: f64 = 1e-3;
/// Least change of all readings from the start that says something of the film, K.
const LEAST_CHANGE_K: f64 = 2.0;
/// Readings that a half needs, and the factor by which halves differ that is worth telling.
const FEWEST_OF_HALF: usize = 3;
const TELLING: f64 = 1.25;
/// Ratio of the variance that a second film explains to that which is left, from which two films are better than one: the F
/// distribution with 1 and 6 degrees of freedom at 95 % (tables of statistics); with more readings it is stricter than that.
const F_RATIO: f64 = 5.99;

/// Golden section, `(√5 - 1)/2`.
const GOLDEN: f64 = 0.618_033_988_749_894_8;

/// Readings that a film is fitted to.
struct Fit<'a> {
    job: &'a Job,
    readings: &'a PieceReadings,
    of: &'a [Reading],
    /// Time at which the job's start temperature holds.
    from: Time,
}

/// What a fit found, with the standard uncertainty of the film's logarithm.
struct Found {
    log_film: f64,
    uncertainty: f64,
    residuals: Vec<f64>,
}

/// The film of all readings.
pub(super) fn film(job: &Job, readings: &PieceReadings) -> Result<Result<FittedFilm, NoFilm>, PlanError> {
    if let Some(why) = refused(job, readings) {
        return Ok(Err(why));
    }
    let fit = Fit { job, readings, of: &readings.readings, from: Time::default() };
    let found = fit.run()?;
    let [low, film, high] = [-COVERAGE, 0.0, COVERAGE].map(|k| coefficient(found.log_film + k * found.uncertainty));
    let off: Vec<(Time, f64)> =
        fit.of.iter().map(|reading| reading.time).zip(found.residuals.iter().copied()).collect();
    Ok(Ok(FittedFilm {
        film,
        range: (low, high),
        off: deviation(&off),
        halves: halves(&fit, &found)?,
        unbounded: [RANGE.0, RANGE.1].iter().any(|end| (found.log_film - end.ln()).abs() < AT_END),
    }))
}

fn refused(job: &Job, readings: &PieceReadings) -> Option<NoFilm> {
    let treatment = treatment_of(job, readings.piece)?;
    if treatment.power.get::<watt>() > 0.0 {
        return Some(NoFilm::Heated);
    }
    if matches!(&treatment.film, FilmChoice::OfMedium(Film { law: Law::BoilingNitrogen { .. }, .. })) {
        return Some(NoFilm::Boiling);
    }
    let start = readings.start.get::<kelvin>();
    let most = readings.readings.iter().map(|r| (r.temperature.get::<kelvin>() - start).abs()).fold(0.0, f64::max);
    (most < LEAST_CHANGE_K).then_some(NoFilm::Still)
}

fn coefficient(log_film: f64) -> HeatTransfer {
    HeatTransfer::new::<watt_per_square_meter_kelvin>(log_film.exp())
}

impl Fit<'_> {
    /// Readings less the curve with a film, K.
    fn residuals(&self, log_film: f64) -> Result<Vec<f64>, PlanError> {
        let job = with_film(self.job, self.readings.piece, coefficient(log_film));
        let last = self.of.iter().map(|reading| reading.time).fold(Time::default(), Time::max);
        let run = Course { job: &job, piece: self.readings.piece }.middle(last - self.from)?;
        Ok(self.of.iter().map(|r| r.temperature.get::<kelvin>() - run.kelvin(r.time - self.from)).collect())
    }

    fn squares(&self, log_film: f64) -> Result<f64, PlanError> {
        Ok(self.residuals(log_film)?.iter().map(|off| off * off).sum())
    }

    fn run(&self) -> Result<Found, PlanError> {
        let log_film = self.best()?;
        let residuals = self.residuals(log_film)?;
        let moved = self.residuals(log_film + NUDGE)?;
        let slopes: f64 = residuals.iter().zip(&moved).map(|(a, b)| ((b - a) / NUDGE).powi(2)).sum();
        let squares: f64 = residuals.iter().map(|off| off * off).sum();
        let variance = squares / (self.of.len().max(2) - 1) as f64;
        // Where the curve does not move with the film, any film does.
        let whole = (RANGE.1 / RANGE.0).ln();
        let uncertainty = if slopes > 0.0 { (variance / slopes).sqrt().min(whole) } else { whole };
        Ok(Found { log_film, uncertainty, residuals })
    }

    /// The best of a grid, then golden section between its neighbours.
    fn best(&self) -> Result<f64, PlanError> {
        let (low, high) = (RANGE.0.ln(), RANGE.1.ln());
        let step = (high - low) / (TRIED - 1) as f64;
        let mut best = (f64::INFINITY, low);
        for number in 0..TRIED {
            let log_film = low + step * number as f64;
            let squares = self.squares(log_film)?;
            if squares < best.0 {
                best = (squares, log_film);
            }
        }
        self.narrowed((best.1 - step).max(low), (best.1 + step).min(high))
    }

    fn narrowed(&self, mut low: f64, mut high: f64) -> Result<f64, PlanError> {
        let inner = |low: f64, high: f64| (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
        let (mut a, mut b) = inner(low, high);
        let (mut at_a, mut at_b) = (self.squares(a)?, self.squares(b)?);
        while high - low > NARROW {
            if at_a < at_b {
                high = b;
                (b, at_b) = (a, at_a);
                a = inner(low, high).0;
                at_a = self.squares(a)?;
            } else {
                low = a;
                (a, at_a) = (b, at_b);
                b = inner(low, high).1;
                at_b = self.squares(b)?;
            }
        }
        Ok(0.5 * (low + high))
    }
}

/// The films of the earlier and the later readings by themselves, where one film does not do for both.
///
/// The later half begins at the last reading of the earlier one: where one film fits that half badly, its curve ends elsewhere.
fn halves(whole: &Fit<'_>, found: &Found) -> Result<Option<(HeatTransfer, HeatTransfer)>, PlanError> {
    let (early, late) = whole.of.split_at(whole.of.len() / 2);
    if early.len() < FEWEST_OF_HALF || found.residuals.iter().all(|off| off.abs() < 1e-9) {
        return Ok(None);
    }
    let first = Fit { of: early, ..*whole };
    let first_found = first.run()?;
    let Some(split) = early.last() else { return Ok(None) };
    let mut later = whole.job.clone();
    later.bench.temperature = split.temperature;
    let second = Fit { job: &later, of: late, from: split.time, ..*whole };
    let second_found = second.run()?;
    let squares = |residuals: &[f64]| residuals.iter().map(|off| off * off).sum::<f64>();
    let (one, two) = (squares(&found.residuals), squares(&first_found.residuals) + squares(&second_found.residuals));
    let better = (one - two) * (whole.of.len() - 2) as f64 > F_RATIO * two;
    let telling = better && (first_found.log_film - second_found.log_film).abs() > TELLING.ln();
    Ok(telling.then(|| (coefficient(first_found.log_film), coefficient(second_found.log_film))))
}
