//! Screw threads of jigs and pullers: sizes, designations as a shop writes them, and strength classes of rods and bolts.
//!
//! ISO metric threads M3 to M48 (coarse and fine pitches of ISO 261) and unified threads No. 4 to 2 in (UNC, UNF, UNEF).
//! Only nominal size and pitch come from the tables in `fits/`; the other diameters follow from the basic profile.
//!
//! **Source**: ISO 261, ISO 68-1, ISO 724, ASME B1.1, ISO 898-1, SAE J429, row by row in the files.

mod designation;
mod nut;
mod spelling;
mod strength;
mod table;

pub use designation::ThreadError;
pub use nut::{EMBEDDED_NUT_FACES, HexagonNut, hexagon_nut, hexagon_nuts};
pub use strength::{EMBEDDED_STRENGTH, StrengthClass, StrengthError, strength_class, strength_classes};
pub use table::{EMBEDDED_METRIC, EMBEDDED_UNIFIED, threads};

use crate::quantity::{Area, Length};
use crate::stock::iso286::Status;
use std::f64::consts::PI;
use uom::si::length::inch;

/// Half the angle between the flanks of ISO metric and unified threads, degrees (ISO 68-1, ASME B1.1).
pub const FLANK_ANGLE_DEGREES: f64 = 30.0;

/// A series of threads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Series {
    /// ISO metric, the coarse pitch of its size.
    MetricCoarse,
    /// ISO metric, a finer pitch.
    MetricFine,
    /// Unified coarse, UNC.
    UnifiedCoarse,
    /// Unified fine, UNF.
    UnifiedFine,
    /// Unified extra fine, UNEF.
    UnifiedExtraFine,
}

impl Series {
    /// Whether the thread is metric.
    pub fn is_metric(self) -> bool {
        matches!(self, Self::MetricCoarse | Self::MetricFine)
    }
}

/// A single-start screw thread of one nominal size and pitch.
#[derive(Clone, Debug, PartialEq)]
pub struct Thread {
    /// As the standard writes it: `M10`, `M10×1.25`, `1/2-13 UNC`, `#10-32 UNF`.
    pub designation: String,
    /// Its series.
    pub series: Series,
    /// Nominal diameter, d.
    pub nominal: Length,
    /// Pitch P; of a unified thread, one inch over the threads per inch.
    pub pitch: Length,
    /// Whether size and pitch were read in a published text.
    pub status: Status,
    /// Key of the text, explained at the head of the file.
    pub source: String,
}

impl Thread {
    /// Pitch diameter `d2 = d - (3√3/8) P`. **Source**: ISO 68-1, ISO 724, from memory; ASME B1.1 has the same profile.
    pub fn pitch_diameter(&self) -> Length {
        self.less(3.0 / 8.0)
    }

    /// Basic minor diameter `d1 = d - (5√3/8) P`. **Source**: ISO 68-1, ISO 724; ASME B1.1; from memory.
    pub fn minor_diameter(&self) -> Length {
        self.less(5.0 / 8.0)
    }

    /// Diameter at the rounded root of the screw: metric `d3 = d - (17√3/24) P`, unified (UNR) `d3 = d - (11√3/16) P`.
    ///
    /// **Source**: ISO 68-1 with the root of ISO 965-1 (H/6 below d1); ASME B1.1 (H/8 below d1, which the printed
    /// diameters of the UNF series confirm); H = √3/2 P; all from memory.
    pub fn root_diameter(&self) -> Length {
        self.less(if self.series.is_metric() { 17.0 / 24.0 } else { 11.0 / 16.0 })
    }

    /// Diameter of the circle whose area is the stress area: metric `(d2 + d3)/2`, unified `D - 0.9743/n`.
    ///
    /// **Source**: ISO 898-1, clause on the nominal stress area; ASME B1.1, tensile stress area; from memory, met by printed areas.
    pub fn stress_diameter(&self) -> Length {
        if self.series.is_metric() {
            (self.pitch_diameter() + self.root_diameter()) / 2.0
        } else {
            self.nominal - 0.9743 * self.pitch
        }
    }

    /// Stress area `A_s = π/4 d_s²` with the [stress diameter](Self::stress_diameter).
    ///
    /// The standards print it to three digits; this is the value before rounding. **Source**: as for the diameter.
    pub fn stress_area(&self) -> Area {
        let diameter = self.stress_diameter();
        PI / 4.0 * diameter * diameter
    }

    /// Threads per inch, the way a unified pitch is written.
    pub fn threads_per_inch(&self) -> f64 {
        1.0 / self.pitch.get::<inch>()
    }

    fn less(&self, share: f64) -> Length {
        self.nominal - share * 3.0_f64.sqrt() * self.pitch
    }
}
