//! The play of a stack, its ring and groove, and two bearings with their spacer.

use crate::assembly::stack::Ends;
use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level, PRACTICE};
use crate::plan::sentence::{Sentence, say};
use crate::plan::stack::{BedPlan, Binds, Closes, PairPlan, SpacerFit, StackPlan};
use crate::quantity::{Length, Ratio, Toward};
use uom::si::ratio::ratio;

const CHAIN: &str = "worst case of the dimensions as given; ISO 492 widths and DIN 471, DIN 472 rings as listed";
const GROOVE: &str = "DIN 471, DIN 472 (row by row in fits/retaining_rings.csv; land from memory)";

pub(super) fn of_job(plan: &StackPlan, found: &mut Vec<Caution>) {
    if let Some(bed) = &plan.bed {
        closing(bed, found);
        groove(bed, found);
        land(bed, found);
        too_much(bed, found);
        found.push(Caution::new("retaining-ring", Level::Warning, say(SPRINGS), PRACTICE));
    }
    if let Some(pair) = &plan.pair {
        spacer(pair, found);
    }
}

const SPRINGS: &str = "A retaining ring flies off its pliers with force: eye protection, pliers whose pins fill its holes, a hand or a cloth \
                       over it, nobody in line with it; never spread or close it further than it needs to pass.";

fn size(sentence: Sentence, length: Length) -> Sentence {
    sentence.value(AnyValue::Size(length), Toward::Nearest)
}

/// A ring that does not go into its groove, or has less play than wanted.
fn closing(bed: &BedPlan, found: &mut Vec<Caution>) {
    let play = |sentence: Sentence| size(size(sentence, bed.play.least).text(" to "), bed.play.most);
    let wide = &bed.rows[bed.widest];
    let mend = |sentence: Sentence, missing: Length| {
        let sentence = size(sentence.text(" At the worst "), missing)
            .text(" is missing: the steps of the stack say where to take it off");
        size(sentence.text(format!("; of the limits, those of the {} are the widest, ", wide.what)), bed.widest_by)
            .text(" apart.")
    };
    let missing = bed.least_wanted - bed.play.least;
    let caution = match bed.closes {
        Closes::Never => Caution::new(
            "stack-cannot-close",
            Level::Warning,
            mend(
                play(say(format!("The {} cannot go into its groove: the play left for it is ", bed.ring)))
                    .text(", where it must be zero or more. Do not press until it is mended."),
                missing,
            ),
            CHAIN,
        ),
        Closes::Sometimes => Caution::new(
            "stack-may-not-close",
            Level::Warning,
            mend(
                play(say(format!("The {} does not go into its groove in every case: the play left is ", bed.ring)))
                    .text(", and in ")
                    .value(AnyValue::Share(Ratio::new::<ratio>(bed.share_short)), Toward::Up)
                    .text(
                        " of all assemblies it is too little, if any size within its limits is as likely as any other.",
                    ),
                missing,
            ),
            CHAIN,
        ),
        Closes::Always if missing > Length::default() => Caution::new(
            "stack-little-play",
            Level::Caution,
            mend(
                size(play(say("The play left is ")).text(", less at the worst than the "), bed.least_wanted)
                    .text(" that is wanted."),
                missing,
            ),
            CHAIN,
        ),
        Closes::Always => return,
    };
    found.push(caution);
}

/// A ring that is thicker than its groove is wide.
fn groove(bed: &BedPlan, found: &mut Vec<Caution>) {
    if bed.slack.0 >= Length::default() {
        return;
    }
    let sentence = say(format!("The {} may be thicker than its groove is wide: width less thickness is ", bed.ring));
    let sentence = size(size(sentence, bed.slack.0).text(" to "), bed.slack.1)
        .text(", where it must be above zero in every case. Widen the groove, or take the ring that belongs to it.");
    found.push(Caution::new("ring-in-groove", Level::Warning, sentence, GROOVE));
}

/// A groove so near the face that its land may break out.
fn land(bed: &BedPlan, found: &mut Vec<Caution>) {
    let Some((land, wanted)) = bed.land.filter(|(land, wanted)| land < wanted) else { return };
    let sentence = size(say("Between the groove and the face "), land);
    let sentence = size(sentence.text(" is left where at least "), wanted)
        .text(" should be: the land may break out under load. Move the groove inward, or load the ring less.");
    found.push(Caution::new("groove-land", Level::Caution, sentence, GROOVE));
}

/// More play than wanted.
fn too_much(bed: &BedPlan, found: &mut Vec<Caution>) {
    let Some(most) = bed.most_wanted.filter(|most| bed.play.most > *most) else { return };
    let sentence = size(size(say("The play may be up to "), bed.play.most).text(", more than the "), most).text(
        " that is wanted. A shim of the difference, chosen by the measured gap, takes it up; the steps of the stack give the range.",
    );
    found.push(Caution::new("stack-much-play", Level::Caution, sentence, CHAIN));
}

const APART: &str = "with both outer rings driven home it pushes the inner rings apart, out of the middle of their outer rings, and not \
                     evenly: the bearing that is driven last takes it up";
const TOGETHER: &str = "with both outer rings home the axle draws the inner rings together when it is tightened";

/// Inner rings that are pushed apart, or drawn together.
fn spacer(pair: &PairPlan, found: &mut Vec<Caution>) {
    let Ends { least, middle, most } = pair.difference;
    let range = |sentence: Sentence| size(size(sentence.text(", over the limits "), least).text(" to "), most);
    let sentence = match pair.fit {
        SpacerFit::Equal => return,
        SpacerFit::Longer => {
            range(size(say("The spacer is "), middle).text(" longer (+) than the shoulders are apart"))
                .text(format!(": {APART}"))
        }
        SpacerFit::Shorter => {
            range(size(say("The spacer is "), -middle).text(" shorter (-) than the shoulders are apart"))
                .text(format!(": {TOGETHER}"))
        }
        SpacerFit::Either => {
            let sentence = size(say("The spacer may be up to "), most).text(" longer (+) or up to ");
            size(sentence, -least)
                .text(format!(" shorter (-) than the shoulders are apart. Too long, {APART}; too short, {TOGETHER}"))
        }
    };
    let (sentence, level) = match pair.axial_play.zip(pair.binds) {
        Some(((least, most), binds)) => {
            let sentence = size(
                size(sentence.text(". The axial play of a bearing as fitted is about "), least).text(" to "),
                most,
            );
            match binds {
                Binds::Always => (sentence.text(": the bearings bind."), Level::Warning),
                Binds::Sometimes => (sentence.text(": the bearings may bind."), Level::Warning),
                Binds::Never => {
                    (sentence.text(": it takes up part of it, and the bearings do not bind."), Level::Caution)
                }
            }
        }
        None => (
            sentence.text(". Beyond the axial play of the bearings, which is not stated here, they bind."),
            Level::Warning,
        ),
    };
    let sentence = sentence.text(match pair.fit {
        SpacerFit::Longer => " Drive the second bearing only until its inner ring touches the spacer.",
        SpacerFit::Shorter => " Shim the spacer by the difference.",
        _ => " Measure both, and go by the sign of the difference.",
    });
    let source = format!(
        "axial play from the free contact angle, Harris (from memory), grooves of 0.52 of the ball; driving order {PRACTICE}"
    );
    found.push(Caution::new("spacer-length", level, sentence, source));
}
