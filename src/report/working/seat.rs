//! What the lines of one seat have in common.

use super::formula::{Formula, Symbol};
use super::model::{Line, Value, Way};
use crate::plan::{PartBasis, Plan, SeatKind, SeatPlan};
use crate::quantity::{Length, System, Worked};

/// A seat whose results are worked.
#[derive(Clone, Copy)]
pub(in crate::report) struct Seat<'a> {
    pub(in crate::report) plan: &'a Plan<'a>,
    pub(in crate::report) seat: &'a SeatPlan,
    pub(in crate::report) number: usize,
    pub(in crate::report) system: System,
}

/// One of the two parts of a joint.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(in crate::report) enum Which {
    Inner,
    Outer,
}

/// A symbol.
pub(in crate::report) const fn symbol(letter: &'static str, mark: &'static str) -> Symbol {
    Symbol { letter, mark }
}

/// A letter for each of the two parts.
pub(in crate::report) const fn of(letter: &'static str, which: Which) -> Symbol {
    symbol(letter, which.mark())
}

/// The value of a symbol in a formula.
pub(in crate::report) fn v(symbol: Symbol) -> Formula {
    Formula::Value(symbol)
}

/// Diameter of the joint.
pub(in crate::report) const JOINT: Symbol = symbol("D", "");
/// Interference at 20 °C.
pub(in crate::report) const INTERFERENCE: Symbol = symbol("U", "");
/// Where the smoothing of rough peaks comes from.
pub(in crate::report) const SMOOTHED: &str =
    "smoothing: DIN 7190, the rough peaks are pressed flat; editions differ in the share (from memory)";
/// The source of what needs none.
pub(in crate::report) const DEFINITION: &str = "definition";
/// Share of the roughness that is smoothed away.
pub(in crate::report) const SMOOTHING: Symbol = symbol("s", "");

impl Which {
    pub(in crate::report) const fn mark(self) -> &'static str {
        match self {
            Self::Inner => "i",
            Self::Outer => "o",
        }
    }

    fn key(self) -> &'static str {
        match self {
            Self::Inner => "inner",
            Self::Outer => "outer",
        }
    }
}

impl Seat<'_> {
    pub(in crate::report) fn capital(self) -> &'static str {
        match self.seat.seat {
            SeatKind::Housing => "Housing",
            SeatKind::Shaft => "Shaft",
        }
    }

    /// A value of this seat; `at` is its place below the seat.
    pub(in crate::report) fn value(
        self,
        symbol: Symbol,
        meaning: impl Into<String>,
        amount: Worked,
        at: &str,
    ) -> Value {
        Value { symbol, meaning: meaning.into(), amount, at: format!("/seats/{}/{at}", self.number) }
    }

    pub(in crate::report) fn basis(self, which: Which) -> &'static str {
        match which {
            Which::Inner => "basis/inner",
            Which::Outer => "basis/outer",
        }
    }

    pub(in crate::report) fn part(&self, which: Which) -> &PartBasis {
        match which {
            Which::Inner => &self.seat.basis.inner,
            Which::Outer => &self.seat.basis.outer,
        }
    }

    pub(in crate::report) fn name(&self, which: Which) -> &'static str {
        match which {
            Which::Inner => self.seat.inner.name,
            Which::Outer => self.seat.outer.name,
        }
    }

    pub(in crate::report) fn material(&self, which: Which) -> &str {
        match which {
            Which::Inner => &self.seat.inner.material,
            Which::Outer => &self.seat.outer.material,
        }
    }

    /// The smallest or the largest diameter of a part.
    pub(in crate::report) fn size(self, which: Which, largest: bool) -> Value {
        let member = if which == Which::Inner { &self.seat.inner } else { &self.seat.outer };
        let (size, end) = if largest { (member.largest, "largest") } else { (member.smallest, "smallest") };
        let meaning = format!("{end} {}, {}", member.name, member.basis);
        self.value(of("D", which), meaning, Worked::Size(size), &format!("basis/{}/{end}_mm", which.key()))
    }

    /// Change of length of a part for each length.
    pub(in crate::report) fn strain(self, which: Which, strain: f64, at: &str, to: String) -> Value {
        let meaning = format!("change of length of {} from 20 °C to {to}", self.material(which));
        let at = format!("{}/{at}", self.basis(which));
        self.value(of("ε", which), meaning, Worked::Strain(strain), &at)
    }

    /// The nominal diameter.
    pub(in crate::report) fn joint(self) -> Value {
        self.value(JOINT, "diameter of the joint", Worked::Size(self.seat.nominal), "nominal_mm")
    }

    /// Interference of the tightest case at 20 °C.
    pub(in crate::report) fn interference(self) -> Value {
        let amount = Worked::Small(-self.seat.fit.clearance.tightest);
        self.value(INTERFERENCE, "largest interference at 20 °C", amount, "fit/interference_um/tightest")
    }

    /// Both roughnesses and their share, where they count.
    pub(in crate::report) fn roughness(self) -> Option<[Value; 3]> {
        let (inner, outer) = self.seat.basis.inner.roughness.zip(self.seat.basis.outer.roughness)?;
        let height = |which: Which, height: Length| {
            let meaning = format!("roughness Rz, {}", self.name(which));
            self.value(of("R", which), meaning, Worked::Small(height), &format!("{}/rz_um", self.basis(which)))
        };
        let share = Worked::Number(self.plan.job.press.smoothing);
        let share = self.value(SMOOTHING, "share of it that is smoothed away", share, "basis/smoothing");
        Some([share, height(Which::Inner, inner), height(Which::Outer, outer)])
    }

    /// What the plan names as the source of something.
    pub(in crate::report) fn source(self, what: &str) -> String {
        let found = self.plan.sources.iter().find(|source| source.what == what);
        found.map_or_else(|| DEFINITION.to_owned(), |source| format!("{what}: {}", source.text))
    }

    /// Sources of a property of both parts.
    pub(in crate::report) fn sources_of_both(self, property: &str) -> Vec<String> {
        let mut of_each: Vec<String> = [Which::Inner, Which::Outer]
            .map(|which| self.source(&format!("{}, {property}", self.material(which))))
            .into();
        of_each.dedup();
        of_each
    }
}

/// A line by a formula.
pub(in crate::report) fn line(
    what: impl Into<String>,
    result: Value,
    formula: Formula,
    put_in: Vec<Value>,
    sources: Vec<String>,
) -> Line {
    let (what, remark) = (what.into(), String::new());
    Line { what, result, way: Way::Formula(formula), put_in, sources, remark }
}

/// A line whose steps are too many for paper.
pub(in crate::report) fn in_words(
    what: impl Into<String>,
    result: Value,
    way: &'static str,
    put_in: Vec<Value>,
    sources: Vec<String>,
) -> Line {
    let (what, remark) = (what.into(), String::new());
    Line { what, result, way: Way::Words(way), put_in, sources, remark }
}

impl Line {
    pub(in crate::report) fn with_remark(self, remark: impl Into<String>) -> Self {
        Self { remark: remark.into(), ..self }
    }
}
