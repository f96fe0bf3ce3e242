use super::balance::Balance;
use super::error::ThermalError;
use super::lumped::{Body, CheckedBody};
use super::stage::{CheckedStage, CheckedUntil, NEAREST_K, Stage};
use super::track::{Goal, Track};
use crate::quantity::{ThermodynamicTemperature, Time, positive};
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Rounding of times, as a share of the length of a history, that still counts as inside it.
const TIME_ROUNDING: f64 = 1e-9;

/// Temperature of one lumped body through a sequence of stages.
///
/// Within a stage the surroundings do not change, so the temperature rises or falls throughout and stays between
/// the start and the temperature that it approaches. Where heat capacity and film are constant and nothing
/// radiates the closed form is used, otherwise an adaptive Runge-Kutta pair whose error stays below 1e-6 of the change
/// of temperature (held against the closed form and against independent solutions in the tests).
#[derive(Clone, Debug, PartialEq)]
pub struct History {
    start: f64,
    stages: Vec<Leg>,
}

#[derive(Clone, Debug, PartialEq)]
struct Leg {
    begin: f64,
    end: f64,
    from: f64,
    to: f64,
    track: Track,
    record: StageRecord,
}

/// What is worth reporting about one stage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StageRecord {
    /// Time since the start of the history at which the stage ends.
    pub ends_at: Time,
    /// Temperature of the body then.
    pub temperature: ThermodynamicTemperature,
    /// Temperature that the body would approach if the stage went on.
    pub approaches: ThermodynamicTemperature,
    /// Biot number `(h + h_radiation) L / k`, h_radiation at the mean of the stage's first and last temperature, the
    /// conductivity midway between the first and the one at which the stage is to end, or else which it approaches.
    pub biot: f64,
    /// Time constant `m c / (A h_eff)` with the heat capacity and h_radiation at that mean temperature.
    pub time_constant: Time,
}

impl History {
    /// Takes `body` from `start` through `stages`, each beginning where the one before it ended.
    ///
    /// Whatever the length of a stage, its cost is some tens of steps: the solver stops when the body is at rest.
    ///
    /// # Errors
    /// Numbers that are not positive or out of range; [`ThermalError::Property`] when a stage leaves a property table;
    /// [`ThermalError::NotReachable`] and [`ThermalError::TooSlow`] for a target that is not met.
    pub fn run(body: &Body, start: ThermodynamicTemperature, stages: &[Stage]) -> Result<Self, ThermalError> {
        let body = body.check()?;
        let start = positive("temperature at the start", start.get::<kelvin>(), "K")?;
        let mut history = Self { start, stages: Vec::with_capacity(stages.len()) };
        for stage in stages {
            let (begin, from) = history.last();
            history.stages.push(Leg::run(&body, &stage.check()?, begin, from)?);
        }
        Ok(history)
    }

    /// Temperature at the beginning.
    pub fn start(&self) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<kelvin>(self.start)
    }

    /// Time and temperature at the end of the last stage.
    pub fn end(&self) -> (Time, ThermodynamicTemperature) {
        let (time, temperature) = self.last();
        (Time::new::<second>(time), ThermodynamicTemperature::new::<kelvin>(temperature))
    }

    /// Time and temperature at the end of a stage, counted from zero; `None` when there is no such stage.
    pub fn stage_end(&self, index: usize) -> Option<(Time, ThermodynamicTemperature)> {
        self.stage(index).map(|record| (record.ends_at, record.temperature))
    }

    /// Record of a stage, counted from zero; `None` when there is no such stage.
    pub fn stage(&self, index: usize) -> Option<&StageRecord> {
        self.stages.get(index).map(|leg| &leg.record)
    }

    /// Temperature at a time since the start.
    ///
    /// # Errors
    /// [`ThermalError::TimeOutside`] before the start or after the end.
    pub fn temperature_at(&self, time: Time) -> Result<ThermodynamicTemperature, ThermalError> {
        let asked_s = time.get::<second>();
        let end_s = self.last().0;
        if asked_s >= 0.0 && asked_s <= end_s * (1.0 + TIME_ROUNDING) {
            Ok(ThermodynamicTemperature::new::<kelvin>(self.kelvin_at(asked_s)))
        } else {
            Err(ThermalError::TimeOutside { asked_s, end_s })
        }
    }

    /// Temperature (K) at a time (s) that the caller knows to lie in the history; the end value beyond it.
    pub(crate) fn kelvin_at(&self, time: f64) -> f64 {
        let after = self.stages.partition_point(|leg| leg.end < time);
        match self.stages.get(after) {
            Some(leg) => leg.at(time),
            None => self.last().1,
        }
    }

    /// First time at which the body has this temperature; `None` when it never has.
    pub fn first_time_at(&self, temperature: ThermodynamicTemperature) -> Option<Time> {
        let target = temperature.get::<kelvin>();
        self.stages.iter().find_map(|leg| leg.time_of(target)).map(Time::new::<second>)
    }

    fn last(&self) -> (f64, f64) {
        self.stages.last().map_or((0.0, self.start), |leg| (leg.end, leg.to))
    }
}

impl Leg {
    fn run(body: &CheckedBody, stage: &CheckedStage, begin: f64, from: f64) -> Result<Self, ThermalError> {
        let target = match stage.until {
            CheckedUntil::Reaches { target, .. } => Some(target),
            _ => None,
        };
        let balance = Balance::new(body, stage, from, target)?;
        balance.check_covered(from)?;
        let (track, length) = followed(&balance, from, stage)?;
        let to = track.at(length);
        balance.check_covered(to)?;
        let middle = 0.5 * (from + to);
        let record = StageRecord {
            ends_at: Time::new::<second>(begin + length),
            temperature: ThermodynamicTemperature::new::<kelvin>(to),
            approaches: ThermodynamicTemperature::new::<kelvin>(balance.limit()),
            biot: balance.biot(middle),
            time_constant: Time::new::<second>(balance.time_constant(middle)),
        };
        Ok(Self { begin, end: begin + length, from, to, track, record })
    }

    /// Temperature at a time since the start of the history, kept between the ends of the stage: the solver's last
    /// digits may stray beyond the end.
    fn at(&self, time: f64) -> f64 {
        self.track.at(time - self.begin).clamp(self.from.min(self.to), self.from.max(self.to))
    }

    fn time_of(&self, target: f64) -> Option<f64> {
        let time = self.begin + self.track.time_of(target)?;
        (time <= self.end).then_some(time)
    }
}

/// Follows one stage to its end, and gives the time that it takes.
fn followed(balance: &Balance, from: f64, stage: &CheckedStage<'_>) -> Result<(Track, f64), ThermalError> {
    match stage.until {
        CheckedUntil::Elapsed(time) => {
            let (track, _) = Track::follow(balance, from, Goal { temperature: None, longest: time })?;
            Ok((track, time))
        }
        CheckedUntil::Reaches { target, longest } => reached(balance, from, target, longest),
        CheckedUntil::Settled { within } => {
            let limit = balance.limit();
            if (from - limit).abs() <= within {
                return Ok((Track::Still { at: from }, 0.0));
            }
            let target = limit + within.copysign(from - limit);
            reached(balance, from, target, f64::INFINITY)
        }
    }
}

fn reached(balance: &Balance, from: f64, target: f64, longest: f64) -> Result<(Track, f64), ThermalError> {
    let limit = balance.limit();
    let there = (target - from).abs() < NEAREST_K;
    if there {
        return Ok((Track::Still { at: from }, 0.0));
    }
    let on_the_way = (target - from) * (limit - target) > 0.0 && (limit - target).abs() >= 0.999 * NEAREST_K;
    if !on_the_way {
        return Err(ThermalError::NotReachable { target_k: target, start_k: from, at_most_k: limit });
    }
    balance.check_covered(target)?;
    let (track, passed) = Track::follow(balance, from, Goal { temperature: Some(target), longest })?;
    match passed {
        Some(time) => Ok((track, time)),
        None => Err(ThermalError::TooSlow { target_k: target, longest_s: longest, reached_k: track.at(longest) }),
    }
}
