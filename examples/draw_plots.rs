//! Draws the pictures of the README again: `cargo run --release --example draw_plots`.

use seatwise::job::Job;
use seatwise::plan::drawing::{self, Moment, SectionCase, SectionRequest};
use seatwise::report::plot::{
    self, ForceRequest, LogRequest, PlotRequest, ScrewsRequest, SectionPicture, Shown, WaysRequest,
};
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use std::error::Error;
use std::fs;

fn main() -> Result<(), Box<dyn Error>> {
    clearance_of_the_pump_case()?;
    force_of_the_idler_hub()?;
    readings_of_the_pump_case()?;
    screws_of_the_gear_cover()?;
    ways_of_the_pump_case()?;
    section_of_the_pump_case()
}

fn read(example: &str) -> Result<Job, Box<dyn Error>> {
    let text = fs::read_to_string(format!("{}/examples/{example}.toml", env!("CARGO_MANIFEST_DIR")))?;
    Ok(job::check(&text, &Library::default())?)
}

fn write(name: &str, svg: &str, png: &[u8]) -> Result<(), Box<dyn Error>> {
    let stem = format!("{}/plots/{name}", env!("CARGO_MANIFEST_DIR"));
    fs::write(format!("{stem}.svg"), svg)?;
    Ok(fs::write(format!("{stem}.png"), png)?)
}

fn readings_of_the_pump_case() -> Result<(), Box<dyn Error>> {
    let job = read("pump-case")?;
    let rows = fs::read_to_string(format!("{}/examples/pump-case-readings.csv", env!("CARGO_MANIFEST_DIR")))?;
    let compared = plan::log::compare(&job, &job::check_log(&rows, &job)?)?;
    let piece = compared.pieces.first().ok_or("the bearing was read")?;
    let title = report::log::answer(&compared, piece, job.system);
    let request = LogRequest { piece, title: &title, subtitle: &job.heading.title, system: job.system };
    write("pump-case-log", &plot::log_svg(&request)?, &plot::log_png(&request)?)
}

fn ways_of_the_pump_case() -> Result<(), Box<dyn Error>> {
    let (job, library) = (read("pump-case")?, Library::default());
    let media = ["domestic-freezer", "chest-freezer", "oven", "hot-plate"].map(|name| library.medium(name));
    let media = media.into_iter().collect::<Result<Vec<_>, _>>()?;
    let seats = plan::options::options(&job, &media)?;
    let seat = seats.first().ok_or("the pump case has a seat")?;
    let (ways, title) = (report::options::legend(seat, job.system), report::options::picture_title(seat, job.system));
    let request = WaysRequest { seat, ways: &ways, title: &title, subtitle: &job.heading.title, system: job.system };
    write("pump-case-ways", &plot::ways_svg(&request)?, &plot::ways_png(&request)?)
}

fn screws_of_the_gear_cover() -> Result<(), Box<dyn Error>> {
    let job = read("gear-cover")?;
    let plan = plan::plan(&job)?;
    let fasteners = plan.fasteners.as_ref().ok_or("the gear cover has screws")?;
    let title = report::screws_title(fasteners, job.system);
    let request = ScrewsRequest { plan: fasteners, title: &title, subtitle: &job.heading.title, system: job.system };
    write("gear-cover-screws", &plot::screws_svg(&request)?, &plot::screws_png(&request)?)
}

fn force_of_the_idler_hub() -> Result<(), Box<dyn Error>> {
    let job = read("iron-hub")?;
    let plan = plan::plan(&job)?;
    let seat = plan.seats.first().ok_or("the idler hub has a seat")?;
    let title = report::plot_title(&plan, seat, job.system);
    let request =
        ForceRequest { course: &seat.force_course, title: &title, subtitle: &job.heading.title, system: job.system };
    write("iron-hub-force", &plot::force_svg(&request)?, &plot::force_png(&request)?)
}

fn clearance_of_the_pump_case() -> Result<(), Box<dyn Error>> {
    let job = read("pump-case")?;
    let plan = plan::plan(&job)?;
    let seat = plan.seats.first().ok_or("the pump case has a seat")?;
    let title = report::plot_title(&plan, seat, job.system);
    let request =
        PlotRequest { history: &seat.history, title: &title, subtitle: &job.heading.title, system: job.system };
    write("pump-case", &plot::svg(&request)?, &plot::png(&request)?)
}

fn section_of_the_pump_case() -> Result<(), Box<dyn Error>> {
    let job = read("pump-case")?;
    let request = SectionRequest { seat: None, moment: Moment::Room, case: SectionCase::Tightest };
    let seats = drawing::draw(&job, &request)?;
    let seat = seats.first().ok_or("the pump case has a seat")?;
    let request = SectionPicture { seat, title: &job.heading.title, show: Shown::VonMises, system: job.system };
    write("pump-case-section", &plot::section_svg(&request)?, &plot::section_png(&request)?)
}
