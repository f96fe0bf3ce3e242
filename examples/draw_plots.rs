//! Draws the pictures of the README again: `cargo run --release --example draw_plots`.

use seatwise::report::plot::{self, PlotRequest};
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use std::error::Error;
use std::fs;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/plots");
    let text = fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/pump-case.toml"))?;
    let job = job::check(&text, &Library::default())?;
    let plan = plan::plan(&job)?;
    let seat = plan.seats.first().ok_or("the pump case has a seat")?;
    let title = report::plot_title(&plan, seat, job.system);
    let request =
        PlotRequest { history: &seat.history, title: &title, subtitle: &job.heading.title, system: job.system };
    fs::write(format!("{folder}/pump-case.svg"), plot::svg(&request)?)?;
    fs::write(format!("{folder}/pump-case.png"), plot::png(&request)?)?;
    Ok(())
}
