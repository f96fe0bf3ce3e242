//! The expansion of one piece on its way to the seat, from its drawn inputs: directly, and from a table.

use super::table::{Axis, Corners, Table, points};
use super::worker::Worker;
use crate::job::{Hold, Job, Treatment};
use crate::plan::PlanError;
use crate::plan::run::Run;
use crate::plan::soaking::{LONGEST_ON_BENCH_S, Soaking, from_kelvin};
use crate::plan::subject::Subject;
use crate::plan::surroundings::Pace;
use crate::quantity::{ThermodynamicTemperature, Time};
use crate::stock::Curve;
use crate::thermal::BearingPart;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Steps along each axis before any refinement; the films are wide, a bearing's state needs few.
const FILM_STEPS: usize = 8;
const HOLD_STEPS: usize = 8;
const MEDIUM_STEPS: usize = 2;
const AIR_STEPS: usize = 6;
const STATE_STEPS: usize = 3;
const CARRY_STEPS: usize = 6;
/// Kelvins of one step along the temperature at which a piece is taken out.
const END_STEP_K: f64 = 4.0;
/// Steps in shop air, and the first of them, s: each is longer than the one before by the same factor.
pub(super) const BENCH_STEPS: usize = 96;
const FIRST_BENCH_S: f64 = 2.0;

/// What a piece draws.
#[derive(Clone, Copy, Debug)]
pub(super) struct PieceDraw {
    /// Temperature of the medium, or at which it is taken out, K.
    pub(super) medium: f64,
    /// Place of the film in the medium, 0 slow to 1 quick.
    pub(super) film: f64,
    /// Time in the medium, s.
    pub(super) hold: f64,
    /// Place of the film of shop air.
    pub(super) air: f64,
}

/// The ends between which each of them is drawn.
#[derive(Clone, Copy, Debug)]
pub(super) struct PieceRanges {
    pub(super) medium: (f64, f64),
    pub(super) film: (f64, f64),
    pub(super) hold: (f64, f64),
    pub(super) air: (f64, f64),
    pub(super) carry: (f64, f64),
}

/// A piece that is treated.
pub(super) struct Treated<'j> {
    job: &'j Job,
    subject: Subject<'j>,
    treatment: &'j Treatment,
    counts: BearingPart,
    expansion: &'j Curve,
    /// How many bodies it is followed as, in every draw.
    bodies: Option<usize>,
}

impl<'j> Treated<'j> {
    /// The piece, as three bodies where the quick end of its ranges wants them.
    pub(super) fn new(
        job: &'j Job,
        subject: Subject<'j>,
        (treatment, counts): (&'j Treatment, BearingPart),
        ranges: &PieceRanges,
    ) -> Result<Self, PlanError> {
        let expansion = subject.material.expansion();
        let mut piece = Self { job, subject, treatment, counts, expansion, bodies: None };
        let quick = PieceDraw { medium: ranges.medium.1, film: ranges.film.1, hold: ranges.hold.1, air: ranges.air.1 };
        let drawn = piece.drawn(&quick);
        let bodies = piece.soaking(&drawn, quick.film)?.bodies(Pace::Slow);
        piece.bodies = Some(bodies);
        Ok(piece)
    }

    fn soaking<'a>(&'a self, treatment: &'a Treatment, film: f64) -> Result<Soaking<'a, 'a>, PlanError>
    where
        'j: 'a,
    {
        Soaking::between(self.job, &self.subject, treatment, (self.counts, film, self.bodies))
    }

    /// The bodies with which the piece leaves its medium, by a direct history.
    fn ends(&self, draw: &PieceDraw, holds: &[f64]) -> Result<Vec<Vec<ThermodynamicTemperature>>, PlanError> {
        let treatment = self.drawn(draw);
        let soaking = self.soaking(&treatment, draw.film)?;
        if matches!(treatment.hold, Hold::Reaches(_)) {
            let (run, _) = soaking.held(Pace::Slow)?;
            return Ok(vec![run.end(); holds.len()]);
        }
        // One body needs no more than its longest history; three are followed to each time.
        let longest = holds.iter().copied().fold(0.0, f64::max);
        let run = soaking.follow(Pace::Slow, Time::new::<second>(longest))?;
        if run.end().len() == 1 {
            let at = |&hold: &f64| vec![from_kelvin(run.kelvin_at(self.counts, hold))];
            return Ok(holds.iter().map(at).collect());
        }
        let to = |&hold: &f64| Ok(soaking.follow(Pace::Slow, Time::new::<second>(hold))?.end());
        holds.iter().map(to).collect()
    }

    fn drawn(&self, draw: &PieceDraw) -> Treatment {
        let drawn = from_kelvin(draw.medium);
        match self.treatment.hold {
            Hold::Reaches(_) => Treatment { hold: Hold::Reaches(drawn), ..self.treatment.clone() },
            Hold::For(_) | Hold::Settled => {
                let hold = Hold::For(Time::new::<second>(draw.hold));
                Treatment { temperature: drawn, hold, ..self.treatment.clone() }
            }
        }
    }

    fn on_bench(&self, start: &[ThermodynamicTemperature], draw: &PieceDraw) -> Result<Run, PlanError> {
        let treatment = self.drawn(draw);
        let soaking = self.soaking(&treatment, draw.film)?;
        soaking.bench_from(start, Pace::Between(draw.air))
    }

    /// Strain at some times after leaving the medium, by direct histories: what the table stands for.
    pub(super) fn direct(&self, draw: &PieceDraw, times: &[f64]) -> Result<Vec<f64>, PlanError> {
        let ends = self.ends(draw, &[draw.hold])?;
        let run = self.on_bench(&ends[0], draw)?;
        Ok(times.iter().map(|time| self.strain(run.kelvin_at(self.counts, *time))).collect())
    }

    fn strain(&self, temperature: f64) -> f64 {
        self.expansion.at_inside(temperature)
    }
}

/// The strain of a piece from tables.
pub(super) struct Tabled {
    /// The temperature of one body as it is taken out, over medium and film, a column a time in the medium; none where it
    /// is the temperature that is drawn, or where there are three bodies.
    taken_out: Option<(Table, Axis)>,
    /// What the bench is tabled over.
    over: Over,
    /// Strain over the state as it is taken out and the film of shop air; first columns of the carry, then of the bench.
    bench: Table,
    carry: Axis,
}

#[derive(Clone, Copy, PartialEq)]
enum Over {
    /// The temperature as it is taken out.
    Temperature,
    /// Medium, film and time in it.
    State,
}

/// Times after leaving the medium at which the bench is tabled, s.
pub(super) fn bench_times() -> Vec<f64> {
    let ratio = growth();
    (0..=BENCH_STEPS)
        .map(
            |step| {
                if step == BENCH_STEPS { LONGEST_ON_BENCH_S } else { FIRST_BENCH_S * (ratio.powi(step as i32) - 1.0) }
            },
        )
        .collect()
}

/// By how much each step is longer than the one before: `first (g^n - 1) = longest`.
fn growth() -> f64 {
    (LONGEST_ON_BENCH_S / FIRST_BENCH_S + 1.0).powf(1.0 / BENCH_STEPS as f64)
}

impl Tabled {
    /// Tables of a piece, `finer` times as fine as usual.
    pub(super) fn new(
        piece: &Treated<'_>,
        ranges: &PieceRanges,
        finer: usize,
        worker: &impl Worker,
    ) -> Result<Self, PlanError> {
        let carry = Axis::new(ranges.carry, CARRY_STEPS * finer);
        let times: Vec<f64> = carry.values().chain(bench_times()).collect();
        let air = Axis::new(ranges.air, AIR_STEPS * finer);
        if piece.bodies.is_some_and(|bodies| bodies > 1) {
            let axes = vec![
                Axis::new(ranges.medium, MEDIUM_STEPS),
                Axis::new(ranges.film, STATE_STEPS * finer),
                Axis::new(ranges.hold, MEDIUM_STEPS * finer),
                air,
            ];
            let rows = worker.each(points(&axes), |number| {
                let at = Table::coordinates(&axes, number);
                piece.direct(&PieceDraw { medium: at[0], film: at[1], hold: at[2], air: at[3] }, &times)
            });
            let bench = Table::new(axes, rows.into_iter().collect::<Result<_, _>>()?);
            return Ok(Self { taken_out: None, over: Over::State, bench, carry });
        }
        let taken_out = if matches!(piece.treatment.hold, Hold::Reaches(_)) {
            None
        } else {
            Some(taken_out(piece, ranges, finer, worker)?)
        };
        let span = taken_out.as_ref().map_or(ranges.medium, |(table, _)| table.ends());
        // Held between 1 and 32, so nothing is cut off.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let steps = ((span.1 - span.0) / END_STEP_K).ceil().clamp(1.0, 32.0) as usize;
        let axes = vec![Axis::new(span, steps * finer), air];
        let middle = |(low, high): (f64, f64)| 0.5 * (low + high);
        let rows = worker.each(points(&axes), |number| {
            let at = Table::coordinates(&axes, number);
            let state = PieceDraw {
                medium: middle(ranges.medium),
                film: middle(ranges.film),
                hold: middle(ranges.hold),
                air: at[1],
            };
            let run = piece.on_bench(&[from_kelvin(at[0])], &state)?;
            Ok(times.iter().map(|time| piece.strain(run.kelvin_at(piece.counts, *time))).collect())
        });
        let bench = Table::new(axes, rows.into_iter().collect::<Result<_, PlanError>>()?);
        Ok(Self { taken_out, over: Over::Temperature, bench, carry })
    }

    /// The points of the table that a draw lies between.
    #[inline]
    pub(super) fn corners(&self, draw: &PieceDraw) -> Corners {
        match (self.over, &self.taken_out) {
            (Over::State, _) => self.bench.corners(&[draw.medium, draw.film, draw.hold, draw.air]),
            (Over::Temperature, Some((table, hold))) => {
                let end = table.between(&table.corners(&[draw.medium, draw.film]), hold.locate(draw.hold));
                self.bench.corners(&[end, draw.air])
            }
            (Over::Temperature, None) => self.bench.corners(&[draw.medium, draw.air]),
        }
    }

    /// Strain after a time of carrying.
    #[inline]
    pub(super) fn at_carry(&self, corners: &Corners, carry: f64) -> f64 {
        self.bench.between(corners, self.carry.locate(carry))
    }

    /// Strain at one of [`bench_times`].
    #[inline]
    pub(super) fn at_step(&self, corners: &Corners, step: usize) -> f64 {
        self.bench.read(corners, self.carry.count() + step)
    }
}

fn taken_out(
    piece: &Treated<'_>,
    ranges: &PieceRanges,
    finer: usize,
    worker: &impl Worker,
) -> Result<(Table, Axis), PlanError> {
    let hold = Axis::new(ranges.hold, HOLD_STEPS * finer);
    let holds: Vec<f64> = hold.values().collect();
    let axes = vec![Axis::new(ranges.medium, MEDIUM_STEPS * finer), Axis::new(ranges.film, FILM_STEPS * finer)];
    let rows = worker.each(points(&axes), |number| {
        let at = Table::coordinates(&axes, number);
        let draw = PieceDraw { medium: at[0], film: at[1], hold: ranges.hold.1, air: ranges.air.1 };
        let ends = piece.ends(&draw, &holds)?;
        Ok(ends.iter().map(|bodies| bodies[0].get::<kelvin>()).collect())
    });
    Ok((Table::new(axes, rows.into_iter().collect::<Result<_, PlanError>>()?), hold))
}
