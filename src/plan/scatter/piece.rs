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
use std::borrow::Cow;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Steps along each axis before any refinement; the films are wide, a bearing's state needs few.
const FILM_STEPS: usize = 16;
const HOLD_STEPS: usize = 4;
const MEDIUM_STEPS: usize = 2;
const AIR_STEPS: usize = 6;
const OTHER_STEPS: usize = 1;
const CARRY_STEPS: usize = 6;
/// Kelvins of one step along the temperature at which a piece is taken out.
const END_STEP_K: f64 = 5.0;
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

/// How a piece leaves its medium.
#[derive(Clone, Copy, Debug)]
struct TakenOut {
    /// Temperature of the body that counts, K.
    counts: f64,
    /// Change of the two others from the shop, over that of the one that counts; 1 where there is one body.
    others: [f64; 2],
}

/// A piece that is treated.
pub(super) struct Treated<'j> {
    job: &'j Job,
    subject: Subject<'j>,
    treatment: &'j Treatment,
    counts: BearingPart,
    expansion: Cow<'j, Curve>,
    /// How many bodies it is followed as, in every draw.
    bodies: Option<usize>,
}

impl<'j> Treated<'j> {
    /// The piece, as three bodies where the quick end of its ranges wants them.
    pub(super) fn new(
        job: &'j Job,
        subject: Subject<'j>,
        (treatment, counts, expansion): (&'j Treatment, BearingPart, Cow<'j, Curve>),
        ranges: &PieceRanges,
    ) -> Result<Self, PlanError> {
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

    /// How the piece leaves its medium after some times in it, by a direct history.
    fn ends(&self, draw: &PieceDraw, holds: &[f64]) -> Result<Vec<TakenOut>, PlanError> {
        let treatment = self.drawn(draw);
        let soaking = self.soaking(&treatment, draw.film)?;
        let bodies = self.bodies.unwrap_or(1);
        if matches!(treatment.hold, Hold::Reaches(_)) {
            let (run, time) = soaking.held(Pace::Slow)?;
            return Ok(vec![self.taken_out(&run, time.get::<second>(), bodies); holds.len()]);
        }
        let longest = holds.iter().copied().fold(0.0, f64::max);
        let run = soaking.follow(Pace::Slow, Time::new::<second>(longest))?;
        Ok(holds.iter().map(|hold| self.taken_out(&run, *hold, bodies)).collect())
    }

    fn taken_out(&self, run: &Run, time: f64, bodies: usize) -> TakenOut {
        let shop = self.job.bench.temperature.get::<kelvin>();
        let counts = run.kelvin_at(self.counts, time);
        let change = |part| (run.kelvin_at(part, time) - shop) / (counts - shop);
        let others = if bodies > 1 { self.others().map(change) } else { [1.0; 2] };
        TakenOut { counts, others }
    }

    /// The two bodies of a bearing that are not the one that counts.
    fn others(&self) -> [BearingPart; 2] {
        match self.counts {
            BearingPart::OuterRing => [BearingPart::RollingElements, BearingPart::InnerRing],
            _ => [BearingPart::OuterRing, BearingPart::RollingElements],
        }
    }

    /// The temperatures with which the bench begins.
    fn start(&self, end: &TakenOut) -> Vec<ThermodynamicTemperature> {
        if self.bodies.is_none_or(|bodies| bodies < 2) {
            return vec![from_kelvin(end.counts)];
        }
        let shop = self.job.bench.temperature.get::<kelvin>();
        let mut all = [end.counts; 3];
        for (part, change) in self.others().into_iter().zip(end.others) {
            all[part.index()] = shop + change * (end.counts - shop);
        }
        all.map(from_kelvin).to_vec()
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

    /// The end of the medium's range that is farther from the shop: a film's table must reach it.
    fn farthest(&self, ranges: &PieceRanges) -> f64 {
        let shop = self.job.bench.temperature.get::<kelvin>();
        let (low, high) = ranges.medium;
        if (low - shop).abs() > (high - shop).abs() { low } else { high }
    }

    fn on_bench(&self, start: &[ThermodynamicTemperature], draw: &PieceDraw) -> Result<Run, PlanError> {
        let treatment = self.drawn(draw);
        let soaking = self.soaking(&treatment, draw.film)?;
        soaking.bench_from(start, Pace::Between(draw.air))
    }

    /// Strain at some times after leaving the medium, by direct histories: what the table stands for.
    pub(super) fn direct(&self, draw: &PieceDraw, times: &[f64]) -> Result<Vec<f64>, PlanError> {
        let ends = self.ends(draw, &[draw.hold])?;
        let run = self.on_bench(&self.start(&ends[0]), draw)?;
        Ok(times.iter().map(|time| self.strain(run.kelvin_at(self.counts, *time))).collect())
    }

    fn strain(&self, temperature: f64) -> f64 {
        self.expansion.at_inside(temperature)
    }
}

/// The strain of a piece from tables.
pub(super) struct Tabled {
    /// How it is taken out, over medium and film; none where that is the temperature that is drawn.
    taken_out: Option<Leaving>,
    /// Strain over temperature and state as it is taken out, and the film of shop air; first columns of the carry, then of
    /// the bench.
    bench: Table,
    carry: Axis,
}

/// How a piece is taken out: the temperature that counts for each time in the medium, and, of three bodies, the change of
/// the two others over it.
struct Leaving {
    counts: Table,
    others: Option<[Table; 2]>,
    hold: Axis,
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
        let three = piece.bodies.is_some_and(|bodies| bodies > 1);
        let drawn = matches!(piece.treatment.hold, Hold::Reaches(_)) && !three;
        let taken_out = if drawn { None } else { Some(leaving(piece, ranges, finer, worker)?) };
        let span = taken_out.as_ref().map_or(ranges.medium, |leaving| leaving.counts.ends());
        // Held between 1 and 32, so nothing is cut off.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let steps = ((span.1 - span.0) / END_STEP_K).ceil().clamp(1.0, 32.0) as usize;
        let others = taken_out.as_ref().and_then(|leaving| leaving.others.as_ref());
        let mut axes = vec![Axis::new(span, steps * finer), Axis::new(ranges.air, AIR_STEPS * finer)];
        axes.extend(others.iter().flat_map(|both| both.iter()).map(|other| Axis::new(other.ends(), OTHER_STEPS)));
        let farthest = piece.farthest(ranges);
        let rows = worker.each(points(&axes), |number| {
            let at = Table::coordinates(&axes, number);
            let end = TakenOut { counts: at[0], others: if three { [at[2], at[3]] } else { [1.0; 2] } };
            let draw = PieceDraw { medium: farthest, film: ranges.film.0, hold: ranges.hold.1, air: at[1] };
            let run = piece.on_bench(&piece.start(&end), &draw)?;
            Ok(times.iter().map(|time| piece.strain(run.kelvin_at(piece.counts, *time))).collect())
        });
        let bench = Table::new(axes, rows.into_iter().collect::<Result<_, PlanError>>()?);
        Ok(Self { taken_out, bench, carry })
    }

    /// The points of the table that a draw lies between.
    #[inline]
    pub(super) fn corners(&self, draw: &PieceDraw) -> Corners {
        let Some(leaving) = &self.taken_out else { return self.bench.corners(&[draw.medium, draw.air]) };
        let (corners, hold) = (leaving.counts.corners(&[draw.medium, draw.film]), leaving.hold.locate(draw.hold));
        let counts = leaving.counts.between(&corners, hold);
        match &leaving.others {
            None => self.bench.corners(&[counts, draw.air]),
            Some([one, other]) => {
                let (one, other) = (one.between(&corners, hold), other.between(&corners, hold));
                self.bench.corners(&[counts, draw.air, one, other])
            }
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

fn leaving(
    piece: &Treated<'_>,
    ranges: &PieceRanges,
    finer: usize,
    worker: &impl Worker,
) -> Result<Leaving, PlanError> {
    let hold = Axis::new(ranges.hold, HOLD_STEPS * finer);
    let holds: Vec<f64> = hold.values().collect();
    let axes = vec![Axis::new(ranges.medium, MEDIUM_STEPS), Axis::new(ranges.film, FILM_STEPS * finer)];
    let rows = worker.each(points(&axes), |number| {
        let at = Table::coordinates(&axes, number);
        piece.ends(&PieceDraw { medium: at[0], film: at[1], hold: ranges.hold.1, air: ranges.air.1 }, &holds)
    });
    let rows = rows.into_iter().collect::<Result<Vec<_>, PlanError>>()?;
    let table = |read: fn(&TakenOut) -> f64| {
        Table::new(axes.clone(), rows.iter().map(|row| row.iter().map(read).collect()).collect())
    };
    let three = piece.bodies.is_some_and(|bodies| bodies > 1);
    let others = three.then(|| [table(|end| end.others[0]), table(|end| end.others[1])]);
    Ok(Leaving { counts: table(|end| end.counts), others, hold })
}
