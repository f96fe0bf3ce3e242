//! The screws of the cover: what to tighten, in which order and rounds, and the numbers behind it.

use super::paragraph::Page;
use super::show::Show;
use super::table::Table;
use crate::plan::fasteners::{FastenersPlan, GroupPlan, STRIP_RESERVE, StripPlan};
use crate::quantity::{
    Force, System, Toward, show_force, show_pressure, show_rough_size, show_torque, show_torque_in_each, to_step,
};
use crate::report::words;

/// What to do.
pub(super) fn answer(plan: &FastenersPlan, system: System, page: &mut Page) {
    page.heading("Cover screws");
    for group in &plan.groups {
        page.paragraph(&format!(
            "{} to {}, {}.",
            named(group),
            show_torque_in_each(group.torque, group.rounding()),
            basis(group)
        ));
    }
    page.hanging("Order: ", &format!("{}.", order(plan)));
    let rounds = plan.stages.len();
    page.paragraph(&format!(
        "{} Then {rounds} round{} in this order:",
        words::sentence(&plan.before, system),
        if rounds == 1 { "" } else { "s" }
    ));
    for (number, share) in plan.stages.iter().enumerate() {
        page.hanging(&format!("{}. ", number + 1), &stage(plan, (number, *share), system));
    }
    page.paragraph("Last, once round at the full torque, until none turns any more.");
    page.small(
        "Screws are numbered as in the job, kind after kind: round a circle clockwise from the top, points as listed; --screw-plot \
         draws them.",
    );
}

fn named(group: &GroupPlan) -> String {
    let class = group.class.as_ref().map(|class| format!(" ({class})")).unwrap_or_default();
    format!("{} × {}{class}", group.count, group.thread)
}

fn basis(group: &GroupPlan) -> String {
    match group.limited_by {
        Some(limit) => format!("estimated, limited by {}", limit.words()),
        None => "as stated in the job".to_owned(),
    }
}

/// `1 → 4 → 2 → 5 → 3 → 6`.
pub(crate) fn order(plan: &FastenersPlan) -> String {
    plan.order.iter().map(|number| (number + 1).to_string()).collect::<Vec<_>>().join(" → ")
}

fn stage(plan: &FastenersPlan, (number, share): (usize, f64), system: System) -> String {
    let each: Vec<String> = plan
        .groups
        .iter()
        .filter_map(|group| Some((group, *group.stage_torques.get(number)?)))
        .map(|(group, torque)| {
            let torque = show_torque(torque, system, group.rounding());
            if plan.groups.len() > 1 { format!("{} {torque}", group.thread) } else { torque }
        })
        .collect();
    format!("{:.0} %: {}", 100.0 * share, each.join(", "))
}

/// The numbers behind it.
pub(super) fn details(plan: &FastenersPlan, show: Show, page: &mut Page) {
    page.heading("Cover screws, torque and preload");
    let rows = plan.groups.iter().flat_map(|group| rows(group, show)).collect();
    page.table(&Table { head: Some(["", "least", "middle", "most"].map(str::to_owned)), rows });
    page.line("");
    for group in &plan.groups {
        page.paragraph(&tightening(group, show));
        if let Some(strip) = &group.strip {
            page.paragraph(&threads(group, strip, show));
        }
    }
}

fn rows(group: &GroupPlan, show: Show) -> Vec<[String; 4]> {
    let preload = group.preload;
    let pulls = [(preload.least, Toward::Down), (preload.middle, Toward::Nearest), (preload.most, Toward::Up)];
    let [least, middle, most] = pulls.map(|(force, toward)| show_force(force, show.system, toward));
    let mut rows = vec![[format!("{}, preload", group.thread), least, middle, most]];
    if let Some(proof) = group.proof_load {
        let share = |force: Force| 100.0 * force.value / proof.value;
        let [least, middle, most] = pulls.map(|(force, toward)| format!("{:.0} %", to_step(share(force), 1.0, toward)));
        rows.push([
            format!("  of its proof load, {}", show_force(proof, show.system, Toward::Down)),
            least,
            middle,
            most,
        ]);
    }
    rows
}

fn tightening(group: &GroupPlan, show: Show) -> String {
    let mut text = format!(
        "{}: friction {:.2} to {:.2}, torque within {:.0} %, so that the preload scatters by a factor of {:.1}.",
        group.thread,
        group.friction.0,
        group.friction.1,
        100.0 * group.torque_within,
        to_step(group.preload.tightening_factor(), 0.1, Toward::Up)
    );
    if let Some((torque, limit)) = group.torque_limit {
        text.push_str(&format!(
            " Up to {} stays below every limit in every case; the first is {}.",
            show_torque(torque, show.system, Toward::Down),
            limit.words()
        ));
    }
    text
}

fn threads(group: &GroupPlan, strip: &StripPlan, show: Show) -> String {
    let size = |length, toward| show_rough_size(length, show.system, toward);
    let strength = format!(
        "{} at {} tensile{}, shear {:.1} of it",
        strip.material,
        show_pressure(strip.tensile, show.system, Toward::Down),
        if strip.tensile_stated { "" } else { " (the record's strength, on the safe side)" },
        strip.shear_ratio
    );
    let needed = format!(
        "A reserve of {STRIP_RESERVE} over the highest preload takes {} of full thread.",
        size(strip.needed, Toward::Up)
    );
    match group.engagement.zip(strip.loads).zip(strip.reserve) {
        Some(((length, loads), reserve)) => format!(
            "{} in {strength}: {} of engagement bears {} in the hole and {} on the screw, {:.1} times the highest preload. {needed}",
            group.thread,
            size(length, Toward::Nearest),
            show_force(loads.hole, show.system, Toward::Down),
            show_force(loads.screw, show.system, Toward::Down),
            to_step(reserve, 0.1, Toward::Down)
        ),
        None => format!("{} in {strength}: engagement not stated. {needed}", group.thread),
    }
}
