//! How hot and how cold each piece may get, and because of what.

use super::liner;
use super::model::SeatKind;
use crate::job::{CLOSURE_NOT_STATED, Job, Piece};
use crate::quantity::ThermodynamicTemperature;
use crate::stock::closure::{Closure, Elastomer};
use crate::stock::material::{Material, TemperatureLimit};
use std::borrow::Cow;
use std::fmt;

/// A limit and what it belongs to.
pub(super) struct Limit<'j> {
    /// What has the limit.
    pub(super) of: Holder<'j>,
    pub(super) limit: Cow<'j, TemperatureLimit>,
}

/// What has a limit. It is put into words where a caution names it: a plan looks at many limits, and names few.
#[derive(Clone, Copy)]
pub(super) enum Holder<'j> {
    /// A piece, or the liner in it, of a material.
    Made(&'static str, &'j Material),
    /// The bearing by its closure, in another piece that is warm.
    Closed { closure: &'j Closure, assumed: bool, warm: Option<&'static str> },
    /// The closure alone.
    Closure(&'j Closure),
    /// The seal that is in the housing before it is warmed.
    Seal(&'j Elastomer),
    /// The lip of the seal alone.
    Lip(&'j Elastomer),
    /// A thing that needs no more words.
    Thing(&'static str),
}

impl fmt::Display for Holder<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Made(piece, material) => write!(f, "{piece} ({})", material.id()),
            Self::Closed { closure, assumed, warm } => {
                let unstated = if *assumed { ", as no closure is stated" } else { "" };
                write!(f, "bearing ({}{unstated})", closure.kind())?;
                warm.map_or(Ok(()), |piece| write!(f, " in the warm {piece}"))
            }
            Self::Closure(closure) => write!(f, "closure of the bearing ({})", closure.kind()),
            Self::Seal(lip) => write!(f, "seal ({}) in the warm housing", lip.id()),
            Self::Lip(lip) => write!(f, "lip of the shaft seal ({})", lip.id()),
            Self::Thing(name) => f.write_str(name),
        }
    }
}

/// The materials of a piece with what they are in it.
fn materials(job: &Job, piece: Piece) -> impl Iterator<Item = (Holder<'_>, &Material)> {
    // A second material is that of a liner.
    let names = [name(job, piece), "liner"];
    job.materials_of(piece).zip(names).map(|(material, name)| (Holder::Made(name, material), material))
}

fn name(job: &Job, piece: Piece) -> &'static str {
    match piece {
        Piece::Part => job.part.kind.noun(),
        Piece::Housing => "housing",
        Piece::Shaft => "shaft",
    }
}

/// The bearing as what its closure limits; that nobody stated the closure is said, since an open bearing bears more.
fn closed<'j>(job: &Job, closure: &'j Closure, warm: Option<&'static str>) -> Holder<'j> {
    let assumed = job.assumptions.iter().any(|assumption| assumption.why == CLOSURE_NOT_STATED);
    Holder::Closed { closure, assumed, warm }
}

/// What limits chilling of a piece.
pub(super) fn cold(job: &Job, piece: Piece) -> Vec<Limit<'_>> {
    let of_material =
        materials(job, piece).map(|(of, material)| Limit { of, limit: Cow::Borrowed(material.coldest()) });
    let closure = job.part.closure.as_ref().filter(|_| piece == Piece::Part);
    let of_closure = closure.and_then(|closure| {
        closure.coldest().map(|limit| Limit { of: closed(job, closure, None), limit: Cow::Borrowed(limit) })
    });
    of_material.chain(of_closure).collect()
}

/// What limits warming of a piece at a seat: the piece itself, and what touches it.
pub(super) fn hot(job: &Job, seat: SeatKind, piece: Piece) -> Vec<Limit<'_>> {
    let of_material =
        materials(job, piece).map(|(of, material)| Limit { of, limit: Cow::Borrowed(material.hottest()) });
    let of_closure = job.part.closure.as_ref().map(|closure| {
        let warm = (piece != Piece::Part).then(|| name(job, piece));
        Limit { of: closed(job, closure, warm), limit: Cow::Borrowed(closure.hottest()) }
    });
    let fitted = job.seal.as_ref().filter(|seal| seat == SeatKind::Housing && seal.fitted_first);
    let of_seal = fitted.map(|seal| Limit { of: Holder::Seal(&seal.lip), limit: Cow::Borrowed(seal.lip.hottest()) });
    let of_precision = job
        .part
        .precision_limit
        .as_ref()
        .map(|limit| Limit { of: Holder::Thing("precision bearing"), limit: Cow::Borrowed(limit) });
    // A pressed liner leaves a housing that grows more than it does: hotter than that nothing is gained and the liner lost.
    let of_liner = if piece == Piece::Housing { liner::hottest(job) } else { None };
    let of_liner =
        of_liner.map(|limit| Limit { of: Holder::Thing("housing with its liner"), limit: Cow::Owned(limit) });
    of_material.chain(of_closure).chain(of_seal).chain(of_precision).chain(of_liner).collect()
}

/// What runs with a piece, and the temperatures between which it may.
pub(super) struct Running<'j> {
    pub(super) what: Holder<'j>,
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
        what: Holder::Closure(closure),
        coldest: closure.coldest(),
        hottest: closure.elastomer().map(|elastomer| elastomer.hottest()),
    });
    let of_seal = job.seal.as_ref().filter(|_| piece == Piece::Housing).map(|seal| Running {
        what: Holder::Lip(&seal.lip),
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
