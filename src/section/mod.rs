//! The seat as it is: elastic contact of ring and housing or shaft in a section through the axis.
//!
//! The plane formulas of thick rings are exact for a seat as wide as the ring and open at both ends. A blind bore, a
//! shoulder or a boss that goes on is stiffer: there they are 9 to 37 % too low in pressure, force and closing of the
//! ring (against independent finite elements). This module divides the section into quadratic elements, condenses each
//! body to its seat, and finds where the parts touch. Lengths, elastic constants, interference and thermal strains come
//! in; it knows no materials, media, temperatures or jobs. [`heat`] follows temperatures on the same mesh.
//!
//! ```
//! use seatwise::quantity::{Force, Length, Pressure, Ratio};
//! use seatwise::section::{
//!     Accuracy, Back, Chamfers, Elastic, Housing, Loads, Model, RingSection, Seat, Section, SectionError, Support,
//! };
//! use uom::si::{force::newton, length::{micrometer, millimeter}, pressure::{gigapascal, megapascal}, ratio::ratio};
//!
//! let mm = Length::new::<millimeter>;
//! let elastic = |modulus, poisson| Elastic { modulus: Pressure::new::<gigapascal>(modulus), poisson };
//! let section = Section {
//!     ring: RingSection {
//!         bore: mm(52.0),
//!         outside: mm(62.0),
//!         width: mm(16.0),
//!         chamfers: Chamfers { back: mm(1.0), front: mm(1.0) },
//!         groove: None,
//!         material: elastic(208.0, 0.3),
//!     },
//!     liner: None,
//!     seat: Seat::Housing(Housing {
//!         outside: mm(80.0),
//!         step: None,
//!         front: mm(0.0),
//!         back: Back::Wall { thickness: mm(5.0), hole: Some(mm(40.0)) },
//!         material: elastic(70.0, 0.33),
//!     }),
//!     support: Support::Back { opening: None },
//! };
//! let model = Model::new(&section, Accuracy::Normal)?;
//! let loads = Loads {
//!     interference: vec![mm(0.030)],
//!     strain: vec![Ratio::new::<ratio>(0.0); 2],
//!     axial: Force::new::<newton>(0.0),
//! };
//! let state = model.solve(&loads)?;
//! let seat = &state.contacts[0];
//! // Independent finite elements of this seat: 7.534 MPa, and 11.09 µm less bore at mid-width. The plane formula: 5.490 MPa.
//! assert!((seat.mean_pressure.get::<megapascal>() - 7.534).abs() < 0.01);
//! let closing = state.parts[0].inside.as_ref().map(|bore| bore.at_raceway.get::<micrometer>());
//! assert!(closing.is_some_and(|closing| (closing + 11.09).abs() < 0.02));
//! # Ok::<(), SectionError>(())
//! ```
//!
//! | what | how |
//! |---|---|
//! | mesh | structured, graded, 8-node quadrilaterals; nodes of parts that touch match |
//! | stiffness | Cholesky within the envelope, body by body, once |
//! | contact | pressure on hats, complementarity on the condensed seat, frictionless |
//! | many loads | unit solutions, added while the same nodes touch ([`Units`]) |

mod abutment;
mod body;
mod check;
mod divide;
mod element;
mod envelope;
mod error;
mod field;
mod friction;
mod geometry;
mod grading;
pub mod heat;
mod loads;
mod mesh;
mod model;
mod observe;
mod outline;
mod settle;
mod state;
mod state_of;
mod stress;
mod touch;
mod units;

pub use error::SectionError;
pub use field::{ContactNodes, Field, Node, NodeStress, PartField, Place};
pub use friction::FrictionSpan;
pub use geometry::{
    Accuracy, Back, Chamfers, Elastic, Groove, Housing, Liner, RingSection, Seat, Section, Shaft, Step, Support,
};
pub use loads::Loads;
pub use model::Model;
pub use state::{ChangeAt, Contact, PartChange, PressureAt, State, SurfaceChange, WallState};
pub use stress::{Peak, StressAt};
pub use units::Units;

#[cfg(test)]
mod proofs;
