use super::error::MechanicsError;
use super::joint::{Joint, PressFit};
use super::ring::RingState;
use super::stress::Stress;
use crate::quantity::{Length, Pressure, positive};
use uom::si::pressure::pascal;

/// Interference, as a share of the diameter, on which the start of yielding is worked out; any small one does.
const TRIAL_SHARE: f64 = 1e-4;

/// The rule by which a stress is held against a strength.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Criterion {
    /// Von Mises, for ductile metals.
    VonMises,
    /// Tresca, for ductile metals, on the safe side of von Mises by up to 15 %.
    Tresca,
    /// Largest principal tension, for brittle materials.
    LargestTension,
}

/// A strength and the criterion it belongs to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Yield strength, or tensile strength of a brittle material.
    pub limit: Pressure,
    /// Criterion.
    pub criterion: Criterion,
}

/// Which part of a joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Inner ring or shaft.
    Inner,
    /// Outer ring or housing.
    Outer,
}

/// Which surface of a ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// The inside; the centre when the ring is solid.
    Inside,
    /// The outside.
    Outside,
}

/// Whether the elastic formulas hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Elastic {
    /// Nowhere beyond the strength.
    Holds,
    /// Somewhere beyond it: pressure and force are then lower than computed, and the part keeps a set, or cracks when
    /// it is brittle.
    Exceeded,
}

/// How near the most stressed place is to its strength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YieldCheck {
    /// Strength over stress; `None` when there is no stress of the kind that the criterion counts.
    pub factor: Option<f64>,
    /// Part in which that place is.
    pub part: Part,
    /// Surface at which it is.
    pub surface: Surface,
    /// Criterion that was used.
    pub criterion: Criterion,
}

impl Strength {
    /// Yield strength of a ductile metal, by von Mises.
    pub fn ductile(yield_strength: Pressure) -> Self {
        Self { limit: yield_strength, criterion: Criterion::VonMises }
    }

    /// Tensile strength of a brittle material (grey iron, sintered metal), by the largest tension.
    pub fn brittle(tensile_strength: Pressure) -> Self {
        Self { limit: tensile_strength, criterion: Criterion::LargestTension }
    }

    /// Share of the strength that a stress takes up, after the criterion; one is where the part yields or cracks.
    pub fn share(&self, stress: &Stress) -> f64 {
        self.criterion.stress(stress) / self.limit.get::<pascal>()
    }
}

impl Criterion {
    pub(super) fn stress(self, stress: &Stress) -> f64 {
        let equivalent = match self {
            Criterion::VonMises => stress.von_mises(),
            Criterion::Tresca => stress.tresca(),
            Criterion::LargestTension => stress.largest_tension(),
        };
        equivalent.get::<pascal>()
    }
}

impl YieldCheck {
    /// Holds one ring of a joint against its strength.
    ///
    /// # Errors
    /// [`MechanicsError::Value`] for the strength.
    pub fn of(state: &RingState, part: Part, strength: &Strength) -> Result<Self, MechanicsError> {
        Self::at((&state.at_inside, &state.at_outside), part, strength)
    }

    /// Holds the stresses at the inside and the outside of one part against its strength.
    ///
    /// # Errors
    /// [`MechanicsError::Value`] for the strength.
    pub fn at(
        (at_inside, at_outside): (&Stress, &Stress),
        part: Part,
        strength: &Strength,
    ) -> Result<Self, MechanicsError> {
        let limit = positive("strength", strength.limit.get::<pascal>(), "Pa")?;
        let criterion = strength.criterion;
        let (inside, outside) = (criterion.stress(at_inside), criterion.stress(at_outside));
        let (largest, surface) =
            if inside >= outside { (inside, Surface::Inside) } else { (outside, Surface::Outside) };
        let factor = (largest > 0.0).then(|| limit / largest).filter(|factor| factor.is_finite());
        Ok(Self { factor, part, surface, criterion })
    }

    /// Whether the elastic formulas hold: the factor is one or more, or there is no stress.
    pub fn elastic(&self) -> Elastic {
        match self.factor {
            Some(factor) if factor < 1.0 => Elastic::Exceeded,
            _ => Elastic::Holds,
        }
    }
}

/// The part that is nearer to its strength.
///
/// # Errors
/// [`MechanicsError::Value`] for a strength.
pub fn weakest(fit: &PressFit, inner: &Strength, outer: &Strength) -> Result<YieldCheck, MechanicsError> {
    let inner = YieldCheck::of(&fit.inner, Part::Inner, inner)?;
    let outer = YieldCheck::of(&fit.outer, Part::Outer, outer)?;
    let inner_first = match (inner.factor, outer.factor) {
        (Some(a), Some(b)) => a < b,
        (inner, _) => inner.is_some(),
    };
    Ok(if inner_first { inner } else { outer })
}

/// Interference at which the first of the two parts begins to yield, or to crack when it is brittle.
///
/// Stresses are in proportion to the interference, so it is the factor of any trial times that trial; the interference
/// of `joint` itself does not matter. `None` when neither part has a stress of the kind that its criterion counts.
///
/// # Errors
/// As for [`Joint::solve`] and [`weakest`].
pub fn yield_interference(joint: &Joint, inner: &Strength, outer: &Strength) -> Result<Option<Length>, MechanicsError> {
    let trial = joint.diameter * TRIAL_SHARE;
    let fit = Joint { interference: trial, ..*joint }.solve()?;
    Ok(weakest(&fit, inner, outer)?.factor.map(|factor| trial * factor))
}
