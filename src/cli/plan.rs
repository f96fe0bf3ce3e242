use super::args::{Detail, PlanFlags, PlanFormat, Required};
use super::failure::{Failure, named};
use super::output::Output;
use super::{DONE, Outcome, WORSE, input};
use crate::job;
use crate::plan::{self, Plan, SeatKind, SeatPlan, Verdict};
use crate::quantity::System;
use crate::report::plot::{self, ForceRequest, PlotError, PlotRequest};
use crate::report::{csv, json, plot_title, text};
use std::ffi::OsStr;
use std::path::{Path, PathBuf};

pub(super) fn run(flags: &PlanFlags) -> Result<Outcome, Failure> {
    let library = input::library(&flags.own.material)?;
    let text = input::text(&flags.job, "give a job file in TOML; the README shows one")?;
    let job = job::check(&text, &library).map_err(|problems| Failure::job(named(&flags.job), text, &problems))?;
    let plan =
        plan::plan_by(&job, flags.model.method()).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let system = flags.units.or(job.system);
    let rendered = match flags.format {
        PlanFormat::Text if flags.detail == Detail::Short => text::short(&plan, system),
        PlanFormat::Text => text::plan(&plan, system),
        PlanFormat::Json => json::plan(&plan).map_err(Failure::unprintable)?,
        PlanFormat::Csv => csv::plan(&plan).map_err(Failure::unprintable)?,
    };
    let output = Output::new(&flags.output, vec![&flags.job]);
    if let Some(file) = &flags.output.file {
        output.may_write(file)?;
    }
    let pictures: [(&Option<PathBuf>, Draw); 2] =
        [(&flags.plot, clearance_picture), (&flags.force_plot, force_picture)];
    for (path, picture) in pictures {
        if let Some(path) = path {
            draw(&plan, system, (path, picture), &output)?;
        }
    }
    Ok(Outcome { text: rendered, code: if worse(plan.verdict, flags.require) { WORSE } else { DONE } })
}

fn worse(verdict: Verdict, required: Option<Required>) -> bool {
    required.is_some_and(|required| {
        verdict
            > match required {
                Required::DropsIn => Verdict::DropsIn,
                Required::SomeWillNot => Verdict::SomeWillNot,
                Required::Press => Verdict::Press,
            }
    })
}

/// One picture a seat; with two seats the seat's name goes into the file's name.
fn draw(plan: &Plan<'_>, system: System, (path, picture): (&Path, Draw), output: &Output<'_>) -> Result<(), Failure> {
    let kind = path.extension().and_then(OsStr::to_str).map(str::to_lowercase);
    if !matches!(kind.as_deref(), Some("svg" | "png")) {
        let message = format!("{} names no kind of picture", path.display());
        return Err(Failure::plain(message, "end the name in .svg or .png"));
    }
    let one = plan.seats.len() == 1;
    let files: Vec<(PathBuf, &SeatPlan)> =
        plan.seats.iter().map(|seat| (if one { path.to_owned() } else { for_seat(path, seat.seat) }, seat)).collect();
    for (file, _) in &files {
        output.may_write(file)?;
    }
    for (file, seat) in files {
        let drawn = picture(plan, seat, system, kind.as_deref() == Some("svg"));
        let drawn = drawn.map_err(|error| {
            Failure::plain(format!("the plot could not be drawn: {error}"), "leave --plot and --force-plot out")
        })?;
        output.write_file(&file, &drawn)?;
    }
    Ok(())
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
