//! What a way must do: clear the tightest case, or a share of the parts as they come.
//!
//! A share is judged by sizes alone, drawn as `[scatter]` of the job says. Temperatures, films and times stay at the ends
//! that leave the least in hand, as in any plan, so that the share is rather too low than too high; the scatter of a plan
//! draws all of them.

use super::OptionsError;
use crate::job::{Job, Piece};
use crate::plan::joint::{self, Joint};
use crate::plan::model::{SeatKind, SeatPlan};
use crate::plan::scatter::{self, Distribution, Random, Share};
use crate::quantity::{Force, Length, Nanometres, Ratio};
use uom::si::length::meter;
use uom::si::ratio::{percent, ratio};
use uom::si::thermodynamic_temperature::kelvin;

/// Parts that are drawn to judge a share: its standard error is at most 0.16 %, at a share of 99 % 0.03 %.
pub const DRAWN_PARTS: u64 = 100_000;

/// Least and most share that may be asked for; below a half most parts would be pressed.
pub const SHARES: (f64, f64) = (0.5, 0.9999);

/// Random numbers of a share stand apart from those of a scatter with the same seed.
const STREAM: u64 = 1 << 33;

/// What a way must do.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Aim {
    /// The tightest case that the limits allow goes in.
    #[default]
    TightestCase,
    /// A share of the parts goes in; the same seed draws the same parts.
    Share {
        /// How many of them, within [`SHARES`].
        share: Ratio,
        /// Where the random numbers begin.
        seed: u64,
    },
}

/// What becomes of all parts on a way that was looked for by a share of them.
#[derive(Clone, Copy, Debug)]
pub struct Odds {
    /// Parts that have the placing clearance when they reach the seat.
    pub drops_in: Share,
    /// Clearance of the tightest case that the limits allow.
    pub tightest: Length,
    /// Force that this case needs.
    pub force: Force,
}

/// The parts that were drawn for a seat.
pub(super) struct Drawn {
    /// Sizes at 20 °C, inner and outer, in metres.
    parts: Vec<(f64, f64)>,
    placing: f64,
}

impl Drawn {
    /// Draws the parts of the only seat of a job, and makes the job of the one that stands for the share: so many are at
    /// least as loose as it is.
    pub(super) fn new(job: &Job, seat: SeatKind, (share, seed): (Ratio, u64)) -> Result<(Self, Job), OptionsError> {
        let wanted = share.get::<ratio>();
        if !(SHARES.0..=SHARES.1).contains(&wanted) {
            return Err(OptionsError::Share { asked: share.get::<percent>() });
        }
        let joints = joint::joints(job)?;
        let Some(joint) = joints.first() else { return Err(OptionsError::NoSeat) };
        let mut parts = drawn(job, joint, seed)?;
        let looser = (wanted * parts.len() as f64 - 1e-6).ceil();
        // Between nought and the number of parts.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let tighter = (parts.len() - looser as usize).min(parts.len() - 1);
        let clearance = |part: &(f64, f64)| part.1 - part.0;
        let (_, &mut (inner, outer), _) =
            parts.select_nth_unstable_by(tighter, |a, b| clearance(a).total_cmp(&clearance(b)));
        let piece = if seat == SeatKind::Housing { Piece::Housing } else { Piece::Shaft };
        // Whole nanometres, to the tight side, so that the share is met.
        let nanometres = |metres: f64, up: bool| {
            let value = metres * 1e9;
            #[allow(clippy::cast_possible_truncation, reason = "sizes are metres at most")]
            Nanometres(if up { value.ceil() } else { value.floor() } as i64)
        };
        let one = job.with_pair(piece, nanometres(inner, true), nanometres(outer, false));
        Ok((Self { parts, placing: job.bench.placing_clearance.get::<meter>() }, one))
    }

    /// What becomes of them all; `full` is the plan of the same treatments with all that the limits allow.
    pub(super) fn odds(&self, joint: &Joint<'_>, full: &SeatPlan) -> Odds {
        let inner = 1.0 + joint.inner.expansion.at_inside(full.at_bore.inner.get::<kelvin>());
        let outer = 1.0 + joint.outer.expansion.at_inside(full.at_bore.outer.get::<kelvin>());
        let count = self.parts.iter().filter(|part| part.1 * outer - part.0 * inner >= self.placing).count();
        Odds {
            drops_in: Share::of(count as u64, self.parts.len() as u64),
            tightest: full.at_bore.clearance.tightest,
            force: full.at_bore.force.tightest,
        }
    }
}

fn drawn(job: &Job, joint: &Joint<'_>, seed: u64) -> Result<Vec<(f64, f64)>, OptionsError> {
    let sizes = scatter::sizes(job, joint)?;
    let [inner, outer]: [Distribution; 2] = sizes.map(|size| size.distribution);
    let mut random = Random::new(seed, STREAM);
    Ok((0..DRAWN_PARTS).map(|_| (inner.draw(&mut random), outer.draw(&mut random))).collect())
}
