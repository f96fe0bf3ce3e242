//! Media that do not suit a piece, whatever their temperature.

use crate::job::{Job, Piece};
use crate::plan::sentence::{Sentence, say};
use crate::stock::closure::ClosureKind;
use crate::stock::medium::{Hazard, Medium, Residue, Transfer};

const PRACTICE: &str = " (common practice, no published source).";

/// Why a medium must not be used on a piece; nothing where it may.
pub(super) fn refusal(job: &Job, piece: Piece, medium: &Medium) -> Option<Sentence> {
    let closed = job.part.closure.as_ref().is_some_and(|closure| closure.kind() != ClosureKind::Open);
    let bearing = piece == Piece::Part && job.part.kind.is_bearing();
    let why = match medium.residue() {
        Residue::Water if bearing => "water stays inside the bearing and rusts it",
        Residue::Oil | Residue::Solvent if bearing && closed => {
            "what it leaves gets behind the closure and into the grease of the bearing"
        }
        _ if piece == Piece::Housing && matches!(medium.transfer(), Transfer::Power(_)) => {
            "it heats a ring that is put over its yoke, not a housing"
        }
        _ => return None,
    };
    Some(say(format!("{why}{PRACTICE}")))
}

/// Why a medium that chills must not stand beside one that warms; nothing where it may.
pub(super) fn together(chill: &Medium) -> Option<Sentence> {
    let burns = chill.hazards().contains(&Hazard::FlammableSolvent);
    burns.then(|| {
        say(format!("the cold bath is a flammable solvent: nothing hot, and no flame, in the same room{PRACTICE}"))
    })
}
