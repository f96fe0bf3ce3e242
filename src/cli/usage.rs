//! Flags that are wrong, said in the words in which a wrong job is.

use super::failure::Failure;
use clap::error::{ContextKind, ContextValue, ErrorKind};
use clap::{ColorChoice, Command, Error};
use std::error::Error as _;
use std::ffi::OsString;

/// What the reader of the flags found wrong; none where it only shows help or the version.
pub(super) fn refusal(error: &Error, arguments: &[OsString], command: &Command) -> Option<Failure> {
    let help = format!("`{} --help` shows its flags with an example", called(arguments, command));
    let told = match error.kind() {
        ErrorKind::DisplayHelp | ErrorKind::DisplayVersion | ErrorKind::DisplayHelpOnMissingArgumentOrSubcommand => {
            return None;
        }
        ErrorKind::InvalidValue | ErrorKind::ValueValidation => value(error, &help),
        ErrorKind::UnknownArgument => {
            let given = word(error, ContextKind::InvalidArg);
            let meant = suggested(error, ContextKind::SuggestedArg);
            let message = if given.starts_with('-') {
                format!("there is no flag `{given}` here")
            } else {
                format!("`{given}` is one word too many")
            };
            let quotes = if given.starts_with('-') { "" } else { "; a value with a blank in it needs quotes" };
            Failure::plain(message, format!("{meant}{help}{quotes}"))
        }
        ErrorKind::InvalidSubcommand => {
            let given = word(error, ContextKind::InvalidSubcommand);
            let meant = suggested(error, ContextKind::SuggestedSubcommand);
            let known: Vec<&str> = command.get_subcommands().map(Command::get_name).collect();
            Failure::plain(
                format!("there is no command `{given}`"),
                format!("{meant}`seatwise --help` lists the commands"),
            )
            .allowing(Some(known.join(", ")))
        }
        ErrorKind::MissingRequiredArgument => {
            let missing = words(error, ContextKind::InvalidArg).join(" and ");
            let needed = if missing.starts_with("--over") || !missing.starts_with('-') {
                String::new()
            } else {
                ": a flag that was given needs it".to_owned()
            };
            Failure::plain(format!("{missing} is missing{needed}"), help)
        }
        ErrorKind::ArgumentConflict => {
            let (one, other) = (word(error, ContextKind::InvalidArg), words(error, ContextKind::PriorArg).join(", "));
            let message = if one == other || other.is_empty() {
                format!("{one} is given twice")
            } else {
                format!("{one} does not go with {other}")
            };
            Failure::plain(message, format!("keep one; {help}"))
        }
        ErrorKind::WrongNumberOfValues | ErrorKind::TooFewValues | ErrorKind::TooManyValues => {
            let flag = word(error, ContextKind::InvalidArg);
            let flag = flag.split(' ').next().unwrap_or_default();
            let least = word(error, ContextKind::MinValues);
            let message = if least.is_empty() {
                format!("{flag} has too many values")
            } else {
                format!(
                    "{flag} stands for at least {least} values, and {} is given",
                    word(error, ContextKind::ActualNumValues)
                )
            };
            Failure::plain(message, help)
        }
        _ => {
            let said = error.to_string();
            let first = said.lines().next().unwrap_or_default().trim_start_matches("error: ").to_owned();
            Failure::plain(first, help)
        }
    };
    Some(told)
}

fn value(error: &Error, help: &str) -> Failure {
    let flag = word(error, ContextKind::InvalidArg);
    let (flag, given) = (flag.trim_matches(['[', ']']), word(error, ContextKind::InvalidValue));
    let known = words(error, ContextKind::ValidValue);
    let meant = suggested(error, ContextKind::SuggestedValue);
    let message =
        if given.is_empty() { format!("{flag} has no value") } else { format!("{flag} cannot be \"{given}\"") };
    if known.is_empty() {
        let allowed = error.source().map(|why| whole_number(&why.to_string()));
        let message = allowed.iter().fold(message, |message, allowed| format!("{message}: it must be {allowed}"));
        return Failure::plain(message, help).allowing(allowed);
    }
    let known = known.join(", ");
    Failure::plain(message, format!("{meant}it takes: {known}")).allowing(Some(known))
}

/// What a flag takes that is a whole number, from the reason for which its reader has refused one.
fn whole_number(why: &str) -> String {
    let range = why.split_once(" is not in ").and_then(|(_, range)| range.split_once("..="));
    range.map_or("a whole number from 0".to_owned(), |(low, high)| format!("a whole number from {low} to {high}"))
}

fn suggested(error: &Error, kind: ContextKind) -> String {
    match words(error, kind).first() {
        Some(meant) => format!("did you mean `{meant}`? "),
        None => String::new(),
    }
}

fn word(error: &Error, kind: ContextKind) -> String {
    words(error, kind).join(" ")
}

fn words(error: &Error, kind: ContextKind) -> Vec<String> {
    match error.get(kind) {
        Some(ContextValue::String(word)) => vec![word.clone()],
        Some(ContextValue::Strings(words)) => words.clone(),
        Some(ContextValue::Number(number)) => vec![number.to_string()],
        _ => Vec::new(),
    }
}

/// The command that was called, as far as it is one.
fn called(arguments: &[OsString], command: &Command) -> String {
    let named = arguments.iter().skip(1).filter_map(|argument| argument.to_str());
    let found = named.into_iter().find(|argument| command.find_subcommand(argument).is_some());
    found.map_or_else(|| "seatwise".to_owned(), |name| format!("seatwise {name}"))
}

/// Whether the flags ask for JSON; read by hand, since flags that are wrong cannot be read by rule.
pub(super) fn wants_json(arguments: &[OsString]) -> bool {
    let words: Vec<&str> = arguments.iter().filter_map(|argument| argument.to_str()).collect();
    words.contains(&"--format=json") || words.windows(2).any(|pair| pair == ["--format", "json"])
}

/// Colours of help, as `--color` asks for; read by hand for the same reason.
pub(super) fn color(arguments: &[OsString]) -> ColorChoice {
    let words: Vec<&str> = arguments.iter().filter_map(|argument| argument.to_str()).collect();
    let asked = |choice: &str| {
        words.contains(&format!("--color={choice}").as_str())
            || words.windows(2).any(|pair| pair == ["--color", choice])
    };
    match (asked("always"), asked("never")) {
        (true, _) => ColorChoice::Always,
        (_, true) => ColorChoice::Never,
        _ => ColorChoice::Auto,
    }
}
