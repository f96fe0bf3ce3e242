//! The section as a short table.

use super::words::{readings, title, unread};
use crate::job::Job;
use crate::plan::SeatKind;
use crate::plan::drawing::{SectionPlan, ShoulderLoad, over_plane};
use crate::quantity::{
    Force, Length, Pressure, Ratio, System, Toward, show_force, show_pressure, show_rough_size, show_share,
    show_small_length,
};
use crate::report::Layout;
use crate::report::text::{Page, Table};
use crate::section::{Peak, StressAt, WallState};
use uom::si::ratio::ratio;

/// The sections of a job as text.
pub fn text(job: &Job, seats: &[SectionPlan], layout: impl Into<Layout>) -> String {
    let Layout { system, columns } = layout.into();
    let mut page = Page::new(columns);
    let title = job.heading.title.as_str();
    page.flush(&format!("Section of the seat{}{title}", if title.is_empty() { "" } else { ": " }));
    for seat in seats {
        of_seat(&mut page, seat, system);
    }
    page.finish()
}

type Row = [String; 4];
/// One of the largest stresses of a part.
type StressOf = fn(&Peak) -> StressAt;

fn of_seat(page: &mut Page, seat: &SectionPlan, system: System) {
    page.heading(&format!("{}.", title(seat, system)));
    page.paragraph(&format!("{}:", capital(&readings(seat, system))));
    page.line("");
    let mut rows = vec![pressure(seat, system)];
    rows.extend(seam(seat, system));
    rows.push(force(seat, system));
    rows.extend(closing(seat, system));
    rows.extend(stresses(seat, system));
    let head = ["", "section", "two plain rings", "difference"].map(str::to_owned);
    page.table(&Table { head: Some(head), rows });
    if let Some(shoulder) = &seat.shoulder {
        page.heading("Shoulder:");
        page.table(&Table { head: None, rows: wall(shoulder, system) });
    }
    page.heading("Read with it:");
    for note in notes(seat, system) {
        page.paragraph(&note);
    }
}

fn capital(text: &str) -> String {
    let (first, rest) = text.split_at(text.chars().next().map_or(0, char::len_utf8));
    format!("{}{rest}", first.to_uppercase())
}

/// "+39 %": by how much the section exceeds the plane formula; nothing where there is nothing to compare.
fn difference(section: f64, plane: f64) -> String {
    let Some(share) = over_plane(section, plane) else { return String::new() };
    let more = 100.0 * share;
    let more = if more.abs() < 0.05 { 0.0 } else { more };
    format!("{more:+.1} %")
}

fn pressure(seat: &SectionPlan, system: System) -> Row {
    let (section, plane) = (seat.state.contacts[0].mean_pressure, seat.plane.pressure);
    let show = |pressure| show_pressure(pressure, system, Toward::Nearest);
    ["mean pressure".to_owned(), show(section), show(plane), difference(section.value, plane.value)]
}

/// Pressure of liner and housing on one another, with the ring in its seat.
fn seam(seat: &SectionPlan, system: System) -> Option<Row> {
    let (section, plane) = (seat.state.contacts.get(1)?.mean_pressure, seat.plane.seam?);
    let show = |pressure| show_pressure(pressure, system, Toward::Nearest);
    let alike = difference(section.value, plane.value);
    Some(["   between liner and housing".to_owned(), show(section), show(plane), alike])
}

fn force(seat: &SectionPlan, system: System) -> Row {
    let (what, toward) =
        if seat.moment.pushes() { ("force to press home", Toward::Up) } else { ("holds along the axis", Toward::Down) };
    let friction = format!("{what}, friction {:.3}", seat.friction);
    let friction = friction.trim_end_matches('0').trim_end_matches('.').to_owned();
    let show = |force: Force| show_force(force, system, toward);
    let more = if seat.may_need().is_some() { " or more" } else { "" };
    [friction, show(seat.force) + more, show(seat.plane.force), difference(seat.force.value, seat.plane.force.value)]
}

fn closing(seat: &SectionPlan, system: System) -> Vec<Row> {
    let (Some(closing), Some(plane)) = (seat.closing, seat.plane.closing) else { return Vec::new() };
    let verb = if seat.seat == SeatKind::Housing { "closes" } else { "grows" };
    let show = |length: Length| show_small_length(length, system, Toward::Nearest);
    let row =
        |place: String, section: Length| [place, show(section), show(plane), difference(section.value, plane.value)];
    let mut rows = vec![
        row(format!("{} {verb} by, at the front", seat.ring), closing.front),
        row("   at mid-width".to_owned(), closing.middle),
        row("   at the back".to_owned(), closing.back),
    ];
    if seat.rolls {
        rows.push(row("   at the raceway".to_owned(), closing.raceway));
    }
    rows
}

fn stresses(seat: &SectionPlan, system: System) -> Vec<Row> {
    let show = |pressure| show_pressure(pressure, system, Toward::Nearest);
    let mut rows = Vec::new();
    let kinds: [(&str, StressOf, &[Pressure]); 2] = [
        ("von Mises stress", |peak| peak.von_mises, &seat.plane.von_mises),
        ("hoop stress", |peak| peak.hoop, &seat.plane.hoop),
    ];
    for (what, of, plane) in kinds {
        for ((peak, plane), part) in seat.peaks.iter().zip(plane).zip(&seat.parts) {
            // A ring that is squeezed has no tension to speak of.
            let pulls = |at: &StressAt| at.stress > Pressure::default();
            let Some(peak) = Some(of(peak)).filter(pulls) else { continue };
            let alike = difference(peak.stress.value, plane.value);
            rows.push([format!("largest {what}, {part}"), show(peak.stress), show(*plane), alike]);
            rows.push([format!("   {}", place(&peak, system)), String::new(), String::new(), String::new()]);
        }
    }
    rows
}

/// "at 52.0 mm across, 8.0 mm from the back face".
fn place(peak: &StressAt, system: System) -> String {
    let show = |length| show_rough_size(length, system, Toward::Nearest);
    let behind = peak.position < Length::default();
    let (distance, side) = if behind { (-peak.position, "behind") } else { (peak.position, "from") };
    format!("at {} across, {} {side} the back face", show(peak.diameter), show(distance))
}

fn wall(shoulder: &ShoulderLoad, system: System) -> Vec<[String; 2]> {
    let show = |pressure| show_pressure(pressure, system, Toward::Nearest);
    let line = |wall: &WallState| {
        let membrane = show(wall.root_membrane);
        format!("membrane {membrane}, bending {}", show(wall.root_bending))
    };
    vec![
        ["force on it, pushed home".to_owned(), show_force(shoulder.force, system, Toward::Up)],
        ["stress at its root, fitted".to_owned(), line(&shoulder.fitted)],
        ["stress at its root, fitted and pushed".to_owned(), line(&shoulder.pushed)],
        [
            "its edge gives way to the push by".to_owned(),
            show_small_length(shoulder.deflects(), system, Toward::Nearest),
        ],
    ]
}

/// How the liner is held, and what its sizes count with.
fn liner(seat: &SectionPlan, system: System) -> Option<String> {
    let seam = seat.seam.as_ref()?;
    let free = seat.state.contacts.get(1)?.mean_pressure <= Pressure::default();
    let size = show_small_length(seam.interference.abs(), system, Toward::Nearest);
    let open = seam.interference < Length::default();
    Some(match (seam.bonded, open, free) {
        (true, false, _) => {
            "The liner is cast in: its seam with the housing may press and pull, and slides along the axis.".to_owned()
        }
        (true, true, _) => format!(
            "The liner is cast in. At this temperature the housing has outgrown it by {size} on the diameter, which the seam pulls \
             together."
        ),
        (false, true, true) => format!(
            "The liner is free in its housing: at this temperature the housing has outgrown it by {size} on the diameter."
        ),
        (false, open, _) => format!(
            "The liner is pressed in with {size} of {} on the diameter at this temperature; stresses are those of its fit and of the \
             ring’s together. The bore counts as finished to its limits with the liner in the housing.",
            if open { "clearance" } else { "interference" }
        ),
    })
}

fn notes(seat: &SectionPlan, system: System) -> Vec<String> {
    let mut notes = vec![unread(seat, system)];
    if let Some(most) = seat.may_need() {
        let most = show_force(most, system, Toward::Up);
        let adds = if seat.length_stated { "friction adds" } else { "friction, and a seat longer than drawn, add" };
        notes.push(format!(
            "The force is that without what {adds} to the pressure: choose the press by the plan, which counts with \
             up to {most} in this case."
        ));
    }
    if seat.touches() {
        let touching = seat.state.contacts[0].touching;
        let share = show_share(Ratio::new::<ratio>(touching), Toward::Nearest);
        if touching < 0.999 {
            notes.push(format!("{share} of the seat's length touches."));
        }
    }
    notes.extend(liner(seat, system));
    if !seat.length_stated {
        notes.push(format!(
            "The job does not give the length of the {0}: it is drawn as long as the ring, the least it can be, and presses \
             least so. Give {0}.length.",
            seat.seat.name()
        ));
    }
    if let Some(softer) = seat.softer {
        let softer = show_pressure(softer, system, Toward::Nearest);
        notes.push(format!(
            "The {} is longer than the ring, and the job does not say on which side: drawn is what presses more; the other \
             way gives {softer}.",
            seat.seat.name()
        ));
    }
    let shoulder = if seat.shoulder.is_some() {
        " The seat stands on its back face while the shoulder is pushed against."
    } else {
        ""
    };
    notes.push(format!(
        "Deformation is what the fit does, beyond free expansion to these temperatures; elastic, without friction.{shoulder}"
    ));
    notes.push(
        "A calculation only: presses and parts under force can hurt; the maker's manual and local rules go first."
            .to_owned(),
    );
    notes
}
