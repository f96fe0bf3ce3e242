//! The plan as CSV: a heading line and one row a seat, the main numbers under the names of the JSON.

use super::sheet::{Cell, Named, head, written};
use crate::assembly::seal::CaseForce;
use crate::plan::seal::SealAlonePlan;
use crate::plan::{Plan, SeatPlan, Soak, Window};
use crate::quantity::{Cases, Force, Length, ThermodynamicTemperature, Time};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// The names of a range.
macro_rules! cases {
    ($name:literal) => {
        [concat!($name, "_tightest"), concat!($name, "_middle"), concat!($name, "_loosest")]
    };
}

/// The plan as CSV text.
///
/// Columns: title, reference, seat, verdict, nominal_mm, then interference, clearance at the seat, force at the seat,
/// force without chill or warmth and window, each tightest, middle, loosest, then what chill and warmth reach. A cell is
/// empty where the thing does not exist. Text that a spreadsheet would take for a formula begins with an apostrophe.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn plan(plan: &Plan<'_>) -> Result<String, csv::Error> {
    let seats: Vec<Vec<Named>> = plan.seats.iter().map(|seat| cells(plan, seat)).collect();
    let names = seats.first().map(|cells| head(cells.iter().map(|(name, _)| *name)));
    written(names.into_iter().chain(seats.into_iter().map(values)))
}

/// The plan of a shaft seal alone as CSV text: a heading line and one row, the main numbers under the names of the JSON.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn seal_alone(plan: &SealAlonePlan<'_>) -> Result<String, csv::Error> {
    let (heading, seal) = (&plan.job.heading, &plan.seal);
    let mm = |length: Length| Cell::number(length.get::<millimeter>());
    let none = Cases { tightest: Cell::Nothing, middle: Cell::Nothing, loosest: Cell::Nothing };
    let force = |of: fn(CaseForce) -> Force| seal.force.map(of).map_or(Cell::Nothing, newtons);
    let mut cells = vec![
        words("title", &heading.title),
        words("reference", heading.reference.as_deref().unwrap_or_default()),
        words("seal", &seal.name),
        words("case", seal.case),
    ];
    cells.extend(range(cases!("interference_um"), seal.interference.map_or(none, |fit| fit.map(um))));
    cells.extend([
        cell("force_least_n", force(|force| force.least)),
        cell("force_most_n", force(|force| force.most)),
        cell("driver_mm", mm(seal.driver)),
        cell("depth_mm", mm(seal.stand.reached)),
        cell("reading_least_mm", mm(seal.reading.0)),
        cell("reading_most_mm", mm(seal.reading.1)),
        cell("shift_mm", seal.shift.map_or(Cell::Nothing, mm)),
    ]);
    let names = head(cells.iter().map(|(name, _)| *name));
    written([names, values(cells)])
}

/// The main numbers of a seat.
pub(crate) fn cells(plan: &Plan<'_>, seat: &SeatPlan) -> Vec<Named> {
    let heading = &plan.job.heading;
    let mut cells = vec![
        words("title", &heading.title),
        words("reference", heading.reference.as_deref().unwrap_or_default()),
        words("seat", seat.seat.name()),
        words("verdict", seat.verdict.words()),
        cell("nominal_mm", Cell::number(seat.nominal.get::<millimeter>())),
    ];
    cells.extend(range(cases!("interference_um"), seat.fit.clearance.map(|c| um(-c))));
    cells.extend(range(cases!("at_bore_clearance_um"), seat.at_bore.clearance.map(um)));
    cells.extend(range(cases!("at_bore_force_n"), seat.at_bore.force.map(newtons)));
    cells.extend(range(cases!("press_force_n"), seat.press.force.map(newtons)));
    cells.extend(range(cases!("window_s"), seat.window.map(window)));
    cells.extend(soak(["chill_medium", "chill_hold_s", "chill_end_c"], seat.chill.as_ref()));
    cells.extend(soak(["warm_medium", "warm_hold_s", "warm_end_c"], seat.warm.as_ref()));
    cells
}

fn cell(name: &'static str, cell: Cell) -> Named {
    (name, cell)
}

fn words(name: &'static str, words: &str) -> Named {
    cell(name, Cell::text(words))
}

/// A row without the names of its columns.
pub(crate) fn values(cells: Vec<Named>) -> Vec<Cell> {
    cells.into_iter().map(|(_, cell)| cell).collect()
}

fn range([tightest, middle, loosest]: [&'static str; 3], cases: Cases<Cell>) -> [Named; 3] {
    [cell(tightest, cases.tightest), cell(middle, cases.middle), cell(loosest, cases.loosest)]
}

fn soak([medium, hold, end]: [&'static str; 3], soak: Option<&Soak>) -> [Named; 3] {
    let of = |read: fn(&Soak) -> Cell| soak.map_or(Cell::Nothing, read);
    [
        cell(medium, of(|soak| Cell::text(soak.medium.as_str()))),
        cell(hold, of(|soak| seconds(soak.hold))),
        cell(end, of(|soak| celsius(soak.end))),
    ]
}

fn window(window: Window) -> Cell {
    match window {
        Window::Lasts(time) => seconds(time),
        Window::Always | Window::Beyond(_) => Cell::Nothing,
    }
}

fn um(length: Length) -> Cell {
    Cell::number(length.get::<micrometer>())
}

fn newtons(force: Force) -> Cell {
    Cell::number(force.get::<newton>())
}

fn celsius(temperature: ThermodynamicTemperature) -> Cell {
    Cell::number(temperature.get::<degree_celsius>())
}

fn seconds(time: Time) -> Cell {
    Cell::number(time.get::<second>())
}
