use crate::quantity::{AngularVelocity, Cases, Length, Velocity};
use uom::si::angular_velocity::radian_per_second;
use uom::si::length::meter;
use uom::si::velocity::meter_per_second;

/// How far the outside of a seal stands above the nominal bore, least and most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowance {
    /// Least.
    pub least: Length,
    /// Most.
    pub most: Length,
}

/// Interference of a seal in its bore: its allowance less the deviation of the bore, each from the nominal bore.
///
/// **Arguments**: `bore`, lower and upper limit deviation of the bore.
///
/// Negative where the seal is loose.
///
/// # Examples
/// ```
/// use seatwise::assembly::seal::{Allowance, interference};
/// use seatwise::quantity::length;
/// let mm = |text: &str| length(text).map(|entered| entered.value);
/// // 62 mm H8 is 0/+46 µm; a rubber-covered seal stands 0.20 to 0.35 mm above 62 mm.
/// let allowance = Allowance { least: mm("0.20 mm")?, most: mm("0.35 mm")? };
/// let fit = interference(allowance, (mm("0 mm")?, mm("0.046 mm")?));
/// assert!((fit.loosest - mm("0.154 mm")?).abs() < mm("0.0001 mm")?);
/// # Ok::<(), seatwise::quantity::QuantityError>(())
/// ```
pub fn interference(allowance: Allowance, bore: (Length, Length)) -> Cases<Length> {
    let tightest = allowance.most - bore.0;
    let loosest = allowance.least - bore.1;
    Cases { tightest, middle: (tightest + loosest) / 2.0, loosest }
}

/// Speed of a shaft's surface, ω d/2.
pub fn surface_speed(shaft: Length, turning: AngularVelocity) -> Velocity {
    Velocity::new::<meter_per_second>(turning.get::<radian_per_second>() * shaft.get::<meter>() / 2.0)
}
