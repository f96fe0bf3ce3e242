use super::ToleranceClass;
use crate::quantity::Nanometres;
use crate::stock::iso286::TableError;
use crate::stock::iso492::{Ring, RingClass};
use thiserror::Error;

/// Why limits of size, or what follows from them, cannot be given.
#[derive(Clone, Debug, Error)]
pub enum FitError {
    /// The nominal size lies outside ISO 286-1.
    #[error("{} mm is outside ISO 286-1\n  help: nominal sizes are above 0 and at most 3150 mm", nominal.mm())]
    SizeOutside {
        /// The size asked for.
        nominal: Nanometres,
    },
    /// ISO 286-1 does not give this class at this size.
    #[error("{class} is not given for {} mm: {given}{}", nominal.mm(), help(*nearest))]
    ClassNotGiven {
        /// The class asked for.
        class: ToleranceClass,
        /// The size asked for.
        nominal: Nanometres,
        /// For which sizes or grades it is given.
        given: String,
        /// The nearest class that is given at this size.
        nearest: Option<ToleranceClass>,
    },
    /// The tables of ISO 492 do not reach this size.
    #[error(
        "{class} gives no limits for {} of {} mm: the table runs over {} mm, up to and including {} mm",
        seat(*ring), nominal.mm(), over.mm(), to.mm()
    )]
    RingNotGiven {
        /// The class asked for.
        class: RingClass,
        /// The ring, or none when its width was asked for.
        ring: Option<Ring>,
        /// The size asked for: bore, outside, or the bore whose width was asked for.
        nominal: Nanometres,
        /// The table starts above this size.
        over: Nanometres,
        /// The table ends at this size.
        to: Nanometres,
    },
    /// No widths are given for this class.
    #[error(
        "the width limits of {class} are not in the tables\n  help: give the limits of the width, or use Normal, P6 or P5"
    )]
    WidthNotGiven {
        /// The class asked for.
        class: RingClass,
    },
    /// A measured size or its uncertainty is not possible.
    #[error(
        "a reading of {} mm within {} µm is not possible\n  help: the reading must be above zero and the uncertainty \
         between zero and the reading", reading.mm(), within.um()
    )]
    Measurement {
        /// The reading.
        reading: Nanometres,
        /// Its uncertainty.
        within: Nanometres,
    },
    /// A roughness or the smoothing factor is not possible.
    #[error("{what} is {given} but must be {allowed}")]
    Smoothing {
        /// Which input.
        what: &'static str,
        /// What was given, with its unit.
        given: String,
        /// What is allowed.
        allowed: &'static str,
    },
    /// An embedded table is malformed.
    #[error(transparent)]
    Table(#[from] TableError),
}

fn help(nearest: Option<ToleranceClass>) -> String {
    nearest.map_or_else(String::new, |class| format!("\n  help: the nearest class given at this size is {class}"))
}

fn seat(ring: Option<Ring>) -> &'static str {
    match ring {
        Some(Ring::Inner) => "an inner ring with a bore",
        Some(Ring::Outer) => "an outer ring with an outside",
        None => "the width of a ring in a bearing with a bore",
    }
}
