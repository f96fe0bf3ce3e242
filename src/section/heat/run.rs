//! A history: stages one after another, each set of bodies with steps of its own.

use super::conduction::{Conduction, Temperatures, count};
use super::error::HeatError;
use super::face::Face;
use super::history::{HeatHistory, Span, Track};
use super::seating;
use super::stage::{Stage, Until};
use super::step::{MIDDLE, Step, Stepper, parabola};
use super::surface::Surfaces;
use super::system::{Seats, System, hats, read};
use crate::quantity::positive;
use crate::section::model::Model;
use uom::si::time::second;

/// Most steps of a stage; a history takes some fifty. Every step is kept.
const STEPS: usize = 10_000;
/// How far beyond a table a temperature may stray, K: the last digits of a step, and what a sudden chill makes the
/// parabolas of an element overshoot. The table's end value holds there.
const STRAY_K: f64 = 1.0;
/// How close to zero the mean gap is brought at the grip, m.
const GRIPPED: f64 = 1e-11;
/// Trials for the place of the grip in its step.
const CORRECTIONS: usize = 20;

/// The moments at which the parts met, s since the stage began.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Meetings {
    pub(super) touch: Option<f64>,
    pub(super) grip: Option<f64>,
}

impl Conduction<'_> {
    /// Follows the temperatures through stages.
    ///
    /// **Valid for** axisymmetric conduction, isotropic, without sources; bodies at rest in each stage.
    ///
    /// # Errors
    /// [`HeatError`] for values out of range, a part that leaves the temperatures of a table, and laws that cannot be
    /// followed.
    pub fn run(&self, start: &Temperatures, stages: &[Stage<'_>]) -> Result<HeatHistory<'_>, HeatError> {
        let nodes = |parts: &[Vec<f64>]| parts.iter().map(Vec::len).sum::<usize>();
        let needed = self.model.bodies.iter().map(|body| body.mesh.nodes.len()).sum();
        count("temperatures at the start", nodes(&start.parts), needed)?;
        let mut history = HeatHistory::new(self, start.clone());
        for (k, stage) in stages.iter().enumerate() {
            let span = self.stage(k + 1, &history.end(), stage, history.lasting())?;
            history.add(span);
        }
        Ok(history)
    }

    fn stage(&self, number: usize, start: &Temperatures, stage: &Stage<'_>, from: f64) -> Result<Span, HeatError> {
        count("lists of faces", stage.around.len(), self.solids.len())?;
        stage.around.iter().try_for_each(|faces| faces.check())?;
        let diameters: Vec<f64> = self.model.touches.iter().map(|touch| 2.0 * touch.radius).collect();
        let seating = stage.seating.as_ref().map(|seating| seating.check(&diameters)).transpose()?;
        let (lasting, until_grip) = match stage.until {
            Until::Elapsed(time) => (time, false),
            Until::Grips { at_most } => (at_most, true),
        };
        let lasting = positive("length of a stage", lasting.get::<second>(), "s")?;
        let together = self.sets.len() - 1;
        let sets = if seating.is_some() { together..together + 1 } else { 0..together };
        let mut span = Span { from, lasting, tracks: Vec::new(), meetings: Meetings::default() };
        for set in sets {
            let system = self.system(set, stage, seating.clone());
            let temperatures = system.gather(start);
            let mut run = Run { system: &system, conduction: self, number, lasting, until_grip };
            let (track, meetings) = run.follow(set, temperatures)?;
            if until_grip && meetings.grip.is_some() {
                span.lasting = track.times[track.times.len() - 1];
            }
            span.meetings = meetings;
            span.tracks.push(track);
        }
        Ok(span)
    }

    pub(super) fn system<'a>(&'a self, set: usize, stage: &Stage<'a>, seating: Option<seating::Checked>) -> System<'a> {
        let set = &self.sets[set];
        let shoulder = seating.as_ref().is_some_and(|law| law.shoulder.is_some());
        let surfaces = Surfaces::new(self.model, &self.edges, (&set.bodies, &set.rows), stage, shoulder);
        let seats = seating.map(|law| {
            let (hats, areas) = hats(self.model);
            let influence = self.influence(law.growth).iter().map(|[inner, outer]| [inner, outer]).collect();
            Seats { law, influence, hats, areas }
        });
        System::new(set, &self.solids, surfaces, seats)
    }
}

impl System<'_> {
    /// Temperatures in the order of the rows.
    pub(super) fn gather(&self, temperatures: &Temperatures) -> Vec<f64> {
        let mut gathered = vec![0.0; self.set.sparse.size()];
        for (&body, rows) in self.set.bodies.iter().zip(&self.set.rows) {
            rows.iter().zip(&temperatures.parts[body]).for_each(|(&row, t)| gathered[row] = *t);
        }
        gathered
    }

    /// Least gap anywhere, and the largest mean gap of a contact.
    fn least_and_mean_gap(&self, temperatures: &[f64]) -> Option<[f64; 2]> {
        let seats = self.seats.as_ref()?;
        let gaps = self.gaps(temperatures);
        let (mut from, mut mean) = (0, f64::NEG_INFINITY);
        for hats in &seats.hats {
            let of = from..from + hats;
            let area: f64 = seats.areas[of.clone()].iter().sum();
            let sum: f64 = gaps[of.clone()].iter().zip(&seats.areas[of]).map(|(gap, area)| gap * area).sum();
            mean = mean.max(sum / area);
            from += hats;
        }
        Some([gaps.into_iter().fold(f64::INFINITY, f64::min), mean])
    }
}

/// One set of bodies in one stage.
struct Run<'a> {
    system: &'a System<'a>,
    conduction: &'a Conduction<'a>,
    number: usize,
    lasting: f64,
    until_grip: bool,
}

impl Run<'_> {
    fn follow(&mut self, set: usize, start: Vec<f64>) -> Result<(Track, Meetings), HeatError> {
        self.check_range(&start)?;
        let mut track = Track::new(set, start.clone(), self.system.surfaces.laws.len());
        let mut stepper = Stepper::new(self.system, start, (self.conduction.tolerance, self.lasting));
        let mut gaps = self.system.least_and_mean_gap(&stepper.temperatures);
        let [mut touch, mut grip] = gaps.map_or([None; 2], |gaps| gaps.map(|gap| (gap <= 0.0).then_some(0.0)));
        for _ in 0..STEPS {
            let left = self.lasting - stepper.time;
            let gripped = self.until_grip && grip.is_some();
            if gripped || left <= 1e-12 * self.lasting {
                return Ok((track, Meetings { touch, grip }));
            }
            let not_followed = HeatError::NotFollowed { stage: self.number, time_s: stepper.time };
            let mut step = stepper.step(left).ok_or(not_followed)?;
            if let Some(start) = gaps.filter(|_| touch.is_none() || grip.is_none()) {
                let middle = self.system.least_and_mean_gap(&step.middle).unwrap_or_default();
                let end = self.system.least_and_mean_gap(&stepper.temperatures).unwrap_or_default();
                let from = stepper.time - step.length;
                let crossing = |k: usize| zero([start[k], middle[k], end[k]]).map(|share| from + share * step.length);
                touch = touch.or_else(|| crossing(0));
                grip = grip.or_else(|| crossing(1));
                gaps = Some(end);
                if let Some(at) = grip.filter(|_| self.until_grip) {
                    step = self.meet(&mut stepper, start[1], (at - from) / step.length);
                    grip = Some(stepper.time);
                    // The parabola's crossing may lie a rounding beyond.
                    touch = touch.map(|touch| touch.min(stepper.time));
                }
            }
            self.check_range(&stepper.temperatures)?;
            track.push(stepper.time, &stepper.temperatures, step);
        }
        Err(HeatError::NotFollowed { stage: self.number, time_s: stepper.time })
    }

    /// Ends the last step with the grip, near a share of it.
    fn meet(&self, stepper: &mut Stepper<'_>, gap: f64, mut share: f64) -> Step {
        let mean = |share: f64| self.system.least_and_mean_gap(&stepper.within(share)).unwrap_or_default()[1];
        // The gap is gone at the end of the step, or was in its middle.
        let end = [1.0, MIDDLE].map(|share| (share, mean(share)));
        let (mut low, mut high) = ((0.0, gap), if end[0].1 <= 0.0 { end[0] } else { end[1] });
        for _ in 0..CORRECTIONS {
            let mean = mean(share);
            if mean.abs() <= GRIPPED {
                break;
            }
            if mean > 0.0 {
                low = (share, mean);
            } else {
                high = (share, mean);
            }
            share = low.0 + (high.0 - low.0) * (low.1 / (low.1 - high.1)).clamp(0.05, 0.95);
        }
        stepper.cut(share)
    }

    /// Refuses temperatures that a table does not cover.
    fn check_range(&self, temperatures: &[f64]) -> Result<(), HeatError> {
        let set = self.system.set;
        for (place, solid) in self.system.solids.iter().enumerate() {
            let own = set.rows[place].iter().map(|&row| temperatures[row]);
            let ends = own.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), t| (low.min(t), high.max(t)));
            let part = part_name(self.conduction.model, set.bodies[place]);
            for (property, table) in [
                ("heat capacity", &solid.capacity),
                ("conductivity", &solid.conductivity),
                ("free thermal strain", &solid.strain),
            ] {
                covered(part, property, ends, table.range())?;
            }
            if let Some(seats) = &self.system.seats {
                covered(part, "air in the gap", ends, seats.law.air_range())?;
            }
        }
        for point in &self.system.surfaces.surfaces {
            let law = &self.system.surfaces.laws[point.law];
            if law.law.range().is_some() {
                let surface = read(temperatures, &point.rows, &point.shape);
                let part = part_name(self.conduction.model, law.body);
                covered(part, "film coefficient", (surface, surface), law.law.range())?;
            }
        }
        Ok(())
    }
}

pub(super) fn part_name(model: &Model, body: usize) -> &'static str {
    model.outlines.bodies[body].part
}

fn covered(
    part: &'static str,
    property: &'static str,
    (low, high): (f64, f64),
    range: Option<(f64, f64)>,
) -> Result<(), HeatError> {
    let Some((from, to)) = range else { return Ok(()) };
    let reached = if low < from - STRAY_K { low } else { high };
    if low >= from - STRAY_K && high <= to + STRAY_K {
        return Ok(());
    }
    let celsius = |kelvin: f64| kelvin - 273.15;
    let (reached_c, from_c, to_c) = (celsius(reached), celsius(from), celsius(to));
    Err(HeatError::OutsideTable { part, property, reached_c, from_c, to_c })
}

/// Where the parabola through values at start, middle and end first falls to zero, as a share of the step.
fn zero([start, middle, end]: [f64; 3]) -> Option<f64> {
    if start <= 0.0 || (middle > 0.0 && end > 0.0) {
        return None;
    }
    let at = |x: f64| parabola(MIDDLE, x).iter().zip([start, middle, end]).map(|(w, v)| w * v).sum::<f64>();
    let (mut low, mut high) = (0.0, if middle <= 0.0 { MIDDLE } else { 1.0 });
    // Some 50 halvings reach the last digit; there is one such search in a history.
    while high - low > 1e-15 {
        let half = (low + high) / 2.0;
        if half <= low || half >= high {
            break;
        }
        if at(half) > 0.0 { low = half } else { high = half }
    }
    Some(high)
}

/// Heat through the faces of a part among those of all laws.
pub(super) fn of_part(heats: &[f64], place: usize) -> [f64; 5] {
    let faces = Face::ALL.len();
    std::array::from_fn(|k| heats[place * faces + k])
}
