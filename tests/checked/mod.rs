//! The rows of `tests/reference`, each beside what the program computes for it and how far apart the two may be.
//!
//! A test proves one set with [`prove`]: every value within what it may be off, and the set's part of
//! `plots/validation.md` and `.svg` as today's program writes it. `cargo run --example validation` writes both again.
#![allow(dead_code, missing_docs, clippy::unwrap_used, reason = "shared by several test files and an example")]

pub mod deviations;
pub mod fits;
pub mod heat;
pub mod jobs;
pub mod lumped_bound;
pub mod materials;
pub mod networks;
pub mod page;
pub mod picture;
pub mod plastic;
pub mod races;
pub mod rings;
pub mod scatter;
pub mod screws;
pub mod seat_shapes;
pub mod seats;
pub mod section_heat;
pub mod section_rings;
pub mod section_rows;
pub mod section_seated;
pub mod sheet;
pub mod stacks;
pub mod surfaces;
pub mod tables;
pub mod threads;
pub mod units;
pub mod walls;

#[path = "../fits_rows/mod.rs"]
pub mod fits_rows;
#[path = "../mechanics_units/mod.rs"]
pub mod mechanics_units;
#[path = "../reference_rows/mod.rs"]
pub mod reference_rows;

use std::fs;

/// One number of a reference row and the program's own.
#[derive(Clone, Debug)]
pub struct Check {
    /// The row, by the name that its file gives it.
    pub row: String,
    pub source: String,
    /// What was read or done to get the expected value: opened, from memory, computed apart.
    pub status: String,
    pub what: String,
    pub unit: &'static str,
    pub expected: f64,
    pub computed: f64,
    /// How far below and above the expected value the computed one may lie, in the unit; 0 where both must be the same.
    pub allowed: [f64; 2],
}

impl Check {
    /// The allowed error on the side on which `computed` lies.
    pub fn allowed_beside(&self, computed: f64) -> f64 {
        self.allowed[usize::from(computed > self.expected)]
    }

    fn assert(&self) {
        let error = self.computed - self.expected;
        assert!(error >= -self.allowed[0] && error <= self.allowed[1], "computed {}: {self:?}", self.computed);
    }
}

/// Reference rows of one kind.
pub struct Set {
    pub family: &'static str,
    pub title: &'static str,
    /// Why the allowed error is what it is.
    pub allowed: &'static str,
    pub checks: fn() -> Vec<Check>,
}

/// All sets, in the order of the page.
pub const SETS: &[&[Set]] = &[
    units::SETS,
    fits::SETS,
    deviations::SETS,
    tables::SETS,
    rings::SETS,
    seat_shapes::SETS,
    plastic::SETS,
    walls::SETS,
    threads::SETS,
    screws::SETS,
    stacks::SETS,
    seats::SETS,
    section_rings::SETS,
    section_heat::SETS,
    section_seated::SETS,
    heat::SETS,
    lumped_bound::SETS,
    networks::SETS,
    races::SETS,
    surfaces::SETS,
    materials::SETS,
    scatter::SETS,
    jobs::SETS,
];

pub fn sets() -> impl Iterator<Item = &'static Set> {
    SETS.iter().copied().flatten()
}

/// The file of the repository as text.
pub fn file(name: &str) -> String {
    fs::read_to_string(format!("{}/{name}", env!("CARGO_MANIFEST_DIR")))
        .unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// Asserts every value of the set of this title, and that the page and its picture show today's values.
pub fn prove(title: &str) -> Vec<Check> {
    let (lane, set) =
        sets().enumerate().find(|(_, set)| set.title == title).unwrap_or_else(|| panic!("no set {title}"));
    let checks = (set.checks)();
    assert!(!checks.is_empty(), "{title} has no rows");
    checks.iter().for_each(Check::assert);
    let help = "is stale: cargo run --example validation";
    let (part, line) = (page::part(set, &checks), page::summary_line(set, &checks));
    let text = file(page::PAGE);
    assert!(text.contains(&part) && text.contains(&line), "{title} in {} {help}", page::PAGE);
    assert!(file(page::PICTURE).contains(&picture::lane(lane, set, &checks)), "{title} in {} {help}", page::PICTURE);
    checks
}
