//! What the heat or the cold of its neighbour does to a seal.

use super::Beside;
use crate::job::Seal;
use crate::plan::sentence::{Sentence, say};
use crate::quantity::{Toward, celsius};

/// Warmest housing into which a seal is put by hand, °C: common practice, no published source.
const HAND_WARM_C: f64 = 50.0;

pub(super) fn neighbour(seal: &Seal, beside: &Beside<'_>) -> Sentence {
    let Some(seat) = beside.housing else {
        return say("Nothing in the housing is warmed or chilled beside it.");
    };
    let lip = seal.lip.id();
    let mut sentence = say("");
    if let Some(warm) = &seat.warm {
        sentence = if seal.fitted_first {
            sentence
                .text("It is in the housing while that is warmed, and comes to ")
                .temperature(warm.end_quick, Toward::Up)
                .text(format!(" with it; its {lip} bears "))
                .temperature(seal.lip.hottest().temperature, Toward::Down)
                .text(". ")
        } else {
            sentence
                .text("The housing leaves its warm-up at about ")
                .temperature(warm.end_quick, Toward::Up)
                .text(format!("; its {lip} bears "))
                .temperature(seal.lip.hottest().temperature, Toward::Down)
                .text(". Put the seal in when the housing is no more than hand-warm, ")
                .temperature(celsius(HAND_WARM_C).min(seal.lip.hottest().temperature), Toward::Down)
                .text(" or less: a seal that goes in hot takes a set. ")
        };
    }
    if let Some(chill) = &seat.chill {
        let bearing = beside.bearing.unwrap_or("part");
        sentence = if seal.fitted_first {
            sentence
                .text(format!("The cold {bearing} comes beside it at "))
                .temperature(chill.end_quick, Toward::Down)
                .text(format!("; its {lip} bears "))
                .temperature(seal.lip.coldest().temperature, Toward::Up)
                .text(", and must not be bent while it is cold: do not pass the shaft through before all is at one temperature.")
        } else {
            sentence.text(format!(
                "The {bearing} is no longer cold when the seal goes in; wipe off the water that has settled on it first."
            ))
        };
    }
    if seat.warm.is_none() && seat.chill.is_none() {
        sentence = say("Nothing beside it is warmed or chilled.");
    }
    sentence
}
