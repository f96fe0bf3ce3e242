//! The order of the ways.

use super::model::{Way, Worked};
use crate::plan::caution::Level;
use crate::plan::model::Verdict;
use crate::stock::medium::Medium;
use std::cmp::Ordering;

/// The rule of the order, as every output prints it.
pub const RULE: &str = "Ways that a limit or a danger forbids come last. Of the others, less danger to people goes first \
    (a race counts as pressing), then what drops in before what some need the press for and what is pressed, then ways in \
    which chilling does not shorten the time in the seat, then a comfortable time (1 min in hand at the seat and 10 s free \
    in it) before the longer of two short ones, then the sooner ready.";

/// Best first; ways that are equal keep their order.
pub(super) fn sort(ways: &mut [Way]) {
    ways.sort_by(|a, b| match (a.worked(), b.worked()) {
        (Some(first), Some(second)) => compare((a, first), (b, second)),
        (first, second) => first.is_none().cmp(&second.is_none()),
    });
}

fn compare((a, first): (&Way, &Worked), (b, second): (&Way, &Worked)) -> Ordering {
    danger(first.hazard(a))
        .cmp(&danger(second.hazard(b)))
        .then(first.seat.verdict.cmp(&second.seat.verdict))
        .then(first.chilling_shortens().cmp(&second.chilling_shortens()))
        .then(second.in_time().total_cmp(&first.in_time()))
        .then(force(first).total_cmp(&force(second)))
        .then(first.ready_after().value.total_cmp(&second.ready_after().value))
}

impl Worked {
    /// How comfortable the time is, for what drops in.
    fn in_time(&self) -> f64 {
        if self.seat.verdict == Verdict::DropsIn { self.comfort() } else { 0.0 }
    }
}

/// Force that is left; what drops in needs none.
fn force(worked: &Worked) -> f64 {
    if worked.seat.verdict == Verdict::DropsIn { 0.0 } else { worked.seat.at_bore.force.tightest.value }
}

/// Harmless first.
fn danger(level: Option<Level>) -> u8 {
    match level {
        None | Some(Level::Note) => 0,
        Some(Level::Caution) => 1,
        Some(Level::Warning) => 2,
        Some(Level::Danger) => 3,
    }
}

/// Whether a pair of media is worth a search.
pub(super) enum Worth {
    /// It may be better than either alone.
    Trying,
    /// One alone is comfortable, and the other adds a danger.
    GainsNothing,
    /// One of the two is refused by itself.
    RefusedAlone,
}

/// Judged by what each medium does alone.
pub(super) fn worth_trying(singles: &[Way], chill: &Medium, warm: &Medium) -> Worth {
    let uses =
        |used: &Option<super::Used>, medium: &Medium| used.as_ref().is_some_and(|used| used.medium.id() == medium.id());
    let alone = singles.iter().filter(|way| {
        (uses(&way.chill, chill) && way.warm.is_none()) || (uses(&way.warm, warm) && way.chill.is_none())
    });
    let alone: Vec<&Way> = alone.collect();
    if alone.iter().any(|way| way.worked().is_none() && !way.lacks_force) {
        return Worth::RefusedAlone;
    }
    let levels = alone.iter().filter_map(|way| way.worked().map(|worked| (worked, danger(worked.hazard(way)))));
    let both = levels.clone().map(|(_, level)| level).max().unwrap_or(0);
    let gained = levels.clone().any(|(worked, level)| worked.is_comfortable() && level < both);
    if gained { Worth::GainsNothing } else { Worth::Trying }
}
