//! The job card: a page that stands alone and says what the plan says.
#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "../binary/mod.rs"]
mod binary;
mod browser;
mod numbers;
mod page;
mod words;

use scraper::{ElementRef, Html, Selector};
use std::collections::BTreeMap;
use std::sync::Mutex;

/// The card of a job file, with more flags, made once for all tests: a plan takes a second in a test build.
pub fn card(job: &str, flags: &[&str]) -> String {
    static MADE: Mutex<BTreeMap<Vec<String>, String>> = Mutex::new(BTreeMap::new());
    let key: Vec<String> = [&[job], flags].concat().into_iter().map(str::to_owned).collect();
    if let Some(card) = MADE.lock().unwrap().get(&key) {
        return card.clone();
    }
    let card = made(job, flags);
    MADE.lock().unwrap().insert(key, card.clone());
    card
}

/// As [`card`], always made anew.
pub fn made(job: &str, flags: &[&str]) -> String {
    binary::done(&[&["card", job], flags].concat())
}

/// The card of a job's text.
pub fn card_of(text: &str) -> String {
    let run = binary::run(&["card", "-"], text);
    assert_eq!((run.code, run.err.as_str()), (0, ""));
    run.out
}

/// The elements of a page that a selector picks.
pub fn all<'p>(page: &'p Html, selector: &str) -> Vec<ElementRef<'p>> {
    page.select(&Selector::parse(selector).unwrap()).collect()
}

/// Words with one space between them.
pub fn plain(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// What a reader sees in an element.
pub fn seen(element: ElementRef<'_>) -> String {
    plain(&element.text().collect::<Vec<_>>().join(" "))
}

/// What a reader sees of a page beside its pictures and the numbers of its steps.
pub fn seen_of_page(card: &str) -> String {
    let mut page = Html::parse_document(card);
    let left_out: Vec<_> = all(&page, "svg, .number, style, title").iter().map(|element| element.id()).collect();
    for id in left_out {
        page.tree.get_mut(id).unwrap().detach();
    }
    seen(all(&page, "html")[0])
}
