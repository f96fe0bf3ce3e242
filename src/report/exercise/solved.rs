//! A problem with what it gives, and what answers it.

use super::closed::{self, Closed};
use crate::job::ServiceEnd;
use crate::plan::exercise::{Answer, Problem, Properties, Question, constants};
use crate::plan::{Level, Plan};
use crate::quantity::{System, ThermodynamicTemperature, Worked};
use crate::report::working::{Line, Seat, Value, symbol, working};
use crate::report::{plot_title, words};

/// A problem with its answers.
pub(super) struct Solved<'p> {
    pub(super) problem: &'p Problem,
    /// What is given, for each case what it has not in common with the first.
    pub(super) given: Vec<Vec<Given>>,
    pub(super) answers: Vec<Answered<'p>>,
    /// Dangers of the jobs.
    pub(super) dangers: Vec<String>,
    /// Dangers and warnings of the plans.
    pub(super) cautions: Vec<String>,
}

/// A value that the sheet gives.
pub(super) struct Given {
    pub(super) value: Value,
    /// Where it comes from, by the results that lean on it.
    pub(super) sources: Vec<String>,
}

/// A question with its answer.
pub(super) struct Answered<'p> {
    pub(super) question: &'p Question,
    pub(super) parts: Vec<Part>,
}

/// A part of an answer.
pub(super) enum Part {
    /// A result that was not worked before in this problem, on the way or asked for.
    Worked { case: usize, line: Box<Line>, asked: bool },
    /// A result that was worked at an earlier question.
    Again { case: usize, value: Box<Value> },
    /// Words of the plan: the answer in a few, and the sentence to print.
    Words { case: usize, at: &'static str, short: String, text: String },
}

impl<'p> Solved<'p> {
    pub(super) fn new(problem: &'p Problem, plans: &'p [Plan<'p>], system: System) -> Self {
        let mut lists: Vec<Lists> = problem
            .cases
            .iter()
            .zip(plans)
            .map(|(case, plan)| Lists { all: results(case, plan, system), chosen: Vec::new() })
            .collect();
        let answers = problem.questions.iter().map(|question| Answered {
            question,
            parts: question.answers.iter().flat_map(|answer| answered(*answer, plans, &mut lists, system)).collect(),
        });
        let answers = answers.collect();
        let mut given = given(&lists);
        if problem.cases.iter().any(|case| case.properties == Properties::Library) {
            for (place, plan) in plans.iter().enumerate() {
                add_setting(&mut given, place, plan, system);
            }
        }
        Self {
            problem,
            answers,
            given,
            dangers: said(plans, system, |level| level == Level::Danger),
            cautions: said(plans, system, |level| matches!(level, Level::Danger | Level::Warning)),
        }
    }

    /// Every source once, in the order of the answers.
    pub(super) fn sources(&self) -> Vec<&str> {
        let mut all: Vec<&str> = Vec::new();
        let lines = self.answers.iter().flat_map(|answer| &answer.parts).filter_map(|part| match part {
            Part::Worked { line, .. } => Some(line),
            _ => None,
        });
        for source in lines.flat_map(|line| &line.sources) {
            if !all.contains(&source.as_str()) {
                all.push(source);
            }
        }
        all
    }

    /// Whether the problem has several jobs, so that each must be named.
    pub(super) fn label(&self, case: usize) -> Option<&str> {
        let several = self.problem.cases.len() > 1;
        self.problem.cases.get(case).filter(|_| several).map(|case| case.label.as_str())
    }
}

/// Results of one case: all that the plan works, and the places of those that answer or lead to an answer.
struct Lists {
    all: Vec<Line>,
    chosen: Vec<usize>,
}

impl Lists {
    fn place(&self, at: &str) -> Option<usize> {
        self.all.iter().position(|line| line.result.at == at)
    }

    /// Puts a result and those that it leans on at the end of `chosen`, each after what it leans on, and gives the new ones.
    fn choose(&mut self, at: &str) -> Vec<usize> {
        let before = self.chosen.len();
        self.follow(at, &mut Vec::new());
        self.chosen.get(before..).unwrap_or_default().to_vec()
    }

    fn follow(&mut self, at: &str, open: &mut Vec<usize>) {
        let Some(place) = self.place(at) else { return };
        if self.chosen.contains(&place) || open.contains(&place) {
            return;
        }
        open.push(place);
        let leans_on: Vec<String> = self.all[place].put_in.iter().map(|value| value.at.clone()).collect();
        for at in leans_on {
            self.follow(&at, open);
        }
        self.chosen.push(place);
    }

    fn is_worked(&self, at: &str) -> bool {
        self.chosen.iter().any(|place| self.all[*place].result.at == at)
    }
}

/// All results of a case, closed formulas before those that are found in words.
fn results(case: &crate::plan::exercise::Case, plan: &Plan<'_>, system: System) -> Vec<Line> {
    let constants = constants(case, plan);
    let mut lines = Vec::new();
    if let (Some(constants), Some(seat)) = (&constants, plan.seats.first()) {
        lines = closed::lines(Closed { seat: Seat { plan, seat, number: 0, system }, constants });
    }
    lines.extend(working(plan, system).parts.into_iter().flat_map(|part| part.lines));
    lines
}

fn answered(answer: Answer, plans: &[Plan<'_>], lists: &mut [Lists], system: System) -> Vec<Part> {
    match answer {
        Answer::Number(case, at) => {
            let at = format!("/seats/0/{at}");
            let Some(list) = lists.get_mut(case) else { return Vec::new() };
            let new = list.choose(&at);
            if new.is_empty() {
                let worked = list.place(&at).map(|place| list.all[place].result.clone());
                return worked.into_iter().map(|value| Part::Again { case, value: Box::new(value) }).collect();
            }
            let part = |place: usize| {
                let line = list.all[place].clone();
                Part::Worked { case, asked: line.result.at == at, line: Box::new(line) }
            };
            new.into_iter().map(part).collect()
        }
        Answer::Kind(case) => {
            let seat = plans.get(case).and_then(|plan| plan.seats.first());
            let words = |kind: String| Part::Words { case, at: "kind", text: kind.clone(), short: kind };
            seat.map(|seat| words(seat.fit.kind.to_string())).into_iter().collect()
        }
        Answer::Verdict(case) => {
            let Some((plan, seat)) = plans.get(case).and_then(|plan| Some((plan, plan.seats.first()?))) else {
                return Vec::new();
            };
            let short = seat.verdict.words().to_owned();
            vec![Part::Words { case, at: "verdict", short, text: plot_title(plan, seat, system) }]
        }
    }
}

/// What is put in and no result gives. What a later case has in common with the first is not said again.
fn given(lists: &[Lists]) -> Vec<Vec<Given>> {
    let mut all: Vec<Vec<Given>> = Vec::new();
    for list in lists {
        let mut of_case: Vec<Given> = Vec::new();
        for line in list.chosen.iter().map(|place| &list.all[*place]) {
            for value in line.put_in.iter().filter(|value| !list.is_worked(&value.at)) {
                let same = |given: &&mut Given| given.value.at == value.at;
                if let Some(known) = of_case.iter_mut().find(same) {
                    let new = line.sources.iter().filter(|source| !known.sources.contains(source));
                    known.sources.extend(new.cloned().collect::<Vec<_>>());
                } else {
                    of_case.push(Given { value: value.clone(), sources: line.sources.clone() });
                }
            }
        }
        if let Some(first) = all.first() {
            of_case.retain(|given| !first.iter().any(|other| is_same(&other.value, &given.value)));
        }
        all.push(of_case);
    }
    all
}

fn is_same(a: &Value, b: &Value) -> bool {
    a.at == b.at && a.amount == b.amount
}

/// What a whole job states and no formula puts in: temperatures of shop, media and service, and the placing clearance.
fn add_setting(given: &mut [Vec<Given>], place: usize, plan: &Plan<'_>, system: System) {
    let Some(of_plan) = plan.seats.first() else { return };
    let seat = Seat { plan, seat: of_plan, number: 0, system };
    let temperature = |mark, meaning: &str, of: ThermodynamicTemperature, at: &str| {
        seat.value(symbol("T", mark), meaning, Worked::Temperature(of), at)
    };
    let bench = &plan.job.bench;
    let placing = Worked::Small(of_plan.history.placing_clearance);
    let mut values = vec![
        seat.value(symbol("C", "p"), "placing clearance", placing, "at_bore/placing_clearance_um"),
        temperature("s", "temperature of the shop", bench.temperature, "basis/shop_c"),
    ];
    for (soak, at) in [(&of_plan.chill, "chill/medium_c"), (&of_plan.warm, "warm/medium_c")] {
        if let Some(soak) = soak {
            values.push(temperature("m", &format!("temperature of {}", soak.medium), soak.medium_temperature, at));
        }
    }
    for (number, state) in of_plan.service.iter().enumerate() {
        let (mark, end) = match state.end {
            ServiceEnd::Coldest => ("min", "coldest"),
            ServiceEnd::Hottest => ("max", "hottest"),
        };
        let meaning = format!("temperature of both parts in {end} service");
        values.push(temperature(mark, &meaning, state.inner, &format!("service/{number}/inner_c")));
    }
    let known =
        |value: &Value| given.first().is_some_and(|first| first.iter().any(|other| is_same(&other.value, value)));
    values.retain(|value| place == 0 || !known(value));
    if let Some(list) = given.get_mut(place) {
        list.splice(0..0, values.into_iter().map(|value| Given { value, sources: Vec::new() }));
    }
}

fn said(plans: &[Plan<'_>], system: System, counts: fn(Level) -> bool) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for caution in plans.iter().flat_map(|plan| &plan.cautions).filter(|caution| counts(caution.level())) {
        let text = format!("{}: {}", caution.signal().to_uppercase(), words::sentence(caution.sentence(), system));
        if !all.contains(&text) {
            all.push(text);
        }
    }
    all
}
