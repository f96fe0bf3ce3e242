use super::args::{CardFlags, PaperFlag};
use super::failure::{Failure, named};
use super::{Outcome, input};
use crate::job;
use crate::plan;
use crate::report::card::{self, CardError, CardRequest, Paper};

pub(super) fn run(flags: &CardFlags) -> Result<Outcome, Failure> {
    let library = input::library(&flags.own)?;
    let text = input::text(&flags.job, "give a job file in TOML; the README shows one")?;
    if job::is_seal_alone(&text) {
        return seal_alone(flags, text);
    }
    let job = job::check(&text, &library).map_err(|problems| Failure::job(named(&flags.job), text, &problems))?;
    let planned = plan::plan_by(&job, flags.model.method());
    let plan = planned.map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let request = request(flags, job.system);
    Ok(Outcome::done(card::html(&plan, &request).map_err(unprintable)?))
}

fn seal_alone(flags: &CardFlags, text: String) -> Result<Outcome, Failure> {
    let job = job::check_seal(&text).map_err(|problems| Failure::job(named(&flags.job), text, &problems))?;
    let planned = plan::seal::plan_alone(&job).map_err(|error| Failure::plain(error.to_string(), error.help()))?;
    let Some(plan) = planned else {
        return Err(Failure::plain("the seal has no sizes", "give size = \"35x52x7\" under [seal]"));
    };
    let request = request(flags, job.system);
    Ok(Outcome::done(card::seal_alone(&plan, &request).map_err(unprintable)?))
}

fn request(flags: &CardFlags, usual: crate::quantity::System) -> CardRequest<'_> {
    let paper = match flags.paper {
        PaperFlag::A4 => Paper::A4,
        PaperFlag::Letter => Paper::Letter,
    };
    CardRequest { system: flags.units.or(usual), paper, date: flags.date.as_deref() }
}

fn unprintable(error: CardError) -> Failure {
    Failure::plain(format!("the card could not be made: {error}"), "print the plan with seatwise plan instead")
}
