//! How long one history takes: a ring from the freezer over the bench into the bore of a warm boss, one end of every range.

#![allow(clippy::unwrap_used, reason = "sizes and temperatures are given here and lie in every range")]

use seatwise::quantity::{Area, Length, Power, ThermodynamicTemperature, Time};
use seatwise::stock::{Library, Material};
use seatwise::thermal::bore::{Exchange, Gap, Joint, Placement, SeatBody, SeatSizes};
use seatwise::thermal::{
    AirAround, Axis, Body, Boss, ConductionPath, Exchange as Face, FilmLaw, History, Inside, MoistAir, Network,
    NetworkBody, NetworkHistory, Partner, Ring, RoundPart, Shape, Stage, Until, Wrap, standard_pressure,
};
use uom::si::length::{meter, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, minute};

fn main() {
    divan::main();
}

/// Temperature of the freezer, °C.
const FREEZER_C: f64 = -18.0;

fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

fn celsius(t: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(t)
}

/// Film of still air around a part that comes from a temperature.
fn film(round: &RoundPart, from: f64, air: f64) -> FilmLaw {
    let sea_level = standard_pressure(Length::new::<meter>(0.0)).unwrap();
    let around = AirAround { air: celsius(air), pressure: sea_level, air_speed: None, axis: Axis::Vertical };
    FilmLaw::in_air(round, &around, celsius(from)).unwrap()
}

/// A part in the dry air of a freezer: one body in one fluid.
fn frozen((round, shape, material): (&RoundPart, &Shape, &Material), time: Time) -> ThermodynamicTemperature {
    let body = Body {
        mass: shape.volume * material.density(),
        area: shape.area,
        heat_capacity: material.heat_capacity(),
        conductivity: material.conductivity(),
        emissivity: 0.2,
        path: shape.path,
    };
    let law = film(round, 20.0, FREEZER_C);
    let stage = Stage {
        surroundings: celsius(FREEZER_C),
        film: (&law).into(),
        radiates: true,
        power: Power::default(),
        until: Until::Elapsed(time),
    };
    History::run(&body, celsius(20.0), &[stage]).unwrap().end().1
}

/// A part in the moist air of the shop.
fn thawing(
    (round, shape, material): (&RoundPart, &Shape, &Material),
    from: ThermodynamicTemperature,
    time: Time,
) -> NetworkHistory {
    let law = film(round, FREEZER_C, 20.0);
    let sea_level = standard_pressure(Length::new::<meter>(0.0)).unwrap();
    let network = Network {
        bodies: vec![NetworkBody {
            mass: shape.volume * material.density(),
            heat_capacity: material.heat_capacity(),
            start: from,
            power: Power::default(),
        }],
        surroundings: vec![celsius(20.0)],
        exchanges: vec![Face {
            body: 0,
            with: Partner::Surroundings(0),
            area: shape.area,
            film: (&law).into(),
            emissivity: 0.2,
            inside: Some(Inside { path: shape.path, conductivity: material.conductivity() }),
            wrap: Wrap::none(),
            moisture: Some(MoistAir::new(celsius(20.0), 0.5, sea_level).unwrap()),
        }],
        links: Vec::new(),
    };
    network.run(time).unwrap()
}

fn body<'a>(
    shape: &Shape,
    material: &'a Material,
    start: ThermodynamicTemperature,
    film: &FilmLaw,
    seat: Area,
) -> SeatBody<'a> {
    SeatBody {
        mass: shape.volume * material.density(),
        heat_capacity: material.heat_capacity(),
        conductivity: material.conductivity(),
        expansion: material.expansion(),
        emissivity: 0.3,
        to_joint: ConductionPath::one_face(mm(5.0)),
        to_air: shape.path,
        free_area: shape.area - seat,
        film: film.at(start).unwrap(),
        radiates: true,
        start,
    }
}

#[divan::bench]
fn chill_carry_bench_and_bore(bencher: divan::Bencher) {
    let library = Library::default();
    let (steel, alloy) = (library.material("bearing-steel").unwrap(), library.material("cast-aluminium").unwrap());
    let ring = Ring { bore: mm(52.0), outside: mm(62.0), width: mm(16.0) };
    let boss = Boss { bore: mm(62.0), outside: mm(90.0), length: mm(20.0), back_wall: None };
    let (ring_shape, boss_shape) = (ring.shape().unwrap(), boss.shape().unwrap());
    let seat: Area = std::f64::consts::PI * mm(62.0) * mm(16.0);
    let film =
        FilmLaw::constant(uom::si::f64::HeatTransfer::new::<uom::si::heat_transfer::watt_per_square_meter_kelvin>(8.0))
            .unwrap();
    bencher.bench(|| {
        let part = (&RoundPart::Ring(ring), &ring_shape, &steel);
        let cold = frozen(divan::black_box(part), Time::new::<hour>(2.0));
        let bench = thawing(part, cold, Time::new::<hour>(4.0));
        let carried = bench.temperature_at(0, Time::new::<minute>(0.5)).unwrap();
        let exchange = Exchange {
            inner: body(&ring_shape, &steel, carried, &film, seat),
            outer: body(&boss_shape, &alloy, celsius(80.0), &film, seat),
            joint: Joint { diameter: mm(62.0), length: mm(16.0) },
            gap: Gap::usual(Placement::Concentric),
            shop: celsius(20.0),
        };
        let sizes = SeatSizes { inner_at_20: mm(62.0), outer_at_20: mm(61.961) };
        (bench, exchange.run(sizes, Time::new::<hour>(4.0)).unwrap().end())
    });
}
