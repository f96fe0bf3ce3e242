//! Classes of a bore side by side, for whoever chooses one: `cargo run --example engineer`.

use seatwise::quantity::{Toward, show_force, show_small_length};
use seatwise::stock::Library;
use seatwise::{job, plan};
use std::error::Error;
use std::io::{self, Write};

/// A bearing pressed into a light-alloy housing that runs warm.
const JOB: &str = r#"
    title = "Guide wheel"
    [bearing]
    designation = "6206"
    closure = "open"
    [housing]
    bore_limits = "N7"
    outside = "90 mm"
    length = "16 mm"
    material = "cast-aluminium"
    [service]
    coldest = "-10 °C"
    hottest = "80 °C"
"#;

fn main() -> Result<(), Box<dyn Error>> {
    table(&mut io::stdout().lock())
}

/// Writes a line a class: the most force to press it home, the strength over the stress, and the least interference when hot.
pub fn table(out: &mut impl Write) -> Result<(), Box<dyn Error>> {
    let library = Library::default();
    writeln!(out, "class  most force  strength over stress  least interference when hot")?;
    for class in ["J7", "K7", "M7", "N7", "P7"] {
        let text = job::put(JOB, "housing.bore_limits", class)?;
        let job = job::check(&text, &library)?;
        let plan = plan::plan(&job)?;
        // One seat, and the states of service in order: the hottest last.
        for (seat, hottest) in plan.seats.iter().filter_map(|seat| Some((seat, seat.service.last()?))) {
            let force = show_force(seat.press.force.tightest, job.system, Toward::Up);
            let factor =
                seat.press.yield_factor.tightest.map_or("no stress".to_owned(), |factor| format!("{factor:.1}"));
            let left = show_small_length(-hottest.clearance.loosest, job.system, Toward::Down);
            writeln!(out, "{class:5}  {force:>10}  {factor:>20}  {left:>27}")?;
        }
    }
    Ok(())
}
