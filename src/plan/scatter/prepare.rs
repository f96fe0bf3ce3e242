//! A seat made ready: its distributions, its tables, and how well these agree with direct histories.

use super::ScatterError;
use super::distribution::{Distribution, Random};
use super::evaluate::Piece;
use super::inputs::{InputKind, InputUsed, Planned, inputs, piece_kinds};
use super::model::Output;
use super::piece::{PieceRanges, Tabled, Treated, bench_times};
use super::worker::Worker;
use crate::job::{Job, ServiceEnd};
use crate::plan::clearance::Diameters;
use crate::plan::joint::{Joint, Side};
use crate::plan::model::SeatKind;
use crate::plan::push::{Presser, Yielding};
use crate::plan::seat::{placing, turning};
use crate::plan::subject::Subject;
use crate::plan::track::time_in_medium;
use crate::plan::{Method, PlanError, SolvedSeats};
use crate::quantity::{Length, Time};
use crate::thermal::BearingPart;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Draws that are planned directly as well, and the difference from which the tables are made finer, m.
const CHECKED: usize = 32;
const WANTED_M: f64 = 0.05e-6;
/// How often the tables are made twice as fine at most.
const FINEST: u32 = 2;
/// Random numbers of the checked draws.
const CHECK_SEED: u64 = 0x5EA7;

/// What becomes of one drawn part: a value for each [`Output`], SI units; infinity for a window beyond what is followed.
pub type Drawn = [f64; Output::COUNT];

/// A seat of which parts can be drawn.
pub struct SeatModel<'j> {
    pub(super) seat: SeatKind,
    pub(super) inputs: Vec<InputUsed>,
    pub(super) distributions: Vec<Distribution>,
    pub(super) inner: Piece<'j>,
    pub(super) outer: Piece<'j>,
    /// Placing clearance, m.
    pub(super) placing: f64,
    /// Force for each metre of interference at a friction of one, N/m.
    pub(super) stiffness: f64,
    /// The inner part where it may take a set, which lowers the force.
    pub(super) yielding: Option<Yielding>,
    /// Interference that smoothing takes away, m.
    pub(super) smoothed: f64,
    /// Strains of inner and outer part at the ends of service.
    pub(super) service: Vec<(Output, (f64, f64))>,
    /// What turning takes from the interference, m.
    pub(super) turning: f64,
    pub(super) bench_times: Vec<f64>,
    /// Largest difference of a checked draw from its direct history, m.
    pub(super) table_error: f64,
}

impl SeatModel<'_> {
    /// What is drawn, in the order of [`InputKind::ALL`].
    pub fn inputs(&self) -> &[InputUsed] {
        &self.inputs
    }

    /// The inputs of one part, SI units.
    pub fn draw(&self, random: &mut Random) -> Vec<f64> {
        self.distributions.iter().map(|input| input.draw(random)).collect()
    }

    /// The largest difference between table and direct history of the draws that were checked.
    pub fn table_error(&self) -> Length {
        Length::new::<meter>(self.table_error)
    }

    /// Whether a part is chilled or warmed.
    pub fn is_treated(&self) -> bool {
        [&self.inner, &self.outer].iter().any(|piece| matches!(piece, Piece::Treated(..)))
    }

    /// What its parts can be asked for.
    pub(super) fn outputs(&self) -> Vec<Output> {
        let mut all = vec![Output::Interference, Output::Clearance];
        if self.is_treated() {
            all.push(Output::Window);
        }
        all.push(Output::Force);
        all.extend(self.service.iter().map(|(output, _)| *output));
        all
    }

    /// The largest difference of the checked draws, m.
    fn checked(&self, worker: &impl Worker) -> Result<f64, PlanError> {
        if !self.is_treated() {
            return Ok(0.0);
        }
        let carry = |inputs: &[f64]| Time::new::<second>(inputs[InputKind::Carry.index()]);
        let differences = worker.each(CHECKED, |number| {
            let inputs = self.draw(&mut Random::new(CHECK_SEED, number as u64));
            let directly = self.clearance_directly(&inputs, carry(&inputs))?.get::<meter>();
            Ok::<_, PlanError>((self.evaluate(&inputs)[Output::Clearance.index()] - directly).abs())
        });
        differences.into_iter().try_fold(0.0_f64, |most, difference| Ok(most.max(difference?)))
    }
}

/// Makes a seat ready, with tables as fine as the checked draws want them.
pub(super) fn prepare<'j>(
    job: &'j Job,
    joint: &Joint<'j>,
    method: (Method, &SolvedSeats),
    worker: &impl Worker,
) -> Result<SeatModel<'j>, ScatterError> {
    let presser = Presser::new(job, joint, method)?;
    let (stiffness, shape) = presser.stiffness()?;
    let hold = |side: &Side<'_>| time_in_medium(job, joint.seat, side.piece, side.treatment);
    let holds = (hold(&joint.inner)?, hold(&joint.outer)?);
    let inputs = inputs(job, joint, &Planned { holds, shape })?;
    let distributions: Vec<Distribution> = inputs.iter().map(|input| input.distribution.clone()).collect();
    let mut model = SeatModel {
        seat: joint.seat,
        inner: still(job, &joint.inner),
        outer: still(job, &joint.outer),
        placing: placing(job, joint, &Diameters::new(joint)).get::<meter>(),
        stiffness,
        yielding: presser.yielding(),
        smoothed: smoothed(job, joint),
        service: service(job, joint),
        turning: turning(job, joint)?.get::<meter>(),
        bench_times: bench_times(),
        table_error: 0.0,
        inputs,
        distributions,
    };
    for finer in 0..=FINEST {
        model.inner = piece(job, joint, (&joint.inner, true), (&model.distributions, 1 << finer), worker)?;
        model.outer = piece(job, joint, (&joint.outer, false), (&model.distributions, 1 << finer), worker)?;
        model.table_error = model.checked(worker)?;
        if model.table_error <= WANTED_M {
            break;
        }
    }
    Ok(model)
}

fn still<'j>(job: &Job, side: &Side<'j>) -> Piece<'j> {
    Piece::Still(side.expansion.at_inside(job.bench.temperature.get::<kelvin>()))
}

fn piece<'j>(
    job: &'j Job,
    joint: &Joint<'j>,
    (side, inner): (&Side<'j>, bool),
    (distributions, finer): (&[Distribution], usize),
    worker: &impl Worker,
) -> Result<Piece<'j>, PlanError> {
    let Some(treatment) = side.treatment else { return Ok(still(job, side)) };
    let of = |kind: InputKind| distributions[kind.index()].ends();
    let [medium, film, hold] = piece_kinds(inner);
    let ranges = PieceRanges {
        medium: of(medium),
        film: of(film),
        hold: of(hold),
        air: of(InputKind::AirFilm),
        carry: of(InputKind::Carry),
    };
    let counts = if joint.seat == SeatKind::Housing { BearingPart::OuterRing } else { BearingPart::InnerRing };
    let treated =
        Treated::new(job, Subject::new(job, side.piece)?, (treatment, counts, side.expansion.clone()), &ranges)?;
    let tabled = Tabled::new(&treated, &ranges, finer, worker)?;
    Ok(Piece::Treated(Box::new(treated), Box::new(tabled)))
}

fn smoothed(job: &Job, joint: &Joint<'_>) -> f64 {
    let both = joint.inner.roughness_rz.zip(joint.outer.roughness_rz);
    both.map_or(0.0, |(inner, outer)| (inner + outer).get::<meter>() * job.press.smoothing)
}

fn service(job: &Job, joint: &Joint<'_>) -> Vec<(Output, (f64, f64))> {
    let strain = |side: &Side<'_>, state: &crate::job::ServiceState| {
        side.expansion.at_inside(state.of(side.piece).get::<kelvin>())
    };
    let of = |state: &crate::job::ServiceState| {
        let output = match state.end {
            ServiceEnd::Coldest => Output::Coldest,
            ServiceEnd::Hottest => Output::Hottest,
        };
        (output, (strain(&joint.inner, state), strain(&joint.outer, state)))
    };
    job.service.iter().map(of).collect()
}
