use super::args::{Format, OwnFlags, UnitsFlag};
use super::failure::Failure;
use super::options::checked;
use super::output::{NamedBytes, Output};
use super::{DONE, Outcome, input};
use crate::job::Job;
use crate::plan::SeatKind;
use crate::plan::drawing::{self, Moment, SectionCase, SectionPlan, SectionRequest};
use crate::quantity::System;
use crate::report::plot::{self, SectionPicture, Shown};
use crate::report::section as report;
use clap::{Args, ValueEnum};
use std::ffi::OsStr;
use std::path::{Path, PathBuf};

#[derive(Args, Debug)]
pub(super) struct SectionFlags {
    /// Job file in TOML; - reads standard input
    job: PathBuf,

    /// At which temperatures
    #[arg(long, value_enum, default_value_t = AtFlag::Room)]
    at: AtFlag,

    /// Which case of the fit
    #[arg(long, value_enum, default_value_t = CaseFlag::Tightest)]
    case: CaseFlag,

    /// Which seat, of a job with two
    #[arg(long, value_enum)]
    seat: Option<SeatFlag>,

    /// What the bands of the picture show [default: stress]
    #[arg(long, value_enum)]
    show: Option<ShowFlag>,

    /// Form of the result; a picture where -o names an .svg or a .png
    #[arg(long, value_enum)]
    format: Option<Format>,

    #[command(flatten)]
    units: UnitsFlag,

    #[command(flatten)]
    pub(super) own: OwnFlags,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum AtFlag {
    /// Both parts at the temperature of the shop
    Room,
    /// The temperatures with which they meet, the part in its place
    Bore,
    /// The hottest state of [service]
    Hottest,
    /// The coldest state of [service]
    Coldest,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum CaseFlag {
    Tightest,
    Middle,
    Loosest,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
pub(super) enum SeatFlag {
    Housing,
    Shaft,
}

#[derive(Clone, Copy, Debug, ValueEnum)]
enum ShowFlag {
    /// Equivalent stress after von Mises
    Stress,
    /// Hoop stress
    Hoop,
    /// How far each place moves outward
    RadialDisplacement,
}

pub(super) fn run(flags: &SectionFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let library = input::library(&flags.own)?;
    let job = checked(&flags.job, &library)?;
    let seats =
        drawing::draw(&job, &flags.request()).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let system = flags.units.or(job.system);
    if let Some((path, svg)) = flags.picture(output)? {
        let files = drawn(&seats, (&job, system), (path, svg, flags.show.unwrap_or(ShowFlag::Stress)))?;
        return Ok(Outcome { text: None, files, code: DONE });
    }
    if flags.show.is_some() {
        let help = "name a picture, such as -o section.svg, or leave --show out";
        return Err(Failure::plain("--show says what a picture shows, and a table has none", help));
    }
    let text = match flags.format.unwrap_or(Format::Text) {
        Format::Text => report::text(&job, &seats, output.layout(system)),
        Format::Json => report::json(&job, &seats).map_err(Failure::unprintable)?,
    };
    Ok(Outcome::done(text))
}

impl SectionFlags {
    /// The job file, which is never written over.
    pub(super) fn job(&self) -> &PathBuf {
        &self.job
    }

    fn request(&self) -> SectionRequest {
        SectionRequest { seat: self.seat.map(SeatFlag::seat), moment: self.at.moment(), case: self.case.case() }
    }

    /// The picture that `-o` asks for, and whether it is SVG; none for a table.
    fn picture<'o>(&self, output: &Output<'o>) -> Result<Option<(&'o Path, bool)>, Failure> {
        let Some(path) = output.file() else { return Ok(None) };
        let kind = path.extension().and_then(OsStr::to_str).map(str::to_lowercase);
        let svg = match kind.as_deref() {
            Some("svg") => true,
            Some("png") => false,
            _ => return Ok(None),
        };
        if self.format.is_some() {
            let message = format!("{} is a picture, and --format asks for a table", path.display());
            return Err(Failure::plain(message, "leave --format out, or name another file"));
        }
        Ok(Some((path, svg)))
    }
}

impl AtFlag {
    pub(super) fn moment(self) -> Moment {
        match self {
            Self::Room => Moment::Room,
            Self::Bore => Moment::Bore,
            Self::Hottest => Moment::Hottest,
            Self::Coldest => Moment::Coldest,
        }
    }
}

impl CaseFlag {
    pub(super) fn case(self) -> SectionCase {
        match self {
            Self::Tightest => SectionCase::Tightest,
            Self::Middle => SectionCase::Middle,
            Self::Loosest => SectionCase::Loosest,
        }
    }
}

impl SeatFlag {
    pub(super) fn seat(self) -> SeatKind {
        match self {
            Self::Housing => SeatKind::Housing,
            Self::Shaft => SeatKind::Shaft,
        }
    }
}

/// One picture a seat; with two seats the seat's name goes into the file's name.
fn drawn(
    seats: &[SectionPlan],
    (job, system): (&Job, System),
    (path, svg, show): (&Path, bool, ShowFlag),
) -> Result<Vec<NamedBytes>, Failure> {
    let show = match show {
        ShowFlag::Stress => Shown::VonMises,
        ShowFlag::Hoop => Shown::Hoop,
        ShowFlag::RadialDisplacement => Shown::RadialDisplacement,
    };
    let of = |seat: &SectionPlan| {
        let file = if seats.len() == 1 { path.to_owned() } else { super::plan::for_seat(path, seat.seat) };
        let request = SectionPicture { seat, title: &job.heading.title, show, system };
        let drawn = if svg { plot::section_svg(&request).map(String::into_bytes) } else { plot::section_png(&request) };
        let drawn = drawn.map_err(|error| {
            Failure::plain(format!("the section could not be drawn: {error}"), "print the table: leave -o out")
        })?;
        Ok((file, drawn))
    };
    seats.iter().map(of).collect()
}
