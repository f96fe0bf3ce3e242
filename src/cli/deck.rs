use super::args::OwnFlags;
use super::failure::Failure;
use super::options::checked;
use super::section::{AtFlag, CaseFlag, SeatFlag};
use super::{Outcome, input};
use crate::plan::drawing::{self, DrawingError, SectionRequest};
use crate::report::deck;
use clap::Args;
use std::path::PathBuf;

#[derive(Args, Debug)]
pub(super) struct DeckFlags {
    /// Job file in TOML; - reads standard input
    pub(super) job: PathBuf,

    /// At which temperatures
    #[arg(long, value_enum, default_value_t = AtFlag::Room)]
    at: AtFlag,

    /// Which case of the fit
    #[arg(long, value_enum, default_value_t = CaseFlag::Tightest)]
    case: CaseFlag,

    /// Which seat, of a job with two
    #[arg(long, value_enum)]
    seat: Option<SeatFlag>,

    #[command(flatten)]
    pub(super) own: OwnFlags,
}

pub(super) fn run(flags: &DeckFlags) -> Result<Outcome, Failure> {
    let library = input::library(&flags.own)?;
    let job = checked(&flags.job, &library)?;
    let request =
        SectionRequest { seat: flags.seat.map(SeatFlag::seat), moment: flags.at.moment(), case: flags.case.case() };
    let refused = |error: DrawingError| Failure::plain(error.to_string(), error.help());
    let seats = drawing::draw(&job, &request).map_err(refused)?;
    let seat = drawing::for_deck(&seats).map_err(refused)?;
    Ok(Outcome::done(deck::deck(&job.heading.title, seat)))
}
