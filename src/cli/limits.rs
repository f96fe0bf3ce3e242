use super::Outcome;
use super::args::{Format, LimitsFlags, RingFlag};
use super::failure::Failure;
use super::output::Output;
use crate::fit::{self, FitError, Limits, Ring, RingClass, ToleranceClass};
use crate::quantity::{self, Nanometres, System};
use crate::report::fits::{self, Asked};

pub(super) fn run(flags: &LimitsFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let (nominal, typed_in) = nominal(&flags.nominal)?;
    let ring = flags.ring.map(|ring| match ring {
        RingFlag::Inner => Ring::Inner,
        RingFlag::Outer => Ring::Outer,
    });
    let (class, limits) = match ring {
        Some(ring) => ring_class(nominal, &flags.class, ring)?,
        None => class(nominal, &flags.class)?,
    };
    let asked = Asked { class: &class, limits: &limits };
    match flags.format {
        Format::Text => Ok(Outcome::done(fits::limits_text(&asked, output.layout(flags.units.or(typed_in))))),
        Format::Json => fits::limits_json(&asked).map(Outcome::done).map_err(Failure::unprintable),
    }
}

/// The nominal size; a bare number is in millimetres, as the help of the command says.
pub(super) fn nominal(text: &str) -> Result<(Nanometres, System), Failure> {
    let bare = !text.is_empty() && text.trim().chars().all(|c| c.is_ascii_digit() || c == '.');
    let text = if bare { format!("{} mm", text.trim()) } else { text.to_owned() };
    let entered = quantity::length(&text).map_err(|error| Failure::plain(error.problem, error.help))?;
    Ok((Nanometres::from_length(entered.value), entered.system.unwrap_or_default()))
}

/// A class of ISO 286-1.
pub(super) fn class(nominal: Nanometres, text: &str) -> Result<(String, Limits), Failure> {
    let class = ToleranceClass::parse(text).map_err(|error| refusal(&error))?;
    Ok((class.to_string(), fit::limits_of_size(nominal, class).map_err(|error| refusal(&error))?))
}

/// A class of ISO 492.
pub(super) fn ring_class(nominal: Nanometres, text: &str, ring: Ring) -> Result<(String, Limits), Failure> {
    let class = RingClass::parse(text).map_err(|error| refusal(&error))?;
    let limits: Result<Limits, FitError> = fit::ring_limits(nominal, class, ring);
    Ok((class.to_string(), limits.map_err(|error| refusal(&error))?))
}

/// A refusal that carries its advice after `help:`.
fn refusal(error: &dyn std::fmt::Display) -> Failure {
    let text = error.to_string();
    let (message, help) = text.split_once("\n  help: ").unwrap_or((&text, "`seatwise limits --help` shows examples"));
    Failure::plain(message, help)
}
