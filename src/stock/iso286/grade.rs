use serde::Deserialize;
use std::fmt;
use thiserror::Error;

/// A standard tolerance grade of ISO 286-1: IT01, IT0, IT1 to IT18, in order of width.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(try_from = "String")]
pub struct Grade(i8);

/// A text that names no tolerance grade.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[error("`{given}` is not a tolerance grade; the grades are 01, 0, 1, 2 and so on to 18")]
pub struct GradeError {
    /// What was given.
    pub given: String,
}

impl Grade {
    /// The finest grade, IT01.
    pub const FINEST: Self = Self(-1);
    /// The coarsest grade, IT18.
    pub const COARSEST: Self = Self(18);

    /// Reads `01`, `0`, `1` to `18`, as it stands in a tolerance class.
    ///
    /// # Errors
    /// [`GradeError`] for anything else; `07` is not a grade, only `01` has a leading zero.
    pub fn parse(text: &str) -> Result<Self, GradeError> {
        let plain = text.bytes().all(|byte| byte.is_ascii_digit()) && (text.len() == 1 || !text.starts_with('0'));
        let number = if text == "01" { Some(Self::FINEST.0) } else { text.parse().ok().filter(|_| plain) };
        number
            .map(Self)
            .filter(|grade| (Self::FINEST..=Self::COARSEST).contains(grade))
            .ok_or_else(|| GradeError { given: text.to_owned() })
    }

    /// All grades, finest first.
    pub fn all() -> impl Iterator<Item = Self> {
        (Self::FINEST.0..=Self::COARSEST.0).map(Self)
    }

    /// The next finer grade; none for IT01.
    pub fn finer(self) -> Option<Self> {
        (self > Self::FINEST).then_some(Self(self.0 - 1))
    }

    /// How many steps lie between two grades.
    pub fn steps_to(self, other: Self) -> u8 {
        self.0.abs_diff(other.0)
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if *self == Self::FINEST { write!(f, "01") } else { write!(f, "{}", self.0) }
    }
}

impl TryFrom<String> for Grade {
    type Error = GradeError;
    fn try_from(text: String) -> Result<Self, GradeError> {
        Self::parse(&text)
    }
}

/// The grades that a row of a table serves, written `01..3 8..18`; empty when it serves none.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(try_from = "String")]
pub struct Grades(Vec<(Grade, Grade)>);

impl Grades {
    /// Whether `grade` is among them.
    pub fn contains(&self, grade: Grade) -> bool {
        self.0.iter().any(|&(from, to)| from <= grade && grade <= to)
    }
}

impl TryFrom<String> for Grades {
    type Error = GradeError;
    fn try_from(text: String) -> Result<Self, GradeError> {
        let span = |word: &str| {
            let (from, to) = word.split_once("..").unwrap_or((word, word));
            Ok((Grade::parse(from)?, Grade::parse(to)?))
        };
        text.split_whitespace().map(span).collect::<Result<_, _>>().map(Self)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grades_stand_in_order_of_width() {
        let names: Vec<String> = Grade::all().map(|grade| grade.to_string()).collect();
        assert_eq!(names.len(), 20);
        assert_eq!(names[..4], ["01", "0", "1", "2"]);
        assert_eq!(Grade::parse("0").unwrap().finer(), Some(Grade::FINEST));
        assert_eq!(Grade::FINEST.finer(), None);
    }

    #[test]
    fn a_leading_zero_is_no_grade_except_in_01() {
        for text in ["07", "00", "19", "-1", "", "7.0", "+7", "001", " 7"] {
            assert!(Grade::parse(text).is_err(), "{text}");
        }
        for grade in Grade::all() {
            assert_eq!(Grade::parse(&grade.to_string()), Ok(grade));
        }
    }

    #[test]
    fn spans_hold_their_ends_and_nothing_between_spans() {
        let grades = Grades::try_from("01..3 8..18".to_owned()).unwrap();
        let held: Vec<bool> =
            ["01", "3", "4", "7", "8", "18"].map(|g| grades.contains(Grade::parse(g).unwrap())).to_vec();
        assert_eq!(held, [true, true, false, false, true, true]);
    }
}
