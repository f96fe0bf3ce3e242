use super::error::SectionError;
use super::loads::Loads;
use super::model::{Model, Solution};
use super::observe::Layout;
use super::settle;
use super::state::State;
use super::state_of;
use super::stress::{Peak, peaks};

/// A section solved for a load of one of each kind, for one set of touching nodes.
///
/// While the same nodes touch, everything is in proportion to the loads, so that any loads are a sum of these. The set is
/// found again only when the sum would pull or overlap somewhere.
#[derive(Clone, Debug)]
pub struct Units {
    layout: Layout,
    touching: Vec<bool>,
    bonded: Vec<bool>,
    /// Weighted gaps and row of numbers of each unit load.
    unit: Vec<Unit>,
}

#[derive(Clone, Debug)]
struct Unit {
    gaps: Vec<f64>,
    row: Vec<f64>,
}

impl Model {
    /// What loads do, solved for these loads alone.
    ///
    /// # Errors
    /// [`SectionError`] for loads that are out of range or do not belong to the section.
    pub fn solve(&self, loads: &Loads) -> Result<State, SectionError> {
        let plain = self.plain(loads)?;
        let solution = self.solved(&plain)?;
        let layout = Layout::of(self);
        Ok(state_of::state(self, &layout, &layout.observe(self, &solution, &plain)))
    }

    /// Largest stresses of each part, from the inside outward, away from the places where they have no limit.
    ///
    /// # Errors
    /// As for [`Model::solve`].
    pub fn stresses(&self, loads: &Loads) -> Result<Vec<Peak>, SectionError> {
        let plain = self.plain(loads)?;
        Ok(peaks(self, &self.solved(&plain)?, &plain))
    }

    pub(super) fn solved(&self, plain: &[f64]) -> Result<Solution, SectionError> {
        let settled = self.settle(plain)?;
        Ok(self.solution(plain, settled.pressure))
    }

    /// Unit solutions for the nodes that touch under `loads`.
    ///
    /// # Errors
    /// As for [`Model::solve`].
    pub fn units(&self, loads: &Loads) -> Result<Units, SectionError> {
        if !self.finished.is_empty() {
            return Err(SectionError::Finished);
        }
        let plain = self.plain(loads)?;
        let touching = self.settle(&plain)?.touching;
        let layout = Layout::of(self);
        let mut unit = Vec::with_capacity(plain.len());
        for k in 0..plain.len() {
            let mut one = vec![0.0; plain.len()];
            one[k] = 1.0;
            let pressure = settle::pressures(&self.matrix, &self.free_gaps(&one), &touching)
                .ok_or(SectionError::NotSettled { steps: 1 })?;
            let solution = self.solution(&one, pressure);
            unit.push(Unit { row: layout.observe(self, &solution, &one), gaps: solution.gaps });
        }
        Ok(Units { layout, touching, bonded: self.bonded.clone(), unit })
    }
}

impl Units {
    /// What loads do, as a sum of the unit solutions; when other nodes touch under them, the unit solutions are made
    /// anew for those first.
    ///
    /// # Errors
    /// As for [`Model::solve`].
    pub fn state(&mut self, model: &Model, loads: &Loads) -> Result<State, SectionError> {
        let plain = model.plain(loads)?;
        if let Some(row) = self.row(&plain) {
            return Ok(state_of::state(model, &self.layout, &row));
        }
        *self = model.units(loads)?;
        let row = self.row(&plain);
        // A node on the verge of touching may be judged either way: then the direct solution decides.
        row.map_or_else(|| model.solve(loads), |row| Ok(state_of::state(model, &self.layout, &row)))
    }

    /// The sum for loads; `None` when other nodes touch under them.
    fn row(&self, loads: &[f64]) -> Option<Vec<f64>> {
        let gaps = sum(loads, self.unit.iter().map(|unit| unit.gaps.as_slice()));
        let mut row = sum(loads, self.unit.iter().map(|unit| unit.row.as_slice()));
        let pressure = &mut row[..self.touching.len()];
        if settle::wrong(&gaps, pressure, &self.touching, &self.bonded).next().is_some() {
            return None;
        }
        for (p, bonded) in pressure.iter_mut().zip(&self.bonded) {
            *p = if *bonded { *p } else { p.max(0.0) };
        }
        Some(row)
    }
}

fn sum<'a>(loads: &[f64], units: impl Iterator<Item = &'a [f64]>) -> Vec<f64> {
    let mut sum = Vec::new();
    for (load, unit) in loads.iter().zip(units) {
        sum.resize(unit.len(), 0.0);
        for (sum, value) in sum.iter_mut().zip(unit) {
            *sum += load * value;
        }
    }
    sum
}
