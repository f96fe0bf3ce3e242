//! Histories of treated pieces that plans of one run share.
//!
//! Rows of a list and ways of a search often differ in a class or in the other part alone: then the piece has been in the
//! same medium for the same time before.

use super::PlanError;
use super::model::SeatKind;
use super::subject::Subject;
use super::track::{Treated, treat};
use crate::job::{Bench, FilmChoice, Job, Piece, Treatment};
use crate::quantity::{Area, Length, Mass, Pressure, Ratio, ThermodynamicTemperature};
use crate::stock::Material;
use crate::thermal::{BearingBodies, RoundPart, Shape};
use std::collections::HashMap;
use std::collections::hash_map::DefaultHasher;
use std::fmt;
use std::hash::{Hash, Hasher};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Histories that are kept; more of them begin anew, so that memory stays bounded.
const MOST: usize = 512;

/// What became of pieces in their media and on the bench.
///
/// Plans give the same numbers with a memory that is empty or full: a history is taken only where everything that it depends
/// on is equal.
#[derive(Default)]
pub(super) struct Histories {
    known: Mutex<Known>,
}

#[derive(Default)]
struct Known {
    /// By a hash of some of what they depend on; the rest is compared.
    by_hash: HashMap<u64, Vec<Entry>>,
    count: usize,
}

#[derive(Clone)]
struct Entry {
    of: Arc<DependsOn>,
    treated: Arc<Treated>,
}

/// Everything that a history depends on.
#[derive(PartialEq)]
struct DependsOn {
    seat: SeatKind,
    material: Material,
    body: Body,
    treatment: Treatment,
    air: Air,
}

type Body = (Piece, Mass, Shape, RoundPart, Area, Length, Length, Option<BearingBodies>);

type Air = (ThermodynamicTemperature, Option<Ratio>, FilmChoice, Pressure);

/// Taken apart field by field, so that one that a later version adds cannot be forgotten here.
fn body(subject: &Subject<'_>) -> Body {
    let &Subject { piece, material: _, mass, shape, round, face, height, outside, rings } = subject;
    (piece, mass, shape, round, face, height, outside, rings)
}

fn air(bench: &Bench) -> Air {
    let Bench { temperature, humidity, film, pressure, carry: _, room: _, placing_clearance: _ } = bench;
    (*temperature, *humidity, film.clone(), *pressure)
}

impl Histories {
    /// A piece through its treatment, as [`treat`] follows it.
    pub(super) fn treat(
        &self,
        job: &Job,
        seat: SeatKind,
        piece: Piece,
        treatment: Option<&Treatment>,
    ) -> Result<Arc<Treated>, PlanError> {
        let Some(of) = treatment else { return treat(job, seat, piece, treatment).map(Arc::new) };
        let subject = Subject::new(job, piece)?;
        let (body, air) = (body(&subject), air(&job.bench));
        let hash = hash(&body, of, &air);
        let known: Vec<Entry> = self.known().by_hash.get(&hash).cloned().unwrap_or_default();
        let same = |entry: &&Entry| {
            let DependsOn { seat: its_seat, material, body: its_body, treatment, air: its_air } = &*entry.of;
            *its_seat == seat && *its_body == body && treatment == of && *its_air == air && material == subject.material
        };
        if let Some(entry) = known.iter().find(same) {
            return Ok(Arc::clone(&entry.treated));
        }
        let treated = Arc::new(treat(job, seat, piece, treatment)?);
        let of = DependsOn { seat, material: subject.material.clone(), body, treatment: of.clone(), air };
        self.keep(hash, Entry { of: Arc::new(of), treated: Arc::clone(&treated) });
        Ok(treated)
    }

    fn keep(&self, hash: u64, entry: Entry) {
        let mut known = self.known();
        if known.count >= MOST {
            *known = Known::default();
        }
        known.count += 1;
        known.by_hash.entry(hash).or_default().push(entry);
    }

    fn known(&self) -> MutexGuard<'_, Known> {
        // A thread that came to grief while it held the lock has left whole entries only.
        self.known.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl fmt::Debug for Histories {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Histories").field("count", &self.known().count).finish()
    }
}

/// Of what mostly differs.
fn hash(body: &Body, treatment: &Treatment, air: &Air) -> u64 {
    let mut hasher = DefaultHasher::new();
    body.1.value.to_bits().hash(&mut hasher);
    body.6.value.to_bits().hash(&mut hasher);
    treatment.medium.id().hash(&mut hasher);
    treatment.temperature.value.to_bits().hash(&mut hasher);
    let hold = match treatment.hold {
        crate::job::Hold::For(time) => time.value,
        crate::job::Hold::Reaches(target) => -target.value,
        crate::job::Hold::Settled => -1.0,
    };
    hold.to_bits().hash(&mut hasher);
    air.0.value.to_bits().hash(&mut hasher);
    hasher.finish()
}
