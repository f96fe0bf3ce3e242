use super::args::{Detail, PlanFlags, PlanFormat, Required};
use super::failure::{Failure, named};
use super::output::{NamedBytes, Output};
use super::{DONE, Outcome, WORSE, input, scatter};
use crate::job;
use crate::plan::{self, Plan, SeatKind, SeatPlan, SolvedSeats, Verdict};
use crate::quantity::System;
use crate::report::plot::{self, ForceRequest, PlotError, PlotRequest, ScatterRequest, ScrewsRequest};
use crate::report::{csv, json, plot_title, scatter_title, screws_title, text};
use std::ffi::OsStr;
use std::path::{Path, PathBuf};

pub(super) fn run(flags: &PlanFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.shown.own)?;
    let text = input::text(&flags.job, "give a job file in TOML; the README shows one")?;
    if job::is_seal_alone(&text) {
        return seal_alone(flags, text, output);
    }
    let job = job::check(&text, &library).map_err(|problems| Failure::job(named(&flags.job), text, &problems))?;
    let (method, solved) = (flags.model.method(), SolvedSeats::default());
    let mut plan =
        plan::plan_alone(&job, method, &solved).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    plan.scatter = scatter::drawn(&job, &flags.scatter, (method, &solved))?;
    let system = flags.shown.units.or(job.system);
    let rendered = match flags.shown.format {
        PlanFormat::Text if flags.detail == Detail::Short => text::short(&plan, output.layout(system)),
        PlanFormat::Text => text::plan(&plan, output.layout(system)),
        PlanFormat::Json => json::plan(&plan).map_err(Failure::unprintable)?,
        PlanFormat::Csv => csv::plan(&plan).map_err(Failure::unprintable)?,
    };
    let pictures: [(&Option<PathBuf>, Draw); 3] = [
        (&flags.plot, clearance_picture),
        (&flags.force_plot, force_picture),
        (&flags.scatter.scatter_plot, scatter_picture),
    ];
    let mut files = Vec::new();
    for (path, picture) in pictures {
        if let Some(path) = path {
            files.extend(drawn(&plan, system, path, picture)?);
        }
    }
    if let Some(path) = &flags.screw_plot {
        files.push((path.clone(), screws(&plan, system, path)?));
    }
    if let (Some(file), Some(drawn)) = (&flags.scatter.scatter_csv, &plan.scatter) {
        let percentiles = crate::report::scatter::csv(drawn).map_err(Failure::unprintable)?;
        files.push((file.clone(), percentiles.into_bytes()));
    }
    Ok(Outcome { text: Some(rendered), files, code: code(plan.verdict, flags.require) })
}

/// A job of a shaft seal without a bearing.
fn seal_alone(flags: &PlanFlags, text: String, output: &Output<'_>) -> Result<Outcome, Failure> {
    let job = job::check_seal(&text).map_err(|problems| Failure::job(named(&flags.job), text, &problems))?;
    let planned = plan::seal::plan_alone(&job).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let Some(plan) = planned else {
        return Err(Failure::plain("the seal has no sizes", "give size = \"35x52x7\" under [seal]"));
    };
    if flags.plot.is_some() || flags.force_plot.is_some() {
        let help = "leave --plot and --force-plot out, or describe the [bearing] and its [housing]";
        return Err(Failure::plain("a seal alone has no clearance or force against time to draw", help));
    }
    let system = flags.shown.units.or(job.system);
    let rendered = match flags.shown.format {
        PlanFormat::Text => text::seal_alone(&plan, output.layout(system), flags.detail == Detail::Short),
        PlanFormat::Json => json::seal_alone(&plan).map_err(Failure::unprintable)?,
        PlanFormat::Csv => csv::seal_alone(&plan).map_err(Failure::unprintable)?,
    };
    Ok(Outcome { text: Some(rendered), files: Vec::new(), code: code(Verdict::Press, flags.require) })
}

fn code(verdict: Verdict, required: Option<Required>) -> u8 {
    let worse = required.is_some_and(|required| {
        verdict
            > match required {
                Required::DropsIn => Verdict::DropsIn,
                Required::SomeWillNot => Verdict::SomeWillNot,
                Required::Press => Verdict::Press,
            }
    });
    if worse { WORSE } else { DONE }
}

/// One picture a seat; with two seats the seat's name goes into the file's name.
fn drawn(plan: &Plan<'_>, system: System, path: &Path, picture: Draw) -> Result<Vec<NamedBytes>, Failure> {
    let svg = is_svg(path)?;
    let one = plan.seats.len() == 1;
    let of = |seat: &SeatPlan| {
        let file = if one { path.to_owned() } else { for_seat(path, seat.seat) };
        let drawn = picture(plan, seat, system, svg);
        let drawn = drawn
            .map_err(|error| Failure::plain(format!("the plot could not be drawn: {error}"), "leave the plots out"))?;
        Ok((file, drawn))
    };
    plan.seats.iter().map(of).collect()
}

/// Whether the name of a picture asks for SVG, or else for PNG.
pub(super) fn is_svg(path: &Path) -> Result<bool, Failure> {
    match path.extension().and_then(OsStr::to_str).map(str::to_lowercase).as_deref() {
        Some("svg") => Ok(true),
        Some("png") => Ok(false),
        _ => {
            Err(Failure::plain(format!("{} names no kind of picture", path.display()), "end the name in .svg or .png"))
        }
    }
}

/// The picture of the cover's screws.
fn screws(plan: &Plan<'_>, system: System, path: &Path) -> Result<Vec<u8>, Failure> {
    let svg = is_svg(path)?;
    let Some(fasteners) = &plan.fasteners else {
        let help = "describe the screws under [fasteners], or leave --screw-plot out";
        return Err(Failure::plain("the job has no cover screws to draw".to_owned(), help));
    };
    let title = screws_title(fasteners, system);
    let request = ScrewsRequest { plan: fasteners, title: &title, subtitle: &plan.job.heading.title, system };
    let drawn = if svg { plot::screws_svg(&request).map(String::into_bytes) } else { plot::screws_png(&request) };
    drawn.map_err(|error| Failure::plain(format!("the screws could not be drawn: {error}"), "leave --screw-plot out"))
}

/// The file's name with the seat's in it.
pub(super) fn for_seat(path: &Path, seat: SeatKind) -> PathBuf {
    let stem = path.file_stem().unwrap_or_default().to_string_lossy();
    let extension = path.extension().unwrap_or_default().to_string_lossy();
    path.with_file_name(format!("{stem}-{}.{extension}", seat.name()))
}

/// Draws a picture of a seat as SVG, or else as PNG.
type Draw = fn(&Plan<'_>, &SeatPlan, System, bool) -> Result<Vec<u8>, PlotError>;

fn clearance_picture(plan: &Plan<'_>, seat: &SeatPlan, system: System, svg: bool) -> Result<Vec<u8>, PlotError> {
    let title = plot_title(plan, seat, system);
    let subtitle = plan.job.heading.title.as_str();
    let request = PlotRequest { history: &seat.history, title: &title, subtitle, system };
    if svg { plot::svg(&request).map(String::into_bytes) } else { plot::png(&request) }
}

fn force_picture(plan: &Plan<'_>, seat: &SeatPlan, system: System, svg: bool) -> Result<Vec<u8>, PlotError> {
    let title = plot_title(plan, seat, system);
    let subtitle = plan.job.heading.title.as_str();
    let request = ForceRequest { course: &seat.force_course, title: &title, subtitle, system };
    if svg { plot::force_svg(&request).map(String::into_bytes) } else { plot::force_png(&request) }
}

fn scatter_picture(plan: &Plan<'_>, seat: &SeatPlan, system: System, svg: bool) -> Result<Vec<u8>, PlotError> {
    let drawn = plan.scatter.iter().flat_map(|scatter| &scatter.seats).find(|drawn| drawn.seat == seat.seat);
    let scatter = drawn.ok_or(PlotError::NoPoints)?;
    let title = scatter_title(scatter, system);
    let request = ScatterRequest { scatter, title: &title, subtitle: plan.job.heading.title.as_str(), system };
    if svg { plot::scatter_svg(&request).map(String::into_bytes) } else { plot::scatter_png(&request) }
}
