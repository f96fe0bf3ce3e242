//! What was read, and what to look at before it goes together.

use super::paragraph::Page;
use super::show::Show;
use super::table::Table;
use crate::assembly::readings::Widest;
use crate::plan::UnevenWallPlan;
use crate::plan::inspection::{CheckState, FormPlan, InspectionPlan};
use crate::quantity::{Cases, Length, Toward, show_rough_size, to_step};
use crate::report::words;

/// What to look at before it goes together.
pub(super) fn checks(plan: &InspectionPlan, show: Show, page: &mut Page) {
    if plan.checks.is_empty() {
        return;
    }
    page.heading("Before it goes together");
    if let Some(reuse) = plan.reuse {
        page.paragraph(&format!("Bearing: {}.", reuse.words()));
    }
    for check in &plan.checks {
        let mark = match check.state {
            CheckState::ToDo => "[ ]",
            CheckState::Good => "[x]",
            CheckState::Bad => "[!]",
        };
        let text = words::sentence(&check.text, show.system);
        let found = match check.state {
            CheckState::ToDo => String::new(),
            state => format!(" Found {}.", state.words()),
        };
        page.hanging(&format!("{mark} {}: ", check.part), &format!("{text}{found}"));
    }
}

/// The readings and the form that they give.
pub(super) fn forms(plan: &InspectionPlan, show: Show, page: &mut Page) {
    for form in &plan.forms {
        page.heading(&format!("Readings, {} ({})", form.name, form.readings));
        let mut rows = vec![];
        for (depth, row) in form.readings.rows().iter().enumerate() {
            let each: Vec<String> = row.iter().map(|reading| show.size(*reading)).collect();
            rows.push([format!("depth {}", depth + 1), each.join("   ")]);
        }
        page.table(&Table { head: None, rows });
        page.line("");
        page.paragraph(&summary(form, show));
    }
}

fn summary(plan: &FormPlan, show: Show) -> String {
    let form = plan.form;
    let mut text =
        format!("Mean {}, from {} to {}.", show.size(form.mean), show.size(form.smallest), show.size(form.largest));
    let small = |length: Length| show.small(length, Toward::Nearest);
    match form.out_of_round {
        Some(out) => text.push_str(&format!(" Out of round by {} at the worst depth", small(out))),
        None => text.push_str(" Out-of-round not known from one direction"),
    }
    match form.taper.zip(form.widest) {
        Some((taper, widest)) => {
            let place = match widest {
                Widest::Mouth => "first depth",
                Widest::Bottom => "last depth",
                Widest::Between => "depth between",
            };
            text.push_str(&format!(", taper {} with the {place} largest.", small(taper)));
        }
        None => text.push_str(", taper not known from one depth."),
    }
    text + &format!(
        " A bearing seat may have {} of either (IT5). The mean makes the middle case of the fit; the smallest and the largest \
         reading, each with its uncertainty, the other two.",
        show.small(plan.allowed, Toward::Down)
    )
}

/// The seat with the ends of an uneven wall.
pub(super) fn uneven_wall(plan: &UnevenWallPlan, show: Show, page: &mut Page) {
    page.heading("Uneven wall of the housing, at the temperature of the shop");
    let ends = [plan.thin, plan.equivalent, plan.thick];
    let row = |name: &str, each: [String; 3]| {
        let [thin, equivalent, thick] = each;
        [name.to_owned(), thin, equivalent, thick]
    };
    let mut rows = vec![
        row("wall all round", ends.map(|end| show_rough_size(end.wall, show.system, Toward::Nearest))),
        row("pressure, tightest", ends.map(|end| show.pressure(end.pressure.tightest))),
        row("  loosest", ends.map(|end| show.pressure(end.pressure.loosest))),
        row("press force, tightest", ends.map(|end| show.force(end.force.tightest))),
        row("  loosest", ends.map(|end| show.force(end.force.loosest))),
    ];
    if ends.iter().all(|end| end.ring_change.is_some()) {
        let change = ends.map(|end| end.ring_change.map_or(Length::default(), |change| change.tightest));
        rows.push(row("ring closes, tightest", change.map(|change| show.small(change, Toward::Up))));
    }
    page.table(&Table { head: Some(["", "thin side", "equivalent", "thick side"].map(str::to_owned)), rows });
    page.small(
        "The theory is axisymmetric: each column is a ring with that wall all round. The plan uses the equivalent one.",
    );
    if let Some(side) = plan.thin_side {
        page.paragraph(&format!(
            "Thin side as it is, an eccentric ring under the pressure of the equivalent wall: hoop stress {} in the tightest case, \
             strength over stress {}.",
            show.pressure(side.hoop.tightest),
            factor(side.yield_factor)
        ));
    }
}

fn factor(factor: Cases<Option<f64>>) -> String {
    factor
        .tightest
        .map_or_else(|| "no stress".to_owned(), |factor| format!("{:.1}", to_step(factor, 0.1, Toward::Down)))
}
