//! The plan as CSV: a heading line and one row a seat, the main numbers under the names of the JSON.

use super::json::figures;
use crate::assembly::seal::CaseForce;
use crate::plan::seal::SealAlonePlan;
use crate::plan::{Plan, SeatPlan, Soak, Window};
use crate::quantity::{Cases, Force, Length, ThermodynamicTemperature, Time};
use uom::si::force::newton;
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// The plan as CSV text.
///
/// Columns: title, reference, seat, verdict, nominal_mm, then interference, clearance at the seat, force at the seat,
/// force without chill or warmth and window, each tightest, middle, loosest, then what chill and warmth reach. A cell is
/// empty where the thing does not exist. Text that a spreadsheet would take for a formula begins with an apostrophe.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn plan(plan: &Plan<'_>) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    for (number, seat) in plan.seats.iter().enumerate() {
        let cells = cells(plan, seat);
        if number == 0 {
            writer.write_record(cells.iter().map(|(name, _)| name.as_str()))?;
        }
        writer.write_record(cells.iter().map(|(_, cell)| cell.as_str()))?;
    }
    let bytes = writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// The plan of a shaft seal alone as CSV text: a heading line and one row, the main numbers under the names of the JSON.
///
/// # Errors
/// None in practice: the text is written to memory.
pub fn seal_alone(plan: &SealAlonePlan<'_>) -> Result<String, csv::Error> {
    let (heading, seal) = (&plan.job.heading, &plan.seal);
    let mm = |length: Length| number(length.get::<millimeter>());
    let none = Cases { tightest: String::new(), middle: String::new(), loosest: String::new() };
    let force = |of: fn(CaseForce) -> Force| seal.force.map(of).map(newtons).unwrap_or_default();
    let mut cells = vec![
        cell("title", safe(&heading.title)),
        cell("reference", safe(heading.reference.as_deref().unwrap_or_default())),
        cell("seal", seal.name.clone()),
        cell("case", seal.case.to_owned()),
    ];
    cells.extend(range("interference_um", seal.interference.map_or(none, |fit| fit.map(um))));
    cells.extend([
        cell("force_least_n", force(|force| force.least)),
        cell("force_most_n", force(|force| force.most)),
        cell("driver_mm", mm(seal.driver)),
        cell("depth_mm", mm(seal.stand.reached)),
        cell("reading_least_mm", mm(seal.reading.0)),
        cell("reading_most_mm", mm(seal.reading.1)),
        cell("shift_mm", seal.shift.map(mm).unwrap_or_default()),
    ]);
    let (names, row) = cells.into_iter().unzip();
    written([names, row])
}

/// A name and what stands under it.
pub(crate) type Cell = (String, String);

/// The main numbers of a seat.
pub(crate) fn cells(plan: &Plan<'_>, seat: &SeatPlan) -> Vec<Cell> {
    let heading = &plan.job.heading;
    let mut cells = vec![
        cell("title", safe(&heading.title)),
        cell("reference", safe(heading.reference.as_deref().unwrap_or_default())),
        cell("seat", seat.seat.name().to_owned()),
        cell("verdict", seat.verdict.words().to_owned()),
        cell("nominal_mm", number(seat.nominal.get::<millimeter>())),
    ];
    cells.extend(range("interference_um", seat.fit.clearance.map(|c| um(-c))));
    cells.extend(range("at_bore_clearance_um", seat.at_bore.clearance.map(um)));
    cells.extend(range("at_bore_force_n", seat.at_bore.force.map(newtons)));
    cells.extend(range("press_force_n", seat.press.force.map(newtons)));
    cells.extend(range("window_s", seat.window.map(window)));
    cells.extend(soak("chill", seat.chill.as_ref()));
    cells.extend(soak("warm", seat.warm.as_ref()));
    cells
}

fn cell(name: &str, text: String) -> Cell {
    (name.to_owned(), text)
}

fn range(name: &str, cases: Cases<String>) -> [Cell; 3] {
    [
        cell(&format!("{name}_tightest"), cases.tightest),
        cell(&format!("{name}_middle"), cases.middle),
        cell(&format!("{name}_loosest"), cases.loosest),
    ]
}

fn soak(name: &str, soak: Option<&Soak>) -> [Cell; 3] {
    let of = |read: fn(&Soak) -> String| soak.map(read).unwrap_or_default();
    [
        cell(&format!("{name}_medium"), of(|soak| safe(&soak.medium))),
        cell(&format!("{name}_hold_s"), of(|soak| seconds(soak.hold))),
        cell(&format!("{name}_end_c"), of(|soak| celsius(soak.end))),
    ]
}

fn window(window: Window) -> String {
    match window {
        Window::Lasts(time) => seconds(time),
        Window::Always | Window::Beyond(_) => String::new(),
    }
}

/// Rows as CSV text.
pub(crate) fn written(rows: impl IntoIterator<Item = Vec<String>>) -> Result<String, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    for row in rows {
        writer.write_record(&row)?;
    }
    let bytes = writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// Text that a spreadsheet will not run.
pub(crate) fn safe(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{text}") } else { text.to_owned() }
}

fn number(value: f64) -> String {
    figures(value).to_string()
}

fn um(length: Length) -> String {
    number(length.get::<micrometer>())
}

fn newtons(force: Force) -> String {
    number(force.get::<newton>())
}

fn celsius(temperature: ThermodynamicTemperature) -> String {
    number(temperature.get::<degree_celsius>())
}

fn seconds(time: Time) -> String {
    number(time.get::<second>())
}

#[cfg(test)]
mod tests {
    use super::safe;

    #[test]
    fn text_that_looks_like_a_formula_is_kept_from_running() {
        assert_eq!(safe("=1+1"), "'=1+1");
        assert_eq!(safe("Pump -1"), "Pump -1");
    }
}
