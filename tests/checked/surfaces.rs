//! Air, nitrogen and the films of surfaces in them, against independent libraries.

use super::mechanics_units::mm;
use super::reference_rows::{Row, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::quantity::{HeatTransfer, Length, Pressure, TemperatureInterval, ThermodynamicTemperature, celsius};
use seatwise::thermal::*;
use uom::si::diffusion_coefficient::square_meter_per_second as diffusivity_unit;
use uom::si::dynamic_viscosity::pascal_second;
use uom::si::energy::joule;
use uom::si::f64::{Energy, HeatFluxDensity};
use uom::si::heat_flux_density::watt_per_square_meter;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::kinematic_viscosity::square_meter_per_second;
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::temperature_interval::kelvin as kelvin_step;
use uom::si::thermal_conductivity::watt_per_meter_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

pub const SETS: &[Set] = &[
    Set {
        family: "Air, nitrogen and films",
        title: "Air at shop temperatures",
        allowed: "1 %: an ideal gas of thin-gas viscosity; the real one differs by up to 0.6 % at -80 °C",
        checks: shop_air,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Air at the ends of its range",
        allowed: "1 %, and 2 % below -80 °C",
        checks: wide_air,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Standard atmosphere",
        allowed: "1e-5 of the value: the library rounds lapse and exponent to six and five digits",
        checks: atmosphere,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Free convection",
        allowed: "1e-7 of the Nusselt number: the Grashof number of the call is printed to eight digits",
        checks: free_convection,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Forced convection",
        allowed: "1e-9 of the Nusselt number",
        checks: forced_convection,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Radiation",
        allowed: "1e-9 of the value, with the library's older constant of Stefan and Boltzmann taken out",
        checks: radiation,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Boiling point of nitrogen",
        allowed: "0.002 K",
        checks: boiling_points,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Boiling of nitrogen at sea level",
        allowed: "0.05 % in the film: straight lines between the rows of the property table; critical and least flux \
                  0.01 %, nucleate boiling 0.1 %",
        checks: boiling,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Boiling of nitrogen at other states",
        allowed: "1 % in the film: latent heat and density of the liquid are those of sea level; critical flux 6 %, of which \
                  the vapour as an ideal gas is most",
        checks: boiling_elsewhere,
    },
    Set {
        family: "Air, nitrogen and films",
        title: "Cold that nitrogen gives",
        allowed: "latent heat 0.01 %, that of the vapour 0.1 %, and 0.2 % at other temperatures",
        checks: evaporation,
    },
];

/// Rows of a reference file whose quantity starts with `kind`; a kind without rows is a mistake of the test.
pub fn rows(file: &str, kind: &str) -> Vec<Row> {
    let all = read(&format!("film/{file}.csv")).into_iter();
    let rows: Vec<Row> = all.filter(|row| row["quantity"].starts_with(kind)).collect();
    assert!(!rows.is_empty(), "{file} has no rows of {kind}");
    rows
}

pub fn value(row: &Row) -> f64 {
    row["value"].parse().unwrap()
}

/// The number after `key=` in the inputs, such as `D=0.05 m;dT=50 K`.
pub fn given(row: &Row, key: &str) -> f64 {
    let prefix = format!("{key}=");
    let part = row["inputs"].split(';').find_map(|part| part.trim().strip_prefix(prefix.as_str()));
    let digits = part.and_then(|part| part.split(' ').next());
    digits.and_then(|digits| digits.parse().ok()).unwrap_or_else(|| panic!("{key} in {row:?}"))
}

pub fn step(t: f64) -> TemperatureInterval {
    TemperatureInterval::new::<kelvin_step>(t)
}
pub fn metres(length: f64) -> Length {
    Length::new::<meter>(length)
}
pub fn pascals(p: f64) -> Pressure {
    Pressure::new::<pascal>(p)
}
pub fn w_m2k(film: HeatTransfer) -> f64 {
    film.get::<watt_per_square_meter_kelvin>()
}
pub fn w_m2(flux: HeatFluxDensity) -> f64 {
    flux.get::<watt_per_square_meter>()
}

/// Collects rows of `tests/reference/film`, with the units in which those files give their values.
struct Films(Sheet);

impl Films {
    fn of(file: &str) -> Self {
        Self(Sheet::of(&format!("film/{file}.csv")))
    }

    fn add(&mut self, row: &Row, computed: f64, share: f64) {
        self.within(row, computed, share * value(row).abs());
    }

    fn within(&mut self, row: &Row, computed: f64, allowed: f64) {
        let units = [
            ("kg/m3", "kg/m³"),
            ("J/kg/K", "J/(kg K)"),
            ("W/m/K", "W/(m K)"),
            ("Pa s", "Pa s"),
            ("m2/s", "m²/s"),
            ("1/K", "1/K"),
            ("Pa", "Pa"),
            ("K", "K"),
            ("W/m2", "W/m²"),
            ("W/m2/K", "W/(m² K)"),
            ("J/kg", "J/kg"),
            ("m", "m"),
            ("1", ""),
        ];
        let (_, unit) = units.into_iter().find(|(name, _)| *name == row["unit"]).unwrap_or_else(|| panic!("{row:?}"));
        self.0.row(format!("{}, {}", row["id"], row["inputs"].replace(';', " ")));
        let library = if row["version"].is_empty() {
            row["library"].clone()
        } else {
            format!("{} {}", row["library"], row["version"])
        };
        self.0.source(&library, "computed apart");
        self.0.within((&row["quantity"], unit), [value(row), computed], allowed);
    }
}

fn property(row: &Row) -> f64 {
    let air = Air::at(celsius(given(row, "T")), pascals(given(row, "P"))).unwrap();
    match row["quantity"].as_str() {
        "air density" => air.density().get::<kilogram_per_cubic_meter>(),
        "air cp" => air.heat_capacity().get::<joule_per_kilogram_kelvin>(),
        "air conductivity" => air.conductivity().get::<watt_per_meter_kelvin>(),
        "air dynamic viscosity" => air.dynamic_viscosity().get::<pascal_second>(),
        "air Prandtl" => air.prandtl().get::<ratio>(),
        "air kinematic viscosity" => air.kinematic_viscosity().get::<square_meter_per_second>(),
        "air thermal diffusivity" => air.thermal_diffusivity().get::<diffusivity_unit>(),
        "air expansion coefficient (real gas)" => air.expansion_coefficient().get::<per_kelvin>(),
        other => panic!("{other} is not tested"),
    }
}

fn shop_air() -> Vec<Check> {
    let mut films = Films::of("air");
    rows("air", "air").iter().for_each(|row| films.add(row, property(row), 0.01));
    films.0.done()
}

fn wide_air() -> Vec<Check> {
    let mut films = Films::of("air_wide");
    for row in rows("air_wide", "air") {
        films.add(&row, property(&row), if given(&row, "T") < -80.0 { 0.02 } else { 0.01 });
    }
    films.0.done()
}

fn atmosphere() -> Vec<Check> {
    let mut films = Films::of("atmosphere");
    for row in rows("atmosphere", "standard pressure") {
        films.add(&row, standard_pressure(metres(given(&row, "z"))).unwrap().get::<pascal>(), 1e-5);
    }
    films.0.done()
}

fn free_convection() -> Vec<Check> {
    let mut films = Films::of("convection");
    for (kind, correlation) in [
        ("Nu horizontal cylinder", NaturalConvection::HorizontalCylinder),
        ("Nu vertical plate", NaturalConvection::VerticalPlate),
        ("Nu horizontal plate, hot face up", NaturalConvection::FreeFace),
        ("Nu horizontal plate, hot face down", NaturalConvection::HeldFace),
        ("Nu sphere", NaturalConvection::Sphere),
    ] {
        for row in rows("convection", kind) {
            films.add(&row, correlation.nusselt(given(&row, "Ra"), given(&row, "Pr")).unwrap(), 1e-7);
        }
    }
    films.0.done()
}

fn forced_convection() -> Vec<Check> {
    let mut films = Films::of("convection");
    for (kind, correlation) in
        [("Nu cylinder in cross", ForcedConvection::CylinderAcross), ("Nu flat", ForcedConvection::LaminarPlate)]
    {
        for row in rows("convection", kind) {
            films.add(&row, correlation.nusselt(given(&row, "Re"), given(&row, "Pr")).unwrap(), 1e-9);
        }
    }
    films.0.done()
}

fn radiation() -> Vec<Check> {
    let mut films = Films::of("radiation");
    for row in rows("radiation", "") {
        let temperature = |key| celsius(given(&row, key));
        let (emissivity, surface, walls) = (given(&row, "eps"), temperature("Ts"), temperature("Tsur"));
        let computed = if row["quantity"].starts_with("net") {
            // The library still has the Stefan-Boltzmann constant of CODATA 2014, 1.3e-6 below that of 2018.
            w_m2(radiation_flux(emissivity, surface, walls).unwrap()) * 5.670_367 / 5.670_374_419
        } else {
            w_m2k(radiation_coefficient(emissivity, surface, walls).unwrap())
        };
        films.add(&row, computed, 1e-9);
    }
    films.0.done()
}

fn boiling_points() -> Vec<Check> {
    let mut films = Films::of("nitrogen");
    for (file, kind) in
        [("nitrogen", "nitrogen boiling"), ("nitrogen", "nitrogen normal"), ("nitrogen_wide", "nitrogen boiling")]
    {
        for row in rows(file, kind) {
            let point = nitrogen_boiling_point(pascals(given(&row, "P"))).unwrap().get::<kelvin>();
            films.within(&row, point, 0.002);
        }
    }
    films.0.done()
}

fn boiling() -> Vec<Check> {
    let mut films = Films::of("nitrogen");
    for row in rows("nitrogen", "film boiling h convective part") {
        let share = if row["inputs"].contains("0.4 cpv") { 0.4 } else { 0.8 };
        let film = bromley_film_boiling(metres(given(&row, "D")), step(given(&row, "wall superheat")), share);
        films.add(&row, w_m2k(film.unwrap()), 5e-4);
    }
    for row in rows("nitrogen", "film boiling heat flux") {
        let curve = NitrogenPool::new(mm(given(&row, "D") * 1e3)).curve().unwrap();
        films.add(&row, w_m2(curve.flux(step(given(&row, "dT"))).unwrap()), 5e-4);
    }
    for row in rows("nitrogen", "film boiling h, Berenson") {
        films.add(&row, w_m2k(berenson_plate_film_boiling(step(given(&row, "dT"))).unwrap()), 5e-4);
    }
    let one = |kind| rows("nitrogen", kind).remove(0);
    films.add(&one("capillary"), capillary_length().get::<meter>(), 1e-5);
    films.add(&one("minimum film boiling heat flux"), w_m2(berenson_minimum_flux()), 1e-4);
    films.add(&one("minimum film boiling wall"), berenson_minimum_superheat().get::<kelvin_step>(), 1e-4);
    for row in rows("nitrogen", "critical heat flux, Zuber") {
        films.add(&row, w_m2(zuber_critical_flux(given(&row, "K")).unwrap()), 1e-4);
    }
    for row in rows("nitrogen", "critical heat flux, cylinder") {
        films.add(&row, w_m2(cylinder_critical_flux(metres(given(&row, "D"))).unwrap()), 1e-4);
    }
    for row in rows("nitrogen", "nucleate") {
        let film = rohsenow_nucleate_boiling(step(given(&row, "Te")), given(&row, "Csf"), given(&row, "n"));
        films.add(&row, w_m2k(film.unwrap()), 1e-3);
    }
    films.0.done()
}

fn boiling_elsewhere() -> Vec<Check> {
    let mut films = Films::of("nitrogen_wide");
    for row in rows("nitrogen_wide", "film boiling h") {
        let part =
            NitrogenPool { pressure: pascals(given(&row, "P")), ..NitrogenPool::new(mm(given(&row, "D") * 1e3)) };
        films.add(&row, w_m2k(part.curve().unwrap().film(step(given(&row, "wall superheat"))).unwrap()), 0.01);
    }
    // The critical flux at 70 kPa through the curve: its peak.
    let row = rows("nitrogen_wide", "critical heat flux").remove(0);
    let (pressure, critical_constant) = (pascals(given(&row, "P")), given(&row, "K"));
    let curve = NitrogenPool { pressure, critical_constant, ..NitrogenPool::new(mm(50.0)) }.curve().unwrap();
    films.add(&row, w_m2(curve.flux(curve.critical_superheat()).unwrap()), 0.06);
    films.0.done()
}

/// J/kg of nitrogen, with that of the vapour up to a temperature where one is given, K.
fn cold_of_nitrogen(leaves_at: Option<f64>) -> f64 {
    let at = leaves_at.map(ThermodynamicTemperature::new::<kelvin>);
    1e5 / nitrogen_evaporated(Energy::new::<joule>(1e5), at).unwrap().mass.get::<kilogram>()
}

fn evaporation() -> Vec<Check> {
    let mut films = Films::of("nitrogen");
    let latent = rows("nitrogen", "nitrogen latent heat").remove(0);
    films.add(&latent, cold_of_nitrogen(None), 1e-4);
    let sensible = rows("nitrogen", "sensible enthalpy of nitrogen vapour").remove(0);
    films.add(&sensible, cold_of_nitrogen(Some(293.15)) - value(&latent), 1e-3);
    for row in rows("nitrogen_wide", "vapour enthalpy") {
        films.add(&row, cold_of_nitrogen(Some(given(&row, "T"))) - value(&latent), 2e-3);
    }
    films.0.done()
}
