use super::error::{MechanicsError, between, ordered};
use crate::quantity::{Length, TemperatureInterval, not_negative, positive};
use uom::si::f64::TemperatureCoefficient;
use uom::si::length::meter;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::temperature_interval::kelvin;

/// Largest coefficient of expansion that is taken for one, 1/K; the most of any metal is below a tenth of it.
const LARGEST_EXPANSION: f64 = 1e-3;

/// A range of clearances, or of losses of clearance; across the whole diameter. A loss below zero is a gain.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ClearanceRange {
    /// The lower end.
    pub least: Length,
    /// The upper end.
    pub most: Length,
}

/// What becomes of the radial internal clearance of a bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InternalClearance {
    /// As delivered: the limits of its group in ISO 5753-1, or as measured.
    pub delivered: ClearanceRange,
    /// How far the outer ring's raceway closes in its housing.
    pub outer_ring: ClearanceRange,
    /// How far the inner ring's raceway grows on its shaft.
    pub inner_ring: ClearanceRange,
    /// What the temperatures of the rings take while it runs; see [`temperature_loss`].
    pub temperature: ClearanceRange,
}

/// The clearance that is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FittedClearance {
    /// Fitted, all parts equally warm.
    pub fitted: ClearanceRange,
    /// Running, without load.
    pub running: ClearanceRange,
    /// Running, without load, in 997 of 1000 bearings; see [`InternalClearance::solve`].
    pub usual: ClearanceRange,
}

impl ClearanceRange {
    /// A range from its two ends, in either order.
    pub fn of(one: Length, other: Length) -> Self {
        Self { least: one.min(other), most: one.max(other) }
    }

    fn less(self, loss: Self) -> Self {
        Self { least: self.least - loss.most, most: self.most - loss.least }
    }

    /// Whether a part of the range is below zero: the bearing may be preloaded.
    pub fn may_be_negative(&self) -> bool {
        self.least < Length::default()
    }

    /// Whether all of the range is below zero.
    pub fn is_negative(&self) -> bool {
        self.most < Length::default()
    }

    fn middle(self) -> Length {
        (self.least + self.most) / 2.0
    }

    /// Square of half the width, in m².
    fn half_squared(self) -> f64 {
        ((self.most - self.least).get::<meter>() / 2.0).powi(2)
    }

    fn check(&self, what: &'static str) -> Result<(), MechanicsError> {
        let (least, most) = (self.least.get::<meter>(), self.most.get::<meter>());
        if least.is_finite() && most.is_finite() && least <= most {
            Ok(())
        } else {
            Err(MechanicsError::NoRange { what, least_um: least * 1e6, most_um: most * 1e6 })
        }
    }
}

impl InternalClearance {
    /// Clearance after fitting and while running.
    ///
    /// `c_fitted = c_delivered - loss_outer - loss_inner`, `c_running = c_fitted - loss_temperature`; each range by its worst
    /// ends, so the true ends of a batch lie inside. `usual` is the root of the summed squares of the half widths about the
    /// same middle: 997 of 1000 bearings, if each range is distributed normally about its middle with three standard
    /// deviations to either end, and none depends on another.
    ///
    /// **Valid for** radial bearings without load; a load takes up play and flattens the contacts, which is not counted.
    ///
    /// # Errors
    /// A range whose ends are not numbers or not in order; a delivered clearance below zero.
    ///
    /// **Source**: definition of the clearance in ISO 5753-1; sums of ranges; the root-sum-square rule of statistical
    /// tolerancing, as in Shigley's Mechanical Engineering Design.
    pub fn solve(&self) -> Result<FittedClearance, MechanicsError> {
        self.delivered.check("clearance as delivered")?;
        not_negative("least clearance as delivered", self.delivered.least.get::<meter>(), "m")?;
        self.outer_ring.check("closing of the outer ring")?;
        self.inner_ring.check("growth of the inner ring")?;
        self.temperature.check("loss by temperature")?;
        let fitted = self.delivered.less(self.outer_ring).less(self.inner_ring);
        let running = fitted.less(self.temperature);
        let ranges = [self.delivered, self.outer_ring, self.inner_ring, self.temperature];
        let half = Length::new::<meter>(ranges.map(ClearanceRange::half_squared).iter().sum::<f64>().sqrt());
        let usual = ClearanceRange { least: running.middle() - half, most: running.middle() + half };
        Ok(FittedClearance { fitted, running, usual })
    }
}

/// Clearance that is lost when the inner ring is warmer than the outer one; below zero, a gain, when it is colder.
///
/// `α ΔT d_raceway`, from the inner raceway, when the rolling elements are as warm as the outer ring, to the outer one, when
/// they are as warm as the inner ring: `loss = α [ΔT F + 2 D_w ΔT_w]` with `F + 2 D_w = E`.
///
/// **Valid for** rings and elements of one material that are free to expand; α constant over the step.
///
/// # Errors
/// Raceways that are not positive or not in order; a coefficient outside 0 to 0.001 1/K; a step that is no number.
///
/// **Source**: expansion of the raceways; the outer raceway for the whole is the rule of bearing handbooks (from memory).
pub fn temperature_loss(
    expansion: TemperatureCoefficient,
    inner_warmer_by: TemperatureInterval,
    inner_raceway: Length,
    outer_raceway: Length,
) -> Result<ClearanceRange, MechanicsError> {
    let alpha = between("coefficient of expansion in 1/K", expansion.get::<per_kelvin>(), (0.0, LARGEST_EXPANSION))?;
    let step = inner_warmer_by.get::<kelvin>();
    let step = between("temperature step between the rings in K", step, (-1e3, 1e3))?;
    let inner = positive("inner raceway", inner_raceway.get::<meter>(), "m")?;
    let outer = positive("outer raceway", outer_raceway.get::<meter>(), "m")?;
    ordered(("inner raceway", inner), ("outer raceway", outer))?;
    let loss = |diameter: f64| Length::new::<meter>(alpha * step * diameter);
    Ok(ClearanceRange::of(loss(inner), loss(outer)))
}
