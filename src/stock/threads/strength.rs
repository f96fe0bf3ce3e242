use crate::quantity::{Length, Pressure};
use crate::stock::iso286::{Status, TableError, rows};
use serde::Deserialize;
use std::sync::LazyLock;
use thiserror::Error;
use uom::si::length::millimeter;
use uom::si::pressure::{megapascal, pascal};

/// The CSV text of the strength classes that is built into the program.
pub const EMBEDDED_STRENGTH: &str = include_str!("../../../fits/bolt_strength.csv");

/// 1000 lbf/in² in Pa, exact: 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s², 1 in = 25.4 mm.
const KSI_PA: f64 = 1e3 * 0.453_592_37 * 9.806_65 / (0.0254 * 0.0254);

/// Strengths of bolts, screws and threaded rods of one class, in one band of sizes.
#[derive(Clone, Debug, PartialEq)]
pub struct StrengthClass {
    /// `ISO 898-1` or `SAE J429`.
    pub standard: String,
    /// The class or grade, such as `8.8` or `5`.
    pub class: String,
    /// Nominal diameters must exceed this one.
    pub over: Length,
    /// Nominal diameters must not exceed this one.
    pub to: Length,
    /// Stress that the screw bears without taking a set, S_p.
    pub proof: Pressure,
    /// Least yield strength.
    pub yield_strength: Pressure,
    /// Least tensile strength.
    pub tensile: Pressure,
    /// Whether the strengths were read in a published text.
    pub status: Status,
    /// Key of the text, explained at the head of the file.
    pub source: String,
}

/// Why the strength of a screw cannot be looked up.
#[derive(Clone, Debug, Error)]
pub enum StrengthError {
    /// No class of that name.
    #[error("`{given}` is not a strength class known here\n  help: known are {known}")]
    Unknown {
        /// What was given.
        given: String,
        /// The classes of the table.
        known: String,
    },
    /// The class does not cover the size.
    #[error(
        "{class} is not given for a diameter of {diameter_mm:.2} mm\n  help: it covers diameters over {over_mm} mm, up to \
         and including {to_mm} mm; choose another class or size"
    )]
    Size {
        /// The class with its standard.
        class: String,
        /// Nominal diameter of the thread, mm.
        diameter_mm: f64,
        /// Lower end of what the class covers, mm.
        over_mm: f64,
        /// Upper end of what the class covers, mm.
        to_mm: f64,
    },
    /// The embedded table is malformed.
    #[error(transparent)]
    Table(#[from] TableError),
}

impl StrengthClass {
    /// The class with its standard: `ISO 898-1 class 8.8`, `SAE J429 grade 5`.
    pub fn name(&self) -> String {
        let word = if self.standard.starts_with("ISO") { "class" } else { "grade" };
        format!("{} {word} {}", self.standard, self.class)
    }
}

/// Strengths of a class for a thread of this nominal diameter.
///
/// `name` is `8.8`, `class 8.8`, `ISO 898-1 8.8`, `grade 5`, `SAE grade 5`, `SAE J429 grade 5` or `5`.
///
/// # Errors
/// [`StrengthError`] for an unknown class, or a size that the class does not cover.
///
/// **Source**: ISO 898-1:2013 Table 3, SAE J429 Table 1, each through a web reproduction (see the file).
pub fn strength_class(name: &str, nominal: Length) -> Result<StrengthClass, StrengthError> {
    let all = strength_classes()?;
    let class = bare_class(name);
    let rows: Vec<&StrengthClass> = all.iter().filter(|row| row.class == class).collect();
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else {
        return Err(StrengthError::Unknown { given: name.trim().to_owned(), known: known(all) });
    };
    rows.iter().find(|row| row.over < nominal && nominal <= row.to).map(|row| (*row).clone()).ok_or_else(|| {
        StrengthError::Size {
            class: first.name(),
            diameter_mm: nominal.get::<millimeter>(),
            over_mm: first.over.get::<millimeter>(),
            to_mm: last.to.get::<millimeter>(),
        }
    })
}

/// The embedded strength classes, parsed once, in the order of the file.
///
/// # Errors
/// [`TableError`] when the embedded file is malformed.
pub fn strength_classes() -> Result<&'static [StrengthClass], TableError> {
    static CLASSES: LazyLock<Result<Vec<StrengthClass>, TableError>> = LazyLock::new(|| parse(EMBEDDED_STRENGTH));
    CLASSES.as_deref().map_err(Clone::clone)
}

/// The class without its standard and the words before it.
fn bare_class(name: &str) -> String {
    let mut rest = name.trim().to_lowercase();
    for word in ["iso 898-1", "sae j429", "sae", "j429", "property", "class", "grade", "gr."] {
        rest = rest.strip_prefix(word).map_or(rest.clone(), |after| after.trim_start().to_owned());
    }
    rest
}

fn known(all: &[StrengthClass]) -> String {
    let mut names: Vec<String> = all.iter().map(StrengthClass::name).collect();
    names.dedup();
    names.join(", ")
}

#[derive(Deserialize)]
struct RawRow {
    standard: String,
    class: String,
    over_mm: f64,
    to_mm: f64,
    proof: f64,
    #[serde(rename = "yield")]
    yield_strength: f64,
    tensile: f64,
    unit: String,
    status: Status,
    source: String,
}

fn parse(text: &str) -> Result<Vec<StrengthClass>, TableError> {
    let rows: Vec<RawRow> = rows("fits/bolt_strength.csv", text, check)?;
    Ok(rows.into_iter().map(class_of).collect())
}

fn class_of(row: RawRow) -> StrengthClass {
    let stress = |value: f64| match row.unit.as_str() {
        "ksi" => Pressure::new::<pascal>(value * KSI_PA),
        _ => Pressure::new::<megapascal>(value),
    };
    StrengthClass {
        over: Length::new::<millimeter>(row.over_mm),
        to: Length::new::<millimeter>(row.to_mm),
        proof: stress(row.proof),
        yield_strength: stress(row.yield_strength),
        tensile: stress(row.tensile),
        standard: row.standard,
        class: row.class,
        status: row.status,
        source: row.source,
    }
}

fn check(row: &RawRow) -> Result<(), String> {
    if !matches!(row.unit.as_str(), "MPa" | "ksi") {
        return Err(format!("unit {} is neither MPa nor ksi", row.unit));
    }
    if !(0.0 < row.over_mm && row.over_mm < row.to_mm && row.to_mm.is_finite()) {
        return Err(format!("the band over {} mm up to {} mm holds no size", row.over_mm, row.to_mm));
    }
    if 0.0 < row.proof && row.proof < row.yield_strength && row.yield_strength < row.tensile && row.tensile.is_finite()
    {
        Ok(())
    } else {
        Err("proof stress, yield and tensile strength must rise".to_owned())
    }
}
