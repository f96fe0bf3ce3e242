use super::Outcome;
use super::args::{Format, PairFlags};
use super::failure::Failure;
use super::limits::{class, nominal, ring_class};
use super::output::Output;
use crate::fit::{Limits, Ring};
use crate::quantity::Nanometres;
use crate::report::fits::{self, Asked, Pair};

pub(super) fn run(flags: &PairFlags, output: &Output<'_>) -> Result<Outcome, Failure> {
    let (nominal, typed_in) = nominal(&flags.nominal)?;
    let (bore_class, bore) = of_either(nominal, &flags.bore, Ring::Inner)?;
    let (inner_class, inner) = of_either(nominal, &flags.inner, Ring::Outer)?;
    let bore_takes = ("the bore cannot have", "of shafts", "give its hole class, in capitals, such as H7");
    check_side(&flags.bore, &bore_class, char::is_uppercase, bore_takes)?;
    let inner_takes = ("what goes in cannot have", "of holes", "give its shaft class, in small letters, such as s6");
    check_side(&flags.inner, &inner_class, char::is_lowercase, inner_takes)?;
    let pair = Pair {
        bore: Asked { class: &bore_class, limits: &bore },
        inner: Asked { class: &inner_class, limits: &inner },
    };
    match flags.format {
        Format::Text => Ok(Outcome::done(fits::pair_text(&pair, output.layout(flags.units.or(typed_in))))),
        Format::Json => fits::pair_json(&pair).map(Outcome::done).map_err(Failure::unprintable),
    }
}

/// A bearing class when it says so, else a class of ISO 286-1: P6 alone is one of either.
fn of_either(nominal: Nanometres, text: &str, ring: Ring) -> Result<(String, Limits), Failure> {
    if is_ring(text) { ring_class(nominal, text, ring) } else { class(nominal, text) }
}

fn is_ring(text: &str) -> bool {
    let text = text.trim().to_uppercase();
    text.starts_with("ISO 492") || text == "NORMAL"
}

fn check_side(
    typed: &str,
    class: &str,
    right: fn(char) -> bool,
    (who, whose, help): (&str, &str, &str),
) -> Result<(), Failure> {
    if is_ring(typed) || class.starts_with(right) {
        return Ok(());
    }
    Err(Failure::plain(format!("{who} {class}, a class {whose}"), help))
}
