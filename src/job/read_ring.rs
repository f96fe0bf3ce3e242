//! What a ring has beyond plain cylinders: chamfers at its seat, and the groove that the balls run in.

use super::entry::AnyValue;
use super::model::{PartKind, RacewayGroove, RingShape};
use super::section::{Found, Notes, Section, in_mm};
use crate::quantity::{self, Length, Nanometres};
use crate::stock::chamfers;

const GROOVE_KEYS: [&str; 3] = ["depth", "width", "middle"];
const GROOVE_HELP: &str =
    "write groove = { depth = \"1.7 mm\", width = \"7.5 mm\" }, or \"estimated\" for a ball bearing";

/// Most that both chamfers together may take of the width, and chamfer and groove together of the wall: the section needs the
/// rest to be divided.
const MOST_OF_WIDTH: f64 = 0.9;
const MOST_OF_WALL: f64 = 0.8;

/// Diameter of the balls over (outside - bore) of a single-row deep groove ball bearing.
///
/// Common practice, no published source; a 6206 has balls of 9.525 mm, which is 0.298 (from memory).
const BALL_SHARE: f64 = 0.3;
/// Radius of the groove's arc over the ball's diameter. Common practice, no published source (from memory: 0.515 to 0.53).
const ARC_SHARE: f64 = 0.52;
/// Depth of the groove over the ball's diameter. Common practice, no published source (from memory: 0.17 to 0.2).
const DEPTH_SHARE: f64 = 0.18;
const ESTIMATED_WHY: &str = "common practice, no published source: balls of 0.30 (outside - bore), a groove with an arc of 0.52 and \
                             a depth of 0.18 of the ball, in the middle of the width";

/// The plain rings whose walls chamfers and groove go into: sizes of the part as read.
pub(super) struct Plain {
    pub(super) kind: PartKind,
    pub(super) bore: Option<Length>,
    pub(super) outside: Length,
    pub(super) width: Length,
    /// Walls of the rings that the job seats.
    pub(super) walls: Vec<Length>,
}

/// `None` only when something was refused.
pub(super) fn ring_shape(section: &Section<'_>, plain: &Plain, notes: &mut Notes) -> Option<RingShape> {
    let stated = chamfer(section, plain, notes)?;
    let groove = groove(section, plain, stated.unwrap_or_default(), notes)?;
    let chamfer = stated.unwrap_or_else(|| standard_chamfer(section, plain, groove, notes));
    Some(RingShape { chamfer, groove })
}

/// The least chamfer of a ball bearing that states none: its seat is then as long as it can be, and takes the most force. A sharp
/// edge where no table knows the size, or the chamfer does not fit the ring as the job has it.
fn standard_chamfer(section: &Section<'_>, plain: &Plain, groove: Option<RacewayGroove>, notes: &mut Notes) -> Length {
    if !plain.kind.is_bearing() {
        return Length::default();
    }
    let sharp = |notes: &mut Notes, why: &'static str| {
        notes.assume(section.path("chamfer"), AnyValue::Text("none".to_owned()), why);
        Length::default()
    };
    let ball = plain.bore.filter(|_| plain.kind == PartKind::BallBearing);
    let of = |bore: Length| {
        let [bore, outside, width] = [bore, plain.outside, plain.width].map(Nanometres::from_length);
        chamfers::of_ball_bearing(bore, outside, width).ok().flatten()
    };
    let Some(limits) = ball.and_then(of) else {
        return sharp(
            notes,
            "no table of chamfers knows these sizes: a sharp edge, with which the seat is longest; state it",
        );
    };
    let least = limits.least.length();
    let under_groove = thinnest(plain).map(|wall| match groove {
        Some(groove) => (wall + groove.mean_depth(plain.width)) * MOST_OF_WALL - groove.depth,
        None => wall * MOST_OF_WALL,
    });
    if least > most_chamfer(plain) || under_groove.is_some_and(|most| least > most) {
        return sharp(
            notes,
            "the chamfer of ISO 15 does not fit the ring as the job has it: a sharp edge; state the chamfer",
        );
    }
    let why = format!("least of ISO 15 ({}); ISO 582 allows {} mm", chamfers::LEAST_FROM, limits.axial.mm());
    notes.assume(section.path("chamfer"), AnyValue::Size(least), why);
    least
}

fn thinnest(plain: &Plain) -> Option<Length> {
    plain.walls.iter().copied().reduce(Length::min)
}

/// Largest chamfer that leaves enough of width and wall.
fn most_chamfer(plain: &Plain) -> Length {
    (plain.width * (0.5 * MOST_OF_WIDTH)).min(thinnest(plain).unwrap_or(plain.width) * MOST_OF_WALL)
}

/// What the job states, or nothing; outer `None` only where it was refused.
fn chamfer(section: &Section<'_>, plain: &Plain, notes: &mut Notes) -> Option<Option<Length>> {
    if !section.has("chamfer") {
        return Some(None);
    }
    let found = section.quantity("chamfer", quantity::length, notes)?;
    let most = most_chamfer(plain);
    if found.value > most {
        let message = format!(
            "a chamfer of {} mm does not fit a ring {} mm wide; it may have {} mm at most",
            in_mm(found.value),
            in_mm(plain.width),
            in_mm(most)
        );
        notes.problem(found.at, message, "give the length of the chamfer along the seat, at one end");
        return None;
    }
    Some(Some(found.value))
}

fn groove(section: &Section<'_>, plain: &Plain, chamfer: Length, notes: &mut Notes) -> Option<Option<RacewayGroove>> {
    if !section.has("groove") {
        return Some(None);
    }
    let groove = if section.is_table("groove") {
        stated(section, plain, notes)?
    } else {
        let words = section.words("groove", GROOVE_HELP, notes)?;
        if !words.text.trim().eq_ignore_ascii_case("estimated") {
            notes.problem(words.at, format!("`{}` is no groove", words.text), GROOVE_HELP);
            return None;
        }
        let Some(bore) = plain.bore.filter(|_| plain.kind == PartKind::BallBearing) else {
            let message = format!("the groove of a {} cannot be estimated", plain.kind.name());
            notes.problem(words.at, message, "give its depth and width, or leave it out");
            return None;
        };
        let groove = estimated(plain, bore);
        notes.assume(section.path("groove.depth"), AnyValue::Size(groove.depth), ESTIMATED_WHY);
        groove
    };
    fits(section, plain, (chamfer, groove), notes).then_some(Some(groove))
}

fn stated(section: &Section<'_>, plain: &Plain, notes: &mut Notes) -> Option<RacewayGroove> {
    let table = section.section("groove", &GROOVE_KEYS, notes)?;
    table.missing("depth", "give the largest depth of the groove", notes);
    table.missing("width", "give the width of the groove between its edges", notes);
    let depth = table.quantity("depth", quantity::length, notes);
    let width = table.quantity("width", quantity::length, notes);
    let middle: Option<Found<Length>> = table.quantity("middle", quantity::length, notes);
    if table.has("middle") && middle.is_none() {
        return None;
    }
    let middle = middle.map_or(plain.width * 0.5, |found| found.value);
    Some(RacewayGroove { depth: depth?.value, width: width?.value, middle })
}

fn estimated(plain: &Plain, bore: Length) -> RacewayGroove {
    let ball = (plain.outside - bore) * BALL_SHARE;
    // Chord of an arc: 2 √(2 r h - h²).
    let width = ball * (2.0 * (2.0 * ARC_SHARE * DEPTH_SHARE - DEPTH_SHARE * DEPTH_SHARE).sqrt());
    RacewayGroove { depth: ball * DEPTH_SHARE, width, middle: plain.width * 0.5 }
}

/// Whether the groove lies within the ring and leaves enough of its wall.
fn fits(section: &Section<'_>, plain: &Plain, (chamfer, groove): (Length, RacewayGroove), notes: &mut Notes) -> bool {
    let at = section.place("groove");
    let half = groove.width * 0.5;
    let (from, to) = (groove.middle - half, groove.middle + half);
    let mut good = true;
    if from < Length::default() || to > plain.width {
        let message = format!(
            "the groove runs from {} to {} mm and the ring is {} mm wide",
            in_mm(from),
            in_mm(to),
            in_mm(plain.width)
        );
        notes.problem(at.clone(), message, "`middle` is its distance from the back face, the one towards the shoulder");
        good = false;
    }
    let wall = thinnest(plain).unwrap_or(plain.width) + groove.mean_depth(plain.width);
    let most = (wall * MOST_OF_WALL - chamfer).min(half);
    if groove.depth > most {
        let message = format!(
            "a groove {} mm deep does not fit a ring with a wall of {} mm; it may have {} mm at most",
            in_mm(groove.depth),
            in_mm(wall),
            in_mm(most.max(Length::default()))
        );
        notes.problem(at, message, "it must leave a fifth of the wall and be no deeper than half its width");
        good = false;
    }
    good
}
