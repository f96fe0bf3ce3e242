//! Seats whose section was solved before.

use super::model::ShapeFactor;
use crate::plan::histories::Histories;
use crate::section::Section;
use std::collections::HashMap;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// Sections that are kept; a longer list of different seats begins anew, so that memory stays bounded.
const MOST: usize = 4096;

/// What sections and histories gave, for plans of one run to share: a section depends on sizes and elastic constants alone, and
/// is the same for every tolerance, temperature and hold; a history depends on one piece, its medium and its hold.
///
/// Plans give the same numbers with a memory that is empty or full; only the first of each takes its time.
#[derive(Debug, Default)]
pub struct SolvedSeats {
    known: Mutex<HashMap<String, ShapeFactor>>,
    pub(in crate::plan) histories: Histories,
}

impl SolvedSeats {
    /// How many sections are known.
    pub fn len(&self) -> usize {
        self.known().len()
    }

    /// Whether none is known yet.
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    fn known(&self) -> MutexGuard<'_, HashMap<String, ShapeFactor>> {
        // A thread that came to grief while it held the lock has left whole entries only.
        self.known.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// What is known of a section with this friction, or else what `solve` finds.
    pub(super) fn of<E>(
        &self,
        section: &Section,
        friction: f64,
        solve: impl FnOnce() -> Result<ShapeFactor, E>,
    ) -> Result<ShapeFactor, E> {
        // The whole section written out: a size that a later version adds cannot be forgotten here.
        let key = format!("{friction} {section:?}");
        if let Some(found) = self.known().get(&key) {
            return Ok(found.clone());
        }
        let found = solve()?;
        let mut known = self.known();
        if known.len() >= MOST {
            known.clear();
        }
        known.insert(key, found.clone());
        Ok(found)
    }
}
