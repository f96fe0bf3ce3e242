//! Several bodies that exchange heat: closed forms, independent solvers, finite elements.

use super::heat::outer_faces;
pub use super::heat::{at_kelvin, celsius, seconds};
use super::reference_rows::{Row, given, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::quantity::{Area, HeatTransfer, Length, Mass, Power, Pressure};
use seatwise::stock::Curve;
use seatwise::thermal::*;
use uom::si::area::square_meter;
use uom::si::energy::joule;
use uom::si::f64::{MassDensity, ThermalConductance};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::millimeter;
use uom::si::mass::{gram, kilogram};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::power::watt;
use uom::si::pressure::pascal;
use uom::si::thermal_conductance::watt_per_kelvin;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

pub const SETS: &[Set] = &[
    Set {
        family: "Heat",
        title: "Two bodies in contact",
        allowed: "0.0008 K: a step may err by 1e-5 of the 80 K between the bodies",
        checks: two_bodies,
    },
    Set { family: "Heat", title: "Three bodies, radiation, varying contact", allowed: "0.002 K", checks: three_bodies },
    Set {
        family: "Heat",
        title: "One body through the collapse of boiling",
        allowed: "0.05 K, 2 ms of a collapse of 60 K in 2 s",
        checks: collapse,
    },
    Set {
        family: "Heat",
        title: "Warming up with dew and frost",
        allowed: "0.01 K and 1 mg: two published formulas of the vapour pressure, which differ by 0.05 %",
        checks: frost,
    },
    Set { family: "Heat", title: "Rings and bosses in air, baths, on a plate", allowed: "1 K", checks: by_elements },
];

pub fn rows(file: &str) -> Vec<Row> {
    read(&format!("bodies/{file}"))
}

pub fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}
pub fn watts(power: f64) -> Power {
    Power::new::<watt>(power)
}
pub fn film(h: f64) -> HeatTransfer {
    HeatTransfer::new::<watt_per_square_meter_kelvin>(h)
}
pub fn constant(value: f64) -> Curve {
    Curve::constant(value, 20.0, 2000.0).unwrap()
}
/// Heat capacity that rises from 150 J/(kg K) at 70 K to 520 at 400 K in a straight line.
pub fn rising_capacity() -> Curve {
    Curve::new(&[(70.0, 150.0), (400.0, 520.0)]).unwrap()
}
pub fn body(mass: f64, heat_capacity: &Curve, start_k: f64) -> NetworkBody<'_> {
    NetworkBody { mass: Mass::new::<kilogram>(mass), heat_capacity, start: at_kelvin(start_k), power: watts(0.0) }
}

/// A surface to the first of the surroundings, nothing but a film on it.
pub fn surface<'a>(body: usize, area: f64, h: f64) -> Exchange<'a> {
    Exchange {
        body,
        with: Partner::Surroundings(0),
        area: Area::new::<square_meter>(area),
        film: SurfaceFilm::Constant(film(h)),
        emissivity: 0.0,
        inside: None,
        wrap: Wrap::none(),
        moisture: None,
    }
}

pub fn link<'a>(one: usize, other: usize, conductance: f64) -> Link<'a> {
    let conductance = Conductance::Constant(ThermalConductance::new::<watt_per_kelvin>(conductance));
    Link { between: (one, other), conductance }
}

pub fn alone<'a>(body: NetworkBody<'a>, surroundings_k: f64, exchange: Exchange<'a>) -> Network<'a> {
    Network {
        bodies: vec![body],
        surroundings: vec![at_kelvin(surroundings_k)],
        exchanges: vec![exchange],
        links: vec![],
    }
}

pub fn kelvin_at(history: &NetworkHistory, body: usize, time: f64) -> f64 {
    history.temperature_at(body, seconds(time)).unwrap().get::<kelvin>()
}

/// Moist air at sea level.
pub fn moist_air(celsius_air: f64, humidity: f64) -> MoistAir {
    MoistAir::new(celsius(celsius_air), humidity, Pressure::new::<pascal>(101_325.0)).unwrap()
}

fn two_bodies() -> Vec<Check> {
    let (unit, mut sheet) = (constant(1.0), Sheet::of("bodies/two_bodies.csv"));
    for row in rows("two_bodies.csv") {
        let given = |key| given(&row["parameters"], key);
        let network = Network {
            bodies: vec![
                body(given("C1"), &unit, given("T1_0") + 273.15),
                body(given("C2"), &unit, given("T2_0") + 273.15),
            ],
            links: vec![link(0, 1, given("G"))],
            ..Network::default()
        };
        let which = usize::from(row["quantity"] == "T2_C");
        let history = network.run(seconds(number(&row, "Fo"))).unwrap();
        sheet.row(format!("{}, {} s", row["id"], row["Fo"]));
        let end = history.end()[which].get::<degree_celsius>();
        sheet.within((&row["quantity"], "°C"), [number(&row, "value"), end], 8e-4);
        // What one gains the other loses: nothing else is there.
        assert!(history.account().missing().get::<joule>().abs() < 1e-6 * given("C1") * 80.0);
    }
    sheet.done()
}

fn three_bodies() -> Vec<Check> {
    let (capacity, mut sheet) = (rising_capacity(), Sheet::of("bodies/three_bodies.csv"));
    let contact = Curve::new(&[(100.0, 0.1), (400.0, 0.4)]).unwrap();
    for row in rows("three_bodies.csv") {
        let start = |i: usize| number(&row, &format!("start{i}_k"));
        let mut network = Network {
            bodies: vec![
                body(0.108, &capacity, start(1)),
                body(0.032, &capacity, start(2)),
                body(0.066, &capacity, start(3)),
            ],
            surroundings: vec![at_kelvin(number(&row, "surroundings_k"))],
            exchanges: vec![],
            links: vec![
                Link { between: (0, 1), conductance: Conductance::OverTemperature(&contact) },
                link(1, 2, 0.25),
            ],
        };
        network.bodies[2].power = watts(number(&row, "power_w"));
        for (i, area) in [4.8e-3, 1.8e-3, 2.6e-3].into_iter().enumerate() {
            network.exchanges.push(Exchange { emissivity: 0.3, ..surface(i, area, number(&row, "film")) });
        }
        let time = number(&row, "t_s");
        let long = network.run(seconds(1500.0)).unwrap();
        let short = network.run(seconds(time)).unwrap();
        sheet.row(format!("{}, {time} s", row["case"]));
        for i in 0..3 {
            let want = number(&row, &format!("t{}_k", i + 1));
            let mut add = |how: &str, got: f64| {
                sheet.within((&format!("body {}, {how}", i + 1), "K"), [want, got], 2e-3);
            };
            add("end of a run", short.end()[i].get::<kelvin>());
            add("inside a longer one", kelvin_at(&long, i, time));
        }
    }
    sheet.done()
}

/// The body of `boiling.csv`, followed past the collapse of its film.
pub fn through_the_collapse() -> NetworkHistory {
    let (capacity, conductivity) = (rising_capacity(), constant(40.0));
    let curve = Curve::new(&[
        (70.0, 3000.0),
        (78.0, 6000.0),
        (85.0, 15000.0),
        (95.0, 12000.0),
        (110.0, 2000.0),
        (125.0, 500.0),
        (146.0, 125.0),
        (180.0, 125.0),
        (240.0, 135.0),
        (310.0, 150.0),
    ])
    .unwrap();
    let path = ConductionPath::one_face(mm(5.0));
    let inside = Some(Inside { path, conductivity: &conductivity });
    let exchange = Exchange { film: SurfaceFilm::OverSurface(&curve), inside, ..surface(0, 0.006, 1.0) };
    alone(body(0.1, &capacity, 293.15), 77.36, exchange).run(seconds(600.0)).unwrap()
}

fn collapse() -> Vec<Check> {
    let (history, mut sheet) = (through_the_collapse(), Sheet::of("bodies/boiling.csv"));
    for row in rows("boiling.csv") {
        let time = number(&row, "t_s");
        sheet.row(format!("after {time} s"));
        sheet.within(("temperature", "K"), [number(&row, "t_k"), kelvin_at(&history, 0, time)], 0.05);
    }
    sheet.done()
}

fn frost() -> Vec<Check> {
    let (capacity, mut sheet) = (rising_capacity(), Sheet::of("bodies/frost.csv"));
    for row in rows("frost.csv") {
        let value = |column| number(&row, column);
        let moisture = Some(moist_air(value("air_c"), value("humidity")));
        let exchange = Exchange { emissivity: 0.3, moisture, ..surface(0, 0.0113, 6.0) };
        let network = alone(body(0.2, &capacity, value("start_k")), value("air_c") + 273.15, exchange);
        let history = network.run(seconds(value("t_s"))).unwrap();
        let water = history.water_on(0);
        let place = format!("{} °C, humidity {}, from {} K", row["air_c"], row["humidity"], row["start_k"]);
        sheet.row(format!("{place}, {} s", row["t_s"]));
        sheet.within(("temperature", "K"), [value("t_k"), history.end()[0].get::<kelvin>()], 0.01);
        sheet.within(("dew", "g"), [value("dew_g"), water.dew.get::<gram>()], 1e-3);
        sheet.within(("frost", "g"), [value("frost_g"), water.frost.get::<gram>()], 1e-3);
    }
    sheet.done()
}

fn by_elements() -> Vec<Check> {
    let mut sheet = Sheet::of("bodies/fe_transient.csv");
    for row in rows("fe_transient.csv") {
        let (shape, plate) = outer_faces(&row["body"]);
        let (capacity, conductivity) = (constant(number(&row, "c")), constant(number(&row, "k")));
        let density = MassDensity::new::<kilogram_per_cubic_meter>(number(&row, "rho"));
        let inside = Some(Inside { path: shape.path, conductivity: &conductivity });
        let (h, env) = (number(&row, "h_W_m2K"), number(&row, "T_env_C"));
        let mut mass = body(1.0, &capacity, number(&row, "T0_C") + 273.15);
        mass.mass = shape.mass(density, 1.0).unwrap();
        let whole = Exchange { area: shape.area, inside, ..surface(0, 1.0, h) };
        let mut network = alone(mass, env + 273.15, whole);
        if row["environment"] == "hot plate" {
            // One face on the plate, the others in air at 20 °C; the whole of the plate's heat crosses the part.
            let through = Some(Inside { path: ConductionPath::one_face(plate.width), conductivity: &conductivity });
            network.surroundings.push(celsius(20.0));
            network.exchanges[0] = Exchange { area: plate.area, inside: through, ..whole };
            network.exchanges.push(Exchange {
                area: shape.area - plate.area,
                with: Partner::Surroundings(1),
                film: SurfaceFilm::Constant(film(10.0)),
                ..whole
            });
        }
        let history = network.run(seconds(number(&row, "t_s"))).unwrap();
        sheet.row(format!("{} in {}, {h} W/(m² K), {} s", row["body"], row["environment"], row["t_s"]));
        sheet.column(&row, "T_mean_C", history.end()[0].get::<degree_celsius>(), [0.0, 1.0]);
    }
    sheet.done()
}
