//! What stands along the axis: the parts on a shoulder with their ring, or two bearings and their spacer.

use super::entry::AnyValue;
use super::model::Part;
use super::model_stack::{AxialSize, BearingPair, Bed, Stack};
use super::read_axial::{Usual, axial};
use super::read_stack_parts::parts;
use super::read_stack_ring::{groove_width, place, ring};
use super::section::{Notes, Section, flatten, in_mm};
use crate::quantity::Length;
use crate::stock::retaining_rings::RingPlace;

pub(super) const KEYS: [&str; 10] =
    ["depth", "groove", "ring", "bearing", "seal", "spacer", "shim", "order", "play", "pair"];

/// What the stack belongs to.
pub(super) struct Place<'p> {
    pub(super) part: &'p Part,
    pub(super) housing: bool,
}

pub(super) fn stack(section: &Section<'_>, of: &Place<'_>, notes: &mut Notes) -> Option<Stack> {
    let pair = flatten(section.has("pair").then(|| pair(section, notes)));
    let bed_keys = KEYS.iter().filter(|key| **key != "pair");
    let wanted = bed_keys.into_iter().any(|key| section.has(key));
    if !wanted && !section.has("pair") {
        notes.problem(
            section.at.clone(),
            "`stack` is empty",
            "give depth, groove and ring, or a pair; the README shows both",
        );
        return None;
    }
    let bed = flatten(wanted.then(|| bed(section, of, notes)));
    Some(Stack { bed: bed?.map(Box::new), pair: pair? })
}

fn pair(section: &Section<'_>, notes: &mut Notes) -> Option<BearingPair> {
    let table = section.section("pair", &["shoulders", "spacer"], notes)?;
    table.missing("shoulders", "give the distance of the two shoulders of the outer rings", notes);
    table.missing("spacer", "give the length of the spacer between the inner rings", notes);
    let shoulders = axial(&table, "shoulders", &Usual::General, notes);
    let spacer = axial(&table, "spacer", &Usual::General, notes);
    Some(BearingPair { shoulders: shoulders?, spacer: spacer? })
}

fn bed(section: &Section<'_>, of: &Place<'_>, notes: &mut Notes) -> Option<Bed> {
    let place = place(section, of, notes);
    let depth = flatten(section.has("depth").then(|| axial(section, "depth", &Usual::General, notes)));
    section.missing(
        "groove",
        "give groove = { from_face = \"3 mm ±0.1 mm\" } or { from_shoulder = ... }: to the wall that holds the ring",
        notes,
    );
    let groove = section.section("groove", &["from_face", "from_shoulder", "width"], notes);
    let parts = parts(section, of, notes);
    let (least_play, most_play) = play(section, notes)?;
    let place = place?;
    let nominal = match place {
        RingPlace::Bore => of.part.outside,
        RingPlace::Shaft => of.part.bore?,
    };
    let ring = ring(section, place, nominal, notes);
    let groove = groove?;
    let width = groove_width(&groove, ring.as_ref().and_then(|ring| ring.row), notes);
    let (from_face, from_shoulder) = walls(section, &groove, notes)?;
    let bed = Bed {
        place,
        depth: depth?,
        from_face,
        from_shoulder,
        groove_width: width?,
        parts: parts?,
        ring: ring?.ring,
        least_play,
        most_play,
    };
    inside(section, &bed, notes).then_some(bed)
}

/// Where the wall that holds the ring stands: from the face, with the depth of the shoulder, or from the shoulder.
fn walls(
    section: &Section<'_>,
    groove: &Section<'_>,
    notes: &mut Notes,
) -> Option<(Option<AxialSize>, Option<AxialSize>)> {
    let help = "give one of the two: from_face with depth, or from_shoulder; each to the wall that holds the ring";
    match (groove.has("from_face"), groove.has("from_shoulder")) {
        (true, false) => {
            let from_face = axial(groove, "from_face", &Usual::General, notes);
            section.missing(
                "depth",
                "give the depth of the shoulder below the face, such as \"24 mm ±0.05 mm\"",
                notes,
            );
            if !section.has("depth") {
                return None;
            }
            Some((Some(from_face?), None))
        }
        (false, true) => Some((None, Some(axial(groove, "from_shoulder", &Usual::General, notes)?))),
        (both, _) => {
            let message =
                if both { "both `from_face` and `from_shoulder` are given" } else { "the groove has no place" };
            notes.problem(groove.at.clone(), format!("`stack.groove`: {message}"), help);
            None
        }
    }
}

/// Refuses a groove that does not lie between the face and the shoulder.
fn inside(section: &Section<'_>, bed: &Bed, notes: &mut Notes) -> bool {
    let (width, at) = (in_mm(bed.groove_width.nominal), section.place_in("groove", "from_face"));
    let refused = match (&bed.depth, &bed.from_face, &bed.from_shoulder) {
        (Some(depth), Some(from_face), _) => {
            let (depth, wall) = (in_mm(depth.nominal), in_mm(from_face.nominal));
            (wall + width >= depth).then(|| {
                format!(
                    "the groove runs from {wall} mm to {} mm below the face, but the bore ends at the shoulder, {depth} mm \
                     below it",
                    ((wall + width) * 1e5).round() / 1e5
                )
            })
        }
        (depth, _, Some(from_shoulder)) => {
            let wall = in_mm(from_shoulder.nominal);
            let beyond = depth.as_ref().map(|depth| in_mm(depth.nominal)).filter(|depth| wall >= *depth);
            match beyond {
                Some(depth) => Some(format!(
                    "the groove's wall stands {wall} mm from the shoulder, but the face is only {depth} mm from it"
                )),
                None if wall <= width => {
                    Some(format!("a groove {width} mm wide ends {wall} mm from the shoulder: it would cut into it"))
                }
                None => None,
            }
        }
        _ => None,
    };
    if let Some(message) = &refused {
        let help = "the groove must lie between face and shoulder: measure to the wall that the ring is pushed against";
        notes.problem(at, message, help);
    }
    refused.is_none()
}

/// The play that is wanted: at least nothing, and any more, unless stated.
fn play(section: &Section<'_>, notes: &mut Notes) -> Option<(Length, Option<Length>)> {
    if !section.has("play") {
        let why = "not stated: the ring goes in, and more play does no harm; state play = { least = \"0.05 mm\", most = \"0.3 mm\" }";
        notes.assume(section.path("play"), AnyValue::Text("none or more".to_owned()), why);
        return Some((Length::default(), None));
    }
    let table = section.section("play", &["least", "most"], notes)?;
    let least = flatten(table.has("least").then(|| table.small_length("least", notes)))?;
    let most = flatten(table.has("most").then(|| table.small_length("most", notes)))?;
    let least_value = least.as_ref().map_or(Length::default(), |found| found.value);
    let (key, at) = match (&least, &most) {
        (Some(least), _) if least.value < Length::default() => ("least", least.at.clone()),
        (_, Some(most)) if most.value < least_value => ("most", most.at.clone()),
        _ => return Some((least_value, most.map(|found| found.value))),
    };
    let given = most.map_or(String::new(), |most| format!(" to {} mm", in_mm(most.value)));
    let message = format!(
        "`{}` cannot be: the play is wanted from {} mm{given}, and must be zero or more, least before most",
        table.path(key),
        in_mm(least_value)
    );
    notes.problem(
        at,
        message,
        "exchange the two, or check their signs: a play below zero is a ring that does not go in",
    );
    None
}
