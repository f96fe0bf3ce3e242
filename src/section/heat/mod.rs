//! Transient heat conduction in the section, on the mesh of the elastic solver.
//!
//! `ρ c(T) ∂T/∂t = ∇·(k(T) ∇T)` in each part, with what its faces meet, and across the seat a conductance that follows the
//! gap while ring and seat grow and shrink. Tables of properties and films come in; the module knows no materials and no
//! media. One history runs through stages: apart in a bath, apart in air, seated.
//!
//! ```
//! use seatwise::quantity::{HeatTransfer, Length, Pressure, Time, celsius};
//! use seatwise::section::heat::{
//!     Conduction, Exposed, FaceLaw, Faces, Gap, Growth, Placement, Property, Seating, Solid, Stage, Until,
//! };
//! use seatwise::section::{
//!     Accuracy, Back, Chamfers, Elastic, Housing, Model, RingSection, Seat, Section, Support,
//! };
//! use uom::si::f64::MassDensity;
//! use uom::si::heat_transfer::watt_per_square_meter_kelvin;
//! use uom::si::length::{micrometer, millimeter};
//! use uom::si::{mass_density::kilogram_per_cubic_meter, pressure::gigapascal, time::second};
//!
//! # let mm = Length::new::<millimeter>;
//! # let elastic = |modulus, poisson| Elastic { modulus: Pressure::new::<gigapascal>(modulus), poisson };
//! # let chamfers = Chamfers { back: mm(0.0), front: mm(0.0) };
//! # let ring = RingSection {
//! #     bore: mm(52.0), outside: mm(62.0), width: mm(16.0), chamfers, groove: None, material: elastic(208.0, 0.3),
//! # };
//! # let back = Back::Wall { thickness: mm(5.0), hole: Some(mm(40.0)) };
//! # let housing = Housing { outside: mm(90.0), step: None, front: mm(0.0), back, material: elastic(70.0, 0.33) };
//! // A steel ring of 52/62 mm in a blind bore of aluminium, as in the example of the elastic solver.
//! let section = Section { ring, liner: None, seat: Seat::Housing(housing), support: Support::Free };
//! let model = Model::new(&section, Accuracy::Coarse)?;
//! let solid = |density, capacity, conductivity, expansion| Solid {
//!     density: MassDensity::new::<kilogram_per_cubic_meter>(density),
//!     capacity: Property::constant(capacity),
//!     conductivity: Property::constant(conductivity),
//!     strain: Property::line(expansion, 293.15),
//! };
//! let solids = [solid(7810.0, 460.0, 40.0, 12.5e-6), solid(2700.0, 900.0, 150.0, 23.2e-6)];
//! let conduction = Conduction::new(&model, &solids)?;
//!
//! let film = HeatTransfer::new::<watt_per_square_meter_kelvin>;
//! let air = Exposed::film(film(10.0), celsius(20.0));
//! let gap = Gap {
//!     air: Property::line(8.1e-5, 300.0 - 0.0263 / 8.1e-5),
//!     smallest: Length::new::<micrometer>(1.0),
//!     emissivity: 0.3,
//!     contact: film(5000.0),
//!     placement: Placement::Concentric,
//! };
//! let interference = vec![Length::new::<micrometer>(10.0)];
//! let bore = Stage {
//!     around: vec![Faces::all(FaceLaw::Exposed(&air)); 2],
//!     seating: Some(Seating { interference, gap, growth: Growth::Mean, shoulder: None }),
//!     until: Until::Grips { at_most: Time::new::<second>(60.0) },
//! };
//! let history = conduction.run(&conduction.uniform(&[celsius(-72.0), celsius(20.0)])?, &[bore])?;
//! let grip = history.stages()[0].grip.map(|grip| grip.get::<second>());
//! // Independent finite elements of this race: 10.78 s. Two bodies of one temperature each: 9.72 s.
//! assert!(grip.is_some_and(|grip| (grip / 10.78 - 1.0).abs() < 0.005));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! | what | how |
//! |---|---|
//! | conduction | nodal enthalpy and flux potential on the 8-node elements: matrices made once, heat kept for any c(T), k(T) |
//! | faces | film, radiation, boiling curve or any law of surface temperature and time, at three points of each edge |
//! | seat | `k_air/(gap + smallest)` and radiation at each place, metal contact where it is closed |
//! | gap | [`Growth::Local`]: the elastic displacement of the seat, by unit solutions; [`Growth::Mean`]: mean strain |
//! | steps | numerical differentiation formulas of order one to four; modified Newton, factor kept while it serves |
//! | stress | [`HeatHistory::thermal_stress`], [`HeatHistory::hardest_moment`]: a free part under its nodal temperatures |
//!
//! **Why the gap is that of free parts.** Until the seat grips nothing presses, and the elastic growth of each part by
//! itself is exact. After that the free parts would overlap; the place counts as closed, and what the pressure does to the
//! shape of the gap elsewhere is left out. It bears on how fast the two even out after the grip, not on the grip.
//!
//! Not modelled: the heat that the parts bring along in their own layer of air, frost, grease in the gap, a ring that tilts
//! or slides while it warms. Each of the first conducts better than the gap, so that a real ring grips earlier.

mod conduction;
mod curves;
mod differences;
mod edges;
mod error;
mod face;
mod found;
mod growth;
mod history;
mod newton;
mod panels;
mod property;
mod run;
mod seating;
mod solid;
mod sparse;
mod stage;
mod step;
mod stress;
mod surface;
mod system;

pub use conduction::{Conduction, Temperatures};
pub use error::HeatError;
pub use face::{Exposed, Face, FaceLaw, Faces, Film};
pub use found::{ClearanceAt, HeatBalance, PartTemperatures, SeatClearance, StageTimes, TemperatureAt};
pub use history::HeatHistory;
pub use property::Property;
pub use seating::{Gap, Growth, Placement, Seating};
pub use solid::Solid;
pub use stage::{Stage, Until};
pub use stress::{Strength, ThermalStress};

#[cfg(test)]
mod proofs;
