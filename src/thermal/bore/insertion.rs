use super::account::HeatAccount;
use super::balance::{Mode, Pair, Temperatures};
use super::path::{Path, Stretch};
use crate::quantity::{HeatTransfer, Length, ThermodynamicTemperature, Time};
use crate::thermal::ThermalError;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Rounding of times, as a share of the length of an insertion, that still counts as inside it.
const TIME_ROUNDING: f64 = 1e-9;

/// Both parts from the moment in which the inner one stands in the outer one.
///
/// It ends when the seat has gripped and both have come together, or after the longest time allowed; [`Self::followed_to`]
/// goes on from there.
#[derive(Clone, Debug)]
pub struct Insertion<'a> {
    pub(super) pair: Pair<'a>,
    pub(super) path: Path,
    /// What becomes of it.
    pub course: Course,
    /// When and how warm both parts come together; `None` when they do not within the time, or do not go in.
    pub meeting: Option<Meeting>,
}

/// What becomes of a part that has been put into its seat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Course {
    /// There is no clearance at the start: it does not go in by itself. The temperatures are those of a part that is
    /// pressed in, or stuck, with the faces in contact from the start.
    NoClearance,
    /// The seat grips while the two are still at different temperatures: seconds.
    GripsWhileEvening {
        /// When it grips.
        at: Time,
    },
    /// Both come to a common temperature at which there is clearance, and the seat grips when the shop has brought the
    /// pair to the lock temperature: minutes. The part must be held in place until then.
    HeldUntilLock {
        /// When both had come together.
        met: Time,
        /// When the seat grips.
        locks: Time,
    },
    /// It has not gripped within the longest time.
    StaysFree(StaysFree),
}

/// Why a seat does not grip by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum StaysFree {
    /// There is clearance at the temperature of the shop too.
    LooseInTheShop {
        /// Clearance with both parts at the temperature of the shop.
        clearance: Length,
    },
    /// It will grip, but only after the longest time.
    NeedsLonger {
        /// Clearance at the end of the longest time.
        clearance: Length,
    },
}

/// The two parts coming together: first time that they differ by 2 % of their first difference, or by 1 K.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meeting {
    /// When.
    pub at: Time,
    /// Their common temperature, weighted with their heat capacities.
    pub temperature: ThermodynamicTemperature,
    /// Clearance with both at that temperature: positive when they meet free.
    pub clearance: Length,
}

impl Insertion<'_> {
    /// The same, followed on to a time after its end: a seat that has gripped goes on to the temperature of the shop.
    ///
    /// Nothing changes when it lasts that long by itself, or stays free.
    ///
    /// # Errors
    /// [`ThermalError::Property`] when a part leaves a property table; [`ThermalError::NotFollowed`] when the solver gives up.
    pub fn followed_to(mut self, time: Time) -> Result<Self, ThermalError> {
        let until = time.get::<second>();
        if self.path.end().0 < until && !matches!(self.course, Course::StaysFree(_)) {
            // No state ends it before its time.
            let on = Stretch { pair: &self.pair, done: |_: &Temperatures| 1.0, until };
            self.path.follow(&on, Mode::Gripped)?;
        }
        Ok(self)
    }

    /// Time until the seat grips by itself; `None` when it does not within the longest time.
    pub fn grip(&self) -> Option<Time> {
        match self.course {
            Course::NoClearance => Some(Time::new::<second>(0.0)),
            Course::GripsWhileEvening { at } => Some(at),
            Course::HeldUntilLock { locks, .. } => Some(locks),
            Course::StaysFree(_) => None,
        }
    }

    /// Common temperature at which the clearance is zero, from [`crate::thermal::contact_temperature`]; `None` when the
    /// property tables hold no such temperature.
    pub fn lock(&self) -> Option<ThermodynamicTemperature> {
        self.pair.lock()
    }

    /// Whether both come together above the lock temperature; `None` when there is none, or they do not come together.
    pub fn meets_above_lock(&self) -> Option<bool> {
        self.meeting.zip(self.lock()).map(|(meeting, lock)| meeting.temperature > lock)
    }

    /// Time at the end.
    pub fn end(&self) -> Time {
        Time::new::<second>(self.path.end().0)
    }

    /// Temperatures of inner and outer part at a time.
    ///
    /// # Errors
    /// [`ThermalError::TimeOutside`] before the start or after the end.
    pub fn temperatures_at(
        &self,
        time: Time,
    ) -> Result<(ThermodynamicTemperature, ThermodynamicTemperature), ThermalError> {
        let [inner, outer] = self.state(time)?;
        Ok((ThermodynamicTemperature::new::<kelvin>(inner), ThermodynamicTemperature::new::<kelvin>(outer)))
    }

    /// Clearance that the two temperatures leave at a time, on the diameter; negative is interference.
    ///
    /// # Errors
    /// As for [`Self::temperatures_at`].
    pub fn clearance_at(&self, time: Time) -> Result<Length, ThermalError> {
        Ok(Length::new::<meter>(self.pair.clearance(&self.state(time)?)))
    }

    /// Conductance of the gap at a time, without the resistance inside the parts; from the grip on that of the contact.
    ///
    /// # Errors
    /// As for [`Self::temperatures_at`].
    pub fn conductance_at(&self, time: Time) -> Result<HeatTransfer, ThermalError> {
        let gripped = self.grip().is_some_and(|grip| time >= grip);
        let conductance = self.pair.conductance(&self.state(time)?, gripped);
        Ok(HeatTransfer::new::<watt_per_square_meter_kelvin>(conductance))
    }

    /// Where the heat went, from the start to the end.
    pub fn heat_account(&self) -> HeatAccount {
        HeatAccount::of(&self.pair, &self.path)
    }

    fn state(&self, time: Time) -> Result<Temperatures, ThermalError> {
        let (asked_s, end_s) = (time.get::<second>(), self.path.end().0);
        if asked_s >= 0.0 && asked_s <= end_s * (1.0 + TIME_ROUNDING) {
            Ok(self.path.at(asked_s))
        } else {
            Err(ThermalError::TimeOutside { asked_s, end_s })
        }
    }
}
