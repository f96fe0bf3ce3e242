use super::balance::{Mode, Pair, Setting, Temperatures};
use super::gap::Gap;
use super::insertion::{Course, Insertion, Meeting, StaysFree};
use super::part::SeatBody;
use super::path::{Path, Stretch};
use crate::quantity::{Cases, Length, ThermodynamicTemperature, Time, positive, within};
use crate::thermal::ThermalError;
use std::f64::consts::PI;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// The parts have come together when they differ by this share of their first difference ...
const TOGETHER_SHARE: f64 = 0.02;
/// ... or by this, K.
const TOGETHER_K: f64 = 1.0;
/// Longest insertion that makes sense, s (a day).
const LONGEST_S: f64 = 86_400.0;

/// Two parts in a seat that exchange heat over the gap, and the shop round them.
///
/// `m c(T) dT/dt = ± A U (T_outer - T_inner) - A_free H_eff (T - T_shop)`, `1/U = 1/h_gap + ½ (R_inner + R_outer)`,
/// `R = L / (n k)` of each part's [`SeatBody::to_joint`]. Half of the settled resistance is counted because the flux grows until
/// the seat grips and the surfaces run ahead of it.
///
/// **Valid for** thin rings and walls. Against finite elements of a steel ring in a light-alloy boss the grip is early by
/// 0.05 % to 4.2 %; against heat resolved along the radius by up to 5 % for thin rings, 13 % for thick ones and 20 % for
/// solid parts, all concentric, and by up to 29 % when the part touches on one side. It is late in none of them.
#[derive(Clone, Copy, Debug)]
pub struct Exchange<'a> {
    /// The part that goes in: ring, bush, or the shaft.
    pub inner: SeatBody<'a>,
    /// The part that it goes into: housing, or the ring that goes on a shaft.
    pub outer: SeatBody<'a>,
    /// Extent of the joint.
    pub joint: Joint,
    /// What lies between the parts.
    pub gap: Gap<'a>,
    /// Temperature of the air and the walls of the shop.
    pub shop: ThermodynamicTemperature,
}

/// Extent of the joint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joint {
    /// Its nominal diameter.
    pub diameter: Length,
    /// Its length along the axis.
    pub length: Length,
}

/// Sizes of one case, both at 20 °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeatSizes {
    /// Outside diameter of the inner part.
    pub inner_at_20: Length,
    /// Bore of the outer part.
    pub outer_at_20: Length,
}

/// How far an insertion is followed. Its course is the same for each.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Reach {
    /// Until both have come together, whether they go in by themselves or not.
    Whole,
    /// The same for parts that go in; others stay at their start.
    Meeting,
    /// Until the seat grips: later on neither temperatures nor a meeting are known.
    Grip,
}

/// The same insertion with the inner part as it is and with the inner part at the temperature of the shop.
#[derive(Clone, Debug)]
pub struct Chilling<'a> {
    /// As planned.
    pub chilled: Insertion<'a>,
    /// With the inner part left in the shop.
    pub unchilled: Insertion<'a>,
}

impl Chilling<'_> {
    /// Whether chilling makes the time in hand shorter: the parts come together below their lock temperature, and the
    /// seat grips in seconds, where the warm outer part alone would have stayed free for minutes.
    pub fn shortens(&self) -> bool {
        match (self.chilled.grip(), self.unchilled.grip()) {
            (Some(chilled), Some(unchilled)) => chilled < unchilled,
            (Some(_), None) => true,
            (None, _) => false,
        }
    }
}

impl<'a> Exchange<'a> {
    /// Follows both parts until the seat has gripped and they have come together, or for the `longest` time (a day at
    /// most).
    ///
    /// After the grip the parts stay in contact until they have come together.
    ///
    /// # Errors
    /// Numbers that are not positive or out of range; [`ThermalError::Property`] when a part leaves a property table, the
    /// shop's temperature included; [`ThermalError::NotFollowed`] when the solver gives up.
    pub fn run(&self, sizes: SeatSizes, longest: Time) -> Result<Insertion<'a>, ThermalError> {
        self.run_as_far(sizes, longest, Reach::Whole)
    }

    /// [`Self::run`] no farther than what is asked of it needs: the same steps, and so the same numbers, as far as they go.
    pub(crate) fn run_as_far(
        &self,
        sizes: SeatSizes,
        longest: Time,
        reach: Reach,
    ) -> Result<Insertion<'a>, ThermalError> {
        let pair = self.pair(sizes)?;
        let longest = within("longest time", longest.get::<second>(), (0.0, LONGEST_S), "s")?;
        followed(pair, longest, reach)
    }

    /// [`Self::run`] for the three cases of a fit.
    ///
    /// # Errors
    /// As for [`Self::run`], tightest case first.
    pub fn run_cases(&self, sizes: Cases<SeatSizes>, longest: Time) -> Result<Cases<Insertion<'a>>, ThermalError> {
        sizes.try_map(|sizes| self.run(sizes, longest))
    }

    /// [`Self::run`] beside the same with the inner part left at the temperature of the shop.
    ///
    /// # Errors
    /// As for [`Self::run`].
    pub fn chilling(&self, sizes: SeatSizes, longest: Time) -> Result<Chilling<'a>, ThermalError> {
        let left = SeatBody { start: self.shop, ..self.inner };
        let chilled = self.run(sizes, longest)?;
        let unchilled = Self { inner: left, ..*self }.run(sizes, longest)?;
        Ok(Chilling { chilled, unchilled })
    }

    fn pair(&self, sizes: SeatSizes) -> Result<Pair<'a>, ThermalError> {
        let diameter = positive("diameter of the joint", self.joint.diameter.get::<meter>(), "m")?;
        let length = positive("length of the joint", self.joint.length.get::<meter>(), "m")?;
        let inner = positive("outside of the inner part", sizes.inner_at_20.get::<meter>(), "m")?;
        let outer = positive("bore of the outer part", sizes.outer_at_20.get::<meter>(), "m")?;
        let shop = positive("temperature of the shop", self.shop.get::<kelvin>(), "K")?;
        let setting = Setting { sizes: [inner, outer], joint_area: PI * diameter * length, shop };
        let pair = Pair::new([self.inner.check()?, self.outer.check()?], self.gap.check()?, setting)?;
        pair.check_covered(&pair.starts())?;
        pair.check_covered(&[shop, shop])?;
        Ok(pair)
    }
}

fn followed(pair: Pair<'_>, until: f64, reach: Reach) -> Result<Insertion<'_>, ThermalError> {
    let starts = pair.starts();
    let mut path = Path::new(starts);
    let tables = pair.tables();
    let clearance = |t: &Temperatures| pair.clearance_in(t, &tables);
    let together = TOGETHER_K.max(TOGETHER_SHARE * (starts[0] - starts[1]).abs());
    let apart = |t: &Temperatures| (t[0] - t[1]).abs() - together;
    if clearance(&starts) <= 0.0 {
        if reach == Reach::Whole {
            // Pressed in all the same, it is in contact from the start.
            path.follow(&Stretch { pair: &pair, done: apart, until }, Mode::Gripped)?;
        }
        return Ok(Insertion { pair, path, course: Course::NoClearance, meeting: None });
    }
    let open = Stretch { pair: &pair, done: clearance, until };
    let grip = path.follow(&open, Mode::Open)?.then(|| path.end().0);
    let mut meeting = path.first_below(0.0, apart).map(|at| meeting(&pair, at, &path.at(at)));
    if let (Some(_), None, Reach::Whole | Reach::Meeting) = (grip, meeting, reach) {
        let closed = Stretch { pair: &pair, done: apart, until };
        if path.follow(&closed, Mode::Gripped)? {
            let (at, state) = path.end();
            meeting = Some(self::meeting(&pair, at, &state));
        }
    }
    let course = match grip {
        Some(grip) => gripped(grip, meeting),
        None => Course::StaysFree(stays_free(&pair, &path.end().1)),
    };
    Ok(Insertion { pair, path, course, meeting })
}

/// The course of a seat that grips: held when the parts had met before, free.
fn gripped(grip: f64, meeting: Option<Meeting>) -> Course {
    let grip = Time::new::<second>(grip);
    match meeting {
        Some(Meeting { at, clearance, .. }) if at < grip && clearance.get::<meter>() > 0.0 => {
            Course::HeldUntilLock { met: at, locks: grip }
        }
        _ => Course::GripsWhileEvening { at: grip },
    }
}

fn meeting(pair: &Pair, at: f64, state: &Temperatures) -> Meeting {
    let mean = pair.mean(state);
    Meeting {
        at: Time::new::<second>(at),
        temperature: ThermodynamicTemperature::new::<kelvin>(mean),
        clearance: Length::new::<meter>(pair.clearance(&[mean, mean])),
    }
}

fn stays_free(pair: &Pair, end: &Temperatures) -> StaysFree {
    let in_shop = pair.clearance(&[pair.shop(), pair.shop()]);
    if in_shop > 0.0 {
        StaysFree::LooseInTheShop { clearance: Length::new::<meter>(in_shop) }
    } else {
        StaysFree::NeedsLonger { clearance: Length::new::<meter>(pair.clearance(end)) }
    }
}
