use super::Letter;
use crate::stock::iso286::{Feature, Grade};
use std::fmt;
use std::str::FromStr;
use thiserror::Error;

/// A tolerance class of ISO 286-1, such as `H7` (a hole) or `js5` (a shaft).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ToleranceClass {
    feature: Feature,
    letter: Letter,
    grade: Grade,
}

/// Why a text is not a tolerance class.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
pub enum ClassError {
    /// No letter stands before the grade.
    #[error(
        "`{given}` has no letter\n  help: a tolerance class is a letter and a grade, such as H7 for a hole or h6 for a shaft"
    )]
    NoLetter {
        /// What was given.
        given: String,
    },
    /// A standard tolerance grade was given in place of a class.
    #[error(
        "`{given}` is a tolerance grade: it gives a width but no place\n  help: put a letter in place of IT, such as H7 for a hole or h7 for a shaft"
    )]
    OnlyGrade {
        /// What was given.
        given: String,
    },
    /// The letter is not one of ISO 286-1.
    #[error(
        "`{letter}` in `{given}` is not a letter of ISO 286-1\n  help: the letters are A to H with CD, EF, FG, then JS, J, K, M, N, P, R to V, X, Y, Z, ZA, ZB, ZC; I, L, O, Q and W are left out because they can be mistaken for others"
    )]
    UnknownLetter {
        /// What was given.
        given: String,
        /// The letters before the grade.
        letter: String,
    },
    /// Capitals and small letters are mixed.
    #[error("`{given}` mixes capitals and small letters\n  help: write {} for a hole or {} for a shaft", given.to_uppercase(), given.to_lowercase())]
    MixedCase {
        /// What was given.
        given: String,
    },
    /// The grade is missing or is none of ISO 286-1.
    #[error("`{given}` needs a grade after the letter: 01, 0, or 1 to 18\n  help: such as H7 or h6")]
    Grade {
        /// What was given.
        given: String,
    },
}

impl ToleranceClass {
    /// A class from its parts.
    pub fn new(feature: Feature, letter: Letter, grade: Grade) -> Self {
        Self { feature, letter, grade }
    }

    /// Reads a class; capitals make it a hole, small letters a shaft.
    ///
    /// That the class exists in the standard does not mean that it is given for every size; see
    /// [`limits_of_size`](super::limits_of_size).
    ///
    /// # Errors
    /// [`ClassError`], which says what is wrong and how a class is written.
    ///
    /// # Examples
    /// ```
    /// use seatwise::fit::{Feature, ToleranceClass};
    /// assert_eq!(ToleranceClass::parse("N7")?.feature(), Feature::Hole);
    /// assert_eq!(ToleranceClass::parse("js5")?.to_string(), "js5");
    /// assert!(ToleranceClass::parse("Js7").is_err());
    /// # Ok::<(), seatwise::fit::ClassError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, ClassError> {
        let text = text.trim();
        let given = || text.to_owned();
        let (symbol, digits) = text.split_at(text.find(|c: char| c.is_ascii_digit()).unwrap_or(text.len()));
        if symbol.is_empty() {
            return Err(ClassError::NoLetter { given: given() });
        }
        if symbol.eq_ignore_ascii_case("IT") {
            return Err(ClassError::OnlyGrade { given: given() });
        }
        let letter = Letter::read(symbol)
            .ok_or_else(|| ClassError::UnknownLetter { given: given(), letter: symbol.to_owned() })?;
        let grade = Grade::parse(digits).map_err(|_| ClassError::Grade { given: given() })?;
        let feature = match symbol {
            _ if symbol == letter.symbol(Feature::Hole) => Feature::Hole,
            _ if symbol == letter.symbol(Feature::Shaft) => Feature::Shaft,
            _ => return Err(ClassError::MixedCase { given: given() }),
        };
        Ok(Self { feature, letter, grade })
    }

    /// Whether the class is one of a hole or of a shaft.
    pub fn feature(self) -> Feature {
        self.feature
    }

    /// The letter, which places the tolerance.
    pub fn letter(self) -> Letter {
        self.letter
    }

    /// The grade, which gives the width of the tolerance.
    pub fn grade(self) -> Grade {
        self.grade
    }

    /// The letter as this class writes it.
    pub fn symbol(self) -> String {
        self.letter.symbol(self.feature)
    }
}

impl fmt::Display for ToleranceClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}{}", self.symbol(), self.grade)
    }
}

impl FromStr for ToleranceClass {
    type Err = ClassError;
    fn from_str(text: &str) -> Result<Self, ClassError> {
        Self::parse(text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_class_reads_back_as_it_is_written() {
        for feature in [Feature::Hole, Feature::Shaft] {
            for letter in Letter::ALL {
                for grade in Grade::all() {
                    let class = ToleranceClass::new(feature, letter, grade);
                    assert_eq!(ToleranceClass::parse(&class.to_string()), Ok(class));
                }
            }
        }
    }

    #[test]
    fn what_is_not_a_class_is_refused_with_the_reason() {
        for (text, wanted) in [
            ("7", "has no letter"),
            ("", "has no letter"),
            ("IT7", "width but no place"),
            ("O7", "I, L, O, Q and W"),
            ("l6", "I, L, O, Q and W"),
            ("HH7", "not a letter of ISO 286-1"),
            ("Js7", "write JS7 for a hole or js7 for a shaft"),
            ("zC8", "mixes capitals"),
            ("H", "needs a grade"),
            ("H19", "01, 0, or 1 to 18"),
            ("H07", "01, 0, or 1 to 18"),
            ("H7 h6", "01, 0, or 1 to 18"),
            ("Ⅶ7", "not a letter"),
        ] {
            let said = ToleranceClass::parse(text).unwrap_err().to_string();
            assert!(said.contains(wanted), "{text}: {said}");
        }
    }
}
