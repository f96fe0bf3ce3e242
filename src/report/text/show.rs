//! Quantities printed in one system of units, each rounded to its safe side.

use crate::quantity::{
    Force, Length, Pressure, System, ThermodynamicTemperature, Toward, show_force, show_pressure, show_size,
    show_temperature,
};
use crate::report::words;

/// Printing in one system of units.
#[derive(Clone, Copy)]
pub(super) struct Show {
    pub(super) system: System,
}

impl Show {
    pub(super) fn small(self, length: Length, toward: Toward) -> String {
        words::small_length(length, self.system, toward)
    }

    pub(super) fn size(self, length: Length) -> String {
        show_size(length, self.system, Toward::Nearest)
    }

    pub(super) fn temperature(self, temperature: ThermodynamicTemperature) -> String {
        show_temperature(temperature, self.system, 0, Toward::Nearest)
    }

    pub(super) fn force(self, force: Force) -> String {
        show_force(force, self.system, Toward::Up)
    }

    pub(super) fn pressure(self, pressure: Pressure) -> String {
        show_pressure(pressure, self.system, Toward::Up)
    }

    /// A temperature that must not be reached.
    pub(super) fn lock_down(self, temperature: ThermodynamicTemperature) -> String {
        show_temperature(temperature, self.system, 0, Toward::Down)
    }

    pub(super) fn lock(self, lock: Option<ThermodynamicTemperature>) -> String {
        lock.map_or_else(|| "no temperature".to_owned(), |lock| show_temperature(lock, self.system, 0, Toward::Up))
    }
}
