//! A working: results of a plan, each with its formula, what was put in, and where it comes from.

use super::formula::{Formula, Symbol};
use crate::quantity::Worked;

/// The working of a plan.
#[derive(Clone, Debug)]
pub struct Working {
    /// What the job is, with its reference and revision.
    pub title: String,
    /// The answer.
    pub answer: Vec<String>,
    /// Results in the order in which they are worked, under headings.
    pub parts: Vec<Part>,
    /// What can hurt someone.
    pub cautions: Vec<String>,
}

/// Results under one heading.
#[derive(Clone, Debug)]
pub struct Part {
    /// The heading.
    pub heading: String,
    /// The results.
    pub lines: Vec<Line>,
}

/// One result.
#[derive(Clone, Debug)]
pub struct Line {
    /// What it is.
    pub what: String,
    /// The result.
    pub result: Value,
    /// How it is found.
    pub way: Way,
    /// What was put in, in the order of the formula.
    pub put_in: Vec<Value>,
    /// Where the formula and what was put in come from.
    pub sources: Vec<String>,
    /// What the result means, or what else counts; empty where nothing does.
    pub remark: String,
}

/// How a result is found.
#[derive(Clone, Debug)]
pub enum Way {
    /// By a formula, which anyone can put the values into.
    Formula(Formula),
    /// By steps too many for paper, in words.
    Words(&'static str),
}

/// A value with its symbol.
#[derive(Clone, Debug)]
pub struct Value {
    /// Its symbol.
    pub symbol: Symbol,
    /// What it is.
    pub meaning: String,
    /// How much.
    pub amount: Worked,
    /// Where it stands in the JSON plan, as a JSON Pointer (RFC 6901).
    pub at: String,
}

impl Working {
    /// Every source once, in the order in which the results lean on them.
    pub fn sources(&self) -> Vec<&str> {
        let mut all: Vec<&str> = Vec::new();
        for source in self.parts.iter().flat_map(|part| &part.lines).flat_map(|line| &line.sources) {
            if !all.contains(&source.as_str()) {
                all.push(source);
            }
        }
        all
    }
}

impl Line {
    /// What the formula comes to with the values put in, in SI units; none where the result is not found by a formula.
    pub fn evaluate(&self) -> Option<f64> {
        let Way::Formula(formula) = &self.way else { return None };
        formula
            .evaluate(&|symbol| self.put_in.iter().find(|value| value.symbol == symbol).map(|value| value.amount.si()))
    }
}
