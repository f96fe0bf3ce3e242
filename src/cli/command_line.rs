//! The command line as a whole: its help with the commands in groups, completions for shells, manual pages.

use super::args::{Arguments, CompletionsFlags, ManualFlags};
use super::failure::Failure;
use super::{Outcome, terminal};
use clap::{Command, CommandFactory};
use textwrap::Options;

/// The commands by what someone wants to do, in the order in which help shows them.
const GROUPS: [(&str, &[&str]); 5] = [
    ("Begin a job", &["ask", "new", "batch"]),
    ("Plan it", &["plan", "card", "options", "table", "sweep", "compare", "log"]),
    ("Look closer", &["section", "deck", "working", "exercise"]),
    ("Look up", &["limits", "pair", "materials", "media"]),
    ("For programs and shells", &["schema", "completions", "manual"]),
];

/// Columns that the names of commands take.
const NAMES: usize = 15;

/// Everything that the program takes, with its help in groups.
pub(super) fn command() -> Command {
    let command = Arguments::command().disable_help_subcommand(true).term_width(terminal::of_result());
    let template = format!(
        "{{about-with-newline}}\n{{usage-heading}} {{usage}}\n\n{}Options:\n{{options}}{{after-help}}",
        groups(&command)
    );
    command.help_template(template).subcommand_required(true).arg_required_else_help(true)
}

fn groups(command: &Command) -> String {
    let mut text = String::new();
    for (title, names) in GROUPS {
        text.push_str(&format!("{title}:\n"));
        for name in names {
            let about = command.find_subcommand(name).and_then(Command::get_about);
            let about = about.map(ToString::to_string).unwrap_or_default();
            let first = format!("  {name:<width$}", width = NAMES - 2);
            let later = " ".repeat(NAMES);
            let options = Options::new(terminal::of_result()).initial_indent(&first).subsequent_indent(&later);
            for line in textwrap::wrap(&about, options) {
                text.push_str(line.trim_end());
                text.push('\n');
            }
        }
        text.push('\n');
    }
    text
}

/// The script that completes commands, flags and their values in a shell.
pub(super) fn completions(flags: &CompletionsFlags) -> Outcome {
    let mut script = Vec::new();
    clap_complete::generate(flags.shell.generator(), &mut command(), "seatwise", &mut script);
    Outcome::done(String::from_utf8_lossy(&script).into_owned())
}

/// The manual page of the program, or of one command.
pub(super) fn manual(flags: &ManualFlags) -> Result<Outcome, Failure> {
    let mut whole = command();
    whole.build();
    let page = match &flags.command {
        None => whole,
        Some(name) => {
            let known: Vec<&str> = whole.get_subcommands().map(Command::get_name).collect();
            let known = known.join(", ");
            let found = whole.find_subcommand(name).cloned().ok_or_else(|| {
                Failure::plain(format!("there is no command `{name}`"), format!("name one of: {known}"))
                    .allowing(Some(known.clone()))
            })?;
            found.version(env!("CARGO_PKG_VERSION"))
        }
    };
    let mut text = Vec::new();
    let rendered = clap_mangen::Man::new(page)
        .manual("seatwise")
        .source(concat!("seatwise ", env!("CARGO_PKG_VERSION")))
        .render(&mut text);
    rendered.map_err(Failure::unprintable)?;
    Ok(Outcome::done(String::from_utf8_lossy(&text).into_owned()))
}

#[cfg(test)]
mod tests {
    use super::{GROUPS, command};
    use crate::cli::args::Arguments;
    use clap::{Command, Parser};
    use std::collections::BTreeSet;

    fn all() -> Vec<Command> {
        command().get_subcommands().cloned().collect()
    }

    #[test]
    fn the_command_line_is_well_formed() {
        command().debug_assert();
    }

    #[test]
    fn every_command_stands_in_one_group() {
        let grouped: Vec<&str> = GROUPS.iter().flat_map(|(_, names)| names.iter().copied()).collect();
        let all = all();
        let known: BTreeSet<&str> = all.iter().map(Command::get_name).collect();
        assert_eq!(grouped.iter().copied().collect::<BTreeSet<_>>(), known);
        assert_eq!(grouped.len(), known.len(), "a command stands in two groups");
    }

    /// The words of an example, as a shell would part them.
    fn words(line: &str) -> Vec<String> {
        let mut words = vec![String::new()];
        let mut quoted = false;
        for c in line.chars() {
            match c {
                '"' => quoted = !quoted,
                ' ' if !quoted => words.push(String::new()),
                c => words.last_mut().unwrap().push(c),
            }
        }
        words.into_iter().filter(|word| !word.is_empty()).collect()
    }

    #[test]
    fn every_command_has_an_example_that_it_takes() {
        for command in all() {
            let name = command.get_name().to_owned();
            let after = command.get_after_help().map(ToString::to_string).unwrap_or_default();
            let examples: Vec<&str> = after
                .lines()
                .filter_map(|line| line.find("seatwise ").map(|at| line[at..].split(", then").next().unwrap().trim()))
                .collect();
            assert!(after.contains("Example") && !examples.is_empty(), "{name} has no example");
            for example in examples {
                let example = words(example.split(" > ").next().unwrap());
                assert_eq!(example[1], name, "{example:?}");
                let parsed = Arguments::try_parse_from(&example);
                assert!(parsed.is_ok(), "{example:?}: {}", parsed.unwrap_err());
            }
        }
    }

    #[test]
    fn every_flag_says_what_it_is_for() {
        for command in all() {
            for argument in command.get_arguments().filter(|argument| argument.get_id() != "help") {
                assert!(argument.get_help().is_some(), "{} {}", command.get_name(), argument.get_id());
            }
        }
    }
}
