//! The screws of a cover: one kind under [fasteners], or several under [[fasteners.groups]] that share the rest.

use super::entry::AnyValue;
use super::fasteners::{Fasteners, ScrewGroup};
use super::read_screw::{Kind, group};
use super::section::{Notes, Section};
use crate::assembly::screws::{Place, nearest_pair};
use crate::quantity::{self, Length};
use crate::stock::Library;
use crate::stock::material::Material;
use uom::si::length::millimeter;
use uom::si::ratio::ratio;

/// Keys of one kind of screw.
const GROUP_KEYS: [&str; 14] = [
    "thread",
    "strength",
    "count",
    "circle",
    "turned",
    "points",
    "torque",
    "torque_within",
    "friction",
    "head",
    "hole",
    "engagement",
    "into",
    "into_tensile",
];

/// Most screws of one cover.
const MOST: usize = 200;

/// Stages in which the pattern is gone round.
const STAGES: [f64; 3] = [0.3, 0.6, 1.0];
const STAGES_WHY: &str = "common practice; ASME PCC-1 has 20 to 30 %, 50 to 70 %, 100 % and a last round (from memory); state \
     stages = [\"50 %\", \"100 %\"]";

const WANTED_STAGES: &str =
    "write shares of the torque that rise to all of it, such as [\"30 %\", \"60 %\", \"100 %\"]";

/// Keys of [fasteners].
pub(super) fn keys() -> Vec<&'static str> {
    GROUP_KEYS.into_iter().chain(["groups", "stages"]).collect()
}

/// `None` only when something could not be read. `housing` is the material into which they go unless stated.
pub(super) fn fasteners(
    section: &Section<'_>,
    housing: Option<&Material>,
    library: &Library,
    notes: &mut Notes,
) -> Option<Fasteners> {
    let stages = stages(section, notes);
    let groups = if section.has("groups") {
        for key in ["count", "circle", "turned", "points"].iter().filter(|key| section.has(key)) {
            let message = format!("`{}` stands beside groups, each of which has its own", section.path(key));
            notes.problem(section.place(key), message, "move it under one of [[fasteners.groups]]");
        }
        let tables = section.sections("groups", &GROUP_KEYS, notes)?;
        if tables.is_empty() {
            let help = "write [[fasteners.groups]] for each kind of screw, or leave `groups` out";
            notes.problem(section.place("groups"), format!("`{}` is empty", section.path("groups")), help);
            return None;
        }
        let read = |table: &Section<'_>| {
            let kind = Kind { own: table, shared: Some(section) };
            group(&kind, housing, library, notes)
        };
        let groups: Vec<Option<ScrewGroup>> = tables.iter().map(read).collect();
        said_once(notes);
        groups.into_iter().collect::<Option<Vec<_>>>()?
    } else {
        vec![group(&Kind { own: section, shared: None }, housing, library, notes)?]
    };
    apart(section, &groups, notes)?;
    Some(Fasteners { groups, stages: stages? })
}

/// A value that several kinds share was read for each of them.
fn said_once(notes: &mut Notes) {
    let mut entered: Vec<String> = Vec::new();
    notes.entries.retain(|entry| {
        let shared = entry.key.starts_with("fasteners.") && !entry.key.starts_with("fasteners.groups[");
        let again = shared && entered.contains(&entry.key);
        entered.push(entry.key.clone());
        !again
    });
    let mut assumed = Vec::new();
    notes.assumptions.retain(|assumption| {
        let again = assumption.what.starts_with("fasteners.") && assumed.contains(&assumption.what);
        assumed.push(assumption.what.clone());
        !again
    });
}

/// Heads that would stand in each other are a slip.
fn apart(section: &Section<'_>, groups: &[ScrewGroup], notes: &mut Notes) -> Option<()> {
    let places: Vec<Place> = groups.iter().flat_map(|group| group.places.iter().copied()).collect();
    let heads: Vec<Length> =
        groups.iter().flat_map(|group| std::iter::repeat_n(group.head, group.places.len())).collect();
    if places.len() > MOST {
        let message = format!("the pattern has {} screws; it may have at most {MOST}", places.len());
        notes.problem(section.at.clone(), message, "leave out what does not belong to this cover");
        return None;
    }
    let Some((one, other, distance, needed)) = nearest_pair(&places, &heads) else { return Some(()) };
    let mm = |length: Length| length.get::<millimeter>();
    let message = format!(
        "screws {} and {} are {:.2} mm apart, but their heads need {:.1} mm",
        one + 1,
        other + 1,
        mm(distance),
        mm(needed)
    );
    let key = if section.has("groups") { "groups" } else { "points" };
    let at = if section.has(key) { section.place(key) } else { section.place("circle") };
    notes.problem(
        at,
        message,
        "give each screw a place of its own: is a point entered twice, or the circle too small?",
    );
    None
}

fn stages(section: &Section<'_>, notes: &mut Notes) -> Option<Vec<f64>> {
    if !section.has("stages") {
        let words: Vec<String> = STAGES.iter().map(|share| format!("{:.0} %", 100.0 * share)).collect();
        notes.assume(section.path("stages"), AnyValue::Text(words.join(", ")), STAGES_WHY);
        return Some(STAGES.to_vec());
    }
    let words = section.word_list("stages", WANTED_STAGES, notes)?;
    let mut shares = Vec::new();
    for word in &words {
        shares.push(section.parse_words("stages", word, quantity::share, notes)?.value.get::<ratio>());
    }
    let rising = shares.windows(2).all(|pair| pair[0] < pair[1]);
    let whole = shares.last().is_some_and(|last| (last - 1.0).abs() < 1e-9);
    if !(rising && whole && shares[0] >= 0.05 && shares.len() <= 6) {
        let message =
            format!("`{}` must rise from 5 % or more to 100 %, in at most six stages", section.path("stages"));
        notes.problem(section.place("stages"), message, WANTED_STAGES);
        return None;
    }
    Some(shares)
}
