//! One drawn part: arithmetic alone.

use super::inputs::{InputKind, piece_kinds};
use super::model::Output;
use super::piece::{BENCH_STEPS, PieceDraw, Tabled, Treated};
use super::prepare::{Drawn, SeatModel};
use super::table::Corners;
use crate::plan::PlanError;
use crate::plan::push::Yielding;
use crate::quantity::{Length, Time};
use uom::si::length::meter;
use uom::si::time::second;

/// Below this a clearance is the noise of a difference of sizes, m.
const NOISE_M: f64 = 1e-12;

/// A piece of a seat.
pub(super) enum Piece<'j> {
    /// As warm as the shop, with this strain.
    Still(f64),
    /// Chilled or warmed.
    Treated(Box<Treated<'j>>, Box<Tabled>),
}

/// A piece in one draw: its table with the place in it, or else the strain that it always has.
struct Placed<'a> {
    tabled: Option<(&'a Tabled, Corners)>,
    strain: f64,
}

impl Placed<'_> {
    #[inline]
    fn at_carry(&self, carry: f64) -> f64 {
        self.tabled.as_ref().map_or(self.strain, |(table, corners)| table.at_carry(corners, carry))
    }

    #[inline]
    fn at_step(&self, step: usize) -> f64 {
        self.tabled.as_ref().map_or(self.strain, |(table, corners)| table.at_step(corners, step))
    }
}

/// What a piece draws, out of all inputs.
pub(super) fn piece_draw(inputs: &[f64], [medium, film, hold]: [InputKind; 3]) -> PieceDraw {
    let of = |kind: InputKind| inputs[kind.index()];
    PieceDraw { medium: of(medium), film: of(film), hold: of(hold), air: of(InputKind::AirFilm) }
}

/// The clearance of a size in another, with their strains.
#[inline]
fn clearance((inner, outer): (f64, f64), (inner_strain, outer_strain): (f64, f64)) -> f64 {
    let clearance = (outer - inner) + (outer * outer_strain - inner * inner_strain);
    if clearance.abs() < NOISE_M { 0.0 } else { clearance }
}

impl SeatModel<'_> {
    /// What becomes of a part with these inputs, in the order of [`InputKind::ALL`] and in SI units.
    pub fn evaluate(&self, inputs: &[f64]) -> Drawn {
        let of = |kind: InputKind| inputs[kind.index()];
        let sizes = (of(InputKind::InnerSize), of(InputKind::OuterSize));
        let inner = placed(&self.inner, inputs, piece_kinds(true));
        let outer = placed(&self.outer, inputs, piece_kinds(false));
        let carry = of(InputKind::Carry);
        let at_seat = clearance(sizes, (inner.at_carry(carry), outer.at_carry(carry)));
        let bears = self.bears(-at_seat);
        let mut drawn = [0.0; Output::COUNT];
        drawn[Output::Interference.index()] = -clearance(sizes, (0.0, 0.0));
        drawn[Output::Clearance.index()] = at_seat;
        let elastic = of(InputKind::Friction) * of(InputKind::Shape) * self.stiffness * bears;
        let left = |yielding: &Yielding| yielding.left(Length::new::<meter>(bears), of(InputKind::Shape));
        drawn[Output::Force.index()] = elastic * self.yielding.as_ref().map_or(1.0, left);
        if self.is_treated() {
            let gone = |step| clearance(sizes, (inner.at_step(step), outer.at_step(step))) - self.placing;
            drawn[Output::Window.index()] = self.window(gone);
        }
        for (output, strains) in &self.service {
            drawn[output.index()] = -(clearance(sizes, *strains) + self.turning);
        }
        drawn
    }

    /// Interference that bears, with the rough peaks smoothed away, and none where the joint is open.
    #[inline]
    fn bears(&self, interference: f64) -> f64 {
        (interference - self.smoothed).max(0.0)
    }

    /// Time until the placing clearance is gone, from what is in hand at each step; infinity where it outlasts the last.
    fn window(&self, in_hand: impl Fn(usize) -> f64) -> f64 {
        let first = in_hand(0);
        if first < 0.0 {
            return 0.0;
        }
        let last = in_hand(BENCH_STEPS);
        if last >= 0.0 {
            return f64::INFINITY;
        }
        let (mut low, mut high) = ((0, first), (BENCH_STEPS, last));
        while high.0 - low.0 > 1 {
            let middle = usize::midpoint(low.0, high.0);
            let value = in_hand(middle);
            if value >= 0.0 { low = (middle, value) } else { high = (middle, value) }
        }
        let (from, to) = (self.bench_times[low.0], self.bench_times[high.0]);
        from + (to - from) * low.1 / (low.1 - high.1)
    }

    /// The clearance of a part with these inputs at a time after leaving the media, by histories of its own: what
    /// [`Self::evaluate`] reads from tables.
    ///
    /// # Errors
    /// As for a plan of the drawn job.
    pub fn clearance_directly(&self, inputs: &[f64], time: Time) -> Result<Length, PlanError> {
        let strain = |piece: &Piece<'_>, inner| match piece {
            Piece::Still(strain) => Ok(*strain),
            Piece::Treated(treated, _) => {
                let draw = piece_draw(inputs, piece_kinds(inner));
                Ok::<_, PlanError>(treated.direct(&draw, &[time.get::<second>()])?[0])
            }
        };
        let sizes = (inputs[InputKind::InnerSize.index()], inputs[InputKind::OuterSize.index()]);
        Ok(Length::new::<meter>(clearance(sizes, (strain(&self.inner, true)?, strain(&self.outer, false)?))))
    }
}

fn placed<'a>(piece: &'a Piece<'_>, inputs: &[f64], kinds: [InputKind; 3]) -> Placed<'a> {
    match piece {
        Piece::Still(strain) => Placed { tabled: None, strain: *strain },
        Piece::Treated(_, tabled) => {
            Placed { tabled: Some((tabled, tabled.corners(&piece_draw(inputs, kinds)))), strain: 0.0 }
        }
    }
}
