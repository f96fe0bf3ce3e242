//! Where ISO 286-1 leaves a class out: says for what it is given, and which class is nearest.

use super::letter::Placement;
use super::look_up::{Missing, look_up};
use super::{FitError, Letter, ToleranceClass};
use crate::quantity::Nanometres;
use crate::stock::iso286::{Grade, SizeRange, Tables};

/// A neighbour further off than this many grades or letters is no longer a sensible suggestion.
const NEAR: u8 = 3;

pub(super) fn explain(tables: &Tables, nominal: Nanometres, class: ToleranceClass, missing: &Missing) -> FitError {
    let given = match missing {
        Missing::Grade => format!("IT{} is given {}", class.grade(), grade_ranges(tables, class.grade())),
        Missing::Deviation => letter_given(tables, class),
        Missing::Delta => {
            let symbol = class.symbol();
            format!("Delta, which {symbol} needs over 3 mm up to 500 mm, is given for IT3 to IT8 only")
        }
    };
    FitError::ClassNotGiven { class, nominal, given, nearest: nearest(tables, nominal, class) }
}

fn grade_ranges(tables: &Tables, grade: Grade) -> String {
    say(tables.grade_rows().iter().filter(|row| row.grade == grade).map(|row| row.range()))
}

fn letter_given(tables: &Tables, class: ToleranceClass) -> String {
    let symbol = class.symbol();
    let rows = || tables.deviations(class.feature(), &symbol);
    let served: Vec<SizeRange> =
        rows().filter(|row| row.grades.contains(class.grade())).map(|row| row.range()).collect();
    if !served.is_empty() {
        return format!("it is given {}", say(served.into_iter()));
    }
    let grades: Vec<String> =
        Grade::all().filter(|grade| rows().any(|row| row.grades.contains(*grade))).map(|g| g.to_string()).collect();
    format!("{symbol} is given in the grades {} only", grades.join(", "))
}

/// The bands in words, those that touch joined into one.
fn say(ranges: impl Iterator<Item = SizeRange>) -> String {
    let mut ranges: Vec<SizeRange> = ranges.collect();
    ranges.sort_by_key(|range| range.over);
    let mut joined: Vec<SizeRange> = Vec::new();
    for range in ranges {
        match joined.last_mut() {
            Some(last) if range.over <= last.to => last.to = last.to.max(range.to),
            _ => joined.push(range),
        }
    }
    joined.iter().map(ToString::to_string).collect::<Vec<_>>().join(" and ")
}

/// The same letter in the nearest grade that exists; failing that the nearest letter in the same grade.
fn nearest(tables: &Tables, nominal: Nanometres, class: ToleranceClass) -> Option<ToleranceClass> {
    let exists = |class: &ToleranceClass| look_up(tables, nominal, *class).is_ok();
    let mut grades: Vec<Grade> = Grade::all().filter(|grade| grade.steps_to(class.grade()) <= NEAR).collect();
    grades.sort_by_key(|grade| grade.steps_to(class.grade()));
    let by_grade = grades.into_iter().map(|grade| ToleranceClass::new(class.feature(), class.letter(), grade));
    let by_letter =
        neighbours(class.letter()).map(|letter| ToleranceClass::new(class.feature(), letter, class.grade()));
    by_grade.chain(by_letter).find(exists)
}

/// The letters about one, nearest first and the tighter of two first; js before all others where j is missing.
fn neighbours(letter: Letter) -> impl Iterator<Item = Letter> {
    let at = Letter::ALL.iter().position(|other| *other == letter).unwrap_or_default();
    let symmetrical = (letter == Letter::J).then_some(Letter::Js);
    let around = (1..=usize::from(NEAR)).flat_map(move |step| {
        let tighter = Letter::ALL.get(at + step);
        let looser = at.checked_sub(step).and_then(|at| Letter::ALL.get(at));
        [tighter, looser].into_iter().flatten().copied()
    });
    symmetrical.into_iter().chain(around.filter(move |other| same_side(letter, *other)))
}

/// A clearance letter is no stand-in for an interference letter, nor the other way round.
fn same_side(letter: Letter, other: Letter) -> bool {
    (letter.placement() == Placement::Loose) == (other.placement() == Placement::Loose)
}
