//! How hot and how cold each piece may get, and because of what.

use super::liner;
use super::model::SeatKind;
use crate::job::{CLOSURE_NOT_STATED, Job, Piece};
use crate::quantity::ThermodynamicTemperature;
use crate::stock::closure::Closure;
use crate::stock::material::{Material, TemperatureLimit};
use std::borrow::Cow;

/// A limit and what it belongs to.
pub(super) struct Limit<'j> {
    /// What has the limit, in words.
    pub(super) what: String,
    pub(super) limit: Cow<'j, TemperatureLimit>,
}

/// The materials of a piece with what they are in it, in words.
fn materials(job: &Job, piece: Piece) -> impl Iterator<Item = (String, &Material)> {
    // A second material is that of a liner.
    let names = [name(job, piece), "liner"];
    job.materials_of(piece).zip(names).map(|(material, name)| (format!("{name} ({})", material.id()), material))
}

fn name(job: &Job, piece: Piece) -> &'static str {
    match piece {
        Piece::Part => job.part.kind.noun(),
        Piece::Housing => "housing",
        Piece::Shaft => "shaft",
    }
}

/// The bearing as what its closure limits; that nobody stated the closure is said, since an open bearing bears more.
fn closed(job: &Job, closure: &Closure) -> String {
    let assumed = job.assumptions.iter().any(|assumption| assumption.why == CLOSURE_NOT_STATED);
    let unstated = if assumed { ", as no closure is stated" } else { "" };
    format!("bearing ({}{unstated})", closure.kind())
}

/// What limits chilling of a piece.
pub(super) fn cold(job: &Job, piece: Piece) -> Vec<Limit<'_>> {
    let of_material =
        materials(job, piece).map(|(what, material)| Limit { what, limit: Cow::Borrowed(material.coldest()) });
    let closure = job.part.closure.as_ref().filter(|_| piece == Piece::Part);
    let of_closure = closure.and_then(|closure| {
        closure.coldest().map(|limit| Limit { what: closed(job, closure), limit: Cow::Borrowed(limit) })
    });
    of_material.chain(of_closure).collect()
}

/// What limits warming of a piece at a seat: the piece itself, and what touches it.
pub(super) fn hot(job: &Job, seat: SeatKind, piece: Piece) -> Vec<Limit<'_>> {
    let of_material =
        materials(job, piece).map(|(what, material)| Limit { what, limit: Cow::Borrowed(material.hottest()) });
    let of_closure = job.part.closure.as_ref().map(|closure| {
        let place = if piece == Piece::Part { String::new() } else { format!(" in the warm {}", name(job, piece)) };
        Limit { what: closed(job, closure) + &place, limit: Cow::Borrowed(closure.hottest()) }
    });
    let fitted = job.seal.as_ref().filter(|seal| seat == SeatKind::Housing && seal.fitted_first);
    let of_seal = fitted.map(|seal| Limit {
        what: format!("seal ({}) in the warm housing", seal.lip.id()),
        limit: Cow::Borrowed(seal.lip.hottest()),
    });
    let of_precision = job
        .part
        .precision_limit
        .as_ref()
        .map(|limit| Limit { what: "precision bearing".into(), limit: Cow::Borrowed(limit) });
    // A pressed liner leaves a housing that grows more than it does: hotter than that nothing is gained and the liner lost.
    let of_liner = if piece == Piece::Housing { liner::hottest(job) } else { None };
    let of_liner = of_liner.map(|limit| Limit { what: "housing with its liner".into(), limit: Cow::Owned(limit) });
    of_material.chain(of_closure).chain(of_seal).chain(of_precision).chain(of_liner).collect()
}

/// What runs with a piece, and the temperatures between which it may.
pub(super) struct Running<'j> {
    /// What it is, in words.
    pub(super) what: String,
    pub(super) coldest: Option<&'j TemperatureLimit>,
    pub(super) hottest: Option<&'j TemperatureLimit>,
}

/// Limits in service of a piece's material, and of the elastomers that run with it.
pub(super) fn in_service(job: &Job, piece: Piece) -> Vec<Running<'_>> {
    let of_material = materials(job, piece).map(|(what, material)| Running {
        what,
        coldest: Some(material.coldest()),
        hottest: Some(material.hottest()),
    });
    // The closure's own hottest is a limit of fitting, not of running.
    let of_closure = job.part.closure.as_ref().filter(|_| piece == Piece::Part).map(|closure| Running {
        what: format!("closure of the bearing ({})", closure.kind()),
        coldest: closure.coldest(),
        hottest: closure.elastomer().map(|elastomer| elastomer.hottest()),
    });
    let of_seal = job.seal.as_ref().filter(|_| piece == Piece::Housing).map(|seal| Running {
        what: format!("lip of the shaft seal ({})", seal.lip.id()),
        coldest: Some(seal.lip.coldest()),
        hottest: Some(seal.lip.hottest()),
    });
    of_material.chain(of_closure).chain(of_seal).collect()
}

/// The temperature that the strictest of some cold limits allows.
pub(super) fn coldest(limits: &[Limit<'_>]) -> Option<ThermodynamicTemperature> {
    limits.iter().map(|limit| limit.limit.temperature).reduce(|a, b| if a > b { a } else { b })
}

/// The temperature that the strictest of some hot limits allows.
pub(super) fn hottest(limits: &[Limit<'_>]) -> Option<ThermodynamicTemperature> {
    limits.iter().map(|limit| limit.limit.temperature).reduce(|a, b| if a < b { a } else { b })
}
