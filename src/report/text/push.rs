//! Force against time, the wall, what presses, what draws it off, and the play that is left.

use super::paragraph::Page;
use super::show::Show;
use super::table::Table;
use crate::job::{PressMeans, ServiceEnd};
use crate::mechanics::{ClearanceRange, Landing, WallPlace};
use crate::plan::push::{ForceCourse, InternalClearancePlan, MeansPlan, Removal, ScrewPlan, WallPlan};
use crate::plan::{LinerPlan, Plan, SeatPlan};
use crate::quantity::{Cases, Force, System, Toward, show_duration, show_force, show_pressure, show_torque};
use crate::report::words::{plain, turned};

/// What pushing the part home, holding it and drawing it off takes.
pub(super) fn details(plan: &Plan<'_>, seat: &SeatPlan, show: Show, page: &mut Page) {
    page.paragraph(&pressing(plan, seat, show));
    if let Some(text) = course(seat, &seat.force_course, show) {
        page.paragraph(&text);
    }
    if let Some(liner) = &seat.liner {
        page.paragraph(&liner_text(liner, show));
    }
    if let Some(wall) = &seat.wall {
        page.paragraph(&wall_text(plan, wall, show));
    }
    if let Some(means) = &seat.means {
        page.paragraph(&means_text(plan, means, show));
    }
    page.paragraph(&removal(seat, &seat.removal, show));
    if !seat.service.is_empty() {
        page.line("");
        page.table(&holds(seat, show));
        page.small("at the lowest friction; axial force or torque, not both at once");
        page.paragraph(&lost(seat, show));
    }
}

fn pressing(plan: &Plan<'_>, seat: &SeatPlan, show: Show) -> String {
    let press = &seat.press;
    let tresca = press
        .elastic_limit_tresca
        .map(|limit| format!(" ({} by Tresca)", show.small(limit, Toward::Down)))
        .unwrap_or_default();
    format!(
        "Pressing: joint length {}, friction {} to {} ({}), plane formula times {} for the shape of the seat. The \
         {} is the weaker part; it stays elastic up to {}{tresca} of interference. Force grows evenly with depth to the figure \
         at full depth.",
        show.size(press.length),
        plan.job.press.friction.0,
        plan.job.press.friction.1,
        plan.job.press.friction_source,
        press.shape.words(),
        press.weaker,
        show.small(press.elastic_limit, Toward::Down),
    )
}

fn up(force: Force, show: Show) -> String {
    show_force(force, show.system, Toward::Up)
}

/// What chill and warmth save, and what a stop half-way costs.
fn course(seat: &SeatPlan, course: &ForceCourse, show: Show) -> Option<String> {
    let (_, planned) = *course.after.first()?;
    let shop = course.at_shop;
    let treated = match (&seat.chill, &seat.warm) {
        (Some(_), Some(_)) => "Chill and warmth take",
        (Some(_), None) => "The chill takes",
        _ => "The warmth takes",
    };
    let mut text = String::new();
    if shop > Force::default() && planned > Force::default() {
        let saved = 100.0 * (1.0 - (planned / shop).value);
        text.push_str(&format!(
            "{treated} {:.0} % off the force of the tightest case, from {} to {}. ",
            saved.floor(),
            up(shop, show),
            up(planned, show)
        ));
    }
    let mut later: Vec<(String, String)> = course
        .after
        .iter()
        .skip(1)
        .map(|(time, force)| (up(*force, show), show_duration(*time, Toward::Nearest)))
        .collect();
    // What does not rise any more is said once.
    later.dedup_by(|next, before| next.0 == before.0);
    let later: Vec<String> = later.into_iter().map(|(force, time)| format!("{force} after {time}")).collect();
    (shop > Force::default()).then(|| {
        format!(
            "{text}If it stands still on the way, the tightest case takes at full depth {}, and {} once all is at one \
             temperature.",
            later.join(", "),
            up(shop, show)
        )
    })
}

fn wall_text(plan: &Plan<'_>, wall: &WallPlan, show: Show) -> String {
    let thickness = plan.job.housing.as_ref().and_then(|h| h.shoulder).map(|s| show.size(s.wall)).unwrap_or_default();
    let Some((allowable, place)) = wall.allowable.zip(wall.place) else {
        return format!("The wall behind it, {thickness}, is too thick for a plate: bending does not limit the push.");
    };
    let place = match place {
        WallPlace::Root => "at its root",
        WallPlace::Hole => "at the edge of its hole",
        WallPlace::Shear => "in shear around the ring",
    };
    let force = |force| show_force(force, show.system, Toward::Down);
    let model = match wall.supports {
        Some((front, back)) => {
            let other = if front < back { ("front", back, "back") } else { ("back", front, "front") };
            let plate = wall
                .as_plate
                .map_or_else(String::new, |plate| format!("; as a plate held at its edge, {}", force(plate)));
            format!(
                "computed in the section of the seat, with the housing resting on its {} face; {} on its {} face{plate}",
                other.0,
                force(other.1),
                other.2
            )
        }
        None => format!("edge held; {} if its edge could turn", force(wall.allowable_free.unwrap_or(allowable))),
    };
    let mut text = format!(
        "The wall behind it, {thickness}, is good for {} (strength over stress {:.1} {place}; {model}).",
        force(allowable),
        wall.reserve,
    );
    if let Some((stress, deflection)) = wall.root_stress.zip(wall.deflection).filter(|(stress, _)| stress.value > 0.0) {
        text.push_str(&format!(
            " At the force needed its root bears {}, it gives way by {} or more, and the ring's face presses on the shoulder \
             with {}.",
            show.pressure(stress),
            show.small(deflection, Toward::Nearest),
            show.pressure(wall.face_pressure)
        ));
    }
    text
}

fn means_text(plan: &Plan<'_>, means: &MeansPlan, show: Show) -> String {
    let mut text = format!("{}: ", capital(means.name));
    if means.needed <= Force::default() {
        text.push_str("no force is needed beyond a light push.");
    } else if means.available.is_some_and(|available| available < means.needed) {
        text.push_str(&format!("up to {} is needed, which is too much for it.", up(means.needed, show)));
    } else {
        text.push_str(&format!(
            "up to {} is needed; stop at {} and find out why.",
            up(means.needed, show),
            show_force(means.alarm, show.system, Toward::Down)
        ));
    }
    if let Some(available) = means.available {
        text.push_str(&format!(" It gives {}.", show_force(available, show.system, Toward::Down)));
    }
    if let Some(gauge) = means.gauge {
        text.push_str(&format!(" That is {} on its gauge.", show_pressure(gauge, show.system, Toward::Up)));
    }
    match &means.screw {
        Some(screw) => text + &screw_text(plan, screw, show),
        None => text,
    }
}

fn screw_text(plan: &Plan<'_>, screw: &ScrewPlan, show: Show) -> String {
    let class = screw.class.as_ref().map(|class| format!(", {class}")).unwrap_or_default();
    let torque = |torque, toward| show_torque(torque, show.system, toward);
    let mut text = format!(" Screw {}{class}: ", screw.thread);
    if screw.running.1.value > 0.0 {
        text.push_str(&format!(
            "{} to {} moves the part",
            torque(screw.running.0, Toward::Down),
            torque(screw.running.1, Toward::Up)
        ));
    } else {
        text.push_str("no torque moves the part");
    }
    if let Some((stop, reason)) = screw.stop {
        text.push_str(&format!("; stop at {}, which is what {} bears", torque(stop, Toward::Down), reason.words()));
    }
    text.push('.');
    if let Some(landing) = &screw.landing {
        text.push_str(&landing_text(plan, landing, show));
    }
    if let Some((share, load)) = screw.rod_share.zip(screw.proof_load).filter(|(share, _)| *share > 0.0) {
        let load = show_force(load, show.system, Toward::Down);
        text.push_str(&format!(
            " The rod is at {:.0} % of its proof stress, twist included (proof load {load}).",
            (100.0 * share).ceil()
        ));
    }
    if let Some(PressMeans::Screw(jig)) = &plan.job.press.means {
        text.push_str(&format!(
            " Friction of the screw {:.2} to {:.2} ({}).",
            jig.friction.0, jig.friction.1, jig.friction_source
        ));
    }
    text
}

/// What the spanner feels at the shoulder.
fn landing_text(plan: &Plan<'_>, landing: &Landing, show: Show) -> String {
    let torque = |torque, toward| show_torque(torque, show.system, toward);
    let rod = match &plan.job.press.means {
        Some(PressMeans::Screw(jig)) => jig.rod_length,
        _ => None,
    };
    let rod = rod.map_or_else(
        || "the rod's length in the seat; state rod_length".to_owned(),
        |length| format!("{} of rod", show.size(length)),
    );
    format!(
        " On the shoulder the torque rises by {} to {} for a tenth of a turn at the most (only the wall and {rod} give way), \
         so that the stop is {} of turn away or more.",
        torque(landing.rise.0, Toward::Nearest),
        torque(landing.rise.1, Toward::Nearest),
        turned(landing.turn_to_limit, Toward::Down)
    )
}

/// The liner and what is around it.
fn liner_text(liner: &LinerPlan, show: Show) -> String {
    let held = match liner.pressed {
        None => "cast in".to_owned(),
        Some((least, most)) => {
            let (least, most) = (show.small(least, Toward::Nearest), show.small(most, Toward::Nearest));
            if least == most {
                format!("pressed in with {least}")
            } else {
                format!("pressed in with {least} to {most}")
            }
        }
    };
    let mut text = format!(
        "Liner of {}, {} thick, {held} in {}. Its bore grows by {:.1} µm for a metre and kelvin around 20 °C. With the ring in it, \
         liner and housing press on each other with {} in the tightest case; the housing bears {} around it.",
        liner.liner,
        show.size(liner.wall),
        liner.housing,
        1e6 * liner.bore_expansion_per_k,
        show.pressure(liner.between.tightest),
        show.pressure(liner.housing_hoop),
    );
    for (part, reserves) in [("liner", &liner.liner_reserves), ("housing", &liner.housing_reserves)] {
        if let Some(reserve) = reserves.worst() {
            text.push_str(&format!(
                " Strength over stress of the {part} is {} at the least, {}.",
                plain(reserve.least, Toward::Down),
                reserve.when
            ));
        }
    }
    if liner.pressed.is_some() {
        text.push_str(&match liner.free_from.hot {
            Some(at) => format!(" Warmed together, it comes free from {}.", show.lock_down(at)),
            None => " Warming both together does not free it.".to_owned(),
        });
        if let Some(at) = liner.free_from.cold {
            text.push_str(&format!(" Cooled together, it comes free from {}.", show.lock(Some(at))));
        }
    }
    text
}

fn removal(seat: &SeatPlan, removal: &Removal, show: Show) -> String {
    let first = match removal.first_out.as_slice() {
        [] => String::new(),
        parts => format!(" (first the {})", parts.join(", then the ")),
    };
    if seat.press.force.tightest <= Force::default() {
        return format!("To take it out again{first}: it comes out by hand at the temperature of the shop.");
    }
    let mut ways = Vec::new();
    if let Some(alone) = removal.outer_alone {
        let beyond = removal
            .outer_limit
            .map(|limit| format!(" (beyond the limit of {})", show.temperature(limit)))
            .unwrap_or_default();
        ways.push(format!("with the {} alone quickly warmed to {}{beyond}", seat.outer.name, show.lock(Some(alone))));
    }
    match removal.both {
        Some(both) => ways.push(format!("with both parts at {}", show.lock(Some(both)))),
        None => ways.push("never by warming or cooling both together".to_owned()),
    }
    let mut text = format!(
        "To take it out again{first}, the tightest case comes free {}; cold it takes up to {} to break it loose.",
        ways.join(", "),
        up(removal.pull.tightest, show)
    );
    if let Some(torque) = removal.torque {
        text.push_str(&format!(" That is up to {} on the screw", show_torque(torque, show.system, Toward::Up)));
        match removal.rod_share {
            Some(share) if share > 1.0 => text.push_str(", more than the rod bears."),
            Some(share) => text.push_str(&format!(", {:.0} % of its proof stress.", (100.0 * share).ceil())),
            None => text.push('.'),
        }
    }
    text
}

/// Where the fit is lost when both parts run equally warm.
fn lost(seat: &SeatPlan, show: Show) -> String {
    if seat.lock.map(|lock| lock.is_none()) == Cases::same(true) {
        return "With both parts equally warm the fit is neither lost nor closed at any temperature.".to_owned();
    }
    let at = seat.lock.map(|lock| show.lock(lock));
    format!(
        "With both parts equally warm the fit is lost, or closes, at {} in the tightest case, {} in the middle one and {} in \
         the loosest.",
        at.tightest, at.middle, at.loosest
    )
}

/// What the fit holds in service.
fn holds(seat: &SeatPlan, show: Show) -> Table<4> {
    let mut rows = Vec::new();
    for state in &seat.service {
        let end = if state.end == ServiceEnd::Coldest { "coldest" } else { "hottest" };
        let force = |force| show_force(force, show.system, Toward::Down);
        let torque = |torque| show_torque(torque, show.system, Toward::Down);
        rows.push(row(format!("holds axially, {end} service"), state.holds_force.map(force)));
        rows.push(row(format!("holds in torque, {end} service"), state.holds_torque.map(torque)));
    }
    Table { head: Some(["", "tightest", "middle", "loosest"].map(str::to_owned)), rows }
}

fn row(name: String, cases: Cases<String>) -> [String; 4] {
    [name, cases.tightest, cases.middle, cases.loosest]
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// The play of the bearing, step by step.
pub(super) fn internal_clearance(play: &InternalClearancePlan, system: System, page: &mut Page) {
    let show = Show { system };
    let ends = |range: ClearanceRange| [show.small(range.least, Toward::Down), show.small(range.most, Toward::Up)];
    let named = |name: &str, range: ClearanceRange| {
        let [least, most] = ends(range);
        [name.to_owned(), least, most]
    };
    let group = play.group.as_ref().map(|group| format!(", group {group}")).unwrap_or_default();
    page.heading(&format!("Internal clearance{group}"));
    let mut rows = vec![named("as delivered", play.delivered)];
    rows.extend(play.outer_ring.map(|lost| named("  lost in the housing", lost)));
    rows.extend(play.inner_ring.map(|lost| named("  lost on the shaft", lost)));
    rows.push(named("fitted, at one temperature", play.fitted));
    rows.push(named("  lost to the warmer inner ring", play.temperature));
    rows.push(named("running, without load", play.running));
    rows.push(named("  the same, 997 of 1000", play.usual));
    page.table(&Table { head: Some(["", "least", "most"].map(str::to_owned)), rows });
    page.small(&play.source);
    page.small("997 of 1000: root of the summed squares, each range distributed normally about its middle");
}
