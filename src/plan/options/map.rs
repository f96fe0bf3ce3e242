//! The trade-off between chilling the inner part and warming the outer one, as a map of clearances.
//!
//! Each point is a pair of temperatures at the moment in which the part reaches its seat. The clearance there follows from
//! the sizes and the expansion of the materials alone, whatever brought them there; each way stands where it arrives.

use super::model::Way;
use super::pieces;
use crate::job::Job;
use crate::plan::clearance::Diameters;
use crate::plan::joint;
use crate::plan::limits;
use crate::plan::model::SeatKind;
use crate::plan::soaking::from_kelvin;
use crate::plan::{PlanError, Verdict};
use crate::quantity::{Length, ThermodynamicTemperature};
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;

/// Points along each side.
const POINTS: usize = 41;

/// What the map shows beyond the ways, K: around them, at least, and up to a limit that is so near.
const MARGIN_K: f64 = 8.0;
const LEAST_SPAN_K: f64 = 30.0;
const NEAR_K: f64 = 60.0;

/// Clearance of the case that counts over the temperatures of both parts.
#[derive(Clone, Debug)]
pub struct WaysMap {
    /// Temperatures of the inner part, coldest first.
    pub inner: Vec<ThermodynamicTemperature>,
    /// Temperatures of the outer part, coolest first.
    pub outer: Vec<ThermodynamicTemperature>,
    /// Clearance, a row for each temperature of the outer part; none where a material is not known so cold or so hot.
    pub clearance: Vec<Vec<Option<Length>>>,
    /// Clearance from which a part drops in.
    pub placing: Length,
    /// The coldest that the inner part may get.
    pub coldest: Option<ThermodynamicTemperature>,
    /// The hottest that the outer part may get.
    pub hottest: Option<ThermodynamicTemperature>,
    /// The ways that can be done, best first.
    pub marks: Vec<Mark>,
}

/// A way on the map.
#[derive(Clone, Copy, Debug)]
pub struct Mark {
    /// Its rank, from 1.
    pub rank: usize,
    /// The inner part when it reaches the seat.
    pub inner: ThermodynamicTemperature,
    /// The outer part then.
    pub outer: ThermodynamicTemperature,
    /// Whether it drops in.
    pub drops_in: bool,
    /// Whether it does so with time enough.
    pub comfortable: bool,
}

/// The map of the only seat of the job by which the ways were judged.
pub(super) fn map(job: &Job, seat: SeatKind, ways: &[Way]) -> Result<WaysMap, PlanError> {
    let joints = joint::joints(job)?;
    let marks: Vec<Mark> = ways.iter().enumerate().filter_map(|(i, way)| mark(i + 1, way)).collect();
    let (inner_piece, outer_piece) = pieces(seat);
    let coldest = limits::coldest(&limits::cold(job, inner_piece));
    let hottest = limits::hottest(&limits::hot(job, seat, outer_piece));
    let shop = job.bench.temperature.get::<kelvin>();
    let at = |of: fn(&Mark) -> ThermodynamicTemperature| marks.iter().map(move |mark| of(mark).get::<kelvin>());
    let low = at(|mark| mark.inner).fold(shop - LEAST_SPAN_K, f64::min) - MARGIN_K;
    let high = at(|mark| mark.outer).fold(shop + LEAST_SPAN_K, f64::max) + MARGIN_K;
    // A limit that is not far beyond is shown, with some of what it forbids.
    let limit = |limit: Option<ThermodynamicTemperature>| limit.map(|limit| limit.get::<kelvin>());
    let low = limit(coldest).filter(|cold| low - cold < NEAR_K).map_or(low, |cold| low.min(cold - MARGIN_K));
    let high = limit(hottest).filter(|hot| hot - high < NEAR_K).map_or(high, |hot| high.max(hot + MARGIN_K));
    let inner = spread(low, shop + MARGIN_K);
    let outer = spread(shop - MARGIN_K, high);
    let clearance = match joints.first() {
        Some(joint) => {
            let diameters = Diameters::new(joint);
            let known = |curve: &crate::stock::Curve, temperature: f64| {
                let (low, high) = curve.range();
                (low..=high).contains(&temperature)
            };
            let cell = |inner: f64, outer: f64| {
                let both = known(&joint.inner.expansion, inner) && known(&joint.outer.expansion, outer);
                both.then(|| Length::new::<meter>(diameters.clearance(inner, outer).tightest))
            };
            outer.iter().map(|outer| inner.iter().map(|inner| cell(*inner, *outer)).collect()).collect()
        }
        None => Vec::new(),
    };
    let all = |kelvins: Vec<f64>| kelvins.into_iter().map(from_kelvin).collect();
    let placing = job.bench.placing_clearance;
    Ok(WaysMap { inner: all(inner), outer: all(outer), clearance, placing, coldest, hottest, marks })
}

fn mark(rank: usize, way: &Way) -> Option<Mark> {
    let worked = way.worked()?;
    Some(Mark {
        rank,
        inner: worked.seat.at_bore.inner,
        outer: worked.seat.at_bore.outer,
        drops_in: worked.seat.verdict == Verdict::DropsIn,
        comfortable: worked.is_comfortable(),
    })
}

fn spread(from: f64, to: f64) -> Vec<f64> {
    (0..POINTS).map(|i| from + (to - from) * i as f64 / (POINTS - 1) as f64).collect()
}
