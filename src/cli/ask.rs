//! Leads the talk of [`crate::job::ask`] on standard input and standard error; the answer goes to standard output.
//!
//! Plain lines and no prompt library: a line works in a terminal, through a pipe and for a screen reader alike.

use super::args::{AskFlags, OutputFlags};
use super::failure::Failure;
use super::output::Output;
use super::voice::Voice;
use super::{DONE, input};
use crate::job::Problem;
use crate::job::ask::{Question, Reply, Talk, Usual};
use crate::plan;
use crate::report::text;
use std::io::{BufRead, IsTerminal, Write};
use std::path::{Path, PathBuf};

/// Where the answers of a terminal are kept when no name for the job was given.
const DRAFT: &str = "seatwise.answers";
const INTRODUCTION: &str = "Write values with their unit, as the shop says them: 62 mm, 1-1/8 in, -18 °C, 0 °F, 1 h 30 min.\n\
                            An empty line takes what stands in [ ]; ? explains, < goes back, quit stops and keeps the answers.\n";

/// Leads the talk, gives the answer, and only then asks whether the job is to be kept.
pub(super) fn run(flags: &AskFlags, output: &Output<'_>, voice: Voice) -> Result<u8, Failure> {
    let library = input::library(&flags.own)?;
    output.may_write_text()?;
    let keeper = Keeper::new(flags, output)?;
    let mut talk = match &flags.resume {
        Some(path) => resumed(&library, path)?,
        None => Talk::new(&library),
    };
    let mut lines = Lines::new();
    if !voice.quiet {
        say(INTRODUCTION)?;
    }
    let answer = loop {
        while let Some(question) = talk.question() {
            let Some(line) = lines.ask(&prompt(&talk, question))? else { return Err(keeper.stopped(&talk, question)) };
            if line.trim() == "quit" {
                return Err(keeper.stopped(&talk, question));
            }
            say(&told(talk.answer(&line)))?;
            keeper.keep(&talk)?;
        }
        match talk.finish() {
            Ok(job) => match plan::plan(&job) {
                Ok(plan) => break text::short(&plan, output.layout(flags.units.or(job.system))),
                Err(error) if talk.take_back_holds() => {
                    say(&format!("  Not taken: {error}\n  help: {}\n", error.help()))?;
                }
                Err(error) => return Err(Failure::plain(error.to_string(), error.help())),
            },
            Err(problems) if talk.question().is_some() => say(&faults(problems.iter()))?,
            Err(problems) => return Err(Failure::job("the answers".to_owned(), talk.text(), &problems)),
        }
    };
    // A reader who is gone, or a result that cannot be written, is no reason to lose the job.
    let written = output.write_result(&answer);
    keeper.save(&talk, &mut lines)?;
    written.map(|()| DONE)
}

fn resumed<'l>(library: &'l crate::stock::Library, path: &Path) -> Result<Talk<'l>, Failure> {
    let draft = input::text(path, "name the file that the earlier run has written")?;
    if !Talk::is_draft(&draft) {
        let name = path.display();
        return Err(Failure::plain(
            format!("{name} does not hold the answers of an earlier run, and is left as it is"),
            "name the file that the earlier run has written; a job is planned with seatwise plan",
        ));
    }
    let (talk, left) = Talk::resume(library, &draft);
    let told: String = talk.draft().lines().skip(1).map(|line| format!("  {line}\n")).collect();
    say(&format!("Taken up:\n{told}"))?;
    for line in left {
        say(&format!("  left out, it fits no question here: {line}\n"))?;
    }
    Ok(talk)
}

fn prompt(talk: &Talk<'_>, question: &Question) -> String {
    let usual = match question.usual {
        Usual::Needed => String::new(),
        Usual::Value(value) => format!(" [{value}]"),
        Usual::LeftOut(what) => format!(" [empty: {what}]"),
    };
    let numbered = |(place, choice): (usize, &&str)| format!("{} {choice}", place + 1);
    let choices: Vec<String> = question.choices.iter().enumerate().map(numbered).collect();
    let choices = if choices.is_empty() { String::new() } else { format!("\n   {}", choices.join("   ")) };
    format!("\n{}. {}{usual}{choices}\n> ", talk.number(), talk.words(question))
}

fn told(reply: Reply) -> String {
    match reply {
        Reply::Taken => String::new(),
        Reply::Why(why) => format!("  {why}\n"),
        Reply::Refused(problems) => faults(problems.iter()),
        Reply::Back(Some(answer)) if !answer.is_empty() => format!("  It was: {answer}\n"),
        Reply::Back(Some(_)) => "  It was left empty.\n".to_owned(),
        Reply::Back(None) => "  This is the first question.\n".to_owned(),
    }
}

fn faults<'p>(problems: impl Iterator<Item = &'p Problem>) -> String {
    problems.map(|problem| format!("  Not taken: {}\n  help: {}\n", problem.message, problem.help)).collect()
}

fn say(text: &str) -> Result<(), Failure> {
    let mut stream = anstream::stderr();
    let written = stream.write_all(text.as_bytes()).and_then(|()| stream.flush());
    written.map_err(|error| Failure::plain(format!("cannot write the question: {error}"), "keep standard error open"))
}

/// Lines of standard input.
struct Lines {
    terminal: bool,
}

impl Lines {
    fn new() -> Self {
        Self { terminal: std::io::stdin().is_terminal() }
    }

    /// The line that follows a prompt; none when there are no more.
    fn ask(&mut self, prompt: &str) -> Result<Option<String>, Failure> {
        say(prompt)?;
        let mut line = String::new();
        match std::io::stdin().lock().read_line(&mut line) {
            Ok(0) => {
                say("\n")?;
                Ok(None)
            }
            Ok(_) => {
                // A terminal shows what was typed; of a pipe the record would have questions alone.
                if !self.terminal {
                    say(&format!("{}\n", line.trim_end()))?;
                }
                Ok(Some(line))
            }
            // A terminal that was closed says so by an error.
            Err(error) if error.kind() != std::io::ErrorKind::InvalidData => Ok(None),
            Err(_) => {
                Err(Failure::plain("an answer is not UTF-8 text", "set the terminal to UTF-8, and type it again"))
            }
        }
    }
}

/// Keeps the answers while the talk goes on, and the job when it is done.
struct Keeper<'f> {
    flags: &'f AskFlags,
    output: &'f Output<'f>,
    /// The file of the answers so far; none for a pipe that names no job.
    draft: Option<PathBuf>,
}

impl<'f> Keeper<'f> {
    fn new(flags: &'f AskFlags, output: &'f Output<'f>) -> Result<Self, Failure> {
        let beside = flags.save.as_ref().map(|job| {
            let mut name = job.clone().into_os_string();
            name.push(".answers");
            PathBuf::from(name)
        });
        let of_terminal = || std::io::stdin().is_terminal().then(|| PathBuf::from(DRAFT));
        let draft = flags.resume.clone().or(beside).or_else(of_terminal);
        let keeper = Self { flags, output, draft };
        if let Some(job) = &flags.save {
            keeper.output.may_write(job)?;
        }
        if let Some(draft) = keeper.draft.as_ref().filter(|draft| flags.resume.is_none() && draft.exists()) {
            let name = draft.display();
            let help = format!("go on from it with --resume {name}, or remove it");
            return Err(Failure::plain(format!("{name} holds the answers of an earlier run"), help));
        }
        Ok(keeper)
    }

    /// The answers so far, after each of them, so that a closed terminal takes none with it.
    fn keep(&self, talk: &Talk<'_>) -> Result<(), Failure> {
        let Some(draft) = &self.draft else { return Ok(()) };
        // The draft is this run's own file.
        let over = OutputFlags { file: None, force: true };
        Output::new(&over, Vec::new()).write_file(draft, talk.draft().as_bytes())
    }

    fn stopped(&self, talk: &Talk<'_>, question: &Question) -> Failure {
        let message = format!("the answers end before `{}`: {}", question.key, talk.words(question));
        let help = match &self.draft {
            Some(draft) if draft.exists() => {
                format!("they are kept in {0}; go on with: seatwise ask --resume {0}", draft.display())
            }
            _ => "give one answer a line; with --save FILE they are kept and can be taken up again".to_owned(),
        };
        Failure::plain(message, help)
    }

    /// Says where the answers are, where there is a file of them.
    fn unsaved(&self) -> Result<(), Failure> {
        let Some(draft) = &self.draft else { return Ok(()) };
        say(&format!(
            "Not saved. The answers are kept in {0}; go on with: seatwise ask --resume {0}\n",
            draft.display()
        ))
    }

    /// Offers to save the job, and removes the draft, which is then no longer needed. Where no one answers, as when the terminal
    /// is closed, the draft stays.
    fn save(&self, talk: &Talk<'_>, lines: &mut Lines) -> Result<(), Failure> {
        let mut name = self.flags.save.clone();
        while name.is_none() {
            let Some(line) = lines.ask("\nSave the job as? [empty: not]\n> ")? else { return self.unsaved() };
            if line.trim().is_empty() {
                break;
            }
            let path = PathBuf::from(line.trim());
            match self.output.may_write(&path) {
                Ok(()) => name = Some(path),
                Err(failure) => say(&failure.render())?,
            }
        }
        if let Some(path) = name {
            self.output.write_file(&path, talk.text().as_bytes())?;
            say(&format!("Saved. Plan it again with: seatwise plan {}\n\n", path.display()))?;
        }
        // Answers that cannot be removed are still there to be taken up: no reason to fail.
        self.draft.as_ref().map_or(Ok(()), std::fs::remove_file).or(Ok(()))
    }
}
