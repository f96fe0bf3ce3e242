//! Temperatures of a seat in its section, in the document.

use super::figures;
use super::units::{celsius, mm, mpa, seconds, um};
use crate::plan::Plan;
use crate::plan::in_section::{PieceHeat, Race, SectionHeat, Spread};
use crate::quantity::Time;
use crate::report::words;
use schemars::JsonSchema;
use serde::Serialize;

/// Temperatures of a seat by conduction in its section.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SectionHeatDocument {
    /// Pieces that are followed in their section; any other comes to the seat with one temperature.
    pub pieces: Vec<PieceHeatDocument>,
    /// Clearance of the tightest case along the seat as the part reaches it, from the back face of the ring.
    pub along: Vec<AlongDocument>,
    /// The same seat with one temperature for each body.
    pub one_body: OneBodyDocument,
    /// The part in its seat; null where the tightest case does not go in, or is free for longer than is followed (30 min).
    pub race: Option<RaceDocument>,
}

/// A piece in its section.
#[derive(Debug, JsonSchema, Serialize)]
pub struct PieceHeatDocument {
    /// Which.
    pub part: String,
    /// On leaving its medium.
    pub end: SpreadDocument,
    /// As the part reaches the seat.
    pub at_bore: SpreadDocument,
    /// One temperature for the whole piece on leaving its medium.
    pub one_body_end_c: f64,
    /// Largest stress of its uneven temperature: tension of a brittle material, von Mises of any other.
    pub stress_mpa: f64,
    /// That stress over the strength of the material.
    pub stress_share: f64,
    /// When, since the first piece went into its medium.
    pub stress_after_s: f64,
}

/// Temperatures of a piece at one moment.
#[derive(Debug, JsonSchema, Serialize)]
pub struct SpreadDocument {
    /// Mean over the volume.
    pub mean_c: f64,
    /// Coldest place.
    pub least_c: f64,
    /// Warmest place.
    pub most_c: f64,
    /// The even temperature at which its seat would be as large.
    pub fit_c: f64,
}

/// Clearance at a place.
#[derive(Debug, JsonSchema, Serialize)]
pub struct AlongDocument {
    /// Distance from the back face of the ring.
    pub position_mm: f64,
    /// Clearance on the diameter, of the free parts.
    pub clearance_um: f64,
}

/// The seat with one temperature for each body.
#[derive(Debug, JsonSchema, Serialize)]
pub struct OneBodyDocument {
    /// Inner part as it reaches the seat.
    pub inner_c: f64,
    /// Outer part then.
    pub outer_c: f64,
    /// Clearance of the tightest case then.
    pub clearance_um: f64,
    /// When the tightest case grips; null where it does not, or does not go in.
    pub grip_s: Option<f64>,
}

/// The part in its seat.
#[derive(Debug, JsonSchema, Serialize)]
pub struct RaceDocument {
    /// When the tightest case first touches anywhere; null where it does not while it is followed.
    pub first_touch_s: Option<f64>,
    /// When the tightest case grips, its mean clearance gone.
    pub grip_s: Option<f64>,
    /// The same when it lies on one side from the beginning; null where it does not grip while it is followed.
    pub one_sided_s: Option<f64>,
    /// Least, mean and largest clearance along the seat against time, tightest case.
    pub clearance: Vec<ClearingDocument>,
}

/// Clearance along the seat at one moment.
#[derive(Debug, JsonSchema, Serialize)]
pub struct ClearingDocument {
    /// Time in the seat.
    pub after_s: f64,
    /// At the tightest place.
    pub least_um: f64,
    /// In the mean; the seat grips when it is gone.
    pub mean_um: f64,
    /// At the widest place.
    pub most_um: f64,
}

pub(super) fn document(plan: &Plan<'_>, heat: &SectionHeat) -> SectionHeatDocument {
    let one = &heat.one_body;
    SectionHeatDocument {
        pieces: heat.pieces.iter().map(|followed| followed_piece(plan, followed)).collect(),
        along: heat
            .along
            .iter()
            .map(|(position, clearance)| AlongDocument { position_mm: mm(*position), clearance_um: um(*clearance) })
            .collect(),
        one_body: OneBodyDocument {
            inner_c: celsius(one.inner),
            outer_c: celsius(one.outer),
            clearance_um: um(one.clearance),
            grip_s: one.grip.map(seconds),
        },
        race: heat.race.as_ref().map(race),
    }
}

fn followed_piece(plan: &Plan<'_>, followed: &PieceHeat) -> PieceHeatDocument {
    PieceHeatDocument {
        part: words::piece(plan.job, followed.piece).to_owned(),
        end: spread(&followed.end),
        at_bore: spread(&followed.at_bore),
        one_body_end_c: celsius(followed.one_body_end),
        stress_mpa: mpa(followed.stress.stress),
        stress_share: figures(followed.stress.share),
        stress_after_s: seconds(followed.stress.after),
    }
}

fn spread(spread: &Spread) -> SpreadDocument {
    SpreadDocument {
        mean_c: celsius(spread.mean),
        least_c: celsius(spread.least),
        most_c: celsius(spread.most),
        fit_c: celsius(spread.fit),
    }
}

fn race(race: &Race) -> RaceDocument {
    let entry = |(time, [least, mean, most]): &(Time, [_; 3])| ClearingDocument {
        after_s: seconds(*time),
        least_um: um(*least),
        mean_um: um(*mean),
        most_um: um(*most),
    };
    RaceDocument {
        first_touch_s: race.first_touch.map(seconds),
        grip_s: race.grip.tightest.map(seconds),
        one_sided_s: race.one_sided.map(seconds),
        clearance: race.clearance.iter().map(entry).collect(),
    }
}
