use super::conduction::{Conduction, Temperatures};
use super::error::HeatError;
use super::found::{ClearanceAt, HeatBalance, PartTemperatures, SeatClearance, StageTimes, TemperatureAt};
use super::run::{Meetings, of_part};
use super::seating::Growth;
use super::step::{MIDDLE, Step, parabola};
use crate::quantity::within;
use crate::quantity::{Length, Ratio, ThermodynamicTemperature, Time};
use uom::si::energy::joule;
use uom::si::f64::Energy;
use uom::si::length::meter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Temperatures of the section through its stages.
///
/// Times count from the beginning of the first stage. Between two steps a parabola through start, middle and end of the
/// step is read.
#[derive(Clone, Debug)]
pub struct HeatHistory<'c> {
    pub(super) conduction: &'c Conduction<'c>,
    start: Temperatures,
    pub(super) spans: Vec<Span>,
}

/// One stage.
#[derive(Clone, Debug)]
pub(super) struct Span {
    /// s since the first stage began.
    pub(super) from: f64,
    pub(super) lasting: f64,
    pub(super) tracks: Vec<Track>,
    pub(super) meetings: Meetings,
}

/// Steps of one set of bodies.
#[derive(Clone, Debug)]
pub(super) struct Track {
    set: usize,
    /// s since the stage began, at the start and the end of each step.
    pub(super) times: Vec<f64>,
    fields: Vec<Vec<f64>>,
    middles: Vec<Vec<f64>>,
    /// Heat through each face, J.
    heats: Vec<f64>,
}

impl Track {
    pub(super) fn new(set: usize, start: Vec<f64>, laws: usize) -> Self {
        Self { set, times: vec![0.0], fields: vec![start], middles: Vec::new(), heats: vec![0.0; laws] }
    }

    pub(super) fn push(&mut self, time: f64, end: &[f64], step: Step) {
        self.times.push(time);
        self.fields.push(end.to_vec());
        self.middles.push(step.middle);
        self.heats.iter_mut().zip(step.heats).for_each(|(sum, heat)| *sum += heat);
    }

    /// Temperatures at a time since the stage began.
    fn at(&self, time: f64) -> Vec<f64> {
        // A stage that was to last until the grip, and began gripped, has no steps.
        let Some(last) = self.middles.len().checked_sub(1) else { return self.fields[0].clone() };
        let step = self.times[1..].partition_point(|end| *end < time).min(last);
        let (from, to) = (self.times[step], self.times[step + 1]);
        let weights = parabola(MIDDLE, ((time - from) / (to - from)).clamp(0.0, 1.0));
        let lists = [&self.fields[step], &self.middles[step], &self.fields[step + 1]];
        (0..lists[0].len())
            .map(|row| weights.iter().zip(lists).map(|(weight, list)| weight * list[row]).sum())
            .collect()
    }
}

impl<'c> HeatHistory<'c> {
    pub(super) fn new(conduction: &'c Conduction<'c>, start: Temperatures) -> Self {
        Self { conduction, start, spans: Vec::new() }
    }

    pub(super) fn add(&mut self, span: Span) {
        self.spans.push(span);
    }

    /// Length of all stages so far, s.
    pub(super) fn lasting(&self) -> f64 {
        self.spans.last().map_or(0.0, |span| span.from + span.lasting)
    }

    /// Temperatures at the end, to begin another history with.
    pub fn end(&self) -> Temperatures {
        self.nodes_at(self.lasting())
    }

    /// Temperatures of all nodes at a time that the history holds, to begin another one with.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`].
    pub fn temperatures(&self, time: Time) -> Result<Temperatures, HeatError> {
        Ok(self.nodes_at(self.held(time)?))
    }

    fn nodes_at(&self, time: f64) -> Temperatures {
        let place = self.spans.iter().position(|span| time <= span.from + span.lasting);
        let mut temperatures = self.start.clone();
        let Some(span) = place.or(self.spans.len().checked_sub(1)).map(|place| &self.spans[place]) else {
            return temperatures;
        };
        for track in &span.tracks {
            let (set, all) = (&self.conduction.sets[track.set], track.at(time - span.from));
            for (&body, rows) in set.bodies.iter().zip(&set.rows) {
                temperatures.parts[body] = rows.iter().map(|&row| all[row]).collect();
            }
        }
        temperatures
    }

    /// A time in s that the history holds.
    pub(super) fn held(&self, time: Time) -> Result<f64, HeatError> {
        let (value, to) = (time.get::<second>(), self.lasting());
        let rounding = 1e-9 * to;
        let inside = value >= -rounding && value <= to + rounding;
        let refused = HeatError::NotHeld { what: "time", value, from: 0.0, to, unit: "s" };
        if inside { Ok(value.clamp(0.0, to)) } else { Err(refused) }
    }

    pub(super) fn part_held(&self, part: usize) -> Result<usize, HeatError> {
        let to = self.conduction.solids.len() - 1;
        let refused =
            HeatError::NotHeld { what: "part", value: part as f64, from: 0.0, to: to as f64, unit: "from the inside" };
        if part <= to { Ok(part) } else { Err(refused) }
    }

    /// Stages with the moments at which the parts met.
    pub fn stages(&self) -> Vec<StageTimes> {
        let stage = |span: &Span| {
            let since = |time: f64| Time::new::<second>(span.from + time);
            let Meetings { touch, grip } = span.meetings;
            StageTimes {
                from: since(0.0),
                to: since(span.lasting),
                first_touch: touch.map(since),
                grip: grip.map(since),
            }
        };
        self.spans.iter().map(stage).collect()
    }

    /// Times of the steps of a part, the beginning included.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`] for a part that the section does not have.
    pub fn times(&self, part: usize) -> Result<Vec<Time>, HeatError> {
        Ok(self.seconds(self.part_held(part)?).into_iter().map(Time::new::<second>).collect())
    }

    pub(super) fn seconds(&self, part: usize) -> Vec<f64> {
        let mut times = vec![0.0];
        for span in &self.spans {
            let own = span.tracks.iter().filter(|track| self.conduction.sets[track.set].bodies.contains(&part));
            times.extend(own.flat_map(|track| track.times[1..].iter().map(|time| span.from + time)));
        }
        times
    }

    /// A part (from the inside outward, from 0) at a time.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`].
    pub fn part(&self, part: usize, time: Time) -> Result<PartTemperatures, HeatError> {
        let (part, nodes) = (self.part_held(part)?, self.temperatures(time)?);
        let (nodes, weights) = (&nodes.parts[part], &self.conduction.averages[part]);
        let mean = |weights: &[f64]| kelvins(weights.iter().zip(nodes).map(|(weight, t)| weight * t).sum());
        Ok(PartTemperatures {
            mean: mean(&weights.volume),
            tube: mean(&weights.tube),
            least: kelvins(nodes.iter().copied().fold(f64::INFINITY, f64::min)),
            most: kelvins(nodes.iter().copied().fold(f64::NEG_INFINITY, f64::max)),
            inside: weights.inside.as_deref().map(mean),
            outside: mean(&weights.outside),
        })
    }

    /// Temperatures of all nodes of a part with their places.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`].
    pub fn nodes(&self, part: usize, time: Time) -> Result<Vec<TemperatureAt>, HeatError> {
        let (part, nodes) = (self.part_held(part)?, self.temperatures(time)?);
        let places = &self.conduction.model.bodies[part].mesh.nodes;
        let at = |(&[radius, axial], &t): (&[f64; 2], &f64)| TemperatureAt {
            diameter: metres(2.0 * radius),
            position: metres(axial),
            temperature: kelvins(t),
        };
        Ok(places.iter().zip(&nodes.parts[part]).map(at).collect())
    }

    /// Clearance of a contact (from the inside outward, from 0) at a time, for a diametral interference at 20 °C.
    ///
    /// While the parts are apart it is the clearance that they would have in one another. Where it is below zero, they touch
    /// and press.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`]; an interference out of range.
    pub fn clearance(
        &self,
        contact: usize,
        interference: Length,
        growth: Growth,
        time: Time,
    ) -> Result<SeatClearance, HeatError> {
        let conduction = self.conduction;
        let to = conduction.model.touches.len() as f64 - 1.0;
        let touch = conduction.model.touches.get(contact).ok_or({
            HeatError::NotHeld { what: "contact", value: contact as f64, from: 0.0, to, unit: "from the inside" }
        })?;
        let reach = 2e3 * touch.radius;
        let interference = within("interference", interference.get::<meter>() * 1e3, (-reach, reach), "mm")? / 2e3;
        let nodes = self.temperatures(time)?;
        let mut gaps = vec![-interference; touch.len()];
        for (k, sign) in [-1.0, 1.0].into_iter().enumerate() {
            let table = &conduction.solids[contact + k].strain;
            let strain: Vec<f64> = nodes.parts[contact + k].iter().map(|t| table.at(*t)).collect();
            conduction.influence(growth)[contact][k].add(&strain, sign, &mut gaps);
        }
        let sum: f64 = gaps.iter().zip(&touch.area).map(|(gap, area)| gap * area).sum();
        let along = touch.axial.iter().zip(&gaps);
        Ok(SeatClearance {
            along: along.map(|(&z, &gap)| ClearanceAt { position: metres(z), clearance: metres(2.0 * gap) }).collect(),
            mean: metres(2.0 * sum / touch.whole_area()),
            least: metres(2.0 * gaps.into_iter().fold(f64::INFINITY, f64::min)),
        })
    }

    /// Mean growth of the seat of a part (from the inside outward, from 0) since 20 °C, as a share of its diameter: at its
    /// outer contact, or at its inner one where it is the last.
    ///
    /// # Errors
    /// [`HeatError::NotHeld`].
    pub fn seat_growth(&self, part: usize, growth: Growth, time: Time) -> Result<Ratio, HeatError> {
        let (part, nodes) = (self.part_held(part)?, self.temperatures(time)?);
        let last = self.conduction.model.touches.len() - 1;
        let (contact, side) = if part <= last { (part, 0) } else { (last, 1) };
        let touch = &self.conduction.model.touches[contact];
        let table = &self.conduction.solids[part].strain;
        let strain: Vec<f64> = nodes.parts[part].iter().map(|t| table.at(*t)).collect();
        let mut moved = vec![0.0; touch.len()];
        self.conduction.influence(growth)[contact][side].add(&strain, 1.0, &mut moved);
        let sum: f64 = moved.iter().zip(&touch.area).map(|(moved, area)| moved * area).sum();
        Ok(Ratio::new::<ratio>(sum / (touch.whole_area() * touch.radius)))
    }

    /// Where the heat of a stage (from 0) went; `None` when there is no such stage.
    pub fn balance(&self, stage: usize) -> Option<HeatBalance> {
        let span = self.spans.get(stage)?;
        let parts = self.conduction.solids.len();
        let none = Energy::new::<joule>(0.0);
        let mut balance = HeatBalance { gained: vec![none; parts], faces: vec![[none; 5]; parts], missing: none };
        for track in &span.tracks {
            let set = &self.conduction.sets[track.set];
            for (place, &body) in set.bodies.iter().enumerate() {
                let ends = [&track.fields[0], &track.fields[track.fields.len() - 1]];
                let [before, after] = ends.map(|field| self.heat_held(track.set, place, field));
                balance.gained[body] = Energy::new::<joule>(after - before);
                balance.faces[body] = of_part(&track.heats, place).map(Energy::new::<joule>);
                balance.missing += balance.gained[body];
                balance.faces[body].iter().for_each(|heat| balance.missing -= *heat);
            }
        }
        Some(balance)
    }

    /// Heat of a body, J: `1ᵀ M e` over its own rows, which no other body shares.
    fn heat_held(&self, set: usize, place: usize, field: &[f64]) -> f64 {
        let set = &self.conduction.sets[set];
        let capacity = &self.conduction.solids[set.bodies[place]].capacity;
        let mut enthalpy = vec![0.0; field.len()];
        for &row in &set.rows[place] {
            enthalpy[row] = capacity.value_and_integral(field[row]).1;
        }
        let mut held = vec![0.0; field.len()];
        set.sparse.mass_times(&enthalpy, &mut held);
        held.iter().sum()
    }
}

fn kelvins(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(value)
}

fn metres(value: f64) -> Length {
    Length::new::<meter>(value)
}
