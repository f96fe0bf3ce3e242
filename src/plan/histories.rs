//! Histories of treated pieces that plans of one run share.
//!
//! Rows of a list and ways of a search often differ in a class or in the other part alone: then the piece has been in the
//! same medium for the same time before.

use super::PlanError;
use super::model::{SeatKind, Soak};
use super::soaking::from_kelvin;
use super::subject::Subject;
use super::track::{Track, follow, soak_of, treat};
use crate::job::{Bench, FilmChoice, Job, Piece, Treatment};
use crate::quantity::{Area, Length, Mass, Pressure, Ratio, ThermodynamicTemperature};
use crate::stock::Material;
use crate::thermal::{BearingBodies, RoundPart, Shape};
use std::collections::HashMap;
use std::collections::hash_map::DefaultHasher;
use std::fmt;
use std::hash::{Hash, Hasher};
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};

/// Histories that are kept; more of them begin anew, so that memory stays bounded.
const MOST: usize = 512;

/// Where so many as [`MOST`] have been asked for and none was known, the list has no two alike: one in this many is kept, in case
/// that changes, and the rest is not worth its copy.
const KEPT_IN_VAIN: usize = 8;

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
    /// How many have been asked for since one was known.
    in_vain: usize,
}

#[derive(Clone)]
struct Entry {
    of: Arc<DependsOn>,
    track: Track,
    /// What a report shows, once a plan has asked for it.
    soak: Arc<OnceLock<Option<Soak>>>,
}

/// A piece that was followed: its temperature against time, and the soak that a report shows when it is treated.
pub(super) struct Treated {
    pub(super) track: Track,
    pub(super) soak: Option<Soak>,
}

impl Treated {
    /// Lets the piece go by the curve of its section from here on.
    pub(super) fn go_by(&mut self, curve: Vec<(f64, f64)>) {
        self.track.by_section(curve);
        let end = from_kelvin(self.track.kelvin_at(0.0));
        if let Some(soak) = &mut self.soak {
            (soak.end, soak.in_section) = (end, true);
        }
    }
}

/// Everything that a history depends on.
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
    let &Subject { piece, material: _, mass, shape, round, face, height, outside, rings, in_air: _ } = subject;
    (piece, mass, shape, round, face, height, outside, rings)
}

fn air(bench: &Bench) -> Air {
    let Bench { temperature, humidity, film, pressure, carry: _, room: _, placing_clearance: _, placing_is_stated: _ } =
        bench;
    (*temperature, *humidity, film.clone(), *pressure)
}

/// The same of a history that is asked for.
struct Asked<'a> {
    seat: SeatKind,
    material: &'a Material,
    body: Body,
    treatment: &'a Treatment,
    air: Air,
    hash: u64,
}

impl<'a> Asked<'a> {
    fn new(job: &'a Job, seat: SeatKind, piece: Piece, treatment: &'a Treatment) -> Result<Self, PlanError> {
        let subject = Subject::new(job, piece)?;
        let (body, air) = (body(&subject), air(&job.bench));
        Ok(Self { seat, material: subject.material, body, treatment, hash: hash(&body, treatment, &air), air })
    }

    fn is(&self, kept: &DependsOn) -> bool {
        let DependsOn { seat, material, body, treatment, air } = kept;
        *seat == self.seat
            && *body == self.body
            && treatment == self.treatment
            && *air == self.air
            && material == self.material
    }

    fn kept(&self) -> DependsOn {
        DependsOn {
            seat: self.seat,
            material: self.material.clone(),
            body: self.body,
            treatment: self.treatment.clone(),
            air: self.air.clone(),
        }
    }
}

impl Histories {
    /// A piece through its treatment, with its soak.
    pub(super) fn treat(
        &self,
        job: &Job,
        seat: SeatKind,
        piece: Piece,
        treatment: Option<&Treatment>,
    ) -> Result<Treated, PlanError> {
        let Some(treatment) = treatment else {
            return Ok(Treated { track: follow(job, seat, piece, None)?, soak: None });
        };
        let asked = Asked::new(job, seat, piece, treatment)?;
        if let Some(entry) = self.find(&asked) {
            let soak = match entry.soak.get() {
                Some(soak) => soak.clone(),
                None => soak_of(job, piece, treatment, &entry.track)?,
            };
            return Ok(Treated { soak: entry.soak.get_or_init(|| soak).clone(), track: entry.track });
        }
        let (track, soak) = treat(job, seat, piece, treatment)?;
        let track = self.keep(&asked, track, OnceLock::from(soak.clone()));
        Ok(Treated { track, soak })
    }

    /// Its temperature against time alone.
    pub(super) fn follow(
        &self,
        job: &Job,
        seat: SeatKind,
        piece: Piece,
        treatment: Option<&Treatment>,
    ) -> Result<Track, PlanError> {
        let Some(of) = treatment else { return follow(job, seat, piece, None) };
        let asked = Asked::new(job, seat, piece, of)?;
        match self.find(&asked) {
            Some(entry) => Ok(entry.track),
            None => Ok(self.keep(&asked, follow(job, seat, piece, treatment)?, OnceLock::new())),
        }
    }

    fn find(&self, asked: &Asked<'_>) -> Option<Entry> {
        let known: Vec<Entry> = self.known().by_hash.get(&asked.hash)?.clone();
        let found = known.into_iter().find(|entry| asked.is(&entry.of))?;
        self.known().in_vain = 0;
        Some(found)
    }

    fn keep(&self, asked: &Asked<'_>, track: Track, soak: OnceLock<Option<Soak>>) -> Track {
        if !self.known().keeps_after_one_in_vain() {
            return track;
        }
        let entry = Entry { of: Arc::new(asked.kept()), track: track.clone(), soak: Arc::new(soak) };
        let mut known = self.known();
        if known.count >= MOST {
            *known = Known { in_vain: known.in_vain, ..Known::default() };
        }
        known.count += 1;
        known.by_hash.entry(asked.hash).or_default().push(entry);
        track
    }

    fn known(&self) -> MutexGuard<'_, Known> {
        // A thread that came to grief while it held the lock has left whole entries only.
        self.known.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Known {
    /// Counts one more that was not known, and tells whether it is kept.
    fn keeps_after_one_in_vain(&mut self) -> bool {
        self.in_vain = self.in_vain.saturating_add(1);
        self.in_vain <= MOST || self.in_vain.is_multiple_of(KEPT_IN_VAIN)
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

#[cfg(test)]
mod tests {
    use super::{KEPT_IN_VAIN, Known, MOST};

    #[test]
    fn a_list_without_two_alike_keeps_one_in_eight_and_one_that_is_known_again_ends_that() {
        let mut known = Known::default();
        let kept = |known: &mut Known, asked: usize| (0..asked).filter(|_| known.keeps_after_one_in_vain()).count();
        assert_eq!(kept(&mut known, MOST), MOST);
        assert_eq!(kept(&mut known, 10 * KEPT_IN_VAIN), 10);
        known.in_vain = 0;
        assert_eq!(kept(&mut known, MOST), MOST);
    }
}
