//! One seat: its answer, then its numbers.

use super::paragraph::Page;
use super::push;
use super::section_heat;
use super::show::Show;
use super::table::Table;
use crate::job::{Hold, ServiceEnd};
use crate::plan::{GripTime, Member, Plan, SeatKind, SeatPlan, Soak, Window};
use crate::quantity::{
    Cases, Deviations, Length, Nanometres, Ratio, System, Time, Toward, show_duration, show_film_coefficient,
    show_limits, show_mass, show_share, show_size, show_temperature, show_temperature_step,
};
use crate::report::words;
use uom::si::ratio::ratio;
use uom::si::time::second;

/// Lag of the middle of a piece from which it is worth saying, s.
const LEAST_LAG_S: f64 = 1.0;

/// The verdict and what to do.
pub(super) fn answer(plan: &Plan<'_>, seat: &SeatPlan, system: System, page: &mut Page) {
    let sentence = words::sentence(&plan.answer(seat), system);
    let verdict = seat.verdict.words().to_uppercase();
    let several = plan.seats.len() > 1;
    page.heading(&if several { format!("{verdict} ({} seat)", seat.seat.name()) } else { verdict });
    page.paragraph(&sentence);
    page.steps(&format!("What to do, {} seat", seat.seat.name()), &plan.steps(seat), system);
}

/// The numbers behind it.
pub(super) fn details(plan: &Plan<'_>, seat: &SeatPlan, system: System, page: &mut Page) {
    let show = Show { system };
    page.heading(&format!("{} seat, nominal {}", capital(seat.seat), show_size(seat.nominal, system, Toward::Nearest)));
    page.table(&Table { head: None, rows: vec![show.member(seat, &seat.inner), show.member(seat, &seat.outer)] });
    page.line("");
    page.table(&cases(plan, seat, show));
    page.line("");
    for soak in seat.chill.iter().chain(&seat.warm) {
        page.paragraph(&show.soak(plan, soak));
    }
    if seat.chill.is_some() || seat.warm.is_some() {
        page.paragraph(&show.arrival(plan, seat));
    }
    match &seat.section_heat {
        Ok(heat) => page.paragraph(&section_heat::text(plan, seat, heat, show)),
        Err(why) if why.is_lacking() => {
            page.paragraph(&format!(
                "Temperatures are those of one body for each piece and not of the section: {why}."
            ));
        }
        Err(_) => {}
    }
    push::details(plan, seat, show, page);
}
/// The few numbers that a mechanic asks for.
pub(super) fn main_numbers(seat: &SeatPlan, system: System) -> Table<4> {
    let show = Show { system };
    let treated = seat.chill.is_some() || seat.warm.is_some();
    let mut rows = vec![row("interference at 20 °C", seat.fit.clearance.map(|c| show.small(-c, Toward::Nearest)))];
    if treated {
        rows.push(row("clearance at the seat", seat.at_bore.clearance.map(|c| show.small(c, Toward::Down))));
        rows.push(row("latest start of the push", seat.window.map(window)));
        rows.extend(seat.grip.map(|grip| row("grips in the seat after", grip.times.map(grips))));
        rows.push(row("press force at the seat", seat.at_bore.force.map(|f| show.force(f))));
    }
    rows.push(row("press force, no chill or warmth", seat.press.force.map(|f| show.force(f))));
    Table { head: Some(["", "tightest", "middle", "loosest"].map(str::to_owned)), rows }
}

/// The numbers that differ from the tightest to the loosest case.
fn cases(plan: &Plan<'_>, seat: &SeatPlan, show: Show) -> Table<4> {
    let nearest = |length: Length| show.small(length, Toward::Nearest);
    let mut rows = vec![row("interference at 20 °C", seat.fit.clearance.map(|c| nearest(-c)))];
    if seat.fit.effective_interference.middle != -seat.fit.clearance.middle {
        rows.push(row("  after smoothing", seat.fit.effective_interference.map(nearest)));
    }
    if seat.chill.is_some() || seat.warm.is_some() {
        rows.push(row("clearance at the seat", seat.at_bore.clearance.map(|c| show.small(c, Toward::Down))));
        rows.push(row("shortest hold that clears", seat.time_to_clear.map(|time| shortest_hold(seat, time))));
        if seat.share_at_clear.tightest.or(seat.share_at_clear.loosest).is_some() {
            rows.push(row("  share of the change then", seat.share_at_clear.map(share)));
        }
        rows.push(row("latest start of the push", seat.window.map(window)));
        if let Some(grip) = seat.grip {
            rows.push(row("grips in the seat after", grip.times.map(grips)));
        }
        rows.push(row("press force at the seat", seat.at_bore.force.map(|f| show.force(f))));
        rows.push(row("pressure at the seat", seat.at_bore.pressure.map(|p| show.pressure(p))));
    }
    rows.push(row("press force, no chill or warmth", seat.press.force.map(|f| show.force(f))));
    rows.push(row("pressure, the same", seat.press.pressure.map(|p| show.pressure(p))));
    rows.push(row("hoop stress, outer part", seat.press.hoop_outer.map(|p| show.pressure(p))));
    rows.push(row("strength over stress", seat.press.yield_factor.map(factor)));
    rows.extend(plan.bush_closes(seat).map(|closes| row("bore of the bush closes by", (*closes).map(nearest))));
    rows.push(row("lock temperature, both parts", seat.lock.map(|lock| show.lock(lock))));
    for state in &seat.service {
        let end = if state.end == ServiceEnd::Coldest { "coldest" } else { "hottest" };
        rows.push(row(&format!("interference, {end} service"), state.clearance.map(|c| nearest(-c))));
    }
    Table { head: Some(["", "tightest", "middle", "loosest"].map(str::to_owned)), rows }
}

fn row(name: &str, cases: Cases<String>) -> [String; 4] {
    [name.to_owned(), cases.tightest, cases.middle, cases.loosest]
}

/// A hold that is longer than planned is one that is needed.
fn shortest_hold(seat: &SeatPlan, time: Option<Time>) -> String {
    let Some(time) = time else {
        let two = seat.chill.is_some() && seat.warm.is_some();
        return if two { "not as planned" } else { "none does" }.to_owned();
    };
    let planned = seat.longest_hold().is_some_and(|hold| time <= hold);
    format!("{}{}", if planned { "" } else { "needs " }, show_duration(time, Toward::Up))
}

fn share(share: Option<f64>) -> String {
    share.map_or_else(|| "-".to_owned(), |share| show_share(Ratio::new::<ratio>(share), Toward::Nearest))
}

fn window(window: Window) -> String {
    match window {
        Window::Lasts(time) => show_duration(time, Toward::Down),
        Window::Always => "always".to_owned(),
        Window::Beyond(time) => format!("over {}", show_duration(time, Toward::Down)),
    }
}

fn grips(time: GripTime) -> String {
    match time {
        GripTime::DoesNotGoIn => "does not go in".to_owned(),
        GripTime::Grips(time) | GripTime::FreeUntilLock(time) => show_duration(time, Toward::Down),
        GripTime::StaysFree => "stays free".to_owned(),
    }
}

fn factor(factor: Option<f64>) -> String {
    match factor {
        None => "no stress".to_owned(),
        Some(factor) if factor >= 100.0 => "over 100".to_owned(),
        Some(factor) => format!("{:.1}", crate::quantity::to_step(factor, 0.1, Toward::Down)),
    }
}

fn capital(seat: SeatKind) -> &'static str {
    match seat {
        SeatKind::Housing => "Housing",
        SeatKind::Shaft => "Shaft",
    }
}

/// How much of the way is done, and when waiting longer gains nothing.
fn waiting(soak: &Soak) -> String {
    let Some((share, enough)) = soak.share_reached.zip(soak.enough_after) else { return String::new() };
    format!(
        " That is {} of the full change; waiting longer than {} gains nothing.",
        show_share(Ratio::new::<ratio>(share), Toward::Down),
        show_duration(enough, Toward::Up)
    )
}

fn percent(share: f64) -> String {
    show_share(Ratio::new::<ratio>(share), Toward::Up)
}

/// What is left of the time in the seat when the push starts at the latest moment.
fn latest(seat: &SeatPlan) -> String {
    let (Window::Lasts(window), Some(at_latest)) = (seat.window.tightest, seat.grip.and_then(|grip| grip.at_latest))
    else {
        return String::new();
    };
    let window = show_duration(window, Toward::Down);
    match at_latest {
        GripTime::Grips(time) | GripTime::FreeUntilLock(time) => {
            format!(
                " Pushed at the latest moment, after {window}, the tightest case grips {} after it is in.",
                show_duration(time, Toward::Down)
            )
        }
        GripTime::DoesNotGoIn | GripTime::StaysFree => String::new(),
    }
}

impl Show {
    fn member(self, seat: &SeatPlan, member: &Member) -> [String; 4] {
        let deviations = Deviations {
            lower: Nanometres::from_length(member.smallest - seat.nominal),
            upper: Nanometres::from_length(member.largest - seat.nominal),
        };
        let size = |length: Length| show_size(length, self.system, Toward::Nearest);
        [
            format!("{} ({})", member.name, member.material),
            member.basis.clone(),
            show_limits(deviations, self.system),
            format!("{} to {}", size(member.smallest), size(member.largest)),
        ]
    }

    fn soak(self, plan: &Plan<'_>, soak: &Soak) -> String {
        let mut text = format!(
            "{}, {} for {}: {} to {} at the slower end of the film range{}, {} at the quicker. Film {}{}, ",
            soak.medium,
            self.temperature(soak.medium_temperature),
            show_duration(soak.hold, Toward::Nearest),
            self.temperature(plan.job.bench.temperature),
            self.temperature(soak.end),
            if matches!(soak.hold_rule, Hold::Settled) { " (settled)" } else { "" },
            self.temperature(soak.end_quick),
            show_film_coefficient(soak.film, self.system, Toward::Nearest),
            if soak.radiates { " and radiation" } else { "" },
        );
        text.push_str(&format!("mass {}, ", show_mass(soak.mass, self.system, Toward::Nearest)));
        if let Some(constant) = soak.time_constant {
            text.push_str(&format!("time constant {}, ", show_duration(constant, Toward::Nearest)));
        }
        let bodies = if soak.three_bodies { "three bodies" } else { "one body" };
        if soak.in_section {
            text.push_str(&format!("Biot number {:.4} (followed in its section).", soak.biot));
            return text + &waiting(soak) + &self.inside(soak);
        }
        text.push_str(&format!("Biot number {:.4} ({bodies} with internal resistance", soak.biot));
        match soak.time_error {
            Some(error) => text.push_str(&format!(", time within {}).", percent(error.largest()))),
            None => text.push_str(")."),
        }
        text + &waiting(soak) + &self.inside(soak)
    }

    /// What the medium and the middle of the piece do meanwhile.
    fn inside(self, soak: &Soak) -> String {
        let mut text = String::new();
        if let Some(drift) = soak.medium_drift {
            let step = if drift < drift * 0.0 { -drift } else { drift };
            text.push_str(&format!(
                " The medium itself {} by up to {} meanwhile.",
                if drift == step { "warms" } else { "cools" },
                show_temperature_step(step, self.system, Toward::Up)
            ));
        }
        if soak.middle_lag >= Time::new::<second>(LEAST_LAG_S) {
            text.push_str(&format!(
                " The middle of the piece is about {} behind its mean temperature.",
                show_duration(soak.middle_lag, Toward::Up)
            ));
        }
        text
    }

    fn arrival(self, plan: &Plan<'_>, seat: &SeatPlan) -> String {
        format!(
            "At the seat, {} after it is taken out: {} at {}, {} at {}; placing clearance {}.",
            show_duration(plan.job.bench.carry, Toward::Nearest),
            seat.inner.name,
            self.temperature(seat.at_bore.inner),
            seat.outer.name,
            self.temperature(seat.at_bore.outer),
            self.small(seat.history.placing_clearance, Toward::Nearest),
        ) + &self.needed(seat)
            + &latest(seat)
    }

    /// The temperatures on arrival that the tightest case needs.
    fn needed(self, seat: &SeatPlan) -> String {
        let at = |temperature, toward| show_temperature(temperature, self.system, 0, toward);
        let inner =
            seat.clears_at.inner.map(|t| format!("the {} at {} or colder", seat.inner.name, at(t, Toward::Down)));
        let outer = seat.clears_at.outer.map(|t| format!("the {} at {} or warmer", seat.outer.name, at(t, Toward::Up)));
        let ways: Vec<String> = outer.into_iter().chain(inner).collect();
        if ways.is_empty() { String::new() } else { format!(" The tightest case needs {}.", ways.join(", or ")) }
    }
}
